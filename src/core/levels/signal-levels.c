/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "signal-levels.h"

/* Component and RGB without setup: 700 mV and 300 mV (ITU-R BT.1700-type levels; EBU N10). On the
 * component scale 100 IRE is 700 mV, unlike in composite (SMPTE 170M annex B). */
static const BwSignalLevels component_levels = {
  .volts_per_ire = 0.007,
  .white_v = 0.7,
  .sync_v = -0.3,
};

/* Burst, peak to peak: 40 IRE (SMPTE 170M table 1), 300 mV (ITU-R BT.1700 table 2). The texts that
 * were read are not legible for PAL M; SECAM has none; NTSC 4.43 and 525-line PAL are not laid
 * down by any of them. */
static double
burst_pp_v (BwColourSystem system)
{
  switch (system)
    {
    case BW_SYSTEM_NTSC_M:
    case BW_SYSTEM_NTSC_J:
      return 40.0 / 140;
    case BW_SYSTEM_PAL_B:
    case BW_SYSTEM_PAL_N:
      return 0.3;
    default:
      return 0;
    }
}

/**
 * bw_signal_levels:
 * @levels: (out caller-allocates): the levels of @signal in @system
 */
void
bw_signal_levels (BwColourSystem system, BwSignal signal, BwSignalLevels *levels)
{
  const BwSystemFacts *facts = bw_system_facts (system);

  *levels = component_levels;
  if (signal == BW_SIGNAL_RGB)
    levels->volts_per_ire = 0;
  if (signal == BW_SIGNAL_RGB || signal == BW_SIGNAL_COMPONENT)
    return;
  levels->volts_per_ire
      = system == BW_SYSTEM_NONE ? 0 : bw_ratio_to_double (facts->volts_per_ire);
  levels->white_v = facts->white_v;
  levels->setup_ire = facts->setup_ire;
  levels->black_v = bw_ire_to_volts (system, facts->setup_ire);
  levels->sync_v = -facts->sync_v;
  levels->burst_pp_v = burst_pp_v (system);
  levels->subcarrier_hz = bw_ratio_to_double (facts->subcarrier_hz);
}

/**
 * bw_bar_levels:
 * @levels: (out caller-allocates): the bar as composite or Y/C of @system with its setup, as
 *   component of 700 mV and as RGB of 700 mV
 */
void
bw_bar_levels (BwColourSystem system, BwBarsForm form, BwBar bar, BwBarLevels *levels)
{
  BwRgb rgb;
  BwYPbPr ypbpr;

  bw_bar_rgb (bar, form, &rgb);
  bw_rgb_to_ypbpr (BW_MATRIX_601, &rgb, &ypbpr);
  bw_rgb_to_coded (system, bw_system_facts (system)->setup_ire, &rgb, &levels->coded);
  bw_ypbpr_to_volts (BW_COMPONENT_700, &ypbpr, levels->component_v);
  levels->rgb_v[0] = component_levels.white_v * rgb.r;
  levels->rgb_v[1] = component_levels.white_v * rgb.g;
  levels->rgb_v[2] = component_levels.white_v * rgb.b;
}
