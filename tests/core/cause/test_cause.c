/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/cause/cause-private.h"
#include "test_cause-case.h"

static BwCauseCase
ntsc_composite (void)
{
  BwCauseCase c;
  bw_cause_case_standard (BW_SYSTEM_NTSC_M, BW_SIGNAL_COMPOSITE, BW_SYNC_IN_VIDEO,
                          BW_CONDUCTOR_VIDEO, &c);
  bw_cause_case_time (&c, bw_test_raster ("525-59.94-interlaced"));
  return c;
}

/* SMPTE 170M: 63.5556 µs a line, of which 52.8556 are picture in 485 of 525 lines and 4.7 sync; three lines
 * of a field of 262.5 are broad pulses. V is sync for 3 / 262.5 of the time, H for 4.7 / 63.5556, both
 * together for what one has and of the rest the other. */
static void
test_time (void)
{
  const double broad = 3 / 262.5, line = 4.7 / 63.5556;
  static const BwConductor conductors[] = { BW_CONDUCTOR_V, BW_CONDUCTOR_H, BW_CONDUCTOR_VIDEO };
  const double sync_shares[] = { broad, line, broad + (1 - broad) * line };
  for (gsize i = 0; i < G_N_ELEMENTS (conductors); i++)
    {
      BwCauseCase c = { .conductor = conductors[i] };
      bw_cause_case_time (&c, bw_test_raster ("525-59.94-interlaced"));
      NEAR (c.time.active_s, 52.8556e-6, 1e-10);
      NEAR (c.time.picture_lines, 242.5, 0);
      NEAR (c.time.front_lines + c.time.sync_lines + c.time.back_lines, 20, 0);
      NEAR (c.picture_share, 52.8556 / 63.5556 * 485 / 525, 1e-6);
      NEAR (c.sync_share, sync_shares[i], 1e-6);
    }
}

/* A 75 Ω source: without load twice the level, two loads two thirds, three a half, 50 Ω four fifths
 * (voltage divider; SMPTE 170M 15.2: 75 Ω source and load, 2 V open circuit). */
typedef struct
{
  const char *name;
  double ratio;
  BwFaultKind kind;
  double ohm;
} LoadCase;

static const LoadCase load_cases[] = {
  { "unterminated", 2, BW_FAULT_UNTERMINATED, 10e3 },
  { "two", 2.0 / 3, BW_FAULT_TWO_LOADS, 37.5 },
  { "three", 0.5, BW_FAULT_THREE_LOADS, 25 },
  { "50-ohm", 0.8, BW_FAULT_50_OHM, 50 },
};

static void
test_load (gconstpointer data)
{
  const LoadCase *l = data;
  BwCauseCase c = ntsc_composite ();
  BwScopeReadings readings = { 0 };
  read_levels (&readings, l->ratio * 40 / 140, l->ratio * 100 / 140, l->ratio * 7.5 / 140,
               l->ratio * 40 / 140);
  BwCause cause = first_cause (&c, &readings);
  g_assert_true (cause.known);
  g_assert_cmpuint (cause.n_faults, ==, 1);
  g_assert_cmpint (cause.faults[0].kind, ==, l->kind);
  NEAR (cause.faults[0].ohm, l->ohm, 1e-9);
  NEAR (cause.faults[0].ratio, 2 * l->ohm / (l->ohm + 75), 1e-9);
  /* half of everything is a 6 dB pad as well */
  g_assert_true (cause.share > (l->kind == BW_FAULT_THREE_LOADS ? 0.4 : 0.5));
}

/* Where one fault explains every reading within its uncertainty (3 % of a level), no two are named: 1 % off
 * is enough for the reading, not for a pair that would fit still better. */
static void
test_no_pairs (void)
{
  BwCauseCase c = ntsc_composite ();
  BwScopeReadings readings = { 0 };
  read_levels (&readings, 0.505 * 2 * 40 / 70, 0.505 * 2 * 100 / 70, 0.5 * 2 * 7.5 / 70,
               0.5 * 2 * 40 / 70);
  g_autoptr (GArray) causes = bw_causes (&c, &readings);
  g_assert_cmpuint (causes->len, >, 0);
  for (guint i = 0; i < causes->len; i++)
    g_assert_cmpuint (g_array_index (causes, BwCause, i).n_faults, <=, 1);
}

