/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window-private.h"

#include <glib/gi18n-lib.h>

#include "app/widgets/question.h"

/* A changed sheet asks before its window is closed. One question at a time is open over a window. */

static guint stays_signal;

/* "stays" tells that a window which was asked to close does not: the person has thought better of it,
 * or what is typed is refused, or the sheet could not be saved. */
void
bw_window_add_stays (BwWindowClass *klass)
{
  stays_signal = g_signal_new ("stays", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                               NULL, G_TYPE_NONE, 0);
}

/* The window is not to be closed any more, if it was. */
void
bw_window_stay (BwWindow *self)
{
  self->close_after_save = FALSE;
  if (!self->leaving)
    return;
  self->leaving = FALSE;
  g_signal_emit (self, stays_signal, 0);
}

/* Whether a question is open, which then comes to the front. */
static gboolean
is_asking (BwWindow *self)
{
  if (self->question != NULL)
    gtk_window_present (GTK_WINDOW (self->question));
  return self->question != NULL;
}

/* Shows @question, from bw_question_new(), as the one that is open. */
void
bw_window_ask (BwWindow *self, GtkWidget *question)
{
  g_set_weak_pointer (&self->question, question);
  gtk_window_present (GTK_WINDOW (question));
}

/* Closes the question, from the handler of its answer. */
void
bw_window_end_question (BwWindow *self)
{
  GtkDialog *question = GTK_DIALOG (self->question);
  g_clear_weak_pointer (&self->question); /* it lives until the signal ends */
  bw_question_close (question);
}

static void
on_answer (GtkDialog *dialog, int answer, gpointer user_data)
{
  BwWindow *self = BW_WINDOW (user_data);

  bw_window_end_question (self);
  if (answer == GTK_RESPONSE_ACCEPT)
    {
      self->close_after_save = TRUE;
      bw_window_save (self);
    }
  else if (answer == GTK_RESPONSE_REJECT)
    {
      self->closing = TRUE;
      bw_draft_keeper_discard (self->drafts);
      gtk_window_close (GTK_WINDOW (self));
    }
  else
    bw_window_stay (self);
}

/* Takes what is typed. Returns whether that is refused, or the person is being asked, so that the
 * window must stay. */
gboolean
bw_window_ask_before_close (BwWindow *self)
{
  static const BwAnswer answers[] = { { GTK_RESPONSE_CANCEL, N_ ("_Cancel"), NULL },
                                      { GTK_RESPONSE_REJECT, N_ ("_Discard"),
                                        "destructive-action" },
                                      { GTK_RESPONSE_ACCEPT, N_ ("_Save"), "suggested-action" } };

  gboolean asked = self->leaving;

  self->leaving = TRUE;
  if (is_asking (self))
    {
      if (!asked) /* it is a question about something else */
        bw_window_stay (self);
      return TRUE;
    }
  if (!bw_document_take_typed (self->document))
    {
      bw_window_stay (self);
      return TRUE;
    }
  if (!bw_document_is_modified (self->document))
    return FALSE;
  g_autofree char *name = bw_document_dup_name (self->document);
  g_autofree char *question = g_strdup_printf (_ ("Save the changes to “%s”?"), name);
  GtkWidget *dialog = bw_question_new (GTK_WINDOW (self), question,
                                       _ ("Changes that are not saved are lost."), NULL, answers,
                                       G_N_ELEMENTS (answers));
  gtk_dialog_set_response_sensitive (GTK_DIALOG (dialog), GTK_RESPONSE_ACCEPT,
                                     !bw_document_is_blank (self->document));
  g_signal_connect_object (dialog, "response", G_CALLBACK (on_answer), self, 0);
  bw_window_ask (self, dialog);
  return TRUE;
}
