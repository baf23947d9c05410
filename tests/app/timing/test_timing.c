/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "app-test.h"

#include <math.h>
#include <string.h>

#include "app/timing/page.h"
#include "app/timing/drawing-panel.h"
#include "app/timing/identify-panel.h"
#include "app/timing/readings-panel.h"
#include "app/timing/work-out.h"
#include "app/widgets/result-head.h"

/* The parts of the Timing page, with their real widgets. */

typedef struct
{
  BwDocument *document;
  BwWindow *window;
  BwTimingPage *page;
} Fixture;

static void
set_up (Fixture *f, gconstpointer part)
{
  f->document = app_test_document ();
  f->window = app_test_window_new (f->document);
  f->page = BW_TIMING_PAGE (bw_window_get_page (f->window, "timing"));
  bw_window_show_page (f->window, "timing");
  bw_page_show_view (BW_PAGE (f->page), part);
  gtk_test_widget_wait_for_draw (GTK_WIDGET (f->window));
}

static void
tear_down (Fixture *f, gconstpointer part)
{
  app_test_close (f->window);
  g_assert_finalize_object (f->document);
}

/* Types @text into the control of @row and presses Enter. */
static void
type (BwEditorRow *row, const char *text)
{
  GtkWidget *entry = bw_editor_row_get_control (row);
  gtk_editable_set_text (GTK_EDITABLE (entry), text);
  g_signal_emit_by_name (entry, "activate");
}

static const char *
shown (BwEditorRow *row)
{
  return gtk_editable_get_text (GTK_EDITABLE (bw_editor_row_get_control (row)));
}

static double
value_of (BwEditorRow *row, BwDimension dimension)
{
  g_autoptr (GError) error = NULL;
  double value = NAN;
  bw_quantity_parse (shown (row), dimension, bw_quantity_locale_mark (), &value, &error);
  g_assert_no_error (error);
  return value;
}

static void
click (GtkWidget *from, const char *id)
{
  GtkWidget *button = app_test_find (from, GTK_TYPE_BUTTON, id);
  g_assert_true (gtk_widget_is_sensitive (button));
  g_signal_emit_by_name (button, "clicked");
}

static void
assert_invalid (BwEditorRow *row, gboolean invalid)
{
  gtk_test_accessible_assert_state (GTK_ACCESSIBLE (bw_editor_row_get_control (row)),
                                    GTK_ACCESSIBLE_STATE_INVALID,
                                    invalid ? GTK_ACCESSIBLE_INVALID_TRUE
                                            : GTK_ACCESSIBLE_INVALID_FALSE);
}

static const BwRaster *
source_raster (Fixture *f)
{
  return bw_drawing_panel_get_raster (APP_TEST_THE (BW, DRAWING_PANEL, f->page));
}

/* Work out */

static BwEditorRow *
figure (Fixture *f, BwFigure which)
{
  return bw_work_out_get_row (APP_TEST_THE (BW, WORK_OUT, f->page), which);
}

static const char *
fault (Fixture *f)
{
  return bw_work_out_get_fault (APP_TEST_THE (BW, WORK_OUT, f->page));
}

/* ITU-R BT.601: 858 samples of 13.5 MHz make a line of the 525-line system, so 27 MHz makes lines
 * of twice the rate. 27 MHz / 858 = 31.468531 kHz (arithmetic). */
