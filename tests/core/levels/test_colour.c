/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <locale.h>
#include <math.h>

#include "core/levels/colour.h"

/* Colour bars and matrices against the published tables. */

typedef struct
{
  BwBar bar;
  double luma_ire;
  double chroma_pp_ire;
  double min_ire;
  double max_ire;
  double phase_deg;
} BarRow;

/* SMPTE 170M-2004 table A.3, 75 % bars with setup, in IRE (printed to four decimals). */
static const BarRow ntsc_75[] = {
  { BW_BAR_WHITE, 76.8750, 0, 76.8750, 76.8750, 0 },
  { BW_BAR_YELLOW, 68.9663, 62.0675, 37.9325, 100.0000, 167.0812 },
  { BW_BAR_CYAN, 56.1319, 87.7363, 12.2638, 100.0000, 283.4558 },
  { BW_BAR_GREEN, 48.2231, 81.9253, 7.2605, 89.1858, 240.7098 },
  { BW_BAR_MAGENTA, 36.1519, 81.9253, -4.8108, 77.1145, 60.7098 },
  { BW_BAR_RED, 28.2431, 87.7363, -15.6250, 72.1113, 103.4558 },
  { BW_BAR_BLUE, 15.4088, 62.0675, -15.6250, 46.4425, 347.0812 },
  { BW_BAR_BLACK, 7.5, 0, 7.5, 7.5, 0 },
};

/* SMPTE 170M-2004 table A.1, 100 % bars with setup. Green's luma is printed 61.7972, a misprint:
 * 7.5 + 92.5 × 0.587 = 61.7975, which is also the mean of the table's own extremes. */
static const BarRow ntsc_100[] = {
  { BW_BAR_WHITE, 100, 0, 100, 100, 0 },
  { BW_BAR_YELLOW, 89.4550, 82.7567, 48.0767, 130.8333, 167.0812 },
  { BW_BAR_CYAN, 72.3425, 116.9817, 13.8517, 130.8333, 283.4558 },
  { BW_BAR_GREEN, 61.7975, 109.2338, 7.1806, 116.4144, 240.7098 },
  { BW_BAR_MAGENTA, 45.7025, 109.2338, -8.9144, 100.3194, 60.7098 },
  { BW_BAR_RED, 35.1575, 116.9817, -23.3333, 93.6483, 103.4558 },
  { BW_BAR_BLUE, 18.0450, 82.7567, -23.3333, 59.4233, 347.0812 },
  { BW_BAR_BLACK, 7.5, 0, 7.5, 7.5, 0 },
};

static void
check_bars (const BarRow *rows, gsize n, BwBarsForm form)
{
  for (gsize i = 0; i < n; i++)
    {
      BwRgb rgb;
      BwCodedLevels levels;
      bw_bar_rgb (rows[i].bar, form, &rgb);
      bw_rgb_to_coded (BW_SYSTEM_NTSC_M, 7.5, &rgb, &levels);
      g_assert_cmpfloat_with_epsilon (levels.luma_v * 140, rows[i].luma_ire, 1e-4);
      g_assert_cmpfloat_with_epsilon (levels.chroma_pp_v * 140, rows[i].chroma_pp_ire, 1e-4);
      g_assert_cmpfloat_with_epsilon (levels.min_v * 140, rows[i].min_ire, 1e-4);
      g_assert_cmpfloat_with_epsilon (levels.max_v * 140, rows[i].max_ire, 1e-4);
      g_assert_cmpfloat_with_epsilon (levels.phase_deg, rows[i].phase_deg, 1e-4);
    }
}

static void
test_ntsc_75 (void)
{
  check_bars (ntsc_75, G_N_ELEMENTS (ntsc_75), BW_BARS_75);
}

static void
test_ntsc_100 (void)
{
  check_bars (ntsc_100, G_N_ELEMENTS (ntsc_100), BW_BARS_100);
}

static void
test_pal (void)
{
  /* ITU-R BT.1700: the encoding equations with U = 0.493 and V = 0.877 worked by hand for yellow
   * at 75 %: Y = 0.75 × 0.886 = 0.6645 → 465.15 mV; U = 0.493 × −0.6645, V = 0.877 × 0.0855;
   * 2 × 700 mV × √(U² + V²) = 470.50 mV. */
  BwRgb yellow = { 0.75, 0.75, 0 };
  BwCodedLevels levels;
  bw_rgb_to_coded (BW_SYSTEM_PAL_B, 0, &yellow, &levels);
  g_assert_cmpfloat_with_epsilon (levels.luma_v, 0.46515, 1e-9);
  g_assert_cmpfloat_with_epsilon (levels.chroma_pp_v, 0.4704985, 1e-6);
  g_assert_cmpfloat_with_epsilon (levels.phase_deg, 167.1077, 1e-3);
}

