/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "app-hands.h"

#include <math.h>
#include <string.h>

#include "app/bench/bench-signal.h"
#include "core/sync/gate.h"
#include "draw/levels/view.h"
#include "app/levels/cause-panel.h"
#include "app/levels/page.h"
#include "app/levels/work-back-panel.h"
#include "app/levels/sync-panel.h"
#include "app/levels/waveform-panel.h"

/* The parts of the Levels page, with their real widgets. */

typedef struct
{
  BwDocument *document;
  BwWindow *window;
  BwLevelsPage *page;
} Fixture;

/* The sources of the sheet, in its order. */
enum
{
  TAPE,          /* composite, NTSC M */
  CAMCORDER,     /* Y/C, PAL */
  CONSOLE,       /* RGB */
  HOME_COMPUTER, /* RGB, composite sync of 5 V logic */
  DISC,          /* component */
  GALLERY,       /* component, tri-level sync */
  TICKETS,       /* RGB, H and V */
  WORKSTATION    /* RGB, sync on green */
};

static void
set_up (Fixture *f, gconstpointer part)
{
  f->document = app_test_document ();
  f->window = app_test_window_new (f->document);
  f->page = BW_LEVELS_PAGE (bw_window_get_page (f->window, "levels"));
  bw_window_show_page (f->window, "levels");
  bw_page_show_view (BW_PAGE (f->page), part);
  gtk_test_widget_wait_for_draw (GTK_WIDGET (f->window));
}

static void
tear_down (Fixture *f, gconstpointer part)
{
  app_test_close (f->window);
  g_assert_finalize_object (f->document);
}

static void
choose (gpointer panel, const char *name, guint index)
{
  GtkWidget *list = app_test_find (panel, GTK_TYPE_DROP_DOWN, name);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (list), index);
  g_assert_cmpuint (gtk_drop_down_get_selected (GTK_DROP_DOWN (list)), ==, index);
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

static void
assert_invalid (BwEditorRow *row, gboolean invalid)
{
  g_assert_true ((bw_editor_row_get_error (row) != NULL) == invalid);
  gtk_test_accessible_assert_state (GTK_ACCESSIBLE (bw_editor_row_get_control (row)),
                                    GTK_ACCESSIBLE_STATE_INVALID,
                                    invalid ? GTK_ACCESSIBLE_INVALID_TRUE
                                            : GTK_ACCESSIBLE_INVALID_FALSE);
}

static const BwDrawing *
drawn (BwPicturePanel *panel)
{
  return bw_picture_area_get_drawing (bw_picture_panel_get_area (panel));
}

/* Whether what is drawn says @text of itself. */
static gboolean
drawn_says (BwPicturePanel *panel, const char *text)
{
  return strstr (bw_drawing_description (drawn (panel)), text) != NULL;
}

/* Whether @text stands in the drawing, on a page with room for all. */
static gboolean
drawn_has (BwPicturePanel *panel, const char *text)
{
  BwPictureArea *area = bw_picture_panel_get_area (panel);
  g_autoptr (BwDrawing) drawing = bw_picture_area_build (area, 1600, 900,
                                                         bw_picture_area_get_ink (area));
  const GArray *texts = bw_drawing_texts (drawing);
  for (guint i = 0; i < texts->len; i++)
    if (strstr (g_array_index (texts, BwLabel, i).text, text) != NULL)
      return TRUE;
  return FALSE;
}

/* Waveform */

static BwWaveformPanel *
waveform (Fixture *f)
{
  return APP_TEST_THE (BW, WAVEFORM_PANEL, f->page);
}

static BwPicturePanel *
drawing (Fixture *f)
{
  return bw_waveform_panel_get_panel (waveform (f));
}

static gboolean
table_has (Fixture *f, const char *text)
{
  BwResult *result = bw_picture_panel_get_result (drawing (f));
  g_autofree char *table = bw_node_to_tsv (bw_result_root (result));
  if (strstr (table, text) == NULL)
    g_test_message ("no “%s” in:\n%s", text, table);
  return strstr (table, text) != NULL;
}

