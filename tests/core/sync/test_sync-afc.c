/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/sync/words.h"

#include <math.h>
#include <string.h>

#include "support.h"

#define LINE_S (286 / 4.5 * 1e-6) /* SMPTE 170M-2004 table 2 */
#define H_S 4.7e-6                /* likewise */

typedef struct
{
  BwSyncMixCase what;
  BwSyncAfc afc;
  BwSyncMix *mix;
  BwSyncRun *run;
} Bench;

static void
bench_init_with (Bench *bench, const char *id, guint gate, int field)
{
  const BwRaster *raster = bw_test_raster (id);
  *bench = (Bench){ 0 };
  bw_sync_mix_case_init (&bench->what, raster, gate);
  bench->what.field = field;
  bw_sync_afc_init (&bench->afc, raster);
}

static void
bench_init (Bench *bench, guint gate, int field)
{
  bench_init_with (bench, "525-59.94-interlaced", gate, field);
}

static void
bench_run (Bench *bench)
{
  bench->mix = bw_sync_mix_new (&bench->what);
  bench->run = bw_sync_run_new (bench->mix, &bench->afc);
}

static void
bench_clear (Bench *bench)
{
  bw_sync_run_free (bench->run);
  bw_sync_mix_free (bench->mix);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Bench, bench_clear)

static const BwSyncLine *
line_at (const BwSyncRun *run, guint i)
{
  return &g_array_index (run->lines, BwSyncLine, i);
}

/* The line whose number the standard gives. */
static const BwSyncLine *
line_of (const BwSyncRun *run, int number)
{
  for (guint i = 0; i < run->lines->len; i++)
    if (line_at (run, i)->line == number)
      return line_at (run, i);
  g_error ("no line %d", number);
}

/* All lines have their edge but @first to @last. */
static void
assert_lines (const BwSyncRun *run, int first, int last, guint edge, double late_s)
{
  for (guint i = 0; i < run->lines->len; i++)
    {
      const BwSyncLine *line = line_at (run, i);
      gboolean other = line->line >= first && line->line <= last;
      if (line->edge != (other ? edge : BW_AFC_EDGE_RIGHT))
        g_error ("line %d is %s", line->line, bw_kind_id (&bw_afc_edges, line->edge));
      g_assert_cmpfloat_with_epsilon (line->late_s, other ? late_s : 0, 1e-12);
    }
}

/* V is at its tip on lines 4 to 6 and from the middle of 266 to that of 269 (SMPTE 170M-2004 figure
 * 7). By the truth table of AND its output stays low there, whatever H does. It is low already when
 * H falls at the start of lines 5, 6 and, as V ends there, 7; likewise 267, 268 and 269. */
static void
test_and (void)
{
  g_auto (Bench) first, second;
  bench_init (&first, BW_SYNC_GATE_AND, 0);
  bench_run (&first);
  assert_lines (first.run, 5, 7, BW_AFC_EDGE_MISSING, 0);
  g_assert_cmpuint (first.run->n_half, ==, 0);
  bench_init (&second, BW_SYNC_GATE_AND, 1);
  bench_run (&second);
  assert_lines (second.run, 267, 269, BW_AFC_EDGE_MISSING, 0);
  g_assert_cmpuint (second.run->n_half, ==, 1); /* the start of V in the middle of line 266 */
}

/* By the truth table of XNOR the output is the inverse of H while V is low, so that it falls where
 * H rises: 4.7 us after the start of the line (SMPTE 170M-2004 table 2). */
