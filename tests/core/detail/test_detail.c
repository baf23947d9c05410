/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a tube, a path and a source can resolve: definitions, worked examples, the claim. MTF and
 * combination are in test_detail-mtf.c. */
#include "core/detail/detail.h"
#include "core/detail/ways.h"

#include <math.h>
#include <string.h>

#include "support.h"

/* Sources:
 *   S170    SMPTE 170M-2004: blanking 1.5 + 9.2 us of a line of 286/4.5 MHz
 *   BT.470  ITU-R BT.470-6, tables 1-1 and 1-2: video bandwidths, line blanking
 *   BT.601  ITU-R BT.601-5: 720 samples at 13.5 MHz
 *   Robin   M. Robin, articles on horizontal resolution and on the Kell factor
 *   worked  worked examples in general articles and manuals (common practice, no source)
 *   sum     exact arithmetic by hand */

#define ACTIVE_S170_S (286 / 4.5e6 - 10.7e-6)
#define ACTIVE_BT470_M_S (286 / 4.5e6 - 10.9e-6)
#define ACTIVE_625_S 52e-6
#define ACTIVE_BT601_S (720 / 13.5e6)
#define INCH 0.0254

static void
init (BwDetailCase *what, double diagonal_m, BwMask mask, double pitch_m)
{
  bw_detail_case_init (what);
  what->diagonal_m = diagonal_m;
  what->mask = mask;
  what->pitch_m = pitch_m;
}

static void
add (const char *group, const char *name, gconstpointer data, GTestDataFunc func)
{
  g_autofree char *path = g_strdup_printf ("/detail/%s/%s", group, name);
  g_test_add_data_func (path, data, func);
}

/* From bandwidth to lines. */

typedef struct
{
  const char *name;
  double bandwidth_hz;
  double active_s;
  double aspect; /* 1: the published figure counts lines per picture WIDTH */
  double tvl;
  double tolerance;
} BandwidthCase;

static const BandwidthCase bandwidth_cases[] = {
  /* lines for each megahertz: S170, BT.470 (10.9 us), BT.470 (12 us of 64), BT.601; sum */
  { "per-mhz-s170", 1e6, ACTIVE_S170_S, 4.0 / 3, 79.283, 5e-4 },
  { "per-mhz-bt470-m", 1e6, ACTIVE_BT470_M_S, 4.0 / 3, 78.983, 5e-4 },
  { "per-mhz-625", 1e6, ACTIVE_625_S, 4.0 / 3, 78, 1e-9 },
  { "per-mhz-bt601", 1e6, ACTIVE_BT601_S, 4.0 / 3, 80, 1e-9 },
  { "per-mhz-wide-525", 1e6, ACTIVE_S170_S, 16.0 / 9, 59.462, 5e-4 },
  { "per-mhz-wide-625", 1e6, ACTIVE_625_S, 16.0 / 9, 58.5, 1e-9 },
  /* bandwidths of BT.470 table 1-2: M 4.2, B and G 5.0, I 5.5, D, K and L 6.0 MHz; sum */
  { "system-m", 4.2e6, 52.66e-6, 4.0 / 3, 331.8, 0.05 },
  { "system-m-s170", 4.2e6, ACTIVE_S170_S, 4.0 / 3, 333.0, 0.05 },
  { "system-b", 5.0e6, ACTIVE_625_S, 4.0 / 3, 390.0, 1e-9 },
  { "system-i", 5.5e6, ACTIVE_625_S, 4.0 / 3, 429.0, 1e-9 },
  { "system-l", 6.0e6, ACTIVE_625_S, 4.0 / 3, 468.0, 1e-9 },
  /* half of 13.5 MHz (BT.601): 540 lines over its own active line */
  { "bt601-nyquist", 6.75e6, ACTIVE_BT601_S, 4.0 / 3, 540, 1e-9 },
  /* worked: 4.2 MHz, 15 750 Hz, 83 % active: "330 lines" */
  { "worked-330", 4.2e6, 0.83 / 15750, 4.0 / 3, 330, 2.5 },
  /* worked, per picture WIDTH: 4.2 MHz/525 "442", 5 MHz/625 "520", 3 MHz "312" and "316", 5 MHz/525
   * "526" */
  { "width-442", 4.2e6, 52.6555e-6, 1, 442, 0.65 },
  { "width-520", 5.0e6, 52e-6, 1, 520, 1e-9 },
  { "width-312", 3.0e6, 52e-6, 1, 312, 1e-9 },
  { "width-316", 3.0e6, 52.6555e-6, 1, 316, 0.65 },
  { "width-526", 5.0e6, 52.6555e-6, 1, 526, 0.65 },
  /* the same, per picture height: x 3/4 */
  { "height-of-442", 4.2e6, 52.6555e-6, 4.0 / 3, 442 * 0.75, 0.5 },
  { "height-of-520", 5.0e6, 52e-6, 4.0 / 3, 390, 1e-9 },
  /* worked, per picture WIDTH: 4 MHz, 63.5 us, 90 % visible: 57 us, "228 cycles, 456 samples" */
  { "width-456", 4.0e6, 57e-6, 1, 456, 1e-6 },
};

