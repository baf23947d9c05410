/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "app-hands.h"

#include <string.h>

#include "app/fit/grid.h"
#include "app/fit/page.h"
#include "app/timing/work-out.h"

/* What is typed and not yet taken, and every way of leaving it: by real keys in a real window. A sound
 * value is taken first. A refused one stops what was asked for and is shown. */

#define SOUND "3 V"
#define REFUSED "3 Hz"

/* For all tests: an application cannot be started twice, and is not run here but driven. */
static BwApplication *application = NULL;

typedef struct
{
  BwWindow *window;
  BwDocument *document;
  char *path;
} Fixture;

static BwWindow *
active_window (void)
{
  return BW_WINDOW (gtk_application_get_active_window (GTK_APPLICATION (application)));
}

static BwEditorRow *
row (Fixture *f, const char *key)
{
  return bw_editor_get_row (bw_window_get_editor (f->window), key);
}

static GtkWidget *
control (Fixture *f, const char *key)
{
  return bw_editor_row_get_control (row (f, key));
}

static void
set_up (Fixture *f, gconstpointer data)
{
  f->path = app_test_copy_sheet ("left.bench");
  f->window = app_test_open (application, f->path);
  f->document = g_object_ref (bw_window_get_document (f->window));
  app_test_give_focus (f->window);
  bw_window_edit (f->window, BW_PART_SOURCE);
  gtk_test_widget_wait_for_draw (GTK_WIDGET (f->window));
}

static void
close_questions (void)
{
  GtkWidget *question;
  while ((question = app_test_open_question ()) != NULL)
    gtk_dialog_response (GTK_DIALOG (question), GTK_RESPONSE_CANCEL);
  GtkWidget *chooser = app_test_open_chooser ();
  if (chooser != NULL)
    {
      /* Before that it would still take the focus from the next window */
      g_assert_true (app_test_wait (app_test_is_active, chooser));
      gtk_dialog_response (GTK_DIALOG (chooser), GTK_RESPONSE_CANCEL);
    }
  app_test_settle ();
}

static void
tear_down (Fixture *f, gconstpointer data)
{
  close_questions ();
  while (active_window () != NULL)
    {
      gtk_window_destroy (GTK_WINDOW (active_window ()));
      app_test_settle ();
    }
  g_assert_finalize_object (f->document);
  g_free (f->path);
}

/* Types @text in place of what the field of @key holds, and stays in it. */
static void
type (Fixture *f, const char *key, const char *text)
{
  g_autofree char *command = g_strdup_printf ("key ctrl+a type '%s'", text);

  gtk_widget_grab_focus (control (f, key));
  app_test_xdotool (command);
  ASSERT_COMES_TRUE (bw_document_has_typed (f->document));
  ASSERT_COMES_TRUE (strcmp (gtk_editable_get_text (GTK_EDITABLE (control (f, key))), text) == 0);
}

static double
video_v (Fixture *f)
{
  return bw_sheet_source (bw_document_get_sheet (f->document), 0)->video_v;
}

static gboolean
is_three_volts (Fixture *f)
{
  return video_v (f) >= 3 && video_v (f) <= 3;
}

/* The ways, and what has come true when one was gone */

static void
act (Fixture *f, const char *action)
{
  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (f->window), action, NULL));
}

static void
close_window (Fixture *f)
{
  gtk_window_close (GTK_WINDOW (f->window));
}

static GtkWidget *
page_button (Fixture *f, const char *page)
{
  return app_test_find (gtk_window_get_titlebar (GTK_WINDOW (f->window)), GTK_TYPE_TOGGLE_BUTTON,
                        page);
}

static void
press_page_button (Fixture *f)
{
  g_signal_emit_by_name (page_button (f, "timing"), "clicked");
}

static void
press_done (Fixture *f)
{
  g_signal_emit_by_name (app_test_find (GTK_WIDGET (bw_window_get_editor (f->window)),
                                        GTK_TYPE_BUTTON, "done"),
                         "clicked");
}

static void
edit_monitor (Fixture *f)
{
  act (f, "win.edit-monitor");
}

static void
press_cell (Fixture *f)
{
  BwFitGrid *grid = APP_TEST_THE (BW, FIT_GRID, BW_FIT_PAGE (bw_window_get_page (f->window, "fit")));
  g_signal_emit_by_name (bw_fit_grid_get_cell (grid, 2, 1), "clicked");
}

static void
remove_another (Fixture *f)
{
  bw_document_remove (f->document, BW_PART_SOURCE, 5);
}

static void
export_report (Fixture *f)
{
  act (f, "win.export-report");
}

