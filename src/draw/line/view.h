/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/raster/colour-system.h"
#include "draw/base/drawing.h"

G_BEGIN_DECLS

/* The drawn line of a raster: the whole line from one datum to the next, and under it the line
 * blanking enlarged, with dimension lines, and what it shows and by which standard.
 *
 * Text is never smaller than the ink's font, and no label overlaps another or is cut. Where the
 * page is too small for all of them, these go first, in this order: the note on sync of its own
 * conductor, the names of the levels of the whole line, the scale of the enlargement, the names of
 * the levels of the enlargement, shares of the line, pixels, the second line of the caption; last
 * any single label that still has no place. */

/**
 * BwLineView:
 * @raster: a raster that bw_raster_check() accepts
 * @across: (nullable): the part of the page that is shown as wide as the page, from 0 to 1; %NULL
 *   for all
 * @mark: the decimal mark
 * @system: whose burst is drawn, where @raster is one that it goes with
 *
 * What is drawn. All is borrowed.
 */
typedef struct
{
  const BwRaster *raster;
  const BwViewRange *across;
  char mark;
  BwColourSystem system;
} BwLineView;

/* The places of its drawing, each with its own scale: points are seconds after 0H across. */
typedef enum
{
  BW_LINE_WHOLE,
  BW_LINE_PART
} BwLinePlace;

BwDrawing *bw_line_drawing (const BwLineView *what, double width, double height, const BwInk *ink);

G_END_DECLS
