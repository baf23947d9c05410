/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "catalogue.h"

G_BEGIN_DECLS

/* Which raster is this? From what a counter and a scope read. */

/**
 * BwReadings:
 * @line_rate_hz: from a counter; zero: not read
 * @field_rate_hz: from a counter; zero: not read
 * @rate_tolerance: of both, as a share; zero: %BW_RATE_TOLERANCE
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
 * @score: 1 for a perfect match, exp (−½ Σ (error/tolerance)²) in general
 * @certainty: @score over the sum of the scores of all distinct rasters
 * @line_rate_error_ppm: reading less raster, in parts in a million; zero if not read
 * @same_as: (nullable): an earlier candidate with the same timing under another name
 * @decider: what to read next to tell it from its nearest rival; translated, static
 */
typedef struct
{
  const BwRaster *raster;
  double score;
  double certainty;
  double line_rate_error_ppm;
  double field_rate_error_ppm;
  double lines_per_field;
  const BwRaster *same_as;
  const char *decider;
} BwCandidate;

double bw_readings_lines_per_field (const BwReadings *readings);
GArray *bw_identify (const BwReadings *readings, const BwCatalogue *catalogue, guint most);

G_END_DECLS
