/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "arguments.h"

#include <math.h>
#include <string.h>

#include <glib/gi18n-lib.h>

#include "core/circuit/coupling.h"
#include "nearest.h"
#include "output.h"

/* A word that is in no table is answered with all words of the table, if they are no more than
 * these; else with the nearest ones. */
#define FEW_KINDS 12

/**
 * bw_argument_utf8:
 * @raw: an argument as it came: UTF-8, or in the encoding of the locale
 *
 * Returns: (transfer full): it as UTF-8
 */
char *
bw_argument_utf8 (const char *raw)
{
  if (g_utf8_validate (raw, -1, NULL))
    return g_strdup (raw);
  char *converted = g_locale_to_utf8 (raw, -1, NULL, NULL, NULL);
  return converted != NULL ? converted : g_utf8_make_valid (raw, -1);
}

/**
 * bw_argument_mark:
 *
 * Returns: the decimal mark of @text: a comma where the locale writes one and @text has no point
 */
char
bw_argument_mark (const char *text)
{
  char locale_mark = bw_quantity_locale_mark ();
  return strchr (text, BW_FILE_MARK) == NULL ? locale_mark : BW_FILE_MARK;
}

/* @text, followed by @unit if it ends in a digit and so has no unit. */
static char *
with_unit (const char *text, const char *unit)
{
  gsize length = strlen (text);
  gboolean bare = length > 0 && g_ascii_isdigit (text[length - 1]);
  return bare ? g_strconcat (text, " ", unit, NULL) : g_strdup (text);
}

/**
 * bw_argument_quantity:
 * @option: whose value it is, for the complaint
 * @raw: as it came; lines may be a plain number
 * @value: (out): in the base unit, more than zero
 *
 * Returns: %FALSE, having said why in one line, if it is no such quantity
 */
gboolean
bw_argument_quantity (const char *option, const char *raw, BwDimension dimension, double *value)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *text = bw_argument_utf8 (raw);

  if (!bw_quantity_parse (text, dimension, bw_argument_mark (text), value, &error))
    bw_cli_complain ("%s: %s", option, error->message);
  else if (!(*value > 0))
    bw_cli_complain (_ ("%1$s: “%2$s” must be more than zero"), option, text);
  else
    return TRUE;
  return FALSE;
}

/**
 * bw_argument_number:
 * @text: with the decimal mark of the locale, or a point
 * @number: (out): what it begins with
 * @rest: (out): what of @text follows it
 *
 * Returns: %FALSE if @text does not begin with a number, or one that is not finite
 */
gboolean
bw_argument_number (const char *text, double *number, const char **rest)
{
  g_autofree char *plain = g_strdelimit (g_strdup (text), (char[]){ bw_argument_mark (text), 0 },
                                         BW_FILE_MARK);
  char *end;
  *number = g_ascii_strtod (plain, &end);
  *rest = text + (end - plain);
  return end != plain && isfinite (*number);
}

static char *
number_words (double value, BwDimension dimension)
{
  char number[G_ASCII_DTOSTR_BUF_SIZE];
  return dimension == BW_N_DIMENSIONS
             ? g_strdup (g_ascii_formatd (number, sizeof number, "%.10g", value))
             : bw_quantity_format (value, dimension, 6, bw_quantity_locale_mark ());
}

/**
 * bw_argument_within:
 * @option: whose value it is, for the complaint
 * @raw: (nullable): as it came; %NULL: it did not, and nothing is done
 * @dimension: %BW_N_DIMENSIONS: a plain number
 * @allowed: both ends are allowed
 * @value: (out): in the base unit
 *
 * Returns: %FALSE, having said why in one line, if it is no such quantity
 */
gboolean
bw_argument_within (const char *option, const char *raw, BwDimension dimension, BwRange allowed,
                    double *value)
{
  g_autoptr (GError) error = NULL;
  double read;
  if (raw == NULL)
    return TRUE;
  g_autofree char *text = bw_argument_utf8 (raw);

  if (dimension == BW_N_DIMENSIONS)
    {
      const char *rest;
      if (!bw_argument_number (text, &read, &rest) || *rest != '\0')
        {
          bw_cli_complain (_ ("%1$s: “%2$s” is not a number"), option, text);
          return FALSE;
        }
    }
  else if (!bw_quantity_parse (text, dimension, bw_argument_mark (text), &read, &error))
    {
      bw_cli_complain ("%s: %s", option, error->message);
      return FALSE;
    }
  if (read >= allowed.low && read <= allowed.high)
    {
      *value = read;
      return TRUE;
    }
  g_autofree char *low = number_words (allowed.low, dimension);
  g_autofree char *high = number_words (allowed.high, dimension);
  bw_cli_complain (_ ("%1$s: “%2$s”: from %3$s to %4$s is allowed"), option, text, low, high);
  return FALSE;
}

/**
 * bw_argument_capacitor:
 * @raw: of --capacitor, as it came
 * @farad: (out): of one that couples video or sync
 *
 * Returns: %FALSE, having said why in one line, if it is none
 */
gboolean
bw_argument_capacitor (const char *raw, double *farad)
{
  if (!bw_argument_quantity ("--capacitor", raw, BW_DIMENSION_CAPACITANCE, farad))
    return FALSE;
  if (*farad > BW_CAPACITOR_MIN_F && *farad < BW_CAPACITOR_MAX_F)
    return TRUE;
  bw_cli_complain (_ ("--capacitor: “%s”: more than 1 pF and less than 1 F is allowed"), raw);
  return FALSE;
}

