/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "document-private.h"

#include <string.h>

#include <glib/gi18n-lib.h>

static GPtrArray *
part_list (const BwSheet *sheet, BwPart part)
{
  g_return_val_if_fail (part == BW_PART_INPUT || part == BW_PART_SOURCE, NULL);
  return part == BW_PART_INPUT ? sheet->monitor->inputs : sheet->sources;
}

static gpointer
part_object (const BwSheet *sheet, BwPart part, guint index)
{
  switch (part)
    {
    case BW_PART_MONITOR:
      return sheet->monitor;
    case BW_PART_INPUT:
    case BW_PART_SOURCE:
      {
        GPtrArray *list = part_list (sheet, part);
        return index < list->len ? list->pdata[index] : NULL;
      }
    case BW_PART_SHEET:
    default:
      return (gpointer) sheet;
    }
}

static const char *
part_name (const BwSheet *sheet, BwPart part, guint index)
{
  switch (part)
    {
    case BW_PART_MONITOR:
      return sheet->monitor->name;
    case BW_PART_INPUT:
      return bw_monitor_input (sheet->monitor, index)->name;
    case BW_PART_SOURCE:
      return bw_sheet_source (sheet, index)->name;
    case BW_PART_SHEET:
    default:
      return sheet->title;
    }
}

/**
 * bw_document_count:
 * @part: %BW_PART_INPUT or %BW_PART_SOURCE
 *
 * Returns: how many of them the sheet has
 */
guint
bw_document_count (BwDocument *self, BwPart part)
{
  return part_list (self->now.sheet, part)->len;
}

/**
 * bw_document_get_object:
 * @index: of an input or a source; else without meaning
 *
 * Returns: (transfer none) (nullable): the struct that bw_part_fields() of @part describes; valid
 * until the next "changed"
 */
gconstpointer
bw_document_get_object (BwDocument *self, BwPart part, guint index)
{
  return part_object (self->now.sheet, part, index);
}

static gboolean
check_raster (BwDocument *self, const BwSheet *sheet, const BwSource *source, GError **error)
{
  if (*source->raster == '\0' || bw_sheet_raster (sheet, self->catalogue, source) != NULL)
    return TRUE;
  g_set_error (error, BW_DOCUMENT_ERROR, BW_DOCUMENT_ERROR_RASTER,
               _ ("“%s” is neither in the sheet nor in the catalogue"), source->raster);
  return FALSE;
}

static gboolean
check_part (BwDocument *self, const BwSheet *sheet, BwPart part, guint index, GError **error)
{
  gpointer object = part_object (sheet, part, index);
  if (part == BW_PART_INPUT)
    return bw_input_check (object, error);
  if (part == BW_PART_SOURCE)
    return bw_source_check (object, error) && check_raster (self, sheet, object, error);
  return TRUE;
}

/* Takes the first sentence of several edits for the words. */
static char *
edit_words (const BwSheet *before, BwPart part, guint index, const BwField *field)
{
  if (strcmp (field->key, "name") == 0 || part == BW_PART_SHEET)
    return g_strdup_printf (_ ("change of “%s”"), bw_field_label (field));
  return g_strdup_printf (_ ("change of “%1$s” of %2$s"), bw_field_label (field),
                          part_name (before, part, index));
}

/* A figure that is entered anew is not the class's any more, and one that is taken away comes from
 * nowhere; one that is only mended stays from where it was. */
static void
settle_origin (const BwFieldTable *table, const BwField *field, gconstpointer before,
               gpointer after)
{
  if (table->origins == 0 || bw_field_equal (field, before, after))
    return;
  if (!bw_field_is_set (field, after) || bw_field_origin (table, field, before) == BW_ORIGIN_CLASS)
    bw_field_set_origin (table, field, after, BW_ORIGIN_NOT_SAID);
}

/**
 * bw_document_edit:
 * @part: what to edit
 * @index: which input or source
 * @edits: changes that are made together
 * @mark: the decimal mark of the texts
 *
 * Reads all texts into a copy and checks it. If it is sound it becomes the sheet, in one step that
 * can be undone. Texts that change nothing make no step.
 *
 * Returns: %FALSE with @error, naming what is allowed, if anything is unsound; the sheet is then as
 * it was
 */
