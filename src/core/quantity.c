/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "quantity.h"

#include <locale.h>
#include <math.h>
#include <string.h>

#include <glib/gi18n-lib.h>

/* A value in this unit times @factor times 10^@exponent is the value in the base unit. */
typedef struct
{
  BwDimension dimension;
  const char *name;   /* as written in files: ASCII */
  const char *screen; /* as shown */
  int exponent;
  double factor;
  gboolean automatic; /* may be picked when a number is shown */
} Unit;

static const Unit units[] = {
  { BW_DIMENSION_FREQUENCY, "Hz", "Hz", 0, 1, TRUE },
  { BW_DIMENSION_FREQUENCY, "kHz", "kHz", 3, 1, TRUE },
  { BW_DIMENSION_FREQUENCY, "MHz", "MHz", 6, 1, TRUE },
  { BW_DIMENSION_FREQUENCY, "GHz", "GHz", 9, 1, TRUE },
  { BW_DIMENSION_TIME, "s", "s", 0, 1, TRUE },
  { BW_DIMENSION_TIME, "ms", "ms", -3, 1, TRUE },
  { BW_DIMENSION_TIME, "us", "µs", -6, 1, TRUE },
  { BW_DIMENSION_TIME, "ns", "ns", -9, 1, TRUE },
  { BW_DIMENSION_LENGTH, "m", "m", 0, 1, TRUE },
  { BW_DIMENSION_LENGTH, "cm", "cm", -2, 1, FALSE },
  { BW_DIMENSION_LENGTH, "mm", "mm", -3, 1, TRUE },
  { BW_DIMENSION_LENGTH, "um", "µm", -6, 1, FALSE },
  { BW_DIMENSION_LENGTH, "in", "in", -2, 2.54, FALSE },
  { BW_DIMENSION_VOLTAGE, "V", "V", 0, 1, TRUE },
  { BW_DIMENSION_VOLTAGE, "mV", "mV", -3, 1, TRUE },
  { BW_DIMENSION_IRE, "IRE", "IRE", 0, 1, TRUE },
  { BW_DIMENSION_RESISTANCE, "ohm", "Ω", 0, 1, TRUE },
  { BW_DIMENSION_RESISTANCE, "kohm", "kΩ", 3, 1, TRUE },
  { BW_DIMENSION_RESISTANCE, "Mohm", "MΩ", 6, 1, TRUE },
  { BW_DIMENSION_CURRENT, "A", "A", 0, 1, TRUE },
  { BW_DIMENSION_CURRENT, "mA", "mA", -3, 1, TRUE },
  { BW_DIMENSION_FRACTION, "%", "%", -2, 1, TRUE },
  { BW_DIMENSION_TV_LINES, "lines", "lines", 0, 1, TRUE },
  { BW_DIMENSION_LINES, "lines", "lines", 0, 1, TRUE },
  { BW_DIMENSION_PIXELS, "px", "px", 0, 1, TRUE },
};

/* Other spellings that people and keyboards produce. */
static const struct
{
  const char *written;
  const char *name;
} spellings[] = {
  { "\u00b5s", "us" },      { "\u03bcs", "us" },      { "\u00b5m", "um" },
  { "\u03bcm", "um" },      { "\u03a9", "ohm" },      { "\u2126", "ohm" },
  { "k\u03a9", "kohm" },    { "k\u2126", "kohm" },    { "M\u03a9", "Mohm" },
  { "M\u2126", "Mohm" },    { "ohms", "ohm" },        { "line", "lines" },
  { "\"", "in" },          { "\u2033", "in" },       { "hz", "Hz" },
  { "khz", "kHz" },
};

G_DEFINE_QUARK (bw-quantity-error-quark, bw_quantity_error)

static const Unit *
find_unit (BwDimension dimension, const char *name)
{
  for (gsize i = 0; i < G_N_ELEMENTS (spellings); i++)
    if (strcmp (spellings[i].written, name) == 0)
      name = spellings[i].name;
  for (gsize i = 0; i < G_N_ELEMENTS (units); i++)
    if (units[i].dimension == dimension && strcmp (units[i].name, name) == 0)
      return &units[i];
  return NULL;
}

static const Unit *
base_unit (BwDimension dimension)
{
  for (gsize i = 0; i < G_N_ELEMENTS (units); i++)
    if (units[i].dimension == dimension)
      return &units[i];
  return NULL;
}

