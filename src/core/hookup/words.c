/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan-private.h"

#include <glib/gi18n-lib.h>

#include "core/fit/results.h"

/* The chain in words, its alternatives, and what is missing where there is none. */

/**
 * bw_plan_step_is_setting:
 *
 * Returns: whether the step is a setting of the set, for which nothing is bought
 */
gboolean
bw_plan_step_is_setting (const BwPlanStep *step)
{
  return step->kind >= BW_STEP_SWITCH;
}

static char *
figure (double value, BwDimension dimension, int digits)
{
  return bw_quantity_format (value, dimension, digits, bw_quantity_locale_mark ());
}

static char *
lead_purpose (const BwPlanStep *step, const BwPlanSignal *before)
{
  if (before->source.connector == step->after.source.connector)
    return g_strdup_printf (_ ("%s to the same"),
                            bw_kind_label (&bw_connectors, before->source.connector));
  return g_strdup_printf (_ ("%1$s to %2$s"),
                          bw_kind_label (&bw_connectors, before->source.connector),
                          bw_kind_label (&bw_connectors, step->after.source.connector));
}

static char *
resistor_purpose (const BwPlanStep *step)
{
  BwNetworkFigures figures;
  BwNetwork bare = step->network;
  bw_network_solve (&step->network, &figures);
  double lowered_v = figures.level_v;
  bare.n = 0;
  bw_network_solve (&bare, &figures);
  g_autofree char *from = figure (figures.level_v, BW_DIMENSION_VOLTAGE, 3);
  g_autofree char *to = figure (lowered_v, BW_DIMENSION_VOLTAGE, 3);
  g_autofree char *load = figure (step->network.load_ohm, BW_DIMENSION_RESISTANCE, 3);
  g_autofree char *open = figure (step->network.open_v, BW_DIMENSION_VOLTAGE, 3);
  return step->kind != BW_STEP_SERIES_RESISTOR
             ? g_strdup_printf (_ ("lowers the picture from %1$s to %2$s"), from, to)
             : g_strdup_printf (_ ("lowers the sync from %1$s open (%2$s across %3$s) to %4$s"), open, from,
                                load, to);
}

/* @number with two decimals, in @text. */
static const char *
two_decimals (double number, char text[G_ASCII_DTOSTR_BUF_SIZE])
{
  g_ascii_formatd (text, G_ASCII_DTOSTR_BUF_SIZE, "%.2f", number);
  return g_strdelimit (text, ".", bw_quantity_locale_mark ());
}

static char *
decibels (double db)
{
  char text[G_ASCII_DTOSTR_BUF_SIZE];
  return g_strdup_printf (_ ("%s dB"), two_decimals (db, text));
}

/* A pad that matches two resistances, the source's and the lead's or the lead's and the input's. */
static char *
minimum_loss_purpose (const BwPlanStep *step)
{
  gboolean at_input = step->kind == BW_STEP_END_MINIMUM_LOSS;
  BwNetworkFigures figures;
  bw_network_solve (&step->network, &figures);
  g_autofree char *from
      = figure (at_input ? BW_VIDEO_OHM : step->network.source_ohm, BW_DIMENSION_RESISTANCE, 3);
  g_autofree char *to = figure (step->network.load_ohm, BW_DIMENSION_RESISTANCE, 3);
  g_autofree char *loss = decibels (step->value);
  g_autofree char *level = figure (figures.level_v, BW_DIMENSION_VOLTAGE, 3);
  return g_strdup_printf (_ ("matches %1$s to %2$s, loses %3$s of power and leaves the picture at "
                             "%4$s"),
                          from, to, loss, level);
}

/* A resistor at an input that is not of 75 Ω. */
static char *
end_purpose (const BwPlanStep *step)
{
  BwNetworkFigures figures;
  bw_network_solve (&step->network, &figures);
  g_autofree char *input = figure (step->network.load_ohm, BW_DIMENSION_RESISTANCE, 3);
  g_autofree char *end = figure (figures.input_ohm, BW_DIMENSION_RESISTANCE, 3);
  g_autofree char *level = figure (figures.level_v, BW_DIMENSION_VOLTAGE, 3);
  return g_strdup_printf (_ ("so that the lead ends in %1$s at an input of %2$s; the picture is "
                             "%3$s there"),
                          end, input, level);
}

