/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan-private.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "core/bench/match.h"
#include "core/levels/conductor.h"
#include "core/levels/signal-levels.h"
#include "planner-private.h"

/* What stands on each conductor at the input in the end. */

/* Where resistors stand in a lead: at the source, or at the input as well. */
typedef enum
{
  NEAR_END,
  WHOLE_LEAD
} Extent;

static gboolean
is_in_conductor (const BwPlanStep *step, gboolean own_sync, Extent extent)
{
  switch (step->kind)
    {
    case BW_STEP_SERIES_RESISTOR:
      return own_sync;
    case BW_STEP_VIDEO_PAD:
    case BW_STEP_MINIMUM_LOSS:
      return !own_sync;
    case BW_STEP_END_SERIES: /* what hangs across the input is part of its load */
    case BW_STEP_END_MINIMUM_LOSS:
      return !own_sync && extent == WHOLE_LEAD;
    default:
      return FALSE;
    }
}

/* The resistors in the last lead; FALSE: none. */
static gboolean
last_network (const BwPlan *plan, gboolean own_sync, Extent extent, BwNetwork *network)
{
  gboolean found = FALSE;
  for (guint i = 0; i < plan->n; i++)
    {
      const BwPlanStep *step = &plan->at[i];
      if (step->kind == BW_STEP_BOX)
        found = FALSE;
      if (!is_in_conductor (step, own_sync, extent))
        continue;
      if (!found)
        *network = step->network;
      else
        for (guint k = 0; k < step->network.n && network->n < BW_NETWORK_MAX; k++)
          network->at[network->n++] = step->network.at[k];
      found = TRUE;
    }
  return found;
}

