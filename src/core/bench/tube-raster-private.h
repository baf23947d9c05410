/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tube-raster.h"

G_BEGIN_DECLS

/* Where the line rate and the count of lines of a raster come from. */
typedef enum
{
  BW_TUBE_STANDARD, /* a raster of the catalogue */
  BW_TUBE_NOMINAL,  /* the nominal line rate of a set that has only one */
  BW_TUBE_EXACT,    /* a standard's count of lines at exactly the field rate that was asked for */
  BW_TUBE_INSIDE,   /* the lowest line rate that shows every line */
  BW_TUBE_LOWEST    /* the lowest line rate that holds, with lines behind the edge of the glass */
} BwTubeOrigin;

/* What the search works with. */
typedef struct
{
  const BwTubeRequest *request;
  const BwMonitor *monitor;
  const BwLimits *limits;
  const BwBands *line_rates_hz;
  int times;             /* how often each line is sent: 1 or 2 */
  int active_half_lines; /* of a field, with lines that are sent twice */
  GPtrArray *answers;
  gboolean too_many_digits; /* of the field rate, for an exact line rate */
  double clock_hz; /* the lowest that was too high for the source; zero: none was */
} BwTubeSearch;

/**
 * BwTubeSkeleton:
 * @half_lines: of a field, all
 * @front: share of the line; likewise @sync and @back
 * @v_active: half lines of the picture of the standard; zero: there is no standard
 * @standard: (nullable): the raster of the catalogue that the shares are from
 *
 * A raster before its pixels are counted.
 */
typedef struct
{
  BwTubeOrigin origin;
  BwRatio line_rate_hz;
  int half_lines;
  double front;
  double sync;
  double back;
  int v_active;
  int v_front;
  int v_sync;
  guint h_polarity;
  guint v_polarity;
  const BwRaster *standard;
} BwTubeSkeleton;

double bw_tube_retrace_half_lines (const BwTubeSearch *search, double line_rate_hz);
double bw_tube_hidden_lines (const BwTubeSearch *search, double line_rate_hz, int half_lines);
const BwRange *bw_tube_band (const BwBands *bands, double value, double margin, BwRange *with_pull_in);
gboolean bw_tube_lay_out (const BwTubeSearch *search, const BwTubeSkeleton *skeleton,
                          BwRaster *raster, int *widened);
void bw_tube_say_why (const BwTubeSearch *search, const BwTubeSkeleton *skeleton, int widened,
                      BwTubeAnswer *answer);
void bw_tube_say_costs (const BwTubeSearch *search, const BwTubeSkeleton *skeleton,
                        BwTubeAnswer *answer);

G_END_DECLS
