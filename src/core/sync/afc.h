/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "mix.h"

G_BEGIN_DECLS

/* What the line oscillator's AFC (automatic frequency control, the line flywheel) makes of a sync
 * signal through the vertical interval: the edge that it finds on each line, and how far the phase
 * of the oscillator is pulled away.
 *
 * The AFC looks once a line, with a gate of a quarter line to each side of where the edge is due,
 * for the leading edge of the tip that is nearest to that. What lies between two gates, the edges
 * at half lines, it does not see. */

typedef enum
{
  BW_AFC_LOOP_FIRST,  /* without pulses the oscillator runs free at once */
  BW_AFC_LOOP_SECOND, /* it keeps its rate without pulses; critically damped */
  BW_N_AFC_LOOPS
} BwAfcLoop;

extern const BwKindTable bw_afc_loops;

/**
 * BwSyncAfc:
 * @loop: a BwAfcLoop
 * @time_constant_lines: in which a disturbance falls to 1/e (second order: the time constant of its
 *   double pole), %BW_AFC_LINES_MIN to %BW_AFC_LINES_MAX
 * @rate_error: the free-running line period is longer than that of the source by this share; at
 *   most %BW_AFC_RATE_ERROR_MAX either way
 * @tolerance_s: an edge not farther from its place is right; more than zero, less than a quarter of
 *   a line
 * @glitch_s: pulses and gaps narrower than this are taken away before the AFC looks; zero or more,
 *   less than a quarter of a line
 * @picture_width_m: of the tube, to give lengths on it; zero if it is not known
 */
typedef struct
{
  guint loop;
  double time_constant_lines;
  double rate_error;
  double tolerance_s;
  double glitch_s;
  double picture_width_m;
} BwSyncAfc;

#define BW_AFC_LINES_MIN 0.1
#define BW_AFC_LINES_MAX 200.0
#define BW_AFC_RATE_ERROR_MAX 0.2

typedef enum
{
  BW_AFC_EDGE_RIGHT,
  BW_AFC_EDGE_EARLY,
  BW_AFC_EDGE_LATE,
  BW_AFC_EDGE_MISSING,
  BW_N_AFC_EDGES
} BwAfcEdge;

extern const BwKindTable bw_afc_edges;

/**
 * BwSyncLine:
 * @line: as the standard numbers it
 * @due_s: where its edge is due, after the start of field sync; the delay is in it
 * @late_s: by how much the edge comes after that, negative if before; zero if it is missing
 * @in_field_sync: whether the edge is due while V is at its tip, or with an edge of V
 * @n_half: edges between the gate of this line and that of the next
 * @n_extra: more edges in the gate than the one that is taken
 * @phase_s: of the oscillator, later than where it settles on undisturbed lines; negative if
 *   before. NAN if it does not lock
 */
typedef struct
{
  int line;
  double due_s;
  guint edge; /* BwAfcEdge */
  double late_s;
  gboolean in_field_sync;
  guint n_half;
  guint n_extra;
  double phase_s;
} BwSyncLine;

/**
 * BwSyncRun:
 * @lines: (element-type BwSyncLine): in the order of time
 * @n: of lines, by BwAfcEdge
 * @n_half: edges at half lines, in all
 * @n_glitches: pulses and gaps taken away as too narrow
 * @locks: whether enough lines outside field sync have their edge, and the oscillator's own rate
 *   can be pulled in. If not, all that follows is NAN or zero
 * @static_s: how far behind the edges a first-order loop settles, because of its rate error
 * @peak_s: the largest departure of the phase, with its sign
 * @peak_line: where that is
 * @picture_line: the first line with picture
 * @picture_s: departure of the phase there: the picture is moved by it, to the left if it is late
 * @picture_share: the same in parts of the picture's width, which is taken to be the active line
 * @picture_m: the same on the tube; zero if its width is not known
 * @bend_s: the largest departure of the phase from the first line of picture on, with its sign
 * @settle_lines: of picture, until it is off by less than @settle_s for good
 * @settle_s: a thousandth of the active line
 */
typedef struct
{
  GArray *lines;
  guint n[BW_N_AFC_EDGES];
  guint n_half;
  guint n_extra;
  guint n_glitches;
  gboolean locks;
  double static_s;
  double peak_s;
  int peak_line;
  int picture_line;
  double picture_s;
  double picture_share;
  double picture_m;
  double bend_s;
  int settle_lines;
  double settle_s;
} BwSyncRun;

/**
 * BwSyncSpan:
 * @first: of BwSyncRun's lines; @n: how many, one after the other
 *
 * Lines whose edge is not right, all in the same way and by the same amount.
 */
typedef struct
{
  guint first;
  guint n;
  guint edge; /* BwAfcEdge */
  double late_s;
} BwSyncSpan;

#define BW_SYNC_AFC_ERROR (bw_sync_afc_error_quark ())

typedef enum
{
  BW_SYNC_AFC_ERROR_LOOP,
  BW_SYNC_AFC_ERROR_TIME_CONSTANT,
  BW_SYNC_AFC_ERROR_RATE,
  BW_SYNC_AFC_ERROR_WIDTH /* of the tolerance, of a glitch or of the picture */
} BwSyncAfcError;

GQuark bw_sync_afc_error_quark (void);

void bw_sync_afc_init (BwSyncAfc *afc, const BwRaster *raster);
gboolean bw_sync_afc_check (const BwSyncAfc *afc, const BwRaster *raster, GError **error);

BwSyncRun *bw_sync_run_new (const BwSyncMix *mix, const BwSyncAfc *afc);
void bw_sync_run_free (BwSyncRun *run);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (BwSyncRun, bw_sync_run_free)

GArray *bw_sync_run_spans (const BwSyncRun *run);

G_END_DECLS
