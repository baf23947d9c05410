/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "app-test.h"

#include <string.h>

#include <gdk/x11/gdkx.h>

/* The program by keyboard alone: real key events from xdotool to a real window. There is no window
 * manager on the test's screen, so the window is given the focus by hand. */

/* For all tests: an application cannot be started twice, and is not run here but driven. */
static BwApplication *application = NULL;

typedef struct
{
  BwWindow *window;
  BwDocument *document;
  char *path;
} Fixture;

static void
on_tool_done (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (GError) error = NULL;
  gboolean done = g_subprocess_wait_check_finish (G_SUBPROCESS (source), result, &error);
  g_assert_no_error (error);
  g_assert_true (done);
  *(gboolean *) data = TRUE;
}

/* Key events take their time: what must come true is waited for. */
#define PATIENCE_US (10 * G_USEC_PER_SEC)

static gboolean
on_tick (gpointer data)
{
  return G_SOURCE_CONTINUE;
}

#define ASSERT_COMES_TRUE(expression)                                                              \
  G_STMT_START                                                                                     \
  {                                                                                                \
    gint64 deadline = g_get_monotonic_time () + PATIENCE_US;                                       \
    guint tick = g_timeout_add (20, on_tick, NULL);                                                \
    while (!(expression) && g_get_monotonic_time () < deadline)                                    \
      g_main_context_iteration (NULL, TRUE);                                                       \
    g_source_remove (tick);                                                                        \
    g_assert_true (expression);                                                                    \
  }                                                                                                \
  G_STMT_END

static gboolean
is_true (gpointer data)
{
  return *(gboolean *) data;
}

static gboolean
on_pause_over (gpointer data)
{
  *(gboolean *) data = TRUE;
  return G_SOURCE_REMOVE;
}

/* Runs xdotool with the words of @command, while the window goes on working. */
static void
xdotool (const char *command)
{
  g_autofree char *line = g_strconcat ("xdotool ", command, NULL);
  g_auto (GStrv) words = NULL;
  g_autoptr (GError) error = NULL;
  gboolean done = FALSE, pause_over = FALSE;

  g_assert_true (g_shell_parse_argv (line, NULL, &words, NULL));
  g_autoptr (GSubprocess) tool = g_subprocess_newv ((const char *const *) words,
                                                    G_SUBPROCESS_FLAGS_NONE, &error);
  g_assert_no_error (error);
  g_subprocess_wait_check_async (tool, NULL, on_tool_done, &done);
  g_assert_true (app_test_wait (is_true, &done));
  g_timeout_add (60, on_pause_over, &pause_over); /* the events are on their way */
  g_assert_true (app_test_wait (is_true, &pause_over));
}

static gboolean
is_mapped (gpointer widget)
{
  return gtk_widget_get_mapped (widget);
}

static gboolean
is_active (gpointer window)
{
  return gtk_window_is_active (window);
}

static void
set_up (Fixture *f, gconstpointer data)
{
  g_autofree char *original = app_test_sheet_path ();
  g_autofree char *text = NULL;
  f->path = app_test_scratch_path ("keyboard.bench");
  g_assert_true (g_file_get_contents (original, &text, NULL, NULL));
  g_assert_true (g_file_set_contents (f->path, text, -1, NULL));
  g_autoptr (GFile) file = g_file_new_for_path (f->path);

  g_application_open (G_APPLICATION (application), &file, 1, "");
  f->window = BW_WINDOW (gtk_application_get_active_window (GTK_APPLICATION (application)));
  f->document = bw_window_get_document (f->window);
  g_assert_true (app_test_wait (is_mapped, f->window));
  gtk_test_widget_wait_for_draw (GTK_WIDGET (f->window));

  GdkSurface *surface = gtk_native_get_surface (GTK_NATIVE (f->window));
  g_autofree char *focus = g_strdup_printf ("windowfocus %lu",
                                            (gulong) gdk_x11_surface_get_xid (surface));
  xdotool (focus);
  g_assert_true (app_test_wait (is_active, f->window));
}

static void
tear_down (Fixture *f, gconstpointer data)
{
  gtk_window_destroy (GTK_WINDOW (f->window));
  app_test_settle ();
  g_free (f->path);
}

static BwFitCell *
cell (Fixture *f, guint source, guint input)
{
  return bw_fit_grid_get_cell (bw_fit_page_get_grid (bw_window_get_fit_page (f->window)), source,
                               input);
}

