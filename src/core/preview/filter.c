/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "preview-private.h"

#include <math.h>
#include <string.h>

#define FREQUENCIES 1024   /* from zero to half the grid's own frequency */
#define HALF_MAX 512       /* taps on each side */
#define RESPONSE_OFF 0.006 /* by how much the response may be off, at any frequency */
#define BLOCK 16           /* values made at once */

/* Four values that the processor treats as one. */
typedef float Four __attribute__ ((vector_size (16)));

/* Lengths that are tried, from the shortest. */
static const int halves[] = { 0, 4, 8, 12, 16, 24, 32, 48, 64, 96, 128, 192, 256, 384, HALF_MAX };

/* cos (π·i/FREQUENCIES) of one period. */
static void
set_cosines (double *cosines)
{
  for (int i = 0; i < 2 * FREQUENCIES; i++)
    cosines[i] = cos (G_PI * i / FREQUENCIES);
}

/* Inverse transform of an even response: tap j is the mean over all frequencies of response ×
 * cos, by the trapezium rule from zero to the Nyquist frequency. */
static void
transform (const double *cosines, const double *responses, double *taps)
{
  for (int j = 0; j <= HALF_MAX; j++)
    {
      double last = responses[FREQUENCIES] * cosines[j * FREQUENCIES % (2 * FREQUENCIES)];
      double sum = (responses[0] + last) / 2;
      for (int i = 1; i < FREQUENCIES; i++)
        sum += responses[i] * cosines[i * j % (2 * FREQUENCIES)];
      taps[j] = sum / FREQUENCIES;
    }
}

/* What a cut kernel lacks of the level of a flat field is spread over its length, so that only the
 * lowest frequencies are touched. */
static void
cut (const double *taps, int half, double level, double *cut_taps)
{
  double lacking = level - taps[0];

  for (int j = 1; j <= half; j++)
    lacking -= 2 * taps[j];
  for (int j = 0; j <= half; j++)
    cut_taps[j] = taps[j] + lacking / (half + 1) * 0.5 * (1 + cos (G_PI * j / (half + 1)));
}

static double
response_of (const double *cosines, const double *taps, int half, int frequency)
{
  double sum = taps[0];

  for (int j = 1; j <= half; j++)
    sum += 2 * taps[j] * cosines[frequency * j % (2 * FREQUENCIES)];
  return sum;
}

static gboolean
is_near (const double *cosines, const double *responses, const double *taps, int half)
{
  for (int i = 0; i <= FREQUENCIES; i++)
    if (fabs (response_of (cosines, taps, half, i) - responses[i]) > RESPONSE_OFF)
      return FALSE;
  return TRUE;
}

/**
 * bw_kernel_init:
 * @step_m: of the grid that it is for
 * @response: even, real: no link shifts the picture
 *
 * Makes the kernel whose transform is @response. Free what it holds with bw_kernel_clear().
 */
void
bw_kernel_init (BwKernel *kernel, double step_m, BwResponse response, gconstpointer user_data)
{
  double cosines[2 * FREQUENCIES], responses[FREQUENCIES + 1];
  double taps[HALF_MAX + 1], cut_taps[HALF_MAX + 1];
  guint low = 0, high = G_N_ELEMENTS (halves) - 1;

  set_cosines (cosines);
  for (int f = 0; f <= FREQUENCIES; f++)
    responses[f] = response (f / (2 * step_m * FREQUENCIES), user_data);
  transform (cosines, responses, taps);
  while (low < high)
    {
      guint middle = (low + high) / 2;
      cut (taps, halves[middle], responses[0], cut_taps);
      if (is_near (cosines, responses, cut_taps, halves[middle]))
        high = middle;
      else
        low = middle + 1;
    }
  int half = halves[low];
  cut (taps, half, responses[0], cut_taps);

  kernel->half = half;
  kernel->taps = g_new (float, 2 * half + 1);
  for (int j = 0; j <= half; j++)
    kernel->taps[half - j] = kernel->taps[half + j] = (float) cut_taps[j];
}

void
bw_kernel_clear (BwKernel *kernel)
{
  g_clear_pointer (&kernel->taps, g_free);
}

static inline Four
load (const float *from)
{
  Four four;
  memcpy (&four, from, sizeof four);
  return four;
}

