/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "help.h"

#include <glib/gi18n-lib.h>

#include "manual-text.h"

/**
 * BwHelp:
 *
 * The manual in a window of its own, beside the window that it belongs to: the list of its pages,
 * and one of them. Both are one stop of the Tab key each; Escape closes it.
 */
struct _BwHelp
{
  GtkWindow parent_instance;

  GtkListBox *list;
  GtkTextView *text;

  GPtrArray *manual;
  guint page;
  GtkTextMark *aim;   /* nullable, borrowed from the buffer: what is scrolled to */
  guint frames_to_go; /* until the text has settled */
};

G_DEFINE_FINAL_TYPE (BwHelp, bw_help, GTK_TYPE_WINDOW)

static const char *
title_of (const BwManualPage *page)
{
  return bw_manual_block (page, 0)->text;
}

static void
show_page (BwHelp *self, guint index)
{
  const BwManualPage *page = bw_manual_page (self->manual, index);
  g_autoptr (GtkTextBuffer) buffer = bw_manual_buffer_new (page);

  self->page = index;
  self->aim = NULL;
  gtk_text_view_set_buffer (self->text, buffer);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->text), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  title_of (page), -1);
}

static void
on_row (BwHelp *self, GtkListBoxRow *row)
{
  if (row != NULL && (guint) gtk_list_box_row_get_index (row) != self->page)
    show_page (self, (guint) gtk_list_box_row_get_index (row));
}

static void
add_row (BwHelp *self, const BwManualPage *page)
{
  GtkWidget *label = gtk_label_new (title_of (page));

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_list_box_append (self->list, label);
}

/* Two stops of the Tab key: the text, and the list at its selected row, since a row that gets the
 * focus is selected. */
static gboolean
bw_help_focus (GtkWidget *widget, GtkDirectionType direction)
{
  BwHelp *self = BW_HELP (widget);
  GtkListBoxRow *row = gtk_list_box_get_selected_row (self->list);

  if (direction != GTK_DIR_TAB_FORWARD && direction != GTK_DIR_TAB_BACKWARD)
    return GTK_WIDGET_CLASS (bw_help_parent_class)->focus (widget, direction);
  return gtk_widget_grab_focus (gtk_widget_has_focus (GTK_WIDGET (self->text)) && row != NULL
                                    ? GTK_WIDGET (row)
                                    : GTK_WIDGET (self->text));
}

static void
bw_help_dispose (GObject *object)
{
  BwHelp *self = BW_HELP (object);

  gtk_widget_dispose_template (GTK_WIDGET (object), BW_TYPE_HELP);
  g_clear_pointer (&self->manual, g_ptr_array_unref);
  G_OBJECT_CLASS (bw_help_parent_class)->dispose (object);
}

static void
bw_help_class_init (BwHelpClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bw_help_dispose;
  widget_class->focus = bw_help_focus;
  gtk_widget_class_set_template_from_resource (widget_class, "/org/breezeway/Breezeway/help.ui");
  gtk_widget_class_bind_template_child (widget_class, BwHelp, list);
  gtk_widget_class_bind_template_child (widget_class, BwHelp, text);
  gtk_widget_class_bind_template_callback (widget_class, on_row);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
bw_help_init (BwHelp *self)
{
  g_autoptr (GError) error = NULL;

  gtk_widget_init_template (GTK_WIDGET (self));
  self->manual = bw_manual_load (&error);
  if (self->manual == NULL)
    g_error ("the manual cannot be read: %s", error->message); /* it is part of the program */
  for (guint i = 0; i < self->manual->len; i++)
    add_row (self, bw_manual_page (self->manual, i));
  self->page = G_MAXUINT;
}

/* The help that @parent has open already. */
static BwHelp *
find_open (GtkWindow *parent)
{
  GListModel *windows = gtk_window_get_toplevels ();
  for (guint i = 0; i < g_list_model_get_n_items (windows); i++)
    {
      g_autoptr (GtkWindow) window = g_list_model_get_item (windows, i);
      if (BW_IS_HELP (window) && gtk_window_get_transient_for (window) == parent)
        return BW_HELP (window);
    }
  return NULL;
}

/**
 * bw_help_open:
 * @parent: the window that it belongs to, and with which it goes
 *
 * Returns: (transfer none): the help of @parent, not shown yet if it was not open
 */
BwHelp *
bw_help_open (GtkWindow *parent)
{
  g_return_val_if_fail (GTK_IS_WINDOW (parent), NULL);
  BwHelp *self = find_open (parent);

  if (self == NULL)
    self = g_object_new (BW_TYPE_HELP, "transient-for", parent, "destroy-with-parent", TRUE, NULL);
  return self;
}

/* Where on the page it speaks of @view; %NULL if nowhere, or in its first section, for which it is
 * read from the top. */
static GtkTextMark *
mark_of (BwHelp *self, const BwManualPage *page, const char *view)
{
  guint n_sections = 0;
  for (guint i = 0; view != NULL && i < page->blocks->len; i++)
    {
      const BwBlock *block = bw_manual_block (page, i);
      n_sections += block->section != NULL ? 1 : 0;
      if (g_strcmp0 (block->view, view) == 0)
        return n_sections > 1 ? gtk_text_buffer_get_mark (gtk_text_view_get_buffer (self->text),
                                                          block->section)
                              : NULL;
    }
  return NULL;
}

/* The text is laid out bit by bit, and anew when its width is known: for so many frames it is seen
 * to that what is scrolled to stands at the top. */
#define FRAMES_TO_SETTLE 10

static gboolean
on_frame (GtkWidget *widget, GdkFrameClock *clock, gpointer data)
{
  BwHelp *self = BW_HELP (widget);
  if (self->aim == NULL || self->frames_to_go == 0)
    return G_SOURCE_REMOVE;
  self->frames_to_go--;
  gtk_text_view_scroll_to_mark (self->text, self->aim, 0, TRUE, 0, 0);
  return G_SOURCE_CONTINUE;
}

static void
scroll_to (BwHelp *self, GtkTextMark *mark)
{
  self->aim = mark;
  self->frames_to_go = FRAMES_TO_SETTLE;
  gtk_widget_add_tick_callback (GTK_WIDGET (self), on_frame, NULL, NULL);
}

/**
 * bw_help_show:
 * @page: the id of a page of the manual; of another the first is shown
 * @view: (nullable): the view that the person looks at
 *
 * Shows the window at that page, and there at what it says of @view.
 */
void
bw_help_show (BwHelp *self, const char *page, const char *view)
{
  g_return_if_fail (BW_IS_HELP (self) && page != NULL);
  guint index = 0;

  for (guint i = 0; i < self->manual->len; i++)
    if (g_str_equal (bw_manual_page (self->manual, i)->id, page))
      index = i;
  show_page (self, index);
  gtk_list_box_select_row (self->list,
                           gtk_list_box_get_row_at_index (self->list, (int) index));
  GtkTextMark *mark = mark_of (self, bw_manual_page (self->manual, index), view);
  if (mark != NULL)
    scroll_to (self, mark);
  gtk_widget_grab_focus (GTK_WIDGET (self->text));
  gtk_window_present (GTK_WINDOW (self));
}

/**
 * bw_help_get_page:
 *
 * Returns: (transfer none): the id of the page that is shown
 */
const char *
bw_help_get_page (BwHelp *self)
{
  g_return_val_if_fail (BW_IS_HELP (self), NULL);
  return self->page < self->manual->len ? bw_manual_page (self->manual, self->page)->id : NULL;
}
