/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

#include <math.h>

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
  bw_vector_init_scale (layout);
  while (!try_layout (layout) && layout->left_out < BW_N_VECTOR_LEAVES)
    layout->left_out++;
}

static void
layout_clear (BwVectorLayout *layout)
{
  g_array_unref (layout->targets);
  g_clear_pointer (&layout->path, g_array_unref);
  g_clear_pointer (&layout->other, g_array_unref);
  bw_canvas_free (layout->canvas);
}

/**
 * bw_draw_vector_view:
 * @width: of the page, in user-space units; @height: likewise
 *
 * Draws the plane so that it fills the page.
 */
void
bw_draw_vector_view (cairo_t *cr, double width, double height, const BwInk *ink,
                     const BwVectorView *what)
{
  BwVectorLayout layout;
  layout_init (&layout, width, height, ink, what);
  layout.path = bw_vector_path_of (what, 0);
  if (bw_vector_is_switched (what))
    layout.other = bw_vector_path_of (what, 1);
  cairo_save (cr);
  bw_vector_layout_draw (&layout, cr);
  cairo_restore (cr);
  layout_clear (&layout);
}

static BwBar
nearest_bar (const GArray *targets, double u_v, double v_v)
{
  BwBar nearest = BW_BAR_YELLOW;
  double least_v = INFINITY;

  for (guint i = 0; i < targets->len; i++)
    {
      const BwVectorTarget *target = &g_array_index (targets, BwVectorTarget, i);
      double away_v = hypot (target->u_v - u_v, target->v_v - v_v);
      if (target->bar == BW_N_BARS || away_v >= least_v)
        continue;
      least_v = away_v;
      nearest = target->bar;
    }
  return nearest;
}

/**
 * bw_vector_view_read:
 * @width: as it was drawn; likewise @height, @ink and @what
 * @x: a point of the page
 * @y: likewise
 * @point: (out): what is there
 *
 * Returns: whether the point lies inside the ring; if not, @point is left as it is
 */
gboolean
bw_vector_view_read (double width, double height, const BwInk *ink, const BwVectorView *what,
                     double x, double y, BwVectorPoint *point)
{
  BwVectorLayout layout;
  layout_init (&layout, width, height, ink, what);
  double u_v = (x - layout.x) / layout.radius * layout.full_v;
  double v_v = (layout.y - y) / layout.radius * layout.full_v;
  double phase_deg = atan2 (v_v, u_v) * 180 / G_PI;
  gboolean inside = hypot (u_v, v_v) <= layout.full_v * (1 + 1e-9);

  if (inside)
    *point = (BwVectorPoint){ u_v, v_v, hypot (u_v, v_v),
                              phase_deg < 0 ? phase_deg + 360 : phase_deg,
                              nearest_bar (layout.targets, u_v, v_v) };
  layout_clear (&layout);
  return inside;
}

/**
 * bw_vector_view_place:
 * @width: as it was drawn; likewise @height, @ink and @what
 * @u_v: along B−Y, or Pb
 * @v_v: along R−Y, or Pr
 * @x: (out): the point of the page
 * @y: (out): likewise
 *
 * The other way round from bw_vector_view_read(), for a cursor.
 *
 * Returns: whether the point is shown
 */
gboolean
bw_vector_view_place (double width, double height, const BwInk *ink, const BwVectorView *what,
                      double u_v, double v_v, double *x, double *y)
{
  BwVectorLayout layout;
  layout_init (&layout, width, height, ink, what);
  *x = bw_vector_x (&layout, u_v);
  *y = bw_vector_y (&layout, v_v);
  gboolean shown = hypot (u_v, v_v) <= layout.full_v;
  layout_clear (&layout);
  return shown;
}

/**
 * bw_vector_view_labels:
 * @width: as for bw_draw_vector_view(); likewise @height, @ink and @what
 * @left_out: (out) (nullable): how many of the steps in the header were left out; zero if
 *   everything has its place
 *
 * Returns: (transfer full) (element-type BwLabel): the labels as they are drawn
 */
GArray *
bw_vector_view_labels (double width, double height, const BwInk *ink, const BwVectorView *what,
                       guint *left_out)
{
  BwVectorLayout layout;
  layout_init (&layout, width, height, ink, what);
  GArray *labels = g_array_ref (layout.canvas->labels);
  if (left_out != NULL)
    *left_out = layout.left_out;
  layout_clear (&layout);
  return labels;
}
