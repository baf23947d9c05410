/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* A line output stage: a switch that lays the supply across the coil during the scan, and a capacitor
 * that turns the current round in the retrace. */

/**
 * BwLineStage:
 * @supply_v: across the coil during the scan
 * @henry: of the coil, with what lies in parallel to it
 * @farad: of the retrace capacitor
 * @scan_s: visible part of the line, from left to right
 */
typedef struct
{
  double supply_v;
  double henry;
  double farad;
  double scan_s;
} BwLineStage;

/**
 * BwLineScan:
 * @peak_v: across the switch in the middle of the retrace
 * @retrace_s: how long the voltage stands above zero
 * @current_a: in the coil at either end of the scan
 * @energy_j: in the coil then
 * @root_retrace_s: half a period of the resonance alone, π√(LC), by which it is often reckoned
 */
typedef struct
{
  double peak_v;
  double retrace_s;
  double current_a;
  double energy_j;
  double root_retrace_s;
} BwLineScan;

void bw_line_scan (const BwLineStage *stage, BwLineScan *scan);

G_END_DECLS
