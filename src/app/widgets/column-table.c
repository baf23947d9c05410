/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "column-table.h"

#include <string.h>

#include "copy-row.h"

/**
 * BwColumnTable:
 *
 * Numbers in columns of equal width each, with a head that says what they are. The whole table is
 * one stop of the Tab key; the arrow keys walk its lines and Control+C copies one.
 */
struct _BwColumnTable
{
  GtkWidget parent_instance;

  GtkListBox *list; /* the only child */
  GtkSizeGroup *widths[BW_COLUMNS_MAX];
  guint n_rows;
};

G_DEFINE_FINAL_TYPE (BwColumnTable, bw_column_table, GTK_TYPE_WIDGET)

/* Lines */

static void
line_free (BwTableLine *line)
{
  for (guint i = 0; i < BW_COLUMNS_MAX; i++)
    g_free (line->cells[i]);
  g_free (line);
}

/**
 * bw_table_lines_new:
 *
 * Returns: (transfer full) (element-type BwTableLine): an empty array that owns its lines
 */
GPtrArray *
bw_table_lines_new (void)
{
  return g_ptr_array_new_with_free_func ((GDestroyNotify) line_free);
}

/**
 * bw_table_lines_add:
 *
 * Returns: (transfer none): the new line, which has its first cell
 */
BwTableLine *
bw_table_lines_add (GPtrArray *lines, BwLineKind kind, const char *name)
{
  BwTableLine *line = g_new0 (BwTableLine, 1);
  line->kind = kind;
  line->cells[0] = g_strdup (name);
  g_ptr_array_add (lines, line);
  return line;
}

/**
 * bw_table_line_add:
 * @cell: (transfer full)
 *
 * Adds a cell to @line; up to %BW_COLUMNS_MAX in all.
 */
void
bw_table_line_add (BwTableLine *line, char *cell)
{
  guint at = 0;
  while (at < BW_COLUMNS_MAX && line->cells[at] != NULL)
    at++;
  g_return_if_fail (at < BW_COLUMNS_MAX);
  line->cells[at] = cell;
}

static char *
line_text (const BwTableLine *line)
{
  GString *text = g_string_new (line->cells[0]);
  for (guint i = 1; i < BW_COLUMNS_MAX && line->cells[i] != NULL; i++)
    g_string_append_printf (text, "\t%s", line->cells[i]);
  g_string_replace (text, "\n", " ", 0);
  return g_string_free (text, FALSE);
}

/**
 * bw_table_lines_text:
 *
 * Returns: (transfer full): all lines, with tabs between the cells
 */
char *
bw_table_lines_text (const GPtrArray *lines)
{
  GString *text = g_string_new (NULL);
  for (guint i = 0; i < lines->len; i++)
    {
      g_autofree char *one = line_text (lines->pdata[i]);
      g_string_append_printf (text, "%s\n", one);
    }
  return g_string_free (text, FALSE);
}

/* Widgets */

static GtkWidget *
cell_new (BwColumnTable *self, guint column)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), column == 0 ? 0 : 1);
  gtk_label_set_yalign (GTK_LABEL (label), 1);
  gtk_label_set_justify (GTK_LABEL (label), column == 0 ? GTK_JUSTIFY_LEFT : GTK_JUSTIFY_RIGHT);
  gtk_label_set_selectable (GTK_LABEL (label), column > 0);
  gtk_size_group_add_widget (self->widths[column], label);
  return label;
}

/* The name of a group, and the cells of a line: one or the other is shown. */
static void
append_row (BwColumnTable *self)
{
  GtkWidget *row = bw_copy_row_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *group = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (group), 0);
  gtk_label_set_wrap (GTK_LABEL (group), TRUE);
  gtk_label_set_selectable (GTK_LABEL (group), TRUE);
  gtk_widget_add_css_class (group, "bw-name");
  gtk_widget_set_margin_top (group, 6);
  gtk_box_append (GTK_BOX (box), group);
  for (guint column = 0; column < BW_COLUMNS_MAX; column++)
    gtk_box_append (GTK_BOX (box), cell_new (self, column));
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), box);
  gtk_list_box_append (self->list, row);
}

static void
set_row_count (BwColumnTable *self, guint count)
{
  for (; self->n_rows < count; self->n_rows++)
    append_row (self);
  for (; self->n_rows > count; self->n_rows--)
    gtk_list_box_remove (self->list,
                         GTK_WIDGET (
                             gtk_list_box_get_row_at_index (self->list, (int) self->n_rows - 1)));
}

