/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "preview-picture-private.h"

#include <math.h>

#include <glib/gi18n-lib.h>

/* The preview as BwPicture has it: drawn, read and zoomed. */

#define LEAST_ZOOM 1.001

static const BwPreviewPicture *
preview_of (const BwPicture *base)
{
  return (const BwPreviewPicture *) base;
}

/* Drawing */

/* Pixel for pixel where the preview at hand is of this scale. */
static void
draw_image (const BwPreviewPicture *picture, cairo_t *cr, const BwPreviewLayout *layout, guint i)
{
  const BwPreview *shown = &picture->result->wish.preview;
  const BwBox *pane = &layout->panes[i];
  double scale = layout->pixels_per_m / shown->pixels_per_m;
  double off_x = (shown->centre_x - layout->centre_x) * picture->width_m * layout->pixels_per_m;
  double off_y = (shown->centre_y - layout->centre_y) * picture->height_m * layout->pixels_per_m;
  double x = pane->x + pane->width / 2 + off_x - shown->width * scale / 2;
  double y = pane->y + pane->height / 2 + off_y - shown->height * scale / 2;
  gboolean exact = bw_near (scale, 1, 1e-6) || bw_near (scale * 2, 1, 1e-6);

  cairo_translate (cr, exact ? round (x / scale) * scale : x,
                   exact ? round (y / scale) * scale : y);
  cairo_scale (cr, scale, scale);
  cairo_set_source_surface (cr, picture->images[i], 0, 0);
  cairo_pattern_set_filter (cairo_get_source (cr),
                            exact ? CAIRO_FILTER_NEAREST : CAIRO_FILTER_GOOD);
  cairo_paint (cr);
}

static void
draw_pane (const BwPreviewPicture *picture, cairo_t *cr, const BwPicturePage *page,
           const BwPreviewLayout *layout, guint i)
{
  const BwBox *pane = &layout->panes[i];

  cairo_save (cr);
  cairo_rectangle (cr, pane->x, pane->y, pane->width, pane->height);
  bw_ink_set (cr, page->ink, BW_INK_BAND);
  cairo_fill_preserve (cr);
  cairo_clip (cr);
  draw_image (picture, cr, layout, i);
  cairo_restore (cr);
  cairo_rectangle (cr, pane->x - 0.5, pane->y - 0.5, pane->width + 1, pane->height + 1);
  cairo_set_line_width (cr, 1);
  bw_ink_set (cr, page->ink, BW_INK_RULE);
  cairo_stroke (cr);
}

static void
draw_words (cairo_t *cr, const BwPicturePage *page, const char *words)
{
  g_autoptr (BwCanvas) canvas = bw_canvas_new (page->ink, page->width, page->height);
  double height = bw_canvas_wrapped_height (canvas, words, page->width, 6);
  BwLabel label = { (char *) words,  { 0, canvas->pad, page->width, height + 1 },
                    BW_INK_GRAPHITE, PANGO_ALIGN_LEFT,
                    FALSE,           TRUE };

  bw_canvas_claim (canvas, &label);
  bw_canvas_show_labels (canvas, cr);
}

static void
draw_labels (cairo_t *cr, const BwPicturePage *page, const BwPreviewLayout *layout)
{
  g_autoptr (BwCanvas) canvas = bw_canvas_new (page->ink, page->width, page->height);
  const char *const titles[] = { _ ("After the path"), _ ("Untouched") };
  BwLabel caption = {
    layout->words, layout->caption, BW_INK_GRAPHITE, PANGO_ALIGN_LEFT, FALSE, TRUE
  };

  for (guint i = 0; i < BW_N_PREVIEW_PANES; i++)
    bw_canvas_claim_at (canvas, titles[i], BW_INK_GRAPHITE, layout->panes[i].x,
                        layout->panes[i].y - canvas->pad / 2, 0, 1);
  bw_canvas_claim (canvas, &caption);
  bw_canvas_show_labels (canvas, cr);
}

static void
draw (const BwPicture *base, cairo_t *cr, const BwPicturePage *page)
{
  const BwPreviewPicture *picture = preview_of (base);

  if (picture->result == NULL)
    {
      draw_words (cr, page,
                  picture->error != NULL ? picture->error : _ ("The preview is being computed."));
      return;
    }
  const BwPreviewLayout *layout = bw_preview_layout (picture, page);
  for (guint i = 0; i < BW_N_PREVIEW_PANES; i++)
    draw_pane (picture, cr, page, layout, i);
  draw_labels (cr, page, layout);
}

static char *
name_of (const BwPicture *base)
{
  const BwPreviewPicture *picture = preview_of (base);
  return g_strdup_printf (_ ("The picture after the path, beside the untouched one: %s; %s"),
                          picture->title, picture->sent);
}

static char *
describe (const BwPicture *base)
{
  const BwPreviewPicture *picture = preview_of (base);
  const BwPreviewLayout *layout = &picture->keep->layout;

  if (picture->error != NULL)
    return g_strdup (picture->error);
  return g_strdup (layout->words != NULL ? layout->words : "");
}

static char *
file_stem (const BwPicture *base)
{
  return g_strdup ("detail-preview");
}

/* Reading */

