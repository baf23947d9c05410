/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/base/kinds.h"
#include "core/base/quantity.h"

G_BEGIN_DECLS

/* What options and arguments hold, as a person writes it. A decimal point is read everywhere, so
 * that a script works in any locale; where the locale has a decimal comma, that too. */

char *bw_argument_utf8 (const char *raw);
char bw_argument_mark (const char *text);
gboolean bw_argument_quantity (const char *option, const char *raw, BwDimension dimension,
                               double *value);
gboolean bw_argument_number (const char *text, double *number, const char **rest);
gboolean bw_argument_within (const char *option, const char *raw, BwDimension dimension,
                             BwRange allowed, double *value);
gboolean bw_argument_capacitor (const char *raw, double *farad);
gboolean bw_argument_rate (const char *option, const char *raw, BwRatio *rate_hz);
char *bw_argument_word (const char *option, const BwKindTable *table, const char *raw,
                        guint *value);
gboolean bw_argument_size (const char *option, const char *raw, int *width, int *height);

char **bw_argument_parts (const char *raw);
gboolean bw_argument_pair (const char *raw, char **name, char **value);
gboolean bw_argument_kind (const BwKindTable *table, char separator, const char *name, guint *kind);

G_END_DECLS
