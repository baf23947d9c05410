/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ruler.h"

#include <math.h>
#include <string.h>

#include "draw/base/scale.h"
#include "draw/base/text.h"

#define LEAST_OF_LINE 0.75 /* that is seen if its number is to be shown */

/* In heights of a line of text. */
#define SCALED_LINE 14.0 /* a line at least so wide has a scale in microseconds */
#define SCALE_STEP 4.5
#define TICK 0.3
#define SCALE_TICK 0.15
#define STROKE 0.05

/**
 * bw_ruler_init:
 * @ruler: (out caller-allocates): its range and its place on the page are still to be set
 * @canvas: must outlive @ruler
 */
void
bw_ruler_init (BwRuler *ruler, BwCanvas *canvas, double period_s, char mark)
{
  g_return_if_fail (ruler != NULL && canvas != NULL && period_s > 0);
  *ruler = (BwRuler){ .canvas = canvas, .period_s = period_s, .mark = mark };
  ruler->digit = bw_canvas_measure (canvas, "0000").width / 4;
}

/**
 * bw_ruler_line_width:
 *
 * Returns: of one scanning line on the page
 */
double
bw_ruler_line_width (const BwRuler *ruler)
{
  g_return_val_if_fail (ruler != NULL, 0);
  return bw_ruler_x (ruler, ruler->period_s) - bw_ruler_x (ruler, 0);
}

/**
 * bw_ruler_choose_scale:
 * @keeps: whether the page has room for a scale
 */
void
bw_ruler_choose_scale (BwRuler *ruler, gboolean keeps)
{
  g_return_if_fail (ruler != NULL);
  double line = bw_ruler_line_width (ruler), text = ruler->canvas->text_height;

  ruler->scale_s = 0;
  if (keeps && line >= SCALED_LINE * text)
    ruler->scale_s = bw_nice_tick (SCALE_STEP * text / line * ruler->period_s);
}

/* Labels */

/* With space to both sides, so that figures side by side stay apart. Paper lies under one through
 * which the line of the datum passes. */
static void
claim_figure (const BwRuler *ruler, const char *text, double width, double x, double y,
              BwInkRole role)
{
  BwCanvas *canvas = ruler->canvas;
  const BwBox wide = { x - width / 2 - ruler->digit / 2, y, width + ruler->digit,
                       canvas->text_height };
  const BwLabel label = { .text = (char *) text,
                          .box = { x - width / 2, y, width, canvas->text_height },
                          .role = role,
                          .align = PANGO_ALIGN_CENTER,
                          .halo = ruler->crossed && fabs (x - bw_ruler_x (ruler, 0)) < width };
  if (bw_canvas_is_free (canvas, wide))
    bw_canvas_claim (canvas, &label);
}

/**
 * bw_ruler_number_step:
 * @greatest: number of a line
 *
 * Returns: every so many numbers of lines have room
 */
int
bw_ruler_number_step (const BwRuler *ruler, int greatest)
{
  g_return_val_if_fail (ruler != NULL, 0);
  int digits = greatest > 999 ? 4 : 3;
  double wanted = (digits + 1.2) * ruler->digit / bw_ruler_line_width (ruler);
  return (int) bw_nice_tick (MAX (wanted, 1));
}

/**
 * bw_ruler_claim_number:
 * @from_s: where the line starts
 * @y: top of the numbers
 *
 * The number stands in the middle of what is seen of its line, if there is room.
 */
void
bw_ruler_claim_number (const BwRuler *ruler, int line, double from_s, double y, BwInkRole role)
{
  g_return_if_fail (ruler != NULL);
  double x0 = bw_ruler_x (ruler, from_s), width = bw_ruler_line_width (ruler);
  double seen0 = MAX (x0, ruler->left), seen1 = MIN (x0 + width, ruler->right);
  char text[16];

  if (seen1 - seen0 < MIN (LEAST_OF_LINE * width, 8 * ruler->digit))
    return;
  g_snprintf (text, sizeof text, "%d", line);
  claim_figure (ruler, text, (double) strlen (text) * ruler->digit, (seen0 + seen1) / 2, y, role);
}

/**
 * bw_ruler_claim_scale:
 * @from_s: where the line starts
 * @y: top of the figures
 *
 * Claims the figures of the scale along one line, where there is one.
 */
void
bw_ruler_claim_scale (const BwRuler *ruler, double from_s, double y)
{
  g_return_if_fail (ruler != NULL);
  for (int i = 0; ruler->scale_s > 0 && i * ruler->scale_s < ruler->period_s * (1 - 1e-9); i++)
    {
      double x = bw_ruler_x (ruler, from_s + i * ruler->scale_s);
      if (!bw_ruler_shows (ruler, x))
        continue;
      g_autofree char *text = bw_text_us (i * ruler->scale_s, ruler->mark);
      claim_figure (ruler, text, bw_canvas_measure (ruler->canvas, text).width, x, y,
                    BW_INK_GRAPHITE_LIGHT);
    }
}

/* Ticks */

static void
add_tick (const BwRuler *ruler, cairo_t *cr, double time_s, double y, double length)
{
  double x = bw_ruler_x (ruler, time_s);
  if (!bw_ruler_shows (ruler, x))
    return;
  cairo_move_to (cr, x, y);
  cairo_line_to (cr, x, y + length * ruler->canvas->text_height);
}

/**
 * bw_ruler_add_ticks:
 * @from_s: where a line starts
 * @y: of the ticks
 *
 * Adds a tick at the start of the line, and shorter ones along its scale, to the path of @cr.
 */
void
bw_ruler_add_ticks (const BwRuler *ruler, cairo_t *cr, double from_s, double y)
{
  g_return_if_fail (ruler != NULL && cr != NULL);
  add_tick (ruler, cr, from_s, y, TICK);
  for (int i = 1; ruler->scale_s > 0 && i * ruler->scale_s < ruler->period_s; i++)
    add_tick (ruler, cr, from_s + i * ruler->scale_s, y, SCALE_TICK);
}

/**
 * bw_ruler_stroke_ticks:
 *
 * Draws the ticks that have been added.
 */
void
bw_ruler_stroke_ticks (const BwRuler *ruler, cairo_t *cr)
{
  g_return_if_fail (ruler != NULL && cr != NULL);
  bw_canvas_set_pen (ruler->canvas, cr, BW_INK_GRAPHITE_LIGHT, STROKE);
  cairo_stroke (cr);
}