/* ITU-R texts do not agree on SECAM's burst, so nothing is predicted of it on a conductor that may carry
 * one; luminance and green have none, and that is predicted. */
static void
test_burst_unknown (void)
{
  static const struct
  {
    BwSignal signal;
    BwConductor conductor;
    gboolean predicted;
  } cases[] = {
    { BW_SIGNAL_COMPOSITE, BW_CONDUCTOR_VIDEO, FALSE },
    { BW_SIGNAL_YC, BW_CONDUCTOR_C, FALSE },
    { BW_SIGNAL_YC, BW_CONDUCTOR_Y, TRUE },
    { BW_SIGNAL_LUMA, BW_CONDUCTOR_VIDEO, TRUE },
    { BW_SIGNAL_RGB, BW_CONDUCTOR_G, TRUE },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      BwCauseCase c;
      BwHypothesis h;
      BwPrediction prediction = { 0 };
      BwScopeReadings readings = { 0 };
      bw_cause_case_standard (BW_SYSTEM_SECAM_L, cases[i].signal, BW_SYNC_IN_VIDEO,
                              cases[i].conductor, &c);
      bw_cause_case_time (&c, bw_test_raster ("625-50-interlaced"));
      bw_hypothesis_init (&c, &h);
      bw_hypothesis_predict (&c, &readings, &h, &prediction);
      g_assert_cmpint ((prediction.predicts & BW_BIT (BW_SCOPE_BURST)) != 0, ==,
                       cases[i].predicted);
    }
}

/* A reading deviates in units of 3 % of the larger of the two (of 1 V, where that is more than 1 % of the
 * scale): 1 V against 1.1 V by 0.1 / 0.033. Below zero, and from either side, it is the same. */
static void
test_deviation (void)
{
  static const double pairs[][2] = { { 1, 1.1 }, { 1.1, 1 }, { -1, -1.1 }, { -1.1, -1 } };
  for (gsize i = 0; i < G_N_ELEMENTS (pairs); i++)
    {
      BwScopeReadings readings = { 0 };
      BwCause cause = { 0 };
      BwPrediction prediction = { .predicts = BW_BIT (BW_SCOPE_WHITE), .spread = { 1, 1 } };
      bw_scope_readings_set (&readings, BW_SCOPE_WHITE, pairs[i][0]);
      prediction.at[BW_SCOPE_WHITE] = (BwRange){ pairs[i][1], pairs[i][1] };
      double sum = bw_score_hold (&readings, &prediction, 1, &cause);
      NEAR (cause.deviation, 0.1 / 0.033, 1e-6);
      NEAR (sum, pow (0.1 / 0.033, 2), 1e-5);
      g_assert_cmpint (cause.worst, ==, BW_SCOPE_WHITE);
      g_assert_false (bw_score_agrees (&readings, BW_SCOPE_WHITE, &prediction, 1));
      prediction.at[BW_SCOPE_WHITE].low = -2;
      prediction.at[BW_SCOPE_WHITE].high = 2;
      g_assert_true (bw_score_agrees (&readings, BW_SCOPE_WHITE, &prediction, 1));
    }
}

/* The same in words: 2.00 times, +6.02 dB, less what 10 kΩ take. */
static void
test_load_says (void)
{
  BwCauseCase c = ntsc_composite ();
  BwScopeReadings readings = { 0 };
  c.input_ohm = 1e9;
  read_levels (&readings, 0.571, 1.43, 0.107, 0.571);
  BwCause cause = first_cause (&c, &readings);
  assert_says (&c, &readings, &cause,
               WORDS ("2.00 times", "+6.02\u00a0dB", "not terminated", "75", "1.43", "714"));
}

/* What each load is called, with 714 mV of white and 75 Ω: 50 Ω leave 0.8 of it, 571 mV; two loads 2/3, 476 mV;
 * three one half, 357 mV. */
