/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "field-private.h"

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

/**
 * bw_fields_load:
 * @object: the struct, holding its presets
 * @file: the name to use in errors
 *
 * Reads each field of @table from @group of @keys. Keys that the table does not know are left
 * alone.
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
      if (load_field (&table->at[i], object, keys, group, &trouble))
        continue;
      int code = trouble->domain == BW_FIELD_ERROR ? trouble->code : BW_FIELD_ERROR_VALUE;
      g_set_error (error, BW_FIELD_ERROR, code, "%s: [%s] %s: %s", file, group, table->at[i].key,
                   trouble->message);
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
      if (*text == '\0' && !(field->flags & BW_FIELD_REQUIRED))
        g_key_file_remove_key (keys, group, field->key, NULL);
      else if (field->type == BW_FIELD_TEXT)
        g_key_file_set_string (keys, group, field->key, text);
      else
        g_key_file_set_value (keys, group, field->key, text);
    }
}

/**
 * bw_fields_copy:
 * @to: a struct whose text members are valid or %NULL
 *
 * Copies every member of @table; texts are duplicated.
 */
void
bw_fields_copy (const BwFieldTable *table, gpointer to, gconstpointer from)
{
  g_return_if_fail (table != NULL);
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
 * bw_fields_equal:
 *
 * Returns: whether every member of @table is written alike in @a and @b
 */
gboolean
bw_fields_equal (const BwFieldTable *table, gconstpointer a, gconstpointer b)
{
  g_return_val_if_fail (table != NULL, FALSE);
  for (guint i = 0; i < table->n; i++)
    if (!bw_field_equal (&table->at[i], a, b))
      return FALSE;
  return TRUE;
}
