/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/preview/preview.h"

#include <math.h>

#include "core/levels/colour.h"
#include "support.h"

/* What coding does to colours, looked at in the signal that drives the tube. Phases of the
 * subcarrier: SMPTE 170M 11.2 (227.5 cycles a line), ITU-R BT.1700 (1135/4 + 1/625). */

#define PICTURE_WIDTH 2160
#define SPARE 0.02 /* metres at each end that are not looked at */

typedef struct
{
  BwDetailCase what;
  BwPlanes *picture;
  BwPreview preview;
  BwPlanes *signal;
  double start_m;
  double step_m;
  int first_line;
} Bench;

/* Invented: a tube that adds nothing to the signal, the whole active line to be seen. */
static void
bench_init (Bench *bench, BwSignal signal, BwColourSystem system, BwLumaFilter filter)
{
  gboolean is_525 = system == BW_SYSTEM_NTSC_M || system == BW_SYSTEM_NTSC_443
                    || system == BW_SYSTEM_PAL_M;

  *bench = (Bench){ 0 };
  bw_detail_case_init (&bench->what);
  bench->what.diagonal_m = 0.5;
  bench->what.mask = BW_MASK_MONO;
  bench->what.active_s = is_525 ? 52.66e-6 : 52e-6;
  bench->what.active_lines = is_525 ? 480 : 576;
  bench->what.interlaced = TRUE;
  bench->what.signal = signal;
  bench->what.system = system;
  bench->what.filter = filter;
  bench->picture = bw_planes_new (PICTURE_WIDTH, 1);
  bench->preview = (BwPreview){ .what = &bench->what, .picture = bench->picture, .centre_x = 0.5,
                                .centre_y = 0.5, .pixels_per_m = 2000, .width = 800, .height = 20,
                                .gamma = 1 };
}

static void
bench_clear (Bench *bench)
{
  bw_planes_free (bench->picture);
  bw_planes_free (bench->signal);
}

static void
send (Bench *bench)
{
  g_autoptr (GError) error = NULL;
  g_clear_pointer (&bench->signal, bw_planes_free);
  bench->signal = bw_preview_signal (&bench->preview, &bench->start_m, &bench->step_m,
                                     &bench->first_line, &error);
  g_assert_no_error (error);
}

static double
time_s (const Bench *bench, int i)
{
  return (bench->start_m + i * bench->step_m) / 0.4 * bench->what.active_s;
}

static BwRgb
at (const Bench *bench, int row, int i)
{
  gsize place = (gsize) row * (gsize) bench->signal->width + (gsize) i;
  return (BwRgb){ (double) bench->signal->at[0][place], (double) bench->signal->at[1][place],
                  (double) bench->signal->at[2][place] };
}

/* The part of a line that is looked at. */
static gboolean
is_sound (const Bench *bench, int i)
{
  double place_m = bench->start_m + i * bench->step_m;
  return place_m > SPARE && place_m < 0.4 - SPARE;
}

static double
luma (const Bench *bench, int row, int i)
{
  BwRgb rgb = at (bench, row, i);
  BwYPbPr ypbpr;
  bw_rgb_to_ypbpr (BW_MATRIX_601, &rgb, &ypbpr);
  return ypbpr.y;
}

static double
colour (const Bench *bench, int row, int i)
{
  BwRgb rgb = at (bench, row, i);
  BwYPbPr ypbpr;
  bw_rgb_to_ypbpr (BW_MATRIX_601, &rgb, &ypbpr);
  return hypot (ypbpr.pb, ypbpr.pr);
}

static double
most_colour (const Bench *bench)
{
  double most = 0;
  for (int row = 0; row < bench->signal->height; row++)
    for (int i = 0; i < bench->signal->width; i++)
      if (is_sound (bench, i))
        most = MAX (most, colour (bench, row, i));
  return most;
}

static void
paint (Bench *bench, int x, double r, double g, double b)
{
  bench->picture->at[0][x] = (float) r;
  bench->picture->at[1][x] = (float) g;
  bench->picture->at[2][x] = (float) b;
}

static void
paint_sine (Bench *bench, double frequency_hz)
{
  for (int x = 0; x < PICTURE_WIDTH; x++)
    {
      double now_s = (x + 0.5) / PICTURE_WIDTH * bench->what.active_s;
      double value = 0.5 + 0.3 * sin (2 * G_PI * frequency_hz * now_s);
      paint (bench, x, value, value, value);
    }
}