static void
test_loads_say (void)
{
  static const struct
  {
    double ratio;
    const char *words[4];
  } cases[] = {
    { 0.8, { "0.80 times", "ends in 50", "75\u00a0Ω instead", "571" } },
    { 2.0 / 3, { "0.67 times", "terminated twice", "taking one 75", "476" } },
    { 0.5, { "0.50 times", "terminated three times", "taking two 75", "357" } },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      BwCauseCase c = ntsc_composite ();
      BwScopeReadings readings = { 0 };
      double r = cases[i].ratio / 140;
      read_levels (&readings, 40 * r, 100 * r, 7.5 * r, 40 * r);
      BwCause cause = first_cause (&c, &readings);
      assert_says (&c, &readings, &cause,
                   WORDS (cases[i].words[0], cases[i].words[1], cases[i].words[2],
                          cases[i].words[3], "714"));
    }
}

/* SMPTE 170M table 1: white 100 ± 1, setup 7.5 ± 1, sync and burst 40 ± 1 IRE. */
static void
test_within_standard (void)
{
  g_autoptr (GPtrArray) shipped = bw_limits_shipped ();
  BwCauseCase c = ntsc_composite ();
  BwScopeReadings readings = { 0 };
  c.limits = bw_limits_find (shipped, bw_system_facts (BW_SYSTEM_NTSC_M)->limits);
  read_levels (&readings, 40.9 / 140, 100.9 / 140, 8.4 / 140, 39.1 / 140);
  BwCause cause = first_cause (&c, &readings);
  g_assert_true (cause.known);
  g_assert_cmpuint (cause.n_faults, ==, 0);

  /* 625 lines' levels are outside of it: white 98 IRE, sync and burst 42 IRE */
  read_levels (&readings, 0.3, 0.7, 0, 0.3);
  cause = first_cause (&c, &readings);
  g_assert_cmpuint (cause.n_faults, ==, 1);
  g_assert_cmpint (cause.faults[0].kind, ==, BW_FAULT_OTHER_LEVELS);
  g_assert_cmpuint (cause.faults[0].which, ==, BW_LEVELS_7_3);
}

/* 7:3 against 10:4: 300 and 700 mV (ITU-R BT.1700 table 2) where 286 and 714 mV are set, and the
 * reverse. */
static void
test_other_standard (void)
{
  BwCauseCase c = pal_composite ();
  BwScopeReadings readings = { 0 };
  read_levels (&readings, 40.0 / 140, 100.0 / 140, 0, 40.0 / 140);
  BwCause cause = first_cause (&c, &readings);
  g_assert_cmpint (cause.faults[0].kind, ==, BW_FAULT_OTHER_LEVELS);
  g_assert_cmpuint (cause.faults[0].which, ==, BW_LEVELS_10_4);
  read_levels (&readings, 40.0 / 140, 100.0 / 140, 7.5 / 140, 40.0 / 140);
  cause = first_cause (&c, &readings);
  g_assert_cmpuint (cause.faults[0].which, ==, BW_LEVELS_10_4_SETUP);
  assert_says (&c, &readings, &cause, WORDS ("10:4", "714", "286", "700", "300"));
}

/* NTSC in Japan has no setup (ITU-R BT.1700 Part A note 1). */
static void
test_setup (void)
{
  BwCauseCase c = ntsc_composite ();
  BwScopeReadings readings = { 0 };
  read_levels (&readings, 40.0 / 140, 100.0 / 140, 0, 40.0 / 140);
  BwCause cause = first_cause (&c, &readings);
  g_assert_cmpint (cause.faults[0].kind, ==, BW_FAULT_SETUP_MISSING);
  assert_says (&c, &readings, &cause, WORDS ("7.5", "53.6"));

  bw_cause_case_standard (BW_SYSTEM_NTSC_J, BW_SIGNAL_COMPOSITE, BW_SYNC_IN_VIDEO,
                          BW_CONDUCTOR_VIDEO, &c);
  read_levels (&readings, 40.0 / 140, 100.0 / 140, 7.5 / 140, 40.0 / 140);
  cause = first_cause (&c, &readings);
  g_assert_cmpint (cause.faults[0].kind, ==, BW_FAULT_SETUP_ADDED);
}

