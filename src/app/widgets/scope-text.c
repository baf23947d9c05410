/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "scope-text.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#define MINUS "\u2212"
#define DIGITS 4
#define TIME_DIGITS 5

/* @text with a true minus in place of a hyphen. */
static char *
signed_text (const char *text)
{
  return *text == '-' ? g_strconcat (MINUS, text + 1, NULL) : g_strdup (text);
}

/**
 * bw_scope_number:
 * @decimals: up to 9
 *
 * Returns: (transfer full): @value with so many decimals; zero without a sign
 */
char *
bw_scope_number (double value, int decimals)
{
  char number[G_ASCII_DTOSTR_BUF_SIZE], format[8];
  double step = pow (10, -decimals);

  g_snprintf (format, sizeof format, "%%.%df", decimals);
  g_ascii_formatd (number, sizeof number, format, fabs (value) < step / 2 ? 0 : value);
  g_strdelimit (number, ".", bw_quantity_locale_mark ());
  return signed_text (number);
}

static char *
quantity_text (double value, BwDimension dimension, int digits)
{
  g_autofree char *text = bw_quantity_format (value, dimension, digits, bw_quantity_locale_mark ());
  return signed_text (text);
}

/**
 * bw_scope_volts:
 *
 * Returns: (transfer full): a level; what is less than a nanovolt is nothing
 */
char *
bw_scope_volts (double volts)
{
  return quantity_text (fabs (volts) < 1e-9 ? 0 : volts, BW_DIMENSION_VOLTAGE, DIGITS);
}

/**
 * bw_scope_ire:
 *
 * Returns: (transfer full): a level in IRE, to a tenth
 */
char *
bw_scope_ire (double ire)
{
  g_autofree char *number = bw_scope_number (ire, 1);
  return g_strconcat (number, "\u00a0IRE", NULL);
}

/**
 * bw_scope_time:
 *
 * Returns: (transfer full): how long it is, without a sign
 */
char *
bw_scope_time (double time_s)
{
  return quantity_text (fabs (time_s), BW_DIMENSION_TIME, TIME_DIGITS);
}

/**
 * bw_scope_span:
 *
 * Returns: (transfer full): a time, and the rate of what takes that long
 */
char *
bw_scope_span (double span_s)
{
  g_autofree char *time = bw_scope_time (span_s);
  if (!(fabs (span_s) > 1e-12))
    return g_strdup (time);
  g_autofree char *rate = quantity_text (1 / fabs (span_s), BW_DIMENSION_FREQUENCY, TIME_DIGITS);
  return g_strdup_printf ("%s (%s)", time, rate);
}

/**
 * bw_scope_level:
 * @volts_per_ire: zero where there is no IRE scale
 *
 * Returns: (transfer full): a level in volts, and in IRE where it has them
 */
char *
bw_scope_level (double volts, double volts_per_ire)
{
  g_autofree char *level = bw_scope_volts (volts);
  if (!(volts_per_ire > 0))
    return g_strdup (level);
  g_autofree char *ire = bw_scope_ire (volts / volts_per_ire);
  return g_strdup_printf (_ ("%s (%s)"), level, ire);
}
