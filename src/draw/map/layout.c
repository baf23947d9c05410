/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "draw/line/shape.h"

/* Where everything lies on the page. */

/* In heights of a line of text. */
#define LEAST_MAP 4.0
#define SIDE_GAP 1.2 /* from the map to the dimension line at its right */

#define LEAST_OF_HEIGHT 0.40 /* that the map takes of the page, or else of its width */
#define LEAST_OF_WIDTH 0.50
#define LEAST_SHARE 0.01 /* of a line or field that can be shown */

/**
 * bw_map_axes:
 * @across: (out caller-allocates): of one line; likewise @down, of the field from one field sync to
 *   the next
 *
 * Fills what follows from @raster; all of it is shown.
 */
void
bw_map_axes (const BwRaster *raster, BwMapAxis *across, BwMapAxis *down)
{
  const BwFieldTiming *field = &raster->field[0], *next = &raster->field[1];
  const double lengths[BW_N_MAP_INTERVALS] = {
    [BW_MAP_SYNC] = field->sync / 2.0,        [BW_MAP_BACK_PORCH] = field->back_porch / 2.0,
    [BW_MAP_BORDER_FIRST] = raster->v_border, [BW_MAP_ACTIVE] = field->active / 2.0,
    [BW_MAP_BORDER_LAST] = raster->v_border,  [BW_MAP_FRONT_PORCH] = next->front_porch / 2.0,
  };
  BwLineShape line;

  *across = *down = (BwMapAxis){ .place1 = 1 };
  bw_line_shape_init (&line, raster);
  for (guint i = 0; i < BW_N_MAP_INTERVALS; i++)
    {
      across->start[i] = line.start_s[BW_INTERVAL_SYNC + i];
      down->start[i + 1] = down->start[i] + lengths[i];
    }
  across->start[BW_N_MAP_INTERVALS] = across->start[0] + line.period_s;
  bw_view_range_init (&across->range, across->start[0], across->start[BW_N_MAP_INTERVALS],
                      LEAST_SHARE * line.period_s);
  bw_view_range_init (&down->range, 0, down->start[BW_N_MAP_INTERVALS],
                      LEAST_SHARE * down->start[BW_N_MAP_INTERVALS]);
}

/* Across the page: dimensions over the map */

gboolean
bw_map_is_whole (const BwMapAxis *axis, double from, double to)
{
  double slack = 1e-6 * (axis->range.high - axis->range.low);
  return from >= axis->range.from - slack && to <= axis->range.to + slack;
}

static char *
pixels_text (const BwMapLayout *layout, int pixels)
{
  if (pixels <= 0 || !bw_map_keeps (layout, BW_MAP_LEAVE_PIXELS))
    return g_strdup ("");
  return g_strdup_printf ("%d\u00a0px", pixels);
}

static void
add_interval_dim (BwMapLayout *layout, BwMapInterval interval)
{
  const BwMapAxis *axis = &layout->across;
  double from_s = axis->start[interval], to_s = axis->start[interval + 1];
  g_autofree char *time = bw_text_us (to_s - from_s, layout->what->mark);
  g_autofree char *pixels = pixels_text (layout, bw_map_pixels (layout->what->raster, interval));

  if (to_s > from_s && bw_map_is_whole (axis, from_s, to_s))
    bw_dim_row_add_figure (&layout->intervals, bw_map_place (axis, from_s),
                           bw_map_place (axis, to_s), bw_map_text_across (interval), time, pixels);
}

static void
add_period_dim (BwMapLayout *layout)
{
  const BwMapAxis *axis = &layout->across;
  g_autofree char *time = bw_text_us (layout->figures.line_period_s, layout->what->mark);
  g_autofree char *pixels = pixels_text (layout, layout->figures.h_total);

  if (bw_map_keeps (layout, BW_MAP_LEAVE_PERIOD) && bw_view_range_is_whole (&axis->range))
    bw_dim_row_add_figure (&layout->period, axis->place0, axis->place1, _ ("line period"), time,
                           pixels);
}

