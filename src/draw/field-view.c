/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "field-view-private.h"

#include <math.h>
#include <string.h>

#include <glib/gi18n-lib.h>

/* In heights of a line of text. */
#define LEAST_COMPOSITE 2.6
#define MOST_COMPOSITE 17.0
#define LEAST_LANE 1.0
#define MOST_LANE 8.0
#define MOST_LONE_LANE 14.0 /* where there is one row */
#define LANE_GAP 0.3 /* of a lane's height */
#define TICK 0.4
#define SCALED_LINE 14.0 /* a line at least so wide has a scale in microseconds */
#define SCALE_STEP 4.5

#define STUB_SHARE 0.1     /* of a line, shown before the first one */
#define LEAST_SHOWN 0.0625 /* of a line */
#define LEAST_OF_LINE 0.75  /* that is seen if its number is to be shown */

double
bw_field_lane_y (const BwFieldLane *lane, double level)
{
  double share = (lane->high - level) / (lane->high - lane->low);
  return lane->top + share * (lane->bottom - lane->top);
}

/* Of one scanning line. */
double
bw_field_line_width (const BwFieldLayout *layout)
{
  double period_s = layout->row[0].shape.line.period_s;
  return bw_field_x (layout, period_s) - bw_field_x (layout, 0);
}

static void
init_range (const BwFieldRow *rows, guint n, BwViewRange *range)
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

