/* SPDX-License-Identifier: GPL-3.0-or-later */
/* MTF of each link, and how links combine. By another hand: test_detail-check.c. */
#include "core/detail/detail.h"

#include <math.h>

#include "core/circuit/lead.h"
#include "support.h"

#define INCH 0.0254
#define ACTIVE_S170_S (286 / 4.5e6 - 10.7e-6) /* SMPTE 170M-2004: blanking 1.5 + 9.2 us */

static void
init (BwDetailCase *what)
{
  bw_detail_case_init (what);
  what->diagonal_m = 20 * INCH; /* height 304.8 mm */
  what->mask = BW_MASK_MONO;
  what->active_s = ACTIVE_S170_S;
  what->active_lines = 485;
  what->interlaced = TRUE;
}

/* Exact arithmetic on exp(-2 pi^2 sigma^2 f^2), FWHM = 2.35482 sigma: width times frequency, and
 * lines as x of height / FWHM; half of the last place. */
static void
test_gaussian (void)
{
  static const struct
  {
    double mtf, product, lines;
  } rows[] = { { 0.50, 0.4413, 0.8825 }, { 0.20, 0.6724, 1.3448 }, { 0.10, 0.8043, 1.6085 },
               { 0.05, 0.9174, 1.8347 }, { 0.03, 0.9925, 1.9850 }, { 0.02, 1.0483, 2.0966 } };
  BwDetailCase what;
  init (&what);
  what.spot_m = 0.5e-3;
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      double slack = rows[i].mtf * 8 * 5e-5; /* slope of the curve there, in products */
      g_assert_cmpfloat_with_epsilon (bw_gaussian_mtf (1, rows[i].product), rows[i].mtf, slack);
      double tvl = rows[i].lines * 0.3048 / 0.5e-3;
      g_assert_cmpfloat_with_epsilon (bw_detail_link_mtf (&what, BW_LINK_SPOT, tvl), rows[i].mtf,
                                      slack);
    }
}

/* A line 1.18 sigma wide is the limit (common practice, no source): 2.9 % is left of it, so it and
 * 3 % are one rule. */
static void
test_spot_limit (void)
{
  BwDetailCase what;
  BwDetail detail;
  init (&what);
  what.spot_m = 0.5e-3;
  bw_detail_compute (&what, &detail);
  double by_sigma = 0.3048 / (1.18 * 0.5e-3 / 2.35482);
  g_assert_cmpfloat_with_epsilon (detail.spot_tvl / by_sigma, 1, 0.01);
  g_assert_cmpfloat_with_epsilon (bw_detail_link_mtf (&what, BW_LINK_SPOT, by_sigma), 0.029, 5e-4);
  g_assert_cmpfloat_with_epsilon (detail.spot_tvl, detail.limit_tvl[BW_LINK_SPOT], 1e-9);
  g_assert_cmpfloat_with_epsilon (detail.mtf_tvl[0], detail.spot_tvl, 1e-6);
  g_assert_cmpfloat_with_epsilon (detail.mtf_tvl[2], 0.8825 * 609.6, 0.05);
}

/* Widths of Gaussian parts add as squares: 0.35 and 0.28 mm are 0.4482 mm; two equal ones have
 * 0.7071 of the lines at 50 % (exact arithmetic). */
static void
test_widths_add (void)
{
  for (double f = 100; f < 4000; f += 300)
    g_assert_cmpfloat_with_epsilon (bw_gaussian_mtf (0.35e-3, f) * bw_gaussian_mtf (0.28e-3, f),
                                    bw_gaussian_mtf (0.4482e-3, f), 2e-4);
  BwDetailCase what;
  BwDetail one, both;
  init (&what);
  what.spot_m = 0.5e-3;
  bw_detail_compute (&what, &one);
  /* amplifiers that leave 50 % where the spot does: -3 dB at 1/sqrt(2) of it */
  what.bandwidth_hz = bw_hz_from_tvl (one.mtf_tvl[2] * M_SQRT1_2, ACTIVE_S170_S, 4.0 / 3);
  bw_detail_compute (&what, &both);
  g_assert_cmpfloat_with_epsilon (both.mtf_tvl[2], one.mtf_tvl[2] * M_SQRT1_2, 1e-6);
}

