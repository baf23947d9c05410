/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "preview-private.h"

#define SPOT_STEPS 3.0    /* values of the grid to a spot: beyond 3 / width it has no light */
#define SAMPLE_STEPS 2.0  /* to a sample of a source that holds them */
#define CYCLE_STEPS 4.0   /* to the shortest cycle where it does not: the gamma doubles it */
#define NOTHING 0.002     /* modulation */
#define CARRIER_STEPS 6.0 /* to a cycle of the subcarrier */
#define PIXEL_STEPS 8.0   /* to a pixel of the preview there need be no more */
#define UNKNOWN_SPOT 1.5  /* line pitches: such lines run together */

/**
 * bw_gaussian_weight:
 * @width: full width at half of the peak
 *
 * Returns: a Gaussian of area 1 at @x
 */
double
bw_gaussian_weight (double x, double width)
{
  double sigma = width / (2 * sqrt (2 * G_LN2));
  return exp (-x * x / (2 * sigma * sigma)) / (sigma * sqrt (2 * G_PI));
}

static void
place_glass (BwPreviewPlan *plan)
{
  const BwDetailCase *what = plan->what;
  BwDetail detail;

  bw_detail_compute (what, &detail);
  plan->height_m = detail.height_m;
  plan->width_m = detail.width_m;
  plan->line_pitch_m = detail.line_pitch_m;
  plan->column_pitch_m = detail.pitch_h_m;
  plan->scan_width_m = plan->width_m / (1 - what->overscan_h);
  plan->scan_left_m = (plan->width_m - plan->scan_width_m) / 2;
  plan->scan_top_m = (plan->height_m - plan->line_pitch_m * what->active_lines) / 2;
  plan->lines = (int) ceil (what->active_lines - 1e-6);
}

static void
place_crop (BwPreviewPlan *plan)
{
  const BwPreview *preview = plan->preview;

  plan->pixel_m = 1 / preview->pixels_per_m;
  plan->left_m = preview->centre_x * plan->width_m - preview->width * plan->pixel_m / 2;
  plan->top_m = preview->centre_y * plan->height_m - preview->height * plan->pixel_m / 2;
}

/* A spot that is not known adds nothing along the line; down the screen it fills the lines. */
static void
size_spot (BwPreviewPlan *plan)
{
  double least_m = BW_PREVIEW_SPOT_PIXELS * plan->pixel_m, spot_m = plan->what->spot_m;

  plan->spot_m = MAX (spot_m, least_m);
  plan->spot_pixel_m = spot_m < least_m ? sqrt (least_m * least_m - spot_m * spot_m) : 0;
  plan->spot_v_m = MAX (spot_m > 0 ? spot_m : UNKNOWN_SPOT * plan->line_pitch_m, least_m);
}

static void
choose_lines (BwPreviewPlan *plan)
{
  double bottom_m = plan->top_m + plan->preview->height * plan->pixel_m;
  double reach_m = 2 * plan->spot_v_m;
  double first = (plan->top_m - reach_m - plan->scan_top_m) / plan->line_pitch_m - 0.5;
  double last = (bottom_m + reach_m - plan->scan_top_m) / plan->line_pitch_m - 0.5;

  plan->first_line = (int) CLAMP (ceil (first), 0, plan->lines);
  plan->n_lines = (int) CLAMP (floor (last) + 1, plan->first_line, plan->lines) - plan->first_line;
}

/* The highest frequency of the picture that comes through to the tube. */
static double
highest_per_m (const BwPreviewPlan *plan)
{
  double frequency_per_m = plan->preview->picture->width / (2 * plan->scan_width_m);
  guint links = BW_BIT (BW_LINK_SOURCE) | BW_BIT (BW_LINK_SIGNAL) | BW_BIT (BW_LINK_LEAD)
                | BW_BIT (BW_LINK_AMPLIFIER);

  while (frequency_per_m > 1 / plan->scan_width_m
         && bw_preview_mtf (plan, links, frequency_per_m) < NOTHING)
    frequency_per_m *= 0.95;
  return frequency_per_m;
}

static void
choose_step (BwPreviewPlan *plan)
{
  double source_m = plan->held ? plan->scan_width_m / (plan->what->samples * SAMPLE_STEPS)
                               : 1 / (highest_per_m (plan) * CYCLE_STEPS);

  plan->step_m = MAX (MIN (plan->spot_m / SPOT_STEPS, source_m), plan->pixel_m / PIXEL_STEPS);
  if (plan->carrier_per_m > 0)
    plan->step_m = MIN (plan->step_m, 1 / (CARRIER_STEPS * plan->carrier_per_m));
}

/**
 * bw_preview_plan_glass:
 * @plan: (out caller-allocates): all but the extent of the grid, which the path decides
 * @preview: sound, see bw_preview_check()
 */
void
bw_preview_plan_glass (BwPreviewPlan *plan, const BwPreview *preview)
{
  *plan = (BwPreviewPlan){ .preview = preview, .what = preview->what };
  plan->held = plan->what->samples > 0 && !(plan->what->detail_hz > 0);
  place_glass (plan);
  place_crop (plan);
  size_spot (plan);
  choose_lines (plan);
  bw_preview_plan_coding (plan);
  choose_step (plan);
}

/**
 * bw_preview_mtf:
 * @links: set of BwDetailLink
 *
 * Returns: the product of the MTF of @links at a frequency on the glass
 */
double
bw_preview_mtf (const BwPreviewPlan *plan, guint links, double cycles_per_m)
{
  double product = 1;

  for (guint link = 0; link < BW_N_LINKS; link++)
    if (links & BW_BIT (link))
      product *= bw_detail_link_mtf (plan->what, link, 2 * cycles_per_m * plan->height_m);
  return product;
}

/**
 * bw_preview_line_place_m:
 *
 * Returns: where the middle of @line of the frame is, from the top of the viewable area
 */
double
bw_preview_line_place_m (const BwPreviewPlan *plan, int line)
{
  return plan->scan_top_m + (line + 0.5) * plan->line_pitch_m;
}