static void
size_rows (BwMapLayout *layout)
{
  bw_dim_row_clear (&layout->period);
  bw_dim_row_clear (&layout->intervals);
  layout->period.above = layout->intervals.above = TRUE;
  add_period_dim (layout);
  for (guint i = 0; i < BW_N_MAP_INTERVALS; i++)
    add_interval_dim (layout, i);
  bw_dim_row_size (&layout->period, layout->canvas);
  bw_dim_row_size (&layout->intervals, layout->canvas);
}

/* Down the page: dimensions beside the map */

void
bw_map_clear_side (BwMapLayout *layout)
{
  for (guint i = 0; i < layout->n_side; i++)
    g_free (layout->side[i].text);
  layout->n_side = 0;
  g_clear_pointer (&layout->lines.text, g_free);
}

static char *
side_text (const BwMapLayout *layout, const char *name, double lines, gboolean one_line)
{
  char mark = layout->what->mark;
  g_autofree char *count = bw_map_text_lines (lines, mark);
  g_autofree char *time = bw_text_length (lines * layout->figures.line_period_s, mark);
  const char *after = one_line ? "  " : "\n";
  if (!bw_map_keeps (layout, BW_MAP_LEAVE_TIMES))
    return g_strconcat (name, "  ", count, NULL);
  return g_strconcat (name, after, count, " · ", time, NULL);
}

/* Their labels on one line each, or on two. */
static void
fill_side (BwMapLayout *layout, gboolean one_line)
{
  const BwMapAxis *axis = &layout->down;
  bw_map_clear_side (layout);
  for (guint i = 0; i < BW_N_MAP_INTERVALS; i++)
    {
      double from = axis->start[i], to = axis->start[i + 1];
      if (to <= from || !bw_map_is_whole (axis, from, to))
        continue;
      BwMapDim *dim = &layout->side[layout->n_side++];
      *dim = (BwMapDim){ .text = side_text (layout, bw_map_text_down (i), to - from, one_line) };
      dim->box = bw_canvas_measure (layout->canvas, dim->text);
    }
  if (!bw_map_keeps (layout, BW_MAP_LEAVE_LINES) || !bw_view_range_is_whole (&axis->range))
    return;
  const char *name = layout->what->raster->scan == BW_SCAN_INTERLACED ? _ ("field") : _ ("frame");
  g_autofree char *count = bw_map_text_lines (axis->start[BW_N_MAP_INTERVALS], layout->what->mark);
  g_autofree char *time = bw_text_length (axis->start[BW_N_MAP_INTERVALS]
                                              * layout->figures.line_period_s,
                                          layout->what->mark);
  layout->lines = (BwMapDim){ .text = g_strconcat (name, "\n", count, "\n", time, NULL) };
  layout->lines.box = bw_canvas_measure (layout->canvas, layout->lines.text);
}

static double
side_width (const BwMapLayout *layout)
{
  double widest = 0;
  for (guint i = 0; i < layout->n_side; i++)
    widest = MAX (widest, layout->side[i].box.width);
  return (SIDE_GAP + BW_MAP_LABEL_GAP) * layout->canvas->text_height + widest + layout->canvas->pad;
}

/* From the map to the dimension line at its left. */
static double
lines_gap (const BwMapLayout *layout)
{
  return 2.5 * layout->canvas->pad;
}

static double
lines_width (const BwMapLayout *layout)
{
  const BwCanvas *canvas = layout->canvas;
  double gap = lines_gap (layout) + canvas->pad;
  if (layout->lines.text == NULL)
    return gap;
  return gap + 0.5 * canvas->text_height + layout->lines.box.width;
}

/* The map */

