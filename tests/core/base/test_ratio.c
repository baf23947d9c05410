/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/base/ratio.h"
#include "support.h"

/* A ratio is kept in lowest terms with a positive denominator, exact or refused. */

typedef struct
{
  const char *name;
  gint64 num;
  gint64 den;
  gboolean fits;
  BwRatio lowest;
} MakeCase;

static const MakeCase make_cases[] = {
  { "lowest-terms", 6, 4, TRUE, { 3, 2 } },
  { "whole", 286, 143, TRUE, { 2, 1 } },
  { "zero", 0, 7, TRUE, { 0, 1 } },
  { "negative-denominator", 3, -6, TRUE, { -1, 2 } },
  { "both-negative", -3, -6, TRUE, { 1, 2 } },
  { "zero-denominator", 1, 0, FALSE, { 0, 0 } },
  { "largest", G_MAXINT64, 1, TRUE, { G_MAXINT64, 1 } },
  { "largest-both", G_MAXINT64, G_MAXINT64, TRUE, { 1, 1 } },
  { "least-has-no-negative", G_MININT64, -1, FALSE, { 0, 0 } },
  { "least-halved", G_MININT64, 2, TRUE, { G_MININT64 / 2, 1 } },
  { "least-itself", G_MININT64, 1, FALSE, { 0, 0 } },
};

static void
test_make (gconstpointer data)
{
  const MakeCase *c = data;
  BwRatio ratio = { 12, 34 };

  g_assert_cmpint (bw_ratio_make (c->num, c->den, &ratio), ==, c->fits);
  g_assert_cmpint (ratio.num, ==, c->fits ? c->lowest.num : 12);
  g_assert_cmpint (ratio.den, ==, c->fits ? c->lowest.den : 34);
}

typedef struct
{
  const char *name;
  gboolean divide;
  BwRatio a;
  BwRatio b;
  gboolean fits;
  BwRatio result;
} ArithmeticCase;

static const ArithmeticCase arithmetic_cases[] = {
  /* SMPTE 170M-2004 11.2: line rate 2/455 of the subcarrier, which is 5 MHz × 63/88; so is
   * 4.5 MHz/286 = 2 250 000/143 Hz */
  { "525-line-rate", FALSE, { 5000000 * 63 / 8, 11 }, { 2, 455 }, TRUE, { 2250000, 143 } },
  { "525-line-rate-again", TRUE, { 4500000, 1 }, { 286, 1 }, TRUE, { 2250000, 143 } },
  /* SMPTE 170M-2004 11.3: field rate 2/525 of the line rate = 60/1.001 Hz */
  { "525-field-rate", FALSE, { 2250000, 143 }, { 2, 525 }, TRUE, { 60000, 1001 } },
  /* ITU-R BT.470-6: 625 lines, 25 frames */
  { "625-line-rate", FALSE, { 625, 1 }, { 25, 1 }, TRUE, { 15625, 1 } },
  /* CTA-861-H: 74.25 MHz / 1.001 over 2200 pixels and 1125 lines, two fields */
  { "1125-clock", FALSE, { 74250000, 1 }, { 1000, 1001 }, TRUE, { 6750000000, 91 } },
  { "1125-line-rate", TRUE, { 6750000000, 91 }, { 2200, 1 }, TRUE, { 33750000, 1001 } },
  { "one-third-times-three", FALSE, { 1, 3 }, { 3, 1 }, TRUE, { 1, 1 } },
  { "by-zero", TRUE, { 1, 3 }, { 0, 1 }, FALSE, { 0, 0 } },
  { "zero-by", TRUE, { 0, 1 }, { 7, 3 }, TRUE, { 0, 1 } },
  { "negative", TRUE, { 1, 2 }, { -3, 4 }, TRUE, { -2, 3 } },
  { "too-large", FALSE, { G_MAXINT64, 1 }, { 2, 1 }, FALSE, { 0, 0 } },
  { "too-fine", TRUE, { 1, G_MAXINT64 }, { 2, 1 }, FALSE, { 0, 0 } },
  /* 128-bit products in between, a result that fits */
  { "large-between", FALSE, { G_MAXINT64, 3 }, { 3, G_MAXINT64 }, TRUE, { 1, 1 } },
};

