/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

#include <math.h>

/* In heights of a line of text. */
#define THIN_STROKE 0.05
#define DATUM_STROKE 0.08

static void
fill_span (const BwFieldLayout *layout, cairo_t *cr, const BwFieldRow *row, BwFieldPart first,
           BwFieldPart after)
{
  const BwFieldShape *shape = &row->shape;
  double x0 = MAX (bw_ruler_x (&layout->ruler, bw_field_shape_time (shape, shape->start[first])),
                   layout->ruler.left);
  double x1 = MIN (bw_ruler_x (&layout->ruler, bw_field_shape_time (shape, shape->start[after])),
                   layout->ruler.right);
  const BwFieldLane *lane = &row->lanes[0];
  double top = lane->kind == BW_LANE_COMPOSITE ? bw_field_lane_y (lane, BW_LEVEL_SYNC / 2)
                                               : lane->top;
  double bottom = row->lanes[row->n_lanes - 1].bottom;

  if (x1 > x0)
    cairo_rectangle (cr, x0, top, x1 - x0, bottom - top);
}

/* Field blanking, and field sync in it. Above the burst the paper stays free for labels. */
static void
draw_bands (const BwFieldLayout *layout, cairo_t *cr, const BwFieldRow *row)
{
  const BwInk *ink = layout->canvas->ink;
  fill_span (layout, cr, row, BW_PART_FRONT_PORCH, BW_PART_BORDER_AFTER);
  bw_ink_set (cr, ink, BW_INK_BAND);
  cairo_fill (cr);
  fill_span (layout, cr, row, BW_PART_SYNC, BW_PART_EQUALISING_AFTER);
  bw_ink_set_alpha (cr, ink, BW_INK_SYNC, 0.10);
  cairo_fill (cr);
}

static double
trace_width (const BwFieldLayout *layout)
{
  return bw_canvas_trace_width (layout->canvas, bw_ruler_line_width (&layout->ruler));
}

static void
fill_steps (const BwFieldLayout *layout, cairo_t *cr, const BwFieldLane *lane, const GArray *steps)
{
  double rest = bw_field_lane_y (lane, BW_LEVEL_BLANKING);
  for (guint i = 0; i < steps->len; i++)
    {
      const BwLineStep *step = &g_array_index (steps, BwLineStep, i);
      double x0 = bw_ruler_x (&layout->ruler, step->from_s),
             x1 = bw_ruler_x (&layout->ruler, step->to_s);
      double y = bw_field_lane_y (lane, step->level);
      cairo_rectangle (cr, x0, MIN (y, rest), x1 - x0, fabs (y - rest));
    }
  bw_ink_set_alpha (cr, layout->canvas->ink, BW_INK_GRAPHITE, 0.09);
  cairo_fill (cr);
}

/* One path along the lane: right-angled, with mitred corners, which cairo strokes fastest. */
static void
stroke_steps (const BwFieldLayout *layout, cairo_t *cr, const BwFieldLane *lane,
              const GArray *steps)
{
  double rest = bw_field_lane_y (lane, BW_LEVEL_BLANKING);
  const double least = 0.01; /* steps shorter than this are ends that the window cuts off */

  cairo_new_path (cr);
  for (guint i = 0; i < steps->len; i++)
    {
      const BwLineStep *step = &g_array_index (steps, BwLineStep, i);
      double x0 = bw_ruler_x (&layout->ruler, step->from_s),
             x1 = bw_ruler_x (&layout->ruler, step->to_s);
      double y = bw_field_lane_y (lane, step->level);
      if (i == 0 && x0 > layout->ruler.left + least)
        cairo_move_to (cr, layout->ruler.left, rest);
      if (x0 > layout->ruler.left + least)
        cairo_line_to (cr, x0, rest);
      cairo_line_to (cr, x0, y);
      cairo_line_to (cr, x1, y);
      if (x1 < layout->ruler.right - least)
        cairo_line_to (cr, x1, rest);
      if (i == steps->len - 1 && x1 < layout->ruler.right - least)
        cairo_line_to (cr, layout->ruler.right, rest);
    }
  if (steps->len == 0)
    {
      cairo_move_to (cr, layout->ruler.left, rest);
      cairo_line_to (cr, layout->ruler.right, rest);
    }
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_MITER);
  cairo_set_line_width (cr, trace_width (layout));
  bw_ink_set (cr, layout->canvas->ink, BW_INK_GRAPHITE);
  cairo_stroke (cr);
}