static void
test_work_out (Fixture *f, gconstpointer part)
{
  GtkWidget *panel = GTK_WIDGET (APP_TEST_THE (BW, WORK_OUT, f->page));

  click (panel, "clear");
  for (guint i = 0; i < BW_N_FIGURES; i++)
    g_assert_cmpstr (shown (figure (f, i)), ==, "");
  type (figure (f, BW_FIGURE_PIXEL_CLOCK), "27 MHz");
  type (figure (f, BW_FIGURE_H_TOTAL), "858 px");
  g_assert_cmpfloat_with_epsilon (value_of (figure (f, BW_FIGURE_LINE_RATE),
                                            BW_DIMENSION_FREQUENCY),
                                  27e6 / 858, 0.01);
  g_assert_nonnull (strstr (shown (figure (f, BW_FIGURE_LINE_RATE)), "31.4685"));
  g_assert_true (
      gtk_widget_has_css_class (GTK_WIDGET (figure (f, BW_FIGURE_LINE_RATE)), "bw-follows"));
  g_assert_false (
      gtk_widget_has_css_class (GTK_WIDGET (figure (f, BW_FIGURE_H_TOTAL)), "bw-follows"));
  g_assert_cmpstr (fault (f), ==, "");
  g_assert_false (gtk_widget_is_sensitive (app_test_find (panel, GTK_TYPE_BUTTON, "use")));

  /* One value moves what rests on it */
  type (figure (f, BW_FIGURE_PIXEL_CLOCK), "13.5 MHz");
  g_assert_cmpfloat_with_epsilon (value_of (figure (f, BW_FIGURE_LINE_RATE),
                                            BW_DIMENSION_FREQUENCY),
                                  13.5e6 / 858, 0.01);
}

static void
test_contradiction (Fixture *f, gconstpointer part)
{
  click (GTK_WIDGET (APP_TEST_THE (BW, WORK_OUT, f->page)), "clear");
  type (figure (f, BW_FIGURE_PIXEL_CLOCK), "27 MHz");
  type (figure (f, BW_FIGURE_H_TOTAL), "858 px");
  type (figure (f, BW_FIGURE_V_SYNC), "3 lines"); /* has no part in it */
  type (figure (f, BW_FIGURE_LINE_RATE), "15.734 kHz");
  g_assert_nonnull (strstr (fault (f), "pixel clock"));
  g_assert_nonnull (strstr (fault (f), "line rate"));
  g_assert_nonnull (strstr (fault (f), "pixels of a line"));
  assert_invalid (figure (f, BW_FIGURE_PIXEL_CLOCK), TRUE);
  assert_invalid (figure (f, BW_FIGURE_H_TOTAL), TRUE);
  assert_invalid (figure (f, BW_FIGURE_LINE_RATE), TRUE);
  assert_invalid (figure (f, BW_FIGURE_V_SYNC), FALSE);

  /* Freed, the figure follows again */
  type (figure (f, BW_FIGURE_LINE_RATE), "");
  g_assert_cmpstr (fault (f), ==, "");
  assert_invalid (figure (f, BW_FIGURE_PIXEL_CLOCK), FALSE);
  g_assert_nonnull (strstr (shown (figure (f, BW_FIGURE_LINE_RATE)), "31.4685"));
}

static void
test_bad_figure (Fixture *f, gconstpointer part)
{
  static const char *const bad[] = { "27", "27 V", "-1 MHz", "many", "1e400 Hz" };

  click (GTK_WIDGET (APP_TEST_THE (BW, WORK_OUT, f->page)), "clear");
  for (guint i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      BwEditorRow *row = figure (f, BW_FIGURE_PIXEL_CLOCK);
      type (row, bad[i]);
      g_assert_nonnull (bw_editor_row_get_error (row));
      assert_invalid (row, TRUE);
      g_assert_cmpstr (shown (row), ==, bad[i]);
      bw_editor_row_reset (row);
    }
}

/* VESA DMT 04h, 640×480 at 60 Hz: 25.175 MHz, 800 by 525. */
#define DMT_04 "\"640x480\" 25.175 640 656 752 800 480 490 492 525 -hsync -vsync"