static const char *
cell_class (const BwTableLine *line, guint column)
{
  return line->kind == BW_LINE_HEAD || column == 0 ? "bw-light" : "bw-figure";
}

static void
show_row (BwColumnTable *self, guint index, const BwTableLine *line)
{
  GtkListBoxRow *row = gtk_list_box_get_row_at_index (self->list, (int) index);
  GtkWidget *group = gtk_widget_get_first_child (gtk_list_box_row_get_child (row));
  GtkWidget *cell = gtk_widget_get_next_sibling (group);
  g_autofree char *text = line_text (line);

  gtk_widget_set_visible (group, line->kind == BW_LINE_GROUP);
  gtk_label_set_label (GTK_LABEL (group), line->kind == BW_LINE_GROUP ? line->cells[0] : "");
  for (guint i = 0; i < BW_COLUMNS_MAX; i++, cell = gtk_widget_get_next_sibling (cell))
    {
      const char *classes[] = { cell_class (line, i), NULL };
      gtk_widget_set_visible (cell, line->kind != BW_LINE_GROUP && line->cells[i] != NULL);
      gtk_label_set_label (GTK_LABEL (cell), line->cells[i] != NULL ? line->cells[i] : "");
      gtk_widget_set_css_classes (cell, classes);
    }
  bw_copy_row_set_text (BW_COPY_ROW (row), text);
}

/**
 * bw_column_table_show:
 * @lines: (element-type BwTableLine): what to show in place of what was there; copied
 */
void
bw_column_table_show (BwColumnTable *self, const GPtrArray *lines)
{
  set_row_count (self, lines->len);
  for (guint i = 0; i < lines->len; i++)
    show_row (self, i, lines->pdata[i]);
  gtk_widget_set_visible (GTK_WIDGET (self), lines->len > 0);
}

static gboolean
has_focus_within (GtkWidget *widget)
{
  GtkRoot *root = gtk_widget_get_root (widget);
  GtkWidget *focus = root != NULL ? gtk_root_get_focus (root) : NULL;
  return focus != NULL && gtk_widget_is_ancestor (focus, widget);
}

/* From any of its lines Tab leaves the table. */
static gboolean
bw_column_table_focus (GtkWidget *widget, GtkDirectionType direction)
{
  gboolean tab = direction == GTK_DIR_TAB_FORWARD || direction == GTK_DIR_TAB_BACKWARD;
  if (tab && has_focus_within (widget))
    return FALSE;
  return GTK_WIDGET_CLASS (bw_column_table_parent_class)->focus (widget, direction);
}

static void
bw_column_table_dispose (GObject *object)
{
  BwColumnTable *self = BW_COLUMN_TABLE (object);
  GtkWidget *list = GTK_WIDGET (self->list);

  g_clear_pointer (&list, gtk_widget_unparent);
  self->list = NULL;
  for (guint i = 0; i < BW_COLUMNS_MAX; i++)
    g_clear_object (&self->widths[i]);
  G_OBJECT_CLASS (bw_column_table_parent_class)->dispose (object);
}

static void
bw_column_table_class_init (BwColumnTableClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = bw_column_table_dispose;
  GTK_WIDGET_CLASS (klass)->focus = bw_column_table_focus;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static void
bw_column_table_init (BwColumnTable *self)
{
  GtkWidget *list = gtk_list_box_new ();

  self->list = GTK_LIST_BOX (list);
  for (guint i = 0; i < BW_COLUMNS_MAX; i++)
    self->widths[i] = gtk_size_group_new (GTK_SIZE_GROUP_HORIZONTAL);
  gtk_list_box_set_selection_mode (self->list, GTK_SELECTION_NONE);
  gtk_widget_add_css_class (list, "bw-figure-table");
  gtk_widget_set_parent (list, GTK_WIDGET (self));
}

/**
 * bw_column_table_new:
 * @label: what it holds, for a screen reader
 *
 * Returns: (transfer floating): an empty table
 */
BwColumnTable *
bw_column_table_new (const char *label)
{
  BwColumnTable *self = g_object_new (BW_TYPE_COLUMN_TABLE, NULL);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->list), GTK_ACCESSIBLE_PROPERTY_LABEL, label,
                                  -1);
  return self;
}
