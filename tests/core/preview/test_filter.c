/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The filters of the preview by themselves, against what is known of them in mathematics: that a Gaussian
 * transforms into a Gaussian, what a convolution is, and that a straight line read between its points is
 * that line. */
#include "core/preview/preview-private.h"

#include <math.h>

#include "support.h"

#define ROW 203 /* no multiple of anything that is done at once */

static double
all_of_it (double cycles_per_m, gconstpointer user_data)
{
  return 1;
}

/* The transform of a Gaussian of standard deviation *@user_data. */
static double
gaussian (double cycles_per_m, gconstpointer user_data)
{
  double sigma_m = *(const double *) user_data;
  return exp (-2 * pow (G_PI * sigma_m * cycles_per_m, 2));
}

static double
half_of_it (double cycles_per_m, gconstpointer user_data)
{
  return 0.5;
}

/* What passes changes nothing, whatever else. */
static void
test_flat (void)
{
  BwKernel kernel;
  float in[ROW], out[ROW];

  bw_kernel_init (&kernel, 0.1, all_of_it, NULL);
  g_assert_cmpint (kernel.half, ==, 0);
  g_assert_cmpfloat_with_epsilon (kernel.taps[0], 1, 1e-6);
  bw_kernel_clear (&kernel);
  g_assert_null (kernel.taps);
  bw_kernel_init (&kernel, 0.1, half_of_it, NULL);
  g_assert_cmpint (kernel.half, ==, 0);
  for (int i = 0; i < ROW; i++)
    in[i] = (float) i;
  bw_kernel_apply (&kernel, in, out, ROW);
  for (int i = 0; i < ROW; i++)
    g_assert_cmpfloat_with_epsilon (out[i], i / 2.0, 1e-4);
  bw_kernel_clear (&kernel);
}

/* Taps of a Gaussian of s steps: exp (−j²/2s²)/(s √2π). It is 0.0003 at four times s, so that about
 * four times s on each side do. */
static void
test_gaussian (void)
{
  static const double steps[] = { 1.5, 3, 10 };
  for (gsize i = 0; i < G_N_ELEMENTS (steps); i++)
    {
      BwKernel kernel;
      double s = steps[i], sigma_m = s * 0.2, sum = 0;
      bw_kernel_init (&kernel, 0.2, gaussian, &sigma_m);
      g_assert_cmpfloat (kernel.half, >=, 2 * s);
      g_assert_cmpfloat (kernel.half, <=, 6 * s);
      for (int j = -kernel.half; j <= kernel.half; j++)
        {
          double tap = kernel.taps[kernel.half + j];
          g_assert_cmpfloat_with_epsilon (tap, exp (-j * j / (2 * s * s)) / (s * sqrt (2 * G_PI)),
                                          0.008 / s);
          sum += tap;
        }
      g_assert_cmpfloat_with_epsilon (sum, 1, 1e-6);
      bw_kernel_clear (&kernel);
    }
}

/* The shortest that will do: its response is within 0.6 % of what is wanted at every frequency, and that
 * of the next shorter would not be, of which the response at the highest frequency tells. */
static void
test_response (void)
{
  BwKernel kernel;
  double sigma_m = 2.5;
  bw_kernel_init (&kernel, 1, gaussian, &sigma_m);
  for (int f = 0; f <= 500; f++)
    {
      double response = kernel.taps[kernel.half];
      for (int j = 1; j <= kernel.half; j++)
        response += 2 * kernel.taps[kernel.half + j] * cos (2 * G_PI * f / 1000.0 * j);
      g_assert_cmpfloat_with_epsilon (response, gaussian (f / 1000.0, &sigma_m), 0.0061);
    }
  g_assert_cmpint (kernel.half, ==, 8);
  bw_kernel_clear (&kernel);
}

/* What raises high frequencies, twice less a Gaussian, needs as many taps as the Gaussian itself, and all of
 * them are its own turned over but for the middle one. */
static double
raised (double cycles_per_m, gconstpointer user_data)
{
  return 2 - gaussian (cycles_per_m, user_data);
}

