/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* A capacitor in series with the signal. @ohm is everything around the loop: source and load. */

/**
 * BwTilt:
 * @corner_hz: where the level is down by 3 dB
 * @line: fall of a bar as long as the active line, as a share of it; 0 to 1
 * @field: likewise of a white picture as long as the active field
 */
typedef struct
{
  double corner_hz;
  double line;
  double field;
} BwTilt;

double bw_coupling_corner_hz (double ohm, double farad);
double bw_coupling_tilt (double bar_s, double ohm, double farad);
double bw_coupling_farad (double bar_s, double ohm, double tilt);
void bw_coupling_compute (double ohm, double farad, double active_line_s, double active_field_s,
                          BwTilt *tilt);

G_END_DECLS
