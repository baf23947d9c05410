/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "coupling.h"

#include <math.h>

/**
 * bw_coupling_corner_hz:
 * @ohm: source and load in series around the capacitor, greater than zero
 * @farad: greater than zero
 *
 * Returns: where the level is down by 3 dB: 1/(2π R C)
 */
double
bw_coupling_corner_hz (double ohm, double farad)
{
  g_return_val_if_fail (ohm > 0 && farad > 0, 0);
  return 1 / (2 * G_PI * ohm * farad);
}

/**
 * bw_coupling_tilt:
 * @bar_s: length of the bar
 *
 * Returns: how far a flat bar falls through the capacitor, as a share of it: 1 − exp (−T/(R C))
 */
double
bw_coupling_tilt (double bar_s, double ohm, double farad)
{
  g_return_val_if_fail (bar_s >= 0 && ohm > 0 && farad > 0, 0);
  return -expm1 (-bar_s / (ohm * farad));
}

/**
 * bw_coupling_farad:
 * @tilt: allowed, more than 0 and less than 1
 *
 * Returns: the smallest capacitor with which a bar of @bar_s falls by @tilt or less
 */
double
bw_coupling_farad (double bar_s, double ohm, double tilt)
{
  g_return_val_if_fail (bar_s >= 0 && ohm > 0 && tilt > 0 && tilt < 1, 0);
  return -bar_s / (ohm * log1p (-tilt));
}

/**
 * bw_coupling_compute:
 * @ohm: as bw_coupling_corner_hz()
 * @active_line_s: zero: not known
 * @active_field_s: from first to last line of the picture in a field; zero: not known
 * @tilt: (out caller-allocates): corner, line tilt and field tilt
 */
void
bw_coupling_compute (double ohm, double farad, double active_line_s, double active_field_s,
                     BwTilt *tilt)
{
  g_return_if_fail (tilt != NULL);
  tilt->corner_hz = bw_coupling_corner_hz (ohm, farad);
  tilt->line = bw_coupling_tilt (active_line_s, ohm, farad);
  tilt->field = bw_coupling_tilt (active_field_s, ohm, farad);
}
