/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "result.h"

static const BwValue *
cell (const BwNode *table, guint row, guint column)
{
  const BwNode *node = table->children->pdata[row];
  return &g_array_index (node->values, BwValue, column);
}

/* Columns @first to before @end of every line. */
static void
add_part (const BwNode *table, guint first, guint end, BwNode *to)
{
  BwNode *part = bw_node_table (to, NULL, first == 0 ? table->label : NULL);
  const BwColumn *names = &g_array_index (table->columns, BwColumn, 0);

  bw_node_column (part, BW_COLUMN_SAYS, names->label, NULL);
  for (guint i = first; i < end; i++)
    bw_node_column (part, BW_COLUMN_SAYS, cell (table, i, 1)->words, NULL);
  for (guint line = 0; line < table->children->len; line += table->across)
    {
      BwNode *row = bw_node_row (part);
      bw_node_cell (row, *cell (table, line, 0));
      for (guint i = first; i < end; i++)
        bw_node_cell (row, *cell (table, line + i, 2));
    }
}

/**
 * bw_node_cross:
 * @table: one whose rows stand side by side
 * @most: columns that one table may have, beside the names; zero for any number
 *
 * Returns: (transfer full): the table as people see it, or several of equal width, one below the
 *   other
 */
BwResult *
bw_node_cross (const BwNode *table, guint most)
{
  g_return_val_if_fail (table != NULL && table->across > 0 && table->columns->len >= 3, NULL);
  g_return_val_if_fail (table->children->len % table->across == 0, NULL);
  BwResult *result = bw_result_new (bw_result_mark (table->result));
  guint parts = most > 0 ? (table->across + most - 1) / most : 1;
  guint each = (table->across + parts - 1) / parts;

  for (guint first = 0; first < table->across; first += each)
    add_part (table, first, MIN (first + each, table->across), bw_result_root (result));
  return result;
}
