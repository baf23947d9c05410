/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The sync of test signals, on the picture and on conductors of its own. */
#include "test_synthesis.h"

#define NS 1e-9
#define FINE { 1000000000, 1 } /* for edges: a sample a nanosecond */

/* Sync over a frame: the width of the pulse in each half line, as the standard draws it. */

static double
pulse_in_half (BwSynthesis *s, BwConductor conductor, double half_v, int line, int half,
               double h_s)
{
  double from_s = half * h_s / 2;
  double start_s
      = crossing_s (s, conductor, line, from_s - US, from_s + US, half_v, FALSE);
  if (isnan (start_s))
    return 0;
  assert_near (start_s, from_s, 2 * NS);
  return crossing_s (s, conductor, line, from_s + US, from_s + h_s, half_v, TRUE) - start_s;
}

/* @from and @to: half lines counted from the first of line 1. */
typedef struct
{
  int from;
  int to;
  double width_s;
} Run;

static void
assert_frame (const Setup *setup, BwConductor conductor, double half_v, const Run *runs, guint n)
{
  g_autoptr (BwSynthesis) s = synthesis_of (setup);
  double h_s = bw_synthesis_line_start_s (s, 0, 2);

  for (int slot = 1; slot < 2 * bw_synthesis_lines (s); slot++)
    {
      double wanted_s = slot % 2 == 0 ? 4.7 * US : 0;
      for (guint i = 0; i < n; i++)
        if (slot >= runs[i].from && slot < runs[i].to)
          wanted_s = runs[i].width_s;
      assert_near (pulse_in_half (s, conductor, half_v, slot / 2 + 1, slot % 2, h_s), wanted_s,
                   3 * NS);
    }
}

/* SMPTE 170M-2004 figure 7: equalising lines 1 to 3, sync 4 to 6, equalising 7 to 9; the second
 * field half a line later, from the middle of line 263. */
static void
test_frame_525 (void)
{
  double h_s = 286 / 4.5e6, broad_s = h_s / 2 - 4.7 * US;
  const Run runs[] = { { 0, 6, 2.3 * US },       { 6, 12, broad_s },    { 12, 18, 2.3 * US },
                       { 525, 531, 2.3 * US }, { 531, 537, broad_s }, { 537, 543, 2.3 * US } };
  assert_frame (&(Setup){ "525-59.94-interlaced", BW_SYSTEM_NONE, BW_SIGNAL_RGB, BW_SYNC_COMPOSITE,
                          BW_CONTENT_BARS, { 54000000, 1 } },
                BW_CONDUCTOR_SYNC, -0.15, runs, G_N_ELEMENTS (runs));
}

/* ITU-R BT.470-6 figure 2-1: broad pulses lines 1, 2 and half of 3, equalising to the end of 5; the
 * second field from the middle of line 313; equalising before them from the middle of 623 and from
 * line 311. */
static void
test_frame_625 (void)
{
  const Run runs[] = { { 0, 5, 27.3 * US },       { 5, 10, 2.35 * US },
                       { 620, 625, 2.35 * US }, { 625, 630, 27.3 * US },
                       { 630, 635, 2.35 * US }, { 1245, 1250, 2.35 * US } };
  assert_frame (&(Setup){ "625-50-interlaced", BW_SYSTEM_NONE, BW_SIGNAL_RGB, BW_SYNC_COMPOSITE,
                          BW_CONTENT_BARS, { 54000000, 1 } },
                BW_CONDUCTOR_SYNC, -0.15, runs, G_N_ELEMENTS (runs));
}

/* VESA DMT 04 (640 × 480, 60 Hz): clock 25.175 MHz, H sync 96, V sync 2 lines of 525, both
 * negative, 8 pixels border + 8 porch before the sync; 5 V logic, which is never below its ground and
 * so rests high (common practice, no source). */
