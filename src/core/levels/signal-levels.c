/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "signal-levels.h"

/* Component and RGB without setup: 700 mV and 300 mV (ITU-R BT.1700-type levels; EBU N10). On the
 * component scale 100 IRE is 700 mV, unlike in composite (SMPTE 170M annex B). */
static const BwSignalLevels component_levels = {
  .white_v = BW_WHITE_7_3_V,
  .sync_v = -BW_SYNC_7_3_V,
};

/**
 * bw_signal_levels:
 * @levels: (out caller-allocates): the levels of @signal in @system
 */
void
bw_signal_levels (BwColourSystem system, BwSignal signal, BwSignalLevels *levels)
{
  const BwSystemFacts *facts = bw_system_facts (system);

  g_return_if_fail (signal < BW_N_SIGNALS && levels != NULL);
  *levels = component_levels;
  if (signal == BW_SIGNAL_COMPONENT)
    levels->volts_per_ire = bw_ire_to_volts (BW_SYSTEM_NONE, 1);
  if (signal == BW_SIGNAL_RGB || signal == BW_SIGNAL_COMPONENT)
    return;
  levels->volts_per_ire
      = system == BW_SYSTEM_NONE ? 0 : bw_ratio_to_double (facts->volts_per_ire);
  levels->white_v = facts->white_v;
  levels->setup_ire = facts->setup_ire;
  levels->black_v = bw_ire_to_volts (system, facts->setup_ire);
  levels->sync_v = -facts->sync_v;
  levels->burst_pp_v = facts->burst_pp_v;
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
  g_return_if_fail (bar < BW_N_BARS && levels != NULL);
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