static void
test_modeline_in_and_out (Fixture *f, gconstpointer part)
{
  BwWorkOut *panel = APP_TEST_THE (BW, WORK_OUT, f->page);
  BwRasterStart *start = bw_work_out_get_start (panel, BW_START_MODELINE);
  BwEditorRow *row = bw_form_get_row (bw_raster_start_get_form (start), "modeline");

  gtk_editable_set_text (GTK_EDITABLE (bw_editor_row_get_control (row)),
                         "\"640x480\" 25.175 640 656 752");
  bw_raster_start_make (start);
  g_assert_nonnull (bw_editor_row_get_error (row));
  assert_invalid (row, TRUE);

  gtk_editable_set_text (GTK_EDITABLE (bw_editor_row_get_control (row)), DMT_04);
  bw_raster_start_make (start);
  g_assert_null (bw_editor_row_get_error (row));
  g_assert_cmpfloat_with_epsilon (value_of (figure (f, BW_FIGURE_H_TOTAL), BW_DIMENSION_PIXELS),
                                  800, 1e-9);
  g_assert_cmpfloat_with_epsilon (value_of (figure (f, BW_FIGURE_LINES_PER_FRAME),
                                            BW_DIMENSION_LINES),
                                  525, 1e-9);
  click (GTK_WIDGET (panel), "copy");
  g_assert_nonnull (strstr (bw_work_out_get_says (panel), "640 656 752 800"));
}

/* The formula's own raster: ui and core must agree, and core is held against VESA's tables. */
static void
test_formula_and_monitor (Fixture *f, gconstpointer part)
{
  BwWorkOut *panel = APP_TEST_THE (BW, WORK_OUT, f->page);
  BwRasterStart *formula = bw_work_out_get_start (panel, BW_START_FORMULA);
  BwRasterStart *monitor = bw_work_out_get_start (panel, BW_START_MONITOR);

  bw_raster_start_make (formula); /* CVT, 640×480 at 60 Hz: VESA CVT gives 800 pixels a line */
  g_assert_cmpstr (bw_raster_start_get_fault (formula), ==, "");
  g_assert_cmpfloat_with_epsilon (value_of (figure (f, BW_FIGURE_H_TOTAL), BW_DIMENSION_PIXELS),
                                  800, 1e-9);
  type (bw_form_get_row (bw_raster_start_get_form (monitor), "width"), "320");
  type (bw_form_get_row (bw_raster_start_get_form (monitor), "height"), "240");
  bw_raster_start_make (monitor);
  g_assert_cmpstr (bw_raster_start_get_fault (monitor), ==, "");
  GtkWidget *why = app_test_find (GTK_WIDGET (panel), GTK_TYPE_LABEL, "why");
  g_assert_true (gtk_widget_get_visible (why));
  g_assert_nonnull (strstr (gtk_label_get_label (GTK_LABEL (why)), "\n"));

  /* 525-line equipment's 15.734 kHz with 262 lines comes first (SMPTE 170M); another that holds is taken
   * from the list, and its reasons with it. */
  GtkWidget *others = app_test_find (GTK_WIDGET (panel), GTK_TYPE_DROP_DOWN, "others");
  g_assert_true (gtk_widget_get_visible (gtk_widget_get_parent (others)));
  g_assert_cmpfloat_with_epsilon (value_of (figure (f, BW_FIGURE_LINES_PER_FRAME),
                                            BW_DIMENSION_LINES),
                                  262, 1e-9);
  g_autofree char *first = g_strdup (gtk_label_get_label (GTK_LABEL (why)));
  gtk_drop_down_set_selected (GTK_DROP_DOWN (others), 1);
  g_assert_cmpstr (gtk_label_get_label (GTK_LABEL (why)), !=, first);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (others), 0);
  g_assert_cmpstr (gtk_label_get_label (GTK_LABEL (why)), ==, first);

  /* What cannot be is refused, and what was there stays */
  g_autofree char *before = g_strdup (shown (figure (f, BW_FIGURE_H_TOTAL)));
  type (bw_form_get_row (bw_raster_start_get_form (monitor), "height"), "4000");
  bw_raster_start_make (monitor);
  g_assert_cmpstr (bw_raster_start_get_fault (monitor), !=, "");
  g_assert_cmpstr (shown (figure (f, BW_FIGURE_H_TOTAL)), ==, before);
}

