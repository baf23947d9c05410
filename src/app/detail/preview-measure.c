/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "preview-measure.h"

#include <math.h>

#define LEAST_CYCLES 4.0
#define LEAST_LINES 4.0
#define EDGE_LINES 3.0 /* at the top and bottom of a burst, which the neighbours reach into */
#define EVEN_LINES 4.0 /* after which the dots of composite repeat, as nearly as matters */
#define LEAST_KEPT 0.3 /* by a spot that is drawn wider than it is */
#define GAMMA_STEPS 256

/* Pixels of a preview; fractions count at the top and the bottom. */
typedef struct
{
  int left;
  int right;
  double top;
  double bottom;
} Part;

/* The amplitude in light of a burst that nothing touches: a sine of signal through the gamma. */
static double
whole_amplitude (const BwPreview *preview)
{
  double gamma = preview->gamma > 0 ? preview->gamma : BW_PREVIEW_GAMMA, sum = 0;

  for (int i = 0; i < GAMMA_STEPS; i++)
    {
      double sine = sin (2 * G_PI * (i + 0.5) / GAMMA_STEPS);
      sum += sine * pow (BW_TEST_MEAN + BW_TEST_SWING * sine, gamma);
    }
  return 2 * sum / GAMMA_STEPS;
}

/* The part of the burst in @box that the preview shows. */
static Part
part_of (const BwPreview *preview, const BwDetail *detail, const BwTestFrame *frame,
         const BwBox *box)
{
  double scale = preview->pixels_per_m, line = detail->line_pitch_m * scale;
  double across = detail->width_m * scale / frame->seen.width;
  double down = detail->height_m * scale / frame->seen.height;
  double left = preview->centre_x * detail->width_m * scale - preview->width / 2.0;
  double top = preview->centre_y * detail->height_m * scale - preview->height / 2.0;
  double x = (box->x - frame->seen.x) * across - left;
  double y = (box->y - frame->seen.y) * down - top;
  Part part = { (int) MAX (ceil (x), 0),
                (int) MIN (floor (x + box->width * across), preview->width),
                MAX (y + EDGE_LINES * line, 0),
                MIN (y + box->height * down - EDGE_LINES * line, preview->height) };
  double lines = floor ((part.bottom - part.top) / line);

  if (lines > EVEN_LINES)
    lines -= fmod (lines, EVEN_LINES);
  part.bottom = part.top + lines * line;
  return part;
}

/* The mean of the colours in a column of pixels, over a whole number of lines. */
static double
column_mean (const BwPlanes *light, const Part *part, int x)
{
  double sum = 0;

  for (int y = (int) part->top; y < part->bottom; y++)
    {
      double share = MIN (y + 1, part->bottom) - MAX (y, part->top);
      for (int i = 0; i < 3; i++)
        sum += share * (double) light->at[i][(gsize) y * (gsize) light->width + (gsize) x];
    }
  return sum / (3 * (part->bottom - part->top));
}

/* Fits a sine of @cycles a pixel under a Hann window, so that where the part ends does not
 * matter. */
static double
fit (const BwPlanes *light, const Part *part, double cycles)
{
  int n = part->right - part->left;
  g_autofree double *values = g_new (double, n);
  double mean = 0, weights = 0, real = 0, imaginary = 0;

  for (int i = 0; i < n; i++)
    {
      double weight = 1 - cos (2 * G_PI * (i + 0.5) / n);
      values[i] = column_mean (light, part, part->left + i);
      mean += weight * values[i];
      weights += weight;
    }
  mean /= weights;
  for (int i = 0; i < n; i++)
    {
      double value = (1 - cos (2 * G_PI * (i + 0.5) / n)) * (values[i] - mean);
      real += value * cos (2 * G_PI * cycles * i);
      imaginary += value * sin (2 * G_PI * cycles * i);
    }
  return 2 * hypot (real, imaginary) / weights;
}

/* The share of modulation that is left when a spot narrower than the pixels is drawn as wide as
 * they can show. */
static double
kept_by_pixels (const BwPreview *preview, double cycles_per_m)
{
  double drawn_m = BW_PREVIEW_SPOT_PIXELS / preview->pixels_per_m, spot_m = preview->what->spot_m;
  return spot_m < drawn_m
             ? bw_gaussian_mtf (sqrt (drawn_m * drawn_m - spot_m * spot_m), cycles_per_m)
             : 1;
}

/**
 * bw_burst_measure:
 * @preview: sound; of a test picture %BW_TEST_LINES
 * @frame: of that picture
 * @light: what bw_preview_screen() made of it
 * @modulation: (out): the amplitude of a sine fitted to the light of the burst, divided by that of
 *   the picture, and by what the pixels leave where the spot is narrower than they are:
 *   bw_detail_mtf() but for what the gamma adds, less than a hundredth
 *
 * Returns: whether it could be measured, or why not
 */
BwBurstState
bw_burst_measure (const BwPreview *preview, const BwTestFrame *frame, const BwPlanes *light,
                  guint burst, double *modulation)
{
  BwDetail detail;
  BwBox box;

  bw_detail_compute (preview->what, &detail);
  if (!bw_test_burst_box (frame, burst, &box))
    return BW_BURST_ABSENT;
  double cycles_per_m = bw_test_burst_tvl[burst] / (2 * detail.height_m);
  double cycles = cycles_per_m / preview->pixels_per_m;
  Part part = part_of (preview, &detail, frame, &box);
  double lines = (part.bottom - part.top) / (detail.line_pitch_m * preview->pixels_per_m);
  double kept = kept_by_pixels (preview, cycles_per_m);
  if (kept < LEAST_KEPT)
    return BW_BURST_TOO_FINE;
  if ((part.right - part.left) * cycles < LEAST_CYCLES || lines < LEAST_LINES - 0.5)
    return BW_BURST_OUTSIDE;
  *modulation = fit (light, &part, cycles) / (whole_amplitude (preview) * kept);
  return BW_BURST_MEASURED;
}
