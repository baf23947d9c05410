/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "listing.h"
#include "result-private.h"

#include <math.h>
#include <string.h>

#include "core/base/harmless.h"

/* Comma-separated values (RFC 4180) for programs: the numbers of the JSON, all digits, in base units,
 * with a decimal point and the minus of ASCII. The heads of columns are the keys of the JSON, which
 * name the units. Several tables stand one below the other with an empty line between; figures that
 * are in no table make a table of their own. */

/* A cell, and the head it stands below. */
typedef struct
{
  const char *head;
  GString *text;
} Cell;

/* A table that is being gathered: heads in the order of columns, and the cells of each row. */
typedef struct
{
  GPtrArray *heads;
  GPtrArray *rows; /* (element-type GArray of Cell) */
} Sheet;

static void
cell_clear (gpointer data)
{
  g_string_free (((Cell *) data)->text, TRUE);
}

static void
sheet_init (Sheet *sheet)
{
  sheet->heads = g_ptr_array_new ();
  sheet->rows = g_ptr_array_new_with_free_func ((GDestroyNotify) g_array_unref);
}

static GArray *
add_row (Sheet *sheet)
{
  GArray *row = g_array_new (FALSE, FALSE, sizeof (Cell));
  g_array_set_clear_func (row, cell_clear);
  g_ptr_array_add (sheet->rows, row);
  return row;
}

static GString *
add_cell (Sheet *sheet, GArray *row, const char *head)
{
  const Cell cell = { g_intern_string (head), g_string_new (NULL) };
  g_array_append_val (row, cell);
  if (!g_ptr_array_find (sheet->heads, cell.head, NULL))
    g_ptr_array_add (sheet->heads, (gpointer) cell.head);
  return cell.text;
}

/* Writing */

/* An apostrophe keeps a spreadsheet from taking words for a formula. What a terminal would obey is left
 * out; line breaks of a note stay, within quotes. */
static void
append_words (GString *to, const char *words)
{
  if (*words != '\0' && strchr ("=+-@\t\r", *words) != NULL)
    g_string_append_c (to, '\'');
  g_autofree char *harmless = bw_text_harmless_lines (words);
  g_string_append (to, harmless);
}

/* In the program's own sentences no-break spaces would only hinder a search. */
static void
append_sentence (GString *to, const char *says)
{
  g_autoptr (GString) plain = g_string_new (says);
  g_string_replace (plain, "\u00a0", " ", 0);
  append_words (to, plain->str);
}

static void
append_quoted (GString *to, const char *text)
{
  if (strpbrk (text, ",\"\r\n") == NULL)
    {
      g_string_append (to, text);
      return;
    }
  g_autoptr (GString) quoted = g_string_new (text);
  g_string_replace (quoted, "\"", "\"\"", 0);
  g_string_append_printf (to, "\"%s\"", quoted->str);
}

static void
append_set (GString *to, const BwKindTable *kinds, guint set)
{
  g_autofree char *ids = bw_kind_set_ids (kinds, set, "; ");
  g_string_append (to, ids);
}

static void
append_value (GString *to, const BwValue *value)
{
  switch (value->kind)
    {
    case BW_VALUE_NUMBER:
      if (isfinite (value->number))
        bw_number_shortest (to, value->number);
      break;
    case BW_VALUE_WORDS:
      append_words (to, value->words);
      break;
    case BW_VALUE_SAYS:
      append_sentence (to, value->words);
      break;
    case BW_VALUE_KIND:
      g_string_append (to, value->id);
      break;
    case BW_VALUE_FLAG:
      g_string_append (to, value->number > 0 ? "true" : "false");
      break;
    case BW_VALUE_SET:
      append_set (to, value->kinds, value->set);
      break;
    case BW_VALUE_LIST:
      {
        g_autofree char *joined = g_strjoinv ("; ", (char **) value->list);
        append_words (to, joined);
        break;
      }
    case BW_VALUE_RANGE:
    case BW_VALUE_NOTHING:
    default:
      break;
    }
}

static const char *
cell_of (const GArray *row, const char *head)
{
  for (guint i = 0; i < row->len; i++)
    if (g_array_index (row, Cell, i).head == head)
      return g_array_index (row, Cell, i).text->str;
  return "";
}