/* The gap between the pictures reads the edge that is nearer, so that a cursor comes across. */
static gboolean
read_point (const BwPicture *base, const BwPicturePage *page, double x, double y,
            BwPicturePoint *point)
{
  const BwPreviewPicture *picture = preview_of (base);
  if (picture->result == NULL)
    return FALSE;
  const BwPreviewLayout *layout = bw_preview_layout (picture, page);
  const BwBox *left = &layout->panes[0], *right = &layout->panes[1];
  int row = x < (left->x + left->width + right->x) / 2 ? 0 : 1;
  const BwBox *pane = &layout->panes[row];

  if (x < left->x || x >= right->x + right->width || y < pane->y || y >= pane->y + pane->height)
    return FALSE;
  double inside = CLAMP (x, pane->x, pane->x + pane->width) - pane->x - pane->width / 2;
  double below = y - pane->y - pane->height / 2;
  *point = (BwPicturePoint){
    .row = row,
    .along = layout->centre_x * picture->width_m + inside / layout->pixels_per_m,
    .down = layout->centre_y * picture->height_m + below / layout->pixels_per_m,
  };
  point->along = CLAMP (point->along, 0, picture->width_m);
  point->down = CLAMP (point->down, 0, picture->height_m);
  return TRUE;
}

static gboolean
place (const BwPicture *base, const BwPicturePage *page, const BwPicturePoint *point, double *x,
       double *y)
{
  const BwPreviewPicture *picture = preview_of (base);
  if (picture->result == NULL)
    return FALSE;
  const BwPreviewLayout *layout = bw_preview_layout (picture, page);
  const BwBox *pane = &layout->panes[point->row];

  *x = pane->x + pane->width / 2
       + (point->along - layout->centre_x * picture->width_m) * layout->pixels_per_m;
  *y = pane->y + pane->height / 2
       + (point->down - layout->centre_y * picture->height_m) * layout->pixels_per_m;
  return *x >= pane->x && *x <= pane->x + pane->width && *y >= pane->y
         && *y <= pane->y + pane->height;
}

static char *
words_of (const BwPicture *base, const BwPicturePoint *point)
{
  return bw_preview_words (preview_of (base), point);
}

static char *
difference (const BwPicture *base, const BwPicturePoint *a, const BwPicturePoint *b)
{
  return bw_preview_difference (preview_of (base), a, b);
}

/* Zooming */

static gboolean
is_whole (const BwPicture *base)
{
  return !(preview_of (base)->times > 0);
}

static void
show_whole (BwPicture *base)
{
  bw_preview_picture_set_times (bw_preview_picture (base), BW_PREVIEW_WHOLE);
}

/* The next magnification of the list; @now: that of the picture, as a number. */
static double
next_times (const BwPreviewPicture *picture, double now, double whole, gboolean larger)
{
  if (larger)
    {
      for (guint i = 1; i < BW_N_PREVIEW_TIMES; i++)
        if (bw_preview_times[i] > now * LEAST_ZOOM)
          return bw_preview_times[i];
      return picture->times;
    }
  for (guint i = BW_N_PREVIEW_TIMES - 1; i > 0; i--)
    if (bw_preview_times[i] * LEAST_ZOOM < now && bw_preview_times[i] > whole * LEAST_ZOOM)
      return bw_preview_times[i];
  return BW_PREVIEW_WHOLE;
}

static void
zoom (BwPicture *base, const BwPicturePage *page, double x, double y, double factor)
{
  BwPreviewPicture *picture = bw_preview_picture (base);
  BwPicturePoint point;
  gboolean about = read_point (base, page, x, y, &point);
  const BwPreviewLayout *layout = bw_preview_layout (picture, page);
  double scale = layout->pixels_per_m, life = bw_preview_pixels_per_m (1);
  double whole = bw_preview_whole_pixels_per_m (&picture->what, (int) layout->panes[0].width,
                                                (int) layout->panes[0].height);
  double times = next_times (picture, scale / life, whole / life, factor > 1);

  if (!(scale > 0) || bw_near (times, picture->times, 1e-9))
    return;
  if (about && times > 0)
    {
      picture->centre_x = layout->centre_x;
      picture->centre_y = layout->centre_y;
      double kept = 1 - scale / (times * life); /* of the way from the middle to the place */
      picture->centre_x += kept * (point.along / picture->width_m - layout->centre_x);
      picture->centre_y += kept * (point.down / picture->height_m - layout->centre_y);
    }
  bw_preview_picture_set_times (picture, times);
}

static void
pan (BwPicture *base, const BwPicturePage *page, double dx, double dy)
{
  BwPreviewPicture *picture = bw_preview_picture (base);
  const BwPreviewLayout *layout = bw_preview_layout (picture, page);
  double scale = layout->pixels_per_m;

  if (!(scale > 0) || !(picture->width_m > 0))
    return;
  picture->centre_x = bw_preview_clamp_centre (layout->centre_x - dx / scale / picture->width_m,
                                               layout->panes[0].width, picture->width_m * scale);
  picture->centre_y = bw_preview_clamp_centre (layout->centre_y - dy / scale / picture->height_m,
                                               layout->panes[0].height, picture->height_m * scale);
  bw_preview_picture_changed (picture);
}

const BwPictureClass bw_preview_picture_class = {
  .free = bw_preview_picture_free,
  .draw = draw,
  .name = name_of,
  .describe = describe,
  .file_stem = file_stem,
  .read = read_point,
  .place = place,
  .words = words_of,
  .difference = difference,
  .is_whole = is_whole,
  .show_whole = show_whole,
  .zoom = zoom,
  .pan = pan,
};
