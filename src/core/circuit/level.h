/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/base/kinds.h"
#include "core/base/quantity.h"

G_BEGIN_DECLS

/* One load of 75 Ω within the tolerance of ordinary terminators and input circuits (common
 * practice, no source). */
#define BW_ONE_LOAD_MIN_OHM 67.5
#define BW_ONE_LOAD_MAX_OHM 82.5

/**
 * BwSystemFacts:
 * @subcarrier_hz: exact where the standard gives a ratio; %BW_RATIO_NONE for no subcarrier; for
 *   SECAM the rest frequency of the R-Y lines
 * @volts_per_ire: exact; there is no one IRE scale
 * @setup_ire: black above blanking
 * @sync_v: amplitude of composite sync below blanking
 * @white_v: white above blanking
 * @luma_bandwidth_hz: nominal video bandwidth of the system
 *
 * What a colour system lays down for composite video across 75 Ω. Sources: SMPTE 170M-2004
 * (NTSC: 140 IRE = 1 V, sync 40 IRE, setup 7.5 IRE), ITU-R BT.1700 and BT.470-6 (PAL, SECAM: white
 * 700 mV, sync 300 mV; video bandwidths), BT.1700 Part A note 1 (Japan: no setup).
 */
typedef struct
{
  BwRatio subcarrier_hz;
  BwRatio volts_per_ire;
  double setup_ire;
  double sync_v;
  double white_v;
  double luma_bandwidth_hz;
} BwSystemFacts;

const BwSystemFacts *bw_system_facts (BwColourSystem system);
double bw_ire_to_volts (BwColourSystem system, double ire);
double bw_volts_to_ire (BwColourSystem system, double volts);

double bw_level_at_load (double level_v, BwStatedLoad stated, double source_ohm, double load_ohm);
double bw_parallel_ohm (double a_ohm, double b_ohm);
double bw_range_nominal (BwRange range, double usual);

G_END_DECLS