static void
test_raised (void)
{
  BwKernel plain, kernel;
  double sigma_m = 2.5;
  bw_kernel_init (&plain, 1, gaussian, &sigma_m);
  bw_kernel_init (&kernel, 1, raised, &sigma_m);
  g_assert_cmpint (kernel.half, ==, plain.half);
  g_assert_cmpfloat_with_epsilon (kernel.taps[kernel.half] + plain.taps[plain.half], 2, 1e-5);
  for (int j = 1; j <= kernel.half; j++)
    g_assert_cmpfloat_with_epsilon (kernel.taps[kernel.half + j], -plain.taps[plain.half + j],
                                    1e-5);
  bw_kernel_clear (&plain);
  bw_kernel_clear (&kernel);
}

/* A convolution, written out; what would need values beyond an end is zero. */
static void
test_apply (void)
{
  BwKernel kernel;
  double sigma_m = 2;
  float in[ROW], out[ROW];
  g_autoptr (GRand) rand = g_rand_new_with_seed (3);

  for (int i = 0; i < ROW; i++)
    in[i] = (float) g_rand_double (rand);
  bw_kernel_init (&kernel, 1, gaussian, &sigma_m);
  bw_kernel_apply (&kernel, in, out, ROW);
  for (int i = 0; i < ROW; i++)
    {
      double wanted = 0;
      if (i >= kernel.half && i < ROW - kernel.half)
        for (int j = -kernel.half; j <= kernel.half; j++)
          wanted += (double) kernel.taps[kernel.half + j] * in[i - j];
      g_assert_cmpfloat_with_epsilon (out[i], wanted, 1e-5);
    }
  bw_kernel_clear (&kernel);
}

static double
triangle (double x, gconstpointer user_data)
{
  return MAX (0, 1 - fabs (x));
}

/* A straight line read at other places is that line; beyond its ends it is what the end is. */
static void
test_resampled_line (void)
{
  enum
  {
    N_IN = 40,
    N = 60
  };
  float in[N_IN + 8] = { 0 }, out[N];
  BwResampler resampler;

  for (int i = 0; i < N_IN; i++)
    in[i] = (float) (3 + 0.5 * i);
  for (int i = N_IN; i < N_IN + 8; i++)
    in[i] = 1e6f; /* counts for nothing */
  bw_resampler_init (&resampler, N, N_IN, -6.3, 0.9, 1, triangle, NULL);
  g_assert_cmpint (resampler.n, ==, N);
  g_assert_cmpint (resampler.taps, ==, 8);
  bw_resampler_apply (&resampler, in, out);
  for (int i = 0; i < N; i++)
    {
      double place = CLAMP (-6.3 + i * 0.9, 0, N_IN - 1);
      g_assert_cmpfloat_with_epsilon (out[i], 3 + 0.5 * place, 1e-4);
    }
  bw_resampler_clear (&resampler);
}

/* A wide weight, 23 steps across, on what is the same everywhere and on a single value: shares of the
 * Gaussian, which add up to one. */
static double
wide (double x, gconstpointer user_data)
{
  return exp (-x * x / 32);
}

static void
test_resampled_wide (void)
{
  enum
  {
    N_IN = 64,
    N = 20
  };
  float flat[N_IN + 8] = { 0 }, single[N_IN + 8] = { 0 }, out[N];
  BwResampler resampler;

  for (int i = 0; i < N_IN; i++)
    flat[i] = 0.25f;
  single[30] = 1;
  bw_resampler_init (&resampler, N, N_IN, 20.5, 1.25, 11.5, wide, NULL);
  g_assert_cmpint (resampler.taps, ==, 32);
  bw_resampler_apply (&resampler, flat, out);
  for (int i = 0; i < N; i++)
    g_assert_cmpfloat_with_epsilon (out[i], 0.25, 1e-6);
  bw_resampler_apply (&resampler, single, out);
  for (int i = 0; i < N; i++)
    {
      double off = 30 - (20.5 + 1.25 * i);
      double wanted = fabs (off) <= 11.5 ? wide (off, NULL) / (4 * sqrt (2 * G_PI)) : 0;
      g_assert_cmpfloat_with_epsilon (out[i], wanted, 0.001);
    }
  bw_resampler_clear (&resampler);
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  g_test_add_func ("/filter/flat", test_flat);
  g_test_add_func ("/filter/gaussian", test_gaussian);
  g_test_add_func ("/filter/response", test_response);
  g_test_add_func ("/filter/raised", test_raised);
  g_test_add_func ("/filter/apply", test_apply);
  g_test_add_func ("/filter/resampled-line", test_resampled_line);
  g_test_add_func ("/filter/resampled-wide", test_resampled_wide);
  return g_test_run ();
}
