/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "results.h"

#include <math.h>
#include <string.h>

#include <glib/gi18n-lib.h>

#include "core/circuit/load.h"
#include "core/fit/results.h"

/* How one source comes to one input: the chain, the wiring list, the parts and the levels. Leads are
 * counted from one. */

static const char order[] =
    "format source input verdict_before verdict_after alternative chain connections parts levels "
    "warnings leads rests needs alternatives line_end lead mains "
    "open_pins";

/* What the plan does for the verdict, and which of its pins are not known. */
static const char *
answer_words (BwNode *to, const BwHookup *hookup)
{
  const char *before = bw_node_take (to, bw_fit_verdict_short (&hookup->fit_before));
  const char *after = bw_kind_label (&bw_verdicts, hookup->verdict_after);
  const char *open = NULL;

  if (bw_hookup_is_open (hookup))
    return bw_node_print (to, _ ("%1$s at %2$s: %3$s. Too little is known to plan a way."),
                          hookup->source, hookup->input, before);
  if (hookup->plan == NULL)
    return bw_node_print (to, _ ("%1$s at %2$s: %3$s. No plan leads there."), hookup->source,
                          hookup->input, before);
  open = bw_node_take (to, bw_open_pins_says (&hookup->plan->state.source.open));
  if (hookup->verdict_before != hookup->verdict_after && open != NULL
      && hookup->verdict_after == BW_VERDICT_OPEN)
    return bw_node_print (to, _ ("%1$s at %2$s: %3$s as it is; by this plan %4$s."), hookup->source,
                          hookup->input, before, open);
  if (hookup->verdict_before != hookup->verdict_after && open != NULL)
    return bw_node_print (to, _ ("%1$s at %2$s: %3$s as it is, %4$s by this plan, %5$s."),
                          hookup->source, hookup->input, before, after, open);
  if (open != NULL && hookup->verdict_after == BW_VERDICT_OPEN)
    return bw_node_print (to, _ ("%1$s at %2$s, with a lead alone: %3$s."), hookup->source,
                          hookup->input, open);
  if (open != NULL)
    return bw_node_print (to, _ ("%1$s at %2$s, with a lead alone: %3$s, %4$s."), hookup->source,
                          hookup->input, after, open);
  if (hookup->verdict_before == hookup->verdict_after)
    return bw_node_print (to, _ ("%1$s at %2$s: %3$s, with a lead alone."), hookup->source,
                          hookup->input, before);
  return bw_node_print (to, _ ("%1$s at %2$s: %3$s as it is, %4$s by this plan."), hookup->source,
                        hookup->input, before, after);
}

/* For scripts: the contacts of the plan that nobody lays down; null without a plan. */
static void
add_open_pins (BwNode *to, const BwHookup *hookup)
{
  if (hookup->plan == NULL)
    {
      bw_node_member (to, bw_value_nothing ("open_pins"));
      return;
    }
  const BwOpenPins *open = &hookup->plan->state.source.open;
  BwNode *section = bw_node_section (to, "open_pins", NULL);

  section->order = "count at_source at_input says";
  bw_node_member (section, bw_value_count ("count", bw_open_pins_count (open)));
  bw_node_member (section, bw_value_set ("at_source", &bw_pin_uses, open->at_source));
  bw_node_member (section, bw_value_set ("at_input", &bw_pin_uses, open->at_input));
  bw_node_member (section, bw_value_says ("says", bw_node_take (section, bw_open_pins_says (open))));
}

static void
add_answer (BwNode *to, const BwHookup *hookup)
{
  bw_node_member (to, bw_value_words ("source", hookup->source));
  bw_node_member (to, bw_value_words ("input", hookup->input));
  bw_node_member (to, bw_value_kind ("verdict_before", &bw_verdicts, hookup->verdict_before));
  bw_node_member (to, bw_value_kind ("verdict_after", &bw_verdicts, hookup->verdict_after));
  bw_node_member (to, bw_value_if (hookup->plan != NULL,
                                   bw_value_count ("alternative", hookup->alternative + 1)));
  bw_node_say (to, BW_SAY_ANSWER, NULL, answer_words (to, hookup));
  add_open_pins (to, hookup);
}

