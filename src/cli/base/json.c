/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "json.h"

#include <math.h>

#include "core/base/harmless.h"

struct _BwJson
{
  GString *text;
  int depth;
  gboolean filled; /* whether the innermost object or array has a member */
};

/**
 * bw_json_new:
 *
 * Returns: (transfer full): a writer that has written nothing
 */
BwJson *
bw_json_new (void)
{
  BwJson *json = g_new0 (BwJson, 1);
  json->text = g_string_new (NULL);
  return json;
}

/**
 * bw_json_free:
 * @json: (nullable) (transfer full): freed with its text
 */
void
bw_json_free (BwJson *json)
{
  if (json == NULL)
    return;
  g_string_free (json->text, TRUE);
  g_free (json);
}

/**
 * bw_json_text:
 *
 * Returns: (transfer none): what has been written, ending in a line feed once all is closed
 */
const char *
bw_json_text (const BwJson *json)
{
  return json->text->str;
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
append_escaped (GString *to, const char *text)
{
  g_autofree char *valid = g_utf8_make_valid (text, -1);
  g_string_append_c (to, '"');
  for (const char *p = valid; *p != '\0'; p = g_utf8_next_char (p))
    append_char (to, g_utf8_get_char (p));
  g_string_append_c (to, '"');
}

static void
new_line (BwJson *json)
{
  g_string_append_printf (json->text, "\n%*s", 2 * json->depth, "");
}

/* What stands before a value: the comma after the last one, and the key in an object. */
static void
start_value (BwJson *json, const char *key)
{
  if (json->filled)
    g_string_append_c (json->text, ',');
  if (json->depth > 0)
    new_line (json);
  json->filled = TRUE;
  if (key == NULL)
    return;
  append_escaped (json->text, key);
  g_string_append (json->text, ": ");
}

static void
begin (BwJson *json, const char *key, char bracket)
{
  start_value (json, key);
  g_string_append_c (json->text, bracket);
  json->depth++;
  json->filled = FALSE;
}

static void
end (BwJson *json, char bracket)
{
  json->depth--;
  if (json->filled)
    new_line (json);
  g_string_append_c (json->text, bracket);
  if (json->depth == 0)
    g_string_append_c (json->text, '\n');
  json->filled = TRUE;
}

/**
 * bw_json_begin_object:
 * @key: (nullable): its key; %NULL in an array and at the top
 */
void
bw_json_begin_object (BwJson *json, const char *key)
{
  begin (json, key, '{');
}

/**
 * bw_json_end_object:
 *
 * Closes the innermost object.
 */
void
bw_json_end_object (BwJson *json)
{
  end (json, '}');
}

/**
 * bw_json_begin_array:
 * @key: (nullable): its key; %NULL in an array
 */
void
bw_json_begin_array (BwJson *json, const char *key)
{
  begin (json, key, '[');
}

/**
 * bw_json_end_array:
 *
 * Closes the innermost array.
 */
void
bw_json_end_array (BwJson *json)
{
  end (json, ']');
}

/**
 * bw_json_null:
 * @key: (nullable): its key; %NULL in an array
 */
void
bw_json_null (BwJson *json, const char *key)
{
  start_value (json, key);
  g_string_append (json->text, "null");
}

/**
 * bw_json_string:
 * @value: (nullable): %NULL gives null
 */
void
bw_json_string (BwJson *json, const char *key, const char *value)
{
  if (value == NULL)
    {
      bw_json_null (json, key);
      return;
    }
  start_value (json, key);
  append_escaped (json->text, value);
}

/**
 * bw_json_number:
 * @value: one that is not finite gives null, for which JSON has no number
 */
void
bw_json_number (BwJson *json, const char *key, double value)
{
  static const char *const formats[] = { "%.15g", "%.16g", "%.17g" };
  char text[G_ASCII_DTOSTR_BUF_SIZE];

  if (!isfinite (value))
    {
      bw_json_null (json, key);
      return;
    }
  for (gsize i = 0; i < G_N_ELEMENTS (formats); i++)
    {
      g_ascii_formatd (text, sizeof text, formats[i], value);
      double again = g_ascii_strtod (text, NULL);
      if (!(again < value) && !(again > value))
        break;
    }
  start_value (json, key);
  g_string_append (json->text, text);
}

/**
 * bw_json_number_if:
 * @known: whether @value means something; if not, null is written
 */
void
bw_json_number_if (BwJson *json, const char *key, gboolean known, double value)
{
  bw_json_number (json, key, known ? value : (double) NAN);
}

/**
 * bw_json_boolean:
 * @key: (nullable): its key; %NULL in an array
 */
void
bw_json_boolean (BwJson *json, const char *key, gboolean value)
{
  start_value (json, key);
  g_string_append (json->text, value ? "true" : "false");
}
