/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/base/field.h"
#include "core/base/severity.h"

G_BEGIN_DECLS

/* Is what the scope reads within the standard? */

typedef enum
{
  BW_READING_LINE_PERIOD,
  BW_READING_LINE_BLANKING,
  BW_READING_FRONT_PORCH,
  BW_READING_LINE_SYNC,
  BW_READING_SYNC_TO_PICTURE, /* datum to the end of line blanking */
  BW_READING_BURST_START,     /* from the datum */
  BW_READING_BURST_LENGTH,
  BW_READING_EQUALISING_WIDTH,
  BW_READING_BROAD_WIDTH,
  BW_READING_SERRATION_WIDTH, /* the gap between broad pulses */
  BW_READING_SYNC_RISE,       /* 10 to 90 % */
  BW_READING_BURST_RISE,
  BW_READING_FIELD_BLANKING,
  BW_READING_WHITE_LEVEL, /* above blanking */
  BW_READING_SETUP_LEVEL, /* black above blanking */
  BW_READING_SYNC_LEVEL,  /* blanking above sync tip */
  BW_READING_BURST_LEVEL, /* peak to peak */
  BW_N_READINGS
} BwReadingKind;

/**
 * BwStandardLimits:
 * @raster: id of the raster that it belongs to
 * @at: for each reading, the nominal value as the first band and the range allowed as the second;
 *   no band where the standard lays down nothing
 */
typedef struct
{
  char *id;
  char *name;
  char *source;
  char *raster;
  BwBands at[BW_N_READINGS];
} BwStandardLimits;

typedef enum
{
  BW_OUTCOME_NOT_LAID_DOWN,
  BW_OUTCOME_WITHIN,
  BW_OUTCOME_TOO_LOW,
  BW_OUTCOME_TOO_HIGH,
  BW_OUTCOME_UNDECIDED /* the uncertainty of the reading reaches across a limit */
} BwOutcome;

/**
 * BwJudgement:
 * @deviation: reading less nominal, signed
 * @to_limit: distance to the nearer limit, negative outside
 *
 * What a reading is worth. All but @outcome are zero where the standard lays down nothing.
 */
typedef struct
{
  BwOutcome outcome;
  double nominal;
  BwRange allowed;
  double deviation;
  double to_limit;
} BwJudgement;

extern const BwKindTable bw_readings;
extern const BwKindTable bw_outcomes;

BwDimension bw_reading_dimension (BwReadingKind kind);
BwSeverity bw_outcome_severity (BwOutcome outcome);
double bw_limits_volts_per_ire (const BwStandardLimits *limits);
gboolean bw_reading_read (const BwStandardLimits *limits, BwReadingKind kind, const char *text,
                          char mark, BwMeasured *measured, GError **error);
GPtrArray *bw_limits_load (const char *text, gsize length, const char *file, GPtrArray *faults);
GPtrArray *bw_limits_shipped (void);
const BwStandardLimits *bw_limits_find (const GPtrArray *limits, const char *id);
void bw_reading_judge (const BwStandardLimits *limits, BwReadingKind kind, double value,
                       double uncertainty, BwJudgement *judgement);

G_END_DECLS
