/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "conductor.h"

static const guint of_signal[BW_N_SIGNALS] = {
  [BW_SIGNAL_RGB]
  = BW_BIT (BW_CONDUCTOR_R) | BW_BIT (BW_CONDUCTOR_G) | BW_BIT (BW_CONDUCTOR_B),
  [BW_SIGNAL_COMPONENT]
  = BW_BIT (BW_CONDUCTOR_Y) | BW_BIT (BW_CONDUCTOR_PB) | BW_BIT (BW_CONDUCTOR_PR),
  [BW_SIGNAL_YC] = BW_BIT (BW_CONDUCTOR_Y) | BW_BIT (BW_CONDUCTOR_C),
  [BW_SIGNAL_COMPOSITE] = BW_BIT (BW_CONDUCTOR_VIDEO),
  [BW_SIGNAL_LUMA] = BW_BIT (BW_CONDUCTOR_VIDEO),
};

/**
 * bw_signal_conductors:
 *
 * Returns: the set of BwConductor that carry @signal with @sync, those of the sync among them. A
 *   peritelevision lead that takes the sync from the composite video pin adds
 *   %BW_CONDUCTOR_VIDEO: RGB with %BW_SYNC_IN_VIDEO
 */
guint
bw_signal_conductors (BwSignal signal, BwSyncKind sync)
{
  g_return_val_if_fail (signal < BW_N_SIGNALS, 0);
  guint set = of_signal[signal];

  if (sync == BW_SYNC_SEPARATE)
    set |= BW_BIT (BW_CONDUCTOR_H) | BW_BIT (BW_CONDUCTOR_V);
  else if (sync == BW_SYNC_COMPOSITE)
    set |= BW_BIT (BW_CONDUCTOR_SYNC);
  else if (sync == BW_SYNC_IN_VIDEO && signal == BW_SIGNAL_RGB)
    set |= BW_BIT (BW_CONDUCTOR_VIDEO);
  return set;
}

/**
 * bw_conductor_is_sync_alone:
 *
 * Returns: whether @conductor carries sync and no picture
 */
gboolean
bw_conductor_is_sync_alone (BwConductor conductor)
{
  return conductor == BW_CONDUCTOR_SYNC || conductor == BW_CONDUCTOR_H
         || conductor == BW_CONDUCTOR_V;
}

/**
 * bw_conductor_is_colour_alone:
 *
 * Returns: whether @conductor carries colour without luminance, so that black and white alike stand
 *   at blanking
 */
gboolean
bw_conductor_is_colour_alone (BwConductor conductor)
{
  return conductor == BW_CONDUCTOR_PB || conductor == BW_CONDUCTOR_PR
         || conductor == BW_CONDUCTOR_C;
}

/**
 * bw_conductor_carries_sync:
 *
 * Returns: whether there are sync pulses on @conductor of @signal with @sync
 */
gboolean
bw_conductor_carries_sync (BwConductor conductor, BwSignal signal, BwSyncKind sync)
{
  g_return_val_if_fail (conductor < BW_N_CONDUCTORS, FALSE);
  if (!(bw_signal_conductors (signal, sync) & BW_BIT (conductor)))
    return FALSE;
  if (bw_conductor_is_sync_alone (conductor))
    return TRUE;
  switch (sync)
    {
    case BW_SYNC_ON_GREEN:
      return conductor == BW_CONDUCTOR_G;
    case BW_SYNC_ON_Y:
      return conductor == BW_CONDUCTOR_Y;
    case BW_SYNC_IN_VIDEO:
      return conductor == BW_CONDUCTOR_VIDEO
             || (conductor == BW_CONDUCTOR_Y && signal == BW_SIGNAL_YC);
    default:
      return FALSE;
    }
}

/**
 * bw_signal_usual_conductor:
 *
 * Returns: the conductor of @signal that is read first where none is named: that of the luminance
 */
BwConductor
bw_signal_usual_conductor (BwSignal signal)
{
  switch (signal)
    {
    case BW_SIGNAL_RGB:
      return BW_CONDUCTOR_G;
    case BW_SIGNAL_COMPONENT:
    case BW_SIGNAL_YC:
      return BW_CONDUCTOR_Y;
    case BW_SIGNAL_COMPOSITE:
    case BW_SIGNAL_LUMA:
    case BW_N_SIGNALS:
    default:
      return BW_CONDUCTOR_VIDEO;
    }
}
