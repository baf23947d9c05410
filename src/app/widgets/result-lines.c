/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "result-lines.h"

#include <string.h>

#include <glib/gi18n-lib.h>

#define FEW_COLUMNS 4

typedef struct
{
  GPtrArray *lines;
  char mark;
  gboolean cards;
  gboolean many_across; /* in a section of figures with many values each */
  guint block;
} Writer;

static void write_children (Writer *writer, const BwNode *node);

static void
label_clear (gpointer data)
{
  g_free (((BwLabelText *) data)->text);
}

static void
line_free (gpointer data)
{
  BwResultLine *line = data;
  g_array_unref (line->labels);
  g_free (line->copy);
  g_free (line);
}

static BwResultLine *
line_new (BwMark mark)
{
  BwResultLine *line = g_new0 (BwResultLine, 1);
  line->mark = mark;
  line->labels = g_array_new (FALSE, FALSE, sizeof (BwLabelText));
  g_array_set_clear_func (line->labels, label_clear);
  return line;
}

/* @text is taken over. */
static void
add_label (BwResultLine *line, BwLabelLook look, char *text)
{
  const BwLabelText label = { look, text };
  g_array_append_val (line->labels, label);
}

/* A unit follows its number after a space, all else after a tab; what is empty is left out. */
static char *
copy_text (const BwResultLine *line)
{
  GString *text = g_string_new (NULL);
  for (guint i = 0; i < line->labels->len; i++)
    {
      const BwLabelText *label = &g_array_index (line->labels, BwLabelText, i);
      if (*label->text == '\0')
        continue;
      if (text->len > 0)
        g_string_append (text, label->look == BW_LABEL_UNIT ? "\u00a0" : "\t");
      g_string_append (text, label->text);
    }
  return g_string_free (text, FALSE);
}

static gboolean
is_title (const BwResultLine *line)
{
  return !line->stacked && g_array_index (line->labels, BwLabelText, 0).look == BW_LABEL_TITLE;
}

static void
add_line (Writer *writer, BwResultLine *line)
{
  const BwResultLine *above = writer->lines->len > 0 ? writer->lines->pdata[writer->lines->len - 1]
                                                     : NULL;
  line->block = writer->block;
  line->many_across = writer->many_across;
  line->apart = above != NULL && above->block != line->block && !is_title (above)
                && !is_title (line);
  line->copy = copy_text (line);
  g_ptr_array_add (writer->lines, line);
}

static void
add_words (Writer *writer, BwMark mark, BwLabelLook look, const char *words)
{
  if (words == NULL || *words == '\0')
    return;
  BwResultLine *line = line_new (mark);
  add_label (line, look, g_strdup (words));
  add_line (writer, line);
}

/* Figures */

static void
write_figure (Writer *writer, const BwNode *figure)
{
  const BwValue *first = &g_array_index (figure->values, BwValue, 0);
  BwResultLine *line = line_new (figure->mark != BW_MARK_NONE ? figure->mark : first->mark);

  add_label (line, BW_LABEL_NAME, g_strdup (figure->label));
  for (guint i = 0; i < figure->values->len; i++)
    {
      char *number, *unit;
      gboolean is_number = bw_value_split (&g_array_index (figure->values, BwValue, i),
                                           writer->mark, FALSE, &number, &unit);
      gboolean alone = figure->values->len == 1 && !is_number;
      add_label (line, alone ? BW_LABEL_FREE : BW_LABEL_NUMBER, number);
      if (alone)
        g_free (unit);
      else
        add_label (line, BW_LABEL_UNIT, unit);
    }
  add_line (writer, line);
}

static void
write_heads (Writer *writer, char **heads)
{
  BwResultLine *line = line_new (BW_MARK_NONE);
  add_label (line, BW_LABEL_NAME, g_strdup (""));
  for (guint i = 0; heads[i] != NULL; i++)
    {
      add_label (line, BW_LABEL_HEAD_AT_RIGHT, g_strdup (heads[i]));
      add_label (line, BW_LABEL_UNIT, g_strdup (""));
    }
  add_line (writer, line);
}

/* Tables */

static const BwColumn *
column_at (const BwNode *table, guint i)
{
  return &g_array_index (table->columns, BwColumn, i);
}

static BwMark
mark_of (const BwNode *row)
{
  BwMark mark = row->mark;
  for (guint i = 0; mark == BW_MARK_NONE && i < row->values->len; i++)
    mark = g_array_index (row->values, BwValue, i).mark;
  return mark;
}