/* 400 and 600 lines are 332.8 together (exact arithmetic on 1/TVL^2). */
static void
test_combined (void)
{
  BwDetailCase what;
  BwDetail detail;
  init (&what);
  what.mask = BW_MASK_GRILLE;
  what.pitch_m = 0.3048 / 400;
  what.bandwidth_hz = bw_hz_from_tvl (600, ACTIVE_S170_S, 4.0 / 3);
  bw_detail_compute (&what, &detail);
  g_assert_cmpfloat_with_epsilon (detail.combined_tvl, 332.8, 0.05);
  g_assert_cmpuint (detail.limited_by, ==, BW_LINK_MASK);
  g_assert_cmpfloat_with_epsilon (detail.loss[BW_LINK_MASK] + detail.loss[BW_LINK_AMPLIFIER], 1,
                                  1e-12);
}

/* An amplifier is a Gaussian that is at -3 dB at B: it rises from 10 to 90 % in 2.5631 sigma of its
 * impulse, sigma = sqrt(ln 2) / (2 pi B), which is the 0.35/B of the handbooks, 70 ns for 5 MHz,
 * within 4 %. */
static void
test_rise_time (void)
{
  BwDetailCase what;
  init (&what);
  what.bandwidth_hz = 5e6;
  double sigma_s = sqrt (log (2)) / (2 * G_PI * 5e6);
  for (double f_hz = 1e6; f_hz < 15e6; f_hz += 1e6)
    g_assert_cmpfloat_with_epsilon (bw_detail_link_mtf (&what, BW_LINK_AMPLIFIER,
                                                        bw_tvl_from_hz (f_hz, ACTIVE_S170_S,
                                                                        4.0 / 3)),
                                    exp (-2 * pow (G_PI * sigma_s * f_hz, 2)), 1e-12);
  g_assert_cmpfloat_with_epsilon (2.5631 * sigma_s / 70e-9, 1, 0.04);
}

/* Every link is at -3 dB, at its sampling limit or at 3 % where its limit stands. */
static void
test_nominal (void)
{
  BwDetailCase what;
  BwDetail detail;
  init (&what);
  what.mask = BW_MASK_GRILLE;
  what.pitch_m = 0.5e-3;
  what.spot_m = 0.5e-3;
  what.bandwidth_hz = 8e6;
  what.lead_hz = 20e6;
  what.samples = 720;
  what.signal = BW_SIGNAL_COMPOSITE;
  what.system = BW_SYSTEM_NTSC_M;
  what.filter = BW_LUMA_COMB;
  bw_detail_compute (&what, &detail);
  const double at_limit[BW_N_LINKS] = { 0, M_SQRT1_2, M_SQRT1_2, M_SQRT1_2, 0.03, 0 };
  for (guint link = 0; link < BW_N_LINKS; link++)
    {
      double limit_tvl = detail.limit_tvl[link];
      g_assert_cmpfloat (limit_tvl, >, 0);
      g_assert_cmpfloat_with_epsilon (bw_detail_link_mtf (&what, link, limit_tvl), at_limit[link],
                                      1e-9);
      g_assert_cmpfloat_with_epsilon (bw_detail_link_mtf (&what, link, 1e-6), 1, 1e-3);
      g_assert_cmpfloat (bw_detail_link_mtf (&what, link, 1e6), <, 0.03);
    }
}

/* Video bandwidths of ITU-R BT.470-6 table 1-2 (M 4.2, B 5.0, L 6.0 MHz) over S170's line and over
 * 52 us; a comb leaves the whole band. */
