/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/preview/preview.h"

#include <math.h>
#include <string.h>

#include "support.h"

/* The preview is measured as a person would measure a screen, and compared with the curves. That
 * the curves are right is for test_detail.c. */

#define WIDTH 640
#define HEIGHT 96
#define WIDE 2400 /* 160 mm: the mask's own frequencies are well apart from the burst's */

typedef struct
{
  BwDetailCase what;
  BwPlanes *picture;
  BwPreview preview;
} Bench;

/* A 13 in tube with a grille of 0.25 mm, 480 lines of 720 samples in 53.3 µs. Invented. */
static void
bench_init (Bench *bench, int picture_width, int picture_height)
{
  bw_detail_case_init (&bench->what);
  bench->what.diagonal_m = 13 * 0.0254;
  bench->what.aspect = (BwRatio){ 4, 3 };
  bench->what.mask = BW_MASK_GRILLE;
  bench->what.pitch_m = 0.25e-3;
  bench->what.spot_m = 0.4e-3;
  bench->what.bandwidth_hz = 10e6;
  bench->what.active_s = 720 / 13.5e6;
  bench->what.active_lines = 480;
  bench->what.samples = 720;
  bench->what.interlaced = TRUE;
  bench->what.signal = BW_SIGNAL_RGB;
  bench->what.overscan_h = bench->what.overscan_v = 0.05;
  bench->picture = bw_planes_new (picture_width, picture_height);
  bench->preview = (BwPreview){ .what = &bench->what, .picture = bench->picture, .centre_x = 0.5,
                                .centre_y = 0.5, .pixels_per_m = 15000, .width = WIDTH,
                                .height = HEIGHT, .gamma = 1 };
}

static void
bench_clear (Bench *bench)
{
  bw_planes_free (bench->picture);
}

static double
height_m (const Bench *bench)
{
  return bench->what.diagonal_m * 0.6;
}

static double
scan_width_m (const Bench *bench)
{
  return bench->what.diagonal_m * 0.8 / (1 - bench->what.overscan_h);
}

static void
fill (BwPlanes *planes, double r, double g, double b)
{
  const double rgb[] = { r, g, b };
  for (int i = 0; i < 3; i++)
    for (int j = 0; j < planes->width * planes->height; j++)
      planes->at[i][j] = (float) rgb[i];
}

/* Grey 0.5 and a sine of amplitude 0.4 of @tvl lines per viewable height. */
static void
draw_sine (Bench *bench, double tvl)
{
  double pixel_m = scan_width_m (bench) / bench->picture->width;
  for (int x = 0; x < bench->picture->width; x++)
    {
      double cycles = (x + 0.5) * pixel_m * tvl / (2 * height_m (bench));
      for (int y = 0; y < bench->picture->height; y++)
        for (int i = 0; i < 3; i++)
          bench->picture->at[i][y * bench->picture->width + x]
              = (float) (0.5 + 0.4 * sin (2 * G_PI * cycles));
    }
}

/* Amplitude at @cycles of @n values against their mean, under a Hann window. */
static double
amplitude (const double *values, int n, double cycles)
{
  double mean = 0, weights = 0, real = 0, imaginary = 0;
  for (int i = 0; i < n; i++)
    {
      double weight = 1 - cos (2 * G_PI * (i + 0.5) / n);
      weights += weight;
      mean += weight * values[i];
    }
  mean /= weights;
  for (int i = 0; i < n; i++)
    {
      double weight = (1 - cos (2 * G_PI * (i + 0.5) / n)) * (values[i] - mean);
      real += weight * cos (2 * G_PI * cycles * (i + 0.5) / n);
      imaginary += weight * sin (2 * G_PI * cycles * (i + 0.5) / n);
    }
  return 2 * hypot (real, imaginary) / weights / mean;
}

static BwPlanes *
screen (const Bench *bench)
{
  g_autoptr (GError) error = NULL;
  BwPlanes *light = bw_preview_screen (&bench->preview, NULL, NULL, NULL, &error);
  g_assert_no_error (error);
  return light;
}

/* The light of all rows and colours in each column of pixels, per row and colour. */
static void
mean_of_columns (const BwPlanes *light, double *means)
{
  for (int x = 0; x < light->width; x++)
    {
      means[x] = 0;
      for (int i = 0; i < 3; i++)
        for (int y = 0; y < light->height; y++)
          means[x] += (double) light->at[i][y * light->width + x] / (3 * light->height);
    }
}

/* Share of the picture's modulation that the screen shows: of the mean light, because the rows do
 * not make a whole number of lines. */
static double
modulation (Bench *bench, double tvl)
{
  double means[WIDE];
  bench->preview.width = WIDE;
  draw_sine (bench, tvl);
  g_autoptr (BwPlanes) light = screen (bench);
  mean_of_columns (light, means);
  double cycles = WIDE / bench->preview.pixels_per_m * tvl / (2 * height_m (bench));
  return amplitude (means, WIDE, cycles) / 0.8;
}

static double
tvl_for (const Bench *bench, double mtf)
{
  double low = 1, high = 3000;
  for (int i = 0; i < 60; i++)
    *(bw_detail_mtf (&bench->what, (low + high) / 2) > mtf ? &low : &high) = (low + high) / 2;
  return low;
}

