/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/sync/mix.h"

#include <math.h>

#include "support.h"

/* Truth table of Boolean algebra: H, V, then AND, OR, XOR, XNOR. */
static const int truth[][6] = {
  { 0, 0, 0, 0, 0, 1 }, { 0, 1, 0, 1, 1, 0 }, { 1, 0, 0, 1, 1, 0 }, { 1, 1, 1, 1, 0, 1 }
};

static void
test_truth (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (truth); i++)
    for (guint gate = BW_SYNC_GATE_AND; gate <= BW_SYNC_GATE_XNOR; gate++)
      g_assert_cmpint (bw_sync_gate_level (gate, truth[i][0], truth[i][1]), ==, truth[i][2 + gate]);
}

/* What follows from the table. At rest, negative sync is 1 and positive sync is 0; the tip is the
 * other level. "form" is written from the rows of the table for a tip of H alone and of V alone. */
static const struct
{
  guint gate;
  int h; /* +1 positive, -1 negative */
  int v;
  BwSyncForm form;
  int result;
  gboolean invert_h;
  gboolean invert_v;
} polarities[] = {
  { BW_SYNC_GATE_AND, -1, -1, BW_SYNC_FORM_COMPOSITE, -1, FALSE, FALSE },
  { BW_SYNC_GATE_AND, +1, -1, BW_SYNC_FORM_LINE_ONLY, +1, TRUE, FALSE },
  { BW_SYNC_GATE_AND, -1, +1, BW_SYNC_FORM_FIELD_ONLY, +1, FALSE, TRUE },
  { BW_SYNC_GATE_AND, +1, +1, BW_SYNC_FORM_NEITHER, +1, TRUE, TRUE },
  { BW_SYNC_GATE_OR, +1, +1, BW_SYNC_FORM_COMPOSITE, +1, FALSE, FALSE },
  { BW_SYNC_GATE_OR, -1, +1, BW_SYNC_FORM_LINE_ONLY, -1, TRUE, FALSE },
  { BW_SYNC_GATE_OR, +1, -1, BW_SYNC_FORM_FIELD_ONLY, -1, FALSE, TRUE },
  { BW_SYNC_GATE_OR, -1, -1, BW_SYNC_FORM_NEITHER, -1, TRUE, TRUE },
  { BW_SYNC_GATE_XOR, -1, -1, BW_SYNC_FORM_COMPOSITE, +1, FALSE, FALSE },
  { BW_SYNC_GATE_XOR, +1, +1, BW_SYNC_FORM_COMPOSITE, +1, FALSE, FALSE },
  { BW_SYNC_GATE_XOR, -1, +1, BW_SYNC_FORM_COMPOSITE, -1, FALSE, FALSE },
  { BW_SYNC_GATE_XOR, +1, -1, BW_SYNC_FORM_COMPOSITE, -1, FALSE, FALSE },
  { BW_SYNC_GATE_XNOR, -1, -1, BW_SYNC_FORM_COMPOSITE, -1, FALSE, FALSE },
  { BW_SYNC_GATE_XNOR, +1, +1, BW_SYNC_FORM_COMPOSITE, -1, FALSE, FALSE },
  { BW_SYNC_GATE_XNOR, -1, +1, BW_SYNC_FORM_COMPOSITE, +1, FALSE, FALSE },
  { BW_SYNC_GATE_XNOR, +1, -1, BW_SYNC_FORM_COMPOSITE, +1, FALSE, FALSE },
};

static guint
polarity_of (int sign)
{
  return sign > 0 ? BW_POLARITY_POSITIVE : BW_POLARITY_NEGATIVE;
}

static void
test_polarities (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (polarities); i++)
    {
      guint gate = polarities[i].gate;
      guint h = polarity_of (polarities[i].h), v = polarity_of (polarities[i].v);
      gboolean invert_h, invert_v;
      bw_sync_gate_wants (gate, h, v, &invert_h, &invert_v);
      g_assert_cmpint (bw_sync_gate_form (gate, h, v), ==, polarities[i].form);
      g_assert_cmpuint (bw_sync_gate_polarity (gate, h, v), ==, polarity_of (polarities[i].result));
      g_assert_cmpint (invert_h, ==, polarities[i].invert_h);
      g_assert_cmpint (invert_v, ==, polarities[i].invert_v);
    }
}

