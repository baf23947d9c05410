/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/raster/raster.h"
#include "draw/base/canvas.h"

G_BEGIN_DECLS

/* The drawn line of a raster: the whole line from one datum to the next, and under it the line
 * blanking enlarged, with dimension lines, and what it shows and by which standard.
 *
 * Text is never smaller than the ink's font, and no label overlaps another or is cut. Where the
 * page is too small for all of them, these go first, in this order: the note on sync of its own
 * conductor, the names of the levels of the whole line, the scale of the enlargement, the names of
 * the levels of the enlargement, shares of the line, pixels, the second line of the caption; last
 * any single label that still has no place. */

void bw_draw_line_view (cairo_t *cr, double width, double height, const BwInk *ink,
                        const BwRaster *raster, char mark);
double bw_line_view_time_at (double width, double height, const BwInk *ink, const BwRaster *raster,
                             char mark, double x, double y, gboolean *inside);
GArray *bw_line_view_labels (double width, double height, const BwInk *ink, const BwRaster *raster,
                             char mark, guint *left_out);
char *bw_line_view_describe (const BwRaster *raster, char mark);

G_END_DECLS
