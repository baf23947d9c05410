/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/base/kinds.h"
#include "core/raster/colour-system.h"
#include "core/raster/waveform.h"
#include "draw/line/shape.h"

G_BEGIN_DECLS

/* The vertical interval of one field as the drawings show it: its parts in half lines after the
 * start of field sync (0V), and its sync, picture and burst in time after that. Levels are those of
 * the line shape. */

/* In the order in which they pass; a part that a raster does not have is empty. */
typedef enum
{
  BW_PART_PICTURE_BEFORE,
  BW_PART_BORDER_BEFORE,
  BW_PART_FRONT_PORCH, /* less the equalising pulses; likewise the back porch */
  BW_PART_EQUALISING_BEFORE,
  BW_PART_SYNC,
  BW_PART_EQUALISING_AFTER,
  BW_PART_BACK_PORCH,
  BW_PART_BORDER_AFTER,
  BW_PART_PICTURE_AFTER,
  BW_N_PARTS
} BwFieldPart;

/* What runs along time in a drawing of the field. */
typedef enum
{
  BW_LANE_COMPOSITE, /* picture and composite sync together */
  BW_LANE_PICTURE,
  BW_LANE_H,
  BW_LANE_V,
  BW_N_LANES
} BwLane;

/**
 * BwFieldShape:
 * @raster: borrowed
 * @field: 0 or 1; the field whose sync starts at zero
 * @start: where each part starts, in half lines after 0V; the last one is the end of what is
 *   shown. The picture goes on beyond the first and the last
 * @composite: whether field sync is serrated, so that sync is composite; H and V else
 *
 * Plain data; nothing to free.
 */
typedef struct
{
  const BwRaster *raster;
  int field;
  int start[BW_N_PARTS + 1];
  double half_line_s;
  gboolean composite;
  BwLineShape line;
} BwFieldShape;

void bw_field_shape_init (BwFieldShape *shape, const BwRaster *raster, int field);
double bw_field_shape_time (const BwFieldShape *shape, int half_line);
BwFieldPart bw_field_shape_at (const BwFieldShape *shape, double time_s);
const char *bw_field_part_label (const BwFieldShape *shape, BwFieldPart part);
guint bw_field_shape_pulses (const BwFieldShape *shape, BwFieldPart part);
GArray *bw_field_shape_steps (const BwFieldShape *shape, BwLane lane, double from_s, double to_s);

/**
 * BwBurst:
 * @system: drawn so
 * @colour_field: of the sequence in which the blanking of the burst repeats, from 0
 *
 * The burst of one field.
 */
typedef struct
{
  BwColourSystem system;
  int colour_field;
} BwBurst;

gboolean bw_burst_gap (const BwFieldShape *shape, const BwBurst *burst, int *from_half_line,
                       int *to_half_line);
GArray *bw_burst_steps (const BwFieldShape *shape, const BwBurst *burst, double from_s,
                        double to_s);

G_END_DECLS
