/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/sync/afc.h"
#include "draw/base/drawing.h"

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
 * @range: (nullable): what is shown, in seconds after 0V; %NULL for all
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

/* Its places are its rows: points are seconds after 0V across. */
BwDrawing *bw_sync_drawing (const BwSyncView *what, double width, double height, const BwInk *ink);

G_END_DECLS
