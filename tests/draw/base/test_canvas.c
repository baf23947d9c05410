/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/base/canvas.h"

#include "draw/base/dimline.h"
#include "support.h"

static const BwInk ink = { BW_THEME_LIGHT, NULL, 0 };

/* Random rows of things: none overlaps its neighbour or an end, the order stays, and nothing moves
 * that need not. */
static void
test_spread (void)
{
  for (int round = 0; round < 2000; round++)
    {
      double starts[6], wanted[6], widths[6], total = 0;
      guint n = (guint) g_test_rand_int_range (1, 7);
      gboolean free_already = TRUE;

      for (guint i = 0; i < n; i++)
        {
          widths[i] = g_test_rand_double_range (5, 15);
          total += widths[i] + 1;
          wanted[i] = i == 0 ? g_test_rand_double_range (-10, 60)
                             : wanted[i - 1] + g_test_rand_double_range (0, 40);
          starts[i] = wanted[i];
          if (i > 0)
            free_already = free_already && wanted[i] >= wanted[i - 1] + widths[i - 1] + 1;
        }
      g_assert_cmpfloat (total, <=, 100);
      free_already = free_already && wanted[0] >= 0 && wanted[n - 1] + widths[n - 1] <= 100;
      bw_spread (starts, widths, n, 1, 0, 100);

      g_assert_cmpfloat (starts[0], >=, -1e-9);
      g_assert_cmpfloat (starts[n - 1] + widths[n - 1], <=, 100 + 1e-9);
      for (guint i = 1; i < n; i++)
        g_assert_cmpfloat (starts[i], >=, starts[i - 1] + widths[i - 1] + 1 - 1e-9);
      for (guint i = 0; i < n && free_already; i++)
        g_assert_cmpfloat_with_epsilon (starts[i], wanted[i], 1e-9);
    }
}

/* Two things of width 10 that both want to start at 20 share the move: 15 and 25. */
static void
test_spread_shares (void)
{
  double starts[] = { 20, 20 };
  const double widths[] = { 10, 10 };
  bw_spread (starts, widths, 2, 0, 0, 100);
  g_assert_cmpfloat_with_epsilon (starts[0], 15, 1e-9);
  g_assert_cmpfloat_with_epsilon (starts[1], 25, 1e-9);
}

static void
test_claim (void)
{
  g_autoptr (BwCanvas) canvas = bw_canvas_new (&ink, 200, 100);
  BwBox box = bw_canvas_measure (canvas, "sync");

  g_assert_cmpfloat (box.width, >, 0);
  g_assert_true (bw_canvas_claim_at (canvas, "sync", BW_INK_GRAPHITE, 10, 10, 0, 0));
  g_assert_false (bw_canvas_claim_at (canvas, "sync", BW_INK_GRAPHITE, 12, 12, 0, 0));
  g_assert_false (bw_canvas_claim_at (canvas, "sync", BW_INK_GRAPHITE, 199, 50, 0, 0));
  g_assert_false (bw_canvas_claim_at (canvas, "sync", BW_INK_GRAPHITE, 0, 50, 0.5, 0));
  g_assert_true (bw_canvas_claim_at (canvas, "sync", BW_INK_GRAPHITE, 200, 100, 1, 1));
  g_assert_true (bw_canvas_claim_at (canvas, "sync", BW_INK_GRAPHITE, 10 + box.width, 10, 0, 0));
  g_assert_cmpuint (canvas->labels->len, ==, 3);
  test_labels_are_apart (canvas->labels, 200, 100, "claims");
}

/* 10 pt are 10 / 72 inch: at 96 units to the inch a third more units than at 72. */
static void
test_font_size_follows_dpi (void)
{
  const BwInk page = { BW_THEME_PRINT, "Sans 10", BW_INK_PAGE_DPI };
  const BwInk screen = { BW_THEME_PRINT, "Sans 10", BW_INK_SCREEN_DPI };
  g_autoptr (BwCanvas) on_page = bw_canvas_new (&page, 100, 100);
  g_autoptr (BwCanvas) on_screen = bw_canvas_new (&screen, 100, 100);
  double ratio = bw_canvas_measure (on_screen, "line blanking").width
                 / bw_canvas_measure (on_page, "line blanking").width;
  g_assert_cmpfloat_with_epsilon (ratio, 96.0 / 72.0, 0.01);
}

