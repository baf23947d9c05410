/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "quantity-private.h"

#include <errno.h>
#include <math.h>
#include <string.h>

#include <glib/gi18n-lib.h>

/* Reading a quantity. */

/**
 * bw_skip_space:
 *
 * Returns: @text after its white space, of which the no-break spaces are part
 */
const char *
bw_skip_space (const char *text)
{
  while (*text != '\0' && g_unichar_isspace (g_utf8_get_char (text)))
    text = g_utf8_next_char (text);
  return text;
}

/**
 * bw_trimmed:
 *
 * Returns: (transfer full): @text without the white space around it, as bw_skip_space() has it
 */
char *
bw_trimmed (const char *text)
{
  char *plain = g_strdup (bw_skip_space (text));
  char *end = plain + strlen (plain);
  while (end > plain && g_unichar_isspace (g_utf8_get_char (g_utf8_prev_char (end))))
    end = g_utf8_prev_char (end);
  *end = '\0';
  return plain;
}

static gboolean
fail_number (const char *text, BwDimension dimension, GError **error)
{
  if (*text == '\0')
    g_set_error (error, BW_QUANTITY_ERROR, BW_QUANTITY_ERROR_EMPTY,
                 _ ("nothing is written; a number with a unit is needed (%s)"),
                 bw_quantity_units (dimension));
  else
    g_set_error (error, BW_QUANTITY_ERROR, BW_QUANTITY_ERROR_NUMBER,
                 _ ("“%1$s” does not start with a number; a number with a unit is needed (%2$s)"), text,
                 bw_quantity_units (dimension));
  return FALSE;
}

/* "15,734" can be 15.734 or 15734: both are shown as they would be taken. */
static gboolean
fail_mark (const char *text, char mark, const char *digits, gsize length, GError **error)
{
  g_autofree char *number = g_strndup (digits, length);
  g_autofree char *decimal = g_strdelimit (g_strdup (number), ".,", mark);
  g_autoptr (GString) whole = g_string_new (number);
  const char *other = mark == '.' ? "," : ".";
  if (strcspn (number, other) + 4 != length)
    g_set_error (error, BW_QUANTITY_ERROR, BW_QUANTITY_ERROR_DECIMAL_MARK,
                 _ ("“%1$s”: the decimal mark here is “%2$c”, not “%3$c”, and thousands are not set apart"),
                 text, mark, *other);
  else
    g_set_error (error, BW_QUANTITY_ERROR, BW_QUANTITY_ERROR_DECIMAL_MARK,
                 _ ("“%1$s”: the decimal mark here is “%2$c”, not “%3$c”, and thousands are not set "
                    "apart; write “%4$s” or “%5$s”"),
                 text, mark, *other, decimal, (g_string_replace (whole, other, "", 0), whole->str));
  return FALSE;
}

/**
 * bw_may_be_thousands:
 * @digits: of a number
 * @before: how many stand before its mark
 * @after: how many stand after it
 *
 * Returns: whether a lone comma where the mark is a point, or the reverse, may set thousands apart: one
 *   to three digits before it that do not begin with zero, and exactly three after it
 */
gboolean
bw_may_be_thousands (const char *digits, gsize before, gsize after)
{
  return before >= 1 && before <= 3 && *digits != '0' && after == 3;
}

/* Moves the digits at the start of *@text into @part, in C form. Their one mark is @mark; the other
 * mark is taken for it where it cannot be taken for anything else, as in "15,7". */