/**
 * bw_quantity_base_unit:
 *
 * Returns: (transfer none): the name of the first unit of @dimension, in which values are held
 * (except %BW_DIMENSION_FRACTION, held as a fraction).
 */
const char *
bw_quantity_base_unit (BwDimension dimension)
{
  return base_unit (dimension)->name;
}

/**
 * bw_quantity_units:
 *
 * Returns: (transfer none): the units that a quantity of @dimension may be written in, for error
 * messages and hints.
 */
const char *
bw_quantity_units (BwDimension dimension)
{
  static const char *const allowed[BW_N_DIMENSIONS] = {
    [BW_DIMENSION_FREQUENCY] = "Hz, kHz, MHz, GHz",
    [BW_DIMENSION_TIME] = "s, ms, us (or µs), ns",
    [BW_DIMENSION_LENGTH] = "m, cm, mm, um (or µm), in",
    [BW_DIMENSION_VOLTAGE] = "V, mV",
    [BW_DIMENSION_IRE] = "IRE",
    [BW_DIMENSION_RESISTANCE] = "ohm (or Ω), kohm, Mohm",
    [BW_DIMENSION_CURRENT] = "A, mA",
    [BW_DIMENSION_FRACTION] = "%",
    [BW_DIMENSION_TV_LINES] = "lines",
    [BW_DIMENSION_LINES] = "lines",
    [BW_DIMENSION_PIXELS] = "px",
  };
  return allowed[dimension];
}

/**
 * bw_quantity_locale_mark:
 *
 * Returns: the decimal mark of the current locale if it is a point or a comma, else a point.
 */
char
bw_quantity_locale_mark (void)
{
  const char *mark = localeconv ()->decimal_point;
  return mark != NULL && mark[0] == ',' ? ',' : '.';
}

/* Parsing */

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
    g_set_error (error, BW_QUANTITY_ERROR, BW_QUANTITY_ERROR_DECIMAL_MARK,
                 _ ("“%s”: the decimal mark here is “%c”, not “%c”, and thousands are not set apart"),
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
                 _ ("“%s” has no unit; allowed: %s"), text, bw_quantity_units (dimension));
  else
    g_set_error (error, BW_QUANTITY_ERROR, BW_QUANTITY_ERROR_UNIT,
                 _ ("“%s” is not a unit that is allowed here; allowed: %s"), unit,
                 bw_quantity_units (dimension));
  return FALSE;
}

/* Splits "15.734 kHz" into a number in C form, its power of ten and its unit. */
static gboolean
split (const char *text, BwDimension dimension, char mark, GString *number, long *exponent,
       const Unit **unit, GError **error)
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
  *unit = find_unit (dimension, rest);
  if (*unit == NULL)
    return fail_unit (trimmed, rest, dimension, error);
  return TRUE;
}

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
 * @value is then untouched.
 */
