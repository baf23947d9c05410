/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "app-hands.h"

#include <string.h>

#include <glib/gstdio.h>

#include "app/hookup/page.h"
#include "app/window/hookup-print.h"
#include "app/hookup/controls.h"

/* The Hook-up page, with its real widgets. */

typedef struct
{
  BwDocument *document;
  BwWindow *window;
  BwHookupPage *page;
} Fixture;

/* Sources and inputs of the sheet with plans of every kind. */
enum
{
  LOUD_COMPUTER,
  TAPE_DECK,
  CONSOLE,
  DE_15_COMPUTER /* its plans have alternatives */
};

enum
{
  SOCKET_21,
  OPEN_BNC
};

static void
set_up (Fixture *f, gconstpointer data)
{
  g_autofree char *path = g_build_filename (g_getenv ("BW_TEST_DATA"), "draw", "plans.bench", NULL);
  f->document = app_test_document_at (path);
  f->window = app_test_window_new (f->document);
  f->page = BW_HOOKUP_PAGE (bw_window_get_page (f->window, "hookup"));
  bw_window_show_page (f->window, "hookup");
  bw_document_select (f->document, LOUD_COMPUTER, SOCKET_21);
  gtk_test_widget_wait_for_draw (GTK_WIDGET (f->window));
}

static void
tear_down (Fixture *f, gconstpointer data)
{
  app_test_close (f->window);
  g_assert_finalize_object (f->document);
}

static GtkDropDown *
drop_down (Fixture *f, const char *name)
{
  return GTK_DROP_DOWN (app_test_find (GTK_WIDGET (f->page), GTK_TYPE_DROP_DOWN, name));
}

static BwHookup *
plan (Fixture *f, const BwHookupChoice *choice)
{
  g_autoptr (GError) error = NULL;
  BwHookup *hookup = bw_hookup_new_chosen (bw_document_get_sheet (f->document),
                                           app_test_catalogue (),
                                           bw_document_get_source (f->document),
                                           bw_document_get_input (f->document), choice, &error);
  g_assert_no_error (error);
  return hookup;
}

/* What stands beside the drawing. */
static const BwNode *
shown (Fixture *f)
{
  return bw_result_root (bw_picture_panel_get_result (bw_page_get_panel (BW_PAGE (f->page))));
}

static guint
count_rows (Fixture *f, const char *key)
{
  return bw_node_find (shown (f), key)->children->len;
}

static gboolean
says (Fixture *f, const char *key, const char *text)
{
  g_autofree char *part = bw_node_to_text (bw_node_find (shown (f), key), 0, FALSE);
  g_autoptr (GString) plain = g_string_new (text);
  g_string_replace (plain, "\u00a0", " ", 0);
  return strstr (part, plain->str) != NULL;
}

static void
assert_shows (Fixture *f, const BwHookupChoice *choice)
{
  g_autoptr (BwHookup) hookup = plan (f, choice);

  g_assert_cmpuint (count_rows (f, "parts"), ==, hookup->parts->len);
  g_assert_cmpuint (count_rows (f, "connections"), ==, hookup->connections->len);
  g_assert_cmpuint (count_rows (f, "chain"), ==, hookup->steps->len);
  for (guint i = 0; i < hookup->parts->len; i++)
    {
      const BwHookupPart *part = hookup->parts->pdata[i];
      g_autofree char *value = bw_quantity_format (part->value_ohm, BW_DIMENSION_RESISTANCE, 3,
                                                   '.');
      g_assert_true (says (f, "parts", part->what));
      if (part->value_ohm > 0)
        g_assert_true (says (f, "parts", value));
    }
  for (guint i = 0; i < hookup->warnings->len; i++)
    g_assert_true (says (f, "warnings", hookup->warnings->pdata[i]));
  g_assert_nonnull (strstr (bw_hookup_page_get_answer (f->page), hookup->source));
}

/* Lists and title follow the selection. */
static void
test_selection (Fixture *f, gconstpointer data)
{
  const BwHookupChoice least = { 0, BW_SERIES_E24, BW_EDITION_CURRENT };
  guint n_sources = bw_document_count (f->document, BW_PART_SOURCE);
  guint n_inputs = bw_document_count (f->document, BW_PART_INPUT);
  for (guint source = 0; source < n_sources; source++)
    for (guint input = 0; input < n_inputs; input++)
      {
        bw_document_select (f->document, source, input);
        assert_shows (f, &least);
        g_assert_true (bw_picture_panel_has_picture (bw_page_get_panel (BW_PAGE (f->page))));
      }
}

