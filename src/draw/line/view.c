/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

#include <glib/gi18n-lib.h>

static void
draw_band (const BwLineView *view, cairo_t *cr)
{
  const BwLinePanel *whole = &view->whole, *part = &view->part;
  double start_s = view->shape.start_s[0], end_s = bw_line_shape_blanking_end (&view->shape);
  double left = bw_line_panel_x (whole, start_s), right = bw_line_panel_x (whole, end_s);
  double part_left = bw_line_panel_x (part, start_s), part_right = bw_line_panel_x (part, end_s);

  bw_ink_set (cr, view->canvas->ink, BW_INK_BAND);
  cairo_move_to (cr, left, whole->top);
  cairo_line_to (cr, right, whole->top);
  cairo_line_to (cr, right, whole->bottom);
  cairo_line_to (cr, part_right, part->top);
  cairo_line_to (cr, part_right, part->bottom);
  cairo_line_to (cr, part_left, part->bottom);
  cairo_line_to (cr, part_left, part->top);
  cairo_line_to (cr, left, whole->bottom);
  cairo_close_path (cr);
  cairo_fill (cr);

  bw_ink_set (cr, view->canvas->ink, BW_INK_RULE);
  cairo_set_line_width (cr, view->canvas->text_height * 0.05);
  cairo_move_to (cr, left, whole->bottom);
  cairo_line_to (cr, part_left, part->top);
  cairo_move_to (cr, right, whole->bottom);
  cairo_line_to (cr, part_right, part->top);
  cairo_stroke (cr);
}

static void
draw_levels (const BwLineView *view, cairo_t *cr, const BwLinePanel *panel)
{
  const double dashes[] = { view->canvas->text_height * 0.15, view->canvas->text_height * 0.25 };
  double level;

  cairo_save (cr);
  bw_ink_set (cr, view->canvas->ink, BW_INK_RULE);
  cairo_set_line_width (cr, view->canvas->text_height * 0.06);
  cairo_set_dash (cr, dashes, G_N_ELEMENTS (dashes), 0);
  for (guint i = 0; i < BW_LINE_LEVELS; i++)
    if (bw_line_level_name (view, i, &level) != NULL)
      {
        cairo_move_to (cr, panel->left, bw_line_panel_y (panel, level));
        cairo_line_to (cr, panel->right, bw_line_panel_y (panel, level));
      }
  cairo_stroke (cr);
  cairo_restore (cr);
}

static void
draw_datum (const BwLineView *view, cairo_t *cr, double x, double from_y, double to_y)
{
  bw_ink_set (cr, view->canvas->ink, BW_INK_ACCENT);
  cairo_set_line_width (cr, view->canvas->text_height * 0.08);
  cairo_move_to (cr, x, from_y);
  cairo_line_to (cr, x, to_y);
  cairo_stroke (cr);
}

static void
trace_steps (const BwLinePanel *panel, cairo_t *cr, const GArray *steps)
{
  for (guint i = 0; i < steps->len; i++)
    {
      const BwLineStep *step = &g_array_index (steps, BwLineStep, i);
      double y = bw_line_panel_y (panel, step->level);
      cairo_line_to (cr, bw_line_panel_x (panel, step->from_s), y);
      cairo_line_to (cr, bw_line_panel_x (panel, step->to_s), y);
    }
}

static void
draw_curve (const BwLineView *view, cairo_t *cr, const BwLinePanel *panel)
{
  g_autoptr (GArray) steps = bw_line_shape_steps (&view->shape, panel->from_s, panel->to_s);
  double blanking_y = bw_line_panel_y (panel, BW_LEVEL_BLANKING);

  cairo_new_path (cr);
  cairo_move_to (cr, panel->left, blanking_y);
  trace_steps (panel, cr, steps);
  cairo_line_to (cr, panel->right, blanking_y);
  cairo_close_path (cr);
  bw_ink_set_alpha (cr, view->canvas->ink, BW_INK_GRAPHITE, 0.07);
  cairo_fill (cr);

  cairo_set_line_width (cr, view->canvas->text_height * 0.11);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  bw_ink_set (cr, view->canvas->ink, BW_INK_GRAPHITE);
  trace_steps (panel, cr, steps);
  cairo_stroke (cr);
}

