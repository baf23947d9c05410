/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/base/kinds.h"

G_BEGIN_DECLS

/* The conductors of a video lead, each with its own return. */
typedef enum
{
  BW_CONDUCTOR_R,
  BW_CONDUCTOR_G,
  BW_CONDUCTOR_B,
  BW_CONDUCTOR_Y,
  BW_CONDUCTOR_PB,
  BW_CONDUCTOR_PR,
  BW_CONDUCTOR_C,
  BW_CONDUCTOR_VIDEO, /* composite, or luminance with its sync */
  BW_CONDUCTOR_SYNC,  /* composite sync alone */
  BW_CONDUCTOR_H,
  BW_CONDUCTOR_V,
  BW_N_CONDUCTORS
} BwConductor;

extern const BwKindTable bw_conductors;

BwConductor bw_signal_usual_conductor (BwSignal signal);
guint bw_signal_conductors (BwSignal signal, BwSyncKind sync);
gboolean bw_conductor_carries_sync (BwConductor conductor, BwSignal signal, BwSyncKind sync);
gboolean bw_conductor_is_sync_alone (BwConductor conductor);
gboolean bw_conductor_is_colour_alone (BwConductor conductor);

G_END_DECLS
