/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model-private.h"

#include <math.h>
#include <string.h>

#define CHUNK 16384 /* samples at a time */
#define CREST_COLUMNS (BW_LEVELS_LEAST_CYCLE / BW_LEVELS_COLUMN)
#define LEAST_DEPTH_V 2e-3 /* between two crests of a sine */

static gint64
first_sample (double rate_hz, const BwLevelsWindow *window, double time_s)
{
  return MAX ((gint64) floor ((window->start_s + time_s) * rate_hz), 0);
}

static void
fill_samples (BwSynthesis *synthesis, BwConductor conductor, const BwLevelsWindow *window,
              BwLevelsSamples *samples)
{
  double rate_hz = bw_ratio_to_double (bw_synthesis_rate_hz (synthesis));
  gint64 first = first_sample (rate_hz, window, window->from_s);
  gint64 last = first_sample (rate_hz, window, window->to_s) + 1;

  samples->n = (gsize) (last - first + 1);
  samples->step_s = 1 / rate_hz;
  samples->first_s = (double) first / rate_hz - window->start_s;
  samples->volts = g_new (float, samples->n);
  bw_synthesis_fill (synthesis, conductor, first, samples->n, samples->volts);
}

/* Private: all samples from the last one before the window to the first one after it. */
void
bw_levels_samples (BwLevelsModel *model, BwConductor conductor, const BwLevelsWindow *window,
                   BwLevelsSamples *samples)
{
  g_return_if_fail (model != NULL && window != NULL && samples != NULL);
  fill_samples (model->synthesis, conductor, window, samples);
  bw_levels_couple (model, conductor, first_sample (model->rate_hz, window, window->from_s), samples->n,
                    samples->volts);
}

/* Private: likewise of the chroma of a coded signal alone, 16 samples to a cycle. Returns whether
 * there is any. */
gboolean
bw_levels_chroma_samples (BwLevelsModel *model, const BwLevelsWindow *window,
                          BwLevelsSamples *samples)
{
  g_return_val_if_fail (model != NULL && window != NULL && samples != NULL, FALSE);
  BwSynthesisCase what = model->what;

  if (model->chroma == NULL)
    {
      what.form.signal = BW_SIGNAL_YC;
      what.form.sync = BW_SYNC_IN_VIDEO;
      if (!bw_ratio_multiply (bw_system_facts (what.form.system)->subcarrier_hz,
                              (BwRatio){ BW_LEVELS_PER_CYCLE, 1 }, &what.rate_hz))
        return FALSE;
      model->chroma = bw_synthesis_new (&what, NULL);
    }
  if (model->chroma == NULL)
    return FALSE;
  fill_samples (model->chroma, BW_CONDUCTOR_C, window, samples);
  return TRUE;
}

void
bw_levels_samples_clear (BwLevelsSamples *samples)
{
  g_clear_pointer (&samples->volts, g_free);
  samples->n = 0;
}

/* Envelope */

/* The peak of the parabola through three samples, the middle one of which is the extreme: what lies
 * between the samples of a sine. */
static double
peak_of (double before, double at, double after)
{
  double bend = before - 2 * at + after;
  return fabs (bend) < 1e-9 ? at : at - (after - before) * (after - before) / (8 * bend);
}

static void
include (BwLevelsEnvelope *envelope, int column, double volts)
{
  if (column < 0 || column >= (int) envelope->n)
    return;
  envelope->low_v[column] = (float) fmin (envelope->low_v[column], volts);
  envelope->high_v[column] = (float) fmax (envelope->high_v[column], volts);
}

/* One sample in its column, and in the columns that the line to the next sample goes through. */
static void
include_step (BwLevelsEnvelope *envelope, double place, double next_place, double from_v,
              double to_v)
{
  int column = (int) floor (place), last = (int) floor (next_place);

  include (envelope, column, from_v);
  for (int edge = column + 1; edge <= last; edge++)
    {
      double at = from_v + (edge - place) / (next_place - place) * (to_v - from_v);
      include (envelope, edge - 1, at);
      include (envelope, edge, at);
    }
}

/* The last extreme of one sense, and the farthest level of the other sense since. */
typedef struct
{
  gboolean known;
  double place;
  double volts;
  double turn_v;
} Crest;

/* Joins two crests of a sine that is too fine for the page, so that its envelope is closed. There
 * is no sine where the level between them does not turn. */
static void
join_crests (BwLevelsEnvelope *envelope, Crest *crest, double place, double volts, double sense)
{
  double depth_v = fmin (sense * (crest->volts - crest->turn_v), sense * (volts - crest->turn_v));

  if (crest->known && place - crest->place < CREST_COLUMNS && depth_v > LEAST_DEPTH_V)
    for (int column = (int) ceil (crest->place); column < place; column++)
      {
        double share = (column - crest->place) / (place - crest->place);
        double at = crest->volts + share * (volts - crest->volts);
        include (envelope, column - 1, at);
        include (envelope, column, at);
      }
  *crest = (Crest){ TRUE, place, volts, volts };
}

