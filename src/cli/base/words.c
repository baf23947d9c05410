/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words.h"

#include <string.h>

#include "core/base/harmless.h"
#include "core/base/quantity.h"

/**
 * bw_words_one_line:
 * @text: anything, even if it is not UTF-8
 *
 * Returns: (transfer full): @text as bw_text_harmless() shows it
 */
char *
bw_words_one_line (const char *text)
{
  return bw_text_harmless (text);
}

/**
 * bw_words_utf8:
 * @raw: an argument as it came: UTF-8, or in the encoding of the locale
 *
 * Returns: (transfer full): it as UTF-8
 */
char *
bw_words_utf8 (const char *raw)
{
  if (g_utf8_validate (raw, -1, NULL))
    return g_strdup (raw);
  char *converted = g_locale_to_utf8 (raw, -1, NULL, NULL, NULL);
  return converted != NULL ? converted : g_utf8_make_valid (raw, -1);
}

/**
 * bw_words_fixed:
 *
 * Returns: (transfer full): @value with @decimals digits after the decimal mark of the locale
 */
char *
bw_words_fixed (double value, int decimals)
{
  char format[16];
  char text[G_ASCII_DTOSTR_BUF_SIZE * 10];
  g_snprintf (format, sizeof format, "%%.%df", decimals);
  g_ascii_formatd (text, sizeof text, format, value);
  char *point = strchr (text, '.');
  if (point != NULL)
    *point = bw_quantity_locale_mark ();
  return g_strdup (text);
}

static int
char_width (gunichar c)
{
  if (g_unichar_iszerowidth (c))
    return 0;
  return g_unichar_iswide (c) ? 2 : 1;
}

/**
 * bw_words_width:
 *
 * Returns: the columns that @text takes in a terminal
 */
int
bw_words_width (const char *text)
{
  int columns = 0;
  for (const char *p = text; *p != '\0'; p = g_utf8_next_char (p))
    columns += char_width (g_utf8_get_char (p));
  return columns;
}

/* Where a line that starts at @start must end: after its last whole word that fits, or inside the
 * first word if that does not fit. */
static const char *
line_end (const char *start, int columns)
{
  const char *space = NULL;
  const char *p = start;
  int used = 0;

  for (; *p != '\0'; p = g_utf8_next_char (p))
    {
      used += char_width (g_utf8_get_char (p));
      if (*p == ' ' && p > start)
        space = p;
      if (used > columns)
        break;
    }
  if (*p == '\0')
    return p;
  if (space != NULL)
    return space;
  return p > start ? p : g_utf8_next_char (p);
}

/**
 * bw_words_wrap:
 * @text: UTF-8; control characters are taken as spaces
 * @columns: the longest line; at least 2
 *
 * Breaks @text at spaces, and words that are too long where the line ends. No-break spaces hold.
 *
 * Returns: (transfer full) (element-type utf8): the lines, at least one
 */
GPtrArray *
bw_words_wrap (const char *text, int columns)
{
  g_autofree char *plain = bw_words_one_line (text);
  GPtrArray *lines = g_ptr_array_new_with_free_func (g_free);
  const char *p = plain + strspn (plain, " ");

  do
    {
      const char *end = line_end (p, columns);
      g_ptr_array_add (lines, g_strchomp (g_strndup (p, (gsize) (end - p))));
      p = end + strspn (end, " ");
    }
  while (*p != '\0');
  return lines;
}

/**
 * bw_words_append_padded:
 * @right: whether the spaces stand before @text
 *
 * Appends @text and as many spaces as make it @columns wide.
 */
void
bw_words_append_padded (GString *to, const char *text, int columns, gboolean right)
{
  int spaces = MAX (0, columns - bw_words_width (text));
  g_string_append_printf (to, "%*s%s%*s", right ? spaces : 0, "", text, right ? 0 : spaces, "");
}

/**
 * bw_words_append_wrapped:
 * @first: what stands before the first line
 * @indent: how far the other lines are set in
 *
 * Appends @text in lines that end within %BW_CLI_COLUMNS.
 */
void
bw_words_append_wrapped (GString *to, const char *first, int indent, const char *text)
{
  int before = MAX (indent, bw_words_width (first));
  g_autoptr (GPtrArray) lines = bw_words_wrap (text, MAX (20, BW_CLI_COLUMNS - before));

  for (guint i = 0; i < lines->len; i++)
    if (i == 0)
      g_string_append_printf (to, "%s%s\n", first, (const char *) lines->pdata[i]);
    else
      g_string_append_printf (to, "%*s%s\n", indent, "", (const char *) lines->pdata[i]);
}