static void
test_systems (void)
{
  static const struct
  {
    BwColourSystem system;
    double active_s, tvl;
  } rows[] = { { BW_SYSTEM_NTSC_M, ACTIVE_S170_S, 333.0 },
               { BW_SYSTEM_PAL_M, ACTIVE_S170_S, 333.0 },
               { BW_SYSTEM_PAL_B, 52e-6, 390.0 },
               { BW_SYSTEM_SECAM_L, 52e-6, 468.0 } };
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      BwDetailCase what;
      BwDetail comb, trap, apart, plain;
      init (&what);
      what.active_s = rows[i].active_s;
      what.system = rows[i].system;
      what.signal = BW_SIGNAL_COMPOSITE;
      what.filter = BW_LUMA_COMB;
      bw_detail_compute (&what, &comb);
      what.filter = BW_LUMA_TRAP;
      bw_detail_compute (&what, &trap);
      what.signal = BW_SIGNAL_YC;
      bw_detail_compute (&what, &apart);
      what.signal = BW_SIGNAL_COMPONENT;
      bw_detail_compute (&what, &plain);
      g_assert_cmpfloat_with_epsilon (comb.signal_tvl, rows[i].tvl, 0.05);
      g_assert_cmpfloat_with_epsilon (apart.signal_tvl, rows[i].tvl, 0.05);
      g_assert_cmpfloat (trap.signal_tvl, <, comb.signal_tvl);
      g_assert_cmpfloat (plain.signal_tvl, <=, 0);
    }
}

/* A trap ends luma at 3.0 to 3.2 MHz and 3.5 to 3.8 MHz (common practice, no source), takes out
 * the subcarrier (SMPTE 170M: 315/88 MHz; ITU-R BT.1700: 4 433 618.75 Hz), and has -3 dB at its
 * edge. */
static void
test_trap (void)
{
  static const struct
  {
    BwColourSystem system;
    double subcarrier_hz, low_hz, high_hz;
  } rows[] = { { BW_SYSTEM_NTSC_M, 315e6 / 88, 3.0e6, 3.2e6 },
               { BW_SYSTEM_PAL_B, 4433618.75, 3.5e6, 3.8e6 } };
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      BwDetailCase what;
      init (&what);
      what.signal = BW_SIGNAL_COMPOSITE;
      what.system = rows[i].system;
      double edge_hz = bw_trap_edge_hz (rows[i].subcarrier_hz);
      double edge_tvl = bw_tvl_from_hz (edge_hz, ACTIVE_S170_S, 4.0 / 3);
      double middle_tvl = bw_tvl_from_hz (rows[i].subcarrier_hz, ACTIVE_S170_S, 4.0 / 3);
      g_assert_cmpfloat (edge_hz, >=, rows[i].low_hz);
      g_assert_cmpfloat (edge_hz, <=, rows[i].high_hz);
      g_assert_cmpfloat_with_epsilon (bw_detail_link_mtf (&what, BW_LINK_SIGNAL, edge_tvl),
                                      M_SQRT1_2, 1e-9);
      g_assert_cmpfloat (bw_detail_link_mtf (&what, BW_LINK_SIGNAL, middle_tvl), <, 1e-6);
      g_assert_cmpfloat (bw_detail_link_mtf (&what, BW_LINK_SIGNAL, middle_tvl * 1.03), >, 0.05);
    }
}

/* A video cable's table gives 2.0 dB per 100 ft at about 27 MHz; by the square root, 1.26, 2.82 and
 * 3.99 dB per 100 m at 1, 5 and 10 MHz (exact arithmetic). */
static void
test_lead (void)
{
  double loss_db = 2.0 * 3.28084;
  g_assert_cmpfloat_with_epsilon (bw_lead_loss_db (loss_db, 27e6, 1e6), 1.26, 5e-3);
  g_assert_cmpfloat_with_epsilon (bw_lead_loss_db (loss_db, 27e6, 5e6), 2.82, 5e-3);
  g_assert_cmpfloat_with_epsilon (bw_lead_loss_db (loss_db, 27e6, 10e6), 3.99, 5e-3);

  BwDetailCase what;
  init (&what);
  what.lead_hz = bw_lead_3_db_hz (loss_db, 27e6);
  g_assert_cmpfloat_with_epsilon (bw_lead_loss_db (loss_db, 27e6, what.lead_hz), 3.0103, 1e-4);
  for (double f_hz = 1e6; f_hz < 100e6; f_hz *= 3)
    {
      double tvl = bw_tvl_from_hz (f_hz, ACTIVE_S170_S, 4.0 / 3);
      double left_db = -20 * log10 (bw_detail_link_mtf (&what, BW_LINK_LEAD, tvl));
      g_assert_cmpfloat_with_epsilon (left_db, bw_lead_loss_db (loss_db, 27e6, f_hz), 1e-9);
    }
  g_assert_cmpfloat (bw_lead_3_db_hz (0, 27e6), <=, 0);
}

