/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "flow-private.h"

#include <string.h>

/* What a row keeps of a cell. */
typedef struct
{
  char *text;
  BwInkRole role;
  BwSeverity mark;
  gboolean number;
} Cell;

typedef struct
{
  BwFlowColumns columns;
  Cell cells[];
} Row;

typedef struct
{
  char *heading;
  char *text;
  BwInkRole role;
} Box;

#define CELL_PAD 0.35 /* in heights of a line */

static void
free_row (gpointer data)
{
  Row *row = data;
  for (guint i = 0; i < row->columns.n; i++)
    g_free (row->cells[i].text);
  g_free (row);
}

static Row *
row_new (const BwFlowColumns *columns)
{
  Row *row = g_malloc0 (sizeof (Row) + columns->n * sizeof (Cell));
  row->columns = *columns;
  return row;
}

static double
set_cell (BwFlow *flow, const Cell *cell, double width, gboolean head)
{
  double used = 2 * CELL_PAD + (cell->mark < BW_N_SEVERITIES ? BW_FLOW_MARK_SPACE : 0);
  int height;

  bw_flow_set_layout (flow, cell->text, cell->role, width - used * flow->line_height, 1, head);
  pango_layout_set_alignment (flow->layout, cell->number ? PANGO_ALIGN_RIGHT : PANGO_ALIGN_LEFT);
  pango_layout_set_wrap (flow->layout, cell->number ? PANGO_WRAP_WORD : PANGO_WRAP_WORD_CHAR);
  pango_layout_set_ellipsize (flow->layout, PANGO_ELLIPSIZE_END);
  pango_layout_set_height (flow->layout, -BW_FLOW_CELL_LINES);
  pango_layout_get_size (flow->layout, NULL, &height);
  return (double) height / PANGO_SCALE;
}

static void
draw_cell (BwFlow *flow, cairo_t *cr, const BwFlowItem *item, guint column, double x)
{
  const Row *row = item->data;
  const Cell *cell = &row->cells[column];
  double pad = CELL_PAD * flow->line_height, size = BW_FLOW_MARK_SIZE * flow->line_height;
  double text_x = x + pad;

  set_cell (flow, cell, row->columns.width[column], item->head);
  if (cell->mark < BW_N_SEVERITIES)
    {
      bw_draw_severity_mark (cr, &flow->ink, cell->mark, x + pad,
                             item->y + pad + (flow->line_height - size) / 2, size);
      text_x += BW_FLOW_MARK_SPACE * flow->line_height;
    }
  cairo_move_to (cr, text_x, item->y + pad);
  pango_cairo_show_layout (cr, flow->layout);
}

static void
draw_row (const BwFlowItem *item, BwFlow *flow, cairo_t *cr)
{
  const Row *row = item->data;
  double x = 0, width = 0;

  for (guint i = 0; i < row->columns.n; i++)
    width += row->columns.width[i];
  if (item->head)
    {
      bw_ink_set (cr, &flow->ink, BW_INK_BAND);
      cairo_rectangle (cr, 0, item->y, width, item->height);
      cairo_fill (cr);
    }
  for (guint i = 0; i < row->columns.n; i++)
    {
      draw_cell (flow, cr, item, i, x);
      x += row->columns.width[i];
    }
  bw_ink_set (cr, &flow->ink, BW_INK_RULE);
  cairo_set_line_width (cr, 0.05 * flow->line_height);
  cairo_move_to (cr, 0, item->y + item->height);
  cairo_line_to (cr, width, item->y + item->height);
  cairo_stroke (cr);
}

static BwFlowItem *
new_row (BwFlow *flow, const BwFlowCell *cells, gboolean head)
{
  Row *row = row_new (&flow->columns);
  double height = flow->line_height;

  for (guint i = 0; i < row->columns.n; i++)
    {
      row->cells[i] = (Cell){ g_strdup (cells[i].text != NULL ? cells[i].text : ""), cells[i].role,
                              cells[i].mark, cells[i].number };
      double own = set_cell (flow, &row->cells[i], row->columns.width[i], head);
      height = MAX (height, own);
    }
  BwFlowItem *item = bw_flow_item_new (draw_row, height + 2 * CELL_PAD * flow->line_height, row,
                                       free_row);
  item->head = head;
  return item;
}