/* The conductors of each signal kind: by its definition. */
static void
test_conductors (Fixture *f, gconstpointer part)
{
  static const struct
  {
    guint source;
    guint input;
    const char *names[3];
  } cases[] = {
    { TAPE, 0, { "Video, where" } },
    { CAMCORDER, 1, { "\nY, where", "\nC, where" } },
    { CONSOLE, 2, { "\nR, G, B\t", "\nSync\t" } },
    { HOME_COMPUTER, 2, { "\nR, G, B\t", "\nSync\t" } },
    { DISC, 2, { "\nY, where", "\nPb, Pr, where" } },
    { GALLERY, 2, { "\nY, where", "\nPb, Pr, where", "sync, highest\t300.0" } },
    { TICKETS, 2, { "\nR, G, B\t", "\nH, V\t" } },
    { WORKSTATION, 2, { "\nR\t", "\nG\t", "sync tip\t-285.7" } },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      bw_document_select (f->document, cases[i].source, cases[i].input);
      gtk_test_widget_wait_for_draw (GTK_WIDGET (f->window));
      for (guint n = 0; n < G_N_ELEMENTS (cases[i].names) && cases[i].names[n] != NULL; n++)
        g_assert_true (table_has (f, cases[i].names[n]));
      g_assert_true (drawn_says (drawing (f), bw_document_selected_raster (f->document)->name));
    }
}

/* SMPTE 170M-2004: white 100 IRE of 1/140 V, setup 7.5 IRE, sync and burst 40 IRE. A 75 Ω output
 * gives twice that without a load, 2/3 of it into two, and half of it into three (Ohm's law). */
static void
test_load (Fixture *f, gconstpointer part)
{
  BwPicturePanel *panel = drawing (f);

  g_assert_true (table_has (f, "white\t714.3\t100.0\t714.3\t100.0"));
  g_assert_true (table_has (f, "black\t53.6\t7.5\t53.6\t7.5"));
  g_assert_true (table_has (f, "sync tip\t-285.7\t-40.0\t-285.7\t-40.0"));
  g_assert_true (table_has (f, "burst, p-p\t285.7\t40.0\t285.7\t40.0"));
  choose (panel, "load", BW_TERMINATORS_NONE);
  g_assert_true (table_has (f, "white\t714.3\t100.0\t1428.6\t200.0"));
  g_assert_true (drawn_says (panel, "1428.6"));
  choose (panel, "load", BW_TERMINATORS_TWO);
  g_assert_true (table_has (f, "white\t714.3\t100.0\t476.2\t66.7"));
  choose (panel, "load", BW_TERMINATORS_THREE);
  g_assert_true (table_has (f, "white\t714.3\t100.0\t357.1\t50.0"));
  choose (panel, "load", BW_TERMINATORS_ONE);
  g_assert_true (table_has (f, "white\t714.3\t100.0\t714.3\t100.0"));
}

/* What is chosen is drawn. */
static void
test_content (Fixture *f, gconstpointer part)
{
  static const char *const bars[] = { "colour bars at 75 %", "colour bars at 100 %",
                                      "colour bars at 75 % with white at 100 %" };
  const guint n_bars = G_N_ELEMENTS (bars);
  BwPicturePanel *panel = drawing (f);

  choose (panel, "load", BW_TERMINATORS_TWO);
  g_assert_true (drawn_says (panel, "two 75\u00a0Ω loads"));
  bw_picture_panel_choose (panel, "field");
  g_assert_true (drawn_says (panel, "two 75\u00a0Ω loads"));
  g_assert_true (drawn_says (panel, "a field’s time"));
  for (guint content = 0; content < n_bars + BW_N_CONTENTS - 1; content++)
    {
      choose (panel, "content", content);
      g_assert_true (drawn_says (panel, content < n_bars
                                            ? bars[content]
                                            : bw_kind_label (&bw_contents, content - n_bars + 1)));
      BwResult *result = bw_picture_panel_get_result (panel);
      g_assert_true ((bw_node_find (bw_result_root (result), "bars") != NULL)
                     == (content < n_bars));
    }
}

/* 220 µF around 75 Ω and 75 Ω: 1/(2π R C) = 4.823 Hz (arithmetic). */
static void
test_capacitor (Fixture *f, gconstpointer part)
{
  BwPicturePanel *panel = drawing (f);
  GtkWidget *entry = app_test_find (GTK_WIDGET (panel), GTK_TYPE_ENTRY, "capacitor");
  BwEditorRow *row = BW_EDITOR_ROW (gtk_widget_get_ancestor (entry, BW_TYPE_EDITOR_ROW));

  g_assert_null (bw_node_find (bw_result_root (bw_picture_panel_get_result (panel)), "tilts"));
  type (row, "220 µF");
  assert_invalid (row, FALSE);
  const BwNode *root = bw_result_root (bw_picture_panel_get_result (panel));
  g_assert_nonnull (bw_node_find (root, "tilts"));
  g_autofree char *corner = bw_node_words (root, "corner_hz");
  g_assert_cmpstr (corner, ==, "4.82\u00a0Hz");
  type (row, "2 F");
  assert_invalid (row, TRUE);
  g_assert_cmpstr (shown (row), ==, "2 F");
  type (row, "");
  assert_invalid (row, FALSE);
  g_assert_null (bw_node_find (bw_result_root (bw_picture_panel_get_result (panel)), "tilts"));
}

