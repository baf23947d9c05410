/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan-private.h"

#include <math.h>
#include <string.h>

#include <glib/gi18n-lib.h>

#include "core/circuit/coupling.h"
#include "core/fit/mains.h"
#include "core/levels/conductor.h"
#include "planner-private.h"

/* What to buy or to take from the drawer. */

/**
 * bw_plan_step_conductors:
 * @before: what comes to the step
 *
 * Returns: the set of BwConductor that a passive part of this step stands in
 */
guint
bw_plan_step_conductors (const BwPlanStep *step, const BwPlanSignal *before)
{
  guint all = bw_signal_conductors (before->source.signal, step->sync);
  guint own = 0;
  for (guint i = 0; i < BW_N_CONDUCTORS; i++)
    if ((all & BW_BIT (i)) && bw_conductor_is_sync_alone (i))
      own |= BW_BIT (i);
  return step->kind == BW_STEP_SERIES_RESISTOR || step->kind == BW_STEP_SYNC_TERMINATOR
             ? own
             : all & ~own;
}

/* A bar as long as the line falls by this much; the clamp of the input mends the rest (common
 * practice, no source). */
#define LINE_TILT 0.01

/**
 * bw_plan_capacitor_f:
 * @step: of a coupling capacitor
 *
 * Returns: the next value of E12 that is not smaller than what the line needs, in farads
 */
double
bw_plan_capacitor_f (const BwPlanStep *step)
{
  BwRasterFigures figures;
  bw_raster_figures (step->after.raster, &figures);
  double ohm = step->after.source.source_ohm + BW_VIDEO_OHM;
  double least_f = bw_coupling_farad_of_bar (figures.h_active_s, ohm, LINE_TILT);
  return bw_preferred_value_from (least_f, BW_SERIES_E12);
}

/**
 * bw_hookup_add_part:
 * @ideal_ohm: zero: none
 * @value_ohm: of the chosen series; zero: not a resistor
 */
void
bw_hookup_add_part (BwHookup *hookup, const char *what, double ideal_ohm, double value_ohm,
                    guint count, const char *price)
{
  BwHookupPart *part = g_new0 (BwHookupPart, 1);
  part->what = g_strdup (what);
  part->ideal_ohm = ideal_ohm;
  part->series = value_ohm > 0 ? hookup->choice.series : BW_N_SERIES;
  part->value_ohm = value_ohm;
  part->count = count;
  part->price = g_strdup (price);
  g_ptr_array_add (hookup->parts, part);
}

/**
 * bw_network_powers:
 * @network: its driver stands at open_v
 * @supply_tolerance: by which share the driver is high at worst
 * @power_w: (out caller-allocates): in each of its resistors
 *
 * From the load back to the driver as resistances, then forth as voltages.
 */
void
bw_network_powers (const BwNetwork *network, double supply_tolerance,
                   double power_w[BW_NETWORK_MAX])
{
  double ohm[BW_NETWORK_MAX + 1];
  ohm[network->n] = network->load_ohm;
  for (guint i = network->n; i-- > 0;)
    ohm[i] = network->at[i].place == BW_PLACE_SERIES
                 ? ohm[i + 1] + network->at[i].ohm
                 : 1 / (1 / ohm[i + 1] + 1 / network->at[i].ohm);
  double here_v = network->open_v * (1 + supply_tolerance)
                  / (1 + network->source_ohm / ohm[0]);
  for (guint i = 0; i < network->n; i++)
    {
      double across_v = here_v;
      if (network->at[i].place == BW_PLACE_SERIES)
        across_v = isinf (ohm[i]) ? 0 : here_v * network->at[i].ohm / ohm[i];
      power_w[i] = across_v * across_v / network->at[i].ohm;
      if (network->at[i].place == BW_PLACE_SERIES)
        here_v -= across_v;
    }
}

/**
 * bw_resistor_rating_w:
 *
 * Returns: the smallest standard rating of at least 1.5 times @power_w (common practice, no source)
 */
double
bw_resistor_rating_w (double power_w)
{
  static const double ratings_w[] = { 0.125, 0.25, 0.5, 1, 2 };
  for (gsize i = 0; i < G_N_ELEMENTS (ratings_w); i++)
    if (1.5 * power_w <= ratings_w[i])
      return ratings_w[i];
  return ceil (1.5 * power_w);
}

/**
 * bw_rating_words:
 *
 * Returns: (transfer full): a rating as it is sold: "1/4 W"
 */
