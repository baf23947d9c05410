/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the picture of a test signal holds, and what must hold for any raster and rate. */
#include <string.h>

#include "test_synthesis.h"

static BwSynthesis *
luma (const char *raster, BwColourSystem system, BwContent content, gint64 rate_hz)
{
  return synthesis_of (&(Setup){ raster, system, BW_SIGNAL_LUMA, BW_SYNC_IN_VIDEO, content,
                                 { rate_hz, 1 } });
}

/* From black to white; BT.470-6: the active line of 625 lines from 10.5 to 62.5 µs. */
static void
test_ramp (void)
{
  g_autoptr (BwSynthesis) s
      = luma ("625-50-interlaced", BW_SYSTEM_NONE, BW_CONTENT_RAMP, 100000000);
  for (int percent = 5; percent < 100; percent += 10)
    assert_near (level_at (s, BW_CONDUCTOR_VIDEO, 100, (10.5 + 0.52 * percent) * US),
                 0.007 * percent, 1e-6);
}

/* The half lines of 625 (BT.470-6 figure 2-1): the picture ends in the first half of line 623 and
 * begins in the second half of line 23. */
static void
test_half_lines (void)
{
  g_autoptr (BwSynthesis) s = luma ("625-50-interlaced", BW_SYSTEM_NONE, BW_CONTENT_RAMP, 0);
  assert_near (level_at (s, BW_CONDUCTOR_VIDEO, 23, 30 * US), 0, 1e-7);
  assert_near (level_at (s, BW_CONDUCTOR_VIDEO, 23, 36.5 * US), 0.35, 1e-6);
  assert_near (level_at (s, BW_CONDUCTOR_VIDEO, 623, 25 * US), 0.7 * 14.5 / 52, 1e-6);
  assert_near (level_at (s, BW_CONDUCTOR_VIDEO, 623, 45 * US), 0, 1e-7);
  assert_near (level_at (s, BW_CONDUCTOR_VIDEO, 22, 36.5 * US), 0, 1e-7);
  assert_near (level_at (s, BW_CONDUCTOR_VIDEO, 311, 20 * US), 0, 1e-7);
  assert_near (level_at (s, BW_CONDUCTOR_VIDEO, 310, 36.5 * US), 0.35, 1e-6);
}

/* Least squares would do no better: the packet is cut to whole cycles. Peak to peak from the mean
 * square, and the frequency from the crossings of the level it stands on. */
static void
assert_packet (BwSynthesis *s, double from_s, double to_s, double middle_v, double hz, double pp_v)
{
  double step_s = 1e-9, sum = 0, first_s = 0, last_s = 0;
  int crossings = 0, n = 0;
  double before = level_at (s, BW_CONDUCTOR_VIDEO, 100, from_s) - middle_v;

  for (double t = from_s + step_s; t < to_s; t += step_s)
    {
      double now = level_at (s, BW_CONDUCTOR_VIDEO, 100, t) - middle_v;
      if (before < 0 && now >= 0)
        {
          last_s = t - step_s * now / (now - before);
          first_s = crossings++ == 0 ? last_s : first_s;
        }
      before = now;
    }
  for (double t = first_s; t < last_s; t += step_s, n++)
    sum += pow (level_at (s, BW_CONDUCTOR_VIDEO, 100, t) - middle_v, 2);
  g_assert_cmpint (crossings, >, 1);
  assert_near ((crossings - 1) / (last_s - first_s), hz, 1e-4 * hz);
  assert_near (2 * sqrt (2 * sum / n), pp_v, 2e-3 * pp_v);
}

/* ITU-T J.63 table I, element C2: 0.5, 1, 2, 4, 4.8 and 5.8 MHz, 0.420 V p-p on 625 lines. The
 * places of the packets are ours: sevenths of the active line, and 80 % of each. */
static void
test_multiburst_625 (void)
{
  static const double hz[] = { 0.5e6, 1e6, 2e6, 4e6, 4.8e6, 5.8e6 };
  g_autoptr (BwSynthesis) s
      = luma ("625-50-interlaced", BW_SYSTEM_PAL_B, BW_CONTENT_MULTIBURST, 1000000000);
  for (int i = 0; i < 6; i++)
    {
      double middle = 10.5 + 52.0 / 7 * (i + 1.5);
      assert_packet (s, (middle - 2.5) * US, (middle + 2.5) * US, 0.35, hz[i], 0.42);
    }
  assert_near (level_at (s, BW_CONDUCTOR_VIDEO, 100, 13 * US), 0.7, 1e-6);
}

