/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "field-private.h"

#include <math.h>
#include <string.h>

#include <glib/gi18n-lib.h>

#include "harmless.h"
#include "quantity-private.h"

/* Reading a member: one function for each type. */

static gboolean
fail_range (const BwField *field, const char *text, char mark, GError **error)
{
  g_autofree char *allowed = bw_field_allowed (field, mark);
  g_set_error (error, BW_FIELD_ERROR, BW_FIELD_ERROR_RANGE,
               _ ("“%1$s” is out of range; allowed: %2$s"), text, allowed);
  return FALSE;
}

static gboolean
fail_kind (const BwField *field, const char *text, GError **error)
{
  g_autofree char *allowed = bw_field_allowed (field, BW_FILE_MARK);
  g_set_error (error, BW_FIELD_ERROR, BW_FIELD_ERROR_KIND, _ ("“%1$s” is not known; allowed: %2$s"),
               text, allowed);
  return FALSE;
}

static gboolean
inside (const BwField *field, double value)
{
  return value >= field->low && value <= field->high;
}

static BwReadAs
read_as (const BwField *field, char mark, BwTextOrigin origin)
{
  return (BwReadAs){ .mark = mark,
                     .allowed = { field->low, field->high },
                     .strict = origin == BW_TEXT_FROM_FILE };
}

static void
set_half_digit (const BwField *field, gpointer object, double half_digit)
{
  if (field->half_digit_offset > 0)
    G_STRUCT_MEMBER (double, object, field->half_digit_offset) = half_digit;
}

static gboolean
parse_quantity (const BwField *field, gpointer object, const char *text, char mark,
                BwTextOrigin origin, GError **error)
{
  BwReadAs as = read_as (field, mark, origin);
  BwMeasured measured;
  if (!bw_quantity_read (text, field->dimension, &as, &measured, error))
    return FALSE;
  if (!inside (field, measured.value))
    return fail_range (field, text, mark, error);
  BW_MEMBER (double, field, object) = measured.value;
  set_half_digit (field, object, measured.half_digit);
  return TRUE;
}

/* A plate with "50/60 Hz" takes either, and what lies between. Beyond this ratio, as with
 * "110/220 V", there is a selector, and between its positions nothing is allowed. */
#define EITHER_MAX 1.3

static gboolean
join_either (const BwField *field, const char *text, char mark, BwBands *bands, GError **error)
{
  BwRange both = { bands->at[0].low, bands->at[1].low };
  gboolean plain = bands->n == 2 && bands->at[0].low >= bands->at[0].high
                   && bands->at[1].low >= bands->at[1].high && strchr (text, '/') != NULL;
  if (plain && both.low > 0 && both.low < both.high && both.high / both.low < EITHER_MAX)
    {
      *bands = (BwBands){ .n = 1, .at = { both } };
      return TRUE;
    }
  g_autofree char *first = bw_quantity_to_entry (bands->at[0].high, field->dimension, field->unit,
                                                 mark);
  g_set_error (error, BW_FIELD_ERROR, BW_FIELD_ERROR_VALUE,
               _ ("“%1$s” is more than one range; one is allowed, such as the one that a selector is "
                  "set to (“%2$s”)"),
               text, first);
  return FALSE;
}

static gboolean
parse_bands (const BwField *field, gpointer object, const char *text, char mark,
             BwTextOrigin origin, GError **error)
{
  BwBands bands;
  BwReadAs as = read_as (field, mark, origin);
  if (!bw_quantity_read_bands (text, field->dimension, &as, &bands, error))
    return FALSE;
  for (guint i = 0; i < bands.n; i++)
    if (!inside (field, bands.at[i].low) || !inside (field, bands.at[i].high))
      return fail_range (field, text, mark, error);
  if ((field->flags & BW_FIELD_ONE_BAND) && bands.n > 1
      && !join_either (field, text, mark, &bands, error))
    return FALSE;
  BW_MEMBER (BwBands, field, object) = bands;
  return TRUE;
}

/* Only digits, with at most one mark among them, which is read as that of a quantity is. */
static gboolean
is_plain_number (const char *text, const BwReadAs *as)
{
  const char digits[] = "0123456789";
  gsize whole = strspn (text, digits);
  const char *rest = text + whole;
  if (whole == 0)
    return FALSE;
  gsize after = *rest == '.' || *rest == ',' ? strspn (rest + 1, digits) : 0;
  gboolean foreign = *rest != as->mark;
  if (after > 0 && !(foreign && (as->strict || bw_may_be_thousands (text, whole, after))))
    rest += 1 + after;
  return *rest == '\0';
}

