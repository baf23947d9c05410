/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "reading-box.h"

/**
 * BwReadingBox:
 *
 * A box through which Tab goes in the order of its children. GTK goes by where their middles lie
 * from the top, and so skips to and fro in a row of fields or buttons of different heights.
 */
struct _BwReadingBox
{
  GtkBox parent_instance;
};

G_DEFINE_FINAL_TYPE (BwReadingBox, bw_reading_box, GTK_TYPE_BOX)

static GtkWidget *
next_child (GtkWidget *box, GtkWidget *child, gboolean back)
{
  if (child == NULL)
    return back ? gtk_widget_get_last_child (box) : gtk_widget_get_first_child (box);
  return back ? gtk_widget_get_prev_sibling (child) : gtk_widget_get_next_sibling (child);
}

/**
 * bw_tab_in_order:
 * @direction: that of Tab, forward or backward
 *
 * Moves the focus to the next place in @widget, in the order of its children.
 *
 * Returns: whether there was one
 */
gboolean
bw_tab_in_order (GtkWidget *widget, GtkDirectionType direction)
{
  g_return_val_if_fail (GTK_IS_WIDGET (widget), FALSE);
  gboolean back = direction == GTK_DIR_TAB_BACKWARD;
  GtkWidget *child = gtk_widget_get_focus_child (widget);

  if (child != NULL && gtk_widget_child_focus (child, direction))
    return TRUE;
  while ((child = next_child (widget, child, back)) != NULL)
    if (gtk_widget_get_mapped (child) && gtk_widget_child_focus (child, direction))
      return TRUE;
  return FALSE;
}

static gboolean
bw_reading_box_focus (GtkWidget *widget, GtkDirectionType direction)
{
  if (direction == GTK_DIR_TAB_FORWARD || direction == GTK_DIR_TAB_BACKWARD)
    return bw_tab_in_order (widget, direction);
  return GTK_WIDGET_CLASS (bw_reading_box_parent_class)->focus (widget, direction);
}

static void
bw_reading_box_class_init (BwReadingBoxClass *klass)
{
  GTK_WIDGET_CLASS (klass)->focus = bw_reading_box_focus;
}

static void
bw_reading_box_init (BwReadingBox *self)
{
}

/**
 * bw_reading_box_new:
 *
 * Returns: (transfer floating): an empty box
 */
GtkWidget *
bw_reading_box_new (GtkOrientation orientation, int spacing)
{
  return g_object_new (BW_TYPE_READING_BOX, "orientation", orientation, "spacing", spacing, NULL);
}