/* The raster travels with the sheet, under an id of its own, and one undo takes both back. */
static void
test_use_and_undo (Fixture *f, gconstpointer part)
{
  BwWorkOut *panel = APP_TEST_THE (BW, WORK_OUT, f->page);
  BwRasterStart *start = bw_work_out_get_start (panel, BW_START_MODELINE);
  BwEditorRow *row = bw_form_get_row (bw_raster_start_get_form (start), "modeline");
  g_autofree char *before = app_test_sheet_text (f->document);

  bw_document_select (f->document, 6, 0);
  gtk_editable_set_text (GTK_EDITABLE (bw_editor_row_get_control (row)), DMT_04);
  bw_raster_start_make (start);
  type (figure (f, BW_FIGURE_H_FRONT_PORCH), "24 px");
  click (GTK_WIDGET (panel), "use");
  g_assert_cmpint (source_raster (f)->h_front_porch, ==, 24);
  g_assert_cmpuint (source_raster (f)->h_polarity, ==, BW_POLARITY_NEGATIVE);
  g_assert_null (bw_catalogue_raster (app_test_catalogue (), source_raster (f)->id));
  g_assert_cmpuint (bw_document_get_sheet (f->document)->rasters->len, ==, 1);
  g_autofree char *first_id = g_strdup (source_raster (f)->id);

  /* The same raster is not held twice, another one gets another id */
  bw_document_select (f->document, 7, 0);
  click (GTK_WIDGET (panel), "use");
  g_assert_cmpuint (bw_document_get_sheet (f->document)->rasters->len, ==, 1);
  type (figure (f, BW_FIGURE_H_BACK_PORCH), "56 px");
  click (GTK_WIDGET (panel), "use");
  g_assert_cmpuint (bw_document_get_sheet (f->document)->rasters->len, ==, 2);
  g_assert_cmpstr (source_raster (f)->id, !=, first_id);

  /* It can be saved and read again */
  g_autofree char *path = app_test_scratch_path ("own-raster.bench");
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_assert_true (bw_document_save (f->document, file, NULL));
  g_autoptr (BwDocument) again = app_test_document_at (path);
  const BwSheet *sheet = bw_document_get_sheet (again);
  g_assert_cmpint (bw_sheet_raster (sheet, app_test_catalogue (), bw_sheet_source (sheet, 6))
                       ->h_front_porch,
                   ==, 24);

  while (bw_document_undo_words (f->document) != NULL)
    bw_document_undo (f->document);
  g_autofree char *after = app_test_sheet_text (f->document);
  g_assert_cmpstr (after, ==, before);
}

/* What was typed is not lost when another source is selected; what was not changed follows. */
static void
test_follows_source (Fixture *f, gconstpointer part)
{
  bw_document_select (f->document, 6, 0);
  g_assert_cmpfloat_with_epsilon (value_of (figure (f, BW_FIGURE_H_TOTAL), BW_DIMENSION_PIXELS),
                                  bw_raster_h_total (source_raster (f)), 1e-9);
  type (figure (f, BW_FIGURE_H_SYNC), "99 px");
  bw_document_select (f->document, 7, 0);
  g_assert_cmpfloat_with_epsilon (value_of (figure (f, BW_FIGURE_H_SYNC), BW_DIMENSION_PIXELS), 99,
                                  1e-9);
}

/* Identify */

