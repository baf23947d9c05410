/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "preview-picture-private.h"

#include <math.h>

const double bw_preview_times[BW_N_PREVIEW_TIMES] = { BW_PREVIEW_WHOLE, 1, 2, 4, 8, 16 };

#define DARKEST 0.01

void
bw_preview_picture_changed (BwPreviewPicture *picture)
{
  picture->serial++;
}

/**
 * bw_preview_picture:
 *
 * Returns: (transfer none): @picture as what it is; it must be a preview
 */
BwPreviewPicture *
bw_preview_picture (BwPicture *picture)
{
  g_return_val_if_fail (picture->klass == &bw_preview_picture_class, NULL);
  return (BwPreviewPicture *) picture;
}

/**
 * bw_preview_picture_new:
 *
 * Returns: (transfer full): a picture with no preview yet
 */
BwPicture *
bw_preview_picture_new (void)
{
  BwPreviewPicture *picture = g_new0 (BwPreviewPicture, 1);

  picture->parent = (BwPicture){ &bw_preview_picture_class, BW_CURSOR_CROSS };
  bw_detail_case_init (&picture->what);
  picture->title = g_strdup ("");
  picture->sent = g_strdup ("");
  picture->centre_x = picture->centre_y = 0.5;
  picture->keep = g_new0 (BwPreviewKeep, 1);
  bw_preview_picture_changed (picture);
  return &picture->parent;
}

static void
drop_images (BwPreviewPicture *picture)
{
  for (guint i = 0; i < BW_N_PREVIEW_PANES; i++)
    g_clear_pointer (&picture->images[i], cairo_surface_destroy);
}

/**
 * bw_preview_picture_free:
 * @base: (transfer full)
 */
void
bw_preview_picture_free (BwPicture *base)
{
  BwPreviewPicture *picture = bw_preview_picture (base);

  drop_images (picture);
  bw_preview_result_free (picture->result);
  bw_preview_keep_free (picture->keep);
  g_free (picture->error);
  g_free (picture->note);
  g_free (picture->title);
  g_free (picture->sent);
  g_free (picture);
}

/* What is shown */

/**
 * bw_preview_picture_set_case:
 * @what: copied
 * @title: the source and the input
 */
void
bw_preview_picture_set_case (BwPreviewPicture *picture, const BwDetailCase *what, const char *title)
{
  BwDetail detail;

  picture->what = *what;
  bw_detail_compute (what, &detail);
  picture->width_m = detail.width_m;
  picture->height_m = detail.height_m;
  g_free (picture->title);
  picture->title = g_strdup (title);
  bw_preview_picture_changed (picture);
}

/**
 * bw_preview_picture_set_sent:
 * @kind: BwTestKind, or %BW_PREVIEW_OPENED
 * @words: what it is
 */
void
bw_preview_picture_set_sent (BwPreviewPicture *picture, guint kind, const char *words)
{
  picture->kind = kind;
  g_free (picture->sent);
  picture->sent = g_strdup (words);
  bw_preview_picture_changed (picture);
}

/**
 * bw_preview_picture_set_times:
 * @times: magnification, or %BW_PREVIEW_WHOLE
 */
void
bw_preview_picture_set_times (BwPreviewPicture *picture, double times)
{
  picture->times = times;
  bw_preview_picture_changed (picture);
}

/**
 * bw_preview_picture_set_centre:
 * @across: middle of the part that is shown, as share of the width of the glass
 * @down: likewise of its height
 */
void
bw_preview_picture_set_centre (BwPreviewPicture *picture, double across, double down)
{
  picture->centre_x = across;
  picture->centre_y = down;
  bw_preview_picture_changed (picture);
}

double
bw_preview_picture_get_times (const BwPreviewPicture *picture)
{
  return picture->times;
}

void
bw_preview_picture_set_frame (BwPreviewPicture *picture, guint frame)
{
  picture->frame = frame;
  bw_preview_picture_changed (picture);
}