static void
open_demo (Fixture *f)
{
  g_action_group_activate_action (G_ACTION_GROUP (application), "open-demo", NULL);
}

static void
open_recent (Fixture *f)
{
  g_autofree char *path = app_test_copy_sheet ("recent.bench");
  g_autofree char *uri = g_filename_to_uri (path, NULL, NULL);
  g_action_group_activate_action (G_ACTION_GROUP (application), "open-recent",
                                  g_variant_new_string (uri));
}

static gboolean
is_saved (Fixture *f)
{
  g_autofree char *text = NULL;
  g_assert_true (g_file_get_contents (f->path, &text, NULL, NULL));
  return !bw_document_is_modified (f->document) && strstr (text, "video_level=3 V\n") != NULL;
}

static gboolean
is_choosing (Fixture *f)
{
  return app_test_open_chooser () != NULL;
}

static gboolean
is_asked (Fixture *f)
{
  return app_test_open_question () != NULL;
}

static gboolean
is_on_timing (Fixture *f)
{
  return gtk_widget_get_mapped (GTK_WIDGET (bw_window_get_page (f->window, "timing")))
         && gtk_toggle_button_get_active (GTK_TOGGLE_BUTTON (page_button (f, "timing")));
}

static gboolean
is_form_left (Fixture *f)
{
  return !bw_window_is_editing (f->window);
}

static gboolean
is_at_monitor (Fixture *f)
{
  return bw_editor_get_part (bw_window_get_editor (f->window)) == BW_PART_MONITOR;
}

static gboolean
is_another_selected (Fixture *f)
{
  return bw_document_get_source (f->document) == 2;
}

static gboolean
is_removed (Fixture *f)
{
  return bw_document_count (f->document, BW_PART_SOURCE) == 7;
}

static gboolean
has_another_window (Fixture *f)
{
  return g_list_length (gtk_application_get_windows (GTK_APPLICATION (application))) == 2;
}

static const struct
{
  const char *name;
  const char *key;
  void (*go) (Fixture *f); /* if there is no key */
  gboolean (*gone) (Fixture *f);
} ways[] = {
  { "save", "ctrl+s", NULL, is_saved },
  { "save-as", "ctrl+shift+s", NULL, is_choosing },
  { "open", "ctrl+o", NULL, is_choosing },
  { "close", "ctrl+w", NULL, is_asked },
  { "close-by-frame", NULL, close_window, is_asked },
  { "quit", "ctrl+q", NULL, is_asked },
  { "page", "ctrl+3", NULL, is_on_timing },
  { "page-by-button", NULL, press_page_button, is_on_timing },
  { "done", NULL, press_done, is_form_left },
  { "another-form", NULL, edit_monitor, is_at_monitor },
  { "another-cell", NULL, press_cell, is_another_selected },
  { "remove-another", NULL, remove_another, is_removed },
  { "report", NULL, export_report, is_choosing },
  { "demo", NULL, open_demo, has_another_window },
  { "recent", NULL, open_recent, has_another_window },
};

static void
go (Fixture *f, guint way)
{
  g_autofree char *command = g_strconcat ("key ", ways[way].key, NULL);
  if (ways[way].key != NULL)
    app_test_xdotool (command);
  else
    ways[way].go (f);
}

static void
test_sound (Fixture *f, gconstpointer data)
{
  guint way = GPOINTER_TO_UINT (data);

  type (f, "video_level", SOUND);
  g_assert_false (is_three_volts (f));
  go (f, way);
  ASSERT_COMES_TRUE (ways[way].gone (f));
  g_assert_true (is_three_volts (f));
  g_assert_false (bw_document_has_typed (f->document));
}

/* Nothing happens by any of the ways but that the field is shown. */
static void
test_refused (Fixture *f, gconstpointer data)
{
  GtkWidget *elsewhere = app_test_find (GTK_WIDGET (bw_window_get_page (f->window, "fit")),
                                        BW_TYPE_FIT_CELL, NULL);
  double before = video_v (f);

  type (f, "video_level", REFUSED);
  for (guint way = 0; way < G_N_ELEMENTS (ways); way++)
    {
      g_test_message ("%s", ways[way].name);
      gtk_widget_grab_focus (elsewhere);
      g_assert_true (app_test_focus_is_in (f->window, elsewhere));
      go (f, way);
      ASSERT_COMES_TRUE (app_test_focus_is_in (f->window, control (f, "video_level")));
      g_assert_false (ways[way].gone (f));
      g_assert_true (gtk_toggle_button_get_active (GTK_TOGGLE_BUTTON (page_button (f, "fit"))));
      g_assert_nonnull (bw_editor_row_get_error (row (f, "video_level")));
      g_autofree char *text = bw_editor_row_dup_text (row (f, "video_level"));
      g_assert_cmpstr (text, ==, REFUSED);
      g_assert_true (bw_document_is_modified (f->document));
      g_assert_true (video_v (f) >= before && video_v (f) <= before);
    }
}

