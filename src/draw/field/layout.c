/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "draw/base/scale.h"

/* Where everything lies on the page. */

/* In heights of a line of text. */
#define LEAST_COMPOSITE 2.6
#define MOST_COMPOSITE 17.0
#define LEAST_LANE 1.0
#define MOST_LANE 8.0
#define MOST_LONE_LANE 14.0 /* where there is one row */
#define LANE_GAP 0.3        /* of a lane's height */
#define TICK 0.4

#define STUB_SHARE 0.1     /* of a line, shown before the first one */
#define LEAST_SHOWN 0.0625 /* of a line */

double
bw_field_lane_y (const BwFieldLane *lane, double level)
{
  double share = (lane->high - level) / (lane->high - lane->low);
  return lane->top + share * (lane->bottom - lane->top);
}

/* Where the line starts that @half_line lies in, and its number. */
int
bw_field_line_start (const BwFieldShape *shape, int half_line, int *line)
{
  gboolean middle;
  *line = bw_raster_line_at (shape->raster, shape->field, half_line, &middle);
  return half_line - (middle ? 1 : 0);
}

void
bw_field_init_range (const BwFieldRow *rows, guint n, BwViewRange *range)
{
  double period_s = rows[0].shape.line.period_s;
  double low_s = 0, high_s = 0;
  for (guint i = 0; i < n; i++)
    {
      const BwFieldShape *shape = &rows[i].shape;
      low_s = MIN (low_s, bw_field_shape_time (shape, shape->start[0]));
      high_s = MAX (high_s, bw_field_shape_time (shape, shape->start[BW_N_PARTS]));
    }
  bw_view_range_init (range, low_s - STUB_SHARE * period_s, high_s, LEAST_SHOWN * period_s);
}

static void
add_lane (BwFieldRow *row, BwLane kind, double low, double high)
{
  row->lanes[row->n_lanes++] = (BwFieldLane){ .kind = kind, .low = low, .high = high };
}

static void
init_row (BwFieldRow *row, const BwRaster *raster, int field)
{
  gboolean trilevel = raster->sync_shape == BW_SHAPE_TRILEVEL;
  gboolean h_positive = raster->h_polarity == BW_POLARITY_POSITIVE;
  gboolean v_positive = raster->v_polarity == BW_POLARITY_POSITIVE;

  bw_field_shape_init (&row->shape, raster, field);
  if (row->shape.composite)
    {
      add_lane (row, BW_LANE_COMPOSITE, -BW_LEVEL_SYNC, BW_LEVEL_WHITE);
      return;
    }
  add_lane (row, BW_LANE_PICTURE, BW_LEVEL_BLANKING, BW_LEVEL_WHITE);
  add_lane (row, BW_LANE_H, h_positive && !trilevel ? 0 : -BW_LEVEL_SYNC,
            h_positive || trilevel ? BW_LEVEL_SYNC : 0);
  add_lane (row, BW_LANE_V, v_positive ? 0 : -BW_LEVEL_SYNC, v_positive ? BW_LEVEL_SYNC : 0);
}

void
bw_field_init_rows (BwFieldLayout *layout)
{
  const BwFieldView *what = layout->what;
  int n_colours = bw_system_facts (what->system)->burst_fields;

  layout->burst = bw_system_knows_burst (what->system, what->raster);
  layout->n_rows = what->raster->scan == BW_SCAN_INTERLACED ? 2 : 1;
  for (guint i = 0; i < layout->n_rows; i++)
    {
      BwFieldRow *row = &layout->row[i];
      int colour_field = (int) i;
      if (layout->burst)
        colour_field = ((what->colour_field % n_colours) + n_colours + (int) i) % n_colours;
      row->burst = (BwBurst){ what->system, colour_field };
      init_row (row, what->raster, colour_field % 2);
    }
}

/* Places across the page */

void
bw_field_place_across (BwFieldLayout *layout)
{
  BwCanvas *canvas = layout->canvas;
  const BwFieldRow *row = &layout->row[0];
  double widest = 0;

  for (guint i = 0; i < row->n_lanes; i++)
    widest = MAX (widest,
                  bw_canvas_measure (canvas, bw_field_text_lane (row->lanes[i].kind)).width);
  layout->ruler.left = canvas->pad * 1.5 + (widest > 0 ? widest + canvas->pad / 2 : 0);
  layout->ruler.right = MAX (canvas->width - canvas->pad * 1.5, layout->ruler.left + 1);
}

/* Dimensions */

static void
add_dim (BwDimRow *row, const char *one, const char *two, const char *three, double x0, double x1)
{
  const char *text[BW_N_GIVEN_DIM_FORMS] = { one, two, three };
  bw_dim_row_add (row, x0, x1, text);
}