static void
view_draw (BwLineView *view, cairo_t *cr)
{
  BwCanvas *canvas = view->canvas;
  double period_s = view->shape.period_s;
  double above = canvas->text_height * 0.3;

  bw_canvas_draw_paper (canvas, cr);
  draw_band (view, cr);
  draw_levels (view, cr, &view->whole);
  draw_levels (view, cr, &view->part);
  bw_dim_row_draw (&view->period, canvas, cr);
  bw_dim_row_draw (&view->active, canvas, cr);
  bw_dim_row_draw (&view->intervals, canvas, cr);
  bw_dim_row_draw (&view->blanking, canvas, cr);
  draw_datum (view, cr, bw_line_panel_x (&view->whole, 0), view->period.y - above,
              view->whole.bottom);
  draw_datum (view, cr, bw_line_panel_x (&view->whole, period_s), view->period.y - above,
              view->whole.bottom);
  draw_datum (view, cr, bw_line_panel_x (&view->part, 0), view->part.top, view->part.bottom);
  draw_curve (view, cr, &view->whole);
  draw_curve (view, cr, &view->part);
  bw_canvas_show_labels (canvas, cr);
}

/**
 * bw_draw_line_view:
 * @width: of the page, in user-space units; @height: likewise
 * @raster: a raster that bw_raster_check() accepts
 * @mark: the decimal mark
 *
 * Draws one line of @raster so that it fills the page.
 */
void
bw_draw_line_view (cairo_t *cr, double width, double height, const BwInk *ink,
                   const BwRaster *raster, char mark)
{
  BwLineView view;
  bw_line_view_init (&view, width, height, ink, raster, mark);
  cairo_save (cr);
  view_draw (&view, cr);
  cairo_restore (cr);
  bw_line_view_clear (&view);
}

static gboolean
panel_holds (const BwLineView *view, const BwLinePanel *panel, double x, double y)
{
  double pad = view->canvas->pad;
  return x >= panel->left && x <= panel->right && y >= panel->top - pad && y <= panel->bottom + pad;
}

/**
 * bw_line_view_time_at:
 * @width: as it was drawn; likewise @height, @ink, @raster and @mark
 * @x: a point of the page
 * @y: likewise
 * @inside: (out): whether the point lies on one of the two curves' panels
 *
 * Reads the drawing.
 *
 * Returns: seconds after the datum 0H, negative before it; zero if the point is not inside
 */
double
bw_line_view_time_at (double width, double height, const BwInk *ink, const BwRaster *raster,
                      char mark, double x, double y, gboolean *inside)
{
  BwLineView view;
  double time_s = 0;

  *inside = FALSE;
  bw_line_view_init (&view, width, height, ink, raster, mark);
  const BwLinePanel *panels[] = { &view.whole, &view.part };
  for (guint i = 0; i < G_N_ELEMENTS (panels) && !*inside; i++)
    if (panel_holds (&view, panels[i], x, y))
      {
        const BwLinePanel *panel = panels[i];
        double share = (x - panel->left) / (panel->right - panel->left);
        time_s = panel->from_s + share * (panel->to_s - panel->from_s);
        *inside = TRUE;
      }
  bw_line_view_clear (&view);
  return time_s;
}

/**
 * bw_line_view_labels:
 * @width: as for bw_draw_line_view(); likewise @height, @ink, @raster and @mark
 * @left_out: (out) (nullable): how many of the steps in the header were left out; zero if
 *   everything has its place
 *
 * Returns: (transfer full) (element-type BwLabel): the labels as they are drawn
 */
GArray *
bw_line_view_labels (double width, double height, const BwInk *ink, const BwRaster *raster,
                     char mark, guint *left_out)
{
  BwLineView view;
  bw_line_view_init (&view, width, height, ink, raster, mark);
  GArray *labels = g_array_ref (view.canvas->labels);
  if (left_out != NULL)
    *left_out = view.left_out;
  bw_line_view_clear (&view);
  return labels;
}

static void
describe_interval (GString *text, const char *name, double length_s, double period_s, char mark)
{
  g_autofree char *time = bw_text_us (length_s, mark);
  g_autofree char *share = bw_text_share (length_s / period_s, mark);
  if (length_s > 0)
    g_string_append_printf (text, _ ("; %s %s, %s of it"), name, time, share);
}

/**
 * bw_line_view_describe:
 * @mark: the decimal mark
 *
 * The drawing in words, for screen readers and for the description inside an exported file.
 *
 * Returns: (transfer full): one sentence with every interval of the line
 */
char *
bw_line_view_describe (const BwRaster *raster, char mark)
{
  BwLineShape shape;
  bw_line_shape_init (&shape, raster);
  g_autofree char *caption = bw_line_caption (raster);
  g_autofree char *period = bw_text_us (shape.period_s, mark);
  GString *text = g_string_new (NULL);

  g_string_append_printf (text, _ ("%s. Line period %s"), caption, period);
  for (guint i = 0; i < BW_N_INTERVALS; i++)
    describe_interval (text, bw_line_interval_label (i), bw_line_shape_length (&shape, i),
                       shape.period_s, mark);
  describe_interval (text, _ ("line blanking"),
                     bw_line_shape_blanking_end (&shape) - shape.start_s[0], shape.period_s, mark);
  g_string_append_c (text, '.');
  return g_string_free (text, FALSE);
}