/* What was planned is kept until the sheet changes. */
static void
test_plans_are_kept (Fixture *f, gconstpointer data)
{
  guint n = bw_hookup_page_count_plans (f->page);
  bw_document_select (f->document, CONSOLE, OPEN_BNC);
  g_assert_cmpuint (bw_hookup_page_count_plans (f->page), ==, n + 1);
  bw_document_select (f->document, LOUD_COMPUTER, SOCKET_21);
  bw_document_select (f->document, CONSOLE, OPEN_BNC);
  g_assert_cmpuint (bw_hookup_page_count_plans (f->page), ==, n + 1);
  bw_document_duplicate (f->document, BW_PART_SOURCE, TAPE_DECK, NULL);
  g_assert_cmpuint (bw_hookup_page_count_plans (f->page), ==, n + 2);

  bw_window_show_page (f->window, "fit");
  app_test_settle ();
  bw_document_undo (f->document);
  bw_document_select (f->document, TAPE_DECK, SOCKET_21);
  g_assert_cmpuint (bw_hookup_page_count_plans (f->page), ==, n + 2);
  bw_window_show_page (f->window, "hookup");
  app_test_settle ();
  g_assert_cmpuint (bw_hookup_page_count_plans (f->page), ==, n + 3);
}

/* A resistor of another series: 5 V behind 100 Ω into 75 Ω for 0.3 V is 1075 Ω exactly, the nearest
 * of IEC 60063 by ratio are 1 kΩ (E12), 1.1 kΩ (E24) and 1.07 kΩ (E96). */
static void
test_series (Fixture *f, gconstpointer data)
{
  static const char *const values[BW_N_SERIES] = {
    [BW_SERIES_E12] = "1\u00a0kΩ", [BW_SERIES_E24] = "1.1\u00a0kΩ", [BW_SERIES_E96] = "1.07\u00a0kΩ"
  };
  for (guint series = 0; series < BW_N_SERIES; series++)
    {
      const BwHookupChoice choice = { 0, series, BW_EDITION_CURRENT };
      gtk_drop_down_set_selected (drop_down (f, "series"), series);
      assert_shows (f, &choice);
      g_assert_true (says (f, "parts", values[series]));
    }
}

/* The two editions of EN 50049-1: the return of video in is 18 in the later ones, 17 in 1983. */
static void
test_edition (Fixture *f, gconstpointer data)
{
  g_assert_true (says (f, "connections", "shell to pin 18"));
  gtk_drop_down_set_selected (drop_down (f, "edition"), BW_EDITION_1983);
  g_assert_false (says (f, "connections", "shell to pin 18"));
  g_assert_true (says (f, "connections", "shell to pin 17"));

  bw_document_select (f->document, TAPE_DECK, OPEN_BNC);
  g_assert_false (gtk_widget_get_mapped (GTK_WIDGET (drop_down (f, "edition"))));
}

static void
type_length (Fixture *f, const char *text)
{
  BwEditorRow *row = bw_hookup_controls_get_length_row (
      APP_TEST_THE (BW, HOOKUP_CONTROLS, f->page));
  GtkWidget *entry = bw_editor_row_get_control (row);
  gtk_editable_set_text (GTK_EDITABLE (entry), text);
  g_signal_emit_by_name (entry, "activate");
}

static void
test_lead (Fixture *f, gconstpointer data)
{
  BwEditorRow *row = bw_hookup_controls_get_length_row (
      APP_TEST_THE (BW, HOOKUP_CONTROLS, f->page));
  BwHookupView view;

  type_length (f, "10 m");
  g_assert_null (bw_editor_row_get_error (row));
  g_assert_true (bw_hookup_page_get_view (f->page, &view));
  g_assert_true (bw_near (view.lead->lead.length_m, 10, 1e-12));
  g_autofree char *words = bw_hookup_view_lead (&view);
  /* 5.054 ns for each metre of solid polyethylene, 0.66 of the speed of light */
  g_assert_nonnull (strstr (words, "50.5\u00a0ns"));

  type_length (f, "ten");
  g_assert_nonnull (bw_editor_row_get_error (row));
  g_assert_true (bw_hookup_page_get_view (f->page, &view));
  g_assert_true (bw_near (view.lead->lead.length_m, 10, 1e-12));
  type_length (f, "");
  g_assert_null (bw_editor_row_get_error (row));
  g_assert_true (bw_hookup_page_get_view (f->page, &view));
  g_assert_null (bw_hookup_view_lead (&view));
}

