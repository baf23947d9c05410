/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "listing.h"

#include <string.h>

#include "result-private.h"

#include "core/base/harmless.h"

/* The listing of a result for reading in a terminal, or wherever letters are of equal width. */

#define INDENT 2
#define GAP 2
#define LABEL_MOST 40
#define VALUES_MOST 4

/* What stands above the line that comes next. */
typedef enum
{
  ABOVE_NOTHING,
  ABOVE_TITLE,
  ABOVE_SENTENCE,
  ABOVE_FIGURES,
  ABOVE_TABLE
} Above;

typedef struct
{
  GString *to;
  int columns;
  gboolean plain;
  char mark;
  int label_width; /* of all figures, so that their values stand below each other */
  Above above;
} Writer;

static void write_children (Writer *writer, const BwNode *node, int indent);

/* A blank line before what is of another kind than what stands above, but not below a title. */
static void
separate (Writer *writer, Above next)
{
  gboolean blank = next == ABOVE_TITLE ? writer->above != ABOVE_NOTHING
                                       : writer->above > ABOVE_TITLE
                                             && (writer->above != next || next == ABOVE_TABLE);
  if (blank)
    g_string_append_c (writer->to, '\n');
  writer->above = next;
}

static char *
marked (const Writer *writer, BwMark mark, const char *text)
{
  return mark == BW_MARK_NONE ? g_strdup (text)
                              : g_strconcat (bw_mark_sign (mark, writer->plain), " ", text, NULL);
}

static void
write_title (Writer *writer, const BwNode *node, int indent)
{
  if (node->label == NULL)
    return;
  separate (writer, ABOVE_TITLE);
  g_autofree char *first = g_strdup_printf ("%*s", indent, "");
  g_autofree char *title = marked (writer, node->mark, node->label);
  bw_text_append_wrapped (writer->to, first, indent + 2 * INDENT, writer->columns, title);
}

/* Figures */

typedef struct
{
  int number;
  int unit;
} Width;

static int
count_values (const BwNode *figure)
{
  return MIN ((int) figure->values->len, VALUES_MOST);
}

/* Words that are all of a figure begin where the numbers begin, and may be as long as they like. */
static gboolean
is_words_alone (const BwNode *figure, const char *number, gboolean is_number)
{
  return figure->values->len == 1 && !is_number;
}

static gboolean
split (const Writer *writer, const BwNode *figure, int i, char **number, char **unit)
{
  const BwValue *value = &g_array_index (figure->values, BwValue, i);
  gboolean is_number = bw_value_split (value, writer->mark, TRUE, number, unit);
  if (value->mark != BW_MARK_NONE)
    {
      g_autofree char *text = g_steal_pointer (number);
      *number = marked (writer, value->mark, text);
    }
  return is_number;
}

static void
measure_figure (const Writer *writer, const BwNode *figure, Width widths[VALUES_MOST])
{
  for (int i = 0; i < count_values (figure); i++)
    {
      g_autofree char *number = NULL, *unit = NULL;
      gboolean is_number = split (writer, figure, i, &number, &unit);
      if (is_words_alone (figure, number, is_number))
        continue;
      widths[i].number = MAX (widths[i].number, bw_text_width (number));
      widths[i].unit = MAX (widths[i].unit, bw_text_width (unit));
    }
}

static void
append_at_right (GString *line, int width, const char *text)
{
  g_string_append_printf (line, "%*s%s", MAX (0, width - bw_text_width (text)), "", text);
}

static void
append_at_left (GString *line, int width, const char *text)
{
  g_string_append_printf (line, "%s%*s", text, MAX (0, width - bw_text_width (text)), "");
}

static void
end_line (Writer *writer, GString *line)
{
  g_strchomp (line->str);
  g_string_append_printf (writer->to, "%s\n", line->str);
}

static GString *
begin_line (const Writer *writer, const char *label, int indent)
{
  g_autofree char *harmless = bw_text_harmless (label);
  GString *line = g_string_new (NULL);
  g_string_append_printf (line, "%*s", indent, "");
  append_at_left (line, writer->label_width, harmless);
  g_string_append_printf (line, "%*s", GAP, "");
  return line;
}

