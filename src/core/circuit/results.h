/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/result/result.h"
#include "pads.h"

G_BEGIN_DECLS

/* What this room has to say, to be shown by any face (core/result). */

/**
 * BwPadAsk:
 * @from_v: of the driver without load
 * @to_v: that is wanted
 * @one_series: whether people see the resistor of @series alone
 * @ideal: the exact network, as of bw_pad_series()
 *
 * A series resistor that brings sync down to the level that an input wants.
 */
typedef struct
{
  double from_v;
  double to_v;
  double driver_ohm;
  double load_ohm;
  double supply_tolerance;
  guint series;
  gboolean one_series;
  BwNetwork ideal;
} BwPadAsk;

#define BW_PADS_MAX 2

/**
 * BwPadDesign:
 * @ideal: the exact network, as of the function of its kind
 */
typedef struct
{
  BwPadKind kind;
  BwNetwork ideal;
} BwPadDesign;

/**
 * BwPadsAsk:
 * @from_v: of the source without load; zero: not known, and no level is shown
 * @one_series: whether the resistors of @series alone are shown
 *
 * Pads that match a source or a load, or both, alike in what they do.
 */
typedef struct
{
  guint n;
  BwPadDesign pad[BW_PADS_MAX];
  double from_v;
  guint series;
  gboolean one_series;
} BwPadsAsk;

void bw_pad_say (BwNode *to, const BwPadAsk *ask);
void bw_pads_say (BwNode *to, const BwPadsAsk *ask);

G_END_DECLS
