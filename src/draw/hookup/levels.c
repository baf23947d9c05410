/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

#include <glib/gi18n-lib.h>

/* The levels at the input: a small table, a column for each conductor. */

#define MOST_COLUMN 9.0 /* in heights of a line of text */
#define SAME 1e-9       /* volts */

/* Returns: whether any level depends on a tolerance */
static gboolean
has_spread (const BwHookup *hookup)
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
count_rows (const BwHookupLayout *layout)
{
  const BwHookup *hookup = layout->what->hookup;
  if (hookup->levels->len == 0 || !bw_hookup_keeps (layout, BW_HOOKUP_LEAVE_LEVELS))
    return 0;
  return bw_hookup_keeps (layout, BW_HOOKUP_LEAVE_SPREAD) && has_spread (hookup) ? 3 : 2;
}

/**
 * bw_hookup_levels_height:
 *
 * Returns: of the table; zero: it is left out
 */
double
bw_hookup_levels_height (const BwHookupLayout *layout)
{
  guint rows = count_rows (layout);
  return rows > 0 ? (rows + 0.7) * layout->canvas->text_height : 0;
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
head_width (const BwHookupLayout *layout)
{
  double width = 0;
  for (guint i = 0; i < count_rows (layout); i++)
    width = MAX (width, bw_canvas_measure (layout->canvas, row_name (i)).width);
  return width + 2 * layout->canvas->pad;
}

static double
column_width (const BwHookupLayout *layout)
{
  const BwCanvas *canvas = layout->canvas;
  double room = canvas->width - 2 * canvas->pad - head_width (layout);
  return MIN (room / layout->what->hookup->levels->len, MOST_COLUMN * canvas->text_height);
}

/**
 * bw_hookup_level_box:
 *
 * Returns: the column of a level
 */
BwBox
bw_hookup_level_box (const BwHookupLayout *layout, guint level)
{
  double width = column_width (layout);
  return (BwBox){ layout->canvas->pad + head_width (layout) + level * width, layout->table_y, width,
                  bw_hookup_levels_height (layout) };
}

static char *
cell_text (const BwHookupLayout *layout, const BwHookupLevel *level, guint row)
{
  const BwHookupView *what = layout->what;
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
claim_level (BwHookupLayout *layout, guint index)
{
  const BwHookupLevel *level = layout->what->hookup->levels->pdata[index];
  BwBox box = bw_hookup_level_box (layout, index);
  double text = layout->canvas->text_height;
  gboolean all = TRUE;

  for (guint row = 0; row < count_rows (layout); row++)
    {
      g_autofree char *cell = cell_text (layout, level, row);
      double width = bw_canvas_measure (layout->canvas, cell).width;
      all &= width <= box.width
             && bw_canvas_claim_at (layout->canvas, cell,
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
bw_hookup_claim_levels (BwHookupLayout *layout)
{
  double text = layout->canvas->text_height;
  gboolean all = TRUE;

  for (guint row = 0; row < count_rows (layout); row++)
    all &= bw_canvas_claim_at (layout->canvas, row_name (row), BW_INK_GRAPHITE_LIGHT,
                               layout->canvas->pad, layout->table_y + row_offset (row) * text, 0,
                               0);
  for (guint i = 0; i < layout->what->hookup->levels->len && count_rows (layout) > 0; i++)
    all &= claim_level (layout, i);
  layout->table_right = layout->canvas->pad + head_width (layout)
                        + column_width (layout) * layout->what->hookup->levels->len;
  return all;
}