static void
test_bandwidth (gconstpointer data)
{
  const BandwidthCase *c = data;
  double tvl = bw_tvl_from_hz (c->bandwidth_hz, c->active_s, c->aspect);
  g_assert_cmpfloat_with_epsilon (tvl, c->tvl, c->tolerance);
  g_assert_cmpfloat_with_epsilon (bw_hz_from_tvl (tvl, c->active_s, c->aspect), c->bandwidth_hz,
                                  1e-6);
}

/* Worked: as many lines across as down. 576 lines x 0.7 = 403.2 in 52 us: "5.17 MHz"; 483 x 0.7 in
 * 52.66 us: "4.28 MHz". */
static void
test_equal_both_ways (void)
{
  g_assert_cmpfloat_with_epsilon (bw_hz_from_tvl (576 * 0.7, 52e-6, 4.0 / 3), 5.17e6, 5e3);
  g_assert_cmpfloat_with_epsilon (bw_hz_from_tvl (483 * 0.7, 52.66e-6, 4.0 / 3), 4.28e6, 5e3);
  g_assert_cmpfloat (bw_hz_from_tvl (400, 0, 4.0 / 3), <=, 0);
  g_assert_cmpfloat (bw_tvl_from_hz (5e6, 52e-6, 0), <=, 0);
}

/* Worked: "800 dots" are 600 lines on 4:3 and 450 on 16:9. BT.601: 720 samples are 540. */
static void
test_samples (void)
{
  BwDetailCase what;
  BwDetail detail;

  init (&what, 20 * INCH, BW_MASK_MONO, 0);
  what.active_s = ACTIVE_625_S;
  what.samples = 800;
  bw_detail_compute (&what, &detail);
  g_assert_cmpfloat_with_epsilon (detail.source_tvl, 600, 1e-9);
  what.aspect = (BwRatio){ 16, 9 };
  bw_detail_compute (&what, &detail);
  g_assert_cmpfloat_with_epsilon (detail.source_tvl, 450, 1e-9);
  what.aspect = (BwRatio){ 4, 3 };
  what.samples = 720;
  bw_detail_compute (&what, &detail);
  g_assert_cmpfloat_with_epsilon (detail.source_tvl, 540, 1e-9);
  /* what is entered stands in place of the samples */
  what.detail_hz = 3e6;
  bw_detail_compute (&what, &detail);
  g_assert_cmpfloat_with_epsilon (detail.source_tvl, 234, 1e-9);
}

/* The glass. */

typedef struct
{
  const char *name;
  double diagonal_in;
  BwMask mask;
  double pitch_mm;
  double across;
  double tvl;
  double practical;
} MaskCase;

/* sum: height 0.6 x diagonal; a dot mask's columns at 0.866 of its pitch, which is the shortest
 * distance of triads (Poynton); 1.2 columns a line in practice (Poynton). */
static const MaskCase mask_cases[] = {
  { "13-in-stripe-0.25", 13, BW_MASK_GRILLE, 0.25, 1057, 792, 660 },
  { "19-in-stripe-0.30", 19, BW_MASK_GRILLE, 0.30, 1287, 965, 804 },
  { "13-in-stripe-0.8", 13, BW_MASK_GRILLE, 0.8, 330, 248, 206 },
  { "20-in-slot-0.75", 20, BW_MASK_SLOT, 0.75, 542, 406, 339 },
  { "14-in-dot-0.28", 14, BW_MASK_DOT, 0.28, 1173, 880, 733 },
  /* common practice, no source: 27 in, 0.8 mm, sold as 600 lines */
  { "27-in-stripe-0.8", 27, BW_MASK_GRILLE, 0.8, 686, 514, 429 },
};

static void
test_mask (gconstpointer data)
{
  const MaskCase *c = data;
  BwDetailCase what;
  BwDetail detail;

  init (&what, c->diagonal_in * INCH, c->mask, c->pitch_mm * 1e-3);
  bw_detail_compute (&what, &detail);
  g_assert_cmpfloat_with_epsilon (detail.width_m, 0.8 * what.diagonal_m, 1e-12);
  g_assert_cmpfloat_with_epsilon (detail.height_m, 0.6 * what.diagonal_m, 1e-12);
  g_assert_cmpfloat_with_epsilon (detail.stripes_across, c->across, 0.501);
  g_assert_cmpfloat_with_epsilon (detail.mask_tvl, c->tvl, 0.501);
  g_assert_cmpfloat_with_epsilon (detail.mask_practical_tvl, c->practical, 0.501);
  g_assert_cmpuint (detail.limited_by, ==, BW_LINK_MASK);
  g_assert_cmpfloat_with_epsilon (detail.combined_tvl, detail.mask_tvl, 1e-9);
}

