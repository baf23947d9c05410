/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

#include <math.h>

/* In heights of a line of text. */
#define STROKE 0.11
#define THIN_STROKE 0.05
#define DATUM_STROKE 0.08
#define DOT 0.13
#define DOTTED_LINE 0.9 /* a line at least so wide has a dot on its phase */

/* Field sync, from head to foot of the rows. */
static void
draw_band (const BwSyncLayout *layout, cairo_t *cr)
{
  gboolean gate = layout->what->what->gate != BW_SYNC_GATE_STANDARD;
  double length_s = layout->mix->v_end_s - layout->mix->v_start_s;
  double start_s = gate ? layout->mix->v_start_s : 0;
  double x0 = MAX (bw_ruler_x (&layout->ruler, start_s), layout->ruler.left);
  double x1 = MIN (bw_ruler_x (&layout->ruler, start_s + length_s), layout->ruler.right);
  double top = layout->lane[0].top - layout->canvas->pad / 4;

  if (x1 <= x0)
    return;
  cairo_rectangle (cr, x0, top, x1 - x0, layout->lane[BW_SYNC_ROW_PHASE].bottom - top);
  bw_ink_set (cr, layout->canvas->ink, BW_INK_BAND);
  cairo_fill (cr);
}

static double
trace_width (const BwSyncLayout *layout)
{
  return bw_canvas_trace_width (layout->canvas, bw_ruler_line_width (&layout->ruler));
}

/* Where each line's edge is due, through all rows of sync. */
static void
draw_due (const BwSyncLayout *layout, cairo_t *cr)
{
  for (guint i = 0; i < layout->run->lines->len; i++)
    {
      double x = bw_ruler_x (&layout->ruler, bw_sync_due (layout, bw_sync_line (layout, i)));
      if (!bw_ruler_shows (&layout->ruler, x))
        continue;
      cairo_move_to (cr, x, layout->lane[0].top);
      cairo_line_to (cr, x, layout->spans_y);
      cairo_move_to (cr, x, layout->lane[BW_SYNC_ROW_STANDARD].top);
      cairo_line_to (cr, x, layout->lane[BW_SYNC_ROW_STANDARD].bottom);
    }
  bw_canvas_set_pen (layout->canvas, cr, BW_INK_RULE, THIN_STROKE);
  cairo_stroke (cr);
}

static double
level_y (const BwSyncLane *lane, int level)
{
  return level ? lane->top : lane->bottom;
}

/* A right-angled path along the lane. */
static void
draw_trace (const BwSyncLayout *layout, cairo_t *cr, BwSyncRow row)
{
  const BwSyncLane *lane = &layout->lane[row];
  const GArray *edges = lane->trace->edges;
  double y = level_y (lane, bw_sync_trace_level (lane->trace, layout->ruler.range.from));

  cairo_move_to (cr, layout->ruler.left, y);
  for (guint i = 0; i < edges->len; i++)
    {
      const BwSyncEdge *edge = &g_array_index (edges, BwSyncEdge, i);
      if (edge->at_s <= layout->ruler.range.from || edge->at_s >= layout->ruler.range.to)
        continue;
      double x = bw_ruler_x (&layout->ruler, edge->at_s);
      cairo_line_to (cr, x, y);
      y = level_y (lane, edge->level);
      cairo_line_to (cr, x, y);
    }
  cairo_line_to (cr, layout->ruler.right, y);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_MITER);
  cairo_set_line_width (cr, trace_width (layout));
  bw_ink_set (cr, layout->canvas->ink,
              row == BW_SYNC_ROW_STANDARD ? BW_INK_GRAPHITE_LIGHT : BW_INK_GRAPHITE);
  cairo_stroke (cr);
}

static void
draw_ticks (const BwSyncLayout *layout, cairo_t *cr)
{
  for (guint k = 0; k < layout->run->lines->len; k++)
    bw_ruler_add_ticks (&layout->ruler, cr, bw_sync_due (layout, bw_sync_line (layout, k)),
                        layout->ticks_y);
  bw_ruler_stroke_ticks (&layout->ruler, cr);
}

/* Not through the words under the marks. */
static void
draw_datum (const BwSyncLayout *layout, cairo_t *cr)
{
  double x = bw_ruler_x (&layout->ruler, 0);
  if (!bw_ruler_shows (&layout->ruler, x))
    return;
  cairo_move_to (cr, x, layout->head_y + layout->canvas->text_height / 2);
  cairo_line_to (cr, x, layout->lane[BW_SYNC_ROW_RESULT].bottom);
  cairo_move_to (cr, x, layout->lane[BW_SYNC_ROW_STANDARD].top);
  cairo_line_to (cr, x, layout->lane[BW_SYNC_ROW_STANDARD].bottom);
  bw_canvas_set_pen (layout->canvas, cr, BW_INK_ACCENT, DATUM_STROKE);
  cairo_stroke (cr);
}

/* The phase */

