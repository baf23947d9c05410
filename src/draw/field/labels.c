/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

#include <math.h>

#include <glib/gi18n-lib.h>

/* The labels, each of which claims its place. */

static void
claim_number (BwFieldLayout *layout, const BwFieldRow *row, int half_line, int line, BwInkRole role)
{
  bw_ruler_claim_number (&layout->ruler, line, bw_field_shape_time (&row->shape, half_line),
                         row->numbers_y, role);
}

/* The line in which @half_line lies. */
static void
claim_key_number (BwFieldLayout *layout, const BwFieldRow *row, int half_line)
{
  int line, start = bw_field_line_start (&row->shape, half_line, &line);
  claim_number (layout, row, start, line, BW_INK_GRAPHITE);
}

static void
claim_numbers (BwFieldLayout *layout, const BwFieldRow *row)
{
  const int *start = row->shape.start;
  BwRasterFigures figures;
  bw_raster_figures (row->shape.raster, &figures);
  int step = bw_ruler_number_step (&layout->ruler, figures.lines_per_frame), line;
  int half_line = (int) floor (layout->ruler.range.from / row->shape.half_line_s);
  int last = (int) ceil (layout->ruler.range.to / row->shape.half_line_s);

  claim_key_number (layout, row, start[BW_PART_SYNC]);
  claim_key_number (layout, row, start[BW_PART_PICTURE_AFTER]);
  claim_key_number (layout, row, start[BW_PART_BORDER_BEFORE] - 1);
  for (half_line = bw_field_line_start (&row->shape, half_line, &line); half_line < last;
       half_line += 2)
    {
      bw_field_line_start (&row->shape, half_line, &line);
      if (line % step == 0)
        claim_number (layout, row, half_line, line, BW_INK_GRAPHITE_LIGHT);
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
      double x0 = bw_ruler_x (&layout->ruler, bw_field_shape_time (shape, shape->start[part]));
      double x1 = bw_ruler_x (&layout->ruler, bw_field_shape_time (shape, shape->start[part + 1]));
      gboolean picture = part == BW_PART_PICTURE_BEFORE || part == BW_PART_PICTURE_AFTER;
      double seen0 = MAX (x0, layout->ruler.left), seen1 = MIN (x1, layout->ruler.right);
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
  double end = row->total.n > 0 ? row->total.at[0].x0 : layout->ruler.right;

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
                            layout->ruler.left - layout->canvas->pad / 2,
                            (lane->top + lane->bottom) / 2, 1, 0.5);
    }
}

/* The datum is named once, beside its line: at the head of the first row, apart from other words, or
 * else in its lane. */
static void
claim_datum (BwFieldLayout *layout)
{
  BwCanvas *canvas = layout->canvas;
  const BwFieldRow *row = &layout->row[0];
  double x = bw_ruler_x (&layout->ruler, 0), gap = canvas->pad / 2;
  const char *name = _ ("field sync starts");
  BwLabel label = { (char *) name, bw_canvas_measure (canvas, name), BW_INK_ACCENT,
                    PANGO_ALIGN_LEFT, .halo = TRUE };

  if (!bw_ruler_shows (&layout->ruler, x))
    return;
  label.box.y = row->head_y - label.box.height / 2;
  for (int side = 0; side < 2; side++)
    {
      label.box.x = side == 0 ? x + gap : x - gap - label.box.width;
      BwBox apart = label.box;
      apart.x -= gap;
      apart.width += 2 * gap;
      if (bw_canvas_is_free (canvas, apart) && bw_canvas_claim (canvas, &label))
        return;
    }
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
  int half_line = (int) floor (layout->ruler.range.from / shape->half_line_s), line;
  int last = (int) ceil (layout->ruler.range.to / shape->half_line_s);

  for (half_line = bw_field_line_start (shape, half_line, &line); half_line < last; half_line += 2)
    bw_ruler_claim_scale (&layout->ruler, bw_field_shape_time (shape, half_line), row->scale_y);
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
