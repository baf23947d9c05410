/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "field-private.h"

/* Writing a member. */

static char *
set_to_text (const BwField *field, guint set)
{
  GString *text = g_string_new (NULL);
  for (guint i = 0; i < field->kinds->n; i++)
    if (set & BW_BIT (i))
      g_string_append_printf (text, "%s%s", text->len > 0 ? "; " : "", field->kinds->at[i].id);
  return g_string_free (text, FALSE);
}

static char *
half_lines_to_text (int half_lines, char mark)
{
  if (half_lines % 2 == 0)
    return g_strdup_printf ("%d", half_lines / 2);
  return g_strdup_printf ("%d%c5", half_lines / 2, mark);
}

static char *
measure_to_text (const BwField *field, gconstpointer object, gboolean file, char mark)
{
  if (field->type == BW_FIELD_BANDS)
    {
      const BwBands *bands = &BW_CONST_MEMBER (BwBands, field, object);
      return file ? bw_quantity_bands_to_file (bands, field->dimension, field->unit)
                  : bw_quantity_bands_to_entry (bands, field->dimension, field->unit, mark);
    }
  double value = BW_CONST_MEMBER (double, field, object);
  if (field->half_digit_offset > 0 && !file)
    {
      const char *at = object;
      const BwMeasured measured
          = { value, *(const double *) (gconstpointer) (at + field->half_digit_offset) };
      return bw_measured_to_entry (&measured, field->dimension, field->unit, mark);
    }
  return file ? bw_quantity_to_file (value, field->dimension, field->unit)
              : bw_quantity_to_entry (value, field->dimension, field->unit, mark);
}

static char *
to_text (const BwField *field, gconstpointer object, gboolean file, char mark)
{
  if (!bw_field_is_set (field, object))
    return g_strdup ("");
  switch (field->type)
    {
    case BW_FIELD_QUANTITY:
    case BW_FIELD_BANDS:
      return measure_to_text (field, object, file, mark);
    case BW_FIELD_COUNT:
      return g_strdup_printf ("%d", BW_CONST_MEMBER (int, field, object));
    case BW_FIELD_HALF_LINES:
      return half_lines_to_text (BW_CONST_MEMBER (int, field, object), mark);
    case BW_FIELD_RATE:
      return bw_quantity_format_ratio (BW_CONST_MEMBER (BwRatio, field, object), field->dimension);
    case BW_FIELD_ASPECT:
      {
        BwRatio aspect = BW_CONST_MEMBER (BwRatio, field, object);
        return g_strdup_printf ("%" G_GINT64_FORMAT ":%" G_GINT64_FORMAT, aspect.num, aspect.den);
      }
    case BW_FIELD_CHOICE:
      return g_strdup (bw_kind_id (field->kinds, BW_CONST_MEMBER (guint, field, object)));
    case BW_FIELD_SET:
      return set_to_text (field, BW_CONST_MEMBER (guint, field, object));
    case BW_FIELD_SWITCH:
      return g_strdup (BW_CONST_MEMBER (gboolean, field, object) ? "yes" : "no");
    case BW_FIELD_PINS:
      return bw_pinout_to_text (&BW_CONST_MEMBER (BwPinout, field, object));
    case BW_FIELD_TEXT:
    default:
      return g_strdup (BW_CONST_MEMBER (char *const, field, object));
    }
}

/**
 * bw_field_to_entry:
 *
 * Returns: (transfer full): the member as bw_field_parse() reads it with the same @mark; empty if
 * it is not known
 */
char *
bw_field_to_entry (const BwField *field, gconstpointer object, char mark)
{
  g_return_val_if_fail (field != NULL, NULL);
  return to_text (field, object, FALSE, mark);
}

/**
 * bw_field_to_file:
 *
 * Returns: (transfer full): the member as files hold it: decimal point, ASCII units, exact
 */
char *
bw_field_to_file (const BwField *field, gconstpointer object)
{
  g_return_val_if_fail (field != NULL, NULL);
  return to_text (field, object, TRUE, BW_FILE_MARK);
}
