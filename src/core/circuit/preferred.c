/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "preferred.h"

#include <math.h>

/* IEC 60063, E24. It does not follow rounded powers of ten everywhere, so it is a table; E12 is
 * every second value of it. */
static const int e24[] = { 100, 110, 120, 130, 150, 160, 180, 200, 220, 240, 270, 300,
                           330, 360, 390, 430, 470, 510, 560, 620, 680, 750, 820, 910 };

static const int steps[BW_N_SERIES] = { 12, 24, 96 };

/* Value @i of @series in a decade that begins at 100. E96 is 10^(i/96) rounded to three figures
 * (IEC 60063). */
static double
value_at (BwSeries series, int i)
{
  if (series == BW_SERIES_E96)
    return round (100 * pow (10, i / 96.0));
  return e24[series == BW_SERIES_E12 ? 2 * i : i];
}

/**
 * bw_preferred_ohm:
 * @ideal_ohm: the computed value, greater than zero
 *
 * Returns: the value of @series nearest to @ideal_ohm by ratio, in ohms
 */
double
bw_preferred_ohm (double ideal_ohm, BwSeries series)
{
  g_return_val_if_fail (ideal_ohm > 0 && isfinite (ideal_ohm), 0);
  double decade = pow (10, floor (log10 (ideal_ohm)) - 2);
  double best_ohm = 1000 * decade; /* the first value of the next decade */

  for (int i = 0; i < steps[series]; i++)
    {
      double candidate_ohm = value_at (series, i) * decade;
      if (fabs (log (candidate_ohm / ideal_ohm)) < fabs (log (best_ohm / ideal_ohm)))
        best_ohm = candidate_ohm;
    }
  return best_ohm;
}

/**
 * bw_series_resistor_ohm:
 * @open_v: voltage of the driver without load
 * @driver_ohm: the driver's own resistance
 * @load_ohm: the input's
 * @wanted_v: voltage wanted across @load_ohm, greater than zero
 *
 * A divider of the driver's resistance, the added resistor and the load:
 * R = load × (open / wanted − 1) − driver.
 *
 * Returns: the resistor to add, in ohms; zero or less if none can help
 */
double
bw_series_resistor_ohm (double open_v, double driver_ohm, double load_ohm, double wanted_v)
{
  return load_ohm * (open_v / wanted_v - 1) - driver_ohm;
}
