/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/circuit/drive.h"

#include <math.h>

#include "support.h"

#define NEAR(a, b, tolerance) g_assert_true (bw_near (a, b, tolerance))

static void
add (const char *group, const char *name, gconstpointer data, GTestDataFunc func)
{
  g_autofree char *path = g_strdup_printf ("/drive/%s/%s", group, name);
  g_test_add_data_func (path, data, func);
}

/* Termination. A 75 Ω source is 2 V behind 75 Ω for a nominal 1 V (SMPTE 170M-2004 15.2: source,
 * cable and load are 75 Ω); the rest is the voltage divider 2 R / (R + 75). */

typedef struct
{
  const char *name;
  double load_ohm;
  double ratio;
  double tolerance;
} LoadCase;

static const LoadCase load_cases[] = {
  { "one-75-ohm", 75, 1.0, 1e-15 },
  { "none", INFINITY, 2.0, 1e-15 },
  { "two-75-ohm", 37.5, 0.6667, 0.5e-4 },
  { "three-75-ohm", 25, 0.5, 1e-15 },
  { "75-ohm-and-10-kilohm", 74.44168734491315, 0.9963, 0.5e-4 },
  { "50-ohm", 50, 0.8, 1e-15 },
};

static void
test_load (gconstpointer data)
{
  const LoadCase *c = data;
  double level_v = bw_level_at_load (1, BW_LOAD_75_OHM, 75, c->load_ohm);
  double sync_v = bw_level_at_load (0.3, BW_LOAD_75_OHM, 75, c->load_ohm);

  g_assert_true (bw_near (level_v, c->ratio, c->tolerance));
  g_assert_true (bw_near (sync_v, 0.3 * level_v, 1e-15)); /* sync goes with the picture */
}

/* A source without resistance of its own does not change with the load. */
static void
test_voltage_source (void)
{
  g_assert_cmpfloat (bw_level_at_load (0.7, BW_LOAD_75_OHM, 0, 75), ==, 0.7);
  g_assert_cmpfloat (bw_level_at_load (0.7, BW_LOAD_75_OHM, 0, 37.5), ==, 0.7);
  g_assert_cmpfloat (bw_level_at_load (5, BW_LOAD_OPEN, 0, 75), ==, 5);
}

/* Levels stated without load: 5 V behind 330 Ω and other values into 75 Ω give these volts
 * (divider 75/(75 + R)). */