/* ITU-T J.63 table III: 0.5, 1, 2, 3, 3.58 and 4.2 MHz on 525 lines; 50 IRE on 50 IRE (the NTC-7
 * combination signal, from a secondary source); 140 IRE = 1 V; setup does not move it. */
static void
test_multiburst_525 (void)
{
  static const double hz[] = { 0.5e6, 1e6, 2e6, 3e6, 3.58e6, 4.2e6 };
  g_autoptr (BwSynthesis) s
      = luma ("525-59.94-interlaced", BW_SYSTEM_NTSC_M, BW_CONTENT_MULTIBURST, 1000000000);
  double active_us = 286 / 4.5 - 10.7;
  for (int i = 0; i < 6; i++)
    {
      double middle = 9.2 + active_us / 7 * (i + 1.5);
      assert_packet (s, (middle - 2.5) * US, (middle + 2.5) * US, 50.0 / 140, hz[i], 50.0 / 140);
      if (i < 5) /* between two packets */
        assert_near (level_at (s, BW_CONDUCTOR_VIDEO, 100, (middle + active_us / 14) * US), 50.0 / 140,
                   1e-6);
    }
}

/* A packet begins at zero and rises, to whatever instant its first sample falls: here of 13.5 MHz. */
static void
test_multiburst_phase (void)
{
  static const double hz[] = { 0.5e6, 1e6, 2e6, 4e6, 4.8e6, 5.8e6 };
  g_autoptr (BwSynthesis) s = luma ("625-50-interlaced", BW_SYSTEM_PAL_B, BW_CONTENT_MULTIBURST,
                                    13500000);
  gint64 first = bw_synthesis_line_start (s, 0, 100);
  g_autofree float *volts = samples_of (s, BW_CONDUCTOR_VIDEO, first, 864);
  for (int i = 0; i < 6; i++)
    {
      double from_s = (10.5 + 52.0 / 7 * (i + 1.1)) * US;
      for (int k = 0; k < 864; k++)
        {
          double into_s = k / 13.5e6 - from_s;
          if (into_s > 1 * US && into_s < 4.9 * US)
            assert_near ((double) volts[k], 0.35 + 0.21 * sin (2 * G_PI * hz[i] * into_s), 2e-6);
        }
    }
}

/* A 2T pulse of 525 lines is 250 ns wide at half amplitude: T is 125 ns there (common practice, no
 * source), and not half of what 4.2 MHz would give. */
static void
test_pulse_525 (void)
{
  g_autoptr (BwSynthesis) s = luma ("525-59.94-interlaced", BW_SYSTEM_NTSC_J,
                                    BW_CONTENT_PULSE_AND_WINDOW, 1000000000);
  double half_v = 0.5 * 100 / 140;
  double up_s = crossing_s (s, BW_CONDUCTOR_VIDEO, 100, 14 * US, 24 * US, half_v, TRUE);
  double down_s = crossing_s (s, BW_CONDUCTOR_VIDEO, 100, 14 * US, 24 * US, half_v, FALSE);
  assert_near (down_s - up_s, 250e-9, 0.05e-9);
}

/* A packet ends as it begins: it swells up over an edge, and falls away over another, as much before its end as after
 * its beginning, and without a jump. */
static void
test_multiburst_ends (void)
{
  static const double hz[] = { 0.5e6, 1e6, 2e6, 4e6, 4.8e6, 5.8e6 };
  g_autoptr (BwSynthesis) s
      = luma ("625-50-interlaced", BW_SYSTEM_PAL_B, BW_CONTENT_MULTIBURST, 1000000000);
  const double width_s = 0.8 * 52.0 / 7 * US;
  int compared = 0;
  for (int i = 0; i < 6; i++)
    {
      double from_s = (10.5 + 52.0 / 7 * (i + 1.1)) * US;
      for (double t = 5e-9; t < 0.4 * US; t += 5e-9)
        {
          double at_start = sin (2 * G_PI * hz[i] * t), at_end = sin (2 * G_PI * hz[i] * (width_s - t));
          double start_v = level_at (s, BW_CONDUCTOR_VIDEO, 100, from_s + t) - 0.35;
          double end_v = level_at (s, BW_CONDUCTOR_VIDEO, 100, from_s + width_s - t) - 0.35;
          if (t < 8e-9)
            g_assert_cmpfloat (fabs (end_v), <, 0.005);
          if (fabs (at_start) < 0.2 || fabs (at_end) < 0.2)
            continue;
          assert_near (end_v / at_end, start_v / at_start, 5e-3 * 0.21);
          compared++;
        }
      assert_near (level_at (s, BW_CONDUCTOR_VIDEO, 100, from_s + width_s + 2e-9), 0.35, 1e-6);
    }
  g_assert_cmpint (compared, >, 100);
}

