/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "detail.h"

G_BEGIN_DECLS

/* Would another signal kind help? The same case by each way that the picture could come. */

#define BW_DETAIL_WAYS_MAX 5

/**
 * BwDetailBench:
 * @monitor: whose inputs are looked at
 * @input: (nullable): that of the case
 * @raster: (nullable): that of the case
 * @bandwidth_stands: whether the bandwidth of the case is one that was given, whatever the input
 *
 * What stands around a case.
 */
typedef struct
{
  const BwMonitor *monitor;
  const BwInput *input;
  const BwRaster *raster;
  gboolean bandwidth_stands;
} BwDetailBench;

/**
 * BwDetailWay:
 * @signal: BwSignal
 * @filter: BwLumaFilter; of composite alone
 * @system: BwColourSystem; of composite and Y/C alone
 * @is_own: whether it is the way of the case itself
 * @is_taken: whether an input of the monitor takes this signal kind
 */
typedef struct
{
  guint signal;
  guint filter;
  guint system;
  gboolean is_own;
  gboolean is_taken;
  BwDetail detail;
} BwDetailWay;

guint bw_detail_ways (const BwDetailCase *what, const BwDetailBench *bench,
                      BwDetailWay ways[BW_DETAIL_WAYS_MAX]);
const BwDetailWay *bw_detail_ways_rgb (const BwDetailWay *ways, guint n_ways);
char *bw_detail_ways_say (const BwDetailCase *what, const BwDetail *detail, const BwDetailWay *ways,
                          guint n_ways, char mark);
double bw_detail_way_gain (const BwDetail *detail, const BwDetailWay *way);
char *bw_detail_way_name (const BwDetailWay *way);
char *bw_detail_way_notes (const BwDetail *detail, const BwDetailWay *way, char mark);

G_END_DECLS
