/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "flow.h"

/* A result on paper: its figures two to a line, its tables over the whole width, its sentences. */

/* In heights of a line. */
#define INDENT 1.15
#define CELL_ROOM 0.8      /* beside the text of a cell */
#define LEAST_COLUMN 5.0   /* width of a column whose text may wrap */
#define CROSSED_COLUMN 7.5 /* the same where such a column stands beside others */

#define MOST_LOOSE 1.5 /* what columns of short text take at most, to what they need */

typedef struct
{
  BwFlow *flow;
  char mark;
  guint depth;  /* of sections with titles */
  guint indent; /* of sentences below sentences */
} Writer;

static void write_children (Writer *writer, const BwNode *node);

static void
say (Writer *writer, BwFlowStyle style, BwMark mark, gboolean keep, const char *text)
{
  double indent = INDENT * writer->indent * bw_flow_line_height (writer->flow);
  bw_flow_add_text (writer->flow,
                    &(BwFlowText){ text, style, indent, BW_MARK_SEVERITY (mark), keep });
}

static void
write_title (Writer *writer, const BwNode *node)
{
  if (node->label != NULL)
    bw_flow_add_text (writer->flow,
                      &(BwFlowText){ node->label,
                                     writer->depth == 0 ? BW_FLOW_HEADING : BW_FLOW_SUBHEADING, 0,
                                     BW_MARK_SEVERITY (node->mark), TRUE });
}

/* Columns */

/* The greatest width of a column that wraps with which all of them fit into @room. A column that
 * needs less leaves the rest of its share to the others. */
static double
cap_for (guint n, const double widths[], const gboolean wraps[], double room)
{
  double cap = room;
  for (guint round = 0; round <= n; round++)
    {
      double left = room;
      guint wide = 0;
      for (guint i = 0; i < n; i++)
        if (wraps[i] && widths[i] > cap)
          wide++;
        else if (wraps[i])
          left -= widths[i];
      if (wide > 0)
        cap = left / wide;
      else if (left < 0)
        cap = room / n;
    }
  return cap;
}

/* The widths of @n columns: those whose text does not wrap have what they need, the others share
 * the rest. */
static void
share_width (const BwFlow *flow, guint n, double widths[], const gboolean wraps[])
{
  double room = bw_flow_width (flow), taken = 0, all = 0;
  gboolean any = FALSE;

  for (guint i = 0; i < n; i++)
    {
      taken += wraps[i] ? 0 : widths[i];
      any |= wraps[i];
    }
  double cap = MAX (cap_for (n, widths, wraps, room - taken),
                    LEAST_COLUMN * bw_flow_line_height (flow));
  for (guint i = 0; i < n; i++)
    {
      widths[i] = wraps[i] ? MIN (widths[i], cap) : widths[i];
      all += widths[i];
    }
  for (guint i = 0; i < n; i++)
    widths[i] *= any ? room / all : MIN (room / all, MOST_LOOSE);
}

static double
cell_width (const BwFlow *flow, const char *text, BwMark mark, gboolean bold)
{
  double height = bw_flow_line_height (flow);
  return bw_flow_text_width ((BwFlow *) flow, text, bold) + CELL_ROOM * height
         + (mark != BW_MARK_NONE ? 1.2 * height : 0);
}

static guint
count_columns (const BwNode *table)
{
  return MIN (bw_node_count_columns (table), BW_FLOW_MAX_COLUMNS);
}

static BwMark
mark_of (const BwNode *row, guint i)
{
  return i < row->values->len ? g_array_index (row->values, BwValue, i).mark : BW_MARK_NONE;
}

/* Which columns wrap: those of sentences; in a wide table without sentences, those of words. */
static BwColumnKind
wrapped_kind (const BwNode *table)
{
  for (guint i = 0; i < count_columns (table); i++)
    if (g_array_index (table->columns, BwColumn, i).kind == BW_COLUMN_SAYS)
      return BW_COLUMN_SAYS;
  return count_columns (table) > 4 ? BW_COLUMN_WORDS : BW_COLUMN_MORE;
}