/* Grey has no colour, and comes through as it is. */
static void
test_grey (void)
{
  for (guint system = 0; system < BW_N_SYSTEMS; system++)
    for (guint filter = 0; filter < BW_N_LUMA_FILTERS; filter++)
      {
        Bench bench;
        bench_init (&bench, BW_SIGNAL_COMPOSITE, system, filter);
        for (int x = 0; x < PICTURE_WIDTH; x++)
          paint (&bench, x, 0.6, 0.6, 0.6);
        send (&bench);
        for (int i = 0; i < bench.signal->width; i++)
          if (is_sound (&bench, i))
            g_assert_cmpfloat_with_epsilon (luma (&bench, 3, i), 0.6, 1e-3);
        g_assert_cmpfloat (most_colour (&bench), <, 1e-3);
        bench_clear (&bench);
      }
}

static void
paint_bars (Bench *bench)
{
  for (int x = 0; x < PICTURE_WIDTH; x++)
    {
      BwRgb rgb;
      bw_bar_rgb ((BwBar) (x * BW_N_BARS / PICTURE_WIDTH), BW_BARS_75, &rgb);
      paint (bench, x, rgb.r, rgb.g, rgb.b);
    }
}

/* Microseconds from the nearest edge between bars. */
static double
from_edge_us (const Bench *bench, int i)
{
  double bar_s = bench->what.active_s / BW_N_BARS;
  return fabs (remainder (time_s (bench, i), bar_s)) * 1e6;
}

/* Colour bars: each bar is its own colour beyond 2 µs from its edges, and only near the edges
 * is there anything else. Luma of Y/C has no dots there; that of composite has. */
static void
check_bars (BwSignal signal, BwColourSystem system, BwLumaFilter filter, double least_dots,
            double most_dots)
{
  Bench bench, plain;
  double dots = 0;
  bench_init (&bench, signal, system, filter);
  bench_init (&plain, signal, BW_SYSTEM_NONE, filter);
  plain.what = bench.what;
  plain.what.signal = BW_SIGNAL_YC;
  plain.preview.what = &plain.what;
  paint_bars (&bench);
  paint_bars (&plain);
  send (&bench);
  send (&plain);
  for (int i = 0; i < bench.signal->width; i++)
    {
      if (!is_sound (&bench, i))
        continue;
      if (from_edge_us (&bench, i) > 2)
        {
          BwRgb is = at (&bench, 5, i), wanted;
          bw_bar_rgb ((BwBar) (time_s (&bench, i) / bench.what.active_s * BW_N_BARS), BW_BARS_75,
                      &wanted);
          g_assert_cmpfloat_with_epsilon (is.r, wanted.r, 0.02);
          g_assert_cmpfloat_with_epsilon (is.g, wanted.g, 0.02);
          g_assert_cmpfloat_with_epsilon (is.b, wanted.b, 0.02);
        }
      else if (from_edge_us (&bench, i) > 0.4)
        {
          int same = (int) lround ((bench.start_m + i * bench.step_m - plain.start_m)
                                   / plain.step_m);
          dots = MAX (dots, fabs (luma (&bench, 5, i) - luma (&plain, 5, same)));
        }
    }
  g_test_message ("%s, filter %u: dots %.4f", bw_kind_id (&bw_colour_systems, system), filter,
                  dots);
  g_assert_cmpfloat (dots, >=, least_dots);
  g_assert_cmpfloat (dots, <=, most_dots);
  bench_clear (&bench);
  bench_clear (&plain);
}

static void
test_bars (void)
{
  check_bars (BW_SIGNAL_YC, BW_SYSTEM_NTSC_M, BW_LUMA_TRAP, 0, 1e-6);
  check_bars (BW_SIGNAL_YC, BW_SYSTEM_PAL_B, BW_LUMA_TRAP, 0, 1e-6);
  check_bars (BW_SIGNAL_COMPOSITE, BW_SYSTEM_NTSC_M, BW_LUMA_TRAP, 0.02, 0.2);
  check_bars (BW_SIGNAL_COMPOSITE, BW_SYSTEM_PAL_B, BW_LUMA_TRAP, 0.02, 0.2);
}

/* Luma near the subcarrier becomes colour. A comb takes it from lines that are alike for what it
 * is, and Y/C never mixes the two. */
