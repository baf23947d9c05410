/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What each fault makes of every level, which faults are thought of, and how far a reading may be off: by the
 * voltage divider, by the mean and the time constant of a capacitor, and by the levels of ITU-R BT.1700,
 * BT.470-6 and SMPTE 170M. */
#include "core/cause/cause-private.h"

#include <math.h>

#include "support.h"

#define NEAR(a, b, tolerance) g_assert_true (bw_near (a, b, tolerance))

#define NTSC_WHITE_V (100.0 / 140)
#define NTSC_SETUP_V (7.5 / 140)

static BwCauseCase
standard_case (BwColourSystem system, BwSignal signal, BwSyncKind sync, BwConductor conductor)
{
  BwCauseCase c;
  bw_cause_case_standard (system, signal, sync, conductor, &c);
  bw_cause_case_time (&c, bw_test_raster (system == BW_SYSTEM_NTSC_M ? "525-59.94-interlaced"
                                                                     : "625-50-interlaced"));
  return c;
}

static BwPrediction
predicted (const BwCauseCase *c, const BwFault *fault, const BwScopeReadings *readings,
           BwHypothesis *h)
{
  BwPrediction prediction;
  bw_hypothesis_init (c, h);
  if (fault != NULL)
    bw_hypothesis_apply (fault, h);
  bw_hypothesis_predict (c, readings, h, &prediction);
  return prediction;
}

static double
middle (const BwPrediction *prediction, BwScopeReading reading)
{
  g_assert_true (prediction->predicts & BW_BIT (reading));
  return (prediction->at[reading].low + prediction->at[reading].high) / 2;
}

/* PAL: 300, 700, 0 and 300 mV from 75 Ω into 75 Ω. Two loads leave 2/3, three 1/2, 50 Ω 0.8 and 10 kΩ
 * 2 × 10000 / 10075 of a level. Bars of 75 % leave 3/4 of what lies above black. */
static void
test_faults (void)
{
  static const struct
  {
    BwFault fault;
    double sync_v, white_v, black_v, burst_v, polarity;
  } cases[] = {
    { { .kind = BW_FAULT_NONE }, 0.3, 0.7, 0, 0.3, -1 },
    { { .kind = BW_FAULT_TWO_LOADS, .ohm = 37.5 }, 0.2, 1.4 / 3, 0, 0.2, -1 },
    { { .kind = BW_FAULT_THREE_LOADS, .ohm = 25 }, 0.15, 0.35, 0, 0.15, -1 },
    { { .kind = BW_FAULT_50_OHM, .ohm = 50 }, 0.24, 0.56, 0, 0.24, -1 },
    { { .kind = BW_FAULT_50_OHM, .ohm = 0.5 }, 0.3 / 75.5, 0.7 / 75.5, 0, 0.3 / 75.5, -1 },
    { { .kind = BW_FAULT_UNTERMINATED, .ohm = 10e3 },
      6000.0 / 10075,
      14000.0 / 10075,
      0,
      6000.0 / 10075,
      -1 },
    { { .kind = BW_FAULT_SETUP_ADDED }, 0.3, 0.7, 0.0525, 0.3, -1 },
    { { .kind = BW_FAULT_OTHER_LEVELS, .which = BW_LEVELS_10_4_SETUP },
      40.0 / 140,
      NTSC_WHITE_V,
      NTSC_SETUP_V,
      40.0 / 140,
      -1 },
    { { .kind = BW_FAULT_BARS_75 }, 0.3, 0.525, 0, 0.3, -1 },
    { { .kind = BW_FAULT_INVERTED }, 0.3, -0.7, 0, 0.3, 1 },
  };
  const BwCauseCase c = standard_case (BW_SYSTEM_PAL_B, BW_SIGNAL_COMPOSITE, BW_SYNC_IN_VIDEO,
                                       BW_CONDUCTOR_VIDEO);
  const BwScopeReadings readings = { 0 };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      BwHypothesis h;
      BwPrediction p = predicted (&c, &cases[i].fault, &readings, &h);
      NEAR (middle (&p, BW_SCOPE_SYNC), cases[i].sync_v, 1e-9);
      NEAR (middle (&p, BW_SCOPE_WHITE), cases[i].white_v, 1e-9);
      NEAR (middle (&p, BW_SCOPE_BLACK), cases[i].black_v, 1e-9);
      NEAR (middle (&p, BW_SCOPE_BURST), cases[i].burst_v, 1e-9);
      NEAR (middle (&p, BW_SCOPE_POLARITY), cases[i].polarity, 1e-9);
      NEAR (middle (&p, BW_SCOPE_DC), 0, 1e-9);
      NEAR (middle (&p, BW_SCOPE_LINE_TILT), 0, 1e-12);
    }
}

