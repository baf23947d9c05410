/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "field-private.h"

#include <math.h>
#include <string.h>

#include <glib/gi18n-lib.h>

G_DEFINE_QUARK (bw-field-error-quark, bw_field_error)

static const BwKind origins[BW_N_ORIGINS] = {
  [BW_ORIGIN_NOT_SAID] = { "not-said", N_ ("not said") },
  [BW_ORIGIN_PLATE] = { "plate", N_ ("plate") },
  [BW_ORIGIN_PAPERS] = { "papers", N_ ("papers") },
  [BW_ORIGIN_MEASURED] = { "measured", N_ ("measured") },
  [BW_ORIGIN_CLASS] = { "class", N_ ("class") },
};
const BwKindTable bw_origins = { BW_N_ORIGINS, origins };

/**
 * bw_field_label:
 *
 * Returns: (transfer none): the field's words on screen, translated
 */
const char *
bw_field_label (const BwField *field)
{
  g_return_val_if_fail (field != NULL, NULL);
  return _ (field->label);
}

/**
 * bw_field_help:
 *
 * Returns: (transfer none): one translated sentence on what the field is
 */
const char *
bw_field_help (const BwField *field)
{
  g_return_val_if_fail (field != NULL, NULL);
  return field->help != NULL && *field->help != '\0' ? _ (field->help) : "";
}

/**
 * bw_field_find:
 *
 * Returns: (transfer none) (nullable): the field of @table whose key is @key
 */
const BwField *
bw_field_find (const BwFieldTable *table, const char *key)
{
  g_return_val_if_fail (table != NULL && key != NULL, NULL);
  for (guint i = 0; i < table->n; i++)
    if (strcmp (table->at[i].key, key) == 0)
      return &table->at[i];
  return NULL;
}

/**
 * bw_field_at:
 * @offset: of a member that @table describes
 *
 * Returns: (transfer none): the field of that member
 */
const BwField *
bw_field_at (const BwFieldTable *table, gsize offset)
{
  g_return_val_if_fail (table != NULL, NULL);
  for (guint i = 0; i < table->n; i++)
    if (table->at[i].offset == offset)
      return &table->at[i];
  g_return_val_if_reached (NULL);
}

/**
 * bw_field_allowed:
 * @mark: the decimal mark to write numbers with
 *
 * Returns: (transfer full): what may be written in the field, for messages: "10 mV to 5 V",
 * "progressive, interlaced"
 */
char *
bw_field_allowed (const BwField *field, char mark)
{
  g_return_val_if_fail (field != NULL, NULL);
  switch (field->type)
    {
    case BW_FIELD_QUANTITY:
    case BW_FIELD_BANDS:
      {
        g_autofree char *low = bw_quantity_format (field->low, field->dimension, 6, mark);
        g_autofree char *high = bw_quantity_format (field->high, field->dimension, 6, mark);
        /* Translators: the least and the greatest. */
        return g_strdup_printf (C_ ("range", "%1$s to %2$s"), low, high);
      }
    case BW_FIELD_COUNT:
      return g_strdup_printf (_ ("a whole number from %1$.0f to %2$.0f"), field->low, field->high);
    case BW_FIELD_HALF_LINES:
      return g_strdup_printf (_ ("lines or half lines from %1$.0f to %2$.0f"), field->low / 2,
                              field->high / 2);
    case BW_FIELD_RATE:
      return g_strdup (_ ("a frequency, such as “4.5 MHz / 286”"));
    case BW_FIELD_ASPECT:
      return g_strdup (_ ("width:height, such as “4:3”"));
    case BW_FIELD_CHOICE:
    case BW_FIELD_SET:
      return bw_kind_ids (field->kinds, ", ");
    case BW_FIELD_SWITCH:
      return g_strdup (_ ("yes, no"));
    case BW_FIELD_PINS:
      {
        g_autofree char *uses = bw_kind_ids (&bw_pin_uses, ", ");
        return g_strdup_printf (_ ("numbers of pins, each with what it carries, such as “1 r; 5 "
                                   "ground”; a pin carries one of %s"),
                                uses);
      }
    case BW_FIELD_TEXT:
    default:
      return g_strdup (_ ("a text"));
    }
}

/* Whether zero stands for a number that is not known. */
static gboolean
zero_is_unknown (const BwField *field)
{
  gboolean holds_zero = field->low <= 0 && field->high >= 0;
  return (field->flags & BW_FIELD_UNKNOWN) || ((field->flags & BW_FIELD_FIGURE) && !holds_zero);
}

/**
 * bw_field_is_set:
 *
 * Returns: whether the member holds something to show: not an unknown figure, an empty text, an
 * empty set or no band
 */
gboolean
bw_field_is_set (const BwField *field, gconstpointer object)
{
  g_return_val_if_fail (field != NULL && object != NULL, FALSE);
  gboolean figure = (field->flags & BW_FIELD_FIGURE) != 0;
  switch (field->type)
    {
    case BW_FIELD_TEXT:
      {
        const char *text = BW_CONST_MEMBER (char *const, field, object);
        return text != NULL && *text != '\0';
      }
    case BW_FIELD_QUANTITY:
      {
        double value = BW_CONST_MEMBER (double, field, object);
        return !isnan (value) && (!zero_is_unknown (field) || fabs (value) > 0);
      }
    case BW_FIELD_COUNT:
    case BW_FIELD_HALF_LINES:
      return !zero_is_unknown (field) || BW_CONST_MEMBER (int, field, object) != 0;
    case BW_FIELD_RATE:
    case BW_FIELD_ASPECT:
      return !bw_ratio_is_none (BW_CONST_MEMBER (BwRatio, field, object));
    case BW_FIELD_BANDS:
      return BW_CONST_MEMBER (BwBands, field, object).n > 0;
    case BW_FIELD_PINS:
      return bw_pinout_is_given (&BW_CONST_MEMBER (BwPinout, field, object));
    case BW_FIELD_SET:
      return !(figure || (field->flags & BW_FIELD_UNKNOWN))
             || BW_CONST_MEMBER (guint, field, object) != 0;
    case BW_FIELD_CHOICE:
      return !figure || BW_CONST_MEMBER (guint, field, object) < field->kinds->n;
    case BW_FIELD_SWITCH:
      return !figure || BW_CONST_MEMBER (guint, field, object) != BW_SWITCH_UNKNOWN;
    default:
      return TRUE;
    }
}

