/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "quantity-private.h"

#include <errno.h>
#include <math.h>
#include <string.h>

#include <glib/gi18n-lib.h>

/* Reading a quantity. */

static const char *
skip_space (const char *text)
{
  while (*text != '\0' && g_unichar_isspace (g_utf8_get_char (text)))
    text = g_utf8_next_char (text);
  return text;
}

/* Moves the number at the start of @text into @number in the C locale's form: an optional sign,
 * digits with at most one mark. Returns where it ends, or NULL if there is no number. */
static const char *
take_number (const char *text, char mark, GString *number)
{
  gboolean seen_digit = FALSE, seen_mark = FALSE;

  if (g_str_has_prefix (text, "\u2212"))
    {
      g_string_append_c (number, '-');
      text += strlen ("\u2212");
    }
  else if (*text == '-' || *text == '+')
    g_string_append_c (number, *text++);

  for (; g_ascii_isdigit (*text) || (*text == mark && !seen_mark); text++)
    {
      seen_mark = seen_mark || *text == mark;
      seen_digit = seen_digit || g_ascii_isdigit (*text);
      g_string_append_c (number, *text == mark ? '.' : *text);
    }
  return seen_digit ? text : NULL;
}

static long
take_exponent (const char **text)
{
  const char *p = *text;
  if (*p != 'e' && *p != 'E')
    return 0;
  p++;
  if (*p == '-' || *p == '+')
    p++;
  if (!g_ascii_isdigit (*p))
    return 0;
  char *end = NULL;
  gint64 exponent = g_ascii_strtoll (*text + 1, &end, 10);
  *text = end;
  return (long) CLAMP (exponent, -9999, 9999);
}

static gboolean
fail_number (const char *text, BwDimension dimension, char mark, const char *at, GError **error)
{
  char other = mark == '.' ? ',' : '.';
  if (*text == '\0')
    g_set_error (error, BW_QUANTITY_ERROR, BW_QUANTITY_ERROR_EMPTY,
                 _ ("nothing is written; a number with a unit is needed (%s)"),
                 bw_quantity_units (dimension));
  else if (at != NULL && *at == other)
    g_set_error (
        error, BW_QUANTITY_ERROR, BW_QUANTITY_ERROR_DECIMAL_MARK,
        _ ("“%1$s”: the decimal mark here is “%2$c”, not “%3$c”, and thousands are not set apart"),
        text, mark, other);
  else
    g_set_error (error, BW_QUANTITY_ERROR, BW_QUANTITY_ERROR_NUMBER,
                 _ ("“%s” does not start with a number"), text);
  return FALSE;
}

static gboolean
fail_unit (const char *text, const char *unit, BwDimension dimension, GError **error)
{
  if (*unit == '\0')
    g_set_error (error, BW_QUANTITY_ERROR, BW_QUANTITY_ERROR_NO_UNIT,
                 _ ("“%1$s” has no unit; allowed: %2$s"), text, bw_quantity_units (dimension));
  else
    g_set_error (error, BW_QUANTITY_ERROR, BW_QUANTITY_ERROR_UNIT,
                 _ ("“%1$s” is not a unit that is allowed here; allowed: %2$s"), unit,
                 bw_quantity_units (dimension));
  return FALSE;
}

/* Splits "15.734 kHz" into a number in C form, its power of ten and its unit. */
static gboolean
split (const char *text, BwDimension dimension, char mark, GString *number, long *exponent,
       const BwUnit **unit, GError **error)
{
  g_autofree char *trimmed = g_strdup (skip_space (text));
  char *end = trimmed + strlen (trimmed);
  while (end > trimmed && g_unichar_isspace (g_utf8_get_char (g_utf8_prev_char (end))))
    end = g_utf8_prev_char (end);
  *end = '\0';

  const char *rest = take_number (trimmed, mark, number);
  if (rest == NULL)
    return fail_number (trimmed, dimension, mark, trimmed, error);
  if (*rest == '.' || *rest == ',')
    return fail_number (trimmed, dimension, mark, rest, error);
  *exponent = take_exponent (&rest);
  rest = skip_space (rest);
  *unit = bw_unit_find (dimension, rest);
  if (*unit == NULL)
    return fail_unit (trimmed, rest, dimension, error);
  return TRUE;
}

/* Far beyond anything on a bench. Between the two, or at zero, every value can be written in every
 * unit, and products and quotients of ten of them are still numbers. */
#define LARGEST 1e30
#define SMALLEST 1e-30

