/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

/* Lays everything out with what @layout keeps; returns whether all of that has a place. */
static gboolean
try_layout (BwFieldLayout *layout)
{
  bw_canvas_clear (layout->canvas);
  gboolean all = bw_field_claim_words (layout);
  bw_field_size_rows (layout);
  all &= bw_field_place_down (layout);
  return all & bw_field_claim_labels (layout);
}

static void
layout_init (BwFieldLayout *layout, double width, double height, const BwInk *ink,
             const BwFieldView *what)
{
  *layout = (BwFieldLayout){ .what = what };
  layout->canvas = bw_canvas_new (ink, width, height);
  bw_field_init_rows (layout);
  bw_ruler_init (&layout->ruler, layout->canvas, layout->row[0].shape.line.period_s, what->mark);
  layout->ruler.crossed = TRUE;
  bw_field_init_range (layout->row, layout->n_rows, &layout->ruler.range);
  if (what->range != NULL)
    layout->ruler.range = *what->range;
  bw_field_place_across (layout);
  while (!try_layout (layout) && layout->left_out < BW_N_FIELD_LEAVES)
    layout->left_out++;
}

static void
layout_clear (BwFieldLayout *layout)
{
  for (guint i = 0; i < layout->n_rows; i++)
    bw_field_clear_dims (&layout->row[i]);
  bw_canvas_free (layout->canvas);
}

/* A row is read from its head to its line numbers. */
static void
add_place (BwDrawing *drawing, const BwFieldLayout *layout, guint i)
{
  const BwFieldRow *row = &layout->row[i];
  const BwDrawingPlace place = {
    .id = i,
    .box = { layout->ruler.left, row->total.y, layout->ruler.right - layout->ruler.left,
             row->bottom - row->total.y },
    .across = { layout->ruler.range.from, layout->ruler.range.to, layout->ruler.left,
                layout->ruler.right },
  };
  bw_drawing_add_place (drawing, &place);
}

/**
 * bw_field_drawing:
 * @width: width of the page, in user-space units
 * @height: its height, in the same units
 *
 * Returns: (transfer full): the vertical interval, drawn so that it fills the page
 */
BwDrawing *
bw_field_drawing (const BwFieldView *what, double width, double height, const BwInk *ink)
{
  g_return_val_if_fail (what != NULL && what->raster != NULL && ink != NULL, NULL);
  BwFieldLayout layout;

  layout_init (&layout, width, height, ink, what);
  BwDrawing *drawing = bw_drawing_new (layout.canvas, layout.left_out);
  bw_field_layout_draw (&layout, bw_drawing_pen (drawing));
  bw_field_take_words (drawing, &layout);
  for (guint i = 0; i < layout.n_rows; i++)
    add_place (drawing, &layout, i);
  bw_drawing_zoom_across (drawing, &layout.ruler.range, layout.ruler.left, layout.ruler.right);
  layout_clear (&layout);
  return drawing;
}