/* NTSC: bars of 75 % keep setup: 53.57 + 0.75 × 660.71 mV. Nothing arrives behind a short, and that has neither
 * direction nor tilt. */
static void
test_setup_and_short (void)
{
  const BwCauseCase c = standard_case (BW_SYSTEM_NTSC_M, BW_SIGNAL_COMPOSITE, BW_SYNC_IN_VIDEO,
                                       BW_CONDUCTOR_VIDEO);
  const BwScopeReadings readings = { 0 };
  BwHypothesis h;
  BwPrediction p = predicted (&c, &(BwFault){ .kind = BW_FAULT_BARS_75 }, &readings, &h);
  NEAR (middle (&p, BW_SCOPE_WHITE), NTSC_SETUP_V + 0.75 * (NTSC_WHITE_V - NTSC_SETUP_V), 1e-9);
  NEAR (middle (&p, BW_SCOPE_BLACK), NTSC_SETUP_V, 1e-9);
  p = predicted (&c, &(BwFault){ .kind = BW_FAULT_SETUP_MISSING }, &readings, &h);
  NEAR (middle (&p, BW_SCOPE_BLACK), 0, 1e-9);
  NEAR (middle (&p, BW_SCOPE_WHITE), NTSC_WHITE_V, 1e-9);
  p = predicted (&c, &(BwFault){ .kind = BW_FAULT_NO_SIGNAL }, &readings, &h);
  NEAR (middle (&p, BW_SCOPE_WHITE), 0, 0);
  NEAR (middle (&p, BW_SCOPE_SYNC), 0, 0);
  g_assert_false (
      p.predicts
      & (BW_BIT (BW_SCOPE_POLARITY) | BW_BIT (BW_SCOPE_LINE_TILT) | BW_BIT (BW_SCOPE_FIELD_TILT)));
}

/* 625 lines: picture for 52 / 64 of 575 / 625 of the time, 0.7475; sync for 2.5 of 312.5 lines and 4.7 / 64 of the
 * rest, 0.08085. Behind a capacitor the mean is zero: blanking stands at 0.02426 V under black, at
 * −0.7475 × 0.7 + 0.02426 = −0.49900 V under white. Around 150 Ω 220 µF give a steady white field a tilt of
 * 0.04491 % over the line and 3.744 to 3.760 % over the field, 100 µF 0.0975 % and 8.159 to 8.199 %: simulated over
 * whole frames by tests/core/circuit/coupling_check.py, each field first, of the case
 * 150 220e-6 64e-6 10.5e-6 62.5e-6 4.7e-6 0 575 5 5 40 575 5 5 40 4.7e-6 0.7 0 -0.3 1. */
static void
test_floating (void)
{
  const BwCauseCase c = standard_case (BW_SYSTEM_PAL_B, BW_SIGNAL_COMPOSITE, BW_SYNC_IN_VIDEO,
                                       BW_CONDUCTOR_VIDEO);
  const BwFault coupled = { .kind = BW_FAULT_AC_COUPLED, .farad = 220e-6 };
  const BwScopeReadings none = { 0 };
  BwHypothesis h;
  BwPrediction p = predicted (&c, &coupled, &none, &h);
  NEAR (p.at[BW_SCOPE_DC].high, 0.3 * 0.08085, 1e-6);
  NEAR (p.at[BW_SCOPE_DC].low, -0.7475 * 0.7 + 0.3 * 0.08085, 1e-6);
  NEAR (middle (&p, BW_SCOPE_LINE_TILT), 4.4915e-4, 1e-6);
  NEAR (middle (&p, BW_SCOPE_FIELD_TILT), 0.03752, 2e-4);
}

/* The capacitor that a tilt tells of: that over the field before that over the line; none of no tilt. */
static void
test_capacitor (void)
{
  const BwCauseCase c = standard_case (BW_SYSTEM_PAL_B, BW_SIGNAL_COMPOSITE, BW_SYNC_IN_VIDEO,
                                       BW_CONDUCTOR_VIDEO);
  const BwFault coupled = { .kind = BW_FAULT_AC_COUPLED };
  BwScopeReadings readings = { 0 };
  BwHypothesis h;
  BwPrediction p = predicted (&c, &coupled, &readings, &h);
  g_assert_false (p.predicts & BW_BIT (BW_SCOPE_FIELD_TILT));
  bw_scope_readings_set (&readings, BW_SCOPE_LINE_TILT, 4.4915e-4);
  predicted (&c, &coupled, &readings, &h);
  NEAR (h.capacitor_f, 220e-6, 1e-6);
  bw_scope_readings_set (&readings, BW_SCOPE_FIELD_TILT, 0.0818);
  predicted (&c, &coupled, &readings, &h);
  NEAR (h.capacitor_f, 100e-6, 1e-6);
  bw_scope_readings_set (&readings, BW_SCOPE_FIELD_TILT, 1);
  predicted (&c, &coupled, &readings, &h);
  NEAR (h.capacitor_f, 220e-6, 1e-6);
}

