/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "app-hands.h"

#include <math.h>
#include <string.h>

#include "app/detail/page.h"
#include "app/detail/path-panel.h"

/* The Detail page, with its real widgets. */

typedef struct
{
  BwDocument *document;
  BwWindow *window;
  BwDetailPage *page;
  BwDetailState *state;
  BwPathPanel *path;
} Fixture;

/* What the figures beside the drawing say in sentences; it lives until the next call. */
static const char *
answer (Fixture *f)
{
  static GString *words = NULL;
  const BwNode *root = bw_result_root (
      bw_picture_panel_get_result (bw_path_panel_get_panel (f->path)));

  words = words != NULL ? words : g_string_new (NULL);
  g_string_truncate (words, 0);
  for (guint i = 0; i < root->children->len; i++)
    {
      const BwNode *node = root->children->pdata[i];
      if (node->kind == BW_NODE_SENTENCE)
        g_string_append_printf (words, "%s\n", node->label);
    }
  return words->str;
}

static void
set_up (Fixture *f, gconstpointer data)
{
  f->document = app_test_document ();
  f->window = app_test_window_new (f->document);
  f->page = BW_DETAIL_PAGE (bw_window_get_page (f->window, "detail"));
  f->state = bw_detail_page_get_state (f->page);
  f->path = APP_TEST_THE (BW, PATH_PANEL, f->page);
  bw_window_show_page (f->window, "detail");
  bw_document_select (f->document, 0, 0);
  gtk_test_widget_wait_for_draw (GTK_WIDGET (f->window));
}

static void
tear_down (Fixture *f, gconstpointer data)
{
  app_test_close (f->window);
  g_assert_finalize_object (f->document);
}

static BwMoveRow *
row (Fixture *f, BwDetailValue value)
{
  return bw_path_values_get_row (bw_path_panel_get_values (f->path), value);
}

static BwEditorRow *
editor (Fixture *f, BwDetailValue value)
{
  return bw_move_row_get_editor (row (f, value));
}

/* Types @text into the field of @value and presses Enter. */
static void
type (Fixture *f, BwDetailValue value, const char *text)
{
  GtkWidget *entry = bw_editor_row_get_control (editor (f, value));
  gtk_editable_set_text (GTK_EDITABLE (entry), text);
  g_signal_emit_by_name (entry, "activate");
}

static const char *
shown (Fixture *f, BwDetailValue value)
{
  return gtk_editable_get_text (GTK_EDITABLE (bw_editor_row_get_control (editor (f, value))));
}

static GtkWidget *
reset_button (Fixture *f, BwDetailValue value)
{
  return app_test_find (GTK_WIDGET (row (f, value)), GTK_TYPE_BUTTON, "reset");
}

static const BwDetail *
detail (Fixture *f)
{
  return bw_detail_state_get_detail (f->state);
}

static const BwDrawing *
drawing (Fixture *f)
{
  return bw_picture_area_get_drawing (
      bw_picture_panel_get_area (bw_path_panel_get_panel (f->path)));
}

/* Whether the drawing says @text of itself. */
static gboolean
drawing_says (Fixture *f, const char *text)
{
  return strstr (bw_drawing_description (drawing (f)), text) != NULL;
}

static void
find_text (GtkWidget *widget, gpointer data)
{
  const char **text = data;
  if (GTK_IS_LABEL (widget) && *text != NULL
      && strstr (gtk_label_get_label (GTK_LABEL (widget)), *text) != NULL)
    *text = NULL;
}

/* Whether a label of the page holds @text. */
static gboolean
page_says (Fixture *f, const char *text)
{
  const char *wanted = text;
  app_test_each (GTK_WIDGET (f->page), find_text, &wanted);
  return wanted == NULL;
}

static char *
lines (double tvl)
{
  return bw_quantity_format (round (tvl), BW_DIMENSION_TV_LINES, 5, bw_quantity_locale_mark ());
}

static void
assert_says_combined (Fixture *f)
{
  g_autofree char *all = lines (detail (f)->limiting_tvl);
  g_autofree char *summary = g_strdup_printf ("All together %s;", all);
  g_assert_true (page_says (f, summary));
  g_assert_nonnull (strstr (answer (f), all));
}

