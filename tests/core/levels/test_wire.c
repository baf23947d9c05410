/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "test_wire.h"

static BwWireLevels
standard_on (BwColourSystem system, BwSignal signal, BwSyncKind sync, BwSyncShape shape,
             BwConductor conductor)
{
  BwWireForm form;
  bw_wire_form_standard (system, signal, sync, shape, &form);
  return levels_on (&form, conductor);
}

#define IRE(a, ire, tolerance) g_assert_true (bw_near ((a) * 140, ire, tolerance))

/* SMPTE 170M-2004 table 1, 15.4: white 100, black 7.5, sync −40, burst 40 IRE, 140 IRE = 1 V; table
 * A.1: 100 % bars from −23.3333 to 130.8333 IRE. */
static void
test_ntsc (void)
{
  BwWireLevels on = standard_on (BW_SYSTEM_NTSC_M, BW_SIGNAL_COMPOSITE, BW_SYNC_IN_VIDEO,
                                 BW_SHAPE_BILEVEL, BW_CONDUCTOR_VIDEO);
  IRE (on.white_v, 100, 1e-9);
  IRE (on.black_v, 7.5, 1e-9);
  IRE (on.sync_low_v, -40, 1e-9);
  NEAR (on.sync_high_v, 0);
  NEAR (on.blanking_v, 0);
  IRE (on.burst_pp_v, 40, 1e-9);
  IRE (on.volts_per_ire, 1, 1e-12);
  IRE (on.lowest_v, -23.3333, 1e-4);
  IRE (on.highest_v, 130.8333, 1e-4);
}

/* ITU-R BT.1700 Part A note 1: no setup; SMPTE 170M clause 10 defines the two factors so that
 * yellow and cyan peak at 4/3. */
static void
test_ntsc_japan (void)
{
  BwWireLevels on = standard_on (BW_SYSTEM_NTSC_J, BW_SIGNAL_COMPOSITE, BW_SYNC_IN_VIDEO,
                                 BW_SHAPE_BILEVEL, BW_CONDUCTOR_VIDEO);
  NEAR (on.black_v, 0);
  IRE (on.white_v, 100, 1e-9);
  IRE (on.highest_v, 400.0 / 3, 1e-4);
  IRE (on.lowest_v, -100.0 / 3, 1e-4);
}

/* ITU-R BT.1700 table 2: white 700 mV, sync 300 mV, burst 300 mV, U = 0.493 (B − Y),
 * V = 0.877 (R − Y): 100 % yellow at 0.886 + hypot (0.493 × 0.886, 0.877 × 0.114) of white. */
static void
test_pal (void)
{
  BwWireLevels on = standard_on (BW_SYSTEM_PAL_B, BW_SIGNAL_COMPOSITE, BW_SYNC_IN_VIDEO,
                                 BW_SHAPE_BILEVEL, BW_CONDUCTOR_VIDEO);
  NEAR (on.white_v, 0.7);
  NEAR (on.black_v, 0);
  NEAR (on.sync_low_v, -0.3);
  NEAR (on.burst_pp_v, 0.3);
  NEAR (on.volts_per_ire, 0.007);
  NEAR (on.highest_v, 0.7 * (0.886 + hypot (0.493 * 0.886, 0.877 * 0.114)));
  NEAR (on.lowest_v, 0.7 * (0.114 - hypot (0.493 * 0.886, 0.877 * 0.114)));
}

/* ITU-R BT.1700 Part C: 700 and 300 mV; its chroma is frequency modulated. */
static void
test_secam (void)
{
  BwWireLevels on = standard_on (BW_SYSTEM_SECAM_L, BW_SIGNAL_COMPOSITE, BW_SYNC_IN_VIDEO,
                                 BW_SHAPE_BILEVEL, BW_CONDUCTOR_VIDEO);
  NEAR (on.highest_v, 0.7);
  NEAR (on.lowest_v, 0);
  NEAR (on.burst_pp_v, 0);
}

/* Y is composite without its chroma, C the chroma about zero: SMPTE 170M table A.1, cyan: 116.9817
 * IRE peak to peak. */
