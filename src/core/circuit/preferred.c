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

/* The power of ten that makes of value_at() the values of the decade that @value lies in. */
static int
decade_of (double value)
{
  return (int) floor (log10 (value)) - 2;
}

/* Value @i of @series in that decade. A negative power of ten has no exact binary form, so its
 * inverse divides instead: 220 nF is then the very number that a person types. */
static double
value_in (BwSeries series, int i, int decade)
{
  double value = i < steps[series] ? value_at (series, i) : 1000; /* first of the next decade */
  return decade < 0 ? value / pow (10, -decade) : value * pow (10, decade);
}

/**
 * bw_preferred_value:
 * @ideal: the computed value in any unit, greater than zero
 *
 * Returns: the value of @series nearest to @ideal by ratio, in the same unit
 */
double
bw_preferred_value (double ideal, BwSeries series)
{
  g_return_val_if_fail (ideal > 0 && isfinite (ideal) && series < BW_N_SERIES, 0);
  int decade = decade_of (ideal);
  double best = value_in (series, steps[series], decade);

  for (int i = 0; i < steps[series]; i++)
    {
      double candidate = value_in (series, i, decade);
      if (fabs (log (candidate / ideal)) < fabs (log (best / ideal)))
        best = candidate;
    }
  return best;
}

/* A computed value that is one of the series but for its last digits is not rounded up. */
#define ROUNDING 1e-9

/**
 * bw_preferred_value_from:
 * @least: in any unit, greater than zero
 *
 * Returns: the smallest value of @series that is not less than @least, in the same unit
 */
double
bw_preferred_value_from (double least, BwSeries series)
{
  g_return_val_if_fail (least > 0 && isfinite (least) && series < BW_N_SERIES, 0);
  int decade = decade_of (least), i = 0;

  while (i < steps[series] && value_in (series, i, decade) < least * (1 - ROUNDING))
    i++;
  return value_in (series, i, decade);
}

/* Capacitors with liquid are made in E6 (IEC 60063), which is every fourth value of E24. */
#define E6_STEP 4

/**
 * bw_preferred_capacitor:
 * @ideal: in any unit, greater than zero
 *
 * Returns: the value of E6 nearest to @ideal by ratio, in the same unit
 */
double
bw_preferred_capacitor (double ideal)
{
  g_return_val_if_fail (ideal > 0 && isfinite (ideal), 0);
  int decade = decade_of (ideal);
  double best = 0;

  for (int i = 0; i <= steps[BW_SERIES_E24]; i += E6_STEP)
    {
      double candidate = value_in (BW_SERIES_E24, i, decade);
      if (!(best > 0) || fabs (log (candidate / ideal)) < fabs (log (best / ideal)))
        best = candidate;
    }
  return best;
}