/* What the light after the path is multiplied by. */
double
bw_preview_picture_exposure (const BwPreviewPicture *picture)
{
  if (picture->result == NULL)
    return 1;
  return pow (MAX (picture->result->exposure, DARKEST), 1 - picture->brightness);
}

static cairo_surface_t *
image_of (const BwPlanes *light, double exposure)
{
  cairo_surface_t *image = cairo_image_surface_create (CAIRO_FORMAT_RGB24, light->width,
                                                       light->height);
  if (cairo_surface_status (image) == CAIRO_STATUS_SUCCESS)
    bw_preview_pack (light, exposure, (guint32 *) (gpointer) cairo_image_surface_get_data (image),
                     cairo_image_surface_get_stride (image) / (int) sizeof (guint32));
  cairo_surface_mark_dirty (image);
  return image;
}

static void
make_images (BwPreviewPicture *picture)
{
  const BwPreviewResult *result = picture->result;

  drop_images (picture);
  if (result == NULL)
    return;
  picture->images[BW_PREVIEW_AFTER] = image_of (result->screen,
                                                bw_preview_picture_exposure (picture));
  picture->images[BW_PREVIEW_UNTOUCHED] = image_of (result->untouched, 1);
}

/**
 * bw_preview_picture_set_brightness:
 * @share: 0: nothing of the light is cut off; 1: as bright on average as the untouched
 */
void
bw_preview_picture_set_brightness (BwPreviewPicture *picture, double share)
{
  picture->brightness = share;
  make_images (picture);
  bw_preview_picture_changed (picture);
}

/**
 * bw_preview_picture_wish:
 * @density: pixels of the screen to a unit of @page
 * @wish: (inout): what is to be shown on @page is put into it
 *
 * What is drawn from now on is as large as this wish.
 */
void
bw_preview_picture_wish (BwPreviewPicture *picture, const BwPicturePage *page, double density,
                         BwPreviewWish *wish)
{
  BwPreviewLayout layout;

  bw_preview_layout_wish (picture, page, &layout);
  picture->wished_width = layout.panes[0].width;
  picture->wished_height = layout.panes[0].height;
  picture->wished_pixels_per_m = layout.pixels_per_m;
  picture->wished_whole = !(picture->times > 0);
  bw_preview_picture_changed (picture);
  wish->what = picture->what;
  wish->kind = picture->kind;
  wish->preview = (BwPreview){
    .centre_x = layout.centre_x,
    .centre_y = layout.centre_y,
    .pixels_per_m = layout.pixels_per_m * density,
    .width = (int) (layout.panes[0].width * density),
    .height = (int) (layout.panes[0].height * density),
    .frame = picture->frame,
  };
}

/**
 * bw_preview_picture_set_result:
 * @result: (transfer full)
 */
void
bw_preview_picture_set_result (BwPreviewPicture *picture, BwPreviewResult *result)
{
  bw_preview_result_free (picture->result);
  picture->result = result;
  g_clear_pointer (&picture->error, g_free);
  make_images (picture);
  bw_preview_picture_changed (picture);
}

/**
 * bw_preview_picture_set_error:
 * @words: why there can be no preview; shown in its place
 */
void
bw_preview_picture_set_error (BwPreviewPicture *picture, const char *words)
{
  g_free (picture->error);
  picture->error = g_strdup (words);
  g_clear_pointer (&picture->result, bw_preview_result_free);
  drop_images (picture);
  bw_preview_picture_changed (picture);
}

/**
 * bw_preview_picture_set_note:
 * @words: (nullable): what else is to be said of the picture
 */
void
bw_preview_picture_set_note (BwPreviewPicture *picture, const char *words)
{
  g_free (picture->note);
  picture->note = g_strdup (words);
  bw_preview_picture_changed (picture);
}

/**
 * bw_preview_picture_get_result:
 *
 * Returns: (transfer none) (nullable): what is shown; %NULL if there is none yet, or can be none
 */
const BwPreviewResult *
bw_preview_picture_get_result (const BwPreviewPicture *picture)
{
  return picture->result;
}
