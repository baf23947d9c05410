/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a preview works out before it draws: where the glass, the scan and the crop lie, how fine the grid
 * is, and how the colours travel. By arithmetic on a tube of 0.4 m by 0.3 m, and by the figures of SMPTE
 * 170M, ITU-R BT.470-6, BT.601 and BT.709. */
#include "core/preview/preview-private.h"

#include <math.h>

#include "support.h"

#define NEAR(a, b, tolerance) g_assert_cmpfloat_with_epsilon (a, b, tolerance)

typedef struct
{
  BwDetailCase what;
  BwPlanes *picture;
  BwPreview preview;
  BwPreviewPlan plan;
} Bench;

/* Invented: 480 of 525 lines interlaced, 0.3 mm of grille, a spot of 0.5 mm, a picture of 1000 pixels;
 * a crop of 400 by 300 pixels at 2000 pixels to the metre. */
static void
bench_init (Bench *bench, BwSignal signal, BwColourSystem system)
{
  *bench = (Bench){ 0 };
  bw_detail_case_init (&bench->what);
  bench->what.diagonal_m = 0.5;
  bench->what.mask = BW_MASK_GRILLE;
  bench->what.pitch_m = 0.3e-3;
  bench->what.spot_m = 0.5e-3;
  bench->what.active_s = 52e-6;
  bench->what.active_lines = 480;
  bench->what.interlaced = TRUE;
  bench->what.signal = signal;
  bench->what.system = system;
  bench->picture = bw_planes_new (1000, 1);
  bench->preview = (BwPreview){ .what = &bench->what,
                                .picture = bench->picture,
                                .centre_x = 0.5,
                                .centre_y = 0.5,
                                .pixels_per_m = 2000,
                                .width = 400,
                                .height = 300 };
}

static const BwPreviewPlan *
plan_of (Bench *bench)
{
  bw_preview_plan_glass (&bench->plan, &bench->preview);
  return &bench->plan;
}

static void
bench_clear (Bench *bench)
{
  g_clear_pointer (&bench->picture, bw_planes_free);
}

/* A Gaussian of area 1 is half of its peak half of its width from the middle. */
static void
test_gaussian (void)
{
  double area = 0;
  for (int i = -400; i <= 400; i++)
    area += bw_gaussian_weight (i * 0.01, 0.8) * 0.01;
  NEAR (area, 1, 1e-6);
  NEAR (bw_gaussian_weight (0.4, 0.8) / bw_gaussian_weight (0, 0.8), 0.5, 1e-9);
  NEAR (bw_gaussian_weight (0, 0.8), 0.8 * bw_gaussian_weight (0, 0.64), 1e-9);
}

/* Overscan of 10 % across and 4 % down leaves 0.4 m of 0.4444 m and 460.8 of 480 lines on the glass. */
static void
test_places (void)
{
  Bench bench;
  bench_init (&bench, BW_SIGNAL_RGB, BW_SYSTEM_NONE);
  bench.what.overscan_h = 0.1;
  bench.what.overscan_v = 0.04;
  bench.preview.centre_x = 0.25;
  bench.preview.centre_y = 0.75;
  const BwPreviewPlan *plan = plan_of (&bench);
  NEAR (plan->width_m, 0.4, 1e-12);
  NEAR (plan->height_m, 0.3, 1e-12);
  NEAR (plan->scan_width_m, 0.4 / 0.9, 1e-12);
  NEAR (plan->scan_left_m, -0.2 / 9, 1e-12);
  NEAR (plan->line_pitch_m, 0.3 / 460.8, 1e-12);
  NEAR (plan->scan_top_m, (0.3 - 0.3 / 0.96) / 2, 1e-12);
  NEAR (plan->pixel_m, 0.5e-3, 1e-15);
  NEAR (plan->left_m, 0.1 - 0.1, 1e-12);
  NEAR (plan->top_m, 0.225 - 0.075, 1e-12);
  NEAR (plan->column_pitch_m, 0.3e-3, 1e-12);
  g_assert_cmpint (plan->lines, ==, 480);
  NEAR (bw_preview_line_place_m (plan, 0), plan->scan_top_m + 0.5 * 0.3 / 460.8, 1e-12);
  NEAR (bw_preview_line_place_m (plan, 240), 0.15 + 0.5 * 0.3 / 460.8, 1e-12);
  bench_clear (&bench);
}