/* Without resistors of ours the conductor is the output's own resistance and the load. */
static void
conductor_network (const BwPlan *plan, gboolean own_sync, Extent extent, BwNetwork *network)
{
  const BwSource *source = &plan->at[plan->n - 1].after.source;
  for (guint i = 0; i < plan->n; i++)
    if (plan->at[i].kind == BW_STEP_LEAD) /* what comes to its end */
      source = &plan->at[i].after.source;
  double ohm = own_sync ? source->sync_ohm : source->source_ohm;
  double level_v = own_sync ? source->sync_v : source->video_v;
  BwStatedLoad stated = own_sync ? source->sync_load : BW_LOAD_75_OHM;

  if (!last_network (plan, own_sync, extent, network))
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

  conductor_network (plan, own, WHOLE_LEAD, &network);
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

/* Matching a source that is not of 75 Ω */

static char *
figure (double value, BwDimension dimension)
{
  return bw_quantity_format (value, dimension, 3, bw_quantity_locale_mark ());
}

/* What @resistors leave of the picture at the input, by the level that the plan leaves, and whether
 * the input takes that. */
static char *
left_words (const BwHookup *hookup, const BwNetwork *resistors)
{
  const BwBands *takes = &hookup->plan->state.input.video_v;
  const BwFinding *now = &hookup->fit_after.at[BW_RULE_VIDEO_LEVEL];
  BwNetwork bare = *resistors;
  BwNetworkFigures with, without;

  bare.n = 0;
  bw_network_solve (resistors, &with);
  bw_network_solve (&bare, &without);
  double level_v = now->value * with.level_v / without.level_v;
  g_autofree char *level = figure (level_v, BW_DIMENSION_VOLTAGE);
  if (takes->n > 0 && level_v < takes->at[0].low)
    return g_strdup_printf (_ ("%s, below what this input takes"), level);
  if (takes->n > 0 && level_v > takes->at[0].high)
    return g_strdup_printf (_ ("%s, above what this input takes"), level);
  return g_strdup_printf (_ ("%s, which this input takes"), level);
}

/* One resistor makes the source 75 Ω for the lead, but not the lead the source's resistance. */
static double
one_resistor (const BwNetwork *bare, BwSeries series, BwNetwork *made)
{
  double ohm = bare->source_ohm;
  BwEndPart part = ohm < BW_VIDEO_OHM ? BW_END_SERIES : BW_END_SHUNT;
  BwNetwork exact;

  /* of the source the same part as of an input of its resistance */
  bw_match_end (part, bare->open_v, BW_VIDEO_OHM, ohm, &exact);
  *made = *bare;
  made->n = 1;
  made->at[0] = exact.at[0];
  made->at[0].ohm = bw_preferred_value (exact.at[0].ohm, series);
  return made->at[0].ohm;
}

/* Nothing comes back from an input that ends the lead, so that the source need not be matched; what
 * would do it is said all the same. */
static char *
source_match_words (const BwHookup *hookup, const BwNetwork *bare)
{
  BwSeries series = hookup->choice.series;
  BwNetwork one, pad, made;
  double loss_db;

  g_autofree char *ohm = figure (one_resistor (bare, series, &one), BW_DIMENSION_RESISTANCE);
  g_autofree char *source = figure (bare->source_ohm, BW_DIMENSION_RESISTANCE);
  g_autofree char *left = left_words (hookup, &one);
  g_autofree char *resistor = g_strdup_printf (
      one.at[0].place == BW_PLACE_SERIES
          ? _ ("The source is of %1$s, not 75 Ω. A resistor of %2$s in series with it would match it "
               "to the lead, and leave the picture at %3$s.")
          : _ ("The source is of %1$s, not 75 Ω. A resistor of %2$s across it would match it to the "
               "lead, and leave the picture at %3$s."),
      source, ohm, left);
  if (!bw_pad_minimum_loss (bare->open_v, bare->source_ohm, BW_VIDEO_OHM, &pad, &loss_db, NULL))
    return g_steal_pointer (&resistor);
  bw_network_prefer (&pad, series, &made);
  guint in_series = made.at[0].place == BW_PLACE_SERIES ? 0 : 1;
  g_autofree char *first = figure (made.at[in_series].ohm, BW_DIMENSION_RESISTANCE);
  g_autofree char *second = figure (made.at[1 - in_series].ohm, BW_DIMENSION_RESISTANCE);
  g_autofree char *less = left_words (hookup, &made);
  g_autofree char *both = g_strdup_printf (
      _ ("A minimum-loss pad of %1$s in series and %2$s to the return would match the source as well, "
         "and leave %3$s."),
      first, second, less);
  return g_strdup_printf ("%s %s", resistor, both);
}

/* What the lead to the input lies between. */
static void
add_ends (BwHookup *hookup)
{
  BwNetwork network;
  BwNetworkFigures figures;

  if (!is_known (hookup->plan, FALSE, FALSE))
    return;
  conductor_network (hookup->plan, FALSE, NEAR_END, &network);
  bw_network_solve (&network, &figures);
  hookup->back_ohm = figures.output_ohm;
  hookup->end_ohm = bw_input_line_end_ohm (&hookup->plan->state.input);
  network.load_ohm = BW_VIDEO_OHM;
  if (network.n == 0 && network.source_ohm > 0 && !bw_load_is_one (network.source_ohm)
      && bw_load_is_one (hookup->end_ohm) && hookup->fit_after.at[BW_RULE_VIDEO_LEVEL].has_value)
    hookup->source_match = source_match_words (hookup, &network);
}

/**
 * bw_hookup_joined:
 * @conductors: set of BwConductor, those of @signal with its sync
 *
 * Returns: which of them are joined to @input: of a signal that it does not take as such, an input for
 *   luminance is given Y, or green, alone
 */
guint
bw_hookup_joined (const BwInput *input, BwSignal signal, guint conductors)
{
  guint colour = BW_BIT (BW_CONDUCTOR_PB) | BW_BIT (BW_CONDUCTOR_PR) | BW_BIT (BW_CONDUCTOR_C)
                 | BW_BIT (BW_CONDUCTOR_R) | BW_BIT (BW_CONDUCTOR_B);
  return input->signals & BW_BIT (signal) ? conductors : conductors & ~colour;
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
  conductors = bw_hookup_joined (&hookup->plan->state.input, hookup->plan->state.source.signal,
                                 conductors);
  for (BwConductor conductor = 0; conductor < BW_N_CONDUCTORS; conductor++)
    if (conductors & BW_BIT (conductor))
      add_level (hookup, conductor);
  add_ends (hookup);
}
