/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <stdlib.h>

#include <libxcvt/libxcvt.h>

#include "core/raster/standards.h"

/* One CVT mode: ours against libxcvt's, over the same 200 requests in the same run, each made and
 * freed again. The best of many rounds counts, which is the one least disturbed. It prints and
 * judges nothing; the aim is a ratio of at most 0.5, the goal at most 1.0. */

#define ROUNDS 400

static const int sizes[][2] = {
  { 320, 240 },   { 512, 384 },   { 640, 400 },   { 640, 480 },   { 720, 480 },
  { 720, 576 },   { 768, 576 },   { 800, 600 },   { 848, 480 },   { 1024, 600 },
  { 1024, 768 },  { 1152, 864 },  { 1280, 720 },  { 1280, 768 },  { 1280, 800 },
  { 1280, 960 },  { 1280, 1024 }, { 1400, 1050 }, { 1440, 900 },  { 1600, 900 },
  { 1600, 1200 }, { 1680, 1050 }, { 1920, 1080 }, { 1920, 1200 }, { 2048, 1536 },
};
static const int rates_hz[] = { 50, 60, 75, 85 };

#define N_REQUESTS 200

/* Every fifth is interlaced. */
static void
make_requests (BwFormulaRequest *requests)
{
  for (guint i = 0; i < N_REQUESTS; i++)
    {
      guint size = i / 2 / G_N_ELEMENTS (rates_hz);
      requests[i] = (BwFormulaRequest){
        .width = sizes[size][0],
        .height = sizes[size][1],
        .field_rate_hz = { rates_hz[i / 2 % G_N_ELEMENTS (rates_hz)], 1 },
        .interlaced = i % 5 == 0,
        .reduced = i % 2 == 1,
      };
    }
}

G_STATIC_ASSERT (G_N_ELEMENTS (sizes) * G_N_ELEMENTS (rates_hz) * 2 == N_REQUESTS);

/* The sums keep the compiler from leaving the work out, and show that there was some. */

static gint64
run_ours (const BwFormulaRequest *requests)
{
  gint64 sum = 0;
  for (guint i = 0; i < N_REQUESTS; i++)
    {
      g_autoptr (BwRaster) raster = bw_standards_cvt (&requests[i], NULL);
      sum += raster->pixel_clock_hz.num;
    }
  return sum;
}

/* The timing alone, as libxcvt gives it: without id, names and source. */
static gint64
run_figures (const BwFormulaRequest *requests)
{
  gint64 sum = 0;
  for (guint i = 0; i < N_REQUESTS; i++)
    {
      BwRaster raster;
      bw_standards_cvt_figures (&requests[i], &raster, NULL);
      sum += raster.pixel_clock_hz.num;
    }
  return sum;
}

static gint64
run_xcvt (const BwFormulaRequest *requests)
{
  gint64 sum = 0;
  for (guint i = 0; i < N_REQUESTS; i++)
    {
      const BwFormulaRequest *q = &requests[i];
      float frames_hz = (float) q->field_rate_hz.num / (q->interlaced ? 2.0f : 1.0f);
      struct libxcvt_mode_info *mode = libxcvt_gen_mode_info (q->width, q->height, frames_hz,
                                                              q->reduced, q->interlaced);
      sum += (gint64) mode->dot_clock * 1000;
      free (mode);
    }
  return sum;
}

static double
best_ns (gint64 (*run) (const BwFormulaRequest *requests), const BwFormulaRequest *requests,
         gint64 *sum)
{
  gint64 best_us = G_MAXINT64;
  for (int round = 0; round < ROUNDS; round++)
    {
      gint64 start_us = g_get_monotonic_time ();
      for (int i = 0; i < 10; i++)
        *sum += run (requests);
      best_us = MIN (best_us, g_get_monotonic_time () - start_us);
    }
  return (double) best_us * 1000 / (10.0 * N_REQUESTS);
}

int
main (void)
{
  BwFormulaRequest requests[N_REQUESTS];
  gint64 our_sum = 0, figures_sum = 0, xcvt_sum = 0;

  make_requests (requests);
  double ours_ns = best_ns (run_ours, requests, &our_sum);
  double figures_ns = best_ns (run_figures, requests, &figures_sum);
  double xcvt_ns = best_ns (run_xcvt, requests, &xcvt_sum);
  g_print ("one CVT mode, made and freed, over %d requests:\n", N_REQUESTS);
  g_print ("  ours     %8.1f ns  (mean clock %.3f MHz)\n", ours_ns,
           (double) our_sum / (10e6 * ROUNDS * N_REQUESTS));
  g_print ("  libxcvt  %8.1f ns  (mean clock %.3f MHz)\n", xcvt_ns,
           (double) xcvt_sum / (10e6 * ROUNDS * N_REQUESTS));
  g_print ("  ratio    %8.2f     with texts\n", ours_ns / xcvt_ns);
  g_print ("  timing   %8.1f ns\n", figures_ns);
  g_print ("  ratio    %8.2f     timing alone (goal at most 1.0, aim 0.5)\n", figures_ns / xcvt_ns);
  g_assert_cmpint (figures_sum, ==, our_sum);
  return 0;
}