static void
check_levels (Bench *bench, const char *what)
{
  static const double levels[] = { 0.9, 0.7, 0.5, 0.3, 0.1, 0.03 };
  for (guint i = 0; i < G_N_ELEMENTS (levels); i++)
    {
      double tvl = tvl_for (bench, levels[i]);
      double mtf = bw_detail_mtf (&bench->what, tvl), shown = modulation (bench, tvl);
      g_test_message ("%s: %.0f lines, mtf %.4f, shown %.4f", what, tvl, mtf, shown);
      g_assert_cmpfloat_with_epsilon (shown, mtf, 0.01);
    }
}

/* A burst at a frequency whose MTF is 10 % shows 10 %, and so for the others, whichever link it is
 * that takes the rest. */
static void
test_modulation (void)
{
  Bench bench;
  bench_init (&bench, 4096, 1);
  check_levels (&bench, "all links");
  bench.what.mask = BW_MASK_MONO;
  check_levels (&bench, "monochrome");
  bench.what.spot_m = 0.7e-3;
  check_levels (&bench, "wide spot");
  bench.what.spot_m = 0.2e-3;
  bench.what.bandwidth_hz = 5e6;
  check_levels (&bench, "narrow band");
  bench.what.bandwidth_hz = 0;
  bench.what.detail_hz = 4e6;
  check_levels (&bench, "steep source");
  bench.what.detail_hz = 0;
  bench.what.samples = 0;
  bench.what.lead_hz = 20e6;
  check_levels (&bench, "long lead");
  bench.what.lead_hz = 0;
  bench.what.mask = BW_MASK_GRILLE;
  bench.what.pitch_m = 0.6e-3;
  check_levels (&bench, "coarse grille");
  bench.what.mask = BW_MASK_DOT;
  check_levels (&bench, "coarse dots");
  bench_clear (&bench);
}

/* Luma of composite and Y/C: what the trap leaves, and the system's bandwidth. */
static void
test_modulation_coded (void)
{
  static const double all_tvl[] = { 60, 120, 180, 210, 240, 260 };
  Bench bench;
  bench_init (&bench, 4096, 1);
  bench.what.system = BW_SYSTEM_NTSC_M;
  bench.what.mask = BW_MASK_MONO; /* luma alone */
  for (guint i = 0; i < G_N_ELEMENTS (all_tvl); i++)
    {
      bench.what.signal = BW_SIGNAL_COMPOSITE;
      bench.what.filter = BW_LUMA_TRAP;
      double mtf = bw_detail_mtf (&bench.what, all_tvl[i]);
      double shown = modulation (&bench, all_tvl[i]);
      g_test_message ("%g lines, mtf %.4f, shown %.4f", all_tvl[i], mtf, shown);
      g_assert_cmpfloat_with_epsilon (shown, mtf, 0.01);
      bench.what.filter = BW_LUMA_COMB;
      mtf = bw_detail_mtf (&bench.what, all_tvl[i]);
      g_assert_cmpfloat_with_epsilon (modulation (&bench, all_tvl[i]), mtf, 0.01);
      bench.what.signal = BW_SIGNAL_YC;
      g_assert_cmpfloat_with_epsilon (modulation (&bench, all_tvl[i]), mtf, 0.01);
      bench.what.signal = BW_SIGNAL_COMPONENT;
      mtf = bw_detail_mtf (&bench.what, all_tvl[i]);
      g_assert_cmpfloat_with_epsilon (modulation (&bench, all_tvl[i]), mtf, 0.01);
    }
  bench_clear (&bench);
}

/* White, measured down the middle of the screen: the sum of Gaussians as bw_line_modulation(). */
static void
test_line_structure (void)
{
  static const double ratios[] = { 0.3, 0.5, 0.6, 0.7, 0.8, 1.0 };
  Bench bench;
  bench_init (&bench, 1, 1);
  fill (bench.picture, 1, 1, 1);
  bench.what.mask = BW_MASK_MONO;
  bench.what.overscan_h = bench.what.overscan_v = 0;
  double pitch_m = height_m (&bench) / 480;
  bench.preview.pixels_per_m = 100 / pitch_m;
  bench.preview.width = 3;
  bench.preview.height = 601;
  for (guint i = 0; i < G_N_ELEMENTS (ratios); i++)
    {
      float low = G_MAXFLOAT, high = 0;
      bench.what.spot_m = ratios[i] * pitch_m;
      g_autoptr (BwPlanes) light = screen (&bench);
      for (int y = 0; y < light->height; y++)
        {
          float value = light->at[1][y * 3 + 1];
          low = MIN (low, value);
          high = MAX (high, value);
        }
      g_assert_cmpfloat_with_epsilon ((high - low) / (high + low), bw_line_modulation (ratios[i]),
                                      0.005);
      /* what shows a white field brightest is just not cut off */
      g_assert_cmpfloat_with_epsilon (high * bw_preview_exposure (&bench.preview), 1, 0.005);
    }
  bench_clear (&bench);
}

/* Between the middles of lines the light is highest where the line is: at line 240 of 480, just
 * below the middle. */
static void
test_line_place (void)
{
  Bench bench;
  bench_init (&bench, 1, 480);
  bench.what.mask = BW_MASK_MONO;
  for (int i = 0; i < 3; i++)
    bench.picture->at[i][240] = 1;
  double pitch_m = height_m (&bench) / (480 * 0.95);
  bench.preview.pixels_per_m = 100 / pitch_m;
  bench.preview.width = 1;
  bench.preview.height = 400;
  g_autoptr (BwPlanes) light = screen (&bench);
  int brightest = 0;
  for (int y = 0; y < 400; y++)
    if (light->at[0][y] > light->at[0][brightest])
      brightest = y;
  g_assert_cmpint (ABS (brightest - 250), <=, 1);
  bench_clear (&bench);
}

