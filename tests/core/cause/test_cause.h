/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/cause/cause.h"

#include <math.h>

#include "support.h"

/* A source on the bench with a scope on one conductor, made from the source's own figures and a
 * voltage divider, by another way than the core's. */

#define NOISE 0.01
#define DRAWS 10

/* What stands on a conductor across 75 Ω, or without load for logic. */
typedef struct
{
  double white_v;
  double black_v;
  double low_v; /* sync */
  double high_v;
  double burst_v;
  double source_ohm;
  gboolean open; /* stated without load */
} Signal;

typedef struct
{
  const BwSource *source;
  const BwRaster *raster;
  BwSyncKind sync;
  BwConductor conductor;
  BwCauseCase c;
  GRand *rand;
} Bench;

/* SMPTE 170M table 1: burst 40 IRE. ITU-R BT.1700 table 2: 300 mV. */
static double
burst_of (const BwSource *source)
{
  if (source->system == BW_SYSTEM_NTSC_M || source->system == BW_SYSTEM_NTSC_J)
    return 40.0 / 140;
  return source->system == BW_SYSTEM_PAL_B ? 0.3 : 0;
}

/* The highest chroma of 100 % bars. SMPTE 170M table A.1, cyan: 116.9817 IRE peak to peak; PAL,
 * cyan: 700 mV × hypot (0.493 × 0.299, 0.877 × 0.701) (ITU-R BT.1700). */
static double
chroma_of (const BwSource *source)
{
  if (source->system == BW_SYSTEM_NTSC_M)
    return 116.9817 / 2 / 140;
  return 0.7 * hypot (0.493 * 0.299, 0.877 * 0.701);
}

static void
set_sync (const Bench *bench, BwConductor conductor, Signal *signal)
{
  gboolean own = bw_conductor_is_sync_alone (conductor);
  gboolean tri = bench->raster->sync_shape == BW_SHAPE_TRILEVEL;
  gboolean up = own && bench->sync == BW_SYNC_SEPARATE
                && (conductor == BW_CONDUCTOR_V ? bench->raster->v_polarity
                                                : bench->raster->h_polarity)
                       == BW_POLARITY_POSITIVE;

  signal->low_v = up ? 0 : -bench->source->sync_v;
  signal->high_v = up ? bench->source->sync_v
                      : tri && bench->sync != BW_SYNC_SEPARATE ? bench->source->sync_v : 0;
}

static Signal
signal_on (const Bench *bench, BwConductor conductor)
{
  const BwSource *source = bench->source;
  Signal signal = { .source_ohm = source->source_ohm };

  if (bw_conductor_is_sync_alone (conductor))
    {
      signal.source_ohm = source->sync_ohm;
      signal.open = source->sync_load == BW_LOAD_OPEN;
    }
  else if (conductor == BW_CONDUCTOR_PB || conductor == BW_CONDUCTOR_PR)
    signal.white_v = source->video_v / 2;
  else if (conductor == BW_CONDUCTOR_C)
    signal.white_v = chroma_of (source);
  else
    {
      signal.white_v = source->video_v;
      signal.black_v = source->video_v * source->setup_ire / 100;
    }
  if (conductor == BW_CONDUCTOR_VIDEO || conductor == BW_CONDUCTOR_C)
    signal.burst_v = burst_of (source);
  if (bw_conductor_carries_sync (conductor, source->signal, bench->sync))
    set_sync (bench, conductor, &signal);
  return signal;
}

static double
noisy (const Bench *bench, double value)
{
  return value * g_rand_double_range (bench->rand, 1 - NOISE, 1 + NOISE);
}

/* Everything that a scope can read, but for d.c. and tilt. */
static BwScopeReadings
read_signal (const Bench *bench, const Signal *signal, double load_ohm, double series_ohm)
{
  BwScopeReadings readings = { 0 };
  double ohm = signal->source_ohm;
  double emf = signal->open ? 1 : (75 + ohm) / 75;
  double gain = emf * load_ohm / (load_ohm + series_ohm + ohm);
  gboolean has_burst = burst_of (bench->source) > 0
                       || bench->source->signal == BW_SIGNAL_LUMA;

  bw_scope_readings_set (&readings, BW_SCOPE_SYNC,
                         noisy (bench, gain * (signal->high_v - signal->low_v)));
  if (signal->high_v > 0 || signal->low_v < 0)
    bw_scope_readings_set (&readings, BW_SCOPE_POLARITY, signal->low_v < 0 ? -1 : 1);
  bw_scope_readings_set (&readings, BW_SCOPE_WHITE, noisy (bench, gain * signal->white_v));
  bw_scope_readings_set (&readings, BW_SCOPE_BLACK, noisy (bench, gain * signal->black_v));
  if (has_burst)
    bw_scope_readings_set (&readings, BW_SCOPE_BURST, noisy (bench, gain * signal->burst_v));
  return readings;
}