/* 15.734 kHz and 59.94 Hz: SMPTE 170M, 525 lines interlaced. */
static void
test_identify (Fixture *f, gconstpointer part)
{
  BwIdentifyPanel *panel = APP_TEST_THE (BW, IDENTIFY_PANEL, f->page);
  BwForm *form = bw_identify_panel_get_form (panel);

  g_assert_null (bw_identify_panel_get_raster (panel, 0));
  g_assert_nonnull (strstr (bw_identify_panel_get_says (panel), "Which raster is this?"));
  type (bw_form_get_row (form, "line_rate"), "15.734 kHz");
  type (bw_form_get_row (form, "field_rate"), "59.94 Hz");
  g_assert_cmpstr (bw_identify_panel_get_raster (panel, 0)->id, ==, "525-59.94-interlaced");

  bw_document_select (f->document, 1, 0);
  click (GTK_WIDGET (panel), "use");
  g_assert_cmpstr (source_raster (f)->id, ==, "525-59.94-interlaced");
  g_assert_cmpuint (bw_document_get_sheet (f->document)->rasters->len, ==, 0);
  bw_document_undo (f->document);
  g_assert_cmpstr (source_raster (f)->id, ==, "625-50-interlaced");

  type (bw_form_get_row (form, "line_rate"), "15,734");
  g_assert_nonnull (bw_editor_row_get_error (bw_form_get_row (form, "line_rate")));
  assert_invalid (bw_form_get_row (form, "line_rate"), TRUE);
  /* Few digits leave more open, a bare number is taken, and the row shows the digits as typed */
  type (bw_form_get_row (form, "line_rate"), "15.7");
  type (bw_form_get_row (form, "field_rate"), "60.0");
  g_assert_nonnull (strstr (bw_identify_panel_get_says (panel), "525-line interlaced, 60 Hz"));
  type (bw_form_get_row (form, "field_rate"), "60");
  g_assert_nonnull (strstr (bw_identify_panel_get_says (panel), "262-line progressive, 60.05 Hz"));
  type (bw_form_get_row (form, "line_rate"), "700 kHz");
  type (bw_form_get_row (form, "field_rate"), "");
  g_assert_nonnull (strstr (bw_identify_panel_get_says (panel), "Nothing in the catalogue agrees"));
}

/* The accuracy of the counter that the sheet holds leaves open more than the digits do, as --accuracy
 * does on the command line; each change of it is followed at once, and so is undo. */
static void
test_accuracy (Fixture *f, gconstpointer part)
{
  BwIdentifyPanel *panel = APP_TEST_THE (BW, IDENTIFY_PANEL, f->page);
  BwForm *form = bw_identify_panel_get_form (panel);

  type (bw_form_get_row (form, "line_rate"), "15.750 kHz");
  type (bw_form_get_row (form, "field_rate"), "60.00 Hz");
  g_assert_cmpstr (bw_identify_panel_get_raster (panel, 0)->id, ==, "525-60-interlaced");
  g_assert_true (bw_document_set_field (f->document, BW_PART_SHEET, 0,
                                        app_test_field (BW_PART_SHEET, "frequency_accuracy"), "1%",
                                        '.', NULL));
  g_assert_cmpstr (bw_identify_panel_get_raster (panel, 0)->id, ==, "525-59.94-interlaced");
  g_assert_true (bw_document_undo (f->document));
  g_assert_cmpstr (bw_identify_panel_get_raster (panel, 0)->id, ==, "525-60-interlaced");
}

/* Readings */

/* SMPTE 170M-2004 table 2: line sync 4.7 µs ± 0.1 µs. */
static void
test_readings (Fixture *f, gconstpointer part)
{
  BwReadingsPanel *panel = APP_TEST_THE (BW, READINGS_PANEL, f->page);
  BwReadingRow *sync = bw_readings_panel_get_row (panel, BW_READING_LINE_SYNC);
  BwJudgement judgement;

  bw_readings_panel_choose (panel, "smpte-170m");
  g_assert_false (bw_reading_row_is_judged (sync, &judgement));
  type (bw_reading_row_get_editor (sync), "5.2 us");
  g_assert_true (bw_reading_row_is_judged (sync, &judgement));
  g_assert_cmpint (judgement.outcome, ==, BW_OUTCOME_TOO_HIGH);
  g_assert_cmpfloat_with_epsilon (judgement.deviation, 0.5e-6, 1e-12);
  g_assert_cmpfloat_with_epsilon (judgement.to_limit, -0.4e-6, 1e-12);
  g_assert_nonnull (strstr (bw_reading_row_get_result (sync), "400\u00a0ns above the upper limit"));
  g_assert_nonnull (strstr (bw_reading_row_get_result (sync), "4.8\u00a0µs"));
  g_assert_nonnull (strstr (bw_reading_row_get_result (sync), "+500\u00a0ns from nominal"));
  g_assert_nonnull (strstr (bw_readings_panel_get_summary (panel), "1 outside"));

  type (bw_reading_row_get_editor (sync), "4.75 us");
  g_assert_true (bw_reading_row_is_judged (sync, &judgement));
  g_assert_cmpint (judgement.outcome, ==, BW_OUTCOME_WITHIN);

  /* A level of nothing is a reading too */
  BwReadingRow *setup = bw_readings_panel_get_row (panel, BW_READING_SETUP_LEVEL);
  type (bw_reading_row_get_editor (setup), "0 mV");
  g_assert_true (bw_reading_row_is_judged (setup, &judgement));
  g_assert_cmpint (judgement.outcome, ==, BW_OUTCOME_TOO_LOW);
  GtkWidget *head = app_test_find (GTK_WIDGET (panel), BW_TYPE_RESULT_HEAD, NULL);
  g_assert_true (gtk_widget_activate_action (head, "result.copy", NULL));
  BwResult *result = bw_result_head_get_result (BW_RESULT_HEAD (head));
  g_autofree char *text = bw_node_to_tsv (bw_result_root (result));
  g_assert_nonnull (strstr (text, "Line sync\t4.75"));
  g_assert_nonnull (strstr (text, "Setup level\t0"));

  type (bw_reading_row_get_editor (sync), "4.75 mV");
  assert_invalid (bw_reading_row_get_editor (sync), TRUE);
}