/* A row for scripts, a line for people. */
static void
add_steps (BwNode *to, const BwHookup *hookup)
{
  BwNode *table = bw_node_table (to, "chain", NULL);
  BwNode *lines = bw_node_section (to, NULL, _ ("Steps"));

  table->order = "kind id name purpose setting";
  for (guint i = 0; i < hookup->steps->len; i++)
    {
      const BwHookupStep *step = hookup->steps->pdata[i];
      BwNode *row = bw_node_row (table);
      bw_node_member (row, bw_value_words ("kind", bw_kind_id (&bw_plan_steps, step->kind)));
      bw_node_member (row, bw_value_words ("id", step->id));
      bw_node_member (row, bw_value_words ("name", step->name));
      bw_node_member (row, bw_value_says ("purpose", step->purpose));
      bw_node_member (row, bw_value_flag ("setting", step->is_setting));
      bw_node_say (lines, BW_SAY_NOTE, NULL,
                   bw_node_print (lines, "%u. %s: %s", i + 1, step->name, step->purpose));
    }
}

static void
add_leads (BwNode *to, const BwHookup *hookup)
{
  BwNode *table = bw_node_table (to, "leads", _ ("Leads"));

  table->order = "from to from_connector to_connector signal sync";
  bw_node_column (table, BW_COLUMN_SAYS, _ ("lead"), NULL);
  bw_node_column (table, BW_COLUMN_SAYS, _ ("plugs"), NULL);
  for (guint i = 0; i < hookup->hops->len; i++)
    {
      const BwHookupHop *hop = hookup->hops->pdata[i];
      BwNode *row = bw_node_row (table);
      const char *ends = bw_node_print (row, _ ("Lead %1$u: %2$s to %3$s"), i + 1, hop->from,
                                        hop->to);
      const char *plugs = bw_node_print (row, _ ("%1$s to %2$s"),
                                         bw_kind_label (&bw_connectors, hop->from_connector),
                                         bw_kind_label (&bw_connectors, hop->to_connector));
      bw_node_cell (row, bw_value_read_as (bw_value_words ("from", hop->from), ends));
      bw_node_cell (row, bw_value_read_as (bw_value_kind ("from_connector", &bw_connectors,
                                                          hop->from_connector),
                                           plugs));
      bw_node_member (row, bw_value_words ("to", hop->to));
      bw_node_member (row, bw_value_kind ("to_connector", &bw_connectors, hop->to_connector));
      bw_node_member (row, bw_value_kind ("signal", &bw_signals, hop->signal));
      bw_node_member (row, bw_value_kind ("sync", &bw_sync_kinds, hop->sync));
    }
}