char *
bw_rating_words (double rating_w)
{
  if (rating_w < 1)
    return g_strdup_printf ("1/%.0f\u00a0W", 1 / rating_w);
  return g_strdup_printf ("%.0f\u00a0W", rating_w);
}

/**
 * bw_hookup_part_power:
 * @mark: the decimal mark
 *
 * Returns: (transfer full): the most that a resistor gets: "87 mW"; empty for other parts
 */
char *
bw_hookup_part_power (const BwHookupPart *part, char mark)
{
  g_return_val_if_fail (part != NULL, NULL);
  char number[G_ASCII_DTOSTR_BUF_SIZE];
  gboolean small = part->power_w < 0.9995;
  if (!(part->rating_w > 0))
    return g_strdup ("");
  g_ascii_formatd (number, sizeof number, "%.3g", small ? part->power_w * 1e3 : part->power_w);
  g_strdelimit (number, ".", mark);
  return g_strdup_printf ("%s\u00a0%s", number, small ? "mW" : "W");
}

/**
 * bw_hookup_add_resistor:
 * @power_w: in one of them at worst
 *
 * bw_hookup_add_part() with the power and the rating to buy.
 */
void
bw_hookup_add_resistor (BwHookup *hookup, const char *what, double ideal_ohm, double value_ohm,
                        double power_w, guint count, const char *price)
{
  bw_hookup_add_part (hookup, what, ideal_ohm, value_ohm, count, price);
  BwHookupPart *part = hookup->parts->pdata[hookup->parts->len - 1];
  part->power_w = power_w;
  part->rating_w = bw_resistor_rating_w (power_w);
}

/* In the load that ends the line: all of the picture with its sync, or sync on its own. */
static double
terminator_power_w (const BwPlanStep *step, const BwPlanSignal *before)
{
  const BwSource *source = &before->source;
  gboolean own = step->kind == BW_STEP_SYNC_TERMINATOR;
  gboolean with_sync = !bw_sync_has_own_conductor (step->sync);
  double ohm = own ? source->sync_ohm : source->source_ohm;
  double video_v = source->video_v + (with_sync ? source->sync_v : 0);
  double open_v = own ? bw_open_v (source->sync_v, source->sync_load, ohm)
                      : bw_open_v (video_v, BW_LOAD_75_OHM, ohm);
  double level_v = bw_level_at_load (open_v * (1 + BW_SUPPLY_TOLERANCE), BW_LOAD_OPEN, ohm,
                                     BW_VIDEO_OHM);
  return level_v * level_v / BW_VIDEO_OHM;
}

/* A lead with its connectors, where its name leaves them open. */
static char *
lead_name (const BwPlanStep *step, const BwPlanSignal *before)
{
  const char *from = bw_kind_label (&bw_connectors, before->source.connector);
  const char *to = bw_kind_label (&bw_connectors, step->after.source.connector);
  if (step->adaptor == NULL)
    return g_strdup_printf (_ ("lead made to the wiring list, %1$s to %2$s"), from, to);
  if (step->adaptor->gives_connectors == 0) /* the same at both ends, pin to pin */
    return g_strdup_printf (_ ("lead, %1$s to %2$s"), from, to);
  return g_strdup (step->adaptor->name);
}

static void
add_pad (BwHookup *hookup, const BwPlanStep *step, guint n)
{
  const char *price = step->adaptor != NULL ? step->adaptor->price : "";
  double power_w[BW_NETWORK_MAX] = { 0 };
  bw_network_powers (&step->network, BW_SUPPLY_TOLERANCE, power_w);
  bw_hookup_add_resistor (hookup, _ ("resistor, in series in the attenuator"),
                          step->ideal.at[0].ohm, step->network.at[0].ohm,
                          MAX (power_w[0], power_w[2]), 2 * n, "");
  bw_hookup_add_resistor (hookup, _ ("resistor, to the return in the attenuator"),
                          step->ideal.at[1].ohm, step->network.at[1].ohm, power_w[1], n, price);
}

