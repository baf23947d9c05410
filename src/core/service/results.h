/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "capacitor.h"
#include "core/bench/monitor.h"
#include "core/result/result.h"
#include "field-scan.h"
#include "line-scan.h"
#include "supply.h"

G_BEGIN_DECLS

/* What this room has to say, to be shown by any face (core/result). */

/**
 * BwCapacitorAsk:
 * @knows_life: whether @endurance is given
 * @hours_a_day: that the set is on; up to 24
 */
typedef struct
{
  BwCapacitor part;
  gboolean knows_life;
  BwEndurance endurance;
  double hours_a_day;
} BwCapacitorAsk;

/**
 * BwFieldScanAsk:
 * @rows: of a test picture, from which the capacitor is worked back; without any, it is @stage.farad
 */
typedef struct
{
  BwFieldStage stage;
  BwFieldRows rows;
} BwFieldScanAsk;

/**
 * BwSupplyAsk:
 * @monitor: borrowed: what its plate says
 * @field_hz: zero: not asked. Likewise @reservoir.farad
 */
typedef struct
{
  const BwMonitor *monitor;
  double supply_v;
  double supply_hz;
  double field_hz;
  BwReservoir reservoir;
} BwSupplyAsk;

void bw_capacitor_say (BwNode *to, const BwCapacitorAsk *ask);
void bw_field_scan_say (BwNode *to, const BwFieldScanAsk *ask);
void bw_line_scan_say (BwNode *to, const BwLineStage *stage);
void bw_supply_say (BwNode *to, const BwSupplyAsk *ask);

G_END_DECLS
