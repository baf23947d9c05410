/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "test-picture-private.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "core/levels/colour.h"

#define CELLS 12        /* of the grid, down the screen */
#define THIN 2.5        /* thousandths of the height */
#define CIRCLE 0.46     /* of the height */
#define N_STEPS 11
#define N_RAMP_ROWS 7
#define NEAR 0.1        /* the range of signal of the steps near black and near white */

static double
width_of (const BwTestFrame *frame)
{
  return frame->aspect * BW_TEST_UNITS;
}

static void
paint_all (cairo_t *cr, double level)
{
  cairo_set_source_rgb (cr, level, level, level);
  cairo_paint (cr);
}

static void
rule (cairo_t *cr, double x1, double y1, double x2, double y2)
{
  cairo_move_to (cr, x1, y1);
  cairo_line_to (cr, x2, y2);
  cairo_stroke (cr);
}

/* Square cells counted from the middle, over all that is scanned; the middle lines heavier. */
void
bw_test_draw_grid (cairo_t *cr, const BwTestFrame *frame)
{
  double cell = BW_TEST_UNITS / CELLS, middle_x = width_of (frame) / 2;
  double middle_y = BW_TEST_UNITS / 2;
  int across = (int) (width_of (frame) / cell) + 1;

  paint_all (cr, 0);
  cairo_set_source_rgb (cr, 1, 1, 1);
  for (int i = -across; i <= across; i++)
    {
      cairo_set_line_width (cr, i == 0 ? 2 * THIN : THIN);
      rule (cr, middle_x + i * cell, -BW_TEST_UNITS, middle_x + i * cell, 2 * BW_TEST_UNITS);
    }
  for (int i = -CELLS; i <= CELLS; i++)
    {
      cairo_set_line_width (cr, i == 0 ? 2 * THIN : THIN);
      rule (cr, -BW_TEST_UNITS, middle_y + i * cell, 2 * width_of (frame), middle_y + i * cell);
    }
  cairo_set_line_width (cr, 2 * THIN);
  cairo_arc (cr, middle_x, middle_y, CIRCLE * BW_TEST_UNITS, 0, 2 * G_PI);
  cairo_stroke (cr);
}

static void
fill_box (cairo_t *cr, double x, double y, double width, double height, const BwRgb *rgb)
{
  cairo_set_source_rgb (cr, rgb->r, rgb->g, rgb->b);
  cairo_rectangle (cr, x, y, width, height);
  cairo_fill (cr);
}

static void
ramp (cairo_t *cr, double width, double y, double height, const BwRgb *to)
{
  cairo_pattern_t *pattern = cairo_pattern_create_linear (0, 0, width, 0);

  cairo_pattern_add_color_stop_rgb (pattern, 0, 0, 0, 0);
  cairo_pattern_add_color_stop_rgb (pattern, 1, to->r, to->g, to->b);
  cairo_set_source (cr, pattern);
  cairo_rectangle (cr, 0, y, width, height);
  cairo_fill (cr);
  cairo_pattern_destroy (pattern);
}

/* Equal steps of signal from @low to @high. */
static void
steps (cairo_t *cr, double x, double width, double y, double height, double low, double high)
{
  for (int i = 0; i < N_STEPS; i++)
    {
      double level = low + (high - low) * i / (N_STEPS - 1);
      BwRgb grey = { level, level, level };
      fill_box (cr, x + i * width / N_STEPS, y, width / N_STEPS, height, &grey);
    }
}

/* From the top: grey ramp, grey steps, ramps of the primaries, colour bars of 75 %, and the steps
 * near black and near white. */
void
bw_test_draw_ramps (cairo_t *cr, const BwTestFrame *frame)
{
  static const BwRgb ends[] = { { 1, 0, 0 }, { 0, 1, 0 }, { 0, 0, 1 } }, white = { 1, 1, 1 };
  double width = width_of (frame), height = BW_TEST_UNITS / N_RAMP_ROWS;

  paint_all (cr, 0);
  ramp (cr, width, 0, height, &white);
  steps (cr, 0, width, height, height, 0, 1);
  for (guint i = 0; i < G_N_ELEMENTS (ends); i++)
    ramp (cr, width, (2 + i) * height, height, &ends[i]);
  for (guint bar = 0; bar < BW_N_BARS; bar++)
    {
      BwRgb rgb;
      bw_bar_rgb ((BwBar) bar, BW_BARS_75, &rgb);
      fill_box (cr, bar * width / BW_N_BARS, 5 * height, width / BW_N_BARS, height, &rgb);
    }
  steps (cr, 0, width / 2, 6 * height, height, 0, NEAR);
  steps (cr, width / 2, width / 2, 6 * height, height, 1 - NEAR, 1);
}

/* The same words in falling sizes on grounds of several colours. Red on blue and the reverse have
 * little but colour to tell them apart. */
void
bw_test_draw_text (cairo_t *cr, const BwTestFrame *frame)
{
  static const struct
  {
    BwRgb ground;
    BwRgb words;
  } pairs[] = {
    { { 0, 0, 0 }, { 1, 1, 1 } },       { { 1, 1, 1 }, { 0, 0, 0 } },
    { { 0, 0, 0 }, { 0, 0.75, 0 } },    { { 0, 0, 0.75 }, { 0.75, 0, 0 } },
    { { 0.75, 0, 0 }, { 0, 0, 0.75 } }, { { 0.75, 0.75, 0 }, { 0, 0, 0.75 } },
  };
  static const double sizes[] = { 64, 48, 36, 28, 22, 17 };
  const guint across = 2, down = G_N_ELEMENTS (pairs) / across;
  double width = width_of (frame) / across, height = BW_TEST_UNITS / down;

  for (guint i = 0; i < G_N_ELEMENTS (pairs); i++)
    {
      double x = i % across * width, y = i / across * height, line = y + 8;
      fill_box (cr, x, y, width, height, &pairs[i].ground);
      cairo_set_source_rgb (cr, pairs[i].words.r, pairs[i].words.g, pairs[i].words.b);
      for (guint size = 0; size < G_N_ELEMENTS (sizes); size++)
        {
          g_autofree char *words = g_strdup_printf (_ ("%.1f %%: Eel 0123"),
                                                    sizes[size] / BW_TEST_UNITS * 100);
          bw_test_words (cr, words, sizes[size], x + 20, line, 0, 0);
          line += 1.28 * sizes[size];
        }
    }
}
