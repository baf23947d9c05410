/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "mix.h"

#include <math.h>

#include <glib/gi18n-lib.h>

G_DEFINE_QUARK (bw-sync-mix-error-quark, bw_sync_mix_error)

#define SAME_S 1e-12    /* edges so close are one */
#define MARGIN 0.25     /* of a line, by which the window starts before a half line */
#define MOST_DELAY 0.25 /* of a line */

/* The case */

/**
 * bw_sync_mix_case_init:
 * @what: (out caller-allocates): field 1, H and V as @raster has them and without offset or delay
 * @raster: borrowed
 */
void
bw_sync_mix_case_init (BwSyncMixCase *what, const BwRaster *raster, guint gate)
{
  *what = (BwSyncMixCase){
    .raster = raster,
    .gate = gate,
    .h_polarity = raster->h_polarity,
    .v_polarity = raster->v_polarity,
    .lines_before = BW_SYNC_MIX_LINES,
    .lines_after = BW_SYNC_MIX_LINES,
  };
}

static gboolean
fault (GError **error, BwSyncMixError code, const char *says)
{
  g_set_error_literal (error, BW_SYNC_MIX_ERROR, code, says);
  return FALSE;
}

static gboolean
lines_are_allowed (int lines)
{
  return lines >= 1 && lines <= BW_SYNC_MIX_LINES_MAX;
}

static double
line_period_s (const BwRaster *raster)
{
  return 1 / bw_ratio_to_double (raster->line_rate_hz);
}

/**
 * bw_sync_mix_check:
 *
 * Returns: %FALSE with @error in %BW_SYNC_MIX_ERROR if a member of @what is not in its range
 */
gboolean
bw_sync_mix_check (const BwSyncMixCase *what, GError **error)
{
  double line_s = line_period_s (what->raster);

  if (what->field != 0 && (what->field != 1 || what->raster->scan != BW_SCAN_INTERLACED))
    return fault (error, BW_SYNC_MIX_ERROR_FIELD,
                  what->raster->scan == BW_SCAN_INTERLACED
                      ? _ ("the field is 1 or 2")
                      : _ ("a progressive raster has no field but 1"));
  if (what->gate >= BW_N_SYNC_GATES || what->h_polarity >= BW_N_POLARITIES
      || what->v_polarity >= BW_N_POLARITIES)
    return fault (error, BW_SYNC_MIX_ERROR_KIND, _ ("there is no such gate or polarity"));
  if (!(fabs (what->v_offset_s) < line_s / 2))
    return fault (error, BW_SYNC_MIX_ERROR_OFFSET,
                  _ ("the offset of V must be less than half a line"));
  if (!(what->delay_s >= 0 && what->delay_s < MOST_DELAY * line_s))
    return fault (error, BW_SYNC_MIX_ERROR_DELAY,
                  _ ("the delay must be less than a quarter of a line, and not negative"));
  if (!lines_are_allowed (what->lines_before) || !lines_are_allowed (what->lines_after))
    return fault (error, BW_SYNC_MIX_ERROR_LINES,
                  _ ("1 to 100 lines of picture can be shown before and after"));
  return TRUE;
}

/* Traces */

static int
rest_level (guint polarity)
{
  return polarity == BW_POLARITY_NEGATIVE;
}

static BwSyncTrace
make_trace (int rest)
{
  return (BwSyncTrace){ rest, g_array_new (FALSE, FALSE, sizeof (BwSyncEdge)) };
}

static void
add_edge (BwSyncTrace *trace, double at_s, int level)
{
  BwSyncEdge edge = { at_s, level };
  g_array_append_val (trace->edges, edge);
}

static const BwSyncEdge *
edge_at (const BwSyncTrace *trace, guint i)
{
  return &g_array_index (trace->edges, BwSyncEdge, i);
}

/* A tip that starts before the last one ends makes that one longer. */
static void
add_tip (BwSyncTrace *trace, double from_s, double to_s)
{
  guint n = trace->edges->len;
  if (n > 0 && from_s <= edge_at (trace, n - 1)->at_s + SAME_S)
    {
      BwSyncEdge *end = &g_array_index (trace->edges, BwSyncEdge, n - 1);
      end->at_s = MAX (end->at_s, to_s);
      return;
    }
  add_edge (trace, from_s, !trace->rest);
  add_edge (trace, to_s, trace->rest);
}