/* sum: 0.28 -> 0.2425, 0.31 -> 0.2685, 0.25 -> 0.2165 mm. */
static void
test_dot_columns (void)
{
  static const double pitches_mm[][2] = { { 0.28, 0.2425 }, { 0.31, 0.2685 }, { 0.25, 0.2165 } };
  for (gsize i = 0; i < G_N_ELEMENTS (pitches_mm); i++)
    {
      BwDetailCase what;
      BwDetail detail;
      init (&what, 14 * INCH, BW_MASK_DOT, pitches_mm[i][0] * 1e-3);
      bw_detail_compute (&what, &detail);
      g_assert_cmpfloat_with_epsilon (detail.pitch_h_m * 1e3, pitches_mm[i][1], 5e-5);
    }
}

/* sum: 16:9 of 32 in: 0.70842 x 0.39848 m. */
static void
test_wide_screen (void)
{
  BwDetailCase what;
  BwDetail detail;
  init (&what, 32 * INCH, BW_MASK_GRILLE, 0.5e-3);
  what.aspect = (BwRatio){ 16, 9 };
  bw_detail_compute (&what, &detail);
  g_assert_cmpfloat_with_epsilon (detail.width_m, 0.70842, 5e-6);
  g_assert_cmpfloat_with_epsilon (detail.height_m, 0.39848, 5e-6);
}

/* Vertical detail and the lines on the glass. */

typedef struct
{
  const char *name;
  double active_lines;
  double kell;
  double resolved;
  double tolerance;
} KellCase;

static const KellCase kell_cases[] = {
  { "485", 485, 0.7, 339, 0.501 },               /* Robin: 339 lines per picture height */
  { "483", 483, 0.7, 338, 0.501 },               /* worked: 338 */
  { "576", 576, 0.7, 403, 0.501 },               /* worked: 403 */
  { "480-two-thirds", 480, 2.0 / 3, 320, 1e-9 }, /* worked: 160 cycles per picture height */
};

static void
test_kell (gconstpointer data)
{
  const KellCase *c = data;
  BwDetailCase what;
  BwDetail detail;

  init (&what, 15 * INCH, BW_MASK_MONO, 0);
  what.active_lines = c->active_lines;
  what.kell = c->kell;
  bw_detail_compute (&what, &detail);
  g_assert_cmpfloat_with_epsilon (detail.vertical_lines, c->resolved, c->tolerance);

  /* The interlace factor is another one, and counts for two fields alone. */
  what.interlace = 0.5;
  bw_detail_compute (&what, &detail);
  g_assert_cmpfloat_with_epsilon (detail.vertical_lines, c->resolved, c->tolerance);
  what.interlaced = TRUE;
  bw_detail_compute (&what, &detail);
  g_assert_cmpfloat_with_epsilon (detail.vertical_lines, c->resolved / 2, c->tolerance);
}

/* 0.64: Kell, Bedford and Trainer 1934, as Robin quotes it; the case starts with 0.7, which is one
 * of the table. */
static void
test_kell_values (void)
{
  BwDetailCase what;
  gboolean is_there = FALSE;

  bw_detail_case_init (&what);
  g_assert_cmpfloat_with_epsilon (bw_kell_values[0].factor, 0.64, 1e-15);
  for (guint i = 0; i < BW_N_KELL_VALUES; i++)
    {
      g_assert_nonnull (bw_kell_values[i].given_by);
      is_there |= fabs (bw_kell_values[i].factor - what.kell) < 1e-15;
    }
  g_assert_true (is_there);
  g_assert_cmpfloat_with_epsilon (what.interlace, 1, 1e-15);
}

/* sum: 15 in, 228.6 mm: 240 lines 0.9525, 480 lines 0.4763, 576 lines 0.3969 mm; one arc minute is
 * 3437.75 of them off: 14.32, 7.16 and 5.97 picture heights. */
static void
test_line_pitch (void)
{
  static const double cases[][3] = { { 240, 0.9525, 14.32 },
                                     { 480, 0.4763, 7.16 },
                                     { 576, 0.3969, 5.97 } };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      BwDetailCase what;
      BwDetail detail;
      init (&what, 15 * INCH, BW_MASK_MONO, 0);
      what.active_lines = cases[i][0];
      bw_detail_compute (&what, &detail);
      g_assert_cmpfloat_with_epsilon (detail.line_pitch_m * 1e3, cases[i][1], 5.1e-5);
      g_assert_cmpfloat_with_epsilon (detail.arc_minute_m / detail.height_m, cases[i][2], 5.1e-3);
      g_assert_cmpuint (detail.line_spot_from, ==, BW_SPOT_BY_DIAGONAL); /* no spot is known */
    }
}

