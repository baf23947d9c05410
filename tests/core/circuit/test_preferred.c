/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/circuit/preferred.h"

#include <math.h>

#include "core/base/quantity.h"
#include "core/circuit/level.h"
#include "support.h"

static void
add (const char *group, const char *name, gconstpointer data, GTestDataFunc func)
{
  g_autofree char *path = g_strdup_printf ("/hookup/%s/%s", group, name);
  g_test_add_data_func (path, data, func);
}

/* Preferred values: IEC 60063, tables of E12 and E24. E96 is 10^(i/96) rounded to three figures,
 * of which ten in the middle of the decade stand here as printed. */

static const double e12[] = { 1.0, 1.2, 1.5, 1.8, 2.2, 2.7, 3.3, 3.9, 4.7, 5.6, 6.8, 8.2 };
static const double e24[] = { 1.0, 1.1, 1.2, 1.3, 1.5, 1.6, 1.8, 2.0, 2.2, 2.4, 2.7, 3.0,
                              3.3, 3.6, 3.9, 4.3, 4.7, 5.1, 5.6, 6.2, 6.8, 7.5, 8.2, 9.1 };
static const double e96_part[] = { 2.94, 3.01, 3.09, 3.16, 3.24, 3.32, 3.40, 3.48, 3.57, 3.65 };

typedef struct
{
  const char *name;
  BwSeries series;
  const double *values;
  gsize n;
} SeriesCase;

static const SeriesCase series_cases[] = {
  { "e12", BW_SERIES_E12, e12, G_N_ELEMENTS (e12) },
  { "e24", BW_SERIES_E24, e24, G_N_ELEMENTS (e24) },
  { "e96-part", BW_SERIES_E96, e96_part, G_N_ELEMENTS (e96_part) },
};

/* Each value is its own nearest, in every decade. */
static void
test_own_nearest (gconstpointer data)
{
  const SeriesCase *c = data;
  for (int decade = -1; decade <= 7; decade++)
    for (gsize i = 0; i < c->n; i++)
      {
        double value_ohm = c->values[i] * pow (10, decade);
        g_assert_true (
            bw_near (bw_preferred_ohm (value_ohm, c->series), value_ohm, 1e-12 * value_ohm));
      }
}

/* Between two neighbours the border is their geometric mean: nearest by ratio. */
static void
test_border (gconstpointer data)
{
  const SeriesCase *c = data;
  for (gsize i = 0; i + 1 < c->n; i++)
    {
      double low_ohm = c->values[i] * 1000, high_ohm = c->values[i + 1] * 1000;
      double border_ohm = sqrt (low_ohm * high_ohm);
      g_assert_true (bw_near (bw_preferred_ohm (border_ohm * 0.9999, c->series), low_ohm, 1e-6));
      g_assert_true (bw_near (bw_preferred_ohm (border_ohm * 1.0001, c->series), high_ohm, 1e-6));
    }
}

typedef struct
{
  const char *name;
  double ideal_ohm;
  BwSeries series;
  double preferred_ohm;
} NearestCase;

static const NearestCase nearest_cases[] = {
  /* By ratio: √(1.2 × 1.5) = 1.3416; by difference it would be 1.2 kΩ, below 1.35. */
  { "1345-ohm-is-1.5-kilohm-in-e12", 1345, BW_SERIES_E12, 1500 },
  { "1341-ohm-is-1.2-kilohm-in-e12", 1341, BW_SERIES_E12, 1200 },
  /* The end of the decade: √(8.2 × 10) = 9.055, √(9.1 × 10) = 9.539. */
  { "9.05-in-e12", 905, BW_SERIES_E12, 820 },
  { "9.1-in-e12-is-the-next-decade", 910, BW_SERIES_E12, 1000 },
  { "9.9-in-e12-is-the-next-decade", 990, BW_SERIES_E12, 1000 },
  { "9.53-in-e24", 953, BW_SERIES_E24, 910 },
  { "9.55-in-e24-is-the-next-decade", 955, BW_SERIES_E24, 1000 },
  { "9.9-in-e24-is-the-next-decade", 99, BW_SERIES_E24, 100 },
  { "9.9-in-e96-is-the-next-decade", 9.9, BW_SERIES_E96, 10 },
  { "exactly-a-decade", 1000, BW_SERIES_E24, 1000 },
};

static void
test_nearest (gconstpointer data)
{
  const NearestCase *c = data;
  double preferred_ohm = bw_preferred_ohm (c->ideal_ohm, c->series);
  g_assert_true (bw_near (preferred_ohm, c->preferred_ohm, 1e-9 * c->preferred_ohm));
}

/* Never further off than half a step of the series, at any size. */
static void
test_random (gconstpointer data)
{
  BwSeries series = (BwSeries) GPOINTER_TO_UINT (data);
  /* just above the widest step of each series: 1.8 to 2.2, 1.3 to 1.5, 1.33 to 1.37 */
  static const double widest[BW_N_SERIES] = { 1.25, 1.16, 1.031 };
  g_autoptr (GRand) rand = g_rand_new_with_seed (3 + series);

  for (guint i = 0; i < 100000 && !g_test_failed (); i++)
    {
      double ideal_ohm = pow (10, g_rand_double_range (rand, -2, 7));
      double off = bw_preferred_ohm (ideal_ohm, series) / ideal_ohm;
      g_assert_cmpfloat (MAX (off, 1 / off), <, sqrt (widest[series]));
    }
}

