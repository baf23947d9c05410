/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

#include <math.h>

#include "core/raster/waveform.h"

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

/**
 * bw_map_view_ranges:
 * @across: (out caller-allocates): one whole line, in seconds after 0H
 * @down: (out caller-allocates): one field, or the frame of a progressive raster, in lines after 0V
 */
void
bw_map_view_ranges (const BwRaster *raster, BwViewRange *across, BwViewRange *down)
{
  BwMapAxis h, v;
  bw_map_axes (raster, &h, &v);
  *across = h.range;
  *down = v.range;
}

/**
 * bw_draw_map_view:
 * @width: of the page, in user-space units; @height: likewise
 *
 * Draws the map so that it fills the page.
 */
void
bw_draw_map_view (cairo_t *cr, double width, double height, const BwInk *ink, const BwMapView *what)
{
  BwMapLayout layout;
  layout_init (&layout, width, height, ink, what);
  cairo_save (cr);
  bw_map_layout_draw (&layout, cr);
  cairo_restore (cr);
  layout_clear (&layout);
}

static BwMapInterval
interval_at (const BwMapAxis *axis, double value)
{
  for (guint i = BW_N_MAP_INTERVALS - 1; i > 0; i--)
    if (axis->start[i + 1] > axis->start[i] && value >= axis->start[i])
      return i;
  return BW_MAP_SYNC;
}

static void
read_point (const BwMapLayout *layout, double x, double y, BwMapPoint *point)
{
  const BwMapAxis *across = &layout->across, *down = &layout->down;
  double time_s = bw_view_range_value (&across->range, x, across->place0, across->place1);
  double lines = bw_view_range_value (&down->range, y, down->place0, down->place1);

  *point = (BwMapPoint){
    .line_time_s = time_s,
    .lines = lines,
    .line = bw_raster_line_at (layout->what->raster, 0, 2 * (int) floor (lines), NULL),
    .across = interval_at (across, time_s),
    .down = interval_at (down, lines),
  };
}

/**
 * bw_map_view_read:
 * @width: as it was drawn; likewise @height, @ink and @what
 * @x: a point of the page
 * @y: likewise
 * @point: (out): what is there
 *
 * Returns: whether the point lies on the map; if not, @point is left as it is
 */
gboolean
bw_map_view_read (double width, double height, const BwInk *ink, const BwMapView *what, double x,
                  double y, BwMapPoint *point)
{
  BwMapLayout layout;
  layout_init (&layout, width, height, ink, what);
  gboolean inside = x >= layout.across.place0 && x < layout.across.place1 && y >= layout.down.place0
                    && y < layout.down.place1;
  if (inside)
    read_point (&layout, x, y, point);
  layout_clear (&layout);
  return inside;
}

/**
 * bw_map_view_place:
 * @width: as it was drawn; likewise @height, @ink and @what
 * @line_time_s: after 0H
 * @lines: after 0V
 * @x: (out): the point of the page
 * @y: (out): likewise
 *
 * The other way round from bw_map_view_read(), for a cursor.
 *
 * Returns: whether the point is shown
 */
gboolean
bw_map_view_place (double width, double height, const BwInk *ink, const BwMapView *what,
                   double line_time_s, double lines, double *x, double *y)
{
  BwMapLayout layout;
  layout_init (&layout, width, height, ink, what);
  const BwMapAxis *across = &layout.across, *down = &layout.down;
  *x = bw_map_place (across, line_time_s);
  *y = bw_map_place (down, lines);
  gboolean shown = bw_map_is_whole (across, line_time_s, line_time_s)
                   && bw_map_is_whole (down, lines, lines);
  layout_clear (&layout);
  return shown;
}

/**
 * bw_map_view_labels:
 * @width: as for bw_draw_map_view(); likewise @height, @ink and @what
 * @left_out: (out) (nullable): how many of the steps in the header were left out; zero if
 *   everything has its place
 *
 * Returns: (transfer full) (element-type BwLabel): the labels as they are drawn
 */
GArray *
bw_map_view_labels (double width, double height, const BwInk *ink, const BwMapView *what,
                    guint *left_out)
{
  BwMapLayout layout;
  layout_init (&layout, width, height, ink, what);
  GArray *labels = g_array_ref (layout.canvas->labels);
  if (left_out != NULL)
    *left_out = layout.left_out;
  layout_clear (&layout);
  return labels;
}
