/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

/* What tells how the edge of each line is: a shape and an ink. */

#define LEAST_MARK 4.0 /* a smaller mark of a right edge is a tick */

static BwInkRole
mark_role (guint mark)
{
  static const BwInkRole roles[BW_SYNC_MARKS_MAX] = {
    [BW_AFC_EDGE_RIGHT] = BW_INK_OK,
    [BW_AFC_EDGE_EARLY] = BW_INK_TIGHT,
    [BW_AFC_EDGE_LATE] = BW_INK_TIGHT,
    [BW_AFC_EDGE_MISSING] = BW_INK_FATAL,
    [BW_SYNC_MARK_HALF] = BW_INK_GRAPHITE_LIGHT,
  };
  return roles[mark];
}

/* The marks, in a square of side 1 about the origin. */

static void
draw_triangle (cairo_t *cr, double direction)
{
  cairo_move_to (cr, -0.32 * direction, -0.4);
  cairo_line_to (cr, 0.42 * direction, 0);
  cairo_line_to (cr, -0.32 * direction, 0.4);
  cairo_close_path (cr);
  cairo_fill (cr);
}

static void
draw_cross (cairo_t *cr)
{
  cairo_move_to (cr, -0.38, -0.38);
  cairo_line_to (cr, 0.38, 0.38);
  cairo_move_to (cr, -0.38, 0.38);
  cairo_line_to (cr, 0.38, -0.38);
  cairo_stroke (cr);
}

static void
draw_check (cairo_t *cr)
{
  cairo_move_to (cr, -0.4, 0.05);
  cairo_line_to (cr, -0.12, 0.36);
  cairo_line_to (cr, 0.42, -0.34);
  cairo_stroke (cr);
}

static void
draw_diamond (cairo_t *cr)
{
  cairo_move_to (cr, 0, -0.3);
  cairo_line_to (cr, 0.2, 0);
  cairo_line_to (cr, 0, 0.3);
  cairo_line_to (cr, -0.2, 0);
  cairo_close_path (cr);
  cairo_stroke (cr);
}

static void
draw_shape (cairo_t *cr, guint mark)
{
  switch (mark)
    {
    case BW_AFC_EDGE_EARLY:
      draw_triangle (cr, -1);
      break;
    case BW_AFC_EDGE_LATE:
      draw_triangle (cr, 1);
      break;
    case BW_AFC_EDGE_MISSING:
      draw_cross (cr);
      break;
    case BW_AFC_EDGE_RIGHT:
      draw_check (cr);
      break;
    default:
      draw_diamond (cr);
    }
}

static void
draw_mark (const BwSyncLayout *layout, cairo_t *cr, guint mark, double x, double y, double size)
{
  cairo_save (cr);
  cairo_translate (cr, x, y);
  bw_ink_set (cr, layout->canvas->ink, mark_role (mark));
  if (size < LEAST_MARK && mark == BW_AFC_EDGE_RIGHT)
    cairo_rectangle (cr, -0.4, -size / 2, 0.8, size), cairo_fill (cr);
  else
    {
      double side = MAX (size, LEAST_MARK);
      cairo_scale (cr, side, side);
      cairo_set_line_width (cr, mark == BW_SYNC_MARK_HALF ? 0.09 : 0.17);
      draw_shape (cr, mark);
    }
  cairo_restore (cr);
}

/* Private: those of the lines, and those of the key. */
void
bw_sync_draw_marks (const BwSyncLayout *layout, cairo_t *cr)
{
  double half_s = layout->mix->line_s / 2;
  for (guint i = 0; i < layout->run->lines->len; i++)
    {
      const BwSyncLine *line = bw_sync_line (layout, i);
      double x = bw_ruler_x (&layout->ruler, bw_sync_due (layout, line));
      double middle = bw_ruler_x (&layout->ruler, bw_sync_due (layout, line) + half_s);
      if (bw_ruler_shows (&layout->ruler, x))
        draw_mark (layout, cr, line->edge, x, layout->marks_y, layout->size);
      if (line->n_half > 0 && bw_ruler_shows (&layout->ruler, middle) && layout->size >= LEAST_MARK)
        draw_mark (layout, cr, BW_SYNC_MARK_HALF, middle, layout->marks_y, layout->size);
    }
  for (guint i = 0; i < layout->n_keys; i++)
    draw_mark (layout, cr, layout->key[i].mark, layout->key[i].x, layout->key_y,
               layout->canvas->text_height * 0.72);
}