/* Another source begins with its least chain again. */
static void
test_restart (Fixture *f, gconstpointer data)
{
  const BwHookupChoice least = { 0, BW_SERIES_E24, BW_EDITION_CURRENT };
  const BwHookupChoice second = { 1, BW_SERIES_E24, BW_EDITION_CURRENT };
  bw_document_select (f->document, DE_15_COMPUTER, OPEN_BNC);
  gtk_drop_down_set_selected (drop_down (f, "alternative"), 1);
  assert_shows (f, &second);
  bw_document_select (f->document, CONSOLE, OPEN_BNC);
  assert_shows (f, &least);
}

/* Without a source there is nothing to plan. */
static void
test_no_source (Fixture *f, gconstpointer data)
{
  while (bw_document_count (f->document, BW_PART_SOURCE) > 0)
    bw_document_remove (f->document, BW_PART_SOURCE, 0);
  app_test_settle ();
  g_assert_false (bw_picture_panel_has_picture (bw_page_get_panel (BW_PAGE (f->page))));
  g_assert_null (bw_hookup_side_dup_parts_csv (bw_hookup_page_get_side (f->page)));
  bw_document_undo (f->document);
  app_test_settle ();
  g_assert_true (bw_picture_panel_has_picture (bw_page_get_panel (BW_PAGE (f->page))));
}

/* What leaves the page */

static void
assert_begins (const char *path, const char *magic)
{
  g_autofree char *bytes = NULL;
  gsize length;
  g_assert_true (g_file_get_contents (path, &bytes, &length, NULL));
  g_assert_cmpuint (length, >, 500);
  g_assert_true (g_str_has_prefix (bytes, magic));
}

static void
test_export (Fixture *f, gconstpointer data)
{
  static const struct
  {
    const char *name;
    const char *magic;
  } kinds[] = { { "hookup.svg", "<?xml" }, { "hookup.pdf", "%PDF" }, { "hookup.png", "\x89PNG" } };
  BwPicturePanel *panel = bw_page_get_panel (BW_PAGE (f->page));
  g_assert_true (bw_window_get_panel (f->window) == panel);
  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
    {
      g_autofree char *path = app_test_scratch_path (kinds[i].name);
      g_autoptr (GError) error = NULL;
      bw_picture_panel_export (panel, path, &error);
      g_assert_no_error (error);
      assert_begins (path, kinds[i].magic);
    }
}

static void
test_print (Fixture *f, gconstpointer data)
{
  g_autofree char *path = app_test_scratch_path ("hookup-print.pdf");
  g_autoptr (GtkPrintOperation) operation = bw_hookup_print_operation_new (f->page, "Title");
  g_autoptr (GError) error = NULL;
  int pages;

  bw_document_select (f->document, CONSOLE, OPEN_BNC); /* does not disturb it */
  gtk_print_operation_set_export_filename (operation, path);
  gtk_print_operation_set_allow_async (operation, FALSE);
  gtk_print_operation_run (operation, GTK_PRINT_OPERATION_ACTION_EXPORT, NULL, &error);
  g_assert_no_error (error);
  g_object_get (operation, "n-pages", &pages, NULL);
  g_assert_cmpint (pages, ==, 1);
  assert_begins (path, "%PDF");
}

static gboolean
is_there (gpointer path)
{
  return g_file_test (path, G_FILE_TEST_EXISTS);
}

/* Presses the button of @name and names @path in the chooser that it opens. */
static void
press_and_choose (Fixture *f, const char *button, const char *path)
{
  g_autoptr (GFile) file = g_file_new_for_path (path);

  g_remove (path); /* of an earlier run */
  g_signal_emit_by_name (app_test_find (GTK_WIDGET (f->page), GTK_TYPE_BUTTON, button), "clicked");
  app_test_choose_name (file);
  g_assert_true (app_test_wait (is_there, (gpointer) path));
}

static void
test_files (Fixture *f, gconstpointer data)
{
  g_autofree char *csv = app_test_scratch_path ("parts.csv");
  g_autofree char *pdf = app_test_scratch_path ("sheet.pdf");
  g_autofree char *expected = bw_hookup_side_dup_parts_csv (bw_hookup_page_get_side (f->page));
  g_autofree char *written = NULL;

  press_and_choose (f, "export-parts", csv);
  g_assert_true (g_file_get_contents (csv, &written, NULL, NULL));
  g_assert_cmpstr (written, ==, expected);
  g_assert_true (g_str_has_prefix (written, "what,ideal_ohm,series,value_ohm,count,price,"
                                            "power_w,rating_w\r\n"));
  g_assert_nonnull (strstr (written, "e24,1100,1,"));
  press_and_choose (f, "export-hookup", pdf);
  assert_begins (pdf, "%PDF");
  g_assert_null (bw_window_get_fault_text (f->window));
}