/* Drawing */

static gboolean
is_whole (Fixture *f)
{
  BwDrawingPanel *panel = APP_TEST_THE (BW, DRAWING_PANEL, f->page);
  return bw_picture_area_is_whole (bw_drawing_panel_get_area (panel));
}

static void
test_views (Fixture *f, gconstpointer part)
{
  static const char *const labels[BW_N_RASTER_VIEWS] = { "The line of %s, drawn",
                                                         "The line blanking of %s, drawn",
                                                         "The vertical interval of %s, drawn",
                                                         "The map of %s, drawn" };
  BwDrawingPanel *panel = APP_TEST_THE (BW, DRAWING_PANEL, f->page);
  GtkWidget *area = GTK_WIDGET (bw_drawing_panel_get_area (panel));

  for (guint source = 0; source < bw_document_count (f->document, BW_PART_SOURCE); source++)
    for (BwRasterView view = 0; view < BW_N_RASTER_VIEWS; view++)
      {
        bw_document_select (f->document, source, 0);
        bw_drawing_panel_choose (panel, view);
        gtk_test_widget_wait_for_draw (GTK_WIDGET (f->window));
        g_auto (GStrv) halves = g_strsplit (labels[view], "%s", 2);
        g_autofree char *label = g_strconcat (halves[0], source_raster (f)->name, halves[1], NULL);
        gtk_test_accessible_assert_property (GTK_ACCESSIBLE (area), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                             label);
        g_assert_true (is_whole (f));
        gtk_widget_activate_action (area, "view.zoom", "d", 2.0);
        g_assert_false (is_whole (f));
        gtk_test_widget_wait_for_draw (GTK_WIDGET (f->window));
        gtk_widget_activate_action (area, "view.whole", NULL);
        g_assert_true (is_whole (f));
      }
}

static const char *
description_of (BwDrawingPanel *panel, BwRasterView view)
{
  bw_drawing_panel_choose (panel, view);
  return bw_drawing_description (bw_picture_area_get_drawing (bw_drawing_panel_get_area (panel)));
}

/* The blanking says what the standard allows: SMPTE 170M-2004 table 2, line sync 4.6 to 4.8 µs. */
static void
test_limits_drawn (Fixture *f, gconstpointer part)
{
  BwDrawingPanel *panel = APP_TEST_THE (BW, DRAWING_PANEL, f->page);
  for (guint source = 0; source < bw_document_count (f->document, BW_PART_SOURCE); source++)
    {
      bw_document_select (f->document, source, 0);
      if (strcmp (source_raster (f)->id, "525-59.94-interlaced") != 0)
        continue;
      const char *words = description_of (panel, BW_RASTER_BLANKING);
      g_assert_nonnull (strstr (words, "4.6"));
      g_assert_nonnull (strstr (words, "4.8"));
      return;
    }
  g_assert_not_reached ();
}

