/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window-private.h"

#include <glib/gi18n-lib.h>

/* A changed sheet asks before its window is closed. */

static void
on_answer (GtkDialog *dialog, int answer, gpointer user_data)
{
  BwWindow *self = BW_WINDOW (user_data);

  /* The dialog lives until this signal ends, which its parent may not. */
  gtk_window_set_transient_for (GTK_WINDOW (dialog), NULL);
  gtk_window_destroy (GTK_WINDOW (dialog));
  if (answer == GTK_RESPONSE_ACCEPT)
    {
      self->close_after_save = TRUE;
      bw_window_save (self);
    }
  else if (answer == GTK_RESPONSE_REJECT)
    {
      self->closing = TRUE;
      gtk_window_close (GTK_WINDOW (self));
    }
}

static void
style_button (GtkDialog *dialog, int answer, const char *css_class)
{
  gtk_widget_add_css_class (gtk_dialog_get_widget_for_response (dialog, answer), css_class);
}

/* Takes what is typed. Returns whether that is refused, or the person is being asked, so that the
 * window must stay. */
gboolean
bw_window_ask_before_close (BwWindow *self)
{
  g_autofree char *name = bw_document_dup_name (self->document);

  if (!bw_document_take_typed (self->document))
    return TRUE;
  if (!bw_document_is_modified (self->document))
    return FALSE;
  GtkWidget *dialog = gtk_message_dialog_new (GTK_WINDOW (self),
                                              GTK_DIALOG_MODAL | GTK_DIALOG_DESTROY_WITH_PARENT,
                                              GTK_MESSAGE_QUESTION, GTK_BUTTONS_NONE,
                                              _ ("Save the changes to “%s”?"), name);
  gtk_message_dialog_format_secondary_text (GTK_MESSAGE_DIALOG (dialog),
                                            _ ("Changes that are not saved are lost."));
  gtk_dialog_add_buttons (GTK_DIALOG (dialog), _ ("_Cancel"), GTK_RESPONSE_CANCEL, _ ("_Discard"),
                          GTK_RESPONSE_REJECT, _ ("_Save"), GTK_RESPONSE_ACCEPT, NULL);
  style_button (GTK_DIALOG (dialog), GTK_RESPONSE_REJECT, "destructive-action");
  style_button (GTK_DIALOG (dialog), GTK_RESPONSE_ACCEPT, "suggested-action");
  gtk_dialog_set_response_sensitive (GTK_DIALOG (dialog), GTK_RESPONSE_ACCEPT,
                                     !bw_document_is_blank (self->document));
  gtk_dialog_set_default_response (GTK_DIALOG (dialog), GTK_RESPONSE_ACCEPT);
  g_signal_connect_object (dialog, "response", G_CALLBACK (on_answer), self, 0);
  gtk_window_present (GTK_WINDOW (dialog));
  return TRUE;
}