static void
test_xnor (void)
{
  static const guint gates[] = { BW_SYNC_GATE_XOR, BW_SYNC_GATE_XNOR };
  for (gsize i = 0; i < G_N_ELEMENTS (gates); i++)
    {
      g_auto (Bench) first, second;
      bench_init (&second, gates[i], 1);
      bench_run (&second);
      assert_lines (second.run, 267, 269, BW_AFC_EDGE_LATE, H_S);
      g_assert_cmpuint (second.run->n_half, ==, 1);
      bench_init (&first, gates[i], 0);
      bench_run (&first);
      for (int line = 4; line <= 6; line++)
        g_assert_cmpfloat_with_epsilon (line_of (first.run, line)->late_s, H_S, 1e-12);
      /* V ends as H of line 7 starts: low before, low after. */
      g_assert_cmpuint (line_of (first.run, 7)->edge, ==, BW_AFC_EDGE_MISSING);
      g_assert_cmpuint (first.run->n[BW_AFC_EDGE_RIGHT], ==, first.run->lines->len - 4);
    }
}

/* A leading edge at the start of every line, and in the middle of those in which equalising and
 * broad pulses stand. SMPTE 170M-2004 figure 7: lines 1 to 9, and 263.5 to 272.5, thus nine middles
 * in each. BT.470-6 figure 2-1: lines 623.5 to 6 hold eight, 311 to 318.5 seven. */
static void
test_standard (void)
{
  static const struct
  {
    const char *id;
    guint middles[2];
  } cases[] = { { "525-59.94-interlaced", { 9, 9 } }, { "625-50-interlaced", { 8, 7 } } };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    for (int field = 0; field < 2; field++)
      {
        g_auto (Bench) bench;
        bench_init_with (&bench, cases[i].id, BW_SYNC_GATE_STANDARD, field);
        bench_run (&bench);
        assert_lines (bench.run, 0, 0, BW_AFC_EDGE_RIGHT, 0);
        g_assert_cmpuint (bench.run->n_half, ==, cases[i].middles[field]);
        g_assert_cmpint (bench.run->settle_lines, ==, 0);
        g_assert_cmpfloat (fabs (bench.run->peak_s), <, 1e-12);
      }
}

/* The delay of a separator moves all lines alike. */
static void
test_delay (void)
{
  g_auto (Bench) bench;
  bench_init (&bench, BW_SYNC_GATE_STANDARD, 0);
  bench.what.delay_s = 0.4e-6;
  bench_run (&bench);
  assert_lines (bench.run, 0, 0, BW_AFC_EDGE_RIGHT, 0);
  g_assert_cmpfloat_with_epsilon (g_array_index (bench.mix->result.edges, BwSyncEdge, 0).at_s
                                      - g_array_index (bench.mix->standard.edges, BwSyncEdge, 0)
                                            .at_s,
                                  0.4e-6, 1e-12);
  g_assert_cmpint (bench.run->settle_lines, ==, 0);
}

/* XOR with V 0.2 us late: by the truth table a tip of 0.2 us at the start of line 4. At the end of V
 * H of line 7 has begun: from low (both) to high is the tip of H alone. */
static void
test_glitches (void)
{
  g_auto (Bench) narrow, wide;
  bench_init (&narrow, BW_SYNC_GATE_XOR, 0);
  narrow.what.v_offset_s = 0.2e-6;
  narrow.afc.glitch_s = 0.3e-6;
  bench_run (&narrow);
  g_assert_cmpuint (narrow.run->n_glitches, ==, 2);
  g_assert_cmpfloat_with_epsilon (line_of (narrow.run, 4)->late_s, H_S, 1e-12);

  bench_init (&wide, BW_SYNC_GATE_XOR, 0);
  wide.what.v_offset_s = 0.2e-6;
  wide.afc.glitch_s = 0.1e-6;
  bench_run (&wide);
  g_assert_cmpuint (wide.run->n_glitches, ==, 0);
  g_assert_cmpuint (line_of (wide.run, 4)->edge, ==, BW_AFC_EDGE_RIGHT);
  g_assert_cmpuint (wide.run->n_extra, ==, 1); /* that at the end of H of line 4 */
}

