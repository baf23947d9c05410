/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "recent.h"

#include <string.h>

#include <glib/gi18n-lib.h>

/* Bench sheets that were opened or saved lately, kept by the desktop. */

#define MIME_TYPE "application/x-breezeway-bench"

/**
 * bw_recent_add:
 *
 * Enters @file as the latest.
 */
void
bw_recent_add (GFile *file)
{
  g_autofree char *uri = g_file_get_uri (file);
  GtkRecentData data = {
    .mime_type = (char *) MIME_TYPE,
    .app_name = (char *) "Breezeway",
    .app_exec = (char *) "breezeway %f",
  };
  gtk_recent_manager_add_full (gtk_recent_manager_get_default (), uri, &data);
}

static int
latest_first (gconstpointer a, gconstpointer b)
{
  GDateTime *time_a = gtk_recent_info_get_modified (*(GtkRecentInfo *const *) a);
  GDateTime *time_b = gtk_recent_info_get_modified (*(GtkRecentInfo *const *) b);
  return g_date_time_compare (time_b, time_a);
}

static GPtrArray *
sheets (void)
{
  GPtrArray *found = g_ptr_array_new_with_free_func ((GDestroyNotify) gtk_recent_info_unref);
  GList *all = gtk_recent_manager_get_items (gtk_recent_manager_get_default ());
  for (GList *link = all; link != NULL; link = link->next)
    {
      GtkRecentInfo *info = link->data;
      if (g_strcmp0 (gtk_recent_info_get_mime_type (info), MIME_TYPE) == 0
          && gtk_recent_info_exists (info))
        g_ptr_array_add (found, info);
      else
        gtk_recent_info_unref (info);
    }
  g_list_free (all);
  g_ptr_array_sort (found, latest_first);
  return found;
}

/* A name in a menu: an underscore would mark an access key. */
static char *
menu_label (const char *name)
{
  g_auto (GStrv) parts = g_strsplit (name, "_", -1);
  return g_strjoinv ("__", parts);
}

/**
 * bw_recent_fill:
 * @limit: at most so many
 *
 * Fills @menu anew with the sheets that are still there, the latest first.
 */
void
bw_recent_fill (GMenu *menu, guint limit)
{
  g_autoptr (GPtrArray) found = sheets ();

  g_menu_remove_all (menu);
  for (guint i = 0; i < MIN (found->len, limit); i++)
    {
      g_autofree char *label = menu_label (gtk_recent_info_get_display_name (found->pdata[i]));
      g_autoptr (GMenuItem) item = g_menu_item_new (label, NULL);
      g_menu_item_set_action_and_target (item, "app.open-recent", "s",
                                         gtk_recent_info_get_uri (found->pdata[i]));
      g_menu_append_item (menu, item);
    }
}
