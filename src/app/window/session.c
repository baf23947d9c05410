/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "session.h"

/* Which sheets were open when the program was left, and what was seen of each. Only sheets with a
 * file are named here: the others are drafts, which are offered anyway. */

#define KEY "session"
#define TYPE "a(sssia{sv})" /* URI, page, view, width of the bench, shares of the drawings */

static void
add_window (GVariantBuilder *list, BwWindow *window)
{
  GFile *file = bw_document_get_file (bw_window_get_document (window));
  BwPage *page = bw_window_get_shown_page (window);
  const char *view = bw_page_get_view (page);

  if (file == NULL)
    return;
  g_autofree char *uri = g_file_get_uri (file);
  g_variant_builder_add (list, "(sssi@a{sv})", uri, bw_window_get_page_id (window),
                         view != NULL ? view : "", bw_window_get_side_width (window),
                         bw_window_get_shares (window));
}

/**
 * bw_session_new:
 *
 * Returns: (transfer full): what is open now
 */
GVariant *
bw_session_new (GtkApplication *application)
{
  g_return_val_if_fail (GTK_IS_APPLICATION (application), NULL);
  GVariantBuilder list;

  g_variant_builder_init (&list, G_VARIANT_TYPE (TYPE));
  for (GList *link = gtk_application_get_windows (application); link != NULL; link = link->next)
    if (BW_IS_WINDOW (link->data))
      add_window (&list, link->data);
  return g_variant_ref_sink (g_variant_builder_end (&list));
}

/**
 * bw_session_save:
 * @session: from bw_session_new()
 *
 * Keeps @session for the next start.
 */
void
bw_session_save (GSettings *settings, GVariant *session)
{
  g_return_if_fail (G_IS_SETTINGS (settings));
  g_return_if_fail (session != NULL && g_variant_is_of_type (session, G_VARIANT_TYPE (TYPE)));
  g_settings_set_value (settings, KEY, session);
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
  int side_width;
  GVariant *shares;
  guint n = 0;

  g_variant_iter_init (&each, list);
  while (g_variant_iter_next (&each, "(&s&s&si@a{sv})", &uri, &page, &view, &side_width, &shares))
    {
      g_autoptr (GVariant) owned = shares;
      g_autoptr (GFile) file = g_file_new_for_uri (uri);
      BwWindow *window = g_file_query_exists (file, NULL) ? open (user_data, file) : NULL;
      if (window == NULL)
        continue;
      n++;
      bw_window_put_handles (window, side_width, shares);
      bw_window_show_page (window, page);
      if (bw_page_has_view (bw_window_get_shown_page (window), view))
        bw_page_show_view (bw_window_get_shown_page (window), view);
    }
  return n;
}
