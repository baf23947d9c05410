/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "document-private.h"

#include <glib/gi18n-lib.h>

static GError *
not_local (GFile *file)
{
  g_autofree char *uri = g_file_get_uri (file);
  return g_error_new (BW_DOCUMENT_ERROR, BW_DOCUMENT_ERROR_NOT_LOCAL,
                      _ ("%s: is not a file of this computer; copy it here first"), uri);
}

static void
take_over (BwDocument *self, BwSheet *sheet, GFile *file)
{
  bw_document_start (self, sheet);
  g_set_object (&self->file, file);
  bw_document_emit_changed (self);
  bw_document_emit_selection (self);
  bw_document_emit_saved (self);
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
  g_autofree char *path = g_file_get_path (file);
  if (path == NULL)
    {
      g_ptr_array_add (faults, not_local (file));
      return FALSE;
    }
  BwSheet *sheet = bw_sheet_load (path, self->catalogue, faults);
  if (sheet == NULL)
    return FALSE;
  take_over (self, sheet, file);
  return TRUE;
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
  BwSheet *sheet = bw_sheet_parse (text, length, name, self->catalogue, faults);
  if (sheet == NULL)
    return FALSE;
  take_over (self, sheet, NULL);
  return TRUE;
}

/**
 * bw_document_save:
 * @file: where to
 *
 * Writes the sheet, whole or not at all, and makes @file the document's own.
 *
 * Returns: %FALSE with @error; the file and the document are then as they were
 */
gboolean
bw_document_save (BwDocument *self, GFile *file, GError **error)
{
  g_autofree char *path = g_file_get_path (file);
  if (path == NULL)
    {
      g_propagate_error (error, not_local (file));
      return FALSE;
    }
  if (!bw_sheet_save (self->now.sheet, path, self->catalogue, error))
    return FALSE;
  g_set_object (&self->file, file);
  self->saved_serial = self->now.serial;
  bw_document_emit_saved (self);
  return TRUE;
}