static char *
box_purpose (const BwPlanStep *step, const BwPlanSignal *before)
{
  const BwSource *in = &before->source, *out = &step->after.source;
  g_autofree char *syncs_in = bw_kind_set_labels (&bw_sync_kinds, BW_BIT (step->sync));
  g_autofree char *syncs_out = bw_kind_set_labels (&bw_sync_kinds, out->syncs);

  if (before->raster != step->after.raster)
    return g_strdup_printf (_ ("%1$s, %2$s, to %3$s, %4$s"),
                            bw_kind_label (&bw_signals, in->signal), before->raster->name,
                            bw_kind_label (&bw_signals, out->signal), step->after.raster->name);
  if (in->signal != out->signal)
    return g_strdup_printf (_ ("%1$s to %2$s"), bw_kind_label (&bw_signals, in->signal),
                            bw_kind_label (&bw_signals, out->signal));
  if (in->system != out->system)
    return g_strdup_printf (_ ("%1$s to %2$s"), bw_kind_label (&bw_colour_systems, in->system),
                            bw_kind_label (&bw_colour_systems, out->system));
  if (in->syncs != out->syncs)
    return g_strdup_printf (_ ("%1$s to %2$s"), syncs_in, syncs_out);
  return g_strdup (_ ("brings the signal to what the next one takes"));
}

static char *
setting_purpose (const BwPlanStep *step)
{
  g_autofree char *share = figure (step->value, BW_DIMENSION_FRACTION, 3);
  g_autofree char *ire = figure (step->value, BW_DIMENSION_IRE, 3);

  switch ((BwStepKind) step->kind)
    {
    case BW_STEP_SWITCH:
    case BW_STEP_SYNC_SWITCH:
      return g_strdup (step->on ? _ ("set it to 75 Ω") : _ ("set it to high impedance"));
    case BW_STEP_UNLOAD_LOOP:
      return g_strdup (_ ("so that the line ends in one load"));
    case BW_STEP_ASPECT_SWITCH:
      return g_strdup_printf (_ ("the picture then takes %1$s of the %2$s"), share,
                              step->on ? _ ("height") : _ ("width"));
    case BW_STEP_ASPECT_SIZE:
      return g_strdup_printf (step->on ? _ ("set the height to %s") : _ ("set the width to %s"),
                              share);
    case BW_STEP_UNDERSCAN:
      return g_strdup (_ ("brings the whole picture inside the glass"));
    case BW_STEP_BLACK_LEVEL:
      return g_strdup_printf (_ ("for a setup of %s"), ire);
    default:
      return g_strdup (_ ("so that the line ends in one load of 75 Ω"));
    }
}

static char *
purpose (const BwPlanStep *step, const BwPlanSignal *before)
{
  switch ((BwStepKind) step->kind)
    {
    case BW_STEP_LEAD:
      return lead_purpose (step, before);
    case BW_STEP_SERIES_RESISTOR:
    case BW_STEP_VIDEO_PAD:
      return resistor_purpose (step);
    case BW_STEP_MINIMUM_LOSS:
    case BW_STEP_END_MINIMUM_LOSS:
      return minimum_loss_purpose (step);
    case BW_STEP_END_SERIES:
    case BW_STEP_END_SHUNT:
      return end_purpose (step);
    case BW_STEP_CAPACITOR:
      return g_strdup (_ ("keeps the source's d.c. from the input"));
    case BW_STEP_BOX:
      return box_purpose (step, before);
    default:
      return setting_purpose (step);
    }
}

/**
 * bw_plan_step_name:
 *
 * Returns: (transfer none): what the step is called: as in the catalogue, else by its kind
 */
const char *
bw_plan_step_name (const BwPlanStep *step)
{
  if (step->adaptor != NULL)
    return step->adaptor->name;
  return step->kind == BW_STEP_LEAD ? _ ("lead made to the wiring list")
                                    : bw_kind_label (&bw_plan_steps, step->kind);
}

/**
 * bw_hookup_add_steps:
 * @start: what the source gives
 *
 * Names each step of the plan and says what it is there for.
 */
