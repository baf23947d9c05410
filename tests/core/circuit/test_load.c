/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/circuit/load.h"

#include <math.h>

#include "core/circuit/coupling.h"
#include "support.h"

static void
assert_near (double got, double wanted, double tolerance)
{
  if (!bw_near (got, wanted, tolerance))
    g_test_message ("%.9g is not within %g of %.9g", got, tolerance, wanted);
  g_assert_true (bw_near (got, wanted, tolerance));
}

/* Termination: SMPTE 170M-2004 15.2 gives 75 Ω source and load; the rest is derived:
 * 2 R/(R + 75). Tolerances are half of the last place. */

static const struct
{
  const char *name;
  BwEnding ending;
  double terminator_ohm;
  double input_ohm;
  double ratio;
  double db;
} load_cases[] = {
  { "one", BW_ENDING_ONE, 75, 1e12, 1, 0 },
  { "none", BW_ENDING_NONE, 75, 1e12, 2, 6.021 },
  { "two", BW_ENDING_TWO, 75, 1e12, 0.6667, -3.522 },
  { "three", BW_ENDING_TWO, 75, 75, 0.5, -6.021 },
  { "one-and-10k", BW_ENDING_ONE, 75, 10e3, 0.9963, -0.033 },
  { "loop-ended", BW_ENDING_LOOP_ENDED, 75, 1e12, 1, 0 },
  { "loop-open", BW_ENDING_LOOP_OPEN, 75, 1e12, 2, 6.021 },
};

static void
test_load (gconstpointer data)
{
  gsize i = GPOINTER_TO_SIZE (data);
  BwLoadCase what;
  BwLoad load;
  bw_load_case_init (&what);
  what.ending = load_cases[i].ending;
  what.input_ohm = load_cases[i].input_ohm;
  bw_load_compute (&what, &load);
  assert_near (load.level_ratio, load_cases[i].ratio, 0.51e-4);
  assert_near (load.level_db, load_cases[i].db, 0.51e-3);
}

/* 50 Ω on 75 Ω: return loss 13.98 dB, and −1.938 dB of level; nothing: all of it comes back. */
static void
test_reflection (void)
{
  assert_near (bw_return_loss_db (50, 75), 13.98, 5e-3);
  assert_near (20 * log10 (2 * 50 / (50 + 75.0)), -1.938, 5e-4);
  assert_near (bw_reflection (INFINITY, 75), 1, 1e-12);
  assert_near (bw_reflection (75, 75), 0, 1e-12);
  assert_near (bw_return_loss_db (INFINITY, 75), 0, 1e-12);
  g_assert_true (isinf (bw_return_loss_db (75, 75)));
}

/* 10 m of solid polyethylene: there and back in 101 ns. A matched source takes up what comes back;
 * a voltage output turns it over; a loop that ends in nothing gives all of it once. */
static void
test_echo (void)
{
  BwLoadCase what;
  BwLoad load;
  bw_load_case_init (&what);
  what.length_m = 10;
  what.input_ohm = 1e12;
  what.ending = BW_ENDING_NONE;
  bw_load_compute (&what, &load);
  assert_near (bw_echo_s (10, what.delay_s_per_m), 101e-9, 0.5e-9);
  assert_near (load.echo_s, 0, 0);
  what.source_ohm = 0;
  bw_load_compute (&what, &load);
  assert_near (load.echo_s, 101e-9, 0.5e-9);
  assert_near (load.echo_ratio, -1, 1e-9);
  assert_near (load.level_ratio, 1, 1e-9); /* a voltage output: the load does not matter */
  what.source_ohm = 75;
  what.ending = BW_ENDING_LOOP_OPEN;
  what.loop_m = 5;
  bw_load_compute (&what, &load);
  assert_near (load.echo_s, 50.5e-9, 0.05e-9);
  assert_near (load.echo_ratio, 1, 1e-9);
}

static void
test_load_words (void)
{
  BwLoadCase what;
  BwLoad load;
  bw_load_case_init (&what);
  what.ending = BW_ENDING_LOOP_OPEN;
  what.loop_m = 5;
  bw_load_compute (&what, &load);
  g_autofree char *says = bw_load_says (&what, &load, ',');
  bw_test_assert_words (says, WORDS ("+6,0 dB", "50,5", "100"));
}

/* Coupling: the law of the RC high pass; a bar of one time constant falls to 1/e. 220 µF and 150 Ω
 * have their corner at 4.82 Hz (arithmetic). */
static void
test_coupling (void)
{
  BwTilt tilt;
  assert_near (bw_coupling_corner_hz (150, 220e-6), 4.823, 5e-4);
  assert_near (bw_coupling_tilt (150 * 220e-6, 150, 220e-6), 1 - exp (-1), 1e-12);
  assert_near (bw_coupling_tilt (52e-6, 150, 220e-6), 52e-6 / (150 * 220e-6), 2e-6);
  assert_near (bw_coupling_tilt (1e3, 150, 220e-6), 1, 1e-12);
  double farad = bw_coupling_farad (18.4e-3, 150, 0.02);
  assert_near (bw_coupling_tilt (18.4e-3, 150, farad), 0.02, 1e-12);
  bw_coupling_compute (150, 220e-6, 52e-6, 18.4e-3, &tilt);
  assert_near (tilt.field, 1 - exp (-18.4e-3 / (150 * 220e-6)), 1e-12);
  assert_near (tilt.line, bw_coupling_tilt (52e-6, 150, 220e-6), 0);
}

/* The same with figures that are not round: 50 Ω behind 10 m of 75 Ω whose waves take 4.98 ns a metre reflect
 * (50 − 75) / (50 + 75) at the end and (62 − 75) / (62 + 75) at the source: −20 % × −9.489 % = 1.898 %, told to three
 * digits, 99.6 ns later. */
static void
test_echo_digits (void)
{
  BwLoadCase what;
  BwLoad load;
  bw_load_case_init (&what);
  what.ending = BW_ENDING_ONE;
  what.source_ohm = 62;
  what.terminator_ohm = 50;
  what.input_ohm = 1e12;
  what.delay_s_per_m = 4.98e-9;
  what.length_m = 10;
  bw_load_compute (&what, &load);
  assert_near (load.echo_ratio, 0.2 * 13 / 137, 1e-9);
  g_autofree char *says = bw_load_says (&what, &load, '.');
  bw_test_assert_words (says, WORDS ("An echo of 1.9\u00a0% follows after 99.6\u00a0ns."));
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  for (gsize i = 0; i < G_N_ELEMENTS (load_cases); i++)
    {
      g_autofree char *path = g_strconcat ("/load/level/", load_cases[i].name, NULL);
      g_test_add_data_func (path, GSIZE_TO_POINTER (i), test_load);
    }
  g_test_add_func ("/load/reflection", test_reflection);
  g_test_add_func ("/load/echo", test_echo);
  g_test_add_func ("/load/words", test_load_words);
  g_test_add_func ("/coupling/tilt", test_coupling);
  g_test_add_func ("/load/echo-digits", test_echo_digits);
  return g_test_run ();
}
