/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "preview-open.h"

#include <glib/gi18n-lib.h>

#include "app/widgets/file-chooser.h"

struct _BwPreviewOpen
{
  BwPreviewOpenedFunc opened;
  gpointer user_data;
  GtkNativeDialog *chooser;  /* nullable; nothing else holds it */
  GCancellable *cancellable; /* nullable; of what is being read */
};

/* One file that is being read. */
typedef struct
{
  BwPreviewOpen *open;
  GCancellable *cancellable;
  char *name;
} Reading;

/**
 * bw_preview_open_new:
 * @opened: called in the main thread
 *
 * Returns: (transfer full)
 */
BwPreviewOpen *
bw_preview_open_new (BwPreviewOpenedFunc opened, gpointer user_data)
{
  BwPreviewOpen *open = g_new0 (BwPreviewOpen, 1);
  open->opened = opened;
  open->user_data = user_data;
  return open;
}

static void
give_up (BwPreviewOpen *open)
{
  if (open->cancellable != NULL)
    g_cancellable_cancel (open->cancellable);
  g_clear_object (&open->cancellable);
}

/**
 * bw_preview_open_free:
 *
 * Gives up what is chosen and read; @opened is not called any more.
 */
void
bw_preview_open_free (BwPreviewOpen *open)
{
  give_up (open);
  if (open->chooser != NULL)
    g_signal_handlers_disconnect_by_data (open->chooser, open);
  bw_file_chooser_let_go (&open->chooser);
  g_free (open);
}

/* A picture is loaded, or not. If loading was given up there is nothing to tell, and nobody: @open
 * may have been freed. */
static void
on_loaded (GObject *source, GAsyncResult *result, gpointer user_data)
{
  Reading *reading = user_data;
  g_autoptr (GError) error = NULL;
  BwPreviewSent *sent = bw_preview_load_finish (result, &error);

  if (g_cancellable_is_cancelled (reading->cancellable))
    g_clear_pointer (&sent, bw_preview_sent_unref);
  else
    {
      g_clear_object (&reading->open->cancellable);
      reading->open->opened (sent, error, reading->name, reading->open->user_data);
    }
  g_object_unref (reading->cancellable);
  g_free (reading->name);
  g_free (reading);
}

static void
tell_not_local (BwPreviewOpen *open, GFile *file, const char *name)
{
  g_autofree char *uri = g_file_get_parse_name (file);
  g_autoptr (GError) error = g_error_new (BW_PICTURE_ERROR, BW_PICTURE_ERROR_READ,
                                          _ ("%s: this is no file of this computer"), uri);
  open->opened (NULL, error, name, open->user_data);
}

/**
 * bw_preview_open_file:
 *
 * Reads @file.
 */
void
bw_preview_open_file (BwPreviewOpen *open, GFile *file)
{
  g_autofree char *path = g_file_get_path (file);
  g_autofree char *base = g_file_get_basename (file);
  g_autofree char *name = g_filename_display_name (base);

  give_up (open);
  if (path == NULL)
    {
      tell_not_local (open, file, name);
      return;
    }
  Reading *reading = g_new0 (Reading, 1);
  open->cancellable = g_cancellable_new ();
  *reading = (Reading){ open, g_object_ref (open->cancellable), g_steal_pointer (&name) };
  bw_preview_load_async (path, open->cancellable, on_loaded, reading);
}

static void
on_response (BwPreviewOpen *open, int answer, GtkNativeDialog *chooser)
{
  g_autoptr (GFile) file = answer == GTK_RESPONSE_ACCEPT
                               ? gtk_file_chooser_get_file (GTK_FILE_CHOOSER (chooser))
                               : NULL;
  bw_file_chooser_let_go (&open->chooser);
  if (file != NULL)
    bw_preview_open_file (open, file);
}

/**
 * bw_preview_open_choose:
 * @over: a widget in the window that the chooser belongs to
 *
 * Lets the person choose a file.
 */
void
bw_preview_open_choose (BwPreviewOpen *open, GtkWidget *over)
{
  if (open->chooser == NULL)
    {
      GtkFileChooserNative *chooser = gtk_file_chooser_native_new (_ ("Open a Picture"),
                                                                   GTK_WINDOW (
                                                                       gtk_widget_get_root (over)),
                                                                   GTK_FILE_CHOOSER_ACTION_OPEN,
                                                                   _ ("_Open"), _ ("_Cancel"));
      g_autoptr (GtkFileFilter) filter = gtk_file_filter_new ();
      gtk_file_filter_set_name (filter, _ ("PNG pictures"));
      gtk_file_filter_add_mime_type (filter, "image/png");
      gtk_file_filter_add_pattern (filter, "*.png");
      gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (chooser), filter);
      open->chooser = GTK_NATIVE_DIALOG (chooser);
      gtk_native_dialog_set_modal (open->chooser, TRUE);
      g_signal_connect_swapped (chooser, "response", G_CALLBACK (on_response), open);
    }
  gtk_native_dialog_show (open->chooser);
}
