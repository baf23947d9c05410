/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/base/field.h"
#include "value.h"

G_BEGIN_DECLS

/* What a calculation says, made once and shown by every face: the window, the command line as text,
 * JSON or CSV, the clipboard and paper all walk one tree and know nothing of the subject. A builder
 * beside the calculation makes the tree and reads like a list of what the result says. */

typedef struct _BwResult BwResult;
typedef struct _BwNode BwNode;

typedef enum
{
  BW_NODE_SECTION,
  BW_NODE_FIGURE, /* a label and its values */
  BW_NODE_SENTENCE,
  BW_NODE_LIST, /* of sentences */
  BW_NODE_TABLE,
  BW_NODE_ROW
} BwNodeKind;

/* What a sentence is for. */
typedef enum
{
  BW_SAY_NOTE,
  BW_SAY_ANSWER,
  BW_SAY_CAUTION
} BwSay;

typedef enum
{
  BW_COLUMN_WORDS,   /* names and other short words, which no walker breaks */
  BW_COLUMN_NUMBERS, /* at the right edge */
  BW_COLUMN_SAYS,    /* sentences, which may wrap */
  BW_COLUMN_MORE     /* sentences that are left out where a row has no place of its own */
} BwColumnKind;

/**
 * BwColumn:
 * @label: its head
 * @unit: (nullable): in its head, and then no more in its cells
 */
typedef struct
{
  const char *label;
  const char *unit;
  BwColumnKind kind;
} BwColumn;

/**
 * BwNode:
 * @parent: (nullable): borrowed
 * @key: (nullable): of a section, a list or a table: its name in JSON. A section without a key has
 *   its members in the object around it; a table without one is not in JSON
 * @label: (nullable): title of a section, list or table, label of a figure, text of a sentence; a
 *   figure without one, and a table without columns, is for scripts alone
 * @heads: (nullable): of a section: what stands over the values of its figures
 * @order: (nullable): of a section or table: the keys of its objects in the order in which scripts
 *   have always had them, set apart by spaces; others follow as they come
 * @mark: before its title, sentence or first cell
 * @values: (element-type BwValue): of a figure, or the cells of a row that are seen
 * @children: (element-type BwNode): of a sentence: what belongs to it, set in; of a row: what scripts
 *   get as well, and sections of its own that people read below the table
 * @for_scripts: people do not see it; of a row, what is in it beside its cells
 * @for_people: scripts have what is in it elsewhere
 * @names: of a table: how many cells of a row tell it from the others
 * @is_grouped: of a table: rows after each other with the same first cell belong together
 * @across: of a table, where not zero: people see so many rows side by side in one line: the first
 *   cell before it, the second over the column, and the third where they meet
 *
 * A part of a result. Read by walkers; made and changed by the functions below alone.
 */
struct _BwNode
{
  BwNodeKind kind;
  BwResult *result;
  const BwNode *parent;
  const char *key;
  const char *label;
  char **heads;
  const char *order;
  BwSay say;
  BwMark mark;
  GArray *values;
  GPtrArray *children;
  GArray *columns;
  gboolean for_scripts;
  gboolean for_people;
  guint names;
  gboolean is_grouped;
  guint across;
};

BwResult *bw_result_new (char mark);
void bw_result_free (BwResult *result);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (BwResult, bw_result_free)
BwNode *bw_result_root (BwResult *result);
char bw_result_mark (const BwResult *result);
void bw_result_tell_ids (BwResult *result);
gboolean bw_result_tells_ids (const BwResult *result);

const char *bw_node_print (BwNode *node, const char *format, ...) G_GNUC_PRINTF (2, 3);
const char *bw_node_take (BwNode *node, char *words);
const char *bw_node_quantity (BwNode *node, double value, BwDimension dimension, int digits);

BwNode *bw_node_section (BwNode *parent, const char *key, const char *title);
void bw_node_set_heads (BwNode *section, const char *first, ...) G_GNUC_NULL_TERMINATED;
BwNode *bw_node_figure (BwNode *parent, const char *label, BwValue value);
BwNode *bw_node_pair (BwNode *parent, const char *label, BwValue first, BwValue second);
void bw_node_add_value (BwNode *figure, BwValue value);
void bw_node_member (BwNode *parent, BwValue value);
BwNode *bw_node_say (BwNode *parent, BwSay what, const char *key, const char *text);
BwNode *bw_node_list (BwNode *parent, const char *key, const char *title, const GPtrArray *texts);

void bw_node_fields (BwNode *to, const BwFieldTable *table, gconstpointer object);
void bw_node_origins (BwNode *to, const BwFieldTable *table, gconstpointer object);
void bw_node_field (BwNode *to, const BwFieldTable *table, const char *key, gconstpointer object);

BwNode *bw_node_table (BwNode *parent, const char *key, const char *title);
void bw_node_column (BwNode *table, BwColumnKind kind, const char *label, const char *unit);
BwNode *bw_node_row (BwNode *table);
void bw_node_cell (BwNode *row, BwValue value);
void bw_node_drop_empty_columns (BwNode *table);

gboolean bw_node_is_seen (const BwNode *node);
const BwNode *bw_node_find (const BwNode *node, const char *key);
const char *bw_node_answer (const BwNode *node);
const BwValue *bw_node_value (const BwNode *node, const char *key);
char *bw_node_words (const BwNode *node, const char *key);
guint bw_node_count_columns (const BwNode *table);
char *bw_node_cell_text (const BwNode *row, guint column, gboolean plain);
gboolean bw_node_starts_group (const BwNode *table, guint row);
BwResult *bw_node_cross (const BwNode *table, guint most);
const char *bw_mark_sign (BwMark mark, gboolean plain);

void bw_node_say_keys (BwNode *to, const BwNode *of);

/* The walkers: each makes the whole of a node, whatever it is, in one form. */
char *bw_node_to_json (const BwNode *node);
char *bw_node_to_text (const BwNode *node, int columns, gboolean plain);
char *bw_node_to_csv (const BwNode *node);
char *bw_node_to_tsv (const BwNode *node);
char *bw_node_to_html (const BwNode *node);

G_END_DECLS
