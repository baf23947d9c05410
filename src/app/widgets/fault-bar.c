/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "fault-bar.h"

#include <glib/gi18n-lib.h>

#include "template.h"

/**
 * BwFaultBar:
 *
 * A bar that says what went wrong, with every fault of a file. It stays until it is closed.
 */
struct _BwFaultBar
{
  GtkWidget parent_instance;

  GtkInfoBar *bar;
  GtkLabel *title;
  GtkScrolledWindow *scroll;
  GtkLabel *text;
};

G_DEFINE_FINAL_TYPE (BwFaultBar, bw_fault_bar, GTK_TYPE_WIDGET)

static void
on_response (BwFaultBar *self)
{
  gtk_info_bar_set_revealed (self->bar, FALSE);
  gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
}

static void
bw_fault_bar_dispose (GObject *object)
{
  bw_dispose_template (object, BW_TYPE_FAULT_BAR);
  G_OBJECT_CLASS (bw_fault_bar_parent_class)->dispose (object);
}

static void
bw_fault_bar_class_init (BwFaultBarClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bw_fault_bar_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_ALERT);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/breezeway/Breezeway/fault-bar.ui");
  gtk_widget_class_bind_template_child (widget_class, BwFaultBar, bar);
  gtk_widget_class_bind_template_child (widget_class, BwFaultBar, title);
  gtk_widget_class_bind_template_child (widget_class, BwFaultBar, scroll);
  gtk_widget_class_bind_template_child (widget_class, BwFaultBar, text);
  gtk_widget_class_bind_template_callback (widget_class, on_response);
}

static void
bw_fault_bar_init (BwFaultBar *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

/* Some lines of faults are seen without scrolling, more of them with. */
#define MOST_HEIGHT 160
#define BUTTON_WIDTH 80

/* The width of the window, which may not have its size yet. */
static int
available_width (BwFaultBar *self)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));
  int width, height;

  if (root == NULL)
    return 0;
  width = gtk_widget_get_width (GTK_WIDGET (root));
  if (width == 0 && GTK_IS_WINDOW (root))
    gtk_window_get_default_size (GTK_WINDOW (root), &width, &height);
  return width - BUTTON_WIDTH;
}

static void
update_height (BwFaultBar *self)
{
  int height;
  gtk_widget_measure (GTK_WIDGET (self->text), GTK_ORIENTATION_VERTICAL,
                      MAX (available_width (self), -1), NULL, &height, NULL, NULL);
  gtk_scrolled_window_set_min_content_height (self->scroll, MIN (height, MOST_HEIGHT));
}

/**
 * bw_fault_bar_show:
 * @title: what went wrong, in a sentence
 * @faults: (element-type GError): all that is wrong; copied
 */
void
bw_fault_bar_show (BwFaultBar *self, const char *title, GPtrArray *faults)
{
  GString *text = g_string_new (NULL);
  for (guint i = 0; i < faults->len; i++)
    g_string_append_printf (text, "%s%s", i > 0 ? "\n" : "",
                            ((const GError *) faults->pdata[i])->message);

  gtk_label_set_label (self->title, title);
  gtk_label_set_label (self->text, text->str);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, title,
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, text->str, -1);
  gtk_widget_set_visible (GTK_WIDGET (self), TRUE);
  update_height (self);
  gtk_info_bar_set_revealed (self->bar, TRUE);
  g_string_free (text, TRUE);
}

/**
 * bw_fault_bar_get_text:
 *
 * Returns: (transfer none) (nullable): the faults that are shown, one a line
 */
const char *
bw_fault_bar_get_text (BwFaultBar *self)
{
  return gtk_widget_get_visible (GTK_WIDGET (self)) ? gtk_label_get_label (self->text) : NULL;
}
