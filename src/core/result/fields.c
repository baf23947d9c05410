/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "result.h"

#include <string.h>

#include <glib/gi18n-lib.h>

/* The members of a struct as its table of fields describes them. */

#define DIGITS 5

static char *
one_words (double value, BwDimension dimension, char mark)
{
  const BwValue one = bw_value_quantity (NULL, value, dimension, DIGITS);
  return bw_value_text (&one, mark);
}

/* Below zero the dash of a range would look like a sign. */
static char *
range_words (BwRange range, BwDimension dimension, char mark)
{
  if (range.low >= 0)
    return bw_quantity_format_range (range, dimension, DIGITS, mark);
  g_autofree char *low = one_words (range.low, dimension, mark);
  g_autofree char *high = one_words (range.high, dimension, mark);
  /* Translators: the least and the greatest. */
  return g_strdup_printf (C_ ("range", "%1$s to %2$s"), low, high);
}

static char *
bands_words (const BwField *field, const BwBands *bands, char mark)
{
  GString *text = g_string_new (NULL);
  for (guint i = 0; i < bands->n; i++)
    {
      g_autofree char *range = range_words (bands->at[i], field->dimension, mark);
      g_string_append_printf (text, "%s%s", i > 0 ? ", " : "", range);
    }
  return g_string_free (text, FALSE);
}

/* A quantity is read in the unit that people use for it, if it has one. */
static char *
quantity_words (const BwField *field, gconstpointer object, char mark)
{
  if (field->unit == NULL)
    return one_words (G_STRUCT_MEMBER (double, object, field->offset), field->dimension, mark);
  g_autofree char *text = bw_field_to_entry (field, object, mark);
  g_auto (GStrv) parts = g_strsplit (text, " ", 2);
  return g_strjoinv ("\u00a0", parts);
}

static BwValue
value_of (BwNode *to, const BwField *field, gconstpointer object)
{
  char mark = bw_result_mark (to->result);
  const char *key = field->key;

  switch (field->type)
    {
    case BW_FIELD_BANDS:
      return bw_value_says (key, bw_node_take (to, bands_words (field,
                                                                G_STRUCT_MEMBER_P (object,
                                                                                   field->offset),
                                                                mark)));
    case BW_FIELD_QUANTITY:
      return bw_value_read_as (bw_value_quantity (key,
                                                  G_STRUCT_MEMBER (double, object, field->offset),
                                                  field->dimension, DIGITS),
                               bw_node_take (to, quantity_words (field, object, mark)));
    case BW_FIELD_CHOICE:
      return bw_value_kind (key, field->kinds, bw_field_get_uint (field, object));
    case BW_FIELD_SET:
      return bw_value_set (key, field->kinds, bw_field_get_uint (field, object));
    case BW_FIELD_SWITCH:
      return bw_value_flag (key, bw_field_get_uint (field, object) != 0);
    case BW_FIELD_PINS:
      return bw_value_read_as (bw_value_words (key, bw_node_take (to, bw_field_to_entry (field, object,
                                                                                         mark))),
                               bw_node_take (to, bw_pinout_words (G_STRUCT_MEMBER_P (
                                                     object, field->offset))));
    default:
      return bw_value_words (key, bw_node_take (to, bw_field_to_entry (field, object, mark)));
    }
}

/* The figure with where it comes from, if that is said: "0.7 mm (plate)". */
static BwValue
with_origin (BwNode *to, BwValue value, const BwFieldTable *table, const BwField *field,
             gconstpointer object)
{
  BwOrigin origin = bw_field_origin (table, field, object);
  if (origin == BW_ORIGIN_NOT_SAID)
    return value;
  g_autofree char *words = bw_value_text (&value, bw_result_mark (to->result));
  return bw_value_read_as (value, bw_node_print (to, _ ("%1$s (%2$s)"), words,
                                                 bw_kind_label (&bw_origins, origin)));
}

/**
 * bw_node_fields:
 * @table: of the members of @object
 *
 * Adds a figure for every member that is known, but for its texts, with where it comes from.
 */
void
bw_node_fields (BwNode *to, const BwFieldTable *table, gconstpointer object)
{
  g_return_if_fail (to != NULL && table != NULL && object != NULL);
  for (guint i = 0; i < table->n; i++)
    {
      const BwField *field = &table->at[i];
      if (field->type != BW_FIELD_TEXT && bw_field_is_set (field, object))
        bw_node_figure (to, bw_field_label (field),
                        with_origin (to, value_of (to, field, object), table, field, object));
    }
}

/**
 * bw_node_field:
 * @key: of one of the members
 *
 * Adds a figure for one member, even if it is not known.
 */
void
bw_node_field (BwNode *to, const BwFieldTable *table, const char *key, gconstpointer object)
{
  g_return_if_fail (to != NULL && table != NULL && key != NULL && object != NULL);
  const BwField *field = bw_field_find (table, key);
  g_return_if_fail (field != NULL);
  BwValue value = bw_field_is_set (field, object) ? value_of (to, field, object)
                                                  : bw_value_nothing (field->key);
  bw_node_figure (to, bw_field_label (field), bw_value_or (value, _ ("not known")));
}

/**
 * bw_node_origins:
 * @table: of the members of @object, which has origins
 *
 * Adds for scripts, by the keys of the file, where each figure comes from that says so, and which
 * figures are not known.
 */
void
bw_node_origins (BwNode *to, const BwFieldTable *table, gconstpointer object)
{
  g_return_if_fail (to != NULL && table != NULL && table->origins != 0 && object != NULL);
  g_autoptr (GPtrArray) lacking = g_ptr_array_new ();
  BwNode *from = bw_node_section (to, "from", NULL);

  for (guint i = 0; i < table->n; i++)
    {
      const BwField *field = &table->at[i];
      BwOrigin origin = bw_field_origin (table, field, object);
      gboolean needed = (field->flags & BW_FIELD_FIGURE) && !(field->flags & BW_FIELD_OPTIONAL);
      if (origin != BW_ORIGIN_NOT_SAID)
        bw_node_member (from, bw_value_kind (field->key, &bw_origins, origin));
      if (needed && !bw_field_is_set (field, object))
        g_ptr_array_add (lacking, (gpointer) field->key);
    }
  g_ptr_array_add (lacking, NULL);
  bw_node_member (to, bw_value_list ("not_known", (const char *const *) lacking->pdata));
}