/* Overscan hides lines: 480 x 0.95, at a pitch of the height / 456. */
static void
test_overscan (void)
{
  BwDetailCase what;
  BwDetail detail;
  init (&what, 15 * INCH, BW_MASK_MONO, 0);
  what.active_lines = 480;
  what.active_s = ACTIVE_S170_S;
  what.bandwidth_hz = 5e6;
  what.overscan_v = what.overscan_h = 0.05;
  bw_detail_compute (&what, &detail);
  g_assert_cmpfloat_with_epsilon (detail.seen_lines, 456, 1e-9);
  g_assert_cmpfloat_with_epsilon (detail.line_pitch_m, 0.2286 / 456, 1e-12);
  /* 5 % of the line, and of what it carries, lies outside; the published figure counts it */
  g_assert_cmpfloat_with_epsilon (detail.bandwidth_tvl, 396.4, 0.05);
  g_assert_cmpfloat_with_epsilon (detail.limit_tvl[BW_LINK_AMPLIFIER], 0.95 * 396.417, 1e-3);
}

typedef struct
{
  const char *name;
  double ratio;
  double modulation;
  double modulation_tolerance;
  double valley_to_peak;
  double valley_tolerance;
} LineCase;

/* sum of many Gaussian lines; half of the last place that is printed */
static const LineCase line_cases[] = {
  { "0.3", 0.3, 0.998, 5e-4, 0.001, 5e-4 },   { "0.5", 0.5, 0.778, 5e-4, 0.125, 5e-4 },
  { "0.6", 0.6, 0.549, 5e-4, 0.291, 5e-4 },   { "0.7", 0.7, 0.349, 5e-4, 0.483, 5e-4 },
  { "0.8", 0.8, 0.205, 5e-4, 0.660, 5e-4 },   { "0.9", 0.9, 0.112, 5e-4, 0.799, 5e-4 },
  { "1.0", 1.0, 0.057, 5e-4, 0.892, 5e-4 },   { "1.2", 1.2, 0.012, 5e-4, 0.977, 5e-4 },
  { "1.5", 1.5, 0.0007, 5e-5, 0.9987, 5e-5 },
};

static void
test_lines (gconstpointer data)
{
  const LineCase *c = data;
  double peak = bw_line_brightness (c->ratio, 0);
  double valley = bw_line_brightness (c->ratio, 0.5);

  g_assert_cmpfloat_with_epsilon (bw_line_modulation (c->ratio), c->modulation,
                                  c->modulation_tolerance);
  g_assert_cmpfloat_with_epsilon (valley / peak, c->valley_to_peak, c->valley_tolerance);
  g_assert_cmpfloat_with_epsilon (bw_line_modulation (c->ratio), (peak - valley) / (peak + valley),
                                  1e-12);
  g_assert_cmpfloat_with_epsilon (bw_line_brightness (c->ratio, 7.25),
                                  bw_line_brightness (c->ratio, -0.25), 1e-12);
}

/* The two ways of summing meet at a ratio of 0.5; the mean brightness is 1. */
static void
test_lines_meet (void)
{
  for (int i = 0; i <= 8; i++)
    g_assert_cmpfloat_with_epsilon (bw_line_brightness (0.5 - 1e-12, i / 8.0),
                                    bw_line_brightness (0.5 + 1e-12, i / 8.0), 1e-10);
  g_assert_cmpfloat_with_epsilon (bw_line_modulation (0.5 - 1e-12),
                                  bw_line_modulation (0.5 + 1e-12), 1e-10);
  for (double ratio = 0.15; ratio < 3; ratio += 0.15)
    {
      double sum = 0;
      for (int i = 0; i < 400; i++)
        sum += bw_line_brightness (ratio, i / 400.0);
      g_assert_cmpfloat_with_epsilon (sum / 400, 1, 1e-9);
    }
  g_assert_cmpfloat (bw_line_brightness (0, 0), <=, 0);
  g_assert_cmpfloat_with_epsilon (bw_line_modulation (0), 1, 1e-15);
}

/* sum: gratings of 0.25 and 0.30 mm beat in 1.5 mm; equal ones, or one alone, do not. */
static void
test_beat (void)
{
  g_assert_cmpfloat_with_epsilon (bw_beat_period_m (0.25e-3, 0.30e-3), 1.5e-3, 1e-12);
  g_assert_cmpfloat_with_epsilon (bw_beat_period_m (0.30e-3, 0.25e-3), 1.5e-3, 1e-12);
  g_assert_cmpfloat (bw_beat_period_m (0.25e-3, 0.25e-3), <=, 0);
  g_assert_cmpfloat (bw_beat_period_m (0, 0.25e-3), <=, 0);
}

