/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "harmless.h"

#include <string.h>

/* U+FDD0 to U+FDEF and the last two of each plane, which stand for no character (The Unicode
 * Standard, 23.7) and may not be in XML, or should not (XML 1.0, 2.2). */
static gboolean
is_noncharacter (gunichar c)
{
  return (c >= 0xfdd0 && c <= 0xfdef) || (c & 0xfffe) == 0xfffe;
}

/* Embeds, overrides or isolates what follows, so that it is shown in another order (UAX #9, 2). */
static gboolean
is_direction (gunichar c)
{
  return (c >= 0x202a && c <= 0x202e) || (c >= 0x2066 && c <= 0x2069);
}

/* The separators of lines and of paragraphs, and the three that hold notes between the lines. */
static gboolean
is_separator (gunichar c)
{
  return c == 0x2028 || c == 0x2029 || (c >= 0xfff9 && c <= 0xfffb);
}

/**
 * bw_char_is_refused:
 *
 * Returns: whether @c may not be typed into a name or a note: a control character (those of U+0080
 *   to U+009F too), one that changes the order or the lines of what stands around it, or none at
 *   all. The marks of direction (U+200E, U+200F, U+061C) may: mixed text needs them, and they show
 *   nothing in another order by themselves.
 */
gboolean
bw_char_is_refused (gunichar c)
{
  return g_unichar_iscntrl (c) || is_direction (c) || is_separator (c) || is_noncharacter (c);
}

/**
 * bw_char_is_harmful:
 *
 * Returns: whether a terminal obeys @c in place of showing it, or it changes the order or the lines
 *   of what stands around it, or a file may not hold it: what bw_char_is_refused(), and the marks of
 *   direction
 */
gboolean
bw_char_is_harmful (gunichar c)
{
  return bw_char_is_refused (c) || c == 0x61c || c == 0x200e || c == 0x200f;
}

/* What stands for a harmful character: nothing for one that is not seen, or else the text would be
 * shown in other words than it has; a space where two words would run together. */
static const char *
in_place_of (gunichar c)
{
  if (is_noncharacter (c))
    return "\ufffd";
  return c < 0x100 || c == 0x2028 || c == 0x2029 ? " " : "";
}

static char *
make_harmless (const char *text, gboolean keep_lines)
{
  g_autofree char *valid = g_utf8_make_valid (text, -1);
  GString *shown = g_string_sized_new (strlen (valid));
  for (const char *p = valid; *p != '\0'; p = g_utf8_next_char (p))
    {
      gunichar c = g_utf8_get_char (p);
      if ((keep_lines && c == '\n') || !bw_char_is_harmful (c))
        g_string_append_unichar (shown, c);
      else
        g_string_append (shown, in_place_of (c));
    }
  return g_string_free (shown, FALSE);
}

/**
 * bw_text_harmless:
 * @text: anything, even if it is not UTF-8
 *
 * Returns: (transfer full): @text as UTF-8 on one line, that shows in the order in which it is
 *   stored: what would be obeyed becomes a space, what stands for no character U+FFFD, and what
 *   would not be seen goes
 */
char *
bw_text_harmless (const char *text)
{
  g_return_val_if_fail (text != NULL, NULL);
  return make_harmless (text, FALSE);
}

/**
 * bw_text_harmless_lines:
 *
 * Returns: (transfer full): as bw_text_harmless(), with the lines of @text
 */
char *
bw_text_harmless_lines (const char *text)
{
  g_return_val_if_fail (text != NULL, NULL);
  return make_harmless (text, TRUE);
}
