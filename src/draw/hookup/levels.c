/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

#include <glib/gi18n-lib.h>

/* The levels at the input: a small table, a column for each conductor. */

#define MOST_COLUMN 9.0 /* in heights of a line of text */
#define SAME 1e-9       /* volts */

/**
 * bw_hookup_has_spread:
 *
 * Returns: whether any level depends on a tolerance
 */
gboolean
bw_hookup_has_spread (const BwHookup *hookup)
{
  for (guint i = 0; i < hookup->levels->len; i++)
    {
      const BwHookupLevel *level = hookup->levels->pdata[i];
      if (level->max_v - level->min_v > SAME)
        return TRUE;
    }
  return FALSE;
}

static guint
count_rows (const BwHookupDrawing *drawing)
{
  const BwHookup *hookup = drawing->what->hookup;
  if (hookup->levels->len == 0 || !bw_hookup_keeps (drawing, BW_HOOKUP_LEAVE_LEVELS))
    return 0;
  return bw_hookup_keeps (drawing, BW_HOOKUP_LEAVE_SPREAD) && bw_hookup_has_spread (hookup) ? 3 : 2;
}

/**
 * bw_hookup_levels_height:
 *
 * Returns: of the table; zero: it is left out
 */
double
bw_hookup_levels_height (const BwHookupDrawing *drawing)
{
  guint rows = count_rows (drawing);
  return rows > 0 ? (rows + 0.7) * drawing->canvas->text_height : 0;
}

/* Of the top of a row, in heights of a line of text: a rule stands under the first. */
static double
row_offset (guint row)
{
  return row + (row > 0 ? 0.5 : 0.15);
}

static const char *
row_name (guint row)
{
  return row == 0 ? _ ("Level at the input") : row == 1 ? _ ("peak to peak") : _ ("least to most");
}

static double
head_width (const BwHookupDrawing *drawing)
{
  double width = 0;
  for (guint i = 0; i < count_rows (drawing); i++)
    width = MAX (width, bw_canvas_measure (drawing->canvas, row_name (i)).width);
  return width + 2 * drawing->canvas->pad;
}

static double
column_width (const BwHookupDrawing *drawing)
{
  const BwCanvas *canvas = drawing->canvas;
  double room = canvas->width - 2 * canvas->pad - head_width (drawing);
  return MIN (room / drawing->what->hookup->levels->len, MOST_COLUMN * canvas->text_height);
}

/**
 * bw_hookup_level_box:
 *
 * Returns: the column of a level
 */
BwBox
bw_hookup_level_box (const BwHookupDrawing *drawing, guint level)
{
  double width = column_width (drawing);
  return (BwBox){ drawing->canvas->pad + head_width (drawing) + level * width, drawing->table_y,
                  width, bw_hookup_levels_height (drawing) };
}

/**
 * bw_hookup_level_at:
 *
 * Returns: the level at a point; -1: there is none
 */
int
bw_hookup_level_at (const BwHookupDrawing *drawing, double x, double y)
{
  if (count_rows (drawing) == 0)
    return -1;
  for (guint i = 0; i < drawing->what->hookup->levels->len; i++)
    {
      BwBox box = bw_hookup_level_box (drawing, i);
      if (x >= box.x && x <= box.x + box.width && y >= box.y && y <= box.y + box.height)
        return (int) i;
    }
  return -1;
}

static char *
cell_text (const BwHookupDrawing *drawing, const BwHookupLevel *level, guint row)
{
  const BwHookupView *what = drawing->what;
  if (row == 0)
    return g_strdup (level->signal);
  if (row == 1)
    return bw_hookup_text_volt (what, level->nominal_v);
  if (level->max_v - level->min_v <= SAME)
    return g_strdup ("\u2013");
  return bw_quantity_format_range ((BwRange){ level->min_v, level->max_v }, BW_DIMENSION_VOLTAGE, 3,
                                   what->mark);
}

static gboolean
claim_level (BwHookupDrawing *drawing, guint index)
{
  const BwHookupLevel *level = drawing->what->hookup->levels->pdata[index];
  BwBox box = bw_hookup_level_box (drawing, index);
  double text = drawing->canvas->text_height;
  gboolean all = TRUE;

  for (guint row = 0; row < count_rows (drawing); row++)
    {
      g_autofree char *cell = cell_text (drawing, level, row);
      double width = bw_canvas_measure (drawing->canvas, cell).width;
      all &= width <= box.width
             && bw_canvas_claim_at (drawing->canvas, cell,
                                    row == 0 ? BW_INK_GRAPHITE_LIGHT : BW_INK_GRAPHITE, box.x,
                                    box.y + row_offset (row) * text, 0, 0);
    }
  return all;
}

/**
 * bw_hookup_claim_levels:
 *
 * Returns: whether every cell has a place
 */
gboolean
bw_hookup_claim_levels (BwHookupDrawing *drawing)
{
  double text = drawing->canvas->text_height;
  gboolean all = TRUE;

  for (guint row = 0; row < count_rows (drawing); row++)
    all &= bw_canvas_claim_at (drawing->canvas, row_name (row), BW_INK_GRAPHITE_LIGHT,
                               drawing->canvas->pad, drawing->table_y + row_offset (row) * text, 0,
                               0);
  for (guint i = 0; i < drawing->what->hookup->levels->len && count_rows (drawing) > 0; i++)
    all &= claim_level (drawing, i);
  drawing->table_right = drawing->canvas->pad + head_width (drawing)
                         + column_width (drawing) * drawing->what->hookup->levels->len;
  return all;
}