/* SMPTE 170M-2004 and ITU-R BT.1700: NTSC repeats after two frames, PAL after four. */
static void
test_line_and_frame (Fixture *f, gconstpointer part)
{
  BwPicturePanel *panel = drawing (f);
  BwEditorRow *row = bw_waveform_panel_get_line_row (waveform (f));
  GtkDropDown *frame = GTK_DROP_DOWN (
      app_test_find (GTK_WIDGET (panel), GTK_TYPE_DROP_DOWN, "frame"));

  g_assert_cmpuint (g_list_model_get_n_items (gtk_drop_down_get_model (frame)), ==, 2);
  type (row, "17");
  assert_invalid (row, FALSE);
  g_assert_true (drawn_says (panel, ", line 17 of frame "));
  static const char *const bad[] = { "0", "526", "many", "-3", "1.5" };
  for (guint i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      type (row, bad[i]);
      assert_invalid (row, TRUE);
      g_assert_cmpstr (shown (row), ==, bad[i]);
      g_assert_nonnull (strstr (bw_editor_row_get_error (row), "525"));
      g_assert_true (drawn_says (panel, ", line 17 of frame "));
    }
  type (row, "525");
  assert_invalid (row, FALSE);
  choose (panel, "frame", 1);
  g_assert_true (drawn_says (panel, ", line 525 of frame 2 of 2"));
  type (row, "");
  g_assert_cmpint (atoi (shown (row)), >, 22);
  g_assert_false (drawn_says (panel, "line 525"));

  bw_document_select (f->document, CAMCORDER, 1);
  g_assert_cmpuint (g_list_model_get_n_items (gtk_drop_down_get_model (frame)), ==, 4);
  bw_document_select (f->document, DISC, 2);
  g_assert_cmpuint (g_list_model_get_n_items (gtk_drop_down_get_model (frame)), ==, 0);
}

/* Only colour difference signals have vectors. */
static void
test_vectors (Fixture *f, gconstpointer part)
{
  GtkWidget *button = app_test_find (GTK_WIDGET (f->page), GTK_TYPE_TOGGLE_BUTTON, "vectors");

  for (guint source = TAPE; source <= WORKSTATION; source++)
    {
      gboolean has = source == TAPE || source == CAMCORDER || source == DISC || source == GALLERY;
      bw_document_select (f->document, source, 0);
      g_assert_true (gtk_widget_get_sensitive (button) == has);
      const char *tooltip = gtk_widget_get_tooltip_text (button);
      g_assert_true ((strstr (tooltip, "No vectors") == NULL) == has);
      if (has)
        {
          bw_picture_panel_choose (drawing (f), "vectors");
          g_assert_cmpstr (bw_page_get_view (BW_PAGE (f->page)), ==, "vectors");
          gtk_test_widget_wait_for_draw (GTK_WIDGET (f->window));
          g_assert_true (g_str_has_prefix (bw_drawing_name (drawn (drawing (f))),
                                           "The colour difference signals"));
        }
      else
        {
          g_assert_cmpstr (bw_picture_panel_get_view (drawing (f)), ==, "line");
          g_assert_cmpstr (bw_page_get_view (BW_PAGE (f->page)), ==, "line");
          g_assert_true (g_str_has_prefix (bw_drawing_name (drawn (drawing (f))), "The levels"));
        }
    }
}

/* The bars of SMPTE 170M-2004 at 75 % with setup: phases as in the published vector diagrams,
 * yellow 167°, cyan 283.5°, red 103.5°; luma and chroma follow from its equations. */
static void
test_bars (Fixture *f, gconstpointer part)
{
  g_assert_true (table_has (f, "yellow\t492.6\t443.3\t167.1"));
  g_assert_true (table_has (f, "\t283.5\t"));
  g_assert_true (table_has (f, "\t103.5\t"));
  bw_document_select (f->document, CONSOLE, 2);
  choose (drawing (f), "content", 1);
  g_assert_true (table_has (f, "yellow\t700.0\t700.0\t0.0"));
  bw_document_select (f->document, DISC, 2);
  g_assert_true (table_has (f, "blue\t79.8\t350.0\t-56.9")); /* ITU-R BT.601: 0.114 × 700 mV */
}