/* A spot is drawn at least two pixels wide; what that adds in squares is the pixel's. One that is not
 * known fills the lines, but adds nothing along them. */
static void
test_spot (void)
{
  static const struct
  {
    double spot_m, drawn_m, down_m, pixel_m;
  } cases[] = {
    { 2e-3, 2e-3, 2e-3, 0 },
    { 0.6e-3, 1e-3, 1e-3, 0.8e-3 }, /* 0.6² + 0.8² = 1² */
    { 0, 1e-3, 1e-3, 1e-3 },        /* lines of 0.625 mm, 1.5 of them are 0.9375 mm */
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      Bench bench;
      bench_init (&bench, BW_SIGNAL_RGB, BW_SYSTEM_NONE);
      bench.what.spot_m = cases[i].spot_m;
      const BwPreviewPlan *plan = plan_of (&bench);
      NEAR (plan->spot_m, cases[i].drawn_m, 1e-12);
      NEAR (plan->spot_v_m, cases[i].down_m, 1e-12);
      NEAR (plan->spot_pixel_m, cases[i].pixel_m, 1e-12);
      bench.preview.pixels_per_m = 20000;
      if (i == 2)
        NEAR (plan_of (&bench)->spot_v_m, 1.5 * 0.3 / 480, 1e-12);
      bench_clear (&bench);
    }
}

/* 0.3 m of 480 lines are 0.625 mm each. A crop of 0.15 m in the middle takes 240 lines; two spots of 1 mm
 * more on each side are 3.2 lines: those whose middles lie in 154 mm, 246.4 lines. */
static void
test_lines (void)
{
  Bench bench;
  bench_init (&bench, BW_SIGNAL_RGB, BW_SYSTEM_NONE);
  const BwPreviewPlan *plan = plan_of (&bench);
  g_assert_cmpint (plan->first_line, ==, 117);
  g_assert_cmpint (plan->n_lines, ==, 246);
  bench.preview.centre_y = 0; /* the upper half is beyond the glass */
  plan = plan_of (&bench);
  g_assert_cmpint (plan->first_line, ==, 0);
  g_assert_cmpint (plan->n_lines, ==, 123);
  bench.preview.centre_y = 1;
  plan = plan_of (&bench);
  g_assert_cmpint (plan->first_line, ==, 357);
  g_assert_cmpint (plan->n_lines, ==, 123);
  bench.what.active_lines = 241.5; /* part of a line is a line */
  g_assert_cmpint (plan_of (&bench)->lines, ==, 242);
  bench_clear (&bench);
}

/* The grid is as fine as the finest of what it must hold, our own rule: a third of the spot; half of a
 * sample that is held; a quarter of the finest wave of the picture, 1000 pixels of 0.4 m; a sixth of a
 * cycle of subcarrier. An eighth of a pixel always does. */
static void
test_step (void)
{
  Bench bench;
  bench_init (&bench, BW_SIGNAL_RGB, BW_SYSTEM_NONE);
  bench.what.spot_m = 6e-3;
  NEAR (plan_of (&bench)->step_m, 0.4 / 500 / 4, 1e-12);
  bench.what.spot_m = 0;
  bench.preview.pixels_per_m = 20000; /* drawn as two pixels, 0.1 mm */
  NEAR (plan_of (&bench)->step_m, 0.1e-3 / 3, 1e-12);
  bench.what.spot_m = 6e-3;
  bench.what.samples = 3200;
  NEAR (plan_of (&bench)->step_m, 0.4 / 3200 / 2, 1e-12);
  g_assert_true (bench.plan.held);
  bench.preview.pixels_per_m = 1000;
  NEAR (plan_of (&bench)->step_m, 1e-3 / 8, 1e-12);
  bench.what.detail_hz = 1e6; /* a source that is said to be soft holds nothing */
  plan_of (&bench);
  g_assert_false (bench.plan.held);
  bench_clear (&bench);
  bench_init (&bench, BW_SIGNAL_COMPOSITE, BW_SYSTEM_PAL_B);
  bench.what.spot_m = 6e-3;
  bench.preview.pixels_per_m = 1000;
  bench.picture->width = 100;
  /* 4.43361875 MHz × 52 µs = 230.548 cycles in 0.4 m */
  NEAR (plan_of (&bench)->step_m, MIN (0.4 / 50 / 4, 0.4 / 230.548175 / 6), 1e-9);
  NEAR (bench.plan.carrier_per_m, 230.548175 / 0.4, 1e-6);
  bench.picture->width = 1000;
  bench_clear (&bench);
}

