/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "scale.h"

#include <math.h>

#define SLACK 1e-9 /* of rounding, as a share */

/**
 * bw_nice_tick:
 * @least: greater than zero
 *
 * Returns: the smallest of 1, 2, 5 × a power of ten that is not less than @least
 */
double
bw_nice_tick (double least)
{
  static const double steps[] = { 1, 2, 5 };
  double power = pow (10, floor (log10 (least)));
  for (guint i = 0; i < G_N_ELEMENTS (steps); i++)
    if (steps[i] * power >= least * (1 - SLACK))
      return steps[i] * power;
  return 10 * power;
}

/**
 * bw_nice_end:
 * @least: greater than zero
 *
 * Returns: an end for a scale from zero that must show @least: a fifth of a nice tick above it
 */
double
bw_nice_end (double least)
{
  double step = bw_nice_tick (least) / 10;
  return ceil (least / step) * step;
}

/**
 * bw_first_tick:
 * @tick: from one tick to the next, greater than zero
 *
 * Returns: the first multiple of @tick that is not below @from
 */
double
bw_first_tick (double from, double tick)
{
  return ceil (from / tick - SLACK) * tick;
}

/**
 * bw_tick_text:
 * @figure: a multiple of @tick
 * @mark: the decimal mark
 *
 * Returns: (transfer full): @figure with as many decimals as @tick needs
 */
char *
bw_tick_text (double figure, double tick, char mark)
{
  char number[G_ASCII_DTOSTR_BUF_SIZE], format[8];
  int decimals = (int) fmax (0, -floor (log10 (tick) + SLACK));

  g_snprintf (format, sizeof format, "%%.%df", decimals);
  g_ascii_formatd (number, sizeof number, format, fabs (figure) < tick / 2 ? 0 : fabs (figure));
  g_strdelimit (number, ".", mark);
  return g_strconcat (figure <= -tick / 2 ? "−" : "", number, NULL);
}