/* The limits of SMPTE 170M judge composite video, not RGB on the same raster. */
static void
test_limits (Fixture *f, gconstpointer part)
{
  g_assert_true (drawn_has (
      drawing (f),
      "Shaded: what is allowed across 75\u00a0Ω by 525 lines, 59.94 Hz, studio (SMPTE 170M)"));
  bw_document_select (f->document, CONSOLE, 2);
  g_assert_false (drawn_has (drawing (f), "Shaded"));
}

static void
take_reading (BwPictureArea *area, const char *words, char **reading)
{
  g_free (*reading);
  *reading = g_strdup (words);
}

static void
test_cursors (Fixture *f, gconstpointer part)
{
  GtkWidget *area = GTK_WIDGET (bw_picture_panel_get_area (drawing (f)));
  static const char *const views[] = { "line", "field" };
  g_autofree char *reading = NULL;

  g_signal_connect (area, "reading", G_CALLBACK (take_reading), &reading);
  for (guint i = 0; i < G_N_ELEMENTS (views); i++)
    {
      bw_picture_panel_choose (drawing (f), views[i]);
      gtk_test_widget_wait_for_draw (GTK_WIDGET (f->window));
      gtk_widget_activate_action (area, "cursor.step", "d", 1.0);
      g_assert_nonnull (strstr (reading, "mV"));
      g_assert_null (strstr (reading, "Between"));
      gtk_widget_activate_action (area, "cursor.second", NULL);
      gtk_widget_activate_action (area, "cursor.step", "d", 10.0);
      gtk_widget_activate_action (area, "cursor.row", "d", 10.0);
      g_assert_nonnull (strstr (reading, "Between the cursors: "));
      g_assert_nonnull (strstr (reading, "Video, line "));
      g_assert_nonnull (strstr (reading, "Hz)"));
      g_assert_nonnull (strstr (reading, "IRE)"));
      gtk_widget_activate_action (area, "cursor.drop", NULL);
      g_assert_null (strstr (reading, "Between"));
    }
}

/* At the place of red the vectors read its phase, 103.5° (SMPTE 170M-2004), and its name. */
static void
test_vector_reading (Fixture *f, gconstpointer part)
{
  const double red = 103.5 * G_PI / 180;
  const BwDrawingPoint point = { 0, 0.3134 * cos (red), 0.3134 * sin (red) };

  bw_picture_panel_choose (drawing (f), "vectors");
  g_autofree char *words = bw_drawing_words (drawn (drawing (f)), &point);
  g_assert_nonnull (strstr (words, "103.5°"));
  g_assert_nonnull (strstr (words, "626.8"));
  g_assert_nonnull (strstr (words, "nearest bar: red"));
}

/* By the arrow keys from one conductor down to the next. */
static void
test_cursor_rows (Fixture *f, gconstpointer part)
{
  GtkWidget *area = GTK_WIDGET (bw_picture_panel_get_area (drawing (f)));
  g_autofree char *reading = NULL;
  gboolean seen[3] = { FALSE };

  bw_document_select (f->document, DISC, 2);
  gtk_test_widget_wait_for_draw (GTK_WIDGET (f->window));
  g_signal_connect (area, "reading", G_CALLBACK (take_reading), &reading);
  gtk_widget_activate_action (area, "cursor.step", "d", 1.0);
  for (guint i = 0; i < 120 && !seen[2]; i++)
    {
      seen[0] |= g_str_has_prefix (reading, "Y,");
      seen[1] |= g_str_has_prefix (reading, "Pb,");
      seen[2] |= g_str_has_prefix (reading, "Pr,");
      gtk_widget_activate_action (area, "cursor.row", "d", 10.0);
    }
  g_assert_true (seen[0] && seen[1] && seen[2]);
}

/* The keyboard goes through a table in one step. */
static void
test_table_is_one_stop (Fixture *f, gconstpointer part)
{
  GtkWidget *table = app_test_find (GTK_WIDGET (drawing (f)), BW_TYPE_RESULT_VIEW, "table");
  GtkWidget *list = app_test_find (table, GTK_TYPE_LIST_BOX, NULL);
  g_assert_true (gtk_widget_child_focus (list, GTK_DIR_TAB_FORWARD));
  GtkWidget *first = gtk_window_get_focus (GTK_WINDOW (f->window));
  g_assert_true (gtk_widget_is_ancestor (first, table));
  g_assert_true (gtk_widget_child_focus (table, GTK_DIR_DOWN));
  g_assert_true (gtk_window_get_focus (GTK_WINDOW (f->window)) != first);
  g_assert_false (gtk_widget_child_focus (table, GTK_DIR_TAB_FORWARD));
}