/* All figures are equally wide. */
static void
test_tabular_figures (void)
{
  g_autoptr (BwCanvas) canvas = bw_canvas_new (&ink, 100, 100);
  double width = bw_canvas_measure (canvas, "0000").width;
  for (char digit = '1'; digit <= '9'; digit++)
    {
      const char text[] = { digit, digit, digit, digit, '\0' };
      g_assert_cmpfloat_with_epsilon (bw_canvas_measure (canvas, text).width, width, 0.01);
    }
}

static void
test_numbers (void)
{
  static const struct
  {
    double time_s;
    char mark;
    const char *text;
  } cases[] = {
    { 4.7e-6, '.', "4.7\u00a0µs" },
    { 4.7e-6, ',', "4,7\u00a0µs" },
    { 63.5555556e-6, '.', "63.556\u00a0µs" },
    { 64e-6, '.', "64\u00a0µs" },
    { 0.5926e-6, '.', "0.593\u00a0µs" },
    { 0, '.', "0\u00a0µs" },
    { -1e-12, '.', "0\u00a0µs" },
    { 100e-6, '.', "100\u00a0µs" },
  };
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *text = bw_text_us (cases[i].time_s, cases[i].mark);
      g_assert_cmpstr (text, ==, cases[i].text);
    }
  g_autofree char *share = bw_text_share (0.16835, '.');
  g_assert_cmpstr (share, ==, "16.8\u00a0%");
  g_autofree char *whole = bw_text_share (1, ',');
  g_assert_cmpstr (whole, ==, "100\u00a0%");
}

static void
claim_row (BwDimRow *row, BwCanvas *canvas)
{
  bw_dim_row_size (row, canvas);
  row->y = canvas->height / 2;
  g_assert_true (bw_dim_row_claim (row, canvas));
  test_labels_are_apart (canvas->labels, canvas->width, canvas->height, "row");
}

/* A label stands in its line when there is room; in a narrow gap its name is broken, and in one that
 * is too narrow for that it moves beyond the end. */
static void
test_label_moves_out (void)
{
  static const char *const text[] = { "front porch  1.5 µs", "front porch\n1.5 µs",
                                      "front porch\n1.5 µs" };
  g_autoptr (BwCanvas) canvas = bw_canvas_new (&ink, 600, 200);
  BwDimRow row = { 0 };

  bw_dim_row_add (&row, 100, 300, text);
  bw_dim_row_add (&row, 300, 500, text);
  claim_row (&row, canvas);
  g_assert_cmpint (row.form, ==, BW_DIM_ONE_LINE);
  g_assert_cmpfloat (row.at[0].box.x, >, 100);
  g_assert_cmpfloat (row.at[0].box.x + row.at[0].box.width, <, 300);
  bw_dim_row_clear (&row);

  double broken = bw_canvas_measure (canvas, "front\nporch\n1.5 µs").width;
  double narrow = (broken + bw_canvas_measure (canvas, text[1]).width) / 2 + canvas->pad;
  bw_canvas_clear (canvas);
  row.breaks = TRUE;
  bw_dim_row_add (&row, 200, 200 + narrow, text);
  bw_dim_row_add (&row, 200 + narrow, 400, text);
  claim_row (&row, canvas);
  g_assert_cmpint (row.form, ==, BW_DIM_BROKEN_NAME);
  g_assert_cmpstr (row.at[0].label, ==, "front\nporch\n1.5 µs");
  g_assert_cmpstr (row.at[1].label, ==, text[1]);
  g_assert_cmpfloat (row.at[0].box.x, >, 200);
  g_assert_cmpfloat (row.at[0].box.x + row.at[0].box.width, <, 200 + narrow);
  bw_dim_row_clear (&row);

  bw_canvas_clear (canvas);
  bw_dim_row_add (&row, 200, 210, text);
  bw_dim_row_add (&row, 210, 400, text);
  bw_dim_row_add (&row, 400, 410, text);
  claim_row (&row, canvas);
  g_assert_cmpint (row.form, ==, BW_DIM_THREE_LINES);
  g_assert_cmpfloat (row.at[0].box.x + row.at[0].box.width, <, 200);
  g_assert_cmpfloat (row.at[2].box.x, >, 410);
  bw_dim_row_clear (&row);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/draw/canvas/spread", test_spread);
  g_test_add_func ("/draw/canvas/spread-shares", test_spread_shares);
  g_test_add_func ("/draw/canvas/claim", test_claim);
  g_test_add_func ("/draw/canvas/font-size", test_font_size_follows_dpi);
  g_test_add_func ("/draw/canvas/tabular-figures", test_tabular_figures);
  g_test_add_func ("/draw/canvas/numbers", test_numbers);
  g_test_add_func ("/draw/canvas/label-moves-out", test_label_moves_out);
  return g_test_run ();
}