static void
test_yc (void)
{
  BwWireLevels y = standard_on (BW_SYSTEM_NTSC_M, BW_SIGNAL_YC, BW_SYNC_IN_VIDEO,
                                BW_SHAPE_BILEVEL, BW_CONDUCTOR_Y);
  BwWireLevels c = standard_on (BW_SYSTEM_NTSC_M, BW_SIGNAL_YC, BW_SYNC_IN_VIDEO,
                                BW_SHAPE_BILEVEL, BW_CONDUCTOR_C);
  IRE (y.highest_v, 100, 1e-9);
  IRE (y.lowest_v, 7.5, 1e-9);
  IRE (y.sync_low_v, -40, 1e-9);
  NEAR (y.burst_pp_v, 0);
  IRE (c.highest_v, 116.9817 / 2, 1e-4);
  IRE (c.lowest_v, -116.9817 / 2, 1e-4);
  NEAR (c.sync_low_v, 0);
  NEAR (c.black_v, 0);
  IRE (c.burst_pp_v, 40, 1e-9);
}

/* RGB of 700 mV, with sync of 300 mV on green alone (an instrument maker's component note). */
static void
test_rgb (void)
{
  for (BwConductor conductor = BW_CONDUCTOR_R; conductor <= BW_CONDUCTOR_B; conductor++)
    {
      BwWireLevels on = standard_on (BW_SYSTEM_NONE, BW_SIGNAL_RGB, BW_SYNC_ON_GREEN,
                                     BW_SHAPE_BILEVEL, conductor);
      NEAR (on.white_v, 0.7);
      NEAR (on.lowest_v, 0);
      NEAR (on.sync_low_v, conductor == BW_CONDUCTOR_G ? -0.3 : 0);
      NEAR (on.volts_per_ire, 0);
    }
}

/* EBU N10: Y 700 mV and 300 mV of sync, Pb and Pr ±350 mV. SMPTE 170M annex B: component 100 IRE is
 * 700 mV. */
static void
test_component (void)
{
  BwWireLevels y = standard_on (BW_SYSTEM_NONE, BW_SIGNAL_COMPONENT, BW_SYNC_ON_Y,
                                BW_SHAPE_BILEVEL, BW_CONDUCTOR_Y);
  NEAR (y.white_v, 0.7);
  NEAR (y.sync_low_v, -0.3);
  NEAR (y.volts_per_ire, 0.007);
  for (BwConductor conductor = BW_CONDUCTOR_PB; conductor <= BW_CONDUCTOR_PR; conductor++)
    {
      BwWireLevels on = standard_on (BW_SYSTEM_NONE, BW_SIGNAL_COMPONENT, BW_SYNC_ON_Y,
                                     BW_SHAPE_BILEVEL, conductor);
      NEAR (on.highest_v, 0.35);
      NEAR (on.lowest_v, -0.35);
      NEAR (on.black_v, 0);
      NEAR (on.sync_low_v, 0);
    }
}

/* The older form with setup: Y as composite is, differences ±466.7 mV at 100 % (a broadcast
 * recorder's service manual: 933/934 mV peak to peak). */
static void
test_component_4_3 (void)
{
  BwWireForm form;
  bw_wire_form_standard (BW_SYSTEM_NONE, BW_SIGNAL_COMPONENT, BW_SYNC_ON_Y, BW_SHAPE_BILEVEL,
                         &form);
  form.component = BW_COMPONENT_SETUP_4_3;
  form.white_v = 100.0 / 140;
  BwWireLevels y = levels_on (&form, BW_CONDUCTOR_Y);
  BwWireLevels pr = levels_on (&form, BW_CONDUCTOR_PR);
  IRE (y.white_v, 100, 1e-9);
  IRE (y.black_v, 7.5, 1e-9);
  IRE (y.volts_per_ire, 1, 1e-9);
  g_assert_true (bw_near (pr.highest_v, 0.4667, 0.5e-4));
  g_assert_true (bw_near (pr.lowest_v, -0.4667, 0.5e-4));
}

/* A professional receiver's analogue output: sync 300 mV in both polarities. H and V are logic of
 * 5 V and bi-level always (common practice, no source); composite sync alone is tri-level as well. */
static void
test_trilevel (void)
{
  BwWireLevels y = standard_on (BW_SYSTEM_NONE, BW_SIGNAL_COMPONENT, BW_SYNC_ON_Y,
                                BW_SHAPE_TRILEVEL, BW_CONDUCTOR_Y);
  BwWireLevels sync = standard_on (BW_SYSTEM_NONE, BW_SIGNAL_RGB, BW_SYNC_COMPOSITE,
                                   BW_SHAPE_TRILEVEL, BW_CONDUCTOR_SYNC);
  BwWireLevels h = standard_on (BW_SYSTEM_NONE, BW_SIGNAL_RGB, BW_SYNC_SEPARATE,
                                BW_SHAPE_TRILEVEL, BW_CONDUCTOR_H);
  NEAR (y.sync_low_v, -0.3);
  NEAR (y.sync_high_v, 0.3);
  NEAR (sync.sync_low_v, -0.3);
  NEAR (sync.sync_high_v, 0.3);
  NEAR (h.sync_low_v, 0);
  NEAR (h.sync_high_v, 5);
}

