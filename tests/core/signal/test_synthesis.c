/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Test signals: levels, edges, and that samples do not depend on how they are asked for. */
#include "core/signal/synthesis.h"

#include <string.h>

#include "test_synthesis.h"

#define NS 1e-9
#define FINE { 1000000000, 1 } /* for edges: a sample a nanosecond */

/* Levels. Bars of 75 % on a line of picture; place of a bar in its middle. */

static double
bar_level (BwSynthesis *s, BwConductor conductor, int bar)
{
  double from_s = 9.2 * US, to_s = 63.5555556 * US - 1.5 * US; /* SMPTE 170M table 2 */
  return level_at (s, conductor, 100, from_s + (bar + 0.5) / 8 * (to_s - from_s));
}

/* 700 mV and 300 mV (ITU-R BT.1700-type levels); the bars of white, yellow, cyan, green, magenta,
 * red, blue, black are on or off in each primary. */
static void
test_rgb (void)
{
  static const int on[3][8] = { { 1, 1, 0, 0, 1, 1, 0, 0 },
                                { 1, 1, 1, 1, 0, 0, 0, 0 },
                                { 1, 0, 1, 0, 1, 0, 1, 0 } };
  g_autoptr (BwSynthesis) s
      = synthesis_of (&(Setup){ "525-59.94-interlaced", BW_SYSTEM_NONE, BW_SIGNAL_RGB,
                                BW_SYNC_ON_GREEN, BW_CONTENT_BARS, BW_RATIO_NONE });
  for (int conductor = 0; conductor < 3; conductor++)
    for (int bar = 0; bar < 8; bar++)
      assert_near (bar_level (s, conductor, bar), 0.525 * on[conductor][bar], 1e-7);
  assert_near (level_at (s, BW_CONDUCTOR_G, 100, 2.4 * US), -0.3, 1e-7);
  assert_near (level_at (s, BW_CONDUCTOR_R, 100, 2.4 * US), 0, 1e-12);
  assert_near (level_at (s, BW_CONDUCTOR_G, 100, 7 * US), 0, 1e-12);
  g_assert_cmpint (bw_synthesis_rate_hz (s).num, ==, 13500000);
}

/* ITU-R BT.601-5 3.5 on 700 mV and ±350 mV: yellow of 75 % 465.15, −262.5, 42.69 mV. */
static void
test_component (void)
{
  g_autoptr (BwSynthesis) s
      = synthesis_of (&(Setup){ "525-59.94-interlaced", BW_SYSTEM_NONE, BW_SIGNAL_COMPONENT,
                                BW_SYNC_ON_Y, BW_CONTENT_BARS, BW_RATIO_NONE });
  assert_near (bar_level (s, BW_CONDUCTOR_Y, 1), 0.46515, 1e-6);
  assert_near (bar_level (s, BW_CONDUCTOR_PB, 1), -0.2625, 1e-6);
  assert_near (bar_level (s, BW_CONDUCTOR_PR, 1), 0.0426890, 1e-6);
  assert_near (level_at (s, BW_CONDUCTOR_Y, 100, 2.4 * US), -0.3, 1e-7);
  assert_near (level_at (s, BW_CONDUCTOR_PB, 100, 2.4 * US), 0, 1e-12);
}

/* SMPTE 170M-2004 table A.3: luma of 75 % bars with setup, in IRE; 140 IRE = 1 V. */
static void
test_yc (void)
{
  static const double luma_ire[8]
      = { 76.875, 68.9663, 56.1319, 48.2231, 36.1519, 28.2431, 15.4088, 7.5 };
  g_autoptr (BwSynthesis) s
      = synthesis_of (&(Setup){ "525-59.94-interlaced", BW_SYSTEM_NTSC_M, BW_SIGNAL_YC,
                                BW_SYNC_IN_VIDEO, BW_CONTENT_BARS, BW_RATIO_NONE });
  for (int bar = 0; bar < 8; bar++)
    assert_near (bar_level (s, BW_CONDUCTOR_Y, bar) * 140, luma_ire[bar], 1e-4);
  assert_near (level_at (s, BW_CONDUCTOR_Y, 100, 2.4 * US) * 140, -40, 1e-4);
  assert_near (bar_level (s, BW_CONDUCTOR_C, 0), 0, 1e-7);
}

