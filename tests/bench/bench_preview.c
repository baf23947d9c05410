/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/preview/preview.h"

#include <math.h>
#include <stdlib.h>
#include <time.h>

#include <fftw3.h>

/* A preview of 640 × 480 pixels against one convolution of the same size by FFTW (forward,
 * multiply, inverse; single precision, one plane, one thread), in the same run. A preview has three
 * planes. The goal is a few times of it; nothing passes or fails by time. */

#define WIDTH 640
#define HEIGHT 480
#define ROUNDS 9
#define GOAL 5.0

typedef struct
{
  fftwf_plan forward;
  fftwf_plan inverse;
  float *picture;
  fftwf_complex *spectrum;
  fftwf_complex *kernel;
} Convolution;

static int
compare (const void *a, const void *b)
{
  double first = *(const double *) a, second = *(const double *) b;
  return (first > second) - (first < second);
}

static double
median (double *values)
{
  qsort (values, ROUNDS, sizeof *values, compare);
  return values[ROUNDS / 2];
}

/* Of this thread alone, so that what else runs on the machine does not count. */
static double
now_ms (void)
{
  struct timespec now;
  clock_gettime (CLOCK_THREAD_CPUTIME_ID, &now);
  return (double) now.tv_sec * 1e3 + (double) now.tv_nsec / 1e6;
}

static void
convolution_init (Convolution *it)
{
  it->picture = fftwf_alloc_real (WIDTH * HEIGHT);
  it->spectrum = fftwf_alloc_complex ((WIDTH / 2 + 1) * HEIGHT);
  it->kernel = fftwf_alloc_complex ((WIDTH / 2 + 1) * HEIGHT);
  it->forward = fftwf_plan_dft_r2c_2d (HEIGHT, WIDTH, it->picture, it->spectrum, FFTW_MEASURE);
  it->inverse = fftwf_plan_dft_c2r_2d (HEIGHT, WIDTH, it->spectrum, it->picture, FFTW_MEASURE);
  for (int i = 0; i < WIDTH * HEIGHT; i++)
    it->picture[i] = (float) (i % 251) / 251;
  for (int i = 0; i < (WIDTH / 2 + 1) * HEIGHT; i++)
    {
      it->kernel[i][0] = 1.0f / (WIDTH * HEIGHT);
      it->kernel[i][1] = 0;
    }
}

static double
convolution_ms (Convolution *it)
{
  double start_ms = now_ms ();

  fftwf_execute (it->forward);
  for (int i = 0; i < (WIDTH / 2 + 1) * HEIGHT; i++)
    {
      float real = it->spectrum[i][0], imaginary = it->spectrum[i][1];
      it->spectrum[i][0] = real * it->kernel[i][0] - imaginary * it->kernel[i][1];
      it->spectrum[i][1] = real * it->kernel[i][1] + imaginary * it->kernel[i][0];
    }
  fftwf_execute (it->inverse);
  return now_ms () - start_ms;
}

static void
convolution_clear (Convolution *it)
{
  fftwf_destroy_plan (it->forward);
  fftwf_destroy_plan (it->inverse);
  fftwf_free (it->picture);
  fftwf_free (it->spectrum);
  fftwf_free (it->kernel);
}

/* Invented: a 13 in tube with a grille, 480 lines of 720 samples. */
static void
case_init (BwDetailCase *what, BwSignal signal, BwLumaFilter filter)
{
  bw_detail_case_init (what);
  what->diagonal_m = 13 * 0.0254;
  what->mask = BW_MASK_GRILLE;
  what->pitch_m = 0.25e-3;
  what->spot_m = 0.35e-3;
  what->bandwidth_hz = 8e6;
  what->active_s = 720 / 13.5e6;
  what->active_lines = 480;
  what->samples = 720;
  what->interlaced = TRUE;
  what->signal = signal;
  what->system = BW_SYSTEM_NTSC_M;
  what->filter = filter;
}

static double
preview_ms (const BwPreview *preview, guint32 *rows)
{
  double start_ms = now_ms ();
  g_autoptr (BwPlanes) light = bw_preview_screen (preview, NULL, NULL, NULL, NULL);

  if (light == NULL)
    g_error ("no preview");
  bw_preview_pack (light, bw_preview_exposure (preview), rows, WIDTH);
  return now_ms () - start_ms;
}

static void
compare_with (Convolution *convolution, const char *name, BwPreview *preview, guint32 *rows)
{
  double own_ms[ROUNDS], fft_ms[ROUNDS];

  for (int i = 0; i < ROUNDS; i++)
    {
      own_ms[i] = preview_ms (preview, rows);
      fft_ms[i] = convolution_ms (convolution);
    }
  double own = median (own_ms), fft = median (fft_ms);
  g_print ("%s: preview %.1f ms, convolution %.2f ms, ratio %.1f, goal %.0f\n", name, own, fft,
           own / fft, GOAL);
}

int
main (void)
{
  static const struct
  {
    const char *name;
    BwSignal signal;
    BwLumaFilter filter;
    double times; /* zero: the whole screen */
  } cases[] = {
    { "RGB, 4 times", BW_SIGNAL_RGB, BW_LUMA_TRAP, 4 },
    { "composite with trap, 4 times", BW_SIGNAL_COMPOSITE, BW_LUMA_TRAP, 4 },
    { "composite with comb, 4 times", BW_SIGNAL_COMPOSITE, BW_LUMA_COMB, 4 },
    { "RGB, whole screen", BW_SIGNAL_RGB, BW_LUMA_TRAP, 0 },
    { "composite with trap, whole screen", BW_SIGNAL_COMPOSITE, BW_LUMA_TRAP, 0 },
  };
  g_autoptr (BwPlanes) picture = bw_planes_new (720, 480);
  g_autofree guint32 *rows = g_new (guint32, WIDTH * HEIGHT);
  Convolution convolution;

  for (int i = 0; i < 3; i++)
    for (int j = 0; j < 720 * 480; j++)
      picture->at[i][j] = (float) (0.5 + 0.5 * sin (j * (0.1 + 0.03 * i)));
  convolution_init (&convolution);
  g_print ("%d x %d, medians of %d rounds\n", WIDTH, HEIGHT, ROUNDS);
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      BwDetailCase what;
      case_init (&what, cases[i].signal, cases[i].filter);
      BwPreview preview = { .what = &what, .picture = picture, .centre_x = 0.5, .centre_y = 0.5,
                            .width = WIDTH, .height = HEIGHT };
      preview.pixels_per_m = cases[i].times > 0
                                 ? bw_preview_pixels_per_m (cases[i].times)
                                 : bw_preview_whole_pixels_per_m (&what, WIDTH, HEIGHT);
      compare_with (&convolution, cases[i].name, &preview, rows);
    }
  convolution_clear (&convolution);
  return 0;
}
