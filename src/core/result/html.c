/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "listing.h"
#include "result-private.h"

#include "core/base/harmless.h"

/* What people see, for pasting into a document or a spreadsheet, and as a page of its own. */

typedef struct
{
  GString *to;
  char mark;
  gboolean in_figures; /* a table of figures is open */
} Writer;

static void write_children (Writer *writer, const BwNode *node);

static void
append (Writer *writer, const char *text)
{
  g_autofree char *harmless = bw_text_harmless (text);
  g_autofree char *escaped = g_markup_escape_text (harmless, -1);
  g_string_append (writer->to, escaped);
}

/* Words have a direction of their own, so that they do not turn around what stands beside them. */
static void
append_element (Writer *writer, const char *start, const char *text, const char *end)
{
  g_string_append (writer->to, start);
  append (writer, text);
  g_string_append (writer->to, end);
}

static void
end_figures (Writer *writer)
{
  if (writer->in_figures)
    g_string_append (writer->to, "</table>\n");
  writer->in_figures = FALSE;
}

static void
append_cell (Writer *writer, const BwValue *value, const char *text)
{
  gboolean at_right = value->kind == BW_VALUE_NUMBER || value->kind == BW_VALUE_RANGE;
  g_autofree char *marked = g_strconcat (bw_mark_sign (value->mark, FALSE),
                                         value->mark != BW_MARK_NONE ? " " : "", text, NULL);
  append_element (writer, at_right ? "<td align=\"right\">" : "<td dir=\"auto\">", marked, "</td>");
}

static void
write_figure (Writer *writer, const BwNode *figure)
{
  if (!writer->in_figures)
    g_string_append (writer->to, "<table>\n");
  writer->in_figures = TRUE;
  append_element (writer, "<tr><th align=\"left\" scope=\"row\">", figure->label, "</th>");
  for (guint i = 0; i < figure->values->len; i++)
    {
      const BwValue *value = &g_array_index (figure->values, BwValue, i);
      g_autofree char *number = NULL, *unit = NULL;
      gboolean is_number = bw_value_split (value, writer->mark, FALSE, &number, &unit);
      append_cell (writer, value, number);
      if (is_number)
        append_element (writer, "<td>", unit, "</td>");
    }
  g_string_append (writer->to, "</tr>\n");
}

static void
write_row (Writer *writer, const BwNode *table, const BwNode *row)
{
  g_string_append (writer->to, "<tr>");
  for (guint i = 0; i < MIN (row->values->len, table->columns->len); i++)
    {
      g_autofree char *text = bw_node_cell_text (row, i, FALSE);
      append_cell (writer, &g_array_index (row->values, BwValue, i), text);
    }
  g_string_append (writer->to, "</tr>\n");
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
      g_string_append (writer->to, "<table>\n");
      if (table->label != NULL)
        append_element (writer, "<caption>", table->label, "</caption>\n");
      g_string_append (writer->to, "<tr>");
      for (guint i = 0; i < table->columns->len; i++)
        {
          g_autofree char *head = bw_column_head (&g_array_index (table->columns, BwColumn, i));
          append_element (writer, "<th scope=\"col\">", head, "</th>");
        }
      g_string_append (writer->to, "</tr>\n");
      for (guint i = 0; i < table->children->len; i++)
        write_row (writer, table, table->children->pdata[i]);
      g_string_append (writer->to, "</table>\n");
    }
  for (guint i = 0; i < table->children->len; i++)
    if (bw_node_is_seen (table->children->pdata[i]))
      write_children (writer, table->children->pdata[i]);
}

static void
write_list (Writer *writer, const BwNode *list)
{
  if (list->label != NULL)
    append_element (writer, "<h3 dir=\"auto\">", list->label, "</h3>\n");
  g_string_append (writer->to, "<ul>\n");
  for (guint i = 0; i < list->children->len; i++)
    append_element (writer, "<li dir=\"auto\">", ((const BwNode *) list->children->pdata[i])->label,
                    "</li>\n");
  g_string_append (writer->to, "</ul>\n");
}

static void
write_marked (Writer *writer, const BwNode *node, const char *start, const char *end)
{
  g_autofree char *text = node->mark == BW_MARK_NONE
                              ? g_strdup (node->label)
                              : g_strconcat (bw_mark_sign (node->mark, FALSE), " ", node->label,
                                             NULL);
  append_element (writer, start, text, end);
}

static void
write_node (Writer *writer, const BwNode *node)
{
  if (node->kind == BW_NODE_FIGURE)
    {
      write_figure (writer, node);
      return;
    }
  end_figures (writer);
  switch (node->kind)
    {
    case BW_NODE_SENTENCE:
      write_marked (writer, node, "<p dir=\"auto\">", "</p>\n");
      write_children (writer, node);
      break;
    case BW_NODE_LIST:
      write_list (writer, node);
      break;
    case BW_NODE_TABLE:
      write_table (writer, node);
      break;
    case BW_NODE_SECTION:
    case BW_NODE_ROW:
    case BW_NODE_FIGURE:
    default:
      if (node->label != NULL)
        write_marked (writer, node, "<h3 dir=\"auto\">", "</h3>\n");
      write_children (writer, node);
    }
}

static void
write_children (Writer *writer, const BwNode *node)
{
  for (guint i = 0; i < node->children->len; i++)
    if (bw_node_is_seen (node->children->pdata[i]))
      write_node (writer, node->children->pdata[i]);
  end_figures (writer);
}

/**
 * bw_node_to_html:
 *
 * Returns: (transfer full): what people see of @node, as a page of HTML
 */
char *
bw_node_to_html (const BwNode *node)
{
  g_return_val_if_fail (node != NULL, NULL);
  Writer writer = { g_string_new ("<!DOCTYPE html>\n<html><head><meta charset=\"utf-8\">"
                                  "<title></title></head><body>\n"),
                    bw_result_mark (node->result), FALSE };
  if (bw_node_is_seen (node))
    write_node (&writer, node);
  end_figures (&writer);
  g_string_append (writer.to, "</body></html>\n");
  return g_string_free (writer.to, FALSE);
}
