/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "model-private.h"

#include <math.h>
#include <string.h>

/* What a coupling capacitor does to the samples, in the steady state that the signal has come to when a scope
 * looks: the voltage on the capacitor at the start of a frame is then that at its end. It is worked out once, at
 * so many places of a frame, and from the nearest of them sample by sample. */

#define PLACES 1024
#define CHUNK 16384 /* samples at a time */

static double
frame_s (const BwLevelsModel *model)
{
  return bw_synthesis_line_start_s (model->synthesis, 1, 1)
         - bw_synthesis_line_start_s (model->synthesis, 0, 1);
}

/* By which share the capacitor comes closer to the level of a sample while it lasts. */
static double
share_of_sample (const BwLevelsModel *model)
{
  return -expm1 (-1 / (model->rate_hz * model->constant_s));
}

/* One frame from an empty capacitor on: its voltage at each place, and at the end. */
static double
charge_once (BwLevelsModel *model, BwConductor conductor, double *charge_v, double *sum_v)
{
  double period_s = frame_s (model), share = share_of_sample (model), at_v = 0;
  gint64 all = (gint64) round (period_s * model->rate_hz);
  g_autofree float *volts = g_new (float, CHUNK);
  int place = 0;

  *sum_v = 0;
  for (gint64 first = 0; first < all; first += CHUNK)
    {
      gsize n = (gsize) MIN (all - first, CHUNK);
      bw_synthesis_fill (model->synthesis, conductor, first, n, volts);
      for (gsize i = 0; i < n; i++)
        {
          double time_s = (double) (first + (gint64) i) / model->rate_hz;
          for (; place < PLACES && time_s >= place * period_s / PLACES; place++)
            charge_v[place] = at_v;
          *sum_v += at_v / (double) all;
          at_v += share * ((double) volts[i] - at_v);
        }
    }
  for (; place < PLACES; place++)
    charge_v[place] = at_v;
  return at_v;
}

/* What is left at the end of a frame of the voltage at its start is exp (−T/RC) of it, and the rest is the same
 * from any start: in the steady state start = end / (1 − exp (−T/RC)). */
static const double *
charge_of (BwLevelsModel *model, BwConductor conductor)
{
  double constants = frame_s (model) / model->constant_s, mean_v;

  if (model->charge_v[conductor] != NULL)
    return model->charge_v[conductor];
  double *charge_v = model->charge_v[conductor] = g_new (double, PLACES);
  double start_v = charge_once (model, conductor, charge_v, &mean_v) / -expm1 (-constants);
  for (int i = 0; i < PLACES; i++)
    charge_v[i] += start_v * exp (-constants * i / PLACES);
  model->mean_v[conductor] = mean_v + start_v * -expm1 (-constants) / constants;
  return charge_v;
}

/* The voltage on the capacitor before sample @first. */
static double
charge_before (BwLevelsModel *model, BwConductor conductor, gint64 first)
{
  const double *charge_v = charge_of (model, conductor);
  double period_s = frame_s (model), share = share_of_sample (model);
  double into_s = fmod ((double) first / model->rate_hz, period_s);
  int place = CLAMP ((int) floor (into_s / period_s * PLACES), 0, PLACES - 1);
  gint64 n = MIN ((gint64) floor ((into_s - place * period_s / PLACES) * model->rate_hz), first);
  double at_v = charge_v[place];

  if (n <= 0)
    return at_v;
  g_autofree float *volts = g_new (float, (gsize) n);
  bw_synthesis_fill (model->synthesis, conductor, first - n, (gsize) n, volts);
  for (gint64 i = 0; i < n; i++)
    at_v += share * ((double) volts[i] - at_v);
  return at_v;
}

/* Private: takes off @volts, samples from @first on, what stands on the capacitor, but for its mean: where the
 * whole lies a clamp decides, or the scope. */
void
bw_levels_couple (BwLevelsModel *model, BwConductor conductor, gint64 first, gsize n, float *volts)
{
  g_return_if_fail (model != NULL && conductor < BW_N_CONDUCTORS && volts != NULL);

  if (!(model->constant_s > 0))
    return;
  double at_v = charge_before (model, conductor, first), share = share_of_sample (model);
  for (gsize i = 0; i < n; i++)
    {
      double in_v = (double) volts[i];
      volts[i] = (float) (in_v - at_v + model->mean_v[conductor]);
      at_v += share * (in_v - at_v);
    }
}

void
bw_levels_coupling_clear (BwLevelsModel *model)
{
  for (guint i = 0; i < BW_N_CONDUCTORS; i++)
    g_clear_pointer (&model->charge_v[i], g_free);
  memset (model->extent_window, 0, sizeof model->extent_window);
}

/**
 * bw_levels_model_set_coupling:
 * @farad: in series with each conductor; zero: none
 * @loop_ohm: source and load, around which it charges; %INFINITY: it does not
 *
 * From now on the samples are those behind the capacitor, with the level that they have on the mean.
 */
void
bw_levels_model_set_coupling (BwLevelsModel *model, double farad, double loop_ohm)
{
  g_return_if_fail (model != NULL && farad >= 0);
  double constant_s = farad > 0 && isfinite (loop_ohm) && loop_ohm > 0 ? farad * loop_ohm : 0;

  if (fabs (constant_s - model->constant_s) <= 0)
    return;
  bw_levels_coupling_clear (model);
  model->constant_s = constant_s;
}

/**
 * bw_levels_model_time_constant_s:
 *
 * Returns: R·C of the coupling capacitor; zero: there is none
 */
double
bw_levels_model_time_constant_s (const BwLevelsModel *model)
{
  g_return_val_if_fail (model != NULL, 0);
  return model->constant_s;
}