/* Composite sync of 0.3 V and 75 Ω stands at 0 V between its pulses; 5 V logic behind 50 Ω and 1.2 kΩ leaves
 * 5 × 75 / 1325 V across 75 Ω. */
static void
test_own_sync (void)
{
  const BwScopeReadings readings = { 0 };
  BwHypothesis h;
  BwCauseCase c = standard_case (BW_SYSTEM_NONE, BW_SIGNAL_RGB, BW_SYNC_COMPOSITE,
                                 BW_CONDUCTOR_SYNC);
  BwPrediction p = predicted (&c, NULL, &readings, &h);
  NEAR (middle (&p, BW_SCOPE_SYNC), 0.3, 1e-9);
  NEAR (middle (&p, BW_SCOPE_DC), 0, 1e-9);
  g_assert_false (p.predicts & BW_BIT (BW_SCOPE_LINE_TILT));
  c = standard_case (BW_SYSTEM_NONE, BW_SIGNAL_RGB, BW_SYNC_SEPARATE, BW_CONDUCTOR_H);
  c.load_ohm = 75;
  p = predicted (&c, &(BwFault){ .kind = BW_FAULT_ATTENUATOR_ADDED, .ohm = 1200 }, &readings, &h);
  NEAR (middle (&p, BW_SCOPE_SYNC), 5 * 75 / 1325.0, 1e-9);
  p = predicted (&c, &(BwFault){ .kind = BW_FAULT_OTHER_DRIVE, .which = BW_DRIVE_4_V }, &readings,
                 &h);
  NEAR (middle (&p, BW_SCOPE_SYNC), 4, 1e-9);
  c.series_ohm = 1200;
  p = predicted (&c, &(BwFault){ .kind = BW_FAULT_ATTENUATOR_MISSING }, &readings, &h);
  NEAR (middle (&p, BW_SCOPE_SYNC), 3, 1e-9);
}

/* The source's own d.c. is divided as its levels are. Behind an attenuator of 75 Ω it is driven from 75 Ω, whatever
 * the source's own resistance: into 10 kΩ 2 × 10000 / 10075 of what it would be into 75 Ω. */
static void
test_offset_and_pad (void)
{
  const BwScopeReadings readings = { 0 };
  const BwFault two = { .kind = BW_FAULT_TWO_LOADS, .ohm = 37.5 };
  const BwFault open = { .kind = BW_FAULT_UNTERMINATED, .ohm = 10e3 };
  BwHypothesis h;
  BwCauseCase c = standard_case (BW_SYSTEM_PAL_B, BW_SIGNAL_COMPOSITE, BW_SYNC_IN_VIDEO,
                                 BW_CONDUCTOR_VIDEO);
  c.dc_v = 1.5;
  BwPrediction p = predicted (&c, NULL, &readings, &h);
  NEAR (middle (&p, BW_SCOPE_DC), 1.5, 1e-9);
  p = predicted (&c, &two, &readings, &h);
  NEAR (middle (&p, BW_SCOPE_DC), 1, 1e-9);
  c.source_ohm = 0;
  c.pad_ratio = 0.5;
  p = predicted (&c, NULL, &readings, &h);
  NEAR (middle (&p, BW_SCOPE_WHITE), 0.35, 1e-9);
  p = predicted (&c, &open, &readings, &h);
  NEAR (middle (&p, BW_SCOPE_WHITE), 0.35 * 20000 / 10075, 1e-9);
  p = predicted (&c, &(BwFault){ .kind = BW_FAULT_ATTENUATOR_MISSING }, &readings, &h);
  NEAR (middle (&p, BW_SCOPE_WHITE), 0.7, 1e-9);
}

/* A resistor in the lead is part of what the capacitor works around: 50 + 1000 + 75 Ω and 220 µF give a white field
 * 6.012e-5 over the line, 10 kΩ 6.764e-6 (tests/core/circuit/coupling_check.py, the case of test_floating). */
static void
test_loop (void)
{
  const BwFault coupled = { .kind = BW_FAULT_AC_COUPLED, .farad = 220e-6 };
  const BwScopeReadings readings = { 0 };
  BwHypothesis h;
  BwCauseCase c = standard_case (BW_SYSTEM_PAL_B, BW_SIGNAL_COMPOSITE, BW_SYNC_IN_VIDEO,
                                 BW_CONDUCTOR_VIDEO);
  c.source_ohm = 50;
  c.series_ohm = 1000;
  BwPrediction p = predicted (&c, &coupled, &readings, &h);
  NEAR (middle (&p, BW_SCOPE_LINE_TILT), 6.012e-5, 3e-7);
  c.coupling_ohm = 10e3; /* where it is known */
  p = predicted (&c, &coupled, &readings, &h);
  NEAR (middle (&p, BW_SCOPE_LINE_TILT), 6.764e-6, 3e-8);
}

