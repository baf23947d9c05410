/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "afc-private.h"

#include <math.h>

#include <glib/gi18n-lib.h>

G_DEFINE_QUARK (bw-sync-afc-error-quark, bw_sync_afc_error)

/* Common practice, no source. */
#define USUAL_TIME_CONSTANT_LINES 10
#define USUAL_RATE_ERROR 0.01
#define TOLERANCE 0.004 /* share of a line: a quarter of a microsecond at 525 and 625 lines */
#define GLITCH 0.005    /* share of a line */

#define SETTLED 0.001         /* share of the active line */
#define SETTLING_CONSTANTS 30 /* how many time constants the loop is followed for */

static const BwKind loops[BW_N_AFC_LOOPS] = {
  [BW_AFC_LOOP_FIRST] = { "first", N_ ("first order") },
  [BW_AFC_LOOP_SECOND] = { "second", N_ ("second order") },
};
const BwKindTable bw_afc_loops = { G_N_ELEMENTS (loops), loops };

static const BwKind edges[BW_N_AFC_EDGES] = {
  [BW_AFC_EDGE_RIGHT] = { "right", N_ ("right") },
  [BW_AFC_EDGE_EARLY] = { "early", N_ ("early") },
  [BW_AFC_EDGE_LATE] = { "late", N_ ("late") },
  [BW_AFC_EDGE_MISSING] = { "missing", N_ ("missing") },
};
const BwKindTable bw_afc_edges = { G_N_ELEMENTS (edges), edges };

/* The AFC */

static double
line_period_s (const BwRaster *raster)
{
  return 1 / bw_ratio_to_double (raster->line_rate_hz);
}

/**
 * bw_sync_afc_init:
 * @afc: (out caller-allocates): a second-order loop with a time constant of 10 lines and a
 *   free-running rate 1 % low (common practice, no source); tolerance 0.4 % of a line, glitches
 *   narrower than 0.5 % of a line
 */
void
bw_sync_afc_init (BwSyncAfc *afc, const BwRaster *raster)
{
  g_return_if_fail (afc != NULL && raster != NULL);
  double line_s = line_period_s (raster);
  *afc = (BwSyncAfc){
    .loop = BW_AFC_LOOP_SECOND,
    .time_constant_lines = USUAL_TIME_CONSTANT_LINES,
    .rate_error = USUAL_RATE_ERROR,
    .tolerance_s = TOLERANCE * line_s,
    .glitch_s = GLITCH * line_s,
  };
}

static gboolean
fault (GError **error, BwSyncAfcError code, const char *says)
{
  g_set_error_literal (error, BW_SYNC_AFC_ERROR, code, says);
  return FALSE;
}

/**
 * bw_sync_afc_check:
 * @raster: that it is to follow
 *
 * Returns: %FALSE with @error in %BW_SYNC_AFC_ERROR if a member of @afc is not in its range
 */
gboolean
bw_sync_afc_check (const BwSyncAfc *afc, const BwRaster *raster, GError **error)
{
  g_return_val_if_fail (afc != NULL && raster != NULL, FALSE);
  double gate_s = BW_AFC_GATE * line_period_s (raster);

  if (afc->loop >= BW_N_AFC_LOOPS)
    return fault (error, BW_SYNC_AFC_ERROR_LOOP, _ ("the loop is of first or second order"));
  if (!(afc->time_constant_lines >= BW_AFC_LINES_MIN
        && afc->time_constant_lines <= BW_AFC_LINES_MAX))
    return fault (error, BW_SYNC_AFC_ERROR_TIME_CONSTANT,
                  _ ("the time constant must be from 0.1 to 200 lines"));
  if (!(fabs (afc->rate_error) <= BW_AFC_RATE_ERROR_MAX))
    return fault (error, BW_SYNC_AFC_ERROR_RATE, _ ("the rate error may be at most 20 %"));
  if (!(afc->tolerance_s > 0 && afc->tolerance_s < gate_s)
      || !(afc->glitch_s >= 0 && afc->glitch_s < gate_s))
    return fault (error, BW_SYNC_AFC_ERROR_WIDTH,
                  _ ("the tolerance and a glitch must be less than a quarter of a line"));
  if (!(afc->picture_width_m >= 0 && afc->picture_width_m < 100))
    return fault (error, BW_SYNC_AFC_ERROR_WIDTH, _ ("there is no picture of such a width"));
  return TRUE;
}

/* @proportional: (out): k, the share of the measured error by which the phase moves at the next line
 * @integral: (out): g, the share of it by which the period changes
 *
 * With e the measured error of line n, p the phase and q the correction of the period:
 * p(n+1) = p(n) + d + q(n) + k e(n) and q(n+1) = q(n) + g e(n), where d is the rate error times
 * the line period. With e(n) = -p(n) the poles z of the loop solve z² - (2 - k) z + 1 - k + g = 0.
 * First order: g = 0 and z = 1 - k. Second order, critically damped: g = k²/4 and z = 1 - k/2
 * twice. A time constant of t lines is z = exp (-1/t). Arithmetic; the model is common practice. */
static void
loop_gains (const BwSyncAfc *afc, double *proportional, double *integral)
{
  g_return_if_fail (afc != NULL && proportional != NULL && integral != NULL);
  double step = 1 - exp (-1 / afc->time_constant_lines);
  gboolean second = afc->loop == BW_AFC_LOOP_SECOND;
  *proportional = second ? 2 * step : step;
  *integral = second ? step * step : 0;
}

/* The loop */

/* @phase_s: of the oscillator after where the edge is due; @period_s: correction of its period */
typedef struct
{
  double gain;
  double integral;
  double drift_s; /* in a line, without correction */
  double phase_s;
  double period_s;
} Loop;