static void
test_separate (void)
{
  g_autoptr (BwSynthesis) s
      = synthesis_of (&(Setup){ "vesa-dmt-04", BW_SYSTEM_NONE, BW_SIGNAL_RGB, BW_SYNC_SEPARATE,
                                BW_CONTENT_BARS, FINE });
  double pixel_s = 1 / 25.175e6;
  g_assert_cmpuint (bw_synthesis_conductors (s), ==,
                    BW_BIT (BW_CONDUCTOR_R) | BW_BIT (BW_CONDUCTOR_G) | BW_BIT (BW_CONDUCTOR_B)
                        | BW_BIT (BW_CONDUCTOR_H) | BW_BIT (BW_CONDUCTOR_V));
  for (int line = 1; line <= 525; line += 131)
    {
      assert_near (crossing_s (s, BW_CONDUCTOR_H, line + 1, -US, US, 2.5, FALSE), 0, 0.1 * NS);
      assert_near (crossing_s (s, BW_CONDUCTOR_H, line, US, 8 * US, 2.5, TRUE), 96 * pixel_s,
                   0.1 * NS);
    }
  assert_near (level_at (s, BW_CONDUCTOR_V, 1, 10 * US), 0, 1e-6);
  assert_near (level_at (s, BW_CONDUCTOR_V, 2, 30 * US), 0, 1e-6);
  assert_near (level_at (s, BW_CONDUCTOR_V, 3, 10 * US), 5, 1e-6);
  assert_near (level_at (s, BW_CONDUCTOR_V, 525, 10 * US), 5, 1e-6);
  assert_near (crossing_s (s, BW_CONDUCTOR_V, 3, -US, US, 2.5, TRUE), 0, 0.1 * NS);
  /* where no standard says, an edge has the share of its pulse that it has in SMPTE 170M: 140 ns of 4.7 µs */
  double high_s = crossing_s (s, BW_CONDUCTOR_H, 2, -US, US, 4.5, FALSE);
  double low_s = crossing_s (s, BW_CONDUCTOR_H, 2, -US, US, 0.5, FALSE);
  assert_near (low_s - high_s, 0.14 / 4.7 * 96 * pixel_s, 0.5 * NS);
}

/* High definition: ±300 mV about blanking, 0H the crossing between; each half of 720 lines 40
 * clocks of 74.25 MHz (secondary sources; SMPTE 296M was not read). */
static void
test_trilevel (void)
{
  g_autoptr (BwSynthesis) s
      = synthesis_of (&(Setup){ "750-60-progressive", BW_SYSTEM_NONE, BW_SIGNAL_COMPONENT,
                                BW_SYNC_ON_Y, BW_CONTENT_BARS, FINE });
  double half_s = 40 / 74.25e6;
  assert_near (level_at (s, BW_CONDUCTOR_Y, 100, -half_s / 2), -0.3, 1e-6);
  assert_near (level_at (s, BW_CONDUCTOR_Y, 100, half_s / 2), 0.3, 1e-6);
  assert_near (crossing_s (s, BW_CONDUCTOR_Y, 100, -half_s / 2, half_s / 2, 0, TRUE), 0, 0.05 * NS);
  assert_near (crossing_s (s, BW_CONDUCTOR_Y, 100, -US, 0, -0.15, FALSE), -half_s, 0.05 * NS);
  assert_near (crossing_s (s, BW_CONDUCTOR_Y, 100, half_s / 2, US, 0.15, FALSE), half_s, 0.05 * NS);
}

/* Without serration field sync is one pulse, here of three lines from line 4 on (CTA-861-H, VIC 8);
 * own sync of the other polarity points upwards. */
static void
test_unserrated (void)
{
  BwSynthesisCase what
      = case_of (&(Setup){ "262-60.05-progressive", BW_SYSTEM_NONE, BW_SIGNAL_RGB,
                           BW_SYNC_COMPOSITE, BW_CONTENT_BARS, BW_RATIO_NONE });
  what.form.own_polarity[0] = BW_POLARITY_POSITIVE;
  g_autoptr (BwSynthesis) s = bw_synthesis_new (&what, NULL);
  g_assert_cmpint (bw_synthesis_lines (s), ==, 262);
  assert_near (level_at (s, BW_CONDUCTOR_SYNC, 3, 30 * US), 0, 1e-7);
  for (int line = 4; line <= 6; line++)
    {
      assert_near (level_at (s, BW_CONDUCTOR_SYNC, line, 1 * US), 0.3, 1e-7);
      assert_near (level_at (s, BW_CONDUCTOR_SYNC, line, 60 * US), 0.3, 1e-7);
    }
  assert_near (level_at (s, BW_CONDUCTOR_SYNC, 7, 2 * US), 0.3, 1e-7);
  assert_near (level_at (s, BW_CONDUCTOR_SYNC, 7, 30 * US), 0, 1e-7);
}

/* Broad pulses of tri-level sync: five lines from line 1 on, and in interlace from the middle of line 563 to that
 * of line 568 (SMPTE 296M and 274M, by secondary sources). Looked at in either half of a line, and on both
 * porches, where the level is that of blanking; a picture that is black adds nothing. */
