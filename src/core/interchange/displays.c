/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "displays.h"

#include <string.h>

#include <glib/gi18n-lib.h>

#include "core/base/file.h"
#include "interchange-private.h"

static void
display_free (gpointer data)
{
  BwDisplay *display = data;
  g_free (display->name);
  g_free (display->path);
  g_free (display);
}

static int
compare_names (gconstpointer a, gconstpointer b)
{
  return strcmp ((*(const BwDisplay *const *) a)->name, (*(const BwDisplay *const *) b)->name);
}

/* The file of a connector to which nothing is joined is empty. */
static void
add_display (GPtrArray *displays, const char *folder, const char *name)
{
  g_autofree char *path = g_build_filename (folder, name, "edid", NULL);
  g_autofree char *bytes = NULL;
  gsize length;

  if (!bw_file_read (path, BW_EDID_MAX_BYTES, &bytes, &length, NULL) || length == 0)
    return;
  BwDisplay *display = g_new0 (BwDisplay, 1);
  display->name = g_strdup (name);
  display->path = g_steal_pointer (&path);
  g_ptr_array_add (displays, display);
}

/**
 * bw_displays_list:
 * @folder: where the system has them; %BW_DISPLAYS_FOLDER
 *
 * Returns: (transfer full) (element-type BwDisplay): the displays that have an EDID, by name; none
 *   where the system lists none
 */
GPtrArray *
bw_displays_list (const char *folder)
{
  g_return_val_if_fail (folder != NULL, NULL);
  GPtrArray *displays = g_ptr_array_new_with_free_func (display_free);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    add_display (displays, folder, name);
  g_ptr_array_sort (displays, compare_names);
  return displays;
}

/**
 * bw_edid_load:
 *
 * Returns: (transfer full): what the EDID in the file @path says, or %NULL with @error in
 *   %BW_FILE_ERROR or %BW_INTERCHANGE_ERROR, which names the file
 */
BwEdid *
bw_edid_load (const char *path, GError **error)
{
  g_return_val_if_fail (path != NULL, NULL);
  g_autofree char *bytes = NULL;
  gsize length;

  if (!bw_file_read (path, BW_EDID_MAX_BYTES, &bytes, &length, error))
    return NULL;
  BwEdid *edid = bw_edid_parse ((const guint8 *) bytes, length, error);
  if (edid == NULL)
    g_prefix_error (error, "%s: ", path);
  return edid;
}
