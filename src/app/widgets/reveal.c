/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "reveal.h"

#include "template.h"

/* Brings a widget into view, wherever in the window it is. */

/* A page that was hidden gets its size in the next frame, and can be scrolled in the one after. A
 * click that led here may still move the focus when it ends. */
#define FRAMES 3

typedef struct
{
  GtkWidget *focus; /* owned */
  guint frames;
} Reveal;

static void
reveal_free (gpointer data)
{
  Reveal *reveal = data;
  g_object_unref (reveal->focus);
  g_free (reveal);
}

static void
open_ancestor (GtkWidget *ancestor, GtkWidget *child)
{
  if (GTK_IS_STACK (ancestor))
    gtk_stack_set_visible_child (GTK_STACK (ancestor), child);
  else if (GTK_IS_EXPANDER (ancestor))
    gtk_expander_set_expanded (GTK_EXPANDER (ancestor), TRUE);
  else if (GTK_IS_REVEALER (ancestor))
    gtk_revealer_set_reveal_child (GTK_REVEALER (ancestor), TRUE);
  else if (GTK_IS_POPOVER (ancestor))
    gtk_popover_popup (GTK_POPOVER (ancestor));
}

static void
scroll_to (GtkScrolledWindow *scroll, GtkWidget *widget)
{
  GtkWidget *content = gtk_scrolled_window_get_child (scroll);
  graphene_rect_t bounds;

  if (GTK_IS_VIEWPORT (content))
    content = gtk_viewport_get_child (GTK_VIEWPORT (content));
  if (content == NULL || !gtk_widget_compute_bounds (widget, content, &bounds))
    return;
  gtk_adjustment_clamp_page (gtk_scrolled_window_get_vadjustment (scroll), (double) bounds.origin.y,
                             (double) (bounds.origin.y + bounds.size.height));
}

static gboolean
on_frame (GtkWidget *widget, GdkFrameClock *clock, gpointer data)
{
  Reveal *reveal = data;

  if (++reveal->frames < FRAMES)
    return G_SOURCE_CONTINUE;
  if (!bw_has_focus_within (widget))
    gtk_widget_grab_focus (reveal->focus);
  for (GtkWidget *at = gtk_widget_get_parent (widget); at != NULL; at = gtk_widget_get_parent (at))
    if (GTK_IS_SCROLLED_WINDOW (at))
      scroll_to (GTK_SCROLLED_WINDOW (at), widget);
  return G_SOURCE_REMOVE;
}

/**
 * bw_reveal:
 * @widget: what to bring into view
 * @focus: the widget in it that gets the focus
 *
 * Turns to the page that @widget is on, opens what it is folded into, scrolls to it, and moves the
 * focus to @focus.
 */
void
bw_reveal (GtkWidget *widget, GtkWidget *focus)
{
  g_return_if_fail (GTK_IS_WIDGET (widget) && GTK_IS_WIDGET (focus));
  GtkRoot *root = gtk_widget_get_root (widget);
  Reveal *reveal = g_new0 (Reveal, 1);

  for (GtkWidget *child = widget; gtk_widget_get_parent (child) != NULL;
       child = gtk_widget_get_parent (child))
    open_ancestor (gtk_widget_get_parent (child), child);
  if (GTK_IS_WINDOW (root))
    gtk_window_present (GTK_WINDOW (root));
  gtk_widget_grab_focus (focus);
  reveal->focus = g_object_ref (focus);
  gtk_widget_add_tick_callback (widget, on_frame, reveal, reveal_free);
}