/**
 * bw_argument_rate:
 * @raw: a plain number of hertz or a quantity with a decimal point, or a ratio such as
 *   "60 Hz * 1000 / 1001"
 * @rate_hz: (out): exactly, more than zero
 *
 * Returns: as bw_argument_quantity()
 */
gboolean
bw_argument_rate (const char *option, const char *raw, BwRatio *rate_hz)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *given = bw_argument_utf8 (raw);
  g_autofree char *text = strpbrk (given, "*/") == NULL ? with_unit (given, "Hz")
                                                        : g_strdup (given);

  if (!bw_quantity_parse_ratio (text, BW_DIMENSION_FREQUENCY, rate_hz, &error))
    bw_cli_complain ("%s: %s", option, error->message);
  else if (rate_hz->num <= 0)
    bw_cli_complain (_ ("%1$s: “%2$s” must be more than zero"), option, given);
  else
    return TRUE;
  return FALSE;
}

/* A count of at most six figures, so that no sum of two overflows. */
static gboolean
take_count (const char **text, int *count)
{
  gsize figures = strspn (*text, "0123456789");
  if (figures == 0 || figures > 6)
    return FALSE;
  *count = (int) g_ascii_strtoll (*text, NULL, 10);
  *text += figures;
  return *count > 0;
}

/**
 * bw_argument_size:
 * @raw: "WIDTHxHEIGHT"
 *
 * Returns: as bw_argument_quantity()
 */
gboolean
bw_argument_size (const char *option, const char *raw, int *width, int *height)
{
  const char *p = raw;
  if (take_count (&p, width) && (*p == 'x' || *p == 'X') && p++ != NULL && take_count (&p, height)
      && *p == '\0')
    return TRUE;
  g_autofree char *text = bw_argument_utf8 (raw);
  bw_cli_complain (_ ("%1$s: “%2$s”: write WIDTHxHEIGHT in whole numbers, such as 640x480"), option,
                   text);
  return FALSE;
}

/**
 * bw_argument_word:
 * @raw: (nullable): one of the ids of @table; %NULL leaves @value as it is
 * @value: (out): its place in @table
 *
 * Returns: (transfer full) (nullable): what is wrong with @raw, if anything
 */
char *
bw_argument_word (const char *option, const BwKindTable *table, const char *raw, guint *value)
{
  if (raw == NULL || bw_kind_find (table, raw, value))
    return NULL;
  g_autofree char *word = bw_argument_utf8 (raw);
  g_autofree char *allowed = bw_kind_ids (table, ", ");
  return g_strdup_printf (_ ("%1$s “%2$s”: allowed are %3$s"), option, word, allowed);
}

/**
 * bw_argument_pair:
 * @raw: "NAME=QUANTITY"
 * @name: (out) (transfer full): without space around it
 * @value: (out) (transfer full): what stands after the sign
 *
 * Returns: %FALSE if there is no such sign, or nothing before it
 */
gboolean
bw_argument_pair (const char *raw, char **name, char **value)
{
  g_autofree char *text = bw_argument_utf8 (raw);
  const char *sign = strchr (text, '=');
  if (sign == NULL || sign == text)
    return FALSE;
  *name = g_strstrip (g_strndup (text, (gsize) (sign - text)));
  *value = g_strstrip (g_strdup (sign + 1));
  return TRUE;
}

/**
 * bw_argument_parts:
 * @raw: values set apart by commas, or by semicolons, which leave the comma to be a decimal mark
 *
 * Returns: (transfer full): each of them, without the space around it
 */
char **
bw_argument_parts (const char *raw)
{
  g_autofree char *text = bw_argument_utf8 (raw);
  char **parts = g_strsplit (text, strchr (text, ';') != NULL ? ";" : ",", -1);
  for (char **part = parts; *part != NULL; part++)
    g_strstrip (*part);
  return parts;
}

/**
 * bw_argument_kind:
 * @separator: what stands between the words of an id of @table; "-" and "_" may both be written
 *
 * Returns: %FALSE, having named what is allowed (or the nearest, of many) in one line, if @table has no kind of this name
 */
gboolean
bw_argument_kind (const BwKindTable *table, char separator, const char *name, guint *kind)
{
  g_autofree char *id = g_strdelimit (g_ascii_strdown (name, -1), "-_", separator);
  if (bw_kind_find (table, id, kind))
    return TRUE;

  if (table->n <= FEW_KINDS)
    {
      g_autofree char *word = bw_argument_utf8 (name);
      g_autofree char *allowed = bw_kind_ids (table, ", ");
      bw_cli_complain (_ ("there is no “%1$s”; allowed are %2$s"), word, allowed);
      return FALSE;
    }
  g_autoptr (GPtrArray) ids = g_ptr_array_new ();
  for (guint i = 0; i < table->n; i++)
    g_ptr_array_add (ids, (gpointer) bw_kind_id (table, i));
  g_autofree char *nearest = bw_nearest_names (ids, id, 3);
  bw_cli_complain (_ ("there is no “%1$s”; the nearest are %2$s; --list names all"), name, nearest);
  return FALSE;
}
