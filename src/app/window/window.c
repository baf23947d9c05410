/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window-private.h"

#include <glib/gi18n-lib.h>

#include "app/widgets/button-name.h"
#include "app/widgets/file-chooser.h"
#include "app/widgets/template.h"
#include "app/widgets/wrap-layout.h"

/**
 * BwWindow:
 *
 * One window, one bench sheet: the bench or the form at the left, the pages at the right.
 */
static void init_host (BwDocumentHostInterface *iface);

G_DEFINE_FINAL_TYPE_WITH_CODE (BwWindow, bw_window, GTK_TYPE_APPLICATION_WINDOW,
                               G_IMPLEMENT_INTERFACE (BW_TYPE_DOCUMENT_HOST, init_host))

static BwDocument *
get_document (BwDocumentHost *host)
{
  return BW_WINDOW (host)->document;
}

static void
init_host (BwDocumentHostInterface *iface)
{
  iface->get_document = get_document;
}

/* Title */

static char *
subtitle_words (BwWindow *self)
{
  GFile *file = bw_document_get_file (self->document);
  if (bw_document_is_modified (self->document))
    return g_strdup (_ ("Changed since it was last saved"));
  if (file == NULL)
    return g_strdup (_ ("Not saved yet"));
  g_autoptr (GFile) folder = g_file_get_parent (file);
  return folder != NULL ? g_file_get_parse_name (folder) : g_strdup ("");
}

/* While the sheet is changed, the session asks before it ends. */
static void
update_inhibit (BwWindow *self)
{
  GtkApplication *application = gtk_window_get_application (GTK_WINDOW (self));
  gboolean modified = bw_document_is_modified (self->document);

  if (application == NULL || modified == (self->inhibit_cookie != 0))
    return;
  if (modified)
    self->inhibit_cookie = gtk_application_inhibit (application, GTK_WINDOW (self),
                                                    GTK_APPLICATION_INHIBIT_LOGOUT,
                                                    _ ("A bench sheet is changed and not saved"));
  else
    {
      gtk_application_uninhibit (application, self->inhibit_cookie);
      self->inhibit_cookie = 0;
    }
}

static void
update_title (BwWindow *self)
{
  g_autofree char *name = bw_document_dup_name (self->document);
  g_autofree char *subtitle = subtitle_words (self);
  const char *mark = bw_document_is_modified (self->document) ? "• " : "";
  g_autofree char *title = g_strconcat (mark, name, NULL);

  gtk_label_set_label (self->title, title);
  gtk_label_set_label (self->subtitle, subtitle);
  gtk_window_set_title (GTK_WINDOW (self), title);
  update_inhibit (self);
}

static void
on_changed (BwWindow *self)
{
  update_title (self);
  bw_window_update_actions (self);
}

/* The form */

static void
on_editor_done (BwWindow *self)
{
  gtk_stack_set_visible_child_name (self->side, "bench");
  bw_bench_panel_focus_part (self->bench, bw_editor_get_part (self->editor));
}

static void
on_bench_edit (BwWindow *self, int part)
{
  bw_window_edit (self, (BwPart) part);
}

/**
 * bw_window_edit:
 * @part: of inputs and sources the selected one
 *
 * Shows the form for @part at the left, unless what is typed is refused.
 */
void
bw_window_edit (BwWindow *self, BwPart part)
{
  if (!bw_document_take_typed (self->document))
    return;
  gtk_stack_set_visible_child_name (self->side, "editor");
  bw_editor_edit (self->editor, part);
}

/**
 * bw_window_is_editing:
 *
 * Returns: whether the form is shown
 */
gboolean
bw_window_is_editing (BwWindow *self)
{
  return g_strcmp0 (gtk_stack_get_visible_child_name (self->side), "editor") == 0;
}

/**
 * bw_window_get_panel:
 *
 * Returns: (transfer none) (nullable): the drawing that is copied and exported: the one that is shown
 */
BwPicturePanel *
bw_window_get_panel (BwWindow *self)
{
  g_return_val_if_fail (BW_IS_WINDOW (self), NULL);
  BwPicturePanel *panel = bw_page_get_panel (bw_window_get_shown_page (self));
  return panel != NULL && bw_picture_panel_has_picture (panel) ? panel : NULL;
}

