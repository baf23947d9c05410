/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include <glib/gi18n-lib.h>

#include "preview-private.h"

/* The picture itself, at the place and the size at which the screen would show it. */

#define STEPS 1024

static double
share_weight (double x, gconstpointer user_data)
{
  double half = *(const double *) user_data / 2;
  return MAX (0, MIN (x + 0.5, half) - MAX (x - 0.5, -half));
}

/* The mean of what of a picture's row or column lies in each pixel of the preview. */
static void
share_out (BwResampler *resampler, int n, int n_in, double scan_m, double scan_start_m,
           double start_m, double pixel_m)
{
  double unit_m = scan_m / n_in, pixels = pixel_m / unit_m;
  bw_resampler_init (resampler, n, n_in, (start_m + pixel_m / 2 - scan_start_m) / unit_m - 0.5,
                     pixels, pixels / 2 + 0.5, share_weight, &pixels);
}

static void
set_curve (const BwPreview *preview, float *curve)
{
  double gamma = preview->gamma > 0 ? preview->gamma : BW_PREVIEW_GAMMA;

  for (int i = 0; i <= STEPS; i++)
    curve[i] = (float) pow ((double) i / STEPS, gamma);
  curve[STEPS + 1] = curve[STEPS];
}

static void
row_to_light (const float *curve, const float *from, float *row, int n)
{
  for (int i = 0; i < n; i++)
    {
      float place = CLAMP (from[i] * STEPS, 0.0f, (float) STEPS);
      int step = (int) place;
      row[i] = curve[step] + (place - (float) step) * (curve[step + 1] - curve[step]);
    }
}

typedef struct
{
  BwPreviewPlan plan;
  BwResampler across;
  BwResampler down;
  float curve[STEPS + 2];
  float *row;     /* of the picture in light */
  float *columns; /* of the preview, from one row of the picture */
  int made;       /* that row, or -1 */
} Untouched;

static void
untouched_init (Untouched *it, const BwPreview *preview)
{
  bw_preview_plan_glass (&it->plan, preview);
  double scan_height_m = it->plan.line_pitch_m * preview->what->active_lines;

  share_out (&it->across, preview->width, preview->picture->width, it->plan.scan_width_m,
             it->plan.scan_left_m, it->plan.left_m, it->plan.pixel_m);
  share_out (&it->down, preview->height, preview->picture->height, scan_height_m,
             it->plan.scan_top_m, it->plan.top_m, it->plan.pixel_m);
  set_curve (preview, it->curve);
  it->row = g_new0 (float, preview->picture->width + 8);
  it->columns = g_new0 (float, preview->width);
}

static void
untouched_clear (Untouched *it)
{
  bw_resampler_clear (&it->across);
  bw_resampler_clear (&it->down);
  g_free (it->row);
  g_free (it->columns);
}

static void
add_picture_row (Untouched *it, int colour, int from, float weight, float *out)
{
  const BwPreview *preview = it->plan.preview;
  const BwPlanes *picture = preview->picture;

  if (it->made != from)
    {
      row_to_light (it->curve, picture->at[colour] + (gsize) from * (gsize) picture->width,
                    it->row, picture->width);
      bw_resampler_apply (&it->across, it->row, it->columns);
      it->made = from;
    }
  for (int x = 0; x < preview->width; x++)
    out[x] += weight * it->columns[x];
}

static void
untouched_row (Untouched *it, int colour, int y, float *out)
{
  const BwPreviewPlan *plan = &it->plan;
  const float *weights = it->down.weights + (gsize) y * (gsize) it->down.taps;
  double y_m = plan->top_m + (y + 0.5) * plan->pixel_m;

  if (y_m < 0 || y_m > plan->height_m)
    return;
  for (int t = 0; t < it->down.taps; t++)
    if (weights[t] > 0)
      add_picture_row (it, colour, it->down.first[y] + t, weights[t], out);
  for (int x = 0; x < plan->preview->width; x++)
    {
      double x_m = plan->left_m + (x + 0.5) * plan->pixel_m;
      if (x_m < 0 || x_m > plan->width_m)
        out[x] = 0;
    }
}

/**
 * bw_preview_untouched:
 * @cancellable: (nullable): looked at after every row
 *
 * The crop of the picture itself, to be shown beside bw_preview_screen(): its pixels flat, its
 * signal turned to light by the same gamma.
 *
 * Returns: (transfer full) (nullable): linear light; %NULL with @error as bw_preview_screen()
 */
BwPlanes *
bw_preview_untouched (const BwPreview *preview, GCancellable *cancellable, GError **error)
{
  g_return_val_if_fail (preview != NULL, NULL);
  Untouched it;
  gboolean cancelled = FALSE;

  if (!bw_preview_check (preview, error))
    return NULL;
  untouched_init (&it, preview);
  g_autoptr (BwPlanes) out = bw_planes_new (preview->width, preview->height);
  for (int colour = 0; colour < 3 && !cancelled; colour++)
    {
      it.made = -1;
      for (int y = 0; y < out->height && !cancelled; y++)
        {
          untouched_row (&it, colour, y, out->at[colour] + (gsize) y * (gsize) out->width);
          cancelled = g_cancellable_set_error_if_cancelled (cancellable, error);
        }
    }
  untouched_clear (&it);
  return cancelled ? NULL : g_steal_pointer (&out);
}

/**
 * bw_preview_signal:
 * @start_m: (out): place of the first value, from the left edge of the viewable area
 * @step_m: (out): from one value to the next
 * @first_line: (out): of the frame
 *
 * What drives the tube in each line that the crop of @preview needs: a row of R'G'B' for each line,
 * with values to spare at both ends, of which the outermost are not sound.
 *
 * Returns: (transfer full) (nullable): the rows; %NULL with @error in %BW_PREVIEW_ERROR
 */
BwPlanes *
bw_preview_signal (const BwPreview *preview, double *start_m, double *step_m, int *first_line,
                   GError **error)
{
  g_return_val_if_fail (preview != NULL && start_m != NULL, NULL);
  g_return_val_if_fail (step_m != NULL && first_line != NULL, NULL);
  BwPreviewPlan plan;

  if (!bw_preview_check (preview, error))
    return NULL;
  bw_preview_plan_glass (&plan, preview);
  g_autoptr (BwPreviewPath) path = bw_preview_path_new (&plan, 0);
  if (plan.n > BW_PREVIEW_MAX_SIDE || plan.n_lines < 1)
    {
      g_set_error_literal (error, BW_PREVIEW_ERROR, BW_PREVIEW_ERROR_SIZE,
                           _ ("The crop has no lines, or more of them than can be held"));
      return NULL;
    }
  BwPlanes *out = bw_planes_new (plan.n, plan.n_lines);
  for (int line = 0; line < plan.n_lines; line++)
    {
      gsize place = (gsize) line * (gsize) plan.n;
      float *rows[3] = { out->at[0] + place, out->at[1] + place, out->at[2] + place };
      bw_preview_path_line (path, plan.first_line + line, rows);
    }
  *start_m = plan.start_m;
  *step_m = plan.step_m;
  *first_line = plan.first_line;
  return out;
}