static void
init_rows (BwFieldLayout *layout)
{
  const BwFieldView *what = layout->what;
  int n_colours = bw_colour_fields (what->system);

  layout->burst = bw_burst_is_known (what->system, what->raster);
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

static void
place_across (BwFieldLayout *layout)
{
  BwCanvas *canvas = layout->canvas;
  const BwFieldRow *row = &layout->row[0];
  double widest = 0;

  for (guint i = 0; i < row->n_lanes; i++)
    widest = MAX (widest, bw_canvas_measure (canvas, bw_field_text_lane (row->lanes[i].kind)).width);
  layout->left = canvas->pad * 1.5 + (widest > 0 ? widest + canvas->pad / 2 : 0);
  layout->right = MAX (canvas->width - canvas->pad * 1.5, layout->left + 1);
  layout->digit = bw_canvas_measure (canvas, "0000").width / 4;
}

/* The smallest of 1, 2, 5, 10 and so on that is not less than @least. */
static double
round_step (double least)
{
  static const double steps[] = { 1, 2, 5 };
  double decade = pow (10, floor (log10 (least)));
  for (guint i = 0; i < G_N_ELEMENTS (steps); i++)
    if (steps[i] * decade >= least * (1 - 1e-9))
      return steps[i] * decade;
  return 10 * decade;
}

static void
choose_scale (BwFieldLayout *layout)
{
  double line = bw_field_line_width (layout), text = layout->canvas->text_height;
  double period_s = layout->row[0].shape.line.period_s;

  layout->scale_s = 0;
  if (bw_field_keeps (layout, BW_FIELD_LEAVE_SCALE) && line >= SCALED_LINE * text)
    layout->scale_s = round_step (SCALE_STEP * text / line * period_s);
}

/* Dimensions */

static void
add_dim (BwDimRow *row, const char *one, const char *two, const char *three, double x0, double x1)
{
  const char *text[BW_N_DIM_FORMS] = { one, two, three };
  bw_dim_row_add (row, x0, x1, text);
}

/* Whether both ends are shown; only then can a length be drawn. */
static gboolean
is_whole (const BwFieldLayout *layout, double x0, double x1)
{
  return x0 >= layout->left - 0.5 && x1 <= layout->right + 0.5;
}

static void
add_length (const BwFieldLayout *layout, BwDimRow *dims, const BwFieldShape *shape,
            const char *name, int from_half_line, int to_half_line)
{
  int half_lines = to_half_line - from_half_line;
  double x0 = bw_field_x (layout, bw_field_shape_time (shape, from_half_line));
  double x1 = bw_field_x (layout, bw_field_shape_time (shape, to_half_line));
  char mark = layout->what->mark;

  if (half_lines <= 0 || !is_whole (layout, x0, x1))
    return;
  gboolean times = bw_field_keeps (layout, BW_FIELD_LEAVE_TIMES);
  g_autofree char *lines = bw_field_text_lines (half_lines, mark);
  g_autofree char *time = bw_field_text_time (half_lines * shape->half_line_s, mark);
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
  double x0 = bw_field_x (layout, bw_field_shape_time (shape, from));
  double x1 = bw_field_x (layout, bw_field_shape_time (shape, to));
  int first = bw_raster_line_at (shape->raster, shape->field, from, NULL);
  int last = bw_raster_line_at (shape->raster, shape->field, to - 2, NULL);
  g_autofree char *lines = g_strdup_printf (_ ("%d to %d"), first, last);
  g_autofree char *one = g_strconcat (_ ("no burst"), "  ", lines, NULL);
  g_autofree char *two = g_strconcat (_ ("no burst"), "\n", lines, NULL);
  if (is_whole (layout, x0, x1))
    add_dim (&row->no_burst, one, two, two, x0, x1);
}

static void
clear_dims (BwFieldRow *row)
{
  bw_dim_row_clear (&row->total);
  bw_dim_row_clear (&row->parts);
  bw_dim_row_clear (&row->no_burst);
}

static void
size_dims (BwFieldLayout *layout, BwFieldRow *row)
{
  const BwFieldShape *shape = &row->shape;
  const int *start = shape->start;

  clear_dims (row);
  row->total.above = row->parts.above = TRUE;
  for (guint part = BW_PART_BORDER_BEFORE; part < BW_PART_PICTURE_AFTER; part++)
    add_length (layout, &row->parts, shape, bw_field_part_label (shape, part), start[part],
                start[part + 1]);
  if (bw_field_keeps (layout, BW_FIELD_LEAVE_TOTAL))
    add_length (layout, &row->total, shape, _ ("field blanking"), start[BW_PART_FRONT_PORCH],
                start[BW_PART_BORDER_AFTER]);
  add_no_burst (layout, row);
  bw_dim_row_size (&row->total, layout->canvas);
  bw_dim_row_size (&row->parts, layout->canvas);
  bw_dim_row_size (&row->no_burst, layout->canvas);
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

/* What is not lanes. */
static double
fixed_height (const BwFieldLayout *layout, const BwFieldRow *row)
{
  const BwCanvas *canvas = layout->canvas;
  double numbers = (TICK + 1) * canvas->text_height + canvas->pad / 2;
  return head_before (layout, row) + head_after (layout, row) + row->parts.before
         + row->parts.after + numbers + (layout->scale_s > 0 ? canvas->text_height : 0);
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
  row->numbers_y = row->scale_y + (layout->scale_s > 0 ? canvas->text_height : 0);
  row->bottom = row->numbers_y + canvas->text_height;
  place_no_burst (row, canvas);
  return row->bottom;
}

/* Returns whether the lanes are high enough. */
static gboolean
place_down (BwFieldLayout *layout)
{
  const BwCanvas *canvas = layout->canvas;
  double text = canvas->text_height, gap = canvas->pad, top = canvas->pad / 2;
  gboolean composite = layout->row[0].shape.composite;
  double room = layout->words_y - canvas->pad - top - gap * (layout->n_rows - 1);
  double per_lane = lanes_height (&layout->row[0], 1) * layout->n_rows;

  for (guint i = 0; i < layout->n_rows; i++)
    room -= fixed_height (layout, &layout->row[i]);
  double lane = MAX (room / per_lane, 0.3 * text);
  double most = (composite ? MOST_COMPOSITE : layout->n_rows > 1 ? MOST_LANE : MOST_LONE_LANE) * text;
  double spare = MAX (lane - most, 0) * per_lane;
  double air = MIN (spare / (4 * layout->n_rows), text);
  lane = MIN (lane, most);
  top += MAX (spare - 2 * air * layout->n_rows, 0) / (layout->n_rows + 1);
  for (guint i = 0; i < layout->n_rows; i++)
    top = place_row (layout, &layout->row[i], top, lane, air) + gap
          + MAX (spare - 2 * air * layout->n_rows, 0) / (layout->n_rows + 1);
  return lane >= (composite ? LEAST_COMPOSITE : LEAST_LANE) * text;
}

/* Labels */

/* With space to both sides, so that figures side by side stay apart. Paper lies under one through
 * which the line of the datum passes. */
static gboolean
claim_figure (BwFieldLayout *layout, const char *text, double width, double x, double y,
              BwInkRole role)
{
  BwCanvas *canvas = layout->canvas;
  BwBox box = { x - width / 2, y, width, canvas->text_height };
  BwBox wide = { box.x - layout->digit / 2, box.y, width + layout->digit, box.height };
  BwLabel label = { (char *) text, box, role, PANGO_ALIGN_CENTER };

  label.halo = fabs (x - bw_field_x (layout, 0)) < width;
  return bw_canvas_is_free (canvas, wide) && bw_canvas_claim (canvas, &label);
}

static void
claim_number (BwFieldLayout *layout, const BwFieldRow *row, int line, double x, BwInkRole role)
{
  char text[16];
  g_snprintf (text, sizeof text, "%d", line);
  claim_figure (layout, text, (double) strlen (text) * layout->digit, x, row->numbers_y, role);
}

/* Where the number of the line stands that starts at @half_line: the middle of what is seen. */
static gboolean
number_x (const BwFieldLayout *layout, const BwFieldRow *row, int half_line, double *x)
{
  double x0 = bw_field_x (layout, bw_field_shape_time (&row->shape, half_line));
  double x1 = bw_field_x (layout, bw_field_shape_time (&row->shape, half_line + 2));
  double seen0 = MAX (x0, layout->left), seen1 = MIN (x1, layout->right);

  *x = (seen0 + seen1) / 2;
  return seen1 - seen0 >= MIN (LEAST_OF_LINE * (x1 - x0), 8 * layout->digit);
}

static int
line_start (const BwFieldRow *row, int half_line, int *line)
{
  gboolean middle;
  *line = bw_raster_line_at (row->shape.raster, row->shape.field, half_line, &middle);
  return half_line - (middle ? 1 : 0);
}

/* The line in which @half_line lies. */
static void
claim_key_number (BwFieldLayout *layout, const BwFieldRow *row, int half_line)
{
  int line, start = line_start (row, half_line, &line);
  double x;
  if (number_x (layout, row, start, &x))
    claim_number (layout, row, line, x, BW_INK_GRAPHITE);
}

static int
number_step (const BwFieldLayout *layout, int greatest)
{
  int digits = greatest > 999 ? 4 : 3;
  double wanted = (digits + 1.2) * layout->digit / bw_field_line_width (layout);
  return (int) round_step (MAX (wanted, 1));
}

static void
claim_numbers (BwFieldLayout *layout, const BwFieldRow *row)
{
  const int *start = row->shape.start;
  BwRasterFigures figures;
  bw_raster_figures (row->shape.raster, &figures);
  int step = number_step (layout, figures.lines_per_frame), line;
  int half_line = (int) floor (layout->range.from / row->shape.half_line_s);
  int last = (int) ceil (layout->range.to / row->shape.half_line_s);

  claim_key_number (layout, row, start[BW_PART_SYNC]);
  claim_key_number (layout, row, start[BW_PART_PICTURE_AFTER]);
  claim_key_number (layout, row, start[BW_PART_BORDER_BEFORE] - 1);
  for (half_line = line_start (row, half_line, &line); half_line < last; half_line += 2)
    {
      double x;
      line_start (row, half_line, &line);
      if (line % step == 0 && number_x (layout, row, half_line, &x))
        claim_number (layout, row, line, x, BW_INK_GRAPHITE_LIGHT);
    }
}

/* The names of parts that are not seen whole, and so have no dimension. Where the picture has a
 * lane of its own, that one has the name. */
static void
claim_names (BwFieldLayout *layout, const BwFieldRow *row)
{
  const BwFieldShape *shape = &row->shape;
  for (guint part = 0; part < BW_N_PARTS; part++)
    {
      double x0 = bw_field_x (layout, bw_field_shape_time (shape, shape->start[part]));
      double x1 = bw_field_x (layout, bw_field_shape_time (shape, shape->start[part + 1]));
      gboolean picture = part == BW_PART_PICTURE_BEFORE || part == BW_PART_PICTURE_AFTER;
      double seen0 = MAX (x0, layout->left), seen1 = MIN (x1, layout->right);
      const char *name = bw_field_part_label (shape, part);

      if ((picture ? row->n_lanes == 1 : !is_whole (layout, x0, x1))
          && seen1 - seen0 > bw_canvas_measure (layout->canvas, name).width)
        bw_canvas_claim_at (layout->canvas, name, BW_INK_GRAPHITE_LIGHT, (seen0 + seen1) / 2,
                            row->lanes[0].top - layout->canvas->pad / 2, 0.5, 1);
    }
}

/* The longest form that ends before the dimension of field blanking starts. */
static gboolean
claim_row_name (BwFieldLayout *layout, guint i)
{
  BwCanvas *canvas = layout->canvas;
  const BwFieldRow *row = &layout->row[i];
  double x = row->n_lanes > 1 ? canvas->pad : layout->left;
  double end = row->total.n > 0 ? row->total.at[0].x0 - canvas->pad / 2 : layout->right;

  if (layout->n_rows == 1)
    return TRUE;
  for (int longer = layout->burst ? 1 : 0; longer >= 0; longer--)
    {
      g_autofree char *name = bw_field_text_row (row, longer == 1);
      if (x + bw_canvas_measure (canvas, name).width <= end)
        return bw_canvas_claim_at (canvas, name, BW_INK_GRAPHITE, x, row->head_y, 0, 0.5);
    }
  return FALSE;
}

static void
claim_lane_names (BwFieldLayout *layout, const BwFieldRow *row)
{
  for (guint i = 0; i < row->n_lanes; i++)
    {
      const BwFieldLane *lane = &row->lanes[i];
      const char *name = bw_field_text_lane (lane->kind);
      if (*name != '\0')
        bw_canvas_claim_at (layout->canvas, name, BW_INK_GRAPHITE_LIGHT,
                            layout->left - layout->canvas->pad / 2, (lane->top + lane->bottom) / 2,
                            1, 0.5);
    }
}

/* The datum is named once, beside its line at the head of the first row. */
static void
claim_datum (BwFieldLayout *layout)
{
  BwCanvas *canvas = layout->canvas;
  double x = bw_field_x (layout, 0), y = layout->row[0].head_y;
  BwLabel label = { (char *) "0V", bw_canvas_measure (canvas, "0V"), BW_INK_ACCENT,
                    PANGO_ALIGN_LEFT, .halo = TRUE };

  if (x < layout->left || x > layout->right)
    return;
  label.box.x = x + canvas->pad / 2;
  label.box.y = y - label.box.height / 2;
  if (bw_canvas_claim (canvas, &label))
    return;
  label.box.x = x - canvas->pad / 2 - label.box.width;
  bw_canvas_claim (canvas, &label);
}

/* Microseconds after the datum of each line. */
static void
claim_scale (BwFieldLayout *layout, const BwFieldRow *row)
{
  const BwFieldShape *shape = &row->shape;
  int half_line = (int) floor (layout->range.from / shape->half_line_s), line;
  int last = (int) ceil (layout->range.to / shape->half_line_s);

  if (layout->scale_s <= 0)
    return;
  for (half_line = line_start (row, half_line, &line); half_line < last; half_line += 2)
    for (int i = 0; i * layout->scale_s < shape->line.period_s * (1 - 1e-9); i++)
      {
        double x = bw_field_x (layout, bw_field_shape_time (shape, half_line) + i * layout->scale_s);
        if (!bw_field_shows (layout, x))
          continue;
        g_autofree char *text = bw_text_us (i * layout->scale_s, layout->what->mark);
        claim_figure (layout, text, bw_canvas_measure (layout->canvas, text).width, x, row->scale_y,
                      BW_INK_GRAPHITE_LIGHT);
      }
}

static double
words_height (const BwFieldLayout *layout, const char *text, int lines)
{
  BwCanvas *canvas = layout->canvas;
  if (text == NULL)
    return 0;
  return bw_canvas_wrapped_height (canvas, text, canvas->width - 2 * canvas->pad, lines);
}

static gboolean
claim_words (BwFieldLayout *layout, const char *text, double y, double height, BwInkRole role)
{
  BwCanvas *canvas = layout->canvas;
  BwLabel label = { (char *) text, { canvas->pad, y, canvas->width - 2 * canvas->pad, height },
                    role, PANGO_ALIGN_LEFT, .wrap = TRUE };
  return text == NULL || bw_canvas_claim (canvas, &label);
}

static gboolean
claim_caption (BwFieldLayout *layout)
{
  BwCanvas *canvas = layout->canvas;
  g_autofree char *caption = bw_field_text_caption (layout->what);
  g_autofree char *note = bw_field_keeps (layout, BW_FIELD_LEAVE_NOTE)
                              ? bw_field_text_note (layout->what)
                              : NULL;
  double caption_height
      = words_height (layout, caption, bw_field_keeps (layout, BW_FIELD_LEAVE_LONG_CAPTION) ? 2 : 1);
  double note_height = words_height (layout, note, 2);
  double note_y = canvas->height - canvas->pad - note_height;

  layout->words_y = note_y - caption_height;
  return claim_words (layout, caption, layout->words_y, caption_height, BW_INK_GRAPHITE)
         & claim_words (layout, note, note_y, note_height, BW_INK_GRAPHITE_LIGHT);
}

/* After the lines that have none. */
static gboolean
claim_burst_name (BwFieldLayout *layout, const BwFieldRow *row)
{
  double x = row->no_burst.at[0].x1 + layout->canvas->pad * 0.75;
  return bw_canvas_claim_at (layout->canvas, _ ("burst"), BW_INK_BLUE, x, row->no_burst.y, 0, 0.5);
}

static gboolean
claim_dims (BwFieldLayout *layout, BwFieldRow *row)
{
  BwCanvas *canvas = layout->canvas;
  double top = row->no_burst.y - row->no_burst.before;
  gboolean all = bw_dim_row_claim (&row->parts, canvas) & bw_dim_row_claim (&row->total, canvas);

  if (row->no_burst.n > 0)
    all &= top >= row->lanes[0].top - canvas->pad / 2 && bw_dim_row_claim (&row->no_burst, canvas)
           && claim_burst_name (layout, row);
  return all;
}

/* Lays everything out with what @layout keeps; returns whether all of that has a place. */
static gboolean
try_layout (BwFieldLayout *layout)
{
  bw_canvas_clear (layout->canvas);
  choose_scale (layout);
  gboolean all = claim_caption (layout);
  for (guint i = 0; i < layout->n_rows; i++)
    size_dims (layout, &layout->row[i]);
  all &= place_down (layout);
  for (guint i = 0; i < layout->n_rows; i++)
    {
      all &= claim_row_name (layout, i);
      claim_lane_names (layout, &layout->row[i]);
      claim_numbers (layout, &layout->row[i]);
      all &= claim_dims (layout, &layout->row[i]);
      claim_names (layout, &layout->row[i]);
      claim_scale (layout, &layout->row[i]);
    }
  claim_datum (layout);
  return all;
}

static void
layout_init (BwFieldLayout *layout, double width, double height, const BwInk *ink,
             const BwFieldView *what)
{
  *layout = (BwFieldLayout){ .what = what };
  layout->canvas = bw_canvas_new (ink, width, height);
  init_rows (layout);
  if (what->range != NULL)
    layout->range = *what->range;
  else
    init_range (layout->row, layout->n_rows, &layout->range);
  place_across (layout);
  while (!try_layout (layout) && layout->left_out < BW_N_FIELD_LEAVES)
    layout->left_out++;
}

static void
layout_clear (BwFieldLayout *layout)
{
  for (guint i = 0; i < layout->n_rows; i++)
    clear_dims (&layout->row[i]);
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
  init_range (rows, n, range);
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
  int line, start = line_start (&layout->row[i], (int) floor (time_s / shape->half_line_s), &line);

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