/* Faults */

/**
 * bw_window_show_faults:
 * @title: what went wrong, in a sentence
 * @faults: (element-type GError): all that is wrong
 *
 * Shows every fault in a bar that stays until it is closed.
 */
void
bw_window_show_faults (BwWindow *self, const char *title, GPtrArray *faults)
{
  bw_fault_bar_show (self->faults, title, faults);
}

/**
 * bw_window_show_error:
 *
 * bw_window_show_faults() for one error.
 */
void
bw_window_show_error (BwWindow *self, const char *title, const GError *error)
{
  g_autoptr (GPtrArray) faults = g_ptr_array_new ();
  g_ptr_array_add (faults, (gpointer) error);
  bw_fault_bar_show (self->faults, title, faults);
}

/**
 * bw_window_get_fault_text:
 *
 * Returns: (transfer none) (nullable): the faults that are shown, one a line
 */
const char *
bw_window_get_fault_text (BwWindow *self)
{
  return bw_fault_bar_get_text (self->faults);
}

/**
 * bw_window_get_page_id:
 *
 * Returns: (transfer none): which of bw_page_kinds() is shown
 */
const char *
bw_window_get_page_id (BwWindow *self)
{
  g_return_val_if_fail (BW_IS_WINDOW (self), NULL);
  return gtk_stack_get_visible_child_name (self->pages);
}

/**
 * bw_window_get_notice_text:
 *
 * Returns: (transfer none) (nullable): the word on what has been written last, while it is shown
 */
const char *
bw_window_get_notice_text (BwWindow *self)
{
  return bw_notice_get_text (self->notice);
}

/* Window */

/* For the next window. */
static void
remember_size (BwWindow *self)
{
  int width, height;
  gboolean maximized = gtk_window_is_maximized (GTK_WINDOW (self));

  bw_window_remember_handles (self);
  g_settings_set_boolean (self->settings, "maximized", maximized);
  if (maximized)
    return;
  gtk_window_get_default_size (GTK_WINDOW (self), &width, &height);
  if (width > 0 && height > 0)
    {
      g_settings_set_int (self->settings, "window-width", width);
      g_settings_set_int (self->settings, "window-height", height);
    }
}

static gboolean
bw_window_close_request (GtkWindow *window)
{
  BwWindow *self = BW_WINDOW (window);

  if (!self->closing && bw_window_ask_before_close (self))
    return GDK_EVENT_STOP;
  remember_size (self);
  return GTK_WINDOW_CLASS (bw_window_parent_class)->close_request (window);
}

static void
bw_window_dispose (GObject *object)
{
  BwWindow *self = BW_WINDOW (object);

  bw_file_chooser_let_go (&self->chooser);
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  if (self->drafts != NULL)
    g_object_run_dispose (G_OBJECT (self->drafts)); /* a thread may hold it until it has written */
  g_clear_object (&self->drafts);
  g_clear_weak_pointer (&self->question);
  g_clear_pointer (&self->table, g_variant_unref);
  g_clear_pointer (&self->shares, g_variant_dict_unref);
  g_clear_object (&self->document);
  g_clear_object (&self->settings);
  g_clear_pointer (&self->toggles, g_ptr_array_unref);
  gtk_widget_dispose_template (GTK_WIDGET (object), BW_TYPE_WINDOW);
  G_OBJECT_CLASS (bw_window_parent_class)->dispose (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, BwWindow, title);
  gtk_widget_class_bind_template_child (widget_class, BwWindow, subtitle);
  gtk_widget_class_bind_template_child (widget_class, BwWindow, undo);
  gtk_widget_class_bind_template_child (widget_class, BwWindow, redo);
  gtk_widget_class_bind_template_child (widget_class, BwWindow, menu);
  gtk_widget_class_bind_template_child (widget_class, BwWindow, recent_menu);
  gtk_widget_class_bind_template_child (widget_class, BwWindow, faults);
  gtk_widget_class_bind_template_child (widget_class, BwWindow, guard);
  gtk_widget_class_bind_template_child (widget_class, BwWindow, guard_title);
  gtk_widget_class_bind_template_child (widget_class, BwWindow, guard_text);
  gtk_widget_class_bind_template_child (widget_class, BwWindow, load_theirs);
  gtk_widget_class_bind_template_child (widget_class, BwWindow, panes);
  gtk_widget_class_bind_template_child (widget_class, BwWindow, notice);
  gtk_widget_class_bind_template_child (widget_class, BwWindow, side);
  gtk_widget_class_bind_template_child (widget_class, BwWindow, bench);
  gtk_widget_class_bind_template_child (widget_class, BwWindow, editor);
  gtk_widget_class_bind_template_child (widget_class, BwWindow, page_buttons);
  gtk_widget_class_bind_template_child (widget_class, BwWindow, pages);
}