/* V 1 us early: AND falls with V, 1 us before line 4, and rises again 1 us before line 7. */
static void
test_early (void)
{
  g_auto (Bench) bench;
  bench_init (&bench, BW_SYNC_GATE_AND, 0);
  bench.what.v_offset_s = -1e-6;
  bench_run (&bench);
  g_assert_cmpuint (line_of (bench.run, 4)->edge, ==, BW_AFC_EDGE_EARLY);
  g_assert_cmpfloat_with_epsilon (line_of (bench.run, 4)->late_s, -1e-6, 1e-12);
  g_assert_cmpuint (line_of (bench.run, 6)->edge, ==, BW_AFC_EDGE_MISSING);
  g_assert_cmpuint (line_of (bench.run, 7)->edge, ==, BW_AFC_EDGE_RIGHT);
}

/* Of two edges in the gate the nearer one is taken, whether it comes first or second. By the truth table of XOR the
 * output has a tip from the start of V, before line 4, to that of H at line 4, and another from the end of H,
 * 4.7 µs after it. The gate is a quarter of a line, 15.9 µs. */
static void
test_nearest (void)
{
  static const double offsets_s[] = { -3e-6, -6e-6 }, nearest_s[] = { -3e-6, H_S };
  for (gsize i = 0; i < G_N_ELEMENTS (offsets_s); i++)
    {
      g_auto (Bench) bench;
      bench_init (&bench, BW_SYNC_GATE_XOR, 0);
      bench.what.v_offset_s = offsets_s[i];
      bench_run (&bench);
      g_assert_cmpfloat_with_epsilon (line_of (bench.run, 4)->late_s, nearest_s[i], 1e-12);
      g_assert_cmpuint (line_of (bench.run, 4)->n_extra, ==, 1);
      g_assert_cmpuint (line_of (bench.run, 4)->edge, ==,
                        nearest_s[i] < 0 ? BW_AFC_EDGE_EARLY : BW_AFC_EDGE_LATE);
    }
}

/* The loop against closed forms of linear difference equations. */

/* First order: without edges on lines 5 to 7 the phase runs away by the rate error each line, then
 * it falls back by exp (-1/t) each line. */
static void
test_first_order (void)
{
  g_auto (Bench) bench;
  bench_init (&bench, BW_SYNC_GATE_AND, 0);
  bench.afc.loop = BW_AFC_LOOP_FIRST;
  bench.afc.time_constant_lines = 4;
  bench.afc.rate_error = 0.02;
  bench_run (&bench);
  double away_s = 3 * 0.02 * LINE_S;
  for (int line = 8; line <= 23; line++)
    g_assert_cmpfloat_with_epsilon (line_of (bench.run, line)->phase_s,
                                    away_s * exp (-(line - 8) / 4.0), 1e-12);
  g_assert_cmpfloat_with_epsilon (line_of (bench.run, 4)->phase_s, 0, 1e-12);
  g_assert_cmpfloat_with_epsilon (bench.run->static_s, 0.02 * LINE_S / (1 - exp (-0.25)), 1e-12);
  g_assert_cmpint (bench.run->peak_line, ==, 8);
  g_assert_cmpint (bench.run->picture_line, ==, 21); /* SMPTE 170M-2004 figure 7 */
  g_assert_cmpfloat_with_epsilon (bench.run->picture_s, away_s * exp (-13 / 4.0), 1e-12);
  /* Active line 63.556 - 10.7 us (SMPTE 170M-2004 table 2); straight within a thousandth of it. */
  double share = bench.run->picture_s / (LINE_S - 10.7e-6);
  g_assert_cmpfloat_with_epsilon (bench.run->picture_share, share, 1e-12);
  g_assert_cmpint (bench.run->settle_lines, ==, (int) ceil (4 * log (share / 1e-3)));
}

/* Second order with the double pole z: the answer to one edge that is late by w is (a + b m) z^m,
 * m lines after the next; three of them add up. */
static double
impulse_answer (double z, double late_s, int m)
{
  double k = 2 * (1 - z), g = (1 - z) * (1 - z);
  double a = k * late_s, next = (1 - k) * a + g * late_s;
  return m < 0 ? 0 : (a + (next / z - a) * m) * pow (z, m);
}