/* The sheet is marked as changed with the first character, and no longer when it is taken back. */
static void
test_marked_at_once (Fixture *f, gconstpointer data)
{
  GtkWidget *bar = gtk_window_get_titlebar (GTK_WINDOW (f->window));
  GtkWidget *save = app_test_find (bar, GTK_TYPE_BUTTON, "save");
  GtkWidget *undo = app_test_find (bar, GTK_TYPE_BUTTON, "undo");
  GtkLabel *subtitle = GTK_LABEL (app_test_find (GTK_WIDGET (f->window), GTK_TYPE_LABEL, "subtitle"));
  g_autofree char *before = g_strdup (gtk_label_get_label (subtitle));

  g_assert_false (gtk_widget_is_sensitive (save));
  gtk_widget_grab_focus (control (f, "name"));
  app_test_xdotool ("key End x");
  ASSERT_COMES_TRUE (g_str_has_prefix (gtk_window_get_title (GTK_WINDOW (f->window)), "•"));
  g_assert_cmpstr (gtk_label_get_label (subtitle), !=, before);
  g_assert_true (gtk_widget_is_sensitive (save));
  g_assert_nonnull (strstr (gtk_widget_get_tooltip_text (undo), "Name"));
  app_test_xdotool ("key BackSpace");
  ASSERT_COMES_TRUE (!g_str_has_prefix (gtk_window_get_title (GTK_WINDOW (f->window)), "•"));
  g_assert_cmpstr (gtk_label_get_label (subtitle), ==, before);
  g_assert_false (gtk_widget_is_sensitive (save));

  app_test_xdotool ("key x");
  ASSERT_COMES_TRUE (bw_document_is_modified (f->document));
  app_test_xdotool ("key Escape");
  ASSERT_COMES_TRUE (!bw_document_is_modified (f->document));
}

/* A window that is closed with typed text asks; Save writes the text, and then the window goes. */
static void
test_close_and_save (Fixture *f, gconstpointer data)
{
  type (f, "video_level", SOUND);
  app_test_xdotool ("key ctrl+w");
  app_test_answer (GTK_RESPONSE_ACCEPT);
  ASSERT_COMES_TRUE (active_window () == NULL);
  g_assert_true (is_saved (f));
}

/* Asked to close twice, it asks once. */
static void
test_close_twice (Fixture *f, gconstpointer data)
{
  type (f, "video_level", SOUND);
  close_window (f);
  close_window (f);
  app_test_answer (GTK_RESPONSE_CANCEL);
  g_assert_null (app_test_open_question ());
}

/* Undo takes back what is typed as a step of its own, and redo brings it again. */
static void
test_undo (Fixture *f, gconstpointer data)
{
  type (f, "video_level", SOUND);
  act (f, "win.undo");
  g_assert_false (is_three_volts (f));
  g_assert_false (bw_document_has_typed (f->document));
  g_assert_false (bw_document_is_modified (f->document));
  act (f, "win.redo");
  g_assert_true (is_three_volts (f));
}

/* A field of another page that refuses its text keeps that page, and Escape frees it. */
static void
test_other_page (Fixture *f, gconstpointer data)
{
  BwPage *page = bw_window_get_page (f->window, "timing");
  BwWorkOut *panel = APP_TEST_THE (BW, WORK_OUT, page);
  BwEditorRow *clock = bw_work_out_get_row (panel, BW_FIGURE_PIXEL_CLOCK);
  GtkWidget *entry = bw_editor_row_get_control (clock);

  app_test_xdotool ("key ctrl+3");
  ASSERT_COMES_TRUE (is_on_timing (f));
  bw_page_show_view (page, "work-out");
  gtk_test_widget_wait_for_draw (GTK_WIDGET (f->window));
  gtk_widget_grab_focus (entry);
  app_test_xdotool ("key ctrl+a");
  app_test_xdotool ("type 'fast'");
  ASSERT_COMES_TRUE (bw_editor_row_is_edited (clock));
  g_assert_false (bw_document_is_modified (f->document)); /* it is no part of the sheet */

  app_test_xdotool ("key ctrl+1");
  ASSERT_COMES_TRUE (bw_editor_row_get_error (clock) != NULL);
  ASSERT_COMES_TRUE (app_test_focus_is_in (f->window, entry));
  g_assert_true (is_on_timing (f));
  app_test_xdotool ("key Escape");
  ASSERT_COMES_TRUE (bw_editor_row_get_error (clock) == NULL);
  app_test_xdotool ("key ctrl+1");
  ASSERT_COMES_TRUE (!is_on_timing (f));
}

