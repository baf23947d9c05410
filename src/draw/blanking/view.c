/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

static void
draw_box (const BwBlankingLayout *layout, cairo_t *cr, double from_s, double to_s)
{
  double left = bw_blanking_x (layout, MAX (from_s, layout->from_s));
  double right = bw_blanking_x (layout, MIN (to_s, layout->to_s));
  cairo_rectangle (cr, left, layout->top, right - left, layout->bottom - layout->top);
  cairo_fill (cr);
}

static void
draw_bands (const BwBlankingLayout *layout, cairo_t *cr)
{
  BwRange bands_s[BW_BLANKING_BANDS];
  guint n = bw_blanking_bands (layout->what, bands_s);

  bw_ink_set (cr, layout->canvas->ink, BW_INK_BAND);
  draw_box (layout, cr, bw_blanking_start (&layout->shape),
            bw_line_shape_blanking_end (&layout->shape));
  bw_ink_set_alpha (cr, layout->canvas->ink, BW_INK_OK, 0.3);
  for (guint i = 0; i < n; i++)
    draw_box (layout, cr, bands_s[i].low, bands_s[i].high);
}

static void
draw_levels (const BwBlankingLayout *layout, cairo_t *cr)
{
  double unit = layout->canvas->text_height, level;
  const double dashes[] = { unit * 0.15, unit * 0.25 };

  cairo_save (cr);
  bw_ink_set (cr, layout->canvas->ink, BW_INK_RULE);
  cairo_set_line_width (cr, unit * 0.06);
  cairo_set_dash (cr, dashes, G_N_ELEMENTS (dashes), 0);
  for (guint i = 0; i < BW_BLANKING_LEVELS; i++)
    if (bw_blanking_level_name (&layout->shape, i, &level) != NULL)
      {
        cairo_move_to (cr, layout->left, bw_blanking_y (layout, level));
        cairo_line_to (cr, layout->right, bw_blanking_y (layout, level));
      }
  cairo_stroke (cr);
  cairo_restore (cr);
}

static void
draw_datum (const BwBlankingLayout *layout, cairo_t *cr)
{
  double x = bw_blanking_x (layout, 0);
  bw_ink_set (cr, layout->canvas->ink, BW_INK_ACCENT);
  cairo_set_line_width (cr, layout->canvas->text_height * 0.08);
  cairo_move_to (cr, x, layout->top);
  cairo_line_to (cr, x, layout->bottom);
  cairo_stroke (cr);
}

static void
trace_steps (const BwBlankingLayout *layout, cairo_t *cr, const GArray *steps)
{
  for (guint i = 0; i < steps->len; i++)
    {
      const BwLineStep *step = &g_array_index (steps, BwLineStep, i);
      double y = bw_blanking_y (layout, step->level);
      cairo_line_to (cr, bw_blanking_x (layout, step->from_s), y);
      cairo_line_to (cr, bw_blanking_x (layout, step->to_s), y);
    }
}

static void
draw_curve (const BwBlankingLayout *layout, cairo_t *cr)
{
  g_autoptr (GArray) steps = bw_line_shape_steps (&layout->shape, layout->from_s, layout->to_s);
  double blanking_y = bw_blanking_y (layout, BW_LEVEL_BLANKING);

  cairo_new_path (cr);
  cairo_move_to (cr, layout->left, blanking_y);
  trace_steps (layout, cr, steps);
  cairo_line_to (cr, layout->right, blanking_y);
  cairo_close_path (cr);
  bw_ink_set_alpha (cr, layout->canvas->ink, BW_INK_GRAPHITE, 0.07);
  cairo_fill (cr);

  cairo_set_line_width (cr, layout->canvas->text_height * 0.11);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  bw_ink_set (cr, layout->canvas->ink, BW_INK_GRAPHITE);
  trace_steps (layout, cr, steps);
  cairo_stroke (cr);
}

/* Its envelope; how many cycles there are, the limits do not say. */
static void
draw_burst (const BwBlankingLayout *layout, cairo_t *cr)
{
  double top = bw_blanking_y (layout, BW_BURST_PEAK),
         bottom = bw_blanking_y (layout, -BW_BURST_PEAK);
  BwRange burst_s;
  if (!bw_blanking_burst (layout->what, &burst_s))
    return;
  double left = bw_blanking_x (layout, burst_s.low), right = bw_blanking_x (layout, burst_s.high);
  cairo_rectangle (cr, left, top, right - left, bottom - top);
  bw_ink_set_alpha (cr, layout->canvas->ink, BW_INK_BLUE, 0.2);
  cairo_fill_preserve (cr);
  bw_ink_set (cr, layout->canvas->ink, BW_INK_BLUE);
  cairo_set_line_width (cr, layout->canvas->text_height * 0.08);
  cairo_stroke (cr);
}

/**
 * bw_draw_blanking_view:
 * @width: of the page, in user-space units; @height: likewise
 *
 * Draws the line blanking of a raster so that it fills the page.
 */
void
bw_draw_blanking_view (cairo_t *cr, double width, double height, const BwInk *ink,
                       const BwBlankingView *what)
{
  BwBlankingLayout layout;
  bw_blanking_layout_init (&layout, width, height, ink, what);
  cairo_save (cr);
  bw_canvas_draw_paper (layout.canvas, cr);
  draw_bands (&layout, cr);
  draw_levels (&layout, cr);
  bw_dim_row_draw (&layout.to_end, layout.canvas, cr);
  bw_dim_row_draw (&layout.to_burst, layout.canvas, cr);
  bw_dim_row_draw (&layout.burst, layout.canvas, cr);
  bw_dim_row_draw (&layout.intervals, layout.canvas, cr);
  bw_dim_row_draw (&layout.blanking, layout.canvas, cr);
  draw_datum (&layout, cr);
  draw_curve (&layout, cr);
  draw_burst (&layout, cr);
  bw_canvas_show_labels (layout.canvas, cr);
  cairo_restore (cr);
  bw_blanking_layout_clear (&layout);
}

/**
 * bw_blanking_view_x_at:
 * @width: as it was drawn; likewise @height, @ink and @what
 * @time_s: after the datum
 *
 * Returns: where that time lies across the page
 */
double
bw_blanking_view_x_at (double width, double height, const BwInk *ink, const BwBlankingView *what,
                       double time_s)
{
  BwBlankingLayout layout;
  bw_blanking_layout_init (&layout, width, height, ink, what);
  double x = bw_blanking_x (&layout, time_s);
  bw_blanking_layout_clear (&layout);
  return x;
}

/**
 * bw_blanking_view_labels:
 * @width: as for bw_draw_blanking_view(); likewise @height, @ink and @what
 * @left_out: (out) (nullable): how many of the steps in the header were left out; zero if
 *   everything has its place
 *
 * Returns: (transfer full) (element-type BwLabel): the labels as they are drawn
 */
GArray *
bw_blanking_view_labels (double width, double height, const BwInk *ink, const BwBlankingView *what,
                         guint *left_out)
{
  BwBlankingLayout layout;
  bw_blanking_layout_init (&layout, width, height, ink, what);
  GArray *labels = g_array_ref (layout.canvas->labels);
  if (left_out != NULL)
    *left_out = layout.left_out;
  bw_blanking_layout_clear (&layout);
  return labels;
}
