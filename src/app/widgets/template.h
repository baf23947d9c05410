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

/**
 * bw_label_control:
 * @label: its name on screen
 *
 * Tells a screen reader that @label names @control. Of a drop-down list the button in it gets the
 * focus, and is named as well.
 */
static inline void
bw_label_control (GtkWidget *control, GtkWidget *label)
{
  gtk_accessible_update_relation (GTK_ACCESSIBLE (control), GTK_ACCESSIBLE_RELATION_LABELLED_BY,
                                  label, NULL, -1);
  if (GTK_IS_DROP_DOWN (control))
    gtk_accessible_update_relation (GTK_ACCESSIBLE (gtk_widget_get_first_child (control)),
                                    GTK_ACCESSIBLE_RELATION_LABELLED_BY, label, NULL, -1);
}

/**
 * bw_has_focus_within:
 *
 * Returns: whether the focus is on something in @widget
 */
static inline gboolean
bw_has_focus_within (GtkWidget *widget)
{
  GtkRoot *root = gtk_widget_get_root (widget);
  GtkWidget *focus = root != NULL ? gtk_root_get_focus (root) : NULL;
  return focus != NULL && gtk_widget_is_ancestor (focus, widget);
}

/**
 * bw_char_width:
 *
 * Returns: the width of a usual letter in the font of @widget, in units of Pango
 */
static inline int
bw_char_width (GtkWidget *widget)
{
  PangoContext *context = gtk_widget_get_pango_context (widget);
  PangoFontMetrics *metrics = pango_context_get_metrics (context, NULL, NULL);
  int width = pango_font_metrics_get_approximate_char_width (metrics);
  pango_font_metrics_unref (metrics);
  return width;
}

G_END_DECLS