/* Counts and half lines: a plain number, whole after multiplying by @scale; lines may be named. */
static gboolean
parse_whole (const BwField *field, gpointer object, const char *text, int scale, char mark,
             BwTextOrigin origin, GError **error)
{
  const BwReadAs as = read_as (field, mark, origin);
  g_autofree char *plain = bw_trimmed (text);
  gsize length = strspn (plain, "0123456789.,");
  const char *unit = bw_skip_space (plain + length);
  gboolean named = scale == 2 && bw_unit_find (BW_DIMENSION_LINES, unit) != NULL;
  gboolean bare = *unit == '\0';
  plain[length] = '\0';
  if (!is_plain_number (plain, &as) || !(bare || named))
    return fail_range (field, text, mark, error);
  g_strdelimit (plain, ",", '.');
  double value = g_ascii_strtod (plain, NULL) * scale;
  if (!inside (field, value) || floor (value) < value)
    return fail_range (field, text, mark, error);
  BW_MEMBER (int, field, object) = (int) value;
  return TRUE;
}

static gboolean
parse_rate (const BwField *field, gpointer object, const char *text, GError **error)
{
  BwRatio rate;
  if (!bw_quantity_parse_ratio (text, field->dimension, &rate, error))
    return FALSE;
  if (!inside (field, bw_ratio_to_double (rate)))
    {
      g_autofree char *high = bw_quantity_format (field->high, field->dimension, 6, BW_FILE_MARK);
      g_autofree char *low = bw_quantity_format (field->low, field->dimension, 6, BW_FILE_MARK);
      g_set_error (error, BW_FIELD_ERROR, BW_FIELD_ERROR_RANGE,
                   _ ("“%1$s” is out of range; allowed: %2$s to %3$s"), text, low, high);
      return FALSE;
    }
  BW_MEMBER (BwRatio, field, object) = rate;
  return TRUE;
}

static gboolean
parse_aspect (const BwField *field, gpointer object, const char *text, GError **error)
{
  g_auto (GStrv) parts = g_strsplit (text, ":", -1);
  guint64 width = 0, height = 0;
  BwRatio aspect;
  if (g_strv_length (parts) == 2
      && g_ascii_string_to_unsigned (g_strstrip (parts[0]), 10, 1, 1000, &width, NULL)
      && g_ascii_string_to_unsigned (g_strstrip (parts[1]), 10, 1, 1000, &height, NULL)
      && bw_ratio_make ((gint64) width, (gint64) height, &aspect))
    {
      BW_MEMBER (BwRatio, field, object) = aspect;
      return TRUE;
    }
  g_set_error (error, BW_FIELD_ERROR, BW_FIELD_ERROR_VALUE,
               _ ("“%s” is not an aspect ratio; write width:height in whole numbers, such as “4:3”"),
               text);
  return FALSE;
}

static gboolean
parse_choice (const BwField *field, gpointer object, const char *text, GError **error)
{
  g_autofree char *id = g_strstrip (g_strdup (text));
  guint value;
  if (!bw_kind_find (field->kinds, id, &value))
    return fail_kind (field, id, error);
  BW_MEMBER (guint, field, object) = value;
  return TRUE;
}

static gboolean
parse_set (const BwField *field, gpointer object, const char *text, GError **error)
{
  g_auto (GStrv) parts = g_strsplit (text, ";", -1);
  guint set = 0;
  for (char **part = parts; *part != NULL; part++)
    {
      guint value;
      if (*g_strstrip (*part) == '\0')
        continue;
      if (!bw_kind_find (field->kinds, *part, &value))
        return fail_kind (field, *part, error);
      set |= BW_BIT (value);
    }
  BW_MEMBER (guint, field, object) = set;
  return TRUE;
}

static gboolean
parse_switch (const BwField *field, gpointer object, const char *text, GError **error)
{
  g_autofree char *word = g_strstrip (g_strdup (text));
  gboolean yes = strcmp (word, "yes") == 0;
  if (!yes && strcmp (word, "no") != 0)
    return fail_kind (field, word, error);
  BW_MEMBER (gboolean, field, object) = yes;
  return TRUE;
}

static gboolean
parse_pins (const BwField *field, gpointer object, const char *text, GError **error)
{
  g_autoptr (GError) trouble = NULL;
  if (bw_pinout_parse (text, &BW_MEMBER (BwPinout, field, object), &trouble))
    return TRUE;
  g_set_error_literal (error, BW_FIELD_ERROR, BW_FIELD_ERROR_VALUE, trouble->message);
  return FALSE;
}

/* What was pasted, with "\n" between its lines, whichever of the usual marks stood there. */
static char *
with_line_feeds (const char *text)
{
  static const char *const marks[] = { "\r\n", "\r", "\xc2\x85" /* U+0085 */, "\u2028", "\u2029" };
  GString *lines = g_string_new (text);
  for (gsize i = 0; i < G_N_ELEMENTS (marks); i++)
    g_string_replace (lines, marks[i], "\n", 0);
  return g_string_free (lines, FALSE);
}

static gboolean
fail_character (const BwField *field, gunichar c, GError **error)
{
  if (g_unichar_iscntrl (c))
    g_set_error (error, BW_FIELD_ERROR, BW_FIELD_ERROR_VALUE,
                 field->flags & BW_FIELD_LINES
                     ? _ ("the text has the control character U+%04X; lines of plain text are "
                          "allowed")
                     : _ ("the text has the control character U+%04X; one line of plain text is "
                          "allowed"),
                 c);
  else
    g_set_error (error, BW_FIELD_ERROR, BW_FIELD_ERROR_VALUE,
                 _ ("the text has the character U+%04X, which is not seen and changes how other "
                    "text is shown; leave it out"),
                 c);
  return FALSE;
}

