/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "listing.h"
#include "result-private.h"

#include "core/base/harmless.h"

/* What people see, with a tab between cells: for pasting into a spreadsheet on the same desk, so
 * numbers have the decimal mark that people read, and the minus of ASCII. */

typedef struct
{
  GString *to;
  char mark;
} Writer;

static void write_children (Writer *writer, const BwNode *node);

static void
append (Writer *writer, const char *text)
{
  g_autofree char *harmless = bw_text_harmless (text);
  g_autoptr (GString) plain = g_string_new (harmless);
  g_string_replace (plain, "\u00a0", " ", 0);
  g_string_append (writer->to, plain->str);
}

static void
append_line (Writer *writer, const char *text)
{
  if (text == NULL || *text == '\0')
    return;
  append (writer, text);
  g_string_append_c (writer->to, '\n');
}

/* An empty line above a table, or above the figures of a section. */
static void
separate (Writer *writer)
{
  if (writer->to->len > 0)
    g_string_append_c (writer->to, '\n');
}

static void
write_figure (Writer *writer, const BwNode *figure)
{
  append (writer, figure->label);
  for (guint i = 0; i < figure->values->len; i++)
    {
      g_autofree char *number = NULL, *unit = NULL;
      gboolean is_number = bw_value_split (&g_array_index (figure->values, BwValue, i),
                                           writer->mark, TRUE, &number, &unit);
      g_string_append_c (writer->to, '\t');
      append (writer, number);
      if (is_number && *unit != '\0')
        g_string_append_printf (writer->to, "\t%s", unit);
    }
  g_string_append_c (writer->to, '\n');
}

static void
write_row (Writer *writer, const BwNode *table, const BwNode *row)
{
  for (guint i = 0; i < table->columns->len; i++)
    {
      g_autofree char *text = bw_node_cell_text (row, i, TRUE);
      if (i > 0)
        g_string_append_c (writer->to, '\t');
      append (writer, text);
    }
  g_string_append_c (writer->to, '\n');
}

static void
write_table (Writer *writer, const BwNode *table)
{
  if (table->across > 0)
    {
      g_autoptr (BwResult) crossed = bw_node_cross (table, 0);
      write_children (writer, bw_result_root (crossed));
    }
  else if (table->columns->len > 0)
    {
      separate (writer);
      append_line (writer, table->label);
      for (guint i = 0; i < table->columns->len; i++)
        {
          g_autofree char *head = bw_column_head (&g_array_index (table->columns, BwColumn, i));
          if (i > 0)
            g_string_append_c (writer->to, '\t');
          append (writer, head);
        }
      g_string_append_c (writer->to, '\n');
      for (guint i = 0; i < table->children->len; i++)
        write_row (writer, table, table->children->pdata[i]);
    }
  for (guint i = 0; i < table->children->len; i++)
    if (bw_node_is_seen (table->children->pdata[i]))
      write_children (writer, table->children->pdata[i]);
}

static void
write_node (Writer *writer, const BwNode *node)
{
  switch (node->kind)
    {
    case BW_NODE_FIGURE:
      write_figure (writer, node);
      break;
    case BW_NODE_SENTENCE:
      append_line (writer, node->label);
      write_children (writer, node);
      break;
    case BW_NODE_TABLE:
      write_table (writer, node);
      break;
    case BW_NODE_SECTION:
    case BW_NODE_LIST:
    case BW_NODE_ROW:
    default:
      if (node->label != NULL)
        separate (writer);
      append_line (writer, node->label);
      write_children (writer, node);
    }
}

static void
write_children (Writer *writer, const BwNode *node)
{
  for (guint i = 0; i < node->children->len; i++)
    if (bw_node_is_seen (node->children->pdata[i]))
      write_node (writer, node->children->pdata[i]);
}

/**
 * bw_column_head:
 *
 * Returns: (transfer full): the head of a column, with its unit
 */
char *
bw_column_head (const BwColumn *column)
{
  return column->unit != NULL ? g_strdup_printf ("%s (%s)", column->label, column->unit)
                              : g_strdup (column->label);
}

/**
 * bw_node_to_tsv:
 *
 * Returns: (transfer full): what people see of @node, with tabs between cells
 */
char *
bw_node_to_tsv (const BwNode *node)
{
  g_return_val_if_fail (node != NULL, NULL);
  Writer writer = { g_string_new (NULL), bw_result_mark (node->result) };
  if (bw_node_is_seen (node))
    write_node (&writer, node);
  return g_string_free (writer.to, FALSE);
}