/* What the page shows at first is what the core makes of the sheet. */
static void
test_starts_with_sheet (Fixture *f, gconstpointer data)
{
  BwDetailCase what;
  BwDetail expected;

  bw_detail_case_from (&what, bw_document_get_sheet (f->document)->monitor,
                       bw_document_selected_input (f->document),
                       bw_document_selected_source (f->document),
                       bw_document_selected_raster (f->document));
  bw_detail_compute (&what, &expected);
  g_assert_cmpfloat (detail (f)->limiting_tvl, ==, expected.limiting_tvl);
  g_assert_false (bw_detail_state_any_moved (f->state));
  for (guint i = 0; i < BW_N_DETAIL_VALUES; i++)
    g_assert_false (gtk_widget_is_sensitive (reset_button (f, i)));
  assert_says_combined (f);
}

/* A mask of height H and pitch p carries H/p lines: 19 in at 4:3 is 0.6 × 0.4826 m high (3-4-5
 * triangle), and 0.28956 m / 0.4 mm = 723.9 lines (arithmetic). */
static void
test_move_pitch (Fixture *f, gconstpointer data)
{
  type (f, BW_DETAIL_DIAGONAL, "19 in");
  type (f, BW_DETAIL_PITCH_VALUE, "0.4 mm");
  g_assert_null (bw_editor_row_get_error (editor (f, BW_DETAIL_PITCH_VALUE)));
  g_assert_cmpfloat_with_epsilon (detail (f)->mask_tvl, 723.9, 1e-6);
  g_assert_cmpfloat_with_epsilon (detail (f)->mask_tvl, 723.9, 1e-6);
  g_assert_true (drawing_says (f, "mask: 724\u00a0lines"));
  g_assert_true (page_says (f, "724\u00a0lines"));
  assert_says_combined (f);
  type (f, BW_DETAIL_PITCH_VALUE, "0.8 mm");
  g_assert_cmpfloat_with_epsilon (detail (f)->mask_tvl, 723.9 / 2, 1e-6);
  g_assert_true (drawing_says (f, "mask: 362\u00a0lines"));
  g_assert_true (page_says (f, "362\u00a0lines"));
  assert_says_combined (f);
}

/* 2·B·T/aspect: twice the bandwidth carries twice the lines. */
static void
test_move_bandwidth (Fixture *f, gconstpointer data)
{
  type (f, BW_DETAIL_BANDWIDTH, "5 MHz");
  double at_5 = detail (f)->bandwidth_tvl, all_at_5 = detail (f)->limiting_tvl;
  g_autofree char *drawn_at_5 = g_strdup (bw_drawing_description (drawing (f)));
  g_assert_cmpfloat (at_5, >, 0);
  type (f, BW_DETAIL_BANDWIDTH, "10 MHz");
  g_assert_false (drawing_says (f, drawn_at_5));
  g_assert_cmpfloat_with_epsilon (detail (f)->bandwidth_tvl, 2 * at_5, 1e-6);
  g_assert_cmpfloat (detail (f)->limiting_tvl, >, all_at_5);
  assert_says_combined (f);
  type (f, BW_DETAIL_BANDWIDTH, "");
  g_assert_cmpfloat (detail (f)->bandwidth_tvl, ==, 0);
  g_assert_true (bw_detail_state_is_moved (f->state, BW_DETAIL_BANDWIDTH));
}

/* Loss goes with the root of frequency and with length, so that 3 dB comes at a quarter of the
 * frequency in twice the length. */
