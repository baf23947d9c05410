/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

#include <math.h>
#include <string.h>

#include <glib/gi18n-lib.h>

#include "draw/base/scale.h"

/* The labels, each of which claims its place. */

#define LEAST_OF_LINE 0.75 /* that is seen if its number is to be shown */

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

/* The line in which @half_line lies. */
static void
claim_key_number (BwFieldLayout *layout, const BwFieldRow *row, int half_line)
{
  int line, start = bw_field_line_start (row, half_line, &line);
  double x;
  if (number_x (layout, row, start, &x))
    claim_number (layout, row, line, x, BW_INK_GRAPHITE);
}

static int
number_step (const BwFieldLayout *layout, int greatest)
{
  int digits = greatest > 999 ? 4 : 3;
  double wanted = (digits + 1.2) * layout->digit / bw_field_line_width (layout);
  return (int) bw_nice_tick (MAX (wanted, 1));
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
  for (half_line = bw_field_line_start (row, half_line, &line); half_line < last; half_line += 2)
    {
      double x;
      bw_field_line_start (row, half_line, &line);
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

      if ((picture ? row->n_lanes == 1 : !bw_field_is_whole (layout, x0, x1))
          && seen1 - seen0 > bw_canvas_measure (layout->canvas, name).width)
        bw_canvas_claim_at (layout->canvas, name, BW_INK_GRAPHITE_LIGHT, (seen0 + seen1) / 2,
                            row->lanes[0].top - layout->canvas->pad / 2, 0.5, 1);
    }
}

/* The longest form that ends before the dimension of field blanking starts. */
static gboolean
claim_row_name (BwFieldLayout *layout, guint i)
{
  const BwFieldRow *row = &layout->row[i];
  double end = row->total.n > 0 ? row->total.at[0].x0 : layout->right;

  if (layout->n_rows == 1)
    return TRUE;
  gboolean colour = layout->burst && bw_field_name_end (layout, row, TRUE) <= end;
  g_autofree char *name = bw_field_text_row (row, colour);
  return bw_canvas_claim_at (layout->canvas, name, BW_INK_GRAPHITE,
                             bw_field_name_start (layout, row), row->head_y, 0, 0.5);
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

/* The datum is named once, beside its line: at the head of the first row, or else in its lane. */
static void
claim_datum (BwFieldLayout *layout)
{
  BwCanvas *canvas = layout->canvas;
  const BwFieldRow *row = &layout->row[0];
  double x = bw_field_x (layout, 0), gap = canvas->pad / 2;
  BwLabel label = { (char *) "0V", bw_canvas_measure (canvas, "0V"), BW_INK_ACCENT,
                    PANGO_ALIGN_LEFT, .halo = TRUE };

  if (!bw_field_shows (layout, x))
    return;
  label.box.x = x + gap;
  label.box.y = row->head_y - label.box.height / 2;
  if (bw_canvas_claim (canvas, &label))
    return;
  label.box.x = x - gap - label.box.width;
  if (bw_canvas_claim (canvas, &label))
    return;
  label.halo = FALSE;
  label.box.x = x + gap;
  label.box.y = row->lanes[0].top;
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
  for (half_line = bw_field_line_start (row, half_line, &line); half_line < last; half_line += 2)
    for (int i = 0; i * layout->scale_s < shape->line.period_s * (1 - 1e-9); i++)
      {
        double x = bw_field_x (layout,
                               bw_field_shape_time (shape, half_line) + i * layout->scale_s);
        if (!bw_field_shows (layout, x))
          continue;
        g_autofree char *text = bw_text_us (i * layout->scale_s, layout->what->mark);
        claim_figure (layout, text, bw_canvas_measure (layout->canvas, text).width, x, row->scale_y,
                      BW_INK_GRAPHITE_LIGHT);
      }
}

gboolean
bw_field_claim_words (BwFieldLayout *layout)
{
  BwCanvas *canvas = layout->canvas;
  g_autofree char *caption = bw_field_text_caption (layout->what);
  g_autofree char *note = bw_field_keeps (layout, BW_FIELD_LEAVE_NOTE)
                              ? bw_field_text_note (layout->what)
                              : NULL;
  const BwFoot foot = { .caption = caption,
                        .caption_lines = bw_field_keeps (layout, BW_FIELD_LEAVE_LONG_CAPTION) ? 2
                                                                                              : 1,
                        .note = note,
                        .note_lines = 2,
                        .below = canvas->pad };
  return bw_canvas_claim_foot (canvas, &foot, &layout->words_y);
}

/* After the lines that have none. */
static void
claim_burst_name (BwFieldLayout *layout, const BwFieldRow *row)
{
  double x = row->no_burst.at[0].x1 + layout->canvas->pad * 0.75;
  bw_canvas_claim_at (layout->canvas, _ ("burst"), BW_INK_BLUE, x, row->no_burst.y, 0, 0.5);
}

static gboolean
claim_dims (BwFieldLayout *layout, BwFieldRow *row)
{
  BwCanvas *canvas = layout->canvas;
  double top = row->no_burst.y - row->no_burst.before;
  gboolean all = bw_dim_row_claim (&row->parts, canvas) & bw_dim_row_claim (&row->total, canvas);

  if (row->no_burst.n == 0)
    return all;
  all &= top >= row->lanes[0].top - canvas->pad / 2 && bw_dim_row_claim (&row->no_burst, canvas);
  claim_burst_name (layout, row);
  return all;
}

/**
 * bw_field_claim_labels:
 *
 * Claims the places of all labels in the rows.
 *
 * Returns: whether those have one that can be left out by a step of #BwFieldLeave
 */
gboolean
bw_field_claim_labels (BwFieldLayout *layout)
{
  gboolean all = TRUE;
  for (guint i = 0; i < layout->n_rows; i++)
    {
      BwFieldRow *row = &layout->row[i];
      all &= claim_row_name (layout, i);
      claim_lane_names (layout, row);
      claim_numbers (layout, row);
      all &= claim_dims (layout, row);
      claim_names (layout, row);
      claim_scale (layout, row);
    }
  claim_datum (layout);
  return all;
}
