/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "afc-private.h"

#include <math.h>

/* What an AFC finds where the edge of each line is due. */

static const BwSyncEdge *
edge_at (const GArray *list, guint i)
{
  return &g_array_index (list, BwSyncEdge, i);
}

/* The edges without pulses and gaps that are narrower than @glitch_s. */
static GArray *
without_glitches (const BwSyncTrace *trace, double glitch_s, guint *n)
{
  GArray *kept = g_array_new (FALSE, FALSE, sizeof (BwSyncEdge));
  for (guint i = 0; i < trace->edges->len; i++)
    {
      const BwSyncEdge *edge = edge_at (trace->edges, i);
      gboolean narrow = kept->len > 0
                        && edge->at_s - edge_at (kept, kept->len - 1)->at_s < glitch_s;
      if (narrow)
        g_array_set_size (kept, kept->len - 1);
      else
        g_array_append_val (kept, *edge);
      *n += narrow;
    }
  return kept;
}

static GArray *
leading_edges (const BwSyncMix *mix, double glitch_s, guint *n_glitches)
{
  g_autoptr (GArray) kept = without_glitches (&mix->result, glitch_s, n_glitches);
  GArray *leading = g_array_new (FALSE, FALSE, sizeof (double));
  for (guint i = 0; i < kept->len; i++)
    if (edge_at (kept, i)->level != mix->result.rest)
      g_array_append_val (leading, edge_at (kept, i)->at_s);
  return leading;
}

/* Fills in what the gate of @line finds among the edges. */
static void
find_edge (const BwSyncMix *mix, const BwSyncAfc *afc, const GArray *leading, BwSyncLine *line)
{
  double gate_s = BW_AFC_GATE * mix->line_s, nearest_s = G_MAXDOUBLE;
  guint n = 0;

  for (guint i = 0; i < leading->len; i++)
    {
      double off_s = g_array_index (leading, double, i) - line->due_s;
      gboolean in_gate = fabs (off_s) < gate_s;
      n += in_gate;
      line->n_half += off_s >= gate_s && off_s <= mix->line_s - gate_s;
      if (in_gate && fabs (off_s) < fabs (nearest_s))
        nearest_s = off_s;
    }
  line->n_extra = n > 1 ? n - 1 : 0;
  if (n == 0)
    {
      line->edge = BW_AFC_EDGE_MISSING;
      return;
    }
  line->late_s = nearest_s;
  line->edge = fabs (nearest_s) <= afc->tolerance_s ? BW_AFC_EDGE_RIGHT
               : nearest_s < 0                      ? BW_AFC_EDGE_EARLY
                                                    : BW_AFC_EDGE_LATE;
}

static gboolean
is_in_field_sync (const BwSyncMix *mix, double at_s)
{
  const double same_s = 1e-12;
  gboolean gate = mix->what.gate != BW_SYNC_GATE_STANDARD;
  double start_s = gate ? mix->v_start_s : 0;
  double end_s = start_s + mix->v_end_s - mix->v_start_s;
  return at_s >= start_s - same_s && at_s <= end_s + same_s;
}

/* Private: fills in the lines, and counts what is found. */
void
bw_sync_run_find_lines (BwSyncRun *run, const BwSyncMix *mix, const BwSyncAfc *afc)
{
  g_autoptr (GArray) leading = leading_edges (mix, afc->glitch_s, &run->n_glitches);
  double half_s = mix->line_s / 2;
  gboolean middle;

  for (int half = (int) ceil (mix->from_s / half_s); half * half_s < mix->to_s; half++)
    {
      BwSyncLine line = { .due_s = half * half_s + mix->what.delay_s, .phase_s = NAN };
      line.line = bw_raster_line_at (mix->what.raster, mix->what.field, half, &middle);
      if (middle)
        continue;
      line.in_field_sync = is_in_field_sync (mix, half * half_s);
      find_edge (mix, afc, leading, &line);
      run->n[line.edge]++;
      run->n_half += line.n_half;
      run->n_extra += line.n_extra;
      g_array_append_val (run->lines, line);
    }
}

/* Spans */

static gboolean
is_same (const BwSyncSpan *span, const BwSyncLine *line)
{
  const double same_s = 1e-9;
  return span->edge == line->edge && fabs (span->late_s - line->late_s) < same_s;
}

static void
end_span (GArray *spans, BwSyncSpan *span)
{
  if (span->n > 0)
    g_array_append_val (spans, *span);
  span->n = 0;
}

/**
 * bw_sync_run_spans:
 *
 * Returns: (transfer full) (element-type BwSyncSpan): the lines whose edge is not right, in the
 * order of time
 */
GArray *
bw_sync_run_spans (const BwSyncRun *run)
{
  g_return_val_if_fail (run != NULL, NULL);
  GArray *spans = g_array_new (FALSE, FALSE, sizeof (BwSyncSpan));
  BwSyncSpan span = { 0 };

  for (guint i = 0; i < run->lines->len; i++)
    {
      const BwSyncLine *line = bw_sync_run_line (run, i);
      if (!is_same (&span, line))
        {
          end_span (spans, &span);
          span = (BwSyncSpan){ i, 0, line->edge, line->late_s };
        }
      span.n += line->edge != BW_AFC_EDGE_RIGHT;
    }
  end_span (spans, &span);
  return spans;
}
