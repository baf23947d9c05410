/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

#define LEAST_SHOWN 0.0625 /* of a line */

/* Lays everything out with what @layout keeps; returns whether all of that has a place. */
static gboolean
try_layout (BwSyncLayout *layout)
{
  bw_canvas_clear (layout->canvas);
  gboolean all = bw_sync_claim_words (layout);
  all &= bw_sync_place_down (layout);
  return all & bw_sync_claim_labels (layout);
}

static void
layout_init (BwSyncLayout *layout, double width, double height, const BwInk *ink,
             const BwSyncView *what)
{
  *layout = (BwSyncLayout){ .what = what };
  layout->canvas = bw_canvas_new (ink, width, height);
  layout->mix = bw_sync_mix_new (what->what);
  layout->run = bw_sync_run_new (layout->mix, what->afc);
  bw_ruler_init (&layout->ruler, layout->canvas, layout->mix->line_s, what->mark);
  bw_view_range_init (&layout->ruler.range, layout->mix->from_s, layout->mix->to_s,
                      LEAST_SHOWN * layout->mix->line_s);
  if (what->range != NULL)
    layout->ruler.range = *what->range;
  layout->lane[BW_SYNC_ROW_H].trace = &layout->mix->h;
  layout->lane[BW_SYNC_ROW_V].trace = &layout->mix->v;
  layout->lane[BW_SYNC_ROW_RESULT].trace = &layout->mix->result;
  layout->lane[BW_SYNC_ROW_STANDARD].trace = &layout->mix->standard;
  bw_sync_place_across (layout);
  while (!try_layout (layout) && layout->left_out < BW_N_SYNC_LEAVES)
    layout->left_out++;
}

/* Each row with the marks and words under its lane, from @top to @bottom. */
static void
add_place (BwDrawing *drawing, const BwSyncLayout *layout, BwSyncRow row, double top, double bottom)
{
  const BwDrawingPlace place = {
    .id = row,
    .box = { layout->ruler.left, top, layout->ruler.right - layout->ruler.left, bottom - top },
    .across = { layout->ruler.range.from, layout->ruler.range.to, layout->ruler.left,
                layout->ruler.right },
  };
  bw_drawing_add_place (drawing, &place);
}

static void
add_places (BwDrawing *drawing, const BwSyncLayout *layout)
{
  double pad = layout->canvas->pad, top = layout->lane[0].top - pad;

  for (BwSyncRow row = 0; row < BW_N_SYNC_ROWS; row++)
    {
      double bottom = row + 1 < BW_N_SYNC_ROWS ? layout->lane[row + 1].top - pad / 4
                                               : layout->lane[row].bottom;
      add_place (drawing, layout, row, top, bottom);
      top = bottom;
    }
}

/**
 * bw_sync_drawing:
 * @width: width of the page, in user-space units
 * @height: its height, in the same units
 *
 * Returns: (transfer full): the mixture of sync, drawn so that it fills the page
 */
BwDrawing *
bw_sync_drawing (const BwSyncView *what, double width, double height, const BwInk *ink)
{
  g_return_val_if_fail (what != NULL && what->what != NULL && what->afc != NULL, NULL);
  g_return_val_if_fail (ink != NULL, NULL);
  BwSyncLayout layout;

  layout_init (&layout, width, height, ink, what);
  BwDrawing *drawing = bw_drawing_new (layout.canvas, layout.left_out);
  bw_sync_layout_draw (&layout, bw_drawing_pen (drawing));
  add_places (drawing, &layout);
  bw_drawing_zoom_across (drawing, &layout.ruler.range, layout.ruler.left, layout.ruler.right);
  bw_sync_take_words (drawing, &layout);
  bw_canvas_free (layout.canvas);
  return drawing;
}
