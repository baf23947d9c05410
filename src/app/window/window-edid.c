/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window-private.h"

#include <string.h>

#include <glib/gi18n-lib.h>

#include "core/base/file.h"
#include "core/base/keyfile.h"
#include "core/interchange/displays.h"

/* EDIDs of displays, opened as bench sheets are. */

/* Shows what is not as it should be although all went well, where faults are shown. */
void
bw_window_show_notes (BwWindow *self, const char *title, const GPtrArray *notes)
{
  g_autoptr (GPtrArray) faults = g_ptr_array_new_with_free_func ((GDestroyNotify) g_error_free);
  for (guint i = 0; i < notes->len; i++)
    g_ptr_array_add (faults, g_error_new_literal (BW_KEYFILE_ERROR, BW_KEYFILE_ERROR_VALUE,
                                                  notes->pdata[i]));
  if (faults->len > 0)
    bw_window_show_faults (self, title, faults);
}

/* Fills the document with the monitor of @edid, as a sheet that is not saved yet. */
static gboolean
fill (BwWindow *self, const BwEdid *edid, GError **error)
{
  const BwCatalogue *catalogue = bw_document_get_catalogue (self->document);
  g_autoptr (GPtrArray) notes = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (BwSheet) sheet = bw_edid_to_sheet (edid, catalogue, notes, error);

  if (sheet == NULL)
    return FALSE;
  char *text = bw_sheet_to_text (sheet, catalogue);
  g_autoptr (GBytes) bytes = g_bytes_new_take (text, strlen (text));
  if (bw_window_open_bytes (self, bytes, sheet->title))
    bw_window_show_notes (self, _ ("The monitor is filled in from its EDID, but for this:"), notes);
  return TRUE;
}

/**
 * bw_window_open_edid:
 * @opened: (out): whether it was read, if it is an EDID
 *
 * Reads @file if it is the EDID of a display, and makes a sheet of it that has no file yet. What is
 * wrong, and what it does not say, is shown in the window.
 *
 * Returns: whether @file is an EDID at all
 */
gboolean
bw_window_open_edid (BwWindow *self, GFile *file, gboolean *opened)
{
  g_autofree char *path = g_file_get_path (file);
  g_autofree char *bytes = NULL;
  g_autoptr (GError) error = NULL;
  gsize length;

  if (path == NULL || !bw_file_read (path, BW_EDID_MAX_BYTES, &bytes, &length, NULL)
      || !bw_edid_is (bytes, length))
    return FALSE;
  g_autoptr (BwEdid) edid = bw_edid_parse ((const guint8 *) bytes, length, &error);
  *opened = edid != NULL && fill (self, edid, &error);
  if (error != NULL)
    bw_window_show_error (self, _ ("No monitor was made of this EDID."), error);
  return TRUE;
}