static void
on_text (GObject *source, GAsyncResult *result, gpointer data)
{
  *(char **) data = gdk_clipboard_read_text_finish (GDK_CLIPBOARD (source), result, NULL);
}

static gboolean
is_read (gpointer data)
{
  return *(char **) data != NULL;
}

static void
test_copy (Fixture *f, gconstpointer data)
{
  GtkWidget *button = app_test_find (GTK_WIDGET (f->page), GTK_TYPE_BUTTON, "copy-parts");
  g_autofree char *expected = bw_hookup_side_dup_parts_csv (bw_hookup_page_get_side (f->page));
  char *text = NULL;

  g_signal_emit_by_name (button, "clicked");
  gdk_clipboard_read_text_async (gtk_widget_get_clipboard (button), NULL, on_text, &text);
  g_assert_true (app_test_wait (is_read, &text));
  g_assert_cmpstr (text, ==, expected);
  g_free (text);
}

/* By keyboard alone: real key events from xdotool to a real window. */

static gboolean
second_is_shown (gpointer data)
{
  Fixture *f = data;
  return gtk_drop_down_get_selected (drop_down (f, "alternative")) == 1;
}

/* The chain is reached with the Tab key, and another one is chosen with the arrow keys. */
static void
test_keyboard (Fixture *f, gconstpointer data)
{
  const BwHookupChoice second = { 1, BW_SERIES_E24, BW_EDITION_CURRENT };
  GtkWidget *wanted = GTK_WIDGET (drop_down (f, "alternative"));
  GtkWidget *at = NULL;

  bw_document_select (f->document, DE_15_COMPUTER, OPEN_BNC);
  g_autofree char *before = bw_hookup_side_dup_parts_csv (bw_hookup_page_get_side (f->page));
  app_test_give_focus (f->window);
  for (guint i = 0; i < 80; i++)
    {
      at = gtk_window_get_focus (GTK_WINDOW (f->window));
      if (at != NULL && (at == wanted || gtk_widget_is_ancestor (at, wanted)))
        break;
      app_test_xdotool ("key Tab");
      bw_document_select (f->document, DE_15_COMPUTER, OPEN_BNC); /* the bench selects on the way */
    }
  g_assert_true (at == wanted || gtk_widget_is_ancestor (at, wanted));
  app_test_xdotool ("key space");
  app_test_xdotool ("key Down");
  app_test_xdotool ("key Return");
  g_assert_true (app_test_wait (second_is_shown, f));
  g_autofree char *after = bw_hookup_side_dup_parts_csv (bw_hookup_page_get_side (f->page));
  g_assert_cmpstr (after, !=, before);
  assert_shows (f, &second);
}

/* Every control has a name for a screen reader. */
static void
test_accessible (Fixture *f, gconstpointer data)
{
  static const char *const names[] = { "alternative", "series", "edition", "lead" };
  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    g_assert_true (gtk_test_accessible_has_relation (GTK_ACCESSIBLE (drop_down (f, names[i])),
                                                     GTK_ACCESSIBLE_RELATION_LABELLED_BY));
  GtkWidget *view = app_test_find (GTK_WIDGET (f->page), BW_TYPE_RESULT_VIEW, "table");
  gtk_test_accessible_assert_property (GTK_ACCESSIBLE (
                                           app_test_find (view, GTK_TYPE_LIST_BOX, NULL)),
                                       GTK_ACCESSIBLE_PROPERTY_LABEL, "Figures");
}

int
main (int argc, char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
#define ADD(name, function) g_test_add (name, Fixture, NULL, set_up, function, tear_down)
  ADD ("/hookup/selection", test_selection);
  ADD ("/hookup/plans-are-kept", test_plans_are_kept);
  ADD ("/hookup/series", test_series);
  ADD ("/hookup/edition", test_edition);
  ADD ("/hookup/lead", test_lead);
  ADD ("/hookup/restart", test_restart);
  ADD ("/hookup/no-source", test_no_source);
  ADD ("/hookup/export", test_export);
  ADD ("/hookup/print", test_print);
  ADD ("/hookup/files", test_files);
  ADD ("/hookup/copy", test_copy);
  ADD ("/hookup/keyboard", test_keyboard);
  ADD ("/hookup/accessible", test_accessible);
  return g_test_run ();
}
