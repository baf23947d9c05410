/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/circuit/coupling.h"
#include "core/levels/conductor.h"
#include "core/levels/wire.h"
#include "core/raster/reading.h"
#include "core/result/result.h"

G_BEGIN_DECLS

/* What the levels on a wire are, to be shown by any face (core/result). */

/**
 * BwCouplingAsk:
 * @farad: in series with the signal; zero: none
 * @loop_ohm: source and load in series around it; infinite: no load
 * @time: of the picture
 */
typedef struct
{
  double farad;
  double loop_ohm;
  BwPictureTime time;
} BwCouplingAsk;

/**
 * BwLevelsAsk:
 * @sync: one of the sync kinds that @signal can come with
 * @tell_conductors: people see a table of each conductor as well
 *
 * The levels that a standard lays down.
 */
typedef struct
{
  BwColourSystem system;
  BwSignal signal;
  BwBarsForm bars;
  BwSyncKind sync;
  gboolean tell_conductors;
  BwCouplingAsk coupling;
} BwLevelsAsk;

/**
 * BwLevelsHere:
 * @load_ohm: what an output that carries a picture works into; infinite: nothing
 * @gain: what that makes of every level
 * @sync_load_ohm: likewise of an output that carries sync alone
 * @bars: %BW_N_BARS_FORMS: no bars are on the wire
 * @limits: (nullable): what a standard allows
 *
 * A signal of a source as it is with a load.
 */
typedef struct
{
  double load_ohm;
  double gain;
  double sync_load_ohm;
  double sync_gain;
  BwBarsForm bars;
  const BwStandardLimits *limits;
  BwCouplingAsk coupling;
} BwLevelsHere;

void bw_levels_say (BwNode *to, const BwLevelsAsk *ask);
void bw_coupling_say (BwNode *to, const BwWireForm *form, const BwCouplingAsk *coupling);
void bw_wire_say (BwNode *to, const BwWireForm *form, const BwLevelsHere *here);

G_END_DECLS