static BwSyncMix *
mix_of (const char *id, guint gate, int field, double v_offset_s)
{
  BwSyncMixCase what;
  bw_sync_mix_case_init (&what, bw_test_raster (id), gate);
  what.field = field;
  what.v_offset_s = v_offset_s;
  return bw_sync_mix_new (&what);
}

static const BwSyncEdge *
edge_at (const BwSyncTrace *trace, guint i)
{
  return &g_array_index (trace->edges, BwSyncEdge, i);
}

/* Pulses of @trace that start from @from_s to @to_s and are @width_s wide. */
static guint
count_pulses (const BwSyncTrace *trace, double from_s, double to_s, double width_s)
{
  guint n = 0;
  for (guint i = 0; i + 1 < trace->edges->len; i += 2)
    {
      double at_s = edge_at (trace, i)->at_s;
      n += at_s >= from_s - 1e-9 && at_s < to_s - 1e-9
           && fabs (edge_at (trace, i + 1)->at_s - at_s - width_s) < 1e-9;
    }
  return n;
}

/* SMPTE 170M-2004 clause 13.3 and table 3: 3 lines each of six equalising pulses of 2.3 us, six
 * broad pulses with serrations of 4.7 us, six equalising pulses; line period 286 / 4.5 us. ITU-R
 * BT.1700 table 3, BT.470-6 table 1-2: 2.5 lines each of five, 2.35 us and 27.3 us, at 64 us. */
static const struct
{
  const char *id;
  double line_s;
  double equalising_s;
  double broad_s;
  guint pulses;
} published[] = {
  { "525-59.94-interlaced", 286 / 4.5 * 1e-6, 2.3e-6, 286 / 9.0 * 1e-6 - 4.7e-6, 6 },
  { "625-50-interlaced", 64e-6, 2.35e-6, 27.3e-6, 5 },
};

static void
test_standard (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (published); i++)
    for (int field = 0; field < 2; field++)
      {
        g_autoptr (BwSyncMix) mix = mix_of (published[i].id, BW_SYNC_GATE_STANDARD, field, 0);
        guint n = published[i].pulses;
        double third_s = n * published[i].line_s / 2;
        BwSyncStructure structure;

        g_assert_cmpint (mix->result.rest, ==, 1);
        g_assert_cmpuint (mix->polarity, ==, BW_POLARITY_NEGATIVE);
        g_assert_cmpuint (count_pulses (&mix->result, -third_s, 0, published[i].equalising_s), ==,
                          n);
        g_assert_cmpuint (count_pulses (&mix->result, 0, third_s, published[i].broad_s), ==, n);
        g_assert_cmpuint (count_pulses (&mix->result, third_s, 2 * third_s,
                                        published[i].equalising_s),
                          ==, n);
        bw_sync_mix_structure (mix, &mix->result, &structure);
        g_assert_cmpuint (structure.n_serrations, ==, n);
        g_assert_cmpuint (structure.n_equalising[0], ==, n);
        g_assert_cmpuint (structure.n_equalising[1], ==, n);
        g_assert_cmpuint (structure.n_inverted, ==, 0);
      }
}

/* Neither gate makes equalising pulses or serrations; XOR turns the two H pulses upside down that
 * lie inside V of lines 4 to 6 (SMPTE 170M-2004 figure 7) and the one at its start. */
static void
test_no_gate_makes_them (void)
{
  for (guint gate = BW_SYNC_GATE_AND; gate <= BW_SYNC_GATE_XNOR; gate++)
    for (int field = 0; field < 2; field++)
      {
        g_autoptr (BwSyncMix) mix = mix_of ("525-59.94-interlaced", gate, field, 0);
        BwSyncStructure structure;
        if (mix->form != BW_SYNC_FORM_COMPOSITE)
          continue;
        bw_sync_mix_structure (mix, &mix->result, &structure);
        g_assert_cmpuint (structure.n_serrations, ==, 0);
        g_assert_cmpuint (structure.n_equalising[0] + structure.n_equalising[1], ==, 0);
        g_assert_cmpuint (structure.n_inverted, ==,
                          gate == BW_SYNC_GATE_AND ? 0
                          : field == 0             ? 2
                                                   : 3);
      }
}