gboolean
bw_quantity_parse (const char *text, BwDimension dimension, char mark, double *value,
                   GError **error)
{
  g_autoptr (GString) number = g_string_new (NULL);
  const Unit *unit;
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
  if (!isfinite (result))
    {
      g_set_error (error, BW_QUANTITY_ERROR, BW_QUANTITY_ERROR_RANGE, _ ("“%s” is too large"),
                   text);
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
      if (!bw_ratio_multiply (result, ten, &result))
        return FALSE;
      if (!bw_ratio_make (result.num + (*p - '0'), result.den, &result))
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
  gint64 integer = g_ascii_strtoll (digits, &end, 10);
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
  g_autoptr (GString) number = g_string_new (NULL);
  gsize plain_length = strcspn (text, "*/");
  g_autofree char *plain = g_strndup (text, plain_length);
  const char *rest = text + plain_length;
  const Unit *unit;
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

/* Printing */

static double
in_unit (double value, const Unit *unit)
{
  return value / unit->factor / pow (10, unit->exponent);
}

static const Unit *
automatic_unit (double value, BwDimension dimension)
{
  const Unit *best = base_unit (dimension);
  for (gsize i = 0; i < G_N_ELEMENTS (units); i++)
    {
      const Unit *unit = &units[i];
      if (unit->dimension != dimension || !unit->automatic)
        continue;
      gboolean whole = fabs (in_unit (value, unit)) >= 1;
      gboolean best_whole = fabs (in_unit (value, best)) >= 1;
      gboolean larger = unit->exponent > best->exponent;
      if (fabs (value) > 0 && (best_whole ? whole && larger : !larger))
        best = unit;
    }
  return best;
}

static void
trim_zeros (char *number)
{
  if (strchr (number, '.') == NULL)
    return;
  char *end = number + strlen (number);
  while (end[-1] == '0')
    *--end = '\0';
  if (end[-1] == '.')
    end[-1] = '\0';
}

static void
set_mark (char *number, char mark)
{
  char *point = strchr (number, '.');
  if (point != NULL)
    *point = mark;
}

/* @digits significant digits, never in exponential form, trailing zeros cut. */
static char *
plain_number (double value, int digits, char mark)
{
  char format[8];
  char text[400];
  int before = fabs (value) > 0 ? (int) floor (log10 (fabs (value))) + 1 : 1;
  int decimals = CLAMP (digits - before, 0, 30);

  g_snprintf (format, sizeof format, "%%.%df", decimals);
  g_ascii_formatd (text, sizeof text, format, value);
  trim_zeros (text);
  if (strcmp (text, "-0") == 0)
    return g_strdup ("0");
  set_mark (text, mark);
  return g_strdup (text);
}

/* U+00A0 keeps a number and its unit on one line. */
#define UNIT_SPACE "\u00a0"

/**
 * bw_quantity_format:
 * @value: in the base unit; must be finite
 * @digits: significant digits, at least one
 * @mark: the decimal mark
 *
 * For reading: the unit that leaves one to three digits before the mark is chosen, trailing zeros
 * are cut, and a no-break space stands before the unit.
 *
 * Returns: (transfer full): the text, such as "15.734 kHz"
 */
char *
bw_quantity_format (double value, BwDimension dimension, int digits, char mark)
{
  g_return_val_if_fail (isfinite (value), NULL);
  const Unit *unit = automatic_unit (value, dimension);
  g_autofree char *number = plain_number (in_unit (value, unit), digits, mark);
  return g_strconcat (number, UNIT_SPACE, unit->screen, NULL);
}

/**
 * bw_quantity_format_range:
 *
 * Like bw_quantity_format() for both ends, in the unit of the upper one: "15.6–15.9 kHz".
 *
 * Returns: (transfer full): the text
 */
char *
bw_quantity_format_range (BwRange range, BwDimension dimension, int digits, char mark)
{
  g_return_val_if_fail (isfinite (range.low) && isfinite (range.high), NULL);
  const Unit *unit = automatic_unit (MAX (fabs (range.low), fabs (range.high)), dimension);
  g_autofree char *low = plain_number (in_unit (range.low, unit), digits, mark);
  g_autofree char *high = plain_number (in_unit (range.high, unit), digits, mark);
  if (strcmp (low, high) == 0)
    return g_strconcat (high, UNIT_SPACE, unit->screen, NULL);
  return g_strconcat (low, "–", high, UNIT_SPACE, unit->screen, NULL);
}

/* The shortest decimal in @unit that reads back as exactly @value, or NULL. */
static char *
shortest_in_unit (double value, const Unit *unit)
{
  for (int digits = 1; digits <= 17; digits++)
    {
      double back = 0;
      g_autofree char *number = plain_number (in_unit (value, unit), digits, BW_FILE_MARK);
      g_autofree char *whole = g_strconcat (number, " ", unit->name, NULL);
      if (bw_quantity_parse (whole, unit->dimension, BW_FILE_MARK, &back, NULL)
          && memcmp (&back, &value, sizeof back) == 0)
        return g_steal_pointer (&number);
    }
  return NULL;
}

/* A number longer than this was probably not written in the unit that is tried first. */
#define LONG_NUMBER 12

/* The unit in which @value is exact and short: @first if it is short there, else the shortest. */
static char *
shortest_in_any_unit (double value, BwDimension dimension, const Unit *first, const Unit **unit)
{
  char *best = shortest_in_unit (value, first);
  *unit = first;
  if (best != NULL && strlen (best) <= LONG_NUMBER)
    return best;
  for (gsize i = 0; i < G_N_ELEMENTS (units); i++)
    {
      if (units[i].dimension != dimension)
        continue;
      g_autofree char *other = shortest_in_unit (value, &units[i]);
      if (other != NULL && (best == NULL || strlen (other) + 2 < strlen (best)))
        {
          g_free (best);
          best = g_steal_pointer (&other);
          *unit = &units[i];
        }
    }
  return best;
}

static char *
exact (double value, BwDimension dimension, const char *preferred, gboolean screen, char mark)
{
  const Unit *first = preferred != NULL ? find_unit (dimension, preferred)
                                        : automatic_unit (value, dimension);
  const Unit *unit;
  g_return_val_if_fail (first != NULL, NULL);
  value += 0.0; /* minus zero reads back as zero */
  g_autofree char *number = shortest_in_any_unit (value, dimension, first, &unit);
  g_return_val_if_fail (number != NULL, NULL);
  set_mark (number, mark);
  return g_strconcat (number, " ", screen ? unit->screen : unit->name, NULL);
}

/**
 * bw_quantity_to_entry:
 * @value: in the base unit; must be finite
 * @unit: (nullable): the unit that people use for this quantity; %NULL for an automatic one
 * @mark: the decimal mark
 *
 * For editing: the shortest text that bw_quantity_parse() reads back as exactly @value.
 *
 * Returns: (transfer full): the text
 */
char *
bw_quantity_to_entry (double value, BwDimension dimension, const char *unit, char mark)
{
  g_return_val_if_fail (isfinite (value), NULL);
  return exact (value, dimension, unit, TRUE, mark);
}

/**
 * bw_quantity_to_file:
 *
 * Like bw_quantity_to_entry(), with a decimal point and ASCII units.
 *
 * Returns: (transfer full): the text
 */
char *
bw_quantity_to_file (double value, BwDimension dimension, const char *unit)
{
  g_return_val_if_fail (isfinite (value), NULL);
  return exact (value, dimension, unit, FALSE, BW_FILE_MARK);
}

static char *
join_bands (const BwBands *bands, BwDimension dimension, const char *unit, gboolean screen,
            char mark)
{
  GString *text = g_string_new (NULL);
  for (guint i = 0; i < bands->n; i++)
    {
      BwRange range = bands->at[i];
      g_autofree char *low = exact (range.low, dimension, unit, screen, mark);
      g_autofree char *high = exact (range.high, dimension, unit, screen, mark);
      g_string_append (text, i > 0 ? "; " : "");
      g_string_append (text, low);
      if (strcmp (low, high) != 0)
        g_string_append_printf (text, " .. %s", high);
    }
  return g_string_free (text, FALSE);
}

/**
 * bw_quantity_bands_to_entry:
 *
 * Returns: (transfer full): @bands as bw_quantity_parse_bands() reads them, for editing
 */
char *
bw_quantity_bands_to_entry (const BwBands *bands, BwDimension dimension, const char *unit,
                            char mark)
{
  return join_bands (bands, dimension, unit, TRUE, mark);
}

/**
 * bw_quantity_bands_to_file:
 *
 * Returns: (transfer full): @bands as bw_quantity_parse_bands() reads them, for files
 */
char *
bw_quantity_bands_to_file (const BwBands *bands, BwDimension dimension, const char *unit)
{
  return join_bands (bands, dimension, unit, FALSE, BW_FILE_MARK);
}

/**
 * bw_quantity_format_ratio:
 *
 * Returns: (transfer full): @ratio as bw_quantity_parse_ratio() reads it back, exactly: "27 MHz",
 * "74.25 MHz * 1000 / 1001" or "2250000 Hz / 143"
 */
char *
bw_quantity_format_ratio (BwRatio ratio, BwDimension dimension)
{
  const BwRatio ntsc = { 1001, 1000 };
  BwRatio nominal;

  if (ratio.den == 1)
    return bw_quantity_to_file ((double) ratio.num, dimension, NULL);
  if (bw_ratio_multiply (ratio, ntsc, &nominal) && nominal.den == 1)
    {
      g_autofree char *text = bw_quantity_to_file ((double) nominal.num, dimension, NULL);
      return g_strconcat (text, " * 1000 / 1001", NULL);
    }
  return g_strdup_printf ("%" G_GINT64_FORMAT " %s / %" G_GINT64_FORMAT, ratio.num,
                          bw_quantity_base_unit (dimension), ratio.den);
}

/**
 * bw_near:
 * @tolerance: the largest difference allowed, in the unit of @a and @b
 *
 * Returns: whether @a and @b differ by at most @tolerance; never for a NaN.
 */
gboolean
bw_near (double a, double b, double tolerance)
{
  return fabs (a - b) <= tolerance;
}