typedef struct
{
  BwSignal signal;
  BwColourSystem system;
  double lines; /* active */
  double luma[3];
  double u, v;
} Factors;

/* Y of BT.601 and BT.709. U and V of BT.470-6, 0.493 (B−Y) and 0.877 (R−Y), and of SMPTE 170M,
 * 0.492111 and 0.877283; setup is left out. Pb and Pr are 0.5 where the difference is largest. */
static const Factors factors[] = {
  { BW_SIGNAL_COMPOSITE, BW_SYSTEM_PAL_B, 576, { 0.299, 0.587, 0.114 }, 0.493, 0.877 },
  { BW_SIGNAL_YC, BW_SYSTEM_PAL_B, 576, { 0.299, 0.587, 0.114 }, 0.493, 0.877 },
  { BW_SIGNAL_COMPOSITE, BW_SYSTEM_NTSC_M, 480, { 0.299, 0.587, 0.114 }, 0.492111, 0.877283 },
  { BW_SIGNAL_COMPONENT, BW_SYSTEM_NONE, 576, { 0.299, 0.587, 0.114 }, 0.564334, 0.713267 },
  { BW_SIGNAL_COMPONENT, BW_SYSTEM_NONE, 720, { 0.2126, 0.7152, 0.0722 }, 0.538909, 0.635001 },
  { BW_SIGNAL_RGB, BW_SYSTEM_NONE, 720, { 0.299, 0.587, 0.114 }, 0.564334, 0.713267 },
};

static void
test_factors (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (factors); i++)
    {
      Bench bench;
      bench_init (&bench, factors[i].signal, factors[i].system);
      bench.what.active_lines = factors[i].lines;
      const BwPreviewPlan *plan = plan_of (&bench);
      for (int c = 0; c < 3; c++)
        NEAR (plan->luma[c], factors[i].luma[c], 1e-9);
      NEAR (plan->u, factors[i].u, 6e-4);
      NEAR (plan->v, factors[i].v, 6e-4);
      bench_clear (&bench);
    }
}

/* Cycles of subcarrier from line to line: 227.5 (SMPTE 170M), 1135/4 + 1/625 (BT.470-6). V alternates in
 * PAL. SECAM sends its differences in turn. A comb reaches one line in NTSC, two in PAL. */
static void
test_carrier (void)
{
  static const struct
  {
    BwSignal signal;
    BwColourSystem system;
    BwLumaFilter filter;
    double cycles;
    gboolean alternates, sequential;
    int comb;
    BwSignal travels;
  } cases[] = {
    { BW_SIGNAL_COMPOSITE, BW_SYSTEM_NTSC_M, BW_LUMA_COMB, 227.5, FALSE, FALSE, 1,
      BW_SIGNAL_COMPOSITE },
    { BW_SIGNAL_COMPOSITE, BW_SYSTEM_NTSC_M, BW_LUMA_TRAP, 227.5, FALSE, FALSE, 0,
      BW_SIGNAL_COMPOSITE },
    { BW_SIGNAL_COMPOSITE, BW_SYSTEM_PAL_B, BW_LUMA_COMB, 283.7516, TRUE, FALSE, 2,
      BW_SIGNAL_COMPOSITE },
    { BW_SIGNAL_YC, BW_SYSTEM_PAL_B, BW_LUMA_COMB, 283.7516, TRUE, FALSE, 0, BW_SIGNAL_YC },
    { BW_SIGNAL_COMPOSITE, BW_SYSTEM_NONE, BW_LUMA_COMB, 0, FALSE, FALSE, 0, BW_SIGNAL_LUMA },
    { BW_SIGNAL_YC, BW_SYSTEM_NONE, BW_LUMA_COMB, 0, FALSE, FALSE, 0, BW_SIGNAL_LUMA },
    { BW_SIGNAL_RGB, BW_SYSTEM_PAL_B, BW_LUMA_COMB, 0, FALSE, FALSE, 0, BW_SIGNAL_RGB },
    { BW_SIGNAL_COMPONENT, BW_SYSTEM_NTSC_M, BW_LUMA_COMB, 0, FALSE, FALSE, 0,
      BW_SIGNAL_COMPONENT },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      Bench bench;
      bench_init (&bench, cases[i].signal, cases[i].system);
      bench.what.filter = cases[i].filter;
      const BwPreviewPlan *plan = plan_of (&bench);
      NEAR (plan->carrier_per_line, cases[i].cycles, 1e-9);
      g_assert_cmpint (plan->alternates, ==, cases[i].alternates);
      g_assert_cmpint (plan->sequential, ==, cases[i].sequential);
      g_assert_cmpint (plan->comb, ==, cases[i].comb);
      g_assert_cmpint (plan->coding, ==, cases[i].travels);
      bench_clear (&bench);
    }
  Bench secam;
  bench_init (&secam, BW_SIGNAL_COMPOSITE, BW_SYSTEM_SECAM_L);
  g_assert_true (plan_of (&secam)->sequential);
  g_assert_cmpint (secam.plan.coding, ==, BW_SIGNAL_YC);
  bench_clear (&secam);
}

