/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "level.h"

#include <math.h>

#define IRE_525 { 1, 140 }  /* SMPTE 170M 15.4: 140 IRE = 1 V */
#define IRE_700 { 7, 1000 } /* 100 % = 700 mV */
#define WHITE_525 (100.0 / 140)
#define SYNC_525 (40.0 / 140)

static const BwSystemFacts facts[BW_N_SYSTEMS] = {
  [BW_SYSTEM_NONE] = { { 0, 1 }, IRE_700, 0, 0.3, 0.7, 0 },
  /* 455/2 of the line rate of 4.5 MHz/286 = 315/88 MHz (SMPTE 170M 11.2) */
  [BW_SYSTEM_NTSC_M] = { { 39375000, 11 }, IRE_525, 7.5, SYNC_525, WHITE_525, 4.2e6 },
  [BW_SYSTEM_NTSC_J] = { { 39375000, 11 }, IRE_525, 0, SYNC_525, WHITE_525, 4.2e6 },
  /* not a broadcast system: NTSC modulation on the PAL subcarrier (common practice, no source) */
  [BW_SYSTEM_NTSC_443] = { { 17734475, 4 }, IRE_525, 0, SYNC_525, WHITE_525, 4.2e6 },
  /* (1135/4 + 1/625) × 15 625 Hz = 4 433 618.75 Hz (BT.1700 Part B) */
  /* 5.0 MHz is that of B and G; I has 5.5 MHz, D and K 6 MHz (BT.470-6): enter it in the source */
  [BW_SYSTEM_PAL_B] = { { 17734475, 4 }, IRE_700, 0, 0.3, 0.7, 5.0e6 },
  /* 909/4 of 4.5 MHz/286 = 511 312 500/143 Hz (BT.1700 Part B) */
  [BW_SYSTEM_PAL_M] = { { 511312500, 143 }, IRE_525, 7.5, SYNC_525, WHITE_525, 4.2e6 },
  /* (917/4 + 1/625) × 15 625 Hz = 3 582 056.25 Hz (BT.470-6) */
  [BW_SYSTEM_PAL_N] = { { 14328225, 4 }, IRE_700, 0, 0.3, 0.7, 4.2e6 },
  [BW_SYSTEM_PAL_60] = { { 17734475, 4 }, IRE_700, 0, 0.3, 0.7, 5.0e6 },
  /* D'R at rest: 282 × 15 625 Hz (BT.1700 Part C) */
  [BW_SYSTEM_SECAM_L] = { { 4406250, 1 }, IRE_700, 0, 0.3, 0.7, 6.0e6 },
};

/**
 * bw_system_facts:
 *
 * Returns: (transfer none): what @system lays down
 */
const BwSystemFacts *
bw_system_facts (BwColourSystem system)
{
  g_return_val_if_fail (system < BW_N_SYSTEMS, &facts[BW_SYSTEM_NONE]);
  return &facts[system];
}

/**
 * bw_ire_to_volts:
 * @ire: a level on the scale of @system
 *
 * Returns: the level in volts across 75 Ω
 */
double
bw_ire_to_volts (BwColourSystem system, double ire)
{
  BwRatio scale = bw_system_facts (system)->volts_per_ire;
  return ire * (double) scale.num / (double) scale.den;
}

/**
 * bw_volts_to_ire:
 * @volts: a level across 75 Ω
 *
 * Returns: the level on the scale of @system
 */
double
bw_volts_to_ire (BwColourSystem system, double volts)
{
  BwRatio scale = bw_system_facts (system)->volts_per_ire;
  return volts * (double) scale.den / (double) scale.num;
}

/**
 * bw_parallel_ohm:
 *
 * Returns: the resistance of @a_ohm and @b_ohm in parallel; both must be greater than zero
 */
double
bw_parallel_ohm (double a_ohm, double b_ohm)
{
  return a_ohm * b_ohm / (a_ohm + b_ohm);
}

/**
 * bw_level_at_load:
 * @level_v: the level as it is stated
 * @stated: what it is stated across
 * @source_ohm: resistance of the source
 * @load_ohm: what it works into, greater than zero
 *
 * The source is its open-circuit voltage behind its resistance; with a 75 Ω source, no load gives
 * twice the published level and two 75 Ω loads two thirds of it (voltage divider).
 *
 * Returns: the level across @load_ohm, in volts
 */
double
bw_level_at_load (double level_v, BwStatedLoad stated, double source_ohm, double load_ohm)
{
  double open_v = stated == BW_LOAD_75_OHM ? level_v * (75 + source_ohm) / 75 : level_v;
  return open_v * load_ohm / (load_ohm + source_ohm);
}

/**
 * bw_range_nominal:
 * @usual: the customary value
 *
 * Returns: @usual if it lies in @range, else the geometric middle of @range
 */
double
bw_range_nominal (BwRange range, double usual)
{
  if (usual >= range.low && usual <= range.high)
    return usual;
  return sqrt (range.low * range.high);
}