/**
 * bw_sync_trace_level:
 *
 * Returns: the level of @trace at a time after the start of field sync; on an edge, that after it
 */
int
bw_sync_trace_level (const BwSyncTrace *trace, double at_s)
{
  int level = trace->rest;
  for (guint i = 0; i < trace->edges->len && edge_at (trace, i)->at_s <= at_s; i++)
    level = edge_at (trace, i)->level;
  return level;
}

static double
next_time (const BwSyncTrace *trace, guint i)
{
  return i < trace->edges->len ? edge_at (trace, i)->at_s : G_MAXDOUBLE;
}

/* Takes the edges of @trace up to @until_s. */
static void
pass (const BwSyncTrace *trace, double until_s, guint *i, int *level)
{
  while (*i < trace->edges->len && edge_at (trace, *i)->at_s <= until_s)
    *level = edge_at (trace, (*i)++)->level;
}

static BwSyncTrace
combine (const BwSyncTrace *h, const BwSyncTrace *v, guint gate, double delay_s)
{
  int h_level = h->rest, v_level = v->rest;
  BwSyncTrace result = make_trace (bw_sync_gate_level (gate, h_level, v_level));
  int level = result.rest;
  guint i = 0, j = 0;

  while (i < h->edges->len || j < v->edges->len)
    {
      double at_s = MIN (next_time (h, i), next_time (v, j));
      pass (h, at_s + SAME_S, &i, &h_level);
      pass (v, at_s + SAME_S, &j, &v_level);
      int after = bw_sync_gate_level (gate, h_level, v_level);
      if (after != level)
        add_edge (&result, at_s + delay_s, after);
      level = after;
    }
  return result;
}

/* What goes into the gate */

static gboolean
is_serrated (const BwRaster *raster)
{
  return raster->serration_width_s > 0;
}

static void
fill_h (BwSyncMix *mix, const BwVerticalInterval *interval)
{
  const BwSyncMixCase *what = &mix->what;
  gboolean middle;

  mix->h = make_trace (rest_level (what->h_polarity));
  for (int half = interval->start_half_line; half < interval->end_half_line; half++)
    {
      double at_s = half * mix->line_s / 2;
      bw_raster_line_at (what->raster, what->field, half, &middle);
      if (!middle)
        add_tip (&mix->h, at_s, MIN (at_s + mix->h_width_s, mix->to_s));
    }
}

static void
fill_v (BwSyncMix *mix, const BwVerticalInterval *interval)
{
  mix->v_start_s = mix->what.v_offset_s;
  mix->v_end_s = mix->what.v_offset_s + interval->sync_s;
  mix->v = make_trace (rest_level (mix->what.v_polarity));
  add_tip (&mix->v, mix->v_start_s, mix->v_end_s);
}

/* The pulses of the raster's own interval. Where its field sync is not serrated those are line sync
 * and equalising pulses alone, and field sync is one tip over them. */
static void
fill_standard (BwSyncMix *mix, const BwVerticalInterval *interval)
{
  BwSyncTrace pulses = make_trace (1), field = make_trace (1);

  for (guint i = 0; i < interval->pulses->len; i++)
    {
      const BwPulse *pulse = &g_array_index (interval->pulses, BwPulse, i);
      double width_s = pulse->kind == BW_PULSE_LINE ? mix->h_width_s : pulse->width_s;
      add_tip (&pulses, pulse->start_s, MIN (pulse->start_s + width_s, mix->to_s));
    }
  if (!is_serrated (mix->what.raster))
    add_tip (&field, 0, interval->sync_s);
  mix->standard = combine (&pulses, &field, BW_SYNC_GATE_AND, 0);
  g_array_unref (pulses.edges);
  g_array_unref (field.edges);
}

static void
fill_result (BwSyncMix *mix)
{
  const BwSyncMixCase *what = &mix->what;
  BwSyncTrace high = make_trace (1);

  if (what->gate == BW_SYNC_GATE_STANDARD)
    mix->result = combine (&mix->standard, &high, BW_SYNC_GATE_AND, what->delay_s);
  else
    mix->result = combine (&mix->h, &mix->v, what->gate, what->delay_s);
  mix->form = bw_sync_gate_form (what->gate, what->h_polarity, what->v_polarity);
  mix->polarity = bw_sync_gate_polarity (what->gate, what->h_polarity, what->v_polarity);
  g_array_unref (high.edges);
}

