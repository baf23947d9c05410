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

void bw_pad_say (BwNode *to, const BwPadAsk *ask);

G_END_DECLS
