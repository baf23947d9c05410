/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>

#include <glib/gi18n-lib.h>

#include "preview-private.h"

G_DEFINE_QUARK (bw-preview-error-quark, bw_preview_error)

#define SCREEN_PIXELS_PER_M (96 / 0.0254)
#define INK_STEPS 4096

/* Beyond these a number is a slip of the pen, and the work would have no end. */
#define ACTIVE_MIN_S 1e-6
#define ACTIVE_MAX_S 1e-3
#define LINES_MAX 8192
#define SAMPLES_MAX 16384
#define DIAGONAL_MIN_M 0.01
#define DIAGONAL_MAX_M 10.0
#define OVERSCAN_MAX 0.5
#define SMALLEST_SHARE 1e-5 /* of the diagonal, for pitch, spot and pixel */
#define GAMMA_MIN 0.5
#define GAMMA_MAX 5.0

/**
 * bw_planes_new:
 * @width: 1 to %BW_PREVIEW_MAX_SIDE
 * @height: likewise
 *
 * Returns: (transfer full): a black picture
 */
BwPlanes *
bw_planes_new (int width, int height)
{
  g_return_val_if_fail (width > 0 && width <= BW_PREVIEW_MAX_SIDE, NULL);
  g_return_val_if_fail (height > 0 && height <= BW_PREVIEW_MAX_SIDE, NULL);
  BwPlanes *planes = g_new0 (BwPlanes, 1);

  planes->width = width;
  planes->height = height;
  for (int i = 0; i < 3; i++)
    planes->at[i] = g_new0 (float, (gsize) width * (gsize) height);
  return planes;
}

void
bw_planes_free (BwPlanes *planes)
{
  if (planes == NULL)
    return;
  for (int i = 0; i < 3; i++)
    g_free (planes->at[i]);
  g_free (planes);
}

/**
 * bw_preview_pixels_per_m:
 * @times: magnification; 1 is life size on a display of 96 pixels to the inch
 *
 * Returns: pixels of the preview to a metre of glass
 */
double
bw_preview_pixels_per_m (double times)
{
  return times * SCREEN_PIXELS_PER_M;
}

/**
 * bw_preview_whole_pixels_per_m:
 * @width: width of the preview in pixels
 * @height: its height in pixels
 *
 * Returns: the scale at which the whole viewable area just fits; zero if the tube is not known
 */
double
bw_preview_whole_pixels_per_m (const BwDetailCase *what, int width, int height)
{
  g_return_val_if_fail (what != NULL, 0);
  BwDetail detail;

  bw_detail_compute (what, &detail);
  return detail.width_m > 0 && detail.height_m > 0
             ? MIN (width / detail.width_m, height / detail.height_m)
             : 0;
}

static gboolean
is_within (double value, double low, double high)
{
  return value >= low && value <= high; /* not so for NaN */
}

static gboolean
fail (GError **error, BwPreviewError code, const char *says)
{
  g_set_error_literal (error, BW_PREVIEW_ERROR, code, says);
  return FALSE;
}

static gboolean
check_size (const BwPreview *preview, GError **error)
{
  const BwPlanes *picture = preview->picture;

  if (preview->width < 1 || preview->height < 1 || preview->width > BW_PREVIEW_MAX_SIDE
      || preview->height > BW_PREVIEW_MAX_SIDE)
    {
      g_set_error (error, BW_PREVIEW_ERROR, BW_PREVIEW_ERROR_SIZE,
                   _ ("A preview of %1$d by %2$d pixels cannot be made; allowed: 1 to %3$d"),
                   preview->width, preview->height, BW_PREVIEW_MAX_SIDE);
      return FALSE;
    }
  if (picture == NULL || picture->width < 1 || picture->height < 1)
    return fail (error, BW_PREVIEW_ERROR_SIZE, _ ("There is no picture to show"));
  return TRUE;
}

static gboolean
check_tube (const BwDetailCase *what, GError **error)
{
  double least_m = what->diagonal_m * SMALLEST_SHARE;

  if (!is_within (what->diagonal_m, DIAGONAL_MIN_M, DIAGONAL_MAX_M)
      || !is_within (bw_ratio_to_double (what->aspect), 0.1, 10))
    return fail (error, BW_PREVIEW_ERROR_TUBE,
                 _ ("A preview needs the diagonal of the tube, 0.01 to 10 m, and its aspect ratio, "
                    "0.1 to 10"));
  if (!is_within (what->overscan_h, 0, OVERSCAN_MAX)
      || !is_within (what->overscan_v, 0, OVERSCAN_MAX))
    return fail (error, BW_PREVIEW_ERROR_TUBE, _ ("A preview needs an overscan of 0 to 50 %"));
  if (what->mask >= BW_N_MASKS || !is_within (what->pitch_m, 0, what->diagonal_m)
      || !is_within (what->spot_m, 0, what->diagonal_m)
      || (what->pitch_m > 0 && what->pitch_m < least_m)
      || (what->spot_m > 0 && what->spot_m < least_m))
    return fail (error, BW_PREVIEW_ERROR_TUBE,
                 _ ("Pitch and spot of the tube must be smaller than its diagonal, and not less "
                    "than a hundred thousandth of it"));
  return TRUE;
}