/* A grille has no pitch up and down, so lines cannot beat with it (common practice, no source); a
 * dot mask's rows lie half of its pitch apart. */
static void
test_moire (void)
{
  BwDetailCase what;
  BwDetail detail;

  init (&what, 15 * INCH, BW_MASK_GRILLE, 0.5e-3);
  what.active_lines = 480;
  what.samples = 640;
  bw_detail_compute (&what, &detail);
  g_assert_cmpfloat (detail.moire_lines_mask_m, <=, 0);
  /* 304.8/640 = 0.47625 mm against 0.5 mm */
  g_assert_cmpfloat_with_epsilon (detail.moire_samples_mask_m, 0.47625e-3 * 0.5 / 0.02375, 1e-9);
  what.mask = BW_MASK_DOT;
  bw_detail_compute (&what, &detail);
  /* 0.47625 mm against 0.25 mm: 1/(2/0.47625 - 1/0.25) = 5.013 mm; 1/(1/0.25 - 1/0.47625) =
   * 0.526 mm is the shorter */
  g_assert_cmpfloat_with_epsilon (detail.moire_lines_mask_m, 5.01316e-3, 1e-8);
  /* 0.15 mm: 1/(1/0.15 - 1/0.47625) = 0.219 mm and 1/(1/0.15 - 2/0.47625) = 0.405 mm are both finer
   * than a line */
  what.pitch_m = 0.3e-3;
  bw_detail_compute (&what, &detail);
  g_assert_cmpfloat (detail.moire_lines_mask_m, <=, 0);
}

/* The case of a sheet. */

static void
test_case_from (void)
{
  g_autoptr (BwSheet) sheet = bw_test_demo ();
  BwInput *composite = bw_monitor_input (sheet->monitor, 0);
  BwInput *rgb = bw_monitor_input (sheet->monitor, 2);
  const BwSource *tape = bw_sheet_source (sheet, 0);
  BwDetailCase what;

  bw_detail_case_from (&what, sheet->monitor, composite, tape, bw_test_raster (tape->raster));
  g_assert_cmpfloat_with_epsilon (what.bandwidth_hz, 6e6, 1e-3);
  g_assert_cmpfloat_with_epsilon (what.active_s, ACTIVE_S170_S, 1e-9);
  g_assert_cmpfloat_with_epsilon (what.active_lines, 485, 1e-9);
  g_assert_cmpint (what.samples, ==, 0);
  g_assert_true (what.interlaced);
  g_assert_cmpuint (what.signal, ==, BW_SIGNAL_COMPOSITE);
  g_assert_cmpuint (what.filter, ==, BW_LUMA_TRAP);

  /* VIC 6 sends each of 720 samples twice (CTA-861). */
  bw_detail_case_from (&what, sheet->monitor, rgb, NULL, bw_test_raster ("cta-861-vic-6"));
  g_assert_cmpint (what.samples, ==, 720);
  g_assert_cmpfloat_with_epsilon (what.bandwidth_hz, 20e6, 1e-3);
  g_assert_cmpuint (what.signal, ==, BW_SIGNAL_RGB);

  bw_detail_case_from (&what, sheet->monitor, NULL, NULL, NULL);
  g_assert_cmpfloat (what.active_s, <=, 0);
  g_assert_cmpfloat_with_epsilon (what.claimed_lines, 500, 1e-9);
}

/* sum: the width of 4:3 is 0.8 of its diagonal, so 16:9 inside is 386.08 x 217.17 mm of 19 in; the
 * height of 16:9 is 9/hypot(16, 9) of its diagonal, so 4:3 inside is 4/3 of that wide. */
static void
test_area (void)
{
  g_autoptr (BwMonitor) monitor = bw_monitor_new ();
  g_autoptr (BwSource) source = bw_source_new ();
  const BwRatio wide = { 16, 9 }, standard = { 4, 3 };
  BwDetailCase what;
  BwDetail detail;

  monitor->diagonal_m = 19 * INCH;
  monitor->mask = BW_MASK_SLOT;
  monitor->pitch_m = 0.45e-3;
  source->aspect = wide;
  bw_detail_case_from (&what, monitor, NULL, source, NULL);
  bw_detail_compute (&what, &detail);
  g_assert_cmpfloat_with_epsilon (detail.height_m, 0.28956, 1e-9); /* no switch: it is filled */
  monitor->wide_switch = TRUE;
  bw_detail_case_from (&what, monitor, NULL, source, NULL);
  bw_detail_compute (&what, &detail);
  g_assert_cmpfloat_with_epsilon (detail.width_m, 0.38608, 1e-9);
  g_assert_cmpfloat_with_epsilon (detail.height_m, 0.21717, 1e-9);
  g_assert_cmpfloat_with_epsilon (detail.mask_tvl, 482.6, 1e-6);
  monitor->aspect = wide;
  source->aspect = standard;
  bw_detail_case_from (&what, monitor, NULL, source, NULL);
  bw_detail_compute (&what, &detail);
  g_assert_cmpfloat_with_epsilon (detail.height_m, 0.4826 * 9 / sqrt (337), 1e-9);
  g_assert_cmpfloat_with_epsilon (detail.width_m, 0.4826 * 12 / sqrt (337), 1e-9);
  source->aspect = (BwRatio){ 5, 4 }; /* of which no switch knows */
  bw_detail_case_from (&what, monitor, NULL, source, NULL);
  g_assert_cmpfloat_with_epsilon (what.diagonal_m, 0.4826, 1e-12);
}

