/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/raster/raster.h"

G_BEGIN_DECLS

/* A capacitor in series with the signal, and what it does to a picture that stays as it is. The
 * resistance around the loop is that of source and load. */

/* Of one that couples video or sync. */
#define BW_CAPACITOR_MIN_F 1e-12
#define BW_CAPACITOR_MAX_F 1.0

/**
 * BwPictureTime:
 * @active_s: of a line, followed by @front_s, @sync_s and @back_s; zero: not known
 * @front_s: porch and border
 * @sync_s: line sync
 * @back_s: porch and border
 * @picture_lines: of a field, followed by @front_lines, @sync_lines and @back_lines. Any may end in
 *   half a line
 * @sync_lines: field sync
 * @serration_s: gap at the end of each half line of field sync; zero: none
 *
 * How long each part of a field lasts.
 */
typedef struct
{
  double active_s;
  double front_s;
  double sync_s;
  double back_s;
  double picture_lines;
  double front_lines;
  double sync_lines;
  double back_lines;
  double serration_s;
} BwPictureTime;

/**
 * BwSteadyPicture:
 * @white_share: of the picture's lines, counted from the top; those below are black
 * @white_v: above blanking
 * @black_v: likewise
 * @sync_v: mean of the sync pulse, below zero for pulses that go down; zero: no sync here, or
 *   tri-level
 *
 * The same field over and over on one conductor.
 */
typedef struct
{
  BwPictureTime time;
  double white_share;
  double white_v;
  double black_v;
  double sync_v;
} BwSteadyPicture;

/**
 * BwTilt:
 * @line: fall of white from the left edge to the right in the middle one of the white lines, as a
 *   share of white
 * @field: fall from the first white line to the last, likewise
 */
typedef struct
{
  double line;
  double field;
} BwTilt;

void bw_picture_time (const BwRaster *raster, BwPictureTime *time);
double bw_coupling_corner_hz (double ohm, double farad);
void bw_coupling_tilt (const BwSteadyPicture *picture, double ohm, double farad, BwTilt *tilt);
double bw_coupling_farad_of_field_tilt (const BwSteadyPicture *picture, double ohm, double tilt);
double bw_coupling_farad_of_line_tilt (const BwSteadyPicture *picture, double ohm, double tilt);
double bw_coupling_farad_of_bar (double bar_s, double ohm, double tilt);

G_END_DECLS