static gboolean
check_raster (const BwDetailCase *what, GError **error)
{
  if (!is_within (what->active_s, ACTIVE_MIN_S, ACTIVE_MAX_S)
      || !is_within (what->active_lines, 1, LINES_MAX))
    return fail (error, BW_PREVIEW_ERROR_RASTER,
                 _ ("A preview needs a raster: an active line of 1 µs to 1 ms, and 1 to 8192 active "
                    "lines"));
  if (what->samples < 0 || what->samples > SAMPLES_MAX || !is_within (what->detail_hz, 0, 1e12)
      || !is_within (what->bandwidth_hz, 0, 1e12) || !is_within (what->lead_hz, 0, 1e15))
    return fail (error, BW_PREVIEW_ERROR_RASTER,
                 _ ("A preview needs up to 16384 samples in a line, and bandwidths that are not "
                    "negative"));
  if (what->signal >= BW_N_SIGNALS || what->system >= BW_N_SYSTEMS
      || what->filter >= BW_N_LUMA_FILTERS)
    return fail (error, BW_PREVIEW_ERROR_RASTER,
                 _ ("A preview needs a known signal kind and colour system"));
  return TRUE;
}

static gboolean
check_place (const BwPreview *preview, GError **error)
{
  double pixels = preview->pixels_per_m * preview->what->diagonal_m;

  if (!is_within (preview->centre_x, 0, 1) || !is_within (preview->centre_y, 0, 1))
    return fail (error, BW_PREVIEW_ERROR_PLACE,
                 _ ("The middle of a preview must lie on the screen: 0 to 1 of its width and "
                    "height"));
  if (!is_within (pixels, 16, 1 / SMALLEST_SHARE))
    return fail (error, BW_PREVIEW_ERROR_PLACE,
                 _ ("A preview can show 16 to 100000 pixels to the diagonal of the screen"));
  if (!is_within (preview->gamma, 0, 0) && !is_within (preview->gamma, GAMMA_MIN, GAMMA_MAX))
    return fail (error, BW_PREVIEW_ERROR_PLACE, _ ("The gamma of a tube must be 0.5 to 5"));
  return TRUE;
}

/**
 * bw_preview_check:
 *
 * Returns: %FALSE with @error in %BW_PREVIEW_ERROR if @preview cannot be computed
 */
gboolean
bw_preview_check (const BwPreview *preview, GError **error)
{
  g_return_val_if_fail (preview != NULL, FALSE);
  return check_size (preview, error) && check_tube (preview->what, error)
         && check_raster (preview->what, error) && check_place (preview, error);
}

/**
 * bw_preview_exposure:
 * @preview: sound, see bw_preview_check()
 *
 * Phosphor and lines cover a part of the glass, and are the brighter for it: drawn so that the
 * mean stays, white would not fit.
 *
 * Returns: what light must be multiplied by so that the brightest part of white is just shown, 0
 *   to 1
 */
double
bw_preview_exposure (const BwPreview *preview)
{
  BwPreviewPlan plan;

  bw_preview_plan_glass (&plan, preview);
  double line = bw_line_brightness (plan.spot_v_m / plan.line_pitch_m, 0);
  return 1 / (MAX (line, 1) * bw_preview_mask_peak (&plan));
}

static guint8
ink (double light)
{
  /* IEC 61966-2-1, from linear light */
  double coded = light <= 0.0031308 ? 12.92 * light : 1.055 * pow (light, 1 / 2.4) - 0.055;
  return (guint8) lround (255 * coded);
}

/**
 * bw_preview_pack:
 * @light: linear, as bw_preview_screen() gives it
 * @exposure: what to multiply it by; what is then above 1 is shown as 1
 * @rows: (out caller-allocates): 0x00RRGGBB in sRGB
 * @stride: from one row to the next, in pixels
 */
void
bw_preview_pack (const BwPlanes *light, double exposure, guint32 *rows, int stride)
{
  guint8 inks[INK_STEPS + 1];
  float scale = (float) (exposure * INK_STEPS);

  for (int i = 0; i <= INK_STEPS; i++)
    inks[i] = ink ((double) i / INK_STEPS);
  for (int y = 0; y < light->height; y++)
    for (int x = 0; x < light->width; x++)
      {
        gsize place = (gsize) y * (gsize) light->width + (gsize) x;
        guint32 pixel = 0;
        for (int i = 0; i < 3; i++)
          pixel = pixel << 8
                  | inks[(int) (CLAMP (light->at[i][place] * scale, 0.0f, INK_STEPS) + 0.5f)];
        rows[(gsize) y * (gsize) stride + (gsize) x] = pixel;
      }
}
