/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/result/result.h"
#include "state.h"

G_BEGIN_DECLS

/* Would another signal kind help? The same case by each way that the picture could come. */

#define BW_DETAIL_WAYS_MAX 5

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

guint bw_detail_ways (BwDetailState *state, BwDetailWay ways[BW_DETAIL_WAYS_MAX]);
const BwDetailWay *bw_detail_ways_rgb (const BwDetailWay *ways, guint n_ways);
char *bw_detail_ways_say (const BwDetailCase *what, const BwDetail *detail, const BwDetailWay *ways,
                          guint n_ways, char mark);
void bw_detail_ways_add (BwNode *to, const BwDetail *detail, const BwDetailWay *ways, guint n_ways);

G_END_DECLS