/* Line 284 lies below line 21 of 525 (SMPTE 170M), line 336 below line 23 of 625 (BT.470-6); without
 * interlace 262 and 312 lines make a frame. */
static void
test_time (void)
{
  static const struct
  {
    BwColourSystem system;
    int frame, below, half;
  } cases[] = {
    { BW_SYSTEM_NTSC_M, 525, 284 - 21, 262 },
    { BW_SYSTEM_PAL_B, 625, 336 - 23, 312 },
    { BW_SYSTEM_NONE, 525, 263, 262 },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      Bench bench;
      bench_init (&bench, BW_SIGNAL_COMPOSITE, cases[i].system);
      const BwPreviewPlan *plan = plan_of (&bench);
      g_assert_cmpint (plan->lines_per_frame, ==, cases[i].frame);
      g_assert_cmpint (bw_preview_line_in_time (plan, 0), ==, 0);
      g_assert_cmpint (bw_preview_line_in_time (plan, 1), ==, cases[i].below);
      g_assert_cmpint (bw_preview_line_in_time (plan, 6), ==, 3);
      g_assert_cmpint (bw_preview_line_in_time (plan, 7), ==, 3 + cases[i].below);
      bench.preview.frame = 3;
      g_assert_cmpint (bw_preview_line_in_time (plan, 1), ==, 3 * cases[i].frame + cases[i].below);
      bench.what.interlaced = FALSE;
      g_assert_cmpint (bw_preview_line_in_time (plan, 7), ==, 7 + 3 * cases[i].half);
      bench.preview.frame = 1001; /* long since, the dots have come round */
      g_assert_cmpint (bw_preview_line_in_time (plan, 7), ==, 7 + cases[i].half);
      bench_clear (&bench);
    }
}

/* Of 480 lines, field 1 has the even numbers from 0 to 478, field 2 the odd ones to 479. */
static void
test_field (void)
{
  static const struct
  {
    gboolean interlaced;
    int line, further, wanted;
  } cases[] = {
    { TRUE, 10, 1, 12 },  { TRUE, 10, -2, 6 },   { TRUE, 1, -1, 1 },     { TRUE, 3, -2, 1 },
    { TRUE, 0, -1, 0 },   { TRUE, 479, 1, 479 }, { TRUE, 478, 2, 478 },  { TRUE, 477, 2, 479 },
    { FALSE, 10, 1, 11 }, { FALSE, 0, -2, 0 },   { FALSE, 479, 1, 479 }, { FALSE, 478, 2, 479 },
  };
  Bench bench;
  bench_init (&bench, BW_SIGNAL_RGB, BW_SYSTEM_NONE);
  const BwPreviewPlan *plan = plan_of (&bench);
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      bench.what.interlaced = cases[i].interlaced;
      g_assert_cmpint (bw_preview_line_in_field (plan, cases[i].line, cases[i].further), ==,
                       cases[i].wanted);
    }
  bench_clear (&bench);
}

