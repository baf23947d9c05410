/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* What a name that is not there may have meant. */

char *bw_nearest_names (GPtrArray *names, const char *wanted, guint n);

G_END_DECLS