static gboolean
take_digits (const char *whole, const char **text, const BwReadAs *as, BwPart *part, GError **error)
{
  char mark = as->mark;
  const char *digits = *text;
  gsize length = strspn (digits, "0123456789.,");
  gsize before = strcspn (digits, ".,");
  gboolean plain = before >= length;
  gsize after = plain ? 0 : length - before - 1;

  if (length > 0 && !plain)
    {
      const char *second = strpbrk (digits + before + 1, ".,");
      char other = mark == '.' ? ',' : '.';
      gboolean two = second != NULL && second < digits + length;
      gboolean foreign = memchr (digits, other, length) != NULL;
      if (foreign && (as->strict || two || bw_may_be_thousands (digits, before, after)))
        return fail_mark (whole, mark, digits, length, error);
      if (two)
        {
          g_set_error (error, BW_QUANTITY_ERROR, BW_QUANTITY_ERROR_NUMBER,
                       _ ("“%s”: a number has one decimal mark"), whole);
          return FALSE;
        }
    }
  for (gsize i = 0; i < length; i++)
    g_string_append_c (part->number, g_ascii_isdigit (digits[i]) ? digits[i] : '.');
  part->decimals = (int) after;
  *text = digits + length;
  return TRUE;
}

/* The power of ten at the start of *@text, after which it points; zero if there is none. */
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

void
bw_part_clear (BwPart *part)
{
  if (part->number != NULL)
    g_string_free (part->number, TRUE);
  g_free (part->text);
  *part = (BwPart){ 0 };
}

static gboolean
fail_unit (const BwPart *part, const char *unit, BwDimension dimension, GError **error)
{
  g_set_error (error, BW_QUANTITY_ERROR, BW_QUANTITY_ERROR_UNIT,
               _ ("“%1$s”: “%2$s” is not a unit that is allowed here; allowed: %3$s"), part->text, unit,
               bw_quantity_units (dimension));
  return FALSE;
}

/**
 * bw_part_take:
 * @text: UTF-8
 * @as: how it is read
 * @part: (out caller-allocates): to be cleared with bw_part_clear(); its unit is %NULL where none is
 *   written
 *
 * Splits "15.734 kHz" into a number in C form, its power of ten and its unit.
 *
 * Returns: %FALSE with @error in %BW_QUANTITY_ERROR
 */
gboolean
bw_part_take (const char *text, BwDimension dimension, const BwReadAs *as, BwPart *part,
              GError **error)
{
  *part = (BwPart){ .number = g_string_new (NULL), .text = bw_trimmed (text), .factor = 1 };
  const char *rest = part->text;

  if (g_str_has_prefix (rest, "\u2212"))
    {
      g_string_append_c (part->number, '-');
      rest += strlen ("\u2212");
    }
  else if (*rest == '-' || *rest == '+')
    g_string_append_c (part->number, *rest++);
  if (rest[strspn (rest, ".,")] == '\0' || !g_ascii_isdigit (rest[strspn (rest, ".,")]))
    return fail_number (part->text, dimension, error);
  if (!take_digits (part->text, &rest, as, part, error))
    return FALSE;
  part->exponent = take_exponent (&rest);
  rest = bw_skip_space (rest);
  if (*rest == '\0')
    return TRUE;
  part->unit = bw_unit_find (dimension, rest);
  if (part->unit == NULL && dimension == BW_DIMENSION_VOLTAGE && as->volts_per_ire > 0
      && (part->unit = bw_unit_find (BW_DIMENSION_IRE, rest)) != NULL)
    part->factor = as->volts_per_ire;
  return part->unit != NULL || fail_unit (part, rest, dimension, error);
}

/* Far beyond anything on a bench. Between the two, or at zero, every value can be written in every
 * unit, and products and quotients of ten of them are still numbers. */
#define LARGEST 1e30
#define SMALLEST 1e-30

static double
value_in (const BwPart *part, const BwUnit *unit)
{
  g_autofree char *number
      = g_strdup_printf ("%se%ld", part->number->str, part->exponent + unit->exponent);
  return g_ascii_strtod (number, NULL) * unit->factor * part->factor;
}

/**
 * bw_part_measure:
 * @part: with a unit
 * @measured: (out caller-allocates): its value, with the power of ten of the unit put into the
 *   number before it is converted, and what its last digit leaves open
 *
 * Returns: %FALSE with %BW_QUANTITY_ERROR_RANGE if it is beyond 1e-30 to 1e30 and not zero
 */
