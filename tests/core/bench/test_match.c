/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/bench/match.h"

#include <math.h>

#include "support.h"

#define NEAR(a, b, tolerance) g_assert_true (bw_near (a, b, tolerance))

/* All levels by the voltage divider: what is stated across 75 Ω from R is (75 + R)/75 of it without
 * load. */

static BwInput *
input_new (BwTermination termination, gboolean on, double ohm)
{
  BwInput *input = bw_input_new ();
  input->termination = input->sync_termination = termination;
  input->terminated = input->sync_terminated = on;
  input->input_ohm = ohm;
  input->video_v = input->sync_v = (BwBands){ 1, { { 0.2, 1 } } };
  return input;
}

/* Sync alone */

typedef struct
{
  const char *name;
  double sync_v;
  BwStatedLoad stated;
  double ohm;
  BwTermination termination;
  gboolean on;
  double input_ohm;
  BwRange takes;
  BwLevelNeed need;
  BwLoadChange change;
  double end_ohm;
  double resistor_ohm;
  guint n_ways;
} SyncCase;

/* A terminator of 75 Ω across an input. */
#define BESIDE(ohm) (75.0 * (ohm) / (75.0 + (ohm)))

static const SyncCase sync_cases[] = {
  { "taken", 0.3, BW_LOAD_75_OHM, 75, BW_TERMINATION_FIXED, TRUE, 10e3, { 0.2, 1 },
    BW_NEED_NOTHING, BW_LOAD_AS_IT_IS, 75, 0, 1 },
  /* 0.3 V across 75 Ω is 0.6 V into next to nothing, which is taken too */
  { "taken-open", 0.3, BW_LOAD_75_OHM, 75, BW_TERMINATION_NONE, FALSE, 10e3, { 0.2, 1 },
    BW_NEED_NOTHING, BW_LOAD_AS_IT_IS, 10e3, 0, 1 },
  /* 0.6 V is too much, 0.3 V is not: by the switch, or by a terminator beside it; 75 Ω beside 10 kΩ are
   * 74.44 Ω, beside 900 Ω 69.23 Ω */
  { "wants-the-switch-on", 0.3, BW_LOAD_75_OHM, 75, BW_TERMINATION_SWITCHED, FALSE, 10e3,
    { 0.2, 0.5 }, BW_NEED_LOAD, BW_LOAD_SWITCH, 75, 0, 2 },
  { "wants-a-terminator", 0.3, BW_LOAD_75_OHM, 75, BW_TERMINATION_NONE, FALSE, 10e3, { 0.2, 0.5 },
    BW_NEED_LOAD, BW_LOAD_TERMINATOR, BESIDE (10e3), 0, 1 },
  { "wants-the-switch-off", 0.3, BW_LOAD_75_OHM, 75, BW_TERMINATION_SWITCHED, TRUE, 10e3,
    { 0.5, 1 }, BW_NEED_LOAD, BW_LOAD_SWITCH, 10e3, 0, 1 },
  /* 75 × (5/0.3 − 1) − 50 = 1125 Ω; into 10 kΩ with a terminator */
  { "wants-a-resistor", 5, BW_LOAD_OPEN, 50, BW_TERMINATION_FIXED, TRUE, 10e3, { 0.2, 1 },
    BW_NEED_RESISTOR, BW_LOAD_AS_IT_IS, 75, 1100, 1 },
  { "wants-a-resistor-and-a-terminator", 5, BW_LOAD_OPEN, 50, BW_TERMINATION_NONE, FALSE, 10e3,
    { 0.2, 1 }, BW_NEED_RESISTOR, BW_LOAD_TERMINATOR, BESIDE (10e3), 1100, 1 },
  /* 5 V behind 50 Ω is 3 V across 75 Ω: enough for 2 to 4 V */
  { "loaded-it-is-taken", 5, BW_LOAD_OPEN, 50, BW_TERMINATION_NONE, FALSE, 10e3, { 2, 4 },
    BW_NEED_LOAD, BW_LOAD_TERMINATOR, BESIDE (10e3), 0, 1 },
  /* 2 V behind 1 kΩ: 0.14 V across 75 Ω, 1.29 V across 1.8 kΩ: 1800 (2/0.3 − 1) − 1000 = 9.2 kΩ
   * would leave the lead at 1.5 kΩ */
  /* 900 Ω are 2.17 V and want 900 × (5/0.3 − 1) − 1175 = 12.9 kΩ; a terminator alone makes 0.3 V */
  { "a-terminator-before-a-resistor", 5, BW_LOAD_OPEN, 1175, BW_TERMINATION_NONE, FALSE, 900,
    { 0.2, 1 }, BW_NEED_LOAD, BW_LOAD_TERMINATOR, BESIDE (900), 0, 2 },
  { "high-impedance-and-nothing-helps", 2, BW_LOAD_OPEN, 1000, BW_TERMINATION_NONE, FALSE, 1800,
    { 0.2, 1 }, BW_NEED_AMPLIFIER, BW_LOAD_AS_IT_IS, 1800, 0, 0 },
  { "too-little", 0.1, BW_LOAD_75_OHM, 75, BW_TERMINATION_FIXED, TRUE, 10e3, { 0.2, 1 },
    BW_NEED_AMPLIFIER, BW_LOAD_AS_IT_IS, 75, 0, 0 },
};