static void
check_cross_colour (BwColourSystem system, double frequency_hz)
{
  Bench trap, comb, apart;
  bench_init (&trap, BW_SIGNAL_COMPOSITE, system, BW_LUMA_TRAP);
  bench_init (&comb, BW_SIGNAL_COMPOSITE, system, BW_LUMA_COMB);
  bench_init (&apart, BW_SIGNAL_YC, system, BW_LUMA_TRAP);
  paint_sine (&trap, frequency_hz);
  paint_sine (&comb, frequency_hz);
  paint_sine (&apart, frequency_hz);
  send (&trap);
  send (&comb);
  send (&apart);
  g_assert_cmpfloat (most_colour (&trap), >, 0.2);
  g_assert_cmpfloat (most_colour (&comb), <, 0.01);
  g_assert_cmpfloat (most_colour (&apart), <, 1e-3);
  bench_clear (&trap);
  bench_clear (&comb);
  bench_clear (&apart);
}

static void
test_cross_colour (void)
{
  check_cross_colour (BW_SYSTEM_NTSC_M, 3.4e6);
  check_cross_colour (BW_SYSTEM_PAL_B, 4.2e6);
  check_cross_colour (BW_SYSTEM_PAL_M, 3.4e6);
  check_cross_colour (BW_SYSTEM_NTSC_443, 4.2e6);
}

/* Rows of two colours above and below an edge between lines: where a comb mixes the two, counted in
 * the frame above and below it. */
static void
count_mixed (BwColourSystem system, int *above, int *below)
{
  Bench bench;
  bench_init (&bench, BW_SIGNAL_COMPOSITE, system, BW_LUMA_COMB);
  int lines = bench.what.active_lines, edge = lines / 2;
  bw_planes_free (bench.picture);
  bench.preview.picture = bench.picture = bw_planes_new (1, lines);
  bench.preview.height = 40;
  for (int y = 0; y < lines; y++)
    bench.picture->at[y < edge ? 0 : 1][y] = 0.5f;
  send (&bench);
  *above = *below = 0;
  for (int row = 0; row < bench.signal->height; row++)
    {
      int line = bench.first_line + row;
      BwRgb is = at (&bench, row, bench.signal->width / 2);
      double wrong = MAX (fabs (is.r - (line < edge ? 0.5 : 0)),
                          fabs (is.g - (line < edge ? 0 : 0.5)));
      if (wrong > 0.05)
        ++*(line < edge ? above : below);
    }
  bench_clear (&bench);
}

/* A comb needs lines of the field in antiphase. NTSC: 227.5 cycles a line, so the next one; PAL:
 * 283.7516 cycles, and NTSC on 4.43 MHz: 4.43361875 MHz / 15734.27 Hz = 281.78, so two lines on, which
 * at an edge between colours spoils twice as many lines on either side, in each of two fields. */
static void
test_comb_reach (void)
{
  static const struct
  {
    BwColourSystem system;
    int spoilt;
  } cases[] = {
    { BW_SYSTEM_NTSC_M, 2 },
    { BW_SYSTEM_NTSC_443, 4 },
    { BW_SYSTEM_PAL_B, 4 },
    { BW_SYSTEM_PAL_M, 4 },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      int above, below;
      count_mixed (cases[i].system, &above, &below);
      g_test_message ("%s: %d above, %d below", bw_kind_id (&bw_colour_systems, cases[i].system),
                      above, below);
      g_assert_cmpint (above, ==, cases[i].spoilt);
      g_assert_cmpint (below, ==, cases[i].spoilt);
    }
}

/* What is left of red against green at @frequency_hz, in decibels below a slow change. */
static double
chroma_loss_db (double frequency_hz)
{
  double most[2];
  for (int i = 0; i < 2; i++)
    {
      Bench bench;
      double hz = i == 0 ? 0.05e6 : frequency_hz;
      bench_init (&bench, BW_SIGNAL_YC, BW_SYSTEM_NTSC_M, BW_LUMA_TRAP);
      for (int x = 0; x < PICTURE_WIDTH; x++)
        {
          double wave = 0.5 * sin (2 * G_PI * hz * (x + 0.5) / PICTURE_WIDTH * bench.what.active_s);
          paint (&bench, x, 0.5 + wave * 0.587, 0.5 - wave * 0.299, 0.5);
        }
      send (&bench);
      most[i] = most_colour (&bench);
      bench_clear (&bench);
    }
  return 20 * log10 (most[0] / most[1]);
}

/* SMPTE 170M clause 7 and ITU-R BT.470-6 item 2.6: an encoder takes less than 3 dB at 1.3 MHz and at
 * least 20 dB at 3.6 MHz; a decoder does the same (common practice, no source), so both take less
 * than 6 dB and at least 40 dB. */