static void
measure_columns (const BwFlow *flow, const BwNode *table, double widths[], gboolean wraps[])
{
  for (guint i = 0; i < count_columns (table); i++)
    {
      const BwColumn *column = &g_array_index (table->columns, BwColumn, i);
      widths[i] = cell_width (flow, column->label, BW_MARK_NONE, TRUE);
      wraps[i] = column->kind == wrapped_kind (table);
      for (guint row = 0; row < table->children->len; row++)
        {
          g_autofree char *text = bw_node_cell_text (table->children->pdata[row], i, FALSE);
          double width = cell_width (flow, text, mark_of (table->children->pdata[row], i), FALSE);
          widths[i] = MAX (widths[i], width);
        }
    }
  share_width (flow, count_columns (table), widths, wraps);
}

/* Tables */

static void
begin_table (BwFlow *flow, const BwNode *table)
{
  double widths[BW_FLOW_MAX_COLUMNS];
  gboolean wraps[BW_FLOW_MAX_COLUMNS];
  BwFlowCell heads[BW_FLOW_MAX_COLUMNS];
  g_autoptr (GPtrArray) texts = g_ptr_array_new_with_free_func (g_free);

  measure_columns (flow, table, widths, wraps);
  for (guint i = 0; i < count_columns (table); i++)
    {
      const BwColumn *column = &g_array_index (table->columns, BwColumn, i);
      g_ptr_array_add (texts, column->unit != NULL
                                  ? g_strdup_printf ("%s\n%s", column->label, column->unit)
                                  : g_strdup (column->label));
      heads[i] = (BwFlowCell){ texts->pdata[i], BW_INK_GRAPHITE, BW_FLOW_NO_MARK,
                               column->kind == BW_COLUMN_NUMBERS };
    }
  bw_flow_begin_table (flow, count_columns (table), widths, heads);
}

static void
add_row (BwFlow *flow, const BwNode *table, guint index)
{
  const BwNode *row = table->children->pdata[index];
  BwFlowCell cells[BW_FLOW_MAX_COLUMNS];
  g_autoptr (GPtrArray) texts = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; i < count_columns (table); i++)
    {
      BwSeverity severity = BW_MARK_SEVERITY (mark_of (row, i));
      gboolean shown = i > 0 || bw_node_starts_group (table, index);
      g_ptr_array_add (texts, shown ? bw_node_cell_text (row, i, FALSE) : g_strdup (""));
      cells[i] = (BwFlowCell){
        texts->pdata[i],
        severity < BW_N_SEVERITIES ? bw_ink_for_severity (severity) : BW_INK_GRAPHITE, severity,
        g_array_index (table->columns, BwColumn, i).kind == BW_COLUMN_NUMBERS
      };
    }
  bw_flow_add_row (flow, cells);
}

static void
write_crossed (Writer *writer, const BwNode *table)
{
  double room = 0.72 * bw_flow_width (writer->flow);
  double least = CROSSED_COLUMN * bw_flow_line_height (writer->flow);
  guint most = (guint) CLAMP (room / least, 1, BW_FLOW_MAX_COLUMNS - 1);
  g_autoptr (BwResult) crossed = bw_node_cross (table, most);
  write_children (writer, bw_result_root (crossed));
}

static void
write_rows (Writer *writer, const BwNode *table)
{
  begin_table (writer->flow, table);
  for (guint i = 0; i < table->children->len; i++)
    add_row (writer->flow, table, i);
  bw_flow_end_table (writer->flow);
}

static void
write_table (Writer *writer, const BwNode *table)
{
  if (table->across > 0)
    write_crossed (writer, table);
  else
    {
      write_title (writer, table);
      if (table->columns->len > 0)
        write_rows (writer, table);
    }
  for (guint i = 0; i < table->children->len; i++)
    if (bw_node_is_seen (table->children->pdata[i]))
      write_children (writer, table->children->pdata[i]);
}

/* Figures: a label and its value, two of them to the row; a figure of two values takes the width of
 * both. */

typedef struct
{
  Writer *writer;
  guint filled; /* cells of the row */
  BwFlowCell cells[4];
  char *texts[4]; /* owned, until the row is added */
} Pairs;

static void
flush_pairs (Pairs *pairs)
{
  if (pairs->filled == 0)
    return;
  for (guint i = pairs->filled; i < G_N_ELEMENTS (pairs->cells); i++)
    pairs->cells[i] = (BwFlowCell){ "", BW_INK_GRAPHITE, BW_FLOW_NO_MARK, FALSE };
  bw_flow_add_row (pairs->writer->flow, pairs->cells);
  pairs->filled = 0;
  for (guint i = 0; i < G_N_ELEMENTS (pairs->texts); i++)
    g_clear_pointer (&pairs->texts[i], g_free);
}

