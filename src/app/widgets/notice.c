/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "notice.h"

#include <glib/gi18n-lib.h>

#include "template.h"

/**
 * BwNotice:
 *
 * A word on what has been written, over the lower edge of the window: which file, and buttons that
 * open it or its folder. It covers nothing for long: it goes when it is closed, when something else
 * is written, and by itself once nobody points at it.
 */
struct _BwNotice
{
  GtkWidget parent_instance;

  GtkLabel *text;
  GFile *file; /* nullable */
  guint timer; /* zero: none */
};

G_DEFINE_FINAL_TYPE (BwNotice, bw_notice, GTK_TYPE_WIDGET)

#define SECONDS 12

static gboolean
is_in_use (BwNotice *self)
{
  return (gtk_widget_get_state_flags (GTK_WIDGET (self)) & GTK_STATE_FLAG_PRELIGHT) != 0
         || bw_has_focus_within (GTK_WIDGET (self));
}

static void
hide (BwNotice *self)
{
  g_clear_handle_id (&self->timer, g_source_remove);
  gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
}

static gboolean
on_time (gpointer data)
{
  BwNotice *self = data;
  if (is_in_use (self))
    return G_SOURCE_CONTINUE;
  self->timer = 0;
  hide (self);
  return G_SOURCE_REMOVE;
}

static void
show_uri (BwNotice *self, GFile *file)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));
  g_autofree char *uri = g_file_get_uri (file);
  gtk_show_uri (GTK_WINDOW (root), uri, GDK_CURRENT_TIME);
  hide (self);
}

static void
on_open (BwNotice *self)
{
  if (self->file != NULL)
    show_uri (self, self->file);
}

static void
on_folder (BwNotice *self)
{
  g_autoptr (GFile) folder = self->file != NULL ? g_file_get_parent (self->file) : NULL;
  if (folder != NULL)
    show_uri (self, folder);
}

static GtkWidget *
add_button (BwNotice *self, const char *name, GtkWidget *button, GCallback clicked)
{
  gtk_widget_set_name (button, name);
  gtk_button_set_use_underline (GTK_BUTTON (button), TRUE);
  gtk_button_set_has_frame (GTK_BUTTON (button), FALSE);
  g_signal_connect_swapped (button, "clicked", clicked, self);
  gtk_widget_set_parent (button, GTK_WIDGET (self));
  return button;
}

static void
bw_notice_dispose (GObject *object)
{
  BwNotice *self = BW_NOTICE (object);
  GtkWidget *child;

  g_clear_handle_id (&self->timer, g_source_remove);
  g_clear_object (&self->file);
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);
  G_OBJECT_CLASS (bw_notice_parent_class)->dispose (object);
}

static void
bw_notice_class_init (BwNoticeClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bw_notice_dispose;
  gtk_widget_class_set_css_name (widget_class, "bw-notice");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_STATUS);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
}

static void
bw_notice_init (BwNotice *self)
{
  GtkWidget *close;

  self->text = GTK_LABEL (gtk_label_new (NULL));
  gtk_label_set_xalign (self->text, 0);
  gtk_label_set_wrap (self->text, TRUE);
  gtk_label_set_wrap_mode (self->text, PANGO_WRAP_WORD_CHAR);
  gtk_label_set_width_chars (self->text, 12);
  gtk_label_set_max_width_chars (self->text, 60);
  gtk_widget_set_hexpand (GTK_WIDGET (self->text), TRUE);
  gtk_widget_set_parent (GTK_WIDGET (self->text), GTK_WIDGET (self));
  add_button (self, "open-written", gtk_button_new_with_label (_ ("_Open")), G_CALLBACK (on_open));
  add_button (self, "open-folder", gtk_button_new_with_label (_ ("_Folder")),
              G_CALLBACK (on_folder));
  close = add_button (self, "close-notice", gtk_button_new_from_icon_name ("window-close-symbolic"),
                      G_CALLBACK (hide));
  gtk_widget_set_tooltip_text (close, _ ("Close"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (close), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Close"), -1);
  gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
}

/**
 * bw_notice_show_written:
 * @file: what has been written
 *
 * Says so, and offers to open it or its folder.
 */
void
bw_notice_show_written (BwNotice *self, GFile *file)
{
  g_return_if_fail (BW_IS_NOTICE (self) && G_IS_FILE (file));
  g_autofree char *base = g_file_get_basename (file);
  g_autofree char *name = g_filename_display_name (base);
  /* Translators: %s is the name of the file. */
  g_autofree char *text = g_strdup_printf (_ ("“%s” is written."), name);

  hide (self);
  g_set_object (&self->file, file);
  gtk_label_set_label (self->text, text);
  gtk_widget_set_visible (GTK_WIDGET (self), TRUE);
  self->timer = g_timeout_add_seconds (SECONDS, on_time, self);
}

/**
 * bw_notice_get_text:
 *
 * Returns: (transfer none) (nullable): what it says; %NULL while it is not shown
 */
const char *
bw_notice_get_text (BwNotice *self)
{
  g_return_val_if_fail (BW_IS_NOTICE (self), NULL);
  return gtk_widget_get_visible (GTK_WIDGET (self)) ? gtk_label_get_label (self->text) : NULL;
}
