/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "quantity-private.h"

#include <string.h>

#include <glib/gi18n-lib.h>

/* Reading ranges, as plates and people write them. */

/* The marks that may stand between the ends of a range; a hyphen or a minus sign may too. */
static const char *const range_marks[]
    = { "...", "..", "…", "\u2010", "\u2011", "\u2012", "\u2013", "\u2014", " to " };

static gboolean
starts_number (const char *text)
{
  const char *rest = bw_skip_space (text);
  if (g_str_has_prefix (rest, "\u2212"))
    return TRUE;
  return g_ascii_isdigit (*rest) || (*rest != '\0' && strchr (".,-+", *rest) != NULL);
}

/* Whether the hyphen or minus sign at @at, @length bytes long, stands between two numbers: not the
 * sign of the first one, and not that of a power of ten. */
static gboolean
parts_numbers (const char *text, const char *at, gsize length)
{
  gboolean first = bw_skip_space (text) == at;
  gboolean power = at >= text + 2 && (at[-1] == 'e' || at[-1] == 'E') && g_ascii_isdigit (at[-2]);
  return !first && !power && starts_number (at + length);
}

/* The first mark of @text between the ends of a range, or NULL. */
static const char *
find_range_mark (const char *text, gsize *length)
{
  for (const char *p = text; *p != '\0'; p = g_utf8_next_char (p))
    {
      for (gsize i = 0; i < G_N_ELEMENTS (range_marks); i++)
        if (g_str_has_prefix (p, range_marks[i]))
          {
            *length = strlen (range_marks[i]);
            return p;
          }
      *length = *p == '-' ? 1 : g_str_has_prefix (p, "\u2212") ? strlen ("\u2212") : 0;
      if (*length > 0 && parts_numbers (text, p, *length))
        return p;
    }
  return NULL;
}

/* Whether a list goes on after @p: at a semicolon, at a comma with space after it, and at a slash
 * between two numbers, as in "50/60 Hz". */
static gboolean
parts_list (const char *p)
{
  if (*p == ';')
    return TRUE;
  if (*p == ',')
    return p[1] != '\0' && bw_skip_space (p + 1) != p + 1 && starts_number (p + 1);
  return *p == '/' && starts_number (p + 1);
}

static GPtrArray *
split_list (const char *text)
{
  GPtrArray *items = g_ptr_array_new_with_free_func (g_free);
  const char *from = text;
  for (const char *p = text;; p++)
    {
      if (*p != '\0' && !parts_list (p))
        continue;
      g_autofree char *item = g_strndup (from, (gsize) (p - from));
      if (*bw_skip_space (item) != '\0')
        g_ptr_array_add (items, g_steal_pointer (&item));
      if (*p == '\0')
        return items;
      from = p + 1;
    }
}

static void
part_free (gpointer data)
{
  BwPart *part = data;
  bw_part_clear (part);
  g_free (part);
}

static gboolean
add_part (GPtrArray *parts, const char *text, BwDimension dimension, const BwReadAs *as,
          GError **error)
{
  BwPart *part = g_new0 (BwPart, 1);
  g_ptr_array_add (parts, part);
  return bw_part_take (text, dimension, as, part, error);
}

/* Adds the two ends of one range; those of a quantity alone are the same. */
static gboolean
add_range (GPtrArray *parts, const char *text, BwDimension dimension, const BwReadAs *as,
           GError **error)
{
  gsize length = 0;
  const char *mark = find_range_mark (text, &length);
  if (mark == NULL)
    return add_part (parts, text, dimension, as, error)
           && add_part (parts, text, dimension, as, error);
  g_autofree char *low = g_strndup (text, (gsize) (mark - text));
  return add_part (parts, low, dimension, as, error)
         && add_part (parts, mark + length, dimension, as, error);
}

/* "15.6-15.8 kHz": a number without a unit takes that of the next one that has one, else that of
 * the one before. */