static void
test_second_order (void)
{
  static const double constants[] = { 1, 5, 10, 40 };
  for (gsize i = 0; i < G_N_ELEMENTS (constants); i++)
    {
      g_auto (Bench) bench;
      double z = exp (-1 / constants[i]);
      bench_init (&bench, BW_SYNC_GATE_XNOR, 1);
      bench.afc.time_constant_lines = constants[i];
      bench_run (&bench);
      for (int line = 264; line <= 285; line++)
        {
          double expected_s = 0;
          for (int late = 267; late <= 269; late++)
            expected_s += impulse_answer (z, H_S, line - late - 1);
          g_assert_cmpfloat_with_epsilon (line_of (bench.run, line)->phase_s, expected_s, 1e-12);
        }
    }
}

/* It overshoots: where (a + b m) z^m of the three late edges has its extreme after the first line of
 * picture, worked out line by line here, the bend is larger than on that line. */
static void
test_bend (void)
{
  static const double constants[] = { 5, 6, 8 };
  for (gsize i = 0; i < G_N_ELEMENTS (constants); i++)
    {
      g_auto (Bench) bench;
      double z = exp (-1 / constants[i]), most_s = 0, first_s = 0;
      int last = 0;
      bench_init (&bench, BW_SYNC_GATE_XNOR, 1);
      bench.afc.time_constant_lines = constants[i];
      bench_run (&bench);
      for (int line = 283; line < 400; line++)
        {
          double phase_s = 0;
          for (int late = 267; late <= 269; late++)
            phase_s += impulse_answer (z, H_S, line - late - 1);
          if (line == 283)
            first_s = phase_s;
          if (fabs (phase_s) > fabs (most_s))
            most_s = phase_s;
          if (fabs (phase_s) > 1e-3 * (LINE_S - 10.7e-6))
            last = line;
        }
      g_assert_cmpfloat_with_epsilon (bench.run->picture_s, first_s, 1e-12);
      g_assert_cmpfloat_with_epsilon (bench.run->bend_s, most_s, 1e-12);
      g_assert_cmpfloat (most_s, <, 0);
      g_assert_true (i == 0 || fabs (most_s) > fabs (first_s));
      g_assert_cmpint (bench.run->settle_lines, ==, last - 283 + 1);
    }
}

/* A second-order loop has learned the rate and keeps it, so that AND does not pull it away. */
static void
test_memory (void)
{
  g_auto (Bench) bench;
  bench_init (&bench, BW_SYNC_GATE_AND, 0);
  bench_run (&bench);
  g_assert_true (bench.run->locks);
  g_assert_cmpfloat (fabs (bench.run->peak_s), <, 1e-12);
  g_assert_cmpint (bench.run->settle_lines, ==, 0);
}

/* What is no composite sync is no line sync either. */
static void
test_no_lock (void)
{
  g_auto (Bench) no_line, no_field, far_off;
  bench_init (&no_line, BW_SYNC_GATE_OR, 0); /* of active-low H and V */
  bench_run (&no_line);
  g_assert_false (no_line.run->locks);
  g_assert_true (isnan (no_line.run->picture_s));

  bench_init (&no_field, BW_SYNC_GATE_AND, 0);
  no_field.what.h_polarity = BW_POLARITY_POSITIVE; /* H comes through, V does not */
  bench_run (&no_field);
  g_assert_true (no_field.run->locks);

  bench_init (&far_off, BW_SYNC_GATE_STANDARD, 0);
  far_off.afc.loop = BW_AFC_LOOP_FIRST;
  far_off.afc.time_constant_lines = 100;
  far_off.afc.rate_error = 0.05; /* settles 0.05 / (1 - exp (-0.01)) = 5 lines behind */
  bench_run (&far_off);
  g_assert_false (far_off.run->locks);

  g_auto (Bench) far_ahead;
  bench_init (&far_ahead, BW_SYNC_GATE_STANDARD, 0);
  far_ahead.afc.loop = BW_AFC_LOOP_FIRST;
  far_ahead.afc.time_constant_lines = 100;
  far_ahead.afc.rate_error = -0.05; /* as far the other way */
  bench_run (&far_ahead);
  g_assert_false (far_ahead.run->locks);
}

