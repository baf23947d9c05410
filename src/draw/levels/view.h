/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/raster/reading.h"
#include "draw/base/canvas.h"
#include "draw/base/view-range.h"
#include "model.h"

G_BEGIN_DECLS

/* The levels of a test signal: a panel for each conductor, one above the other on one time axis, as
 * a scope across the real load would show them. At the left the scale in mV, at the right that in
 * IRE where the conductor has one, and the names of the levels.
 *
 * Where the subcarrier is too fine for the page the curve is the envelope of its samples. All
 * conductors that carry a picture have one scale in mV; those that carry sync alone have their own.
 *
 * Text is never smaller than the ink's font, and no label overlaps another or is cut. Where the
 * page is too small for all of them, these go first, in this order: the note below the caption, the
 * names of the bars, the level that would be right (of a load that is not), the levels in IRE
 * beside their names, the highest and lowest level of the picture, the second line of the caption,
 * the names of the levels; last any single label that still has no place. */

/* How much of the signal is drawn. */
typedef enum
{
  BW_LEVELS_LINE,
  BW_LEVELS_FIELD, /* one field's time from the datum of the line on; of a progressive raster, a
                    * frame's */
  BW_N_LEVELS_SPANS
} BwLevelsSpan;

/**
 * BwLevelsView:
 * @model: what is drawn
 * @span: BwLevelsSpan
 * @frame: of the colour sequence, from 0
 * @line: as the standard numbers it, from 1: the line, or the one that a field starts with
 * @show: set of BwConductor that are drawn; zero for all that the signal has
 * @limits: (nullable): whose levels are drawn as bands, across 75 Ω
 * @video: load of the conductors that carry a picture
 * @own_sync: load of those that carry sync alone
 * @across: (nullable): what is shown, in seconds after 0H of @line; %NULL for all of
 *   bw_levels_view_range()
 * @mark: the decimal mark
 *
 * What is drawn. All is borrowed.
 */
typedef struct
{
  BwLevelsModel *model;
  BwLevelsSpan span;
  gint64 frame;
  int line;
  guint show;
  const BwStandardLimits *limits;
  BwLevelsLoad video;
  BwLevelsLoad own_sync;
  const BwViewRange *across;
  char mark;
} BwLevelsView;

/**
 * BwLevelsPoint:
 * @time_s: after 0H of the view's line
 * @line: that lies there; @line_time_s: after the datum of that line
 * @pointer_v: level of the point itself, above blanking, on the wire
 * @low_v: lowest level of the trace there, on the wire: of the envelope, where that is drawn
 * @high_v: highest; the same as @low_v where the curve itself is drawn
 * @stated_v: the middle of the trace as it would be across the right load
 * @volts_per_ire: zero where the conductor has no IRE scale
 *
 * A point of the drawing, read.
 */
typedef struct
{
  BwConductor conductor;
  double time_s;
  int line;
  double line_time_s;
  double pointer_v;
  double low_v;
  double high_v;
  double stated_v;
  double volts_per_ire;
} BwLevelsPoint;

void bw_levels_view_range (const BwLevelsView *what, BwViewRange *across);
void bw_draw_levels_view (cairo_t *cr, double width, double height, const BwInk *ink,
                          const BwLevelsView *what);
gboolean bw_levels_view_read (double width, double height, const BwInk *ink,
                              const BwLevelsView *what, double x, double y, BwLevelsPoint *point);
gboolean bw_levels_view_place (double width, double height, const BwInk *ink,
                               const BwLevelsView *what, BwConductor conductor, double time_s,
                               double volts, double *x, double *y);
GArray *bw_levels_view_labels (double width, double height, const BwInk *ink,
                               const BwLevelsView *what, guint *left_out);
char *bw_levels_text_caption (const BwLevelsView *what);
char *bw_levels_view_describe (const BwLevelsView *what);

G_END_DECLS
