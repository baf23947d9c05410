/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "chart.h"

#include <math.h>

/* In heights of a line of text. */
#define TICK_GAP_X 3.6
#define TICK_GAP_Y 2.0
#define LEAST_WIDTH 8.0
#define LEAST_HEIGHT 4.0
#define TICK 0.35

#define CAPTION_LINES 4

static double
first_tick (const BwChartAxis *axis, double tick)
{
  return bw_first_tick (axis->low / axis->unit, tick);
}

static double
last_tick (const BwChartAxis *axis, double tick)
{
  return axis->high / axis->unit + tick * 1e-9;
}

/**
 * bw_chart_x:
 *
 * Returns: where @value of the axis across is
 */
double
bw_chart_x (const BwChart *chart, double value)
{
  return chart->plot.x
         + chart->plot.width * (value - chart->x.low) / (chart->x.high - chart->x.low);
}

/**
 * bw_chart_y:
 *
 * Returns: where @value of the axis up is
 */
double
bw_chart_y (const BwChart *chart, double value)
{
  return chart->plot.y + chart->plot.height
         - chart->plot.height * (value - chart->y.low) / (chart->y.high - chart->y.low);
}

/* The widest figure of the axis up. */
static double
widest_figure (const BwChart *chart, double tick, char mark)
{
  double widest = 0;
  for (double f = first_tick (&chart->y, tick); f <= last_tick (&chart->y, tick); f += tick)
    {
      g_autofree char *text = bw_tick_text (f, tick, mark);
      widest = MAX (widest, bw_canvas_measure (chart->canvas, text).width);
    }
  return widest;
}

static void
claim_figures (BwChart *chart, char mark)
{
  BwCanvas *canvas = chart->canvas;
  double gap = canvas->text_height * TICK + canvas->pad / 4;
  double bottom = chart->plot.y + chart->plot.height;

  for (double f = first_tick (&chart->x, chart->tick_x); f <= last_tick (&chart->x, chart->tick_x);
       f += chart->tick_x)
    {
      g_autofree char *text = bw_tick_text (f, chart->tick_x, mark);
      bw_canvas_claim_at (canvas, text, BW_INK_GRAPHITE, bw_chart_x (chart, f * chart->x.unit),
                          bottom + gap, 0.5, 0);
    }
  if (!(chart->tick_y > 0))
    return;
  for (double f = first_tick (&chart->y, chart->tick_y); f <= last_tick (&chart->y, chart->tick_y);
       f += chart->tick_y)
    {
      g_autofree char *text = bw_tick_text (f, chart->tick_y, mark);
      bw_canvas_claim_at (canvas, text, BW_INK_GRAPHITE, chart->plot.x - gap,
                          bw_chart_y (chart, f * chart->y.unit), 1, 0.5);
    }
}

/* Names of the axes: that of the axis up above it, that of the axis across under its right end. */
static void
claim_names (BwChart *chart)
{
  BwCanvas *canvas = chart->canvas;
  double below = chart->plot.y + chart->plot.height + canvas->text_height * (1 + TICK)
                 + canvas->pad / 2;

  if (chart->y.name != NULL)
    bw_canvas_claim_at (canvas, chart->y.name, BW_INK_GRAPHITE_LIGHT, canvas->pad, canvas->pad, 0,
                        0);
  bw_canvas_claim_at (canvas, chart->x.name, BW_INK_GRAPHITE_LIGHT,
                      chart->plot.x + chart->plot.width, below, 1, 0);
}

/* Sets where the plot stands up and down. The caption is left out where there is no room for it and a
 * plot of @least. Returns whether there is room for the plot. */
static gboolean
place_above_caption (BwChart *chart, const char *caption, double least)
{
  BwCanvas *canvas = chart->canvas;
  double text = canvas->text_height;
  double words = bw_canvas_words_height (canvas, caption, CAPTION_LINES);
  double below = 2 * text + TICK * text + 2 * canvas->pad; /* figures and name of the axis */
  double bottom = canvas->height - canvas->pad;

  chart->plot.y = canvas->pad + 1.6 * text;
  chart->plot.height = bottom - words - below - chart->plot.y;
  if (chart->plot.height >= least)
    {
      bw_canvas_claim_words (canvas, caption, BW_INK_GRAPHITE_LIGHT, bottom - words, words);
      return TRUE;
    }
  chart->plot.height = bottom - below - chart->plot.y;
  return chart->plot.height >= least;
}

