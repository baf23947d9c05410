/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "listing.h"
#include "result-private.h"

#include <math.h>
#include <string.h>

#include "core/base/harmless.h"

/* Numbers have a decimal point whatever the locale, and the fewest digits that give the same double
 * again. What is not known is null. The writing is done here and not by a library because those
 * that are at hand print 1e-8 as “1e-08.0”. */

typedef struct
{
  GString *text;
  int depth;
  gboolean filled; /* whether the innermost object or array has a member */
} Writer;

/**
 * bw_number_shortest:
 *
 * Appends @number with the fewest digits that give the same double again, and a decimal point.
 */
void
bw_number_shortest (GString *to, double number)
{
  static const char *const formats[] = { "%.15g", "%.16g", "%.17g" };
  char text[G_ASCII_DTOSTR_BUF_SIZE];

  for (gsize i = 0; i < G_N_ELEMENTS (formats); i++)
    {
      g_ascii_formatd (text, sizeof text, formats[i], number);
      double again = g_ascii_strtod (text, NULL);
      if (!(again < number) && !(again > number))
        break;
    }
  g_string_append (to, text);
}

/* What a terminal would obey, or show in another order, is written by its number (RFC 8259, 7): the
 * string stays the same. */
static void
append_char (GString *to, gunichar c)
{
  if (c == '"' || c == '\\')
    g_string_append_printf (to, "\\%c", (char) c);
  else if (!bw_char_is_harmful (c))
    g_string_append_unichar (to, c);
  else if (c <= 0xffff)
    g_string_append_printf (to, "\\u%04x", c);
  else
    g_string_append_printf (to, "\\u%04x\\u%04x", 0xd800 + ((c - 0x10000) >> 10),
                            0xdc00 + ((c - 0x10000) & 0x3ff));
}

static void
append_string (GString *to, const char *text)
{
  g_autofree char *valid = g_utf8_make_valid (text, -1);
  g_string_append_c (to, '"');
  for (const char *p = valid; *p != '\0'; p = g_utf8_next_char (p))
    append_char (to, g_utf8_get_char (p));
  g_string_append_c (to, '"');
}

static void
new_line (Writer *writer)
{
  g_string_append_printf (writer->text, "\n%*s", 2 * writer->depth, "");
}

/* What stands before a value: the comma after the last one, and the key in an object. */
static void
start_value (Writer *writer, const char *key)
{
  if (writer->filled)
    g_string_append_c (writer->text, ',');
  if (writer->depth > 0)
    new_line (writer);
  writer->filled = TRUE;
  if (key == NULL)
    return;
  append_string (writer->text, key);
  g_string_append (writer->text, ": ");
}

static void
begin (Writer *writer, const char *key, char bracket)
{
  start_value (writer, key);
  g_string_append_c (writer->text, bracket);
  writer->depth++;
  writer->filled = FALSE;
}

static void
end (Writer *writer, char bracket)
{
  writer->depth--;
  if (writer->filled)
    new_line (writer);
  g_string_append_c (writer->text, bracket);
  writer->filled = TRUE;
}

static void
write_string (Writer *writer, const char *key, const char *text)
{
  start_value (writer, key);
  append_string (writer->text, text);
}

/* In the program's own sentences no-break spaces would only hinder a search. */
static void
write_sentence (Writer *writer, const char *key, const char *text)
{
  g_autoptr (GString) plain = g_string_new (text);
  g_string_replace (plain, "\u00a0", " ", 0);
  write_string (writer, key, plain->str);
}

/* JSON has no number for what is not finite. */
static void
write_number (Writer *writer, const char *key, double number)
{
  start_value (writer, key);
  if (isfinite (number))
    bw_number_shortest (writer->text, number);
  else
    g_string_append (writer->text, "null");
}

static void
write_list (Writer *writer, const char *key, const char *const *list)
{
  begin (writer, key, '[');
  for (guint i = 0; list != NULL && list[i] != NULL; i++)
    write_sentence (writer, NULL, list[i]);
  end (writer, ']');
}

static void
write_set (Writer *writer, const char *key, const BwKindTable *kinds, guint set)
{
  begin (writer, key, '[');
  for (guint i = 0; i < kinds->n; i++)
    if (set & BW_BIT (i))
      write_string (writer, NULL, bw_kind_id (kinds, i));
  end (writer, ']');
}

static void
write_value (Writer *writer, const char *key, const BwValue *value)
{
  switch (value->kind)
    {
    case BW_VALUE_NUMBER:
      write_number (writer, key, value->number);
      break;
    case BW_VALUE_WORDS:
      write_string (writer, key, value->words);
      break;
    case BW_VALUE_SAYS:
      write_sentence (writer, key, value->words);
      break;
    case BW_VALUE_KIND:
      write_string (writer, key, value->id);
      break;
    case BW_VALUE_SET:
      write_set (writer, key, value->kinds, value->set);
      break;
    case BW_VALUE_FLAG:
      start_value (writer, key);
      g_string_append (writer->text, value->number > 0 ? "true" : "false");
      break;
    case BW_VALUE_LIST:
      write_list (writer, key, value->list);
      break;
    case BW_VALUE_RANGE: /* two members, made by bw_node_members() */
    case BW_VALUE_NOTHING:
    default:
      start_value (writer, key);
      g_string_append (writer->text, "null");
    }
}

/* Nodes */

static void write_object (Writer *writer, const BwNode *node, const char *key, const char *order);

static void
write_array (Writer *writer, const BwNode *node)
{
  begin (writer, node->key, '[');
  for (guint i = 0; i < node->children->len; i++)
    {
      const BwNode *child = node->children->pdata[i];
      if (child->kind == BW_NODE_SENTENCE)
        write_sentence (writer, NULL, child->label);
      else
        write_object (writer, child, NULL, child->order != NULL ? child->order : node->order);
    }
  end (writer, ']');
}

static void
write_member (Writer *writer, const BwMember *member)
{
  if (member->node == NULL)
    write_value (writer, member->key, &member->value);
  else if (member->node->kind == BW_NODE_SENTENCE)
    write_sentence (writer, member->key, member->node->label);
  else if (member->node->kind == BW_NODE_SECTION)
    write_object (writer, member->node, member->key, member->node->order);
  else
    write_array (writer, member->node);
}

static void
write_object (Writer *writer, const BwNode *node, const char *key, const char *order)
{
  g_autoptr (GArray) members = bw_node_members (node, order);
  begin (writer, key, '{');
  for (guint i = 0; i < members->len; i++)
    write_member (writer, &g_array_index (members, BwMember, i));
  end (writer, '}');
}

/**
 * bw_node_to_json:
 *
 * Returns: (transfer full): the object or array of @node as JSON, ending in a line feed: every
 *   value with a key, numbers in base units
 */
char *
bw_node_to_json (const BwNode *node)
{
  g_return_val_if_fail (node != NULL, NULL);
  Writer writer = { .text = g_string_new (NULL) };

  if (node->kind == BW_NODE_TABLE || node->kind == BW_NODE_LIST)
    write_array (&writer, node);
  else
    write_object (&writer, node, NULL, node->order);
  g_string_append_c (writer.text, '\n');
  return g_string_free (writer.text, FALSE);
}
