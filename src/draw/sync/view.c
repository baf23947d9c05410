/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

#include <math.h>

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
init_range (const BwSyncMix *mix, BwViewRange *range)
{
  bw_view_range_init (range, mix->from_s, mix->to_s, LEAST_SHOWN * mix->line_s);
}

static void
layout_init (BwSyncLayout *layout, double width, double height, const BwInk *ink,
             const BwSyncView *what)
{
  *layout = (BwSyncLayout){ .what = what };
  layout->canvas = bw_canvas_new (ink, width, height);
  layout->mix = bw_sync_mix_new (what->what);
  layout->run = bw_sync_run_new (layout->mix, what->afc);
  if (what->range != NULL)
    layout->range = *what->range;
  else
    init_range (layout->mix, &layout->range);
  layout->lane[BW_SYNC_ROW_H].trace = &layout->mix->h;
  layout->lane[BW_SYNC_ROW_V].trace = &layout->mix->v;
  layout->lane[BW_SYNC_ROW_RESULT].trace = &layout->mix->result;
  layout->lane[BW_SYNC_ROW_STANDARD].trace = &layout->mix->standard;
  bw_sync_place_across (layout);
  while (!try_layout (layout) && layout->left_out < BW_N_SYNC_LEAVES)
    layout->left_out++;
}

static void
layout_clear (BwSyncLayout *layout)
{
  bw_sync_run_free (layout->run);
  bw_sync_mix_free (layout->mix);
  bw_canvas_free (layout->canvas);
}

/**
 * bw_sync_view_range:
 * @range: (out caller-allocates): the whole interval of @what, in seconds after 0V; down to a
 *   sixteenth of a line can be shown
 */
void
bw_sync_view_range (const BwSyncMixCase *what, BwViewRange *range)
{
  g_autoptr (BwSyncMix) mix = bw_sync_mix_new (what);
  init_range (mix, range);
}

/**
 * bw_draw_sync_view:
 * @width: of the page, in user-space units; @height: likewise
 *
 * Draws the mixture of sync so that it fills the page.
 */
void
bw_draw_sync_view (cairo_t *cr, double width, double height, const BwInk *ink,
                   const BwSyncView *what)
{
  BwSyncLayout layout;
  layout_init (&layout, width, height, ink, what);
  cairo_save (cr);
  bw_sync_layout_draw (&layout, cr);
  cairo_restore (cr);
  layout_clear (&layout);
}

/* The line whose place is not after @time_s; the first one if there is none. */
static const BwSyncLine *
line_of (const BwSyncLayout *layout, double time_s)
{
  const BwSyncLine *line = bw_sync_line (layout, 0);
  for (guint i = 1; i < layout->run->lines->len; i++)
    if (bw_sync_due (layout, bw_sync_line (layout, i)) <= time_s)
      line = bw_sync_line (layout, i);
  return line;
}

static void
read_point (const BwSyncLayout *layout, BwSyncRow row, double x, BwSyncPoint *point)
{
  double time_s = bw_view_range_value (&layout->range, x, layout->left, layout->right);
  const BwSyncLine *line = line_of (layout, time_s);
  const BwSyncTrace *trace = layout->lane[row].trace;
  double half_s = layout->mix->line_s / 2;
  const BwSyncMixCase *what = layout->what->what;
  gboolean middle;
  int half = (int) floor (time_s / half_s);
  int number = bw_raster_line_at (what->raster, what->field, half, &middle);

  *point = (BwSyncPoint){
    .row = row,
    .time_s = time_s,
    .line = number,
    .line_time_s = time_s - (half - (middle ? 1 : 0)) * half_s,
    .level = trace != NULL ? bw_sync_trace_level (trace, time_s) : -1,
    .edge = line->edge,
    .late_s = line->late_s,
    .phase_s = line->phase_s,
  };
}

/* The row at @y; marks and words under a lane are part of it. */
static gboolean
row_at (const BwSyncLayout *layout, double y, BwSyncRow *row)
{
  if (y < layout->lane[0].top - layout->canvas->pad || y > layout->lane[BW_SYNC_ROW_PHASE].bottom)
    return FALSE;
  *row = BW_SYNC_ROW_H;
  for (guint i = 1; i < BW_N_SYNC_ROWS; i++)
    if (y >= layout->lane[i].top - layout->canvas->pad / 4)
      *row = i;
  return TRUE;
}

/**
 * bw_sync_view_read:
 * @width: as it was drawn; likewise @height, @ink and @what
 * @x: a point of the page
 * @y: likewise
 * @point: (out): what is there
 *
 * Returns: whether the point lies on a row; if not, @point is left as it is
 */
gboolean
bw_sync_view_read (double width, double height, const BwInk *ink, const BwSyncView *what, double x,
                   double y, BwSyncPoint *point)
{
  BwSyncLayout layout;
  BwSyncRow row;

  layout_init (&layout, width, height, ink, what);
  gboolean inside = x >= layout.left && x <= layout.right && row_at (&layout, y, &row);
  if (inside)
    read_point (&layout, row, x, point);
  layout_clear (&layout);
  return inside;
}

/**
 * bw_sync_view_x_at:
 * @width: as it was drawn; likewise @height, @ink and @what
 * @time_s: after the start of field sync
 *
 * The other way round from bw_sync_view_read(), for a cursor.
 *
 * Returns: where on the page that time is, in every row; NAN if it is not shown
 */
double
bw_sync_view_x_at (double width, double height, const BwInk *ink, const BwSyncView *what,
                   double time_s)
{
  BwSyncLayout layout;
  layout_init (&layout, width, height, ink, what);
  double x = bw_sync_x (&layout, time_s);
  if (!bw_sync_shows (&layout, x))
    x = NAN;
  layout_clear (&layout);
  return x;
}

/**
 * bw_sync_view_labels:
 * @width: as for bw_draw_sync_view(); likewise @height, @ink and @what
 * @left_out: (out) (nullable): how many of the steps in the header were left out; zero if
 *   everything has its place
 *
 * Returns: (transfer full) (element-type BwLabel): the labels as they are drawn
 */
GArray *
bw_sync_view_labels (double width, double height, const BwInk *ink, const BwSyncView *what,
                     guint *left_out)
{
  BwSyncLayout layout;
  layout_init (&layout, width, height, ink, what);
  GArray *labels = g_array_ref (layout.canvas->labels);
  if (left_out != NULL)
    *left_out = layout.left_out;
  layout_clear (&layout);
  return labels;
}
