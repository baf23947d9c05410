/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/hookup/plan.h"

G_BEGIN_DECLS

/* Files of a plan: the drawing, and the sheet that is printed. */

gboolean bw_hookup_write_drawing (const BwHookup *hookup, const char *path, GError **error);
gboolean bw_hookup_write_sheet (const BwHookup *hookup, const char *title, const char *path,
                                GError **error);

G_END_DECLS
