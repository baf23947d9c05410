/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "editor-row.h"

/* A field that is yes or no: a switch, taken at once. */

#define BW_TYPE_SWITCH_ROW (bw_switch_row_get_type ())
G_DECLARE_FINAL_TYPE (BwSwitchRow, bw_switch_row, BW, SWITCH_ROW, BwEditorRow)

struct _BwSwitchRow
{
  BwEditorRow parent_instance;
};

G_DEFINE_FINAL_TYPE (BwSwitchRow, bw_switch_row, BW_TYPE_EDITOR_ROW)

static void
bw_switch_row_show (BwEditorRow *row, const char *text)
{
  gtk_switch_set_active (GTK_SWITCH (bw_editor_row_get_control (row)), g_str_equal (text, "yes"));
}

static char *
bw_switch_row_dup_text (BwEditorRow *row)
{
  gboolean on = gtk_switch_get_active (GTK_SWITCH (bw_editor_row_get_control (row)));
  return g_strdup (on ? "yes" : "no");
}

static void
bw_switch_row_constructed (GObject *object)
{
  GtkWidget *control = gtk_switch_new ();

  G_OBJECT_CLASS (bw_switch_row_parent_class)->constructed (object);
  gtk_widget_set_halign (control, GTK_ALIGN_START);
  g_signal_connect_object (control, "notify::active", G_CALLBACK (bw_editor_row_finish_edit),
                           object, G_CONNECT_SWAPPED);
  bw_editor_row_set_control (BW_EDITOR_ROW (object), control);
}

static void
bw_switch_row_class_init (BwSwitchRowClass *klass)
{
  G_OBJECT_CLASS (klass)->constructed = bw_switch_row_constructed;
  BW_EDITOR_ROW_CLASS (klass)->show = bw_switch_row_show;
  BW_EDITOR_ROW_CLASS (klass)->dup_text = bw_switch_row_dup_text;
}

static void
bw_switch_row_init (BwSwitchRow *self)
{
}

/**
 * bw_switch_row_new:
 *
 * Returns: (transfer floating): a row to switch @field in
 */
BwEditorRow *
bw_switch_row_new (const BwField *field)
{
  return g_object_new (BW_TYPE_SWITCH_ROW, "field", field, NULL);
}
