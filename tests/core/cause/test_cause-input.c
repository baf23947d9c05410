/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What should be at an input when all that is advised is done: how far the preferred values of the series
 * leave it open, what an attenuator too many would be, and what the result marks. */
#include "core/cause/cause-private.h"
#include "core/cause/results.h"

#include <math.h>

#include "support.h"

#define NEAR(a, b, tolerance) g_assert_true (bw_near (a, b, tolerance))

/* 5 V logic behind 50 Ω, and a picture of 1.4 V from 75 Ω. */
static BwSource *
logic_source (void)
{
  BwSource *source = bw_source_new ();
  source->signal = BW_SIGNAL_RGB;
  source->syncs = BW_BIT (BW_SYNC_COMPOSITE);
  source->video_v = 1.4;
  source->source_ohm = 75;
  source->sync_v = 5;
  source->sync_load = BW_LOAD_OPEN;
  source->sync_ohm = 50;
  return source;
}

static BwInput *
rgb_input (double low_v, double high_v, guint sync_termination)
{
  BwInput *input = bw_input_new ();
  input->signals = BW_BIT (BW_SIGNAL_RGB);
  input->syncs = BW_BIT (BW_SYNC_COMPOSITE);
  input->termination = BW_TERMINATION_FIXED;
  input->sync_termination = sync_termination;
  input->input_ohm = 10e3;
  input->video_v = (BwBands){ .n = 1, .at = { { 0.7, 0.7 } } };
  input->own_sync_v = (BwBands){ .n = 1, .at = { { low_v, high_v } } };
  return input;
}

static BwCauseCase
case_of (const BwSource *source, const BwInput *input, BwConductor conductor)
{
  BwCauseCase c;
  bw_cause_case_of_input (source, input, bw_test_raster ("625-50-interlaced"), BW_SYNC_COMPOSITE,
                          conductor, &c);
  return c;
}

/* 0.3 V from 5 V behind 50 Ω into 75 Ω take 75 × 5/0.3 − 125 = 1125 Ω. Nearest by ratio are 1.2 kΩ of E12, 1.1 kΩ of
 * E24, which is what is advised, and 1.13 kΩ of E96 (IEC 60063). Behind 1.1 kΩ stand 5 × 75/1225 V; 1.2 kΩ makes it
 * 1225/1325 of that. */
static void
test_resistor_spread (void)
{
  g_autoptr (BwSource) source = logic_source ();
  g_autoptr (BwInput) input = rgb_input (0.25, 0.35, BW_TERMINATION_FIXED);
  const BwCauseCase c = case_of (source, input, BW_CONDUCTOR_SYNC);
  NEAR (c.series_ohm, 1100, 1e-9);
  NEAR (c.load_ohm, 75, 1e-9);
  NEAR (c.spread.high, 1, 1e-9);
  NEAR (c.spread.low, 1225.0 / 1325, 1e-9);
}

/* 5 × 75/1300 V take 1175 Ω, less than the 1.2 kΩ of E12 and E24 and the 1.18 kΩ of E96 (IEC 60063): who puts in the
 * very value has the highest level. 5 × 75/2335 V take 2210 Ω, which is of E96; E12 and E24 have 2.2 kΩ. */
static void
test_resistor_spread_to_the_exact_value (void)
{
  g_autoptr (BwSource) source = logic_source ();
  g_autoptr (BwInput) between = rgb_input (375.0 / 1300, 375.0 / 1300, BW_TERMINATION_FIXED);
  g_autoptr (BwInput) on_e96 = rgb_input (375.0 / 2335, 375.0 / 2335, BW_TERMINATION_FIXED);
  BwCauseCase c = case_of (source, between, BW_CONDUCTOR_SYNC);
  NEAR (c.series_ohm, 1200, 1e-9);
  NEAR (c.spread.low, 1, 1e-9);
  NEAR (c.spread.high, 1325.0 / 1300, 1e-9);
  c = case_of (source, on_e96, BW_CONDUCTOR_SYNC);
  NEAR (c.series_ohm, 2200, 1e-9);
  NEAR (c.spread.low, 2325.0 / 2335, 1e-9);
  NEAR (c.spread.high, 1, 1e-9);
}

/* 1.4 V to 0.7 V: a T of 25, 100 and 25 Ω at 75 Ω (75 × (1 − k)/(1 + k) and 150 k/(1 − k²) of k = 1/2). By E12 its
 * arms are 27 Ω, by E24 24 Ω, by E96 24.9 Ω; 100 Ω are in all of them (IEC 60063). Nodes: 102 Ω before a shunt of
 * 100 Ω and 102 Ω behind it pass 2 × 50.495/152.495 × 75/102 = 0.48694; 99 Ω pass
 * 2 × 49.749/148.749 × 75/99 = 0.50674. */
static void
test_pad_spread (void)
{
  g_autoptr (BwSource) source = logic_source ();
  g_autoptr (BwInput) input = rgb_input (0.25, 0.35, BW_TERMINATION_FIXED);
  const BwCauseCase c = case_of (source, input, BW_CONDUCTOR_G);
  NEAR (c.pad_ratio, 0.5, 1e-9);
  NEAR (c.spread.low, 0.48694 / 0.5, 2e-5);
  NEAR (c.spread.high, 0.50674 / 0.5, 2e-5);
}

static double
ohm_of_added (const BwCauseCase *c)
{
  g_autoptr (GArray) all = bw_hypotheses_new (c);
  for (guint i = 0; i < all->len; i++)
    {
      const BwHypothesis *h = &g_array_index (all, BwHypothesis, i);
      if (h->n_faults == 1 && h->faults[0].kind == BW_FAULT_ATTENUATOR_ADDED)
        return h->faults[0].ohm;
    }
  return 0;
}

