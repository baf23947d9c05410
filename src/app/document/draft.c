/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draft.h"

#include <string.h>

#include <glib/gi18n-lib.h>

#include "core/base/keyfile.h"

/* A draft is a key file that holds the text of the sheet as one value:
 *
 *   [draft]
 *   format=1
 *   file=file:///home/…/sheet.bench   where it belongs; not there if it was never saved
 *   digest=…                          of what that file held
 *   blank=true                        no monitor is chosen yet
 *   sheet=…
 *   [typed 1]                         what was typed and not taken yet
 *   part=source
 *   index=0
 *   key=note
 *   text=…
 */
#define FORMAT 1
#define DRAFT_GROUP "draft"
#define TYPED_PREFIX "typed "

static const char *const part_ids[] = {
  [BW_PART_SHEET] = "sheet",
  [BW_PART_MONITOR] = "monitor",
  [BW_PART_INPUT] = "input",
  [BW_PART_SOURCE] = "source",
};

static char *
sheet_text (BwDocument *document)
{
  g_autoptr (BwSheet) sheet = bw_sheet_copy (bw_document_get_sheet (document));
  if (bw_document_is_blank (document))
    {
      /* A text must have a monitor, which a blank sheet has not: any one stands in for it. */
      bw_monitor_free (sheet->monitor);
      sheet->monitor
          = bw_monitor_copy (bw_catalogue_monitors (bw_document_get_catalogue (document))->pdata[0]);
    }
  return bw_sheet_to_text (sheet, bw_document_get_catalogue (document));
}

static void
save_typed (GKeyFile *keys, const GPtrArray *list)
{
  for (guint i = 0; i < list->len; i++)
    {
      const BwTyped *typed = list->pdata[i];
      g_autofree char *group = g_strdup_printf (TYPED_PREFIX "%u", i + 1);
      g_key_file_set_string (keys, group, "part", part_ids[typed->part]);
      g_key_file_set_uint64 (keys, group, "index", typed->index);
      g_key_file_set_string (keys, group, "key", typed->field->key);
      g_key_file_set_string (keys, group, "text", typed->text);
    }
}

/**
 * bw_draft_to_text:
 *
 * Returns: (transfer full): the sheet with all that is typed for it, as bw_draft_parse() reads it
 */
char *
bw_draft_to_text (BwDocument *document)
{
  g_return_val_if_fail (BW_IS_DOCUMENT (document), NULL);
  g_autoptr (GKeyFile) keys = g_key_file_new ();
  g_autoptr (GPtrArray) typed = bw_document_list_typed (document);
  g_autofree char *text = sheet_text (document);
  GFile *file = bw_document_get_file (document);
  const char *digest = bw_document_get_digest (document);

  g_key_file_set_integer (keys, DRAFT_GROUP, "format", FORMAT);
  if (file != NULL)
    {
      g_autofree char *uri = g_file_get_uri (file);
      g_key_file_set_string (keys, DRAFT_GROUP, "file", uri);
    }
  if (digest != NULL)
    g_key_file_set_string (keys, DRAFT_GROUP, "digest", digest);
  if (bw_document_is_blank (document))
    g_key_file_set_boolean (keys, DRAFT_GROUP, "blank", TRUE);
  g_key_file_set_string (keys, DRAFT_GROUP, "sheet", text);
  save_typed (keys, typed);
  return g_key_file_to_data (keys, NULL, NULL);
}

/* NULL if the group is not one of this version: a typed text is not worth the whole draft. */
static BwTyped *
load_typed (GKeyFile *keys, const char *group)
{
  g_autofree char *part_id = g_key_file_get_string (keys, group, "part", NULL);
  g_autofree char *key = g_key_file_get_string (keys, group, "key", NULL);
  g_autofree char *text = g_key_file_get_string (keys, group, "text", NULL);
  guint64 index = g_key_file_get_uint64 (keys, group, "index", NULL);

  if (part_id == NULL || key == NULL || text == NULL || index > G_MAXUINT)
    return NULL;
  for (guint part = 0; part < G_N_ELEMENTS (part_ids); part++)
    if (strcmp (part_ids[part], part_id) == 0)
      {
        const BwField *field = bw_field_find (bw_part_fields ((BwPart) part), key);
        return field != NULL ? bw_typed_new ((BwPart) part, (guint) index, field, text) : NULL;
      }
  return NULL;
}

