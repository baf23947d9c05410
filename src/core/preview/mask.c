/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>

#include "preview-private.h"

/* The mask to scale, as shares of each pixel's area that lie on phosphor of a colour, times what
 * makes the mean 1. The pitch is that of the case; what no data sheet gives (how much of the pitch
 * is phosphor, how high a slot is) is common practice, no source. Columns count from the left edge
 * of the viewable area. Below two pixels to a column the mask is averaged out; up to three it
 * fades in. */

#define STRIPE 0.30      /* width of a stripe, of the column pitch */
#define SLOT_PITCH 1.0   /* height of a slot with its bridge, of the column pitch */
#define SLOT_OPEN 0.88   /* share of it that is not bridge */
#define DOT_RADIUS 0.47  /* of the distance between neighbouring dots of any colour */
#define FADE_FROM 2.0    /* pixels to a column */
#define FADE_TO 3.0

struct _BwPreviewMask
{
  const BwPreviewPlan *plan;
  double weight;     /* of the mask against none */
  float *columns[2]; /* coverage of the stripes in even and in odd columns; red, green, blue */
  float *row;
};

static gboolean
has_mask (const BwPreviewPlan *plan)
{
  return plan->what->mask != BW_MASK_MONO && plan->column_pitch_m > 0;
}

static double
weight_of (const BwPreviewPlan *plan)
{
  double pixels = plan->column_pitch_m / plan->pixel_m;
  double along = CLAMP ((pixels - FADE_FROM) / (FADE_TO - FADE_FROM), 0, 1);
  return has_mask (plan) ? along * along * (3 - 2 * along) : 0;
}

/* Length of bars of width @bar, one from each multiple of @period on, between zero and @x. */
static double
bars_before (double x, double period, double bar)
{
  double whole = floor (x / period);
  return whole * bar + MIN (x - whole * period, bar);
}

static double
bars_share (double low, double size, double period, double bar)
{
  return (bars_before (low + size, period, bar) - bars_before (low, period, bar)) / size;
}

/* Stripes of a colour in the even or the odd columns: a bar every two columns. */
static void
set_columns (BwPreviewMask *mask, int parity)
{
  const BwPreviewPlan *plan = mask->plan;
  double pitch_m = plan->column_pitch_m;

  for (int colour = 0; colour < 3; colour++)
    for (int x = 0; x < plan->preview->width; x++)
      {
        double stripe_m = pitch_m * (parity + (colour + 0.5) / 3 - STRIPE / 2);
        double low_m = plan->left_m + x * plan->pixel_m - stripe_m;
        mask->columns[parity][colour * plan->preview->width + x]
            = (float) bars_share (low_m, plan->pixel_m, 2 * pitch_m, STRIPE * pitch_m);
      }
}

/**
 * bw_preview_mask_new:
 * @plan: borrowed
 *
 * Returns: (transfer full): the mask over the crop of @plan
 */
BwPreviewMask *
bw_preview_mask_new (const BwPreviewPlan *plan)
{
  BwPreviewMask *mask = g_new0 (BwPreviewMask, 1);

  mask->plan = plan;
  mask->weight = weight_of (plan);
  mask->row = g_new (float, plan->preview->width);
  for (int parity = 0; parity < 2 && mask->weight > 0; parity++)
    {
      mask->columns[parity] = g_new (float, 3 * (gsize) plan->preview->width);
      set_columns (mask, parity);
    }
  return mask;
}

void
bw_preview_mask_free (BwPreviewMask *mask)
{
  if (mask == NULL)
    return;
  g_free (mask->columns[0]);
  g_free (mask->columns[1]);
  g_free (mask->row);
  g_free (mask);
}

/* Stripes in the odd columns start half a slot lower. */
static void
add_stripes (BwPreviewMask *mask, int row, int colour)
{
  const BwPreviewPlan *plan = mask->plan;
  double slot_m = SLOT_PITCH * plan->column_pitch_m;

  for (int parity = 0; parity < 2; parity++)
    {
      const float *column = mask->columns[parity] + colour * plan->preview->width;
      double low_m = plan->top_m + row * plan->pixel_m - parity * slot_m / 2;
      double open = plan->what->mask == BW_MASK_SLOT
                        ? bars_share (low_m, plan->pixel_m, slot_m, SLOT_OPEN * slot_m) / SLOT_OPEN
                        : 1;
      float share = (float) (open / STRIPE);
      for (int x = 0; x < plan->preview->width; x++)
        mask->row[x] += share * column[x];
    }
}