static void
add_connections (BwNode *to, const BwHookup *hookup)
{
  BwNode *table = bw_node_table (to, "connections", _ ("Connections"));

  table->order = "lead signal from from_return to to_return through";
  bw_node_column (table, BW_COLUMN_WORDS, _ ("conductor"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("lead"), NULL);
  bw_node_column (table, BW_COLUMN_SAYS, _ ("from"), NULL);
  bw_node_column (table, BW_COLUMN_SAYS, _ ("to"), NULL);
  bw_node_column (table, BW_COLUMN_SAYS, _ ("return"), NULL);
  bw_node_column (table, BW_COLUMN_SAYS, _ ("through"), NULL);
  for (guint i = 0; i < hookup->connections->len; i++)
    {
      const BwHookupConnection *one = hookup->connections->pdata[i];
      BwNode *row = bw_node_row (table);
      const char *back = bw_node_print (row, _ ("%1$s to %2$s"), one->from_return, one->to_return);
      bw_node_cell (row, bw_value_words ("signal", one->signal));
      bw_node_cell (row, bw_value_count ("lead", one->hop + 1));
      bw_node_cell (row, bw_value_says ("from", one->from));
      bw_node_cell (row, bw_value_says ("to", one->to));
      bw_node_cell (row, bw_value_read_as (bw_value_words ("from_return", one->from_return), back));
      bw_node_cell (row, bw_value_says ("through", one->through));
      bw_node_member (row, bw_value_words ("to_return", one->to_return));
    }
}

/* Other pins */

static gboolean
is_at (const BwHookupRest *rest, guint hop, gboolean far_end)
{
  return rest->hop == hop && rest->at_far_end == far_end;
}

/* "4, 9, 11: left open": all at one end that share the fate of rest @first, unless an earlier one had
 * them. */
static const char *
fate_words (BwNode *to, const BwHookup *hookup, guint first)
{
  const BwHookupRest *rest = hookup->rests->pdata[first];
  g_autoptr (GString) pins = g_string_new (NULL);

  for (guint i = 0; i < hookup->rests->len; i++)
    {
      const BwHookupRest *other = hookup->rests->pdata[i];
      if (!is_at (other, rest->hop, rest->at_far_end) || strcmp (other->state, rest->state) != 0)
        continue;
      if (i < first)
        return NULL;
      g_string_append (pins, pins->len > 0 ? ", " : "");
      if (other->number > 0)
        g_string_append_printf (pins, "%d", other->number);
      else
        g_string_append (pins, other->pin);
    }
  return bw_node_print (to, "%s: %s", pins->str, rest->state);
}

static const char *
rests_words (BwNode *to, const BwHookup *hookup, guint index, gboolean far_end)
{
  const BwHookupHop *hop = hookup->hops->pdata[index];
  g_autoptr (GString) fates = g_string_new (NULL);

  for (guint i = 0; i < hookup->rests->len; i++)
    {
      const char *one = is_at (hookup->rests->pdata[i], index, far_end) ? fate_words (to, hookup, i)
                                                                        : NULL;
      if (one != NULL)
        g_string_append_printf (fates, "%s%s", fates->len > 0 ? "; " : "", one);
    }
  if (fates->len == 0)
    return NULL;
  return bw_node_print (to, _ ("Lead %1$u at %2$s: %3$s"), index + 1, far_end ? hop->to : hop->from,
                        fates->str);
}

/* Each pin for scripts, a line for each plug for people. */
static void
add_rests (BwNode *to, const BwHookup *hookup)
{
  BwNode *table = bw_node_table (to, "rests", NULL);
  g_autoptr (GPtrArray) lines = g_ptr_array_new ();

  for (guint i = 0; i < hookup->rests->len; i++)
    {
      const BwHookupRest *rest = hookup->rests->pdata[i];
      BwNode *row = bw_node_row (table);
      bw_node_member (row, bw_value_count ("lead", rest->hop + 1));
      bw_node_member (row, bw_value_words ("end", rest->at_far_end ? "to" : "from"));
      bw_node_member (row, bw_value_words ("pin", rest->pin));
      bw_node_member (row, bw_value_words ("state", rest->state));
    }
  for (guint i = 0; i < 2 * hookup->hops->len; i++)
    {
      const char *words = rests_words (to, hookup, i / 2, i % 2);
      if (words != NULL)
        g_ptr_array_add (lines, (gpointer) words);
    }
  bw_node_list (to, NULL, _ ("Other pins"), lines);
}

/* Parts */

static BwValue
ohms (const char *key, double ohm, int digits)
{
  return bw_value_if (ohm > 0, bw_value_quantity (key, ohm, BW_DIMENSION_RESISTANCE, digits));
}

static BwValue
watts (BwNode *row, const char *key, gboolean rated, double watt, char *words)
{
  const char *kept = bw_node_take (row, words);
  return bw_value_if (rated, bw_value_read_as (bw_value_number (key, watt, 3), kept));
}

static void
add_part (BwNode *table, const BwHookupPart *part)
{
  BwNode *row = bw_node_row (table);
  gboolean rated = part->rating_w > 0;
  char mark = bw_result_mark (row->result);

  bw_node_cell (row, bw_value_says ("what", part->what));
  bw_node_cell (row, bw_value_count ("count", part->count));
  bw_node_cell (row, ohms ("value_ohm", part->value_ohm, 3));
  bw_node_cell (row, part->series < BW_N_SERIES ? bw_value_kind ("series", &bw_series, part->series)
                                                : bw_value_nothing ("series"));
  bw_node_cell (row, ohms ("ideal_ohm", part->ideal_ohm, 4));
  bw_node_cell (row,
                watts (row, "power_w", rated, part->power_w, bw_hookup_part_power (part, mark)));
  bw_node_cell (row, watts (row, "rating_w", rated, part->rating_w,
                            rated ? bw_rating_words (part->rating_w) : NULL));
  bw_node_cell (row, bw_value_words ("price", *part->price != '\0' ? part->price : NULL));
}

static void
add_parts (BwNode *to, const BwHookup *hookup)
{
  BwNode *table = bw_node_table (to, "parts", _ ("Parts"));

  table->order = "what ideal_ohm series value_ohm count price power_w rating_w";
  bw_node_column (table, BW_COLUMN_SAYS, _ ("part"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("count"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("value"), NULL);
  bw_node_column (table, BW_COLUMN_WORDS, _ ("series"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("exactly"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("power"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("rating"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("price"), NULL);
  for (guint i = 0; i < hookup->parts->len; i++)
    add_part (table, hookup->parts->pdata[i]);
  bw_node_drop_empty_columns (table);
}

/* Levels */

static BwValue
volts (const char *key, double volt)
{
  return bw_value_quantity (key, volt, BW_DIMENSION_VOLTAGE, 3);
}

static void
add_levels (BwNode *to, const BwHookup *hookup)
{
  BwNode *table = bw_node_table (to, "levels", _ ("Levels at the input, peak to peak"));

  bw_node_column (table, BW_COLUMN_WORDS, _ ("conductor"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("nominal"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("least"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("most"), NULL);
  for (guint i = 0; i < hookup->levels->len; i++)
    {
      const BwHookupLevel *level = hookup->levels->pdata[i];
      BwNode *row = bw_node_row (table);
      bw_node_cell (row, bw_value_words ("signal", level->signal));
      bw_node_cell (row, volts ("nominal_v", level->nominal_v));
      bw_node_cell (row, volts ("min_v", level->min_v));
      bw_node_cell (row, volts ("max_v", level->max_v));
    }
}

/* Within the tolerance of a terminator at both ends, or at the one that counts: what does not come back
 * from the input cannot turn round at the source. */
static void
add_match (BwNode *section, const BwLine *line)
{
  double least = BW_ONE_LOAD_MIN_OHM / BW_VIDEO_OHM, most = BW_ONE_LOAD_MAX_OHM / BW_VIDEO_OHM;
  double end = line->load_ohm / line->lead_ohm, back = line->source_ohm / line->lead_ohm;
  gboolean at_end = end >= least && end <= most, at_source = back >= least && back <= most;
  const char *words = at_end && at_source ? _ ("matched at both ends")
                      : at_end            ? _ ("matched at the input, which is enough")
                      : at_source         ? _ ("matched at the source alone")
                                          : _ ("not matched");

  bw_node_figure (section, _ ("The line is"),
                  bw_value_read_as (bw_value_flag ("matched", at_end), words));
}

/* What comes back from the end of the line. @lead: (nullable): without one only what its length does not
 * change is known. */
static void
add_line_end (BwNode *to, const BwHookup *hookup, const BwLeadCase *lead)
{
  gboolean known = lead != NULL && lead->lead.type != NULL && lead->lead.length_m > 0;
  if (hookup->end_ohm <= 0)
    return; /* what ends the line, or what drives it, is not known */
  const BwLine line = {
    .source_ohm = hookup->back_ohm,
    .load_ohm = hookup->end_ohm,
    .lead_ohm = known ? lead->lead.type->z_ohm : BW_VIDEO_OHM,
    .delay_s = known ? lead->lead.length_m * bw_lead_delay_s_per_m (lead->lead.type) : 0,
  };
  BwNode *section = bw_node_section (to, "line_end", _ ("At the end of the line"));
  BwLineEnd end;

  bw_line_end (&line, &end);
  section->order = "load_ohm source_ohm return_loss_db echo echo_s matched source_match";
  bw_node_figure (section, _ ("The lead ends in"),
                  bw_value_quantity ("load_ohm", line.load_ohm, BW_DIMENSION_RESISTANCE, 4));
  bw_node_figure (section, _ ("Its end looks back into"),
                  bw_value_quantity ("source_ohm", line.source_ohm, BW_DIMENSION_RESISTANCE, 4));
  bw_node_figure (section, _ ("Return loss, dB"),
                  bw_value_or (bw_value_if (isfinite (end.return_loss_db),
                                            bw_value_number ("return_loss_db", end.return_loss_db,
                                                             1)),
                               _ ("nothing comes back")));
  bw_node_figure (section, _ ("Echo at the input, of white"),
                  bw_value_quantity ("echo", end.echo_ratio, BW_DIMENSION_FRACTION, 3));
  bw_node_figure (section, _ ("The echo follows after"),
                  bw_value_or (bw_value_if (known, bw_value_quantity ("echo_s", end.echo_s,
                                                                      BW_DIMENSION_TIME, 3)),
                               _ ("twice the delay of the lead")));
  add_match (section, &line);
  if (hookup->source_match != NULL)
    bw_node_say (section, BW_SAY_NOTE, "source_match", hookup->source_match);
  else
    bw_node_member (section, bw_value_nothing ("source_match"));
}

/* What the lead from the source does. */
static void
add_lead (BwNode *to, const BwLeadCase *lead)
{
  BwNode *section = bw_node_section (to, "lead", _ ("What the lead does"));
  BwLeadFigures f;

  bw_lead_compute (lead, &f);
  bw_node_figure (section, _ ("Delay"), bw_value_quantity ("delay_s", f.delay_s, BW_DIMENSION_TIME, 3));
  if (lead->top_hz > 0)
    {
      const char *label = bw_node_print (section, _ ("Loss at %s, dB"),
                                         bw_node_quantity (section, lead->top_hz,
                                                           BW_DIMENSION_FREQUENCY, 3));
      bw_node_pair (section, label, bw_value_number ("loss_db", f.loss_db,
                                                    bw_lead_loss_decimals (f.loss_db)),
                    bw_value_says (NULL, f.outside_law ? _ ("or more")
                                                       : _ ("within 30\u00a0%")));
    }
  if (lead->top_hz > 0 && f.lost_tvl >= 0.5)
    bw_node_figure (section, _ ("Detail that it takes"),
                    bw_value_fixed ("lost_tvl", f.lost_tvl, BW_DIMENSION_TV_LINES, NULL, 0));
  bw_node_figure (section, _ ("It loses 3\u00a0dB at"),
                  bw_value_quantity ("down_3_db_hz", f.lead_hz, BW_DIMENSION_FREQUENCY, 3));
}

static void
add_alternatives (BwNode *to, const BwHookup *hookup)
{
  BwNode *table = bw_node_table (to, "alternatives", _ ("Alternatives"));

  table->order = "summary cost verdict price";
  if (hookup->alternatives->len > 1)
    {
      bw_node_column (table, BW_COLUMN_SAYS, _ ("plan"), NULL);
      bw_node_column (table, BW_COLUMN_WORDS, _ ("verdict"), NULL);
      bw_node_column (table, BW_COLUMN_NUMBERS, _ ("price"), NULL);
    }
  for (guint i = 0; i < hookup->alternatives->len; i++)
    {
      const BwHookupAlternative *one = hookup->alternatives->pdata[i];
      gboolean chosen = i == hookup->alternative;
      BwNode *row = bw_node_row (table);
      bw_node_cell (row, bw_value_read_as (bw_value_words ("summary", one->summary),
                                           bw_node_print (row,
                                                          chosen ? _ ("%1$u. %2$s (this one)")
                                                                 : _ ("%1$u. %2$s"),
                                                          i + 1, one->summary)));
      bw_node_cell (row, bw_value_read_as (bw_value_kind ("verdict", &bw_verdicts, one->verdict),
                                           one->verdict_says));
      bw_node_cell (row, bw_value_words ("price", *one->price != '\0' ? one->price : NULL));
      bw_node_member (row, bw_value_count ("cost", one->cost));
    }
}

/**
 * bw_hookup_say:
 * @lead: (nullable): the lead from the source
 *
 * Adds the plan to follow at the bench, or what stays in the way. "alternative" is null where there
 * is no plan.
 */
void
bw_hookup_say (BwNode *to, const BwHookup *hookup, const BwLeadCase *lead)
{
  g_return_if_fail (to != NULL && hookup != NULL);
  to->order = order;
  bw_mains_say (to, hookup->monitor, hookup->supply_v, hookup->supply_hz);
  add_answer (to, hookup);
  bw_node_list (to, "needs", _ ("No plan: what stays in the way"), hookup->needs);
  add_steps (to, hookup);
  add_parts (to, hookup);
  add_leads (to, hookup);
  add_connections (to, hookup);
  add_rests (to, hookup);
  add_levels (to, hookup);
  if (hookup->plan != NULL)
    add_line_end (to, hookup, lead);
  if (lead != NULL && lead->lead.type != NULL && hookup->plan != NULL)
    add_lead (to, lead);
  bw_node_list (to, "warnings", _ ("Mind"), hookup->warnings);
  add_alternatives (to, hookup);
}