static gboolean
focus_is_in (Fixture *f, GtkWidget *widget)
{
  GtkWidget *focus = gtk_window_get_focus (GTK_WINDOW (f->window));
  return focus != NULL && (focus == widget || gtk_widget_is_ancestor (focus, widget));
}

static double
video_v (Fixture *f)
{
  return bw_sheet_source (bw_document_get_sheet (f->document), 0)->video_v;
}

static gboolean
sheet_is (Fixture *f, const char *expected)
{
  g_autofree char *text = app_test_sheet_text (f->document);
  return strcmp (text, expected) == 0;
}

/* Presses @key until the focus is in @widget; it must get there. */
static void
go_to (Fixture *f, const char *key, GtkWidget *widget)
{
  g_autofree char *command = g_strconcat ("key ", key, NULL);
  for (guint i = 0; i < 60 && !focus_is_in (f, widget); i++)
    xdotool (command);
  g_assert_true (focus_is_in (f, widget));
}

static void
go_to_field (Fixture *f, const char *field)
{
  go_to (f, "Tab",
         bw_editor_row_get_control (bw_editor_get_row (bw_window_get_editor (f->window), field)));
}

/* From the table back to the list of sources, and into the form with Enter. */
static void
open_editor (Fixture *f)
{
  BwBenchList *list = bw_bench_panel_get_list (bw_window_get_bench (f->window), BW_PART_SOURCE);
  go_to (f, "shift+Tab", app_test_find (GTK_WIDGET (list), GTK_TYPE_LIST_BOX, NULL));
  xdotool ("key Return");
  ASSERT_COMES_TRUE (bw_window_is_editing (f->window));
  g_assert_cmpint (bw_editor_get_part (bw_window_get_editor (f->window)), ==, BW_PART_SOURCE);
}

static void
assert_selected (Fixture *f, guint source, guint input)
{
  ASSERT_COMES_TRUE (bw_document_get_source (f->document) == source
                     && bw_document_get_input (f->document) == input);
  ASSERT_COMES_TRUE (focus_is_in (f, GTK_WIDGET (cell (f, source, input))));
}

static void
test_table (Fixture *f, gconstpointer data)
{
  guint last_source = bw_document_count (f->document, BW_PART_SOURCE) - 1;
  guint last_input = bw_document_count (f->document, BW_PART_INPUT) - 1;

  assert_selected (f, 0, 0); /* where one starts */
  xdotool ("key Right");
  assert_selected (f, 0, 1);
  xdotool ("key Down Down");
  assert_selected (f, 2, 1);
  xdotool ("key End");
  assert_selected (f, 2, last_input);
  xdotool ("key Right");
  assert_selected (f, 2, last_input);
  xdotool ("key Home");
  assert_selected (f, 2, 0);
  xdotool ("key ctrl+End");
  assert_selected (f, last_source, last_input);
  xdotool ("key Up Left");
  assert_selected (f, last_source - 1, last_input - 1);
  xdotool ("key ctrl+Home");
  assert_selected (f, 0, 0);

  /* One key leaves the table, one comes back to the same cell */
  xdotool ("key Right");
  xdotool ("key Tab");
  ASSERT_COMES_TRUE (
      !focus_is_in (f, GTK_WIDGET (bw_fit_page_get_grid (bw_window_get_fit_page (f->window)))));
  xdotool ("key shift+Tab");
  assert_selected (f, 0, 1);
}

