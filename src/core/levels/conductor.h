/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/base/kinds.h"

G_BEGIN_DECLS

/* What each conductor of a video lead carries. */

BwConductor bw_signal_usual_conductor (BwSignal signal);
guint bw_signal_conductors (BwSignal signal, BwSyncKind sync);
gboolean bw_conductor_carries_sync (BwConductor conductor, BwSignal signal, BwSyncKind sync);
gboolean bw_conductor_is_sync_alone (BwConductor conductor);
gboolean bw_conductor_is_colour_alone (BwConductor conductor);

G_END_DECLS