/**
 * bw_chart_init:
 * @chart: (out): laid out
 * @canvas: borrowed; empty
 * @caption: what it shows, under it
 * @mark: the decimal mark
 *
 * Lays a chart out on the whole canvas, and claims the places of its figures and names.
 *
 * Returns: %FALSE if the canvas is too small for a plot, even without the caption
 */
gboolean
bw_chart_init (BwChart *chart, BwCanvas *canvas, const BwChartAxis *x, const BwChartAxis *y,
               const char *caption, char mark)
{
  g_return_val_if_fail (chart != NULL && canvas != NULL && x != NULL, FALSE);
  g_return_val_if_fail (y != NULL && caption != NULL, FALSE);
  double text = canvas->text_height;

  *chart = (BwChart){ .canvas = canvas, .x = *x, .y = *y };
  if (!place_above_caption (chart, caption, LEAST_HEIGHT * text))
    return FALSE;
  chart->tick_y = bw_nice_tick (TICK_GAP_Y * text * (y->high - y->low) / y->unit
                                / chart->plot.height);
  chart->plot.x = canvas->pad * 1.5 + TICK * text + widest_figure (chart, chart->tick_y, mark);
  chart->plot.width = canvas->width - 2 * canvas->pad - chart->plot.x;
  if (chart->plot.width < LEAST_WIDTH * text)
    return FALSE;
  chart->tick_x = bw_nice_tick (TICK_GAP_X * text * (x->high - x->low) / x->unit
                                / chart->plot.width);
  claim_figures (chart, mark);
  claim_names (chart);
  return TRUE;
}

/**
 * bw_chart_init_rows:
 * @chart: (out): laid out
 * @left: width of what stands left of the plot; @right: likewise
 * @rows: how many; the axis up counts them from the bottom
 *
 * As bw_chart_init(), for rows with names in place of a scale.
 *
 * Returns: %FALSE if the canvas is too small for a plot
 */
gboolean
bw_chart_init_rows (BwChart *chart, BwCanvas *canvas, const BwChartAxis *x, double left,
                    double right, guint rows, const char *caption, char mark)
{
  g_return_val_if_fail (chart != NULL && canvas != NULL && x != NULL && caption != NULL, FALSE);
  double text = canvas->text_height;

  *chart = (BwChart){ .canvas = canvas, .x = *x, .y = { 0, rows, 1, NULL } };
  chart->plot.x = left;
  chart->plot.width = canvas->width - right - left;
  if (!place_above_caption (chart, caption, rows * text)
      || chart->plot.width < LEAST_WIDTH * text)
    return FALSE;
  chart->tick_x = bw_nice_tick (TICK_GAP_X * text * (x->high - x->low) / x->unit
                                / chart->plot.width);
  claim_figures (chart, mark);
  claim_names (chart);
  return TRUE;
}

/**
 * bw_set_dash:
 * @width: of the line
 */
void
bw_set_dash (cairo_t *cr, BwDash dash, double width)
{
  g_return_if_fail (cr != NULL);
  static const struct
  {
    int n;
    double at[6];
  } patterns[BW_N_DASHES] = {
    [BW_DASH_NONE] = { 0, { 0 } },
    [BW_DASH_LONG] = { 2, { 9, 4 } },
    [BW_DASH_SHORT] = { 2, { 4, 3 } },
    [BW_DASH_DOT] = { 2, { 1, 3 } },
    [BW_DASH_LONG_DOT] = { 4, { 9, 3, 1, 3 } },
    [BW_DASH_LONG_DOT_DOT] = { 6, { 9, 3, 1, 3, 1, 3 } },
  };
  double scaled[6];
  for (int i = 0; i < patterns[dash].n; i++)
    scaled[i] = patterns[dash].at[i] * width;
  cairo_set_dash (cr, scaled, patterns[dash].n, 0);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_BUTT);
}

/**
 * bw_chart_draw_frame:
 *
 * Draws rules at the figures, and the two scales.
 */