gboolean
bw_document_edit (BwDocument *self, BwPart part, guint index, const BwEdit *edits, guint n_edits,
                  char mark, GError **error)
{
  gpointer before = part_object (self->now.sheet, part, index);
  g_return_val_if_fail (before != NULL, FALSE);
  g_autoptr (BwSheet) next = bw_sheet_copy (self->now.sheet);
  gpointer after = part_object (next, part, index);

  for (guint i = 0; i < n_edits; i++)
    {
      if (!bw_field_parse (edits[i].field, after, edits[i].text, mark, error))
        return FALSE;
      settle_origin (bw_part_fields (part), edits[i].field, before, after);
    }
  if (!check_part (self, next, part, index, error))
    return FALSE;
  if (bw_fields_equal (bw_part_fields (part), before, after))
    return TRUE;
  bw_document_commit (self, g_steal_pointer (&next), self->now.source, self->now.input,
                      edit_words (self->now.sheet, part, index, edits[0].field));
  return TRUE;
}

/**
 * bw_document_set_field:
 *
 * bw_document_edit() for one field.
 */
gboolean
bw_document_set_field (BwDocument *self, BwPart part, guint index, const BwField *field,
                       const char *text, char mark, GError **error)
{
  BwEdit edit = { field, text };
  return bw_document_edit (self, part, index, &edit, 1, mark, error);
}

/**
 * bw_document_set_origin:
 * @field: a figure of @part that is known
 *
 * Says where the figure comes from, in one step that can be undone.
 *
 * Returns: %FALSE with @error if what is typed is refused; the sheet is then as it was
 */
gboolean
bw_document_set_origin (BwDocument *self, BwPart part, guint index, const BwField *field,
                        BwOrigin origin, GError **error)
{
  g_return_val_if_fail (part_object (self->now.sheet, part, index) != NULL, FALSE);
  const BwFieldTable *table = bw_part_fields (part);
  if (!bw_document_take_or_fail (self, error))
    return FALSE;
  gpointer before = part_object (self->now.sheet, part, index);
  if (bw_field_origin (table, field, before) == origin || !bw_field_is_set (field, before))
    return TRUE;
  BwSheet *next = bw_sheet_copy (self->now.sheet);
  bw_field_set_origin (table, field, part_object (next, part, index), origin);
  bw_document_commit (self, next, self->now.source, self->now.input,
                      g_strdup_printf (_ ("change of where “%1$s” of %2$s comes from"),
                                       bw_field_label (field),
                                       part_name (self->now.sheet, part, index)));
  return TRUE;
}

/**
 * bw_document_set_monitor:
 * @monitor: copied, with its inputs
 *
 * Puts another monitor on the bench.
 *
 * Returns: %FALSE if what is typed is refused; the sheet is then as it was
 */
gboolean
bw_document_set_monitor (BwDocument *self, const BwMonitor *monitor)
{
  if (!bw_document_take_typed (self))
    return FALSE;
  BwSheet *next = bw_sheet_copy (self->now.sheet);
  bw_monitor_free (next->monitor);
  next->monitor = bw_monitor_copy (monitor);
  g_clear_pointer (&next->monitor->id, g_free);
  bw_document_commit (self, next, self->now.source, 0,
                      g_strdup_printf (_ ("choice of %s"), monitor->name));
  return TRUE;
}

/* Adding, duplicating and removing */

static gboolean
name_is_taken (const BwSheet *sheet, BwPart part, const char *name)
{
  for (guint i = 0; i < part_list (sheet, part)->len; i++)
    if (strcmp (part_name (sheet, part, i), name) == 0)
      return TRUE;
  return FALSE;
}

/* @wanted, or @wanted with the first free number from 2. */
static char *
free_name (const BwSheet *sheet, BwPart part, const char *wanted)
{
  char *name = g_strdup (wanted);
  for (guint i = 2; name_is_taken (sheet, part, name); i++)
    {
      g_free (name);
      name = g_strdup_printf ("%s (%u)", wanted, i);
    }
  return name;
}

static gboolean
has_room (BwDocument *self, BwPart part, GError **error)
{
  guint most = part == BW_PART_INPUT ? BW_SHEET_MAX_INPUTS : BW_SHEET_MAX_SOURCES;
  if (part_list (self->now.sheet, part)->len < most)
    return TRUE;
  g_set_error (error, BW_DOCUMENT_ERROR, BW_DOCUMENT_ERROR_TOO_MANY,
               _ ("a bench sheet holds no more than %u of these"), most);
  return FALSE;
}