/* Open the form, type, Tab: the table follows; undo, redo, save. */
static void
test_edit_undo_save (Fixture *f, gconstpointer data)
{
  g_autofree char *before = app_test_sheet_text (f->document);
  g_autofree char *word = g_strdup (bw_fit_cell_get_word (cell (f, 0, 0)));
  g_autofree char *detail = g_strdup (bw_fit_cell_get_detail (cell (f, 0, 0)));
  BwFit fit;

  open_editor (f);
  go_to_field (f, "video_level");
  xdotool ("key ctrl+a");
  xdotool ("type '3 V'");
  xdotool ("key Tab");
  ASSERT_COMES_TRUE (video_v (f) >= 3 && video_v (f) <= 3);
  g_assert_true (bw_document_judge (f->document, 0, 0, &fit));
  g_assert_cmpuint (fit.at[BW_RULE_VIDEO_LEVEL].severity, !=, BW_SEVERITY_OK);
  g_assert_cmpstr (bw_fit_cell_get_word (cell (f, 0, 0)), ==,
                   bw_kind_label (&bw_verdicts, fit.verdict));
  g_assert_cmpstr (bw_fit_cell_get_word (cell (f, 0, 0)), !=, word);

  /* The focus is in the next field, which has nothing of its own to undo */
  xdotool ("key ctrl+z");
  ASSERT_COMES_TRUE (sheet_is (f, before));
  g_assert_cmpstr (bw_fit_cell_get_word (cell (f, 0, 0)), ==, word);
  g_assert_cmpstr (bw_fit_cell_get_detail (cell (f, 0, 0)), ==, detail);
  xdotool ("key ctrl+shift+z");
  ASSERT_COMES_TRUE (video_v (f) >= 3 && video_v (f) <= 3);

  g_assert_true (bw_document_is_modified (f->document));
  xdotool ("key ctrl+s");
  ASSERT_COMES_TRUE (!bw_document_is_modified (f->document));
  g_autofree char *saved = NULL;
  g_assert_true (g_file_get_contents (f->path, &saved, NULL, NULL));
  g_assert_nonnull (strstr (saved, "video_level=3 V"));
}

/* A field has its own undo, which comes first. */
static void
test_undo_in_field (Fixture *f, gconstpointer data)
{
  GtkEditable *entry;
  guint n = bw_document_count (f->document, BW_PART_SOURCE);

  open_editor (f);
  bw_document_remove (f->document, BW_PART_SOURCE, n - 1); /* a step that must stay */
  g_autofree char *before = app_test_sheet_text (f->document);
  entry = GTK_EDITABLE (
      bw_editor_row_get_control (bw_editor_get_row (bw_window_get_editor (f->window), "name")));
  g_autofree char *name = g_strdup (gtk_editable_get_text (entry));
  xdotool ("key End");
  xdotool ("type x");
  ASSERT_COMES_TRUE (strcmp (gtk_editable_get_text (entry), name) != 0);
  xdotool ("key ctrl+z");
  ASSERT_COMES_TRUE (strcmp (gtk_editable_get_text (entry), name) == 0);
  g_assert_true (sheet_is (f, before));
  xdotool ("key ctrl+z");
  ASSERT_COMES_TRUE (bw_document_count (f->document, BW_PART_SOURCE) == n);
}

static void
test_error_and_escape (Fixture *f, gconstpointer data)
{
  g_autofree char *before = app_test_sheet_text (f->document);

  open_editor (f);
  BwEditorRow *row = bw_editor_get_row (bw_window_get_editor (f->window), "video_level");
  g_autofree char *shown = bw_editor_row_dup_text (row);
  go_to_field (f, "video_level");
  xdotool ("key ctrl+a");
  xdotool ("type '3 Hz'");
  xdotool ("key Tab");
  ASSERT_COMES_TRUE (bw_editor_row_get_error (row) != NULL);
  xdotool ("key shift+Tab");
  ASSERT_COMES_TRUE (focus_is_in (f, bw_editor_row_get_control (row)));
  xdotool ("key Escape");
  ASSERT_COMES_TRUE (bw_editor_row_get_error (row) == NULL);
  g_autofree char *again = bw_editor_row_dup_text (row);
  g_assert_cmpstr (again, ==, shown);
  g_assert_true (sheet_is (f, before));

  /* Back to the bench with the button, and to the row that was edited */
  go_to (f, "Tab",
         app_test_find (GTK_WIDGET (bw_window_get_editor (f->window)), GTK_TYPE_BUTTON, "done"));
  xdotool ("key space");
  ASSERT_COMES_TRUE (!bw_window_is_editing (f->window));
  ASSERT_COMES_TRUE (
      focus_is_in (f, GTK_WIDGET (bw_bench_panel_get_list (bw_window_get_bench (f->window),
                                                           BW_PART_SOURCE))));
}