/* The loop as it has settled on lines whose edges are all at their place. */
static Loop
settled_loop (const BwSyncMix *mix, const BwSyncAfc *afc)
{
  Loop loop = { .drift_s = afc->rate_error * mix->line_s };
  loop_gains (afc, &loop.gain, &loop.integral);
  if (afc->loop == BW_AFC_LOOP_SECOND)
    loop.period_s = -loop.drift_s;
  else
    loop.phase_s = loop.drift_s / loop.gain;
  return loop;
}

static void
next_line (Loop *loop, gboolean has_edge, double late_s)
{
  double error_s = has_edge ? late_s - loop->phase_s : 0;
  loop->phase_s += loop->drift_s + loop->period_s + loop->gain * error_s;
  loop->period_s += loop->integral * error_s;
}

/* Whether more than half of the lines outside field sync have an edge at its place. */
static gboolean
has_lines (const BwSyncRun *run)
{
  guint n = 0, n_right = 0;
  for (guint i = 0; i < run->lines->len; i++)
    if (!bw_sync_run_line (run, i)->in_field_sync)
      {
        n++;
        n_right += bw_sync_run_line (run, i)->edge == BW_AFC_EDGE_RIGHT;
      }
  return 2 * n_right > n;
}

static int
picture_half_line (const BwSyncMix *mix)
{
  const BwRaster *raster = mix->what.raster;
  const BwFieldTiming *timing = &raster->field[mix->what.field];
  int half = timing->sync + timing->back_porch + 2 * raster->v_border;
  gboolean middle;
  bw_raster_line_at (raster, mix->what.field, half, &middle);
  return half - (middle ? 1 : 0);
}

/* @picture: how many lines after the first one the picture starts */
static void
note_phase (BwSyncRun *run, int i, int picture, int line, double phase_s)
{
  if (fabs (phase_s) > fabs (run->peak_s))
    {
      run->peak_s = phase_s;
      run->peak_line = line;
    }
  if (i == picture)
    run->picture_s = phase_s;
  if (i >= picture && fabs (phase_s) > fabs (run->bend_s))
    run->bend_s = phase_s;
  if (i >= picture && fabs (phase_s) >= run->settle_s)
    run->settle_lines = i - picture + 1;
}

static void
follow (BwSyncRun *run, const BwSyncMix *mix, const BwSyncAfc *afc)
{
  double half_s = mix->line_s / 2;
  int first = (int) floor ((bw_sync_run_line (run, 0)->due_s - mix->what.delay_s) / half_s + 0.5);
  int picture = (picture_half_line (mix) - first) / 2, n = (int) run->lines->len;
  int last = MAX (n, picture) + (int) (SETTLING_CONSTANTS * afc->time_constant_lines);
  Loop loop = settled_loop (mix, afc);

  run->static_s = loop.phase_s;
  for (int i = 0; i < last; i++)
    {
      BwSyncLine *line = i < n ? bw_sync_run_line (run, (guint) i) : NULL;
      double phase_s = loop.phase_s - run->static_s;
      int number = bw_raster_line_at (mix->what.raster, mix->what.field, first + 2 * i, NULL);
      note_phase (run, i, picture, number, phase_s);
      if (line != NULL)
        line->phase_s = phase_s;
      next_line (&loop, line == NULL || line->edge != BW_AFC_EDGE_MISSING,
                 line != NULL ? line->late_s : 0);
    }
}

static gboolean
can_pull_in (const BwSyncMix *mix, const BwSyncAfc *afc)
{
  Loop loop = settled_loop (mix, afc);
  return fabs (loop.phase_s) < BW_AFC_GATE * mix->line_s;
}

static void
set_picture (BwSyncRun *run, const BwSyncMix *mix, const BwSyncAfc *afc)
{
  BwRasterFigures figures;
  bw_raster_figures (mix->what.raster, &figures);
  run->settle_s = SETTLED * figures.h_active_s;
  run->picture_line = bw_raster_line_at (mix->what.raster, mix->what.field, picture_half_line (mix),
                                         NULL);
  run->locks = has_lines (run) && can_pull_in (mix, afc);
  if (run->locks)
    follow (run, mix, afc);
  else
    run->static_s = run->peak_s = run->picture_s = run->bend_s = NAN;
  run->picture_share = run->picture_s / figures.h_active_s;
  run->picture_m = afc->picture_width_m > 0 ? run->picture_share * afc->picture_width_m : 0;
}

/**
 * bw_sync_run_new:
 * @mix: its result is what the AFC gets, at the right polarity
 * @afc: one that bw_sync_afc_check() accepts
 *
 * The loop, by loop_gains(), starts settled on undisturbed lines. On a line without an edge
 * it measures nothing.
 *
 * Returns: (transfer full): what the AFC finds, and what becomes of the picture's top
 */
BwSyncRun *
bw_sync_run_new (const BwSyncMix *mix, const BwSyncAfc *afc)
{
  g_return_val_if_fail (bw_sync_afc_check (afc, mix->what.raster, NULL), NULL);
  BwSyncRun *run = g_new0 (BwSyncRun, 1);
  run->lines = g_array_new (FALSE, FALSE, sizeof (BwSyncLine));
  bw_sync_run_find_lines (run, mix, afc);
  set_picture (run, mix, afc);
  return run;
}

/**
 * bw_sync_run_free:
 * @run: (nullable) (transfer full)
 */
void
bw_sync_run_free (BwSyncRun *run)
{
  if (run == NULL)
    return;
  g_array_unref (run->lines);
  g_free (run);
}