/* An AFC locks where more than half of the lines outside field sync have their edge. Of the 26 lines that are shown 22 are
 * outside: from line 10 on some of them lose their tip here, or the first, line 523, and the others from line 10 on. */
static void
test_half_of_the_lines (void)
{
  for (int k = 0; k < 12; k++)
    {
      int lost = 8 + k / 2, of_first = k % 2;
      g_auto (Bench) bench;
      bench_init (&bench, BW_SYNC_GATE_STANDARD, 0);
      bench.mix = bw_sync_mix_new (&bench.what);
      GArray *edges = bench.mix->result.edges;
      for (guint i = 0; i + 1 < edges->len;)
        {
          double line = 4 + g_array_index (edges, BwSyncEdge, i).at_s / LINE_S;
          if ((line > 9.9 && line < 9.9 + lost - of_first) || (of_first && line < -1.5))
            g_array_remove_range (edges, i, 2);
          else
            i += 2;
        }
      bench.run = bw_sync_run_new (bench.mix, &bench.afc);
      g_assert_cmpuint (bench.run->n[BW_AFC_EDGE_MISSING], ==, lost);
      g_assert_cmpint (bench.run->locks, ==, 22 - lost > 11);
    }
}

/* VESA DMT 04h, 640 × 480 at 60 Hz: 2 lines of field sync, 25 of back porch and 8 of border come before the picture. */
static void
test_picture_below_a_border (void)
{
  g_auto (Bench) bench;
  bench_init_with (&bench, "vesa-dmt-04", BW_SYNC_GATE_AND, 0);
  bench_run (&bench);
  g_assert_cmpint (bench.run->picture_line, ==, 2 + 25 + 8 + 1);
}

static void
test_picture_width (void)
{
  g_auto (Bench) bench;
  bench_init (&bench, BW_SYNC_GATE_XNOR, 0);
  bench.afc.picture_width_m = 0.4;
  bench_run (&bench);
  g_assert_cmpfloat (fabs (bench.run->picture_share), >, 1e-3);
  g_assert_cmpfloat_with_epsilon (bench.run->picture_m, 0.4 * bench.run->picture_share, 1e-12);
}

/* On every raster the lines are numbered without a gap, and the figures are finite. */
static void
test_rasters (void)
{
  GPtrArray *rasters = bw_catalogue_rasters (bw_test_catalogue ());
  for (guint r = 0; r < rasters->len; r++)
    for (guint gate = 0; gate < BW_N_SYNC_GATES; gate++)
      {
        BwSyncMixCase what;
        BwSyncAfc afc;
        BwRasterFigures figures;
        bw_raster_figures (rasters->pdata[r], &figures);
        bw_sync_mix_case_init (&what, rasters->pdata[r], gate);
        bw_sync_afc_init (&afc, what.raster);
        g_autoptr (BwSyncMix) mix = bw_sync_mix_new (&what);
        g_autoptr (BwSyncRun) run = bw_sync_run_new (mix, &afc);
        guint sum = 0;
        for (guint i = 0; i < BW_N_AFC_EDGES; i++)
          sum += run->n[i];
        g_assert_cmpuint (sum, ==, run->lines->len);
        g_assert_cmpint (run->locks, ==,
                         mix->form == BW_SYNC_FORM_COMPOSITE
                             || mix->form == BW_SYNC_FORM_LINE_ONLY);
        for (guint i = 1; i < run->lines->len; i++)
          g_assert_cmpint (line_at (run, i)->line, ==,
                           line_at (run, i - 1)->line % (int) figures.lines_per_frame + 1);
        g_assert_cmpint (isfinite (run->picture_share) != 0, ==, run->locks);
        g_autoptr (GPtrArray) says = bw_sync_mix_says (mix, &afc, run, '.');
        g_assert_cmpuint (says->len, >=, mix->form == BW_SYNC_FORM_COMPOSITE ? 4 : 2);
        for (guint i = 0; i < says->len; i++)
          g_assert_true (g_str_has_suffix (says->pdata[i], "."));
      }
}