/* SMPTE 170M table A.3: the white of 75 % bars stands at 76.875 IRE. */
static void
test_bars_75 (void)
{
  BwCauseCase c = ntsc_composite ();
  BwScopeReadings readings = { 0 };
  read_levels (&readings, 40.0 / 140, 76.875 / 140, 7.5 / 140, 40.0 / 140);
  BwCause cause = first_cause (&c, &readings);
  g_assert_cmpint (cause.faults[0].kind, ==, BW_FAULT_BARS_75);
  NEAR (cause.predicted[BW_SCOPE_WHITE].high, 76.875 / 140, 1e-9);
  assert_says (&c, &readings, &cause, WORDS ("75", "549", "714"));
}

static void
test_sync_elsewhere (void)
{
  BwCauseCase c;
  BwScopeReadings readings = { 0 };
  bw_cause_case_standard (BW_SYSTEM_NONE, BW_SIGNAL_RGB, BW_SYNC_ON_GREEN, BW_CONDUCTOR_R, &c);
  read_levels (&readings, 0.3, 0.7, 0, 0);
  BwCause cause = first_cause (&c, &readings);
  g_assert_cmpint (cause.faults[0].kind, ==, BW_FAULT_OTHER_CONDUCTOR);
  g_assert_cmpuint (cause.faults[0].which, ==, BW_CONDUCTOR_G);
  assert_says (&c, &readings, &cause, WORDS ("R", "G"));

  /* no sync on green: exchanged with R or B, or the source has it elsewhere; all told alike */
  c.conductor = BW_CONDUCTOR_G;
  read_levels (&readings, 0, 0.7, 0, 0);
  g_autoptr (GArray) causes = bw_causes (&c, &readings);
  guint found = 0;
  for (guint i = 0; i < causes->len; i++)
    {
      const BwCause *one = &g_array_index (causes, BwCause, i);
      if (one->n_faults == 1 && (i == 0 || one->alike))
        found |= BW_BIT (one->faults[0].kind);
    }
  g_assert_true (found & BW_BIT (BW_FAULT_OTHER_CONDUCTOR));
  g_assert_true (found & BW_BIT (BW_FAULT_OTHER_SYNC));
}

static void
test_inverted (void)
{
  BwCauseCase c = pal_composite ();
  BwScopeReadings readings = { 0 };
  bw_scope_readings_set (&readings, BW_SCOPE_SYNC, 0.3);
  bw_scope_readings_set (&readings, BW_SCOPE_POLARITY, 1);
  BwCause cause = first_cause (&c, &readings);
  g_assert_cmpint (cause.faults[0].kind, ==, BW_FAULT_INVERTED);
  NEAR (cause.predicted[BW_SCOPE_WHITE].low, -0.7, 1e-9);
}

/* Terminated twice, and with setup that should not be there: 2/3 of 300, 700 and 52.5 mV. */
static void
test_two_faults (void)
{
  BwCauseCase c = pal_composite ();
  BwScopeReadings readings = { 0 };
  read_levels (&readings, 0.2, 0.4667, 0.035, 0.2);
  BwCause cause = first_cause (&c, &readings);
  g_assert_cmpuint (cause.n_faults, ==, 2);
  guint kinds = BW_BIT (cause.faults[0].kind) | BW_BIT (cause.faults[1].kind);
  g_assert_cmpuint (kinds, ==, BW_BIT (BW_FAULT_TWO_LOADS) | BW_BIT (BW_FAULT_SETUP_ADDED));
  assert_says (&c, &readings, &cause, WORDS ("0.67 times", "twice", "52.5"));
}

static void
test_unknown (void)
{
  BwCauseCase c = pal_composite ();
  BwScopeReadings readings = { 0 };
  read_levels (&readings, 0.3, 0.09, 0, 0.3);
  BwCause cause = first_cause (&c, &readings);
  g_assert_false (cause.known);
  g_assert_cmpint (cause.worst, ==, BW_SCOPE_WHITE);
  assert_says (&c, &readings, &cause, WORDS ("White", "90", "700"));
}

