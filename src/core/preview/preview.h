/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

#include "core/detail/detail.h"

G_BEGIN_DECLS

/* A picture as the screen shows it, computed from the numbers of a BwDetailCase: the same links
 * as the curves, the same spot, lines and mask.
 *
 * A picture is the whole active picture of the raster, whatever its size in pixels: its left edge
 * is where the active line begins, its top the first active line. The glass shows the middle of
 * it, less the overscan. A picture as wide as the source has samples, and as high as the raster
 * has lines, is sent sample for sample.
 *
 * The modulation that equals bw_detail_mtf(): a sine of any height along the line, in signal,
 * with a gamma of 1 and nowhere cut off at black or at overload, is fitted in the light of the
 * preview averaged over the height of a line, and over the width of a column where a mask is
 * drawn; its amplitude is divided by that in the picture. The frequency is counted in lines per
 * height of the viewable area, and the spot must be at least %BW_PREVIEW_SPOT_PIXELS wide. */

#define BW_PREVIEW_MAX_SIDE 8192
#define BW_PREVIEW_GAMMA 2.2
#define BW_PREVIEW_SPOT_PIXELS 2.0 /* a narrower spot is drawn so wide, against false patterns */
#define BW_PREVIEW_OVERLOAD 1.25   /* of white: the beam gives no more */

/**
 * BwPlanes:
 * @at: red, green and blue, each @width × @height, row by row, 0 black to 1 white
 */
typedef struct
{
  int width;
  int height;
  float *at[3];
} BwPlanes;

BwPlanes *bw_planes_new (int width, int height);
void bw_planes_free (BwPlanes *planes);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (BwPlanes, bw_planes_free)

/**
 * BwPreview:
 * @what: borrowed; tube, lines and active line time must be known
 * @picture: borrowed; R'G'B', as the signal is
 * @centre_x: of the crop, as share of the width of the viewable area, 0 to 1
 * @centre_y: likewise from the top
 * @pixels_per_m: pixels of the preview to a metre of glass; see bw_preview_pixels_per_m()
 * @width: width of the preview in pixels
 * @height: its height in pixels
 * @gamma: of the tube; zero: %BW_PREVIEW_GAMMA
 * @frame: how many frames have passed: the dots of composite move from one to the next
 *
 * What is to be shown.
 */
typedef struct
{
  const BwDetailCase *what;
  const BwPlanes *picture;
  double centre_x;
  double centre_y;
  double pixels_per_m;
  int width;
  int height;
  double gamma;
  guint frame;
} BwPreview;

#define BW_PREVIEW_ERROR (bw_preview_error_quark ())

typedef enum
{
  BW_PREVIEW_ERROR_SIZE,  /* of the preview or the picture */
  BW_PREVIEW_ERROR_PLACE, /* the crop, its magnification or the gamma */
  BW_PREVIEW_ERROR_TUBE,  /* the tube's size, pitch or spot is not known or cannot be */
  BW_PREVIEW_ERROR_RASTER /* no raster, or a path that cannot be */
} BwPreviewError;

/**
 * BwProgressFunc:
 * @done: share of the work, 0 to 1
 *
 * Called in the thread that computes.
 */
typedef void (*BwProgressFunc) (double done, gpointer user_data);

GQuark bw_preview_error_quark (void);

double bw_preview_pixels_per_m (double times);
double bw_preview_whole_pixels_per_m (const BwDetailCase *what, int width, int height);
double bw_preview_exposure (const BwPreview *preview);

gboolean bw_preview_check (const BwPreview *preview, GError **error);
BwPlanes *bw_preview_screen (const BwPreview *preview, GCancellable *cancellable,
                             BwProgressFunc progress, gpointer user_data, GError **error);
BwPlanes *bw_preview_untouched (const BwPreview *preview, GCancellable *cancellable,
                                GError **error);
BwPlanes *bw_preview_signal (const BwPreview *preview, double *start_m, double *step_m,
                             int *first_line, GError **error);
void bw_preview_pack (const BwPlanes *light, double exposure, guint32 *rows, int stride);

G_END_DECLS