/* Words */

static char *
says_of (Bench *bench)
{
  bench_run (bench);
  g_autoptr (GPtrArray) says = bw_sync_mix_says (bench->mix, &bench->afc, bench->run, '.');
  g_ptr_array_add (says, NULL);
  char *text = g_strjoinv (" ", (char **) says->pdata);
  char **words = g_strsplit (text, "\u00a0", -1);
  g_free (text);
  text = g_strjoinv (" ", words);
  g_strfreev (words);
  return text;
}

static void
test_words (void)
{
  g_auto (Bench) xor_bench, standard, mixed;
  bench_init (&xor_bench, BW_SYNC_GATE_XOR, 0);
  g_autofree char *xor_says = says_of (&xor_bench);
  bw_test_assert_words (xor_says, WORDS ("lines 4 to 6, late by 4.7 µs", "line 7, missing",
                                         "upside down", "no gate can make them",
                                         "6 serrations in field sync and 6 + 6 equalising pulses",
                                         "second order", "first line of picture, 21", "positive",
                                         "take XNOR"));
  bench_init (&standard, BW_SYNC_GATE_STANDARD, 1);
  g_autofree char *standard_says = says_of (&standard);
  bw_test_assert_words (standard_says, WORDS ("Each of the 26 lines", "9 edges at half lines",
                                              "starts straight", "negative", "no inverter"));
  bench_init (&mixed, BW_SYNC_GATE_AND, 0);
  mixed.what.v_polarity = BW_POLARITY_POSITIVE;
  g_autofree char *mixed_says = says_of (&mixed);
  bw_test_assert_words (mixed_says,
                        WORDS ("AND of negative H and positive V is no composite sync",
                               "line sync is lost", "put an inverter into V", "does not lock"));
}

/* Faults */

static void
assert_fault (const BwSyncAfc *afc, int code)
{
  g_autoptr (GError) error = NULL;
  g_assert_false (bw_sync_afc_check (afc, bw_test_raster ("525-59.94-interlaced"), &error));
  g_assert_error (error, BW_SYNC_AFC_ERROR, code);
}

static void
test_faults (void)
{
  g_auto (Bench) bench;
  bench_init (&bench, BW_SYNC_GATE_AND, 0);
  BwSyncAfc bad = bench.afc;
  g_assert_true (bw_sync_afc_check (&bad, bench.what.raster, NULL));
  bad.loop = BW_N_AFC_LOOPS;
  assert_fault (&bad, BW_SYNC_AFC_ERROR_LOOP);
  bad = bench.afc, bad.time_constant_lines = (double) NAN;
  assert_fault (&bad, BW_SYNC_AFC_ERROR_TIME_CONSTANT);
  bad = bench.afc, bad.time_constant_lines = 0;
  assert_fault (&bad, BW_SYNC_AFC_ERROR_TIME_CONSTANT);
  bad = bench.afc, bad.rate_error = -0.21;
  assert_fault (&bad, BW_SYNC_AFC_ERROR_RATE);
  bad = bench.afc, bad.tolerance_s = 0;
  assert_fault (&bad, BW_SYNC_AFC_ERROR_WIDTH);
  bad = bench.afc, bad.glitch_s = 20e-6;
  assert_fault (&bad, BW_SYNC_AFC_ERROR_WIDTH);
  bad = bench.afc, bad.picture_width_m = -1;
  assert_fault (&bad, BW_SYNC_AFC_ERROR_WIDTH);
}