static void
test_chroma_band (void)
{
  double near_db = chroma_loss_db (1.3e6), far_db = chroma_loss_db (3.6e6);
  g_test_message ("%.2f dB at 1.3 MHz, %.1f dB at 3.6 MHz", near_db, far_db);
  g_assert_cmpfloat (near_db, >, 3);
  g_assert_cmpfloat (near_db, <, 6);
  g_assert_cmpfloat (far_db, >=, 40);
}

/* Cross colour of a luma sine of 3.4 MHz: a slow beat of 3.579545 − 3.4 MHz, one period in
 * 5.57 µs; counted by its rises in one line. */
static void
test_cross_colour_beat (void)
{
  Bench bench;
  int rises = 0, first = -1, last = -1;
  bench_init (&bench, BW_SIGNAL_COMPOSITE, BW_SYSTEM_NTSC_M, BW_LUMA_TRAP);
  paint_sine (&bench, 3.4e6);
  send (&bench);
  for (int i = 1; i < bench.signal->width; i++)
    {
      BwRgb before = at (&bench, 4, i - 1), now = at (&bench, 4, i);
      double low = before.b - luma (&bench, 4, i - 1), high = now.b - luma (&bench, 4, i);
      if (!is_sound (&bench, i) || low >= 0 || high < 0)
        continue;
      first = rises == 0 ? i : first;
      last = i;
      rises++;
    }
  g_assert_cmpint (rises, >, 5);
  double period_s = (time_s (&bench, last) - time_s (&bench, first)) / (rises - 1);
  g_assert_cmpfloat_with_epsilon (period_s, 1 / (315e6 / 88 - 3.4e6), 0.03e-6);
  bench_clear (&bench);
}

/* Dots of a line: luma of composite less that of the same lines on average over a whole cycle of
 * the dots, near the one edge from green to magenta. */
static void
dots_of (Bench *bench, guint frame, int row, double *dots, int n)
{
  bench->preview.frame = frame;
  send (bench);
  int middle = (int) lround ((0.2 - bench->start_m) / bench->step_m);
  for (int i = 0; i < n; i++)
    dots[i] = luma (bench, row, middle - n / 2 + i);
}

static double
correlation (const double *a, const double *b, const double *mean, int n)
{
  double ab = 0, aa = 0, bb = 0;
  for (int i = 0; i < n; i++)
    {
      ab += (a[i] - mean[i]) * (b[i] - mean[i]);
      aa += (a[i] - mean[i]) * (a[i] - mean[i]);
      bb += (b[i] - mean[i]) * (b[i] - mean[i]);
    }
  g_assert_cmpfloat (sqrt (aa / n), >, 0.01); /* there are dots */
  return ab / sqrt (aa * bb);
}

#define N_DOTS 60

/* The correlation of the dots of two lines: −1 in antiphase, 0 a quarter of a cycle apart. */
static double
dots_alike (BwColourSystem system, guint frame, int rows_further)
{
  double here[N_DOTS], there[N_DOTS], mean[N_DOTS], luma_alone[N_DOTS];
  Bench bench, plain;
  bench_init (&bench, BW_SIGNAL_COMPOSITE, system, BW_LUMA_TRAP);
  bench_init (&plain, BW_SIGNAL_COMPOSITE, system, BW_LUMA_TRAP);
  for (int x = 0; x < PICTURE_WIDTH; x++)
    {
      gboolean left = x < PICTURE_WIDTH / 2;
      double grey = left ? 0.587 : 0.413;
      paint (&bench, x, left ? 0 : 1, left ? 1 : 0, left ? 0 : 1);
      paint (&plain, x, grey, grey, grey);
    }
  dots_of (&bench, 0, 2, here, N_DOTS);
  dots_of (&bench, frame, 2 + rows_further, there, N_DOTS);
  dots_of (&plain, 0, 2, luma_alone, N_DOTS);
  for (int i = 0; i < N_DOTS; i++)
    mean[i] = luma_alone[i];
  bench_clear (&bench);
  bench_clear (&plain);
  return correlation (here, there, mean, N_DOTS);
}

/* 227.5 cycles a line: antiphase from one line of a field to the next, alike two lines on, and in
 * antiphase after a frame of 525 lines. PAL: 283.7516 cycles, so that lines two apart in a field
 * are in antiphase, four apart alike; after two frames of 625 lines antiphase. The next line of
 * the frame is of field 2, 263 lines later in 525: 59 832.5 cycles, antiphase. */
