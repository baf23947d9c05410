/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "results.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "core/raster/results.h"

/* A mixture of sync, and what an AFC makes of it. */

static const char *const form_ids[BW_N_SYNC_FORMS] = {
  [BW_SYNC_FORM_COMPOSITE] = "composite",
  [BW_SYNC_FORM_LINE_ONLY] = "line-only",
  [BW_SYNC_FORM_FIELD_ONLY] = "field-only",
  [BW_SYNC_FORM_NEITHER] = "neither",
};

static void
add_number (BwNode *to, const char *key, double number)
{
  bw_node_member (to, bw_value_count (key, number));
}

static void
add_number_if (BwNode *to, const char *key, gboolean known, double number)
{
  bw_node_member (to, bw_value_if (known, bw_value_count (key, number)));
}

static const char *
name_of (const BwRaster *raster)
{
  return raster->name != NULL ? raster->name : "";
}

/* "525-line interlaced, 59.94 Hz (525-59.94-interlaced), field 1: H XOR V, H negative, V negative" */
static const char *
head_words (BwNode *to, const BwSyncMixCase *what)
{
  const char *raster = bw_result_tells_ids (to->result)
                           ? bw_node_print (to, "%s (%s)", name_of (what->raster),
                                            what->raster->id)
                           : bw_raster_called (to, what->raster);
  const char *name = bw_node_take (to, bw_sync_mix_name (what));

  if (what->gate == BW_SYNC_GATE_STANDARD)
    /* Translators: raster, number of the field, and the gate that combines the syncs. */
    return bw_node_print (to, _ ("%1$s, field %2$d: %3$s"), raster, what->field + 1, name);
  /* Translators: as before, and the polarity of either sync. */
  return bw_node_print (to, _ ("%1$s, field %2$d: %3$s, H %4$s, V %5$s"), raster, what->field + 1, name,
                        bw_kind_label (&bw_polarities, what->h_polarity),
                        bw_kind_label (&bw_polarities, what->v_polarity));
}

static void
add_case (BwNode *to, const BwSyncMix *mix)
{
  const BwSyncMixCase *what = &mix->what;
  gboolean gate = what->gate != BW_SYNC_GATE_STANDARD;

  bw_node_say (to, BW_SAY_NOTE, NULL, head_words (to, what));
  bw_node_member (to, bw_value_words ("raster", what->raster->id));
  add_number (to, "field", what->field + 1);
  bw_node_member (to, bw_value_kind ("gate", &bw_sync_gates, what->gate));
  if (gate)
    {
      bw_node_member (to, bw_value_kind ("h_polarity", &bw_polarities, what->h_polarity));
      bw_node_member (to, bw_value_kind ("v_polarity", &bw_polarities, what->v_polarity));
    }
  add_number_if (to, "v_offset_s", gate, what->v_offset_s);
  add_number (to, "delay_s", what->delay_s);
  bw_node_member (to, bw_value_words ("form", form_ids[mix->form]));
  bw_node_member (to, bw_value_kind ("polarity", &bw_polarities, mix->polarity));
}

static void
add_structure (BwNode *to, const BwSyncMix *mix)
{
  BwNode *object = bw_node_section (to, "structure", NULL);
  BwSyncStructure structure;

  bw_sync_mix_structure (mix, &mix->result, &structure);
  add_number (object, "leading_edges", structure.n_leading);
  add_number (object, "serrations", structure.n_serrations);
  add_number (object, "inverted_pulses", structure.n_inverted);
  add_number (object, "equalising_before", structure.n_equalising[0]);
  add_number (object, "equalising_after", structure.n_equalising[1]);
}

static void
add_trace (BwNode *to, const char *key, const BwSyncTrace *trace)
{
  BwNode *object = bw_node_section (to, key, NULL);
  add_number (object, "rest", trace->rest);
  BwNode *edges = bw_node_table (object, "edges", NULL);
  for (guint i = 0; i < trace->edges->len; i++)
    {
      const BwSyncEdge *edge = &g_array_index (trace->edges, BwSyncEdge, i);
      BwNode *row = bw_node_row (edges);
      add_number (row, "at_s", edge->at_s);
      add_number (row, "level", edge->level);
    }
}

/* Lines */

/* To the nanosecond. */
static BwValue
microseconds (const char *key, gboolean known, double time_s)
{
  return bw_value_or (bw_value_if (known, bw_value_fixed (key, time_s, BW_DIMENSION_TIME, "us", 3)),
                      "–");
}

static void
add_line (BwNode *table, const BwSyncLine *line)
{
  BwNode *row = bw_node_row (table);

  bw_node_cell (row, bw_value_count ("line", line->line));
  bw_node_cell (row, microseconds ("due_s", TRUE, line->due_s));
  bw_node_cell (row, bw_value_kind ("edge", &bw_afc_edges, line->edge));
  bw_node_cell (row, microseconds ("late_s", line->edge != BW_AFC_EDGE_MISSING, line->late_s));
  bw_node_cell (row, bw_value_read_as (bw_value_count ("half_line_edges", line->n_half),
                                       line->n_half > 0 ? NULL : ""));
  bw_node_cell (row, microseconds ("phase_s", isfinite (line->phase_s), line->phase_s));
  bw_node_member (row, bw_value_flag ("in_field_sync", line->in_field_sync));
  add_number (row, "extra_edges", line->n_extra);
}