/**
 * bw_quantity_parse:
 * @text: UTF-8, for example "15.734 kHz", "4,7µs", "27 in"
 * @dimension: what is measured
 * @mark: the decimal mark, '.' or ','
 * @value: (out): the value in the base unit
 *
 * A number and its unit, with or without space between. The unit's power of ten goes into the
 * number before it is converted, so "15.734 kHz" and "15734 Hz" give the same double.
 *
 * Returns: %FALSE with @error in %BW_QUANTITY_ERROR that says what is wrong and what is allowed;
 * @value is then untouched. Beyond zero a size from 1e-30 to 1e30 is allowed.
 */
gboolean
bw_quantity_parse (const char *text, BwDimension dimension, char mark, double *value,
                   GError **error)
{
  g_return_val_if_fail (text != NULL && value != NULL, FALSE);
  g_autoptr (GString) number = g_string_new (NULL);
  const BwUnit *unit;
  long exponent;

  if (!g_utf8_validate (text, -1, NULL))
    {
      g_set_error (error, BW_QUANTITY_ERROR, BW_QUANTITY_ERROR_NUMBER, _ ("not UTF-8 text"));
      return FALSE;
    }
  if (!split (text, dimension, mark, number, &exponent, &unit, error))
    return FALSE;

  g_string_append_printf (number, "e%ld", exponent + unit->exponent);
  double result = g_ascii_strtod (number->str, NULL) * unit->factor;
  gboolean is_zero = number->str[strcspn (number->str, "123456789e")] == 'e';
  gboolean vanishes = !is_zero && fabs (result) < SMALLEST;
  if (!(fabs (result) <= LARGEST) || vanishes)
    {
      g_set_error (error, BW_QUANTITY_ERROR, BW_QUANTITY_ERROR_RANGE,
                   vanishes ? _ ("“%s” is too small") : _ ("“%s” is too large"), text);
      return FALSE;
    }
  *value = result;
  return TRUE;
}

/* A decimal number times 10^@exponent as an exact ratio. */
static gboolean
decimal_to_ratio (const char *number, long exponent, BwRatio *ratio)
{
  BwRatio result = BW_RATIO_NONE;
  const BwRatio ten = { 10, 1 };
  gboolean after_mark = FALSE;

  if (exponent > 18 || exponent < -18)
    return FALSE;
  for (const char *p = number; *p != '\0'; p++)
    {
      if (*p == '.')
        after_mark = TRUE;
      if (!g_ascii_isdigit (*p))
        continue;
      exponent -= after_mark;
      gint64 num;
      if (!bw_ratio_multiply (result, ten, &result)
          || __builtin_add_overflow (result.num, *p - '0', &num)
          || !bw_ratio_make (num, result.den, &result))
        return FALSE;
    }
  for (; exponent > 0; exponent--)
    if (!bw_ratio_multiply (result, ten, &result))
      return FALSE;
  for (; exponent < 0; exponent++)
    if (!bw_ratio_divide (result, ten, &result))
      return FALSE;
  result.num = number[0] == '-' ? -result.num : result.num;
  *ratio = result;
  return TRUE;
}

/* Applies the next "* 1000" or "/ 1001" of @text to @ratio; returns where it ends. */
static const char *
apply_factor (const char *text, BwRatio *ratio)
{
  char operation = *text;
  const char *digits = skip_space (text + 1);
  char *end = NULL;

  if (!g_ascii_isdigit (*digits))
    return NULL;
  errno = 0;
  gint64 integer = g_ascii_strtoll (digits, &end, 10);
  if (errno != 0)
    return NULL;
  BwRatio factor = { integer, 1 };
  gboolean fits = operation == '*' ? bw_ratio_multiply (*ratio, factor, ratio)
                                   : bw_ratio_divide (*ratio, factor, ratio);
  return fits ? skip_space (end) : NULL;
}

/**
 * bw_quantity_parse_ratio:
 * @text: a quantity, optionally followed by "* INTEGER" and "/ INTEGER" in any order, with a
 *   decimal point: "74.25 MHz * 1000 / 1001", "4.5 MHz / 286"
 * @ratio: (out): the exact value in the base unit
 *
 * Returns: %FALSE with @error in %BW_QUANTITY_ERROR; @ratio is then untouched.
 */
