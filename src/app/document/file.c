/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "document-private.h"

#include <string.h>

#include <glib/gi18n-lib.h>

#include "core/base/keyfile.h"
#include "differences.h"

/* Whoever writes a file may do it in several steps. */
#define FILE_CHECK_MS 300

static GError *
not_local (GFile *file)
{
  g_autofree char *uri = g_file_get_uri (file);
  return g_error_new (BW_DOCUMENT_ERROR, BW_DOCUMENT_ERROR_NOT_LOCAL,
                      _ ("%s: is not a file of this computer; copy it here first"), uri);
}

/* The guard of the file */

static void
set_file_state (BwDocument *self, BwFileState state)
{
  if (state == self->file_state)
    return;
  gboolean modified = bw_document_is_modified (self);
  self->file_state = state;
  bw_document_emit_file_changed (self);
  if (bw_document_is_modified (self) != modified)
    bw_document_emit_saved (self);
}

static gboolean
on_time_to_check (gpointer data)
{
  BwDocument *self = BW_DOCUMENT (data);
  self->file_check = 0;
  bw_document_check_file (self);
  return G_SOURCE_REMOVE;
}

static void
on_file_touched (BwDocument *self)
{
  if (self->file_check == 0)
    self->file_check = g_timeout_add (FILE_CHECK_MS, on_time_to_check, self);
}

/* Forgets the file. */
void
bw_document_drop_file (BwDocument *self)
{
  g_clear_handle_id (&self->file_check, g_source_remove);
  g_clear_object (&self->guard);
  g_clear_object (&self->file);
  self->file_state = BW_FILE_SAME;
}

/* Makes @file, which holds @text, the document's own; NULL: it has none. */
void
bw_document_set_file (BwDocument *self, GFile *file, const char *text)
{
  g_autoptr (GFile) kept = file != NULL ? g_object_ref (file) : NULL;
  gboolean was_changed = self->file_state != BW_FILE_SAME;

  bw_document_drop_file (self);
  if (kept != NULL)
    {
      self->file = g_steal_pointer (&kept);
      self->guard = bw_file_guard_new (self->file, text);
      g_signal_connect_object (self->guard, "touched", G_CALLBACK (on_file_touched), self,
                               G_CONNECT_SWAPPED);
    }
  if (was_changed)
    bw_document_emit_file_changed (self);
}

/**
 * bw_document_check_file:
 *
 * Looks whether somebody else has changed or deleted the document's file. Tells "file-changed" if it
 * has, or no longer has.
 *
 * Returns: how the file is
 */
BwFileState
bw_document_check_file (BwDocument *self)
{
  g_return_val_if_fail (BW_IS_DOCUMENT (self), BW_FILE_SAME);
  if (self->guard != NULL)
    set_file_state (self, bw_file_guard_check (self->guard));
  return self->file_state;
}

/**
 * bw_document_get_file_state:
 *
 * Returns: how the file was when it was last looked at
 */
BwFileState
bw_document_get_file_state (BwDocument *self)
{
  g_return_val_if_fail (BW_IS_DOCUMENT (self), BW_FILE_SAME);
  return self->file_state;
}

/**
 * bw_document_get_digest:
 *
 * Returns: (transfer none) (nullable): the digest of what was read from the file or written to it
 * last
 */
const char *
bw_document_get_digest (BwDocument *self)
{
  g_return_val_if_fail (BW_IS_DOCUMENT (self), NULL);
  return self->guard != NULL ? bw_file_guard_get_digest (self->guard) : NULL;
}

/**
 * bw_document_keep_mine:
 *
 * Agrees that the next save writes over what somebody else has made of the file. Until then the
 * sheet counts as changed.
 */
void
bw_document_keep_mine (BwDocument *self)
{
  g_return_if_fail (BW_IS_DOCUMENT (self) && self->guard != NULL);
  bw_file_guard_accept (self->guard);
  self->saved_serial = 0;
  set_file_state (self, BW_FILE_SAME);
  bw_document_emit_saved (self);
}

/* Reading */

static void
take_over (BwDocument *self, BwSheet *sheet, GFile *file, const char *text)
{
  bw_document_start (self, sheet);
  bw_document_set_file (self, file, text);
  bw_document_emit_changed (self);
  bw_document_emit_selection (self);
  bw_document_emit_saved (self);
}

/* Reads the sheet in @file, and its text; NULL with @faults if there was any fault. */
static BwSheet *
read_sheet (BwDocument *self, GFile *file, char **text, GPtrArray *faults)
{
  g_autofree char *path = g_file_get_path (file);
  GError *error = NULL;
  gsize length;

  if (path == NULL)
    {
      g_ptr_array_add (faults, not_local (file));
      return NULL;
    }
  if (bw_keyfile_read (path, text, &length, &error))
    return bw_sheet_parse (*text, length, path, self->catalogue, faults);
  g_ptr_array_add (faults, error);
  return NULL;
}

/* Takes what is typed; if it is refused, that is a fault. */
static gboolean
take_typed (BwDocument *self, GPtrArray *faults)
{
  GError *error = NULL;
  if (bw_document_take_or_fail (self, &error))
    return TRUE;
  g_ptr_array_add (faults, error);
  return FALSE;
}

/**
 * bw_document_load:
 * @faults: (element-type GError): receives every fault of the file
 *
 * Reads a bench sheet in place of the present one. The file is not changed.
 *
 * Returns: %FALSE if there was any fault; the document is then as it was
 */
gboolean
bw_document_load (BwDocument *self, GFile *file, GPtrArray *faults)
{
  g_return_val_if_fail (BW_IS_DOCUMENT (self) && G_IS_FILE (file) && faults != NULL, FALSE);
  g_autofree char *text = NULL;
  BwSheet *sheet = take_typed (self, faults) ? read_sheet (self, file, &text, faults) : NULL;

  if (sheet == NULL)
    return FALSE;
  take_over (self, sheet, file, text);
  return TRUE;
}