static void
test_nothing_read (void)
{
  BwCauseCase c = pal_composite ();
  BwScopeReadings readings = { 0 };
  bw_scope_readings_set (&readings, BW_SCOPE_WHITE, NAN);
  g_autoptr (GArray) none = bw_causes (&c, &readings);
  g_assert_cmpuint (none->len, ==, 0);
  c.conductor = BW_CONDUCTOR_PB;
  bw_scope_readings_set (&readings, BW_SCOPE_WHITE, 0.7);
  g_autoptr (GArray) no_such = bw_causes (&c, &readings);
  g_assert_cmpuint (no_such->len, ==, 0);
}

static void
test_no_signal (void)
{
  BwCauseCase c = pal_composite ();
  BwScopeReadings readings = { 0 };
  read_levels (&readings, 0, 0, 0, 0);
  BwCause cause = first_cause (&c, &readings);
  g_assert_cmpint (cause.faults[0].kind, ==, BW_FAULT_NO_SIGNAL);
  bw_scope_readings_set (&readings, BW_SCOPE_LINE_TILT, 0); /* of nothing there is no tilt either */
  cause = first_cause (&c, &readings);
  g_assert_cmpint (cause.faults[0].kind, ==, BW_FAULT_NO_SIGNAL);
}

/* A tilt, or a pulse with a direction, is of something that arrives. A tilt of 10 %: white falls
 * by it, so white is there. */
static void
test_something_arrives (void)
{
  BwCauseCase c = ntsc_composite ();
  const struct
  {
    BwScopeReading reading;
    double value;
  } read[] = { { BW_SCOPE_FIELD_TILT, 0.1 },
               { BW_SCOPE_LINE_TILT, 0.1 },
               { BW_SCOPE_POLARITY, 1 } };

  for (gsize i = 0; i < G_N_ELEMENTS (read); i++)
    {
      BwScopeReadings readings = { 0 };
      c.capacitor_f = i == 0 ? 220e-6 : 0;
      bw_scope_readings_set (&readings, read[i].reading, read[i].value);
      g_autoptr (GArray) causes = bw_causes (&c, &readings);
      g_assert_cmpuint (causes->len, >, 0);
      for (guint k = 0; k < causes->len; k++)
        g_assert_cmpint (g_array_index (causes, BwCause, k).faults[0].kind, !=, BW_FAULT_NO_SIGNAL);
    }
}

/* 5 V × 75/(75 + 75) = 2.5 V (voltage divider): one fault, so none of two. */
static void
test_one_before_two (void)
{
  BwCauseCase c;
  BwScopeReadings readings = { 0 };
  bw_cause_case_standard (BW_SYSTEM_NTSC_M, BW_SIGNAL_RGB, BW_SYNC_COMPOSITE, BW_CONDUCTOR_SYNC,
                          &c);
  bw_scope_readings_set (&readings, BW_SCOPE_SYNC, 2.5);
  g_autoptr (GArray) causes = bw_causes (&c, &readings);
  const BwCause *first = &g_array_index (causes, BwCause, 0);
  g_assert_cmpuint (first->n_faults, ==, 1);
  g_assert_cmpint (first->faults[0].kind, ==, BW_FAULT_OTHER_DRIVE);
  g_assert_cmpuint (first->faults[0].which, ==, BW_DRIVE_LOGIC_75);
  for (guint i = 0; i < causes->len; i++)
    g_assert_cmpuint (g_array_index (causes, BwCause, i).n_faults, ==, 1);
}

/* A bar cannot fall below nothing, nor by more than itself; an amplitude has no sign. */
static void
test_refused (void)
{
  BwScopeReadings readings = { 0 };
  g_assert_false (bw_scope_readings_set (&readings, BW_SCOPE_FIELD_TILT, 1.5));
  g_assert_false (bw_scope_readings_set (&readings, BW_SCOPE_LINE_TILT, -0.05));
  g_assert_false (bw_scope_readings_set (&readings, BW_SCOPE_SYNC, -0.3));
  g_assert_false (bw_scope_readings_set (&readings, BW_SCOPE_BURST, -0.3));
  g_assert_cmpuint (readings.given, ==, 0);
  g_assert_true (bw_scope_readings_set (&readings, BW_SCOPE_WHITE, -0.7));
  g_assert_true (bw_scope_readings_set (&readings, BW_SCOPE_FIELD_TILT, 1));
}

