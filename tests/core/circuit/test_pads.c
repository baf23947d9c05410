/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/circuit/pads.h"

#include <math.h>

#include "support.h"

static void
add (const char *group, const char *name, gconstpointer data, GTestDataFunc func)
{
  g_autofree char *path = g_strdup_printf ("/pads/%s/%s", group, name);
  g_test_add_data_func (path, data, func);
}

static double
level_of (const BwNetwork *network)
{
  BwNetworkFigures figures;
  bw_network_solve (network, &figures);
  return figures.level_v;
}

/* Sync of ITU-R BT.1700 (0.3 V) out of logic levels, and SMPTE 170M-2004 15.2: 75 Ω source and
 * load. All figures derived: the voltage divider. */

typedef struct
{
  const char *name;
  double open_v;
  double source_ohm;
  double series_ohm;
  double load_ohm;
  double level_v;
  double tolerance_v; /* half of the last place */
} LevelCase;

static const LevelCase level_cases[] = {
  { "smpte-170m-1-volt-behind-75-ohm", 2, 75, 0, 75, 1, 1e-12 },
  { "smpte-170m-two-loads", 2, 75, 0, 37.5, 2.0 / 3, 1e-12 },
  { "5-volt-330", 5, 0, 330, 75, 0.926, 5e-4 },
  { "5-volt-470", 5, 0, 470, 75, 0.688, 5e-4 },
  { "5-volt-820", 5, 0, 820, 75, 0.419, 5e-4 },
  { "5-volt-1k", 5, 0, 1000, 75, 0.349, 5e-4 },
  { "5-volt-1.2k", 5, 0, 1200, 75, 0.294, 5e-4 },
  { "5-volt-1.5k", 5, 0, 1500, 75, 0.238, 5e-4 },
  { "5-volt-1.2k-not-terminated", 5, 0, 1200, 10e3, 4.46, 5e-3 },
  { "pin-16-5-volt-100", 5, 0, 100, 75, 2.143, 5e-4 },
  { "pin-16-5-volt-180", 5, 0, 180, 75, 1.471, 5e-4 },
  { "pin-16-12-volt-470", 12, 0, 470, 75, 1.651, 5e-4 },
  { "no-load", 5, 100, 1000, INFINITY, 5, 1e-12 },
};

static void
test_level (gconstpointer data)
{
  const LevelCase *c = data;
  BwNetwork network = {
    c->open_v, c->source_ohm, 1, { { BW_PLACE_SERIES, c->series_ohm } }, c->load_ohm
  };
  bw_test_near (level_of (&network), c->level_v, c->tolerance_v);
}

/* R = 75 (V/0.3 − 1), and the nearest value of IEC 60063 in each series, with its level
 * (derived). */

typedef struct
{
  const char *name;
  double open_v;
  double ideal_ohm;
  double value_ohm[BW_N_SERIES];
  double level_v[BW_N_SERIES];
} AttenuatorCase;

static const AttenuatorCase attenuator_cases[] = {
  { "5-volt", 5.0, 1175, { 1200, 1200, 1180 }, { 0.2941, 0.2941, 0.2988 } },
  { "4-volt", 4.0, 925, { 1000, 910, 931 }, { 0.2791, 0.3046, 0.2982 } },
  { "3.4-volt", 3.4, 775, { 820, 750, 768 }, { 0.2849, 0.3091, 0.3025 } },
  { "3.3-volt", 3.3, 750, { 820, 750, 750 }, { 0.2765, 0.3000, 0.3000 } },
  { "2.4-volt", 2.4, 525, { 560, 510, 523 }, { 0.2835, 0.3077, 0.3010 } },
  { "1-volt", 1.0, 175, { 180, 180, 174 }, { 0.2941, 0.2941, 0.3012 } },
  { "0.6-volt", 0.6, 75, { 82, 75, 75 }, { 0.2866, 0.3000, 0.3000 } },
};

static void
test_attenuator (gconstpointer data)
{
  const AttenuatorCase *c = data;
  BwNetwork ideal, driven;

  g_assert_true (bw_pad_series (c->open_v, 0, 75, 0.3, &ideal, NULL));
  g_assert_cmpuint (ideal.n, ==, 1);
  bw_test_near (ideal.at[0].ohm, c->ideal_ohm, 1e-9);
  bw_test_near (level_of (&ideal), 0.3, 1e-12);
  g_assert_true (bw_pad_series (c->open_v, 50, 75, 0.3, &driven, NULL));
  bw_test_near (driven.at[0].ohm, c->ideal_ohm - 50, 1e-9);
  bw_test_near (level_of (&driven), 0.3, 1e-12);
  for (BwSeries series = 0; series < BW_N_SERIES; series++)
    {
      BwPadChoice choice;
      bw_network_choose (&ideal, series, 0, &choice);
      bw_test_near (choice.network.at[0].ohm, c->value_ohm[series], 1e-6);
      bw_test_near (choice.figures.level_v, c->level_v[series], 0.5e-4);
    }
}