/* A dot's edge is taken as straight within a pixel: the whole is then larger by π/12 pixels. */
static void
add_dot (BwPreviewMask *mask, double x_m, double off_m, double radius_m, float light)
{
  const BwPreviewPlan *plan = mask->plan;
  double reach_m = radius_m + plan->pixel_m / 2;
  int first = (int) MAX (floor ((x_m - reach_m - plan->left_m) / plan->pixel_m), 0);
  int last = (int) MIN (ceil ((x_m + reach_m - plan->left_m) / plan->pixel_m),
                        plan->preview->width - 1);

  for (int x = first; x <= last; x++)
    {
      double across_m = plan->left_m + (x + 0.5) * plan->pixel_m - x_m;
      double distance_m = sqrt (across_m * across_m + off_m * off_m);
      double share = (radius_m - distance_m) / plan->pixel_m + 0.5;
      mask->row[x] += light * (float) CLAMP (share, 0, 1);
    }
}

/* Dots of one colour lie @pitch apart in a column, the next column being half of that lower and
 * √3/2 of it further: a triangle of which green and blue have the middles. */
static void
add_dots (BwPreviewMask *mask, int row, int colour)
{
  const BwPreviewPlan *plan = mask->plan;
  double column_m = plan->column_pitch_m, pitch_m = column_m * 2 / sqrt (3);
  double radius_m = DOT_RADIUS * pitch_m / sqrt (3);
  double area_m2 = G_PI * (radius_m * radius_m + plan->pixel_m * plan->pixel_m / 12);
  float light = (float) (column_m * pitch_m / area_m2);
  double y_m = plan->top_m + (row + 0.5) * plan->pixel_m;
  double right_m = plan->left_m + plan->preview->width * plan->pixel_m;
  int first = (int) floor (plan->left_m / column_m) - 2;

  for (int i = first; (i - 1) * column_m <= right_m; i++)
    {
      double shift_m = ((i % 2 != 0) != (colour == 1)) ? pitch_m / 2 : 0;
      double off_m = remainder (y_m - shift_m, pitch_m);
      double x_m = column_m * (i + (colour + 0.5) / 3);
      if (fabs (off_m) <= radius_m + plan->pixel_m / 2)
        add_dot (mask, x_m, off_m, radius_m, light);
    }
}

/**
 * bw_preview_mask_row:
 * @row: of pixels of the preview
 * @colour: 0 red, 1 green, 2 blue
 *
 * Returns: (transfer none) (nullable): what each pixel of the row gives of an even light of 1,
 *   until the next call; %NULL where no mask is drawn
 */
const float *
bw_preview_mask_row (BwPreviewMask *mask, int row, int colour)
{
  float drawn = (float) mask->weight;

  if (mask->weight <= 0)
    return NULL;
  memset (mask->row, 0, (gsize) mask->plan->preview->width * sizeof *mask->row);
  if (mask->plan->what->mask == BW_MASK_DOT)
    add_dots (mask, row, colour);
  else
    add_stripes (mask, row, colour);
  for (int x = 0; x < mask->plan->preview->width && mask->weight < 1; x++)
    mask->row[x] = 1 + drawn * (mask->row[x] - 1);
  return mask->row;
}

/**
 * bw_preview_mask_peak:
 *
 * Returns: the most that bw_preview_mask_row() can give
 */
double
bw_preview_mask_peak (const BwPreviewPlan *plan)
{
  double peak = 1 / STRIPE, weight = weight_of (plan);

  if (plan->what->mask == BW_MASK_SLOT)
    peak /= SLOT_OPEN;
  if (plan->what->mask == BW_MASK_DOT)
    peak = 3 * sqrt (3) / (2 * G_PI * DOT_RADIUS * DOT_RADIUS);
  return 1 + weight * (peak - 1);
}
