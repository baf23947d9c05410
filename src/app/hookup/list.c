/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "list.h"

#include "app/widgets/copy-row.h"
#include "app/widgets/figure-table.h"

/**
 * BwHookupList:
 *
 * A heading and lines of text under it, each with a second, lighter text. The Tab and arrow keys walk
 * its lines and Control+C copies one. Lines are changed in place, so that
 * the focus stays where it is.
 */
struct _BwHookupList
{
  GtkWidget parent_instance;

  GtkWidget *head; /* children */
  GtkListBox *list;
  guint n_rows;
  guint filled; /* while lines are added */
};

G_DEFINE_FINAL_TYPE (BwHookupList, bw_hookup_list, GTK_TYPE_WIDGET)

static void
bw_hookup_list_dispose (GObject *object)
{
  BwHookupList *self = BW_HOOKUP_LIST (object);
  GtkWidget *list = GTK_WIDGET (self->list);

  g_clear_pointer (&self->head, gtk_widget_unparent);
  g_clear_pointer (&list, gtk_widget_unparent);
  self->list = NULL;
  G_OBJECT_CLASS (bw_hookup_list_parent_class)->dispose (object);
}

static void
bw_hookup_list_class_init (BwHookupListClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = bw_hookup_list_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BOX_LAYOUT);
}

static void
bw_hookup_list_init (BwHookupList *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));

  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  gtk_box_layout_set_spacing (GTK_BOX_LAYOUT (layout), 4);
}

/**
 * bw_hookup_list_new:
 * @name: of the list
 * @title: its heading, which is also its name for a screen reader
 *
 * Returns: (transfer floating): an empty list, which is not shown
 */
BwHookupList *
bw_hookup_list_new (const char *name, const char *title)
{
  BwHookupList *self = g_object_new (BW_TYPE_HOOKUP_LIST, "name", name, "visible", FALSE, NULL);

  self->head = gtk_label_new (title);
  gtk_label_set_xalign (GTK_LABEL (self->head), 0);
  gtk_widget_add_css_class (self->head, "bw-heading");
  gtk_widget_set_parent (self->head, GTK_WIDGET (self));
  self->list = GTK_LIST_BOX (gtk_list_box_new ());
  gtk_list_box_set_selection_mode (self->list, GTK_SELECTION_NONE);
  gtk_widget_add_css_class (GTK_WIDGET (self->list), "bw-figure-table");
  gtk_accessible_update_relation (GTK_ACCESSIBLE (self->list), GTK_ACCESSIBLE_RELATION_LABELLED_BY,
                                  self->head, NULL, -1);
  gtk_widget_set_parent (GTK_WIDGET (self->list), GTK_WIDGET (self));
  return self;
}

static GtkWidget *
label_new (const char *css_class)
{
  GtkWidget *label = gtk_label_new (NULL);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_natural_wrap_mode (GTK_LABEL (label), GTK_NATURAL_WRAP_WORD);
  gtk_label_set_selectable (GTK_LABEL (label), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 46);
  gtk_widget_add_css_class (label, css_class);
  return label;
}

static GtkListBoxRow *
take_row (BwHookupList *self)
{
  if (self->filled == self->n_rows)
    {
      GtkWidget *row = bw_copy_row_new ();
      GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
      gtk_box_append (GTK_BOX (box), label_new ("bw-figure"));
      gtk_box_append (GTK_BOX (box), label_new ("bw-light"));
      gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), box);
      gtk_list_box_append (self->list, row);
      self->n_rows++;
    }
  return gtk_list_box_get_row_at_index (self->list, (int) self->filled++);
}

/**
 * bw_hookup_list_clear:
 *
 * Begins a new set of lines.
 */
void
bw_hookup_list_clear (BwHookupList *self)
{
  self->filled = 0;
}

/**
 * bw_hookup_list_add:
 * @detail: (nullable): more of it; empty: nothing
 */
void
bw_hookup_list_add (BwHookupList *self, const char *text, const char *detail)
{
  GtkListBoxRow *row = take_row (self);
  GtkWidget *first = gtk_widget_get_first_child (gtk_list_box_row_get_child (row));
  GtkWidget *second = gtk_widget_get_next_sibling (first);
  gboolean more = detail != NULL && *detail != '\0';
  g_autofree char *both = more ? g_strdup_printf ("%s: %s", text, detail) : g_strdup (text);

  bw_figure_label_set (GTK_LABEL (first), text);
  bw_figure_label_set (GTK_LABEL (second), more ? detail : "");
  gtk_widget_set_visible (second, more);
  bw_copy_row_set_text (BW_COPY_ROW (row), both);
}

/**
 * bw_hookup_list_done:
 *
 * Removes the lines that are left of an earlier set. An empty list is not shown.
 */
void
bw_hookup_list_done (BwHookupList *self)
{
  for (; self->n_rows > self->filled; self->n_rows--)
    gtk_list_box_remove (self->list,
                         GTK_WIDGET (
                             gtk_list_box_get_row_at_index (self->list, (int) self->n_rows - 1)));
  gtk_widget_set_visible (GTK_WIDGET (self), self->n_rows > 0);
}

/**
 * bw_hookup_list_count:
 *
 * Returns: the number of lines
 */
guint
bw_hookup_list_count (BwHookupList *self)
{
  return self->n_rows;
}

/**
 * bw_hookup_list_text:
 * @index: below bw_hookup_list_count()
 *
 * Returns: (transfer none): a line as it is copied
 */
const char *
bw_hookup_list_text (BwHookupList *self, guint index)
{
  return bw_copy_row_get_text (
      BW_COPY_ROW (gtk_list_box_get_row_at_index (self->list, (int) index)));
}