static void
filter_block (const BwKernel *kernel, const float *in, float *out)
{
  Four a = { 0 }, b = { 0 }, c = { 0 }, d = { 0 };

  for (int k = 0; k <= 2 * kernel->half; k++)
    {
      float tap = kernel->taps[k];
      a += tap * load (in + k);
      b += tap * load (in + k + 4);
      c += tap * load (in + k + 8);
      d += tap * load (in + k + 12);
    }
  memcpy (out, &a, sizeof a);
  memcpy (out + 4, &b, sizeof b);
  memcpy (out + 8, &c, sizeof c);
  memcpy (out + 12, &d, sizeof d);
}

/**
 * bw_kernel_apply:
 * @in: @n values
 * @out: @n values, not the same as @in; those nearer than the kernel's half to an end are zero
 */
void
bw_kernel_apply (const BwKernel *kernel, const float *in, float *out, int n)
{
  int half = kernel->half, last = n - 2 * half, i = 0;

  memset (out, 0, (gsize) n * sizeof *out);
  if (half == 0)
    {
      for (; i < n; i++)
        out[i] = kernel->taps[0] * in[i];
      return;
    }
  for (; i + BLOCK <= last; i += BLOCK)
    filter_block (kernel, in + i, out + half + i);
  for (; i < last; i++)
    {
      float sum = 0;
      for (int k = 0; k <= 2 * half; k++)
        sum += kernel->taps[k] * in[i + k];
      out[half + i] = sum;
    }
}

/* The weights of one value, which add up to 1. What would be read beyond an end is read at it. */
static void
set_weights (BwResampler *resampler, int i, int n_in, double place, double reach, BwWeight weight,
             gconstpointer user_data)
{
  float *weights = resampler->weights + (gsize) i * (gsize) resampler->taps;
  int low = (int) ceil (place - reach), high = (int) floor (place + reach);
  int first = CLAMP (low, 0, MAX (0, n_in - resampler->taps));
  double sum = 0;

  resampler->first[i] = first;
  for (int j = low; j <= high; j++)
    sum += weight (j - place, user_data);
  for (int j = low; j <= high && sum > 1e-12; j++)
    weights[CLAMP (j, 0, n_in - 1) - first] += (float) (weight (j - place, user_data) / sum);
}

/**
 * bw_resampler_init:
 * @n: values to make
 * @n_in: values that are there
 * @start: place of the first value made, in steps of the input, whose first value is at 0
 * @step: from each value made to the next
 * @reach: beyond which @weight is zero
 *
 * Prepares to read a row at other places. Free what it holds with bw_resampler_clear(). Rows read
 * must be followed by 8 values more, which count for nothing.
 */
void
bw_resampler_init (BwResampler *resampler, int n, int n_in, double start, double step,
                   double reach, BwWeight weight, gconstpointer user_data)
{
  resampler->n = n;
  resampler->taps = (MIN ((int) (2 * reach) + 2, n_in) + 7) / 8 * 8;
  resampler->first = g_new (int, n);
  resampler->weights = g_new0 (float, (gsize) n * (gsize) resampler->taps);
  for (int i = 0; i < n; i++)
    {
      double place = start + i * step;
      /* far outside all is the end's own value */
      set_weights (resampler, i, n_in, CLAMP (place, -reach, n_in - 1 + reach), reach, weight,
                   user_data);
    }
}

void
bw_resampler_clear (BwResampler *resampler)
{
  g_clear_pointer (&resampler->first, g_free);
  g_clear_pointer (&resampler->weights, g_free);
}

void
bw_resampler_apply (const BwResampler *resampler, const float *in, float *out)
{
  for (int i = 0; i < resampler->n; i++)
    {
      const float *weights = resampler->weights + (gsize) i * (gsize) resampler->taps;
      const float *from = in + resampler->first[i];
      Four even = { 0 }, odd = { 0 };

      for (int t = 0; t < resampler->taps; t += 8)
        {
          even += load (weights + t) * load (from + t);
          odd += load (weights + t + 4) * load (from + t + 4);
        }
      even += odd;
      out[i] = (even[0] + even[2]) + (even[1] + even[3]);
    }
}