/**
 * bw_flow_copy_row:
 *
 * Returns: (transfer full): the same row without a place
 */
BwFlowItem *
bw_flow_copy_row (const BwFlowItem *item)
{
  const Row *row = item->data;
  Row *copy = row_new (&row->columns);

  for (guint i = 0; i < row->columns.n; i++)
    {
      copy->cells[i] = row->cells[i];
      copy->cells[i].text = g_strdup (row->cells[i].text);
    }
  BwFlowItem *result = bw_flow_item_new (draw_row, item->height, copy, free_row);
  result->head = item->head;
  return result;
}

/**
 * bw_flow_begin_table:
 * @n: columns, at most %BW_FLOW_MAX_COLUMNS
 * @widths: (array length=n): their widths
 * @heads: (array length=n) (nullable): their heads, which stand again on every page
 */
void
bw_flow_begin_table (BwFlow *flow, guint n, const double *widths, const BwFlowCell *heads)
{
  g_return_if_fail (n <= BW_FLOW_MAX_COLUMNS);
  bw_flow_end_table (flow);
  flow->columns.n = n;
  memcpy (flow->columns.width, widths, n * sizeof *widths);
  if (heads == NULL)
    return;
  BwFlowItem *first = new_row (flow, heads, TRUE);
  flow->table_head = bw_flow_copy_row (first);
  first->keep = TRUE;
  bw_flow_add_item (flow, first);
}

/**
 * bw_flow_add_row:
 * @cells: as many as the table has columns; a long text wraps, and ends in an ellipsis after
 *   %BW_FLOW_CELL_LINES lines
 */
void
bw_flow_add_row (BwFlow *flow, const BwFlowCell *cells)
{
  bw_flow_add_item (flow, new_row (flow, cells, FALSE));
}

/**
 * bw_flow_end_table:
 *
 * Ends the table, if one is open.
 */
void
bw_flow_end_table (BwFlow *flow)
{
  g_clear_pointer (&flow->table_head, bw_flow_item_free);
}

/* Boxes */

static void
free_box (gpointer data)
{
  Box *box = data;
  g_free (box->heading);
  g_free (box->text);
  g_free (box);
}

static double
set_box_text (BwFlow *flow, const Box *box, gboolean heading)
{
  return bw_flow_set_layout (flow, heading ? box->heading : box->text,
                             heading ? box->role : BW_INK_GRAPHITE,
                             flow->width - 2 * flow->line_height, 1, heading);
}

static void
draw_box (const BwFlowItem *item, BwFlow *flow, cairo_t *cr)
{
  const Box *box = item->data;
  double pad = flow->line_height, line = 0.12 * flow->line_height;

  bw_ink_set (cr, &flow->ink, box->role);
  cairo_set_line_width (cr, line);
  cairo_rectangle (cr, line / 2, item->y + line / 2, flow->width - line, item->height - line);
  cairo_stroke (cr);
  double heading_height = set_box_text (flow, box, TRUE);
  cairo_move_to (cr, pad, item->y + pad * 0.7);
  pango_cairo_show_layout (cr, flow->layout);
  set_box_text (flow, box, FALSE);
  cairo_move_to (cr, pad, item->y + pad * 0.9 + heading_height);
  pango_cairo_show_layout (cr, flow->layout);
}

/**
 * bw_flow_add_box:
 * @role: colour of the frame and of the heading
 *
 * Adds a framed text that is not broken over pages.
 */
void
bw_flow_add_box (BwFlow *flow, const char *heading, const char *text, BwInkRole role)
{
  Box *box = g_new0 (Box, 1);
  *box = (Box){ g_strdup (heading), g_strdup (text), role };
  double height = set_box_text (flow, box, TRUE) + set_box_text (flow, box, FALSE)
                  + 1.6 * flow->line_height;
  bw_flow_add_item (flow, bw_flow_item_new (draw_box, height, box, free_box));
}
