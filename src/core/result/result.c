/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "result.h"

struct _BwResult
{
  char mark;
  gboolean ids;
  GStringChunk *words; /* every string of the tree */
  BwNode *root;
};

static void
node_free (BwNode *node)
{
  g_clear_pointer (&node->values, g_array_unref);
  g_clear_pointer (&node->columns, g_array_unref);
  g_ptr_array_unref (node->children);
  g_strfreev (node->heads);
  g_free (node);
}

static BwNode *
node_new (BwResult *result, BwNodeKind kind, const char *key, const char *label)
{
  BwNode *node = g_new0 (BwNode, 1);
  node->kind = kind;
  node->result = result;
  node->key = key;
  node->label = label != NULL ? g_string_chunk_insert (result->words, label) : NULL;
  node->children = g_ptr_array_new_with_free_func ((GDestroyNotify) node_free);
  return node;
}

static BwNode *
node_add (BwNode *parent, BwNodeKind kind, const char *key, const char *label)
{
  BwNode *node = node_new (parent->result, kind, key, label);
  node->parent = parent;
  g_ptr_array_add (parent->children, node);
  return node;
}

/**
 * bw_result_new:
 * @mark: the decimal mark that people read
 *
 * Returns: (transfer full): a result that says nothing yet
 */
BwResult *
bw_result_new (char mark)
{
  BwResult *result = g_new0 (BwResult, 1);
  result->mark = mark;
  result->words = g_string_chunk_new (1024);
  result->root = node_new (result, BW_NODE_SECTION, NULL, NULL);
  return result;
}

/**
 * bw_result_free:
 * @result: (nullable) (transfer full): freed with all its nodes
 */
void
bw_result_free (BwResult *result)
{
  if (result == NULL)
    return;
  node_free (result->root);
  g_string_chunk_free (result->words);
  g_free (result);
}

/**
 * bw_result_root:
 *
 * Returns: (transfer none): the section that holds everything
 */
BwNode *
bw_result_root (BwResult *result)
{
  g_return_val_if_fail (result != NULL, NULL);
  return result->root;
}

/**
 * bw_result_mark:
 *
 * Returns: the decimal mark that people read
 */
char
bw_result_mark (const BwResult *result)
{
  g_return_val_if_fail (result != NULL, BW_FILE_MARK);
  return result->mark;
}

/**
 * bw_result_tell_ids:
 *
 * To be called before anything is said: people will read the ids of rasters and standards as well,
 * because they type them, as on a command line. Scripts always get them.
 */
void
bw_result_tell_ids (BwResult *result)
{
  g_return_if_fail (result != NULL);
  result->ids = TRUE;
}

/**
 * bw_result_tells_ids:
 *
 * Returns: whether people read ids
 */
gboolean
bw_result_tells_ids (const BwResult *result)
{
  g_return_val_if_fail (result != NULL, FALSE);
  return result->ids;
}

/* Words, kept by the tree */

/**
 * bw_node_take:
 * @words: (transfer full) (nullable)
 *
 * Returns: (transfer none) (nullable): @words, which live as long as the tree of @node
 */
const char *
bw_node_take (BwNode *node, char *words)
{
  g_return_val_if_fail (node != NULL, NULL);
  if (words == NULL)
    return NULL;
  const char *kept = g_string_chunk_insert (node->result->words, words);
  g_free (words);
  return kept;
}

/**
 * bw_node_print:
 * @format: as of printf()
 *
 * Returns: (transfer none): words that live as long as the tree of @node
 */
const char *
bw_node_print (BwNode *node, const char *format, ...)
{
  g_return_val_if_fail (node != NULL && format != NULL, NULL);
  va_list list;
  va_start (list, format);
  char *words = g_strdup_vprintf (format, list);
  va_end (list);
  return bw_node_take (node, words);
}

/**
 * bw_node_quantity:
 *
 * Returns: (transfer none): a quantity as people read it, for use in a sentence; it lives as long as
 *   the tree of @node
 */
const char *
bw_node_quantity (BwNode *node, double value, BwDimension dimension, int digits)
{
  g_return_val_if_fail (node != NULL, NULL);
  return bw_node_take (node, bw_quantity_format (value, dimension, digits, node->result->mark));
}

/* Making nodes */

static const char *
keep (BwResult *result, const char *words)
{
  return words != NULL ? g_string_chunk_insert (result->words, words) : NULL;
}

