/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "preview-picture-private.h"

#include <math.h>

#define PANE_GAP 12.0
#define TITLE_LINES 1.4 /* of text, above each picture */
#define CAPTION_LINES 6
#define LEAST_PANE 16.0

void
bw_preview_keep_free (BwPreviewKeep *keep)
{
  g_free (keep->layout.words);
  g_free (keep->font);
  g_free (keep);
}

/* The part that is shown does not go beyond the glass. */
double
bw_preview_clamp_centre (double centre, double pane, double glass)
{
  double half = glass > 0 ? pane / 2 / glass : 1;
  return half >= 0.5 ? 0.5 : CLAMP (centre, half, 1 - half);
}

/* A preview of the whole is not blown up on a page that has more room than was wished for. */
static double
scale_for (const BwPreviewPicture *picture, double width, double height, gboolean wish)
{
  gboolean keeps = !wish && picture->wished_whole && picture->wished_width <= width + 0.5
                   && picture->wished_height <= height + 0.5;

  if (picture->times > 0)
    return bw_preview_pixels_per_m (picture->times);
  if (keeps)
    return picture->wished_pixels_per_m;
  return bw_preview_whole_pixels_per_m (&picture->what, (int) width, (int) height);
}

/* Whole units wide and high, in what room there is. */
static void
size_panes (const BwPreviewPicture *picture, BwPreviewLayout *layout, double width, double height,
            gboolean wish)
{
  layout->pixels_per_m = scale_for (picture, width, height, wish);
  double glass_width = picture->width_m * layout->pixels_per_m;
  double glass_height = picture->height_m * layout->pixels_per_m;
  double pane_width = glass_width > 0 ? MIN (width, ceil (glass_width - 1e-6)) : width;
  double pane_height = glass_height > 0 ? MIN (height, ceil (glass_height - 1e-6)) : height;

  if (!wish && picture->wished_width > 0)
    {
      pane_width = MIN (pane_width, picture->wished_width);
      pane_height = MIN (pane_height, picture->wished_height);
    }
  for (guint i = 0; i < BW_N_PREVIEW_PANES; i++)
    {
      layout->panes[i].width = MAX (pane_width, LEAST_PANE);
      layout->panes[i].height = MAX (pane_height, LEAST_PANE);
    }
  layout->centre_x = bw_preview_clamp_centre (picture->centre_x, pane_width, glass_width);
  layout->centre_y = bw_preview_clamp_centre (picture->centre_y, pane_height, glass_height);
}

static void
lay_out (const BwPreviewPicture *picture, const BwPicturePage *page, BwPreviewLayout *layout,
         gboolean wish)
{
  g_autoptr (BwCanvas) canvas = bw_canvas_new (page->ink, page->width, page->height);
  double top = ceil (TITLE_LINES * canvas->text_height);
  double width = floor ((page->width - PANE_GAP) / 2), room = page->height - top;

  /* The caption tells what the room below it leaves; it is as high with either. */
  size_panes (picture, layout, width, room, wish);
  g_autofree char *guess = bw_preview_caption (picture, layout);
  double caption = ceil (bw_canvas_wrapped_height (canvas, guess, page->width, CAPTION_LINES));
  size_panes (picture, layout, width, floor (room - caption - 2 * canvas->pad), wish);
  double left = floor ((page->width - PANE_GAP) / 2 - layout->panes[0].width);
  for (guint i = 0; i < BW_N_PREVIEW_PANES; i++)
    {
      layout->panes[i].x = MAX (left, 0) + i * (layout->panes[0].width + PANE_GAP);
      layout->panes[i].y = top;
    }
  layout->words = bw_preview_caption (picture, layout);
  layout->caption = (BwBox){ 0, top + layout->panes[0].height + canvas->pad, page->width,
                             caption + 1 };
}

/**
 * bw_preview_layout_wish:
 * @layout: (out): as large as @page allows; without words
 */
void
bw_preview_layout_wish (const BwPreviewPicture *picture, const BwPicturePage *page,
                        BwPreviewLayout *layout)
{
  *layout = (BwPreviewLayout){ 0 };
  lay_out (picture, page, layout, TRUE);
  g_clear_pointer (&layout->words, g_free);
}

/**
 * bw_preview_layout:
 *
 * Returns: (transfer none): where everything stands on @page, until something changes
 */
const BwPreviewLayout *
bw_preview_layout (const BwPreviewPicture *picture, const BwPicturePage *page)
{
  BwPreviewKeep *keep = picture->keep;

  if (keep->serial == picture->serial && bw_near (keep->width, page->width, 1e-12)
      && bw_near (keep->height, page->height, 1e-12) && bw_near (keep->dpi, page->ink->dpi, 1e-12)
      && g_strcmp0 (keep->font, page->ink->font) == 0)
    return &keep->layout;
  g_free (keep->layout.words);
  g_free (keep->font);
  *keep = (BwPreviewKeep){ .width = page->width,
                           .height = page->height,
                           .dpi = page->ink->dpi,
                           .font = g_strdup (page->ink->font),
                           .serial = picture->serial };
  lay_out (picture, page, &keep->layout, FALSE);
  return &keep->layout;
}