/* Matched pads of 75 Ω (image parameters; derived, printed to four or five figures). */

typedef struct
{
  const char *name;
  double loss_db;
  double t_series_ohm;
  double t_shunt_ohm;
  double pi_shunt_ohm;
  double pi_series_ohm;
} MatchedCase;

static const MatchedCase matched_cases[] = {
  { "1-db", 1, 4.313, 650.0, 1304.3, 8.654 },      { "3-db", 3, 12.825, 212.89, 438.60, 26.422 },
  { "6-db", 6, 24.921, 100.40, 225.71, 56.028 },   { "10-db", 10, 38.962, 52.705, 144.37, 106.73 },
  { "20-db", 20, 61.364, 15.152, 91.667, 371.25 },
};

static void
assert_matched (const BwNetwork *pad, double level_v)
{
  BwNetworkFigures figures;
  bw_network_solve (pad, &figures);
  bw_test_near (figures.level_v, level_v, 1e-9);
  bw_test_near (figures.input_ohm, 75, 1e-9);
  bw_test_near (figures.output_ohm, 75, 1e-9);
}

static void
test_matched (gconstpointer data)
{
  const MatchedCase *c = data;
  BwNetwork t, pi;

  g_assert_true (bw_pad_matched (BW_PAD_T, 2, 75, c->loss_db, &t, NULL));
  g_assert_true (bw_pad_matched (BW_PAD_PI, 2, 75, c->loss_db, &pi, NULL));
  bw_test_near (t.at[0].ohm, c->t_series_ohm, 1.2e-4 * c->t_series_ohm);
  bw_test_near (t.at[1].ohm, c->t_shunt_ohm, 1.2e-4 * c->t_shunt_ohm);
  bw_test_near (pi.at[0].ohm, c->pi_shunt_ohm, 1.2e-4 * c->pi_shunt_ohm);
  bw_test_near (pi.at[1].ohm, c->pi_series_ohm, 1.2e-4 * c->pi_series_ohm);
  bw_test_near (t.at[2].ohm, t.at[0].ohm, 1e-12);
  bw_test_near (pi.at[2].ohm, pi.at[0].ohm, 1e-12);
  assert_matched (&t, pow (10, -c->loss_db / 20));
  assert_matched (&pi, pow (10, -c->loss_db / 20));
}

/* 1.0 V to 0.7 V is 3.098 dB: 13.235 and 205.88 Ω (derived). */
static void
test_video_to_rgb (void)
{
  double loss_db = -20 * log10 (0.7);
  BwNetwork t;
  g_assert_true (bw_pad_matched (BW_PAD_T, 2, 75, loss_db, &t, NULL));
  bw_test_near (loss_db, 3.098, 5e-4);
  bw_test_near (t.at[0].ohm, 13.235, 5e-4);
  bw_test_near (t.at[1].ohm, 205.88, 5e-3);
}

/* From a stiff 5 V to 0.3 V with a match: 625 and 85.23 Ω (derived). */
static void
test_l (void)
{
  BwNetwork l, driven;
  BwNetworkFigures figures;

  g_assert_true (bw_pad_l (5, 0, 75, 0.3, &l, NULL));
  bw_network_solve (&l, &figures);
  bw_test_near (l.at[0].ohm, 625, 1e-9);
  bw_test_near (l.at[1].ohm, 85.23, 5e-3);
  bw_test_near (figures.level_v, 0.3, 1e-12);
  bw_test_near (figures.output_ohm, 75, 1e-9);
  g_assert_true (bw_pad_l (5, 50, 75, 0.3, &driven, NULL));
  bw_test_near (driven.at[0].ohm, 575, 1e-9);
  bw_test_near (driven.at[1].ohm, l.at[1].ohm, 1e-9);
}

typedef struct
{
  const char *name;
  double source_ohm;
  double load_ohm;
  double series_ohm;
  double shunt_ohm;
  double loss_db;
} MinimumCase;

/* 75 Ω to 50 Ω: 43.3 Ω and 86.6 Ω, 5.7 dB, is what makers of such pads state (common practice, no
 * source). The rest is derived from the formulas, which are from memory; so the match and the loss of
 * power are worked out from the network as well. */
