/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "fit-view.h"

/* A fraction is held as such, not in per cent. */
static const char *
base_unit (BwDimension dimension)
{
  return dimension == BW_DIMENSION_FRACTION ? "fraction" : bw_quantity_base_unit (dimension);
}

/* A sentence, in which no-break spaces would only hinder a search. */
static void
sentence_to_json (BwJson *json, const char *key, const char *sentence)
{
  g_autoptr (GString) plain = g_string_new (sentence);
  g_string_replace (plain, "\u00a0", " ", 0);
  bw_json_string (json, key, sentence != NULL ? plain->str : NULL);
}

static void
finding_to_json (const BwFinding *finding, const BwFitCell *cell, BwJson *json)
{
  gboolean measured = finding->has_value || finding->has_low || finding->has_high;
  gboolean limited = finding->has_value && (finding->has_low || finding->has_high);
  g_autofree char *says = bw_finding_says (finding, &cell->fit, &cell->c, BW_FILE_MARK);
  g_autofree char *remedy = bw_finding_remedy (finding, &cell->fit, &cell->c, BW_FILE_MARK);

  bw_json_begin_object (json, NULL);
  bw_json_string (json, "rule", bw_kind_id (&bw_rules, finding->rule));
  bw_json_string (json, "severity", bw_kind_id (&bw_severities, finding->severity));
  bw_json_number_if (json, "value", finding->has_value, finding->value);
  bw_json_number_if (json, "low", finding->has_low, finding->low);
  bw_json_number_if (json, "high", finding->has_high, finding->high);
  bw_json_string (json, "unit", measured ? base_unit (finding->dimension) : NULL);
  sentence_to_json (json, "says", says);
  sentence_to_json (json, "remedy", remedy);
  bw_json_number_if (json, "margin", limited, finding->margin);
  bw_json_end_object (json);
}

static void
cell_to_json (const BwFitCell *cell, BwJson *json)
{
  const BwFit *fit = &cell->fit;
  gboolean limited = fit->verdict != BW_VERDICT_DIRECT;

  bw_json_begin_object (json, NULL);
  bw_json_string (json, "source", cell->c.source->name);
  bw_json_string (json, "input", cell->c.input->name);
  bw_json_string (json, "verdict", bw_kind_id (&bw_verdicts, fit->verdict));
  bw_json_begin_array (json, "findings");
  for (guint i = 0; i < BW_N_RULES; i++)
    finding_to_json (&fit->at[i], cell, json);
  bw_json_end_array (json);
  bw_json_string (json, "limiting", limited ? bw_kind_id (&bw_rules, fit->limiting) : NULL);
  bw_json_string (json, "sync", bw_kind_id (&bw_sync_kinds, fit->sync));
  bw_json_end_object (json);
}

/**
 * bw_fit_view_to_json:
 *
 * Writes the members of an object that is open in @json. Values, limits and margins are in the base
 * unit that "unit" names; what a rule does not have is null. "limiting" is the rule of the worst
 * finding, null where all hold.
 */
void
bw_fit_view_to_json (const BwFitView *view, BwJson *json)
{
  bw_json_string (json, "monitor", view->sheet->monitor->name);
  bw_json_begin_array (json, "cells");
  for (guint s = 0; s < view->sources->len; s++)
    for (guint i = 0; i < view->inputs->len; i++)
      {
        BwFitCell cell;
        bw_fit_view_judge (view, s, i, &cell);
        cell_to_json (&cell, json);
      }
  bw_json_end_array (json);
}
