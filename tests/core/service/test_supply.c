/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Reservoir ripple against a stepped rectifier, and hum bars against arithmetic on two rates. */
#include <math.h>

#include "core/raster/hum.h"
#include "core/service/supply.h"
#include "support.h"

/* An ideal rectifier and a constant current, in steps, until it repeats: lowest voltage of the last
 * period. */
static double
stepped_ripple (double peak_v, double hz, double farad, double ampere, gboolean half_wave)
{
  const int steps = 20000;
  double h = 1 / hz / steps, across = 0, low = peak_v, high = 0;
  for (int i = 0; i < 6 * steps; i++)
    {
      double wave = peak_v * sin (2 * G_PI * i / steps);
      across = MAX (across - h * ampere / farad, half_wave ? wave : fabs (wave));
      if (i < 5 * steps)
        continue;
      low = MIN (low, across);
      high = MAX (high, across);
    }
  return high - low;
}

/* Rule and exact, as published beside each other: 325 V, 220 µF, 0.4 A: 18.2 and 16.3 V; 25 V, 2200 µF, 1 A: 4.55
 * and 3.71 V, both at 50 Hz and full wave. */
static const struct
{
  double peak_v;
  double hz;
  double farad;
  double ampere;
  gboolean half_wave;
  double rule_v;
  double ripple_v; /* zero: of the stepped one alone */
} ripples[] = {
  { 325, 50, 220e-6, 0.4, FALSE, 18.18, 16.29 }, { 25, 50, 2200e-6, 1, FALSE, 4.545, 3.706 },
  { 325, 60, 100e-6, 0.2, TRUE, 33.33, 0 },      { 170, 60, 470e-6, 0.8, FALSE, 14.18, 0 },
  { 325, 50, 47e-6, 0.4, TRUE, 170.2, 0 },
};

static void
test_ripple (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (ripples); i++)
    {
      BwReservoir reservoir = { ripples[i].farad, ripples[i].ampere, ripples[i].half_wave };
      BwRipple ripple;
      g_assert_true (bw_reservoir_ripple (&reservoir, ripples[i].peak_v / G_SQRT2, ripples[i].hz, &ripple));
      bw_test_near (ripple.rule_v, ripples[i].rule_v, ripples[i].rule_v * 5e-4);
      bw_test_near (ripple.ripple_v,
                    stepped_ripple (ripples[i].peak_v, ripples[i].hz, ripples[i].farad,
                                    ripples[i].ampere, ripples[i].half_wave),
                    ripple.ripple_v * 2e-3);
      if (ripples[i].ripple_v > 0)
        bw_test_near (ripple.ripple_v, ripples[i].ripple_v, 5e-3);
      bw_test_near (ripple.peak_v, ripples[i].peak_v, 1e-9);
      bw_test_near (ripple.lowest_v, ripple.peak_v - ripple.ripple_v, 1e-9);
    }
}

/* What cannot last from one wave to the next is told, and not made a number. */
static void
test_empty (void)
{
  BwRipple ripple = { .ripple_v = 7 };
  g_assert_false (bw_reservoir_ripple (&(BwReservoir){ 1e-6, 1, FALSE }, 230, 50, &ripple));
  g_assert_false (bw_reservoir_ripple (&(BwReservoir){ 18e-6, 0.4, TRUE }, 230, 50, &ripple));
  g_assert_false (bw_reservoir_ripple (&(BwReservoir){ 1e-9, 10, FALSE }, 230, 50, &ripple));
  bw_test_near (ripple.ripple_v, 7, 0);
}

/* Arithmetic on two rates: bars n = round (fm/fv), time for the height fm/(fv·|fm − n·fv|); up where the mains is
 * faster (glossary of a tape archive: "rolls from the bottom to the top"). */
static const struct
{
  double mains_hz;
  double field_hz;
  guint bars;
  double height_s; /* zero: it stands still */
  int direction;
} hums[] = {
  { 60, 59.94006, 1, 16.70, 1 }, { 50.05, 50, 1, 20.02, 1 },
  { 49.95, 50, 1, 19.98, -1 },   { 60, 60.0988, 1, 10.10, -1 },
  { 50, 50, 1, 0, 0 },           { 50, 59.94006, 1, 0.0839, -1 },
  { 60, 50, 1, 0.12, 1 },         { 60, 29.97003, 2, 33.4, 1 },
};

static void
test_hum (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (hums); i++)
    {
      BwHum hum;
      bw_hum (hums[i].mains_hz, hums[i].field_hz, &hum);
      g_assert_cmpuint (hum.bars, ==, hums[i].bars);
      g_assert_cmpint (hum.direction, ==, hums[i].direction);
      bw_test_near (hum.beat_hz, fabs (hums[i].mains_hz - hums[i].bars * hums[i].field_hz), 1e-9);
      if (hums[i].height_s > 0)
        bw_test_near (hum.height_s, hums[i].height_s, hums[i].height_s * 1e-3);
      else
        g_assert_true (isinf (hum.height_s));
    }
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  g_test_add_func ("/supply/ripple", test_ripple);
  g_test_add_func ("/supply/empty", test_empty);
  g_test_add_func ("/supply/hum", test_hum);
  return g_test_run ();
}