/* A 2T pulse is 1/bandwidth wide at half amplitude: 200 ns of 5 MHz (BT.470-6: B and G); beside
 * it, in the middle half of the picture, a window. */
static void
test_pulse_and_window (void)
{
  g_autoptr (BwSynthesis) s
      = luma ("625-50-interlaced", BW_SYSTEM_PAL_B, BW_CONTENT_PULSE_AND_WINDOW, 1000000000);
  BwConductor video = BW_CONDUCTOR_VIDEO;
  double up_s = crossing_s (s, video, 100, 15 * US, 25 * US, 0.35, TRUE);
  double down_s = crossing_s (s, video, 100, 15 * US, 25 * US, 0.35, FALSE);
  assert_near (down_s - up_s, 200e-9, 0.05e-9);
  assert_near (level_at (s, video, 100, (up_s + down_s) / 2), 0.7, 1e-6);
  assert_near (level_at (s, video, 100, (10.5 + 0.65 * 52) * US), 0.7, 1e-6);
  assert_near (level_at (s, video, 30, (10.5 + 0.65 * 52) * US), 0, 1e-6);
  assert_near (level_at (s, video, 300, (10.5 + 0.65 * 52) * US), 0, 1e-6);
}

/* 16 upright lines, and 12 level ones in each field of a 4:3 picture (our own choice). */
static void
test_crosshatch (void)
{
  g_autoptr (BwSynthesis) s
      = luma ("625-50-interlaced", BW_SYSTEM_PAL_B, BW_CONTENT_CROSSHATCH, 100000000);
  int upright = 0, level[2] = { 0, 0 };
  double from_s = 8 * US;

  for (;;)
    {
      double at_s = crossing_s (s, BW_CONDUCTOR_VIDEO, 24, from_s, 64 * US - 1 * US, 0.35, TRUE);
      if (isnan (at_s))
        break;
      upright++;
      from_s = at_s + 0.1 * US;
    }
  for (int line = 24; line <= 622; line++)
    level[line > 312] += level_at (s, BW_CONDUCTOR_VIDEO, line, 35.5 * US) > 0.6
                         && level_at (s, BW_CONDUCTOR_VIDEO, line, 37 * US) > 0.6;
  g_assert_cmpint (upright, ==, 16);
  g_assert_cmpint (level[0], ==, 12);
  g_assert_cmpint (level[1], ==, 12);
}

/* Any raster, any rate. */

/* The highest and lowest that the wire allows, with what SECAM adds: its corrected subcarrier is
 * at most 3.7 times the 23 % of ITU-R BT.1700 Part C; a shaped burst and edges do not overshoot. */
static void
assert_inside (const BwSynthesisCase *what, BwSynthesis *s, const BwWireLevels *levels,
               gint64 first)
{
  g_autofree float *volts = samples_of (s, levels->conductor, first, 6000);
  gboolean secam = what->form.system == BW_SYSTEM_SECAM_L && levels->conductor >= BW_CONDUCTOR_C;
  double margin_v = (secam ? 3.7 * 0.115 * what->form.white_v : 0) + 1e-6;
  double low_v = fmin (fmin (levels->lowest_v, levels->sync_low_v), -levels->burst_pp_v / 2);
  double high_v = fmax (fmax (levels->highest_v, levels->sync_high_v), levels->burst_pp_v / 2);

  if (what->content == BW_CONTENT_MULTIBURST)
    margin_v += 0.1 * what->form.white_v;
  /* where colours meet, luma and the amplitude of chroma change at their own pace */
  if (levels->conductor == BW_CONDUCTOR_VIDEO || levels->conductor == BW_CONDUCTOR_C)
    margin_v += 0.2 * what->form.white_v;
  for (guint k = 0; k < 6000; k++)
    if (!((double) volts[k] >= fmin (low_v, 0) - margin_v
          && (double) volts[k] <= fmax (high_v, 0) + margin_v))
      g_error ("%s, %s, sample %" G_GINT64_FORMAT " + %u: %g V is not in %g to %g V",
               what->raster->id, bw_kind_id (&bw_conductors, levels->conductor), first, k,
               (double) volts[k], low_v, high_v);
}

