/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "text.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "core/base/quantity.h"

/* What a cursor reads, in words. */

#define MINUS "\u2212"
#define DIGITS 4
#define TIME_DIGITS 5

/* @text with a true minus in place of a hyphen. */
static char *
signed_text (const char *text)
{
  return *text == '-' ? g_strconcat (MINUS, text + 1, NULL) : g_strdup (text);
}

static char *
quantity_text (double value, BwDimension dimension, int digits, char mark)
{
  g_autofree char *text = bw_quantity_format (value, dimension, digits, mark);
  return signed_text (text);
}

/**
 * bw_text_number:
 * @decimals: 0 to 9
 * @mark: the decimal mark
 *
 * Returns: (transfer full): @value with so many decimals; zero without a sign
 */
char *
bw_text_number (double value, int decimals, char mark)
{
  g_return_val_if_fail (decimals >= 0 && decimals <= 9, NULL);
  char number[G_ASCII_DTOSTR_BUF_SIZE], format[8];
  double step = pow (10, -decimals);

  g_snprintf (format, sizeof format, "%%.%df", decimals);
  g_ascii_formatd (number, sizeof number, format, fabs (value) < step / 2 ? 0 : value);
  g_strdelimit (number, ".", mark);
  return signed_text (number);
}

/**
 * bw_text_time:
 *
 * Returns: (transfer full): how long it is, without a sign, to five digits
 */
char *
bw_text_time (double time_s, char mark)
{
  return quantity_text (fabs (time_s), BW_DIMENSION_TIME, TIME_DIGITS, mark);
}

/**
 * bw_text_span:
 *
 * Returns: (transfer full): a time without a sign, and the rate of what takes that long
 */
char *
bw_text_span (double span_s, char mark)
{
  g_autofree char *time = bw_text_time (span_s, mark);
  if (!(fabs (span_s) > 1e-12))
    return g_steal_pointer (&time);
  g_autofree char *rate = quantity_text (1 / fabs (span_s), BW_DIMENSION_FREQUENCY, TIME_DIGITS,
                                         mark);
  return g_strdup_printf ("%s (%s)", time, rate);
}

/**
 * bw_text_lines:
 *
 * Returns: (transfer full): a count of scanning lines without a sign, to four digits
 */
char *
bw_text_lines (double lines, char mark)
{
  return bw_quantity_format (fabs (lines), BW_DIMENSION_LINES, 4, mark);
}

/**
 * bw_text_volts:
 *
 * Returns: (transfer full): a level; what is less than a nanovolt is nothing
 */
char *
bw_text_volts (double volts, char mark)
{
  return quantity_text (fabs (volts) < 1e-9 ? 0 : volts, BW_DIMENSION_VOLTAGE, DIGITS, mark);
}

/* In IRE, to a tenth. */
static char *
ire_text (double ire, char mark)
{
  g_autofree char *number = bw_text_number (ire, 1, mark);
  return g_strconcat (number, "\u00a0IRE", NULL);
}

/**
 * bw_text_level:
 * @volts_per_ire: zero where there is no IRE scale
 *
 * Returns: (transfer full): a level in volts, and in IRE where it has them
 */
char *
bw_text_level (double volts, double volts_per_ire, char mark)
{
  g_autofree char *level = bw_text_volts (volts, mark);
  if (!(volts_per_ire > 0))
    return g_steal_pointer (&level);
  g_autofree char *ire = ire_text (volts / volts_per_ire, mark);
  return g_strdup_printf (_ ("%1$s (%2$s)"), level, ire);
}