static guint
count (const BwCauseCase *c, BwFaultKind kind)
{
  g_autoptr (GArray) all = bw_hypotheses_new (c);
  guint n = 0;
  for (guint i = 0; i < all->len; i++)
    {
      const BwHypothesis *h = &g_array_index (all, BwHypothesis, i);
      n += h->n_faults == 1 && h->faults[0].kind == kind;
    }
  return n;
}

/* An input of little more than 75 Ω cannot be told from one that is terminated. Levels of another standard are
 * those that differ, up or down: of 1 V of white and 0.3 V of sync all four do. */
static void
test_what_differs (void)
{
  BwCauseCase c = standard_case (BW_SYSTEM_PAL_B, BW_SIGNAL_COMPOSITE, BW_SYNC_IN_VIDEO,
                                 BW_CONDUCTOR_VIDEO);
  c.input_ohm = 140;
  g_assert_cmpuint (count (&c, BW_FAULT_UNTERMINATED), ==, 0);
  c.input_ohm = 160;
  g_assert_cmpuint (count (&c, BW_FAULT_UNTERMINATED), ==, 1);
  c.form.white_v = 1;
  g_assert_cmpuint (count (&c, BW_FAULT_OTHER_LEVELS), ==, 4);
  c.form.white_v = 0.7;
  c.form.sync_v = 0.6;
  g_assert_cmpuint (count (&c, BW_FAULT_OTHER_LEVELS), ==, 4);
  BwCauseCase h = standard_case (BW_SYSTEM_NONE, BW_SIGNAL_RGB, BW_SYNC_SEPARATE, BW_CONDUCTOR_H);
  g_assert_cmpuint (count (&h, BW_FAULT_OTHER_DRIVE), ==, 4);
  h.form.own_sync_v = 3.3; /* 5 V logic is another */
  g_assert_cmpuint (count (&h, BW_FAULT_OTHER_DRIVE), ==, 6);
  BwCauseCase sync = standard_case (BW_SYSTEM_NONE, BW_SIGNAL_RGB, BW_SYNC_COMPOSITE,
                                    BW_CONDUCTOR_SYNC);
  guint others = count (&sync, BW_FAULT_OTHER_DRIVE); /* than 0.3 V into 75 Ω */
  sync.form.own_sync_v = 4;                           /* than 4 V into 75 Ω, 0.3 V among them */
  g_assert_cmpuint (count (&sync, BW_FAULT_OTHER_DRIVE), ==, others);
  sync.form.own_sync_v = 1.5; /* which none of them is */
  g_assert_cmpuint (count (&sync, BW_FAULT_OTHER_DRIVE), ==, others + 1);
  c.series_ohm = 0.5; /* whatever stands in the lead may be missing */
  g_assert_cmpuint (count (&c, BW_FAULT_ATTENUATOR_MISSING), ==, 1);
}

typedef struct
{
  BwSignal signal;
  BwSyncKind sync;
  BwConductor conductor;
  guint n[BW_N_FAULTS]; /* single faults that are thought of */
} Choices;

/* A signal on both sides of zero has no upside down. Logic into no load can be terminated, the others can lack or
 * have one load more; the sync of a picture may be on another
 * conductor. Sync alone has drives instead of levels, and no picture. */
