/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/result/result.h"
#include "ways.h"

G_BEGIN_DECLS

/* What this room has to say, to be shown by any face (core/result). */

/**
 * BwDetailReport:
 * @what: the case
 * @detail: what follows from it
 * @raster: (nullable): id of the raster that was counted with, borrowed
 * @source_aspect: of the source of a sheet; %BW_RATIO_NONE: none
 * @switched: whether @what is of the area that the set's switch scans
 * @ways: the case by each signal kind, of bw_detail_ways()
 * @n_ways: how many; zero: they were not asked for
 */
typedef struct
{
  BwDetailCase what;
  BwDetail detail;
  const char *raster;
  BwRatio source_aspect;
  gboolean switched;
  BwDetailWay ways[BW_DETAIL_WAYS_MAX];
  guint n_ways;
} BwDetailReport;

void bw_detail_say_figures (BwNode *to, const BwDetailReport *report);
void bw_detail_say_answer (BwNode *to, const BwDetailReport *report);
void bw_detail_say_ways (BwNode *to, const BwDetailReport *report);
void bw_detail_say_rgb (BwNode *to, const BwDetailReport *report);

G_END_DECLS
