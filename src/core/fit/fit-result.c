/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "results.h"

#include <glib/gi18n-lib.h>

#include "core/base/caution.h"
#include "core/connector/plug.h"
#include "mains.h"

/* The verdict on each source at each input, and what each rule found. */

/* A fraction is held as such, not in per cent. */
static const char *
base_unit (BwDimension dimension)
{
  return dimension == BW_DIMENSION_FRACTION ? "fraction" : bw_quantity_base_unit (dimension);
}

/* The sign of a finding; a remark has none. */
static BwMark
mark_of (const BwFinding *f)
{
  if (f->danger)
    return BW_MARK (BW_SEVERITY_FATAL);
  return bw_finding_is_remark (f) ? BW_MARK_NONE : BW_MARK (f->severity);
}

/* One rule's outcome. Values, limits and margins are in the base unit that "unit" names; what a rule
 * does not have is null. */
static void
add_finding (BwNode *table, const BwFinding *f, const BwFit *fit, const BwCase *c)
{
  gboolean measured = f->has_value || f->has_low || f->has_high;
  gboolean limited = f->has_value && (f->has_low || f->has_high);
  char mark = bw_result_mark (table->result);
  BwNode *row = bw_node_row (table);
  BwValue value = bw_value_quantity ("value", f->value, f->dimension, 4);
  BwValue margin = bw_value_fixed ("margin", f->margin, BW_DIMENSION_FRACTION, "%", 0);

  BwValue severity = bw_value_kind ("severity", &bw_severities, f->severity);

  /* Translators: the outcome of a rule: what it found can hurt someone */
  row->mark = mark_of (f);
  bw_node_cell (row, f->danger ? bw_value_read_as (severity, C_ ("outcome", "danger")) : severity);
  bw_node_cell (row, bw_value_kind ("rule", &bw_rules, f->rule));
  bw_node_cell (row, bw_value_read_as (bw_value_if (f->has_value, value),
                                       bw_node_take (row, bw_finding_value (f, mark))));
  bw_node_cell (row, bw_value_says (NULL, bw_node_take (row, bw_finding_allowed (f, mark))));
  bw_node_cell (row, bw_value_read_as (bw_value_if (limited, margin),
                                       bw_node_take (row, bw_finding_margin (f, mark))));
  bw_node_cell (row, bw_value_says ("says", bw_node_take (row, bw_finding_says (f, fit, c, mark))));
  bw_node_cell (row,
                bw_value_says ("remedy", bw_node_take (row, bw_finding_remedy (f, fit, c, mark))));
  bw_node_member (row, bw_value_if (f->has_low, bw_value_count ("low", f->low)));
  bw_node_member (row, bw_value_if (f->has_high, bw_value_count ("high", f->high)));
  bw_node_member (row, bw_value_words ("lacks", bw_node_take (row, bw_lack_key (&f->lacks))));
  bw_node_member (row, bw_value_words ("unit", measured ? base_unit (f->dimension) : NULL));
  bw_node_member (row, bw_value_flag ("danger", f->danger));
}

/* With @worst_first what is a danger stands first, then the rules with the worst findings; else all
 * in their own order. */
static void
add_findings (BwNode *table, const BwFit *fit, const BwCase *c, gboolean worst_first)
{
  table->order = "rule severity value low high unit says remedy margin danger lacks";
  for (BwRule rule = 0; rule < BW_N_RULES; rule++)
    if (!worst_first || fit->at[rule].danger)
      add_finding (table, &fit->at[rule], fit, c);
  for (guint turn = 0; worst_first && turn < BW_N_SEVERITIES; turn++)
    for (BwRule rule = 0; rule < BW_N_RULES; rule++)
      if (!fit->at[rule].danger && fit->at[rule].severity == BW_N_SEVERITIES - 1 - turn)
        add_finding (table, &fit->at[rule], fit, c);
}

/* Each thing that the plan needs, for scripts; null where there is no plan, or none is needed. */
static void
add_needs (BwNode *row, char *const *needs)
{
  bw_node_member (row, needs != NULL ? bw_value_list ("plan", (const char *const *) needs)
                                     : bw_value_nothing ("plan"));
}