/* Columns of the mask are counted on a white field: rises of red through its mean. */
static void
test_mask_columns (void)
{
  static const struct
  {
    BwMask mask;
    double pitch_m;
  } masks[] = { { BW_MASK_GRILLE, 0.25e-3 }, { BW_MASK_SLOT, 0.6e-3 }, { BW_MASK_DOT, 0.28e-3 } };
  Bench bench;
  bench_init (&bench, 1, 1);
  fill (bench.picture, 1, 1, 1);
  bench.preview.width = 3000;
  for (guint i = 0; i < G_N_ELEMENTS (masks); i++)
    {
      BwDetail detail;
      int rises = 0;
      double sums[3000] = { 0 }, mean = 0;
      bench.what.mask = masks[i].mask;
      bench.what.pitch_m = masks[i].pitch_m;
      bw_detail_compute (&bench.what, &detail);
      bench.preview.pixels_per_m = 3000 / (detail.width_m / 2);
      g_autoptr (BwPlanes) light = screen (&bench);
      for (int x = 0; x < 3000; x++)
        {
          for (int y = 0; y < light->height; y++)
            sums[x] += (double) light->at[0][y * 3000 + x];
          mean += sums[x] / 3000;
        }
      for (int x = 1; x < 3000; x++)
        rises += sums[x - 1] < mean && sums[x] >= mean;
      g_assert_cmpfloat_with_epsilon (rises * 2 / (detail.width_m / detail.height_m),
                                      detail.mask_tvl, 2);
      g_assert_cmpfloat_with_epsilon (mean / light->height, 1, 0.02);
    }
  bench_clear (&bench);
}

/* A white field is as bright with a mask as without, at every magnification, in each colour; and
 * where a column is not two pixels wide there is no pattern. */
static void
test_mean_is_kept (void)
{
  static const double scales[] = { 400, 1500, 4000, 9000, 11000, 20000, 60000 };
  Bench bench;
  bench_init (&bench, 1, 1);
  fill (bench.picture, 0.8, 0.5, 0.3);
  bench.preview.height = 240;
  for (guint mask = 0; mask < BW_MASK_MONO; mask++)
    for (guint i = 0; i < G_N_ELEMENTS (scales); i++)
      {
        static const double rgb[] = { 0.8, 0.5, 0.3 };
        bench.what.mask = mask;
        bench.preview.pixels_per_m = scales[i];
        g_autoptr (BwPlanes) light = screen (&bench);
        for (int colour = 0; colour < 3; colour++)
          {
            double sum = 0, n = 0;
            for (int y = 0; y < light->height; y++)
              for (int x = 0; x < light->width; x++)
                {
                  double out_x = (x + 0.5 - WIDTH / 2.0) / scales[i];
                  double out_y = (y + 0.5 - 120) / scales[i];
                  if (fabs (out_x) > 0.12 || fabs (out_y) > 0.09)
                    continue;
                  double value = (double) light->at[colour][y * light->width + x];
                  sum += value;
                  n++;
                  if (scales[i] * bench.what.pitch_m < 2)
                    g_assert_cmpfloat_with_epsilon (value, rgb[colour], 0.03);
                }
            g_test_message ("mask %u scale %g: %g", mask, scales[i], sum / n);
            g_assert_cmpfloat_with_epsilon (sum / n, rgb[colour], 0.03 * rgb[colour]);
          }
      }
  bench_clear (&bench);
}

/* A picture of as many pixels as samples and lines is sent pixel for pixel: a single white one
 * lights the screen where it lies, and no neighbour but for spot and amplifier. */
static void
test_place (void)
{
  Bench bench;
  double sum = 0, moment_x = 0, moment_y = 0;
  bench_init (&bench, 720, 480);
  bench.what.mask = BW_MASK_MONO;
  for (int i = 0; i < 3; i++)
    bench.picture->at[i][200 * 720 + 300] = 1;
  bench.preview.centre_x = ((300.5 / 720) - 0.5) / 0.95 + 0.5;
  bench.preview.centre_y = ((200.5 / 480) - 0.5) / 0.95 + 0.5;
  g_autoptr (BwPlanes) light = screen (&bench);
  for (int y = 0; y < HEIGHT; y++)
    for (int x = 0; x < WIDTH; x++)
      {
        double value = (double) light->at[0][y * WIDTH + x];
        sum += value;
        moment_x += value * (x + 0.5);
        moment_y += value * (y + 0.5);
      }
  g_assert_cmpfloat_with_epsilon (moment_x / sum, WIDTH / 2.0, 0.1);
  g_assert_cmpfloat_with_epsilon (moment_y / sum, HEIGHT / 2.0, 0.1);
  bench_clear (&bench);
}

/* The untouched crop lies where the screen's does, and has the picture's own values. */
static void
test_untouched (void)
{
  Bench bench;
  bench_init (&bench, 720, 480);
  for (int x = 0; x < 720; x++)
    for (int y = 0; y < 480; y++)
      bench.picture->at[0][y * 720 + x] = x >= 300 && y >= 200 ? 1.0f : 0.25f;
  bench.preview.gamma = 2;
  bench.preview.centre_x = ((300.0 / 720) - 0.5) / 0.95 + 0.5;
  bench.preview.centre_y = ((200.0 / 480) - 0.5) / 0.95 + 0.5;
  g_autoptr (BwPlanes) light = bw_preview_untouched (&bench.preview, NULL, NULL);
  g_assert_nonnull (light);
  for (int y = 0; y < HEIGHT; y++)
    for (int x = 0; x < WIDTH; x++)
      if (x != WIDTH / 2 && y != HEIGHT / 2 && x != WIDTH / 2 - 1 && y != HEIGHT / 2 - 1)
        g_assert_cmpfloat_with_epsilon (light->at[0][y * WIDTH + x],
                                        x > WIDTH / 2 && y > HEIGHT / 2 ? 1 : 0.0625, 1e-4);
  bench_clear (&bench);
}