static void
test_sync (gconstpointer data)
{
  const SyncCase *c = data;
  g_autoptr (BwSource) source = bw_source_new ();
  g_autoptr (BwInput) input = input_new (c->termination, c->on, c->input_ohm);
  BwSyncMatch match;

  source->sync_v = c->sync_v;
  source->sync_load = c->stated;
  source->sync_ohm = c->ohm;
  input->own_sync_v = (BwBands){ 1, { c->takes } };
  bw_match_own_sync (source, input, &match);
  g_assert_cmpint (match.need, ==, c->need);
  g_assert_cmpuint (match.n_ways, ==, c->n_ways);
  NEAR (match.takes.low, c->takes.low, 0);
  if (c->n_ways == 0)
    return;
  g_assert_cmpint (match.way[0].change, ==, c->change);
  NEAR (match.way[0].load_ohm, c->end_ohm, 1e-9);
  g_assert_cmpint (match.way[0].has_resistor, ==, c->resistor_ohm > 0);
  NEAR (match.way[0].attenuator.resistor_ohm, c->resistor_ohm, 1e-9 * c->resistor_ohm);
}

/* Without levels of its own for sync alone those of sync in video hold. */
static void
test_sync_range (void)
{
  g_autoptr (BwInput) input = input_new (BW_TERMINATION_FIXED, TRUE, 10e3);
  NEAR (bw_input_sync_range (input, TRUE).high, 1, 0);
  input->own_sync_v = (BwBands){ 1, { { 2, 5 } } };
  NEAR (bw_input_sync_range (input, TRUE).high, 5, 0);
  NEAR (bw_input_sync_range (input, FALSE).high, 1, 0);
}

/* An input that strips sync from video takes composite sync alone as well, and no separate H and
 * V. */
static void
test_taken_syncs (void)
{
  g_autoptr (BwInput) input = input_new (BW_TERMINATION_FIXED, TRUE, 10e3);
  guint own = BW_BIT (BW_SYNC_COMPOSITE) | BW_BIT (BW_SYNC_SEPARATE);
  input->syncs = BW_BIT (BW_SYNC_IN_VIDEO);
  g_assert_cmphex (bw_input_taken_syncs (input, own), ==, BW_BIT (BW_SYNC_COMPOSITE));
  input->syncs = BW_BIT (BW_SYNC_ON_GREEN);
  g_assert_cmphex (bw_input_taken_syncs (input, own), ==, 0);
}

/* The picture */

typedef struct
{
  const char *name;
  double video_v;
  double ohm;
  BwTermination termination;
  gboolean loop_ended;
  BwRange takes;
  BwLevelNeed need;
  gboolean ends_outside;
  double gain;
  gboolean voltage_driven;
  gboolean terminator;
  double end_ohm;
} PictureCase;

