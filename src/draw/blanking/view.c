/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

#include <glib/gi18n-lib.h>

#include "draw/line/read.h"

static void
draw_box (const BwBlankingLayout *layout, cairo_t *cr, double from_s, double to_s)
{
  double left = bw_line_panel_x (&layout->panel, MAX (from_s, layout->panel.from_s));
  double right = bw_line_panel_x (&layout->panel, MIN (to_s, layout->panel.to_s));
  cairo_rectangle (cr, left, layout->panel.top, right - left,
                   layout->panel.bottom - layout->panel.top);
  cairo_fill (cr);
}

static void
draw_bands (const BwBlankingLayout *layout, cairo_t *cr)
{
  BwRange bands_s[BW_BLANKING_BANDS];
  guint n = bw_blanking_bands (layout->what, bands_s);

  bw_ink_set (cr, layout->canvas->ink, BW_INK_BAND);
  draw_box (layout, cr, bw_blanking_start (&layout->shape),
            bw_line_shape_blanking_end (&layout->shape));
  bw_ink_set_alpha (cr, layout->canvas->ink, BW_INK_OK, 0.3);
  for (guint i = 0; i < n; i++)
    draw_box (layout, cr, bands_s[i].low, bands_s[i].high);
}

/* Its envelope; how many cycles there are, the limits do not say. */
static void
draw_burst (const BwBlankingLayout *layout, cairo_t *cr)
{
  double top = bw_line_panel_y (&layout->panel, BW_BURST_PEAK),
         bottom = bw_line_panel_y (&layout->panel, -BW_BURST_PEAK);
  BwRange burst_s;
  if (!bw_blanking_burst (layout->what, &burst_s))
    return;
  double left = bw_line_panel_x (&layout->panel, burst_s.low),
         right = bw_line_panel_x (&layout->panel, burst_s.high);
  cairo_rectangle (cr, left, top, right - left, bottom - top);
  bw_ink_set_alpha (cr, layout->canvas->ink, BW_INK_BLUE, 0.2);
  cairo_fill_preserve (cr);
  bw_ink_set (cr, layout->canvas->ink, BW_INK_BLUE);
  cairo_set_line_width (cr, layout->canvas->text_height * 0.08);
  cairo_stroke (cr);
}

static void
draw (const BwBlankingLayout *layout, cairo_t *cr)
{
  const BwCanvas *canvas = layout->canvas;
  const BwLinePanel *panel = &layout->panel;

  bw_canvas_draw_paper (canvas, cr);
  draw_bands (layout, cr);
  bw_line_panel_draw_levels (panel, &layout->shape, canvas, cr);
  bw_dim_row_draw (&layout->to_end, canvas, cr);
  bw_dim_row_draw (&layout->to_burst, canvas, cr);
  bw_dim_row_draw (&layout->burst, canvas, cr);
  bw_dim_row_draw (&layout->intervals, canvas, cr);
  bw_dim_row_draw (&layout->blanking, canvas, cr);
  bw_line_panel_draw_datum (panel, 0, panel->top, canvas, cr);
  bw_line_panel_draw_curve (panel, &layout->shape, canvas, cr);
  draw_burst (layout, cr);
  bw_canvas_show_labels (layout->canvas, cr);
}

/* The blanking is read on the whole height of the page: its dimensions tell of the same times. */
static void
add_place (BwDrawing *drawing, const BwBlankingLayout *layout)
{
  double from_s = bw_blanking_start (&layout->shape);
  double to_s = bw_line_shape_blanking_end (&layout->shape);
  double left = bw_line_panel_x (&layout->panel, from_s);
  double right = bw_line_panel_x (&layout->panel, to_s);
  const BwDrawingPlace place = {
    .box = { left, 0, right - left, layout->canvas->height },
    .across = { from_s, to_s, left, right },
  };
  bw_drawing_add_place (drawing, &place);
}

/**
 * bw_blanking_drawing:
 * @width: width of the page, in user-space units
 * @height: its height, in the same units
 *
 * Returns: (transfer full): the line blanking of a raster, drawn so that it fills the page
 */
BwDrawing *
bw_blanking_drawing (const BwBlankingView *what, double width, double height, const BwInk *ink)
{
  g_return_val_if_fail (what != NULL && what->raster != NULL && ink != NULL, NULL);
  BwBlankingLayout layout = { .what = what, .breaks = TRUE };
  BwLinePage page;

  bw_line_page_init (&page, what->across, width);
  layout.canvas = bw_canvas_new (ink, page.width, height);
  bw_line_shape_init (&layout.shape, what->raster);
  layout.breaks = bw_blanking_try (&layout);
  while (!layout.breaks && !bw_blanking_try (&layout) && layout.left_out < BW_N_BLANKING_LEAVES)
    layout.left_out++;
  BwDrawing *drawing = bw_drawing_new_part (layout.canvas, layout.left_out, page.from_x, width);
  draw (&layout, bw_drawing_pen (drawing));
  bw_drawing_take_words (drawing,
                         g_strdup_printf (_ ("The line blanking of %s, drawn"),
                                          bw_or_empty (what->raster->name)),
                         bw_blanking_describe (what),
                         g_strdup_printf ("%s-blanking", bw_or_empty (what->raster->id)));
  add_place (drawing, &layout);
  bw_line_take_reader (drawing, BW_CURSOR_ROWS, &layout.shape, what->mark);
  bw_line_page_zoom (&page, drawing);
  bw_blanking_rows_clear (&layout);
  bw_canvas_free (layout.canvas);
  return drawing;
}