/* A list is kept as one block of pointers in a string of its own. */
static const char *const *
keep_list (BwResult *result, const char *const *list)
{
  guint n = list != NULL ? g_strv_length ((char **) list) : 0;
  g_autofree const char **copy = g_new0 (const char *, n + 1);
  for (guint i = 0; i < n; i++)
    copy[i] = g_string_chunk_insert (result->words, list[i]);
  return g_memdup2 (copy, (n + 1) * sizeof *copy);
}

static void
value_clear (gpointer data)
{
  BwValue *value = data;
  g_free ((gpointer) value->list);
}

static void
add_value (BwNode *node, BwValue value)
{
  if (node->values == NULL)
    {
      node->values = g_array_new (FALSE, FALSE, sizeof (BwValue));
      g_array_set_clear_func (node->values, value_clear);
    }
  value.words = keep (node->result, value.words);
  value.read = keep (node->result, value.read);
  value.list = value.kind == BW_VALUE_LIST ? keep_list (node->result, value.list) : NULL;
  g_array_append_val (node->values, value);
}

/**
 * bw_node_section:
 * @key: (nullable): of an object of its own in JSON
 * @title: (nullable): what people read above it
 *
 * Returns: (transfer none): a new section at the end of @parent
 */
BwNode *
bw_node_section (BwNode *parent, const char *key, const char *title)
{
  g_return_val_if_fail (parent != NULL, NULL);
  return node_add (parent, BW_NODE_SECTION, key, title);
}

/**
 * bw_node_set_heads:
 * @first: what stands over the first values of the figures of @section, then the others, then %NULL
 */
void
bw_node_set_heads (BwNode *section, const char *first, ...)
{
  g_return_if_fail (section != NULL && section->kind == BW_NODE_SECTION && section->heads == NULL);
  g_autoptr (GStrvBuilder) heads = g_strv_builder_new ();
  va_list list;

  va_start (list, first);
  for (const char *head = first; head != NULL; head = va_arg (list, const char *))
    g_strv_builder_add (heads, head);
  va_end (list);
  section->heads = g_strv_builder_end (heads);
}

/**
 * bw_node_figure:
 * @label: what it is, for people
 *
 * Returns: (transfer none): a new figure at the end of @parent
 */
BwNode *
bw_node_figure (BwNode *parent, const char *label, BwValue value)
{
  g_return_val_if_fail (parent != NULL && label != NULL, NULL);
  BwNode *figure = node_add (parent, BW_NODE_FIGURE, NULL, label);
  add_value (figure, value);
  return figure;
}

/**
 * bw_node_pair:
 *
 * Returns: (transfer none): a new figure of two values: an interval in pixels and in time, a length
 *   in both fields
 */
BwNode *
bw_node_pair (BwNode *parent, const char *label, BwValue first, BwValue second)
{
  BwNode *figure = bw_node_figure (parent, label, first);
  g_return_val_if_fail (figure != NULL, NULL);
  add_value (figure, second);
  return figure;
}

/**
 * bw_node_add_value:
 *
 * Adds one more value to @figure, under the same label.
 */
void
bw_node_add_value (BwNode *figure, BwValue value)
{
  g_return_if_fail (figure != NULL && figure->kind == BW_NODE_FIGURE);
  add_value (figure, value);
}

/**
 * bw_node_member:
 *
 * Adds a value to @parent that scripts get and people do not see.
 */
void
bw_node_member (BwNode *parent, BwValue value)
{
  g_return_if_fail (parent != NULL && value.key != NULL);
  add_value (node_add (parent, BW_NODE_FIGURE, NULL, NULL), value);
}

/**
 * bw_node_say:
 * @key: (nullable): its name in JSON
 * @text: (nullable): %NULL adds nothing
 *
 * Returns: (transfer none) (nullable): a new sentence at the end of @parent
 */
BwNode *
bw_node_say (BwNode *parent, BwSay what, const char *key, const char *text)
{
  g_return_val_if_fail (parent != NULL, NULL);
  if (text == NULL)
    return NULL;
  BwNode *node = node_add (parent, BW_NODE_SENTENCE, key, text);
  node->say = what;
  return node;
}

/**
 * bw_node_list:
 * @key: (nullable): of an array of strings in JSON
 * @title: (nullable)
 * @texts: (element-type utf8) (nullable): %NULL adds nothing; of an empty list people see nothing
 *
 * Returns: (transfer none) (nullable): a new list of sentences at the end of @parent
 */
BwNode *
bw_node_list (BwNode *parent, const char *key, const char *title, const GPtrArray *texts)
{
  g_return_val_if_fail (parent != NULL, NULL);
  if (texts == NULL)
    return NULL;
  BwNode *list = node_add (parent, BW_NODE_LIST, key, title);
  for (guint i = 0; i < texts->len; i++)
    bw_node_say (list, BW_SAY_NOTE, NULL, texts->pdata[i]);
  return list;
}