static void
take_name (char **name, const BwSheet *sheet, BwPart part)
{
  char *wanted = *name;
  *name = free_name (sheet, part, wanted);
  g_free (wanted);
}

/* A copy of @like that can stand in @sheet: a name of its own, no place in the file yet. */
static gpointer
copy_for (const BwSheet *sheet, BwPart part, gconstpointer like)
{
  if (part == BW_PART_INPUT)
    {
      BwInput *input = bw_input_copy (like);
      g_clear_pointer (&input->group, g_free);
      take_name (&input->name, sheet, part);
      return input;
    }
  BwSource *source = bw_source_copy (like);
  g_clear_pointer (&source->group, g_free);
  g_clear_pointer (&source->id, g_free);
  take_name (&source->name, sheet, part);
  return source;
}

/* Inserts a copy of @like at @index and selects it. */
static void
insert (BwDocument *self, BwPart part, guint index, gconstpointer like, const char *words)
{
  BwSheet *next = bw_sheet_copy (self->now.sheet);
  gboolean is_input = part == BW_PART_INPUT;

  g_ptr_array_insert (part_list (next, part), (gint) index, copy_for (next, part, like));
  bw_document_commit (self, next, is_input ? self->now.source : index,
                      is_input ? index : self->now.input,
                      g_strdup_printf ("%s %s", words, part_name (next, part, index)));
}

/**
 * bw_document_add_input:
 * @like: copied
 *
 * Adds an input at the end and selects it. If its name is taken it gets a number.
 *
 * Returns: %FALSE with @error if the sheet is full, @like is unsound or what is typed is refused
 */
gboolean
bw_document_add_input (BwDocument *self, const BwInput *like, GError **error)
{
  if (!bw_document_take_or_fail (self, error) || !has_room (self, BW_PART_INPUT, error)
      || !bw_input_check (like, error))
    return FALSE;
  insert (self, BW_PART_INPUT, self->now.sheet->monitor->inputs->len, like, _ ("addition of"));
  return TRUE;
}

/**
 * bw_document_add_source:
 * @like: copied
 *
 * Adds a source at the end and selects it. If its name is taken it gets a number.
 *
 * Returns: %FALSE with @error if the sheet is full, @like is unsound or what is typed is refused
 */
gboolean
bw_document_add_source (BwDocument *self, const BwSource *like, GError **error)
{
  if (!bw_document_take_or_fail (self, error) || !has_room (self, BW_PART_SOURCE, error)
      || !bw_source_check (like, error)
      || !check_raster (self, self->now.sheet, like, error))
    return FALSE;
  insert (self, BW_PART_SOURCE, self->now.sheet->sources->len, like, _ ("addition of"));
  return TRUE;
}

/**
 * bw_document_duplicate:
 * @part: %BW_PART_INPUT or %BW_PART_SOURCE
 *
 * Puts a copy after the one at @index and selects it.
 *
 * Returns: %FALSE with @error if the sheet is full or what is typed is refused
 */
gboolean
bw_document_duplicate (BwDocument *self, BwPart part, guint index, GError **error)
{
  g_return_val_if_fail (part_object (self->now.sheet, part, index) != NULL, FALSE);
  if (!bw_document_take_or_fail (self, error) || !has_room (self, part, error))
    return FALSE;
  gconstpointer like = part_object (self->now.sheet, part, index);
  insert (self, part, index + 1, like, _ ("copy to"));
  return TRUE;
}

/**
 * bw_document_remove:
 * @part: %BW_PART_INPUT or %BW_PART_SOURCE
 *
 * Takes the one at @index off the sheet.
 *
 * Returns: %FALSE if what is typed is refused; the sheet is then as it was
 */
gboolean
bw_document_remove (BwDocument *self, BwPart part, guint index)
{
  g_return_val_if_fail (part_object (self->now.sheet, part, index) != NULL, FALSE);
  if (!bw_document_take_typed (self))
    return FALSE;
  BwSheet *next = bw_sheet_copy (self->now.sheet);
  char *words = g_strdup_printf (_ ("removal of %s"), part_name (self->now.sheet, part, index));
  guint source = self->now.source, input = self->now.input;
  guint *selected = part == BW_PART_INPUT ? &input : &source;
  if (index < *selected)
    (*selected)--;
  g_ptr_array_remove_index (part_list (next, part), index);
  bw_document_commit (self, next, source, input, words);
  return TRUE;
}