/* ITU-R BT.601-5 3.5 and table 1: luma and differences of the 100 % primaries. */
static void
test_matrix_601 (void)
{
  static const struct
  {
    BwRgb rgb;
    double y, r_y, b_y;
  } rows[] = {
    { { 1, 0, 0 }, 0.299, 0.701, -0.299 },  { { 1, 1, 0 }, 0.886, 0.114, -0.886 },
    { { 0, 1, 1 }, 0.701, -0.701, 0.299 },  { { 0, 1, 0 }, 0.587, -0.587, -0.587 },
    { { 1, 0, 1 }, 0.413, 0.587, 0.587 },   { { 0, 0, 1 }, 0.114, -0.114, 0.886 },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      BwYPbPr p;
      bw_rgb_to_ypbpr (BW_MATRIX_601, &rows[i].rgb, &p);
      g_assert_cmpfloat_with_epsilon (p.y, rows[i].y, 1e-12);
      g_assert_cmpfloat_with_epsilon (p.pr, rows[i].r_y * 0.5 / 0.701, 1e-12);
      g_assert_cmpfloat_with_epsilon (p.pb, rows[i].b_y * 0.5 / 0.886, 1e-12);
    }
}

/* ITU-R BT.709 as the Linux media documentation prints it: CB = −0.1146 R − 0.3854 G + 0.5 B,
 * CR = 0.5 R − 0.4542 G − 0.0458 B (four decimals). */
static void
test_matrix_709 (void)
{
  BwRgb red = { 1, 0, 0 }, green = { 0, 1, 0 }, blue = { 0, 0, 1 };
  BwYPbPr p;
  bw_rgb_to_ypbpr (BW_MATRIX_709, &red, &p);
  g_assert_cmpfloat_with_epsilon (p.pb, -0.1146, 5e-5);
  bw_rgb_to_ypbpr (BW_MATRIX_709, &green, &p);
  g_assert_cmpfloat_with_epsilon (p.pb, -0.3854, 5e-5);
  g_assert_cmpfloat_with_epsilon (p.pr, -0.4542, 5e-5);
  bw_rgb_to_ypbpr (BW_MATRIX_709, &blue, &p);
  g_assert_cmpfloat_with_epsilon (p.pr, -0.0458, 5e-5);
}

/* Component: 700 mV and ±350 mV (ITU-R BT.601 coding ranges on the EBU N10 scale); the form with
 * differences × 4/3 has ±350 mV at 75 % bars (common practice, no source). */
static void
test_component (void)
{
  BwRgb yellow_100 = { 1, 1, 0 }, yellow_75 = { 0.75, 0.75, 0 };
  BwYPbPr p;
  double volts[3];
  bw_rgb_to_ypbpr (BW_MATRIX_601, &yellow_100, &p);
  bw_ypbpr_to_volts (BW_COMPONENT_700, &p, volts);
  g_assert_cmpfloat_with_epsilon (volts[0], 0.6202, 1e-9);
  g_assert_cmpfloat_with_epsilon (volts[1], -0.35, 1e-9);
  bw_rgb_to_ypbpr (BW_MATRIX_601, &yellow_75, &p);
  bw_ypbpr_to_volts (BW_COMPONENT_SETUP_4_3, &p, volts);
  g_assert_cmpfloat_with_epsilon (volts[1], -0.35, 1e-9);
  /* setup stands on Y: 7.5 + 0.925 × 66.45 IRE = 68.966 IRE = 492.62 mV, as in composite */
  g_assert_cmpfloat_with_epsilon (volts[0], 0.49262, 1e-5);
}

/* ITU-R BT.601: Y is coded 16 + 219 Y, the differences 128 + 224 of them; 75 % yellow is 162, 44, 142. */
static void
test_codes (void)
{
  BwRgb yellow = { 0.75, 0.75, 0 };
  BwYPbPr p;
  bw_rgb_to_ypbpr (BW_MATRIX_601, &yellow, &p);
  g_assert_cmpint ((int) round (16 + 219 * p.y), ==, 162);
  g_assert_cmpint ((int) round (128 + 224 * p.pb), ==, 44);
  g_assert_cmpint ((int) round (128 + 224 * p.pr), ==, 142);
}

int
main (int argc, char **argv)
{
  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/colour/bars/ntsc-75", test_ntsc_75);
  g_test_add_func ("/colour/bars/ntsc-100", test_ntsc_100);
  g_test_add_func ("/colour/bars/pal", test_pal);
  g_test_add_func ("/colour/matrix/601", test_matrix_601);
  g_test_add_func ("/colour/matrix/709", test_matrix_709);
  g_test_add_func ("/colour/component", test_component);
  g_test_add_func ("/colour/codes", test_codes);
  return g_test_run ();
}
