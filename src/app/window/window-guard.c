/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window-private.h"

#include <glib/gi18n-lib.h>

#include "app/widgets/question.h"

/* What to do about a file that somebody else has changed or deleted: a bar asks as soon as it is
 * noticed, a dialog before a save would write over it. */

static char *
changed_words (BwWindow *self)
{
  g_autofree char *name = bw_document_dup_name (self->document);
  return g_strdup_printf (bw_document_get_file_state (self->document) == BW_FILE_GONE
                              ? _ ("“%s” was moved or deleted by another program.")
                              : _ ("“%s” was changed by another program."),
                          name);
}

/* The bar */

/* Shows the bar while the file is another one. */
void
bw_window_update_guard (BwWindow *self)
{
  BwFileState state = bw_document_get_file_state (self->document);
  g_autofree char *words = changed_words (self);

  gtk_widget_set_visible (GTK_WIDGET (self->guard), state != BW_FILE_SAME);
  gtk_info_bar_set_revealed (self->guard, state != BW_FILE_SAME);
  if (state == BW_FILE_SAME)
    return;
  gtk_label_set_label (self->guard_title, words);
  gtk_label_set_label (self->guard_text,
                       state == BW_FILE_GONE
                           ? _ ("The sheet is still here. If you keep it, the next save writes the "
                                "file again.")
                           : _ ("The sheet here is as it was. If you load theirs, Undo brings yours "
                                "back; if you keep yours, the next save writes over theirs."));
  gtk_widget_set_visible (self->load_theirs, state == BW_FILE_CHANGED);
}

static void
load_theirs (BwWindow *self)
{
  g_autoptr (GPtrArray) faults = g_ptr_array_new_with_free_func ((GDestroyNotify) g_error_free);
  if (!bw_document_reload (self->document, faults))
    bw_window_show_faults (self, _ ("The changed file was not loaded. The sheet here is as it was."),
                           faults);
}

void
bw_window_on_guard_response (BwWindow *self, int response)
{
  if (response == BW_GUARD_LOAD_THEIRS)
    load_theirs (self);
  else if (response == BW_GUARD_KEEP_MINE)
    bw_document_keep_mine (self->document);
  else if (response == BW_GUARD_KEEP_AS_COPY && bw_document_take_typed (self->document))
    bw_window_save_copy (self);
}

/* The dialog */

static void
on_answer (GtkDialog *dialog, int answer, gpointer user_data)
{
  BwWindow *self = BW_WINDOW (user_data);

  bw_window_end_question (self);
  if (answer == BW_GUARD_KEEP_MINE)
    {
      bw_document_keep_mine (self->document);
      bw_window_save (self);
    }
  else if (answer == BW_GUARD_KEEP_AS_COPY)
    bw_window_save_copy (self);
  else
    {
      bw_window_stay (self);
      if (answer == BW_GUARD_LOAD_THEIRS)
        load_theirs (self);
    }
}

/**
 * bw_window_ask_about_file:
 *
 * Asks what to do about a file that a save would write over, though somebody else has changed it.
 */
void
bw_window_ask_about_file (BwWindow *self)
{
  static const BwAnswer changed[] = { { GTK_RESPONSE_CANCEL, N_ ("_Cancel"), NULL },
                                      { BW_GUARD_LOAD_THEIRS, N_ ("_Load Theirs"), NULL },
                                      { BW_GUARD_KEEP_AS_COPY, N_ ("Keep Mine as a _Copy…"), NULL },
                                      { BW_GUARD_KEEP_MINE, N_ ("_Write over Theirs"),
                                        "destructive-action" } };
  static const BwAnswer gone[] = { { GTK_RESPONSE_CANCEL, N_ ("_Cancel"), NULL },
                                   { BW_GUARD_KEEP_AS_COPY, N_ ("Save a _Copy…"), NULL },
                                   { BW_GUARD_KEEP_MINE, N_ ("_Save It Again"), "suggested-action" } };
  gboolean is_gone = bw_document_get_file_state (self->document) == BW_FILE_GONE;
  g_autofree char *question = changed_words (self);
  g_autoptr (GPtrArray) lines = bw_document_list_theirs (self->document);
  const char *explanation = _ ("Nothing is written yet. Undo brings your sheet back if you load "
                               "theirs.");

  if (is_gone)
    explanation = _ ("Nothing is written yet.");
  else if (lines->len > 0)
    explanation = _ ("Nothing is written yet. Undo brings your sheet back if you load theirs. In "
                     "what theirs differs from yours (yours → theirs):");
  GtkWidget *dialog = bw_question_new (GTK_WINDOW (self), question, explanation, lines,
                                       is_gone ? gone : changed,
                                       is_gone ? G_N_ELEMENTS (gone) : G_N_ELEMENTS (changed));
  g_signal_connect_object (dialog, "response", G_CALLBACK (on_answer), self, 0);
  bw_window_ask (self, dialog);
}

/* Where files cannot be watched, they are looked at when the window is. */
void
bw_window_on_active (BwWindow *self)
{
  if (self->document != NULL && gtk_window_is_active (GTK_WINDOW (self)))
    bw_document_check_file (self->document);
}