void
bw_hookup_add_steps (BwHookup *hookup, const BwPlanSignal *start)
{
  const BwPlanSignal *before = start;
  for (guint i = 0; i < hookup->plan->n; i++)
    {
      const BwPlanStep *step = &hookup->plan->at[i];
      BwHookupStep *shown = g_new0 (BwHookupStep, 1);
      shown->kind = step->kind;
      shown->id = g_strdup (step->adaptor != NULL ? step->adaptor->id
                                                  : bw_kind_id (&bw_plan_steps, step->kind));
      shown->name = g_strdup (bw_plan_step_name (step));
      shown->purpose = purpose (step, before);
      shown->is_setting = bw_plan_step_is_setting (step);
      g_ptr_array_add (hookup->steps, shown);
      before = &step->after;
    }
}

/* The sum of the prices, if every adaptor but leads has one, all in one currency. */
static char *
total_price (const BwPlan *plan)
{
  double total = 0;
  const char *unit = NULL;

  for (guint i = 0; i < plan->n; i++)
    {
      const BwAdaptor *adaptor = plan->at[i].adaptor;
      double money;
      const char *its_unit;
      if (adaptor == NULL)
        continue;
      if (!bw_adaptor_price (adaptor, &money, &its_unit))
        {
          if (adaptor->kind == BW_ADAPTOR_LEAD)
            continue;
          return g_strdup ("");
        }
      if (unit != NULL && g_strcmp0 (unit, its_unit) != 0)
        return g_strdup ("");
      unit = its_unit;
      total += money;
    }
  if (unit == NULL)
    return g_strdup ("");
  char number[G_ASCII_DTOSTR_BUF_SIZE];
  return g_strdup_printf ("%s %s", two_decimals (total, number), unit);
}

/**
 * bw_hookup_add_alternative:
 *
 * Sums up @plan in one line: its boxes, parts and settings without the leads, unless there is
 * nothing else.
 */
void
bw_hookup_add_alternative (BwHookup *hookup, const BwPlan *plan)
{
  BwHookupAlternative *alternative = g_new0 (BwHookupAlternative, 1);
  g_autoptr (GString) summary = g_string_new (NULL);
  const char *lead = NULL;

  for (guint i = 0; i < plan->n; i++)
    if (plan->at[i].kind == BW_STEP_LEAD)
      lead = bw_plan_step_name (&plan->at[i]);
    else
      g_string_append_printf (summary, "%s%s", summary->len > 0 ? "; " : "",
                              bw_plan_step_name (&plan->at[i]));
  if (summary->len == 0 && lead != NULL)
    g_string_append (summary, lead);
  alternative->summary = g_strdup (summary->str);
  alternative->cost = plan->cost;
  const BwFinding *mains = &hookup->fit_before.at[BW_RULE_MAINS];
  BwFit fit = plan->fit;
  if (mains->severity <= BW_SEVERITY_TIGHT) /* no plan mends what is no danger */
    fit.verdict = MAX (fit.verdict, bw_verdict_of (mains->severity));
  alternative->verdict = fit.verdict;
  alternative->verdict_says = bw_fit_verdict_short (&fit);
  alternative->price = total_price (plan);
  g_ptr_array_add (hookup->alternatives, alternative);
}

static char *
line_rates (const BwCase *c)
{
  const BwBands *bands
      = c->input->line_rates_hz.n > 0 ? &c->input->line_rates_hz : &c->monitor->line_rates_hz;
  if (bands->n == 0)
    return g_strdup (_ ("not known"));
  return bw_quantity_bands_to_entry (bands, BW_DIMENSION_FREQUENCY, "kHz",
                                     bw_quantity_locale_mark ());
}

/* Returns: (transfer full): what is joined to what: "R: pin 15 (red) to centre contact of R" */
static char *
connection_route (const BwHookupConnection *connection)
{
  g_return_val_if_fail (connection != NULL, NULL);
  return g_strdup_printf (_ ("%1$s: %2$s to %3$s"), connection->signal, connection->from,
                          connection->to);
}

/* Returns: (transfer full): its return, and what is in between: "return pin 13 to shell; straight
 *   through" */
static char *
connection_detail (const BwHookupConnection *connection)
{
  g_return_val_if_fail (connection != NULL, NULL);
  return g_strdup_printf (_ ("return %1$s to %2$s; %3$s"), connection->from_return,
                          connection->to_return, connection->through);
}

/**
 * bw_hookup_connection_says:
 *
 * Returns: (transfer full): one conductor in a sentence: its route and its detail
 */