static gboolean
may_hold (const BwField *field, gunichar c, BwTextOrigin origin)
{
  if ((field->flags & BW_FIELD_LINES) && (c == '\n' || c == '\t'))
    return TRUE;
  return origin == BW_TEXT_TYPED ? !bw_char_is_refused (c) : c >= 0x80 || !g_ascii_iscntrl ((char) c);
}

static gboolean
parse_text (const BwField *field, gpointer object, const char *text, BwTextOrigin origin,
            GError **error)
{
  gboolean pasted = origin == BW_TEXT_TYPED && (field->flags & BW_FIELD_LINES);
  g_autofree char *plain = pasted ? with_line_feeds (text) : g_strdup (text);
  if (!g_utf8_validate (plain, -1, NULL))
    {
      g_set_error (error, BW_FIELD_ERROR, BW_FIELD_ERROR_VALUE, _ ("not UTF-8 text"));
      return FALSE;
    }
  for (const char *p = plain; *p != '\0'; p = g_utf8_next_char (p))
    if (!may_hold (field, g_utf8_get_char (p), origin))
      return fail_character (field, g_utf8_get_char (p), error);
  char **member = &BW_MEMBER (char *, field, object);
  g_free (*member);
  *member = g_strdup (g_strstrip (plain));
  return TRUE;
}

/* Whether nothing may be written: the field can be unknown, or zero is an allowed value. */
static gboolean
may_be_empty (const BwField *field)
{
  gboolean measured = field->type == BW_FIELD_QUANTITY || field->type == BW_FIELD_COUNT
                      || field->type == BW_FIELD_HALF_LINES;
  if (field->flags & BW_FIELD_FIGURE)
    return TRUE;
  if ((field->flags & BW_FIELD_REQUIRED) || field->type == BW_FIELD_CHOICE
      || field->type == BW_FIELD_SWITCH)
    return FALSE;
  return !measured || (field->flags & BW_FIELD_UNKNOWN) || inside (field, 0);
}

/* Clears the member, if it may be empty. */
static gboolean
parse_empty (const BwField *field, gpointer object, GError **error)
{
  if (may_be_empty (field))
    {
      bw_field_forget (field, object);
      return TRUE;
    }
  g_autofree char *allowed = bw_field_allowed (field, BW_FILE_MARK);
  g_set_error (error, BW_FIELD_ERROR, BW_FIELD_ERROR_MISSING, _ ("this is needed; allowed: %s"),
               allowed);
  return FALSE;
}

/**
 * bw_field_read:
 *
 * Like bw_field_parse(), for a text that comes from @origin.
 */
gboolean
bw_field_read (const BwField *field, gpointer object, const char *text, char mark,
               BwTextOrigin origin, GError **error)
{
  if (text[strspn (text, " \t")] == '\0')
    return parse_empty (field, object, error);
  switch (field->type)
    {
    case BW_FIELD_QUANTITY:
      return parse_quantity (field, object, text, mark, origin, error);
    case BW_FIELD_BANDS:
      return parse_bands (field, object, text, mark, origin, error);
    case BW_FIELD_COUNT:
      return parse_whole (field, object, text, 1, mark, origin, error);
    case BW_FIELD_HALF_LINES:
      return parse_whole (field, object, text, 2, mark, origin, error);
    case BW_FIELD_RATE:
      return parse_rate (field, object, text, error);
    case BW_FIELD_ASPECT:
      return parse_aspect (field, object, text, error);
    case BW_FIELD_CHOICE:
      return parse_choice (field, object, text, error);
    case BW_FIELD_SET:
      return parse_set (field, object, text, error);
    case BW_FIELD_SWITCH:
      return parse_switch (field, object, text, error);
    case BW_FIELD_PINS:
      return parse_pins (field, object, text, error);
    case BW_FIELD_TEXT:
    default:
      return parse_text (field, object, text, origin, error);
    }
}

/**
 * bw_field_parse:
 * @object: the struct that the table describes
 * @text: what was typed; empty sets the member to "not known"
 * @mark: the decimal mark
 *
 * Reads @text, checks it against what the field allows, and sets the member. A text may not hold
 * what bw_char_is_refused(); one of several lines (%BW_FIELD_LINES) has "\n" between them afterwards.
 *
 * Returns: %FALSE with @error in %BW_FIELD_ERROR or %BW_QUANTITY_ERROR, leaving the member alone
 */
gboolean
bw_field_parse (const BwField *field, gpointer object, const char *text, char mark, GError **error)
{
  g_return_val_if_fail (field != NULL && object != NULL && text != NULL, FALSE);
  return bw_field_read (field, object, text, mark, BW_TEXT_TYPED, error);
}
