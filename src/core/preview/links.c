/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "preview-private.h"

/* What each part of the path lets by. Luma, and R, G and B, pass a kernel that has the very MTF of
 * the links source, signal, lead and amplifier. Chroma is band-limited where it is encoded and
 * again where it is decoded; the set's colour control holds its level, so that the lead's loss at
 * the subcarrier does not count. */

/* A Gaussian low pass: less than 3 dB at 1.3 MHz and more than 20 dB at 3.6 MHz, as SMPTE 170M
 * clause 7 and ITU-R BT.470-6 item 2.6 ask. That a decoder has the same is common practice. */
#define CHROMA_HZ 1.3e6
#define CHROMA_DB 2.8

#define CHROMA_PASS 0.8 /* of the subcarrier on each side: a decoder lets nothing by at zero */
#define HALF_BAND 2     /* colour differences of component (ITU-R BT.601, BT.709: 4:2:2) */

#define SIGNAL_LINKS (BW_BIT (BW_LINK_SIGNAL) | BW_BIT (BW_LINK_LEAD) | BW_BIT (BW_LINK_AMPLIFIER))

static double
sinc (double x)
{
  return fabs (x) > 0 ? sin (G_PI * x) / (G_PI * x) : 1;
}

/* The source's link, @times as fast. A source that holds its samples has by that the MTF
 * sinc (f × sample); the mean over a step of the grid is put right as well. What holding leaves
 * above half of the sample rate fares as what is just below it. */
static double
source_response (const BwPreviewPlan *plan, double cycles_per_m, double times)
{
  double sample_m = plan->held ? plan->scan_width_m / plan->what->samples : 0;

  if (!plan->held)
    return bw_preview_mtf (plan, BW_BIT (BW_LINK_SOURCE), times * cycles_per_m);
  double in_band = MIN (cycles_per_m, (1 - 1e-9) / (2 * sample_m));
  return bw_preview_mtf (plan, BW_BIT (BW_LINK_SOURCE), times * in_band)
         / (sinc (in_band * sample_m) * sinc (cycles_per_m * plan->step_m));
}

/* The phase of a resonant circuit turns over at its resonance: beyond the trap luma is inverted. */
static double
luma_response (double cycles_per_m, gconstpointer user_data)
{
  const BwPreviewPlan *plan = user_data;
  gboolean trapped = plan->coding == BW_SIGNAL_COMPOSITE && plan->comb == 0;
  double sign = trapped && cycles_per_m > plan->carrier_per_m ? -1 : 1;

  return sign * bw_preview_mtf (plan, SIGNAL_LINKS, cycles_per_m)
         * source_response (plan, cycles_per_m, 1);
}

static double
half_band_response (double cycles_per_m, gconstpointer user_data)
{
  return bw_preview_mtf (user_data, SIGNAL_LINKS, cycles_per_m)
         * source_response (user_data, cycles_per_m, HALF_BAND);
}

static double
chroma_mtf (const BwPreviewPlan *plan, double cycles_per_m)
{
  double frequency_hz = fabs (cycles_per_m) * plan->scan_width_m / plan->what->active_s;
  double ratio = frequency_hz / CHROMA_HZ;
  return pow (10, -CHROMA_DB / 20 * ratio * ratio);
}

static double
encoder_response (double cycles_per_m, gconstpointer user_data)
{
  return chroma_mtf (user_data, cycles_per_m);
}

/* 1 below @from, 0 above @to. */
static double
fall (double x, double from, double to)
{
  return x <= from ? 1 : x >= to ? 0 : 0.5 + 0.5 * cos (G_PI * (x - from) / (to - from));
}

static double
chroma_pass_response (double cycles_per_m, gconstpointer user_data)
{
  const BwPreviewPlan *plan = user_data;
  double off_per_m = fabs (cycles_per_m - plan->carrier_per_m);
  return chroma_mtf (plan, off_per_m)
         * fall (off_per_m / plan->carrier_per_m, CHROMA_PASS / 2, CHROMA_PASS);
}

/* After the demodulator: all but what lies at twice the subcarrier; in Y/C, the decoder's limit. */
static double
decoder_response (double cycles_per_m, gconstpointer user_data)
{
  const BwPreviewPlan *plan = user_data;
  double amplifier = bw_preview_mtf (plan, BW_BIT (BW_LINK_AMPLIFIER), cycles_per_m);

  if (plan->coding == BW_SIGNAL_COMPOSITE)
    return amplifier * fall (cycles_per_m / plan->carrier_per_m, CHROMA_PASS, 2 - CHROMA_PASS);
  return amplifier * chroma_mtf (plan, cycles_per_m);
}

/**
 * bw_path_kernels_init:
 *
 * The kernels that the coding of @plan needs; the others stay empty. Free them with
 * bw_path_kernels_clear().
 */
void
bw_path_kernels_init (BwPathKernels *kernels, const BwPreviewPlan *plan)
{
  *kernels = (BwPathKernels){ { 0 } };
  bw_kernel_init (&kernels->luma, plan->step_m, luma_response, plan);
  if (plan->coding == BW_SIGNAL_COMPONENT)
    bw_kernel_init (&kernels->difference, plan->step_m, half_band_response, plan);
  if (plan->coding == BW_SIGNAL_YC || plan->coding == BW_SIGNAL_COMPOSITE)
    {
      bw_kernel_init (&kernels->encoder, plan->step_m, encoder_response, plan);
      bw_kernel_init (&kernels->difference, plan->step_m, decoder_response, plan);
    }
  if (plan->coding == BW_SIGNAL_COMPOSITE)
    bw_kernel_init (&kernels->chroma_pass, plan->step_m, chroma_pass_response, plan);
}

void
bw_path_kernels_clear (BwPathKernels *kernels)
{
  bw_kernel_clear (&kernels->luma);
  bw_kernel_clear (&kernels->difference);
  bw_kernel_clear (&kernels->encoder);
  bw_kernel_clear (&kernels->chroma_pass);
}

/**
 * bw_path_kernels_margin:
 *
 * Returns: values of the grid by which an end of a line is felt
 */
int
bw_path_kernels_margin (const BwPathKernels *kernels)
{
  return kernels->encoder.half + kernels->chroma_pass.half
         + MAX (kernels->luma.half, kernels->difference.half);
}