/* The same part stays in view when the load changes. */
static void
test_zoom_stays (Fixture *f, gconstpointer part)
{
  GtkWidget *area = GTK_WIDGET (bw_picture_panel_get_area (drawing (f)));

  gtk_widget_activate_action (area, "view.zoom", "d", 4.0);
  g_assert_false (bw_drawing_is_whole (drawn (drawing (f))));
  double from = bw_drawing_shown (drawn (drawing (f))).across.from;
  choose (drawing (f), "load", BW_TERMINATORS_TWO);
  g_assert_cmpfloat_with_epsilon (bw_drawing_shown (drawn (drawing (f))).across.from, from, 1e-12);
  gtk_widget_activate_action (area, "view.pan", "(dd)", 0.5, 0.0);
  g_assert_cmpfloat (bw_drawing_shown (drawn (drawing (f))).across.from, <, from);
  gtk_widget_activate_action (area, "view.whole", NULL);
  g_assert_true (bw_drawing_is_whole (drawn (drawing (f))));
}

static void
assert_exported (BwPicturePanel *panel, const char *suffix, const char *begins)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *name = bw_picture_panel_dup_file_name (panel);
  g_autofree char *file = g_strconcat (name, suffix, NULL);
  g_autofree char *path = app_test_scratch_path (file);
  g_autofree char *text = NULL;
  gsize length;

  g_assert_true (bw_picture_panel_export (panel, path, &error));
  g_assert_no_error (error);
  g_assert_true (g_file_get_contents (path, &text, &length, NULL));
  g_assert_cmpuint (length, >, 2000);
  g_assert_cmpint (memcmp (text, begins, strlen (begins)), ==, 0);
}

static void
test_export (Fixture *f, gconstpointer part)
{
  static const char *const views[] = { "line", "field", "vectors" };

  g_assert_true (bw_page_get_panel (BW_PAGE (f->page)) == drawing (f));
  for (guint i = 0; i < G_N_ELEMENTS (views); i++)
    {
      bw_picture_panel_choose (drawing (f), views[i]);
      assert_exported (drawing (f), ".svg", "<?xml");
      assert_exported (drawing (f), ".pdf", "%PDF");
      assert_exported (drawing (f), ".png", "\x89PNG");
    }
  bw_page_show_view (BW_PAGE (f->page), "sync");
  BwPicturePanel *panel = bw_page_get_panel (BW_PAGE (f->page));
  assert_exported (panel, ".svg", "<?xml");
  bw_page_show_view (BW_PAGE (f->page), "cause");
  g_assert_null (bw_page_get_panel (BW_PAGE (f->page)));
}

/* Sync */

static void
test_gates (Fixture *f, gconstpointer part)
{
  BwSyncPanel *panel = APP_TEST_THE (BW, SYNC_PANEL, f->page);
  g_autoptr (GHashTable) seen = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

  for (guint gate = 0; gate < BW_N_SYNC_GATES; gate++)
    {
      choose (panel, "gate", gate);
      gtk_test_widget_wait_for_draw (GTK_WIDGET (f->window));
      g_assert_true (g_hash_table_add (seen, g_strdup (bw_sync_panel_get_says (panel))));
      g_assert_true (
          g_str_has_suffix (bw_drawing_file_stem (drawn (bw_sync_panel_get_panel (panel))),
                            bw_kind_id (&bw_sync_gates, gate)));
    }
  /* Two signals whose tips are high: an AND has a tip only where both are (truth table). */
  choose (panel, "gate", BW_SYNC_GATE_AND);
  g_autofree char *before = g_strdup (bw_sync_panel_get_says (panel));
  choose (panel, "h-polarity", BW_POLARITY_POSITIVE);
  choose (panel, "v-polarity", BW_POLARITY_POSITIVE);
  g_assert_cmpstr (bw_sync_panel_get_says (panel), !=, before);
  g_assert_nonnull (strstr (bw_sync_panel_get_says (panel), "is no composite sync"));
}