/* The middle one of three samples, at @place, those beside it @columns away. */
static void
include_sample (BwLevelsEnvelope *envelope, Crest crests[2], double place, double columns,
                const float *samples)
{
  double before = samples[0], at = samples[1], after = samples[2];
  gboolean top = at > before && at >= after, foot = at < before && at <= after;
  double peak = top || foot ? peak_of (before, at, after) : at;

  include_step (envelope, place, place + columns, at, after);
  crests[0].turn_v = fmin (crests[0].turn_v, peak);
  crests[1].turn_v = fmax (crests[1].turn_v, peak);
  if ((!top && !foot) || fabs (peak - at) > LEAST_DEPTH_V * 20)
    return;
  include (envelope, (int) floor (place), peak);
  join_crests (envelope, &crests[foot ? 1 : 0], place, peak, foot ? -1 : 1);
}

static void
fill_envelope (BwLevelsModel *model, BwConductor conductor, const BwLevelsWindow *window,
               BwLevelsEnvelope *envelope, BwLevelsDwell *dwell)
{
  g_autofree float *volts = g_new (float, CHUNK + 2);
  double columns_per_s = envelope->n / (window->to_s - window->from_s);
  double beyond_s = envelope->n > 1 ? CREST_COLUMNS / columns_per_s : 0;
  gint64 first = first_sample (model->rate_hz, window, window->from_s - beyond_s);
  gint64 last = first_sample (model->rate_hz, window, window->to_s + beyond_s) + 1;
  Crest crests[2] = { { FALSE } };

  for (gint64 at = MAX (first, 1); at <= last; at += CHUNK)
    {
      gsize n = (gsize) MIN (last - at + 1, CHUNK);
      bw_synthesis_fill (model->synthesis, conductor, at - 1, n + 2, volts);
      bw_levels_couple (model, conductor, at - 1, n + 2, volts);
      for (gsize i = 0; i < n; i++)
        {
          double time_s = (double) (at + (gint64) i) / model->rate_hz - window->start_s;
          double place = (time_s - window->from_s) * columns_per_s;
          include_sample (envelope, crests, place, columns_per_s / model->rate_hz, volts + i);
          if (dwell != NULL)
            bw_levels_dwell_add (dwell, place * dwell->columns / envelope->n, (double) volts[i + 1],
                                 (double) volts[i + 2]);
        }
    }
}

void
bw_levels_envelope_clear (BwLevelsEnvelope *envelope)
{
  g_clear_pointer (&envelope->low_v, g_free);
  g_clear_pointer (&envelope->high_v, g_free);
  envelope->n = 0;
}

static gboolean
same_window (const BwLevelsWindow *a, const BwLevelsWindow *b)
{
  return memcmp (a, b, sizeof *a) == 0;
}

/* Where lines are too fine for the page, each column shows all of a line. */
static void
widen (BwLevelsEnvelope *envelope, int reach)
{
  int n = (int) envelope->n;
  g_autofree float *low = g_memdup2 (envelope->low_v, envelope->n * sizeof (float));
  g_autofree float *high = g_memdup2 (envelope->high_v, envelope->n * sizeof (float));

  for (int i = 0; i < n; i++)
    for (int k = MAX (i - reach, 0); k <= MIN (i + reach, n - 1); k++)
      {
        envelope->low_v[i] = fminf (envelope->low_v[i], low[k]);
        envelope->high_v[i] = fmaxf (envelope->high_v[i], high[k]);
      }
}

/* Private: whether the lines of a picture have no shape of their own, @unit_s being the time to a
 * unit of the page. */
gboolean
bw_levels_lines_are_fine (const BwLevelsModel *model, double unit_s)
{
  return model->shape.period_s < BW_LEVELS_LEAST_LINE * unit_s;
}

/* Private: what a conductor does in each column of @window; to be cleared with
 * bw_levels_envelope_clear(). @dwell (nullable), which is empty, receives how long it stays at each
 * level; only where lines are fine. */
void
bw_levels_envelope (BwLevelsModel *model, BwConductor conductor, const BwLevelsWindow *window,
                    guint columns, BwLevelsEnvelope *envelope, BwLevelsDwell *dwell)
{
  *envelope = (BwLevelsEnvelope){ columns, g_new (float, columns), g_new (float, columns) };
  for (guint i = 0; i < columns; i++)
    {
      envelope->low_v[i] = INFINITY;
      envelope->high_v[i] = -INFINITY;
    }
  fill_envelope (model, conductor, window, envelope, dwell);
  double length_s = window->to_s - window->from_s, half_line = model->shape.period_s / 2 / length_s;
  if (bw_levels_lines_are_fine (model, length_s / columns / BW_LEVELS_COLUMN))
    widen (envelope, (int) ceil (half_line * columns));
  if (dwell != NULL)
    bw_levels_dwell_finish (dwell, 2 * half_line * dwell->columns);
}

/* Private: lowest and highest level of a conductor in the window. */
void
bw_levels_extent (BwLevelsModel *model, BwConductor conductor, const BwLevelsWindow *window,
                  BwRange *volts)
{
  if (!same_window (&model->extent_window[conductor], window))
    {
      float low_v = INFINITY, high_v = -INFINITY;
      BwLevelsEnvelope all = { 1, &low_v, &high_v };
      fill_envelope (model, conductor, window, &all, NULL);
      model->extent_window[conductor] = *window;
      model->extent[conductor] = (BwRange){ low_v, high_v };
    }
  *volts = model->extent[conductor];
}