/**
 * bw_node_table:
 * @key: (nullable): of an array of objects in JSON
 * @title: (nullable)
 *
 * Returns: (transfer none): a new table at the end of @parent; without columns, people
 *   see no more of it than the sections in its rows
 */
BwNode *
bw_node_table (BwNode *parent, const char *key, const char *title)
{
  g_return_val_if_fail (parent != NULL, NULL);
  BwNode *table = node_add (parent, BW_NODE_TABLE, key, title);
  table->columns = g_array_new (FALSE, FALSE, sizeof (BwColumn));
  table->names = 1;
  return table;
}

/**
 * bw_node_column:
 * @unit: (nullable): as people read it; the cells then show numbers alone
 *
 * Adds a column to @table.
 */
void
bw_node_column (BwNode *table, BwColumnKind kind, const char *label, const char *unit)
{
  g_return_if_fail (table != NULL && table->kind == BW_NODE_TABLE && label != NULL);
  const BwColumn column = { keep (table->result, label), keep (table->result, unit), kind };
  g_array_append_val (table->columns, column);
}

/**
 * bw_node_row:
 *
 * Returns: (transfer none): a new row at the end of @table
 */
BwNode *
bw_node_row (BwNode *table)
{
  g_return_val_if_fail (table != NULL && table->kind == BW_NODE_TABLE, NULL);
  return node_add (table, BW_NODE_ROW, NULL, NULL);
}

/**
 * bw_node_cell:
 *
 * Adds the cell of the next column to @row.
 */
void
bw_node_cell (BwNode *row, BwValue value)
{
  g_return_if_fail (row != NULL && row->kind == BW_NODE_ROW);
  add_value (row, value);
}

static gboolean
column_is_seen (const BwNode *table, guint column)
{
  for (guint i = 0; i < table->children->len; i++)
    {
      const BwNode *row = table->children->pdata[i];
      if (bw_value_is_seen (&g_array_index (row->values, BwValue, column)))
        return TRUE;
    }
  return FALSE;
}

/**
 * bw_node_drop_empty_columns:
 *
 * Takes out of @table, whose rows are whole, the columns in which people would read nothing; scripts
 * still get their cells.
 */
void
bw_node_drop_empty_columns (BwNode *table)
{
  g_return_if_fail (table != NULL && table->kind == BW_NODE_TABLE);
  for (guint column = table->columns->len; column-- > 0;)
    {
      if (column_is_seen (table, column))
        continue;
      g_array_remove_index (table->columns, column);
      for (guint i = 0; i < table->children->len; i++)
        {
          BwNode *row = table->children->pdata[i];
          const BwValue value = g_array_index (row->values, BwValue, column);
          if (value.key != NULL)
            bw_node_member (row, value);
          g_array_remove_index (row->values, column);
        }
    }
}

/* Looking at nodes */

static gboolean
any_child_seen (const BwNode *node)
{
  for (guint i = 0; i < node->children->len; i++)
    if (bw_node_is_seen (node->children->pdata[i]))
      return TRUE;
  return FALSE;
}

static gboolean
any_value_seen (const BwNode *node)
{
  for (guint i = 0; i < node->values->len; i++)
    if (bw_value_is_seen (&g_array_index (node->values, BwValue, i)))
      return TRUE;
  return FALSE;
}

/**
 * bw_node_is_seen:
 *
 * Returns: whether people see anything of it; of a row, anything beside its cells, which stands below
 *   the table
 */
gboolean
bw_node_is_seen (const BwNode *node)
{
  g_return_val_if_fail (node != NULL, FALSE);
  if (node->for_scripts)
    return FALSE;
  switch (node->kind)
    {
    case BW_NODE_FIGURE:
      return node->label != NULL && any_value_seen (node);
    case BW_NODE_SENTENCE:
      return *node->label != '\0';
    case BW_NODE_TABLE:
      return (node->columns->len > 0 && node->children->len > 0) || any_child_seen (node);
    case BW_NODE_SECTION:
    case BW_NODE_LIST:
    case BW_NODE_ROW:
    default:
      return any_child_seen (node);
    }
}

/**
 * bw_node_find:
 * @key: of a section, a list or a table
 *
 * Returns: (transfer none) (nullable): the first node of this key in @node, however deep
 */
