/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "supply.h"

#include <math.h>

#define HALVINGS 100

/**
 * bw_reservoir_ripple:
 * @mains_v: rms, straight on an ideal rectifier
 * @ripple: (out caller-allocates): of a constant load, in the steady state
 *
 * The reservoir follows the crest of the mains and is left behind on the way down, near the crest,
 * where the mains falls faster than I/C; from there it falls evenly until the next half wave (or whole
 * wave) meets it. Both moments are found to the last digit.
 *
 * Returns: %FALSE, leaving @ripple alone, if the load empties the reservoir before it is charged again
 */
gboolean
bw_reservoir_ripple (const BwReservoir *reservoir, double mains_v, double mains_hz,
                     BwRipple *ripple)
{
  g_return_val_if_fail (reservoir != NULL && ripple != NULL, FALSE);
  g_return_val_if_fail (reservoir->farad > 0 && reservoir->load_a > 0, FALSE);
  g_return_val_if_fail (mains_v > 0 && mains_hz > 0, FALSE);
  double peak_v = G_SQRT2 * mains_v, w = 2 * G_PI * mains_hz;
  double fall = reservoir->load_a / reservoir->farad; /* volts a second */
  double period_s = 1 / (mains_hz * (reservoir->half_wave ? 1 : 2));
  if (fall >= w * peak_v)
    return FALSE;

  /* Time counts from the crest. */
  double left_s = asin (fall / (w * peak_v)) / w;
  double left_v = peak_v * cos (w * left_s);
  /* It meets the next wave on its way up, in the last quarter of a period before the next crest. */
  double low = period_s - 1 / (4 * mains_hz), high = period_s;
  for (int i = 0; i < HALVINGS; i++)
    {
      double t = (low + high) / 2;
      if (left_v - fall * (t - left_s) > peak_v * cos (w * (t - period_s)))
        low = t;
      else
        high = t;
    }
  double lowest_v = left_v - fall * (high - left_s);
  if (!(lowest_v > 0))
    return FALSE;
  *ripple = (BwRipple){ .ripple_v = peak_v - lowest_v,
                        .rule_v = fall * period_s,
                        .lowest_v = lowest_v,
                        .peak_v = peak_v };
  return TRUE;
}