static void
write_figure (Writer *writer, const BwNode *figure, const Width widths[VALUES_MOST], int indent)
{
  g_autoptr (GString) line = begin_line (writer, figure->label, indent);

  for (int i = 0; i < count_values (figure); i++)
    {
      g_autofree char *number = NULL, *unit = NULL;
      gboolean is_number = split (writer, figure, i, &number, &unit);
      if (is_words_alone (figure, number, is_number))
        {
          bw_text_append_wrapped (writer->to, line->str, bw_text_width (line->str), writer->columns,
                                  number);
          return;
        }
      append_at_right (line, widths[i].number, number);
      g_string_append_c (line, ' ');
      append_at_left (line, widths[i].unit, unit);
      g_string_append_printf (line, "%*s", GAP, "");
    }
  end_line (writer, line);
}

static void
write_heads (Writer *writer, char **heads, const Width widths[VALUES_MOST], int indent)
{
  g_autoptr (GString) line = begin_line (writer, "", indent);
  for (int i = 0; i < VALUES_MOST && heads[i] != NULL; i++)
    {
      append_at_right (line, widths[i].number, heads[i]);
      g_string_append_printf (line, "%*s", 1 + widths[i].unit + GAP, "");
    }
  end_line (writer, line);
}

static gboolean
is_seen_figure (const BwNode *node)
{
  return node->kind == BW_NODE_FIGURE && bw_node_is_seen (node);
}

/* Figures that stand one after the other share their columns. Returns how many children they
 * are. */
static guint
write_figures (Writer *writer, const BwNode *parent, guint first, int indent)
{
  Width widths[VALUES_MOST] = { { 0 } };
  guint end = first;

  separate (writer, ABOVE_FIGURES);
  for (; end < parent->children->len; end++)
    {
      const BwNode *node = parent->children->pdata[end];
      if (node->kind != BW_NODE_FIGURE)
        break;
      if (is_seen_figure (node))
        measure_figure (writer, node, widths);
    }
  for (int i = 0; parent->heads != NULL && i < VALUES_MOST && parent->heads[i] != NULL; i++)
    widths[i].number = MAX (widths[i].number, bw_text_width (parent->heads[i]));
  if (parent->heads != NULL)
    write_heads (writer, parent->heads, widths, indent);
  for (guint i = first; i < end; i++)
    if (is_seen_figure (parent->children->pdata[i]))
      write_figure (writer, parent->children->pdata[i], widths, indent);
  return end - first;
}

static int
label_width (const BwNode *node)
{
  int width = is_seen_figure (node) ? MIN (bw_text_width (node->label), LABEL_MOST) : 0;
  for (guint i = 0; i < node->children->len; i++)
    width = MAX (width, label_width (node->children->pdata[i]));
  return width;
}

/* Tables */

/* The first column of a table in groups is no column: its cells stand over the rows of the
 * group. */
static guint
first_column (const BwNode *table)
{
  return table->is_grouped ? 1 : 0;
}

static void
add_heads (const BwNode *table, BwListing *listing)
{
  g_autoptr (GPtrArray) heads = g_ptr_array_new_with_free_func (g_free);
  guint first = first_column (table);
  for (guint i = first; i < bw_node_count_columns (table); i++)
    {
      const BwColumn *column = &g_array_index (table->columns, BwColumn, i);
      g_ptr_array_add (heads, bw_column_head (column));
      if (column->kind == BW_COLUMN_NUMBERS)
        bw_listing_set_right (listing, i - first);
      if (column->kind == BW_COLUMN_SAYS)
        bw_listing_set_wraps (listing, i - first);
    }
  g_ptr_array_add (heads, NULL);
  bw_listing_add_row (listing, (const char *const *) heads->pdata);
}

static char *
cell_text (const Writer *writer, const BwNode *row, guint column)
{
  g_autofree char *text = bw_node_cell_text (row, column, TRUE);
  return marked (writer, g_array_index (row->values, BwValue, column).mark, text);
}

static void
add_row (const Writer *writer, const BwNode *row, guint first, guint n, BwListing *listing)
{
  g_autoptr (GPtrArray) cells = g_ptr_array_new_with_free_func (g_free);
  for (guint column = first; column < MIN (row->values->len, n); column++)
    g_ptr_array_add (cells, cell_text (writer, row, column));
  g_ptr_array_add (cells, NULL);
  bw_listing_add_row (listing, (const char *const *) cells->pdata);
}

static void
write_rows (Writer *writer, const BwNode *table, int indent)
{
  guint n = bw_node_count_columns (table), first = first_column (table);
  g_autoptr (BwListing) listing = bw_listing_new (n - MIN (n, first));

  separate (writer, ABOVE_TABLE);
  add_heads (table, listing);
  for (guint i = 0; i < table->children->len; i++)
    {
      const BwNode *row = table->children->pdata[i];
      if (first > 0 && bw_node_starts_group (table, i))
        {
          g_autofree char *group = cell_text (writer, row, 0);
          bw_listing_add_line (listing, group);
        }
      add_row (writer, row, first, n, listing);
    }
  bw_listing_append_to (listing, writer->to, indent, writer->columns);
}