gboolean
bw_part_measure (const BwPart *part, BwMeasured *measured, GError **error)
{
  double value = value_in (part, part->unit);
  gboolean is_zero = strpbrk (part->number->str, "123456789") == NULL;
  gboolean vanishes = !is_zero && fabs (value) < SMALLEST;

  if (!(fabs (value) <= LARGEST) || vanishes)
    {
      g_set_error (error, BW_QUANTITY_ERROR, BW_QUANTITY_ERROR_RANGE,
                   vanishes ? _ ("“%s” is too small") : _ ("“%s” is too large"), part->text);
      return FALSE;
    }
  double place = pow (10, (double) (part->exponent + part->unit->exponent - part->decimals));
  *measured = (BwMeasured){
    .value = value,
    .half_digit = place / 2 * part->unit->factor * part->factor,
  };
  return TRUE;
}

static gboolean
fits (const BwPart *part, const BwUnit *unit, const BwRange *allowed)
{
  double value = value_in (part, unit);
  return value >= allowed->low && value <= allowed->high;
}

static gboolean
is_open (const BwRange *range)
{
  return !(range->low < range->high);
}

static guint
count_units (BwDimension dimension, const BwUnit **one)
{
  guint n = 0;
  for (gsize i = 0; i < bw_n_units; i++)
    if (bw_units[i].dimension == dimension)
      {
        *one = &bw_units[i];
        n++;
      }
  return n;
}

/* The units in which all of @parts are allowed. */
static GPtrArray *
units_that_fit (BwPart *const *parts, guint n, BwDimension dimension, const BwRange *allowed)
{
  GPtrArray *fitting = g_ptr_array_new ();
  for (gsize i = 0; i < bw_n_units; i++)
    {
      gboolean all = bw_units[i].dimension == dimension;
      for (guint j = 0; j < n && all; j++)
        all = fits (parts[j], &bw_units[i], allowed);
      if (all)
        g_ptr_array_add (fitting, (gpointer) &bw_units[i]);
    }
  return fitting;
}

static gboolean
fail_no_unit (const BwPart *part, BwDimension dimension, const BwReadAs *as,
              const GPtrArray *fitting, GError **error)
{
  g_autoptr (GString) write = g_string_new (NULL);
  for (guint i = 0; i < fitting->len; i++)
    {
      const BwUnit *unit = fitting->pdata[i];
      g_string_append_printf (write, "%s“%s %s”", i > 0 ? ", " : "", part->text, unit->name);
    }
  if (fitting->len > 0)
    g_set_error (error, BW_QUANTITY_ERROR, BW_QUANTITY_ERROR_NO_UNIT,
                 _ ("“%1$s” has no unit; write it with one: %2$s"), part->text, write->str);
  else if (as->strict || is_open (&as->allowed))
    g_set_error (error, BW_QUANTITY_ERROR, BW_QUANTITY_ERROR_NO_UNIT,
                 _ ("“%1$s” has no unit; allowed: %2$s"), part->text, bw_quantity_units (dimension));
  else
    {
      g_autofree char *range = bw_quantity_format_range (as->allowed, dimension, 6, as->mark);
      g_set_error (error, BW_QUANTITY_ERROR, BW_QUANTITY_ERROR_NO_UNIT,
                   _ ("“%1$s” has no unit, and is allowed in none; allowed: %2$s"), part->text, range);
    }
  return FALSE;
}

/**
 * bw_parts_settle_unit:
 * @parts: (array length=n): at least one; those without a unit get one
 *
 * A bare number has the only unit of its dimension ("625" lines), or the only one in which it is
 * within what the place allows ("0.8" for a pitch of 0.05 to 5 mm).
 *
 * Returns: %FALSE with %BW_QUANTITY_ERROR_NO_UNIT, which shows what would be taken
 */
