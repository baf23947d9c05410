/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "result-private.h"

#include <glib/gi18n-lib.h>

/* The keys that a result has in JSON, with what people read beside them: what describes the form of a
 * result is taken from a result, and so cannot be out of date. */

typedef struct
{
  char *path;
  const char *type;    /* nullable: not known, since all that was seen is null */
  const char *meaning; /* nullable, borrowed */
} Key;

typedef struct
{
  GPtrArray *keys;      /* (element-type Key) in the order in which they are met */
  GHashTable *by_path;  /* of the same, borrowed */
} Walk;

static void
key_free (gpointer data)
{
  g_free (((Key *) data)->path);
  g_free (data);
}

static const char *
type_of (const BwValue *value)
{
  switch (value->kind)
    {
    case BW_VALUE_NUMBER:
    case BW_VALUE_RANGE:
      return _ ("number");
    case BW_VALUE_WORDS:
    case BW_VALUE_SAYS:
      return _ ("text");
    case BW_VALUE_KIND:
      return C_ ("type of a value", "word");
    case BW_VALUE_SET:
      return _ ("list of words");
    case BW_VALUE_LIST:
      return _ ("list of texts");
    case BW_VALUE_FLAG:
      return _ ("true or false");
    case BW_VALUE_NOTHING:
    default:
      return NULL;
    }
}

/* Rows of a table have the same keys: what the first does not know another may. */
static void
add_key (Walk *walk, const char *path, const char *key, const char *type, const char *meaning)
{
  g_autofree char *whole = *path != '\0' ? g_strconcat (path, ".", key, NULL) : g_strdup (key);
  Key *known = g_hash_table_lookup (walk->by_path, whole);

  if (known == NULL)
    {
      known = g_new0 (Key, 1);
      known->path = g_steal_pointer (&whole);
      g_ptr_array_add (walk->keys, known);
      g_hash_table_insert (walk->by_path, known->path, known);
    }
  known->type = known->type != NULL ? known->type : type;
  known->meaning = known->meaning != NULL ? known->meaning : meaning;
}

static void walk_object (Walk *walk, const BwNode *node, const char *path);

static void
walk_child (Walk *walk, const BwNode *child, const char *path)
{
  g_autofree char *below = *path != '\0' ? g_strconcat (path, ".", child->key, NULL)
                                         : g_strdup (child->key);
  g_autofree char *rows = g_strconcat (below, "[]", NULL);

  if (child->kind == BW_NODE_SENTENCE)
    add_key (walk, path, child->key, _ ("text"), NULL);
  else if (child->kind == BW_NODE_LIST)
    add_key (walk, path, child->key, _ ("list of texts"), child->label);
  else if (child->kind == BW_NODE_TABLE)
    {
      add_key (walk, path, child->key, _ ("list of objects"), child->label);
      for (guint i = 0; i < child->children->len; i++)
        walk_object (walk, child->children->pdata[i], rows);
    }
  else
    {
      add_key (walk, path, child->key, _ ("object"), child->label);
      walk_object (walk, child, below);
    }
}

static void
walk_object (Walk *walk, const BwNode *node, const char *path)
{
  g_autoptr (GArray) members = bw_node_members (node, NULL);

  for (guint i = 0; i < members->len; i++)
    {
      const BwMember *member = &g_array_index (members, BwMember, i);
      if (member->node != NULL)
        walk_child (walk, member->node, path);
      else
        add_key (walk, path, member->key, type_of (&member->value), member->label);
    }
}

/**
 * bw_node_say_keys:
 * @of: the root of a result
 *
 * Adds a table of the keys that @of has in JSON: where they stand, what kind of value they have, and
 * what people read beside it.
 */
void
bw_node_say_keys (BwNode *to, const BwNode *of)
{
  g_return_if_fail (to != NULL && of != NULL);
  g_autoptr (GPtrArray) keys = g_ptr_array_new_with_free_func (key_free);
  g_autoptr (GHashTable) by_path = g_hash_table_new (g_str_hash, g_str_equal);
  Walk walk = { keys, by_path };
  BwNode *table = bw_node_table (to, "keys", NULL);

  bw_node_column (table, BW_COLUMN_WORDS, _ ("key"), NULL);
  bw_node_column (table, BW_COLUMN_WORDS, _ ("value"), NULL);
  bw_node_column (table, BW_COLUMN_SAYS, _ ("what it is"), NULL);
  walk_object (&walk, of, "");
  for (guint i = 0; i < keys->len; i++)
    {
      const Key *key = keys->pdata[i];
      BwNode *row = bw_node_row (table);
      bw_node_cell (row, bw_value_words ("key", key->path));
      bw_node_cell (row, bw_value_says ("type", key->type != NULL ? key->type : _ ("not known here")));
      bw_node_cell (row, bw_value_says ("meaning", key->meaning != NULL ? key->meaning : ""));
    }
}