/* Beyond the viewable area nothing is shown. */
static void
test_edges (void)
{
  Bench bench;
  bench_init (&bench, 1, 1);
  fill (bench.picture, 1, 1, 1);
  bench.what.mask = BW_MASK_MONO;
  bench.preview.centre_x = bench.preview.centre_y = 0;
  g_autoptr (BwPlanes) light = screen (&bench);
  g_autoptr (BwPlanes) untouched = bw_preview_untouched (&bench.preview, NULL, NULL);
  for (int y = 0; y < HEIGHT; y++)
    for (int x = 0; x < WIDTH; x++)
      {
        gboolean on_glass = x >= WIDTH / 2 && y >= HEIGHT / 2;
        g_assert_cmpint (light->at[2][y * WIDTH + x] > 0.5f, ==, on_glass);
        g_assert_cmpint (untouched->at[2][y * WIDTH + x] > 0.5f, ==, on_glass);
      }
  bench_clear (&bench);
}

/* The light of a grey is that grey to the power gamma, whatever the path. */
static void
test_gamma (void)
{
  Bench bench;
  bench_init (&bench, 1, 1);
  bench.what.mask = BW_MASK_MONO;
  bench.what.spot_m = 0;
  /* in steps of the curve or between them, as a share of white */
  fill (bench.picture, 1, 1, 1);
  bench.preview.gamma = 2;
  g_autoptr (BwPlanes) white = screen (&bench);
  double full = (double) white->at[1][HEIGHT / 2 * WIDTH + WIDTH / 2];
  for (int percent = 3; percent < 100; percent += 13)
    {
      fill (bench.picture, percent / 100.0, percent / 100.0, percent / 100.0);
      bench.preview.gamma = percent % 2 == 0 ? 2.8 : 1.5;
      g_autoptr (BwPlanes) light = screen (&bench);
      g_assert_cmpfloat_with_epsilon (light->at[1][HEIGHT / 2 * WIDTH + WIDTH / 2] / full,
                                      pow (percent / 100.0, bench.preview.gamma), 2e-6);
    }
  fill (bench.picture, 0.5, 0.5, 0.5);
  for (guint signal = 0; signal < BW_N_SIGNALS; signal++)
    for (guint system = 0; system < BW_N_SYSTEMS; system++)
      {
        bench.what.signal = signal;
        bench.what.system = system;
        bench.preview.gamma = 0;
        g_autoptr (BwPlanes) light = screen (&bench);
        g_assert_cmpfloat_with_epsilon (light->at[1][HEIGHT / 2 * WIDTH + WIDTH / 2],
                                        pow (0.5, 2.2), 2e-3);
      }
  bench_clear (&bench);
}

static void
count (double done, gpointer user_data)
{
  double *last = user_data;
  g_assert_cmpfloat (done, >=, *last);
  g_assert_cmpfloat (done, <=, 1);
  *last = done;
}

typedef struct
{
  GCancellable *cancellable;
  double at; /* share of the work */
} Stop;

static void
stop_early (double done, gpointer user_data)
{
  const Stop *stop = user_data;
  g_assert_false (g_cancellable_is_cancelled (stop->cancellable));
  if (done >= stop->at)
    g_cancellable_cancel (stop->cancellable);
}

static void
test_cancel (void)
{
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  g_autoptr (GError) again = NULL;
  double last = 0;
  Bench bench;
  bench_init (&bench, 4, 4);

  g_autoptr (BwPlanes) whole = bw_preview_screen (&bench.preview, cancellable, count, &last, NULL);
  g_assert_nonnull (whole);
  g_assert_cmpfloat_with_epsilon (last, 1, 1e-12);
  /* at the very beginning, in the lines, and in the rows of pixels */
  static const double places[] = { 0, 0.3, 0.95 };
  for (gsize i = 0; i < G_N_ELEMENTS (places); i++)
    {
      g_autoptr (GError) error = NULL;
      const Stop stop = { cancellable, places[i] };
      g_cancellable_reset (cancellable);
      g_assert_null (bw_preview_screen (&bench.preview, cancellable, stop_early, (gpointer) &stop,
                                        &error));
      g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
    }
  g_autoptr (GError) before = NULL;
  g_assert_null (bw_preview_screen (&bench.preview, cancellable, NULL, NULL, &before));
  g_assert_error (before, G_IO_ERROR, G_IO_ERROR_CANCELLED);
  g_assert_null (bw_preview_untouched (&bench.preview, cancellable, &again));
  g_assert_error (again, G_IO_ERROR, G_IO_ERROR_CANCELLED);
  bench_clear (&bench);
}

static void
refuse (const Bench *bench, BwPreviewError code)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GError) again = NULL;
  g_assert_null (bw_preview_screen (&bench->preview, NULL, NULL, NULL, &error));
  g_assert_error (error, BW_PREVIEW_ERROR, (int) code);
  g_assert_cmpuint (strlen (error->message), >, 20);
  g_assert_null (bw_preview_untouched (&bench->preview, NULL, &again));
  g_assert_error (again, BW_PREVIEW_ERROR, (int) code);
}