/* The subcarrier runs on: U on its sine from the beginning of the scan, V on its cosine, turned by 227.5
 * cycles a line; in PAL V changes its sign every other line. Chroma that was added comes back, beside a part
 * at twice the subcarrier, of which the mean over whole cycles is nothing. */
static void
test_modulation (void)
{
  static const BwColourSystem systems[] = { BW_SYSTEM_NTSC_M, BW_SYSTEM_PAL_B };
  for (gsize s = 0; s < G_N_ELEMENTS (systems); s++)
    for (int line = 0; line < 6; line++)
      {
        Bench bench;
        bench_init (&bench, BW_SIGNAL_COMPOSITE, systems[s]);
        plan_of (&bench);
        BwPreviewPlan *plan = &bench.plan;
        plan->start_m = plan->scan_left_m;
        plan->step_m = 1 / (20 * plan->carrier_per_m);
        plan->n = 200;
        BwCarrier carrier;
        float u[200], v[200], composite[200] = { 0 }, u_back[200], v_back[200];
        double mean_u = 0, mean_v = 0;
        int in_time = bw_preview_line_in_time (plan, line);
        double turn = 2 * G_PI * fmod (in_time * plan->carrier_per_line, 1);
        double sign = s == 1 && in_time % 2 == 1 ? -1 : 1;
        bw_carrier_init (&carrier, plan);
        bw_carrier_set_line (&carrier, line);
        for (int i = 0; i < 200; i++)
          {
            u[i] = 0.3f;
            v[i] = -0.2f;
          }
        bw_carrier_add (&carrier, u, v, composite);
        bw_carrier_demodulate (&carrier, composite, u_back, v_back);
        for (int i = 0; i < 200; i++)
          {
            double phase = 2 * G_PI * i / 20.0 + turn;
            NEAR (composite[i], 0.3 * sin (phase) - sign * 0.2 * cos (phase), 1e-5);
            mean_u += (double) u_back[i] / 200;
            mean_v += (double) v_back[i] / 200;
          }
        NEAR (mean_u, 0.3, 1e-5);
        NEAR (mean_v, -0.2, 1e-5);
        bw_carrier_clear (&carrier);
        g_assert_null (carrier.sine);
        bench_clear (&bench);
      }
}

/* R'G'B' of pure colours: Y is the share of luma, U and V their factors times B−Y and R−Y; and back. */
static void
test_rows (void)
{
  Bench bench;
  bench_init (&bench, BW_SIGNAL_COMPONENT, BW_SYSTEM_NONE);
  plan_of (&bench);
  bench.plan.n = 4;
  float r[] = { 1, 0, 0, 0.5f }, g[] = { 0, 1, 0, 0.5f }, b[] = { 0, 0, 1, 0.5f };
  float *rows[] = { r, g, b };
  const double y[] = { 0.299, 0.587, 0.114, 0.5 };
  const double pb[] = { -0.168736, -0.331264, 0.5, 0 }, pr[] = { 0.5, -0.418688, -0.081312, 0 };

  bw_rows_to_yuv (&bench.plan, rows);
  for (int i = 0; i < 4; i++)
    {
      NEAR (rows[0][i], y[i], 1e-6);
      NEAR (rows[1][i], pb[i], 1e-6);
      NEAR (rows[2][i], pr[i], 1e-6);
    }
  bw_rows_to_rgb (&bench.plan, rows);
  for (int i = 0; i < 3; i++)
    for (int c = 0; c < 3; c++)
      NEAR (rows[c][i], i == c ? 1 : 0, 1e-6);
  NEAR (rows[1][3], 0.5, 1e-6);
  bench_clear (&bench);
}

/* What a kernel lets by of a frequency. */
static double
response_of (const BwKernel *kernel, double step_m, double cycles_per_m)
{
  double sum = kernel->taps[kernel->half];
  for (int j = 1; j <= kernel->half; j++)
    sum += 2 * kernel->taps[kernel->half + j] * cos (2 * G_PI * cycles_per_m * step_m * j);
  return sum;
}

/* Frequencies on the glass of one in the signal: 52 µs are 0.4 m. */
#define PER_M(hz) ((hz) *52e-6 / 0.4)