static const Choices choices[] = {
  { BW_SIGNAL_COMPOSITE,
    BW_SYNC_IN_VIDEO,
    BW_CONDUCTOR_VIDEO,
    { [BW_FAULT_UNTERMINATED] = 1,
      [BW_FAULT_TWO_LOADS] = 1,
      [BW_FAULT_THREE_LOADS] = 1,
      [BW_FAULT_50_OHM] = 1,
      [BW_FAULT_NO_SIGNAL] = 1,
      [BW_FAULT_OTHER_LEVELS] = 3,
      [BW_FAULT_SETUP_ADDED] = 1,
      [BW_FAULT_BARS_75] = 1,
      [BW_FAULT_ATTENUATOR_ADDED] = 4,
      [BW_FAULT_OTHER_SYNC] = 1,
      [BW_FAULT_INVERTED] = 1,
      [BW_FAULT_AC_COUPLED] = 1,
      [BW_FAULT_DC_OFFSET] = 1 } },
  { BW_SIGNAL_RGB,
    BW_SYNC_SEPARATE,
    BW_CONDUCTOR_H,
    { [BW_FAULT_TERMINATED] = 1,
      [BW_FAULT_NO_SIGNAL] = 1,
      [BW_FAULT_OTHER_DRIVE] = 4,
      [BW_FAULT_INVERTED] = 1,
      [BW_FAULT_OTHER_CONDUCTOR] = 4,
      [BW_FAULT_ATTENUATOR_ADDED] = 1,
      [BW_FAULT_AC_COUPLED] = 1,
      [BW_FAULT_DC_OFFSET] = 1 } },
  { BW_SIGNAL_COMPONENT,
    BW_SYNC_ON_Y,
    BW_CONDUCTOR_PB,
    { [BW_FAULT_UNTERMINATED] = 1,
      [BW_FAULT_TWO_LOADS] = 1,
      [BW_FAULT_THREE_LOADS] = 1,
      [BW_FAULT_50_OHM] = 1,
      [BW_FAULT_NO_SIGNAL] = 1,
      [BW_FAULT_OTHER_LEVELS] = 2,
      [BW_FAULT_SETUP_ADDED] = 1,
      [BW_FAULT_BARS_75] = 1,
      [BW_FAULT_ATTENUATOR_ADDED] = 4,
      [BW_FAULT_OTHER_CONDUCTOR] = 2,
      [BW_FAULT_AC_COUPLED] = 1,
      [BW_FAULT_DC_OFFSET] = 1 } },
  { BW_SIGNAL_YC,
    BW_SYNC_IN_VIDEO,
    BW_CONDUCTOR_C,
    { [BW_FAULT_UNTERMINATED] = 1,
      [BW_FAULT_TWO_LOADS] = 1,
      [BW_FAULT_THREE_LOADS] = 1,
      [BW_FAULT_50_OHM] = 1,
      [BW_FAULT_NO_SIGNAL] = 1,
      [BW_FAULT_OTHER_LEVELS] = 3,
      [BW_FAULT_SETUP_ADDED] = 1,
      [BW_FAULT_BARS_75] = 1,
      [BW_FAULT_ATTENUATOR_ADDED] = 4,
      [BW_FAULT_OTHER_CONDUCTOR] = 1,
      [BW_FAULT_AC_COUPLED] = 1,
      [BW_FAULT_DC_OFFSET] = 1 } },
};

static guint
place_of (const GArray *all, const BwFault *fault)
{
  for (guint i = 0; i < all->len; i++)
    {
      const BwFault *one = &g_array_index (all, BwHypothesis, i).faults[0];
      if (one->kind == fault->kind && one->which == fault->which)
        return i;
    }
  g_assert_not_reached ();
}

static void
test_choices (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (choices); i++)
    {
      guint n[BW_N_FAULTS] = { 0 };
      const BwCauseCase c = standard_case (BW_SYSTEM_PAL_B, choices[i].signal, choices[i].sync,
                                           choices[i].conductor);
      g_autoptr (GArray) all = bw_hypotheses_new (&c);
      for (guint j = 0; j < all->len; j++)
        {
          const BwHypothesis *h = &g_array_index (all, BwHypothesis, j);
          if (h->n_faults == 1)
            n[h->faults[0].kind]++;
          else /* nothing is added to nothing, and of two faults the one that is thought of first is named first */
            {
              g_assert_true (h->faults[0].kind != BW_FAULT_NO_SIGNAL
                             && h->faults[0].kind != h->faults[1].kind);
              g_assert_cmpuint (place_of (all, &h->faults[0]), <, place_of (all, &h->faults[1]));
              /* two at once are less likely than the one and the other */
              const BwHypothesis *one = &g_array_index (all, BwHypothesis, place_of (all, &h->faults[0]));
              const BwHypothesis *two = &g_array_index (all, BwHypothesis, place_of (all, &h->faults[1]));
              g_assert_cmpfloat (h->penalty, >, one->penalty + two->penalty);
            }
        }
      for (guint kind = 0; kind < BW_N_FAULTS; kind++)
        if (n[kind] != choices[i].n[kind])
          g_test_fail_printf ("case %" G_GSIZE_FORMAT ", fault %u: %u, not %u", i, kind, n[kind],
                              choices[i].n[kind]);
    }
}

static double
penalty_of (const BwCauseCase *c, BwFaultKind kind)
{
  g_autoptr (GArray) all = bw_hypotheses_new (c);
  for (guint i = 0; i < all->len; i++)
    {
      const BwHypothesis *h = &g_array_index (all, BwHypothesis, i);
      if (h->n_faults == 1 && h->faults[0].kind == kind)
        return h->penalty;
    }
  g_assert_not_reached ();
}

/* What is wrong in the line comes before a wish for another source; and what agrees with much, as d.c. that moves with
 * the picture does, after what agrees with little; d.c. of any size agrees with most. */