/* Behind an attenuator of any preferred values a level may lie as far about the nominal one as the spread says,
 * above zero and below; beyond, and beyond 3 % of reading, it does not agree. */
static void
test_spread (void)
{
  static const double agree[] = { 1, 0.9, 1.1 }, differ[] = { 0.8, 1.2 };
  for (int sign = -1; sign <= 1; sign += 2)
    {
      BwPrediction prediction = { .predicts = BW_BIT (BW_SCOPE_WHITE), .spread = { 0.9, 1.1 } };
      BwScopeReadings readings = { 0 };
      prediction.at[BW_SCOPE_WHITE] = (BwRange){ sign, sign };
      for (gsize i = 0; i < G_N_ELEMENTS (agree); i++)
        {
          bw_scope_readings_set (&readings, BW_SCOPE_WHITE, sign * agree[i]);
          g_assert_true (bw_score_agrees (&readings, BW_SCOPE_WHITE, &prediction, 1));
        }
      for (gsize i = 0; i < G_N_ELEMENTS (differ); i++)
        {
          bw_scope_readings_set (&readings, BW_SCOPE_WHITE, sign * differ[i]);
          g_assert_false (bw_score_agrees (&readings, BW_SCOPE_WHITE, &prediction, 1));
        }
    }
}

/* TTL rests at its low of 0 V where its pulses point upwards, and at its high where they point downwards (common
 * practice, no source): the mean over the pulses is left out. */
static void
test_logic_rest (void)
{
  for (int positive = 0; positive < 2; positive++)
    {
      BwCauseCase c;
      BwHypothesis h;
      BwPrediction prediction = { 0 };
      BwScopeReadings readings = { 0 };
      bw_cause_case_standard (BW_SYSTEM_NONE, BW_SIGNAL_RGB, BW_SYNC_SEPARATE, BW_CONDUCTOR_H, &c);
      c.form.own_polarity[0] = positive ? BW_POLARITY_POSITIVE : BW_POLARITY_NEGATIVE;
      bw_hypothesis_init (&c, &h);
      bw_hypothesis_predict (&c, &readings, &h, &prediction);
      g_assert_true (prediction.predicts & BW_BIT (BW_SCOPE_DC));
      NEAR (prediction.at[BW_SCOPE_DC].low, positive ? 0 : prediction.at[BW_SCOPE_SYNC].low, 1e-9);
      NEAR (prediction.at[BW_SCOPE_POLARITY].low, positive ? 1 : -1, 1e-9);
    }
}

static gboolean
is_listed (const BwCauseCase *c, double white_v, BwFaultKind kind)
{
  BwScopeReadings readings = { 0 };
  gboolean found = FALSE;
  bw_scope_readings_set (&readings, BW_SCOPE_WHITE, white_v);
  g_autoptr (GArray) causes = bw_causes (c, &readings);
  for (guint i = 0; i < causes->len; i++)
    {
      const BwCause *cause = &g_array_index (causes, BwCause, i);
      found |= cause->known && cause->n_faults == 1 && cause->faults[0].kind == kind;
    }
  g_assert_cmpuint (causes->len, <=, 12);
  return found;
}

/* A fault explains a reading that is off by up to twice what a scope is read to, 3 % of the larger of the two (common
 * practice, no source): two loads leave 2/3 of 0.7 V. */
static void
test_explains (void)
{
  const BwCauseCase c = pal_composite ();
  const double two_v = 1.4 / 3;
  g_assert_true (is_listed (&c, two_v / (1 - 0.03 * 1.9), BW_FAULT_TWO_LOADS));
  g_assert_false (is_listed (&c, two_v / (1 - 0.03 * 2.1), BW_FAULT_TWO_LOADS));
  g_assert_true (is_listed (&c, two_v * (1 - 0.03 * 1.9), BW_FAULT_TWO_LOADS));
  g_assert_false (is_listed (&c, two_v * (1 - 0.03 * 2.1), BW_FAULT_TWO_LOADS));
}

