/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan-private.h"

#include <math.h>

#include "core/levels/conductor.h"
#include "core/levels/signal-levels.h"
#include "planner-private.h"

/* What stands on each conductor at the input in the end. */

/* The resistors in the last lead, for @kind of step; %NULL: none. */
static const BwPlanStep *
last_network (const BwPlan *plan, BwStepKind kind)
{
  const BwPlanStep *found = NULL;
  for (guint i = 0; i < plan->n; i++)
    if (plan->at[i].kind == BW_STEP_BOX)
      found = NULL;
    else if (plan->at[i].kind == kind)
      found = &plan->at[i];
  return found;
}

/* Without resistors of ours the conductor is the output's own resistance and the load. */
static void
conductor_network (const BwPlan *plan, gboolean own_sync, BwNetwork *network)
{
  const BwSource *source = &plan->state.source;
  const BwPlanStep *step
      = last_network (plan, own_sync ? BW_STEP_SERIES_RESISTOR : BW_STEP_VIDEO_PAD);
  double ohm = own_sync ? source->sync_ohm : source->source_ohm;
  double level_v = own_sync ? source->sync_v : source->video_v;
  BwStatedLoad stated = own_sync ? source->sync_load : BW_LOAD_75_OHM;

  if (step != NULL)
    *network = step->network;
  else
    *network = (BwNetwork){ .open_v = bw_open_v (level_v, stated, ohm),
                            .source_ohm = ohm };
  network->load_ohm = bw_input_load_ohm (&plan->state.input, own_sync);
}

/* Peak to peak of @conductor across 75 Ω, as a multiple of black to white. */
static double
extent (const BwPlan *plan, BwConductor conductor, BwSyncKind sync)
{
  const BwSource *source = &plan->state.source;
  BwSignalLevels standard;

  if (conductor == BW_CONDUCTOR_C)
    {
      bw_signal_levels (bw_source_system (source), source->signal, &standard);
      return standard.burst_pp_v / standard.white_v;
    }
  if (bw_conductor_carries_sync (conductor, source->signal, sync))
    return 1 + source->sync_v / source->video_v;
  return 1;
}

/* Whether all is known that the level of the conductor at the input follows from. */
static gboolean
is_known (const BwPlan *plan, gboolean own, gboolean with_sync)
{
  const BwSource *source = &plan->state.source;
  BwLack lack;

  if (bw_lacks_load (&plan->state.input, own, &lack))
    return FALSE;
  if (own)
    return source->sync_v > 0 && source->sync_load < BW_N_LOADS && !isnan (source->sync_ohm);
  return source->video_v > 0 && !isnan (source->source_ohm) && (!with_sync || source->sync_v > 0);
}

static void
add_level (BwHookup *hookup, BwConductor conductor)
{
  const BwPlan *plan = hookup->plan;
  gboolean own = bw_conductor_is_sync_alone (conductor);
  gboolean with_sync = bw_conductor_carries_sync (conductor, plan->state.source.signal,
                                                  hookup->fit_after.sync);
  if (!is_known (plan, own, with_sync))
    return;
  gboolean logic = own && plan->state.source.sync_load == BW_LOAD_OPEN;
  double share = own ? 1 : extent (plan, conductor, hookup->fit_after.sync);
  BwNetwork network;
  BwNetworkFigures figures;
  BwRange spread;

  conductor_network (plan, own, &network);
  bw_network_solve (&network, &figures);
  bw_network_spread (&network, bw_series_tolerance (hookup->choice.series),
                     logic ? BW_SUPPLY_TOLERANCE : 0, &spread);
  if (share <= 0) /* the burst of a system that has none */
    return;
  BwHookupLevel *level = g_new0 (BwHookupLevel, 1);
  level->signal = g_strdup (bw_kind_label (&bw_conductors, conductor));
  level->nominal_v = figures.level_v * share;
  level->min_v = spread.low * share;
  level->max_v = spread.high * share;
  g_ptr_array_add (hookup->levels, level);
}

/* What the lead to the input lies between. */
static void
add_ends (BwHookup *hookup)
{
  BwNetwork network;
  BwNetworkFigures figures;

  if (!is_known (hookup->plan, FALSE, FALSE))
    return;
  conductor_network (hookup->plan, FALSE, &network);
  bw_network_solve (&network, &figures);
  hookup->back_ohm = figures.output_ohm;
  hookup->end_ohm = network.load_ohm;
}

/**
 * bw_hookup_add_levels:
 *
 * Works out the level of each conductor at the input, and between which it lies, and what the lead to
 * the input lies between.
 */
void
bw_hookup_add_levels (BwHookup *hookup)
{
  guint conductors = bw_signal_conductors (hookup->plan->state.source.signal,
                                           hookup->fit_after.sync);
  guint colour = BW_BIT (BW_CONDUCTOR_PB) | BW_BIT (BW_CONDUCTOR_PR) | BW_BIT (BW_CONDUCTOR_C);
  if (!(hookup->plan->state.input.signals & BW_BIT (hookup->plan->state.source.signal)))
    conductors &= ~colour; /* an input for luminance is given Y alone */
  for (BwConductor conductor = 0; conductor < BW_N_CONDUCTORS; conductor++)
    if (conductors & BW_BIT (conductor))
      add_level (hookup, conductor);
  add_ends (hookup);
}