static void
bw_window_class_init (BwWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  bw_window_add_stays (klass);
  G_OBJECT_CLASS (klass)->dispose = bw_window_dispose;
  GTK_WINDOW_CLASS (klass)->close_request = bw_window_close_request;

  bw_window_install_actions (widget_class);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/breezeway/Breezeway/window.ui");
  bind_children (widget_class);
  gtk_widget_class_bind_template_callback (widget_class, on_bench_edit);
  gtk_widget_class_bind_template_callback (widget_class, on_editor_done);
  gtk_widget_class_bind_template_callback (widget_class, bw_window_on_page_turned);
  gtk_widget_class_bind_template_callback (widget_class, bw_window_on_guard_response);
  gtk_widget_class_bind_template_callback (widget_class, bw_window_on_active);
}

static void
bw_window_init (BwWindow *self)
{
  self->toggles = g_ptr_array_new ();
  g_type_ensure (BW_TYPE_BENCH_PANEL);
  g_type_ensure (BW_TYPE_EDITOR);
  g_type_ensure (BW_TYPE_FAULT_BAR);
  g_type_ensure (BW_TYPE_NOTICE);
  g_type_ensure (BW_TYPE_WRAP_LAYOUT);
  gtk_widget_init_template (GTK_WIDGET (self));
  bw_name_buttons (GTK_WIDGET (self));
}

static void
take_document (BwWindow *self, BwDocument *document)
{
  self->document = g_object_ref (document);
  bw_bench_panel_set_document (self->bench, document);
  bw_editor_set_document (self->editor, document);
  bw_window_add_pages (self);
  g_signal_connect_object (document, "changed", G_CALLBACK (on_changed), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (document, "saved", G_CALLBACK (on_changed), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (document, "typed", G_CALLBACK (bw_window_update_actions), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (document, "file-changed", G_CALLBACK (bw_window_update_guard), self,
                           G_CONNECT_SWAPPED);
  bw_window_keep_drafts (self);
  bw_window_accept_drops (self);
  on_changed (self);
}

/**
 * bw_window_new:
 * @application: (nullable): the application
 * @document: the sheet to show
 * @settings: those of the application
 *
 * Returns: (transfer none): a window, not shown yet; GTK owns it until it is closed
 */
BwWindow *
bw_window_new (GtkApplication *application, BwDocument *document, GSettings *settings)
{
  BwWindow *self = g_object_new (BW_TYPE_WINDOW, "application", application, NULL);

  self->settings = g_object_ref (settings);
  gtk_window_set_default_size (GTK_WINDOW (self), g_settings_get_int (settings, "window-width"),
                               g_settings_get_int (settings, "window-height"));
  if (g_settings_get_boolean (settings, "maximized"))
    gtk_window_maximize (GTK_WINDOW (self));
  bw_window_place_handles (self);
  take_document (self, document);
  return self;
}

/* Getters: all (transfer none) */

BwDocument *
bw_window_get_document (BwWindow *self)
{
  return self->document;
}

BwBenchPanel *
bw_window_get_bench (BwWindow *self)
{
  return self->bench;
}

BwEditor *
bw_window_get_editor (BwWindow *self)
{
  return self->editor;
}

GMenu *
bw_window_get_recent_menu (BwWindow *self)
{
  return self->recent_menu;
}