/* One resistor, or the two of a minimum-loss pad. */
static void
add_resistors (BwHookup *hookup, const BwPlanStep *step, guint n)
{
  double power_w[BW_NETWORK_MAX] = { 0 };
  bw_network_powers (&step->network, BW_SUPPLY_TOLERANCE, power_w);
  for (guint i = 0; i < step->network.n; i++)
    {
      gboolean series = step->network.at[i].place == BW_PLACE_SERIES;
      const char *what = step->network.n > 1
                             ? series ? _ ("resistor, in series in the minimum-loss pad")
                                      : _ ("resistor, to the return in the minimum-loss pad")
                         : series ? _ ("resistor, in series at the input's end of the lead")
                                  : _ ("resistor, across the input");
      bw_hookup_add_resistor (hookup, what, step->ideal.at[i].ohm, step->network.at[i].ohm,
                              power_w[i], n, "");
    }
}

static void
add_capacitor (BwHookup *hookup, const BwPlanStep *step, guint n)
{
  g_autofree char *farad = bw_quantity_format (bw_plan_capacitor_f (step), BW_DIMENSION_CAPACITANCE,
                                               3, bw_quantity_locale_mark ());
  g_autofree char *what = g_strdup_printf (_ ("coupling capacitor, %s"), farad);
  bw_hookup_add_part (hookup, what, 0, 0, n, step->adaptor->price);
}

static void
add_step_parts (BwHookup *hookup, const BwPlanStep *step, const BwPlanSignal *before)
{
  guint n = bw_kind_set_count (bw_plan_step_conductors (step, before));
  double power_w[BW_NETWORK_MAX] = { 0 };
  g_autofree char *lead = step->kind == BW_STEP_LEAD ? lead_name (step, before) : NULL;
  switch ((BwStepKind) step->kind)
    {
    case BW_STEP_SERIES_RESISTOR:
      bw_network_powers (&step->network, BW_SUPPLY_TOLERANCE, power_w);
      bw_hookup_add_resistor (hookup, step->adaptor->name, step->ideal.at[0].ohm,
                              step->network.at[0].ohm, power_w[0], n, step->adaptor->price);
      break;
    case BW_STEP_VIDEO_PAD:
      add_pad (hookup, step, n);
      break;
    case BW_STEP_MINIMUM_LOSS:
    case BW_STEP_END_SERIES:
    case BW_STEP_END_SHUNT:
    case BW_STEP_END_MINIMUM_LOSS:
      add_resistors (hookup, step, n);
      break;
    case BW_STEP_CAPACITOR:
      add_capacitor (hookup, step, n);
      break;
    case BW_STEP_TERMINATOR:
    case BW_STEP_SYNC_TERMINATOR:
      bw_hookup_add_resistor (hookup, step->adaptor->name, BW_VIDEO_OHM, BW_VIDEO_OHM,
                              terminator_power_w (step, before), n, step->adaptor->price);
      break;
    case BW_STEP_LEAD:
    case BW_STEP_BOX:
      bw_hookup_add_part (hookup, lead != NULL ? lead : step->adaptor->name, 0, 0, 1,
                          step->adaptor != NULL ? step->adaptor->price : "");
      break;
    default:
      break;
    }
}

/**
 * bw_hookup_add_mains:
 *
 * Where the supply lies outside the plate, adds what it needs as the first step and the first part.
 */
void
bw_hookup_add_mains (BwHookup *hookup)
{
  const BwFinding *f = &hookup->fit_before.at[BW_RULE_MAINS];
  char mark = bw_quantity_locale_mark ();

  if (!f->danger)
    return;
  BwHookupStep *step = g_new0 (BwHookupStep, 1);
  step->kind = BW_STEP_MAINS;
  step->id = g_strdup (bw_kind_id (&bw_plan_steps, BW_STEP_MAINS));
  step->name = f->remedy.kind == BW_REMEDY_MAINS_TRANSFORMER
                   ? bw_mains_transformer_words (hookup->monitor, hookup->supply_v, mark)
                   : g_strdup (bw_kind_label (&bw_remedies, f->remedy.kind));
  step->purpose = g_strdup (_ ("before the set is switched on, by local codes and licensed practice"));
  g_ptr_array_add (hookup->steps, step);
  bw_hookup_add_part (hookup, step->name, 0, 0, 1, "");
}

/**
 * bw_hookup_add_parts:
 * @start: what the source gives
 *
 * Lists what is bought for each step of the plan.
 */
void
bw_hookup_add_parts (BwHookup *hookup, const BwPlanSignal *start)
{
  const BwPlanSignal *before = start;
  for (guint i = 0; i < hookup->plan->n; i++)
    {
      add_step_parts (hookup, &hookup->plan->at[i], before);
      before = &hookup->plan->at[i].after;
    }
}
