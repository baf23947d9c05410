/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/raster/raster.h"
#include "core/raster/reading.h"
#include "draw/base/drawing.h"

G_BEGIN_DECLS

/* The drawn line blanking of a raster alone, on the whole page: every interval of it with its
 * dimension line, all from the datum 0H; and, where a standard's limits are given, what it allows:
 * in words beside each figure, and as a band around each edge that it ties to the datum; with the
 * colour burst, if the limits say where it stands.
 *
 * Text is never smaller than the ink's font, and no label overlaps another or is cut. Where the
 * page is too small for all of them, these go first, in this order: the names of the levels, shares
 * of the line, pixels, the dimensions of the burst, those from 0H, the ranges in words, the second
 * and third line of the caption; last any single label that still has no place. */

/**
 * BwBlankingView:
 * @raster: a raster that bw_raster_check() accepts
 * @limits: (nullable): what a standard allows for @raster
 * @across: (nullable): the part of the page that is shown as wide as the page, from 0 to 1; %NULL
 *   for all
 * @mark: the decimal mark
 *
 * What is drawn. All is borrowed.
 */
typedef struct
{
  const BwRaster *raster;
  const BwStandardLimits *limits;
  const BwViewRange *across;
  char mark;
} BwBlankingView;

BwDrawing *bw_blanking_drawing (const BwBlankingView *what, double width, double height,
                                const BwInk *ink);

G_END_DECLS