/* "720 px, 53.33 µs" */
static char *
values_text (const BwNode *figure, char mark)
{
  GString *text = g_string_new (NULL);
  for (guint i = 0; i < figure->values->len; i++)
    {
      g_autofree char *one = bw_value_text (&g_array_index (figure->values, BwValue, i), mark);
      if (*one != '\0')
        g_string_append_printf (text, "%s%s", text->len > 0 ? ", " : "", one);
    }
  return g_string_free (text, FALSE);
}

static void
add_pair (Pairs *pairs, const BwNode *figure)
{
  guint at = pairs->filled;
  BwSeverity severity = BW_MARK_SEVERITY (figure->mark);

  pairs->texts[at] = g_strdup (figure->label);
  pairs->texts[at + 1] = values_text (figure, pairs->writer->mark);
  pairs->cells[at] = (BwFlowCell){ pairs->texts[at], BW_INK_GRAPHITE_LIGHT, BW_FLOW_NO_MARK,
                                   FALSE };
  pairs->cells[at + 1] = (BwFlowCell){ pairs->texts[at + 1], BW_INK_GRAPHITE, severity, FALSE };
  pairs->filled += 2;
  if (pairs->filled == G_N_ELEMENTS (pairs->cells))
    flush_pairs (pairs);
}

/* Returns how many children stand in the table of figures that begins at @first. */
static guint
write_figures (Writer *writer, const BwNode *parent, guint first)
{
  double width = bw_flow_width (writer->flow);
  const double widths[] = { 0.19 * width, 0.31 * width, 0.19 * width, 0.31 * width };
  Pairs pairs = { .writer = writer };
  guint end = first;

  bw_flow_begin_table (writer->flow, G_N_ELEMENTS (widths), widths, NULL);
  for (; end < parent->children->len; end++)
    {
      const BwNode *node = parent->children->pdata[end];
      if (node->kind != BW_NODE_FIGURE)
        break;
      if (bw_node_is_seen (node))
        add_pair (&pairs, node);
    }
  flush_pairs (&pairs);
  bw_flow_end_table (writer->flow);
  return end - first;
}

/* Everything */

/* What belongs to a sentence stays on its page. */
static void
write_sentence (Writer *writer, const BwNode *node)
{
  say (writer, BW_FLOW_BODY, node->mark, node->children->len > 0, node->label);
  writer->indent += 2;
  write_children (writer, node);
  writer->indent -= 2;
}

static void
write_list (Writer *writer, const BwNode *list)
{
  write_title (writer, list);
  for (guint i = 0; i < list->children->len; i++)
    bw_flow_add_text (writer->flow,
                      &(BwFlowText){ ((const BwNode *) list->children->pdata[i])->label,
                                     BW_FLOW_BODY, bw_flow_line_height (writer->flow),
                                     BW_FLOW_NO_MARK, FALSE });
}

static void
write_section (Writer *writer, const BwNode *section)
{
  gboolean titled = section->label != NULL;
  write_title (writer, section);
  writer->depth += titled;
  writer->indent += section->mark != BW_MARK_NONE;
  write_children (writer, section);
  writer->indent -= section->mark != BW_MARK_NONE;
  writer->depth -= titled;
}

static void
write_node (Writer *writer, const BwNode *node)
{
  switch (node->kind)
    {
    case BW_NODE_SENTENCE:
      write_sentence (writer, node);
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
      write_section (writer, node);
    }
}

static void
write_children (Writer *writer, const BwNode *node)
{
  for (guint i = 0; i < node->children->len;)
    {
      const BwNode *child = node->children->pdata[i];
      gboolean seen = bw_node_is_seen (child);
      if (seen && child->kind == BW_NODE_FIGURE)
        {
          i += write_figures (writer, node, i);
          continue;
        }
      if (seen)
        write_node (writer, child);
      i++;
    }
}

/**
 * bw_flow_add_node:
 * @node: a part of a result
 * @depth: of headings above it: zero gives its titles the larger letters
 *
 * Adds what people see of @node.
 */
void
bw_flow_add_node (BwFlow *flow, const BwNode *node, guint depth)
{
  g_return_if_fail (flow != NULL && node != NULL);
  Writer writer = { flow, bw_result_mark (node->result), depth, 0 };
  if (bw_node_is_seen (node))
    write_node (&writer, node);
}
