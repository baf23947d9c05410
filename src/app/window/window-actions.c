/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window-private.h"

#include <glib/gi18n-lib.h>

#include "hookup-print.h"
#include "print.h"

/* Every action of a window, and when it can be used. Menus and buttons only name actions. */

static void
on_open (GtkWidget *widget, const char *action, GVariant *parameter)
{
  bw_window_choose_open (BW_WINDOW (widget));
}

static void
on_save (GtkWidget *widget, const char *action, GVariant *parameter)
{
  bw_window_save (BW_WINDOW (widget));
}

static void
on_save_as (GtkWidget *widget, const char *action, GVariant *parameter)
{
  bw_window_save_as (BW_WINDOW (widget));
}

static void
on_print (GtkWidget *widget, const char *action, GVariant *parameter)
{
  bw_print_sheet (BW_WINDOW (widget));
}

static void
on_export_report (GtkWidget *widget, const char *action, GVariant *parameter)
{
  bw_window_export_report (BW_WINDOW (widget));
}

static void
on_export_edid (GtkWidget *widget, const char *action, GVariant *parameter)
{
  bw_window_export_edid (BW_WINDOW (widget));
}

static void
on_export_parts (GtkWidget *widget, const char *action, GVariant *parameter)
{
  bw_window_export_parts (BW_WINDOW (widget));
}

static void
on_export_hookup (GtkWidget *widget, const char *action, GVariant *parameter)
{
  bw_window_export_hookup (BW_WINDOW (widget));
}

static void
on_print_hookup (GtkWidget *widget, const char *action, GVariant *parameter)
{
  bw_print_hookup (BW_WINDOW (widget));
}

static void
on_export_picture (GtkWidget *widget, const char *action, GVariant *parameter)
{
  bw_window_export_picture (BW_WINDOW (widget));
}

static void
on_export_table (GtkWidget *widget, const char *action, GVariant *parameter)
{
  bw_window_export_table (BW_WINDOW (widget), parameter);
}

static void
on_copy_picture (GtkWidget *widget, const char *action, GVariant *parameter)
{
  BwPicturePanel *panel = bw_window_get_panel (BW_WINDOW (widget));
  if (panel != NULL)
    bw_picture_panel_copy (panel);
}

static void
on_close (GtkWidget *widget, const char *action, GVariant *parameter)
{
  gtk_window_close (GTK_WINDOW (widget));
}

static void
on_undo (GtkWidget *widget, const char *action, GVariant *parameter)
{
  bw_document_undo (BW_WINDOW (widget)->document);
}

static void
on_redo (GtkWidget *widget, const char *action, GVariant *parameter)
{
  bw_document_redo (BW_WINDOW (widget)->document);
}

static void
on_page (GtkWidget *widget, const char *action, GVariant *parameter)
{
  bw_window_show_page (BW_WINDOW (widget), g_variant_get_string (parameter, NULL));
}

static void
on_shortcuts (GtkWidget *widget, const char *action, GVariant *parameter)
{
  bw_window_show_shortcuts (BW_WINDOW (widget));
}

static void
on_choose_monitor (GtkWidget *widget, const char *action, GVariant *parameter)
{
  bw_bench_panel_choose_monitor (BW_WINDOW (widget)->bench);
}

static void
on_add_input (GtkWidget *widget, const char *action, GVariant *parameter)
{
  bw_bench_list_pick (bw_bench_panel_get_list (BW_WINDOW (widget)->bench, BW_PART_INPUT));
}

static void
on_add_source (GtkWidget *widget, const char *action, GVariant *parameter)
{
  bw_bench_list_pick (bw_bench_panel_get_list (BW_WINDOW (widget)->bench, BW_PART_SOURCE));
}

static void
on_edit_sheet (GtkWidget *widget, const char *action, GVariant *parameter)
{
  bw_window_edit (BW_WINDOW (widget), BW_PART_SHEET);
}

static void
on_edit_monitor (GtkWidget *widget, const char *action, GVariant *parameter)
{
  bw_window_edit (BW_WINDOW (widget), BW_PART_MONITOR);
}

static void
on_edit_input (GtkWidget *widget, const char *action, GVariant *parameter)
{
  bw_window_edit (BW_WINDOW (widget), BW_PART_INPUT);
}

static void
on_edit_source (GtkWidget *widget, const char *action, GVariant *parameter)
{
  bw_window_edit (BW_WINDOW (widget), BW_PART_SOURCE);
}

static const struct
{
  const char *name;
  const char *parameter;
  GtkWidgetActionActivateFunc activate;
} actions[] = {
  { "win.open", NULL, on_open },
  { "win.save", NULL, on_save },
  { "win.save-as", NULL, on_save_as },
  { "win.print", NULL, on_print },
  { "win.export-report", NULL, on_export_report },
  { "win.export-edid", NULL, on_export_edid },
  { "win.export-parts", NULL, on_export_parts },
  { "win.export-hookup", NULL, on_export_hookup },
  { "win.print-hookup", NULL, on_print_hookup },
  { "win.export-picture", NULL, on_export_picture },
  { "win.export-table", "(ssss)", on_export_table },
  { "win.copy-picture", NULL, on_copy_picture },
  { "win.close", NULL, on_close },
  { "win.undo", NULL, on_undo },
  { "win.redo", NULL, on_redo },
  { "win.page", "s", on_page },
  { "win.show-help-overlay", NULL, on_shortcuts },
  { "win.choose-monitor", NULL, on_choose_monitor },
  { "win.add-input", NULL, on_add_input },
  { "win.add-source", NULL, on_add_source },
  { "win.edit-sheet", NULL, on_edit_sheet },
  { "win.edit-monitor", NULL, on_edit_monitor },
  { "win.edit-input", NULL, on_edit_input },
  { "win.edit-source", NULL, on_edit_source },
};

/* Undo and redo are bound here, in the bubble phase, and not as accelerators of the application: a
 * text field with the focus has its own undo, and gets the key first. */
void
bw_window_install_actions (GtkWidgetClass *widget_class)
{
  for (guint i = 0; i < G_N_ELEMENTS (actions); i++)
    gtk_widget_class_install_action (widget_class, actions[i].name, actions[i].parameter,
                                     actions[i].activate);
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

static void
update_undo (BwWindow *self)
{
  const char *undo = bw_document_undo_words (self->document);
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
