/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "colour.h"

G_BEGIN_DECLS

/**
 * BwSignalLevels:
 * @volts_per_ire: zero where the signal has no IRE scale
 * @white_v: above blanking, as all levels, across 75 Ω
 * @black_v: setup
 * @sync_v: sync tip, below zero
 * @burst_pp_v: peak to peak; zero where there is none, or where the texts do not agree on it
 * @subcarrier_hz: zero where there is none
 *
 * What should be on the wire.
 */
typedef struct
{
  double volts_per_ire;
  double white_v;
  double black_v;
  double blanking_v;
  double sync_v;
  double burst_pp_v;
  double setup_ire;
  double subcarrier_hz;
} BwSignalLevels;

/**
 * BwBarLevels:
 * @coded: of composite and Y/C
 * @component_v: Y, Pb and Pr
 * @rgb_v: R, G and B
 *
 * One colour bar in every form that it can have on the wire.
 */
typedef struct
{
  BwCodedLevels coded;
  double component_v[3];
  double rgb_v[3];
} BwBarLevels;

void bw_signal_levels (BwColourSystem system, BwSignal signal, BwSignalLevels *levels);
void bw_bar_levels (BwColourSystem system, BwBarsForm form, BwBar bar, BwBarLevels *levels);

G_END_DECLS