/* "limiting" is the rule of the worst finding, null where all hold. */
static void
add_cell (BwNode *table, const BwFitAsk *ask, guint source, guint input)
{
  const BwSource *from = bw_sheet_source (ask->sheet, source);
  BwNode *row = bw_node_row (table);
  BwRasterFigures figures;
  BwCase c;
  BwFit fit;

  bw_node_cell (row, bw_value_words ("source", from->name));
  bw_node_cell (row, bw_value_words ("input", bw_monitor_input (ask->sheet->monitor, input)->name));
  bw_case_init (&c, &figures, ask->sheet, ask->catalogue, source, input);
  bw_fit_judge (&c, &fit);
  g_auto (GStrv) needs = NULL;
  if (ask->plan != NULL && fit.verdict >= BW_VERDICT_WITH_PARTS)
    {
      needs = ask->plan (ask->sheet, ask->catalogue, source, input,
                         bw_result_mark (table->result));
      bw_fit_take_plan (&fit, &c, needs != NULL);
    }
  gboolean limited = fit.verdict != BW_VERDICT_DIRECT;
  BwValue verdict = bw_value_read_as (bw_value_kind ("verdict", &bw_verdicts, fit.verdict),
                                      bw_node_take (row, bw_fit_verdict_says (&fit)));
  bw_node_cell (row, bw_value_marked (verdict, BW_MARK (bw_verdict_severity (fit.verdict))));
  add_findings (bw_node_table (row, "findings", NULL), &fit, &c, FALSE);
  bw_node_member (row, limited ? bw_value_kind ("limiting", &bw_rules, fit.limiting)
                               : bw_value_nothing ("limiting"));
  bw_node_member (row, bw_value_count ("not_judged", fit.not_judged));
  bw_node_member (row, from->syncs != 0 ? bw_value_kind ("sync", &bw_sync_kinds, fit.sync)
                                        : bw_value_nothing ("sync"));
  add_needs (row, needs);
}

/**
 * bw_fit_say:
 *
 * Returns: (transfer none): a new table of sources by inputs, with the findings behind it
 */
BwNode *
bw_fit_say (BwNode *to, const BwFitAsk *ask)
{
  g_return_val_if_fail (to != NULL && ask != NULL, NULL);
  bw_node_member (to, bw_value_words ("monitor", ask->sheet->monitor->name));
  BwNode *table = bw_node_table (to, "cells", NULL);

  table->order = "source input verdict findings limiting sync not_judged plan";
  table->names = 2;
  table->across = ask->inputs->len;
  bw_node_column (table, BW_COLUMN_WORDS, _ ("Source"), NULL);
  bw_node_column (table, BW_COLUMN_WORDS, _ ("Input"), NULL);
  bw_node_column (table, BW_COLUMN_WORDS, _ ("Verdict"), NULL);
  for (guint s = 0; s < ask->sources->len; s++)
    for (guint i = 0; i < ask->inputs->len; i++)
      add_cell (table, ask, g_array_index (ask->sources, guint, s),
                g_array_index (ask->inputs, guint, i));
  return table;
}

/**
 * bw_mains_say:
 * @supply_v: mains at the bench; zero: not known. Likewise @supply_hz
 *
 * Adds what there is to say of the supply against the rating plate: for scripts always, for people
 * where it does not plainly suit. It comes first on every face, because it can hurt someone.
 */
void
bw_mains_say (BwNode *to, const BwMonitor *monitor, double supply_v, double supply_hz)
{
  g_return_if_fail (to != NULL && monitor != NULL);
  BwMains mains = { .voltage = BW_SEVERITY_UNJUDGED, .frequency = BW_SEVERITY_UNJUDGED };
  char mark = bw_result_mark (to->result);
  gboolean judged = bw_mains_judge (monitor, supply_v, supply_hz, &mains);
  gboolean danger = judged && bw_mains_is_danger (&mains);
  BwSeverity worst = MAX (mains.voltage, mains.frequency);
  const char *says = bw_node_take (to, bw_mains_says (monitor, supply_v, supply_hz, mark));
  BwNode *section = bw_node_section (to, "mains", NULL);

  section->order = "danger voltage frequency says";
  bw_node_member (section, bw_value_flag ("danger", danger));
  bw_node_member (section, bw_value_if (mains.voltage != BW_SEVERITY_UNJUDGED,
                                        bw_value_kind ("voltage", &bw_severities, mains.voltage)));
  bw_node_member (section,
                  bw_value_if (mains.frequency != BW_SEVERITY_UNJUDGED,
                               bw_value_kind ("frequency", &bw_severities, mains.frequency)));
  bw_node_member (section, bw_value_says ("says", says));
  if (worst == BW_SEVERITY_OK)
    return;
  const char *words = danger   ? bw_node_print (to, _ ("Danger: %s"), says)
                      : judged ? bw_node_print (to, _ ("Mains: %s"), says)
                               : bw_node_print (to, _ ("Mains not judged. %s"), says);
  bw_node_say (section, BW_SAY_NOTE, NULL, words)->mark
      = BW_MARK (danger ? BW_SEVERITY_FATAL : worst);
}

