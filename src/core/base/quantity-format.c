/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "quantity-private.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include <glib/gi18n-lib.h>

/* Writing a quantity. */

static double
in_unit (double value, const BwUnit *unit)
{
  return value / unit->factor / pow (10, unit->exponent);
}

/**
 * bw_quantity_in_unit:
 * @value: in the base unit
 * @unit: one of @dimension, in any of its spellings
 *
 * Returns: @value in @unit
 */
double
bw_quantity_in_unit (double value, BwDimension dimension, const char *unit)
{
  const BwUnit *found = bw_unit_find (dimension, unit);
  g_return_val_if_fail (found != NULL, (double) NAN);
  return in_unit (value, found);
}

/**
 * bw_quantity_screen_unit:
 * @unit: (nullable): one of @dimension; %NULL for its base unit
 *
 * Returns: (transfer none): the unit as people read it, in their language: “µs”, “Ω”, “lines”
 */
const char *
bw_quantity_screen_unit (BwDimension dimension, const char *unit)
{
  g_return_val_if_fail (dimension < BW_N_DIMENSIONS, "");
  const BwUnit *found = unit != NULL ? bw_unit_find (dimension, unit) : bw_unit_base (dimension);
  g_return_val_if_fail (found != NULL, "");
  return bw_unit_after (found, HUGE_VAL);
}

