/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/result/result.h"
#include "raster.h"
#include "reading.h"
#include "solve.h"

G_BEGIN_DECLS

/* What the calculations of this room say, to be shown by any face (core/result). */

const char *bw_raster_called (const BwNode *node, const BwRaster *raster);
void bw_raster_say_recalled (BwNode *to, const BwRaster *raster);
void bw_raster_say (BwNode *to, const BwRaster *raster);
void bw_rasters_say (BwNode *to, const GPtrArray *rasters);

/**
 * BwReadingsTaken:
 * @read: which readings there are
 * @value: of each, in the base unit
 * @uncertainty: of each, by its digits or its instrument, in the base unit
 */
typedef struct
{
  gboolean read[BW_N_READINGS];
  double value[BW_N_READINGS];
  double uncertainty[BW_N_READINGS];
} BwReadingsTaken;

/* The column of what people read of the limit. */
#define BW_READINGS_COLUMN_LIMIT 5

void bw_readings_say (BwNode *to, const BwStandardLimits *limits, const BwReadingsTaken *taken);
void bw_standards_say (BwNode *to, const GPtrArray *all, const BwStandardLimits *one);

void bw_solver_say (BwNode *to, const BwSolver *solver, guint32 redundant);
void bw_subcarrier_say (BwNode *to, double hz);
void bw_figures_say (BwNode *to);

G_END_DECLS
