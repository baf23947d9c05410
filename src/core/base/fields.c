/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "field-private.h"

#include <string.h>

#include <glib/gi18n-lib.h>

/* All members of a struct. */

static gboolean
load_field (const BwField *field, gpointer object, GKeyFile *keys, const char *group,
            GError **error)
{
  g_autofree char *raw = NULL;
  gboolean present = g_key_file_has_key (keys, group, field->key, NULL);
  if (!present && !(field->flags & BW_FIELD_REQUIRED))
    return TRUE; /* the struct's preset stands */
  if (!present && (field->flags & BW_FIELD_FIGURE))
    {
      bw_field_forget (field, object);
      return TRUE;
    }
  if (present)
    {
      g_autoptr (GError) trouble = NULL;
      raw = field->type == BW_FIELD_TEXT
                ? g_key_file_get_string (keys, group, field->key, &trouble)
                : g_key_file_get_value (keys, group, field->key, &trouble);
      if (trouble != NULL) /* a bad escape gives a text and an error */
        {
          g_set_error_literal (error, BW_FIELD_ERROR, BW_FIELD_ERROR_VALUE,
                               _ ("a backslash stands before a letter that it does not go with; "
                                  "write two for one"));
          return FALSE;
        }
    }
  return bw_field_read (field, object, raw != NULL ? raw : "", BW_FILE_MARK, BW_TEXT_FROM_FILE,
                        error);
}

/* The key that holds the origin of @field: "pitch.from". */
static char *
origin_key (const BwField *field)
{
  return g_strconcat (field->key, ".from", NULL);
}

/* The origins that a file names. */
#define SAID_ORIGINS (((1u << BW_N_ORIGINS) - 1) & ~BW_BIT (BW_ORIGIN_NOT_SAID))

/* Sets the origin of a figure that is there; an origin without a figure says nothing. */
static gboolean
load_origin (const BwFieldTable *table, const BwField *field, gpointer object, GKeyFile *keys,
             const char *group, GError **error)
{
  if (table->origins == 0 || !(field->flags & BW_FIELD_FIGURE))
    return TRUE;
  g_autofree char *key = origin_key (field);
  g_autofree char *raw = g_key_file_get_value (keys, group, key, NULL);
  guint origin;
  if (raw == NULL)
    return TRUE;
  if (!bw_kind_find (&bw_origins, g_strstrip (raw), &origin) || !(SAID_ORIGINS & BW_BIT (origin)))
    {
      g_autofree char *allowed = bw_kind_set_ids (&bw_origins, SAID_ORIGINS, ", ");
      g_set_error (error, BW_FIELD_ERROR, BW_FIELD_ERROR_KIND,
                   _ ("“%1$s” is not known; allowed: %2$s"), raw, allowed);
      return FALSE;
    }
  if (bw_field_is_set (field, object))
    bw_field_set_origin (table, field, object, origin);
  return TRUE;
}

static void
save_origin (const BwFieldTable *table, const BwField *field, gconstpointer object, GKeyFile *keys,
             const char *group)
{
  if (table->origins == 0 || !(field->flags & BW_FIELD_FIGURE))
    return;
  g_autofree char *key = origin_key (field);
  BwOrigin origin = bw_field_origin (table, field, object);
  if (origin == BW_ORIGIN_NOT_SAID)
    g_key_file_remove_key (keys, group, key, NULL);
  else
    g_key_file_set_value (keys, group, key, bw_kind_id (&bw_origins, origin));
}

/* Reads the member of @field and its origin; @key is the key that is wrong, if one is. */
static gboolean
load_with_origin (const BwFieldTable *table, const BwField *field, gpointer object, GKeyFile *keys,
                  const char *group, char **key, GError **error)
{
  *key = NULL;
  if (!load_field (field, object, keys, group, error))
    *key = g_strdup (field->key);
  else if (!load_origin (table, field, object, keys, group, error))
    *key = origin_key (field);
  return *key == NULL;
}

/**
 * bw_fields_load:
 * @object: the struct, holding its presets
 * @file: the name to use in errors
 *
 * Reads each field of @table from @group of @keys, and the origin of each figure from its key with
 * ".from" behind it. Of a figure whose key is absent the preset stands; it is unknown if it has
 * none (%BW_FIELD_REQUIRED). Keys that the table does not know are left alone.
 *
 * Returns: %FALSE with @error in %BW_FIELD_ERROR that names @file, @group and the key
 */
gboolean
bw_fields_load (const BwFieldTable *table, gpointer object, GKeyFile *keys, const char *group,
                const char *file, GError **error)
{
  g_return_val_if_fail (table != NULL && keys != NULL && group != NULL && file != NULL, FALSE);
  for (guint i = 0; i < table->n; i++)
    {
      g_autoptr (GError) trouble = NULL;
      g_autofree char *key = NULL;
      if (load_with_origin (table, &table->at[i], object, keys, group, &key, &trouble))
        continue;
      int code = trouble->domain == BW_FIELD_ERROR ? trouble->code : BW_FIELD_ERROR_VALUE;
      g_set_error (error, BW_FIELD_ERROR, code, "%s: [%s] %s: %s", file, group, key, trouble->message);
      return FALSE;
    }
  return TRUE;
}

/**
 * bw_fields_save:
 *
 * Writes each field of @table to @group of @keys. A key that is there keeps its place; a member
 * that is not known has no key. Other keys and comments stay.
 */
