/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "editor-row.h"

#include <math.h>

#include <glib/gi18n-lib.h>

/* Fields that are typed: a text, a quantity with its unit or a range on one line, or a note of
 * several lines. What was typed is taken when the focus leaves or the document asks for it, and
 * with Enter, which in a note begins another line: there it is Control+Enter. Escape takes it
 * back. */

#define BW_TYPE_ENTRY_ROW (bw_entry_row_get_type ())
G_DECLARE_FINAL_TYPE (BwEntryRow, bw_entry_row, BW, ENTRY_ROW, BwEditorRow)

struct _BwEntryRow
{
  BwEditorRow parent_instance;
};

G_DEFINE_FINAL_TYPE (BwEntryRow, bw_entry_row, BW_TYPE_EDITOR_ROW)

#define BW_TYPE_LINES_ROW (bw_lines_row_get_type ())
G_DECLARE_FINAL_TYPE (BwLinesRow, bw_lines_row, BW, LINES_ROW, BwEditorRow)

struct _BwLinesRow
{
  BwEditorRow parent_instance;

  double text_height_px; /* for which a height was asked last */
  guint growing;         /* the tick callback that asks for another one; zero: none */
};

G_DEFINE_FINAL_TYPE (BwLinesRow, bw_lines_row, BW_TYPE_EDITOR_ROW)

/* What both have in common */

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
  if (GTK_IS_EDITABLE (bw_editor_row_get_control (row)))
    gtk_editable_set_position (GTK_EDITABLE (bw_editor_row_get_control (row)), -1);
  return GDK_EVENT_STOP;
}

static void
add_controllers (BwEditorRow *row, GtkWidget *control)
{
  GtkEventController *focus = gtk_event_controller_focus_new ();
  GtkEventController *key = gtk_event_controller_key_new ();

  g_signal_connect_swapped (focus, "leave", G_CALLBACK (on_leave), row);
  gtk_widget_add_controller (control, focus);
  gtk_event_controller_set_propagation_phase (key, GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (key, "key-pressed", G_CALLBACK (on_key), row);
  gtk_widget_add_controller (control, key);
}

/* One line */

static GtkEditable *
editable (BwEditorRow *row)
{
  return GTK_EDITABLE (bw_editor_row_get_control (row));
}

/* Shows a text that nobody typed. The undo of the field itself must not go back beyond it, so its
 * history starts anew. */
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
bw_entry_row_constructed (GObject *object)
{
  BwEditorRow *row = BW_EDITOR_ROW (object);
  const BwField *field = bw_editor_row_get_field (row);
  GtkWidget *entry = gtk_entry_new ();

  G_OBJECT_CLASS (bw_entry_row_parent_class)->constructed (object);
  gboolean figure = (field->flags & BW_FIELD_FIGURE) && !(field->flags & BW_FIELD_OPTIONAL);
  if (figure)
    gtk_entry_set_placeholder_text (GTK_ENTRY (entry), _ ("not known"));
  else if (!(field->flags & BW_FIELD_REQUIRED) && field->type != BW_FIELD_TEXT)
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

/* Several lines. The field is as high as its text, up to a height above which it scrolls: each line
 * that is seen is drawn in each frame, and a note may have thousands. */

#define MOST_LINES_SEEN 12

static GtkTextBuffer *
buffer (BwEditorRow *row)
{
  return gtk_text_view_get_buffer (GTK_TEXT_VIEW (bw_editor_row_get_control (row)));
}

static void
bw_lines_row_show (BwEditorRow *row, const char *text)
{
  gtk_text_buffer_set_enable_undo (buffer (row), FALSE);
  gtk_text_buffer_set_text (buffer (row), text, -1);
  gtk_text_buffer_set_enable_undo (buffer (row), TRUE);
}

static char *
bw_lines_row_dup_text (BwEditorRow *row)
{
  char *text = NULL;
  g_object_get (buffer (row), "text", &text, NULL);
  return text;
}

static gboolean
on_enter (BwEditorRow *row, guint keyval, guint keycode, GdkModifierType state)
{
  gboolean enter = keyval == GDK_KEY_Return || keyval == GDK_KEY_KP_Enter
                   || keyval == GDK_KEY_ISO_Enter;
  if (!enter || !(state & GDK_CONTROL_MASK))
    return GDK_EVENT_PROPAGATE;
  bw_editor_row_finish_edit (row);
  return GDK_EVENT_STOP;
}

/* A text view learns how high its text is when it has laid it out, and does not ask for the place.
 * While a frame is being laid out it is too late to ask: it is done in the next one. */

static gboolean
on_time_to_grow (GtkWidget *view, GdkFrameClock *clock, gpointer row)
{
  BW_LINES_ROW (row)->growing = 0;
  gtk_widget_queue_resize (view);
  return G_SOURCE_REMOVE;
}

/* It is told in each layout, whether it is another one or not. */
static void
on_text_height (BwLinesRow *self, GParamSpec *pspec, GtkAdjustment *height)
{
  GtkWidget *view = bw_editor_row_get_control (BW_EDITOR_ROW (self));
  double text_height_px = gtk_adjustment_get_upper (height);

  if (fabs (text_height_px - self->text_height_px) < 1)
    return;
  self->text_height_px = text_height_px;
  if (self->growing == 0)
    self->growing = gtk_widget_add_tick_callback (view, on_time_to_grow, self, NULL);
}

static void
follow_height (BwLinesRow *self, GtkWidget *view)
{
  GtkAdjustment *height = gtk_scrollable_get_vadjustment (GTK_SCROLLABLE (view));
  g_signal_connect_object (height, "notify::upper", G_CALLBACK (on_text_height), self,
                           G_CONNECT_SWAPPED);
}

/* Puts @view into what scrolls it, by keys, wheel and touch. It has no scroll bar: GTK 4.8 lays out
 * more of the text while it draws, too late for a bar that depends on it, and warns of that. */
static void
limit_height (GtkWidget *view)
{
  GtkWidget *scroll = gtk_scrolled_window_new ();
  PangoFontMetrics *metrics = pango_context_get_metrics (gtk_widget_get_pango_context (view), NULL,
                                                         NULL);
  int line_height = PANGO_PIXELS_CEIL (pango_font_metrics_get_height (metrics));

  pango_font_metrics_unref (metrics);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroll), GTK_POLICY_NEVER,
                                  GTK_POLICY_EXTERNAL);
  gtk_scrolled_window_set_propagate_natural_height (GTK_SCROLLED_WINDOW (scroll), TRUE);
  gtk_scrolled_window_set_max_content_height (GTK_SCROLLED_WINDOW (scroll),
                                              MOST_LINES_SEEN * line_height);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroll), view);
}