static void
append_line (GString *to, const Sheet *sheet, const GArray *row)
{
  for (guint i = 0; i < sheet->heads->len; i++)
    {
      const char *head = sheet->heads->pdata[i];
      if (i > 0)
        g_string_append_c (to, ',');
      append_quoted (to, row != NULL ? cell_of (row, head) : head);
    }
  g_string_append (to, "\r\n");
}

/* Writes what is gathered, if there is any, and empties @sheet. */
static void
flush (Sheet *sheet, GString *to)
{
  if (sheet->rows->len > 0)
    {
      if (to->len > 0)
        g_string_append (to, "\r\n");
      append_line (to, sheet, NULL);
      for (guint i = 0; i < sheet->rows->len; i++)
        append_line (to, sheet, sheet->rows->pdata[i]);
    }
  g_ptr_array_unref (sheet->heads);
  g_ptr_array_unref (sheet->rows);
  sheet_init (sheet);
}

/* Tables */

static gboolean
is_scalar (const BwMember *member)
{
  return member->node == NULL || member->node->kind == BW_NODE_SENTENCE;
}

static void
fill_cell (GString *to, const BwMember *member)
{
  if (member->node != NULL)
    append_sentence (to, member->node->label);
  else
    append_value (to, &member->value);
}

/* What people see without a key, below the words that people read. */
static void
add_keyless (Sheet *sheet, GArray *cells, const BwNode *table, const BwNode *row)
{
  for (guint i = 0; i < MIN (row->values->len, table->columns->len); i++)
    {
      const BwValue *value = &g_array_index (row->values, BwValue, i);
      const BwColumn *column = &g_array_index (table->columns, BwColumn, i);
      if (value->key != NULL)
        continue;
      g_autofree char *head = value->kind == BW_VALUE_NUMBER
                                      && value->dimension != BW_DIMENSION_NONE
                                  ? g_strdup_printf ("%s (%s)", column->label,
                                                     bw_quantity_base_unit (value->dimension))
                                  : g_strdup (column->label);
      append_value (add_cell (sheet, cells, head), value);
    }
}

/* @path: of the table within the row of another, or NULL. */
static void
add_members (Sheet *sheet, GArray *cells, const BwNode *row, const char *path, const char *order)
{
  g_autoptr (GArray) members = bw_node_members (row, order);
  for (guint i = 0; i < members->len; i++)
    {
      const BwMember *member = &g_array_index (members, BwMember, i);
      g_autofree char *head = path != NULL ? g_strjoin (".", path, member->key, NULL)
                                           : g_strdup (member->key);
      if (is_scalar (member))
        fill_cell (add_cell (sheet, cells, head), member);
    }
}

/* The cells that tell a row from the others stand before each row of a table within it; heads are
 * then paths, such as “monitors.id”. */
static void
add_names (Sheet *sheet, GArray *cells, const BwNode *table, const BwNode *row)
{
  for (guint i = 0; row->values != NULL && i < MIN (table->names, row->values->len); i++)
    {
      const BwValue *value = &g_array_index (row->values, BwValue, i);
      const char *name = value->key != NULL ? value->key
                                            : g_array_index (table->columns, BwColumn, i).label;
      g_autofree char *head = g_strjoin (".", table->key, name, NULL);
      append_value (add_cell (sheet, cells, head), value);
    }
}

static void
add_table_row (Sheet *sheet, const BwNode *outer, const BwNode *outer_row, const BwNode *table,
               const BwNode *row)
{
  GArray *cells = add_row (sheet);
  if (outer != NULL)
    add_names (sheet, cells, outer, outer_row);
  add_members (sheet, cells, row, outer != NULL ? table->key : NULL,
               row->order != NULL ? row->order : table->order);
  if (row->values != NULL)
    add_keyless (sheet, cells, table, row);
}

static void
gather_tables (GPtrArray *found, const BwNode *node)
{
  for (guint i = 0; i < node->children->len; i++)
    {
      const BwNode *child = node->children->pdata[i];
      if (child->kind == BW_NODE_TABLE)
        g_ptr_array_add (found, (gpointer) child);
      else
        gather_tables (found, child);
    }
}