/**
 * bw_field_is_needed:
 *
 * Returns: whether something must be written: it is no figure, which may be unknown
 */
gboolean
bw_field_is_needed (const BwField *field)
{
  g_return_val_if_fail (field != NULL, FALSE);
  return (field->flags & BW_FIELD_REQUIRED) && !(field->flags & BW_FIELD_FIGURE);
}

/**
 * bw_field_forget:
 *
 * Makes the member unknown; of a field that is no figure, empty.
 */
void
bw_field_forget (const BwField *field, gpointer object)
{
  g_return_if_fail (field != NULL && object != NULL);
  gboolean figure = (field->flags & BW_FIELD_FIGURE) != 0;
  switch (field->type)
    {
    case BW_FIELD_QUANTITY:
      BW_MEMBER (double, field, object) = figure && !zero_is_unknown (field) ? (double) NAN : 0;
      if (field->half_digit_offset > 0)
        G_STRUCT_MEMBER (double, object, field->half_digit_offset) = 0;
      break;
    case BW_FIELD_BANDS:
      BW_MEMBER (BwBands, field, object) = (BwBands){ 0 };
      break;
    case BW_FIELD_PINS:
      BW_MEMBER (BwPinout, field, object) = (BwPinout){ 0 };
      break;
    case BW_FIELD_RATE:
    case BW_FIELD_ASPECT:
      BW_MEMBER (BwRatio, field, object) = BW_RATIO_NONE;
      break;
    case BW_FIELD_CHOICE:
      BW_MEMBER (guint, field, object) = figure ? field->kinds->n : 0;
      break;
    case BW_FIELD_SWITCH:
      BW_MEMBER (guint, field, object) = figure ? BW_SWITCH_UNKNOWN : FALSE;
      break;
    case BW_FIELD_TEXT:
      g_free (BW_MEMBER (char *, field, object));
      BW_MEMBER (char *, field, object) = g_strdup ("");
      break;
    case BW_FIELD_COUNT:
    case BW_FIELD_HALF_LINES:
    case BW_FIELD_SET:
    default:
      BW_MEMBER (guint, field, object) = 0;
      break;
    }
}

/**
 * bw_field_origin:
 * @table: the table of @field
 *
 * Returns: where the figure comes from; of one that is unknown, and of what is no figure, it is
 *   never said
 */
BwOrigin
bw_field_origin (const BwFieldTable *table, const BwField *field, gconstpointer object)
{
  g_return_val_if_fail (table != NULL && field != NULL && object != NULL, BW_ORIGIN_NOT_SAID);
  if (table->origins == 0 || !(field->flags & BW_FIELD_FIGURE) || !bw_field_is_set (field, object))
    return BW_ORIGIN_NOT_SAID;
  const guint8 *from = (const guint8 *) object + table->origins;
  return (BwOrigin) from[field - table->at];
}

/**
 * bw_field_set_origin:
 * @table: the table of @field, which has origins
 *
 * Says where the figure comes from.
 */
void
bw_field_set_origin (const BwFieldTable *table, const BwField *field, gpointer object,
                     BwOrigin origin)
{
  g_return_if_fail (table != NULL && table->origins != 0 && table->n <= BW_ORIGINS_MAX);
  g_return_if_fail (field != NULL && object != NULL && origin < BW_N_ORIGINS);
  guint8 *from = (guint8 *) object + table->origins;
  from[field - table->at] = (guint8) origin;
}

/**
 * bw_field_equal:
 *
 * Returns: whether the member is written alike in @a and @b
 */
gboolean
bw_field_equal (const BwField *field, gconstpointer a, gconstpointer b)
{
  g_return_val_if_fail (field != NULL, FALSE);
  g_autofree char *text_a = bw_field_to_file (field, a);
  g_autofree char *text_b = bw_field_to_file (field, b);
  return strcmp (text_a, text_b) == 0;
}

/**
 * bw_field_get_uint:
 *
 * Returns: the member of a %BW_FIELD_CHOICE, %BW_FIELD_SET or %BW_FIELD_SWITCH field
 */
guint
bw_field_get_uint (const BwField *field, gconstpointer object)
{
  g_return_val_if_fail (field != NULL, 0);
  return BW_CONST_MEMBER (guint, field, object);
}

/**
 * bw_field_set_uint:
 *
 * Sets the member of a %BW_FIELD_CHOICE, %BW_FIELD_SET or %BW_FIELD_SWITCH field.
 */
void
bw_field_set_uint (const BwField *field, gpointer object, guint value)
{
  g_return_if_fail (field != NULL);
  BW_MEMBER (guint, field, object) = value;
}

/**
 * bw_field_get_string:
 *
 * Returns: (transfer none) (nullable): the member of a %BW_FIELD_TEXT field
 */
const char *
bw_field_get_string (const BwField *field, gconstpointer object)
{
  g_return_val_if_fail (field != NULL, NULL);
  return BW_CONST_MEMBER (char *const, field, object);
}