static void
test_delete (Fixture *f, gconstpointer data)
{
  BwBenchList *list = bw_bench_panel_get_list (bw_window_get_bench (f->window), BW_PART_SOURCE);
  guint n = bw_document_count (f->document, BW_PART_SOURCE);

  go_to (f, "shift+Tab", app_test_find (GTK_WIDGET (list), GTK_TYPE_LIST_BOX, NULL));
  xdotool ("key Down");
  ASSERT_COMES_TRUE (bw_document_get_source (f->document) == 1);
  xdotool ("key Delete");
  ASSERT_COMES_TRUE (bw_document_count (f->document, BW_PART_SOURCE) == n - 1);
  xdotool ("key ctrl+z");
  ASSERT_COMES_TRUE (bw_document_count (f->document, BW_PART_SOURCE) == n);
  g_assert_false (bw_document_is_modified (f->document));
}

static void
test_pages_and_menu (Fixture *f, gconstpointer data)
{
  GtkWidget *fit = GTK_WIDGET (bw_window_get_fit_page (f->window));
  GtkWidget *timing = GTK_WIDGET (bw_window_get_timing_page (f->window));
  GtkWidget *menu = app_test_find (gtk_window_get_titlebar (GTK_WINDOW (f->window)),
                                   GTK_TYPE_MENU_BUTTON, "menu");
  GtkWidget *popover = GTK_WIDGET (gtk_menu_button_get_popover (GTK_MENU_BUTTON (menu)));

  xdotool ("key ctrl+2");
  g_assert_true (app_test_wait (is_mapped, timing));
  xdotool ("key ctrl+1");
  g_assert_true (app_test_wait (is_mapped, fit));
  g_assert_false (gtk_widget_get_mapped (popover));
  xdotool ("key F10");
  g_assert_true (app_test_wait (is_mapped, popover));
  xdotool ("key Escape");
  ASSERT_COMES_TRUE (!gtk_widget_get_visible (popover));
}

/* The Timing page */

static BwTimingPage *
timing (Fixture *f)
{
  return bw_window_get_timing_page (f->window);
}

/* To the Timing page and to the switch for a part of it, which takes Enter. */
static void
open_part (Fixture *f, const char *part)
{
  GtkWidget *parts = app_test_find (GTK_WIDGET (timing (f)), GTK_TYPE_STACK, "stack");
  GtkWidget *button = gtk_widget_get_first_child (
      app_test_find (GTK_WIDGET (timing (f)), GTK_TYPE_STACK_SWITCHER, "switcher"));

  xdotool ("key ctrl+2");
  g_assert_true (app_test_wait (is_mapped, timing (f)));
  go_to (f, "Tab", button);
  for (guint i = 0; i < 4 && strcmp (gtk_stack_get_visible_child_name (GTK_STACK (parts)), part);
       i++)
    {
      if (i > 0)
        xdotool ("key Tab");
      xdotool ("key space");
    }
  ASSERT_COMES_TRUE (!strcmp (gtk_stack_get_visible_child_name (GTK_STACK (parts)), part));
}

static const char *
shown (BwEditorRow *row)
{
  return gtk_editable_get_text (GTK_EDITABLE (bw_editor_row_get_control (row)));
}

/* ITU-R BT.601 at twice its rate: 27 MHz / 858 px = 31.468531 kHz. */
static void
test_work_out (Fixture *f, gconstpointer data)
{
  BwWorkOut *panel = bw_timing_page_get_work_out (timing (f));
  BwEditorRow *line_rate = bw_work_out_get_row (panel, BW_FIGURE_LINE_RATE);

  open_part (f, "work-out");
  go_to (f, "Tab", app_test_find (GTK_WIDGET (panel), GTK_TYPE_BUTTON, "clear"));
  xdotool ("key space");
  ASSERT_COMES_TRUE (*shown (line_rate) == '\0');
  go_to (f, "Tab",
         bw_editor_row_get_control (bw_work_out_get_row (panel, BW_FIGURE_PIXEL_CLOCK)));
  xdotool ("type '27 MHz'");
  xdotool ("key Return");
  go_to (f, "Tab", bw_editor_row_get_control (bw_work_out_get_row (panel, BW_FIGURE_H_TOTAL)));
  xdotool ("type '858 px'");
  xdotool ("key Return");
  ASSERT_COMES_TRUE (strstr (shown (line_rate), "31.4685") != NULL);
}

