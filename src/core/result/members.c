/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "result-private.h"

#include <string.h>

/* The place of @key in @order, a list set apart by spaces; after all of them if it is not there. */
static gsize
place_of (const char *key, const char *order)
{
  gsize length = strlen (key);
  for (const char *p = order; p != NULL && (p = strstr (p, key)) != NULL; p += length)
    if ((p == order || p[-1] == ' ') && (p[length] == ' ' || p[length] == '\0'))
      return (gsize) (p - order);
  return G_MAXSIZE;
}

static int
compare (gconstpointer a, gconstpointer b, gpointer order)
{
  gsize place_a = place_of (((const BwMember *) a)->key, order);
  gsize place_b = place_of (((const BwMember *) b)->key, order);
  return place_a < place_b ? -1 : place_a > place_b;
}

/* What people see of a thing stands before what is there for scripts alone, and both may have it. */
static void
add (GArray *members, const BwMember *member)
{
  for (guint i = 0; i < members->len; i++)
    if (strcmp (g_array_index (members, BwMember, i).key, member->key) == 0)
      return;
  g_array_append_vals (members, member, 1);
}

static void
add_end (GArray *members, const BwMember *range, const char *suffix, double number)
{
  g_autofree char *key = g_strconcat (range->key, suffix, NULL);
  BwMember member = *range;
  member.key = g_intern_string (key);
  member.value.kind = BW_VALUE_NUMBER;
  member.value.number = number;
  add (members, &member);
}

/* What people read beside value @i of @node: its label, or the head of its column. */
static const char *
label_of (const BwNode *node, guint i)
{
  const GArray *columns = node->kind == BW_NODE_ROW ? node->parent->columns : NULL;
  if (columns != NULL && i < columns->len)
    return g_array_index (columns, BwColumn, i).label;
  return node->kind == BW_NODE_FIGURE ? node->label : NULL;
}

/* A range is two numbers, whose keys tell which. */
static void
add_values (GArray *members, const BwNode *node)
{
  for (guint i = 0; node->values != NULL && i < node->values->len; i++)
    {
      const BwValue *value = &g_array_index (node->values, BwValue, i);
      const BwMember member = { value->key, NULL, *value, label_of (node, i) };
      if (value->key == NULL)
        continue;
      if (value->kind != BW_VALUE_RANGE)
        {
          add (members, &member);
          continue;
        }
      add_end (members, &member, "_low", value->number);
      add_end (members, &member, "_high", value->high);
    }
}

static void
collect (GArray *members, const BwNode *node)
{
  add_values (members, node);
  for (guint i = 0; i < node->children->len; i++)
    {
      const BwNode *child = node->children->pdata[i];
      const BwMember member = { child->key, child, { 0 }, NULL };
      if (child->for_people)
        continue;
      if (child->key != NULL)
        add (members, &member);
      else if (child->kind == BW_NODE_SECTION || child->kind == BW_NODE_FIGURE)
        collect (members, child);
    }
}

/**
 * bw_node_members:
 * @node: a section or a row
 * @order: (nullable): of keys
 *
 * Returns: (transfer full) (element-type BwMember): what is in the object of @node: its values, and
 *   what has a key, through sections that have none; in that order, then as they were added. Of two
 *   with the same key the first counts
 */
GArray *
bw_node_members (const BwNode *node, const char *order)
{
  GArray *members = g_array_new (FALSE, FALSE, sizeof (BwMember));
  collect (members, node);
  if (order != NULL)
    g_array_sort_with_data (members, compare, (gpointer) order);
  return members;
}
