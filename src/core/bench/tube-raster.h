/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sheet.h"

G_BEGIN_DECLS

/* Rasters made for one set: what a source that can be set is to be set to. */

/**
 * BwClockReach:
 * @lowest_hz: of the pixel clock that the source gives; zero: any
 * @highest_hz: likewise
 * @step_hz: its clock is a multiple of this; zero: any clock
 * @no_interlace: it gives no interlaced raster
 * @multiple: all figures across are multiples of so many pixels; zero or one: any
 */
typedef struct
{
  double lowest_hz;
  double highest_hz;
  double step_hz;
  int multiple;
  gboolean no_interlace;
} BwClockReach;

/**
 * BwTubeRequest:
 * @width: active pixels
 * @height: active lines of the frame
 * @field_rate_hz: fields a second
 * @interlaced: two fields to the frame; @height must then be even
 * @overscan: the picture may fill the whole scan, also what lies behind the edge of the glass
 * @clock: what the source can give
 * @input: (nullable): the input in question, for its own line rates, its scans and its clamp
 * @catalogue: (nullable): where the rasters of the standards are looked for
 */
typedef struct
{
  int width;
  int height;
  BwRatio field_rate_hz;
  gboolean interlaced;
  gboolean overscan;
  BwClockReach clock;
  const BwInput *input;
  const BwCatalogue *catalogue;
} BwTubeRequest;

/**
 * BwTubeAnswer:
 * @raster: owned
 * @why: (element-type utf8): a sentence for each choice, translated
 * @costs: (element-type utf8): what it costs, a sentence each, translated; may be empty
 * @rank: the lower the better
 * @is_standard: line rate and count of lines are those of a raster of the catalogue
 *
 * One raster that holds.
 */
typedef struct
{
  BwRaster *raster;
  GPtrArray *why;
  GPtrArray *costs;
  double rank;
  gboolean is_standard;
} BwTubeAnswer;

#define BW_TUBE_ERROR (bw_tube_error_quark ())

typedef enum
{
  BW_TUBE_ERROR_REQUEST,   /* a size or rate that cannot be */
  BW_TUBE_ERROR_FIELD_RATE, /* not in the monitor's bands */
  BW_TUBE_ERROR_LINE_RATE, /* no line rate in the monitor's bands does it */
  BW_TUBE_ERROR_CLOCK,     /* no pixel clock that the source gives does it */
  BW_TUBE_ERROR_UNKNOWN    /* a figure of the monitor that is needed is not known */
} BwTubeError;

/* How many answers there are at most. */
#define BW_TUBE_ANSWERS_MAX 5

GQuark bw_tube_error_quark (void);

GPtrArray *bw_tube_rasters (const BwTubeRequest *request, const BwMonitor *monitor,
                            const BwLimits *limits, GError **error);
BwClockReach bw_clock_reach_of (const BwSource *source);
void bw_tube_answer_free (BwTubeAnswer *answer);

G_END_DECLS