/* Series resistors into a terminated 75 Ω input for 0.3 V: R = 75 (V / 0.3 − 1), the driver's own
 * resistance included (voltage divider; 0.3 V is the level of sync in ITU-R BT.1700). */

typedef struct
{
  const char *name;
  double open_v;
  double exact_ohm;
  double e12_ohm;
  double e12_v;
  double e24_ohm;
  double e24_v;
  double e96_ohm;
  double e96_v;
} AttenuatorCase;

static const AttenuatorCase attenuator_cases[] = {
  { "5-volt", 5.0, 1175, 1200, 0.2941, 1200, 0.2941, 1180, 0.2988 },
  { "4-volt", 4.0, 925, 1000, 0.2791, 910, 0.3046, 931, 0.2982 },
  { "3.4-volt", 3.4, 775, 820, 0.2849, 750, 0.3091, 768, 0.3025 },
  { "3.3-volt", 3.3, 750, 820, 0.2765, 750, 0.3000, 750, 0.3000 },
  { "2.4-volt", 2.4, 525, 560, 0.2835, 510, 0.3077, 523, 0.3010 },
  { "1-volt", 1.0, 175, 180, 0.2941, 180, 0.2941, 174, 0.3012 },
  { "0.6-volt", 0.6, 75, 82, 0.2866, 75, 0.3000, 75, 0.3000 },
};

static void
assert_preferred (double exact_ohm, BwSeries series, double open_v, double ohm, double level_v)
{
  double preferred_ohm = bw_preferred_ohm (exact_ohm, series);
  double got_v = bw_level_at_load (open_v, BW_LOAD_OPEN, preferred_ohm, 75);
  g_assert_true (bw_near (preferred_ohm, ohm, 1e-9 * ohm));
  g_assert_true (bw_near (got_v, level_v, 0.5e-4)); /* printed to 0.1 mV */
}

static void
test_attenuator (gconstpointer data)
{
  const AttenuatorCase *c = data;
  double ohm = bw_series_resistor_ohm (c->open_v, 0, 75, 0.3);

  g_assert_true (bw_near (ohm, c->exact_ohm, 1e-9));
  g_assert_true (bw_near (bw_series_resistor_ohm (c->open_v, 50, 75, 0.3), ohm - 50, 1e-9));
  assert_preferred (ohm, BW_SERIES_E12, c->open_v, c->e12_ohm, c->e12_v);
  assert_preferred (ohm, BW_SERIES_E24, c->open_v, c->e24_ohm, c->e24_v);
  assert_preferred (ohm, BW_SERIES_E96, c->open_v, c->e96_ohm, c->e96_v);
}

/* The peritelevision window for sync, 0.212 to 0.949 V (0.3 V −3/+10 dB), takes 320 to 1691 Ω from
 * 5 V. */
static void
test_window (void)
{
  double low_v = 0.3 * pow (10, -3 / 20.0), high_v = 0.3 * pow (10, 10 / 20.0);
  g_assert_true (bw_near (low_v, 0.212, 0.5e-3));
  g_assert_true (bw_near (high_v, 0.949, 0.5e-3));
  g_assert_true (bw_near (bw_series_resistor_ohm (5, 0, 75, high_v), 320, 0.5));
  g_assert_true (bw_near (bw_series_resistor_ohm (5, 0, 75, low_v), 1691, 1.5));
}

/* Too little to begin with: no resistor helps. */
static void
test_no_help (void)
{
  g_assert_cmpfloat (bw_series_resistor_ohm (0.3, 0, 75, 0.3), <=, 0);
  g_assert_cmpfloat (bw_series_resistor_ohm (0.2, 0, 75, 0.3), <, 0);
  g_assert_cmpfloat (bw_series_resistor_ohm (5, 5000, 75, 0.3), <, 0);
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  for (gsize i = 0; i < G_N_ELEMENTS (series_cases); i++)
    {
      add ("own-nearest", series_cases[i].name, &series_cases[i], test_own_nearest);
      add ("border", series_cases[i].name, &series_cases[i], test_border);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (nearest_cases); i++)
    add ("nearest", nearest_cases[i].name, &nearest_cases[i], test_nearest);
  for (gsize i = 0; i < G_N_ELEMENTS (attenuator_cases); i++)
    add ("attenuator", attenuator_cases[i].name, &attenuator_cases[i], test_attenuator);
  add ("random", "e12", GUINT_TO_POINTER (BW_SERIES_E12), test_random);
  add ("random", "e24", GUINT_TO_POINTER (BW_SERIES_E24), test_random);
  add ("random", "e96", GUINT_TO_POINTER (BW_SERIES_E96), test_random);
  g_test_add_func ("/hookup/window", test_window);
  g_test_add_func ("/hookup/no-help", test_no_help);
  return g_test_run ();
}
