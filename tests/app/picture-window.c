/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/window/application.h"

/* Takes a picture of each page of the window, for data/screenshots/make-screenshots.sh:
 *
 *     picture-window FOLDER
 *
 * The demonstration is opened as a person opens it from the menu, and FOLDER receives PAGE.png for
 * each page, in the size in which the window first opens. */

#define SOURCE 3 /* from zero; one with parts, so that each page has something to show */
#define INPUT 2

/* What is drawn and computed must have come to rest. */
#define REST_MS 1500

static gboolean
on_rested (gpointer data)
{
  *(gboolean *) data = TRUE;
  return G_SOURCE_REMOVE;
}

static void
rest (void)
{
  gboolean rested = FALSE;
  g_timeout_add (REST_MS, on_rested, &rested);
  while (!rested)
    g_main_context_iteration (NULL, TRUE);
}

static void
take_picture (GtkWidget *window, const char *path)
{
  g_autoptr (GdkPaintable) paintable = gtk_widget_paintable_new (window);
  g_autoptr (GtkSnapshot) snapshot = gtk_snapshot_new ();
  GskRenderer *renderer = gtk_native_get_renderer (GTK_NATIVE (window));
  int width = gdk_paintable_get_intrinsic_width (paintable);
  int height = gdk_paintable_get_intrinsic_height (paintable);

  gdk_paintable_snapshot (paintable, snapshot, width, height);
  g_autoptr (GskRenderNode) node = gtk_snapshot_free_to_node (g_steal_pointer (&snapshot));
  g_autoptr (GdkTexture) texture = gsk_renderer_render_texture (
      renderer, node, &GRAPHENE_RECT_INIT (0, 0, (float) width, (float) height));
  if (!gdk_texture_save_to_png (texture, path))
    g_error ("%s cannot be written", path);
}

int
main (int argc, char **argv)
{
  if (argc != 2)
    g_error ("picture-window FOLDER");
  gtk_init ();
  g_autoptr (BwApplication) application = bw_application_new ();
  guint n;
  const BwPageKind *kinds = bw_page_kinds (&n);

  if (!g_application_register (G_APPLICATION (application), NULL, NULL))
    g_error ("the application cannot be started");
  g_application_activate (G_APPLICATION (application));
  g_action_group_activate_action (G_ACTION_GROUP (application), "open-demo", NULL);
  GtkWindow *window = gtk_application_get_active_window (GTK_APPLICATION (application));
  bw_document_select (bw_window_get_document (BW_WINDOW (window)), SOURCE, INPUT);
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *name = g_strconcat (kinds[i].id, ".png", NULL);
      g_autofree char *path = g_build_filename (argv[1], name, NULL);
      bw_window_show_page (BW_WINDOW (window), kinds[i].id);
      rest ();
      take_picture (GTK_WIDGET (window), path);
    }
  gtk_window_destroy (window);
  return 0;
}
