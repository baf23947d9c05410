/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "hum.h"

#include <math.h>

/* Rates that differ by less are the same. */
#define SAME 1e-6

/**
 * bw_hum:
 * @mains_hz: exact, likewise @field_hz
 * @hum: (out caller-allocates): n = round (fm/fv) bars, at least one, which beat at fm − n·fv and move at
 *   (fm − n·fv)·fv/fm picture heights a second, up if that is above zero (arithmetic on the two rates)
 */
void
bw_hum (double mains_hz, double field_hz, BwHum *hum)
{
  g_return_if_fail (mains_hz > 0 && field_hz > 0 && hum != NULL);
  double bars = MAX (round (mains_hz / field_hz), 1);
  double beat_hz = mains_hz - bars * field_hz;
  double speed = beat_hz * field_hz / mains_hz;
  gboolean still = fabs (beat_hz) < SAME * field_hz;

  *hum = (BwHum){ .bars = (guint) bars,
                  .beat_hz = fabs (beat_hz),
                  .height_s = still ? (double) INFINITY : 1 / fabs (speed),
                  .direction = still ? 0 : speed > 0 ? 1 : -1 };
}