static void
test_move_lead (Fixture *f, gconstpointer data)
{
  const BwDetailCase *what = bw_detail_state_get_case (f->state);
  double without = detail (f)->limiting_tvl;

  g_assert_cmpfloat (what->lead_hz, ==, 0);
  g_assert_true (drawing_says (f, "none that matters"));
  type (f, BW_DETAIL_LEAD_LENGTH, "50 m");
  double at_50_hz = what->lead_hz;
  g_assert_cmpfloat (at_50_hz, >, 0);
  g_assert_cmpfloat (detail (f)->limiting_tvl, <, without);
  g_assert_cmpfloat (detail (f)->lead_tvl, >, 0);
  g_assert_false (drawing_says (f, "none that matters"));
  type (f, BW_DETAIL_LEAD_LENGTH, "100 m");
  g_assert_cmpfloat_with_epsilon (what->lead_hz, at_50_hz / 4, at_50_hz * 1e-9);

  GtkWidget *choice = bw_editor_row_get_control (editor (f, BW_DETAIL_LEAD_TYPE));
  gtk_drop_down_set_selected (GTK_DROP_DOWN (choice), 2);
  g_assert_true (bw_detail_state_is_moved (f->state, BW_DETAIL_LEAD_TYPE));
  g_assert_cmpfloat (fabs (what->lead_hz - at_50_hz / 4), >, at_50_hz * 1e-3);
}

static gboolean
is_moving (gpointer data)
{
  Fixture *f = data;
  return bw_detail_state_is_moved (f->state, BW_DETAIL_PITCH_VALUE);
}

/* The scale and the field go together, and the drawing with them. */
static void
test_scale (Fixture *f, gconstpointer data)
{
  GtkRange *scale = GTK_RANGE (bw_move_row_get_scale (row (f, BW_DETAIL_PITCH_VALUE)));

  type (f, BW_DETAIL_PITCH_VALUE, "0.4 mm");
  double place = gtk_range_get_value (scale);
  type (f, BW_DETAIL_PITCH_VALUE, "0.5 mm");
  g_assert_cmpfloat (gtk_range_get_value (scale), >, place);
  bw_detail_state_reset_all (f->state);
  g_assert_false (is_moving (f));
  double before = detail (f)->mask_tvl;

  gtk_range_set_value (scale, 0);
  g_assert_true (is_moving (f));
  g_assert_cmpstr (shown (f, BW_DETAIL_PITCH_VALUE), ==, "0.15 mm");
  g_assert_cmpfloat_with_epsilon (detail (f)->pitch_h_m, 0.15e-3, 1e-12);
  gtk_range_set_value (scale, 1);
  g_assert_cmpstr (shown (f, BW_DETAIL_PITCH_VALUE), ==, "1.5 mm");
  g_assert_cmpfloat (detail (f)->mask_tvl, <, before);
  assert_says_combined (f);
}

/* Every scale, at every place, gives a value that its field allows. */
static void
test_scales_are_allowed (Fixture *f, gconstpointer data)
{
  for (guint i = 0; i < BW_N_DETAIL_VALUES; i++)
    {
      GtkScale *scale = bw_move_row_get_scale (row (f, i));
      if (scale == NULL)
        continue;
      for (double place = 0; place <= 1; place += 0.0625)
        {
          gtk_range_set_value (GTK_RANGE (scale), place);
          g_assert_null (bw_editor_row_get_error (editor (f, i)));
          g_assert_cmpfloat_with_epsilon (gtk_range_get_value (GTK_RANGE (scale)), place, 1e-9);
          g_assert_true (isfinite (detail (f)->limiting_tvl));
        }
      bw_detail_state_reset (f->state, i);
    }
}

static void
test_reset (Fixture *f, gconstpointer data)
{
  double own = detail (f)->limiting_tvl;
  g_autofree char *text = g_strdup (shown (f, BW_DETAIL_DIAGONAL));
  g_autofree char *sheet = app_test_sheet_text (f->document);
  GtkWidget *all = app_test_find (GTK_WIDGET (f->path), GTK_TYPE_BUTTON, "reset-all");

  type (f, BW_DETAIL_DIAGONAL, "10 in");
  type (f, BW_DETAIL_PITCH_VALUE, "1 mm");
  g_assert_true (gtk_widget_is_sensitive (reset_button (f, BW_DETAIL_DIAGONAL)));
  g_assert_true (page_says (f, "● moved, from"));
  g_signal_emit_by_name (reset_button (f, BW_DETAIL_DIAGONAL), "clicked");
  g_assert_cmpstr (shown (f, BW_DETAIL_DIAGONAL), ==, text);
  g_assert_true (bw_detail_state_is_moved (f->state, BW_DETAIL_PITCH_VALUE));
  g_signal_emit_by_name (all, "clicked");
  g_assert_false (bw_detail_state_any_moved (f->state));
  g_assert_false (gtk_widget_is_sensitive (all));
  g_assert_cmpfloat (detail (f)->limiting_tvl, ==, own);
  g_assert_false (page_says (f, "● moved, from"));

  /* A question is no edit */
  g_autofree char *after = app_test_sheet_text (f->document);
  g_assert_cmpstr (after, ==, sheet);
  g_assert_false (bw_document_is_modified (f->document));
  g_assert_null (bw_document_undo_words (f->document));
}