static void
test_open_level (void)
{
  static const double cases[][2] = {
    { 330, 0.926 }, { 470, 0.688 }, { 1000, 0.349 }, { 1500, 0.238 }
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    g_assert_true (
        bw_near (bw_level_at_load (5, BW_LOAD_OPEN, cases[i][0], 75), cases[i][1], 0.5e-3));
}

static void
test_parallel (void)
{
  g_assert_cmpfloat (bw_parallel_ohm (75, 75), ==, 37.5);
  g_assert_true (bw_near (bw_parallel_ohm (75, 10e3), 74.44, 0.5e-2));
  g_assert_cmpfloat (bw_parallel_ohm (75, 10e3), ==, bw_parallel_ohm (10e3, 75));
}

/* Every drive: what it gives, into what, behind what, and in what shape. 0.3 V and ±0.3 V: ITU-R BT.1700,
 * SMPTE 274M; 4 V: an instrument maker's note; the others common practice, no source. Only logic has
 * thresholds. */
static void
test_drives (void)
{
  static const struct
  {
    double sync_v;
    BwStatedLoad stated;
    BwSyncShape shape;
    double driver_ohm;
    gboolean logic;
    gboolean common_practice;
  } drives[BW_N_SYNC_DRIVES] = {
    [BW_DRIVE_300_MV] = { 0.3, BW_LOAD_75_OHM, BW_SHAPE_BILEVEL, 75, FALSE, FALSE },
    [BW_DRIVE_1_V] = { 1, BW_LOAD_75_OHM, BW_SHAPE_BILEVEL, 75, FALSE, TRUE },
    [BW_DRIVE_2_V] = { 2, BW_LOAD_75_OHM, BW_SHAPE_BILEVEL, 75, FALSE, TRUE },
    [BW_DRIVE_4_V] = { 4, BW_LOAD_75_OHM, BW_SHAPE_BILEVEL, 75, FALSE, FALSE },
    [BW_DRIVE_LOGIC] = { 5, BW_LOAD_OPEN, BW_SHAPE_BILEVEL, 50, TRUE, TRUE },
    [BW_DRIVE_LOGIC_75] = { 5, BW_LOAD_OPEN, BW_SHAPE_BILEVEL, 75, TRUE, TRUE },
    [BW_DRIVE_TRILEVEL] = { 0.3, BW_LOAD_75_OHM, BW_SHAPE_TRILEVEL, 75, FALSE, FALSE },
  };
  for (BwSyncDrive drive = 0; drive < BW_N_SYNC_DRIVES; drive++)
    {
      const BwSyncDriveFacts *facts = bw_sync_drive_facts (drive);
      NEAR (facts->sync_v, drives[drive].sync_v, 0);
      g_assert_cmpint (facts->stated, ==, drives[drive].stated);
      g_assert_cmpint (facts->shape, ==, drives[drive].shape);
      NEAR (facts->driver_ohm, drives[drive].driver_ohm, 0);
      NEAR (facts->input_low_v, drives[drive].logic ? 0.8 : 0, 0);
      NEAR (facts->input_high_v, drives[drive].logic ? 2 : 0, 0);
      g_assert_cmpint (facts->common_practice, ==, drives[drive].common_practice);
    }
}

/* Input thresholds of a graphics adapter guide: low up to 0.8 V, high from 2.0 V. */
static void
test_thresholds (void)
{
  const BwSyncDriveFacts *logic = bw_sync_drive_facts (BW_DRIVE_LOGIC);
  NEAR (logic->input_low_v, 0.8, 1e-12);
  NEAR (logic->input_high_v, 2.0, 1e-12);
}

static double
drive_at_load (BwSyncDrive drive, double load_ohm)
{
  const BwSyncDriveFacts *facts = bw_sync_drive_facts (drive);
  return bw_level_at_load (facts->sync_v, facts->stated, facts->driver_ohm, load_ohm);
}

/* An instrument maker's note: early studio sync of 4 V into 75 Ω; without load twice as much from
 * 75 Ω (divider), with two loads two thirds. */
static void
test_at_load (void)
{
  NEAR (drive_at_load (BW_DRIVE_4_V, 75), 4, 1e-12);
  NEAR (drive_at_load (BW_DRIVE_4_V, 37.5), 4.0 * 2 / 3, 1e-12);
  NEAR (drive_at_load (BW_DRIVE_300_MV, INFINITY), 0.6, 1e-9);
}

/* What is stated without load falls with it, but not below what its own resistance leaves. */
static void
test_logic_at_load (void)
{
  const BwSyncDriveFacts *logic = bw_sync_drive_facts (BW_DRIVE_LOGIC);
  NEAR (drive_at_load (BW_DRIVE_LOGIC, 75), logic->sync_v * 75 / (75 + logic->driver_ohm), 1e-12);
}

/* Series resistors into a terminated 75 Ω input for 0.3 V: R = 75 (V / 0.3 − 1), the driver's own
 * resistance included (voltage divider; 0.3 V is the level of sync in ITU-R BT.1700). */

typedef struct
{
  const char *name;
  double open_v;
  double exact_ohm;
  double e12_ohm;
  double e12_v;
  double e24_ohm;
  double e24_v;
  double e96_ohm;
  double e96_v;
} AttenuatorCase;

static const AttenuatorCase attenuator_cases[] = {
  { "5-volt", 5.0, 1175, 1200, 0.2941, 1200, 0.2941, 1180, 0.2988 },
  { "4-volt", 4.0, 925, 1000, 0.2791, 910, 0.3046, 931, 0.2982 },
  { "3.4-volt", 3.4, 775, 820, 0.2849, 750, 0.3091, 768, 0.3025 },
  { "3.3-volt", 3.3, 750, 820, 0.2765, 750, 0.3000, 750, 0.3000 },
  { "2.4-volt", 2.4, 525, 560, 0.2835, 510, 0.3077, 523, 0.3010 },
  { "1-volt", 1.0, 175, 180, 0.2941, 180, 0.2941, 174, 0.3012 },
  { "0.6-volt", 0.6, 75, 82, 0.2866, 75, 0.3000, 75, 0.3000 },
};

static void
assert_preferred (double exact_ohm, BwSeries series, double open_v, double ohm, double level_v)
{
  double preferred_ohm = bw_preferred_value (exact_ohm, series);
  double got_v = bw_level_at_load (open_v, BW_LOAD_OPEN, preferred_ohm, 75);
  g_assert_true (bw_near (preferred_ohm, ohm, 1e-9 * ohm));
  g_assert_true (bw_near (got_v, level_v, 0.5e-4)); /* printed to 0.1 mV */
}

static void
test_attenuator (gconstpointer data)
{
  const AttenuatorCase *c = data;
  double ohm = bw_series_resistor_ohm (c->open_v, 0, 75, 0.3);

  g_assert_true (bw_near (ohm, c->exact_ohm, 1e-9));
  g_assert_true (bw_near (bw_series_resistor_ohm (c->open_v, 50, 75, 0.3), ohm - 50, 1e-9));
  assert_preferred (ohm, BW_SERIES_E12, c->open_v, c->e12_ohm, c->e12_v);
  assert_preferred (ohm, BW_SERIES_E24, c->open_v, c->e24_ohm, c->e24_v);
  assert_preferred (ohm, BW_SERIES_E96, c->open_v, c->e96_ohm, c->e96_v);
}

/* The peritelevision window for sync, 0.212 to 0.949 V (0.3 V −3/+10 dB), takes 320 to 1691 Ω from
 * 5 V. */
static void
test_window (void)
{
  double low_v = 0.3 * pow (10, -3 / 20.0), high_v = 0.3 * pow (10, 10 / 20.0);
  g_assert_true (bw_near (low_v, 0.212, 0.5e-3));
  g_assert_true (bw_near (high_v, 0.949, 0.5e-3));
  g_assert_true (bw_near (bw_series_resistor_ohm (5, 0, 75, high_v), 320, 0.5));
  g_assert_true (bw_near (bw_series_resistor_ohm (5, 0, 75, low_v), 1691, 1.5));
}

/* Too little to begin with: no resistor helps. */
static void
test_no_help (void)
{
  g_assert_cmpfloat (bw_series_resistor_ohm (0.3, 0, 75, 0.3), <=, 0);
  g_assert_cmpfloat (bw_series_resistor_ohm (0.2, 0, 75, 0.3), <, 0);
  g_assert_cmpfloat (bw_series_resistor_ohm (5, 5000, 75, 0.3), <, 0);
}

/* One load: 75 Ω with ten per cent (common practice). High impedance: more than 1 kΩ (common
 * practice: see the rule of the sync level). */
static void
test_loads (void)
{
  g_assert_true (bw_load_is_one (75));
  g_assert_true (bw_load_is_one (67.5));
  g_assert_true (bw_load_is_one (82.5));
  g_assert_false (bw_load_is_one (67.4));
  g_assert_false (bw_load_is_one (82.6));
  g_assert_false (bw_load_is_one (37.5));
  g_assert_false (bw_load_is_high (1000));
  g_assert_true (bw_load_is_high (1001));
  g_assert_true (bw_load_is_high (INFINITY));
}

/* The usual level where it is taken, else as many decibels from either end: √(1 × 2) V. */
static void
test_nominal (void)
{
  NEAR (bw_range_nominal ((BwRange){ 0.2, 1 }, 0.3), 0.3, 0);
  NEAR (bw_range_nominal ((BwRange){ 0.3, 0.3 }, 0.3), 0.3, 0);
  NEAR (bw_range_nominal ((BwRange){ 1, 2 }, 0.3), G_SQRT2, 1e-12);
  NEAR (bw_range_nominal ((BwRange){ 0.1, 0.2 }, 0.3), sqrt (0.02), 1e-12);
}

/* Sync on its own conductor, by hand: R = 75 (V / wanted − 1) − driver; the nearest of E24 (IEC
 * 60063); the level is the divider's. */

typedef struct
{
  const char *name;
  double open_v;
  double driver_ohm;
  double load_ohm;
  BwRange takes;
  gboolean helps;
  gboolean terminator;
  double exact_ohm;
  double resistor_ohm;
  double level_v;
} SyncCase;

static const SyncCase sync_cases[] = {
  /* 75 × (5 / 0.3 − 1) − 50 = 1125; 5 × 75 / (75 + 50 + 1100) */
  { "logic-into-75-ohm", 5, 50, 75, { 0.2, 1 }, TRUE, FALSE, 1125, 1100, 0.30612 },
  /* a terminator beside 10 kΩ is 74.4417 Ω: × 15.66667 − 50; 5 × 74.4417 / (74.4417 + 1150) */
  { "logic-into-10-kilohm", 5, 50, 10e3, { 0.2, 1 }, TRUE, TRUE, 1116.253, 1100, 0.30398 },
  /* √(1 × 2) = 1.41421 V: 75 × (5 / 1.41421 − 1) − 100 = 90.17; 5 × 75 / (75 + 100 + 91) */
  { "1-to-2-volts", 5, 100, 75, { 1, 2 }, TRUE, FALSE, 90.165, 91, 1.40977 },
  /* a load of 1 kΩ is no high impedance: 1000 × (5 / 0.3 − 1) − 50 */
  { "into-1-kilohm", 5, 50, 1000, { 0.2, 1 }, TRUE, FALSE, 15616.667, 16e3, 0.29326 },
  /* beside 1001 Ω it is 69.7723 Ω: × 15.66667 − 50; 5 × 69.7723 / (69.7723 + 1050) */
  { "into-1001-ohm", 5, 50, 1001, { 0.2, 1 }, TRUE, TRUE, 1043.099, 1000, 0.31155 },
  /* 3.4641 V cannot be had across 75 Ω behind 50 Ω, and 4.4 kΩ into 10 kΩ would smear the edges:
   * 2.2 × 3 kΩ × 150 pF of lead are a microsecond */
  { "3-to-4-volts-into-10-kilohm", 5, 50, 10e3, { 3, 4 }, FALSE, FALSE, 0, 0, 0 },
  /* √(1 × 2) V behind 390 Ω cannot be had across 75 Ω, but across 2.2 kΩ: 2200 × (2.4 / 1.41421 − 1)
   * − 390; (390 + 1143.5) Ω ∥ 2.2 kΩ is 904 Ω, less than 1 kΩ; 2.4 × 2200 / (2200 + 390 + 1100) */
  { "into-2.2-kilohm", 2.4, 390, 2200, { 1, 2 }, TRUE, FALSE, 1143.53, 1100, 1.43089 },
  /* 10 kΩ ∥ 6.97 kΩ is too much */
  { "into-10-kilohm-alone", 2.4, 390, 10e3, { 1, 2 }, FALSE, FALSE, 0, 0, 0 },
  { "3-to-4-volts-into-75-ohm", 5, 50, 75, { 3, 4 }, FALSE, FALSE, 0, 0, 0 },
  { "too-little", 0.2, 75, 75, { 0.3, 1 }, FALSE, FALSE, 0, 0, 0 },
};

static void
test_sync (gconstpointer data)
{
  const SyncCase *c = data;
  BwSyncAttenuator it;

  g_assert_cmpint (bw_sync_attenuator (c->open_v, c->driver_ohm, c->load_ohm, c->takes,
                                       BW_SERIES_E24, &it),
                   ==, c->helps);
  if (!c->helps)
    return;
  g_assert_cmpint (it.terminator, ==, c->terminator);
  NEAR (it.load_ohm, c->terminator ? 75 * c->load_ohm / (75 + c->load_ohm) : c->load_ohm, 1e-9);
  NEAR (it.exact_ohm, c->exact_ohm, 1e-2);
  NEAR (it.resistor_ohm, c->resistor_ohm, 1e-9 * c->resistor_ohm);
  NEAR (it.level_v, c->level_v, 0.5e-5);
}

/* The picture and the sync in it go through one attenuator. */
static void
test_pad_ratio (void)
{
  const BwRange video = { 0.5, 1 }, sync = { 0.2, 0.5 }, low = { 0.1, 0.2 };
  NEAR (bw_pad_ratio (0.7, &video, 0.3, &sync), 1, 0);
  NEAR (bw_pad_ratio (2, &video, 0.3, &sync), 0.35, 1e-12);
  NEAR (bw_pad_ratio (0.7, &video, 1, &sync), 0.3, 1e-12);
  NEAR (bw_pad_ratio (2, &video, 3, &sync), 0.1, 1e-12);
  /* from 1/3 to 1/2 serves both: 0.7 V of picture does; from 0.4 to 0.5: its middle */
  NEAR (bw_pad_ratio (2, &video, 0.6, &sync), 0.35, 1e-12);
  NEAR (bw_pad_ratio (2, &video, 0.5, &sync), sqrt (0.4 * 0.5), 1e-12);
  /* only what brings sync to 0.3 V leaves the picture where it is taken */
  NEAR (bw_pad_ratio (1.2, &video, 0.55, &sync), 0.7 / 1.2, 1e-12);
  NEAR (bw_pad_ratio (0.95, &video, 0.55, &sync), 0.3 / 0.55, 1e-12);
  NEAR (bw_pad_ratio (2, NULL, 3, NULL), 1, 0);
  NEAR (bw_pad_ratio (2, NULL, 0.3, &low), sqrt (0.02) / 0.3, 1e-12);
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  for (gsize i = 0; i < G_N_ELEMENTS (load_cases); i++)
    add ("load", load_cases[i].name, &load_cases[i], test_load);
  for (gsize i = 0; i < G_N_ELEMENTS (attenuator_cases); i++)
    add ("attenuator", attenuator_cases[i].name, &attenuator_cases[i], test_attenuator);
  for (gsize i = 0; i < G_N_ELEMENTS (sync_cases); i++)
    add ("sync", sync_cases[i].name, &sync_cases[i], test_sync);
  g_test_add_func ("/drive/voltage-source", test_voltage_source);
  g_test_add_func ("/drive/open-level", test_open_level);
  g_test_add_func ("/drive/parallel", test_parallel);
  g_test_add_func ("/drive/drives", test_drives);
  g_test_add_func ("/drive/thresholds", test_thresholds);
  g_test_add_func ("/drive/at-load", test_at_load);
  g_test_add_func ("/drive/logic-at-load", test_logic_at_load);
  g_test_add_func ("/drive/window", test_window);
  g_test_add_func ("/drive/no-help", test_no_help);
  g_test_add_func ("/drive/loads", test_loads);
  g_test_add_func ("/drive/nominal", test_nominal);
  g_test_add_func ("/drive/pad-ratio", test_pad_ratio);
  return g_test_run ();
}