#define REFUSE(member, value, code)                                                               \
  G_STMT_START                                                                                    \
  {                                                                                               \
    Bench copy = bench;                                                                           \
    copy.preview.what = &copy.what;                                                               \
    copy.member = value;                                                                          \
    refuse (&copy, code);                                                                         \
  }                                                                                               \
  G_STMT_END

static void
test_refused (void)
{
  Bench bench;
  bench_init (&bench, 4, 4);
  REFUSE (preview.width, 0, BW_PREVIEW_ERROR_SIZE);
  REFUSE (preview.height, 0, BW_PREVIEW_ERROR_SIZE);
  REFUSE (preview.height, -7, BW_PREVIEW_ERROR_SIZE);
  REFUSE (preview.width, BW_PREVIEW_MAX_SIDE + 1, BW_PREVIEW_ERROR_SIZE);
  REFUSE (preview.picture, NULL, BW_PREVIEW_ERROR_SIZE);
  REFUSE (preview.centre_x, 1.5, BW_PREVIEW_ERROR_PLACE);
  REFUSE (preview.centre_y, NAN, BW_PREVIEW_ERROR_PLACE);
  REFUSE (preview.pixels_per_m, 0, BW_PREVIEW_ERROR_PLACE);
  REFUSE (preview.pixels_per_m, INFINITY, BW_PREVIEW_ERROR_PLACE);
  REFUSE (preview.gamma, NAN, BW_PREVIEW_ERROR_PLACE);
  REFUSE (preview.gamma, -2, BW_PREVIEW_ERROR_PLACE);
  REFUSE (what.diagonal_m, 0, BW_PREVIEW_ERROR_TUBE);
  REFUSE (what.diagonal_m, NAN, BW_PREVIEW_ERROR_TUBE);
  REFUSE (what.aspect, BW_RATIO_NONE, BW_PREVIEW_ERROR_TUBE);
  REFUSE (what.overscan_h, 1, BW_PREVIEW_ERROR_TUBE);
  REFUSE (what.pitch_m, 1e-9, BW_PREVIEW_ERROR_TUBE);
  REFUSE (what.spot_m, NAN, BW_PREVIEW_ERROR_TUBE);
  REFUSE (what.spot_m, 1e-9, BW_PREVIEW_ERROR_TUBE);
  REFUSE (what.mask, BW_N_MASKS, BW_PREVIEW_ERROR_TUBE);
  REFUSE (what.active_s, 0, BW_PREVIEW_ERROR_RASTER);
  REFUSE (what.active_lines, 0, BW_PREVIEW_ERROR_RASTER);
  REFUSE (what.samples, -1, BW_PREVIEW_ERROR_RASTER);
  REFUSE (what.lead_hz, -1, BW_PREVIEW_ERROR_RASTER);
  REFUSE (what.system, BW_N_SYSTEMS, BW_PREVIEW_ERROR_RASTER);
  bench_clear (&bench);
}

#define AT(member) G_STRUCT_OFFSET (Bench, member)

/* What is taken at its ends and not beyond them; our own choice, and what the messages say. */
static void
test_limits (void)
{
  static const struct
  {
    gsize at;
    gboolean whole;
    double low, high;
    BwPreviewError code;
  } limits[] = {
    { AT (what.diagonal_m), FALSE, 0.01, 10, BW_PREVIEW_ERROR_TUBE },
    { AT (what.overscan_h), FALSE, 0, 0.5, BW_PREVIEW_ERROR_TUBE },
    { AT (what.overscan_v), FALSE, 0, 0.5, BW_PREVIEW_ERROR_TUBE },
    { AT (what.pitch_m), FALSE, 0.5e-5, 0.5, BW_PREVIEW_ERROR_TUBE },
    { AT (what.spot_m), FALSE, 0.5e-5, 0.5, BW_PREVIEW_ERROR_TUBE },
    { AT (what.active_s), FALSE, 1e-6, 1e-3, BW_PREVIEW_ERROR_RASTER },
    { AT (what.active_lines), FALSE, 1, 8192, BW_PREVIEW_ERROR_RASTER },
    { AT (what.samples), TRUE, 0, 16384, BW_PREVIEW_ERROR_RASTER },
    { AT (what.detail_hz), FALSE, 0, 1e12, BW_PREVIEW_ERROR_RASTER },
    { AT (what.bandwidth_hz), FALSE, 0, 1e12, BW_PREVIEW_ERROR_RASTER },
    { AT (what.lead_hz), FALSE, 0, 1e15, BW_PREVIEW_ERROR_RASTER },
    { AT (preview.width), TRUE, 1, BW_PREVIEW_MAX_SIDE, BW_PREVIEW_ERROR_SIZE },
    { AT (preview.height), TRUE, 1, BW_PREVIEW_MAX_SIDE, BW_PREVIEW_ERROR_SIZE },
    { AT (preview.centre_x), FALSE, 0, 1, BW_PREVIEW_ERROR_PLACE },
    { AT (preview.centre_y), FALSE, 0, 1, BW_PREVIEW_ERROR_PLACE },
    { AT (preview.gamma), FALSE, 0.5, 5, BW_PREVIEW_ERROR_PLACE },
    { AT (preview.pixels_per_m), FALSE, 16 / 0.5, 99999 / 0.5, BW_PREVIEW_ERROR_PLACE },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (limits); i++)
    {
      double beyond = MAX (fabs (limits[i].low), 1e-3) * (limits[i].whole ? 1 : 1e-6);
      double below = limits[i].low - (limits[i].whole ? 1 : beyond);
      double above = limits[i].whole ? limits[i].high + 1 : limits[i].high * (1 + 2e-5);
      const double tried[] = { below, limits[i].low, limits[i].high, above };
      for (int j = 0; j < 4; j++)
        {
          Bench bench;
          g_autoptr (GError) error = NULL;
          bench_init (&bench, 4, 4);
          bench.what.diagonal_m = 0.5;
          bench.what.pitch_m = bench.what.spot_m = 0; /* not known: they are the tube's share */
          char *member = (char *) &bench + limits[i].at;
          if (limits[i].whole)
            *(int *) (gpointer) member = (int) tried[j];
          else
            *(double *) (gpointer) member = tried[j];
          bench.preview.pixels_per_m *= i == 0 ? 0.5 / bench.what.diagonal_m : 1;
          gboolean taken = bw_preview_check (&bench.preview, &error);
          if (taken != (j == 1 || j == 2))
            g_test_message ("limit %" G_GSIZE_FORMAT ", %g", i, tried[j]);
          g_assert_cmpint (taken, ==, j == 1 || j == 2);
          if (!taken)
            g_assert_error (error, BW_PREVIEW_ERROR, (int) limits[i].code);
          bench_clear (&bench);
        }
    }
}

