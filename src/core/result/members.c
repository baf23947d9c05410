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
add_number (GArray *members, const char *key, const BwValue *value, double number)
{
  BwMember member = { key, NULL, *value };
  member.value.kind = BW_VALUE_NUMBER;
  member.value.number = number;
  add (members, &member);
}

/* A range is two numbers, whose keys tell which. */
static void
add_range (GArray *members, const BwNode *node, const BwValue *value)
{
  g_autofree char *low = g_strconcat (value->key, "_low", NULL);
  g_autofree char *high = g_strconcat (value->key, "_high", NULL);
  add_number (members, g_intern_string (low), value, value->number);
  add_number (members, g_intern_string (high), value, value->high);
}

static void
add_values (GArray *members, const BwNode *node)
{
  for (guint i = 0; node->values != NULL && i < node->values->len; i++)
    {
      const BwValue *value = &g_array_index (node->values, BwValue, i);
      const BwMember member = { value->key, NULL, *value };
      if (value->key == NULL)
        continue;
      if (value->kind == BW_VALUE_RANGE)
        add_range (members, node, value);
      else
        add (members, &member);
    }
}

static void
collect (GArray *members, const BwNode *node)
{
  add_values (members, node);
  for (guint i = 0; i < node->children->len; i++)
    {
      const BwNode *child = node->children->pdata[i];
      const BwMember member = { child->key, child, { 0 } };
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