static void
test_arithmetic (gconstpointer data)
{
  const ArithmeticCase *c = data;
  BwRatio result = { 12, 34 };
  gboolean fits = c->divide ? bw_ratio_divide (c->a, c->b, &result)
                            : bw_ratio_multiply (c->a, c->b, &result);

  g_assert_cmpint (fits, ==, c->fits);
  g_assert_cmpint (result.num, ==, c->fits ? c->result.num : 12);
  g_assert_cmpint (result.den, ==, c->fits ? c->result.den : 34);
}

typedef struct
{
  const char *name;
  BwRatio a;
  BwRatio b;
  int order;
} CompareCase;

static const CompareCase compare_cases[] = {
  { "equal", { 60000, 1001 }, { 60000, 1001 }, 0 },
  { "59.94-is-not-60-over-1.001", { 5994, 100 }, { 60000, 1001 }, -1 },
  { "less", { -1, 2 }, { 1, 3 }, -1 },
  { "greater", { 2250000, 143 }, { 15734, 1 }, 1 },
  /* alike as doubles, and yet not equal */
  { "closer-than-a-double",
    { G_MAXINT64, G_MAXINT64 - 1 },
    { G_MAXINT64 - 1, G_MAXINT64 - 2 },
    -1 },
};

static void
test_compare (gconstpointer data)
{
  const CompareCase *c = data;
  int order = bw_ratio_compare (c->a, c->b);
  int reverse = bw_ratio_compare (c->b, c->a);

  g_assert_cmpint ((order > 0) - (order < 0), ==, c->order);
  g_assert_cmpint ((reverse > 0) - (reverse < 0), ==, -c->order);
}

/* SMPTE 170M-2004 11.3 and ITU-R BT.470-6 table 1 print these to more places than a double has. */
static void
test_to_double (void)
{
  g_assert_cmpfloat (bw_ratio_to_double ((BwRatio){ 60000, 1001 }), ==, 59.94005994005994);
  g_assert_cmpfloat (bw_ratio_to_double ((BwRatio){ 15625, 1 }), ==, 15625.0);
  g_assert_cmpfloat (bw_ratio_to_double (BW_RATIO_NONE), ==, 0.0);
  g_assert_true (bw_ratio_is_none (BW_RATIO_NONE));
  g_assert_false (bw_ratio_is_none ((BwRatio){ 1, G_MAXINT64 }));
}

static gint64
common_divisor (gint64 a, gint64 b)
{
  return b == 0 ? ABS (a) : common_divisor (b, a % b);
}

static BwRatio
random_ratio (GRand *rand)
{
  BwRatio ratio = BW_RATIO_NONE;
  bw_ratio_make (g_rand_int_range (rand, -1000000, 1000000), g_rand_int_range (rand, 1, 1000000),
                 &ratio);
  return ratio;
}

/* (a × b) / b is a, in lowest terms, and order agrees with the difference of cross products. */
static void
test_random (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (1);
  for (guint i = 0; i < 100000 && !g_test_failed (); i++)
    {
      BwRatio a = random_ratio (rand), b = random_ratio (rand), product, back;
      gint64 cross = a.num * b.den - b.num * a.den;

      g_assert_true (bw_ratio_multiply (a, b, &product));
      g_assert_cmpint (common_divisor (product.num, product.den), ==, 1);
      g_assert_cmpint (product.den, >, 0);
      g_assert_cmpint (bw_ratio_compare (a, b), ==, (cross > 0) - (cross < 0));
      if (bw_ratio_is_none (b))
        continue;
      g_assert_true (bw_ratio_divide (product, b, &back));
      g_assert_cmpint (bw_ratio_compare (back, a), ==, 0);
    }
}

static void
add (const char *group, const char *name, gconstpointer data, GTestDataFunc func)
{
  g_autofree char *path = g_strdup_printf ("/ratio/%s/%s", group, name);
  g_test_add_data_func (path, data, func);
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  for (gsize i = 0; i < G_N_ELEMENTS (make_cases); i++)
    add ("make", make_cases[i].name, &make_cases[i], test_make);
  for (gsize i = 0; i < G_N_ELEMENTS (arithmetic_cases); i++)
    add ("arithmetic", arithmetic_cases[i].name, &arithmetic_cases[i], test_arithmetic);
  for (gsize i = 0; i < G_N_ELEMENTS (compare_cases); i++)
    add ("compare", compare_cases[i].name, &compare_cases[i], test_compare);
  g_test_add_func ("/ratio/to-double", test_to_double);
  g_test_add_func ("/ratio/random", test_random);
  return g_test_run ();
}
