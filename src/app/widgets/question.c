/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "question.h"

#include <string.h>

#include <glib/gi18n-lib.h>

#include "button-name.h"

/* A question to the person, in a dialog over the window that it is about. */

#define MOST_LINES 200
#define LINES_WIDTH 480
#define LINES_HEIGHT 220

static char *
join (const GPtrArray *lines)
{
  GString *text = g_string_new (NULL);
  guint n = MIN (lines->len, MOST_LINES);

  for (guint i = 0; i < n; i++)
    g_string_append_printf (text, "%s• %s", i > 0 ? "\n" : "", (const char *) lines->pdata[i]);
  if (lines->len > n)
    g_string_append_printf (text,
                            g_dngettext (GETTEXT_PACKAGE, "\n… and %u more", "\n… and %u more",
                                         lines->len - n),
                            lines->len - n);
  return g_string_free (text, FALSE);
}

/* A list that can be scrolled and copied from. */
static GtkWidget *
list_new (const GPtrArray *lines)
{
  g_autofree char *text = join (lines);
  GtkWidget *label = gtk_label_new (text);
  GtkWidget *scroll = gtk_scrolled_window_new ();
  int height;

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_yalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_selectable (GTK_LABEL (label), TRUE);
  gtk_widget_set_name (label, "lines");
  gtk_widget_add_css_class (label, "bw-question-lines");
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroll), label);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroll), GTK_POLICY_NEVER,
                                  GTK_POLICY_AUTOMATIC);
  gtk_widget_measure (label, GTK_ORIENTATION_VERTICAL, LINES_WIDTH, NULL, &height, NULL, NULL);
  gtk_scrolled_window_set_min_content_height (GTK_SCROLLED_WINDOW (scroll),
                                              MIN (height, LINES_HEIGHT));
  gtk_scrolled_window_set_min_content_width (GTK_SCROLLED_WINDOW (scroll), LINES_WIDTH);
  gtk_scrolled_window_set_has_frame (GTK_SCROLLED_WINDOW (scroll), TRUE);
  return scroll;
}

static void
add_answer (GtkDialog *dialog, const BwAnswer *answer)
{
  GtkWidget *button = gtk_dialog_add_button (dialog, _ (answer->label), answer->response);
  bw_name_button (GTK_BUTTON (button));
  if (answer->css_class == NULL)
    return;
  gtk_widget_add_css_class (button, answer->css_class);
  if (strcmp (answer->css_class, "suggested-action") == 0)
    gtk_dialog_set_default_response (dialog, answer->response);
}

/**
 * bw_question_new:
 * @question: a short sentence
 * @explanation: what the answers mean
 * @lines: (nullable) (element-type utf8): a list below it
 * @answers: the buttons from first to last; the first is the one that does nothing
 *
 * Returns: (transfer none): the dialog, not shown yet. Whoever answers its "response" closes it with
 * bw_question_close(); it goes with @parent as well
 */
GtkWidget *
bw_question_new (GtkWindow *parent, const char *question, const char *explanation,
                 const GPtrArray *lines, const BwAnswer *answers, guint n_answers)
{
  g_return_val_if_fail (question != NULL && explanation != NULL && n_answers > 0, NULL);
  GtkWidget *dialog = gtk_message_dialog_new (parent,
                                              GTK_DIALOG_MODAL | GTK_DIALOG_DESTROY_WITH_PARENT,
                                              GTK_MESSAGE_QUESTION, GTK_BUTTONS_NONE, "%s",
                                              question);
  gtk_message_dialog_format_secondary_text (GTK_MESSAGE_DIALOG (dialog), "%s", explanation);
  if (lines != NULL && lines->len > 0)
    gtk_box_append (GTK_BOX (gtk_message_dialog_get_message_area (GTK_MESSAGE_DIALOG (dialog))),
                    list_new (lines));
  for (guint i = 0; i < n_answers; i++)
    add_answer (GTK_DIALOG (dialog), &answers[i]);
  return dialog;
}

/**
 * bw_question_close:
 *
 * Closes the dialog, from a handler of its "response". It lives until that signal ends, which its
 * parent may not.
 */
void
bw_question_close (GtkDialog *dialog)
{
  g_return_if_fail (GTK_IS_DIALOG (dialog));
  gtk_window_set_transient_for (GTK_WINDOW (dialog), NULL);
  gtk_window_destroy (GTK_WINDOW (dialog));
}