/* Every plateau is at the level that wire gives for it. */
static void
test_wire_levels (void)
{
  static const Setup setups[] = {
    { "625-50-interlaced", BW_SYSTEM_PAL_B, BW_SIGNAL_YC, BW_SYNC_IN_VIDEO, 0,
      { 200000000, 1 } },
    { "625-50-interlaced", BW_SYSTEM_NONE, BW_SIGNAL_RGB, BW_SYNC_COMPOSITE, 0, { 0, 1 } },
    { "625-50-interlaced", BW_SYSTEM_NONE, BW_SIGNAL_LUMA, BW_SYNC_IN_VIDEO, 0, { 0, 1 } },
    { "vesa-dmt-04", BW_SYSTEM_NONE, BW_SIGNAL_RGB, BW_SYNC_SEPARATE, 0, { 0, 1 } },
  };
  for (guint i = 0; i < G_N_ELEMENTS (setups); i++)
    {
      BwWireLevels levels[BW_N_CONDUCTORS];
      BwSynthesisCase what = case_of (&setups[i]);
      what.bars = BW_BARS_100;
      g_autoptr (BwSynthesis) s = bw_synthesis_new (&what, NULL);
      guint n = bw_wire_levels (&what.form, levels);
      gsize samples = (gsize) bw_synthesis_line_start (s, 1, 1);
      for (guint c = 0; c < n; c++)
        {
          g_autofree float *volts = samples_of (s, levels[c].conductor, 0, samples);
          float low = 0, high = 0;
          for (gsize k = 0; k < samples; k++)
            {
              low = MIN (low, volts[k]);
              high = MAX (high, volts[k]);
            }
          double wanted_low = fmin (levels[c].lowest_v, levels[c].sync_low_v);
          double wanted_high = fmax (levels[c].highest_v, levels[c].sync_high_v);
          /* a sample lies within 4° of the peak of a 4.43 MHz subcarrier: 0.25 % */
          double share = levels[c].conductor == BW_CONDUCTOR_C ? 0.0025 : 0;
          assert_near ((double) low, wanted_low, 1e-6 + share * fabs (wanted_low));
          assert_near ((double) high, wanted_high, 1e-6 + share * fabs (wanted_high));
        }
    }
}

/* Edges */

static void
assert_rise (BwSynthesis *s, BwConductor conductor, double near_s, double from_v, double to_v,
             double wanted_s, double tolerance_s)
{
  gboolean rising = to_v > from_v;
  double low_s = crossing_s (s, conductor, 100, near_s - 2 * US, near_s + 2 * US,
                             from_v + 0.1 * (to_v - from_v), rising);
  double high_s = crossing_s (s, conductor, 100, near_s - 2 * US, near_s + 2 * US,
                              from_v + 0.9 * (to_v - from_v), rising);
  assert_near (high_s - low_s, wanted_s, tolerance_s);
}

/* SMPTE 170M-2004 table 2: sync 4.70 µs wide, picture from 9.20 µs after to 1.5 µs before 0H, rise
 * of sync and blanking 140 ns; table 3: equalising 2.30 µs, serration 4.70 µs. */
static void
test_edges_525 (void)
{
  g_autoptr (BwSynthesis) s
      = synthesis_of (&(Setup){ "525-59.94-interlaced", BW_SYSTEM_NONE, BW_SIGNAL_LUMA,
                                BW_SYNC_IN_VIDEO, BW_CONTENT_BARS, FINE });
  BwConductor video = BW_CONDUCTOR_VIDEO;
  double h_s = 286 / 4.5e6;
  assert_near (crossing_s (s, video, 100, -US, US, -0.15, FALSE), 0, 0.05 * NS);
  assert_near (crossing_s (s, video, 100, US, 8 * US, -0.15, TRUE), 4.7 * US, 0.05 * NS);
  assert_near (crossing_s (s, video, 100, 8 * US, 11 * US, 0.2625, TRUE), 9.2 * US, 0.05 * NS);
  assert_rise (s, video, 0, 0, -0.3, 140 * NS, 0.1 * NS);
  assert_rise (s, video, 4.7 * US, -0.3, 0, 140 * NS, 0.1 * NS);
  assert_rise (s, video, 9.2 * US, 0, 0.525, 140 * NS, 0.1 * NS);
  assert_near (crossing_s (s, video, 1, US, 8 * US, -0.15, TRUE), 2.3 * US, 0.05 * NS);
  assert_near (crossing_s (s, video, 4, US, h_s / 2, -0.15, TRUE), h_s / 2 - 4.7 * US, 0.05 * NS);
}

/* ITU-R BT.1700 and BT.470-6 table 1-1: sync 4.7 µs, rise 200 ns; 0H to picture 10.5 µs; rise of
 * blanking 300 ns; equalising 2.35 µs, broad 27.3 µs. */
