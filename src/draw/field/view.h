/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/base/drawing.h"
#include "shape.h"

G_BEGIN_DECLS

/* The drawn vertical interval of a raster: a row for each field, one above the other on one time
 * axis that starts with field sync (0V), so that the half line between them is seen; line numbers
 * as the standard numbers them; the groups of pulses with their durations.
 *
 * Text is never smaller than the ink's font, and no label overlaps another or is cut. Line numbers
 * thin out with the space that a line has: every one, every 2nd, 5th, 10th, 20th, 50th and so on;
 * the line of field sync and the last and the first line of picture keep theirs before all others.
 * Where the page is too small for the rest, these go first, in this order: the scale in
 * microseconds, the note on pulses and burst, the lines without burst, the whole field blanking,
 * the durations in time, the second line of the caption; last any single label that still has no
 * place. */

/**
 * BwFieldView:
 * @raster: a raster that bw_raster_check() accepts
 * @system: whose burst is drawn; %BW_SYSTEM_NONE for none
 * @colour_field: the field of the colour sequence that is drawn first, from 0, counted on from the
 *   last to the first (BwSystemFacts); even ones are field 1 of the raster
 * @range: (nullable): what is shown, in seconds after 0V; %NULL for all, which is the vertical
 *   interval with some lines of picture before and after
 * @mark: the decimal mark
 *
 * What is drawn. All is borrowed.
 */
typedef struct
{
  const BwRaster *raster;
  BwColourSystem system;
  int colour_field;
  const BwViewRange *range;
  char mark;
} BwFieldView;

/* Its places are the rows, from 0 at the top: points are seconds after 0V across. */
BwDrawing *bw_field_drawing (const BwFieldView *what, double width, double height,
                             const BwInk *ink);

G_END_DECLS
