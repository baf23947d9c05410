/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "figure-table.h"

#include <string.h>

#include "copy-row.h"
#include "result-view.h"

/**
 * BwFigureTable:
 *
 * Lines of name, count and value, with equal columns. Units are lighter than their numbers. The
 * whole table is one stop of the Tab key; the arrow keys walk its lines and Control+C copies one.
 */
struct _BwFigureTable
{
  GtkWidget parent_instance;

  GtkListBox *list; /* the only child */
  GtkSizeGroup *name_width;
  GtkSizeGroup *count_width;
  guint n_rows;
};

G_DEFINE_FINAL_TYPE (BwFigureTable, bw_figure_table, GTK_TYPE_WIDGET)

static void
figure_free (BwTableFigure *figure)
{
  g_free (figure->name);
  g_free (figure->count);
  g_free (figure->value);
  g_free (figure);
}

/**
 * bw_figure_new:
 * @count: (nullable): in pixels or lines
 *
 * Returns: (transfer full): a line of a table, for an array made by bw_figures_new()
 */
BwTableFigure *
bw_figure_new (const char *name, const char *count, const char *value)
{
  BwTableFigure *figure = g_new (BwTableFigure, 1);
  *figure = (BwTableFigure){ g_strdup (name), g_strdup (count), g_strdup (value) };
  return figure;
}

/**
 * bw_figures_new:
 *
 * Returns: (transfer full) (element-type BwTableFigure): an empty array that owns its lines
 */
GPtrArray *
bw_figures_new (void)
{
  return g_ptr_array_new_with_free_func ((GDestroyNotify) figure_free);
}

/**
 * bw_figure_label_new:
 * @text: as of bw_figure_label_set()
 * @css_class: (nullable)
 *
 * Returns: (transfer floating): a label that can be selected
 */
GtkWidget *
bw_figure_label_new (const char *text, const char *css_class, gboolean wrap)
{
  GtkWidget *label = gtk_label_new (NULL);
  bw_figure_label_set (GTK_LABEL (label), text);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), wrap);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_selectable (GTK_LABEL (label), TRUE);
  if (css_class != NULL)
    gtk_widget_add_css_class (label, css_class);
  return label;
}

static GtkWidget *
label_new (float xalign, const char *css_class)
{
  GtkWidget *label = gtk_label_new (NULL);
  gtk_label_set_xalign (GTK_LABEL (label), xalign);
  gtk_label_set_yalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_selectable (GTK_LABEL (label), TRUE);
  gtk_widget_add_css_class (label, css_class);
  return label;
}

static void
append_row (BwFigureTable *self)
{
  GtkWidget *row = bw_copy_row_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *name = label_new (0, "bw-light");
  GtkWidget *count = label_new (1, "bw-figure");
  GtkWidget *value = label_new (0, "bw-figure");

  gtk_label_set_wrap (GTK_LABEL (name), FALSE);
  gtk_label_set_wrap (GTK_LABEL (count), FALSE);
  gtk_label_set_selectable (GTK_LABEL (name), FALSE);
  gtk_widget_set_hexpand (value, TRUE);
  gtk_size_group_add_widget (self->name_width, name);
  gtk_size_group_add_widget (self->count_width, count);
  gtk_box_append (GTK_BOX (box), name);
  gtk_box_append (GTK_BOX (box), count);
  gtk_box_append (GTK_BOX (box), value);
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), box);
  gtk_list_box_append (self->list, row);
}

static void
set_row_count (BwFigureTable *self, guint count)
{
  for (; self->n_rows < count; self->n_rows++)
    append_row (self);
  for (; self->n_rows > count; self->n_rows--)
    gtk_list_box_remove (self->list,
                         GTK_WIDGET (
                             gtk_list_box_get_row_at_index (self->list, (int) self->n_rows - 1)));
}

static void
show_row (BwFigureTable *self, guint index, const BwTableFigure *figure)
{
  GtkListBoxRow *row = gtk_list_box_get_row_at_index (self->list, (int) index);
  GtkWidget *name = gtk_widget_get_first_child (gtk_list_box_row_get_child (row));
  GtkWidget *count = gtk_widget_get_next_sibling (name);
  const char *counted = figure->count != NULL ? figure->count : "";
  g_autofree char *text = *counted != '\0'
                              ? g_strjoin ("\t", figure->name, counted, figure->value, NULL)
                              : g_strjoin ("\t", figure->name, figure->value, NULL);

  gtk_label_set_label (GTK_LABEL (name), figure->name);
  bw_figure_label_set (GTK_LABEL (count), counted);
  bw_figure_label_set (GTK_LABEL (gtk_widget_get_next_sibling (count)), figure->value);
  bw_copy_row_set_text (BW_COPY_ROW (row), text);
}

static gboolean
any_count (GPtrArray *figures)
{
  for (guint i = 0; i < figures->len; i++)
    if (((BwTableFigure *) figures->pdata[i])->count != NULL)
      return TRUE;
  return FALSE;
}

static void
show_counts (BwFigureTable *self, gboolean visible)
{
  for (guint i = 0; i < self->n_rows; i++)
    {
      GtkListBoxRow *row = gtk_list_box_get_row_at_index (self->list, (int) i);
      GtkWidget *name = gtk_widget_get_first_child (gtk_list_box_row_get_child (row));
      gtk_widget_set_visible (gtk_widget_get_next_sibling (name), visible);
    }
}

/**
 * bw_figure_table_show:
 * @figures: (element-type BwTableFigure): what to show in place of what was there; copied
 */
void
bw_figure_table_show (BwFigureTable *self, GPtrArray *figures)
{
  set_row_count (self, figures->len);
  for (guint i = 0; i < figures->len; i++)
    show_row (self, i, figures->pdata[i]);
  show_counts (self, any_count (figures));
}

static void
bw_figure_table_dispose (GObject *object)
{
  BwFigureTable *self = BW_FIGURE_TABLE (object);
  GtkWidget *list = GTK_WIDGET (self->list);

  g_clear_pointer (&list, gtk_widget_unparent);
  self->list = NULL;
  g_clear_object (&self->name_width);
  g_clear_object (&self->count_width);
  G_OBJECT_CLASS (bw_figure_table_parent_class)->dispose (object);
}

static void
bw_figure_table_class_init (BwFigureTableClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = bw_figure_table_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static void
bw_figure_table_init (BwFigureTable *self)
{
  GtkWidget *list = gtk_list_box_new ();

  self->list = GTK_LIST_BOX (list);
  self->name_width = gtk_size_group_new (GTK_SIZE_GROUP_HORIZONTAL);
  self->count_width = gtk_size_group_new (GTK_SIZE_GROUP_HORIZONTAL);
  gtk_list_box_set_selection_mode (self->list, GTK_SELECTION_NONE);
  gtk_widget_add_css_class (list, "bw-figure-table");
  gtk_widget_set_parent (list, GTK_WIDGET (self));
}