/* Whether both ends are shown; only then can a length be drawn. */
gboolean
bw_field_is_whole (const BwFieldLayout *layout, double x0, double x1)
{
  return x0 >= layout->ruler.left - 0.5 && x1 <= layout->ruler.right + 0.5;
}

static void
add_length (const BwFieldLayout *layout, BwDimRow *dims, const BwFieldShape *shape,
            const char *name, int from_half_line, int to_half_line)
{
  int half_lines = to_half_line - from_half_line;
  double x0 = bw_ruler_x (&layout->ruler, bw_field_shape_time (shape, from_half_line));
  double x1 = bw_ruler_x (&layout->ruler, bw_field_shape_time (shape, to_half_line));
  char mark = layout->what->mark;

  if (half_lines <= 0 || !bw_field_is_whole (layout, x0, x1))
    return;
  gboolean times = bw_field_keeps (layout, BW_FIELD_LEAVE_TIMES);
  g_autofree char *lines = bw_field_text_lines (half_lines, mark);
  g_autofree char *time = bw_text_length (half_lines * shape->half_line_s, mark);
  g_autofree char *one = g_strconcat (name, "  ", lines, times ? " · " : NULL, time, NULL);
  g_autofree char *two = g_strconcat (name, "\n", lines, times ? " · " : NULL, time, NULL);
  g_autofree char *three = g_strconcat (name, "\n", lines, times ? "\n" : NULL, time, NULL);
  add_dim (dims, one, two, three, x0, x1);
}

static void
add_no_burst (const BwFieldLayout *layout, BwFieldRow *row)
{
  const BwFieldShape *shape = &row->shape;
  int from, to;

  if (!layout->burst || !bw_field_keeps (layout, BW_FIELD_LEAVE_BURST)
      || !bw_burst_gap (shape, &row->burst, &from, &to))
    return;
  double x0 = bw_ruler_x (&layout->ruler, bw_field_shape_time (shape, from));
  double x1 = bw_ruler_x (&layout->ruler, bw_field_shape_time (shape, to));
  int first = bw_raster_line_at (shape->raster, shape->field, from, NULL);
  int last = bw_raster_line_at (shape->raster, shape->field, to - 2, NULL);
  /* Translators: the first and the last line. */
  g_autofree char *lines = g_strdup_printf (_ ("%1$d to %2$d"), first, last);
  g_autofree char *one = g_strconcat (_ ("no burst"), "  ", lines, NULL);
  g_autofree char *two = g_strconcat (_ ("no burst"), "\n", lines, NULL);
  if (bw_field_is_whole (layout, x0, x1))
    add_dim (&row->no_burst, one, two, two, x0, x1);
}

double
bw_field_name_start (const BwFieldLayout *layout, const BwFieldRow *row)
{
  return row->n_lanes > 1 ? layout->canvas->pad : layout->ruler.left;
}

double
bw_field_name_end (const BwFieldLayout *layout, const BwFieldRow *row, gboolean colour)
{
  g_autofree char *name = bw_field_text_row (row, colour);
  return bw_field_name_start (layout, row) + bw_canvas_measure (layout->canvas, name).width
         + layout->canvas->pad / 2;
}

/* The whole field blanking has its dimension beside the name of the row, if there is room. */
static void
add_total (const BwFieldLayout *layout, BwFieldRow *row)
{
  const BwFieldShape *shape = &row->shape;
  int from = shape->start[BW_PART_FRONT_PORCH], to = shape->start[BW_PART_BORDER_AFTER];
  double x = bw_ruler_x (&layout->ruler, bw_field_shape_time (shape, from));

  if (bw_field_keeps (layout, BW_FIELD_LEAVE_TOTAL)
      && (layout->n_rows == 1 || bw_field_name_end (layout, row, FALSE) <= x))
    add_length (layout, &row->total, shape, _ ("field blanking"), from, to);
}

void
bw_field_clear_dims (BwFieldRow *row)
{
  bw_dim_row_clear (&row->total);
  bw_dim_row_clear (&row->parts);
  bw_dim_row_clear (&row->no_burst);
}

static void
size_row (BwFieldLayout *layout, BwFieldRow *row)
{
  const BwFieldShape *shape = &row->shape;
  const int *start = shape->start;

  bw_field_clear_dims (row);
  row->total.above = row->parts.above = TRUE;
  for (guint part = BW_PART_BORDER_BEFORE; part < BW_PART_PICTURE_AFTER; part++)
    add_length (layout, &row->parts, shape, bw_field_part_label (shape, part), start[part],
                start[part + 1]);
  add_total (layout, row);
  add_no_burst (layout, row);
  bw_dim_row_size (&row->total, layout->canvas);
  bw_dim_row_size (&row->parts, layout->canvas);
  bw_dim_row_size (&row->no_burst, layout->canvas);
}

