/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/sync/afc.h"
#include "draw/base/canvas.h"
#include "draw/base/view-range.h"

G_BEGIN_DECLS

/* The drawn mixture of sync over the vertical interval: H, V, what the gate makes of them and the
 * raster's own composite sync, one under the other on one time axis that starts with field sync
 * (0V). Under the result stands a mark at each place where a line's edge is due, of a shape for an
 * edge that is right, early, late or missing; at the foot the phase of the line oscillator.
 *
 * Text is never smaller than the ink's font, and no label overlaps another or is cut. Line numbers
 * thin out with the space that a line has. Where the page is too small for the rest, these go
 * first, in this order: the scale in microseconds, the note, the polarities of the rows, the words
 * under the marks, the second line of the caption, the key to the marks; last any single label that
 * still has no place. */

/**
 * BwSyncView:
 * @what: a case that bw_sync_mix_check() accepts
 * @afc: one that bw_sync_afc_check() accepts for its raster
 * @range: (nullable): what is shown, in seconds after 0V; %NULL for all of bw_sync_view_range()
 * @mark: the decimal mark
 *
 * What is drawn. All is borrowed.
 */
typedef struct
{
  const BwSyncMixCase *what;
  const BwSyncAfc *afc;
  const BwViewRange *range;
  char mark;
} BwSyncView;

typedef enum
{
  BW_SYNC_ROW_H,
  BW_SYNC_ROW_V,
  BW_SYNC_ROW_RESULT,
  BW_SYNC_ROW_STANDARD,
  BW_SYNC_ROW_PHASE,
  BW_N_SYNC_ROWS
} BwSyncRow;

/**
 * BwSyncPoint:
 * @time_s: after the start of field sync; negative before it
 * @line: as the standard numbers it
 * @line_time_s: after the start of that line
 * @level: 0 or 1 of a row of sync; -1 in the row of the phase
 * @edge: a BwAfcEdge: of that line
 * @late_s: of that line's edge
 * @phase_s: of the oscillator on that line; NAN if it does not lock
 *
 * A point of the drawing, read.
 */
typedef struct
{
  BwSyncRow row;
  double time_s;
  int line;
  double line_time_s;
  int level;
  guint edge;
  double late_s;
  double phase_s;
} BwSyncPoint;

void bw_sync_view_range (const BwSyncMixCase *what, BwViewRange *range);
void bw_draw_sync_view (cairo_t *cr, double width, double height, const BwInk *ink,
                        const BwSyncView *what);
gboolean bw_sync_view_read (double width, double height, const BwInk *ink, const BwSyncView *what,
                            double x, double y, BwSyncPoint *point);
double bw_sync_view_x_at (double width, double height, const BwInk *ink, const BwSyncView *what,
                          double time_s);
GArray *bw_sync_view_labels (double width, double height, const BwInk *ink, const BwSyncView *what,
                             guint *left_out);
char *bw_sync_view_row_name (const BwSyncView *what, BwSyncRow row);
char *bw_sync_view_describe (const BwSyncView *what);

G_END_DECLS