/* The 21-pin connector: 0.7 V RGB, and composite video of 1 V as its sync (EN 50049-1, by secondary
 * sources). */
static void
test_peritelevision (void)
{
  BwWireLevels video = standard_on (BW_SYSTEM_NONE, BW_SIGNAL_RGB, BW_SYNC_IN_VIDEO,
                                    BW_SHAPE_BILEVEL, BW_CONDUCTOR_VIDEO);
  BwWireLevels g = standard_on (BW_SYSTEM_NONE, BW_SIGNAL_RGB, BW_SYNC_IN_VIDEO,
                                BW_SHAPE_BILEVEL, BW_CONDUCTOR_G);
  NEAR (video.white_v - video.sync_low_v, 1);
  NEAR (g.sync_low_v, 0);
}

/* SMPTE 170M-2004 table A.3, 75 % bars: luma, chroma peak to peak, phase. */
static void
test_colours (void)
{
  static const struct
  {
    double luma;
    double chroma_pp;
    double phase_deg;
  } bars[BW_N_BARS] = {
    { 76.8750, 0, 0 },
    { 68.9663, 62.0675, 167.0812 },
    { 56.1319, 87.7363, 283.4558 },
    { 48.2231, 81.9253, 240.7098 },
    { 36.1519, 81.9253, 60.7098 },
    { 28.2431, 87.7363, 103.4558 },
    { 15.4088, 62.0675, 347.0812 },
    { 7.5, 0, 0 },
  };
  BwWireForm form;
  bw_wire_form_standard (BW_SYSTEM_NTSC_M, BW_SIGNAL_COMPOSITE, BW_SYNC_IN_VIDEO,
                         BW_SHAPE_BILEVEL, &form);
  for (BwBar bar = 0; bar < BW_N_BARS; bar++)
    {
      BwRgb rgb;
      BwWireColour colour;
      bw_bar_rgb (bar, BW_BARS_75, &rgb);
      bw_wire_colour (&form, BW_CONDUCTOR_VIDEO, &rgb, &colour);
      IRE (colour.base_v, bars[bar].luma, 1e-4);
      IRE (2 * hypot (colour.u_v, colour.v_v), bars[bar].chroma_pp, 1e-4);
      double phase = bars[bar].phase_deg * G_PI / 180;
      double amplitude = bars[bar].chroma_pp / 2;
      IRE (colour.u_v, amplitude * cos (phase), 2e-4);
      IRE (colour.v_v, amplitude * sin (phase), 2e-4);
    }
}

/* Luminance without a colour system is laid down by no text: its white as entered is 100 IRE. */
static void
test_scale_of_luminance (void)
{
  BwWireForm form;
  bw_wire_form_standard (BW_SYSTEM_NONE, BW_SIGNAL_LUMA, BW_SYNC_IN_VIDEO, BW_SHAPE_BILEVEL,
                         &form);
  form.white_v = 100.0 / 140;
  form.setup_ire = 7.5;
  BwWireLevels on = levels_on (&form, BW_CONDUCTOR_VIDEO);
  NEAR (on.white_v / on.volts_per_ire, 100);
  NEAR (on.black_v / on.volts_per_ire, 7.5);
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  g_test_add_func ("/wire/ntsc", test_ntsc);
  g_test_add_func ("/wire/ntsc-japan", test_ntsc_japan);
  g_test_add_func ("/wire/pal", test_pal);
  g_test_add_func ("/wire/secam", test_secam);
  g_test_add_func ("/wire/yc", test_yc);
  g_test_add_func ("/wire/rgb", test_rgb);
  g_test_add_func ("/wire/component", test_component);
  g_test_add_func ("/wire/component-4-3", test_component_4_3);
  g_test_add_func ("/wire/tri-level", test_trilevel);
  g_test_add_func ("/wire/peritelevision", test_peritelevision);
  g_test_add_func ("/wire/colours", test_colours);
  g_test_add_func ("/wire/scale-of-luminance", test_scale_of_luminance);
  return g_test_run ();
}
