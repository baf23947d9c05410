/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sync-out.h"

#include <math.h>

#include "core/base/quantity.h"

static const char *const form_ids[BW_N_SYNC_FORMS] = {
  [BW_SYNC_FORM_COMPOSITE] = "composite",
  [BW_SYNC_FORM_LINE_ONLY] = "line-only",
  [BW_SYNC_FORM_FIELD_ONLY] = "field-only",
  [BW_SYNC_FORM_NEITHER] = "neither",
};

static void
case_to_json (const BwSyncMix *mix, BwJson *json)
{
  const BwSyncMixCase *what = &mix->what;
  gboolean gate = what->gate != BW_SYNC_GATE_STANDARD;

  bw_json_string (json, "raster", what->raster->id);
  bw_json_number (json, "field", what->field + 1);
  bw_json_string (json, "gate", bw_kind_id (&bw_sync_gates, what->gate));
  if (gate)
    {
      bw_json_string (json, "h_polarity", bw_kind_id (&bw_polarities, what->h_polarity));
      bw_json_string (json, "v_polarity", bw_kind_id (&bw_polarities, what->v_polarity));
    }
  bw_json_number_if (json, "v_offset_s", gate, what->v_offset_s);
  bw_json_number (json, "delay_s", what->delay_s);
  bw_json_string (json, "form", form_ids[mix->form]);
  bw_json_string (json, "polarity", bw_kind_id (&bw_polarities, mix->polarity));
}

static void
structure_to_json (const BwSyncMix *mix, BwJson *json)
{
  BwSyncStructure structure;
  bw_sync_mix_structure (mix, &mix->result, &structure);
  bw_json_begin_object (json, "structure");
  bw_json_number (json, "leading_edges", structure.n_leading);
  bw_json_number (json, "serrations", structure.n_serrations);
  bw_json_number (json, "inverted_pulses", structure.n_inverted);
  bw_json_number (json, "equalising_before", structure.n_equalising[0]);
  bw_json_number (json, "equalising_after", structure.n_equalising[1]);
  bw_json_end_object (json);
}

static void
trace_to_json (const BwSyncTrace *trace, const char *key, BwJson *json)
{
  bw_json_begin_object (json, key);
  bw_json_number (json, "rest", trace->rest);
  bw_json_begin_array (json, "edges");
  for (guint i = 0; i < trace->edges->len; i++)
    {
      const BwSyncEdge *edge = &g_array_index (trace->edges, BwSyncEdge, i);
      bw_json_begin_object (json, NULL);
      bw_json_number (json, "at_s", edge->at_s);
      bw_json_number (json, "level", edge->level);
      bw_json_end_object (json);
    }
  bw_json_end_array (json);
  bw_json_end_object (json);
}

static void
line_to_json (const BwSyncLine *line, BwJson *json)
{
  bw_json_begin_object (json, NULL);
  bw_json_number (json, "line", line->line);
  bw_json_number (json, "due_s", line->due_s);
  bw_json_string (json, "edge", bw_kind_id (&bw_afc_edges, line->edge));
  bw_json_number_if (json, "late_s", line->edge != BW_AFC_EDGE_MISSING, line->late_s);
  bw_json_boolean (json, "in_field_sync", line->in_field_sync);
  bw_json_number (json, "half_line_edges", line->n_half);
  bw_json_number (json, "extra_edges", line->n_extra);
  bw_json_number_if (json, "phase_s", isfinite (line->phase_s), line->phase_s);
  bw_json_end_object (json);
}

static void
lines_to_json (const BwSyncRun *run, BwJson *json)
{
  bw_json_begin_array (json, "lines");
  for (guint i = 0; i < run->lines->len; i++)
    line_to_json (&g_array_index (run->lines, BwSyncLine, i), json);
  bw_json_end_array (json);
  bw_json_begin_object (json, "lines_by_edge");
  for (guint edge = 0; edge < BW_N_AFC_EDGES; edge++)
    bw_json_number (json, bw_kind_id (&bw_afc_edges, edge), run->n[edge]);
  bw_json_end_object (json);
  bw_json_number (json, "half_line_edges", run->n_half);
  bw_json_number (json, "extra_edges", run->n_extra);
  bw_json_number (json, "glitches", run->n_glitches);
}

static void
afc_to_json (const BwSyncAfc *afc, const BwSyncRun *run, BwJson *json)
{
  gboolean width = afc->picture_width_m > 0;
  bw_json_begin_object (json, "afc");
  bw_json_string (json, "loop", bw_kind_id (&bw_afc_loops, afc->loop));
  bw_json_number (json, "time_constant_lines", afc->time_constant_lines);
  bw_json_number (json, "rate_error", afc->rate_error);
  bw_json_number (json, "tolerance_s", afc->tolerance_s);
  bw_json_number (json, "glitch_s", afc->glitch_s);
  bw_json_number_if (json, "picture_width_m", width, afc->picture_width_m);
  bw_json_boolean (json, "locks", run->locks);
  bw_json_number_if (json, "static_s", run->locks, run->static_s);
  bw_json_number_if (json, "peak_s", run->locks, run->peak_s);
  bw_json_number_if (json, "peak_line", run->locks && run->peak_line > 0, run->peak_line);
  bw_json_number (json, "picture_line", run->picture_line);
  bw_json_number_if (json, "picture_s", run->locks, run->picture_s);
  bw_json_number_if (json, "picture_share", run->locks, run->picture_share);
  bw_json_number_if (json, "picture_m", run->locks && width, run->picture_m);
  bw_json_number_if (json, "bend_s", run->locks, run->bend_s);
  bw_json_number_if (json, "settle_lines", run->locks, run->settle_lines);
  bw_json_number (json, "settle_s", run->settle_s);
  bw_json_end_object (json);
}

/**
 * bw_sync_to_json:
 * @run: of @mix and @afc
 *
 * Adds all of it to the object that @json is in.
 */
void
bw_sync_to_json (const BwSyncMix *mix, const BwSyncAfc *afc, const BwSyncRun *run, BwJson *json)
{
  g_autoptr (GPtrArray) says = bw_sync_mix_says (mix, afc, run, bw_quantity_locale_mark ());

  case_to_json (mix, json);
  structure_to_json (mix, json);
  if (mix->what.gate != BW_SYNC_GATE_STANDARD)
    {
      trace_to_json (&mix->h, "h", json);
      trace_to_json (&mix->v, "v", json);
    }
  trace_to_json (&mix->result, "result", json);
  trace_to_json (&mix->standard, "standard", json);
  lines_to_json (run, json);
  afc_to_json (afc, run, json);
  bw_json_begin_array (json, "says");
  for (guint i = 0; i < says->len; i++)
    bw_json_string (json, NULL, says->pdata[i]);
  bw_json_end_array (json);
}