const BwNode *
bw_node_find (const BwNode *node, const char *key)
{
  g_return_val_if_fail (node != NULL && key != NULL, NULL);
  if (g_strcmp0 (node->key, key) == 0)
    return node;
  for (guint i = 0; i < node->children->len; i++)
    {
      const BwNode *found = bw_node_find (node->children->pdata[i], key);
      if (found != NULL)
        return found;
    }
  return NULL;
}

/**
 * bw_node_answer:
 *
 * Returns: (transfer none) (nullable): the first sentence in @node that is the answer
 */
const char *
bw_node_answer (const BwNode *node)
{
  g_return_val_if_fail (node != NULL, NULL);
  if (node->kind == BW_NODE_SENTENCE && node->say == BW_SAY_ANSWER)
    return node->label;
  for (guint i = 0; i < node->children->len; i++)
    {
      const char *found = bw_node_answer (node->children->pdata[i]);
      if (found != NULL)
        return found;
    }
  return NULL;
}

static const BwValue *
own_value (const BwNode *node, const char *key)
{
  for (guint i = 0; node->values != NULL && i < node->values->len; i++)
    {
      const BwValue *value = &g_array_index (node->values, BwValue, i);
      if (g_strcmp0 (value->key, key) == 0)
        return value;
    }
  return NULL;
}

/**
 * bw_node_value:
 *
 * Returns: (transfer none) (nullable): the first value of this key in @node, however deep
 */
const BwValue *
bw_node_value (const BwNode *node, const char *key)
{
  g_return_val_if_fail (node != NULL && key != NULL, NULL);
  const BwValue *found = own_value (node, key);
  for (guint i = 0; found == NULL && i < node->children->len; i++)
    found = bw_node_value (node->children->pdata[i], key);
  return found;
}

/**
 * bw_node_words:
 *
 * Returns: (transfer full): what people read of the value of this key; empty if there is none
 */
char *
bw_node_words (const BwNode *node, const char *key)
{
  g_return_val_if_fail (node != NULL && key != NULL, NULL);
  const BwValue *value = bw_node_value (node, key);
  return value != NULL ? bw_value_text (value, node->result->mark) : g_strdup ("");
}

/**
 * bw_node_count_columns:
 *
 * Returns: how many columns of @table have room side by side: all up to the first
 *   %BW_COLUMN_MORE
 */
guint
bw_node_count_columns (const BwNode *table)
{
  g_return_val_if_fail (table != NULL && table->kind == BW_NODE_TABLE, 0);
  guint n = 0;
  while (n < table->columns->len
         && g_array_index (table->columns, BwColumn, n).kind != BW_COLUMN_MORE)
    n++;
  return n;
}

/**
 * bw_node_cell_text:
 * @column: one of the table's
 * @plain: whether a minus is that of ASCII
 *
 * Returns: (transfer full): what people read in a cell: with the unit after a no-break space, unless
 *   the head of the column has it
 */
char *
bw_node_cell_text (const BwNode *row, guint column, gboolean plain)
{
  g_return_val_if_fail (row != NULL && row->kind == BW_NODE_ROW, NULL);
  const GArray *columns = row->parent->columns;
  g_autofree char *number = NULL, *unit = NULL;

  if (row->values == NULL || column >= row->values->len || column >= columns->len)
    return g_strdup ("");
  bw_value_split (&g_array_index (row->values, BwValue, column), row->result->mark, plain, &number,
                  &unit);
  if (g_array_index (columns, BwColumn, column).unit != NULL || *unit == '\0')
    return g_steal_pointer (&number);
  return g_strconcat (number, "\u00a0", unit, NULL);
}

/**
 * bw_node_starts_group:
 *
 * Returns: whether the first cell of @row tells something that the row above it does not
 */
gboolean
bw_node_starts_group (const BwNode *table, guint row)
{
  g_return_val_if_fail (table != NULL && row < table->children->len, TRUE);
  if (!table->is_grouped || row == 0)
    return TRUE;
  const BwNode *above = table->children->pdata[row - 1], *here = table->children->pdata[row];
  return g_strcmp0 (g_array_index (above->values, BwValue, 0).words,
                    g_array_index (here->values, BwValue, 0).words)
         != 0;
}

/**
 * bw_mark_sign:
 * @plain: whether only the letters of ASCII can be shown
 *
 * Returns: (transfer none): the written sign of @mark, or nothing
 */
const char *
bw_mark_sign (BwMark mark, gboolean plain)
{
  BwSeverity severity = BW_MARK_SEVERITY (mark);
  if (severity >= BW_N_SEVERITIES)
    return "";
  return plain ? bw_severity_plain_sign (severity) : bw_severity_sign (severity);
}