/**
 * bw_fit_say_legend:
 *
 * Adds what each verdict means.
 */
void
bw_fit_say_legend (BwNode *to)
{
  g_return_if_fail (to != NULL);
  for (BwVerdict verdict = 0; verdict < BW_N_VERDICTS; verdict++)
    bw_node_say (to, BW_SAY_NOTE, NULL,
                 bw_node_print (to, "%s: %s", bw_kind_label (&bw_verdicts, verdict),
                                bw_verdict_meaning (verdict)))
        ->mark = BW_MARK (bw_verdict_severity (verdict));
}

/**
 * bw_fit_say_sheet:
 * @plan: (nullable): as of BwFitAsk
 *
 * Returns: (transfer none): the table of bw_fit_say(), of every source at every input of @sheet
 */
BwNode *
bw_fit_say_sheet (BwNode *to, const BwSheet *sheet, const BwCatalogue *catalogue,
                  BwFitPlanFunc plan)
{
  g_return_val_if_fail (to != NULL && sheet != NULL && catalogue != NULL, NULL);
  g_autoptr (GArray) sources = g_array_new (FALSE, FALSE, sizeof (guint));
  g_autoptr (GArray) inputs = g_array_new (FALSE, FALSE, sizeof (guint));
  const BwFitAsk ask = { sheet, catalogue, sources, inputs, plan };

  for (guint i = 0; i < sheet->sources->len; i++)
    g_array_append_val (sources, i);
  for (guint i = 0; i < sheet->monitor->inputs->len; i++)
    g_array_append_val (inputs, i);
  return bw_fit_say (to, &ask);
}

/* Findings in sentences */

/* What holds without a setting needs no words. */
static void
tell_finding (BwNode *to, const BwNode *finding)
{
  g_autofree char *rule = bw_node_words (finding, "rule");
  g_autofree char *says = bw_node_words (finding, "says");
  g_autofree char *remedy = bw_node_words (finding, "remedy");

  if (finding->mark == BW_MARK (BW_SEVERITY_OK) && *remedy == '\0')
    return;
  BwNode *sentence = bw_node_say (to, BW_SAY_NOTE, NULL, bw_node_print (to, "%s: %s", rule, says));
  sentence->mark = finding->mark;
  if (*remedy != '\0')
    bw_node_say (sentence, BW_SAY_NOTE, NULL, bw_node_print (to, _ ("Remedy: %s"), remedy));
}

/* What the plan takes in all, or that there is none. */
static void
tell_plan (BwNode *to, const BwNode *cell)
{
  const char *const *list = bw_node_value (cell, "plan")->list;
  g_autofree char *needs = list != NULL ? g_strjoinv ("; ", (char **) list) : NULL;
  if (needs != NULL && *needs != '\0')
    bw_node_say (to, BW_SAY_NOTE, NULL, bw_node_print (to, _ ("In all: %s"), needs));
}

static void
tell_cell (BwNode *to, const BwNode *cell, BwMark mark)
{
  const BwNode *findings = bw_node_find (cell, "findings");
  g_autofree char *source = bw_node_words (cell, "source");
  g_autofree char *input = bw_node_words (cell, "input");
  g_autofree char *verdict = bw_node_words (cell, "verdict");
  BwNode *section = bw_node_section (to, NULL,
                                     bw_node_print (to, _ ("%1$s at %2$s: %3$s"), source, input,
                                                    verdict));

  section->mark = mark;
  if (mark == BW_MARK (BW_SEVERITY_OK))
    bw_node_say (section, BW_SAY_NOTE, NULL, _ ("Every rule holds with margin."));
  for (guint i = 0; i < findings->children->len; i++)
    tell_finding (section, findings->children->pdata[i]);
  tell_plan (section, cell);
}

/**
 * bw_fit_tell:
 * @cells: the table of bw_fit_say()
 * @failing: whether cells in which every rule holds with margin are left out
 *
 * Adds for people what does not hold in each cell, and the remedy.
 */
void
bw_fit_tell (BwNode *to, const BwNode *cells, gboolean failing)
{
  g_return_if_fail (to != NULL && cells != NULL);
  for (guint i = 0; i < cells->children->len; i++)
    {
      const BwNode *cell = cells->children->pdata[i];
      BwMark mark = bw_node_value (cell, "verdict")->mark;
      if (mark != BW_MARK_NONE && !(failing && mark == BW_MARK (BW_SEVERITY_OK)))
        tell_cell (to, cell, mark);
    }
}