/**
 * bw_document_reload:
 * @faults: (element-type GError): receives every fault of the file
 *
 * Reads the document's file again, as somebody else has made it, in one step that can be undone.
 *
 * Returns: %FALSE if there was any fault; the document is then as it was
 */
gboolean
bw_document_reload (BwDocument *self, GPtrArray *faults)
{
  g_return_val_if_fail (BW_IS_DOCUMENT (self) && self->file != NULL && faults != NULL, FALSE);
  g_autofree char *text = NULL;
  BwSheet *sheet = take_typed (self, faults) ? read_sheet (self, self->file, &text, faults) : NULL;

  if (sheet == NULL)
    return FALSE;
  bw_document_commit (self, sheet, self->now.source, self->now.input,
                      g_strdup (_ ("loading of the changed file")));
  self->saved_serial = self->now.serial;
  bw_document_set_file (self, self->file, text);
  bw_document_emit_saved (self);
  return TRUE;
}

/**
 * bw_document_list_theirs:
 *
 * Returns: (transfer full) (element-type utf8): in what the file as it is now differs from the sheet,
 * in words; empty if it cannot be read
 */
GPtrArray *
bw_document_list_theirs (BwDocument *self)
{
  g_return_val_if_fail (BW_IS_DOCUMENT (self), NULL);
  g_autoptr (GPtrArray) faults = g_ptr_array_new_with_free_func ((GDestroyNotify) g_error_free);
  g_autofree char *their_text = NULL;
  g_autofree char *my_text = bw_sheet_to_text (self->now.sheet, self->catalogue);
  g_autoptr (BwSheet) theirs = self->file != NULL
                                   ? read_sheet (self, self->file, &their_text, faults)
                                   : NULL;
  g_autoptr (BwSheet) mine = bw_sheet_parse (my_text, strlen (my_text), "", self->catalogue,
                                             faults);
  if (theirs == NULL || mine == NULL)
    return g_ptr_array_new_with_free_func (g_free);
  return bw_sheet_differences (mine, theirs, self->catalogue);
}

/**
 * bw_document_load_bytes:
 * @bytes: a bench sheet
 * @name: what to call it in faults
 * @faults: (element-type GError): receives every fault
 *
 * Reads a bench sheet that has no file of its own, so that the first save asks for a name.
 *
 * Returns: %FALSE if there was any fault; the document is then as it was
 */
gboolean
bw_document_load_bytes (BwDocument *self, GBytes *bytes, const char *name, GPtrArray *faults)
{
  gsize length;
  const char *text = g_bytes_get_data (bytes, &length);
  BwSheet *sheet = take_typed (self, faults)
                       ? bw_sheet_parse (text, length, name, self->catalogue, faults)
                       : NULL;
  if (sheet == NULL)
    return FALSE;
  take_over (self, sheet, NULL, NULL);
  return TRUE;
}

/**
 * bw_document_restore:
 * @sheet: copied: a draft of the sheet
 * @file: (nullable): the file that it belongs to, unless the document has it already
 *
 * Makes the draft the sheet, in one step that can be undone. The sheet then differs from its file.
 *
 * Returns: %FALSE if what is typed is refused; the document is then as it was
 */
gboolean
bw_document_restore (BwDocument *self, const BwSheet *sheet, GFile *file)
{
  g_return_val_if_fail (BW_IS_DOCUMENT (self) && sheet != NULL, FALSE);
  if (!bw_document_take_typed (self))
    return FALSE;
  if (file != NULL && self->file == NULL)
    {
      bw_document_set_file (self, file, ""); /* what the file holds is not what is here */
      bw_document_check_file (self);
    }
  bw_document_commit (self, bw_sheet_copy (sheet), self->now.source, self->now.input,
                      g_strdup (_ ("restoring of the draft")));
  return TRUE;
}

/* Writing */

static gboolean
check_before_saving (BwDocument *self, GFile *file, GError **error)
{
  if (self->file == NULL || !bw_file_is_same (self->file, file)
      || bw_document_check_file (self) == BW_FILE_SAME)
    return TRUE;
  g_autofree char *name = g_file_get_parse_name (file);
  g_set_error (error, BW_DOCUMENT_ERROR, BW_DOCUMENT_ERROR_CHANGED,
               self->file_state == BW_FILE_GONE
                   ? _ ("%s: was moved or deleted since it was opened or saved here")
                   : _ ("%s: was changed by another program since it was opened or saved here"),
               name);
  return FALSE;
}

/**
 * bw_document_save:
 * @file: where to
 *
 * Takes what is typed, writes the sheet, whole or not at all, and makes @file the document's own. A
 * file of the document that somebody else has changed is not written over: see
 * bw_document_keep_mine().
 *
 * Returns: %FALSE with @error; the file and the document are then as they were
 */
gboolean
bw_document_save (BwDocument *self, GFile *file, GError **error)
{
  g_return_val_if_fail (BW_IS_DOCUMENT (self) && G_IS_FILE (file), FALSE);
  g_autofree char *path = g_file_get_path (file);

  if (path == NULL)
    {
      g_propagate_error (error, not_local (file));
      return FALSE;
    }
  if (!bw_document_take_or_fail (self, error) || !check_before_saving (self, file, error))
    return FALSE;
  g_autofree char *text = bw_sheet_to_text (self->now.sheet, self->catalogue);
  if (!bw_sheet_save (self->now.sheet, path, self->catalogue, error))
    return FALSE;
  self->saved_serial = self->now.serial;
  bw_document_set_file (self, file, text);
  bw_document_emit_saved (self);
  return TRUE;
}