/* A field that is folded away or scrolled out of sight comes into sight when it refuses its text. */
static void
test_comes_into_sight (Fixture *f, gconstpointer data)
{
  GtkWidget *scroll = app_test_find (GTK_WIDGET (bw_window_get_editor (f->window)),
                                     GTK_TYPE_SCROLLED_WINDOW, "scroll");
  GtkAdjustment *adjustment = gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (scroll));
  GtkWidget *cell = app_test_find (GTK_WIDGET (bw_window_get_page (f->window, "fit")),
                                   BW_TYPE_FIT_CELL, NULL);
  graphene_rect_t bounds;

  gtk_window_set_default_size (GTK_WINDOW (f->window), 1000, 500);
  gtk_test_widget_wait_for_draw (GTK_WIDGET (f->window));
  type (f, "video_level", REFUSED);
  gtk_widget_grab_focus (cell);
  gtk_adjustment_set_value (adjustment, 0);
  gtk_test_widget_wait_for_draw (GTK_WIDGET (f->window));
  g_assert_true (gtk_widget_compute_bounds (control (f, "video_level"), scroll, &bounds));
  g_assert_cmpfloat (bounds.origin.y, >, gtk_widget_get_height (scroll));
  app_test_xdotool ("key ctrl+s");
  ASSERT_COMES_TRUE (gtk_widget_compute_bounds (control (f, "video_level"), scroll, &bounds)
                     && bounds.origin.y >= 0
                     && bounds.origin.y + bounds.size.height <= gtk_widget_get_height (scroll));
}

/* A note of several lines */

static char *
note (Fixture *f)
{
  return g_strdup (bw_sheet_source (bw_document_get_sheet (f->document), 0)->note);
}

static gboolean
note_is (Fixture *f, const char *expected)
{
  g_autofree char *text = note (f);
  return g_strcmp0 (text, expected) == 0;
}

static void
start_note (Fixture *f)
{
  gtk_widget_grab_focus (control (f, "note"));
  app_test_xdotool ("key ctrl+a BackSpace");
}

/* Enter begins a line, Control+Enter takes the note. */
static void
test_note_by_keys (Fixture *f, gconstpointer data)
{
  g_assert_true (GTK_IS_TEXT_VIEW (control (f, "note")));
  start_note (f);
  app_test_xdotool ("type first");
  app_test_xdotool ("key Return");
  app_test_xdotool ("type second");
  ASSERT_COMES_TRUE (bw_document_has_typed (f->document));
  g_assert_false (note_is (f, "first\nsecond"));
  app_test_xdotool ("key ctrl+Return");
  ASSERT_COMES_TRUE (note_is (f, "first\nsecond"));
  g_assert_true (app_test_focus_is_in (f->window, control (f, "note")));
  g_assert_false (bw_document_has_typed (f->document));

  /* Tab leaves the field and takes it, Escape takes it back */
  app_test_xdotool ("type d");
  ASSERT_COMES_TRUE (bw_document_has_typed (f->document));
  app_test_xdotool ("key Tab");
  ASSERT_COMES_TRUE (note_is (f, "first\nsecondd"));
  g_assert_false (app_test_focus_is_in (f->window, control (f, "note")));
  start_note (f);
  ASSERT_COMES_TRUE (bw_document_has_typed (f->document));
  app_test_xdotool ("key Escape");
  ASSERT_COMES_TRUE (!bw_document_has_typed (f->document));
  g_assert_true (note_is (f, "first\nsecondd"));

  /* Nothing is typed: the key for undo is for the sheet */
  app_test_xdotool ("key ctrl+z");
  ASSERT_COMES_TRUE (note_is (f, "first\nsecond"));
}

/* Three lines are pasted as they are, and so is a text that no line of input would hold. The sheet
 * holds them, and its file does. */