static const BwUnit *
automatic_unit (double value, BwDimension dimension)
{
  const BwUnit *best = bw_unit_base (dimension);
  for (gsize i = 0; i < bw_n_units; i++)
    {
      const BwUnit *unit = &bw_units[i];
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

/* Three digits are as many as a number may have before its mark. */
#define LEAST_ROUNDING 3

/* @value with @digits significant digits, so that what rounds to 1000 ns takes 1 µs for its
 * unit. */
static double
rounded (double value, int digits)
{
  char format[8];
  char text[G_ASCII_DTOSTR_BUF_SIZE];

  g_snprintf (format, sizeof format, "%%.%de", CLAMP (digits, LEAST_ROUNDING, 17) - 1);
  g_ascii_formatd (text, sizeof text, format, value);
  return g_ascii_strtod (text, NULL);
}

/* TRUE for things that are counted. They keep every digit: 1234 lines are not about 1200. */
static gboolean
is_count (BwDimension dimension)
{
  return dimension == BW_DIMENSION_TV_LINES || dimension == BW_DIMENSION_LINES
         || dimension == BW_DIMENSION_PIXELS;
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
 * are cut, and a no-break space stands before the unit. Where there is no larger unit, a measured
 * value is rounded before its mark too (1163 µF with three digits is 1160 µF); a count is not.
 *
 * Returns: (transfer full): the text, such as "15.734 kHz"
 */
char *
bw_quantity_format (double value, BwDimension dimension, int digits, char mark)
{
  g_return_val_if_fail (isfinite (value) && dimension < BW_N_DIMENSIONS && digits > 0, NULL);
  const BwUnit *unit = automatic_unit (rounded (value, digits), dimension);
  double scaled = in_unit (value, unit);
  if (!isfinite (scaled))
    return g_strdup_printf ("%.0f00" UNIT_SPACE "%s", value,
                            bw_unit_after (unit, HUGE_VAL)); /* hundreds of digits, in % */
  if (!is_count (dimension) && fabs (scaled) >= pow (10, MAX (digits, LEAST_ROUNDING)))
    scaled = in_unit (rounded (value, digits), unit);
  g_autofree char *number = plain_number (scaled, digits, mark);
  return g_strconcat (number, UNIT_SPACE, bw_unit_after (unit, scaled), NULL);
}

/**
 * bw_quantity_format_range:
 *
 * Like bw_quantity_format() for both ends, in the unit of the upper one: "15.6–15.9 kHz", or, as a
 * dash would run into the sign of a negative end, "-2 to 2 V".
 *
 * Returns: (transfer full): the text
 */
char *
bw_quantity_format_range (BwRange range, BwDimension dimension, int digits, char mark)
{
  g_return_val_if_fail (isfinite (range.low) && isfinite (range.high), NULL);
  const BwUnit *unit = automatic_unit (MAX (-range.low, range.high), dimension);
  g_autofree char *low = plain_number (in_unit (range.low, unit), digits, mark);
  g_autofree char *high = plain_number (in_unit (range.high, unit), digits, mark);
  const char *after = bw_unit_after (unit, in_unit (range.high, unit));
  if (strcmp (low, high) == 0)
    return g_strconcat (high, UNIT_SPACE, after, NULL);
  if (range.low < 0)
    /* Translators: a range that begins below zero, and its unit: “-2 to 2 V” */
    return g_strdup_printf (C_ ("range", "%1$s to %2$s\u00a0%3$s"), low, high, after);
  return g_strconcat (low, "–", high, UNIT_SPACE, after, NULL);
}

/**
 * bw_quantity_format_bands:
 *
 * Returns: (transfer full): each of @bands as of bw_quantity_format_range(): "15.4–16 kHz; 31–34 kHz"
 */
char *
bw_quantity_format_bands (const BwBands *bands, BwDimension dimension, int digits, char mark)
{
  g_return_val_if_fail (bands != NULL, NULL);
  GString *text = g_string_new (NULL);
  for (guint i = 0; i < bands->n; i++)
    {
      g_autofree char *range = bw_quantity_format_range (bands->at[i], dimension, digits, mark);
      g_string_append_printf (text, "%s%s", i > 0 ? "; " : "", range);
    }
  return g_string_free (text, FALSE);
}

/* A decimal of up to fifteen digits survives being a double; seventeen digits tell any two doubles
 * apart. */
#define DIGITS_KEPT 15
#define DIGITS_ENOUGH 17

/* The shortest decimal in @unit that reads back as exactly @value, or NULL. */
static char *
shortest_in_unit (double value, const BwUnit *unit)
{
  for (int digits = DIGITS_KEPT; digits <= DIGITS_ENOUGH; digits++)
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
shortest_in_any_unit (double value, BwDimension dimension, const BwUnit *first, const BwUnit **unit)
{
  char *best = shortest_in_unit (value, first);
  *unit = first;
  if (best != NULL && strlen (best) <= LONG_NUMBER)
    return best;
  for (gsize i = 0; i < bw_n_units; i++)
    {
      if (bw_units[i].dimension != dimension)
        continue;
      g_autofree char *other = shortest_in_unit (value, &bw_units[i]);
      if (other != NULL && (best == NULL || strlen (other) + 2 < strlen (best)))
        {
          g_free (best);
          best = g_steal_pointer (&other);
          *unit = &bw_units[i];
        }
    }
  return best;
}

/* All digits with an exponent, in the base unit, for a value that no plain decimal gives back. */
static char *
with_exponent (double value, const BwUnit *base)
{
  char text[G_ASCII_DTOSTR_BUF_SIZE];
  g_ascii_formatd (text, sizeof text, "%.16e", value);
  char *mark = strchr (text, 'e');
  long exponent = strtol (mark + 1, NULL, 10) - base->exponent;
  *mark = '\0';
  trim_zeros (text);
  return g_strdup_printf ("%se%ld", text, exponent);
}

static char *
exact (double value, BwDimension dimension, const char *preferred, gboolean screen, char mark)
{
  const BwUnit *first = preferred != NULL ? bw_unit_find (dimension, preferred)
                                        : automatic_unit (value, dimension);
  const BwUnit *unit;
  g_return_val_if_fail (first != NULL, NULL);
  value += 0.0; /* minus zero reads back as zero */
  g_autofree char *number = shortest_in_any_unit (value, dimension, first, &unit);
  if (number == NULL)
    {
      unit = bw_unit_base (dimension);
      number = with_exponent (value, unit);
    }
  set_mark (number, mark);
  if (!screen)
    return g_strconcat (number, " ", unit->name, NULL);
  return g_strconcat (number, " ", bw_unit_after (unit, in_unit (value, unit)), NULL);
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

/* More decimals than a double has. */
#define DECIMALS_MAX 15

/**
 * bw_measured_to_entry:
 *
 * Like bw_quantity_to_entry(), with as many digits as were written: 60 Hz with a half digit of
 * 0.05 Hz is "60.0 Hz".
 *
 * Returns: (transfer full): the text
 */
char *
bw_measured_to_entry (const BwMeasured *measured, BwDimension dimension, const char *unit,
                      char mark)
{
  g_return_val_if_fail (measured != NULL && isfinite (measured->value), NULL);
  const BwUnit *in = unit != NULL ? bw_unit_find (dimension, unit)
                                  : automatic_unit (measured->value, dimension);
  g_return_val_if_fail (in != NULL, NULL);
  double place = 2 * in_unit (measured->half_digit, in);
  int decimals = place > 0 ? (int) round (-log10 (place)) : -1;
  BwMeasured back;
  if (decimals >= 0 && decimals <= DECIMALS_MAX)
    {
      char number[400];
      char format[8];
      const BwReadAs as = { .mark = mark };
      g_snprintf (format, sizeof format, "%%.%df", decimals);
      g_ascii_formatd (number, sizeof number, format, in_unit (measured->value, in));
      double shown = g_ascii_strtod (number, NULL);
      set_mark (number, mark);
      g_autofree char *text = g_strconcat (number, " ", bw_unit_after (in, shown), NULL);
      if (bw_quantity_read (text, dimension, &as, &back, NULL)
          && bw_near (back.value, measured->value, fabs (measured->value) * 1e-15))
        return g_steal_pointer (&text);
    }
  return exact (measured->value, dimension, unit, TRUE, mark);
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
  g_return_val_if_fail (bands != NULL, NULL);
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
  g_return_val_if_fail (bands != NULL, NULL);
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