static void
assert_invalid (Fixture *f, BwDetailValue value, gboolean invalid)
{
  gtk_test_accessible_assert_state (GTK_ACCESSIBLE (bw_editor_row_get_control (editor (f, value))),
                                    GTK_ACCESSIBLE_STATE_INVALID,
                                    invalid ? GTK_ACCESSIBLE_INVALID_TRUE
                                            : GTK_ACCESSIBLE_INVALID_FALSE);
}

/* What is wrong stands at the field, and the value stays; what was typed is not lost when another
 * value moves. */
static void
test_error (Fixture *f, gconstpointer data)
{
  static const char *const wrong[] = { "0.4", "0.4 MHz", "fine", "20 mm", "-1 mm", "0.4 mm mm" };

  type (f, BW_DETAIL_PITCH_VALUE, "0.4 mm");
  double before = detail (f)->limiting_tvl;
  for (guint i = 0; i < G_N_ELEMENTS (wrong); i++)
    {
      type (f, BW_DETAIL_PITCH_VALUE, wrong[i]);
      g_assert_nonnull (bw_editor_row_get_error (editor (f, BW_DETAIL_PITCH_VALUE)));
      assert_invalid (f, BW_DETAIL_PITCH_VALUE, TRUE);
      g_assert_cmpfloat (detail (f)->limiting_tvl, ==, before);
      g_assert_cmpstr (shown (f, BW_DETAIL_PITCH_VALUE), ==, wrong[i]);
    }
  type (f, BW_DETAIL_BANDWIDTH, "7 MHz");
  g_assert_cmpstr (shown (f, BW_DETAIL_PITCH_VALUE), ==, "0.4 mm mm");
  assert_invalid (f, BW_DETAIL_PITCH_VALUE, TRUE);
  g_signal_emit_by_name (reset_button (f, BW_DETAIL_PITCH_VALUE), "clicked");
  assert_invalid (f, BW_DETAIL_PITCH_VALUE, FALSE);
  type (f, BW_DETAIL_DIAGONAL, "");
  assert_invalid (f, BW_DETAIL_DIAGONAL, TRUE);
}

/* The classic trap: a bandwidth that carries the claim on a tube that does not. */
static void
test_claim (Fixture *f, gconstpointer data)
{
  type (f, BW_DETAIL_DIAGONAL, "19 in");
  type (f, BW_DETAIL_SPOT, "");
  type (f, BW_DETAIL_PITCH_VALUE, "0.4 mm"); /* 724 lines */
  type (f, BW_DETAIL_BANDWIDTH, "30 MHz");
  type (f, BW_DETAIL_CLAIM, "1000 lines");
  g_assert_cmpint (detail (f)->claim, ==, BW_CLAIM_BY_BANDWIDTH);
  g_assert_nonnull (strstr (answer (f), "bandwidth alone"));
  g_assert_true (page_says (f, "It needs a pitch of"));
  /* 19 in × 0.6 / 0.4 mm = 723.9: as a claim of 724 it may be meant, as one of 724.0 it may not */
  type (f, BW_DETAIL_CLAIM, "724 lines");
  g_assert_cmpint (detail (f)->claim, !=, BW_CLAIM_BY_BANDWIDTH);
  type (f, BW_DETAIL_CLAIM, "724.0 lines");
  g_assert_cmpint (detail (f)->claim, ==, BW_CLAIM_BY_BANDWIDTH);
  type (f, BW_DETAIL_CLAIM, "500 lines");
  g_assert_cmpint (detail (f)->claim, ==, BW_CLAIM_SUPPORTED);
  g_assert_null (strstr (answer (f), "bandwidth alone"));
  type (f, BW_DETAIL_BANDWIDTH, "1 MHz");
  g_assert_cmpint (detail (f)->claim, ==, BW_CLAIM_BY_TUBE);
  type (f, BW_DETAIL_CLAIM, "2000 lines");
  g_assert_cmpint (detail (f)->claim, ==, BW_CLAIM_NOT_SUPPORTED);
  type (f, BW_DETAIL_CLAIM, "");
  g_assert_true (page_says (f, "Nothing is claimed."));
}

