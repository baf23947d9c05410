/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "print-memory.h"

#include <string.h>

#include "core/base/file.h"

/* The printer, its settings and the page that were last printed with, kept in the user's state
 * folder. What belongs to one job alone is not kept: which pages, how many copies, into which
 * file. */

static const char *const of_one_job[] = {
  GTK_PRINT_SETTINGS_N_COPIES,   GTK_PRINT_SETTINGS_PRINT_PAGES, GTK_PRINT_SETTINGS_PAGE_RANGES,
  GTK_PRINT_SETTINGS_OUTPUT_URI, GTK_PRINT_SETTINGS_OUTPUT_DIR,  GTK_PRINT_SETTINGS_OUTPUT_BASENAME,
};

static char *
memory_path (void)
{
  return g_build_filename (g_get_user_state_dir (), "breezeway", "print.ini", NULL);
}

/**
 * bw_print_recall:
 *
 * Gives @operation the settings and the page of the last one. A file that cannot be read counts as
 * none: the dialog then starts as the system has it.
 */
void
bw_print_recall (GtkPrintOperation *operation)
{
  g_return_if_fail (GTK_IS_PRINT_OPERATION (operation));
  g_autofree char *path = memory_path ();
  g_autoptr (GKeyFile) keys = g_key_file_new ();

  if (!g_key_file_load_from_file (keys, path, G_KEY_FILE_NONE, NULL))
    return;
  g_autoptr (GtkPrintSettings) settings = gtk_print_settings_new_from_key_file (keys, NULL, NULL);
  g_autoptr (GtkPageSetup) setup = gtk_page_setup_new_from_key_file (keys, NULL, NULL);
  if (settings != NULL)
    gtk_print_operation_set_print_settings (operation, settings);
  if (setup != NULL)
    gtk_print_operation_set_default_page_setup (operation, setup);
}

/**
 * bw_print_remember:
 * @operation: one that has printed
 *
 * Keeps its settings and its page for the next one.
 *
 * Returns: %FALSE with @error if they could not be written
 */
gboolean
bw_print_remember (GtkPrintOperation *operation, GError **error)
{
  g_return_val_if_fail (GTK_IS_PRINT_OPERATION (operation), FALSE);
  g_autofree char *path = memory_path ();
  g_autofree char *folder = g_path_get_dirname (path);
  g_autoptr (GKeyFile) keys = g_key_file_new ();
  GtkPrintSettings *given = gtk_print_operation_get_print_settings (operation);
  GtkPageSetup *setup = gtk_print_operation_get_default_page_setup (operation);

  if (given != NULL)
    {
      g_autoptr (GtkPrintSettings) kept = gtk_print_settings_copy (given);
      for (guint i = 0; i < G_N_ELEMENTS (of_one_job); i++)
        gtk_print_settings_unset (kept, of_one_job[i]);
      gtk_print_settings_to_key_file (kept, keys, NULL);
    }
  if (setup != NULL)
    gtk_page_setup_to_key_file (setup, keys, NULL);
  g_autofree char *text = g_key_file_to_data (keys, NULL, NULL);
  g_mkdir_with_parents (folder, 0700);
  return bw_file_replace (path, text, strlen (text), error);
}