static void
test_edges_625 (void)
{
  g_autoptr (BwSynthesis) s
      = synthesis_of (&(Setup){ "625-50-interlaced", BW_SYSTEM_NONE, BW_SIGNAL_LUMA,
                                BW_SYNC_IN_VIDEO, BW_CONTENT_BARS, FINE });
  BwConductor video = BW_CONDUCTOR_VIDEO;
  assert_near (crossing_s (s, video, 100, US, 8 * US, -0.15, TRUE), 4.7 * US, 0.05 * NS);
  assert_near (crossing_s (s, video, 100, 8 * US, 12 * US, 0.2625, TRUE), 10.5 * US, 0.05 * NS);
  assert_rise (s, video, 0, 0, -0.3, 200 * NS, 0.1 * NS);
  assert_rise (s, video, 10.5 * US, 0, 0.525, 300 * NS, 0.1 * NS);
  assert_near (crossing_s (s, video, 625, US, 8 * US, -0.15, TRUE), 2.35 * US, 0.05 * NS);
  assert_near (crossing_s (s, video, 1, US, 31 * US, -0.15, TRUE), 27.3 * US, 0.05 * NS);
}

/* Whether in one piece or in many, from wherever, and whatever was asked for before. */
static void
test_pieces (void)
{
  static const Setup setups[] = {
    { "525-59.94-interlaced", BW_SYSTEM_NTSC_M, BW_SIGNAL_COMPOSITE, BW_SYNC_IN_VIDEO,
      BW_CONTENT_BARS, { 0, 1 } },
    { "625-50-interlaced", BW_SYSTEM_PAL_B, BW_SIGNAL_COMPOSITE, BW_SYNC_IN_VIDEO,
      BW_CONTENT_MULTIBURST, { 13500000, 1 } },
    { "625-50-interlaced", BW_SYSTEM_PAL_B, BW_SIGNAL_COMPOSITE, BW_SYNC_IN_VIDEO,
      BW_CONTENT_PULSE_AND_WINDOW, { 0, 1 } },
    { "625-50-interlaced", BW_SYSTEM_SECAM_L, BW_SIGNAL_COMPOSITE, BW_SYNC_IN_VIDEO,
      BW_CONTENT_BARS, { 20000003, 1 } },
  };
  for (guint i = 0; i < G_N_ELEMENTS (setups); i++)
    {
      g_autoptr (BwSynthesis) s = synthesis_of (&setups[i]);
      g_autoptr (BwSynthesis) other = synthesis_of (&setups[i]);
      gint64 first = bw_synthesis_line_start (s, 3, 250) + 77;
      gsize n = 50000, done = 0;
      g_autofree float *whole = samples_of (s, BW_CONDUCTOR_VIDEO, first, n);
      g_autofree float *pieces = g_new (float, n);
      g_autofree float *before = samples_of (other, BW_CONDUCTOR_VIDEO, first - 400000, 400000);
      while (done < n)
        {
          gsize piece = (gsize) g_test_rand_int_range (1, 3000);
          piece = MIN (piece, n - done);
          bw_synthesis_fill (other, BW_CONDUCTOR_VIDEO, first + (gint64) done, piece,
                             pieces + done);
          done += piece;
        }
      g_assert_cmpmem (whole, n * sizeof (float), pieces, n * sizeof (float));
    }
}

/* 283.7516 × 4 samples a line (ITU-R BT.1700) do not add up to an error, even after a day. */
static void
test_no_drift (void)
{
  g_autoptr (BwSynthesis) s
      = synthesis_of (&(Setup){ "625-50-interlaced", BW_SYSTEM_PAL_B, BW_SIGNAL_COMPOSITE,
                                BW_SYNC_IN_VIDEO, BW_CONTENT_BARS, BW_RATIO_NONE });
  gint64 frames = 25 * 86400, day = bw_synthesis_line_start (s, frames, 1);
  g_assert_cmpint (day, ==, frames * 709379);
  g_autofree float *now = samples_of (s, BW_CONDUCTOR_VIDEO, 0, 5000);
  g_autofree float *then = samples_of (s, BW_CONDUCTOR_VIDEO, day, 5000);
  g_assert_cmpmem (now, 5000 * sizeof (float), then, 5000 * sizeof (float));
  assert_near (bw_synthesis_line_start_s (s, frames, 1), 86400, 1e-9);
  g_assert_cmpint (bw_synthesis_line_start (s, 0, 2), ==, 1136);
}

static void
assert_fails (const BwSynthesisCase *what, BwSynthesisError code, const char *const *words)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (BwSynthesis) s = bw_synthesis_new (what, &error);
  g_assert_null (s);
  g_assert_error (error, BW_SYNTHESIS_ERROR, (int) code);
  if (error != NULL)
    bw_test_assert_words (error->message, words);
}

