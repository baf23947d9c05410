/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "canvas.h"
#include "scale.h"

G_BEGIN_DECLS

/* A plot with two scales: its frame, ticks with their figures, a caption under it, and curves told
 * apart by dash as well as ink. */

/**
 * BwChartAxis:
 * @low: value at the left or bottom end
 * @high: value at the other end, greater than @low
 * @unit: the value of one of what the figures count, in the unit of @low: 1e-3 for millimetres
 * @name: what it counts, with the unit: "TV lines per picture height"; borrowed
 */
typedef struct
{
  double low;
  double high;
  double unit;
  const char *name;
} BwChartAxis;

/**
 * BwChart:
 * @plot: where the curves are
 * @canvas: borrowed
 * @tick_x: from one figure to the next, in the unit of the axis
 * @tick_y: likewise; zero in a chart of rows
 */
typedef struct
{
  BwCanvas *canvas;
  BwChartAxis x;
  BwChartAxis y;
  BwBox plot;
  double tick_x;
  double tick_y;
} BwChart;

/* How a curve is drawn. */
typedef enum
{
  BW_DASH_NONE,
  BW_DASH_LONG,
  BW_DASH_SHORT,
  BW_DASH_DOT,
  BW_DASH_LONG_DOT,
  BW_DASH_LONG_DOT_DOT,
  BW_N_DASHES
} BwDash;

/**
 * BwChartCurve:
 * @value: the value at @x
 * @from: where it starts; @to: where it ends
 * @width: of the line
 */
typedef struct
{
  double (*value) (double x, gconstpointer data);
  gconstpointer data;
  double from;
  double to;
  BwInkRole role;
  BwDash dash;
  double width;
} BwChartCurve;

gboolean bw_chart_init (BwChart *chart, BwCanvas *canvas, const BwChartAxis *x,
                        const BwChartAxis *y, const char *caption, char mark);
gboolean bw_chart_init_rows (BwChart *chart, BwCanvas *canvas, const BwChartAxis *x, double left,
                             double right, guint rows, const char *caption, char mark);
double bw_chart_x (const BwChart *chart, double value);
double bw_chart_y (const BwChart *chart, double value);

void bw_set_dash (cairo_t *cr, BwDash dash, double width);
void bw_chart_draw_frame (const BwChart *chart, cairo_t *cr);
void bw_chart_draw_curve (const BwChart *chart, cairo_t *cr, const BwChartCurve *curve);
void bw_chart_draw_across (const BwChart *chart, cairo_t *cr, double y, BwInkRole role,
                           BwDash dash);
void bw_chart_draw_down (const BwChart *chart, cairo_t *cr, double x, BwInkRole role, BwDash dash);
void bw_chart_draw_point (const BwChart *chart, cairo_t *cr, double x, double y, BwInkRole role);

G_END_DECLS
