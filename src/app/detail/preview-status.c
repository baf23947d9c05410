/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "preview-status.h"

#include <glib/gi18n-lib.h>

/**
 * BwPreviewStatus:
 *
 * How far a job is, with a button to give it up, if it takes so long that a person notices; words
 * otherwise. Both take the same room, so that nothing moves. "cancel" tells that the button was
 * used.
 */
struct _BwPreviewStatus
{
  GtkWidget parent_instance;

  GtkStack *stack; /* the only child */
  GtkLabel *words;
  GtkProgressBar *bar;
  BwPreviewJob *job; /* borrowed; while it is watched */
  guint watching;    /* source */
};

G_DEFINE_FINAL_TYPE (BwPreviewStatus, bw_preview_status, GTK_TYPE_WIDGET)

enum
{
  CANCEL,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

#define STEP_MS 50
#define NOTICED_S 0.15

static gboolean
on_step (gpointer user_data)
{
  BwPreviewStatus *self = user_data;

  if (bw_preview_job_running_s (self->job) > NOTICED_S)
    gtk_stack_set_visible_child_name (self->stack, "busy");
  gtk_progress_bar_set_fraction (self->bar, bw_preview_job_progress (self->job));
  return G_SOURCE_CONTINUE;
}

/**
 * bw_preview_status_watch:
 * @job: must live until bw_preview_status_say(), or longer than this widget
 */
void
bw_preview_status_watch (BwPreviewStatus *self, BwPreviewJob *job)
{
  self->job = job;
  if (self->watching == 0)
    self->watching = g_timeout_add (STEP_MS, on_step, self);
}

/**
 * bw_preview_status_say:
 * @words: in place of the progress; nothing is watched any more
 */
void
bw_preview_status_say (BwPreviewStatus *self, const char *words)
{
  g_clear_handle_id (&self->watching, g_source_remove);
  gtk_label_set_label (self->words, words);
  gtk_stack_set_visible_child_name (self->stack, "words");
}

static void
on_cancel (BwPreviewStatus *self)
{
  g_signal_emit (self, signals[CANCEL], 0);
}

static void
bw_preview_status_dispose (GObject *object)
{
  BwPreviewStatus *self = BW_PREVIEW_STATUS (object);
  GtkWidget *stack = GTK_WIDGET (self->stack);

  g_clear_handle_id (&self->watching, g_source_remove);
  g_clear_pointer (&stack, gtk_widget_unparent);
  self->stack = NULL;
  G_OBJECT_CLASS (bw_preview_status_parent_class)->dispose (object);
}

static void
bw_preview_status_class_init (BwPreviewStatusClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = bw_preview_status_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);

  /* BwPreviewStatus::cancel: the person gives the job up. */
  signals[CANCEL] = g_signal_new ("cancel", BW_TYPE_PREVIEW_STATUS, G_SIGNAL_RUN_LAST, 0, NULL,
                                  NULL, NULL, G_TYPE_NONE, 0);
}

static void
bw_preview_status_init (BwPreviewStatus *self)
{
  GtkWidget *stack = gtk_stack_new ();
  GtkWidget *words = gtk_label_new (NULL);
  GtkWidget *bar = gtk_progress_bar_new ();
  GtkWidget *cancel = gtk_button_new_with_label (_ ("Cancel"));
  GtkWidget *busy = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);

  self->stack = GTK_STACK (stack);
  self->words = GTK_LABEL (words);
  self->bar = GTK_PROGRESS_BAR (bar);
  gtk_label_set_xalign (self->words, 0);
  gtk_widget_add_css_class (words, "bw-light");
  gtk_widget_set_hexpand (bar, TRUE);
  gtk_widget_set_hexpand (GTK_WIDGET (self), TRUE);
  gtk_widget_set_valign (bar, GTK_ALIGN_CENTER);
  gtk_widget_set_name (cancel, "cancel-preview");
  gtk_accessible_update_property (GTK_ACCESSIBLE (bar), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Computing the preview"), -1);
  g_signal_connect_object (cancel, "clicked", G_CALLBACK (on_cancel), self, G_CONNECT_SWAPPED);
  gtk_box_append (GTK_BOX (busy), bar);
  gtk_box_append (GTK_BOX (busy), cancel);
  gtk_stack_add_named (self->stack, words, "words");
  gtk_stack_add_named (self->stack, busy, "busy");
  gtk_widget_set_parent (stack, GTK_WIDGET (self));
}