static void
try_one (const BwRaster *raster)
{
  BwSignal signal = (BwSignal) g_test_rand_int_range (0, BW_N_SIGNALS);
  BwSyncKind sync = (BwSyncKind) g_test_rand_int_range (0, BW_N_SYNC_KINDS);
  BwColourSystem system = (BwColourSystem) g_test_rand_int_range (0, BW_N_SYSTEMS);
  BwSynthesisCase what = { .raster = raster,
                           .content = (BwContent) g_test_rand_int_range (0, BW_N_CONTENTS),
                           .rate_hz = BW_RATIO_NONE };
  BwWireLevels levels[BW_N_CONDUCTORS];
  g_autoptr (GError) error = NULL;

  bw_wire_form_standard (system, signal, sync, (BwSyncShape) raster->sync_shape, &what.form);
  bw_synthesis_add_burst (&what.form);
  what.form.own_polarity[g_test_rand_bit ()] = BW_POLARITY_POSITIVE;
  if (g_test_rand_bit ())
    bw_ratio_make (g_test_rand_int_range (5000000, 400000000), g_test_rand_int_range (1, 4),
                   &what.rate_hz);
  g_autoptr (BwSynthesis) s = bw_synthesis_new (&what, &error);
  if (s == NULL)
    {
      g_assert_true (error->domain == BW_SYNTHESIS_ERROR && *error->message != '\0');
      return;
    }
  guint n = bw_wire_levels (&what.form, levels);
  gint64 frame = g_test_rand_int_range (0, 1000000);
  int line = g_test_rand_int_range (1, bw_synthesis_lines (s));
  gint64 first = bw_synthesis_line_start (s, frame, line);
  for (guint i = 0; i < n; i++)
    {
      assert_inside (&what, s, &levels[i], first);
      assert_inside (&what, s, &levels[i], bw_synthesis_line_start (s, frame, 1));
    }
}

static void
test_any (void)
{
  GPtrArray *rasters = bw_catalogue_rasters (bw_test_catalogue ());
  for (guint i = 0; i < rasters->len; i++)
    for (int times = 0; times < 6; times++)
      try_one (rasters->pdata[i]);
}

/* Where no standard and no pixel clock says how fine the picture is, 300 cycles fit the active line, our own
 * choice; the packets are 10, 20, 40, 60, 80 and 100 % of that, half of white on half of white. */
static void
test_multiburst_other (void)
{
  static const double shares[] = { 0.1, 0.2, 0.4, 0.6, 0.8, 1 };
  g_autoptr (BwSynthesis) s
      = luma ("262-60.05-progressive", BW_SYSTEM_NONE, BW_CONTENT_MULTIBURST, 1000000000);
  BwRasterFigures f;
  bw_raster_figures (bw_test_raster ("262-60.05-progressive"), &f);
  double from_s = f.h_sync_s + f.h_back_porch_s, part_s = f.h_active_s / 7;
  for (int i = 1; i < 6; i++)
    {
      double middle_s = from_s + part_s * (i + 1.5);
      assert_packet (s, middle_s - 0.3 * part_s, middle_s + 0.3 * part_s, 0.35,
                     300 * shares[i] / f.h_active_s, 0.35);
    }
}

/* SECAM's subcarrier is there through the picture, here over its last bar, black, and not on the front porch nor in
 * line sync (our own choice: it ends with the picture). The active line of 625 lines ends at 62.5 µs. */
static void
test_secam_ends (void)
{
  g_autoptr (BwSynthesis) s = synthesis_of (&(Setup){
      "625-50-interlaced", BW_SYSTEM_SECAM_L, BW_SIGNAL_COMPOSITE, BW_SYNC_IN_VIDEO,
      BW_CONTENT_BARS, { 100000000, 1 } });
  for (int line = 100; line < 104; line++)
    {
      double most = 0;
      for (double t = 60; t < 61.5; t += 0.01)
        most = fmax (most, fabs (level_at (s, BW_CONDUCTOR_VIDEO, line, t * US)));
      g_assert_cmpfloat (most, >, 0.05);
      for (double t = 63.1; t < 63.7; t += 0.01)
        assert_near (level_at (s, BW_CONDUCTOR_VIDEO, line, t * US), 0, 1e-3);
      for (double t = 1; t < 4; t += 0.01)
        assert_near (level_at (s, BW_CONDUCTOR_VIDEO, line, t * US), -0.3, 1e-3);
    }
}

/* A line of the crosshatch is drawn whole or not at all where there is but half a line of picture: line 623 ends, and
 * line 23 begins, 32 µs after 0H (BT.470-6 figure 2-1). The seventh of sixteen upright lines stands at 6.5/16 of the
 * active line, which follows 4.7 µs of sync and a back porch that is chosen here to bring it beside the 32 µs. The picture of
 * line 623 ends a front porch before them. */