static GPtrArray *
load_all_typed (GKeyFile *keys)
{
  GPtrArray *list = g_ptr_array_new_with_free_func ((GDestroyNotify) bw_typed_free);
  g_auto (GStrv) groups = g_key_file_get_groups (keys, NULL);

  for (char **group = groups; *group != NULL; group++)
    {
      BwTyped *typed = g_str_has_prefix (*group, TYPED_PREFIX) ? load_typed (keys, *group) : NULL;
      if (typed != NULL)
        g_ptr_array_add (list, typed);
    }
  return list;
}

static GKeyFile *
load_keys (const char *text, const char *name, GError **error)
{
  g_autoptr (GKeyFile) keys = g_key_file_new ();
  g_autoptr (GError) trouble = NULL;

  if (!g_key_file_load_from_data (keys, text, strlen (text), G_KEY_FILE_NONE, &trouble))
    g_set_error (error, BW_KEYFILE_ERROR, BW_KEYFILE_ERROR_SYNTAX, "%s: %s", name,
                 trouble->message);
  else if (g_key_file_get_integer (keys, DRAFT_GROUP, "format", NULL) != FORMAT)
    g_set_error (error, BW_KEYFILE_ERROR, BW_KEYFILE_ERROR_VALUE,
                 _ ("%1$s: [%2$s] format: this is no draft that this version can read"), name,
                 DRAFT_GROUP);
  else
    return g_steal_pointer (&keys);
  return NULL;
}

/* The file that the draft belongs to; NULL if it has none. */
static gboolean
load_file (GKeyFile *keys, const char *name, GFile **file, GError **error)
{
  g_autofree char *uri = g_key_file_get_string (keys, DRAFT_GROUP, "file", NULL);

  *file = uri != NULL ? g_file_new_for_uri (uri) : NULL;
  if (*file == NULL || g_file_peek_path (*file) != NULL)
    return TRUE;
  g_clear_object (file);
  g_set_error (error, BW_KEYFILE_ERROR, BW_KEYFILE_ERROR_VALUE,
               _ ("%1$s: [%2$s] file: “%3$s” is not a file of this computer"), name, DRAFT_GROUP,
               uri);
  return FALSE;
}

static BwSheet *
load_sheet (GKeyFile *keys, const char *name, const BwCatalogue *catalogue, GPtrArray *faults)
{
  g_autofree char *text = g_key_file_get_string (keys, DRAFT_GROUP, "sheet", NULL);
  const char *there = text != NULL ? text : "";
  BwSheet *sheet = bw_sheet_parse (there, strlen (there), name, catalogue, faults);

  if (sheet != NULL && g_key_file_get_boolean (keys, DRAFT_GROUP, "blank", NULL))
    {
      bw_monitor_free (sheet->monitor);
      sheet->monitor = bw_monitor_new ();
    }
  return sheet;
}

/**
 * bw_draft_parse:
 * @name: what to call it in faults
 * @faults: (element-type GError): receives every fault
 *
 * Returns: (transfer full) (nullable): the draft, or %NULL if there was any fault
 */
BwDraft *
bw_draft_parse (const char *text, const char *name, const BwCatalogue *catalogue, GPtrArray *faults)
{
  g_return_val_if_fail (text != NULL && name != NULL && faults != NULL, NULL);
  GError *error = NULL;
  g_autoptr (GKeyFile) keys = load_keys (text, name, &error);
  g_autoptr (GFile) file = NULL;

  if (keys == NULL || !load_file (keys, name, &file, &error))
    {
      g_ptr_array_add (faults, error);
      return NULL;
    }
  BwSheet *sheet = load_sheet (keys, name, catalogue, faults);
  if (sheet == NULL)
    return NULL;
  BwDraft *draft = g_new0 (BwDraft, 1);
  draft->file = g_steal_pointer (&file);
  draft->digest = g_key_file_get_string (keys, DRAFT_GROUP, "digest", NULL);
  draft->sheet = sheet;
  draft->typed = load_all_typed (keys);
  return draft;
}

/**
 * bw_draft_free:
 * @draft: (nullable) (transfer full): freed with all it owns
 */
void
bw_draft_free (BwDraft *draft)
{
  if (draft == NULL)
    return;
  g_clear_object (&draft->file);
  g_free (draft->digest);
  bw_sheet_free (draft->sheet);
  g_ptr_array_unref (draft->typed);
  g_free (draft);
}