/* SMPTE 170M: 525 lines interlaced. */
static void
test_identify_and_use (Fixture *f, gconstpointer data)
{
  BwIdentifyPanel *panel = bw_timing_page_get_identify (timing (f));
  BwForm *form = bw_identify_panel_get_form (panel);

  bw_document_select (f->document, 1, 0);
  open_part (f, "identify");
  go_to (f, "Tab", bw_editor_row_get_control (bw_form_get_row (form, "line_rate")));
  xdotool ("type '15.734 kHz'");
  xdotool ("key Tab");
  xdotool ("type '59.94 Hz'");
  xdotool ("key Return");
  ASSERT_COMES_TRUE (bw_identify_panel_get_raster (panel, 0) != NULL);
  g_assert_cmpstr (bw_identify_panel_get_raster (panel, 0)->id, ==, "525-59.94-interlaced");
  go_to (f, "Tab", app_test_find (GTK_WIDGET (panel), GTK_TYPE_BUTTON, "use"));
  xdotool ("key space");
  ASSERT_COMES_TRUE (
      !strcmp (bw_timing_page_get_raster (timing (f))->id, "525-59.94-interlaced"));
  xdotool ("key ctrl+z");
  ASSERT_COMES_TRUE (!strcmp (bw_timing_page_get_raster (timing (f))->id, "625-50-interlaced"));
}

/* SMPTE 170M-2004 table 2: line sync 4.7 µs ± 0.1 µs. */
static void
test_reading (Fixture *f, gconstpointer data)
{
  BwReadingRow *row = bw_readings_panel_get_row (bw_timing_page_get_readings (timing (f)),
                                                 BW_READING_LINE_SYNC);
  BwJudgement judgement;

  open_part (f, "readings");
  go_to (f, "Tab", bw_editor_row_get_control (bw_reading_row_get_editor (row)));
  xdotool ("type '5.2 us'");
  xdotool ("key Return");
  ASSERT_COMES_TRUE (bw_reading_row_is_judged (row, &judgement));
  g_assert_cmpint (judgement.outcome, ==, BW_OUTCOME_TOO_HIGH);
}

static void
test_drawing (Fixture *f, gconstpointer data)
{
  BwDrawingPanel *panel = bw_timing_page_get_drawing (timing (f));
  BwPictureArea *area = bw_drawing_panel_get_area (panel);
  GtkWidget *field = app_test_find (GTK_WIDGET (panel), GTK_TYPE_TOGGLE_BUTTON, "field");
  GtkLabel *reading = GTK_LABEL (app_test_find (GTK_WIDGET (panel), GTK_TYPE_LABEL, "reading"));

  open_part (f, "drawing");
  go_to (f, "Tab", field);
  xdotool ("key space");
  ASSERT_COMES_TRUE (bw_raster_picture (bw_picture_area_get_picture (area))->kind == BW_PICTURE_FIELD);
  go_to (f, "Tab", GTK_WIDGET (area));
  xdotool ("key plus plus");
  ASSERT_COMES_TRUE (!bw_picture_is_whole (bw_picture_area_get_picture (area)));
  double from = bw_raster_picture (bw_picture_area_get_picture (area))->across.from;
  xdotool ("key shift+Right");
  ASSERT_COMES_TRUE (bw_raster_picture (bw_picture_area_get_picture (area))->across.from > from);
  xdotool ("key 0");
  ASSERT_COMES_TRUE (bw_picture_is_whole (bw_picture_area_get_picture (area)));
  xdotool ("key Right c Right Right");
  ASSERT_COMES_TRUE (strstr (gtk_label_get_label (reading), "Between the cursors") != NULL);
  xdotool ("key Escape");
  ASSERT_COMES_TRUE (strstr (gtk_label_get_label (reading), "Between the cursors") == NULL);
}

#define ADD(name, func) g_test_add ("/keyboard/" name, Fixture, NULL, set_up, func, tear_down)

int
main (int argc, char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
  application = bw_application_new ();
  g_assert_true (g_application_register (G_APPLICATION (application), NULL, NULL));
  ADD ("table", test_table);
  ADD ("edit-undo-save", test_edit_undo_save);
  ADD ("undo-in-field", test_undo_in_field);
  ADD ("error-and-escape", test_error_and_escape);
  ADD ("delete", test_delete);
  ADD ("pages-and-menu", test_pages_and_menu);
  ADD ("work-out", test_work_out);
  ADD ("identify-and-use", test_identify_and_use);
  ADD ("reading", test_reading);
  ADD ("drawing", test_drawing);
  return g_test_run ();
}