gboolean
bw_quantity_parse_ratio (const char *text, BwDimension dimension, BwRatio *ratio, GError **error)
{
  g_return_val_if_fail (text != NULL && ratio != NULL, FALSE);
  g_autoptr (GString) number = g_string_new (NULL);
  gsize plain_length = strcspn (text, "*/");
  g_autofree char *plain = g_strndup (text, plain_length);
  const char *rest = text + plain_length;
  const BwUnit *unit;
  long exponent;
  BwRatio result;

  if (!g_utf8_validate (text, -1, NULL))
    {
      g_set_error (error, BW_QUANTITY_ERROR, BW_QUANTITY_ERROR_NUMBER, _ ("not UTF-8 text"));
      return FALSE;
    }
  if (!split (plain, dimension, BW_FILE_MARK, number, &exponent, &unit, error))
    return FALSE;

  gboolean exact = decimal_to_ratio (number->str, exponent + unit->exponent, &result);
  while (exact && (*rest == '*' || *rest == '/'))
    {
      rest = apply_factor (rest, &result);
      exact = rest != NULL;
    }
  if (!exact || *rest != '\0')
    {
      g_set_error (error, BW_QUANTITY_ERROR, BW_QUANTITY_ERROR_NUMBER,
                   _ ("“%s” is not an exact ratio; write it like “4.5 MHz / 286” or "
                      "“74.25 MHz * 1000 / 1001”"),
                   text);
      return FALSE;
    }
  *ratio = result;
  return TRUE;
}

/* The marks that may stand between the ends of a range. */
static const char *const range_marks[] = { "..", "–", " to " };

static gboolean
parse_range (const char *text, BwDimension dimension, char mark, BwRange *range, GError **error)
{
  const char *between = NULL;
  gsize length = 0;
  for (gsize i = 0; i < G_N_ELEMENTS (range_marks) && between == NULL; i++)
    {
      between = strstr (text, range_marks[i]);
      length = strlen (range_marks[i]);
    }
  if (between == NULL)
    {
      if (!bw_quantity_parse (text, dimension, mark, &range->low, error))
        return FALSE;
      range->high = range->low;
      return TRUE;
    }

  if (!bw_quantity_parse (between + length, dimension, mark, &range->high, error))
    return FALSE;
  g_autofree char *first = g_strndup (text, (gsize) (between - text));
  g_autoptr (GError) trouble = NULL;
  if (bw_quantity_parse (first, dimension, mark, &range->low, &trouble))
    return TRUE;
  if (!g_error_matches (trouble, BW_QUANTITY_ERROR, BW_QUANTITY_ERROR_NO_UNIT))
    {
      g_propagate_error (error, g_steal_pointer (&trouble));
      return FALSE;
    }
  /* "15.5 .. 16 kHz": the first number takes the second's unit. */
  GString *number = g_string_new (NULL);
  const char *unit = take_number (skip_space (between + length), mark, number);
  g_string_free (number, TRUE);
  take_exponent (&unit);
  g_autofree char *completed = g_strconcat (first, unit, NULL);
  return bw_quantity_parse (completed, dimension, mark, &range->low, error);
}

/**
 * bw_quantity_parse_bands:
 * @text: one or more ranges set apart by ";", each "15.5 kHz .. 16 kHz" (also with an en dash or
 *   "to"); the first number may leave out a unit that the second has; one quantity alone is a
 *   range of no width; an empty text is no band
 * @bands: (out): the ranges in the base unit, in the order written
 *
 * Returns: %FALSE with @error in %BW_QUANTITY_ERROR; @bands is then untouched. More than
 * %BW_BANDS_MAX ranges, or an end below its start, is an error.
 */
gboolean
bw_quantity_parse_bands (const char *text, BwDimension dimension, char mark, BwBands *bands,
                         GError **error)
{
  g_return_val_if_fail (text != NULL && bands != NULL, FALSE);
  g_auto (GStrv) parts = g_strsplit (text, ";", -1);
  BwBands result = { 0 };

  for (char **part = parts; *part != NULL; part++)
    {
      BwRange range;
      if (*skip_space (*part) == '\0')
        continue;
      if (!parse_range (*part, dimension, mark, &range, error))
        return FALSE;
      if (range.low > range.high || result.n == BW_BANDS_MAX)
        {
          g_set_error (error, BW_QUANTITY_ERROR, BW_QUANTITY_ERROR_RANGE,
                       range.low > range.high ? _ ("“%s” ends below its start")
                                              : _ ("“%s” is one range too many; eight are allowed"),
                       g_strstrip (*part));
          return FALSE;
        }
      result.at[result.n++] = range;
    }
  *bands = result;
  return TRUE;
}