/* Nothing known: nothing is lost, and nothing is said. */
static void
test_nothing_known (void)
{
  BwDetailCase what;
  BwDetail detail;
  bw_detail_case_init (&what);
  bw_detail_compute (&what, &detail);
  g_assert_cmpuint (detail.limited_by, ==, BW_N_LINKS);
  g_assert_cmpfloat (detail.combined_tvl, <=, 0);
  g_assert_cmpfloat (detail.mtf_tvl[1], <=, 0);
  g_assert_cmpfloat_with_epsilon (bw_detail_mtf (&what, 500), 1, 1e-15);
  g_autofree char *says = bw_detail_says (&detail, '.');
  bw_test_assert_words (says, WORDS ("No limit"));
}

/* Alternate pixels of a computer are in phase with themselves: at their limit a box of one pixel leaves
 * sinc(1/2) = 2/π of the sine, where samples that fall anywhere leave nothing. 640 pixels across 4:3 are
 * 480 lines. */
static void
test_in_phase (void)
{
  BwDetailCase what;
  bw_detail_case_init (&what);
  what.active_s = 25.42e-6;
  what.samples = 640;
  what.in_phase = TRUE;
  g_assert_cmpfloat_with_epsilon (bw_detail_link_mtf (&what, BW_LINK_SOURCE, 479.999), 2 / G_PI, 1e-5);
  g_assert_cmpfloat (bw_detail_link_mtf (&what, BW_LINK_SOURCE, 480.1), ==, 0);
  what.in_phase = FALSE;
  g_assert_cmpfloat_with_epsilon (bw_detail_link_mtf (&what, BW_LINK_SOURCE, 479.999), 0, 1e-5);
}

/* One figure: what is read off a wedge is where the product of the MTFs falls to 3 %, and the link that
 * limits first is the one with the most of the loss there. A spot of 1 mm on 411.48 mm has 3 % at
 * 1.985 × 411.48 = 816.8 lines (a Gaussian of that width); alone it is the whole of it. */
static void
test_limiting (void)
{
  BwDetailCase what;
  BwDetail detail;
  bw_detail_case_init (&what);
  what.diagonal_m = 0.6858;
  what.mask = BW_MASK_MONO;
  what.spot_m = 1e-3;
  bw_detail_compute (&what, &detail);
  g_assert_cmpfloat_with_epsilon (detail.limiting_tvl, 816.8, 0.1);
  g_assert_cmpuint (detail.limited_by, ==, BW_LINK_SPOT);
  what.active_s = 52e-6;
  what.bandwidth_hz = 5e6; /* 390 lines at −3 dB, the lower limit; at 3 % it has but a third of the loss */
  bw_detail_compute (&what, &detail);
  g_assert_cmpfloat_with_epsilon (bw_detail_mtf (&what, detail.limiting_tvl), 0.03, 1e-6);
  for (guint link = 0; link < BW_N_LINKS; link++)
    g_assert_cmpfloat (detail.loss[detail.limited_by], >=, detail.loss[link]);
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  g_test_add_func ("/detail-mtf/gaussian", test_gaussian);
  g_test_add_func ("/detail-mtf/spot-limit", test_spot_limit);
  g_test_add_func ("/detail-mtf/widths-add", test_widths_add);
  g_test_add_func ("/detail-mtf/combined", test_combined);
  g_test_add_func ("/detail-mtf/rise-time", test_rise_time);
  g_test_add_func ("/detail-mtf/nominal", test_nominal);
  g_test_add_func ("/detail-mtf/systems", test_systems);
  g_test_add_func ("/detail-mtf/trap", test_trap);
  g_test_add_func ("/detail-mtf/lead", test_lead);
  g_test_add_func ("/detail-mtf/nothing-known", test_nothing_known);
  g_test_add_func ("/detail-mtf/in-phase", test_in_phase);
  g_test_add_func ("/detail-mtf/limiting", test_limiting);
  return g_test_run ();
}