static const PictureCase picture_cases[] = {
  { "right", 0.7, 75, BW_TERMINATION_FIXED, FALSE, { 0.5, 1 }, BW_NEED_NOTHING, FALSE, 1, TRUE,
    FALSE, 75 },
  /* 1.39 V where nothing hangs, 0.7 V with one load */
  { "open", 0.7, 75, BW_TERMINATION_NONE, FALSE, { 0.5, 1 }, BW_NEED_LOAD, FALSE, 1, FALSE, FALSE,
    BESIDE (10e3) },
  /* 0.467 V across two loads */
  { "two-loads", 0.7, 75, BW_TERMINATION_FIXED, TRUE, { 0.5, 1 }, BW_NEED_LOAD, FALSE, 1, FALSE,
    FALSE, 75 },
  /* 2 V across one load, 4 V without: the attenuator is for what one load leaves, 4 V × 74.44/149.44 */
  { "open-and-too-high", 2, 75, BW_TERMINATION_NONE, FALSE, { 0.5, 1 }, BW_NEED_PAD, FALSE,
    0.7 / (4 * BESIDE (10e3) / (75 + BESIDE (10e3))), FALSE, FALSE, BESIDE (10e3) },
  /* 0.467 V is taken as it stands, 0.7 V would be too much */
  { "two-loads-hide-it", 0.7, 75, BW_TERMINATION_FIXED, TRUE, { 0.2, 0.6 }, BW_NEED_PAD, TRUE,
    0.494872, FALSE, FALSE, 75 },
  { "open-hides-it", 0.4, 75, BW_TERMINATION_NONE, FALSE, { 0.5, 1 }, BW_NEED_AMPLIFIER, TRUE,
    0.7 / (0.8 * BESIDE (10e3) / (75 + BESIDE (10e3))), FALSE, FALSE, BESIDE (10e3) },
  /* a voltage is the same into anything; a matched attenuator must end in its load */
  { "voltage", 0.7, 0, BW_TERMINATION_NONE, FALSE, { 0.5, 1 }, BW_NEED_NOTHING, FALSE, 1, TRUE,
    FALSE, 10e3 },
  { "voltage-too-high", 2, 0, BW_TERMINATION_NONE, FALSE, { 0.5, 1 }, BW_NEED_PAD, FALSE,
    0.7 / (4 * BESIDE (10e3) / (75 + BESIDE (10e3))), TRUE, TRUE, BESIDE (10e3) },
};

static void
test_picture (gconstpointer data)
{
  const PictureCase *c = data;
  g_autoptr (BwSource) source = bw_source_new ();
  g_autoptr (BwInput) input = input_new (c->termination, FALSE, 10e3);
  BwPictureMatch match;

  source->video_v = c->video_v;
  source->source_ohm = c->ohm;
  input->loop_through = input->loop_ended = c->loop_ended;
  input->video_v = (BwBands){ 1, { c->takes } };
  bw_match_picture (source, input, BW_SYNC_COMPOSITE, &match);
  g_assert_cmpint (match.video.need, ==, c->need);
  g_assert_cmpint (match.video.ends_outside, ==, c->ends_outside);
  g_assert_cmpint (match.sync.need, ==, BW_NEED_NOTHING);
  NEAR (match.video.gain, c->gain, 1e-6);
  NEAR (match.pad_ratio, c->need == BW_NEED_PAD ? c->gain : 1, 1e-6);
  g_assert_cmpint (match.voltage_driven, ==, c->voltage_driven);
  g_assert_cmpint (match.terminator, ==, c->terminator);
  NEAR (match.end_ohm, c->end_ohm, 1e-9);
}

/* Sync in the picture that is too high is lowered with it: 1.4 V and 0.9 V to 0.7 V and 0.45 V. */
static void
test_sync_in_picture (void)
{
  g_autoptr (BwSource) source = bw_source_new ();
  g_autoptr (BwInput) input = input_new (BW_TERMINATION_FIXED, FALSE, 10e3);
  BwPictureMatch match;

  source->video_v = 1.4;
  source->sync_v = 0.9;
  input->sync_v = (BwBands){ 1, { { 0.2, 0.6 } } };
  bw_match_picture (source, input, BW_SYNC_ON_GREEN, &match);
  g_assert_cmpint (match.video.need, ==, BW_NEED_PAD);
  g_assert_cmpint (match.sync.need, ==, BW_NEED_PAD);
  NEAR (match.pad_ratio, 0.5, 1e-12);
  NEAR (match.video.aim_v, 0.7, 1e-12);
  NEAR (match.sync.aim_v, 0.45, 1e-12);
}