/* The first source of @signal, selected; there must be one. */
static void
select_signal (Fixture *f, BwSignal signal)
{
  const BwSheet *sheet = bw_document_get_sheet (f->document);
  for (guint i = 0; i < sheet->sources->len; i++)
    if (bw_sheet_source (sheet, i)->signal == signal)
      {
        bw_document_select (f->document, i, 0);
        return;
      }
  g_error ("no source of this kind");
}

/* Would RGB help? On a fine tube with a wide path it does, on a coarse one it does not. */
static void
test_rgb (Fixture *f, gconstpointer data)
{
  select_signal (f, BW_SIGNAL_COMPOSITE);
  /* The composite input has 6 MHz, the one for RGB the monitor's 20 MHz. */
  BwDetailCase by_input = *bw_detail_state_get_case (f->state);
  BwDetail through;
  g_assert_cmpfloat_with_epsilon (by_input.bandwidth_hz, 6e6, 1);
  by_input.signal = BW_SIGNAL_RGB;
  by_input.system = BW_SYSTEM_NONE;
  by_input.bandwidth_hz = 20e6;
  bw_detail_compute (&by_input, &through);
  g_autofree char *there = lines (through.limiting_tvl);
  g_assert_nonnull (strstr (answer (f), there));

  type (f, BW_DETAIL_PITCH_VALUE, "0.2 mm");
  type (f, BW_DETAIL_SPOT, "0.2 mm");
  type (f, BW_DETAIL_BANDWIDTH, "40 MHz");
  g_assert_nonnull (strstr (answer (f), "RGB would help"));
  g_assert_true (page_says (f, "; with RGB "));

  BwDetailCase as_rgb = *bw_detail_state_get_case (f->state);
  BwDetail by_rgb;
  as_rgb.signal = BW_SIGNAL_RGB;
  as_rgb.system = BW_SYSTEM_NONE;
  bw_detail_compute (&as_rgb, &by_rgb);
  g_autofree char *figure = lines (by_rgb.limiting_tvl);
  g_assert_nonnull (strstr (answer (f), figure));

  type (f, BW_DETAIL_PITCH_VALUE, "5 mm"); /* some 60 lines: the mask decides all */
  g_assert_nonnull (strstr (answer (f), "would hardly help"));
  select_signal (f, BW_SIGNAL_RGB);
  g_assert_nonnull (strstr (answer (f), "as RGB already"));
}

