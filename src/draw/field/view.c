/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

#include <math.h>

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
  if (what->range != NULL)
    layout->range = *what->range;
  else
    bw_field_init_range (layout->row, layout->n_rows, &layout->range);
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

/**
 * bw_field_view_range:
 * @range: (out caller-allocates): the whole vertical interval of @raster, in seconds after 0V, with
 *   some lines of picture before and after; down to a sixteenth of a line can be shown
 */
void
bw_field_view_range (const BwRaster *raster, BwViewRange *range)
{
  BwFieldRow rows[2];
  guint n = raster->scan == BW_SCAN_INTERLACED ? 2 : 1;
  for (guint i = 0; i < n; i++)
    bw_field_shape_init (&rows[i].shape, raster, (int) i);
  bw_field_init_range (rows, n, range);
}

/**
 * bw_draw_field_view:
 * @width: of the page, in user-space units; @height: likewise
 *
 * Draws the vertical interval so that it fills the page.
 */
void
bw_draw_field_view (cairo_t *cr, double width, double height, const BwInk *ink,
                    const BwFieldView *what)
{
  BwFieldLayout layout;
  layout_init (&layout, width, height, ink, what);
  cairo_save (cr);
  bw_field_layout_draw (&layout, cr);
  cairo_restore (cr);
  layout_clear (&layout);
}

static void
read_point (const BwFieldLayout *layout, guint i, double x, BwFieldPoint *point)
{
  const BwFieldShape *shape = &layout->row[i].shape;
  double time_s = bw_view_range_value (&layout->range, x, layout->left, layout->right);
  int line, start = bw_field_line_start (&layout->row[i], (int) floor (time_s / shape->half_line_s),
                                         &line);

  *point = (BwFieldPoint){
    .row = (int) i,
    .field = shape->field,
    .time_s = time_s,
    .line = line,
    .line_time_s = time_s - bw_field_shape_time (shape, start),
    .part = bw_field_shape_at (shape, time_s),
  };
}

/**
 * bw_field_view_read:
 * @width: as it was drawn; likewise @height, @ink and @what
 * @x: a point of the page
 * @y: likewise
 * @point: (out): what is there
 *
 * Returns: whether the point lies on a row, from its head to its line numbers; if not, @point is
 * left as it is
 */
gboolean
bw_field_view_read (double width, double height, const BwInk *ink, const BwFieldView *what,
                    double x, double y, BwFieldPoint *point)
{
  BwFieldLayout layout;
  gboolean inside = FALSE;

  layout_init (&layout, width, height, ink, what);
  for (guint i = 0; i < layout.n_rows && !inside; i++)
    if (x >= layout.left && x <= layout.right && y >= layout.row[i].total.y
        && y <= layout.row[i].bottom)
      {
        read_point (&layout, i, x, point);
        inside = TRUE;
      }
  layout_clear (&layout);
  return inside;
}

/**
 * bw_field_view_x_at:
 * @width: as it was drawn; likewise @height, @ink and @what
 * @time_s: after the start of field sync
 *
 * The other way round from bw_field_view_read(), for a cursor.
 *
 * Returns: where on the page that time is, in every row; NAN if it is not shown
 */
double
bw_field_view_x_at (double width, double height, const BwInk *ink, const BwFieldView *what,
                    double time_s)
{
  BwFieldLayout layout;
  layout_init (&layout, width, height, ink, what);
  double x = bw_field_x (&layout, time_s);
  if (x < layout.left - 1e-6 || x > layout.right + 1e-6)
    x = NAN;
  layout_clear (&layout);
  return x;
}

/**
 * bw_field_view_labels:
 * @width: as for bw_draw_field_view(); likewise @height, @ink and @what
 * @left_out: (out) (nullable): how many of the steps in the header were left out; zero if
 *   everything has its place
 *
 * Returns: (transfer full) (element-type BwLabel): the labels as they are drawn
 */
GArray *
bw_field_view_labels (double width, double height, const BwInk *ink, const BwFieldView *what,
                      guint *left_out)
{
  BwFieldLayout layout;
  layout_init (&layout, width, height, ink, what);
  GArray *labels = g_array_ref (layout.canvas->labels);
  if (left_out != NULL)
    *left_out = layout.left_out;
  layout_clear (&layout);
  return labels;
}