/* Sync in the picture that is too low wants to be raised, 0.1 V to 0.3 V three times, and nothing is lowered for it;
 * on a conductor of its own it is no matter of the picture. */
static void
test_low_sync_in_picture (void)
{
  g_autoptr (BwSource) source = bw_source_new ();
  g_autoptr (BwInput) input = input_new (BW_TERMINATION_FIXED, FALSE, 10e3);
  BwPictureMatch match;

  source->video_v = 0.7;
  source->sync_v = 0.1;
  input->sync_v = (BwBands){ 1, { { 0.2, 0.6 } } };
  input->own_sync_v = (BwBands){ 1, { { 2, 5 } } }; /* of another conductor */
  bw_match_picture (source, input, BW_SYNC_ON_GREEN, &match);
  g_assert_cmpint (match.video.need, ==, BW_NEED_NOTHING);
  g_assert_cmpint (match.sync.need, ==, BW_NEED_AMPLIFIER);
  NEAR (match.sync.gain, 3, 1e-9);
  NEAR (match.sync.aim_v, 0.3, 1e-9);
  NEAR (match.pad_ratio, 1, 0);
  bw_match_picture (source, input, BW_SYNC_COMPOSITE, &match);
  g_assert_cmpint (match.sync.need, ==, BW_NEED_NOTHING);
}

/* An input that is neither 75 Ω nor high */

typedef struct
{
  const char *name;
  double input_ohm;
  BwRange takes;
  BwEndPart part;
  BwLevelNeed need;
  double part_ratio;
  guint n;
  double ohm[2];
} EndCase;

/* 0.7 V across 75 Ω from 75 Ω. 50 Ω behind 75 − 50 = 25 Ω: 0.7 × 50/75 = 0.4667 V. 150 Ω beside 150 Ω
 * are 75 Ω: 0.7 V. A minimum-loss pad of 43.30 Ω in series and 86.60 Ω across 50 Ω: 86.60 beside 50
 * are 31.70 Ω, with 43.30 Ω in series 75.00 Ω, so that 0.7 × 31.70/75 = 0.2959 V; from the other side
 * 75 + 43.30 = 118.30 Ω beside 86.60 Ω are 50.00 Ω: matched both ways (Ohm's law). */
static const EndCase end_cases[] = {
  { "series", 50, { 0.3, 1 }, BW_END_SERIES, BW_NEED_NOTHING, 2 / 3.0, 1, { 25 } },
  { "series-where-a-pad-would-do", 50, { 0.25, 1 }, BW_END_SERIES, BW_NEED_NOTHING, 2 / 3.0, 1,
    { 25 } },
  { "pad-where-a-resistor-leaves-too-much", 50, { 0.2, 0.4 }, BW_END_MINIMUM_LOSS, BW_NEED_LOAD,
    0.42265, 2, { 43.301, 86.603 } },
  { "neither-is-low-enough", 50, { 0.1, 0.2 }, BW_END_SERIES, BW_NEED_PAD, 2 / 3.0, 1, { 25 } },
  { "both-are-too-low", 50, { 0.5, 1 }, BW_END_SERIES, BW_NEED_AMPLIFIER, 2 / 3.0, 1, { 25 } },
  { "shunt", 150, { 0.5, 1 }, BW_END_SHUNT, BW_NEED_NOTHING, 1, 1, { 150 } },
  { "shunt-of-another-value", 300, { 0.5, 1 }, BW_END_SHUNT, BW_NEED_LOAD, 1, 1, { 100 } },
  /* a terminator across it leaves 69.77 Ω, which is one load */
  { "high-enough-for-a-terminator", 1000, { 0.5, 1 }, BW_END_NO_PART, BW_NEED_LOAD, 1, 0, { 0 } },
};

