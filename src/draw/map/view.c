/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

/* Lays everything out with what @layout keeps; returns whether all of that has a place. */
static gboolean
try_layout (BwMapLayout *layout)
{
  bw_canvas_clear (layout->canvas);
  gboolean all = bw_map_claim_words (layout);
  bw_map_place_all (layout);
  all &= bw_map_is_large_enough (layout);
  return all & bw_map_claim_labels (layout);
}

static void
layout_init (BwMapLayout *layout, double width, double height, const BwInk *ink,
             const BwMapView *what)
{
  *layout = (BwMapLayout){ .what = what };
  layout->canvas = bw_canvas_new (ink, width, height);
  bw_raster_figures (what->raster, &layout->figures);
  bw_map_axes (what->raster, &layout->across, &layout->down);
  if (what->across != NULL)
    layout->across.range = *what->across;
  if (what->down != NULL)
    layout->down.range = *what->down;
  while (!try_layout (layout) && layout->left_out < BW_N_MAP_LEAVES)
    layout->left_out++;
}

static void
layout_clear (BwMapLayout *layout)
{
  bw_map_clear_side (layout);
  bw_dim_row_clear (&layout->period);
  bw_dim_row_clear (&layout->intervals);
  bw_canvas_free (layout->canvas);
}

static BwDrawingAxis
axis_of (const BwMapAxis *axis)
{
  return (BwDrawingAxis){ axis->range.from, axis->range.to, axis->place0, axis->place1 };
}

static void
add_place (BwDrawing *drawing, const BwMapAxis *across, const BwMapAxis *down)
{
  const BwDrawingPlace place = {
    .box = { across->place0, down->place0, across->place1 - across->place0,
             down->place1 - down->place0 },
    .across = axis_of (across),
    .down = axis_of (down),
  };
  bw_drawing_add_place (drawing, &place);
  bw_drawing_zoom_across (drawing, &across->range, across->place0, across->place1);
  bw_drawing_zoom_down (drawing, &down->range, down->place0, down->place1);
}

/**
 * bw_map_drawing:
 * @width: width of the page, in user-space units
 * @height: its height, in the same units
 *
 * Returns: (transfer full): the map, drawn so that it fills the page
 */
BwDrawing *
bw_map_drawing (const BwMapView *what, double width, double height, const BwInk *ink)
{
  g_return_val_if_fail (what != NULL && what->raster != NULL && ink != NULL, NULL);
  BwMapLayout layout;

  layout_init (&layout, width, height, ink, what);
  BwDrawing *drawing = bw_drawing_new (layout.canvas, layout.left_out);
  bw_map_layout_draw (&layout, bw_drawing_pen (drawing));
  bw_map_take_words (drawing, &layout);
  add_place (drawing, &layout.across, &layout.down);
  layout_clear (&layout);
  return drawing;
}