/* Each member just inside and just outside of what it may be; a quarter of a line of 525 is 15.889 µs. */
static void
test_each_limit (void)
{
  const BwRaster *raster = bw_test_raster ("525-59.94-interlaced");
  BwSyncAfc good;
  bw_sync_afc_init (&good, raster);
#define TRY(member, value, taken)                                                                  \
  {                                                                                                \
    BwSyncAfc afc = good;                                                                          \
    afc.member = value;                                                                            \
    g_assert_cmpint (bw_sync_afc_check (&afc, raster, NULL), ==, taken);                           \
  }
  TRY (loop, BW_AFC_LOOP_FIRST, TRUE);
  TRY (loop, BW_N_AFC_LOOPS, FALSE);
  TRY (time_constant_lines, 0.1, TRUE);
  TRY (time_constant_lines, 0.099, FALSE);
  TRY (time_constant_lines, 200, TRUE);
  TRY (time_constant_lines, 201, FALSE);
  TRY (rate_error, 0.2, TRUE);
  TRY (rate_error, 0.201, FALSE);
  TRY (rate_error, -0.2, TRUE);
  TRY (rate_error, -0.201, FALSE);
  TRY (tolerance_s, 1e-12, TRUE);
  TRY (tolerance_s, 0, FALSE);
  TRY (tolerance_s, 15.88e-6, TRUE);
  TRY (tolerance_s, 15.9e-6, FALSE);
  TRY (glitch_s, 0, TRUE);
  TRY (glitch_s, -1e-12, FALSE);
  TRY (glitch_s, 15.88e-6, TRUE);
  TRY (glitch_s, 15.9e-6, FALSE);
  TRY (picture_width_m, 0, TRUE);
  TRY (picture_width_m, -1e-3, FALSE);
  TRY (picture_width_m, 99.9, TRUE);
  TRY (picture_width_m, 100, FALSE);
#undef TRY
}

/* What an AFC is taken for until it is measured: common practice, no source. 525 lines: 63.5556 µs. */
static void
test_usual (void)
{
  BwSyncAfc afc;
  bw_sync_afc_init (&afc, bw_test_raster ("525-59.94-interlaced"));
  g_assert_cmpint (afc.loop, ==, BW_AFC_LOOP_SECOND);
  g_assert_cmpfloat_with_epsilon (afc.time_constant_lines, 10, 1e-12);
  g_assert_cmpfloat_with_epsilon (afc.rate_error, 0.01, 1e-12);
  g_assert_cmpfloat_with_epsilon (afc.tolerance_s, 0.004 * 63.5556e-6, 1e-11);
  g_assert_cmpfloat_with_epsilon (afc.glitch_s, 0.005 * 63.5556e-6, 1e-11);
}

/* A loop is linear: an error of the rate as large the other way bends the picture as much the other way,
 * and for as many lines. */
static void
test_both_ways (void)
{
  const BwRaster *raster = bw_test_raster ("vesa-dmt-04");
  BwSyncRun *run[2];
  BwSyncMixCase what;
  bw_sync_mix_case_init (&what, raster, BW_SYNC_GATE_AND);
  g_autoptr (BwSyncMix) mix = bw_sync_mix_new (&what);
  for (int i = 0; i < 2; i++)
    {
      BwSyncAfc afc;
      bw_sync_afc_init (&afc, raster);
      afc.loop = BW_AFC_LOOP_FIRST;
      afc.rate_error = i == 0 ? 0.01 : -0.01;
      run[i] = bw_sync_run_new (mix, &afc);
    }
  g_assert_cmpfloat (fabs (run[0]->static_s), >, 1e-8);
  g_assert_cmpfloat_with_epsilon (run[0]->static_s, -run[1]->static_s, 1e-12);
  g_assert_cmpfloat_with_epsilon (run[0]->picture_s, -run[1]->picture_s, 1e-12);
  g_assert_cmpfloat_with_epsilon (run[0]->bend_s, -run[1]->bend_s, 1e-12);
  g_assert_cmpfloat_with_epsilon (run[0]->peak_s, -run[1]->peak_s, 1e-12);
  g_assert_cmpint (run[0]->settle_lines, ==, run[1]->settle_lines);
  for (int i = 0; i < 2; i++)
    bw_sync_run_free (run[i]);
}

