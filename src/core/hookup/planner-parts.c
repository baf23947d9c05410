/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "planner-private.h"

#include <math.h>
#include <string.h>

#include "core/connector/plug.h"
#include "core/levels/conductor.h"

/* Leads and passive parts: what they do to a signal. */

/**
 * bw_stretch_clear:
 * @stretch: (out caller-allocates): without steps; what stands in those is left as it is
 */
void
bw_stretch_clear (BwPlanStretch *stretch)
{
  stretch->n = 0;
  stretch->cost = 0;
  stretch->money = 0;
}

/**
 * bw_stretch_append:
 *
 * Appends all steps of @more, with what they cost.
 */
void
bw_stretch_append (BwPlanStretch *stretch, const BwPlanStretch *more)
{
  g_return_if_fail (stretch->n + more->n <= BW_STRETCH_MAX);
  for (guint i = 0; i < more->n; i++)
    stretch->at[stretch->n + i] = more->at[i];
  stretch->n += more->n;
  stretch->cost += more->cost;
  stretch->money += more->money;
}

/**
 * bw_stretch_add:
 * @cost: of @step
 *
 * Appends @step and adds up what it costs.
 */
void
bw_stretch_add (BwPlanStretch *stretch, const BwPlanStep *step, guint cost)
{
  g_return_if_fail (stretch->n < BW_STRETCH_MAX);
  stretch->at[stretch->n++] = *step;
  stretch->cost += cost;
  if (step->adaptor != NULL)
    stretch->money += bw_box_money (step->adaptor);
}

/* Whether @lead joins the two connectors for this kind of signal. */
static gboolean
joins (const BwAdaptor *lead, guint from, guint to, BwSignal signal)
{
  if (lead->takes_signals != 0 && !(lead->takes_signals & BW_BIT (signal)))
    return FALSE;
  if (lead->takes_connectors != 0 && !(lead->takes_connectors & BW_BIT (from)))
    return FALSE;
  return lead->gives_connectors != 0 ? (lead->gives_connectors & BW_BIT (to)) != 0 : from == to;
}

/* @made: only leads that are made to the wiring list, and none that goes pin to pin */
static BwPlanJoint
cheapest_joint (const GPtrArray *adaptors, guint from, guint to, BwSignal signal, gboolean made)
{
  BwPlanJoint joint = { NULL, BW_COST_LEAD_MADE };
  for (guint i = 0; i < adaptors->len; i++)
    {
      const BwAdaptor *lead = adaptors->pdata[i];
      if (lead->kind != BW_ADAPTOR_LEAD || !joins (lead, from, to, signal)
          || (made && lead->gives_connectors == 0))
        continue;
      if (joint.lead == NULL || bw_adaptor_rank (lead) < joint.cost)
        joint = (BwPlanJoint){ lead, bw_adaptor_rank (lead) };
    }
  return joint;
}

/* The connectors that have contacts for the signal; all, if none has. */
static guint
able_connectors (BwSignal signal, BwSyncKind sync)
{
  guint able = 0;
  for (guint i = 0; i < BW_N_CONNECTORS; i++)
    if (bw_connector_takes (i, signal, sync, FALSE))
      able |= BW_BIT (i);
  return able;
}

/**
 * bw_planner_join:
 * @adaptors: (element-type BwAdaptor): the catalogue's
 *
 * Works out once which lead is the cheapest between any two connectors.
 */
void
bw_planner_join (BwPlanner *planner, const GPtrArray *adaptors)
{
  for (guint signal = 0; signal < BW_N_SIGNALS; signal++)
    {
      for (guint from = 0; from < BW_N_CONNECTORS; from++)
        for (guint to = 0; to < BW_N_CONNECTORS; to++)
          planner->joints[signal][from][to] = cheapest_joint (adaptors, from, to, signal, FALSE);
      for (guint at = 0; at < BW_N_CONNECTORS; at++)
        planner->made[signal][at] = cheapest_joint (adaptors, at, at, signal, TRUE);
      for (guint sync = 0; sync < BW_N_SYNC_KINDS; sync++)
        planner->able[signal][sync] = able_connectors (signal, sync);
    }
}

/* The connector of a box that takes what it is given: the source's, if its pins are laid down and it
 * has one for each conductor; else one for each conductor. */
static BwConnector
same_plug (const BwSource *source, BwSyncKind sync)
{
  gboolean suits = bw_connector_open_contacts (source->connector) == 0
                   && bw_connector_takes (source->connector, source->signal, sync, FALSE);
  return suits ? (BwConnector) source->connector : BW_CONNECTOR_BNC;
}

/* Whether a lead that goes pin to pin between two of the source's connectors joins what belongs
 * together: where no standard lays the pins down, only if both sides are said to have the same. */
