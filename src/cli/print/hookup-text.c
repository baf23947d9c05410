/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "hookup-view.h"

#include <glib/gi18n-lib.h>

#include "cli/base/table.h"
#include "cli/base/words.h"

static void
append_heading (GString *to, const char *heading)
{
  g_string_append_printf (to, "\n%s\n", heading);
}

static char *
volts (double value_v)
{
  return bw_quantity_format (value_v, BW_DIMENSION_VOLTAGE, 3, bw_quantity_locale_mark ());
}

static char *
ohms (double value_ohm, int digits)
{
  if (value_ohm <= 0)
    return g_strdup ("");
  return bw_quantity_format (value_ohm, BW_DIMENSION_RESISTANCE, digits,
                             bw_quantity_locale_mark ());
}

static void
append_chain (const BwHookup *hookup, GString *to)
{
  append_heading (to, _ ("Chain"));
  for (guint i = 0; i < hookup->steps->len; i++)
    {
      const BwHookupStep *step = hookup->steps->pdata[i];
      g_autofree char *first = g_strdup_printf ("%4u. ", i + 1);
      g_autofree char *line = g_strdup_printf ("%s: %s", step->name, step->purpose);
      bw_words_append_wrapped (to, first, 6, line);
    }
}

static void
append_hop (const BwHookup *hookup, guint index, GString *to)
{
  const BwHookupHop *hop = hookup->hops->pdata[index];
  g_autofree char *title = g_strdup_printf (_ ("Lead %u: %s to %s (%s to %s)"), index + 1,
                                            hop->from, hop->to,
                                            bw_kind_label (&bw_connectors, hop->from_connector),
                                            bw_kind_label (&bw_connectors, hop->to_connector));
  g_string_append_c (to, '\n');
  bw_words_append_wrapped (to, "", 4, title);
  for (guint i = 0; i < hookup->connections->len; i++)
    {
      const BwHookupConnection *one = hookup->connections->pdata[i];
      if (one->hop != index)
        continue;
      g_autofree char *line = bw_hookup_connection_says (one);
      bw_words_append_wrapped (to, "  ", 4, line);
    }
}

/* "pin 4, pin 9: left open", all pins of one state together */
static void
append_rests (const BwHookup *hookup, guint index, gboolean far_end, GString *to)
{
  g_autoptr (GHashTable) done = g_hash_table_new (g_str_hash, g_str_equal);
  for (guint i = 0; i < hookup->rests->len; i++)
    {
      const BwHookupRest *first = hookup->rests->pdata[i];
      if (first->hop != index || first->at_far_end != far_end
          || !g_hash_table_add (done, first->state))
        continue;
      g_autoptr (GString) pins = g_string_new (NULL);
      for (guint j = i; j < hookup->rests->len; j++)
        {
          const BwHookupRest *rest = hookup->rests->pdata[j];
          if (rest->hop == index && rest->at_far_end == far_end
              && g_str_equal (rest->state, first->state))
            g_string_append_printf (pins, "%s%s", pins->len > 0 ? ", " : "", rest->pin);
        }
      g_autofree char *line
          = g_strdup_printf (far_end ? _ ("At the far end: %s: %s") : _ ("At the near end: %s: %s"),
                             pins->str, first->state);
      bw_words_append_wrapped (to, "  ", 4, line);
    }
}

static void
append_parts (const BwHookup *hookup, GString *to)
{
  g_autoptr (BwTable) table = bw_table_new (7);
  append_heading (to, _ ("Parts"));
  bw_table_set_width (table, 1, 0, 40);
  bw_table_set_right (table, 0);
  bw_table_add_row (table, _ ("count"), _ ("part"), _ ("value"), _ ("exactly"), _ ("power"),
                    _ ("rating"), _ ("price"), NULL);
  for (guint i = 0; i < hookup->parts->len; i++)
    {
      const BwHookupPart *part = hookup->parts->pdata[i];
      g_autofree char *count = g_strdup_printf ("%u", part->count);
      g_autofree char *value = ohms (part->value_ohm, 3);
      g_autofree char *ideal = ohms (part->ideal_ohm, 4);
      g_autofree char *power = bw_hookup_part_power (part, bw_quantity_locale_mark ());
      g_autofree char *rating = part->rating_w > 0 ? bw_rating_words (part->rating_w)
                                                   : g_strdup ("");
      bw_table_add_row (table, count, part->what, value, ideal, power, rating, part->price, NULL);
    }
  bw_table_append_to (table, to, 2);
}

static void
append_levels (const BwHookup *hookup, GString *to)
{
  g_autoptr (BwTable) table = bw_table_new (4);
  append_heading (to, _ ("Levels at the input, peak to peak"));
  bw_table_add_row (table, _ ("conductor"), _ ("nominal"), _ ("least"), _ ("most"), NULL);
  for (guint column = 1; column < 4; column++)
    bw_table_set_right (table, column);
  for (guint i = 0; i < hookup->levels->len; i++)
    {
      const BwHookupLevel *level = hookup->levels->pdata[i];
      g_autofree char *nominal = volts (level->nominal_v);
      g_autofree char *least = volts (level->min_v);
      g_autofree char *most = volts (level->max_v);
      bw_table_add_row (table, level->signal, nominal, least, most, NULL);
    }
  bw_table_append_to (table, to, 2);
}

static void
append_sentences (GString *to, const char *heading, GPtrArray *sentences)
{
  if (sentences->len == 0)
    return;
  append_heading (to, heading);
  for (guint i = 0; i < sentences->len; i++)
    bw_words_append_wrapped (to, "  ", 4, sentences->pdata[i]);
}

static void
append_alternatives (const BwHookup *hookup, GString *to)
{
  if (hookup->alternatives->len < 2)
    return;
  append_heading (to, _ ("Alternatives"));
  for (guint i = 0; i < hookup->alternatives->len; i++)
    {
      const BwHookupAlternative *one = hookup->alternatives->pdata[i];
      g_autofree char *first = g_strdup_printf ("%s%3u. ", i == hookup->alternative ? ">" : " ",
                                                i + 1);
      g_autofree char *line
          = g_strdup_printf ("%s (%s%s%s)", one->summary,
                             bw_kind_label (&bw_verdicts, one->verdict),
                             *one->price != '\0' ? ", " : "", one->price);
      bw_words_append_wrapped (to, first, 6, line);
    }
}

/**
 * bw_hookup_view_append_text:
 *
 * Appends the plan to follow at the bench, or what stays in the way.
 */
void
bw_hookup_view_append_text (const BwHookup *hookup, GString *to)
{
  g_autofree char *title = g_strdup_printf (
      _ ("%s at %s: %s as it is, %s by this plan"), hookup->source, hookup->input,
      bw_kind_label (&bw_verdicts, hookup->verdict_before),
      bw_kind_label (&bw_verdicts, hookup->verdict_after));
  bw_words_append_wrapped (to, "", 4, title);
  if (hookup->plan == NULL)
    {
      append_sentences (to, _ ("No plan: what stays in the way"), hookup->needs);
      return;
    }
  append_chain (hookup, to);
  for (guint i = 0; i < hookup->hops->len; i++)
    {
      append_hop (hookup, i, to);
      append_rests (hookup, i, FALSE, to);
      append_rests (hookup, i, TRUE, to);
    }
  append_parts (hookup, to);
  append_levels (hookup, to);
  append_sentences (to, _ ("Mind"), hookup->warnings);
  append_alternatives (hookup, to);
}