/* Where the picture is straight. */
static void
draw_settled (const BwSyncLayout *layout, cairo_t *cr)
{
  const BwSyncLane *lane = &layout->lane[BW_SYNC_ROW_PHASE];
  double settle_s = layout->run->settle_s;
  double top = MAX (bw_sync_phase_y (layout, settle_s), lane->top);
  double bottom = MIN (bw_sync_phase_y (layout, -settle_s), lane->bottom);

  cairo_rectangle (cr, layout->ruler.left, top, layout->ruler.right - layout->ruler.left,
                   bottom - top);
  bw_ink_set_alpha (cr, layout->canvas->ink, BW_INK_OK, 0.14);
  cairo_fill (cr);
}

static void
draw_phase_rules (const BwSyncLayout *layout, cairo_t *cr)
{
  const BwSyncLane *lane = &layout->lane[BW_SYNC_ROW_PHASE];
  double zero = floor (bw_sync_phase_y (layout, 0)) + 0.5;

  cairo_rectangle (cr, layout->ruler.left, lane->top, layout->ruler.right - layout->ruler.left,
                   lane->bottom - lane->top);
  if (layout->run->locks)
    {
      cairo_move_to (cr, layout->ruler.left, zero);
      cairo_line_to (cr, layout->ruler.right, zero);
    }
  bw_canvas_set_pen (layout->canvas, cr, BW_INK_RULE, THIN_STROKE);
  cairo_stroke (cr);
}

static void
draw_picture_start (const BwSyncLayout *layout, cairo_t *cr)
{
  const BwSyncLane *lane = &layout->lane[BW_SYNC_ROW_PHASE];
  double dash = layout->canvas->text_height / 4, at_s;

  if (!bw_sync_picture (layout, &at_s)
      || !bw_ruler_shows (&layout->ruler, bw_ruler_x (&layout->ruler, at_s)))
    return;
  cairo_save (cr);
  cairo_move_to (cr, bw_ruler_x (&layout->ruler, at_s), lane->top);
  cairo_line_to (cr, bw_ruler_x (&layout->ruler, at_s), lane->bottom);
  cairo_set_dash (cr, &dash, 1, 0);
  bw_canvas_set_pen (layout->canvas, cr, BW_INK_ACCENT, DATUM_STROKE);
  cairo_stroke (cr);
  cairo_restore (cr);
}

static void
draw_phase_dots (const BwSyncLayout *layout, cairo_t *cr)
{
  double text = layout->canvas->text_height;
  if (bw_ruler_line_width (&layout->ruler) < DOTTED_LINE * text)
    return;
  for (guint i = 0; i < layout->run->lines->len; i++)
    {
      const BwSyncLine *line = bw_sync_line (layout, i);
      cairo_new_sub_path (cr);
      cairo_arc (cr, bw_ruler_x (&layout->ruler, bw_sync_due (layout, line)),
                 bw_sync_phase_y (layout, line->phase_s), DOT * text, 0, 2 * G_PI);
    }
  cairo_fill (cr);
}

static void
draw_phase_curve (const BwSyncLayout *layout, cairo_t *cr)
{
  const BwSyncLane *lane = &layout->lane[BW_SYNC_ROW_PHASE];
  double margin = layout->canvas->pad / 2;

  cairo_save (cr);
  cairo_rectangle (cr, layout->ruler.left, lane->top - margin,
                   layout->ruler.right - layout->ruler.left, lane->bottom - lane->top + 2 * margin);
  cairo_clip (cr);
  bw_ink_set (cr, layout->canvas->ink, BW_INK_BLUE);
  for (guint i = 0; i < layout->run->lines->len; i++)
    {
      const BwSyncLine *line = bw_sync_line (layout, i);
      cairo_line_to (cr, bw_ruler_x (&layout->ruler, bw_sync_due (layout, line)),
                     bw_sync_phase_y (layout, line->phase_s));
    }
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  cairo_set_line_width (cr, STROKE * layout->canvas->text_height);
  cairo_stroke (cr);
  draw_phase_dots (layout, cr);
  cairo_restore (cr);
}

/**
 * bw_sync_layout_draw:
 *
 * Draws what has been laid out.
 */
void
bw_sync_layout_draw (const BwSyncLayout *layout, cairo_t *cr)
{
  BwCanvas *canvas = layout->canvas;

  bw_canvas_draw_paper (canvas, cr);
  draw_band (layout, cr);
  draw_due (layout, cr);
  draw_datum (layout, cr);
  for (guint row = 0; row < BW_SYNC_ROW_PHASE; row++)
    draw_trace (layout, cr, row);
  bw_sync_draw_marks (layout, cr);
  draw_ticks (layout, cr);
  if (layout->run->locks)
    draw_settled (layout, cr);
  draw_phase_rules (layout, cr);
  draw_picture_start (layout, cr);
  if (layout->run->locks)
    draw_phase_curve (layout, cr);
  bw_canvas_show_labels (canvas, cr);
}
