/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window-private.h"

#include "app/detail/page.h"

/* Files that are dropped onto the window: bench sheets and what else can be opened as one, and
 * pictures, which the preview of the page on detail shows. */

static gboolean
is_picture (GFile *file)
{
  g_autofree char *name = g_file_get_basename (file);
  g_autofree char *type = g_content_type_guess (name, NULL, 0, NULL);
  return type != NULL && g_content_type_is_mime_type (type, "image/*");
}

static void
open_picture (BwWindow *self, GFile *file)
{
  bw_window_show_page (self, "detail");
  bw_detail_page_open_picture (BW_DETAIL_PAGE (bw_window_get_page (self, "detail")), file);
}

/* Sheets are opened as from the command line: each in a window of its own. */
static void
open_sheets (BwWindow *self, GPtrArray *files)
{
  GtkApplication *application = gtk_window_get_application (GTK_WINDOW (self));

  if (application != NULL)
    g_application_open (G_APPLICATION (application), (GFile **) files->pdata, (int) files->len, "");
  else
    bw_window_open (self, files->pdata[0]);
}

static gboolean
on_drop (BwWindow *self, const GValue *value)
{
  g_autoptr (GPtrArray) sheets = g_ptr_array_new ();
  GFile *picture = NULL;

  if (!bw_document_take_typed (self->document))
    return FALSE;
  for (GSList *link = g_value_get_boxed (value); link != NULL; link = link->next)
    if (is_picture (link->data))
      picture = link->data;
    else
      g_ptr_array_add (sheets, link->data);
  if (sheets->len > 0)
    open_sheets (self, sheets);
  if (picture != NULL)
    open_picture (self, picture);
  return sheets->len > 0 || picture != NULL;
}

/* Lets files be dropped anywhere on the window. */
void
bw_window_accept_drops (BwWindow *self)
{
  GtkDropTarget *target = gtk_drop_target_new (GDK_TYPE_FILE_LIST, GDK_ACTION_COPY);
  g_signal_connect_swapped (target, "drop", G_CALLBACK (on_drop), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (target));
}