void
bw_fields_save (const BwFieldTable *table, gconstpointer object, GKeyFile *keys, const char *group)
{
  g_return_if_fail (table != NULL && keys != NULL && group != NULL);
  for (guint i = 0; i < table->n; i++)
    {
      const BwField *field = &table->at[i];
      g_autofree char *text = bw_field_to_file (field, object);
      gboolean may_lack = (field->flags & BW_FIELD_FIGURE) || !(field->flags & BW_FIELD_REQUIRED);
      if (*text == '\0' && may_lack)
        g_key_file_remove_key (keys, group, field->key, NULL);
      else if (field->type == BW_FIELD_TEXT)
        g_key_file_set_string (keys, group, field->key, text);
      else
        g_key_file_set_value (keys, group, field->key, text);
      save_origin (table, field, object, keys, group);
    }
}

/**
 * bw_fields_copy:
 * @to: a struct whose text members are valid or %NULL
 *
 * Copies every member of @table, with its origin; texts are duplicated.
 */
void
bw_fields_copy (const BwFieldTable *table, gpointer to, gconstpointer from)
{
  g_return_if_fail (table != NULL && to != NULL && from != NULL);
  if (table->origins != 0)
    memcpy ((char *) to + table->origins, (const char *) from + table->origins, BW_ORIGINS_MAX);
  for (guint i = 0; i < table->n; i++)
    {
      const BwField *field = &table->at[i];
      switch (field->type)
        {
        case BW_FIELD_TEXT:
          g_free (BW_MEMBER (char *, field, to));
          BW_MEMBER (char *, field, to) = g_strdup (BW_CONST_MEMBER (char *const, field, from));
          break;
        case BW_FIELD_QUANTITY:
          BW_MEMBER (double, field, to) = BW_CONST_MEMBER (double, field, from);
          break;
        case BW_FIELD_BANDS:
          BW_MEMBER (BwBands, field, to) = BW_CONST_MEMBER (BwBands, field, from);
          break;
        case BW_FIELD_PINS:
          BW_MEMBER (BwPinout, field, to) = BW_CONST_MEMBER (BwPinout, field, from);
          break;
        case BW_FIELD_RATE:
        case BW_FIELD_ASPECT:
          BW_MEMBER (BwRatio, field, to) = BW_CONST_MEMBER (BwRatio, field, from);
          break;
        case BW_FIELD_COUNT:
        case BW_FIELD_HALF_LINES:
        case BW_FIELD_CHOICE:
        case BW_FIELD_SET:
        case BW_FIELD_SWITCH:
        default:
          BW_MEMBER (guint, field, to) = BW_CONST_MEMBER (guint, field, from);
          break;
        }
    }
}

/**
 * bw_fields_clear:
 *
 * Frees the text members of @table.
 */
void
bw_fields_clear (const BwFieldTable *table, gpointer object)
{
  for (guint i = 0; i < table->n; i++)
    if (table->at[i].type == BW_FIELD_TEXT)
      g_clear_pointer (&BW_MEMBER (char *, &table->at[i], object), g_free);
}

/**
 * bw_fields_forget:
 *
 * Makes every figure of @table unknown, so that no preset stands for it.
 */
void
bw_fields_forget (const BwFieldTable *table, gpointer object)
{
  g_return_if_fail (table != NULL && object != NULL);
  for (guint i = 0; i < table->n; i++)
    if (table->at[i].flags & BW_FIELD_FIGURE)
      bw_field_forget (&table->at[i], object);
  bw_fields_set_origins (table, object, BW_ORIGIN_NOT_SAID);
}

/**
 * bw_fields_set_origins:
 *
 * Gives every figure of @table that is known the same origin.
 */
void
bw_fields_set_origins (const BwFieldTable *table, gpointer object, BwOrigin origin)
{
  g_return_if_fail (table != NULL && object != NULL && origin < BW_N_ORIGINS);
  for (guint i = 0; i < table->n && table->origins != 0; i++)
    {
      const BwField *field = &table->at[i];
      gboolean known = (field->flags & BW_FIELD_FIGURE) && bw_field_is_set (field, object);
      bw_field_set_origin (table, field, object, known ? origin : BW_ORIGIN_NOT_SAID);
    }
}

/* Whether the first form of the file had no key for the field where nothing was to be said. */
static gboolean
first_form_may_lack (const BwField *field)
{
  return (field->flags & (BW_FIELD_UNKNOWN | BW_FIELD_OPTIONAL))
         || !(field->flags & BW_FIELD_FIGURE);
}

/**
 * bw_fields_need_second_form:
 *
 * Returns: whether a figure is unknown of which the first form of the file could not say so: there
 * it had to be given, or a preset stood for it
 */
gboolean
bw_fields_need_second_form (const BwFieldTable *table, gconstpointer object)
{
  g_return_val_if_fail (table != NULL && object != NULL, FALSE);
  for (guint i = 0; i < table->n; i++)
    if (!first_form_may_lack (&table->at[i]) && !bw_field_is_set (&table->at[i], object))
      return TRUE;
  return FALSE;
}

/**
 * bw_fields_equal:
 *
 * Returns: whether every member of @table is written alike in @a and @b, and has the same origin
 */
gboolean
bw_fields_equal (const BwFieldTable *table, gconstpointer a, gconstpointer b)
{
  g_return_val_if_fail (table != NULL, FALSE);
  for (guint i = 0; i < table->n; i++)
    if (!bw_field_equal (&table->at[i], a, b)
        || bw_field_origin (table, &table->at[i], a) != bw_field_origin (table, &table->at[i], b))
      return FALSE;
  return TRUE;
}
