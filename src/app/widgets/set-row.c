/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "editor-row.h"

#include <string.h>

/* A field that is a set of kinds: a check button for each, taken at once. */

#define BW_TYPE_SET_ROW (bw_set_row_get_type ())
G_DECLARE_FINAL_TYPE (BwSetRow, bw_set_row, BW, SET_ROW, BwEditorRow)

struct _BwSetRow
{
  BwEditorRow parent_instance;

  GPtrArray *buttons; /* borrowed GtkCheckButton, in the kinds' order */
};

G_DEFINE_FINAL_TYPE (BwSetRow, bw_set_row, BW_TYPE_EDITOR_ROW)

static gboolean
text_has (const char *text, const char *id)
{
  g_auto (GStrv) parts = g_strsplit (text, "; ", -1);
  return g_strv_contains ((const char *const *) parts, id);
}

static void
bw_set_row_show (BwEditorRow *row, const char *text)
{
  BwSetRow *self = BW_SET_ROW (row);
  const BwKindTable *kinds = bw_editor_row_get_field (row)->kinds;
  for (guint i = 0; i < kinds->n; i++)
    gtk_check_button_set_active (self->buttons->pdata[i], text_has (text, bw_kind_id (kinds, i)));
}

static char *
bw_set_row_dup_text (BwEditorRow *row)
{
  BwSetRow *self = BW_SET_ROW (row);
  const BwKindTable *kinds = bw_editor_row_get_field (row)->kinds;
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < kinds->n; i++)
    if (gtk_check_button_get_active (self->buttons->pdata[i]))
      g_string_append_printf (text, "%s%s", text->len > 0 ? "; " : "", bw_kind_id (kinds, i));
  return g_string_free (text, FALSE);
}

static void
bw_set_row_constructed (GObject *object)
{
  BwSetRow *self = BW_SET_ROW (object);
  BwEditorRow *row = BW_EDITOR_ROW (object);
  const BwKindTable *kinds = bw_editor_row_get_field (row)->kinds;
  GtkWidget *group = g_object_new (GTK_TYPE_BOX, "orientation", GTK_ORIENTATION_VERTICAL,
                                   "accessible-role", GTK_ACCESSIBLE_ROLE_GROUP, NULL);

  G_OBJECT_CLASS (bw_set_row_parent_class)->constructed (object);
  for (guint i = 0; i < kinds->n; i++)
    {
      GtkWidget *button = gtk_check_button_new_with_label (bw_kind_label (kinds, i));
      g_signal_connect_object (button, "toggled", G_CALLBACK (bw_editor_row_finish_edit), row,
                               G_CONNECT_SWAPPED);
      g_ptr_array_add (self->buttons, button);
      gtk_box_append (GTK_BOX (group), button);
    }
  bw_editor_row_set_control (row, group);
}

static void
bw_set_row_finalize (GObject *object)
{
  g_ptr_array_unref (BW_SET_ROW (object)->buttons);
  G_OBJECT_CLASS (bw_set_row_parent_class)->finalize (object);
}

static void
bw_set_row_class_init (BwSetRowClass *klass)
{
  G_OBJECT_CLASS (klass)->constructed = bw_set_row_constructed;
  G_OBJECT_CLASS (klass)->finalize = bw_set_row_finalize;
  BW_EDITOR_ROW_CLASS (klass)->show = bw_set_row_show;
  BW_EDITOR_ROW_CLASS (klass)->dup_text = bw_set_row_dup_text;
}

static void
bw_set_row_init (BwSetRow *self)
{
  self->buttons = g_ptr_array_new ();
}

/**
 * bw_set_row_new:
 *
 * Returns: (transfer floating): a row to tick the members of @field in
 */
BwEditorRow *
bw_set_row_new (const BwField *field)
{
  return g_object_new (BW_TYPE_SET_ROW, "field", field, NULL);
}
