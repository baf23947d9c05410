/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "field.h"

#include <math.h>
#include <string.h>

#include <glib/gi18n-lib.h>

G_DEFINE_QUARK (bw-field-error-quark, bw_field_error)

#define MEMBER(type, field, object) (*(type *) ((char *) (object) + (field)->offset))
#define CONST_MEMBER(type, field, object)                                                         \
  (*(const type *) ((const char *) (object) + (field)->offset))

/**
 * bw_field_label:
 *
 * Returns: (transfer none): the field's words on screen, translated
 */
const char *
bw_field_label (const BwField *field)
{
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
  return field->help != NULL ? _ (field->help) : "";
}

/**
 * bw_field_find:
 *
 * Returns: (transfer none) (nullable): the field of @table whose key is @key
 */
const BwField *
bw_field_find (const BwFieldTable *table, const char *key)
{
  for (guint i = 0; i < table->n; i++)
    if (strcmp (table->at[i].key, key) == 0)
      return &table->at[i];
  return NULL;
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
  switch (field->type)
    {
    case BW_FIELD_QUANTITY:
    case BW_FIELD_BANDS:
      {
        g_autofree char *low = bw_quantity_format (field->low, field->dimension, 6, mark);
        g_autofree char *high = bw_quantity_format (field->high, field->dimension, 6, mark);
        return g_strdup_printf (_ ("%s to %s"), low, high);
      }
    case BW_FIELD_COUNT:
      return g_strdup_printf (_ ("a whole number from %.0f to %.0f"), field->low, field->high);
    case BW_FIELD_HALF_LINES:
      return g_strdup_printf (_ ("lines or half lines from %.0f to %.0f"), field->low / 2,
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
    case BW_FIELD_TEXT:
    default:
      return g_strdup (_ ("a text"));
    }
}

/**
 * bw_field_is_set:
 *
 * Returns: whether the member holds something to show: not an unknown quantity, an empty text, an
 * empty set or no band
 */
gboolean
bw_field_is_set (const BwField *field, gconstpointer object)
{
  switch (field->type)
    {
    case BW_FIELD_TEXT:
      {
        const char *text = CONST_MEMBER (char *const, field, object);
        return text != NULL && *text != '\0';
      }
    case BW_FIELD_QUANTITY:
      return !(field->flags & BW_FIELD_UNKNOWN) || fabs (CONST_MEMBER (double, field, object)) > 0;
    case BW_FIELD_COUNT:
    case BW_FIELD_HALF_LINES:
      return !(field->flags & BW_FIELD_UNKNOWN) || CONST_MEMBER (int, field, object) != 0;
    case BW_FIELD_RATE:
    case BW_FIELD_ASPECT:
      return !bw_ratio_is_none (CONST_MEMBER (BwRatio, field, object));
    case BW_FIELD_BANDS:
      return CONST_MEMBER (BwBands, field, object).n > 0;
    case BW_FIELD_SET:
      return !(field->flags & BW_FIELD_UNKNOWN) || CONST_MEMBER (guint, field, object) != 0;
    case BW_FIELD_CHOICE:
    case BW_FIELD_SWITCH:
    default:
      return TRUE;
    }
}

/* Parsing: one function for each type that is not plain text */

static gboolean
fail_range (const BwField *field, const char *text, char mark, GError **error)
{
  g_autofree char *allowed = bw_field_allowed (field, mark);
  g_set_error (error, BW_FIELD_ERROR, BW_FIELD_ERROR_RANGE, _ ("“%s” is out of range; allowed: %s"),
               text, allowed);
  return FALSE;
}

static gboolean
fail_kind (const BwField *field, const char *text, GError **error)
{
  g_autofree char *allowed = bw_field_allowed (field, BW_FILE_MARK);
  g_set_error (error, BW_FIELD_ERROR, BW_FIELD_ERROR_KIND, _ ("“%s” is not known; allowed: %s"),
               text, allowed);
  return FALSE;
}

static gboolean
inside (const BwField *field, double value)
{
  return value >= field->low && value <= field->high;
}

static gboolean
parse_quantity (const BwField *field, gpointer object, const char *text, char mark, GError **error)
{
  double value;
  if (!bw_quantity_parse (text, field->dimension, mark, &value, error))
    return FALSE;
  if (!inside (field, value))
    return fail_range (field, text, mark, error);
  MEMBER (double, field, object) = value;
  return TRUE;
}

static gboolean
parse_bands (const BwField *field, gpointer object, const char *text, char mark, GError **error)
{
  BwBands bands;
  if (!bw_quantity_parse_bands (text, field->dimension, mark, &bands, error))
    return FALSE;
  for (guint i = 0; i < bands.n; i++)
    if (!inside (field, bands.at[i].low) || !inside (field, bands.at[i].high))
      return fail_range (field, text, mark, error);
  if ((field->flags & BW_FIELD_ONE_BAND) && bands.n > 1)
    {
      g_set_error (error, BW_FIELD_ERROR, BW_FIELD_ERROR_VALUE,
                   _ ("“%s” is more than one range; one is allowed"), text);
      return FALSE;
    }
  MEMBER (BwBands, field, object) = bands;
  return TRUE;
}

/* Counts and half lines: a plain number, whole after multiplying by @scale. */
static gboolean
parse_whole (const BwField *field, gpointer object, const char *text, int scale, char mark,
             GError **error)
{
  g_autofree char *plain = g_strstrip (g_strdup (text));
  if (mark != '.')
    g_strdelimit (plain, (char[]){ mark, '\0' }, '.');
  char *end = NULL;
  double value = g_ascii_strtod (plain, &end) * scale;
  gboolean number = g_ascii_isdigit (*plain) && *end == '\0';
  if (!number || !inside (field, value) || floor (value) < value)
    return fail_range (field, text, mark, error);
  MEMBER (int, field, object) = (int) value;
  return TRUE;
}

static gboolean
parse_rate (const BwField *field, gpointer object, const char *text, GError **error)
{
  BwRatio rate;
  if (!bw_quantity_parse_ratio (text, field->dimension, &rate, error))
    return FALSE;
  if (!inside (field, bw_ratio_to_double (rate)))
    {
      g_autofree char *high = bw_quantity_format (field->high, field->dimension, 6, BW_FILE_MARK);
      g_autofree char *low = bw_quantity_format (field->low, field->dimension, 6, BW_FILE_MARK);
      g_set_error (error, BW_FIELD_ERROR, BW_FIELD_ERROR_RANGE,
                   _ ("“%s” is out of range; allowed: %s to %s"), text, low, high);
      return FALSE;
    }
  MEMBER (BwRatio, field, object) = rate;
  return TRUE;
}

static gboolean
parse_aspect (const BwField *field, gpointer object, const char *text, GError **error)
{
  g_auto (GStrv) parts = g_strsplit (text, ":", -1);
  guint64 width = 0, height = 0;
  BwRatio aspect;
  if (g_strv_length (parts) == 2
      && g_ascii_string_to_unsigned (g_strstrip (parts[0]), 10, 1, 1000, &width, NULL)
      && g_ascii_string_to_unsigned (g_strstrip (parts[1]), 10, 1, 1000, &height, NULL)
      && bw_ratio_make ((gint64) width, (gint64) height, &aspect))
    {
      MEMBER (BwRatio, field, object) = aspect;
      return TRUE;
    }
  g_set_error (error, BW_FIELD_ERROR, BW_FIELD_ERROR_VALUE,
               _ ("“%s” is not an aspect ratio; write width:height in whole numbers, such as “4:3”"),
               text);
  return FALSE;
}

static gboolean
parse_choice (const BwField *field, gpointer object, const char *text, GError **error)
{
  g_autofree char *id = g_strstrip (g_strdup (text));
  guint value;
  if (!bw_kind_find (field->kinds, id, &value))
    return fail_kind (field, id, error);
  MEMBER (guint, field, object) = value;
  return TRUE;
}

static gboolean
parse_set (const BwField *field, gpointer object, const char *text, GError **error)
{
  g_auto (GStrv) parts = g_strsplit (text, ";", -1);
  guint set = 0;
  for (char **part = parts; *part != NULL; part++)
    {
      guint value;
      if (*g_strstrip (*part) == '\0')
        continue;
      if (!bw_kind_find (field->kinds, *part, &value))
        return fail_kind (field, *part, error);
      set |= BW_BIT (value);
    }
  MEMBER (guint, field, object) = set;
  return TRUE;
}

static gboolean
parse_switch (const BwField *field, gpointer object, const char *text, GError **error)
{
  g_autofree char *word = g_strstrip (g_strdup (text));
  gboolean yes = strcmp (word, "yes") == 0;
  if (!yes && strcmp (word, "no") != 0)
    return fail_kind (field, word, error);
  MEMBER (gboolean, field, object) = yes;
  return TRUE;
}

static gboolean
parse_text (const BwField *field, gpointer object, const char *text, GError **error)
{
  for (const char *p = text; *p != '\0'; p++)
    if (g_ascii_iscntrl (*p))
      {
        g_set_error (error, BW_FIELD_ERROR, BW_FIELD_ERROR_VALUE,
                     _ ("the text has a control character; one line of plain text is allowed"));
        return FALSE;
      }
  char **member = &MEMBER (char *, field, object);
  g_free (*member);
  *member = g_strstrip (g_strdup (text));
  return TRUE;
}

static gboolean
parse_empty (const BwField *field, gpointer object, GError **error)
{
  if (field->flags & BW_FIELD_REQUIRED)
    {
      g_autofree char *allowed = bw_field_allowed (field, BW_FILE_MARK);
      g_set_error (error, BW_FIELD_ERROR, BW_FIELD_ERROR_MISSING, _ ("this is needed; allowed: %s"),
                   allowed);
      return FALSE;
    }
  switch (field->type)
    {
    case BW_FIELD_QUANTITY:
      MEMBER (double, field, object) = 0;
      break;
    case BW_FIELD_BANDS:
      MEMBER (BwBands, field, object) = (BwBands){ 0 };
      break;
    case BW_FIELD_RATE:
    case BW_FIELD_ASPECT:
      MEMBER (BwRatio, field, object) = BW_RATIO_NONE;
      break;
    case BW_FIELD_COUNT:
    case BW_FIELD_HALF_LINES:
    case BW_FIELD_CHOICE:
    case BW_FIELD_SET:
    case BW_FIELD_SWITCH:
      MEMBER (guint, field, object) = 0;
      break;
    case BW_FIELD_TEXT:
    default:
      return parse_text (field, object, "", error);
    }
  return TRUE;
}

/**
 * bw_field_parse:
 * @object: the struct that the table describes
 * @text: what was written or typed; empty sets the member to "not known"
 * @mark: the decimal mark
 *
 * Reads @text, checks it against what the field allows, and sets the member.
 *
 * Returns: %FALSE with @error in %BW_FIELD_ERROR or %BW_QUANTITY_ERROR, leaving the member alone
 */
gboolean
bw_field_parse (const BwField *field, gpointer object, const char *text, char mark, GError **error)
{
  if (text[strspn (text, " \t")] == '\0')
    return parse_empty (field, object, error);
  switch (field->type)
    {
    case BW_FIELD_QUANTITY:
      return parse_quantity (field, object, text, mark, error);
    case BW_FIELD_BANDS:
      return parse_bands (field, object, text, mark, error);
    case BW_FIELD_COUNT:
      return parse_whole (field, object, text, 1, mark, error);
    case BW_FIELD_HALF_LINES:
      return parse_whole (field, object, text, 2, mark, error);
    case BW_FIELD_RATE:
      return parse_rate (field, object, text, error);
    case BW_FIELD_ASPECT:
      return parse_aspect (field, object, text, error);
    case BW_FIELD_CHOICE:
      return parse_choice (field, object, text, error);
    case BW_FIELD_SET:
      return parse_set (field, object, text, error);
    case BW_FIELD_SWITCH:
      return parse_switch (field, object, text, error);
    case BW_FIELD_TEXT:
    default:
      return parse_text (field, object, text, error);
    }
}

/* Writing */

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
half_lines_to_text (int half_lines)
{
  return g_strdup_printf ("%d%s", half_lines / 2, half_lines % 2 != 0 ? ".5" : "");
}

static char *
measure_to_text (const BwField *field, gconstpointer object, gboolean file, char mark)
{
  if (field->type == BW_FIELD_BANDS)
    {
      const BwBands *bands = &CONST_MEMBER (BwBands, field, object);
      return file ? bw_quantity_bands_to_file (bands, field->dimension, field->unit)
                  : bw_quantity_bands_to_entry (bands, field->dimension, field->unit, mark);
    }
  double value = CONST_MEMBER (double, field, object);
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
      return g_strdup_printf ("%d", CONST_MEMBER (int, field, object));
    case BW_FIELD_HALF_LINES:
      return half_lines_to_text (CONST_MEMBER (int, field, object));
    case BW_FIELD_RATE:
      return bw_quantity_format_ratio (CONST_MEMBER (BwRatio, field, object), field->dimension);
    case BW_FIELD_ASPECT:
      {
        BwRatio aspect = CONST_MEMBER (BwRatio, field, object);
        return g_strdup_printf ("%" G_GINT64_FORMAT ":%" G_GINT64_FORMAT, aspect.num, aspect.den);
      }
    case BW_FIELD_CHOICE:
      return g_strdup (bw_kind_id (field->kinds, CONST_MEMBER (guint, field, object)));
    case BW_FIELD_SET:
      return set_to_text (field, CONST_MEMBER (guint, field, object));
    case BW_FIELD_SWITCH:
      return g_strdup (CONST_MEMBER (gboolean, field, object) ? "yes" : "no");
    case BW_FIELD_TEXT:
    default:
      return g_strdup (CONST_MEMBER (char *const, field, object));
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
  return to_text (field, object, TRUE, BW_FILE_MARK);
}

/**
 * bw_field_equal:
 *
 * Returns: whether the member is written alike in @a and @b
 */
gboolean
bw_field_equal (const BwField *field, gconstpointer a, gconstpointer b)
{
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
  return CONST_MEMBER (guint, field, object);
}

/**
 * bw_field_set_uint:
 *
 * Sets the member of a %BW_FIELD_CHOICE, %BW_FIELD_SET or %BW_FIELD_SWITCH field.
 */
void
bw_field_set_uint (const BwField *field, gpointer object, guint value)
{
  MEMBER (guint, field, object) = value;
}

/**
 * bw_field_get_string:
 *
 * Returns: (transfer none) (nullable): the member of a %BW_FIELD_TEXT field
 */
const char *
bw_field_get_string (const BwField *field, gconstpointer object)
{
  return CONST_MEMBER (char *const, field, object);
}

/* Whole structs */

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
      raw = field->type == BW_FIELD_TEXT ? g_key_file_get_string (keys, group, field->key, error)
                                         : g_key_file_get_value (keys, group, field->key, error);
      if (raw == NULL)
        return FALSE;
    }
  return bw_field_parse (field, object, raw != NULL ? raw : "", BW_FILE_MARK, error);
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
  for (guint i = 0; i < table->n; i++)
    {
      const BwField *field = &table->at[i];
      switch (field->type)
        {
        case BW_FIELD_TEXT:
          g_free (MEMBER (char *, field, to));
          MEMBER (char *, field, to) = g_strdup (CONST_MEMBER (char *const, field, from));
          break;
        case BW_FIELD_QUANTITY:
          MEMBER (double, field, to) = CONST_MEMBER (double, field, from);
          break;
        case BW_FIELD_BANDS:
          MEMBER (BwBands, field, to) = CONST_MEMBER (BwBands, field, from);
          break;
        case BW_FIELD_RATE:
        case BW_FIELD_ASPECT:
          MEMBER (BwRatio, field, to) = CONST_MEMBER (BwRatio, field, from);
          break;
        case BW_FIELD_COUNT:
        case BW_FIELD_HALF_LINES:
        case BW_FIELD_CHOICE:
        case BW_FIELD_SET:
        case BW_FIELD_SWITCH:
        default:
          MEMBER (guint, field, to) = CONST_MEMBER (guint, field, from);
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
      g_clear_pointer (&MEMBER (char *, &table->at[i], object), g_free);
}

/**
 * bw_fields_equal:
 *
 * Returns: whether every member of @table is written alike in @a and @b
 */
gboolean
bw_fields_equal (const BwFieldTable *table, gconstpointer a, gconstpointer b)
{
  for (guint i = 0; i < table->n; i++)
    if (!bw_field_equal (&table->at[i], a, b))
      return FALSE;
  return TRUE;
}
