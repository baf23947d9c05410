/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/raster/raster.h"

G_BEGIN_DECLS

/* The raster that a command is to work on: one of the catalogue, or one that is computed, read
 * from text or bytes, or made for a monitor. */

/* The value of BwRasterChoice.which if the option was not given. */
#define BW_WHICH_FIRST G_MININT

/**
 * BwRasterChoice:
 *
 * The options that choose a raster, all owned and as they came; %NULL where not given.
 */
typedef struct
{
  char *cvt;
  char *gtf;
  char *gtf_line_rate;
  char *gtf_pixel_clock;
  char *modeline;
  char *edid;
  char *for_monitor;
  int which;
  char *active;
  char *field_rate;
  gboolean interlaced;
  gboolean margins;
  gboolean overscan;
  char *lowest_clock;
  char *highest_clock;
  char *clock_step;
  int pixel_multiple;
  char *source;
  char *input;
} BwRasterChoice;

/**
 * BwChosenRaster:
 * @raster: owned
 * @answers: (nullable) (element-type BwTubeAnswer): of a raster made for a monitor, all that hold; the
 *   first is @raster
 * @notes: (nullable) (element-type utf8): what an EDID holds that was not read
 * @timing: the number of the detailed timing of an EDID, from 1; zero for other rasters
 * @n_timings: how many there are
 * @overscan_h: of the monitor that it was made for, as a share; zero for other rasters
 * @aspect: of that monitor; else %BW_RATIO_NONE
 */
typedef struct
{
  BwRaster *raster;
  GPtrArray *answers;
  GPtrArray *notes;
  guint timing;
  guint n_timings;
  double overscan_h;
  double overscan_v;
  BwRatio aspect;
} BwChosenRaster;

GArray *bw_raster_choice_entries (BwRasterChoice *choice);
void bw_raster_choice_clear (BwRasterChoice *choice);
gboolean bw_raster_choice_is_empty (const BwRasterChoice *choice, const char *name);
char *bw_raster_choice_fault (const BwRasterChoice *choice, const char *name);
char *bw_raster_choice_target_fault (const BwRasterChoice *choice, const char *target);

BwChosenRaster *bw_raster_choice_make (const BwRasterChoice *choice, const char *name);
void bw_chosen_raster_free (BwChosenRaster *chosen);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BwChosenRaster, bw_chosen_raster_free)

G_END_DECLS