static void
test_crosshatch_at_half_a_line (void)
{
  static const double beside_us[] = { 0.4, 0.05, -0.05, -2 };
  for (gsize i = 0; i < G_N_ELEMENTS (beside_us); i++)
    {
      BwSynthesisCase what = case_of (&(Setup){ "625-50-interlaced", BW_SYSTEM_PAL_B, BW_SIGNAL_LUMA,
                                                BW_SYNC_IN_VIDEO, BW_CONTENT_CROSSHATCH,
                                                { 1000000000, 1 } });
      g_autoptr (BwRaster) raster = bw_raster_copy (what.raster);
      g_autoptr (GError) error = NULL;
      double place_us = 32 + beside_us[i];
      raster->h_back_porch_s = (place_us - 4.7 - 6.5 / 16 * (64 - 1.5 - 4.7)) / (1 - 6.5 / 16) * US;
      what.raster = raster;
      g_autoptr (BwSynthesis) s = bw_synthesis_new (&what, &error);
      g_assert_no_error (error);
      assert_near (level_at (s, BW_CONDUCTOR_VIDEO, 24, place_us * US), 0.7, 1e-5);
      double of_23_v = level_at (s, BW_CONDUCTOR_VIDEO, 23, place_us * US);
      double of_623_v = level_at (s, BW_CONDUCTOR_VIDEO, 623, place_us * US); /* or that of sync */
      assert_near (of_23_v, beside_us[i] > 0.1 ? 0.7 : 0, 1e-5);
      if (beside_us[i] < -1)
        assert_near (of_623_v, 0.7, 1e-5);
      else
        g_assert_cmpfloat (of_623_v, <, 1e-5);
    }
}

/* Without a front porch the picture ends where the line does, and the edge of blanking lies half in this line and half in
 * the next: the level goes on from the one to the other, by way of the middle, as after a porch. A ramp ends in white. */
static void
test_edge_over_the_end_of_a_line (void)
{
  BwSynthesisCase what = case_of (&(Setup){ "625-50-interlaced", BW_SYSTEM_NONE, BW_SIGNAL_RGB,
                                            BW_SYNC_SEPARATE, BW_CONTENT_RAMP, { 1000000000, 1 } });
  g_autoptr (BwRaster) raster = bw_raster_copy (what.raster);
  g_autoptr (GError) error = NULL;
  raster->h_front_porch_s = 0;
  what.raster = raster;
  g_autoptr (BwSynthesis) s = bw_synthesis_new (&what, &error);
  g_assert_no_error (error);
  assert_near (level_at (s, BW_CONDUCTOR_R, 100, 63.5 * US), 0.7, 0.01);
  assert_near (level_at (s, BW_CONDUCTOR_R, 100, 63.999 * US), 0.35, 0.01);
  assert_near (level_at (s, BW_CONDUCTOR_R, 101, 0.001 * US), 0.35, 0.01);
  for (double t = 0.01 * US; t < 0.15 * US; t += 0.01 * US)
    assert_near (level_at (s, BW_CONDUCTOR_R, 101, t) + level_at (s, BW_CONDUCTOR_R, 100, 64 * US - t), 0.7, 0.01);
  assert_near (level_at (s, BW_CONDUCTOR_R, 101, 0.6 * US), 0, 1e-6);
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  g_test_add_func ("/synthesis-content/ramp", test_ramp);
  g_test_add_func ("/synthesis-content/half-lines", test_half_lines);
  g_test_add_func ("/synthesis-content/multiburst/525", test_multiburst_525);
  g_test_add_func ("/synthesis-content/multiburst/625", test_multiburst_625);
  g_test_add_func ("/synthesis-content/multiburst/ends", test_multiburst_ends);
  g_test_add_func ("/synthesis-content/multiburst/phase", test_multiburst_phase);
  g_test_add_func ("/synthesis-content/pulse-and-window", test_pulse_and_window);
  g_test_add_func ("/synthesis-content/pulse-525", test_pulse_525);
  g_test_add_func ("/synthesis-content/edge-over-the-end-of-a-line", test_edge_over_the_end_of_a_line);
  g_test_add_func ("/synthesis-content/crosshatch", test_crosshatch);
  g_test_add_func ("/synthesis-content/crosshatch-at-half-a-line", test_crosshatch_at_half_a_line);
  g_test_add_func ("/synthesis-content/any", test_any);
  g_test_add_func ("/synthesis-content/multiburst-other", test_multiburst_other);
  g_test_add_func ("/synthesis-content/secam-ends", test_secam_ends);
  return g_test_run ();
}
