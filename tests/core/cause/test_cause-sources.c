/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Every source of the catalogue with every single fault, read with an error of 1 %: the fault must
 * come out first, or as one that the readings do not tell from the first. The readings are made
 * here, from the levels of the source and a voltage divider. */
#include "test_cause.h"

static gboolean
is_fault (const BwCause *cause, BwFaultKind kind, guint which)
{
  return cause->known && cause->n_faults == 1 && cause->faults[0].kind == kind
         && cause->faults[0].which == which;
}

static void
assert_found (const Bench *bench, const BwScopeReadings *readings, BwFaultKind kind, guint which)
{
  g_autoptr (GArray) causes = bw_causes (&bench->c, readings);
  for (guint i = 0; i < causes->len; i++)
    {
      const BwCause *cause = &g_array_index (causes, BwCause, i);
      if ((i == 0 || cause->alike) && is_fault (cause, kind, which))
        return;
      /* where it changes nothing that was read, there is none to find */
      if (i == 0 && cause->known && cause->n_faults == 0 && cause->deviation <= NOISE / 0.03 + 1e-9)
        return;
    }
  g_autofree char *first
      = causes->len > 0 ? bw_cause_says (&bench->c, readings,
                                         &g_array_index (causes, BwCause, 0), '.')
                        : g_strdup ("nothing");
  g_test_message ("%s, %s on %s (%u): found %s", bench->source->name, bw_kind_id (&bw_faults, kind),
                  bw_kind_id (&bw_conductors, bench->conductor), which, first);
  g_test_fail ();
}

static void
try_signal (const Bench *bench, const Signal *signal, double load_ohm, double series_ohm,
            BwFaultKind kind, guint which)
{
  for (int i = 0; i < DRAWS; i++)
    {
      BwScopeReadings readings = read_signal (bench, signal, load_ohm, series_ohm);
      assert_found (bench, &readings, kind, which);
    }
}

static void
try_right (const Bench *bench)
{
  Signal signal = signal_on (bench, bench->conductor);
  for (int i = 0; i < DRAWS; i++)
    {
      BwScopeReadings readings = read_signal (bench, &signal, bench->c.load_ohm, 0);
      g_autoptr (GArray) causes = bw_causes (&bench->c, &readings);
      g_assert_cmpuint (causes->len, >, 0);
      g_assert_true (g_array_index (causes, BwCause, 0).known);
      g_assert_cmpuint (g_array_index (causes, BwCause, 0).n_faults, ==, 0);
    }
}

static void
try_loads (const Bench *bench)
{
  Signal signal = signal_on (bench, bench->conductor);

  if (bench->c.load_ohm > 1000)
    {
      try_signal (bench, &signal, 1 / (1 / 75.0 + 1 / bench->c.load_ohm), 0, BW_FAULT_TERMINATED,
                  0);
      return;
    }
  try_signal (bench, &signal, bench->c.input_ohm, 0, BW_FAULT_UNTERMINATED, 0);
  try_signal (bench, &signal, 37.5, 0, BW_FAULT_TWO_LOADS, 0);
  try_signal (bench, &signal, 25, 0, BW_FAULT_THREE_LOADS, 0);
  try_signal (bench, &signal, 50, 0, BW_FAULT_50_OHM, 0);
}

/* 7:3 and 10:4 for one another, and setup where there is none or none where it is. */
static void
try_levels (const Bench *bench)
{
  Signal signal = signal_on (bench, bench->conductor);
  gboolean plain = bench->conductor <= BW_CONDUCTOR_Y || bench->conductor == BW_CONDUCTOR_VIDEO;
  gboolean seven = signal.white_v < 0.71;

  if (!plain)
    return;
  Signal other = signal;
  gboolean has_setup = signal.black_v > 0;
  other.black_v = has_setup ? 0 : 0.075 * signal.white_v;
  try_signal (bench, &other, 75, 0, has_setup ? BW_FAULT_SETUP_MISSING : BW_FAULT_SETUP_ADDED, 0);
  if (bench->source->signal == BW_SIGNAL_COMPONENT || signal.high_v > 0)
    return;
  other.white_v = seven ? 100.0 / 140 : 0.7;
  other.black_v = seven ? 7.5 / 140 : 0;
  if (signal.low_v < 0)
    other.low_v = seven ? -40.0 / 140 : -0.3;
  if (signal.burst_v > 0)
    other.burst_v = seven ? 40.0 / 140 : 0.3;
  try_signal (bench, &other, 75, 0, BW_FAULT_OTHER_LEVELS,
              seven ? BW_LEVELS_10_4_SETUP : BW_LEVELS_7_3);
}

static void
try_inverted (const Bench *bench)
{
  Signal signal = signal_on (bench, bench->conductor);
  Signal down = signal;
  gboolean tri = signal.low_v < 0 && signal.high_v > 0;

  if (bench->conductor == BW_CONDUCTOR_PB || bench->conductor == BW_CONDUCTOR_PR
      || bench->conductor == BW_CONDUCTOR_C || tri)
    return;
  down.white_v = -signal.white_v;
  down.black_v = -signal.black_v;
  down.low_v = -signal.high_v;
  down.high_v = -signal.low_v;
  try_signal (bench, &down, bench->c.load_ohm, 0, BW_FAULT_INVERTED, 0);
}

static void
try_wires (const Bench *bench)
{
  guint set = bw_signal_conductors (bench->source->signal, bench->sync);
  for (BwConductor other = 0; other < BW_N_CONDUCTORS; other++)
    if (other != bench->conductor && (set & BW_BIT (other)))
      {
        Signal signal = signal_on (bench, other);
        try_signal (bench, &signal, bench->c.load_ohm, 0, BW_FAULT_OTHER_CONDUCTOR, other);
      }
}

