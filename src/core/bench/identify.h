/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "catalogue.h"

G_BEGIN_DECLS

/* Which raster is this? From what a counter and a scope read. */

/**
 * BwReadings:
 * @line_rate_hz: from a counter; zero: not read
 * @field_rate_hz: from a counter; zero: not read
 * @line_rate_uncertainty_hz: what its digits or the counter leave open, to either side; within
 *   that no raster is nearer than another
 * @field_rate_uncertainty_hz: of the field rate
 * @rate_tolerance: of the source, in both rates, as a share; zero: %BW_RATE_TOLERANCE
 * @lines_per_field: counted on a scope; zero: not read (it follows from the two rates)
 * @scan_known: whether the scan was seen
 * @scan: BwScan, if it is known
 * @line_sync_s: width of line sync; zero: not read
 * @field_sync_lines: length of field sync; zero: not read
 * @shape_known: whether the shape of sync was seen
 * @shape: BwSyncShape, if it is known
 */
typedef struct
{
  double line_rate_hz;
  double field_rate_hz;
  double line_rate_uncertainty_hz;
  double field_rate_uncertainty_hz;
  double rate_tolerance;
  double lines_per_field;
  gboolean scan_known;
  guint scan;
  double line_sync_s;
  double field_sync_lines;
  gboolean shape_known;
  guint shape;
} BwReadings;

/* 200 parts in a million: a bench counter and a free-running source (common practice, no source).
 * It tells 59.94 Hz from 60 Hz, which are 1000 parts in a million apart. */
#define BW_RATE_TOLERANCE 200e-6

/**
 * BwCandidate:
 * @raster: borrowed from the catalogue
 * @distance: Σ (error/tolerance)², of what of each error is beyond the uncertainty of the reading
 * @score: 1 for a perfect match, exp (−@distance / 2) in general
 * @certainty: @score over the sum of the scores of all distinct rasters, and of one that is not in
 *   the catalogue where less than two rates were read
 * @line_rate_error_ppm: reading less raster, in parts in a million; zero if not read
 * @nth_of_kind: how many that are as near, of the same lines of a field and scan, come before it
 * @kinds: how many kinds of timing, by lines of a field and scan, agree about as well as the best
 * @same_as: (nullable): an earlier candidate with the same timing under another name
 * @rival: (nullable): a candidate that agrees about as well and is told from it most easily; if none
 *   does, the nearest
 * @decider: (nullable): what to read next to tell it from @rival; translated, static
 */
typedef struct
{
  const BwRaster *raster;
  double distance;
  double score;
  double certainty;
  double line_rate_error_ppm;
  double field_rate_error_ppm;
  double lines_per_field;
  guint nth_of_kind;
  guint kinds;
  const BwRaster *same_as;
  const BwRaster *rival;
  const char *decider;
} BwCandidate;

/* A score below this is no agreement: beyond three tolerances in one reading, or as much in all. */
#define BW_SCORE_POOR 0.011

gboolean bw_candidate_opens_kind (const GArray *candidates, guint i);
gboolean bw_readings_decide (const BwReadings *readings);
double bw_readings_lines_per_field (const BwReadings *readings);
GArray *bw_identify (const BwReadings *readings, const BwCatalogue *catalogue, guint most);

G_END_DECLS
