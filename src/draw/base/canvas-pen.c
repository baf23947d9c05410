/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "canvas.h"

/* What the drawings draw with: all in heights of a line of text. */

#define TRACE 0.11        /* width of a sync trace where the lines are far apart */
#define DENSE_TRACE 0.055 /* the same where they are close, as a share of the width of a line */

/**
 * bw_canvas_draw_paper:
 *
 * Fills the page with paper.
 */
void
bw_canvas_draw_paper (const BwCanvas *canvas, cairo_t *cr)
{
  g_return_if_fail (canvas != NULL && cr != NULL);
  cairo_new_path (cr);
  bw_ink_set (cr, canvas->ink, BW_INK_PAPER);
  cairo_rectangle (cr, 0, 0, canvas->width, canvas->height);
  cairo_fill (cr);
}

/**
 * bw_canvas_set_pen:
 * @width: of the lines to come, in heights of a line of text
 */
void
bw_canvas_set_pen (const BwCanvas *canvas, cairo_t *cr, BwInkRole role, double width)
{
  g_return_if_fail (canvas != NULL && cr != NULL);
  bw_ink_set (cr, canvas->ink, role);
  cairo_set_line_width (cr, width * canvas->text_height);
}

/**
 * bw_canvas_trace_width:
 * @line: width of a scanning line on the page
 *
 * Returns: the width of the trace of many lines, in user-space units: thinner where they are dense
 */
double
bw_canvas_trace_width (const BwCanvas *canvas, double line)
{
  double most = TRACE * canvas->text_height;
  return CLAMP (DENSE_TRACE * line, 0.55 * most, most);
}

/**
 * bw_canvas_draw_arrow:
 * @direction: along which it points: 1 down or -1 up
 * @length: of the arrowhead, in heights of a line of text; likewise @width
 *
 * Draws an arrowhead whose tip is at @x, @y.
 */
void
bw_canvas_draw_arrow (const BwCanvas *canvas, cairo_t *cr, double x, double y, double direction,
                      double length, double width)
{
  g_return_if_fail (canvas != NULL && cr != NULL);
  double text = canvas->text_height;
  cairo_move_to (cr, x, y);
  cairo_line_to (cr, x - width / 2 * text, y - direction * length * text);
  cairo_line_to (cr, x + width / 2 * text, y - direction * length * text);
  cairo_close_path (cr);
  cairo_fill (cr);
}