/* Lines are told of together where they have the same edge, equally late; right ones are not told of. */
static void
test_spans (void)
{
  static const struct
  {
    guint edge;
    double late_s;
  } lines[] = {
    { BW_AFC_EDGE_RIGHT, 0 },    { BW_AFC_EDGE_LATE, 4.7e-6 },     { BW_AFC_EDGE_LATE, 4.7e-6 },
    { BW_AFC_EDGE_LATE, 4.8e-6 }, { BW_AFC_EDGE_LATE, 4.81e-6 },   { BW_AFC_EDGE_MISSING, 0 },
    { BW_AFC_EDGE_MISSING, 0 },  { BW_AFC_EDGE_RIGHT, 0 },         { BW_AFC_EDGE_EARLY, -1e-6 },
    { BW_AFC_EDGE_EARLY, -2e-6 }, { BW_AFC_EDGE_LATE, 2e-6 },      { BW_AFC_EDGE_LATE, 1e-6 },
  };
  static const guint first[] = { 1, 3, 4, 5, 8, 9, 10, 11 }, n[] = { 2, 1, 1, 2, 1, 1, 1, 1 };
  g_autoptr (GArray) all = g_array_new (FALSE, TRUE, sizeof (BwSyncLine));
  for (gsize i = 0; i < G_N_ELEMENTS (lines); i++)
    {
      BwSyncLine line = { .line = (int) i + 1, .edge = lines[i].edge, .late_s = lines[i].late_s };
      g_array_append_val (all, line);
    }
  const BwSyncRun run = { .lines = all };
  g_autoptr (GArray) spans = bw_sync_run_spans (&run);
  g_assert_cmpuint (spans->len, ==, G_N_ELEMENTS (first));
  for (guint i = 0; i < spans->len; i++)
    {
      const BwSyncSpan *span = &g_array_index (spans, BwSyncSpan, i);
      g_assert_cmpuint (span->first, ==, first[i]);
      g_assert_cmpuint (span->n, ==, n[i]);
      g_assert_cmpint (span->edge, ==, lines[first[i]].edge);
      g_assert_cmpfloat_with_epsilon (span->late_s, lines[first[i]].late_s, 1e-15);
    }
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  g_test_add_func ("/sync-afc/and", test_and);
  g_test_add_func ("/sync-afc/xnor", test_xnor);
  g_test_add_func ("/sync-afc/standard", test_standard);
  g_test_add_func ("/sync-afc/delay", test_delay);
  g_test_add_func ("/sync-afc/glitches", test_glitches);
  g_test_add_func ("/sync-afc/early", test_early);
  g_test_add_func ("/sync-afc/nearest", test_nearest);
  g_test_add_func ("/sync-afc/first-order", test_first_order);
  g_test_add_func ("/sync-afc/second-order", test_second_order);
  g_test_add_func ("/sync-afc/bend", test_bend);
  g_test_add_func ("/sync-afc/memory", test_memory);
  g_test_add_func ("/sync-afc/no-lock", test_no_lock);
  g_test_add_func ("/sync-afc/half-of-the-lines", test_half_of_the_lines);
  g_test_add_func ("/sync-afc/picture-below-a-border", test_picture_below_a_border);
  g_test_add_func ("/sync-afc/picture-width", test_picture_width);
  g_test_add_func ("/sync-afc/rasters", test_rasters);
  g_test_add_func ("/sync-afc/words", test_words);
  g_test_add_func ("/sync-afc/faults", test_faults);
  g_test_add_func ("/sync-afc/each-limit", test_each_limit);
  g_test_add_func ("/sync-afc/usual", test_usual);
  g_test_add_func ("/sync-afc/both-ways", test_both_ways);
  g_test_add_func ("/sync-afc/spans", test_spans);
  return g_test_run ();
}