static void
test_note_pasted (Fixture *f, gconstpointer data)
{
  GdkClipboard *clipboard = gtk_widget_get_clipboard (GTK_WIDGET (f->window));
  g_autoptr (GString) pasted = g_string_new ("one\ntwo\nthree");

  for (guint i = 0; i < 1000; i++)
    g_string_append_printf (pasted, "\n%u: %s", i,
                            "a line of a note that somebody has written down at the bench");
  g_assert_cmpuint (pasted->len, >, 64 * 1024);
  gdk_clipboard_set_text (clipboard, pasted->str);
  start_note (f);
  app_test_xdotool ("key ctrl+v");
  ASSERT_COMES_TRUE (bw_document_has_typed (f->document));
  gtk_test_widget_wait_for_draw (GTK_WIDGET (f->window));
  g_assert_cmpint (gtk_widget_get_height (control (f, "note")), <=,
                   gtk_widget_get_height (GTK_WIDGET (f->window)) / 2); /* no field fills the form */
  app_test_xdotool ("key ctrl+s");
  ASSERT_COMES_TRUE (!bw_document_is_modified (f->document));
  g_assert_true (note_is (f, pasted->str));
  g_autoptr (BwDocument) again = app_test_document_at (f->path);
  g_assert_cmpstr (bw_sheet_source (bw_document_get_sheet (again), 0)->note, ==, pasted->str);
}

/* The field is as high as its text, so that nothing of it is hidden. */
static void
test_note_grows (Fixture *f, gconstpointer data)
{
  GtkWidget *field = control (f, "note");
  g_autoptr (PangoLayout) line = gtk_widget_create_pango_layout (field, "x");
  int line_height;

  pango_layout_get_pixel_size (line, NULL, &line_height);
  start_note (f);
  app_test_xdotool ("key a Return b Return c Return d Return e Return f Return g Return h");
  ASSERT_COMES_TRUE (gtk_widget_get_height (field) >= 8 * line_height);
  app_test_xdotool ("key ctrl+a BackSpace");
  ASSERT_COMES_TRUE (gtk_widget_get_height (field) < 8 * line_height);

  /* One line that is wrapped into many, as it is typed and when the form opens anew */
  g_autofree char *long_line = g_strnfill (800, 'm');
  gdk_clipboard_set_text (gtk_widget_get_clipboard (field), long_line);
  app_test_xdotool ("key ctrl+v");
  ASSERT_COMES_TRUE (gtk_widget_get_height (field) >= 8 * line_height);
  bw_window_edit (f->window, BW_PART_MONITOR);
  gtk_test_widget_wait_for_draw (GTK_WIDGET (f->window));
  bw_window_edit (f->window, BW_PART_SOURCE);
  ASSERT_COMES_TRUE (gtk_widget_get_height (control (f, "note")) >= 8 * line_height);
}

static void
on_told (guint *n_told)
{
  (*n_told)++;
}

/* GTK tells of the height of a text in each layout. One that is as it was asks for no other layout:
 * else there would be one after the other for as long as the form is open. */
static void
test_note_at_rest (Fixture *f, gconstpointer data)
{
  GtkAdjustment *height = gtk_scrollable_get_vadjustment (GTK_SCROLLABLE (control (f, "note")));
  guint n_told = 0;

  gtk_test_widget_wait_for_draw (GTK_WIDGET (f->window));
  g_signal_connect_swapped (height, "notify::upper", G_CALLBACK (on_told), &n_told);
  g_object_notify (G_OBJECT (height), "upper");
  gtk_test_widget_wait_for_draw (GTK_WIDGET (f->window));
  gtk_test_widget_wait_for_draw (GTK_WIDGET (f->window));
  g_assert_cmpuint (n_told, ==, 1);
  g_signal_handlers_disconnect_by_data (height, &n_told);
}

#define ADD(name, func) g_test_add ("/leaving/" name, Fixture, NULL, set_up, func, tear_down)

int
main (int argc, char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
  application = bw_application_new ();
  g_assert_true (g_application_register (G_APPLICATION (application), NULL, NULL));
  g_application_hold (G_APPLICATION (application));
  app_test_clear_drafts ();
  ADD ("marked-at-once", test_marked_at_once);
  for (guint way = 0; way < G_N_ELEMENTS (ways); way++)
    {
      g_autofree char *path = g_strdup_printf ("/leaving/sound/%s", ways[way].name);
      g_test_add (path, Fixture, GUINT_TO_POINTER (way), set_up, test_sound, tear_down);
    }
  ADD ("refused", test_refused);
  ADD ("close-and-save", test_close_and_save);
  ADD ("close-twice", test_close_twice);
  ADD ("undo", test_undo);
  ADD ("other-page", test_other_page);
  ADD ("comes-into-sight", test_comes_into_sight);
  ADD ("note/by-keys", test_note_by_keys);
  ADD ("note/pasted", test_note_pasted);
  ADD ("note/grows", test_note_grows);
  ADD ("note/at-rest", test_note_at_rest);
  return g_test_run ();
}
