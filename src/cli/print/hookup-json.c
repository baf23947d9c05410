/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "hookup-view.h"

/* A sentence, in which no-break spaces would only hinder a search. */
static void
plain_to_json (BwJson *json, const char *key, const char *text)
{
  g_autoptr (GString) plain = g_string_new (text);
  g_string_replace (plain, "\u00a0", " ", 0);
  bw_json_string (json, key, plain->str);
}

static void
texts_to_json (BwJson *json, const char *key, GPtrArray *texts)
{
  bw_json_begin_array (json, key);
  for (guint i = 0; i < texts->len; i++)
    plain_to_json (json, NULL, texts->pdata[i]);
  bw_json_end_array (json);
}

static void
chain_to_json (const BwHookup *hookup, BwJson *json)
{
  bw_json_begin_array (json, "chain");
  for (guint i = 0; i < hookup->steps->len; i++)
    {
      const BwHookupStep *step = hookup->steps->pdata[i];
      bw_json_begin_object (json, NULL);
      bw_json_string (json, "kind", bw_kind_id (&bw_plan_steps, step->kind));
      bw_json_string (json, "id", step->id);
      bw_json_string (json, "name", step->name);
      plain_to_json (json, "purpose", step->purpose);
      bw_json_boolean (json, "setting", step->is_setting);
      bw_json_end_object (json);
    }
  bw_json_end_array (json);
}

static void
leads_to_json (const BwHookup *hookup, BwJson *json)
{
  bw_json_begin_array (json, "leads");
  for (guint i = 0; i < hookup->hops->len; i++)
    {
      const BwHookupHop *hop = hookup->hops->pdata[i];
      bw_json_begin_object (json, NULL);
      bw_json_string (json, "from", hop->from);
      bw_json_string (json, "to", hop->to);
      bw_json_string (json, "from_connector", bw_kind_id (&bw_connectors, hop->from_connector));
      bw_json_string (json, "to_connector", bw_kind_id (&bw_connectors, hop->to_connector));
      bw_json_string (json, "signal", bw_kind_id (&bw_signals, hop->signal));
      bw_json_string (json, "sync", bw_kind_id (&bw_sync_kinds, hop->sync));
      bw_json_end_object (json);
    }
  bw_json_end_array (json);
}

static void
connections_to_json (const BwHookup *hookup, BwJson *json)
{
  bw_json_begin_array (json, "connections");
  for (guint i = 0; i < hookup->connections->len; i++)
    {
      const BwHookupConnection *one = hookup->connections->pdata[i];
      bw_json_begin_object (json, NULL);
      bw_json_number (json, "lead", one->hop + 1);
      bw_json_string (json, "signal", one->signal);
      plain_to_json (json, "from", one->from);
      bw_json_string (json, "from_return", one->from_return);
      plain_to_json (json, "to", one->to);
      bw_json_string (json, "to_return", one->to_return);
      plain_to_json (json, "through", one->through);
      bw_json_end_object (json);
    }
  bw_json_end_array (json);
}

static void
rests_to_json (const BwHookup *hookup, BwJson *json)
{
  bw_json_begin_array (json, "rests");
  for (guint i = 0; i < hookup->rests->len; i++)
    {
      const BwHookupRest *rest = hookup->rests->pdata[i];
      bw_json_begin_object (json, NULL);
      bw_json_number (json, "lead", rest->hop + 1);
      bw_json_string (json, "end", rest->at_far_end ? "to" : "from");
      bw_json_string (json, "pin", rest->pin);
      bw_json_string (json, "state", rest->state);
      bw_json_end_object (json);
    }
  bw_json_end_array (json);
}

static void
parts_to_json (const BwHookup *hookup, BwJson *json)
{
  bw_json_begin_array (json, "parts");
  for (guint i = 0; i < hookup->parts->len; i++)
    {
      const BwHookupPart *part = hookup->parts->pdata[i];
      gboolean in_series = part->series < BW_N_SERIES;
      bw_json_begin_object (json, NULL);
      plain_to_json (json, "what", part->what);
      bw_json_number_if (json, "ideal_ohm", part->ideal_ohm > 0, part->ideal_ohm);
      bw_json_string (json, "series", in_series ? bw_kind_id (&bw_series, part->series) : NULL);
      bw_json_number_if (json, "value_ohm", part->value_ohm > 0, part->value_ohm);
      bw_json_number (json, "count", part->count);
      bw_json_string (json, "price", *part->price != '\0' ? part->price : NULL);
      bw_json_number_if (json, "power_w", part->rating_w > 0, part->power_w);
      bw_json_number_if (json, "rating_w", part->rating_w > 0, part->rating_w);
      bw_json_end_object (json);
    }
  bw_json_end_array (json);
}

static void
levels_to_json (const BwHookup *hookup, BwJson *json)
{
  bw_json_begin_array (json, "levels");
  for (guint i = 0; i < hookup->levels->len; i++)
    {
      const BwHookupLevel *level = hookup->levels->pdata[i];
      bw_json_begin_object (json, NULL);
      bw_json_string (json, "signal", level->signal);
      bw_json_number (json, "nominal_v", level->nominal_v);
      bw_json_number (json, "min_v", level->min_v);
      bw_json_number (json, "max_v", level->max_v);
      bw_json_end_object (json);
    }
  bw_json_end_array (json);
}

static void
alternatives_to_json (const BwHookup *hookup, BwJson *json)
{
  bw_json_begin_array (json, "alternatives");
  for (guint i = 0; i < hookup->alternatives->len; i++)
    {
      const BwHookupAlternative *one = hookup->alternatives->pdata[i];
      bw_json_begin_object (json, NULL);
      bw_json_string (json, "summary", one->summary);
      bw_json_number (json, "cost", one->cost);
      bw_json_string (json, "verdict", bw_kind_id (&bw_verdicts, one->verdict));
      bw_json_string (json, "price", *one->price != '\0' ? one->price : NULL);
      bw_json_end_object (json);
    }
  bw_json_end_array (json);
}

/**
 * bw_hookup_view_to_json:
 *
 * Writes the members of an object that is open in @json. "alternative" is null where there is no
 * plan. Leads are counted from one.
 */
void
bw_hookup_view_to_json (const BwHookup *hookup, BwJson *json)
{
  bw_json_string (json, "source", hookup->source);
  bw_json_string (json, "input", hookup->input);
  bw_json_string (json, "verdict_before", bw_kind_id (&bw_verdicts, hookup->verdict_before));
  bw_json_string (json, "verdict_after", bw_kind_id (&bw_verdicts, hookup->verdict_after));
  bw_json_number_if (json, "alternative", hookup->plan != NULL, hookup->alternative + 1);
  chain_to_json (hookup, json);
  connections_to_json (hookup, json);
  parts_to_json (hookup, json);
  levels_to_json (hookup, json);
  texts_to_json (json, "warnings", hookup->warnings);
  leads_to_json (hookup, json);
  rests_to_json (hookup, json);
  texts_to_json (json, "needs", hookup->needs);
  alternatives_to_json (hookup, json);
}
