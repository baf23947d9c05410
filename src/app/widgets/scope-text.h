/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/base/quantity.h"

G_BEGIN_DECLS

/* Readings of a scope in words: a true minus, the decimal mark of the locale. */

char *bw_scope_number (double value, int decimals);
char *bw_scope_volts (double volts);
char *bw_scope_ire (double ire);
char *bw_scope_time (double time_s);
char *bw_scope_span (double span_s);
char *bw_scope_level (double volts, double volts_per_ire);

G_END_DECLS