static void
test_faults (void)
{
  BwSynthesisCase what
      = case_of (&(Setup){ "525-59.94-interlaced", BW_SYSTEM_NTSC_M, BW_SIGNAL_COMPOSITE,
                           BW_SYNC_IN_VIDEO, BW_CONTENT_BARS, { 8000000, 1 } });
  assert_fails (&what, BW_SYNTHESIS_ERROR_RATE, WORDS ("rate of 8", "allowed", "9.759"));
  what.rate_hz = (BwRatio){ G_MAXINT64, 1 };
  assert_fails (&what, BW_SYNTHESIS_ERROR_RATE, WORDS ("allowed", "9.759", "16.5"));
  what.rate_hz = (BwRatio){ G_MAXINT64, 400000000001 };
  assert_fails (&what, BW_SYNTHESIS_ERROR_RATE, WORDS ("ratio", "line rate", "whole hertz"));
  what.rate_hz = (BwRatio){ -13500000, 1 };
  assert_fails (&what, BW_SYNTHESIS_ERROR_RATE, WORDS ("allowed"));

  what = case_of (&(Setup){ "vesa-dmt-04", BW_SYSTEM_NTSC_M, BW_SIGNAL_COMPOSITE,
                            BW_SYNC_IN_VIDEO, BW_CONTENT_BARS, BW_RATIO_NONE });
  assert_fails (&what, BW_SYNTHESIS_ERROR_RASTER, WORDS ("burst", "back porch"));

  what.form.shape = BW_SHAPE_TRILEVEL;
  assert_fails (&what, BW_SYNTHESIS_ERROR_RASTER, WORDS ("tri-level"));

  g_autoptr (BwRaster) broken = bw_raster_copy (what.raster);
  broken->h_sync = 0;
  what.raster = broken;
  assert_fails (&what, BW_SYNTHESIS_ERROR_RASTER, WORDS ("h_sync"));
}

/* Without a rate given: four times the subcarrier of what is coded (SMPTE 244M, EBU Tech. 3280); else 13.5 MHz
 * (ITU-R BT.601), or as many times that as the picture needs, or the pixel clock where it is higher. */
static void
test_default_rate (void)
{
  static const struct
  {
    Setup setup;
    double hz;
  } cases[] = {
    { { "525-59.94-interlaced", BW_SYSTEM_NTSC_M, BW_SIGNAL_COMPOSITE, BW_SYNC_IN_VIDEO,
        BW_CONTENT_BARS, { 0, 1 } },
      4 * 315e6 / 88 },
    { { "625-50-interlaced", BW_SYSTEM_PAL_B, BW_SIGNAL_YC, BW_SYNC_IN_VIDEO, BW_CONTENT_BARS,
        { 0, 1 } },
      17.734475e6 },
    { { "625-50-interlaced", BW_SYSTEM_NONE, BW_SIGNAL_RGB, BW_SYNC_SEPARATE, BW_CONTENT_BARS,
        { 0, 1 } },
      13.5e6 },
    { { "vesa-dmt-04", BW_SYSTEM_NONE, BW_SIGNAL_RGB, BW_SYNC_SEPARATE, BW_CONTENT_BARS, { 0, 1 } },
      25.175e6 },
    /* 300 cycles in 26.43 µs are 11.35 MHz, of which twice is 22.7 */
    { { "525-59.94-progressive", BW_SYSTEM_NONE, BW_SIGNAL_LUMA, BW_SYNC_IN_VIDEO, BW_CONTENT_BARS,
        { 0, 1 } },
      27e6 },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (BwSynthesis) s = synthesis_of (&cases[i].setup);
      assert_near (bw_ratio_to_double (bw_synthesis_rate_hz (s)), cases[i].hz, 1);
    }
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  g_test_add_func ("/synthesis/levels/rgb", test_rgb);
  g_test_add_func ("/synthesis/levels/component", test_component);
  g_test_add_func ("/synthesis/levels/yc", test_yc);
  g_test_add_func ("/synthesis/levels/wire", test_wire_levels);
  g_test_add_func ("/synthesis/edges/525", test_edges_525);
  g_test_add_func ("/synthesis/edges/625", test_edges_625);
  g_test_add_func ("/synthesis/pieces", test_pieces);
  g_test_add_func ("/synthesis/no-drift", test_no_drift);
  g_test_add_func ("/synthesis/faults", test_faults);
  g_test_add_func ("/synthesis/default-rate", test_default_rate);
  return g_test_run ();
}