static const MinimumCase minimum_cases[] = {
  { "75-to-50", 75, 50, 43.30, 86.60, 5.719 },
  { "50-to-75", 50, 75, 43.30, 86.60, 5.719 },
  { "300-to-75", 300, 75, 259.81, 86.60, 11.439 },
};

static void
test_minimum (gconstpointer data)
{
  const MinimumCase *c = data;
  BwNetwork pad;
  BwNetworkFigures figures;
  double loss_db;
  guint series = c->source_ohm > c->load_ohm ? 0 : 1;

  g_assert_true (bw_pad_minimum_loss (2, c->source_ohm, c->load_ohm, &pad, &loss_db, NULL));
  bw_network_solve (&pad, &figures);
  g_assert_cmpuint (pad.at[series].place, ==, BW_PLACE_SERIES);
  bw_test_near (pad.at[series].ohm, c->series_ohm, 6e-3);
  bw_test_near (pad.at[1 - series].ohm, c->shunt_ohm, 6e-3);
  bw_test_near (loss_db, c->loss_db, 6e-4);
  bw_test_near (figures.input_ohm, c->source_ohm, 1e-9);
  bw_test_near (figures.output_ohm, c->load_ohm, 1e-9);
  double available_w = 2.0 * 2.0 / (4 * c->source_ohm);
  bw_test_near (10 * log10 (available_w / figures.load_w), loss_db, 1e-9);
}

/* 5 V through 100 Ω: 28.6 mA, 82 mW; 12 V through 470 Ω: 0.228 W (derived). */
static void
test_power (void)
{
  BwNetwork network = { 5, 0, 1, { { BW_PLACE_SERIES, 100 } }, 75 };
  BwNetworkFigures figures;
  bw_network_solve (&network, &figures);
  bw_test_near (figures.element_w[0], 82e-3, 0.5e-3);
  bw_test_near (figures.level_v / 75, 28.6e-3, 0.05e-3);
  network.open_v = 12;
  network.at[0].ohm = 470;
  bw_network_solve (&network, &figures);
  bw_test_near (figures.element_w[0], 0.228, 0.5e-3);
}

/* 1.2 kΩ ± 5 % and 5 V ± 5 %: 4.75 V over 1260 + 75 Ω, and 5.25 V over 1140 + 75 Ω. */
static void
test_spread (void)
{
  BwNetwork network = { 5, 0, 1, { { BW_PLACE_SERIES, 1200 } }, 75 };
  BwRange level_v;
  bw_network_spread (&network, 0.05, 0.05, &level_v);
  bw_test_near (level_v.low, 4.75 * 75 / 1335, 1e-12);
  bw_test_near (level_v.high, 5.25 * 75 / 1215, 1e-12);
}

static void
test_refused (void)
{
  BwNetwork network;
  double loss_db;
  g_autoptr (GError) high = NULL, same = NULL, l = NULL, driver = NULL, none = NULL, value = NULL;

  g_assert_false (bw_pad_series (0.3, 0, 75, 0.5, &network, &high));
  g_assert_error (high, BW_PADS_ERROR, BW_PADS_ERROR_TOO_HIGH);
  bw_test_assert_words (high->message, WORDS ("500", "300"));
  g_assert_false (bw_pad_l (0.5, 0, 75, 0.3, &network, &l)); /* no more than half can be had */
  g_assert_error (l, BW_PADS_ERROR, BW_PADS_ERROR_TOO_HIGH);
  bw_test_assert_words (l->message, WORDS ("300", "250"));
  g_assert_false (bw_pad_l (5, 700, 75, 0.3, &network, &driver));
  g_assert_error (driver, BW_PADS_ERROR, BW_PADS_ERROR_TOO_HIGH);
  /* a matched load takes half of 5 V, times 75 / 700 behind more than its own resistance */
  bw_test_assert_words (driver->message, WORDS ("300", "267.9"));
  g_assert_false (bw_pad_minimum_loss (1, 75, 75, &network, &loss_db, &same));
  g_assert_error (same, BW_PADS_ERROR, BW_PADS_ERROR_LOSS);
  g_assert_false (bw_pad_matched (BW_PAD_T, 1, 75, 0, &network, &none));
  g_assert_error (none, BW_PADS_ERROR, BW_PADS_ERROR_LOSS);
  g_assert_false (bw_pad_series (5, 0, -75, 0.3, &network, &value));
  g_assert_error (value, BW_PADS_ERROR, BW_PADS_ERROR_VALUE);
}

