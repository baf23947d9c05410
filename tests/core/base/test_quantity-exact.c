/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is written reads back as exactly the same number, for made-up numbers of every dimension. */
#include "core/base/quantity.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "properties.h"
#include "support.h"

static void
add (const char *group, const char *name, gconstpointer data, GTestDataFunc func)
{
  g_autofree char *path = g_strdup_printf ("/quantity-exact/%s/%s", group, name);
  g_test_add_data_func (path, data, func);
}

/* Made-up numbers: 2^-40 to 2^40 of the base unit and either sign, with all bits of the double in
 * use. */
static double
random_value (GRand *rand)
{
  double mantissa = 1 + g_rand_double (rand);
  double value = ldexp (mantissa, g_rand_int_range (rand, -40, 40));
  return g_rand_boolean (rand) ? value : -value;
}

/* Numbers that are hard to write: decimals as people type them, in whole powers of ten and of two,
 * and the doubles next to those, which need all 17 digits. */
static double
hard_value (GRand *rand)
{
  double value = g_rand_int_range (rand, 1, 100000) * pow (10, g_rand_int_range (rand, -15, 9));
  int step = g_rand_int_range (rand, -2, 3);
  if (g_rand_boolean (rand))
    value = ldexp (1, g_rand_int_range (rand, -40, 40));
  for (int i = 0; i < abs (step); i++)
    value = nextafter (value, step > 0 ? INFINITY : 0);
  return g_rand_boolean (rand) ? value : -value;
}

static void
assert_reads_back (const char *text, BwDimension dimension, char mark, double value)
{
  double back = 0;
  if (text != NULL && bw_quantity_parse (text, dimension, mark, &back, NULL)
      && memcmp (&back, &value, sizeof back) == 0)
    return;
  g_test_message ("%.17g: “%s” reads back as %.17g", value, text, back);
  g_test_fail ();
}

/* Every way of writing is met within some hundred numbers: 15, 16 or 17 digits, the unit tried first or
 * another one, an exponent. */
#define ROUND_TRIPS 4000u

static void
test_round_trip (gconstpointer data)
{
  BwDimension dimension = (BwDimension) GPOINTER_TO_UINT (data);
  g_autoptr (GRand) rand = g_rand_new_with_seed (100 + dimension);

  for (guint i = 0; i < ROUND_TRIPS && !g_test_failed (); i++)
    {
      double value = i % 2 == 0 ? random_value (rand) : hard_value (rand);
      char mark = i % 4 < 2 ? '.' : ',';
      g_autofree char *file = bw_quantity_to_file (value, dimension, NULL);
      g_autofree char *entry = bw_quantity_to_entry (value, dimension, NULL, mark);
      assert_reads_back (file, dimension, BW_FILE_MARK, value);
      assert_reads_back (entry, dimension, mark, value);
    }
}

/* Whatever double can be read can be written and read back: no number is taken that the next save
 * would lose. */
static void
test_extremes (gconstpointer data)
{
  BwDimension dimension = (BwDimension) GPOINTER_TO_UINT (data);
  for (int exponent = -330; exponent <= 330; exponent++)
    {
      g_autofree char *text = g_strdup_printf ("-1.2345678901234567e%d %s", exponent,
                                               bw_quantity_base_unit (dimension));
      double value;
      if (!bw_quantity_parse (text, dimension, '.', &value, NULL))
        continue;
      g_autofree char *file = bw_quantity_to_file (value, dimension, NULL);
      g_autofree char *shown = bw_quantity_format (value, dimension, 5, '.');
      assert_reads_back (file, dimension, BW_FILE_MARK, value);
      g_assert_true (bw_property_plain (shown));
    }
}

static gboolean
has_exponent (const char *text)
{
  const char *e = strpbrk (text, "eE");
  return e != NULL && e > text && g_ascii_isdigit (e[-1]);
}

/* What is shown has no exponent and is a number. */
static void
test_format_random (gconstpointer data)
{
  BwDimension dimension = (BwDimension) GPOINTER_TO_UINT (data);
  g_autoptr (GRand) rand = g_rand_new_with_seed (200 + dimension);

  for (guint i = 0; i < 4000 && !g_test_failed (); i++)
    {
      double value = random_value (rand);
      int digits = g_rand_int_range (rand, 1, 15);
      g_autofree char *text = bw_quantity_format (value, dimension, digits, '.');
      double back;
      g_assert_false (has_exponent (text));
      g_assert_true (bw_property_plain (text));
      g_assert_true (bw_quantity_parse (text, dimension, '.', &back, NULL));
      g_assert_cmpfloat (fabs (back - value), <=, fabs (value) * pow (10, 1 - digits) * 0.501);
    }
}

static void
test_ratio_random (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (2);
  for (guint i = 0; i < 4000 && !g_test_failed (); i++)
    {
      BwRatio ratio = BW_RATIO_NONE, back = BW_RATIO_NONE;
      gint64 num = ((gint64) g_rand_int (rand) << (i % 10)) + 1;
      bw_ratio_make (num, g_rand_int_range (rand, 1, 2000), &ratio);
      g_autofree char *text = bw_quantity_format_ratio (ratio, BW_DIMENSION_FREQUENCY);
      g_assert_true (bw_quantity_parse_ratio (text, BW_DIMENSION_FREQUENCY, &back, NULL));
      g_assert_cmpint (bw_ratio_compare (back, ratio), ==, 0);
    }
}

static void
add_for_each_dimension (const char *group, GTestDataFunc func)
{
  static const char *const names[BW_N_DIMENSIONS] = {
    "frequency", "time",     "length",   "voltage", "ire",    "resistance",
    "capacitance", "current", "fraction", "tv-lines", "lines", "pixels",
    "inductance", "apparent-power", "energy", "duration", "temperature",
  };
  for (guint i = 0; i < BW_N_DIMENSIONS; i++)
    add (group, names[i], GUINT_TO_POINTER (i), func);
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  add_for_each_dimension ("format-random", test_format_random);
  add_for_each_dimension ("extremes", test_extremes);
  add_for_each_dimension ("round-trip", test_round_trip);
  g_test_add_func ("/quantity-exact/ratio-random", test_ratio_random);
  return g_test_run ();
}