/* What is moved stays while other sources are selected, and goes when the sheet says otherwise. */
static void
test_selection (Fixture *f, gconstpointer data)
{
  const BwField *pitch = app_test_field (BW_PART_MONITOR, "pitch");

  select_signal (f, BW_SIGNAL_COMPOSITE);
  double composite = detail (f)->limiting_tvl;
  type (f, BW_DETAIL_PITCH_VALUE, "0.21 mm");
  select_signal (f, BW_SIGNAL_RGB);
  g_assert_cmpfloat (detail (f)->limiting_tvl, >, composite);
  g_assert_true (bw_detail_state_is_moved (f->state, BW_DETAIL_PITCH_VALUE));
  g_assert_cmpstr (shown (f, BW_DETAIL_PITCH_VALUE), ==, "0.21 mm");
  g_autofree char *name = g_strconcat (bw_document_selected_source (f->document)->name, " at ",
                                       NULL);
  g_assert_true (page_says (f, name));

  /* An edit of something else leaves it, an edit of the value itself does not */
  g_assert_true (bw_document_set_field (f->document, BW_PART_MONITOR, 0,
                                        app_test_field (BW_PART_MONITOR, "spot"), "0.7 mm", '.',
                                        NULL));
  g_assert_true (bw_detail_state_is_moved (f->state, BW_DETAIL_PITCH_VALUE));
  g_assert_true (
      bw_document_set_field (f->document, BW_PART_MONITOR, 0, pitch, "0.33 mm", '.', NULL));
  g_assert_false (bw_detail_state_is_moved (f->state, BW_DETAIL_PITCH_VALUE));
  g_assert_cmpfloat_with_epsilon (detail (f)->pitch_h_m, 0.33e-3, 1e-12);

  /* Another tube takes with it what was moved on this one */
  type (f, BW_DETAIL_SPOT, "1 mm");
  type (f, BW_DETAIL_LEAD_LENGTH, "20 m");
  g_assert_true (bw_document_set_field (f->document, BW_PART_MONITOR, 0,
                                        app_test_field (BW_PART_MONITOR, "diagonal"), "8 in", '.',
                                        NULL));
  g_assert_false (bw_detail_state_is_moved (f->state, BW_DETAIL_SPOT));
  g_assert_true (bw_detail_state_is_moved (f->state, BW_DETAIL_LEAD_LENGTH));

  /* And another sheet takes all */
  g_autofree char *path = app_test_demo_path ();
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GPtrArray) faults = g_ptr_array_new_with_free_func ((GDestroyNotify) g_error_free);
  g_assert_true (bw_document_load (f->document, file, faults));
  g_assert_false (bw_detail_state_any_moved (f->state));
}

/* Saving under another name is no other sheet. */
static void
test_save_as (Fixture *f, gconstpointer data)
{
  g_autofree char *path = app_test_scratch_path ("detail.bench");
  g_autoptr (GFile) file = g_file_new_for_path (path);

  type (f, BW_DETAIL_LEAD_LENGTH, "20 m");
  g_assert_true (bw_document_save (f->document, file, NULL));
  bw_document_add_source (f->document, bw_document_selected_source (f->document), NULL);
  g_assert_true (bw_detail_state_is_moved (f->state, BW_DETAIL_LEAD_LENGTH));
}

/* Each view is drawn and exported as all three kinds of file, none empty or like another. */
static void
test_export (Fixture *f, gconstpointer data)
{
  static const char *const suffixes[] = { ".svg", ".pdf", ".png" };
  static const char *const starts[] = { "<?xml", "%PDF", "\x89PNG" };
  BwPicturePanel *panel = bw_page_get_panel (BW_PAGE (f->page));
  g_autoptr (GHashTable) seen = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

  type (f, BW_DETAIL_PITCH_VALUE, "0.4 mm");
  type (f, BW_DETAIL_SPOT, "0.5 mm");
  for (BwDetailViewKind kind = 0; kind < BW_N_DETAIL_VIEWS; kind++)
    for (guint i = 0; i < G_N_ELEMENTS (suffixes); i++)
      {
        g_autoptr (GError) error = NULL;
        g_autofree char *text = NULL;
        gsize length = 0;
        bw_path_panel_choose (f->path, kind);
        gtk_test_widget_wait_for_draw (GTK_WIDGET (f->window));
        g_autofree char *stem = bw_picture_panel_dup_file_name (panel);
        g_autofree char *file = g_strconcat (stem, suffixes[i], NULL);
        g_autofree char *path = app_test_scratch_path (file);
        g_assert_true (bw_picture_panel_export (panel, path, &error));
        g_assert_no_error (error);
        g_assert_true (g_file_get_contents (path, &text, &length, NULL));
        g_assert_cmpuint (length, >, 4000);
        g_assert_cmpmem (text, strlen (starts[i]), starts[i], strlen (starts[i]));
        g_assert_true (
            g_hash_table_add (seen, g_compute_checksum_for_data (G_CHECKSUM_SHA256,
                                                                 (const guchar *) text, length)));
      }
}