/* Field 2 starts in the middle of line 266 (SMPTE 170M-2004 figure 7). By the truth table XOR is
 * at its tip from there to the start of line 267, half a line later, and again from the end of the
 * H pulse of line 269, 4.7 us after its start, to the end of V in the middle of it. */
static void
test_half_pulses (void)
{
  const double half_s = 286 / 9.0 * 1e-6;
  g_autoptr (BwSyncMix) mix = mix_of ("525-59.94-interlaced", BW_SYNC_GATE_XOR, 1, 0);
  g_assert_cmpuint (count_pulses (&mix->result, 0, half_s / 2, half_s), ==, 1);
  g_assert_cmpuint (count_pulses (&mix->result, 5 * half_s, 6 * half_s, half_s - 4.7e-6), ==, 1);
}

/* By the truth table: while V is late, H alone is at its tip; while it is early, V alone. */
static void
test_glitch (void)
{
  static const double offsets_s[] = { 0.1e-6, 0.5e-6, 1.5e-6, -0.1e-6, -0.5e-6, -1.5e-6 };
  for (gsize i = 0; i < G_N_ELEMENTS (offsets_s); i++)
    {
      double offset_s = offsets_s[i];
      g_autoptr (BwSyncMix) mix = mix_of ("525-59.94-interlaced", BW_SYNC_GATE_XOR, 0, offset_s);
      double start_s = MIN (offset_s, 0);
      g_assert_cmpuint (count_pulses (&mix->result, start_s, start_s + 3e-9, fabs (offset_s)), ==,
                        1);
    }
}

/* Property: at any time the result is the gate's of H and V; edges come in pairs and in order. */

static void
assert_trace (const BwSyncTrace *trace, const char *id)
{
  g_assert_cmpuint (trace->edges->len % 2, ==, 0);
  for (guint i = 0; i < trace->edges->len; i++)
    {
      g_assert_cmpint (edge_at (trace, i)->level, ==, i % 2 == 0 ? !trace->rest : trace->rest);
      if (i > 0 && edge_at (trace, i)->at_s <= edge_at (trace, i - 1)->at_s)
        g_error ("%s: edges out of order", id);
    }
}

static void
assert_gate (const BwSyncMix *mix, GRand *rand)
{
  for (int k = 0; k < 50 && mix->what.gate != BW_SYNC_GATE_STANDARD; k++)
    {
      double at_s = g_rand_double_range (rand, mix->from_s, mix->to_s);
      int h = bw_sync_trace_level (&mix->h, at_s), v = bw_sync_trace_level (&mix->v, at_s);
      int row = 2 * h + v;
      g_assert_cmpint (bw_sync_trace_level (&mix->result, at_s + mix->what.delay_s), ==,
                       truth[row][2 + mix->what.gate]);
    }
}

/* Every pulse of the raster's interval is there with its two edges, and no more; where field sync is
 * not serrated, those inside it are covered by it. */
static void
assert_standard (const BwSyncMix *mix)
{
  const BwRaster *raster = mix->what.raster;
  g_autoptr (BwVerticalInterval) interval = bw_vertical_interval_new (raster, mix->what.field,
                                                                      mix->what.lines_before,
                                                                      mix->what.lines_after);
  gboolean serrated = raster->serration_width_s > 0;
  gboolean trilevel = raster->sync_shape == BW_SHAPE_TRILEVEL;

  if (serrated)
    g_assert_cmpuint (mix->standard.edges->len, ==, 2 * interval->pulses->len);
  for (guint i = 0; i < interval->pulses->len; i++)
    {
      const BwPulse *pulse = &g_array_index (interval->pulses, BwPulse, i);
      double width_s = pulse->width_s / (trilevel && pulse->kind == BW_PULSE_LINE ? 2 : 1);
      gboolean covered = !serrated && pulse->start_s > -1e-9
                         && pulse->start_s < interval->sync_s + 1e-9;
      guint n = count_pulses (&mix->standard, pulse->start_s, pulse->start_s + 2e-9, width_s);
      if (!covered && n != 1)
        g_error ("%s: pulse %u is not there", raster->id, i);
      g_assert_cmpint (bw_sync_trace_level (&mix->standard, pulse->start_s + width_s / 2), ==, 0);
    }
}