/* In a table of so many columns, a head of numbers of more letters than this has its last word below
 * the others. */
#define MANY_COLUMNS 7
#define HEAD_CHARS 7

static char *
head_words (const char *label, gboolean narrow)
{
  char *words = g_strdup (label);
  char *last = narrow && g_utf8_strlen (label, -1) > HEAD_CHARS ? strrchr (words, ' ') : NULL;

  if (last != NULL)
    *last = '\n';
  return words;
}

static void
write_column_heads (Writer *writer, const BwNode *table)
{
  static const BwLabelLook heads[] = {
    [BW_COLUMN_WORDS] = BW_LABEL_HEAD,
    [BW_COLUMN_NUMBERS] = BW_LABEL_HEAD_AT_RIGHT,
    [BW_COLUMN_SAYS] = BW_LABEL_LIGHT,
  };
  BwResultLine *line = line_new (BW_MARK_NONE);
  guint first = table->is_grouped ? 1 : 0, end = bw_node_count_columns (table);

  for (guint i = first; i < end; i++)
    {
      const BwColumn *column = column_at (table, i);
      g_autofree char *words = head_words (column->label, column->kind == BW_COLUMN_NUMBERS
                                                              && end - first >= MANY_COLUMNS);
      add_label (line, heads[column->kind],
                 column->unit != NULL ? g_strdup_printf ("%s\n%s", words, column->unit)
                                      : g_strdup (words));
    }
  add_line (writer, line);
}

static void
write_row (Writer *writer, const BwNode *table, const BwNode *row)
{
  static const BwLabelLook looks[] = {
    [BW_COLUMN_WORDS] = BW_LABEL_WORDS,
    [BW_COLUMN_NUMBERS] = BW_LABEL_NUMBER,
    [BW_COLUMN_SAYS] = BW_LABEL_SAYS,
  };
  BwResultLine *line = line_new (mark_of (row));
  guint first = table->is_grouped ? 1 : 0;

  line->row = row;
  for (guint i = first; i < bw_node_count_columns (table); i++)
    {
      BwColumnKind kind = column_at (table, i)->kind;
      gboolean name = i == first && kind == BW_COLUMN_WORDS;
      add_label (line, name ? BW_LABEL_NAME : looks[kind], bw_node_cell_text (row, i, FALSE));
    }
  add_line (writer, line);
}

static void
write_rows (Writer *writer, const BwNode *table)
{
  write_column_heads (writer, table);
  for (guint i = 0; i < table->children->len; i++)
    {
      const BwNode *row = table->children->pdata[i];
      if (table->is_grouped && bw_node_starts_group (table, i))
        {
          g_autofree char *group = bw_node_cell_text (row, 0, FALSE);
          add_words (writer, BW_MARK_NONE, BW_LABEL_TITLE, group);
        }
      write_row (writer, table, row);
    }
}

/* With so many columns of sentences, each sentence of a row is shown with the name of its
 * column. */
#define MANY_SENTENCES 3

static gboolean
has_many_sentences (const BwNode *table)
{
  guint n = 0;
  for (guint i = 0; i < table->columns->len; i++)
    n += column_at (table, i)->kind == BW_COLUMN_SAYS;
  return n >= MANY_SENTENCES;
}

/* A number of a card says what it is; words speak for themselves. Empty for an empty cell. */
static char *
card_text (const BwNode *table, const BwNode *row, guint i)
{
  const BwColumn *column = column_at (table, i);
  g_autofree char *cell = bw_node_cell_text (row, i, FALSE);

  if (*cell != '\0' && column->kind == BW_COLUMN_SAYS)
    return g_strdup_printf (_ ("%1$s: %2$s"), column->label, cell);
  if (*cell == '\0' || column->kind != BW_COLUMN_NUMBERS)
    return g_steal_pointer (&cell);
  return g_strconcat (column->label, " ", cell, column->unit != NULL ? "\u00a0" : "", column->unit,
                      NULL);
}

static void
append_details (GString *to, const BwNode *table, const BwNode *row, BwColumnKind kind)
{
  for (guint i = 2; i < table->columns->len; i++)
    {
      g_autofree char *text = column_at (table, i)->kind == kind ? card_text (table, row, i) : NULL;
      if (text != NULL && *text != '\0')
        g_string_append_printf (to, "%s%s", to->len > 0 ? "; " : "", text);
    }
}