/* The claim. */

typedef struct
{
  const char *name;
  BwMask mask;
  double pitch_m;
  double spot_m;
  double bandwidth_hz;
  double claimed;
  BwClaim claim;
  const char *words[4];
} ClaimCase;

/* A tube of 27 in with a pitch of 0.8 mm: 514 lines at the sampling limit (common practice, no
 * source); 10 MHz over S170's line: 793 lines; 4.2 MHz: 333; a spot of 1 mm: 817, of 2 mm: 408. */
static const ClaimCase claim_cases[] = {
  { "none", BW_MASK_GRILLE, 0.8e-3, 0, 0, 0, BW_CLAIM_NONE, { "Nothing" } },
  { "unknown", BW_MASK_GRILLE, 0, 0, 0, 600, BW_CLAIM_UNKNOWN, { "not judged" } },
  { "mono-unknown", BW_MASK_MONO, 0, 0, 0, 600, BW_CLAIM_UNKNOWN, { "not judged" } },
  { "trap",
    BW_MASK_GRILLE,
    0.8e-3,
    0,
    10e6,
    600,
    BW_CLAIM_BY_BANDWIDTH,
    { "bandwidth alone", "514", "429", "0.686" } },
  { "trap-by-spot",
    BW_MASK_MONO,
    0,
    2e-3,
    10e6,
    600,
    BW_CLAIM_BY_BANDWIDTH,
    { "bandwidth alone", "408", "793", "1.36" } },
  { "tube-not-known", BW_MASK_GRILLE, 0, 0, 10e6, 600, BW_CLAIM_BY_BANDWIDTH, { "not known" } },
  { "mask-alone", BW_MASK_GRILLE, 0.8e-3, 0, 0, 600, BW_CLAIM_NOT_SUPPORTED, { "0.686" } },
  { "nothing-carries",
    BW_MASK_GRILLE,
    0.8e-3,
    0,
    4.2e6,
    600,
    BW_CLAIM_NOT_SUPPORTED,
    { "0.686", "7.57" } },
  { "bandwidth-short", BW_MASK_GRILLE, 0.8e-3, 0, 4.2e6, 400, BW_CLAIM_BY_TUBE, { "5.05" } },
  { "mono-bandwidth-short", BW_MASK_MONO, 0, 0, 4.2e6, 400, BW_CLAIM_NOT_SUPPORTED, { "5.05" } },
  { "holds", BW_MASK_GRILLE, 0.8e-3, 1e-3, 10e6, 400, BW_CLAIM_SUPPORTED, { "holds" } },
  /* 1/TVL^2 adds: 514.35 (mask) and 792.83 (10 MHz) leave 431.50 */
  { "not-together",
    BW_MASK_GRILLE,
    0.8e-3,
    0,
    10e6,
    500,
    BW_CLAIM_NOT_TOGETHER,
    { "does not hold", "each part of the set alone carries it", "Together they leave 431" } },
  /* 514.35 and 7928.3 (100 MHz) leave 513.27 */
  { "holds-at-the-limit",
    BW_MASK_GRILLE,
    0.8e-3,
    0,
    100e6,
    500,
    BW_CLAIM_SUPPORTED,
    { "very limit" } },
  { "mono-holds", BW_MASK_MONO, 0, 0, 10e6, 600, BW_CLAIM_SUPPORTED, { "holds" } },
};

static void
test_claim (gconstpointer data)
{
  const ClaimCase *c = data;
  BwDetailCase what;
  BwDetail detail;

  init (&what, 27 * INCH, c->mask, c->pitch_m);
  what.spot_m = c->spot_m;
  what.bandwidth_hz = c->bandwidth_hz;
  what.active_s = ACTIVE_S170_S;
  what.claimed_lines = c->claimed;
  bw_detail_compute (&what, &detail);
  g_autofree char *says = bw_claim_says (&what, &detail, '.');
  g_assert_cmpuint (detail.claim, ==, c->claim);
  if (c->claim == BW_CLAIM_NONE) /* nothing to hold limits against */
    g_assert_null (strstr (says, "lines"));
  for (gsize i = 0; i < G_N_ELEMENTS (c->words) && c->words[i] != NULL; i++)
    bw_test_assert_words (says, WORDS (c->words[i]));
}