/* A value that moves draws every view anew. */
static void
test_redraws (Fixture *f, gconstpointer data)
{
  BwPicturePanel *panel = bw_page_get_panel (BW_PAGE (f->page));

  for (BwDetailViewKind kind = 0; kind < BW_N_DETAIL_VIEWS; kind++)
    {
      g_autofree char *path = app_test_scratch_path ("moved.svg");
      g_autofree char *before = NULL;
      g_autofree char *after = NULL;
      bw_path_panel_choose (f->path, kind);
      type (f, BW_DETAIL_SPOT, "0.5 mm");
      type (f, BW_DETAIL_PITCH_VALUE, "0.4 mm");
      g_assert_true (bw_picture_panel_export (panel, path, NULL));
      g_assert_true (g_file_get_contents (path, &before, NULL, NULL));
      type (f, BW_DETAIL_SPOT, "0.6 mm");
      type (f, BW_DETAIL_PITCH_VALUE, "0.5 mm");
      g_assert_true (bw_picture_panel_export (panel, path, NULL));
      g_assert_true (g_file_get_contents (path, &after, NULL, NULL));
      g_assert_cmpstr (before, !=, after);
    }
}

static void
take_reading (BwPictureArea *area, const char *words, char **reading)
{
  g_free (*reading);
  *reading = g_strdup (words);
}

static void
test_cursors (Fixture *f, gconstpointer data)
{
  BwPictureArea *area = bw_picture_panel_get_area (bw_page_get_panel (BW_PAGE (f->page)));
  g_autofree char *reading = NULL;

  type (f, BW_DETAIL_SPOT, "0.5 mm");
  type (f, BW_DETAIL_PITCH_VALUE, "0.4 mm");
  g_signal_connect (area, "reading", G_CALLBACK (take_reading), &reading);
  for (BwDetailViewKind kind = 0; kind < BW_N_DETAIL_VIEWS; kind++)
    {
      bw_path_panel_choose (f->path, kind);
      gtk_test_widget_wait_for_draw (GTK_WIDGET (f->window));
      gtk_widget_activate_action (GTK_WIDGET (area), "cursor.step", "d", 1.0);
      g_assert_cmpstr (reading, !=, "");
      gtk_widget_activate_action (GTK_WIDGET (area), "cursor.second", NULL);
      gtk_widget_activate_action (GTK_WIDGET (area), "cursor.step", "d", 40.0);
      g_assert_nonnull (strstr (reading, "Between the cursors: "));
      gtk_widget_activate_action (GTK_WIDGET (area), "cursor.drop", NULL);
    }
  bw_path_panel_choose (f->path, BW_DETAIL_CHAIN);
  gtk_test_widget_wait_for_draw (GTK_WIDGET (f->window));
  gtk_widget_activate_action (GTK_WIDGET (area), "cursor.step", "d", 1.0);
  g_assert_true (g_str_has_prefix (reading, "source"));
  gtk_widget_activate_action (GTK_WIDGET (area), "cursor.row", "d", 1.0);
  g_assert_true (g_str_has_prefix (reading, "signal kind"));
}

/* Each field and each scale is named by its label, and each button has a name. */
static void
test_names (Fixture *f, gconstpointer data)
{
  for (guint i = 0; i < BW_N_DETAIL_VALUES; i++)
    {
      GtkWidget *label = gtk_widget_get_first_child (GTK_WIDGET (editor (f, i)));
      GtkScale *scale = bw_move_row_get_scale (row (f, i));
      gtk_test_accessible_assert_relation (GTK_ACCESSIBLE (
                                               bw_editor_row_get_control (editor (f, i))),
                                           GTK_ACCESSIBLE_RELATION_LABELLED_BY, label, NULL);
      if (scale != NULL)
        gtk_test_accessible_assert_relation (GTK_ACCESSIBLE (scale),
                                             GTK_ACCESSIBLE_RELATION_LABELLED_BY, label, NULL);
      g_assert_true (gtk_test_accessible_has_property (GTK_ACCESSIBLE (reset_button (f, i)),
                                                       GTK_ACCESSIBLE_PROPERTY_LABEL));
    }
}

