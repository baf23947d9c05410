/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "editor-row.h"

#include <glib/gi18n-lib.h>

/* A field that is typed on one line: a text, a quantity with its unit, a range. What was typed is
 * taken with Enter, when the focus leaves, or when the document asks for it; Escape takes it back. */

#define BW_TYPE_ENTRY_ROW (bw_entry_row_get_type ())
G_DECLARE_FINAL_TYPE (BwEntryRow, bw_entry_row, BW, ENTRY_ROW, BwEditorRow)

struct _BwEntryRow
{
  BwEditorRow parent_instance;
};

G_DEFINE_FINAL_TYPE (BwEntryRow, bw_entry_row, BW_TYPE_EDITOR_ROW)

static GtkEditable *
editable (BwEditorRow *row)
{
  return GTK_EDITABLE (bw_editor_row_get_control (row));
}

/* What the model shows is no typing: the field's own undo must not go behind it. */
static void
bw_entry_row_show (BwEditorRow *row, const char *text)
{
  gtk_editable_set_enable_undo (editable (row), FALSE);
  gtk_editable_set_text (editable (row), text);
  gtk_editable_set_enable_undo (editable (row), TRUE);
}

static char *
bw_entry_row_dup_text (BwEditorRow *row)
{
  return g_strdup (gtk_editable_get_text (editable (row)));
}

static void
on_leave (BwEditorRow *row)
{
  if (bw_editor_row_is_edited (row))
    bw_editor_row_finish_edit (row);
}

/* A text field takes Control+Z even if it has nothing to undo. So while nothing is typed in it, the
 * key is passed on to the sheet. */
static gboolean
pass_on_undo (BwEditorRow *row, guint keyval, GdkModifierType state)
{
  gboolean redo = (state & GDK_SHIFT_MASK) != 0;
  if (gdk_keyval_to_lower (keyval) != GDK_KEY_z || !(state & GDK_CONTROL_MASK)
      || bw_editor_row_is_edited (row))
    return GDK_EVENT_PROPAGATE;
  gtk_widget_activate_action (GTK_WIDGET (row), redo ? "win.redo" : "win.undo", NULL);
  return GDK_EVENT_STOP;
}

static gboolean
on_key (BwEditorRow *row, guint keyval, guint keycode, GdkModifierType state)
{
  if (keyval != GDK_KEY_Escape || !bw_editor_row_is_edited (row))
    return pass_on_undo (row, keyval, state);
  bw_editor_row_reset (row);
  gtk_editable_set_position (editable (row), -1);
  return GDK_EVENT_STOP;
}

static void
add_controllers (BwEditorRow *row, GtkWidget *entry)
{
  GtkEventController *focus = gtk_event_controller_focus_new ();
  GtkEventController *key = gtk_event_controller_key_new ();

  g_signal_connect_swapped (focus, "leave", G_CALLBACK (on_leave), row);
  gtk_widget_add_controller (entry, focus);
  gtk_event_controller_set_propagation_phase (key, GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (key, "key-pressed", G_CALLBACK (on_key), row);
  gtk_widget_add_controller (entry, key);
}

static void
bw_entry_row_constructed (GObject *object)
{
  BwEditorRow *row = BW_EDITOR_ROW (object);
  const BwField *field = bw_editor_row_get_field (row);
  GtkWidget *entry = gtk_entry_new ();

  G_OBJECT_CLASS (bw_entry_row_parent_class)->constructed (object);
  if (!(field->flags & BW_FIELD_REQUIRED) && field->type != BW_FIELD_TEXT)
    gtk_entry_set_placeholder_text (GTK_ENTRY (entry), _ ("not given"));
  g_signal_connect_swapped (entry, "activate", G_CALLBACK (bw_editor_row_finish_edit), row);
  g_signal_connect_swapped (entry, "changed", G_CALLBACK (bw_editor_row_text_changed), row);
  add_controllers (row, entry);
  bw_editor_row_set_control (row, entry);
}

static void
bw_entry_row_class_init (BwEntryRowClass *klass)
{
  G_OBJECT_CLASS (klass)->constructed = bw_entry_row_constructed;
  BW_EDITOR_ROW_CLASS (klass)->show = bw_entry_row_show;
  BW_EDITOR_ROW_CLASS (klass)->dup_text = bw_entry_row_dup_text;
}

static void
bw_entry_row_init (BwEntryRow *self)
{
}

/**
 * bw_entry_row_new:
 *
 * Returns: (transfer floating): a row to type @field in
 */
BwEditorRow *
bw_entry_row_new (const BwField *field)
{
  return g_object_new (BW_TYPE_ENTRY_ROW, "field", field, NULL);
}