/* The tables within the rows of @table that have the same place in each row make one table. */
static void
write_inner (const BwNode *table, GString *to)
{
  g_autoptr (GPtrArray) first = g_ptr_array_new ();
  if (table->names == 0 || table->children->len == 0)
    return;
  gather_tables (first, table->children->pdata[0]);
  for (guint place = 0; place < first->len; place++)
    {
      Sheet sheet;
      sheet_init (&sheet);
      for (guint i = 0; i < table->children->len; i++)
        {
          g_autoptr (GPtrArray) here = g_ptr_array_new ();
          gather_tables (here, table->children->pdata[i]);
          const BwNode *inner = place < here->len ? here->pdata[place] : NULL;
          for (guint row = 0; inner != NULL && row < inner->children->len; row++)
            add_table_row (&sheet, table, table->children->pdata[i], inner,
                           inner->children->pdata[row]);
        }
      flush (&sheet, to);
      g_ptr_array_unref (sheet.heads);
      g_ptr_array_unref (sheet.rows);
    }
}

static void
write_table (const BwNode *table, GString *to)
{
  Sheet sheet;
  sheet_init (&sheet);
  for (guint i = 0; i < table->children->len; i++)
    add_table_row (&sheet, NULL, NULL, table, table->children->pdata[i]);
  flush (&sheet, to);
  g_ptr_array_unref (sheet.heads);
  g_ptr_array_unref (sheet.rows);
  write_inner (table, to);
}

/* Figures */

static const char *
unit_of (const BwValue *value)
{
  gboolean measures = value->kind == BW_VALUE_NUMBER && value->dimension != BW_DIMENSION_NONE
                      && value->dimension != BW_DIMENSION_FRACTION;
  return measures ? bw_quantity_base_unit (value->dimension) : "";
}

static void
add_figure_row (Sheet *figures, const char *section, const char *label, const BwMember *member)
{
  GArray *cells = add_row (figures);
  append_words (add_cell (figures, cells, "section"), section != NULL ? section : "");
  append_words (add_cell (figures, cells, "figure"), label != NULL ? label : "");
  g_string_append (add_cell (figures, cells, "key"), member->key != NULL ? member->key : "");
  fill_cell (add_cell (figures, cells, "value"), member);
  g_string_append (add_cell (figures, cells, "unit"),
                   member->node == NULL ? unit_of (&member->value) : "");
}

static void
add_figure (Sheet *figures, const char *section, const BwNode *figure)
{
  g_autoptr (GArray) members = bw_node_members (figure, NULL);
  for (guint i = 0; i < members->len; i++)
    add_figure_row (figures, section, figure->label, &g_array_index (members, BwMember, i));
  for (guint i = 0; i < figure->values->len; i++)
    {
      const BwMember keyless = { NULL, NULL, g_array_index (figure->values, BwValue, i) };
      if (keyless.value.key == NULL && bw_value_is_seen (&keyless.value))
        add_figure_row (figures, section, figure->label, &keyless);
    }
}

static void
walk (const BwNode *node, const char *section, Sheet *figures, GString *to)
{
  if (node->for_people)
    return;
  switch (node->kind)
    {
    case BW_NODE_FIGURE:
      add_figure (figures, section, node);
      break;
    case BW_NODE_TABLE:
      flush (figures, to);
      write_table (node, to);
      break;
    case BW_NODE_SENTENCE:
    case BW_NODE_LIST:
      break;
    case BW_NODE_SECTION:
    case BW_NODE_ROW:
    default:
      for (guint i = 0; i < node->children->len; i++)
        walk (node->children->pdata[i], node->label != NULL ? node->label : section, figures, to);
    }
}

/**
 * bw_node_to_csv:
 *
 * Returns: (transfer full): every table and figure of @node as comma-separated values
 */
char *
bw_node_to_csv (const BwNode *node)
{
  g_return_val_if_fail (node != NULL, NULL);
  GString *to = g_string_new (NULL);
  Sheet figures;

  sheet_init (&figures);
  walk (node, NULL, &figures, to);
  flush (&figures, to);
  g_ptr_array_unref (figures.heads);
  g_ptr_array_unref (figures.rows);
  return g_string_free (to, FALSE);
}