/* What a claim needs of each part is what carries it exactly. */
static void
test_needs (void)
{
  static const BwMask masks[] = { BW_MASK_GRILLE, BW_MASK_SLOT, BW_MASK_DOT };
  for (gsize i = 0; i < G_N_ELEMENTS (masks); i++)
    {
      BwDetailCase what;
      BwDetail detail;
      init (&what, 27 * INCH, masks[i], 0.8e-3);
      what.active_s = ACTIVE_625_S;
      what.claimed_lines = 600;
      bw_detail_compute (&what, &detail);
      /* sum: 411.48 mm / 600; 600 / 78 lines a megahertz */
      g_assert_cmpfloat_with_epsilon (detail.pitch_for_claim_m,
                                      0.6858e-3 / (masks[i] == BW_MASK_DOT ? 0.8660254 : 1), 1e-9);
      g_assert_cmpfloat_with_epsilon (detail.bandwidth_for_claim_hz, 600e6 / 78, 1e-3);
      what.pitch_m = detail.pitch_for_claim_m;
      what.spot_m = detail.spot_for_claim_m;
      what.bandwidth_hz = detail.bandwidth_for_claim_hz;
      bw_detail_compute (&what, &detail);
      g_assert_cmpuint (detail.claim, ==, BW_CLAIM_NOT_TOGETHER); /* each carries it exactly */
      what.claimed_lines = 600.01;
      bw_detail_compute (&what, &detail);
      g_assert_cmpuint (detail.claim, ==, BW_CLAIM_NOT_SUPPORTED);
    }
}

/* Overscan of less than nothing or of everything is none: the whole of the line is then seen. */
static void
test_odd_overscan (void)
{
  static const double odd[] = { -0.1, 1, 1.2 };
  for (gsize i = 0; i < G_N_ELEMENTS (odd); i++)
    {
      BwDetailCase what;
      BwDetail none, detail;
      init (&what, 27 * INCH, BW_MASK_GRILLE, 0.8e-3);
      what.active_s = ACTIVE_625_S;
      what.active_lines = 576;
      what.bandwidth_hz = 5e6;
      bw_detail_compute (&what, &none);
      what.overscan_h = what.overscan_v = odd[i];
      bw_detail_compute (&what, &detail);
      g_assert_cmpfloat_with_epsilon (detail.bandwidth_tvl, none.bandwidth_tvl, 1e-9);
      g_assert_cmpfloat_with_epsilon (detail.line_pitch_m, none.line_pitch_m, 1e-12);
    }
}

/* Without a diagonal or an aspect ratio there is no width and no height. */
static void
test_no_size (void)
{
  for (int i = 0; i < 2; i++)
    {
      BwDetailCase what;
      BwDetail detail;
      init (&what, 27 * INCH, BW_MASK_GRILLE, 0.8e-3);
      if (i == 0)
        what.diagonal_m = 0;
      else
        what.aspect = BW_RATIO_NONE;
      bw_detail_compute (&what, &detail);
      g_assert_cmpfloat (detail.width_m, ==, 0);
      g_assert_cmpfloat (detail.height_m, ==, 0);
    }
}

/* A tape has no finer picture behind its own: no way is named that it cannot come by, and nobody is told
 * what RGB would give. A camera whose highest frequency is not known may have one. */
static void
test_recorded (void)
{
  g_autoptr (BwSheet) sheet = bw_test_demo ();
  const BwDetailBench bench = { .monitor = sheet->monitor,
                                .raster = bw_test_raster ("525-59.94-interlaced") };
  BwDetailWay ways[BW_DETAIL_WAYS_MAX];
  BwDetailCase what;
  BwDetail detail;

  init (&what, 19 * INCH, BW_MASK_SLOT, 0.45e-3);
  what.active_s = ACTIVE_S170_S;
  what.signal = BW_SIGNAL_COMPOSITE;
  what.system = BW_SYSTEM_NTSC_M;
  guint live = bw_detail_ways (&what, &bench, ways);
  g_assert_nonnull (bw_detail_ways_rgb (ways, live));

  what.detail_hz = 3e6;
  bw_detail_compute (&what, &detail);
  guint recorded = bw_detail_ways (&what, &bench, ways);
  g_autofree char *says = bw_detail_ways_say (&what, &detail, ways, recorded, '.');
  g_assert_cmpuint (recorded, ==, 3); /* trap, comb, Y/C */
  g_assert_null (bw_detail_ways_rgb (ways, recorded));
  bw_test_assert_words (says, WORDS ("recorded", "no RGB"));
}