static gboolean
pins_agree (const BwSource *source, const BwPinout *pins)
{
  return bw_connector_open_contacts (source->connector) == 0
         || (pins != NULL && bw_open_pins_count (&source->open) == 0
             && memcmp (source->pins.use, pins->use, sizeof pins->use) == 0);
}

/**
 * bw_stretch_lead:
 * @connectors: set of BwConnector at the far end; empty: that of a box which takes what it is given
 * @pins: (nullable): the person's own pin-out of the input where the lead ends; %NULL: at a box
 *
 * Adds the cheapest lead to one of @connectors that has contacts for the signal, or to any if none
 * has; @signal then stands at that connector.
 */
void
bw_stretch_lead (const BwPlanner *planner, BwPlanStretch *stretch, BwPlanSignal *signal,
                 guint connectors, const BwPinout *pins, BwSyncKind sync)
{
  BwSource *source = &signal->source;
  guint ends = connectors != 0 ? connectors : BW_BIT (same_plug (source, sync));
  guint able = ends & planner->able[source->signal][sync];
  BwPlanJoint best = { NULL, G_MAXUINT };
  guint best_to = source->connector;

  for (guint to = 0; to < BW_N_CONNECTORS; to++)
    {
      BwPlanJoint joint = planner->joints[source->signal][source->connector][to];
      if (!((able != 0 ? able : ends) & BW_BIT (to)) || joint.cost >= best.cost)
        continue;
      best = joint;
      best_to = to;
    }
  if (!source->joined)
    source->open.at_source = bw_connector_open_pins (source->connector, &source->pins,
                                                     source->signal, sync, TRUE);
  if (pins != NULL)
    source->open.at_input = bw_connector_open_pins (best_to, pins, source->signal, sync, FALSE);
  if (best_to == source->connector && !pins_agree (source, pins))
    best = planner->made[source->signal][best_to];
  source->joined = TRUE;
  source->pins = (BwPinout){ { 0 } };
  source->connector = best_to;
  bw_stretch_add (stretch,
                  &(BwPlanStep){ .kind = BW_STEP_LEAD, .adaptor = best.lead, .rule = BW_RULE_LEAD,
                                 .sync = sync, .after = *signal },
                  best.cost);
}

/**
 * bw_stretch_resistor:
 * @load_ohm: what the conductor ends in
 * @takes: level that is taken there
 *
 * Adds a series resistor of the nearest preferred value to each conductor that carries sync alone.
 *
 * Returns: %FALSE if there is no such part, if none can help, or if a terminator is wanted with it
 */
gboolean
bw_stretch_resistor (const BwPlanner *planner, BwPlanStretch *stretch, BwPlanSignal *signal,
                     BwSyncKind sync, double load_ohm, BwRange takes)
{
  const BwAdaptor *part = planner->part[BW_ADAPTOR_SYNC_ATTENUATOR];
  BwSource *source = &signal->source;
  double open_v = bw_open_v (source->sync_v, source->sync_load, source->sync_ohm);
  BwSyncAttenuator it;
  BwPlanStep step = { .kind = BW_STEP_SERIES_RESISTOR, .adaptor = part,
                      .rule = BW_RULE_SYNC_LEVEL, .sync = sync };

  if (part == NULL
      || !bw_sync_attenuator (open_v, source->sync_ohm, load_ohm, takes, planner->series, &it)
      || it.terminator
      || !bw_pad_series (open_v, source->sync_ohm, load_ohm, it.wanted_v, &step.ideal, NULL)
      || step.ideal.n == 0)
    return FALSE;
  bw_network_prefer (&step.ideal, planner->series, &step.network);
  source->sync_v = open_v;
  source->sync_load = BW_LOAD_OPEN;
  source->sync_ohm += step.network.at[0].ohm;
  source->syncs = BW_BIT (sync);
  step.after = *signal;
  bw_stretch_add (stretch, &step, bw_adaptor_rank (part));
  return TRUE;
}

/* @source behind resistors that leave @ratio of its level across one load of 75 Ω. */
static void
lower_picture (BwSource *source, BwSyncKind sync, double ratio, double output_ohm)
{
  if (!bw_sync_has_own_conductor (sync))
    {
      source->sync_v *= ratio;
      source->syncs = BW_BIT (sync);
    }
  else
    source->syncs &= BW_BIT (BW_SYNC_SEPARATE) | BW_BIT (BW_SYNC_COMPOSITE);
  source->dc_v *= ratio;
  source->video_v *= ratio;
  source->source_ohm = output_ohm;
}