/* The losses at the ends of what is allowed (our own choice). */
static void
test_matched_limits (void)
{
  static const struct
  {
    double loss_db;
    gboolean taken;
  } cases[] = { { 0.00099, FALSE }, { 0.001, TRUE }, { 120, TRUE }, { 120.1, FALSE } };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      BwNetwork network;
      g_autoptr (GError) error = NULL;
      gboolean taken = bw_pad_matched (BW_PAD_PI, 1, 75, cases[i].loss_db, &network, &error);
      g_assert_cmpint (taken, ==, cases[i].taken);
      if (!taken)
        g_assert_error (error, BW_PADS_ERROR, BW_PADS_ERROR_LOSS);
    }
}

/* Each limit is allowed, and what lies beyond it is refused. */
static void
test_limits (void)
{
  static const struct
  {
    double open_v, source_ohm, load_ohm, wanted_v;
    gboolean allowed;
    BwPadsError code;
  } cases[] = {
    { 1e3, 0, 75, 1, TRUE, 0 },
    { 1001, 0, 75, 1, FALSE, BW_PADS_ERROR_VALUE },
    { 2e-3, 0, 75, 1e-3, TRUE, 0 },
    { 2e-3, 0, 75, 0.99e-3, FALSE, BW_PADS_ERROR_VALUE },
    { 5, 0, 75, 1e-308, FALSE, BW_PADS_ERROR_VALUE },
    { 5, 0, 0.1, 0.3, TRUE, 0 },
    { 5, 0, 0.099, 0.3, FALSE, BW_PADS_ERROR_VALUE },
    { 5, 0, 9.6e-229, 0.3, FALSE, BW_PADS_ERROR_VALUE },
    { 5, 0, 10e6, 2.5, TRUE, 0 }, /* 10 MΩ · (5/2.5 − 1) = 10 MΩ */
    { 5, 0, 10.1e6, 4.9, FALSE, BW_PADS_ERROR_VALUE },
    { 5, 10e6, 10e6, 2, TRUE, 0 },
    { 5, 10.1e6, 10e6, 2, FALSE, BW_PADS_ERROR_VALUE },
    { 5, -1, 75, 1, FALSE, BW_PADS_ERROR_VALUE },
    { (double) INFINITY, 0, 75, 1, FALSE, BW_PADS_ERROR_VALUE },
    { (double) NAN, 0, 75, 1, FALSE, BW_PADS_ERROR_VALUE },
    { 5, 0, 10e6, 2.4, FALSE, BW_PADS_ERROR_TOO_LOW }, /* 10 MΩ · (5/2.4 − 1) = 10.83 MΩ */
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      BwNetwork network;
      g_autoptr (GError) error = NULL;
      gboolean done = bw_pad_series (cases[i].open_v, cases[i].source_ohm, cases[i].load_ohm,
                                     cases[i].wanted_v, &network, &error);
      g_test_message ("row %" G_GSIZE_FORMAT, i + 1);
      g_assert_cmpint (done, ==, cases[i].allowed);
      if (!done)
        g_assert_error (error, BW_PADS_ERROR, (int) cases[i].code);
      if (!done)
        bw_test_assert_words (error->message, WORDS ("10 MΩ"));
    }
}

/* What is wanted is just what there is: no resistor. */
static void
test_nothing_needed (void)
{
  BwNetwork network;
  g_assert_true (bw_pad_series (0.6, 75, 75, 0.3, &network, NULL));
  g_assert_cmpuint (network.n, ==, 0);
  bw_test_near (level_of (&network), 0.3, 1e-12);
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  for (gsize i = 0; i < G_N_ELEMENTS (level_cases); i++)
    add ("level", level_cases[i].name, &level_cases[i], test_level);
  for (gsize i = 0; i < G_N_ELEMENTS (attenuator_cases); i++)
    add ("attenuator", attenuator_cases[i].name, &attenuator_cases[i], test_attenuator);
  for (gsize i = 0; i < G_N_ELEMENTS (matched_cases); i++)
    add ("matched", matched_cases[i].name, &matched_cases[i], test_matched);
  for (gsize i = 0; i < G_N_ELEMENTS (minimum_cases); i++)
    add ("minimum-loss", minimum_cases[i].name, &minimum_cases[i], test_minimum);
  g_test_add_func ("/pads/video-to-rgb", test_video_to_rgb);
  g_test_add_func ("/pads/l", test_l);
  g_test_add_func ("/pads/power", test_power);
  g_test_add_func ("/pads/spread", test_spread);
  g_test_add_func ("/pads/refused", test_refused);
  g_test_add_func ("/pads/matched-limits", test_matched_limits);
  g_test_add_func ("/pads/limits", test_limits);
  g_test_add_func ("/pads/nothing-needed", test_nothing_needed);
  return g_test_run ();
}