static void
take_reading (BwPictureArea *area, const char *words, char **reading)
{
  g_free (*reading);
  *reading = g_strdup (words);
}

/* The difference between the cursors is what the first one has moved since. */
static void
test_cursors (Fixture *f, gconstpointer part)
{
  BwDrawingPanel *panel = APP_TEST_THE (BW, DRAWING_PANEL, f->page);
  GtkWidget *area = GTK_WIDGET (bw_drawing_panel_get_area (panel));
  g_autofree char *reading = NULL;

  g_signal_connect (area, "reading", G_CALLBACK (take_reading), &reading);
  for (BwRasterView view = 0; view < BW_N_RASTER_VIEWS; view++)
    {
      bw_drawing_panel_choose (panel, view);
      gtk_test_widget_wait_for_draw (GTK_WIDGET (f->window));
      gtk_widget_activate_action (area, "cursor.step", "d", 1.0);
      g_assert_null (strstr (reading, "Between"));
      gtk_widget_activate_action (area, "cursor.second", NULL);
      gtk_widget_activate_action (area, "cursor.step", "d", 10.0);
      g_assert_nonnull (strstr (reading, "Between the cursors: "));
      g_autofree char *apart = g_strdup (strstr (reading, "Between the cursors: "));
      /* The cursors stay at their points when the picture is zoomed about one of them */
      gtk_widget_activate_action (area, "view.zoom", "d", 1.5);
      gtk_widget_activate_action (area, "cursor.other", NULL);
      g_assert_cmpstr (strstr (reading, "Between the cursors: "), ==, apart);
      gtk_widget_activate_action (area, "cursor.drop", NULL);
      g_assert_null (strstr (reading, "Between"));
    }
}

static GtkEventController *
motion_of (GtkWidget *widget)
{
  g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (widget);
  for (guint i = 0; i < g_list_model_get_n_items (controllers); i++)
    {
      g_autoptr (GtkEventController) one = g_list_model_get_item (controllers, i);
      if (GTK_IS_EVENT_CONTROLLER_MOTION (one))
        return one; /* the widget holds it */
    }
  g_return_val_if_reached (NULL);
}

/* The cursor goes with the pointer that leaves, and is found where it was; two of them stay. What
 * is read takes a line of the same height all the time. */
static void
test_pointer (Fixture *f, gconstpointer part)
{
  BwDrawingPanel *panel = APP_TEST_THE (BW, DRAWING_PANEL, f->page);
  GtkWidget *area = GTK_WIDGET (bw_drawing_panel_get_area (panel));
  GtkWidget *line = app_test_find (GTK_WIDGET (f->page), GTK_TYPE_LABEL, "reading");
  GtkEventController *motion = motion_of (area);
  g_autofree char *reading = NULL;

  g_signal_connect (area, "reading", G_CALLBACK (take_reading), &reading);
  gtk_window_set_default_size (GTK_WINDOW (f->window), 960, 600);
  gtk_test_widget_wait_for_draw (GTK_WIDGET (f->window));
  int height = gtk_widget_get_height (line);
  double x = gtk_widget_get_width (area) / 2.0, y = gtk_widget_get_height (area) / 4.0;
  g_signal_emit_by_name (motion, "motion", x, y);
  g_assert_nonnull (strstr (reading, " after 0H"));
  g_autofree char *before = g_strdup (reading);
  gtk_test_widget_wait_for_draw (GTK_WIDGET (f->window));
  g_assert_cmpint (gtk_widget_get_height (line), ==, height);
  g_signal_emit_by_name (motion, "leave");
  g_assert_cmpstr (reading, ==, "");
  g_assert_nonnull (strstr (gtk_label_get_label (GTK_LABEL (line)), "arrow keys"));

  gtk_widget_activate_action (area, "cursor.second", NULL);
  g_assert_true (g_str_has_prefix (reading, before));
  g_signal_emit_by_name (motion, "motion", x + 50, y);
  g_signal_emit_by_name (motion, "leave");
  g_assert_nonnull (strstr (reading, "Between the cursors: "));
}