/**
 * bw_stretch_pad:
 * @pad: %BW_PAD_T or %BW_PAD_MINIMUM_LOSS
 * @ratio: of the level wanted to the level that there is, below one
 * @rule: the rule that calls for it
 *
 * Adds the pad, of the nearest preferred values, to each conductor that carries picture. Sync in video
 * is lowered with it.
 *
 * Returns: %FALSE if there is no such part or the ratio is not that of a pad
 */
gboolean
bw_stretch_pad (const BwPlanner *planner, BwPlanStretch *stretch, BwPlanSignal *signal,
                BwSyncKind sync, BwPadKind pad, double ratio, BwRule rule)
{
  gboolean t = pad == BW_PAD_T;
  const BwAdaptor *part = planner->part[BW_ADAPTOR_VIDEO_ATTENUATOR];
  BwSource *source = &signal->source;
  BwPlanStep step = { .kind = t ? BW_STEP_VIDEO_PAD : BW_STEP_MINIMUM_LOSS,
                      .adaptor = t ? part : NULL, .rule = rule, .sync = sync };
  BwNetworkFigures figures;

  if (part == NULL || !(ratio < 1) || !bw_match_pad (source, pad, ratio, &step.ideal))
    return FALSE;
  step.value = t ? -20 * log10 (ratio) : bw_network_power_loss_db (&step.ideal);
  bw_network_prefer (&step.ideal, planner->series, &step.network);
  bw_network_solve (&step.network, &figures);
  lower_picture (source, sync, figures.level_v / source->video_v, figures.output_ohm);
  step.after = *signal;
  bw_stretch_add (stretch, &step, bw_adaptor_rank (part));
  return TRUE;
}

/**
 * bw_stretch_end:
 * @match: of the input as it was before this; its part is not %BW_END_NO_PART
 * @input: (inout): what the lead ends in is set
 *
 * Adds the part that makes a lead of 75 Ω end as it should at an input of another resistance, of the
 * nearest preferred values, to each conductor that carries picture. @signal is then what the input
 * sees.
 *
 * Returns: %FALSE if there are no such parts
 */
gboolean
bw_stretch_end (const BwPlanner *planner, BwPlanStretch *stretch, BwPlanSignal *signal,
                BwSyncKind sync, const BwPictureMatch *match, BwInput *input)
{
  static const BwStepKind kinds[] = { [BW_END_SERIES] = BW_STEP_END_SERIES,
                                      [BW_END_SHUNT] = BW_STEP_END_SHUNT,
                                      [BW_END_MINIMUM_LOSS] = BW_STEP_END_MINIMUM_LOSS };
  const BwAdaptor *part = planner->part[BW_ADAPTOR_VIDEO_ATTENUATOR];
  BwSource *source = &signal->source;
  double open_v = bw_open_v (source->video_v, BW_LOAD_75_OHM, source->source_ohm);
  BwPlanStep step = { .kind = kinds[match->part], .rule = BW_RULE_TERMINATION, .sync = sync };
  BwNetworkFigures figures;

  if (part == NULL
      || !bw_match_end (match->part, open_v, source->source_ohm, match->changed_ohm, &step.ideal))
    return FALSE;
  bw_network_prefer (&step.ideal, planner->series, &step.network);
  bw_network_solve (&step.network, &figures);
  if (match->part == BW_END_SHUNT)
    input->added_ohm = step.value = step.network.at[0].ohm;
  else
    {
      double per_v
          = bw_level_at_load (1, BW_LOAD_75_OHM, figures.output_ohm, step.network.load_ohm);
      BwNetwork matched = step.ideal;
      matched.source_ohm = BW_VIDEO_OHM;
      step.value = bw_network_power_loss_db (&matched);
      input->line_end_ohm = figures.input_ohm;
      lower_picture (source, sync, figures.level_v / per_v / source->video_v, figures.output_ohm);
    }
  step.after = *signal;
  bw_stretch_add (stretch, &step, bw_adaptor_rank (part));
  return TRUE;
}

/**
 * bw_stretch_capacitor:
 *
 * Adds a coupling capacitor to each conductor that carries picture.
 *
 * Returns: %FALSE if there is no such part
 */
gboolean
bw_stretch_capacitor (const BwPlanner *planner, BwPlanStretch *stretch, BwPlanSignal *signal,
                      BwSyncKind sync)
{
  const BwAdaptor *part = planner->part[BW_ADAPTOR_CAPACITOR];
  BwPlanStep step = { .kind = BW_STEP_CAPACITOR, .adaptor = part, .rule = BW_RULE_COUPLING,
                      .sync = sync };
  if (part == NULL)
    return FALSE;
  signal->source.coupling = BW_COUPLING_AC;
  signal->source.dc_v = 0;
  step.after = *signal;
  bw_stretch_add (stretch, &step, bw_adaptor_rank (part));
  return TRUE;
}