/* Width of the whole map to its height. */
static double
map_aspect (const BwMapLayout *layout)
{
  const BwMapAxis *across = &layout->across, *down = &layout->down;
  double h = (across->start[BW_MAP_ACTIVE + 1] - across->start[BW_MAP_ACTIVE])
             / (across->range.high - across->range.low);
  double v = (down->start[BW_MAP_ACTIVE + 1] - down->start[BW_MAP_ACTIVE])
             / (down->range.high - down->range.low);
  return bw_map_aspect (layout->what, NULL) * v / h;
}

static double
rows_height (const BwMapLayout *layout)
{
  const BwDimRow *period = &layout->period, *intervals = &layout->intervals;
  double height = layout->canvas->pad / 2 + intervals->before + intervals->after;
  return height + (period->n > 0 ? period->before + period->after : 0);
}

/* Room below the map for the name of 0H. */
static double
foot_height (const BwMapLayout *layout)
{
  return layout->canvas->text_height + layout->canvas->pad;
}

/* Returns the width of the map. */
static double
place_map (BwMapLayout *layout)
{
  const BwCanvas *canvas = layout->canvas;
  double left = lines_width (layout), right = side_width (layout);
  double top = rows_height (layout);
  double room_x = MAX (canvas->width - left - right, 1);
  double room_y = MAX (layout->words_y - foot_height (layout) - top, 1);
  double width = MIN (room_x, room_y * map_aspect (layout)), height = width / map_aspect (layout);

  layout->across.place0 = left + (room_x - width) / 2;
  layout->across.place1 = layout->across.place0 + width;
  layout->down.place0 = top + (room_y - height) / 2;
  layout->down.place1 = layout->down.place0 + height;
  return width;
}

static void
place_dims (BwMapLayout *layout)
{
  double top = layout->down.place0, gap = SIDE_GAP * layout->canvas->text_height;
  layout->intervals.y = top - layout->intervals.after;
  layout->period.y = layout->intervals.y - layout->intervals.before - layout->period.after;
  layout->intervals.from_y = layout->period.from_y = top;
  layout->side_x = layout->across.place1 + gap;
  layout->lines_x = layout->across.place0 - lines_gap (layout);
}

static void
place_glass (BwMapLayout *layout)
{
  const BwMapAxis *across = &layout->across, *down = &layout->down;
  double x0 = bw_map_place (across, across->start[BW_MAP_ACTIVE]);
  double y0 = bw_map_place (down, down->start[BW_MAP_ACTIVE]);
  double width = bw_map_place (across, across->start[BW_MAP_ACTIVE + 1]) - x0;
  double height = bw_map_place (down, down->start[BW_MAP_ACTIVE + 1]) - y0;
  double h = CLAMP (layout->what->overscan_h, 0, 1), v = CLAMP (layout->what->overscan_v, 0, 1);

  layout->glass = (BwBox){ x0 + width * h / 2, y0 + height * v / 2, width * (1 - h),
                           height * (1 - v) };
}

/* Labels of one line beside the map if that makes it no smaller than labels of two. The rows over
 * the map are sized twice, as their form and its width depend on each other. */
void
bw_map_place_all (BwMapLayout *layout)
{
  fill_side (layout, FALSE);
  double width = place_map (layout);
  fill_side (layout, TRUE);
  if (place_map (layout) < 0.97 * width)
    fill_side (layout, FALSE);
  place_map (layout);
  size_rows (layout);
  place_map (layout);
  size_rows (layout);
  place_map (layout);
  place_dims (layout);
  place_glass (layout);
}

gboolean
bw_map_is_large_enough (const BwMapLayout *layout)
{
  const BwCanvas *canvas = layout->canvas;
  double width = layout->across.place1 - layout->across.place0;
  double height = layout->down.place1 - layout->down.place0;
  double least = LEAST_MAP * canvas->text_height;

  return width >= least && height >= least
         && (width >= LEAST_OF_WIDTH * canvas->width || height >= LEAST_OF_HEIGHT * canvas->height);
}