/* One source at one input */

/**
 * bw_fit_reasons:
 *
 * Returns: (transfer full) (element-type utf8): what the verdict hangs on, worst or as bad, each thing
 *   once: for "with parts" the remedies in short, for "tight" and "no" the rules, for "open" the figures
 *   that would decide; nothing for "direct"
 */
GPtrArray *
bw_fit_reasons (const BwFit *fit, char mark)
{
  g_return_val_if_fail (fit != NULL, NULL);
  GPtrArray *reasons = g_ptr_array_new_with_free_func (g_free);

  BwSeverity severity
      = fit->unplanned ? BW_SEVERITY_CURABLE : bw_verdict_severity (fit->verdict);

  for (BwRule rule = 0; rule < BW_N_RULES && fit->verdict != BW_VERDICT_DIRECT; rule++)
    {
      const BwFinding *finding = &fit->at[rule];
      if (finding->severity < severity)
        continue;
      g_autofree char *reason = fit->verdict == BW_VERDICT_WITH_PARTS
                                    ? bw_finding_remedy_short (finding, mark)
                                : finding->reason == BW_REASON_OPEN_PINS
                                    ? bw_open_pins_says (&finding->as.lead.open)
                                : fit->verdict == BW_VERDICT_OPEN ? bw_lack_name (&finding->lacks)
                                                                  : NULL;
      if (reason == NULL)
        reason = g_strdup (bw_kind_label (&bw_rules, rule));
      if (!g_ptr_array_find_with_equal_func (reasons, reason, g_str_equal, NULL))
        g_ptr_array_add (reasons, g_steal_pointer (&reason));
    }
  return reasons;
}

/* Of how many contacts nobody says which they are, where that is what the lead lacks. Where nothing else is known
 * either, nothing is complete but for them. */
static guint
open_pins (const BwFit *fit)
{
  const BwFinding *lead = &fit->at[BW_RULE_LEAD];
  if (bw_fit_is_blank (fit))
    return 0;
  return lead->reason == BW_REASON_OPEN_PINS ? bw_open_pins_count (&lead->as.lead.open) : 0;
}

/* The verdict's own word; of a blank fit "not judged", since "direct so far" would say too much. */
static const char *
own_word (const BwFit *fit)
{
  /* Translators: a verdict, where nothing that is known of the set was held against the source */
  return bw_fit_is_blank (fit) ? C_ ("verdict", "not judged")
                               : bw_kind_label (&bw_verdicts, fit->verdict);
}

/**
 * bw_fit_verdict_word:
 *
 * Returns: (transfer none): the verdict in a word or three, translated. What lacks its pins is not
 *   called direct
 */
const char *
bw_fit_verdict_word (const BwFit *fit)
{
  g_return_val_if_fail (fit != NULL, "");
  if (fit->verdict == BW_VERDICT_OPEN && open_pins (fit) > 0)
    return bw_fit_open_word ();
  return own_word (fit);
}

/**
 * bw_fit_open_word:
 *
 * Returns: (transfer none): the word for what would be direct if its pins were known, translated
 */
const char *
bw_fit_open_word (void)
{
  /* Translators: a verdict: all is well, but it is not known which pins the lead ends at */
  return C_ ("verdict", "but for pins");
}

/**
 * bw_fit_verdict_short:
 *
 * Returns: (transfer full): the verdict with how many pins are open: "complete but for 5 pins"
 */
char *
bw_fit_verdict_short (const BwFit *fit)
{
  g_return_val_if_fail (fit != NULL, NULL);
  guint n = open_pins (fit);
  const char *verdict = own_word (fit);

  if (n == 0 || fit->verdict > BW_VERDICT_TIGHT)
    return g_strdup (verdict);
  g_autofree char *but = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "complete but for %u pin",
                                                       "complete but for %u pins", n),
                                          n);
  /* Translators: a verdict and what it lacks: "tight, complete but for 5 pins" */
  return fit->verdict == BW_VERDICT_OPEN ? g_steal_pointer (&but)
                                         : g_strdup_printf (_ ("%1$s, %2$s"), verdict, but);
}

/**
 * bw_fit_verdict_says:
 *
 * Returns: (transfer full): the verdict in words, with how many rules were not judged: "direct so
 *   far; 3 not judged", "complete but for 5 pins; 2 not judged"; "not judged" alone where nothing was
 */