/* What is exported is what is shown, and each drawing has a name of its own. */
static void
test_export_view (Fixture *f, gconstpointer part)
{
  BwDrawingPanel *panel = APP_TEST_THE (BW, DRAWING_PANEL, f->page);
  g_autoptr (GHashTable) seen = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

  for (BwRasterView view = 0; view < BW_N_RASTER_VIEWS; view++)
    {
      g_autoptr (GError) error = NULL;
      g_autofree char *text = NULL;
      bw_drawing_panel_choose (panel, view);
      g_autofree char *name = bw_picture_panel_dup_file_name (
          bw_page_get_panel (BW_PAGE (f->page)));
      g_autofree char *file = g_strconcat (name, ".svg", NULL);
      g_autofree char *path = app_test_scratch_path (file);
      g_assert_true (bw_picture_panel_export (bw_page_get_panel (BW_PAGE (f->page)), path, &error));
      g_assert_no_error (error);
      g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
      g_assert_true (g_hash_table_add (seen, g_steal_pointer (&text)));
    }
  g_assert_cmpuint (g_hash_table_size (seen), ==, BW_N_RASTER_VIEWS);
}

/* With nothing on the bench each part says what it is for, and what can be used works. */
static void
test_empty (void)
{
  g_autoptr (BwDocument) document = bw_document_new (app_test_catalogue ());
  BwWindow *window = app_test_window_new (document);
  BwTimingPage *page = BW_TIMING_PAGE (bw_window_get_page (window, "timing"));
  BwWorkOut *work_out = APP_TEST_THE (BW, WORK_OUT, page);
  BwIdentifyPanel *identify = APP_TEST_THE (BW, IDENTIFY_PANEL, page);
  static const char *const parts[] = { "line", "work-out", "identify", "readings" };

  bw_window_show_page (window, "timing");
  for (guint i = 0; i < G_N_ELEMENTS (parts); i++)
    {
      bw_page_show_view (BW_PAGE (page), parts[i]);
      gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
    }
  type (bw_work_out_get_row (work_out, BW_FIGURE_LINE_RATE), "15.625 kHz");
  g_assert_nonnull (strstr (shown (bw_work_out_get_row (work_out, BW_FIGURE_LINE_PERIOD)), "64"));
  type (bw_form_get_row (bw_identify_panel_get_form (identify), "line_rate"), "15.625 kHz");
  g_assert_nonnull (bw_identify_panel_get_raster (identify, 0));
  g_assert_false (
      gtk_widget_is_sensitive (app_test_find (GTK_WIDGET (identify), GTK_TYPE_BUTTON, "use")));
  app_test_close (window);
}

#define ADD(name, part, func)                                                                      \
  g_test_add ("/timing/" name, Fixture, (gconstpointer) part, set_up, func, tear_down)

int
main (int argc, char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
  ADD ("work-out", "work-out", test_work_out);
  ADD ("contradiction", "work-out", test_contradiction);
  ADD ("bad-figure", "work-out", test_bad_figure);
  ADD ("modeline", "work-out", test_modeline_in_and_out);
  ADD ("formula-and-monitor", "work-out", test_formula_and_monitor);
  ADD ("use-and-undo", "work-out", test_use_and_undo);
  ADD ("follows-source", "work-out", test_follows_source);
  ADD ("identify", "identify", test_identify);
  ADD ("accuracy", "identify", test_accuracy);
  ADD ("readings", "readings", test_readings);
  ADD ("views", "line", test_views);
  ADD ("limits-drawn", "line", test_limits_drawn);
  ADD ("cursors", "line", test_cursors);
  ADD ("pointer", "line", test_pointer);
  ADD ("export-view", "line", test_export_view);
  g_test_add_func ("/timing/empty", test_empty);
  return g_test_run ();
}
