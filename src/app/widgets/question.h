/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/**
 * BwAnswer:
 * @response: what the "response" signal of the dialog gives
 * @label: the words on the button, to be translated: a verb
 * @css_class: (nullable): "suggested-action" for the one that is done with Enter, or
 *   "destructive-action"
 */
typedef struct
{
  int response;
  const char *label;
  const char *css_class;
} BwAnswer;

GtkWidget *bw_question_new (GtkWindow *parent, const char *question, const char *explanation,
                            const GPtrArray *lines, const BwAnswer *answers, guint n_answers);
void bw_question_close (GtkDialog *dialog);

G_END_DECLS
