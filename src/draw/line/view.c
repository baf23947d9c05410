/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

#include <glib/gi18n-lib.h>

#include "read.h"

/* The panels are read from a little above white to a little below the sync tip. */
static void
add_place (BwDrawing *drawing, const BwLineLayout *layout, BwLinePlace id, const BwLinePanel *panel)
{
  double pad = layout->canvas->pad;
  const BwDrawingPlace place = {
    .id = id,
    .box = { panel->left, panel->top - pad, panel->right - panel->left,
             panel->bottom - panel->top + 2 * pad },
    .across = { panel->from_s, panel->to_s, panel->left, panel->right },
  };
  bw_drawing_add_place (drawing, &place);
}

static void
fill (BwDrawing *drawing, const BwLineLayout *layout, const BwLinePage *page)
{
  const BwRaster *raster = layout->what->raster;

  bw_line_draw (layout, bw_drawing_pen (drawing));
  bw_drawing_take_words (drawing,
                         g_strdup_printf (_ ("The line of %s, drawn"), bw_or_empty (raster->name)),
                         bw_line_describe (layout->what),
                         g_strdup_printf ("%s-line", bw_or_empty (raster->id)));
  add_place (drawing, layout, BW_LINE_WHOLE, &layout->whole);
  add_place (drawing, layout, BW_LINE_PART, &layout->part);
  bw_line_take_reader (drawing, BW_CURSOR_PANEL, &layout->shape, layout->what->mark);
  bw_line_page_zoom (page, drawing);
}

/**
 * bw_line_drawing:
 * @width: width of the page, in user-space units
 * @height: its height, in the same units
 *
 * Returns: (transfer full): one line of the raster, drawn so that it fills the page
 */
BwDrawing *
bw_line_drawing (const BwLineView *what, double width, double height, const BwInk *ink)
{
  g_return_val_if_fail (what != NULL && what->raster != NULL && ink != NULL, NULL);
  BwLineLayout layout = { .what = what, .breaks = TRUE };
  BwLinePage page;

  bw_line_page_init (&page, what->across, width);
  layout.canvas = bw_canvas_new (ink, page.width, height);
  bw_line_shape_init (&layout.shape, what->raster);
  bw_line_shape_add_burst (&layout.shape, what->raster, what->system);
  layout.breaks = bw_line_try (&layout);
  while (!layout.breaks && !bw_line_try (&layout) && layout.left_out < BW_N_LEAVES)
    layout.left_out++;
  BwDrawing *drawing = bw_drawing_new_part (layout.canvas, layout.left_out, page.from_x, width);
  fill (drawing, &layout, &page);
  bw_line_clear_rows (&layout);
  bw_canvas_free (layout.canvas);
  return drawing;
}
