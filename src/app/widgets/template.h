/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/**
 * bw_dispose_template:
 *
 * For dispose of a class that derives from GtkWidget itself: clears the template and unparents what
 * it made, of which gtk_widget_dispose_template() knows only the children that are bound.
 */
static inline void
bw_dispose_template (GObject *object, GType type)
{
  GtkWidget *child;

  gtk_widget_dispose_template (GTK_WIDGET (object), type);
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);
}

G_END_DECLS