static double
h_pulse_s (const BwRaster *raster)
{
  BwRasterFigures figures;
  bw_raster_figures (raster, &figures);
  return raster->sync_shape == BW_SHAPE_TRILEVEL ? figures.h_sync_s / 2 : figures.h_sync_s;
}

/**
 * bw_sync_mix_new:
 * @what: a case that bw_sync_mix_check() accepts; copied, its raster borrowed
 *
 * Returns: (transfer full): H, V, the result and the raster's own composite sync
 */
BwSyncMix *
bw_sync_mix_new (const BwSyncMixCase *what)
{
  g_return_val_if_fail (bw_sync_mix_check (what, NULL), NULL);
  g_autoptr (BwVerticalInterval) interval = bw_vertical_interval_new (what->raster, what->field,
                                                                      what->lines_before,
                                                                      what->lines_after);
  BwSyncMix *mix = g_new0 (BwSyncMix, 1);

  mix->what = *what;
  mix->line_s = line_period_s (what->raster);
  mix->from_s = (interval->start_half_line / 2.0 - MARGIN) * mix->line_s;
  mix->to_s = (interval->end_half_line / 2.0 - MARGIN) * mix->line_s;
  mix->h_width_s = h_pulse_s (what->raster);
  fill_h (mix, interval);
  fill_v (mix, interval);
  fill_standard (mix, interval);
  fill_result (mix);
  return mix;
}

/**
 * bw_sync_mix_free:
 * @mix: (nullable) (transfer full)
 */
void
bw_sync_mix_free (BwSyncMix *mix)
{
  if (mix == NULL)
    return;
  g_array_unref (mix->h.edges);
  g_array_unref (mix->v.edges);
  g_array_unref (mix->result.edges);
  g_array_unref (mix->standard.edges);
  g_free (mix);
}

/* Structure */

/* How far @at_s is from the nearest start of a line or half line. */
static double
off_half_line (const BwSyncMix *mix, double at_s)
{
  double halves = at_s / (mix->line_s / 2);
  return fabs (halves - floor (halves + 0.5));
}

static void
count_gap (const BwSyncMix *mix, double from_s, double to_s, BwSyncStructure *structure)
{
  if (off_half_line (mix, to_s) <= off_half_line (mix, from_s))
    structure->n_serrations++;
  else
    structure->n_inverted++;
}

static void
count_pulse (const BwSyncMix *mix, double from_s, double to_s, BwSyncStructure *structure)
{
  const BwRaster *raster = mix->what.raster;
  double half_s = mix->line_s / 2, width_s = to_s - from_s, near_s = half_s / 2;
  int sync = raster->field[mix->what.field].sync;
  double after_s = sync * half_s;

  if (!(raster->equalising_width_s > 0)
      || fabs (width_s - raster->equalising_width_s) >= fabs (width_s - mix->h_width_s))
    return;
  if (from_s > -raster->equalising_before * half_s - near_s && from_s < -near_s)
    structure->n_equalising[0]++;
  if (from_s > after_s - near_s && from_s < after_s + raster->equalising_after * half_s - near_s)
    structure->n_equalising[1]++;
}

/**
 * bw_sync_mix_structure:
 * @trace: of @mix: its result or its standard
 * @structure: (out caller-allocates)
 *
 * Counts what marks composite sync by a standard.
 */
void
bw_sync_mix_structure (const BwSyncMix *mix, const BwSyncTrace *trace, BwSyncStructure *structure)
{
  double delay_s = trace == &mix->result ? mix->what.delay_s : 0;
  gboolean is_standard = trace == &mix->standard || mix->what.gate == BW_SYNC_GATE_STANDARD;
  double start_s = is_standard ? 0 : mix->v_start_s;
  double end_s = start_s + mix->v_end_s - mix->v_start_s;

  *structure = (BwSyncStructure){ 0 };
  for (guint i = 0; i + 1 < trace->edges->len; i++)
    {
      double from_s = edge_at (trace, i)->at_s - delay_s;
      double to_s = edge_at (trace, i + 1)->at_s - delay_s;
      gboolean tip = edge_at (trace, i)->level != trace->rest;
      structure->n_leading += tip;
      if (tip)
        count_pulse (mix, from_s, to_s, structure);
      else if (from_s > start_s + SAME_S && to_s <= end_s + SAME_S)
        count_gap (mix, from_s, to_s, structure);
    }
}
