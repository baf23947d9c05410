/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/raster/reading.h"
#include "draw/base/drawing.h"
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
 * @across: (nullable): what is shown, in seconds after 0H of @line; %NULL for all
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

/* Its places are the panels, by their BwConductor: points are seconds after 0H of the view's line
 * across, and volts on the wire down. */
BwDrawing *bw_levels_drawing (const BwLevelsView *what, double width, double height,
                              const BwInk *ink);
char *bw_levels_text_caption (const BwLevelsView *what);

G_END_DECLS