/* "720x480; line +3.2 ppm; score 0.996": the cells of a card that have no line of their own. */
static char *
details_text (const BwNode *table, const BwNode *row)
{
  GString *text = g_string_new (NULL);
  append_details (text, table, row, BW_COLUMN_WORDS);
  append_details (text, table, row, BW_COLUMN_NUMBERS);
  if (has_many_sentences (table))
    append_details (text, table, row, BW_COLUMN_SAYS);
  return g_string_free (text, FALSE);
}

static void
add_sentences (BwResultLine *line, const BwNode *table, const BwNode *row)
{
  for (guint i = 1; i < table->columns->len; i++)
    {
      BwColumnKind kind = column_at (table, i)->kind;
      if (kind == BW_COLUMN_MORE || (kind == BW_COLUMN_SAYS && !has_many_sentences (table)))
        add_label (line, kind == BW_COLUMN_SAYS ? BW_LABEL_FREE : BW_LABEL_LIGHT,
                   bw_node_cell_text (row, i, FALSE));
    }
}

/* The first cell is its title, the second stands beside it; a few sentences have lines of their
 * own. */
static void
write_card (Writer *writer, const BwNode *table, const BwNode *row)
{
  BwResultLine *line = line_new (mark_of (row));

  line->row = row;
  line->stacked = TRUE;
  add_label (line, BW_LABEL_TITLE, bw_node_cell_text (row, 0, FALSE));
  add_label (line, BW_LABEL_NUMBER,
             table->columns->len > 1 && column_at (table, 1)->kind < BW_COLUMN_SAYS
                 ? card_text (table, row, 1)
                 : g_strdup (""));
  add_label (line, BW_LABEL_FREE, details_text (table, row));
  add_sentences (line, table, row);
  add_line (writer, line);
}

/* A few short columns have room everywhere. */
static gboolean
wants_cards (const BwNode *table)
{
  for (guint i = 0; i < table->columns->len; i++)
    if (column_at (table, i)->kind >= BW_COLUMN_SAYS)
      return TRUE;
  return table->columns->len > FEW_COLUMNS;
}

static void
write_table (Writer *writer, const BwNode *table)
{
  if (table->across > 0)
    {
      g_autoptr (BwResult) crossed = bw_node_cross (table, 0);
      write_children (writer, bw_result_root (crossed));
    }
  else
    {
      add_words (writer, table->mark, BW_LABEL_TITLE, table->label);
      writer->block++;
      if (table->columns->len > 0 && !(writer->cards && wants_cards (table)))
        write_rows (writer, table);
      else if (table->columns->len > 0)
        for (guint i = 0; i < table->children->len; i++)
          write_card (writer, table, table->children->pdata[i]);
      writer->block++;
    }
  for (guint i = 0; i < table->children->len; i++)
    if (bw_node_is_seen (table->children->pdata[i]))
      write_children (writer, table->children->pdata[i]);
}

/* Everything */

/* So many values a figure need all the width there is. */
#define MANY_ACROSS 3

static void
write_section (Writer *writer, const BwNode *node)
{
  gboolean outside = writer->many_across;

  writer->block++;
  add_words (writer, node->mark, BW_LABEL_TITLE, node->label);
  writer->many_across = node->heads != NULL && g_strv_length (node->heads) >= MANY_ACROSS;
  if (node->heads != NULL)
    write_heads (writer, node->heads);
  write_children (writer, node);
  writer->many_across = outside;
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
      add_words (writer, node->mark, BW_LABEL_FREE, node->label);
      write_children (writer, node);
      break;
    case BW_NODE_TABLE:
      write_table (writer, node);
      break;
    case BW_NODE_SECTION:
    case BW_NODE_LIST:
    case BW_NODE_ROW:
    default:
      write_section (writer, node);
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
 * bw_result_lines:
 * @cards: whether a row of a table is a block of text, where columns would be too wide
 *
 * Returns: (transfer full) (element-type BwResultLine): what people see of @node
 */
GPtrArray *
bw_result_lines (const BwNode *node, gboolean cards)
{
  g_return_val_if_fail (node != NULL, NULL);
  Writer writer = { .lines = g_ptr_array_new_with_free_func (line_free),
                    .mark = bw_result_mark (node->result),
                    .cards = cards };
  if (bw_node_is_seen (node))
    write_node (&writer, node);
  return writer.lines;
}