/* A tube's aspect ratio is 1:10 to 10:1. */
static void
test_aspect_limits (void)
{
  static const struct
  {
    BwRatio aspect;
    gboolean taken;
  } cases[] = {
    { { 1, 10 }, TRUE }, { { 10, 1 }, TRUE }, { { 99, 1000 }, FALSE }, { { 101, 10 }, FALSE },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      Bench bench;
      bench_init (&bench, 4, 4);
      bench.what.aspect = cases[i].aspect;
      g_assert_cmpint (bw_preview_check (&bench.preview, NULL), ==, cases[i].taken);
      bench_clear (&bench);
    }
}

/* The whole glass in a picture of so many pixels: 0.4 m by 0.3 m. */
static void
test_whole (void)
{
  Bench bench;
  bench_init (&bench, 4, 4);
  bench.what.diagonal_m = 0.5;
  g_assert_cmpfloat_with_epsilon (bw_preview_whole_pixels_per_m (&bench.what, 800, 300), 1000,
                                  1e-9);
  g_assert_cmpfloat_with_epsilon (bw_preview_whole_pixels_per_m (&bench.what, 400, 600), 1000,
                                  1e-9);
  bench.what.diagonal_m = 0;
  g_assert_cmpfloat (bw_preview_whole_pixels_per_m (&bench.what, 400, 600), ==, 0);
  /* 96 pixels to the inch */
  g_assert_cmpfloat_with_epsilon (bw_preview_pixels_per_m (1), 96 / 0.0254, 1e-9);
  g_assert_cmpfloat_with_epsilon (bw_preview_pixels_per_m (2.5), 240 / 0.0254, 1e-9);
  bench_clear (&bench);
}

/* The mask, pixel by pixel */

/* The share of a pixel from @x on that lies in bars, one of @bar from each multiple of @period on. */
static double
covered (double x, double pixel, double period, double bar)
{
  double sum = 0;
  for (double from = floor (x / period - 1) * period; from < x + pixel; from += period)
    sum += MAX (0, MIN (x + pixel, from + bar) - MAX (x, from));
  return sum / pixel;
}

/* Stripes of 0.30 of the column pitch at one, three and five sixths of it; slots of the height of a
 * column, 0.88 of it open, the odd columns half a slot lower; the mean is 1 (what no data sheet gives
 * is common practice, no source). */
static double
mask_at (const Bench *bench, double pitch_m, double left_m, double top_m, double pixel_m,
         int colour)
{
  double sum = 0;
  for (int parity = 0; parity < 2; parity++)
    {
      double stripe_m = pitch_m * (parity + (2 * colour + 1) / 6.0 - 0.15);
      double across = covered (left_m - stripe_m, pixel_m, 2 * pitch_m, 0.3 * pitch_m) / 0.3;
      double down = bench->what.mask == BW_MASK_SLOT
                        ? covered (top_m - parity * pitch_m / 2, pixel_m, pitch_m, 0.88 * pitch_m)
                              / 0.88
                        : 1;
      sum += across * down;
    }
  return sum;
}

/* A white field without line structure, at so many pixels to a column. Below two there is no mask,
 * from three on the whole of it; it comes in as 3 x² − 2 x³. */
static void
test_mask_stripes (void)
{
  static const struct
  {
    double pixels, weight;
  } cases[] = { { 1.9, 0 },        { 2.25, 0.15625 }, { 2.5, 0.5 },
                { 2.75, 0.84375 }, { 3.1, 1 },        { 17.3, 1 } };
  for (guint mask = BW_MASK_GRILLE; mask <= BW_MASK_SLOT; mask++)
    for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
      {
        Bench bench;
        bench_init (&bench, 1, 1);
        fill (bench.picture, 1, 1, 1);
        bench.what.mask = mask;
        bench.what.spot_m = 5e-3; /* the lines run together */
        bench.preview.pixels_per_m = cases[i].pixels / bench.what.pitch_m;
        bench.preview.width = 101;
        bench.preview.height = 53;
        double pixel_m = 1 / bench.preview.pixels_per_m;
        double left_m = bench.what.diagonal_m * 0.8 / 2 - 101 * pixel_m / 2;
        double top_m = height_m (&bench) / 2 - 53 * pixel_m / 2;
        g_autoptr (BwPlanes) light = screen (&bench);
        for (int colour = 0; colour < 3; colour++)
          for (int y = 0; y < 53; y++)
            for (int x = 0; x < 101; x++)
              {
                double drawn = mask_at (&bench, bench.what.pitch_m, left_m + x * pixel_m,
                                        top_m + y * pixel_m, pixel_m, colour);
                double wanted = 1 + cases[i].weight * (drawn - 1);
                g_assert_cmpfloat_with_epsilon (light->at[colour][y * 101 + x], wanted, 0.01);
              }
        bench_clear (&bench);
      }
}

