/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "preview-view-private.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#define PANE_GAP 12.0
#define TITLE_LINES 1.4 /* of text, above each picture */
#define CAPTION_LINES 6
#define LEAST_PANE 16.0

/* The part that is shown does not go beyond the glass. */
static double
clamp_centre (double centre, double pane, double glass)
{
  double half = glass > 0 ? pane / 2 / glass : 1;
  return half >= 0.5 ? 0.5 : CLAMP (centre, half, 1 - half);
}

/* A preview of the whole is not blown up on a page that has more room than was wished for. */
static double
scale_for (const BwPreviewView *view, double width, double height, gboolean wish)
{
  gboolean keeps = !wish && view->wished_whole && view->wished_width <= width + 0.5
                   && view->wished_height <= height + 0.5;

  if (view->times > 0)
    return bw_preview_pixels_per_m (view->times);
  if (keeps)
    return view->wished_pixels_per_m;
  return bw_preview_whole_pixels_per_m (&view->what, (int) width, (int) height);
}

/* Whole units wide and high, in what room there is. */
static void
size_panes (const BwPreviewView *view, BwPreviewLayout *layout, double width, double height,
            gboolean wish)
{
  layout->pixels_per_m = scale_for (view, width, height, wish);
  double glass_width = view->width_m * layout->pixels_per_m;
  double glass_height = view->height_m * layout->pixels_per_m;
  double pane_width = glass_width > 0 ? MIN (width, ceil (glass_width - 1e-6)) : width;
  double pane_height = glass_height > 0 ? MIN (height, ceil (glass_height - 1e-6)) : height;

  if (!wish && view->wished_width > 0)
    {
      pane_width = MIN (pane_width, view->wished_width);
      pane_height = MIN (pane_height, view->wished_height);
    }
  for (guint i = 0; i < BW_N_PREVIEW_PANES; i++)
    {
      layout->panes[i].width = MAX (pane_width, LEAST_PANE);
      layout->panes[i].height = MAX (pane_height, LEAST_PANE);
    }
  layout->centre_x = clamp_centre (view->centre_x, pane_width, glass_width);
  layout->centre_y = clamp_centre (view->centre_y, pane_height, glass_height);
}

/**
 * bw_preview_layout_init:
 * @layout: (out caller-allocates): to be cleared with bw_preview_layout_clear()
 * @wish: whether it is as large as the page allows, and not as was wished last
 */
void
bw_preview_layout_init (BwPreviewLayout *layout, const BwPreviewView *view, double page_width,
                        double page_height, const BwInk *ink, gboolean wish)
{
  BwCanvas *canvas = bw_canvas_new (ink, page_width, page_height);
  double top = ceil (TITLE_LINES * canvas->text_height);
  double width = floor ((page_width - PANE_GAP) / 2), room = page_height - top;

  /* The caption tells what the room below it leaves; it is as high with either. */
  *layout = (BwPreviewLayout){ .canvas = canvas };
  size_panes (view, layout, width, room, wish);
  g_autofree char *guess = bw_preview_caption (view, layout);
  double caption = ceil (bw_canvas_wrapped_height (canvas, guess, page_width, CAPTION_LINES));
  size_panes (view, layout, width, floor (room - caption - 2 * canvas->pad), wish);
  double left = floor ((page_width - PANE_GAP) / 2 - layout->panes[0].width);
  for (guint i = 0; i < BW_N_PREVIEW_PANES; i++)
    {
      layout->panes[i].x = MAX (left, 0) + i * (layout->panes[0].width + PANE_GAP);
      layout->panes[i].y = top;
    }
  layout->words = bw_preview_caption (view, layout);
  layout->caption = (BwBox){ 0, top + layout->panes[0].height + canvas->pad, page_width,
                             caption + 1 };
}

/**
 * bw_preview_layout_clear:
 *
 * Frees what @layout owns.
 */
void
bw_preview_layout_clear (BwPreviewLayout *layout)
{
  bw_canvas_free (layout->canvas);
  g_free (layout->words);
}

/* Drawing */

/* Pixel for pixel where the preview at hand is of this scale. */
static void
draw_image (const BwPreviewView *view, cairo_t *cr, const BwPreviewLayout *layout, guint i)
{
  const BwPreview *shown = &view->result->wish.preview;
  const BwBox *pane = &layout->panes[i];
  double scale = layout->pixels_per_m / shown->pixels_per_m;
  double off_x = (shown->centre_x - layout->centre_x) * view->width_m * layout->pixels_per_m;
  double off_y = (shown->centre_y - layout->centre_y) * view->height_m * layout->pixels_per_m;
  double x = pane->x + pane->width / 2 + off_x - shown->width * scale / 2;
  double y = pane->y + pane->height / 2 + off_y - shown->height * scale / 2;
  gboolean exact = bw_near (scale, 1, 1e-6) || bw_near (scale * 2, 1, 1e-6);

  cairo_translate (cr, exact ? round (x / scale) * scale : x,
                   exact ? round (y / scale) * scale : y);
  cairo_scale (cr, scale, scale);
  cairo_set_source_surface (cr, view->images[i], 0, 0);
  cairo_pattern_set_filter (cairo_get_source (cr),
                            exact ? CAIRO_FILTER_NEAREST : CAIRO_FILTER_GOOD);
  cairo_paint (cr);
}