static GtkWidget *
text_view_new (void)
{
  GtkWidget *view = gtk_text_view_new ();

  gtk_text_view_set_accepts_tab (GTK_TEXT_VIEW (view), FALSE);
  gtk_text_view_set_wrap_mode (GTK_TEXT_VIEW (view), GTK_WRAP_WORD_CHAR);
  gtk_widget_add_css_class (view, "bw-lines");
  gtk_accessible_update_property (GTK_ACCESSIBLE (view), GTK_ACCESSIBLE_PROPERTY_MULTI_LINE, TRUE,
                                  -1);
  return view;
}

static void
bw_lines_row_constructed (GObject *object)
{
  BwEditorRow *row = BW_EDITOR_ROW (object);
  GtkWidget *view = text_view_new ();
  GtkEventController *key = gtk_event_controller_key_new ();

  G_OBJECT_CLASS (bw_lines_row_parent_class)->constructed (object);
  limit_height (view);
  bw_editor_row_set_control (row, view);
  follow_height (BW_LINES_ROW (object), view);
  gtk_widget_set_tooltip_text (view, _ ("Enter begins another line. Ctrl+Enter takes the text, and "
                                        "so does leaving the field."));
  g_signal_connect_object (buffer (row), "changed", G_CALLBACK (bw_editor_row_text_changed), row,
                           G_CONNECT_SWAPPED);
  gtk_event_controller_set_propagation_phase (key, GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (key, "key-pressed", G_CALLBACK (on_enter), row);
  gtk_widget_add_controller (view, key);
  add_controllers (row, view);
}

static void
bw_lines_row_class_init (BwLinesRowClass *klass)
{
  G_OBJECT_CLASS (klass)->constructed = bw_lines_row_constructed;
  BW_EDITOR_ROW_CLASS (klass)->show = bw_lines_row_show;
  BW_EDITOR_ROW_CLASS (klass)->dup_text = bw_lines_row_dup_text;
}

static void
bw_lines_row_init (BwLinesRow *self)
{
}

/**
 * bw_lines_row_new:
 *
 * Returns: (transfer floating): a row to type the lines of @field in
 */
BwEditorRow *
bw_lines_row_new (const BwField *field)
{
  return g_object_new (BW_TYPE_LINES_ROW, "field", field, NULL);
}