static void
test_sync_fields (Fixture *f, gconstpointer part)
{
  BwSyncPanel *panel = APP_TEST_THE (BW, SYNC_PANEL, f->page);
  BwEditorRow *offset = bw_sync_panel_get_row (panel, "offset");
  BwEditorRow *constant = bw_sync_panel_get_row (panel, "time-constant");
  g_autofree char *before = g_strdup (bw_sync_panel_get_says (panel));

  type (offset, "40 us"); /* more than half a line */
  assert_invalid (offset, TRUE);
  g_assert_cmpstr (shown (offset), ==, "40 us");
  g_assert_cmpstr (bw_sync_panel_get_says (panel), ==, before);
  type (offset, "-3 us");
  assert_invalid (offset, FALSE);
  type (constant, "soon");
  assert_invalid (constant, TRUE);
  type (constant, "3 lines");
  assert_invalid (constant, FALSE);
  g_assert_cmpstr (bw_sync_panel_get_says (panel), !=, before);
  choose (panel, "field-number", 1);
  g_assert_true (drawn_says (bw_sync_panel_get_panel (panel), "field 2: "));
  choose (panel, "gate", BW_SYNC_GATE_STANDARD);
  g_assert_false (gtk_widget_is_sensitive (bw_editor_row_get_control (offset)));
}

/* H and V as the selected source gives them: VESA DMT 04h has both negative, 25h both positive. */
static void
test_source_polarity (Fixture *f, gconstpointer part)
{
  BwPicturePanel *panel = bw_sync_panel_get_panel (APP_TEST_THE (BW, SYNC_PANEL, f->page));

  bw_document_select (f->document, TICKETS, 0);
  g_assert_true (drawn_says (panel, "H (negative) "));
  g_assert_true (drawn_says (panel, "V (negative)"));
  bw_document_select (f->document, WORKSTATION, 0);
  g_assert_true (drawn_says (panel, "H (positive) "));
  g_assert_true (drawn_says (panel, "V (positive)"));
}

/* Likely cause */

static BwCausePanel *
causes (Fixture *f)
{
  return APP_TEST_THE (BW, CAUSE_PANEL, f->page);
}

static BwEditorRow *
reading (Fixture *f, BwScopeReading which)
{
  return bw_cause_panel_get_row (causes (f), which);
}

/* Twice every level: the other 75 Ω of the divider is not there (Ohm's law). */
static void
test_cause (Fixture *f, gconstpointer part)
{
  g_assert_null (bw_cause_panel_get_cause (causes (f), 0));
  type (reading (f, BW_SCOPE_SYNC), "600 mV");
  type (reading (f, BW_SCOPE_WHITE), "1.4 V");
  const BwCause *first = bw_cause_panel_get_cause (causes (f), 0);
  g_assert_nonnull (first);
  g_assert_cmpint (first->faults[0].kind, ==, BW_FAULT_UNTERMINATED);
  g_assert_nonnull (strstr (bw_cause_panel_get_summary (causes (f)), "Not terminated"));
  g_autofree char *text = bw_node_to_tsv (
      bw_result_root (bw_result_view_get_result (bw_cause_panel_get_view (causes (f)))));
  g_assert_nonnull (strstr (text, "Sync\t600 mV\t"));
  g_assert_nonnull (strstr (text, "not terminated"));

  /* What is no quantity is said at its field; the rest stands */
  g_autofree char *summary = g_strdup (bw_cause_panel_get_summary (causes (f)));
  type (reading (f, BW_SCOPE_BURST), "rather high");
  assert_invalid (reading (f, BW_SCOPE_BURST), TRUE);
  g_assert_cmpstr (shown (reading (f, BW_SCOPE_BURST)), ==, "rather high");
  g_assert_cmpstr (shown (reading (f, BW_SCOPE_WHITE)), ==, "1.4 V");
  g_assert_cmpstr (bw_cause_panel_get_summary (causes (f)), ==, summary);
  type (reading (f, BW_SCOPE_BURST), "");
  assert_invalid (reading (f, BW_SCOPE_BURST), FALSE);

  type (reading (f, BW_SCOPE_SYNC), "286 mV");
  type (reading (f, BW_SCOPE_WHITE), "714 mV");
  first = bw_cause_panel_get_cause (causes (f), 0);
  g_assert_true (first->known);
  g_assert_cmpuint (first->n_faults, ==, 0);
}

/* What was typed stays, and is held against the other source: 300 mV is right there (BT.1700). */
static void
test_cause_stays (Fixture *f, gconstpointer part)
{
  type (reading (f, BW_SCOPE_SYNC), "300 mV");
  type (reading (f, BW_SCOPE_WHITE), "700 mV");
  bw_document_select (f->document, CAMCORDER, 1);
  g_assert_cmpstr (shown (reading (f, BW_SCOPE_SYNC)), ==, "300 mV");
  const BwCause *first = bw_cause_panel_get_cause (causes (f), 0);
  g_assert_true (first->known && first->n_faults == 0);
  bw_document_select (f->document, DISC, 2);
  type (reading (f, BW_SCOPE_WHITE), "467 mV"); /* 2/3: two loads */
  type (reading (f, BW_SCOPE_SYNC), "200 mV");
  g_assert_cmpint (bw_cause_panel_get_cause (causes (f), 0)->faults[0].kind, ==,
                   BW_FAULT_TWO_LOADS);
}