char *
bw_hookup_connection_says (const BwHookupConnection *connection)
{
  g_return_val_if_fail (connection != NULL, NULL);
  g_autofree char *route = connection_route (connection);
  g_autofree char *detail = connection_detail (connection);
  /* translators: a conductor's route, then its return and what is in between */
  return g_strdup_printf (_ ("%1$s; %2$s"), route, detail);
}

/* Whether a box would have to take the source's raster or signal and give another. */
static gboolean
raster_or_signal_fails (const BwHookup *hookup)
{
  static const BwRule rules[] = { BW_RULE_SIGNAL_KIND,   BW_RULE_COLOUR_SYSTEM,
                                  BW_RULE_LINE_RATE,     BW_RULE_FIELD_RATE,
                                  BW_RULE_LINE_COUNT,    BW_RULE_LINE_BLANKING,
                                  BW_RULE_FIELD_BLANKING };
  for (gsize i = 0; i < G_N_ELEMENTS (rules); i++)
    if (hookup->fit_before.at[rules[i]].severity >= BW_SEVERITY_CURABLE)
      return TRUE;
  return FALSE;
}

/* What would cure each finding by itself, where raster and signal are right. */
static char *
levels_need (const BwHookup *hookup, const BwCase *before)
{
  g_autoptr (GPtrArray) remedies = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; i < BW_N_RULES; i++)
    {
      const BwFinding *f = &hookup->fit_before.at[i];
      char *remedy = f->severity >= BW_SEVERITY_CURABLE && i != BW_RULE_MAINS
                         ? bw_finding_remedy (f, &hookup->fit_before, before,
                                              bw_quantity_locale_mark ())
                         : NULL;
      if (remedy != NULL && !g_ptr_array_find_with_equal_func (remedies, remedy, g_str_equal, NULL))
        g_ptr_array_add (remedies, remedy);
      else
        g_free (remedy);
    }
  g_ptr_array_add (remedies, NULL);
  g_autofree char *all = g_strjoinv ("; ", (char **) remedies->pdata);
  return g_strdup_printf (
      g_dngettext (GETTEXT_PACKAGE,
                   "No chain of up to %1$d adaptor of the catalogue does all that is needed. One by "
                   "one it would be: %2$s.",
                   "No chain of up to %1$d adaptors of the catalogue does all that is needed. One by "
                   "one it would be: %2$s.",
                   BW_PLAN_MAX_BOXES),
      BW_PLAN_MAX_BOXES, all);
}

/**
 * bw_hookup_add_needs:
 * @before: the source at the input as it is
 *
 * Says what stays in the way, and what an adaptor would have to take and give.
 */
void
bw_hookup_add_needs (BwHookup *hookup, const BwCase *before)
{
  g_autofree char *line = figure (before->figures->line_rate_hz, BW_DIMENSION_FREQUENCY, 5);
  g_autofree char *field = figure (before->figures->field_rate_hz, BW_DIMENSION_FREQUENCY, 5);
  g_autofree char *takes = bw_kind_set_labels (&bw_signals, before->input->signals);
  g_autofree char *rates = line_rates (before);

  for (guint i = 0; i < BW_N_RULES; i++)
    if (hookup->fit_before.at[i].severity >= BW_SEVERITY_CURABLE)
      g_ptr_array_add (hookup->needs,
                       bw_finding_says (&hookup->fit_before.at[i], &hookup->fit_before, before,
                                        bw_quantity_locale_mark ()));
  if (!raster_or_signal_fails (hookup))
    {
      g_ptr_array_add (hookup->needs, levels_need (hookup, before));
      return;
    }
  g_ptr_array_add (
      hookup->needs,
      g_strdup_printf (
          g_dngettext (GETTEXT_PACKAGE,
                       "No chain of up to %1$d adaptor of the catalogue leads there. One would be needed "
                       "that takes %2$s, %3$s, at %4$s and %5$s, and gives %6$s at line rates of %7$s.",
                       "No chain of up to %1$d adaptors of the catalogue leads there. One would be "
                       "needed that takes %2$s, %3$s, at %4$s and %5$s, and gives %6$s at line rates of "
                       "%7$s.",
                       BW_PLAN_MAX_BOXES),
          BW_PLAN_MAX_BOXES, bw_kind_label (&bw_signals, before->source->signal),
          bw_kind_label (&bw_scans, before->raster->scan), line, field, takes, rates));
}