/* Dots: each colour at the corners and in the middle of rectangles of two columns by one pitch, which
 * makes triangles of equal sides; a pitch is that of the columns times 2 / √3; the radius is 0.47 of
 * the distance between neighbours of any colour, pitch / √3. Inside a dot it is as bright as makes the
 * mean 1, outside it is dark. */
static void
test_mask_dots (void)
{
  Bench bench;
  bench_init (&bench, 1, 1);
  fill (bench.picture, 1, 1, 1);
  bench.what.mask = BW_MASK_DOT;
  bench.what.spot_m = 5e-3;
  double pitch_m = bench.what.pitch_m, column_m = pitch_m * sqrt (3) / 2;
  bench.preview.pixels_per_m = 40 / pitch_m;
  bench.preview.width = 160;
  bench.preview.height = 120;
  double pixel_m = 1 / bench.preview.pixels_per_m, radius_m = 0.47 * pitch_m / sqrt (3);
  double left_m = bench.what.diagonal_m * 0.8 / 2 - 80 * pixel_m;
  double top_m = height_m (&bench) / 2 - 60 * pixel_m;
  double full = column_m * pitch_m / (G_PI * radius_m * radius_m);
  g_autoptr (BwPlanes) light = screen (&bench);
  for (int colour = 0; colour < 3; colour++)
    for (int y = 0; y < 120; y++)
      for (int x = 0; x < 160; x++)
        {
          double x_m = left_m + (x + 0.5) * pixel_m, y_m = top_m + (y + 0.5) * pixel_m;
          int column = (int) floor (x_m / column_m - (colour + 0.5) / 3 + 0.5);
          double off_x = x_m - column_m * (column + (colour + 0.5) / 3);
          double shift = ((column % 2 != 0) != (colour == 1)) ? pitch_m / 2 : 0;
          double off_m = hypot (off_x, remainder (y_m - shift, pitch_m));
          double got = (double) light->at[colour][y * 160 + x];
          if (off_m < radius_m - pixel_m)
            g_assert_cmpfloat_with_epsilon (got, full, 0.02 * full);
          else if (off_m > radius_m + pixel_m)
            g_assert_cmpfloat_with_epsilon (got, 0, 1e-6);
        }
  bench_clear (&bench);
}

/* What keeps the brightest part of white just shown: phosphor of 0.30 of the glass, of that 0.88 in
 * slots, or dots that cover 2 π 0.47² / (3 √3) of it. */
static void
test_exposure (void)
{
  static const double wanted[BW_N_MASKS] = {
    [BW_MASK_GRILLE] = 0.3,
    [BW_MASK_SLOT] = 0.3 * 0.88,
    [BW_MASK_DOT] = 2 * G_PI * 0.47 * 0.47 / (3 * 1.7320508),
    [BW_MASK_MONO] = 1,
  };
  for (guint mask = 0; mask < BW_N_MASKS; mask++)
    {
      Bench bench;
      bench_init (&bench, 1, 1);
      bench.what.mask = mask;
      bench.what.spot_m = 5e-3;
      bench.preview.pixels_per_m = 10 / bench.what.pitch_m;
      g_assert_cmpfloat_with_epsilon (bw_preview_exposure (&bench.preview), wanted[mask], 1e-4);
      bench_clear (&bench);
    }
}

/* Anything that is accepted gives light that is a number and not negative beyond the rim of the
 * kernels, for odd sizes and places too. */
static void
test_random (void)
{
  for (int round = 0; round < 150; round++)
    {
      Bench bench;
      bench_init (&bench, g_test_rand_int_range (1, 40), g_test_rand_int_range (1, 40));
      for (int i = 0; i < 3; i++)
        for (int j = 0; j < bench.picture->width * bench.picture->height; j++)
          bench.picture->at[i][j] = (float) g_test_rand_double_range (-0.5, 2);
      bench.what.mask = (guint) g_test_rand_int_range (0, BW_N_MASKS);
      bench.what.signal = (guint) g_test_rand_int_range (0, BW_N_SIGNALS);
      bench.what.system = (guint) g_test_rand_int_range (0, BW_N_SYSTEMS);
      bench.what.filter = (guint) g_test_rand_int_range (0, BW_N_LUMA_FILTERS);
      bench.what.samples = g_test_rand_int_range (0, 1500) * g_test_rand_bit ();
      bench.what.detail_hz = g_test_rand_bit () ? 0 : pow (10, g_test_rand_double_range (4, 9));
      bench.what.bandwidth_hz = g_test_rand_bit () ? 0 : pow (10, g_test_rand_double_range (4, 9));
      bench.what.lead_hz = g_test_rand_bit () ? 0 : pow (10, g_test_rand_double_range (5, 11));
      bench.what.active_s = pow (10, g_test_rand_double_range (-5.5, -4));
      bench.what.active_lines = g_test_rand_double_range (1, 700);
      bench.what.overscan_h = g_test_rand_double_range (0, 0.5);
      bench.what.overscan_v = g_test_rand_double_range (0, 0.5);
      bench.what.diagonal_m = pow (10, g_test_rand_double_range (-1.5, 0.5));
      bench.what.spot_m = g_test_rand_bit ()
                              ? 0
                              : bench.what.diagonal_m * pow (10, g_test_rand_double_range (-4, -2));
      bench.what.pitch_m = g_test_rand_bit ()
                               ? 0
                               : bench.what.diagonal_m * pow (10, g_test_rand_double_range (-4, -2));
      bench.preview.width = g_test_rand_int_range (1, 90);
      bench.preview.height = g_test_rand_int_range (1, 90);
      bench.preview.centre_x = g_test_rand_double_range (0, 1);
      bench.preview.centre_y = g_test_rand_double_range (0, 1);
      bench.preview.pixels_per_m = pow (10, g_test_rand_double_range (1.5, 4.5))
                                   / bench.what.diagonal_m;
      g_autoptr (BwPlanes) light = screen (&bench);
      for (int i = 0; i < 3; i++)
        for (int j = 0; j < light->width * light->height; j++)
          {
            g_assert_true (isfinite (light->at[i][j]));
            g_assert_cmpfloat (light->at[i][j], >, -1);
          }
      g_assert_cmpfloat (bw_preview_exposure (&bench.preview), >, 0);
      g_assert_cmpfloat (bw_preview_exposure (&bench.preview), <=, 1);
      bench_clear (&bench);
    }
}