static void
test_cause_polarity (Fixture *f, gconstpointer part)
{
  type (reading (f, BW_SCOPE_SYNC), "286 mV");
  choose (causes (f), "polarity", 1 + BW_POLARITY_NEGATIVE);
  g_assert_cmpuint (bw_cause_panel_get_cause (causes (f), 0)->n_faults, ==, 0);
  choose (causes (f), "polarity", 1 + BW_POLARITY_POSITIVE);
  g_assert_cmpint (bw_cause_panel_get_cause (causes (f), 0)->faults[0].kind, ==, BW_FAULT_INVERTED);
  choose (causes (f), "polarity", 0);
  g_assert_cmpuint (bw_cause_panel_get_cause (causes (f), 0)->n_faults, ==, 0);
  type (reading (f, BW_SCOPE_WHITE), "714 mV");
  g_signal_emit_by_name (app_test_find (GTK_WIDGET (causes (f)), GTK_TYPE_BUTTON, "clear-readings"),
                         "clicked");
  g_assert_cmpstr (shown (reading (f, BW_SCOPE_WHITE)), ==, "");
  g_assert_null (bw_cause_panel_get_cause (causes (f), 0));
}

static void
test_empty (void)
{
  g_autoptr (BwDocument) document = bw_document_new (app_test_catalogue ());
  BwWindow *window = app_test_window_new (document);
  BwLevelsPage *page = BW_LEVELS_PAGE (bw_window_get_page (window, "levels"));
  static const char *const parts[] = { "line", "sync", "cause" };

  bw_window_show_page (window, "levels");
  for (guint i = 0; i < G_N_ELEMENTS (parts); i++)
    {
      bw_page_show_view (BW_PAGE (page), parts[i]);
      gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
    }
  type (bw_cause_panel_get_row (APP_TEST_THE (BW, CAUSE_PANEL, page), BW_SCOPE_WHITE), "1 V");
  type (bw_sync_panel_get_row (APP_TEST_THE (BW, SYNC_PANEL, page), "offset"), "1 us");
  type (bw_waveform_panel_get_line_row (APP_TEST_THE (BW, WAVEFORM_PANEL, page)), "1");
  app_test_close (window);
}

/* By keyboard alone: real key events from xdotool to a real window. */

static BwApplication *application = NULL;

static BwWindow *
open_by_application (void)
{
  g_autofree char *path = app_test_sheet_path ();
  g_autoptr (GFile) file = g_file_new_for_path (path);

  g_application_open (G_APPLICATION (application), &file, 1, "");
  BwWindow *window = BW_WINDOW (gtk_application_get_active_window (GTK_APPLICATION (application)));
  ASSERT_COMES_TRUE (gtk_widget_get_mapped (GTK_WIDGET (window)));
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  app_test_give_focus (window);
  return window;
}

static void
test_keyboard (void)
{
  BwWindow *window = open_by_application ();
  BwLevelsPage *page = BW_LEVELS_PAGE (bw_window_get_page (window, "levels"));
  Fixture f = { bw_window_get_document (window), window, page };
  GtkWidget *cause = app_test_find (GTK_WIDGET (page), GTK_TYPE_TOGGLE_BUTTON, "cause");

  app_test_xdotool ("key ctrl+4");
  ASSERT_COMES_TRUE (gtk_widget_get_mapped (GTK_WIDGET (page)));
  g_assert_true (table_has (&f, "white\t714.3\t100.0\t714.3\t100.0"));
  app_test_go_to (window, "Tab", app_test_find (GTK_WIDGET (page), GTK_TYPE_DROP_DOWN, "load"));
  app_test_xdotool ("key space");
  app_test_xdotool ("key Down");
  app_test_xdotool ("key Return");
  ASSERT_COMES_TRUE (table_has (&f, "white\t714.3\t100.0\t1428.6\t200.0"));

  app_test_go_to (window, "shift+Tab", cause);
  app_test_xdotool ("key space");
  ASSERT_COMES_TRUE (gtk_widget_get_mapped (GTK_WIDGET (APP_TEST_THE (BW, CAUSE_PANEL, page))));
  app_test_go_to (window, "Tab", bw_editor_row_get_control (reading (&f, BW_SCOPE_SYNC)));
  app_test_xdotool ("type '600 mV'");
  app_test_go_to (window, "Tab", bw_editor_row_get_control (reading (&f, BW_SCOPE_WHITE)));
  app_test_xdotool ("type '1.4 V'");
  app_test_xdotool ("key Return");
  ASSERT_COMES_TRUE (bw_cause_panel_get_cause (causes (&f), 0) != NULL);
  ASSERT_COMES_TRUE (strstr (bw_cause_panel_get_summary (causes (&f)), "Not terminated") != NULL);
  gtk_window_destroy (GTK_WINDOW (window));
  app_test_settle ();
}