/**
 * bw_field_size_rows:
 *
 * Makes the dimensions of every row, with what @layout keeps.
 */
void
bw_field_size_rows (BwFieldLayout *layout)
{
  bw_ruler_choose_scale (&layout->ruler, bw_field_keeps (layout, BW_FIELD_LEAVE_SCALE));
  for (guint i = 0; i < layout->n_rows; i++)
    size_row (layout, &layout->row[i]);
}

/* Places down the page */

static double
head_before (const BwFieldLayout *layout, const BwFieldRow *row)
{
  return MAX (row->total.n > 0 ? row->total.before : 0, layout->canvas->text_height / 2);
}

static double
head_after (const BwFieldLayout *layout, const BwFieldRow *row)
{
  return MAX (row->total.n > 0 ? row->total.after : 0, layout->canvas->text_height / 2);
}

/* The height of a row without its lanes. */
static double
fixed_height (const BwFieldLayout *layout, const BwFieldRow *row)
{
  const BwCanvas *canvas = layout->canvas;
  double numbers = (TICK + 1) * canvas->text_height + canvas->pad / 2;
  return head_before (layout, row) + head_after (layout, row) + row->parts.before + row->parts.after
         + numbers + (layout->ruler.scale_s > 0 ? canvas->text_height : 0);
}

static double
lanes_height (const BwFieldRow *row, double lane)
{
  return lane * (row->n_lanes + LANE_GAP * (row->n_lanes - 1));
}

static void
place_lanes (BwFieldRow *row, double top, double lane)
{
  for (guint i = 0; i < row->n_lanes; i++)
    {
      row->lanes[i].top = floor (top + i * (1 + LANE_GAP) * lane + 0.5);
      row->lanes[i].bottom = floor (row->lanes[i].top + lane + 0.5);
    }
}

/* The lines without burst stand between white and the bursts. */
static void
place_no_burst (BwFieldRow *row, const BwCanvas *canvas)
{
  const BwFieldLane *lane = &row->lanes[0];
  double below = bw_field_lane_y (lane, BW_LEVEL_SYNC / 2) - canvas->pad / 2;
  double height = row->no_burst.before + row->no_burst.after;
  double air = MAX (below - lane->top - height, 0);

  row->no_burst.from_y = bw_field_lane_y (lane, BW_LEVEL_BLANKING);
  row->no_burst.y = below - air / 2 - row->no_burst.after;
}

static double
place_row (const BwFieldLayout *layout, BwFieldRow *row, double top, double lane, double air)
{
  const BwCanvas *canvas = layout->canvas;

  row->head_y = row->total.y = top + head_before (layout, row);
  row->parts.y = row->head_y + head_after (layout, row) + air + row->parts.before;
  place_lanes (row, row->parts.y + row->parts.after + air, lane);
  row->total.from_y = row->parts.from_y = row->lanes[0].top;
  row->ticks_y = row->lanes[row->n_lanes - 1].bottom + canvas->pad / 2;
  row->scale_y = row->ticks_y + TICK * canvas->text_height;
  row->numbers_y = row->scale_y + (layout->ruler.scale_s > 0 ? canvas->text_height : 0);
  row->bottom = row->numbers_y + canvas->text_height;
  place_no_burst (row, canvas);
  return row->bottom;
}

/* Returns whether the lanes are high enough. */
gboolean
bw_field_place_down (BwFieldLayout *layout)
{
  const BwCanvas *canvas = layout->canvas;
  double text = canvas->text_height, gap = canvas->pad, top = canvas->pad / 2;
  gboolean composite = layout->row[0].shape.composite;
  double room = layout->words_y - canvas->pad - top - gap * (layout->n_rows - 1);
  double per_lane = lanes_height (&layout->row[0], 1) * layout->n_rows;

  for (guint i = 0; i < layout->n_rows; i++)
    room -= fixed_height (layout, &layout->row[i]);
  double lane = MAX (room / per_lane, 0.3 * text);
  double most = (composite            ? MOST_COMPOSITE
                 : layout->n_rows > 1 ? MOST_LANE
                                      : MOST_LONE_LANE)
                * text;
  double spare = MAX (lane - most, 0) * per_lane;
  double air = MIN (spare / (4 * layout->n_rows), text);
  lane = MIN (lane, most);
  top += MAX (spare - 2 * air * layout->n_rows, 0) / (layout->n_rows + 1);
  for (guint i = 0; i < layout->n_rows; i++)
    top = place_row (layout, &layout->row[i], top, lane, air) + gap
          + MAX (spare - 2 * air * layout->n_rows, 0) / (layout->n_rows + 1);
  return lane >= (composite ? LEAST_COMPOSITE : LEAST_LANE) * text;
}
