/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "editor-row.h"

#include <glib/gi18n-lib.h>

/* A field that is one of several kinds, or a switch that may be unknown: a drop-down list, taken at
 * once. Where it may be unknown, that is the last line of the list. */

#define BW_TYPE_CHOICE_ROW (bw_choice_row_get_type ())
G_DECLARE_FINAL_TYPE (BwChoiceRow, bw_choice_row, BW, CHOICE_ROW, BwEditorRow)

struct _BwChoiceRow
{
  BwEditorRow parent_instance;
};

G_DEFINE_FINAL_TYPE (BwChoiceRow, bw_choice_row, BW_TYPE_EDITOR_ROW)

static GtkDropDown *
drop_down (BwEditorRow *row)
{
  return GTK_DROP_DOWN (bw_editor_row_get_control (row));
}

static const BwKind switch_kinds[] = { { "no", N_ ("no") }, { "yes", N_ ("yes") } };
static const BwKindTable switches = { G_N_ELEMENTS (switch_kinds), switch_kinds };

/* What the field is one of. */
static const BwKindTable *
kinds_of (BwEditorRow *row)
{
  const BwField *field = bw_editor_row_get_field (row);
  return field->type == BW_FIELD_SWITCH ? &switches : field->kinds;
}

static void
bw_choice_row_show (BwEditorRow *row, const char *text)
{
  const BwKindTable *kinds = kinds_of (row);
  guint value = 0;
  if (bw_kind_find (kinds, text, &value))
    gtk_drop_down_set_selected (drop_down (row), value);
  else if (bw_editor_row_get_field (row)->flags & BW_FIELD_FIGURE)
    gtk_drop_down_set_selected (drop_down (row), kinds->n);
}

static char *
bw_choice_row_dup_text (BwEditorRow *row)
{
  const BwKindTable *kinds = kinds_of (row);
  guint selected = gtk_drop_down_get_selected (drop_down (row));
  return g_strdup (selected < kinds->n ? bw_kind_id (kinds, selected) : "");
}

/* Long words wrap, so that the form is no wider than its place. */

static void
on_line_setup (GtkSignalListItemFactory *factory, GtkListItem *line)
{
  GtkWidget *label = gtk_label_new (NULL);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_list_item_set_child (line, label);
}

static void
on_line_bind (GtkSignalListItemFactory *factory, GtkListItem *line)
{
  GtkStringObject *item = gtk_list_item_get_item (line);
  gtk_label_set_label (GTK_LABEL (gtk_list_item_get_child (line)),
                       gtk_string_object_get_string (item));
}

static GtkListItemFactory *
factory_new (void)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  g_signal_connect (factory, "setup", G_CALLBACK (on_line_setup), NULL);
  g_signal_connect (factory, "bind", G_CALLBACK (on_line_bind), NULL);
  return factory;
}

static void
bw_choice_row_constructed (GObject *object)
{
  BwEditorRow *row = BW_EDITOR_ROW (object);
  const BwKindTable *kinds = kinds_of (row);
  GtkStringList *labels = gtk_string_list_new (NULL);

  G_OBJECT_CLASS (bw_choice_row_parent_class)->constructed (object);
  for (guint i = 0; i < kinds->n; i++)
    gtk_string_list_append (labels, bw_kind_label (kinds, i));
  if (bw_editor_row_get_field (row)->flags & BW_FIELD_FIGURE)
    gtk_string_list_append (labels, bw_kind_label (kinds, kinds->n));
  GtkWidget *control = gtk_drop_down_new (G_LIST_MODEL (labels), NULL);
  g_autoptr (GtkListItemFactory) factory = factory_new ();
  gtk_drop_down_set_factory (GTK_DROP_DOWN (control), factory);
  g_signal_connect_object (control, "notify::selected", G_CALLBACK (bw_editor_row_finish_edit), row,
                           G_CONNECT_SWAPPED);
  bw_editor_row_set_control (row, control);
}

static void
bw_choice_row_class_init (BwChoiceRowClass *klass)
{
  G_OBJECT_CLASS (klass)->constructed = bw_choice_row_constructed;
  BW_EDITOR_ROW_CLASS (klass)->show = bw_choice_row_show;
  BW_EDITOR_ROW_CLASS (klass)->dup_text = bw_choice_row_dup_text;
}

static void
bw_choice_row_init (BwChoiceRow *self)
{
}

/**
 * bw_choice_row_new:
 *
 * Returns: (transfer floating): a row to choose @field in
 */
BwEditorRow *
bw_choice_row_new (const BwField *field)
{
  return g_object_new (BW_TYPE_CHOICE_ROW, "field", field, NULL);
}