static void
test_rasters (void)
{
  GPtrArray *rasters = bw_catalogue_rasters (bw_test_catalogue ());
  g_autoptr (GRand) rand = g_rand_new_with_seed (9);

  for (guint r = 0; r < rasters->len; r++)
    for (guint i = 0; i < 2 * BW_N_SYNC_GATES; i++)
      {
        const BwRaster *raster = rasters->pdata[r];
        double line_s = 1 / bw_ratio_to_double (raster->line_rate_hz);
        BwSyncMixCase what;
        bw_sync_mix_case_init (&what, raster, i % BW_N_SYNC_GATES);
        what.field = i >= BW_N_SYNC_GATES && raster->scan == BW_SCAN_INTERLACED;
        what.h_polarity = (guint) g_rand_int_range (rand, 0, 2);
        what.v_polarity = (guint) g_rand_int_range (rand, 0, 2);
        what.v_offset_s = i % 3 == 0 ? 0 : g_rand_double_range (rand, -0.49, 0.49) * line_s;
        what.delay_s = i % 2 == 0 ? 0 : g_rand_double_range (rand, 0, 0.24) * line_s;
        what.lines_before = g_rand_int_range (rand, 1, 6);
        what.lines_after = g_rand_int_range (rand, 1, 6);
        g_autoptr (BwSyncMix) mix = bw_sync_mix_new (&what);
        g_assert_nonnull (mix);
        assert_trace (&mix->h, raster->id);
        assert_trace (&mix->v, raster->id);
        assert_trace (&mix->result, raster->id);
        assert_trace (&mix->standard, raster->id);
        assert_gate (mix, rand);
        assert_standard (mix);
        if (what.gate == BW_SYNC_GATE_STANDARD)
          g_assert_cmpuint (mix->result.edges->len, ==, mix->standard.edges->len);
      }
}

/* Where a pulse begins before the one before it has ended, there is one long tip. Field 2 of 525 lines: line sync, here of
 * 36 µs, begins half a line, 31.778 µs, before the first equalising pulse, here of 10 µs: together 41.778 µs. */
static void
test_long_tip (void)
{
  const double half_s = 286 / 9.0 * 1e-6;
  g_autoptr (BwRaster) raster = bw_raster_copy (bw_test_raster ("525-59.94-interlaced"));
  BwSyncMixCase what;
  raster->h_sync_s = 36e-6;
  raster->equalising_width_s = 10e-6;
  g_assert_true (bw_raster_check (raster, NULL));
  bw_sync_mix_case_init (&what, raster, BW_SYNC_GATE_STANDARD);
  what.field = 1;
  g_autoptr (BwSyncMix) mix = bw_sync_mix_new (&what);
  g_assert_cmpuint (count_pulses (&mix->standard, -7 * half_s, -6 * half_s, half_s + 10e-6), ==, 1);
  g_assert_cmpint (bw_sync_trace_level (&mix->standard, -7 * half_s + 41e-6), ==, 0);
  g_assert_cmpint (bw_sync_trace_level (&mix->standard, -7 * half_s + 42.5e-6), ==, 1);
}

/* Faults */

static void
assert_fault (const BwSyncMixCase *what, int code, const char *word)
{
  g_autoptr (GError) error = NULL;
  g_assert_false (bw_sync_mix_check (what, &error));
  g_assert_error (error, BW_SYNC_MIX_ERROR, code);
  bw_test_assert_words (error->message, WORDS (word));
}

