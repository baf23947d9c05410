/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

/* Lays everything out with what @layout keeps; returns whether all of that has a place. */
static gboolean
try_layout (BwLevelsLayout *layout)
{
  bw_canvas_clear (layout->canvas);
  gboolean all = bw_levels_claim_words (layout);
  bw_levels_place_all (layout);
  all &= bw_levels_is_large_enough (layout);
  return all & bw_levels_claim_labels (layout);
}

static void
layout_init (BwLevelsLayout *layout, double width, double height, const BwInk *ink,
             const BwLevelsView *what)
{
  *layout = (BwLevelsLayout){ .what = what, .model = what->model };
  layout->canvas = bw_canvas_new (ink, width, height);
  bw_levels_init_panels (layout);
  while (!try_layout (layout) && layout->left_out < BW_N_LEVELS_LEAVES)
    layout->left_out++;
}

static void
add_place (BwDrawing *drawing, const BwLevelsLayout *layout, const BwLevelsPanel *panel)
{
  const BwDrawingPlace place = {
    .id = panel->levels.conductor,
    .box = { layout->left, panel->top, layout->right - layout->left, panel->bottom - panel->top },
    .across = { layout->across.from, layout->across.to, layout->left, layout->right },
    .down = { panel->high_v, panel->low_v, panel->top, panel->bottom },
  };
  bw_drawing_add_place (drawing, &place);
}

/**
 * bw_levels_drawing:
 * @width: width of the page, in user-space units
 * @height: its height, in the same units
 *
 * Returns: (transfer full): the levels, drawn so that they fill the page
 */
BwDrawing *
bw_levels_drawing (const BwLevelsView *what, double width, double height, const BwInk *ink)
{
  g_return_val_if_fail (what != NULL && what->model != NULL && ink != NULL, NULL);
  BwLevelsLayout layout;

  layout_init (&layout, width, height, ink, what);
  BwDrawing *drawing = bw_drawing_new (layout.canvas, layout.left_out);
  bw_levels_layout_draw (&layout, bw_drawing_pen (drawing));
  bw_levels_take_words (drawing, &layout);
  for (guint i = 0; i < layout.n_panels; i++)
    add_place (drawing, &layout, &layout.panel[i]);
  bw_drawing_zoom_across (drawing, &layout.across, layout.left, layout.right);
  bw_canvas_free (layout.canvas);
  return drawing;
}
