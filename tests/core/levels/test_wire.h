/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/levels/wire.h"

#include <math.h>

#include "support.h"

#define NEAR(a, b) g_assert_true (bw_near (a, b, 1e-9))

static BwWireLevels
levels_on (const BwWireForm *form, BwConductor conductor)
{
  BwWireLevels all[BW_N_CONDUCTORS];
  guint n = bw_wire_levels (form, all);
  for (guint i = 0; i < n; i++)
    if (all[i].conductor == conductor)
      return all[i];
  g_error ("no such conductor");
}
