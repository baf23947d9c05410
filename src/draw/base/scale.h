/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* The ticks of a scale, and their figures. */

double bw_nice_tick (double least);
double bw_nice_end (double least);
double bw_first_tick (double from, double tick);
char *bw_tick_text (double figure, double tick, char mark);

G_END_DECLS