/* The most columns of a crossed table that stand side by side where the width is that of a
 * terminal. */
#define CROSSED_MOST 3

static void
write_table (Writer *writer, const BwNode *table, int indent)
{
  if (table->across > 0)
    {
      g_autoptr (BwResult) crossed = bw_node_cross (table, writer->columns > 0 ? CROSSED_MOST : 0);
      write_children (writer, bw_result_root (crossed), indent);
    }
  else
    {
      write_title (writer, table, indent);
      indent += table->label != NULL ? INDENT : 0;
      if (table->columns->len > 0)
        write_rows (writer, table, indent);
    }
  for (guint i = 0; i < table->children->len; i++)
    if (bw_node_is_seen (table->children->pdata[i]))
      write_children (writer, table->children->pdata[i], indent);
}

/* Everything */

/* How far the lines after the first are set in: past its mark, or past its number ("12. "). */
static int
hanging (const BwNode *sentence)
{
  gsize digits = strspn (sentence->label, "0123456789");
  if (digits > 0 && g_str_has_prefix (sentence->label + digits, ". "))
    return (int) digits + 2;
  return sentence->mark != BW_MARK_NONE ? INDENT : 0;
}

static void
write_sentence (Writer *writer, const BwNode *node, int indent)
{
  g_autofree char *first = g_strdup_printf ("%*s", indent, "");
  g_autofree char *text = marked (writer, node->mark, node->label);
  separate (writer, ABOVE_SENTENCE);
  bw_text_append_wrapped (writer->to, first, indent + hanging (node), writer->columns, text);
  write_children (writer, node, indent + INDENT);
}

static void
write_list (Writer *writer, const BwNode *list, int indent)
{
  gboolean titled = list->label != NULL;
  g_autofree char *first = titled ? g_strdup_printf ("%*s- ", indent + INDENT, "")
                                  : g_strdup_printf ("%*s", indent, "");
  write_title (writer, list, indent);
  separate (writer, ABOVE_SENTENCE);
  for (guint i = 0; i < list->children->len; i++)
    bw_text_append_wrapped (writer->to, first, titled ? indent + 2 * INDENT : indent,
                            writer->columns, ((const BwNode *) list->children->pdata[i])->label);
  if (titled)
    writer->above = ABOVE_TABLE;
}

static void
write_section (Writer *writer, const BwNode *section, int indent)
{
  write_title (writer, section, indent);
  write_children (writer, section, indent + (section->label != NULL ? INDENT : 0));
}

static void
write_node (Writer *writer, const BwNode *node, int indent)
{
  switch (node->kind)
    {
    case BW_NODE_SENTENCE:
      write_sentence (writer, node, indent);
      break;
    case BW_NODE_LIST:
      write_list (writer, node, indent);
      break;
    case BW_NODE_TABLE:
      write_table (writer, node, indent);
      break;
    case BW_NODE_SECTION:
    case BW_NODE_ROW:
    case BW_NODE_FIGURE:
    default:
      write_section (writer, node, indent);
    }
}

static void
write_children (Writer *writer, const BwNode *node, int indent)
{
  for (guint i = 0; i < node->children->len;)
    {
      const BwNode *child = node->children->pdata[i];
      if (is_seen_figure (child))
        i += write_figures (writer, node, i, indent);
      else if (bw_node_is_seen (child))
        write_node (writer, node->children->pdata[i++], indent);
      else
        i++;
    }
}

/**
 * bw_node_to_text:
 * @columns: where lines end; zero for nowhere
 * @plain: whether marks are letters of ASCII
 *
 * Returns: (transfer full): what people read of @node, in lines; a minus is that of ASCII and
 *   spaces are plain, so that it can be searched
 */
char *
bw_node_to_text (const BwNode *node, int columns, gboolean plain)
{
  g_return_val_if_fail (node != NULL, NULL);
  Writer writer = { .to = g_string_new (NULL),
                    .columns = columns,
                    .plain = plain,
                    .mark = bw_result_mark (node->result),
                    .label_width = label_width (node) };
  if (bw_node_is_seen (node))
    write_node (&writer, node, 0);
  return g_string_free (writer.to, FALSE);
}
