/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/circuit/preferred.h"

#include <math.h>

#include "core/base/quantity.h"
#include "support.h"

static void
add (const char *group, const char *name, gconstpointer data, GTestDataFunc func)
{
  g_autofree char *path = g_strdup_printf ("/preferred/%s/%s", group, name);
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
            bw_near (bw_preferred_value (value_ohm, c->series), value_ohm, 1e-12 * value_ohm));
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
      g_assert_true (bw_near (bw_preferred_value (border_ohm * 0.9999, c->series), low_ohm, 1e-6));
      g_assert_true (bw_near (bw_preferred_value (border_ohm * 1.0001, c->series), high_ohm, 1e-6));
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
  double preferred_ohm = bw_preferred_value (c->ideal_ohm, c->series);
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
      double off = bw_preferred_value (ideal_ohm, series) / ideal_ohm;
      g_assert_cmpfloat (MAX (off, 1 / off), <, sqrt (widest[series]));
    }
}

/* The next value up; a value of the series, or one that rounding has put a little over it, is its
 * own. Capacitors in farads: IEC 60063, E12. */
static void
test_from (void)
{
  static const struct
  {
    double least;
    BwSeries series;
    double value;
  } cases[] = {
    { 1000, BW_SERIES_E24, 1000 },     { 1001, BW_SERIES_E24, 1100 },
    { 820.1, BW_SERIES_E12, 1000 },    { 2.2e-6, BW_SERIES_E12, 2.2e-6 },
    { 2.3e-6, BW_SERIES_E12, 2.7e-6 }, { 47.0000000001e-9, BW_SERIES_E12, 47e-9 },
    { 34.5e-6, BW_SERIES_E12, 39e-6 }, { 331e-12, BW_SERIES_E12, 390e-12 },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    g_assert_cmpfloat (bw_preferred_value_from (cases[i].least, cases[i].series), ==,
                       cases[i].value);
}

/* Farads are as near to their series as ohms: 220 nF is the number that is written so. */
static void
test_farads (void)
{
  g_assert_cmpfloat (bw_preferred_value (213e-9, BW_SERIES_E12), ==, 220e-9);
  g_assert_cmpfloat (bw_preferred_value (45e-6, BW_SERIES_E12), ==, 47e-6);
  g_assert_cmpfloat (bw_preferred_value (4.6e-12, BW_SERIES_E24), ==, 4.7e-12);
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
  add ("random", "e12", GUINT_TO_POINTER (BW_SERIES_E12), test_random);
  add ("random", "e24", GUINT_TO_POINTER (BW_SERIES_E24), test_random);
  add ("random", "e96", GUINT_TO_POINTER (BW_SERIES_E96), test_random);
  g_test_add_func ("/preferred/from", test_from);
  g_test_add_func ("/preferred/farads", test_farads);
  return g_test_run ();
}