char *
bw_fit_verdict_says (const BwFit *fit)
{
  g_return_val_if_fail (fit != NULL, NULL);
  g_autofree char *verdict = bw_fit_verdict_short (fit);
  guint n = bw_fit_not_judged_besides (fit);

  if (n == 0)
    return g_steal_pointer (&verdict);
  /* Translators: a verdict and how many rules lack a figure: "direct so far; 3 not judged" */
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%1$s; %2$u not judged",
                                       "%1$s; %2$u not judged", n),
                          verdict, n);
}

/**
 * bw_fit_not_judged_besides:
 *
 * Returns: how many rules are not judged, besides that on the lead where the verdict names its pins; zero where
 *   the verdict is that nothing is judged
 */
guint
bw_fit_not_judged_besides (const BwFit *fit)
{
  g_return_val_if_fail (fit != NULL, 0);
  if (bw_fit_is_blank (fit))
    return 0; /* the verdict says so itself */
  gboolean named = open_pins (fit) > 0 && fit->verdict <= BW_VERDICT_TIGHT;
  return fit->not_judged - (named ? 1 : 0);
}

/* "Console on RGB: with parts: …" */
static const char *
summary (BwNode *to, const BwFit *fit, const BwCase *c, char *const *needs)
{
  const char *verdict = bw_node_take (to, bw_fit_verdict_says (fit));
  g_autoptr (GPtrArray) reasons = bw_fit_reasons (fit, bw_result_mark (to->result));

  if (fit->verdict == BW_VERDICT_WITH_PARTS && needs != NULL && needs[0] != NULL)
    return bw_node_print (to, _ ("%1$s on %2$s: %3$s: %4$s"), c->source->name, c->input->name,
                          verdict,
                          bw_node_take (to, g_strjoinv ("; ", (char **) needs)));
  if (fit->unplanned && reasons->len > 0)
    {
      g_ptr_array_add (reasons, NULL);
      return bw_node_print (to,
                            _ ("%1$s on %2$s: %3$s: the catalogue holds nothing that cures all of "
                               "this: %4$s"),
                            c->source->name, c->input->name, verdict,
                            bw_node_take (to, g_strjoinv ("; ", (char **) reasons->pdata)));
    }
  if (reasons->len == 0)
    return bw_node_print (to, _ ("%1$s on %2$s: %3$s: every rule holds"), c->source->name,
                          c->input->name, verdict);
  g_ptr_array_add (reasons, NULL);
  return bw_node_print (to, _ ("%1$s on %2$s: %3$s: %4$s"), c->source->name, c->input->name,
                        verdict, bw_node_take (to, g_strjoinv ("; ", (char **) reasons->pdata)));
}

static const char *
or_not_stated (const char *text)
{
  return text != NULL && *text != '\0' ? text : _ ("not stated");
}

static const char *
limits_from (BwNode *to, const BwCase *c)
{
  return bw_node_print (
      to, _ ("Limits: %1$s. Source: %2$s. Raster: %3$s. Margins: as set in this sheet."),
      or_not_stated (c->monitor->source), or_not_stated (c->source->origin),
      or_not_stated (c->raster != NULL ? c->raster->source : NULL));
}

/**
 * bw_case_say:
 * @fit: of @c
 * @needs: (nullable): what the plan needs, as from a BwFitPlanFunc
 *
 * Adds for people the fit of one source at one input, where its limits come from, and what each
 * rule found, those that do not hold first.
 */
void
bw_case_say (BwNode *to, const BwFit *fit, const BwCase *c, char *const *needs)
{
  g_return_if_fail (to != NULL && fit != NULL && c != NULL);
  bw_mains_say (to, c->monitor, c->supply_v, c->supply_hz);
  bw_node_say (to, BW_SAY_ANSWER, NULL, summary (to, fit, c, needs))->mark = BW_MARK (
      bw_verdict_severity (fit->verdict));
  bw_node_say (to, BW_SAY_NOTE, "limits_from", limits_from (to, c));
  BwNode *table = bw_node_table (to, "findings", NULL);
  bw_node_column (table, BW_COLUMN_WORDS, _ ("Outcome"), NULL);
  bw_node_column (table, BW_COLUMN_WORDS, _ ("Rule"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("Value"), NULL);
  bw_node_column (table, BW_COLUMN_WORDS, _ ("Allowed"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("Margin to limit"), NULL);
  bw_node_column (table, BW_COLUMN_SAYS, _ ("Finding"), NULL);
  bw_node_column (table, BW_COLUMN_SAYS, _ ("Remedy"), NULL);
  add_findings (table, fit, c, TRUE);
  bw_node_say (to, BW_SAY_CAUTION, NULL, bw_caution ());
}