static void
add_lines (BwNode *to, const BwSyncRun *run)
{
  BwNode *table = bw_node_table (to, "lines", NULL);
  BwNode *by_edge = bw_node_section (to, "lines_by_edge", NULL);

  table->order = "line due_s edge late_s in_field_sync half_line_edges extra_edges phase_s";
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("Line"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("From field sync"), "µs");
  bw_node_column (table, BW_COLUMN_WORDS, _ ("Edge"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("Late by"), "µs");
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("Halves"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("AFC phase"), "µs");
  for (guint i = 0; i < run->lines->len; i++)
    add_line (table, &g_array_index (run->lines, BwSyncLine, i));
  for (guint edge = 0; edge < BW_N_AFC_EDGES; edge++)
    add_number (by_edge, bw_kind_id (&bw_afc_edges, edge), run->n[edge]);
  add_number (to, "half_line_edges", run->n_half);
  add_number (to, "extra_edges", run->n_extra);
  add_number (to, "glitches", run->n_glitches);
}

static void
add_afc (BwNode *to, const BwSyncAfc *afc, const BwSyncRun *run)
{
  BwNode *object = bw_node_section (to, "afc", NULL);
  gboolean width = afc->picture_width_m > 0;

  bw_node_member (object, bw_value_kind ("loop", &bw_afc_loops, afc->loop));
  add_number (object, "time_constant_lines", afc->time_constant_lines);
  add_number (object, "rate_error", afc->rate_error);
  add_number (object, "tolerance_s", afc->tolerance_s);
  add_number (object, "glitch_s", afc->glitch_s);
  add_number_if (object, "picture_width_m", width, afc->picture_width_m);
  bw_node_member (object, bw_value_flag ("locks", run->locks));
  add_number_if (object, "static_s", run->locks, run->static_s);
  add_number_if (object, "peak_s", run->locks, run->peak_s);
  add_number_if (object, "peak_line", run->locks && run->peak_line > 0, run->peak_line);
  add_number (object, "picture_line", run->picture_line);
  add_number_if (object, "picture_s", run->locks, run->picture_s);
  add_number_if (object, "picture_share", run->locks, run->picture_share);
  add_number_if (object, "picture_m", run->locks && width, run->picture_m);
  add_number_if (object, "bend_s", run->locks, run->bend_s);
  add_number_if (object, "settle_lines", run->locks, run->settle_lines);
  add_number (object, "settle_s", run->settle_s);
}

/* The gist in figures, for people */

static const char *const edge_labels[BW_N_AFC_EDGES] = {
  [BW_AFC_EDGE_RIGHT] = N_ ("Edges at their place"),
  [BW_AFC_EDGE_EARLY] = N_ ("Edges early"),
  [BW_AFC_EDGE_LATE] = N_ ("Edges late"),
  [BW_AFC_EDGE_MISSING] = N_ ("Edges missing"),
};

#define NOTHING_S 0.5e-9 /* less than this is no departure */

static void
add_departure (BwNode *to, const char *label, double time_s)
{
  const char *size = bw_node_quantity (to, fabs (time_s), BW_DIMENSION_TIME, 5);
  const char *words = time_s < 0 ? bw_node_print (to, _ ("%s early"), size)
                                 : bw_node_print (to, _ ("%s late"), size);
  bw_node_figure (to, label, bw_value_says (NULL, fabs (time_s) < NOTHING_S ? _ ("none") : words));
}

static void
add_gist (BwNode *to, const BwSyncMix *mix, const BwSyncRun *run)
{
  BwNode *gist = bw_node_section (to, "gist", NULL);

  gist->for_people = TRUE;
  bw_node_figure (gist, _ ("Sync tips"), bw_value_kind (NULL, &bw_polarities, mix->polarity));
  for (guint edge = 0; edge < BW_N_AFC_EDGES; edge++)
    bw_node_figure (gist, _ (edge_labels[edge]), bw_value_count (NULL, run->n[edge]));
  if (!run->locks)
    {
      bw_node_figure (gist, _ ("Oscillator"), bw_value_says (NULL, _ ("does not lock")));
      return;
    }
  add_departure (gist, _ ("Largest departure"), run->peak_s);
  add_departure (gist, _ ("At the first line of picture"), run->picture_s);
  bw_node_figure (gist, _ ("Settles after"),
                  bw_value_quantity (NULL, run->settle_lines, BW_DIMENSION_LINES, 4));
}

/**
 * bw_sync_say:
 * @run: of @mix and @afc
 *
 * Adds what there is to say of it, and the lines around field sync.
 */
void
bw_sync_say (BwNode *to, const BwSyncMix *mix, const BwSyncAfc *afc, const BwSyncRun *run)
{
  g_return_if_fail (to != NULL && mix != NULL && afc != NULL && run != NULL);
  g_autoptr (GPtrArray) says = bw_sync_mix_says (mix, afc, run, bw_result_mark (to->result));

  to->order =
      "raster field gate h_polarity v_polarity v_offset_s delay_s form polarity structure h v "
      "result standard lines lines_by_edge half_line_edges extra_edges glitches afc says";
  add_case (to, mix);
  bw_node_list (to, "says", NULL, says);
  add_gist (to, mix, run);
  add_structure (to, mix);
  if (mix->what.gate != BW_SYNC_GATE_STANDARD)
    {
      add_trace (to, "h", &mix->h);
      add_trace (to, "v", &mix->v);
    }
  add_trace (to, "result", &mix->result);
  add_trace (to, "standard", &mix->standard);
  add_lines (to, run);
  add_afc (to, afc, run);
}