static void
test_order_of_likelihood (void)
{
  const BwCauseCase video = standard_case (BW_SYSTEM_PAL_B, BW_SIGNAL_COMPOSITE, BW_SYNC_IN_VIDEO,
                                           BW_CONDUCTOR_VIDEO);
  const BwCauseCase h = standard_case (BW_SYSTEM_NONE, BW_SIGNAL_RGB, BW_SYNC_SEPARATE, BW_CONDUCTOR_H);
  static const BwFaultKind alike[] = { BW_FAULT_TWO_LOADS, BW_FAULT_OTHER_LEVELS, BW_FAULT_BARS_75, BW_FAULT_INVERTED };
  double line = penalty_of (&video, BW_FAULT_UNTERMINATED);
  g_assert_cmpfloat (line, >, 0);
  for (gsize i = 0; i < G_N_ELEMENTS (alike); i++)
    NEAR (penalty_of (&video, alike[i]), line, 1e-12);
  g_assert_cmpfloat (penalty_of (&video, BW_FAULT_AC_COUPLED), >, line);
  g_assert_cmpfloat (penalty_of (&video, BW_FAULT_DC_OFFSET), >, penalty_of (&video, BW_FAULT_AC_COUPLED));
  g_assert_cmpfloat (penalty_of (&h, BW_FAULT_OTHER_DRIVE), >, penalty_of (&h, BW_FAULT_TERMINATED));
  NEAR (penalty_of (&h, BW_FAULT_TERMINATED), line, 1e-12);
}

/* How well a scope is read, common practice, no source: a level to 3 %, and 1 % of the scale; d.c. to 2 % of the
 * scale; a tilt to a tenth, and 1 %. Just inside agrees, just outside does not. */