static void
draw_pane (const BwPreviewView *view, cairo_t *cr, const BwPreviewLayout *layout, guint i)
{
  const BwInk *ink = layout->canvas->ink;
  const BwBox *pane = &layout->panes[i];

  cairo_save (cr);
  cairo_rectangle (cr, pane->x, pane->y, pane->width, pane->height);
  bw_ink_set (cr, ink, BW_INK_BAND);
  cairo_fill_preserve (cr);
  cairo_clip (cr);
  draw_image (view, cr, layout, i);
  cairo_restore (cr);
  cairo_rectangle (cr, pane->x - 0.5, pane->y - 0.5, pane->width + 1, pane->height + 1);
  cairo_set_line_width (cr, 1);
  bw_ink_set (cr, ink, BW_INK_RULE);
  cairo_stroke (cr);
}

static void
claim_words (BwCanvas *canvas, const char *words, const BwBox *box)
{
  const BwLabel label = { (char *) words, *box, BW_INK_GRAPHITE, PANGO_ALIGN_LEFT, FALSE, TRUE };
  bw_canvas_claim (canvas, &label);
}

/* Where there is no preview, why. */
static void
claim_reason (const BwPreviewLayout *layout, const char *words)
{
  BwCanvas *canvas = layout->canvas;
  double height = bw_canvas_wrapped_height (canvas, words, canvas->width, CAPTION_LINES);
  claim_words (canvas, words, &(BwBox){ 0, canvas->pad, canvas->width, height + 1 });
}

static void
claim_labels (const BwPreviewLayout *layout)
{
  const char *const titles[] = { _ ("After the chain"), _ ("Untouched") };
  BwCanvas *canvas = layout->canvas;

  for (guint i = 0; i < BW_N_PREVIEW_PANES; i++)
    bw_canvas_claim_at (canvas, titles[i], BW_INK_GRAPHITE, layout->panes[i].x,
                        layout->panes[i].y - canvas->pad / 2, 0, 1);
  claim_words (canvas, layout->words, &layout->caption);
}

static void
add_place (BwDrawing *drawing, const BwPreviewView *view, const BwPreviewLayout *layout, guint i)
{
  const BwBox *pane = &layout->panes[i];
  double half_width_m = pane->width / 2 / layout->pixels_per_m;
  double half_height_m = pane->height / 2 / layout->pixels_per_m;
  double across_m = layout->centre_x * view->width_m, down_m = layout->centre_y * view->height_m;
  const BwDrawingPlace place = {
    .id = i,
    .box = *pane,
    .across = { across_m - half_width_m, across_m + half_width_m, pane->x, pane->x + pane->width },
    .down = { down_m - half_height_m, down_m + half_height_m, pane->y, pane->y + pane->height },
  };
  bw_drawing_add_place (drawing, &place);
}

static char *
describe (const BwPreviewView *view, const BwPreviewLayout *layout)
{
  return g_strdup (view->error != NULL ? view->error : layout->words);
}

/**
 * bw_preview_drawing:
 * @width: width of the page, in user-space units
 * @height: its height, in the same units
 *
 * Returns: (transfer full): both pictures, as large as was wished last; why there are none, if there
 *   are none
 */
BwDrawing *
bw_preview_drawing (const BwPreviewView *view, double width, double height, const BwInk *ink)
{
  g_return_val_if_fail (view != NULL && ink != NULL, NULL);
  BwPreviewLayout layout;

  bw_preview_layout_init (&layout, view, width, height, ink, FALSE);
  if (view->result != NULL)
    claim_labels (&layout);
  else
    claim_reason (&layout,
                  view->error != NULL ? view->error : _ ("The preview is being computed."));
  BwDrawing *drawing = bw_drawing_new (layout.canvas, 0);
  cairo_t *pen = bw_drawing_pen (drawing);
  bw_canvas_draw_paper (layout.canvas, pen);
  for (guint i = 0; view->result != NULL && i < BW_N_PREVIEW_PANES; i++)
    {
      draw_pane (view, pen, &layout, i);
      add_place (drawing, view, &layout, i);
    }
  bw_canvas_show_labels (layout.canvas, pen);
  bw_drawing_take_words (
      drawing,
      g_strdup_printf (_ ("The picture after the chain, beside the untouched one: %1$s; %2$s"),
                       view->title, view->sent),
      describe (view, &layout), g_strdup ("detail-preview"));
  if (view->result != NULL)
    bw_preview_take_reader (drawing, view);
  bw_preview_layout_clear (&layout);
  return drawing;
}
