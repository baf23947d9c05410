/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "app-hands.h"
#include "app/bench/row-list.h"
#include "app/fit/grid.h"
#include "app/fit/page.h"
#include "app/timing/drawing-panel.h"
#include "app/timing/identify-panel.h"
#include "app/timing/page.h"
#include "app/timing/readings-panel.h"
#include "app/timing/work-out.h"

#include <string.h>

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
set_up (Fixture *f, gconstpointer data)
{
  f->path = app_test_copy_sheet ("keyboard.bench");
  f->window = app_test_open (application, f->path);
  f->document = bw_window_get_document (f->window);
  app_test_give_focus (f->window);
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
  return bw_fit_grid_get_cell (APP_TEST_THE (BW, FIT_GRID,
                                             BW_FIT_PAGE (bw_window_get_page (f->window, "fit"))),
                               source, input);
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

static void
go_to_field (Fixture *f, const char *field)
{
  app_test_go_to (f->window, "Tab",
                  bw_editor_row_get_control (
                      bw_editor_get_row (bw_window_get_editor (f->window), field)));
}

/* From the table back to the list of sources, and into the form with Enter. */
static void
open_editor (Fixture *f)
{
  BwBenchList *list = bw_bench_panel_get_list (bw_window_get_bench (f->window), BW_PART_SOURCE);
  app_test_go_to (f->window, "shift+Tab",
                  app_test_find (GTK_WIDGET (list), BW_TYPE_ROW_LIST, NULL));
  app_test_xdotool ("key Return");
  ASSERT_COMES_TRUE (bw_window_is_editing (f->window));
  g_assert_cmpint (bw_editor_get_part (bw_window_get_editor (f->window)), ==, BW_PART_SOURCE);
}

static void
assert_selected (Fixture *f, guint source, guint input)
{
  ASSERT_COMES_TRUE (bw_document_get_source (f->document) == source
                     && bw_document_get_input (f->document) == input);
  ASSERT_COMES_TRUE (app_test_focus_is_in (f->window, GTK_WIDGET (cell (f, source, input))));
}

static void
test_table (Fixture *f, gconstpointer data)
{
  guint last_source = bw_document_count (f->document, BW_PART_SOURCE) - 1;
  guint last_input = bw_document_count (f->document, BW_PART_INPUT) - 1;

  assert_selected (f, 0, 0); /* where one starts */
  app_test_xdotool ("key Right");
  assert_selected (f, 0, 1);
  app_test_xdotool ("key Down Down");
  assert_selected (f, 2, 1);
  app_test_xdotool ("key End");
  assert_selected (f, 2, last_input);
  app_test_xdotool ("key Right");
  assert_selected (f, 2, last_input);
  app_test_xdotool ("key Home");
  assert_selected (f, 2, 0);
  app_test_xdotool ("key ctrl+End");
  assert_selected (f, last_source, last_input);
  app_test_xdotool ("key Up Left");
  assert_selected (f, last_source - 1, last_input - 1);
  app_test_xdotool ("key ctrl+Home");
  assert_selected (f, 0, 0);
  app_test_xdotool ("key Page_Down");
  ASSERT_COMES_TRUE (bw_document_get_source (f->document) > 0);
  app_test_xdotool ("key Page_Up");
  assert_selected (f, 0, 0);

  /* One key leaves the table, one comes back to the same cell */
  app_test_xdotool ("key Right");
  app_test_xdotool ("key Tab");
  ASSERT_COMES_TRUE (
      !app_test_focus_is_in (f->window,
                             GTK_WIDGET (APP_TEST_THE (BW, FIT_GRID,
                                                       BW_FIT_PAGE (bw_window_get_page (f->window,
                                                                                        "fit"))))));
  app_test_xdotool ("key shift+Tab");
  assert_selected (f, 0, 1);

  /* Before the cells come the buttons that copy and export all of it */
  GtkWidget *copy = app_test_find (GTK_WIDGET (bw_window_get_page (f->window, "fit")),
                                   GTK_TYPE_BUTTON, "copy-result");
  app_test_xdotool ("key shift+Tab shift+Tab");
  ASSERT_COMES_TRUE (app_test_focus_is_in (f->window, copy));
  app_test_xdotool ("key Tab Tab");
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
  app_test_xdotool ("key ctrl+a");
  app_test_xdotool ("type '3 V'");
  app_test_xdotool ("key Tab");
  ASSERT_COMES_TRUE (video_v (f) >= 3 && video_v (f) <= 3);
  g_assert_true (bw_document_judge (f->document, 0, 0, &fit));
  g_assert_cmpuint (fit.at[BW_RULE_VIDEO_LEVEL].severity, !=, BW_SEVERITY_OK);
  g_assert_cmpstr (word, ==, "direct");
  g_assert_cmpstr (bw_fit_cell_get_word (cell (f, 0, 0)), ==, "with parts");

  /* The focus is in the next field, which has nothing of its own to undo */
  app_test_xdotool ("key ctrl+z");
  ASSERT_COMES_TRUE (sheet_is (f, before));
  g_assert_cmpstr (bw_fit_cell_get_word (cell (f, 0, 0)), ==, word);
  g_assert_cmpstr (bw_fit_cell_get_detail (cell (f, 0, 0)), ==, detail);
  app_test_xdotool ("key ctrl+shift+z");
  ASSERT_COMES_TRUE (video_v (f) >= 3 && video_v (f) <= 3);

  g_assert_true (bw_document_is_modified (f->document));
  app_test_xdotool ("key ctrl+s");
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
  app_test_xdotool ("key End");
  app_test_xdotool ("type x");
  ASSERT_COMES_TRUE (strcmp (gtk_editable_get_text (entry), name) != 0);
  app_test_xdotool ("key ctrl+z");
  ASSERT_COMES_TRUE (strcmp (gtk_editable_get_text (entry), name) == 0);
  g_assert_true (sheet_is (f, before));
  app_test_xdotool ("key ctrl+z");
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
  app_test_xdotool ("key ctrl+a");
  app_test_xdotool ("type '3 Hz'");
  app_test_xdotool ("key Tab");
  ASSERT_COMES_TRUE (bw_editor_row_get_error (row) != NULL);
  app_test_xdotool ("key shift+Tab");
  ASSERT_COMES_TRUE (app_test_focus_is_in (f->window, bw_editor_row_get_control (row)));
  app_test_xdotool ("key Escape");
  ASSERT_COMES_TRUE (bw_editor_row_get_error (row) == NULL);
  g_autofree char *again = bw_editor_row_dup_text (row);
  g_assert_cmpstr (again, ==, shown);
  g_assert_true (sheet_is (f, before));

  /* Back to the bench with the button, and to the row that was edited */
  app_test_go_to (f->window, "Tab",
                  app_test_find (GTK_WIDGET (bw_window_get_editor (f->window)), GTK_TYPE_BUTTON,
                                 "done"));
  app_test_xdotool ("key space");
  ASSERT_COMES_TRUE (!bw_window_is_editing (f->window));
  ASSERT_COMES_TRUE (
      app_test_focus_is_in (f->window,
                            GTK_WIDGET (bw_bench_panel_get_list (bw_window_get_bench (f->window),
                                                                 BW_PART_SOURCE))));
}

static void
test_delete (Fixture *f, gconstpointer data)
{
  BwBenchList *list = bw_bench_panel_get_list (bw_window_get_bench (f->window), BW_PART_SOURCE);
  guint n = bw_document_count (f->document, BW_PART_SOURCE);

  app_test_go_to (f->window, "shift+Tab",
                  app_test_find (GTK_WIDGET (list), BW_TYPE_ROW_LIST, NULL));
  app_test_xdotool ("key Down");
  ASSERT_COMES_TRUE (bw_document_get_source (f->document) == 1);
  app_test_xdotool ("key Delete");
  ASSERT_COMES_TRUE (bw_document_count (f->document, BW_PART_SOURCE) == n - 1);
  app_test_xdotool ("key ctrl+z");
  ASSERT_COMES_TRUE (bw_document_count (f->document, BW_PART_SOURCE) == n);
  g_assert_false (bw_document_is_modified (f->document));
}

/* Leaving with Control+Q and starting again: the sheet is open at the page and view that were
 * seen. */
static void
test_session (Fixture *f, gconstpointer data)
{
  g_autoptr (GFile) file = g_file_new_for_path (f->path);

  app_test_xdotool ("key ctrl+4");
  ASSERT_COMES_TRUE (strcmp (bw_window_get_page_id (f->window), "levels") == 0);
  bw_page_show_view (bw_window_get_shown_page (f->window), "sync");
  app_test_xdotool ("key ctrl+q");
  ASSERT_COMES_TRUE (gtk_application_get_windows (GTK_APPLICATION (application)) == NULL);
  g_application_activate (G_APPLICATION (application));
  f->window = BW_WINDOW (gtk_application_get_active_window (GTK_APPLICATION (application)));
  g_assert_true (g_file_equal (bw_document_get_file (bw_window_get_document (f->window)), file));
  g_assert_cmpstr (bw_window_get_page_id (f->window), ==, "levels");
  g_assert_cmpstr (bw_page_get_view (bw_window_get_shown_page (f->window)), ==, "sync");
}

static GtkWidget *
shortcuts_window (void)
{
  GListModel *windows = gtk_window_get_toplevels ();
  for (guint i = 0; i < g_list_model_get_n_items (windows); i++)
    {
      g_autoptr (GtkWidget) widget = g_list_model_get_item (windows, i);
      if (GTK_IS_SHORTCUTS_WINDOW (widget) && gtk_widget_get_mapped (widget))
        return widget;
    }
  return NULL;
}

/* The window of shortcuts comes and goes, and nothing is said on the log. */
static void
test_shortcuts (Fixture *f, gconstpointer data)
{
  app_test_xdotool ("key ctrl+question");
  ASSERT_COMES_TRUE (shortcuts_window () != NULL);
  gtk_test_widget_wait_for_draw (shortcuts_window ());
  app_test_give_focus (shortcuts_window ());
  app_test_xdotool ("key Escape");
  ASSERT_COMES_TRUE (shortcuts_window () == NULL);
}

/* With Tab through the bench from the header bar to the page: each list is one stop, and nothing else
 * is selected. */
static void
test_lists_keep_selection (Fixture *f, gconstpointer data)
{
  BwBenchPanel *bench = bw_window_get_bench (f->window);
  GtkWidget *lists[] = {
    app_test_find (GTK_WIDGET (bw_bench_panel_get_list (bench, BW_PART_INPUT)), BW_TYPE_ROW_LIST,
                   NULL),
    app_test_find (GTK_WIDGET (bw_bench_panel_get_list (bench, BW_PART_SOURCE)), BW_TYPE_ROW_LIST,
                   NULL),
  };

  bw_document_select (f->document, 2, 1);
  for (guint i = 0; i < G_N_ELEMENTS (lists); i++)
    {
      app_test_go_to (f->window, i == 0 ? "shift+Tab" : "Tab", lists[i]);
      app_test_xdotool ("key Tab");
      ASSERT_COMES_TRUE (!app_test_focus_is_in (f->window, lists[i]));
      app_test_xdotool ("key shift+Tab");
      ASSERT_COMES_TRUE (app_test_focus_is_in (f->window, lists[i]));
      app_test_xdotool ("key shift+Tab");
      ASSERT_COMES_TRUE (!app_test_focus_is_in (f->window, lists[i]));
      ASSERT_COMES_TRUE (
          app_test_focus_is_in (f->window,
                                gtk_widget_get_ancestor (lists[i],
                                                         BW_TYPE_BENCH_LIST))); /* its buttons */
      g_assert_cmpuint (bw_document_get_source (f->document), ==, 2);
      g_assert_cmpuint (bw_document_get_input (f->document), ==, 1);
    }
}

static void
test_pages_and_menu (Fixture *f, gconstpointer data)
{
  GtkWidget *fit = GTK_WIDGET (BW_FIT_PAGE (bw_window_get_page (f->window, "fit")));
  GtkWidget *timing = GTK_WIDGET (BW_TIMING_PAGE (bw_window_get_page (f->window, "timing")));
  GtkWidget *menu = app_test_find (gtk_window_get_titlebar (GTK_WINDOW (f->window)),
                                   GTK_TYPE_MENU_BUTTON, "menu");
  GtkWidget *popover = GTK_WIDGET (gtk_menu_button_get_popover (GTK_MENU_BUTTON (menu)));

  app_test_xdotool ("key ctrl+3");
  g_assert_true (app_test_wait (app_test_is_mapped, timing));
  app_test_xdotool ("key ctrl+1");
  g_assert_true (app_test_wait (app_test_is_mapped, fit));
  g_assert_false (gtk_widget_get_mapped (popover));
  app_test_xdotool ("key F10");
  g_assert_true (app_test_wait (app_test_is_mapped, popover));
  app_test_xdotool ("key Escape");
  ASSERT_COMES_TRUE (!gtk_widget_get_visible (popover));
}

/* The Timing page */

static BwTimingPage *
timing (Fixture *f)
{
  return BW_TIMING_PAGE (bw_window_get_page (f->window, "timing"));
}

/* To the Timing page and to the button of one of its views, which takes the space bar. */
static void
open_part (Fixture *f, const char *view)
{
  BwPage *page = BW_PAGE (timing (f));
  GtkWidget *button = app_test_find (GTK_WIDGET (page), GTK_TYPE_TOGGLE_BUTTON, view);

  app_test_xdotool ("key ctrl+3");
  g_assert_true (app_test_wait (app_test_is_mapped, page));
  app_test_go_to (f->window, "Tab", button);
  app_test_xdotool ("key space");
  ASSERT_COMES_TRUE (!strcmp (bw_page_get_view (page), view));
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
  BwWorkOut *panel = APP_TEST_THE (BW, WORK_OUT, timing (f));
  BwEditorRow *line_rate = bw_work_out_get_row (panel, BW_FIGURE_LINE_RATE);

  open_part (f, "work-out");
  app_test_go_to (f->window, "Tab", app_test_find (GTK_WIDGET (panel), GTK_TYPE_BUTTON, "clear"));
  app_test_xdotool ("key space");
  ASSERT_COMES_TRUE (*shown (line_rate) == '\0');
  app_test_go_to (f->window, "Tab",
                  bw_editor_row_get_control (bw_work_out_get_row (panel, BW_FIGURE_PIXEL_CLOCK)));
  app_test_xdotool ("type '27 MHz'");
  app_test_xdotool ("key Return");
  app_test_go_to (f->window, "Tab",
                  bw_editor_row_get_control (bw_work_out_get_row (panel, BW_FIGURE_H_TOTAL)));
  app_test_xdotool ("type '858 px'");
  app_test_xdotool ("key Return");
  ASSERT_COMES_TRUE (strstr (shown (line_rate), "31.4685") != NULL);
}

/* SMPTE 170M: 525 lines interlaced. */
static void
test_identify_and_use (Fixture *f, gconstpointer data)
{
  BwIdentifyPanel *panel = APP_TEST_THE (BW, IDENTIFY_PANEL, timing (f));
  BwForm *form = bw_identify_panel_get_form (panel);

  bw_document_select (f->document, 1, 0);
  open_part (f, "identify");
  app_test_go_to (f->window, "Tab",
                  bw_editor_row_get_control (bw_form_get_row (form, "line_rate")));
  app_test_xdotool ("type '15.734 kHz'");
  app_test_go_to (f->window, "shift+Tab",
                  bw_editor_row_get_control (bw_form_get_row (form, "field_rate")));
  app_test_xdotool ("type '59.94 Hz'");
  app_test_xdotool ("key Return");
  ASSERT_COMES_TRUE (bw_identify_panel_get_raster (panel, 0) != NULL);
  g_assert_cmpstr (bw_identify_panel_get_raster (panel, 0)->id, ==, "525-59.94-interlaced");
  app_test_go_to (f->window, "Tab", app_test_find (GTK_WIDGET (panel), GTK_TYPE_BUTTON, "use"));
  app_test_xdotool ("key space");
  ASSERT_COMES_TRUE (
      !strcmp (bw_drawing_panel_get_raster (APP_TEST_THE (BW, DRAWING_PANEL, timing (f)))->id,
               "525-59.94-interlaced"));
  app_test_xdotool ("key ctrl+z");
  ASSERT_COMES_TRUE (
      !strcmp (bw_drawing_panel_get_raster (APP_TEST_THE (BW, DRAWING_PANEL, timing (f)))->id,
               "625-50-interlaced"));
}

/* SMPTE 170M-2004 table 2: line sync 4.7 µs ± 0.1 µs. */
static void
test_reading (Fixture *f, gconstpointer data)
{
  BwReadingRow *row = bw_readings_panel_get_row (APP_TEST_THE (BW, READINGS_PANEL, timing (f)),
                                                 BW_READING_LINE_SYNC);
  BwJudgement judgement;

  open_part (f, "readings");
  app_test_go_to (f->window, "Tab", bw_editor_row_get_control (bw_reading_row_get_editor (row)));
  app_test_xdotool ("type '5.2 us'");
  app_test_xdotool ("key Return");
  ASSERT_COMES_TRUE (bw_reading_row_is_judged (row, &judgement));
  g_assert_cmpint (judgement.outcome, ==, BW_OUTCOME_TOO_HIGH);
}

static void
test_drawing (Fixture *f, gconstpointer data)
{
  BwDrawingPanel *panel = APP_TEST_THE (BW, DRAWING_PANEL, timing (f));
  BwPictureArea *area = bw_drawing_panel_get_area (panel);
  GtkWidget *field = app_test_find (GTK_WIDGET (timing (f)), GTK_TYPE_TOGGLE_BUTTON, "field");
  GtkLabel *reading = GTK_LABEL (app_test_find (GTK_WIDGET (panel), GTK_TYPE_LABEL, "reading"));

  open_part (f, "line");
  app_test_go_to (f->window, "Tab", field);
  app_test_xdotool ("key space");
  ASSERT_COMES_TRUE (g_str_has_prefix (bw_drawing_name (bw_picture_area_get_drawing (area)),
                                       "The vertical interval"));
  app_test_go_to (f->window, "Tab", GTK_WIDGET (area));
  app_test_xdotool ("key plus plus");
  ASSERT_COMES_TRUE (!bw_picture_area_is_whole (area));
  double from = bw_drawing_shown (bw_picture_area_get_drawing (area)).across.from;
  app_test_xdotool ("key shift+Right");
  ASSERT_COMES_TRUE (bw_drawing_shown (bw_picture_area_get_drawing (area)).across.from > from);
  app_test_xdotool ("key 0");
  ASSERT_COMES_TRUE (bw_picture_area_is_whole (area));
  app_test_xdotool ("key Right c Right Right");
  ASSERT_COMES_TRUE (strstr (gtk_label_get_label (reading), "Between the cursors") != NULL);
  app_test_xdotool ("key Escape");
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
  ADD ("session", test_session);
  ADD ("shortcuts", test_shortcuts);
  ADD ("pages-and-menu", test_pages_and_menu);
  ADD ("work-out", test_work_out);
  ADD ("identify-and-use", test_identify_and_use);
  ADD ("reading", test_reading);
  ADD ("lists-keep-selection", test_lists_keep_selection);
  ADD ("drawing", test_drawing);
  return g_test_run ();
}