static void
test_end (gconstpointer data)
{
  const EndCase *c = data;
  g_autoptr (BwSource) source = bw_source_new ();
  g_autoptr (BwInput) input = input_new (BW_TERMINATION_NONE, FALSE, c->input_ohm);
  BwPictureMatch match;
  BwNetwork network;
  BwNetworkFigures figures;

  source->video_v = 0.7;
  input->video_v = (BwBands){ 1, { c->takes } };
  bw_match_picture (source, input, BW_SYNC_COMPOSITE, &match);
  g_assert_cmpint (match.part, ==, c->part);
  g_assert_cmpint (match.video.need, ==, c->need);
  NEAR (match.part_ratio, c->part_ratio, 1e-5);
  if (c->part == BW_END_NO_PART)
    {
      g_assert_cmpint (match.change, ==, BW_LOAD_TERMINATOR);
      NEAR (match.changed_ohm, 69.767, 1e-3);
      return;
    }
  g_assert_true (bw_match_end (match.part, 1.4, 75, c->input_ohm, &network));
  g_assert_cmpuint (network.n, ==, c->n);
  for (guint i = 0; i < c->n; i++)
    NEAR (network.at[i].ohm, c->ohm[i], 1e-3);
  bw_network_solve (&network, &figures);
  NEAR (figures.input_ohm, 75, 1e-9); /* what the lead ends in */
  NEAR (figures.level_v, 0.7 * c->part_ratio, 1e-5);
}

/* 1.4 V across 75 Ω from 50 Ω is 1.4 × 125/75 = 2.3333 V without load. 86.60 Ω across the source leave
 * 2.3333 × 86.60/136.60 = 1.4793 V from 31.70 Ω, 43.30 Ω in series make that 75 Ω, and half of it is at
 * 75 Ω: 0.7396 V, 0.5283 of 1.4 V. Where that does not serve, or the source is of 75 Ω, it is a T pad. */
static void
test_minimum_loss (void)
{
  static const struct
  {
    double source_ohm;
    BwRange takes;
    BwPadKind pad;
    double ratio;
  } cases[] = {
    { 50, { 0.5, 1 }, BW_PAD_MINIMUM_LOSS, 0.528312 },
    { 50, { 0.3, 0.72 }, BW_PAD_T, 0.5 },
    { 50, { 0.75, 1 }, BW_PAD_T, 0.618590 }, /* √(0.75 × 1) V */
    { 75, { 0.5, 1 }, BW_PAD_T, 0.5 },
    { 0, { 0.5, 1 }, BW_PAD_T, 0.5 },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (BwSource) source = bw_source_new ();
      g_autoptr (BwInput) input = input_new (BW_TERMINATION_FIXED, FALSE, 10e3);
      BwPictureMatch match;

      source->video_v = 1.4;
      source->source_ohm = cases[i].source_ohm;
      input->video_v = (BwBands){ 1, { cases[i].takes } };
      bw_match_picture (source, input, BW_SYNC_COMPOSITE, &match);
      g_assert_cmpint (match.video.need, ==, BW_NEED_PAD);
      g_assert_cmpint (match.pad, ==, cases[i].pad);
      NEAR (match.pad_ratio, cases[i].ratio, 1e-6);
    }
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  for (gsize i = 0; i < G_N_ELEMENTS (sync_cases); i++)
    {
      g_autofree char *path = g_strdup_printf ("/match/sync/%s", sync_cases[i].name);
      g_test_add_data_func (path, &sync_cases[i], test_sync);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (picture_cases); i++)
    {
      g_autofree char *path = g_strdup_printf ("/match/picture/%s", picture_cases[i].name);
      g_test_add_data_func (path, &picture_cases[i], test_picture);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (end_cases); i++)
    {
      g_autofree char *path = g_strdup_printf ("/match/end/%s", end_cases[i].name);
      g_test_add_data_func (path, &end_cases[i], test_end);
    }
  g_test_add_func ("/match/minimum-loss", test_minimum_loss);
  g_test_add_func ("/match/sync-range", test_sync_range);
  g_test_add_func ("/match/taken-syncs", test_taken_syncs);
  g_test_add_func ("/match/sync-in-picture", test_sync_in_picture);
  g_test_add_func ("/match/low-sync-in-picture", test_low_sync_in_picture);
  return g_test_run ();
}