void
bw_chart_draw_frame (const BwChart *chart, cairo_t *cr)
{
  g_return_if_fail (chart != NULL && cr != NULL);
  const BwBox *plot = &chart->plot;
  double tick = chart->canvas->text_height * TICK, bottom = plot->y + plot->height;

  cairo_save (cr);
  cairo_set_line_width (cr, 1);
  bw_ink_set (cr, chart->canvas->ink, BW_INK_RULE);
  for (double f = first_tick (&chart->x, chart->tick_x); f <= last_tick (&chart->x, chart->tick_x);
       f += chart->tick_x)
    {
      double x = floor (bw_chart_x (chart, f * chart->x.unit)) + 0.5;
      cairo_move_to (cr, x, plot->y);
      cairo_line_to (cr, x, bottom + tick);
    }
  for (double f = first_tick (&chart->y, chart->tick_y);
       chart->tick_y > 0 && f <= last_tick (&chart->y, chart->tick_y); f += chart->tick_y)
    {
      double y = floor (bw_chart_y (chart, f * chart->y.unit)) + 0.5;
      cairo_move_to (cr, plot->x - tick, y);
      cairo_line_to (cr, plot->x + plot->width, y);
    }
  cairo_stroke (cr);
  bw_ink_set (cr, chart->canvas->ink, BW_INK_GRAPHITE_LIGHT);
  cairo_move_to (cr, floor (plot->x) + 0.5, plot->y);
  cairo_line_to (cr, floor (plot->x) + 0.5, floor (bottom) + 0.5);
  cairo_line_to (cr, plot->x + plot->width, floor (bottom) + 0.5);
  cairo_stroke (cr);
  cairo_restore (cr);
}

static void
clip (const BwChart *chart, cairo_t *cr)
{
  cairo_rectangle (cr, chart->plot.x, chart->plot.y, chart->plot.width, chart->plot.height);
  cairo_clip (cr);
}

/**
 * bw_chart_draw_curve:
 *
 * Draws a curve, point by point across the plot.
 */
void
bw_chart_draw_curve (const BwChart *chart, cairo_t *cr, const BwChartCurve *curve)
{
  g_return_if_fail (chart != NULL && cr != NULL && curve != NULL);
  double from = MAX (curve->from, chart->x.low), to = MIN (curve->to, chart->x.high);
  double step = (chart->x.high - chart->x.low) / chart->plot.width;
  if (!(to > from))
    return;

  cairo_save (cr);
  clip (chart, cr);
  bw_ink_set (cr, chart->canvas->ink, curve->role);
  cairo_set_line_width (cr, curve->width);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  bw_set_dash (cr, curve->dash, curve->width);
  for (double x = from; x < to; x += step)
    cairo_line_to (cr, bw_chart_x (chart, x), bw_chart_y (chart, curve->value (x, curve->data)));
  cairo_line_to (cr, bw_chart_x (chart, to), bw_chart_y (chart, curve->value (to, curve->data)));
  cairo_stroke (cr);
  cairo_restore (cr);
}

static void
draw_line (const BwChart *chart, cairo_t *cr, double x0, double y0, double x1, double y1,
           BwInkRole role, BwDash dash)
{
  cairo_save (cr);
  clip (chart, cr);
  bw_ink_set (cr, chart->canvas->ink, role);
  cairo_set_line_width (cr, 1.2);
  bw_set_dash (cr, dash, 1.2);
  cairo_move_to (cr, x0, y0);
  cairo_line_to (cr, x1, y1);
  cairo_stroke (cr);
  cairo_restore (cr);
}

/**
 * bw_chart_draw_across:
 *
 * Draws a straight line across the plot at the value @y.
 */
void
bw_chart_draw_across (const BwChart *chart, cairo_t *cr, double y, BwInkRole role, BwDash dash)
{
  g_return_if_fail (chart != NULL && cr != NULL);
  double at = bw_chart_y (chart, y);
  draw_line (chart, cr, chart->plot.x, at, chart->plot.x + chart->plot.width, at, role, dash);
}

/**
 * bw_chart_draw_down:
 *
 * Draws a straight line down the plot at the value @x.
 */
void
bw_chart_draw_down (const BwChart *chart, cairo_t *cr, double x, BwInkRole role, BwDash dash)
{
  g_return_if_fail (chart != NULL && cr != NULL);
  double at = bw_chart_x (chart, x);
  draw_line (chart, cr, at, chart->plot.y, at, chart->plot.y + chart->plot.height, role, dash);
}

/**
 * bw_chart_draw_point:
 *
 * Marks a point with a ring.
 */
void
bw_chart_draw_point (const BwChart *chart, cairo_t *cr, double x, double y, BwInkRole role)
{
  g_return_if_fail (chart != NULL && cr != NULL);
  cairo_save (cr);
  cairo_new_path (cr);
  cairo_arc (cr, bw_chart_x (chart, x), bw_chart_y (chart, y), chart->canvas->text_height * 0.3, 0,
             2 * G_PI);
  bw_ink_set (cr, chart->canvas->ink, BW_INK_PAPER);
  cairo_fill_preserve (cr);
  bw_ink_set (cr, chart->canvas->ink, role);
  cairo_set_line_width (cr, 2);
  cairo_stroke (cr);
  cairo_restore (cr);
}