#define ADD(name, part, func)                                                                      \
  g_test_add ("/levels/" name, Fixture, (gconstpointer) part, set_up, func, tear_down)

/* 75 × (2.45 / 0.38 − 1) = 408.55 Ω, by Ohm's law; it goes into the source, and one undo takes it back. */
static void
test_work_back (Fixture *f, gconstpointer part)
{
  BwWorkBackPanel *panel = APP_TEST_THE (BW, WORK_BACK_PANEL, f->page);
  BwForm *form = APP_TEST_THE (BW, FORM, panel);
  GtkWidget *use = app_test_find (GTK_WIDGET (panel), GTK_TYPE_BUTTON, "use-video");
  GtkWidget *view = app_test_find (GTK_WIDGET (panel), BW_TYPE_RESULT_VIEW, "worked-back");
  g_autofree char *before = app_test_sheet_text (f->document);

  g_assert_false (gtk_widget_get_sensitive (use));
  type (bw_form_get_row (form, "open"), "2.45 V");
  type (bw_form_get_row (form, "loaded"), "380 mV");
  g_signal_emit_by_name (app_test_find (GTK_WIDGET (panel), GTK_TYPE_BUTTON, "work-back"), "clicked");
  g_assert_true (gtk_widget_get_visible (view));
  g_signal_emit_by_name (use, "clicked");
  const BwSource *source = bw_document_selected_source (f->document);
  g_assert_cmpfloat_with_epsilon (source->source_ohm, 408.55, 0.01);
  g_assert_cmpfloat_with_epsilon (source->video_v, 0.38, 1e-4);
  g_assert_true (bw_document_undo (f->document));
  g_autofree char *after = app_test_sheet_text (f->document);
  g_assert_cmpstr (before, ==, after);

  /* A level that rises under load cannot be */
  type (bw_form_get_row (form, "loaded"), "5 V");
  g_signal_emit_by_name (app_test_find (GTK_WIDGET (panel), GTK_TYPE_BUTTON, "work-back"), "clicked");
  g_assert_false (gtk_widget_get_visible (view));
  g_assert_false (gtk_widget_get_sensitive (use));

  /* Another question has other fields */
  choose (panel, "ask", 2);
  g_assert_nonnull (bw_form_get_row (APP_TEST_THE (BW, FORM, panel), "before-1"));
}

int
main (int argc, char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
  ADD ("conductors", "line", test_conductors);
  ADD ("load", "line", test_load);
  ADD ("kept", "line", test_content);
  ADD ("line-and-frame", "line", test_line_and_frame);
  ADD ("capacitor", "line", test_capacitor);
  ADD ("vectors", "line", test_vectors);
  ADD ("bars", "line", test_bars);
  ADD ("limits", "line", test_limits);
  ADD ("cursors", "line", test_cursors);
  ADD ("vector-reading", "line", test_vector_reading);
  ADD ("cursor-rows", "line", test_cursor_rows);
  ADD ("table-is-one-stop", "line", test_table_is_one_stop);
  ADD ("zoom-stays", "line", test_zoom_stays);
  ADD ("export", "line", test_export);
  ADD ("gates", "sync", test_gates);
  ADD ("sync-fields", "sync", test_sync_fields);
  ADD ("source-polarity", "sync", test_source_polarity);
  ADD ("cause", "cause", test_cause);
  ADD ("cause-stays", "cause", test_cause_stays);
  ADD ("cause-polarity", "cause", test_cause_polarity);
  ADD ("work-back", "work-back", test_work_back);
  g_test_add_func ("/levels/empty", test_empty);
  application = bw_application_new ();
  g_assert_true (g_application_register (G_APPLICATION (application), NULL, NULL));
  g_test_add_func ("/levels/keyboard", test_keyboard);
  return g_test_run ();
}