/* Colour differences of component have half of the band (ITU-R BT.601, BT.709: 4:2:2): what luma passes at
 * twice a frequency they pass at that frequency. R, G and B pass alike, and luma passes nothing else. */
static void
test_half_band (void)
{
  Bench bench;
  BwPathKernels kernels = { 0 };
  bench_init (&bench, BW_SIGNAL_COMPONENT, BW_SYSTEM_NONE);
  bench.what.detail_hz = 5e6;
  plan_of (&bench);
  bw_path_kernels_init (&kernels, &bench.plan);
  for (double hz = 0.2e6; hz < 3e6; hz += 0.2e6)
    NEAR (response_of (&kernels.difference, bench.plan.step_m, PER_M (hz)),
          response_of (&kernels.luma, bench.plan.step_m, PER_M (2 * hz)), 0.013);
  g_assert_cmpfloat (response_of (&kernels.luma, bench.plan.step_m, PER_M (5e6)), <, 0.75);
  g_assert_cmpfloat (response_of (&kernels.luma, bench.plan.step_m, PER_M (1e6)), >, 0.9);
  g_assert_cmpint (bw_path_kernels_margin (&kernels), >=, kernels.luma.half);
  bw_path_kernels_clear (&kernels);
  bench_clear (&bench);
}

/* SMPTE 170M clause 7, ITU-R BT.470-6 item 2.6: an encoder takes less than 3 dB at 1.3 MHz and more than 20
 * dB at 3.6 MHz. A decoder of composite lets pass what lies about the subcarrier, and nothing at zero. */
static void
test_chroma (void)
{
  Bench bench;
  BwPathKernels kernels = { 0 };
  bench_init (&bench, BW_SIGNAL_COMPOSITE, BW_SYSTEM_PAL_B);
  bench.what.filter = BW_LUMA_COMB;
  plan_of (&bench);
  bw_path_kernels_init (&kernels, &bench.plan);
  double step_m = bench.plan.step_m, carrier_hz = 4.43361875e6;
  double near = response_of (&kernels.encoder, step_m, PER_M (1.3e6));
  g_assert_cmpfloat (near, >, pow (10, -3.0 / 20));
  g_assert_cmpfloat (near, <, pow (10, -2.5 / 20));
  g_assert_cmpfloat (fabs (response_of (&kernels.encoder, step_m, PER_M (3.6e6))), <, 0.1);
  NEAR (response_of (&kernels.encoder, step_m, 0), 1, 1e-6);
  NEAR (response_of (&kernels.chroma_pass, step_m, PER_M (carrier_hz)), 1, 0.0061);
  NEAR (response_of (&kernels.chroma_pass, step_m, PER_M (carrier_hz - 1.3e6)), near, 0.02);
  NEAR (response_of (&kernels.chroma_pass, step_m, PER_M (carrier_hz + 1.3e6)), near, 0.02);
  NEAR (response_of (&kernels.chroma_pass, step_m, 0), 0, 0.0061);
  NEAR (response_of (&kernels.difference, step_m, 0), 1, 0.0061);
  NEAR (response_of (&kernels.difference, step_m, PER_M (2 * carrier_hz)), 0, 0.0061);
  int most = MAX (kernels.encoder.half + kernels.chroma_pass.half, kernels.luma.half);
  g_assert_cmpint (bw_path_kernels_margin (&kernels), >=, most);
  bw_path_kernels_clear (&kernels);
  bench_clear (&bench);
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  g_test_add_func ("/preview-plan/gaussian", test_gaussian);
  g_test_add_func ("/preview-plan/places", test_places);
  g_test_add_func ("/preview-plan/spot", test_spot);
  g_test_add_func ("/preview-plan/lines", test_lines);
  g_test_add_func ("/preview-plan/step", test_step);
  g_test_add_func ("/preview-plan/factors", test_factors);
  g_test_add_func ("/preview-plan/carrier", test_carrier);
  g_test_add_func ("/preview-plan/time", test_time);
  g_test_add_func ("/preview-plan/field", test_field);
  g_test_add_func ("/preview-plan/modulation", test_modulation);
  g_test_add_func ("/preview-plan/rows", test_rows);
  g_test_add_func ("/preview-plan/half-band", test_half_band);
  g_test_add_func ("/preview-plan/chroma", test_chroma);
  return g_test_run ();
}
