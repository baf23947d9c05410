/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/raster/raster.h"
#include "draw/base/drawing.h"

G_BEGIN_DECLS

/* The raster as a map: time to the right through one whole line, lines downward through one field
 * (the frame of a progressive raster), both from the start of their sync; where the picture lies in
 * it, and what of the picture overscan hides. Across and down each have one scale; the two are
 * chosen so that the active picture has its aspect.
 *
 * Text is never smaller than the ink's font, and no label overlaps another or is cut. Where the
 * page is too small for all of them, these go first, in this order: the note below the caption, the
 * durations of the vertical intervals, the dimension of all lines, the dimension of the whole line,
 * pixels, the second line of the caption; last any single label that still has no place. */

/**
 * BwMapView:
 * @raster: a raster that bw_raster_check() accepts
 * @overscan_h: share of the active width beyond the glass, both sides together: 0 to less than 1;
 *   zero if nothing is hidden or nothing is known
 * @overscan_v: share of the active height, likewise
 * @aspect: of the active picture; %BW_RATIO_NONE for square pixels, and for 4:3 where the raster
 *   has no pixels or has the 720 of ITU-R BT.601, which are not square
 * @across: (nullable): what is shown of the line, in seconds after 0H; %NULL for all
 * @down: (nullable): what is shown of the field, in lines after 0V; %NULL for all
 * @mark: the decimal mark
 *
 * What is drawn. All is borrowed.
 */
typedef struct
{
  const BwRaster *raster;
  double overscan_h;
  double overscan_v;
  BwRatio aspect;
  const BwViewRange *across;
  const BwViewRange *down;
  char mark;
} BwMapView;

/* It has one place: points are seconds after 0H across, and lines after 0V down. */
BwDrawing *bw_map_drawing (const BwMapView *what, double width, double height, const BwInk *ink);

G_END_DECLS