/* An attenuator too many is one that brings the sync to what an input is made for: here √(0.5 × 5) = 1.581 V, for
 * which 5 V behind 50 Ω take 75 × 5/1.581 − 125 = 112.2 Ω, by E24 110 Ω. Where that is not known it is one for
 * 0.3 V: 1.1 kΩ. For √(1 × 5) V 42.7 Ω would do, less than a line's own 75 Ω: nobody puts that in. */
static void
test_attenuator_too_many (void)
{
  g_autoptr (BwSource) source = logic_source ();
  g_autoptr (BwInput) wide = rgb_input (0.5, 5, BW_TERMINATION_NONE);
  g_autoptr (BwInput) narrow = rgb_input (1, 5, BW_TERMINATION_NONE);
  BwCauseCase c = case_of (source, wide, BW_CONDUCTOR_SYNC);
  NEAR (c.series_ohm, 0, 0);
  NEAR (ohm_of_added (&c), 110, 1e-9);
  c = case_of (source, narrow, BW_CONDUCTOR_SYNC);
  NEAR (ohm_of_added (&c), 0, 0);
  c = case_of (source, NULL, BW_CONDUCTOR_SYNC);
  NEAR (ohm_of_added (&c), 1100, 1e-9);
  c = case_of (source, wide, BW_CONDUCTOR_G);
  NEAR (ohm_of_added (&c), 0, 0);
}

static BwMark
mark_of_cause (BwCauseCase *c, double white_v, guint row)
{
  BwScopeReadings readings = { 0 };
  g_autoptr (BwResult) result = bw_result_new ('.');
  bw_scope_readings_set (&readings, BW_SCOPE_WHITE, white_v);
  bw_scope_readings_set (&readings, BW_SCOPE_SYNC, white_v * 3 / 7);
  g_autoptr (GArray) causes = bw_causes (c, &readings);
  bw_cause_say (bw_result_root (result), NULL, NULL, c, &readings, causes);
  const BwNode *table = bw_node_find (bw_result_root (result), "causes");
  g_assert_cmpuint (table->children->len, ==, causes->len);
  return row < causes->len ? ((const BwNode *) table->children->pdata[row])->mark : BW_MARK_NONE;
}

/* The first line of the causes is marked: as well if nothing is wrong, as a fault if something is, or if nothing
 * is known that would explain it. PAL: 0.7 V; without its 75 Ω nearly twice that. */
static void
test_marks (void)
{
  BwCauseCase c;
  bw_cause_case_standard (BW_SYSTEM_PAL_B, BW_SIGNAL_COMPOSITE, BW_SYNC_IN_VIDEO,
                          BW_CONDUCTOR_VIDEO, &c);
  g_assert_cmpuint (mark_of_cause (&c, 0.7, 0), ==, BW_MARK (BW_SEVERITY_OK));
  g_assert_cmpuint (mark_of_cause (&c, 1.4, 0), ==, BW_MARK (BW_SEVERITY_FATAL));
  g_assert_cmpuint (mark_of_cause (&c, 1.4, 1), ==, BW_MARK_NONE);
  g_assert_cmpuint (mark_of_cause (&c, 5, 0), ==, BW_MARK (BW_SEVERITY_FATAL));
}

/* By how much a reading lies above or below what a cause gives: 0.7 V into 10 kΩ in place of 75 Ω are
 * 0.7 × 20000 / 10075 = 1.389578 V, 1.35 V less than that by 39.58 mV, 1.43 V more by 40.42 mV. */
static void
test_off (void)
{
  static const struct
  {
    double white_v;
    const char *says;
  } cases[] = {
    { 1.35, "White: read 1.35\u00a0V, this gives 1.39\u00a0V (\u221239.58\u00a0mV)" },
    { 1.43, "White: read 1.43\u00a0V, this gives 1.39\u00a0V (+40.42\u00a0mV)" },
    { 14000.0 / 10075, "White: read 1.39\u00a0V, this gives 1.39\u00a0V (agrees)" },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      BwCauseCase c;
      BwScopeReadings readings = { 0 };
      g_autoptr (BwResult) result = bw_result_new ('.');
      bw_cause_case_standard (BW_SYSTEM_PAL_B, BW_SIGNAL_COMPOSITE, BW_SYNC_IN_VIDEO,
                              BW_CONDUCTOR_VIDEO, &c);
      bw_scope_readings_set (&readings, BW_SCOPE_WHITE, cases[i].white_v);
      bw_scope_readings_set (&readings, BW_SCOPE_POLARITY, -1);
      g_autoptr (GArray) causes = bw_causes (&c, &readings);
      g_assert_cmpint (g_array_index (causes, BwCause, 0).faults[0].kind, ==, BW_FAULT_UNTERMINATED);
      bw_cause_say (bw_result_root (result), NULL, NULL, &c, &readings, causes);
      const BwNode *table = bw_node_find (bw_result_root (result), "causes");
      g_autofree char *text = bw_node_cell_text (table->children->pdata[0], 3, TRUE);
      bw_test_assert_words (text, WORDS (cases[i].says, "downwards (agrees)"));
    }
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  g_test_add_func ("/cause-input/resistor-spread", test_resistor_spread);
  g_test_add_func ("/cause-input/resistor-spread-to-the-exact-value",
                   test_resistor_spread_to_the_exact_value);
  g_test_add_func ("/cause-input/pad-spread", test_pad_spread);
  g_test_add_func ("/cause-input/attenuator-too-many", test_attenuator_too_many);
  g_test_add_func ("/cause-input/marks", test_marks);
  g_test_add_func ("/cause-input/off", test_off);
  return g_test_run ();
}