/* 4 V into 75 Ω from 75 Ω where something else should be. */
static void
try_drive (const Bench *bench)
{
  Signal signal = signal_on (bench, bench->conductor);
  if (!bw_conductor_is_sync_alone (bench->conductor))
    return;
  gboolean up = signal.high_v > 0;
  Signal other = { .low_v = up ? 0 : -4, .high_v = up ? 4 : 0, .source_ohm = 75 };
  try_signal (bench, &other, bench->c.load_ohm, 0, BW_FAULT_OTHER_DRIVE, BW_DRIVE_4_V);
}

/* A.c. coupled through 100 µF around 150 Ω, unclamped, with a grey picture: blanking stands at
 * minus the mean of the waveform. A white field, blanked for the rest of the time, falls by
 * A (1 − exp (−T1/(R C))) (1 − exp (−T2/(R C))) / (1 − exp (−T/(R C))), where A is white for a part of the line
 * (the swing of a charge that repeats; without the little that sync does). */
static void
try_coupling (const Bench *bench)
{
  Signal signal = signal_on (bench, bench->conductor);
  BwRasterFigures figures;

  if (bw_conductor_is_sync_alone (bench->conductor) || bench->source->coupling == BW_COUPLING_AC)
    return;
  bw_raster_figures (bench->raster, &figures);
  double constant_s = 150 * 100e-6;
  double field_s = figures.lines_per_field * figures.line_period_s;
  double active_s = figures.v_active_lines * figures.line_period_s;
  double swing = figures.h_active_s / figures.line_period_s * expm1 (-active_s / constant_s)
                 * expm1 ((active_s - field_s) / constant_s) / -expm1 (-field_s / constant_s);
  for (int i = 0; i < DRAWS; i++)
    {
      BwScopeReadings readings = read_signal (bench, &signal, 75, 0);
      bw_scope_readings_set (&readings, BW_SCOPE_DC,
                             noisy (bench, -0.5 * signal.white_v * figures.h_active_s
                                               / figures.line_period_s));
      bw_scope_readings_set (&readings, BW_SCOPE_FIELD_TILT,
                             noisy (bench, swing));
      assert_found (bench, &readings, BW_FAULT_AC_COUPLED, 0);
    }
}

/* Sync on green, or on Y, where it should be elsewhere, and the reverse. */
static void
try_sync (const Bench *bench)
{
  Signal signal = signal_on (bench, bench->conductor);
  gboolean carries = bench->sync == BW_SYNC_ON_GREEN || bench->sync == BW_SYNC_ON_Y;

  if (bench->conductor != BW_CONDUCTOR_G && bench->conductor != BW_CONDUCTOR_Y)
    return;
  if (bench->source->signal == BW_SIGNAL_YC || signal.high_v > 0)
    return;
  if (carries)
    {
      signal.low_v = 0;
      try_signal (bench, &signal, 75, 0, BW_FAULT_OTHER_SYNC, BW_SYNC_SEPARATE);
      return;
    }
  signal.low_v = -0.3;
  try_signal (bench, &signal, 75, 0, BW_FAULT_OTHER_SYNC,
              bench->conductor == BW_CONDUCTOR_G ? BW_SYNC_ON_GREEN : BW_SYNC_ON_Y);
}

/* Bars of 75 % where full ones are looked for. */
static void
try_bars (const Bench *bench)
{
  Signal signal = signal_on (bench, bench->conductor);
  if (bw_conductor_is_sync_alone (bench->conductor))
    return;
  signal.white_v = signal.black_v + 0.75 * (signal.white_v - signal.black_v);
  try_signal (bench, &signal, 75, 0, BW_FAULT_BARS_75, 0);
}

static void
try_all (gconstpointer data)
{
  Bench bench = *(const Bench *) data;

  bench.rand = g_rand_new_with_seed (170);
  bw_cause_case_of_input (bench.source, NULL, bench.raster, bench.sync, bench.conductor, &bench.c);
  try_right (&bench);
  try_loads (&bench);
  try_levels (&bench);
  try_inverted (&bench);
  try_wires (&bench);
  try_drive (&bench);
  try_coupling (&bench);
  try_sync (&bench);
  try_bars (&bench);
  g_rand_free (bench.rand);
}

static void
add_source (const BwSource *source, BwSyncKind sync)
{
  guint set = bw_signal_conductors (source->signal, sync);
  for (BwConductor conductor = 0; conductor < BW_N_CONDUCTORS; conductor++)
    {
      if (!(set & BW_BIT (conductor)))
        continue;
      Bench *bench = g_new0 (Bench, 1);
      *bench = (Bench){ .source = source,
                        .raster = bw_test_raster (source->raster),
                        .sync = sync,
                        .conductor = conductor };
      g_autofree char *path = g_strdup_printf ("/cause-sources/%s/%s/%s", source->id,
                                               bw_kind_id (&bw_sync_kinds, sync),
                                               bw_kind_id (&bw_conductors, conductor));
      g_test_add_data_func_full (path, bench, try_all, g_free);
    }
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  GPtrArray *sources = bw_catalogue_sources (bw_test_catalogue ());
  for (guint i = 0; i < sources->len; i++)
    for (BwSyncKind sync = 0; sync < BW_N_SYNC_KINDS; sync++)
      if (((const BwSource *) sources->pdata[i])->syncs & BW_BIT (sync))
        add_source (sources->pdata[i], sync);
  return g_test_run ();
}