static void
test_uncertainty (void)
{
  static const struct
  {
    BwScopeReading reading;
    double is, inside, outside;
  } cases[] = {
    { BW_SCOPE_WHITE, 1, 1.03, 1.032 },
    { BW_SCOPE_WHITE, 0, 0.0199, 0.0201 },
    { BW_SCOPE_BURST, 0.5, 0.5199, 0.521 },
    { BW_SCOPE_DC, 0, 0.0399, 0.0401 },
    { BW_SCOPE_DC, 3, 3.09, 3.1 },
    { BW_SCOPE_LINE_TILT, 0, 0.0099, 0.0101 },
    { BW_SCOPE_FIELD_TILT, 0.4, 0.44, 0.45 },
    { BW_SCOPE_FIELD_TILT, 0, 0.0099, 0.0101 },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    for (int out = 0; out < 2; out++)
      {
        BwPrediction p = { .predicts = BW_BIT (cases[i].reading), .spread = { 1, 1 } };
        BwScopeReadings readings = { 0 };
        p.at[cases[i].reading] = (BwRange){ cases[i].is, cases[i].is };
        bw_scope_readings_set (&readings, cases[i].reading,
                               out ? cases[i].outside : cases[i].inside);
        if (bw_score_agrees (&readings, cases[i].reading, &p, 2) != !out)
          g_test_fail_printf ("case %" G_GSIZE_FORMAT, i);
      }
}

/* Each reading by itself tells two circuits apart, and says that they are not the same; one that was not read says
 * nothing. One and a half times what a scope is read to is needed, because each of the two may be off by it: of
 * 1 V 3 %, of a tilt of 20 % a tenth, of a polarity a tenth of the step of 1 (common practice, no source). */
static void
test_each_reading (void)
{
  static const double unit[BW_N_SCOPE_READINGS] = {
    [BW_SCOPE_SYNC] = 0.03,  [BW_SCOPE_POLARITY] = 0.1,  [BW_SCOPE_WHITE] = 0.03,
    [BW_SCOPE_BLACK] = 0.03, [BW_SCOPE_BURST] = 0.03,    [BW_SCOPE_DC] = 0.03,
    [BW_SCOPE_LINE_TILT] = 0.02, [BW_SCOPE_FIELD_TILT] = 0.02,
  };
  for (BwScopeReading reading = 0; reading < BW_N_SCOPE_READINGS; reading++)
    {
      gboolean tilt = bw_scope_reading_dimension (reading) == BW_DIMENSION_FRACTION;
      double more = tilt ? 0.2 : 1;
      BwPrediction a = { .predicts = BW_BIT (BW_N_SCOPE_READINGS) - 1, .spread = { 1, 1 } };
      BwScopeReadings read = { 0 }, others = { 0 };
      for (guint i = 0; i < BW_N_SCOPE_READINGS; i++)
        {
          a.at[i] = (BwRange){ more, more };
          bw_scope_readings_set (i == reading ? &read : &others, i, more);
        }
      BwPrediction near = a, far = a, silent = a;
      near.at[reading].low = near.at[reading].high = more - 1.45 * unit[reading];
      far.at[reading].low = far.at[reading].high = more - 1.55 * unit[reading];
      silent.predicts &= ~BW_BIT (reading);
      g_assert_false (bw_score_told_apart (&read, &a, &near, 1));
      g_assert_true (bw_score_told_apart (&read, &a, &far, 1));
      g_assert_true (bw_score_told_apart (&read, &far, &a, 1));
      g_assert_false (bw_score_told_apart (&others, &a, &far, 1));
      g_assert_true (bw_score_same (&read, &a, &a, 1));
      g_assert_false (bw_score_same (&read, &a, &near, 1));
      g_assert_true (bw_score_same (&others, &a, &far, 1));
      g_assert_false (bw_score_same (&read, &a, &silent, 1));
      g_assert_false (bw_score_same (&read, &silent, &a, 1));
      g_assert_true (bw_score_same (&others, &a, &silent, 1));
      g_assert_false (bw_score_told_apart (&read, &silent, &far, 1));
      g_assert_false (bw_score_told_apart (&read, &far, &silent, 1));
    }
}

/* Two circuits are not the same either where one of them may give more, or less, than the other. */
static void
test_same_to_both_ends (void)
{
  BwPrediction a = { .predicts = BW_BIT (BW_SCOPE_WHITE), .spread = { 1, 1 } };
  BwScopeReadings readings = { 0 };
  bw_scope_readings_set (&readings, BW_SCOPE_WHITE, 0.7);
  a.at[BW_SCOPE_WHITE] = (BwRange){ 0.6, 0.8 };
  BwPrediction low = a, high = a;
  low.at[BW_SCOPE_WHITE].low = 0.59;
  high.at[BW_SCOPE_WHITE].high = 0.81;
  g_assert_true (bw_score_same (&readings, &a, &a, 1));
  g_assert_false (bw_score_same (&readings, &a, &low, 1));
  g_assert_false (bw_score_same (&readings, &low, &a, 1));
  g_assert_false (bw_score_same (&readings, &a, &high, 1));
  g_assert_false (bw_score_same (&readings, &high, &a, 1));
}

/* The squares of the deviations of all readings add up: 2 and 1 units of 3 % make 5. The worst is the one that is
 * off most, wherever it stands. */
static void
test_squares (void)
{
  static const double off[][2] = { { 2, 1 }, { 1, 2 } };
  for (gsize i = 0; i < G_N_ELEMENTS (off); i++)
    {
      BwPrediction p = { .predicts = BW_BIT (BW_SCOPE_SYNC) | BW_BIT (BW_SCOPE_WHITE), .spread = { 1, 1 } };
      BwScopeReadings readings = { 0 };
      BwCause cause = { 0 };
      p.at[BW_SCOPE_SYNC] = p.at[BW_SCOPE_WHITE] = (BwRange){ 1, 1 };
      bw_scope_readings_set (&readings, BW_SCOPE_SYNC, 1 - 0.03 * off[i][0]);
      bw_scope_readings_set (&readings, BW_SCOPE_WHITE, 1 - 0.03 * off[i][1]);
      bw_scope_readings_set (&readings, BW_SCOPE_BURST, 5); /* of which nothing is predicted */
      NEAR (bw_score_hold (&readings, &p, 1, &cause), 5, 1e-9);
      NEAR (cause.deviation, 2, 1e-9);
      g_assert_cmpint (cause.worst, ==, i == 0 ? BW_SCOPE_SYNC : BW_SCOPE_WHITE);
      g_assert_cmpuint (cause.predicts, ==, p.predicts);
    }
}

/* Small levels are read against white or sync, whichever is more, above zero or below. */
static void
test_scale (void)
{
  static const double cases[][3] = { { 0.7, 0.3, 0.7 }, { -0.7, 0.3, 0.7 }, { 0, 5, 5 }, { 0, 0, 1e-3 },
                                     { 2e-3, 1e-3, 2e-3 } };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      BwPrediction right = { 0 };
      right.at[BW_SCOPE_WHITE] = (BwRange){ cases[i][0], cases[i][0] };
      right.at[BW_SCOPE_SYNC] = (BwRange){ cases[i][1], cases[i][1] };
      NEAR (bw_score_scale_v (&right), cases[i][2], 1e-12);
    }
}

/* SMPTE 170M table 1 allows white of 100 ± 1 IRE and burst of 40 ± 1: 102 and 42 are outside, though a scope would
 * hardly tell. It speaks of composite video and of Y/C, of C for its burst alone, and not of RGB. */
