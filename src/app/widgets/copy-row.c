/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "copy-row.h"

/**
 * BwCopyRow:
 *
 * A line of a table of figures. Control+C copies the whole line; with the pointer any part of its
 * text can be selected and copied. It is one stop for the Tab and arrow keys, however many labels
 * it holds.
 */
struct _BwCopyRow
{
  GtkListBoxRow parent_instance;

  char *text; /* nullable */
};

G_DEFINE_FINAL_TYPE (BwCopyRow, bw_copy_row, GTK_TYPE_LIST_BOX_ROW)

static void
copy (GtkWidget *widget, const char *action, GVariant *parameter)
{
  gdk_clipboard_set_text (gtk_widget_get_clipboard (widget),
                          bw_copy_row_get_text (BW_COPY_ROW (widget)));
}

/* The row itself takes the focus, never a label in it. */
static gboolean
bw_copy_row_focus (GtkWidget *widget, GtkDirectionType direction)
{
  if (gtk_widget_has_focus (widget) || gtk_widget_get_focus_child (widget) != NULL)
    return FALSE;
  return gtk_widget_grab_focus (widget);
}

static void
bw_copy_row_finalize (GObject *object)
{
  g_free (BW_COPY_ROW (object)->text);
  G_OBJECT_CLASS (bw_copy_row_parent_class)->finalize (object);
}

static void
bw_copy_row_class_init (BwCopyRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = bw_copy_row_finalize;
  widget_class->focus = bw_copy_row_focus;
  gtk_widget_class_install_action (widget_class, "row.copy", NULL, copy);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_c, GDK_CONTROL_MASK, "row.copy", NULL);
}

static void
bw_copy_row_init (BwCopyRow *self)
{
  gtk_list_box_row_set_activatable (GTK_LIST_BOX_ROW (self), FALSE);
  gtk_list_box_row_set_selectable (GTK_LIST_BOX_ROW (self), FALSE);
}

/**
 * bw_copy_row_new:
 *
 * Returns: (transfer floating): an empty line
 */
GtkWidget *
bw_copy_row_new (void)
{
  return g_object_new (BW_TYPE_COPY_ROW, NULL);
}

/**
 * bw_copy_row_set_text:
 * @text: what is copied, and what a screen reader says
 */
void
bw_copy_row_set_text (BwCopyRow *self, const char *text)
{
  g_free (self->text);
  self->text = g_strdup (text);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, text, -1);
}

/**
 * bw_copy_row_get_text:
 *
 * Returns: (transfer none): what is copied
 */
const char *
bw_copy_row_get_text (BwCopyRow *self)
{
  return self->text != NULL ? self->text : "";
}
