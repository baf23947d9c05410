/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/base/view-range.h"

#include <math.h>

#define NEAR 1e-12

static BwViewRange
range_of (double low, double high, double least)
{
  BwViewRange range;
  bw_view_range_init (&range, low, high, least);
  return range;
}

static void
assert_shows (const BwViewRange *range, double from, double to)
{
  g_assert_cmpfloat_with_epsilon (range->from, from, NEAR);
  g_assert_cmpfloat_with_epsilon (range->to, to, NEAR);
}

static void
test_init (void)
{
  BwViewRange range = range_of (-2, 6, 0.5);
  g_assert_true (bw_view_range_is_whole (&range));
  assert_shows (&range, -2, 6);
  range = range_of (0, 1, 5);
  g_assert_cmpfloat_with_epsilon (range.least, 1, NEAR);
}

static void
test_show (void)
{
  BwViewRange range = range_of (-2, 6, 0.5);
  bw_view_range_show (&range, 1, 3);
  assert_shows (&range, 1, 3);
  g_assert_false (bw_view_range_is_whole (&range));
  bw_view_range_show (&range, 3, 1);
  assert_shows (&range, 1, 3);
  bw_view_range_show (&range, 5, 9); /* as long, and inside */
  assert_shows (&range, 2, 6);
  bw_view_range_show (&range, -9, -8);
  assert_shows (&range, -2, -1);
  bw_view_range_show (&range, 2, 2.1); /* too little: about its middle */
  assert_shows (&range, 1.8, 2.3);
  bw_view_range_show (&range, -50, 50);
  g_assert_true (bw_view_range_is_whole (&range));
}

/* What is under the pointer stays there. */
static void
test_zoom (void)
{
  BwViewRange range = range_of (0, 16, 1);
  bw_view_range_zoom (&range, 4, 2);
  assert_shows (&range, 2, 10);
  g_assert_cmpfloat_with_epsilon (bw_view_range_place (&range, 4, 0, 100), 25, NEAR);
  bw_view_range_zoom (&range, 4, 2);
  assert_shows (&range, 3, 7);
  bw_view_range_zoom (&range, 4, 0.5);
  assert_shows (&range, 2, 10);
  bw_view_range_zoom (&range, 2, 100); /* to the least */
  assert_shows (&range, 2, 3);
  bw_view_range_zoom (&range, 2.5, 1e-6);
  g_assert_true (bw_view_range_is_whole (&range));
}

/* Out again near an end of the axis: the end stays at the edge. */
static void
test_zoom_at_an_end (void)
{
  BwViewRange range = range_of (0, 16, 1);
  bw_view_range_show (&range, 0, 2);
  bw_view_range_zoom (&range, 1.5, 0.5);
  assert_shows (&range, 0, 4);
  bw_view_range_zoom (&range, 40, 2); /* about a point that is not shown: about the edge */
  assert_shows (&range, 2, 4);
}

static void
test_pan (void)
{
  BwViewRange range = range_of (0, 16, 1);
  bw_view_range_show (&range, 4, 8);
  bw_view_range_pan (&range, 3);
  assert_shows (&range, 7, 11);
  bw_view_range_pan (&range, 30);
  assert_shows (&range, 12, 16);
  bw_view_range_pan (&range, -30);
  assert_shows (&range, 0, 4);
}

static void
test_place_and_value (void)
{
  BwViewRange range = range_of (0, 16, 1);
  bw_view_range_show (&range, 4, 8);
  g_assert_cmpfloat_with_epsilon (bw_view_range_place (&range, 5, 10, 50), 20, NEAR);
  g_assert_cmpfloat_with_epsilon (bw_view_range_place (&range, 3, 10, 50), 0, NEAR);
  g_assert_cmpfloat_with_epsilon (bw_view_range_value (&range, 20, 10, 50), 5, NEAR);
  g_assert_cmpfloat_with_epsilon (bw_view_range_value (&range, 50, 10, 50), 8, NEAR);
}

/* Whatever is asked, what is shown lies on the axis and is not less than the least. */
static void
test_any_moves (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (20);

  for (guint i = 0; i < 200; i++)
    {
      double low = g_rand_double_range (rand, -1e-3, 1e-3);
      double length = pow (10, g_rand_double_range (rand, -7, 1));
      BwViewRange range = range_of (low, low + length,
                                    length * g_rand_double_range (rand, 1e-4, 2));
      for (guint k = 0; k < 50; k++)
        {
          double about = low + length * g_rand_double_range (rand, -1, 2);
          switch (g_rand_int_range (rand, 0, 3))
            {
            case 0:
              bw_view_range_zoom (&range, about, pow (10, g_rand_double_range (rand, -4, 4)));
              break;
            case 1:
              bw_view_range_pan (&range, about);
              break;
            default:
              bw_view_range_show (&range, about, low + length * g_rand_double_range (rand, -1, 2));
              break;
            }
          g_assert_cmpfloat (range.from, >=, range.low);
          g_assert_cmpfloat (range.to, <=, range.high);
          g_assert_cmpfloat (range.to - range.from, >=, range.least * (1 - 1e-9) - 1e-15);
        }
    }
}

/* A later drawing of the same axis shows the same part; one of another axis, or after the whole, shows
 * the whole. */
static void
test_show_as (void)
{
  BwViewRange before, same, other;
  bw_view_range_init (&before, 0, 64, 1);
  bw_view_range_init (&same, 0, 64, 1);
  bw_view_range_init (&other, 0, 63.5, 1);

  bw_view_range_show_as (&same, &before);
  g_assert_true (bw_view_range_is_whole (&same));
  bw_view_range_show (&before, 10, 20);
  bw_view_range_show_as (&same, &before);
  g_assert_cmpfloat (same.from, ==, 10);
  g_assert_cmpfloat (same.to, ==, 20);
  bw_view_range_show_as (&other, &before);
  g_assert_true (bw_view_range_is_whole (&other));
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/draw/view-range/init", test_init);
  g_test_add_func ("/draw/view-range/show", test_show);
  g_test_add_func ("/draw/view-range/zoom", test_zoom);
  g_test_add_func ("/draw/view-range/zoom-at-an-end", test_zoom_at_an_end);
  g_test_add_func ("/draw/view-range/pan", test_pan);
  g_test_add_func ("/draw/view-range/place-and-value", test_place_and_value);
  g_test_add_func ("/draw/view-range/any-moves", test_any_moves);
  g_test_add_func ("/draw/view-range/show-as", test_show_as);
  return g_test_run ();
}