static void
share_units (GPtrArray *parts)
{
  for (guint i = parts->len; i-- > 1;)
    {
      const BwPart *part = parts->pdata[i];
      BwPart *before = parts->pdata[i - 1];
      if (before->unit == NULL)
        {
          before->unit = part->unit;
          before->factor = part->factor;
        }
    }
  for (guint i = 1; i < parts->len; i++)
    {
      const BwPart *part = parts->pdata[i - 1];
      BwPart *after = parts->pdata[i];
      if (after->unit == NULL)
        {
          after->unit = part->unit;
          after->factor = part->factor;
        }
    }
}

static gboolean
take_ranges (const GPtrArray *items, GPtrArray *parts, BwDimension dimension, const BwReadAs *as,
             GError **error)
{
  for (guint i = 0; i < items->len; i++)
    if (!add_range (parts, items->pdata[i], dimension, as, error))
      return FALSE;
  share_units (parts);
  const BwPart *first = parts->len > 0 ? parts->pdata[0] : NULL;
  return first == NULL || first->unit != NULL
         || bw_parts_settle_unit ((BwPart *const *) parts->pdata, parts->len, dimension, as, error);
}

static gboolean
fail_range (const char *item, gboolean reversed, GError **error)
{
  g_autofree char *text = g_strstrip (g_strdup (item));
  g_set_error (error, BW_QUANTITY_ERROR, BW_QUANTITY_ERROR_RANGE,
               reversed ? _ ("“%s” ends below its start")
                        : _ ("“%s” is one range too many; eight are allowed"),
               text);
  return FALSE;
}

/**
 * bw_quantity_read_bands:
 * @text: one or more ranges set apart by ";", "/" or a comma with a space, each "15.5 kHz .. 16 kHz"
 *   (also with a hyphen, a dash or "to"); a number may leave out a unit that another one has, and
 *   all of them where only one unit is possible; one quantity alone is a range of no width; an
 *   empty text is no band
 * @as: how it is read
 * @bands: (out): the ranges in the base unit, in the order written
 *
 * Returns: %FALSE with @error in %BW_QUANTITY_ERROR; @bands is then untouched. More than
 * %BW_BANDS_MAX ranges, or an end below its start, is an error.
 */
gboolean
bw_quantity_read_bands (const char *text, BwDimension dimension, const BwReadAs *as, BwBands *bands,
                        GError **error)
{
  g_return_val_if_fail (text != NULL && as != NULL && bands != NULL, FALSE);
  BwBands result = { 0 };
  if (!bw_text_check_utf8 (text, error))
    return FALSE;
  g_autoptr (GPtrArray) items = split_list (text);
  g_autoptr (GPtrArray) parts = g_ptr_array_new_with_free_func (part_free);
  if (!take_ranges (items, parts, dimension, as, error))
    return FALSE;

  for (guint i = 0; i < items->len; i++)
    {
      BwMeasured low, high;
      if (!bw_part_measure (parts->pdata[2 * i], &low, error)
          || !bw_part_measure (parts->pdata[2 * i + 1], &high, error))
        return FALSE;
      if (low.value > high.value || i == BW_BANDS_MAX)
        return fail_range (items->pdata[i], low.value > high.value, error);
      result.at[i] = (BwRange){ low.value, high.value };
      result.n = i + 1;
    }
  *bands = result;
  return TRUE;
}

/**
 * bw_quantity_parse_bands:
 * @mark: the decimal mark, '.' or ','
 *
 * bw_quantity_read_bands() where any value is allowed.
 *
 * Returns: %FALSE with @error in %BW_QUANTITY_ERROR; @bands is then untouched
 */
gboolean
bw_quantity_parse_bands (const char *text, BwDimension dimension, char mark, BwBands *bands,
                         GError **error)
{
  const BwReadAs as = { .mark = mark };
  return bw_quantity_read_bands (text, dimension, &as, bands, error);
}