static void
test_trilevel_broad (void)
{
  static const struct
  {
    const char *raster;
    double line_us;
    int from[2], to[2]; /* half lines, line 1 begins with 0 */
  } cases[] = {
    { "750-60-progressive", 1e6 / 45e3, { 0, 0 }, { 10, 0 } },
    { "1125-59.94-interlaced", 1.001e6 / 33750, { 0, 1125 }, { 10, 1135 } },
  };
  static const int lines[] = { 1, 2, 3, 5, 6, 7, 562, 563, 564, 567, 568, 569, 570 };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (BwSynthesis) s
          = synthesis_of (&(Setup){ cases[i].raster, BW_SYSTEM_NONE, BW_SIGNAL_COMPONENT,
                                    BW_SYNC_ON_Y, BW_CONTENT_BARS, FINE });
      gsize n = i == 0 ? 6 : G_N_ELEMENTS (lines); /* the others have a picture there */
      for (gsize j = 0; j < n; j++)
        for (int half = 0; half < 2; half++)
          {
            int slot = 2 * (lines[j] - 1) + half;
            gboolean broad = (slot >= cases[i].from[0] && slot < cases[i].to[0])
                             || (slot >= cases[i].from[1] && slot < cases[i].to[1]);
            double at_s = cases[i].line_us * (half ? 0.7 : 0.3) * US;
            double got = level_at (s, BW_CONDUCTOR_Y, lines[j], at_s);
            if (fabs (got - (broad ? -0.3 : 0)) > 1e-6)
              g_test_fail_printf ("%s, line %d, half %d: %g V", cases[i].raster, lines[j], half, got);
          }
      for (gsize j = 0; j < n; j++)
        {
          assert_near (level_at (s, BW_CONDUCTOR_Y, lines[j], 1.3 * US), 0, 1e-6);
          assert_near (level_at (s, BW_CONDUCTOR_Y, lines[j], 0.3 * US), 0.3, 1e-6);
          if (lines[j] == 1) /* what is before it is before all */
            continue;
          assert_near (level_at (s, BW_CONDUCTOR_Y, lines[j], -0.3 * US), -0.3, 1e-6);
          assert_near (level_at (s, BW_CONDUCTOR_Y, lines[j], -0.9 * US), 0, 1e-6);
        }
    }
}

/* Two broad pulses in a line of 1125 lines interlaced, one in that of 1125 progressive: edges where the
 * raster says, and blanking between the two (that there are two is what SMPTE 274M lays down by secondary
 * sources; where they lie is from memory, so that the raster's own figures are what is held against). */
static void
test_broad_edges (void)
{
  static const char *const rasters[] = { "1125-60-interlaced", "1125-60-progressive" };
  for (gsize i = 0; i < G_N_ELEMENTS (rasters); i++)
    {
      const BwRaster *raster = bw_test_raster (rasters[i]);
      g_autoptr (BwSynthesis) s
          = synthesis_of (&(Setup){ rasters[i], BW_SYSTEM_NONE, BW_SIGNAL_COMPONENT, BW_SYNC_ON_Y,
                                    BW_CONTENT_BARS, FINE });
      double half_s = bw_synthesis_line_start_s (s, 0, 2) / 2;
      double from_s = raster->broad_start_s, to_s = from_s + raster->broad_width_s;
      g_assert_true (raster->broad_width_s > 0 && raster->sync_recalled);
      assert_near (crossing_s (s, BW_CONDUCTOR_Y, 3, from_s - 0.3 * US, from_s + 0.3 * US, -0.15,
                               FALSE), from_s, 2 * NS);
      assert_near (crossing_s (s, BW_CONDUCTOR_Y, 3, to_s - 0.3 * US, to_s + 0.3 * US, -0.15, TRUE),
                   to_s, 2 * NS);
      gboolean two = raster->scan == BW_SCAN_INTERLACED;
      double between = level_at (s, BW_CONDUCTOR_Y, 3, half_s + from_s / 2);
      assert_near (between, two ? 0 : -0.3, 1e-6);
      if (two)
        assert_near (level_at (s, BW_CONDUCTOR_Y, 3, half_s + (from_s + to_s) / 2), -0.3, 1e-6);
    }
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  g_test_add_func ("/synthesis-sync/frame/525", test_frame_525);
  g_test_add_func ("/synthesis-sync/frame/625", test_frame_625);
  g_test_add_func ("/synthesis-sync/separate", test_separate);
  g_test_add_func ("/synthesis-sync/tri-level", test_trilevel);
  g_test_add_func ("/synthesis-sync/unserrated", test_unserrated);
  g_test_add_func ("/synthesis-sync/tri-level-broad", test_trilevel_broad);
  g_test_add_func ("/synthesis-sync/broad-edges", test_broad_edges);
  return g_test_run ();
}