/* What fits worse has less of a share: as exp (-1/2 of the difference of the sums of squares), for likelihoods go so.
 * Read is white between what two loads (466.7 mV) and three (350 mV) would leave, or bars of 75 % (525 mV): each is as
 * likely beforehand, so that the shares of two that are d and e uncertainties away are as exp ((e² - d²) / 2). */
static void
test_shares (void)
{
  const BwCauseCase c = pal_composite ();
  static const double predicted_v[BW_N_FAULTS] = { [BW_FAULT_TWO_LOADS] = 1.4 / 3,
                                                   [BW_FAULT_BARS_75] = 0.525 };
  const double read_v = 0.4955;
  BwScopeReadings readings = { 0 };
  double share[BW_N_FAULTS] = { 0 }, square[BW_N_FAULTS] = { 0 };
  bw_scope_readings_set (&readings, BW_SCOPE_WHITE, read_v);
  g_autoptr (GArray) causes = bw_causes (&c, &readings);
  for (guint i = 0; i < causes->len; i++)
    {
      const BwCause *cause = &g_array_index (causes, BwCause, i);
      double at_v = cause->n_faults == 1 ? predicted_v[cause->faults[0].kind] : 0;
      if (!(at_v > 0))
        continue;
      double off = (read_v - at_v) / (0.03 * fmax (read_v, at_v));
      NEAR (cause->deviation, fabs (off), 1e-9);
      share[cause->faults[0].kind] = cause->share;
      square[cause->faults[0].kind] = off * off;
    }
  g_assert_cmpfloat (share[BW_FAULT_TWO_LOADS], >, 0);
  g_assert_cmpfloat (share[BW_FAULT_BARS_75], >, 0);
  NEAR (share[BW_FAULT_BARS_75] / share[BW_FAULT_TWO_LOADS],
        exp ((square[BW_FAULT_TWO_LOADS] - square[BW_FAULT_BARS_75]) / 2), 1e-9);
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  for (gsize i = 0; i < G_N_ELEMENTS (load_cases); i++)
    {
      g_autofree char *path = g_strdup_printf ("/cause/load/%s", load_cases[i].name);
      g_test_add_data_func (path, &load_cases[i], test_load);
    }
  g_test_add_func ("/cause/time", test_time);
  g_test_add_func ("/cause/no-pairs", test_no_pairs);
  g_test_add_func ("/cause/burst-unknown", test_burst_unknown);
  g_test_add_func ("/cause/deviation", test_deviation);
  g_test_add_func ("/cause/load-says", test_load_says);
  g_test_add_func ("/cause/loads-say", test_loads_say);
  g_test_add_func ("/cause/within-standard", test_within_standard);
  g_test_add_func ("/cause/other-standard", test_other_standard);
  g_test_add_func ("/cause/setup", test_setup);
  g_test_add_func ("/cause/bars-75", test_bars_75);
  g_test_add_func ("/cause/sync-elsewhere", test_sync_elsewhere);
  g_test_add_func ("/cause/inverted", test_inverted);
  g_test_add_func ("/cause/two-faults", test_two_faults);
  g_test_add_func ("/cause/unknown", test_unknown);
  g_test_add_func ("/cause/nothing-read", test_nothing_read);
  g_test_add_func ("/cause/no-signal", test_no_signal);
  g_test_add_func ("/cause/something-arrives", test_something_arrives);
  g_test_add_func ("/cause/one-before-two", test_one_before_two);
  g_test_add_func ("/cause/explains", test_explains);
  g_test_add_func ("/cause/shares", test_shares);
  g_test_add_func ("/cause/refused", test_refused);
  g_test_add_func ("/cause/spread", test_spread);
  g_test_add_func ("/cause/logic-rest", test_logic_rest);
  return g_test_run ();
}
