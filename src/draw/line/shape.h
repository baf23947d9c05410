/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/raster/colour-system.h"

G_BEGIN_DECLS

/* One scanning line as the drawings show it: intervals in time after the datum 0H, and levels on a
 * scale of their own. A raster gives no volts, so white is 1, blanking 0, and the sync tip lies
 * 3/7 below; sync edges have no rise time, and the picture is drawn as a staircase. */

#define BW_LEVEL_WHITE 1.0
#define BW_LEVEL_BLANKING 0.0
#define BW_LEVEL_SYNC (3.0 / 7.0)
#define BW_STAIRS 5

typedef enum
{
  BW_INTERVAL_FRONT_PORCH,
  BW_INTERVAL_SYNC,
  BW_INTERVAL_BACK_PORCH,
  BW_INTERVAL_BORDER_LEFT,
  BW_INTERVAL_ACTIVE,
  BW_INTERVAL_BORDER_RIGHT,
  BW_N_INTERVALS
} BwLineInterval;

/**
 * BwLineShape:
 * @start_s: where each interval starts, in seconds after the datum; the last one is the end of the
 *   line, one period after the first
 * @pixels: length of each interval; all zero in a raster defined in time
 * @trilevel: whether the sync interval is a negative and a positive half
 * @burst_from_s: where the colour burst starts; equal to @burst_to_s where there is none
 * @burst_cycles: of the subcarrier, in the burst
 * @burst_level: amplitude of the burst, from blanking to its peak
 *
 * Starts at the front porch, thus before the datum.
 */
typedef struct
{
  double start_s[BW_N_INTERVALS + 1];
  int pixels[BW_N_INTERVALS];
  gboolean trilevel;
  double period_s;
  double burst_from_s;
  double burst_to_s;
  double burst_cycles;
  double burst_level;
} BwLineShape;

/**
 * BwLineStep:
 *
 * A stretch of constant level.
 */
typedef struct
{
  double from_s;
  double to_s;
  double level;
} BwLineStep;

void bw_line_shape_init (BwLineShape *shape, const BwRaster *raster);
void bw_line_shape_add_burst (BwLineShape *shape, const BwRaster *raster, BwColourSystem system);
gboolean bw_line_shape_has_burst (const BwLineShape *shape);
double bw_line_shape_blanking_end (const BwLineShape *shape);
double bw_line_shape_length (const BwLineShape *shape, BwLineInterval interval);
BwLineInterval bw_line_shape_at (const BwLineShape *shape, double time_s);
const char *bw_line_interval_label (BwLineInterval interval);
GArray *bw_line_shape_steps (const BwLineShape *shape, double from_s, double to_s);

G_END_DECLS
