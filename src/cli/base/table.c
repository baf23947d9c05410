/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "table.h"

#include "words.h"

#define GAP "  "

typedef struct
{
  gboolean right;
  int at_least;
  int at_most; /* zero: as wide as its widest cell */
  int widest;
} Column;

struct _BwTable
{
  guint n_columns;
  Column *columns;
  GPtrArray *rows; /* owned arrays of n_columns owned strings; an empty one is a rule */
};

/**
 * bw_table_new:
 *
 * Returns: (transfer full): a table without rows, whose columns are as wide as their cells
 */
BwTable *
bw_table_new (guint columns)
{
  BwTable *table = g_new0 (BwTable, 1);
  table->n_columns = columns;
  table->columns = g_new0 (Column, columns);
  table->rows = g_ptr_array_new_with_free_func ((GDestroyNotify) g_strfreev);
  return table;
}

/**
 * bw_table_free:
 * @table: (nullable) (transfer full): freed with all its cells
 */
void
bw_table_free (BwTable *table)
{
  if (table == NULL)
    return;
  g_ptr_array_unref (table->rows);
  g_free (table->columns);
  g_free (table);
}

/**
 * bw_table_set_right:
 *
 * Sets the cells of @column to its right edge, as numbers want.
 */
void
bw_table_set_right (BwTable *table, guint column)
{
  table->columns[column].right = TRUE;
}

/**
 * bw_table_set_width:
 * @at_most: wider cells are wrapped; zero for no limit
 */
void
bw_table_set_width (BwTable *table, guint column, int at_least, int at_most)
{
  table->columns[column].at_least = at_least;
  table->columns[column].at_most = at_most;
}

/**
 * bw_table_add_cells:
 * @cells: %NULL-terminated; cells that are missing at the end are empty
 */
void
bw_table_add_cells (BwTable *table, const char *const *cells)
{
  char **row = g_new0 (char *, table->n_columns + 1);
  for (guint i = 0; i < table->n_columns; i++)
    {
      row[i] = bw_words_one_line (*cells != NULL ? *cells++ : "");
      table->columns[i].widest = MAX (table->columns[i].widest, bw_words_width (row[i]));
    }
  g_ptr_array_add (table->rows, row);
}

/**
 * bw_table_add_rule:
 *
 * Adds a rule below the rows so far.
 */
void
bw_table_add_rule (BwTable *table)
{
  g_ptr_array_add (table->rows, g_new0 (char *, 1));
}

/**
 * bw_table_add_row:
 * @first: the first cell, then the others, then %NULL
 */
void
bw_table_add_row (BwTable *table, const char *first, ...)
{
  g_autoptr (GPtrArray) cells = g_ptr_array_new ();
  va_list list;
  va_start (list, first);
  for (const char *cell = first; cell != NULL; cell = va_arg (list, const char *))
    g_ptr_array_add (cells, (gpointer) cell);
  va_end (list);
  g_ptr_array_add (cells, NULL);
  bw_table_add_cells (table, (const char *const *) cells->pdata);
}

static int
column_width (const Column *column)
{
  int width = MAX (column->at_least, column->widest);
  return column->at_most > 0 ? MIN (width, column->at_most) : width;
}

static void
trim_line (GString *line)
{
  while (line->len > 0 && line->str[line->len - 1] == ' ')
    g_string_truncate (line, line->len - 1);
}

/* Line @index of the row's wrapped cells. Returns FALSE, adding nothing, if no cell has one. */
static gboolean
append_line (const BwTable *table, GPtrArray *cells, guint index, GString *to, int indent)
{
  g_autoptr (GString) line = g_string_new (NULL);
  gboolean any = FALSE;

  g_string_append_printf (line, "%*s", indent, "");
  for (guint i = 0; i < table->n_columns; i++)
    {
      GPtrArray *lines = cells->pdata[i];
      const Column *column = &table->columns[i];
      gboolean has_line = index < lines->len;
      any = any || has_line;
      bw_words_append_padded (line, has_line ? lines->pdata[index] : "", column_width (column),
                              column->right);
      g_string_append (line, GAP);
    }
  if (!any)
    return FALSE;
  trim_line (line);
  g_string_append_printf (to, "%s\n", line->str);
  return TRUE;
}

static void
append_row (const BwTable *table, char **texts, GString *to, int indent)
{
  g_autoptr (GPtrArray) cells = g_ptr_array_new_with_free_func ((GDestroyNotify) g_ptr_array_unref);
  guint index = 0;

  for (guint i = 0; i < table->n_columns; i++)
    g_ptr_array_add (cells, bw_words_wrap (texts[i], MAX (2, column_width (&table->columns[i]))));
  while (append_line (table, cells, index, to, indent))
    index++;
}

static void
append_rule (const BwTable *table, GString *to, int indent)
{
  g_string_append_printf (to, "%*s", indent, "");
  for (guint i = 0; i < table->n_columns; i++)
    {
      g_string_append (to, i > 0 ? GAP : "");
      for (int n = column_width (&table->columns[i]); n > 0; n--)
        g_string_append_c (to, '-');
    }
  g_string_append_c (to, '\n');
}

/**
 * bw_table_append_to:
 * @indent: columns to the left of the table
 */
void
bw_table_append_to (const BwTable *table, GString *to, int indent)
{
  for (guint i = 0; i < table->rows->len; i++)
    {
      char **texts = table->rows->pdata[i];
      if (texts[0] != NULL)
        append_row (table, texts, to, indent);
      else
        append_rule (table, to, indent);
    }
}