/* IEC 61966-2-1: half of the light is coded 188, a fifth 124; black and white are the ends. */
static void
test_pack (void)
{
  g_autoptr (BwPlanes) light = bw_planes_new (2, 1);
  guint32 rows[2];
  light->at[0][0] = 1;
  light->at[1][0] = 0.4f;
  light->at[2][0] = -0.2f;
  light->at[0][1] = 7;
  bw_preview_pack (light, 0.5, rows, 2);
  g_assert_cmphex (rows[0], ==, 0x00bc7c00);
  g_assert_cmphex (rows[1], ==, 0x00ff0000);
}

/* A grey signal of 0.5 is light of 0.5 to the power gamma, behind the path and untouched; without a gamma that of
 * 2.2 (common practice). */
static void
test_grey_light (void)
{
  static const double gammas[] = { 0, 0.5, 0.8, 1, 1.8, 2.8 };
  for (gsize i = 0; i < G_N_ELEMENTS (gammas); i++)
    {
      Bench bench;
      bench_init (&bench, 1, 1);
      bench.what.mask = BW_MASK_MONO;
      bench.what.spot_m = 0;
      bench.preview.gamma = gammas[i];
      fill (bench.picture, 0.5, 0.5, 0.5);
      double wanted = pow (0.5, gammas[i] > 0 ? gammas[i] : 2.2);
      g_autoptr (BwPlanes) light = screen (&bench);
      g_autoptr (BwPlanes) plain = bw_preview_untouched (&bench.preview, NULL, NULL);
      gsize middle = HEIGHT / 2 * WIDTH + WIDTH / 2;
      g_assert_cmpfloat_with_epsilon (light->at[1][middle], wanted, 2e-3);
      g_assert_cmpfloat_with_epsilon (plain->at[1][middle], wanted, 1e-5);
      bench_clear (&bench);
    }
}

/* A view that lies within one row of the picture shows that row, whichever it is. */
static void
test_one_row (void)
{
  for (int row = 0; row < 3; row++)
    {
      Bench bench;
      bench_init (&bench, 1, 3);
      bench.preview.gamma = 1;
      bench.preview.centre_y = (row + 0.5) / 3;
      for (int colour = 0; colour < 3; colour++)
        for (int y = 0; y < 3; y++)
          bench.picture->at[colour][y] = 0.1f * (float) (1 + y + 3 * colour);
      g_autoptr (BwPlanes) light = bw_preview_untouched (&bench.preview, NULL, NULL);
      for (int colour = 0; colour < 3; colour++)
        g_assert_cmpfloat_with_epsilon (light->at[colour][HEIGHT / 2 * WIDTH + WIDTH / 2],
                                        0.1 * (1 + row + 3 * colour), 1e-5);
      bench_clear (&bench);
    }
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  g_test_add_func ("/preview/modulation/links", test_modulation);
  g_test_add_func ("/preview/modulation/coded", test_modulation_coded);
  g_test_add_func ("/preview/lines/structure", test_line_structure);
  g_test_add_func ("/preview/lines/place", test_line_place);
  g_test_add_func ("/preview/mask/columns", test_mask_columns);
  g_test_add_func ("/preview/mask/mean", test_mean_is_kept);
  g_test_add_func ("/preview/place", test_place);
  g_test_add_func ("/preview/untouched", test_untouched);
  g_test_add_func ("/preview/one-row", test_one_row);
  g_test_add_func ("/preview/edges", test_edges);
  g_test_add_func ("/preview/gamma", test_gamma);
  g_test_add_func ("/preview/cancel", test_cancel);
  g_test_add_func ("/preview/refused", test_refused);
  g_test_add_func ("/preview/limits", test_limits);
  g_test_add_func ("/preview/limits/aspect", test_aspect_limits);
  g_test_add_func ("/preview/exposure", test_exposure);
  g_test_add_func ("/preview/whole", test_whole);
  g_test_add_func ("/preview/mask/stripes", test_mask_stripes);
  g_test_add_func ("/preview/mask/dots", test_mask_dots);
  g_test_add_func ("/preview/random", test_random);
  g_test_add_func ("/preview/pack", test_pack);
  g_test_add_func ("/preview/grey-light", test_grey_light);
  return g_test_run ();
}
