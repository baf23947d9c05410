/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

static void
draw_band (const BwLineLayout *layout, cairo_t *cr)
{
  const BwLinePanel *whole = &layout->whole, *part = &layout->part;
  double start_s = layout->shape.start_s[0], end_s = bw_line_shape_blanking_end (&layout->shape);
  double left = bw_line_panel_x (whole, start_s), right = bw_line_panel_x (whole, end_s);
  double part_left = bw_line_panel_x (part, start_s), part_right = bw_line_panel_x (part, end_s);

  bw_ink_set (cr, layout->canvas->ink, BW_INK_BAND);
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

  bw_ink_set (cr, layout->canvas->ink, BW_INK_RULE);
  cairo_set_line_width (cr, layout->canvas->text_height * 0.05);
  cairo_move_to (cr, left, whole->bottom);
  cairo_line_to (cr, part_left, part->top);
  cairo_move_to (cr, right, whole->bottom);
  cairo_line_to (cr, part_right, part->top);
  cairo_stroke (cr);
}

/**
 * bw_line_draw:
 *
 * Draws what has been laid out.
 */
void
bw_line_draw (const BwLineLayout *layout, cairo_t *cr)
{
  BwCanvas *canvas = layout->canvas;
  const BwLinePanel *whole = &layout->whole, *part = &layout->part;
  const BwLineShape *shape = &layout->shape;
  double above_y = layout->period.y - canvas->text_height * 0.3;

  bw_canvas_draw_paper (canvas, cr);
  draw_band (layout, cr);
  bw_line_panel_draw_levels (whole, shape, canvas, cr);
  bw_line_panel_draw_levels (part, shape, canvas, cr);
  bw_dim_row_draw (&layout->period, canvas, cr);
  bw_dim_row_draw (&layout->active, canvas, cr);
  bw_dim_row_draw (&layout->intervals, canvas, cr);
  bw_dim_row_draw (&layout->blanking, canvas, cr);
  bw_line_panel_draw_datum (whole, 0, above_y, canvas, cr);
  bw_line_panel_draw_datum (whole, shape->period_s, above_y, canvas, cr);
  bw_line_panel_draw_datum (part, 0, part->top, canvas, cr);
  bw_line_panel_draw_curve (whole, shape, canvas, cr);
  bw_line_panel_draw_curve (part, shape, canvas, cr);
  bw_line_panel_draw_burst (whole, shape, canvas, cr);
  bw_line_panel_draw_burst (part, shape, canvas, cr);
  bw_canvas_show_labels (canvas, cr);
}
