/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "cli/choose/drawing-options.h"
#include "core/hookup/plan.h"

G_BEGIN_DECLS

/* Files of a plan: the drawing, and the sheet that is printed. */

GBytes *bw_hookup_drawing_bytes (const BwHookup *hookup, const BwDrawingPage *page,
                                 const char *name, GError **error);
GBytes *bw_hookup_sheet_bytes (const BwHookup *hookup, const char *title, const char *name,
                               GError **error);

G_END_DECLS