gboolean
bw_parts_settle_unit (BwPart *const *parts, guint n, BwDimension dimension, const BwReadAs *as,
                      GError **error)
{
  const BwUnit *only = NULL;
  if (as->strict || count_units (dimension, &only) > 1)
    {
      g_autoptr (GPtrArray) fitting
          = as->strict || is_open (&as->allowed) ? g_ptr_array_new ()
                                   : units_that_fit (parts, n, dimension, &as->allowed);
      if (fitting->len != 1)
        return fail_no_unit (parts[0], dimension, as, fitting, error);
      only = fitting->pdata[0];
    }
  for (guint i = 0; i < n; i++)
    parts[i]->unit = only;
  return TRUE;
}

/**
 * bw_text_check_utf8:
 *
 * Returns: %FALSE with %BW_QUANTITY_ERROR_NUMBER if @text is no UTF-8
 */
gboolean
bw_text_check_utf8 (const char *text, GError **error)
{
  if (g_utf8_validate (text, -1, NULL))
    return TRUE;
  g_set_error (error, BW_QUANTITY_ERROR, BW_QUANTITY_ERROR_NUMBER, _ ("not UTF-8 text"));
  return FALSE;
}

/**
 * bw_quantity_read:
 * @text: UTF-8, for example "15.734 kHz", "4,7µs", "27 in", "600"
 * @dimension: what is measured
 * @as: how it is read
 * @measured: (out caller-allocates): the value in the base unit, and half the place of its last
 *   digit: "15.7 kHz" is 15 700 Hz, half digit 50 Hz
 *
 * A number and its unit, with or without space between. The unit's power of ten goes into the
 * number before it is converted, so "15.734 kHz" and "15734 Hz" give the same double. A bare number
 * is taken where only one unit is possible.
 *
 * Returns: %FALSE with @error in %BW_QUANTITY_ERROR that says what is wrong and what would be
 * taken; @measured is then untouched. Beyond zero a size from 1e-30 to 1e30 is allowed.
 */
gboolean
bw_quantity_read (const char *text, BwDimension dimension, const BwReadAs *as,
                  BwMeasured *measured, GError **error)
{
  g_return_val_if_fail (text != NULL && as != NULL && measured != NULL, FALSE);
  g_auto (BwPart) part = { 0 };
  BwPart *const one[] = { &part };

  return bw_text_check_utf8 (text, error) && bw_part_take (text, dimension, as, &part, error)
         && (part.unit != NULL || bw_parts_settle_unit (one, 1, dimension, as, error))
         && bw_part_measure (&part, measured, error);
}

/**
 * bw_quantity_parse:
 * @mark: the decimal mark, '.' or ','
 * @value: (out): the value in the base unit
 *
 * bw_quantity_read() where any value is allowed and no digit counts.
 *
 * Returns: %FALSE with @error in %BW_QUANTITY_ERROR; @value is then untouched
 */
gboolean
bw_quantity_parse (const char *text, BwDimension dimension, char mark, double *value,
                   GError **error)
{
  g_return_val_if_fail (text != NULL && value != NULL, FALSE);
  const BwReadAs as = { .mark = mark };
  BwMeasured measured;
  if (!bw_quantity_read (text, dimension, &as, &measured, error))
    return FALSE;
  *value = measured.value;
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
  const char *digits = bw_skip_space (text + 1);
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
  return fits ? bw_skip_space (end) : NULL;
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
  g_auto (BwPart) part = { 0 };
  BwPart *const one[] = { &part };
  const BwReadAs as = { .mark = BW_FILE_MARK };
  gsize plain_length = strcspn (text, "*/");
  g_autofree char *plain = g_strndup (text, plain_length);
  const char *rest = text + plain_length;
  BwRatio result;

  if (!bw_text_check_utf8 (text, error) || !bw_part_take (plain, dimension, &as, &part, error)
      || (part.unit == NULL && !bw_parts_settle_unit (one, 1, dimension, &as, error)))
    return FALSE;

  gboolean exact = decimal_to_ratio (part.number->str, part.exponent + part.unit->exponent, &result);
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