/* With nothing on the bench the page says what to do first. */
static void
test_empty (void)
{
  g_autoptr (BwDocument) document = bw_document_new (app_test_catalogue ());
  BwWindow *window = app_test_window_new (document);

  bw_window_show_page (window, "detail");
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  GtkWidget *first = app_test_find (GTK_WIDGET (
                                        BW_DETAIL_PAGE (bw_window_get_page (window, "detail"))),
                                    GTK_TYPE_BUTTON, "first");
  g_assert_true (gtk_widget_get_mapped (first));
  app_test_close (window);
}

/* Keyboard: real key events to a real window, as no window manager gives it the focus. */

static void
go_to (Fixture *f, GtkWidget *widget)
{
  for (guint i = 0; i < 120 && gtk_window_get_focus (GTK_WINDOW (f->window)) != widget; i++)
    app_test_xdotool ("key Tab");
  g_assert_true (gtk_window_get_focus (GTK_WINDOW (f->window)) == widget);
}

/* With Tab to the scale of the pitch, with the arrows along it, and back with the button beside it:
 * the figures follow, and the focus stays. */
static void
test_keyboard (Fixture *f, gconstpointer data)
{
  GtkWidget *scale = GTK_WIDGET (bw_move_row_get_scale (row (f, BW_DETAIL_PITCH_VALUE)));

  app_test_give_focus (f->window);
  go_to (f, scale);
  select_signal (f, BW_SIGNAL_RGB); /* the way to here leads through the lists of the bench */
  double own = detail (f)->mask_tvl;
  g_autofree char *before = g_strdup (
      bw_path_values_get_summary (bw_path_panel_get_values (f->path)));
  for (guint i = 0; i < 4; i++)
    app_test_xdotool ("key Right Right Right Right Right Right Right Right Right Right");
  g_assert_true (app_test_wait (is_moving, f));
  g_assert_cmpfloat (detail (f)->mask_tvl, <, own);
  g_assert_cmpstr (bw_path_values_get_summary (bw_path_panel_get_values (f->path)), !=, before);
  assert_says_combined (f);
  g_assert_true (gtk_window_get_focus (GTK_WINDOW (f->window)) == scale);

  go_to (f, reset_button (f, BW_DETAIL_PITCH_VALUE));
  app_test_xdotool ("key space");
  g_assert_false (is_moving (f));
  g_assert_cmpstr (bw_path_values_get_summary (bw_path_panel_get_values (f->path)), ==, before);
  g_assert_true (gtk_window_get_focus (GTK_WINDOW (f->window)) == scale);
}

/* The wheel over a scale moves the page, not the value. */
static void
test_wheel (Fixture *f, gconstpointer data)
{
  GtkWidget *scale = GTK_WIDGET (bw_move_row_get_scale (row (f, BW_DETAIL_DIAGONAL)));
  double x, y;

  go_to (f, scale);
  gtk_test_widget_wait_for_draw (GTK_WIDGET (f->window));
  g_assert_true (gtk_widget_translate_coordinates (scale, GTK_WIDGET (f->window), 30, 10, &x, &y));
  g_autofree char *command = g_strdup_printf ("mousemove %d %d click --repeat 2 5", (int) x,
                                              (int) y);
  app_test_xdotool (command);
  g_assert_false (bw_detail_state_any_moved (f->state));
}

#define ADD(name, func) g_test_add ("/detail/" name, Fixture, NULL, set_up, func, tear_down)

int
main (int argc, char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
  ADD ("starts-with-sheet", test_starts_with_sheet);
  ADD ("move-pitch", test_move_pitch);
  ADD ("move-bandwidth", test_move_bandwidth);
  ADD ("move-lead", test_move_lead);
  ADD ("scale", test_scale);
  ADD ("scales-are-allowed", test_scales_are_allowed);
  ADD ("reset", test_reset);
  ADD ("error", test_error);
  ADD ("claim", test_claim);
  ADD ("rgb", test_rgb);
  ADD ("selection", test_selection);
  ADD ("save-as", test_save_as);
  ADD ("export", test_export);
  ADD ("redraws", test_redraws);
  ADD ("cursors", test_cursors);
  ADD ("names", test_names);
  g_test_add_func ("/detail/empty", test_empty);
  ADD ("keyboard", test_keyboard);
  ADD ("wheel", test_wheel);
  return g_test_run ();
}