static void
draw_lane (const BwFieldLayout *layout, cairo_t *cr, const BwFieldRow *row, const BwFieldLane *lane)
{
  g_autoptr (GArray) steps = bw_field_shape_steps (&row->shape, lane->kind,
                                                   layout->ruler.range.from,
                                                   layout->ruler.range.to);
  fill_steps (layout, cr, lane, steps);
  stroke_steps (layout, cr, lane, steps);
}

/* The envelope of the subcarrier, about blanking. */
static void
draw_bursts (const BwFieldLayout *layout, cairo_t *cr, const BwFieldRow *row)
{
  const BwFieldLane *lane = &row->lanes[0];
  double least = 1.4 * trace_width (layout);

  if (!layout->burst)
    return;
  g_autoptr (GArray) steps = bw_burst_steps (&row->shape, &row->burst, layout->ruler.range.from,
                                             layout->ruler.range.to);
  for (guint i = 0; i < steps->len; i++)
    {
      const BwLineStep *step = &g_array_index (steps, BwLineStep, i);
      double x0 = bw_ruler_x (&layout->ruler, step->from_s);
      double width = MAX (bw_ruler_x (&layout->ruler, step->to_s) - x0, least);
      double top = bw_field_lane_y (lane, step->level);
      double bottom = bw_field_lane_y (lane, -step->level);
      cairo_rectangle (cr, x0, top, width, bottom - top);
    }
  bw_ink_set (cr, layout->canvas->ink, BW_INK_BLUE);
  cairo_fill (cr);
}

/* One at the start of each line, and shorter ones along the scale in microseconds. */
static void
draw_ticks (const BwFieldLayout *layout, cairo_t *cr, const BwFieldRow *row)
{
  const BwFieldShape *shape = &row->shape;
  int half_line = (int) floor (layout->ruler.range.from / shape->half_line_s) - 1;
  int last = (int) ceil (layout->ruler.range.to / shape->half_line_s);
  gboolean middle;

  for (; half_line <= last; half_line++)
    {
      double at_s = bw_field_shape_time (shape, half_line);
      bw_raster_line_at (shape->raster, shape->field, half_line, &middle);
      if (middle)
        continue;
      bw_ruler_add_ticks (&layout->ruler, cr, at_s, row->ticks_y);
    }
  bw_ruler_stroke_ticks (&layout->ruler, cr);
}

/* Through all rows, so that the half line between the fields is seen. */
static void
draw_datum (const BwFieldLayout *layout, cairo_t *cr)
{
  double x = bw_ruler_x (&layout->ruler, 0);
  const BwFieldRow *first = &layout->row[0], *last = &layout->row[layout->n_rows - 1];

  if (!bw_ruler_shows (&layout->ruler, x))
    return;
  cairo_move_to (cr, x, first->head_y - layout->canvas->text_height * 0.4);
  cairo_line_to (cr, x, last->lanes[last->n_lanes - 1].bottom);
  bw_canvas_set_pen (layout->canvas, cr, BW_INK_ACCENT, DATUM_STROKE);
  cairo_stroke (cr);
}

static void
draw_row (const BwFieldLayout *layout, cairo_t *cr, const BwFieldRow *row)
{
  bw_dim_row_draw (&row->total, layout->canvas, cr);
  bw_dim_row_draw (&row->parts, layout->canvas, cr);
  bw_dim_row_draw (&row->no_burst, layout->canvas, cr);
  for (guint i = 0; i < row->n_lanes; i++)
    draw_lane (layout, cr, row, &row->lanes[i]);
  draw_bursts (layout, cr, row);
  draw_ticks (layout, cr, row);
}

/* Private: draws what has been laid out. */
void
bw_field_layout_draw (const BwFieldLayout *layout, cairo_t *cr)
{
  BwCanvas *canvas = layout->canvas;

  bw_canvas_draw_paper (canvas, cr);
  for (guint i = 0; i < layout->n_rows; i++)
    draw_bands (layout, cr, &layout->row[i]);
  draw_datum (layout, cr);
  for (guint i = 0; i < layout->n_rows; i++)
    draw_row (layout, cr, &layout->row[i]);
  bw_canvas_show_labels (canvas, cr);
}