static void
test_faults (void)
{
  const BwRaster *interlaced = bw_test_raster ("525-59.94-interlaced");
  BwSyncMixCase good, bad;
  bw_sync_mix_case_init (&good, interlaced, BW_SYNC_GATE_AND);
  g_assert_true (bw_sync_mix_check (&good, NULL));

  bad = good, bad.field = 2;
  assert_fault (&bad, BW_SYNC_MIX_ERROR_FIELD, "1 or 2");
  bad = good, bad.field = 1, bad.raster = bw_test_raster ("vesa-dmt-04");
  assert_fault (&bad, BW_SYNC_MIX_ERROR_FIELD, "progressive");
  bad = good, bad.gate = BW_N_SYNC_GATES;
  assert_fault (&bad, BW_SYNC_MIX_ERROR_KIND, "gate");
  bad = good, bad.v_offset_s = 31.8e-6; /* half a line is 31.778 us */
  assert_fault (&bad, BW_SYNC_MIX_ERROR_OFFSET, "half a line");
  bad = good, bad.v_offset_s = (double) NAN;
  assert_fault (&bad, BW_SYNC_MIX_ERROR_OFFSET, "half a line");
  bad = good, bad.delay_s = -1e-9;
  assert_fault (&bad, BW_SYNC_MIX_ERROR_DELAY, "negative");
  bad = good, bad.delay_s = 16e-6;
  assert_fault (&bad, BW_SYNC_MIX_ERROR_DELAY, "quarter");
  bad = good, bad.lines_before = 0;
  assert_fault (&bad, BW_SYNC_MIX_ERROR_LINES, "lines");
}

/* Each member just inside and just outside of what it may be; a line of 625 lines is 64 µs. */
static void
test_each_limit (void)
{
  const BwRaster *raster = bw_test_raster ("625-50-interlaced");
  BwSyncMixCase good;
  bw_sync_mix_case_init (&good, raster, BW_SYNC_GATE_XOR);
#define TRY(member, value, taken)                                                                  \
  {                                                                                                \
    BwSyncMixCase what = good;                                                                     \
    what.member = value;                                                                           \
    g_assert_cmpint (bw_sync_mix_check (&what, NULL), ==, taken);                                  \
  }
  TRY (field, 0, TRUE);
  TRY (field, 1, TRUE);
  TRY (field, 2, FALSE);
  TRY (gate, BW_N_SYNC_GATES, FALSE);
  TRY (h_polarity, BW_N_POLARITIES, FALSE);
  TRY (v_polarity, BW_N_POLARITIES, FALSE);
  TRY (v_offset_s, 31.9e-6, TRUE);
  TRY (v_offset_s, -31.9e-6, TRUE);
  TRY (v_offset_s, 32.1e-6, FALSE);
  TRY (v_offset_s, -32.1e-6, FALSE);
  TRY (delay_s, 15.9e-6, TRUE);
  TRY (delay_s, 16.1e-6, FALSE);
  TRY (delay_s, -1e-9, FALSE);
  TRY (lines_before, 1, TRUE);
  TRY (lines_before, 100, TRUE);
  TRY (lines_before, 0, FALSE);
  TRY (lines_before, 101, FALSE);
  TRY (lines_after, 1, TRUE);
  TRY (lines_after, 100, TRUE);
  TRY (lines_after, 0, FALSE);
  TRY (lines_after, 101, FALSE);
#undef TRY
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  g_test_add_func ("/sync-mix/truth", test_truth);
  g_test_add_func ("/sync-mix/polarities", test_polarities);
  g_test_add_func ("/sync-mix/standard", test_standard);
  g_test_add_func ("/sync-mix/no-gate-makes-them", test_no_gate_makes_them);
  g_test_add_func ("/sync-mix/half-pulses", test_half_pulses);
  g_test_add_func ("/sync-mix/glitch", test_glitch);
  g_test_add_func ("/sync-mix/rasters", test_rasters);
  g_test_add_func ("/sync-mix/long-tip", test_long_tip);
  g_test_add_func ("/sync-mix/faults", test_faults);
  g_test_add_func ("/sync-mix/each-limit", test_each_limit);
  return g_test_run ();
}
