/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <math.h>

#include "core/signal/synthesis.h"
#include "support.h"

/* What the tests of synthesis share: a test signal as the standard of its system lays it down. */

#define US 1e-6

static inline void
assert_near (double got, double wanted, double tolerance)
{
  if (!(fabs (got - wanted) <= tolerance))
    g_test_message ("%.9g, not %.9g ± %.2g", got, wanted, tolerance);
  g_assert_true (fabs (got - wanted) <= tolerance);
}

/**
 * Setup:
 * @rate: in hertz; zero stands for the default
 */
typedef struct
{
  const char *raster;
  BwColourSystem system;
  BwSignal signal;
  BwSyncKind sync;
  BwContent content;
  BwRatio rate;
} Setup;

static inline BwSynthesisCase
case_of (const Setup *setup)
{
  const BwRaster *raster = bw_test_raster (setup->raster);
  BwSynthesisCase what = { .raster = raster, .content = setup->content, .bars = BW_BARS_75 };

  bw_wire_form_standard (setup->system, setup->signal, setup->sync,
                         (BwSyncShape) raster->sync_shape, &what.form);
  bw_synthesis_add_burst (&what.form);
  what.form.own_polarity[0] = raster->h_polarity;
  what.form.own_polarity[1] = raster->v_polarity;
  if (setup->rate.num > 0)
    what.rate_hz = setup->rate;
  else
    what.rate_hz = BW_RATIO_NONE;
  return what;
}

static inline BwSynthesis *
synthesis_of (const Setup *setup)
{
  g_autoptr (GError) error = NULL;
  BwSynthesisCase what = case_of (setup);
  BwSynthesis *synthesis = bw_synthesis_new (&what, &error);
  if (synthesis == NULL)
    g_error ("%s: %s", setup->raster, error->message);
  return synthesis;
}

/* Samples from sample @first on. */
static inline float *
samples_of (BwSynthesis *synthesis, BwConductor conductor, gint64 first, gsize n)
{
  float *volts = g_new (float, n);
  bw_synthesis_fill (synthesis, conductor, first, n, volts);
  return volts;
}

/* The level @time_s after 0H of a line of the first frame, between two samples in proportion. */
static inline double
level_at (BwSynthesis *synthesis, BwConductor conductor, int line, double time_s)
{
  BwRatio rate = bw_synthesis_rate_hz (synthesis);
  double place = (bw_synthesis_line_start_s (synthesis, 0, line) + time_s)
                 * bw_ratio_to_double (rate);
  gint64 first = (gint64) floor (place);
  float volts[2];
  bw_synthesis_fill (synthesis, conductor, first, 2, volts);
  return (double) volts[0] + (place - (double) first) * ((double) volts[1] - (double) volts[0]);
}

/* When, after 0H of the line, the level first crosses @volts in the given direction between two
 * instants. NaN if it does not. */
static inline double
crossing_s (BwSynthesis *synthesis, BwConductor conductor, int line, double from_s, double to_s,
            double volts, gboolean rising)
{
  double step_s = 1 / bw_ratio_to_double (bw_synthesis_rate_hz (synthesis));
  double before = level_at (synthesis, conductor, line, from_s);
  for (double t = from_s + step_s; t <= to_s; t += step_s)
    {
      double now = level_at (synthesis, conductor, line, t);
      if (rising ? before < volts && now >= volts : before > volts && now <= volts)
        return t - step_s + step_s * (volts - before) / (now - before);
      before = now;
    }
  return NAN;
}
