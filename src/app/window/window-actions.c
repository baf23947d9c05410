/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window-private.h"

#include <string.h>

#include <glib/gi18n-lib.h>

#include "hookup-print.h"
#include "print.h"

/* Every action of a window, and when it can be used. Menus and buttons only name actions. */

static void
on_open (BwWindow *self, GVariant *parameter)
{
  bw_window_choose_open (self);
}

static void
on_save (BwWindow *self, GVariant *parameter)
{
  bw_window_save (self);
}

static void
on_save_as (BwWindow *self, GVariant *parameter)
{
  bw_window_save_as (self);
}

static void
on_print (BwWindow *self, GVariant *parameter)
{
  bw_print_sheet (self);
}

static void
on_export_report (BwWindow *self, GVariant *parameter)
{
  bw_window_export_report (self);
}

static void
on_export_edid (BwWindow *self, GVariant *parameter)
{
  bw_window_export_edid (self);
}

static void
on_export_parts (BwWindow *self, GVariant *parameter)
{
  bw_window_export_parts (self);
}

static void
on_export_hookup (BwWindow *self, GVariant *parameter)
{
  bw_window_export_hookup (self);
}

static void
on_print_hookup (BwWindow *self, GVariant *parameter)
{
  bw_print_hookup (self);
}

static void
on_export_picture (BwWindow *self, GVariant *parameter)
{
  bw_window_export_picture (self);
}

static void
on_export_table (BwWindow *self, GVariant *parameter)
{
  bw_window_export_table (self, parameter);
}

static void
on_copy_picture (BwWindow *self, GVariant *parameter)
{
  BwPicturePanel *panel = bw_window_get_panel (self);
  if (panel != NULL)
    bw_picture_panel_copy (panel);
}

static void
on_close (BwWindow *self, GVariant *parameter)
{
  gtk_window_close (GTK_WINDOW (self));
}

static void
on_undo (BwWindow *self, GVariant *parameter)
{
  bw_document_undo (self->document);
}

static void
on_redo (BwWindow *self, GVariant *parameter)
{
  bw_document_redo (self->document);
}

static void
on_page (BwWindow *self, GVariant *parameter)
{
  bw_window_show_page (self, g_variant_get_string (parameter, NULL));
}

static void
on_shortcuts (BwWindow *self, GVariant *parameter)
{
  bw_window_show_shortcuts (self);
}

static void
on_help (BwWindow *self, GVariant *parameter)
{
  bw_window_show_help (self);
}

static void
on_choose_monitor (BwWindow *self, GVariant *parameter)
{
  bw_bench_panel_choose_monitor (self->bench);
}

static void
on_add_input (BwWindow *self, GVariant *parameter)
{
  bw_bench_list_pick (bw_bench_panel_get_list (self->bench, BW_PART_INPUT));
}

static void
on_add_source (BwWindow *self, GVariant *parameter)
{
  bw_bench_list_pick (bw_bench_panel_get_list (self->bench, BW_PART_SOURCE));
}

static void
on_edit_sheet (BwWindow *self, GVariant *parameter)
{
  bw_window_edit (self, BW_PART_SHEET);
}

static void
on_edit_monitor (BwWindow *self, GVariant *parameter)
{
  bw_window_edit (self, BW_PART_MONITOR);
}

static void
on_edit_input (BwWindow *self, GVariant *parameter)
{
  bw_window_edit (self, BW_PART_INPUT);
}

static void
on_edit_source (BwWindow *self, GVariant *parameter)
{
  bw_window_edit (self, BW_PART_SOURCE);
}

/* An action that takes what is typed is not done if that is refused. The others show what is there,
 * ask for a choice, or leave it to what they call. */
