/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

/* Lays everything out with what @layout keeps; returns whether all of that has a place. */
static gboolean
try_layout (BwVectorLayout *layout)
{
  bw_canvas_clear (layout->canvas);
  gboolean all = bw_vector_claim_words (layout);
  bw_vector_place_all (layout);
  all &= bw_vector_is_large_enough (layout);
  return all & bw_vector_claim_labels (layout);
}

static void
layout_init (BwVectorLayout *layout, double width, double height, const BwInk *ink,
             const BwVectorView *what)
{
  *layout = (BwVectorLayout){ .what = what, .targets = bw_vector_view_targets (what) };
  layout->canvas = bw_canvas_new (ink, width, height);
  layout->path = bw_vector_path_of (what, 0);
  if (bw_vector_is_switched (what))
    layout->other = bw_vector_path_of (what, 1);
  bw_vector_init_scale (layout);
  while (!try_layout (layout) && layout->left_out < BW_N_VECTOR_LEAVES)
    layout->left_out++;
}

static void
layout_clear (BwVectorLayout *layout)
{
  g_array_unref (layout->targets);
  g_array_unref (layout->path);
  g_clear_pointer (&layout->other, g_array_unref);
  bw_canvas_free (layout->canvas);
}

/* The plane is read inside the ring. */
static void
add_place (BwDrawing *drawing, const BwVectorLayout *layout)
{
  double left = layout->x - layout->radius, right = layout->x + layout->radius;
  double top = layout->y - layout->radius, bottom = layout->y + layout->radius;
  const BwDrawingPlace place = {
    .box = { left, top, right - left, bottom - top },
    .round = TRUE,
    .across = { -layout->full_v, layout->full_v, left, right },
    .down = { layout->full_v, -layout->full_v, top, bottom },
  };
  bw_drawing_add_place (drawing, &place);
}

/**
 * bw_vector_drawing:
 * @width: width of the page, in user-space units
 * @height: its height, in the same units
 *
 * Returns: (transfer full): the plane, drawn so that it fills the page
 */
BwDrawing *
bw_vector_drawing (const BwVectorView *what, double width, double height, const BwInk *ink)
{
  g_return_val_if_fail (what != NULL && what->model != NULL && ink != NULL, NULL);
  BwVectorLayout layout;

  layout_init (&layout, width, height, ink, what);
  BwDrawing *drawing = bw_drawing_new (layout.canvas, layout.left_out);
  bw_vector_layout_draw (&layout, bw_drawing_pen (drawing));
  bw_vector_take_words (drawing, &layout);
  add_place (drawing, &layout);
  layout_clear (&layout);
  return drawing;
}
