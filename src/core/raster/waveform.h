/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "raster.h"

G_BEGIN_DECLS

/* The sync of a raster as pulses in time. */

typedef enum
{
  BW_PULSE_LINE,
  BW_PULSE_EQUALISING,
  BW_PULSE_BROAD,
  BW_N_PULSES
} BwPulseKind;

/**
 * BwPulse:
 * @start_s: leading edge, counted from the start of field sync
 * @width_s: at half amplitude
 * @line: number of the line that it lies in, as the standard numbers them
 * @half: whether it stands in the middle of its line
 */
typedef struct
{
  BwPulseKind kind;
  double start_s;
  double width_s;
  int line;
  gboolean half;
} BwPulse;

/**
 * BwVerticalInterval:
 * @field: 0 or 1
 * @start_half_line: of the interval, counted from the start of field sync; negative
 * @end_half_line: likewise, after the picture begins
 * @pulses: (element-type BwPulse): composite sync in the order of time
 * @sync_s: length of field sync
 * @front_porch_s: gap between the picture and field sync
 * @back_porch_s: gap between field sync and the picture
 */
typedef struct
{
  int field;
  int start_half_line;
  int end_half_line;
  GArray *pulses;
  double sync_s;
  double front_porch_s;
  double back_porch_s;
} BwVerticalInterval;

BwVerticalInterval *bw_vertical_interval_new (const BwRaster *raster, int field, int lines_before,
                                              int lines_after);
void bw_vertical_interval_free (BwVerticalInterval *interval);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (BwVerticalInterval, bw_vertical_interval_free)

int bw_raster_line_at (const BwRaster *raster, int field, int half_line, gboolean *middle);

G_END_DECLS