static const struct
{
  const char *name;
  const char *parameter;
  gboolean takes;
  void (*activate) (BwWindow *self, GVariant *parameter);
} actions[] = {
  { "win.open", NULL, TRUE, on_open },
  { "win.save", NULL, TRUE, on_save },
  { "win.save-as", NULL, TRUE, on_save_as },
  { "win.print", NULL, TRUE, on_print },
  { "win.export-report", NULL, TRUE, on_export_report },
  { "win.export-edid", NULL, TRUE, on_export_edid },
  { "win.export-parts", NULL, TRUE, on_export_parts },
  { "win.export-hookup", NULL, TRUE, on_export_hookup },
  { "win.print-hookup", NULL, TRUE, on_print_hookup },
  { "win.export-picture", NULL, TRUE, on_export_picture },
  { "win.export-table", "(ssss)", TRUE, on_export_table },
  { "win.copy-picture", NULL, TRUE, on_copy_picture },
  { "win.close", NULL, FALSE, on_close },
  { "win.undo", NULL, TRUE, on_undo },
  { "win.redo", NULL, TRUE, on_redo },
  { "win.page", "s", FALSE, on_page },
  { "win.show-help-overlay", NULL, FALSE, on_shortcuts },
  { "win.help", NULL, FALSE, on_help },
  { "win.choose-monitor", NULL, TRUE, on_choose_monitor },
  { "win.add-input", NULL, TRUE, on_add_input },
  { "win.add-source", NULL, TRUE, on_add_source },
  { "win.edit-sheet", NULL, FALSE, on_edit_sheet },
  { "win.edit-monitor", NULL, FALSE, on_edit_monitor },
  { "win.edit-input", NULL, FALSE, on_edit_input },
  { "win.edit-source", NULL, FALSE, on_edit_source },
};

static void
on_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  BwWindow *self = BW_WINDOW (widget);
  for (guint i = 0; i < G_N_ELEMENTS (actions); i++)
    if (strcmp (actions[i].name, name) == 0
        && (!actions[i].takes || bw_document_take_typed (self->document)))
      actions[i].activate (self, parameter);
}

/* Undo and redo are bound here, in the bubble phase, and not as accelerators of the application: a
 * text field with the focus has its own undo, and gets the key first. */
void
bw_window_install_actions (GtkWidgetClass *widget_class)
{
  for (guint i = 0; i < G_N_ELEMENTS (actions); i++)
    gtk_widget_class_install_action (widget_class, actions[i].name, actions[i].parameter, on_action);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_z, GDK_CONTROL_MASK, "win.undo", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_z, GDK_CONTROL_MASK | GDK_SHIFT_MASK,
                                       "win.redo", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_y, GDK_CONTROL_MASK, "win.redo", NULL);
}

static void
set_enabled (BwWindow *self, const char *action, gboolean enabled)
{
  gtk_widget_action_set_enabled (GTK_WIDGET (self), action, enabled);
}

/* What Undo takes back. If something is typed and not taken yet, Undo first takes it, and then
 * takes that change back. */
static char *
dup_undo_words (BwWindow *self)
{
  g_autoptr (GPtrArray) typed = bw_document_list_typed (self->document);
  if (typed->len == 0)
    return g_strdup (bw_document_undo_words (self->document));
  return g_strdup_printf (_ ("change of “%s”"),
                          bw_field_label (((BwTyped *) typed->pdata[typed->len - 1])->field));
}

static void
update_undo (BwWindow *self)
{
  g_autofree char *undo = dup_undo_words (self);
  const char *redo = bw_document_redo_words (self->document);
  g_autofree char *undo_words = g_strdup_printf (_ ("Undo %s"), undo != NULL ? undo : "");
  g_autofree char *redo_words = g_strdup_printf (_ ("Redo %s"), redo != NULL ? redo : "");

  set_enabled (self, "win.undo", undo != NULL);
  set_enabled (self, "win.redo", redo != NULL);
  gtk_widget_set_tooltip_text (self->undo, g_strchomp (undo_words));
  gtk_widget_set_tooltip_text (self->redo, g_strchomp (redo_words));
}

/* The one place that says which actions can be used now. */
void
bw_window_update_actions (BwWindow *self)
{
  gboolean blank = bw_document_is_blank (self->document);
  gboolean inputs = bw_document_count (self->document, BW_PART_INPUT) > 0;
  gboolean sources = bw_document_count (self->document, BW_PART_SOURCE) > 0;
  gboolean saved = bw_document_get_file (self->document) != NULL
                   && !bw_document_is_modified (self->document);

  set_enabled (self, "win.save", !blank && !saved);
  set_enabled (self, "win.save-as", !blank);
  set_enabled (self, "win.print", !blank);
  set_enabled (self, "win.export-report", !blank);
  set_enabled (self, "win.export-edid", !blank);
  set_enabled (self, "win.export-parts", inputs && sources);
  set_enabled (self, "win.export-hookup", inputs && sources);
  set_enabled (self, "win.print-hookup", inputs && sources);
  set_enabled (self, "win.export-picture", sources);
  set_enabled (self, "win.copy-picture", sources);
  set_enabled (self, "win.add-input", !blank);
  set_enabled (self, "win.add-source", !blank);
  set_enabled (self, "win.edit-monitor", !blank);
  set_enabled (self, "win.edit-input", inputs);
  set_enabled (self, "win.edit-source", sources);
  update_undo (self);
}
