/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "session.h"

/* Which sheets were open when the program was left, and what was seen of each. Only sheets with a
 * file are named here: the others are drafts, which are offered anyway. */

#define KEY "session"
#define TYPE "a(sss)" /* URI, page, view */

static void
add_window (GVariantBuilder *list, BwWindow *window)
{
  GFile *file = bw_document_get_file (bw_window_get_document (window));
  BwPage *page = bw_window_get_shown_page (window);
  const char *view = bw_page_get_view (page);

  if (file == NULL)
    return;
  g_autofree char *uri = g_file_get_uri (file);
  g_variant_builder_add (list, "(sss)", uri, bw_window_get_page_id (window),
                         view != NULL ? view : "");
}

/**
 * bw_session_save:
 *
 * Keeps what is open now for the next start.
 */
void
bw_session_save (GtkApplication *application, GSettings *settings)
{
  g_return_if_fail (GTK_IS_APPLICATION (application) && G_IS_SETTINGS (settings));
  GVariantBuilder list;

  g_variant_builder_init (&list, G_VARIANT_TYPE (TYPE));
  for (GList *link = gtk_application_get_windows (application); link != NULL; link = link->next)
    if (BW_IS_WINDOW (link->data))
      add_window (&list, link->data);
  g_settings_set_value (settings, KEY, g_variant_builder_end (&list));
}

/**
 * bw_session_restore:
 * @open: opens a file
 *
 * Opens what was open when the program was left, if it is still there, and turns to what was seen.
 *
 * Returns: how many sheets have been opened
 */
guint
bw_session_restore (GSettings *settings, BwSessionOpenFunc open, gpointer user_data)
{
  g_return_val_if_fail (G_IS_SETTINGS (settings) && open != NULL, 0);
  g_autoptr (GVariant) list = g_settings_get_value (settings, KEY);
  GVariantIter each;
  const char *uri, *page, *view;
  guint n = 0;

  g_variant_iter_init (&each, list);
  while (g_variant_iter_next (&each, "(&s&s&s)", &uri, &page, &view))
    {
      g_autoptr (GFile) file = g_file_new_for_uri (uri);
      BwWindow *window = g_file_query_exists (file, NULL) ? open (user_data, file) : NULL;
      if (window == NULL)
        continue;
      n++;
      bw_window_show_page (window, page);
      if (bw_page_has_view (bw_window_get_shown_page (window), view))
        bw_page_show_view (bw_window_get_shown_page (window), view);
    }
  return n;
}