/* Without a width of the spot the lines are drawn with a typical one, that of a published tube in proportion: 0.63
 * mm at a triad pitch of 0.31 mm (Poynton, Digital Video and HDTV, figure 5.9), 0.8 mm on 355 mm (one published
 * source). A grille of 0.25 mm then has 0.508 mm; 240 lines on 13 inches lie 198.12 / 240 = 0.8255 mm apart, so
 * the spot is 0.615 of that, between 0.6 with a modulation of 0.549 and 0.7 with 0.349 (exact sums of Gaussian
 * lines). No limit is taken from it. */
static void
test_typical_spot (void)
{
  BwDetailCase what;
  BwDetail detail;

  init (&what, 13 * INCH, BW_MASK_GRILLE, 0.25e-3);
  what.active_lines = 240;
  bw_detail_compute (&what, &detail);
  g_assert_cmpuint (detail.line_spot_from, ==, BW_SPOT_BY_PITCH);
  g_assert_cmpfloat_with_epsilon (detail.line_spot_m, 0.508e-3, 0.5e-6);
  g_assert_cmpfloat_with_epsilon (detail.line_width_ratio, 0.6154, 1e-4);
  g_assert_cmpfloat (detail.line_modulation, <, 0.549);
  g_assert_cmpfloat (detail.line_modulation, >, 0.349);
  g_assert_cmpfloat (detail.spot_tvl, ==, 0);
  g_assert_cmpfloat (detail.limit_tvl[BW_LINK_SPOT], ==, 0);
  g_autofree char *says = bw_detail_spot_says (&detail, '.');
  g_assert_nonnull (strstr (says, "0.51\u00a0mm"));
  g_assert_nonnull (strstr (says, "assumed"));

  init (&what, 0.355, BW_MASK_MONO, 0);
  bw_detail_compute (&what, &detail);
  g_assert_cmpuint (detail.line_spot_from, ==, BW_SPOT_BY_DIAGONAL);
  g_assert_cmpfloat_with_epsilon (detail.line_spot_m, 0.8e-3, 1e-9);

  what.spot_m = 0.3e-3;
  bw_detail_compute (&what, &detail);
  g_assert_cmpuint (detail.line_spot_from, ==, BW_SPOT_GIVEN);
  g_assert_cmpfloat (detail.line_spot_m, ==, 0.3e-3);
  g_assert_null (bw_detail_spot_says (&detail, '.'));

  init (&what, 0, BW_N_MASKS, 0);
  bw_detail_compute (&what, &detail);
  g_assert_cmpfloat (detail.line_spot_m, ==, 0);
  g_assert_null (bw_detail_spot_says (&detail, '.'));
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  for (gsize i = 0; i < G_N_ELEMENTS (bandwidth_cases); i++)
    add ("bandwidth", bandwidth_cases[i].name, &bandwidth_cases[i], test_bandwidth);
  for (gsize i = 0; i < G_N_ELEMENTS (mask_cases); i++)
    add ("mask", mask_cases[i].name, &mask_cases[i], test_mask);
  for (gsize i = 0; i < G_N_ELEMENTS (kell_cases); i++)
    add ("kell", kell_cases[i].name, &kell_cases[i], test_kell);
  for (gsize i = 0; i < G_N_ELEMENTS (line_cases); i++)
    add ("lines", line_cases[i].name, &line_cases[i], test_lines);
  for (gsize i = 0; i < G_N_ELEMENTS (claim_cases); i++)
    add ("claim", claim_cases[i].name, &claim_cases[i], test_claim);
  g_test_add_func ("/detail/equal-both-ways", test_equal_both_ways);
  g_test_add_func ("/detail/samples", test_samples);
  g_test_add_func ("/detail/dot-columns", test_dot_columns);
  g_test_add_func ("/detail/wide-screen", test_wide_screen);
  g_test_add_func ("/detail/kell-values", test_kell_values);
  g_test_add_func ("/detail/line-pitch", test_line_pitch);
  g_test_add_func ("/detail/overscan", test_overscan);
  g_test_add_func ("/detail/lines-meet", test_lines_meet);
  g_test_add_func ("/detail/beat", test_beat);
  g_test_add_func ("/detail/moire", test_moire);
  g_test_add_func ("/detail/case-from", test_case_from);
  g_test_add_func ("/detail/area", test_area);
  g_test_add_func ("/detail/needs", test_needs);
  g_test_add_func ("/detail/odd-overscan", test_odd_overscan);
  g_test_add_func ("/detail/no-size", test_no_size);
  g_test_add_func ("/detail/recorded", test_recorded);
  g_test_add_func ("/detail/typical-spot", test_typical_spot);
  return g_test_run ();
}