static void
test_within (void)
{
  static const struct
  {
    BwSignal signal;
    BwConductor conductor;
    BwScopeReading reading;
    double right_v, read_v;
    gboolean within;
  } cases[] = {
    { BW_SIGNAL_COMPOSITE, BW_CONDUCTOR_VIDEO, BW_SCOPE_WHITE, 100.0 / 140, 100.9 / 140, TRUE },
    { BW_SIGNAL_COMPOSITE, BW_CONDUCTOR_VIDEO, BW_SCOPE_WHITE, 100.0 / 140, 102.0 / 140, FALSE },
    { BW_SIGNAL_COMPOSITE, BW_CONDUCTOR_VIDEO, BW_SCOPE_WHITE, 100.0 / 140, 98.0 / 140, FALSE },
    { BW_SIGNAL_YC, BW_CONDUCTOR_Y, BW_SCOPE_WHITE, 100.0 / 140, 102.0 / 140, FALSE },
    { BW_SIGNAL_YC, BW_CONDUCTOR_C, BW_SCOPE_WHITE, 100.0 / 140, 102.0 / 140, TRUE },
    { BW_SIGNAL_YC, BW_CONDUCTOR_C, BW_SCOPE_BURST, 40.0 / 140, 41.2 / 140, FALSE },
    { BW_SIGNAL_YC, BW_CONDUCTOR_C, BW_SCOPE_BURST, 40.0 / 140, 40.9 / 140, TRUE },
    { BW_SIGNAL_RGB, BW_CONDUCTOR_G, BW_SCOPE_WHITE, 100.0 / 140, 102.0 / 140, TRUE },
    { BW_SIGNAL_COMPONENT, BW_CONDUCTOR_Y, BW_SCOPE_WHITE, 100.0 / 140, 102.0 / 140, TRUE },
    /* what should be there is itself outside: then the scope alone judges */
    { BW_SIGNAL_COMPOSITE, BW_CONDUCTOR_VIDEO, BW_SCOPE_WHITE, 104.0 / 140, 105.0 / 140, TRUE },
  };
  g_autoptr (GPtrArray) shipped = bw_limits_shipped ();
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      BwCauseCase c = { .conductor = cases[i].conductor, .form = { .signal = cases[i].signal } };
      BwPrediction right = { .predicts = BW_BIT (cases[i].reading), .spread = { 1, 1 } };
      BwScopeReadings readings = { 0 };
      c.limits = bw_limits_find (shipped, bw_system_facts (BW_SYSTEM_NTSC_M)->limits);
      right.at[cases[i].reading] = (BwRange){ cases[i].right_v, cases[i].right_v };
      bw_scope_readings_set (&readings, cases[i].reading, cases[i].read_v);
      if (bw_score_within (&c, &readings, &right, 1) != cases[i].within)
        g_test_fail_printf ("case %" G_GSIZE_FORMAT, i);
    }
}

/* What lies exactly on a limit of the standard is within it. */
static void
test_on_the_limit (void)
{
  g_autoptr (GPtrArray) shipped = bw_limits_shipped ();
  BwCauseCase c = standard_case (BW_SYSTEM_NTSC_M, BW_SIGNAL_COMPOSITE, BW_SYNC_IN_VIDEO,
                                 BW_CONDUCTOR_VIDEO);
  c.limits = bw_limits_find (shipped, bw_system_facts (BW_SYSTEM_NTSC_M)->limits);
  BwRange allowed = c.limits->at[BW_READING_WHITE_LEVEL].at[1];
  const double read_v[] = { allowed.low, allowed.high, allowed.low - 1e-4, allowed.high + 1e-4 };
  for (gsize i = 0; i < G_N_ELEMENTS (read_v); i++)
    {
      BwPrediction right = { .predicts = BW_BIT (BW_SCOPE_WHITE), .spread = { 1, 1 } };
      BwScopeReadings readings = { 0 };
      right.at[BW_SCOPE_WHITE] = (BwRange){ NTSC_WHITE_V, NTSC_WHITE_V };
      bw_scope_readings_set (&readings, BW_SCOPE_WHITE, read_v[i]);
      g_assert_cmpint (bw_score_within (&c, &readings, &right, 1), ==, i < 2);
    }
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  g_test_add_func ("/cause-model/faults", test_faults);
  g_test_add_func ("/cause-model/setup-and-short", test_setup_and_short);
  g_test_add_func ("/cause-model/floating", test_floating);
  g_test_add_func ("/cause-model/capacitor", test_capacitor);
  g_test_add_func ("/cause-model/own-sync", test_own_sync);
  g_test_add_func ("/cause-model/offset-and-pad", test_offset_and_pad);
  g_test_add_func ("/cause-model/loop", test_loop);
  g_test_add_func ("/cause-model/what-differs", test_what_differs);
  g_test_add_func ("/cause-model/choices", test_choices);
  g_test_add_func ("/cause-model/order-of-likelihood", test_order_of_likelihood);
  g_test_add_func ("/cause-model/uncertainty", test_uncertainty);
  g_test_add_func ("/cause-model/each-reading", test_each_reading);
  g_test_add_func ("/cause-model/same-to-both-ends", test_same_to_both_ends);
  g_test_add_func ("/cause-model/squares", test_squares);
  g_test_add_func ("/cause-model/scale", test_scale);
  g_test_add_func ("/cause-model/within", test_within);
  g_test_add_func ("/cause-model/on-the-limit", test_on_the_limit);
  return g_test_run ();
}