static void
test_dots_move (void)
{
  g_assert_cmpfloat (dots_alike (BW_SYSTEM_NTSC_M, 0, 2), <, -0.99);
  g_assert_cmpfloat (dots_alike (BW_SYSTEM_NTSC_M, 0, 4), >, 0.99);
  g_assert_cmpfloat (dots_alike (BW_SYSTEM_NTSC_M, 1, 0), <, -0.99);
  g_assert_cmpfloat (dots_alike (BW_SYSTEM_NTSC_M, 2, 0), >, 0.99);
  g_assert_cmpfloat (fabs (dots_alike (BW_SYSTEM_NTSC_M, 0, 1)), >, 0.99);
  g_assert_cmpfloat (dots_alike (BW_SYSTEM_PAL_B, 0, 4), <, -0.99);
  g_assert_cmpfloat (dots_alike (BW_SYSTEM_PAL_B, 2, 0), <, -0.99);
  g_assert_cmpfloat (dots_alike (BW_SYSTEM_PAL_B, 4, 0), >, 0.99);
}

/* Colour differences of component have half of the band of luma (ITU-R BT.601: 4:2:2). */
static void
test_component (void)
{
  Bench grey, tinted;
  bench_init (&grey, BW_SIGNAL_COMPONENT, BW_SYSTEM_NONE, BW_LUMA_TRAP);
  bench_init (&tinted, BW_SIGNAL_COMPONENT, BW_SYSTEM_NONE, BW_LUMA_TRAP);
  grey.what.detail_hz = tinted.what.detail_hz = 4e6;
  paint_sine (&grey, 2.8e6);
  for (int x = 0; x < PICTURE_WIDTH; x++)
    {
      /* red and green against each other: luma stays */
      double wave = (double) grey.picture->at[0][x] - 0.5;
      paint (&tinted, x, 0.5 + wave * 0.587, 0.5 - wave * 0.299, 0.5);
    }
  send (&grey);
  send (&tinted);
  double low = 1, high = 0;
  for (int i = 0; i < grey.signal->width; i++)
    if (is_sound (&grey, i))
      {
        low = MIN (low, luma (&grey, 2, i));
        high = MAX (high, luma (&grey, 2, i));
      }
  g_assert_cmpfloat_with_epsilon (high - low, 0.6, 0.01);
  g_assert_cmpfloat (most_colour (&tinted), <, 0.01);
  bench_clear (&grey);
  bench_clear (&tinted);
}

/* SECAM sends one difference a line: where red turns to green, one line of each field has one of
 * the two from above. */
static void
test_sequential (void)
{
  Bench bench;
  bench_init (&bench, BW_SIGNAL_COMPOSITE, BW_SYSTEM_SECAM_L, BW_LUMA_TRAP);
  bw_planes_free (bench.picture);
  bench.preview.picture = bench.picture = bw_planes_new (1, 576);
  for (int y = 0; y < 576; y++)
    bench.picture->at[y < 288 ? 0 : 1][y] = 0.5f;
  send (&bench);
  int mixed = 0, middle = bench.signal->width / 2;
  for (int row = 0; row < bench.signal->height; row++)
    {
      BwRgb is = at (&bench, row, middle);
      gboolean red = fabs (is.r - 0.5) < 0.01 && fabs (is.g) < 0.01;
      gboolean green = fabs (is.g - 0.5) < 0.01 && fabs (is.r) < 0.01;
      g_assert_false (red && bench.first_line + row >= 288);
      g_assert_false (green && bench.first_line + row < 288);
      if (!red && !green) /* the first line of each field below the edge: it still holds what was above */
        g_assert_cmpint ((bench.first_line + row) / 2, ==, 144);
      mixed += !red && !green;
    }
  g_assert_cmpint (mixed, ==, 2);
  bench_clear (&bench);
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  g_test_add_func ("/preview-colour/grey", test_grey);
  g_test_add_func ("/preview-colour/bars", test_bars);
  g_test_add_func ("/preview-colour/cross-colour/filters", test_cross_colour);
  g_test_add_func ("/preview-colour/cross-colour/beat", test_cross_colour_beat);
  g_test_add_func ("/preview-colour/dots", test_dots_move);
  g_test_add_func ("/preview-colour/comb-reach", test_comb_reach);
  g_test_add_func ("/preview-colour/chroma-band", test_chroma_band);
  g_test_add_func ("/preview-colour/component", test_component);
  g_test_add_func ("/preview-colour/sequential", test_sequential);
  return g_test_run ();
}
