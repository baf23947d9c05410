/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "app-test.h"

#include <string.h>

#include "app/widgets/picker.h"
#include "app/fit/grid.h"
#include "app/fit/page.h"

/* The form at the left, by its widgets. */

typedef AppTestWindow Fixture;

static GtkWidget *
control (Fixture *f, const char *key)
{
  return bw_editor_row_get_control (bw_editor_get_row (bw_window_get_editor (f->window), key));
}

static const char *
error_at (Fixture *f, const char *key)
{
  return bw_editor_row_get_error (bw_editor_get_row (bw_window_get_editor (f->window), key));
}

/* Types @text into the entry of @key and presses Enter. */
static void
enter (Fixture *f, const char *key, const char *text)
{
  gtk_editable_set_text (GTK_EDITABLE (control (f, key)), text);
  g_signal_emit_by_name (control (f, key), "activate");
}

static GtkCheckButton *
check_button (Fixture *f, const char *key, guint kind)
{
  GtkWidget *child = gtk_widget_get_first_child (control (f, key));
  for (; kind > 0; kind--)
    child = gtk_widget_get_next_sibling (child);
  return GTK_CHECK_BUTTON (child);
}

static BwFitCell *
cell (Fixture *f, guint source, guint input)
{
  return bw_fit_grid_get_cell (APP_TEST_THE (BW, FIT_GRID,
                                             BW_FIT_PAGE (bw_window_get_page (f->window, "fit"))),
                               source, input);
}

/* Every field of every part has its row, and the row shows what the sheet holds. */
static void
test_forms (Fixture *f, gconstpointer data)
{
  for (BwPart part = BW_PART_SHEET; part <= BW_PART_SOURCE; part++)
    {
      const BwFieldTable *table = bw_part_fields (part);
      bw_window_edit (f->window, part);
      gtk_test_widget_wait_for_draw (GTK_WIDGET (f->window));
      for (guint i = 0; i < table->n; i++)
        {
          BwEditorRow *row = bw_editor_get_row (bw_window_get_editor (f->window), table->at[i].key);
          g_assert_nonnull (row);
          g_autofree char *shown = bw_editor_row_dup_text (row);
          g_autofree char *held = bw_field_to_entry (&table->at[i],
                                                     bw_document_get_object (f->document, part, 0),
                                                     bw_quantity_locale_mark ());
          g_assert_cmpstr (shown, ==, held);
          g_assert_false (bw_editor_row_is_edited (row));
        }
      g_assert_true (bw_editor_finish (bw_window_get_editor (f->window)));
      g_assert_false (bw_window_is_editing (f->window));
    }
  g_assert_false (bw_document_is_modified (f->document));
}

/* Another raster, picked from the list by its name, changes the cell at once; undo brings it back. */
static void
test_raster (Fixture *f, gconstpointer data)
{
  g_autofree char *before = g_strdup (bw_fit_cell_get_word (cell (f, 0, 0)));

  bw_window_edit (f->window, BW_PART_SOURCE);
  GtkWidget *picker = GTK_WIDGET (
      gtk_menu_button_get_popover (GTK_MENU_BUTTON (control (f, "raster"))));
  gtk_menu_button_popup (GTK_MENU_BUTTON (control (f, "raster")));
  GtkWidget *search = app_test_find (picker, GTK_TYPE_SEARCH_ENTRY, NULL);
  gtk_editable_set_text (GTK_EDITABLE (search), "1280x1024 85");
  g_signal_emit_by_name (search, "activate");

  const BwSource *source = bw_sheet_source (bw_document_get_sheet (f->document), 0);
  g_assert_cmpstr (source->raster, !=, "525-59.94-interlaced");
  /* 91 kHz: far above every band of the set */
  g_assert_cmpstr (bw_fit_cell_get_word (cell (f, 0, 0)), ==, "no");
  g_assert_cmpstr (bw_fit_cell_get_word (cell (f, 0, 0)), !=, before);

  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (f->window), "win.undo", NULL));
  g_assert_cmpstr (bw_fit_cell_get_word (cell (f, 0, 0)), ==, before);
  g_autofree char *shown = bw_editor_row_dup_text (
      bw_editor_get_row (bw_window_get_editor (f->window), "raster"));
  g_assert_cmpstr (shown, ==, "525-59.94-interlaced");
}

static void
test_entry (Fixture *f, gconstpointer data)
{
  g_assert_cmpstr (bw_fit_cell_get_word (cell (f, 2, 2)), ==, "direct");
  bw_window_edit (f->window, BW_PART_MONITOR);
  enter (f, "line_rates", "40khz..41 kHz");
  g_assert_null (error_at (f, "line_rates"));
  g_assert_cmpfloat (bw_document_get_sheet (f->document)->monitor->line_rates_hz.at[0].low, ==,
                     40000);
  /* It is shown as it was understood */
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (control (f, "line_rates"))), ==,
                   "40 kHz .. 41 kHz");
  /* The first input has bands of its own, so that nothing changes there; the third has none. */
  g_assert_cmpstr (bw_fit_cell_get_word (cell (f, 0, 0)), ==, "direct");
  g_assert_cmpstr (bw_fit_cell_get_word (cell (f, 2, 2)), ==, "with parts");
}

static void
test_entry_error (Fixture *f, gconstpointer data)
{
  g_autofree char *before = app_test_sheet_text (f->document);

  bw_window_edit (f->window, BW_PART_MONITOR);
  enter (f, "diagonal", "19 kHz");
  g_assert_nonnull (error_at (f, "diagonal"));
  g_assert_nonnull (strstr (error_at (f, "diagonal"), "kHz"));
  g_assert_true (gtk_widget_has_css_class (control (f, "diagonal"), "error"));
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (control (f, "diagonal"))), ==, "19 kHz");
  g_autofree char *after = app_test_sheet_text (f->document);
  g_assert_cmpstr (after, ==, before);

  /* The form is not left with something not taken; a change elsewhere does not wipe it out */
  g_assert_false (bw_editor_finish (bw_window_get_editor (f->window)));
  g_assert_true (bw_window_is_editing (f->window));
  enter (f, "name", "Other name");
  g_assert_cmpstr (bw_document_get_sheet (f->document)->monitor->name, ==, "Other name");
  g_assert_nonnull (error_at (f, "diagonal"));

  /* Taken back */
  bw_editor_row_reset (bw_editor_get_row (bw_window_get_editor (f->window), "diagonal"));
  g_assert_null (error_at (f, "diagonal"));
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (control (f, "diagonal"))), ==, "19 in");
  g_assert_false (gtk_widget_has_css_class (control (f, "diagonal"), "error"));
  g_assert_true (bw_editor_finish (bw_window_get_editor (f->window)));
}

/* Corrected instead */
static void
test_entry_corrected (Fixture *f, gconstpointer data)
{
  bw_window_edit (f->window, BW_PART_MONITOR);
  enter (f, "diagonal", "20");
  g_assert_nonnull (error_at (f, "diagonal"));
  enter (f, "diagonal", "20 in");
  g_assert_null (error_at (f, "diagonal"));
  g_assert_true (bw_near (bw_document_get_sheet (f->document)->monitor->diagonal_m, 0.508, 1e-12));
}

/* Source 1 of the sheet is composite with sync in it. As RGB with sync on green it needs three
 * fields changed, of which no single one is sound: they are taken when the last suits the rest. */
static void
test_fields_that_suit_each_other (Fixture *f, gconstpointer data)
{
  bw_window_edit (f->window, BW_PART_SOURCE);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (control (f, "signal")), BW_SIGNAL_RGB);
  g_assert_nonnull (error_at (f, "signal"));
  const BwSource *source = bw_sheet_source (bw_document_get_sheet (f->document), 0);
  g_assert_cmpuint (source->signal, ==, BW_SIGNAL_COMPOSITE);

  gtk_drop_down_set_selected (GTK_DROP_DOWN (control (f, "system")), BW_SYSTEM_NONE);
  g_assert_null (error_at (f, "signal"));
  g_assert_null (error_at (f, "system"));
  gtk_check_button_set_active (check_button (f, "syncs", BW_SYNC_ON_GREEN), TRUE);
  gtk_check_button_set_active (check_button (f, "syncs", BW_SYNC_IN_VIDEO), FALSE);
  g_assert_null (error_at (f, "syncs"));

  source = bw_sheet_source (bw_document_get_sheet (f->document), 0);
  g_assert_cmpuint (source->signal, ==, BW_SIGNAL_RGB);
  g_assert_cmpuint (source->system, ==, BW_SYSTEM_NONE);
  g_assert_cmpuint (source->syncs, ==, BW_BIT (BW_SYNC_ON_GREEN));
}

static void
test_set (Fixture *f, gconstpointer data)
{
  bw_window_edit (f->window, BW_PART_INPUT);
  for (guint i = 0; i < BW_N_SCANS; i++)
    gtk_check_button_set_active (check_button (f, "scans", i), FALSE);
  g_assert_null (error_at (f, "scans"));
  g_assert_cmpuint (bw_monitor_input (bw_document_get_sheet (f->document)->monitor, 0)->scans, ==,
                    0); /* none is ticked: it is not known which */
  gtk_check_button_set_active (check_button (f, "scans", BW_SCAN_PROGRESSIVE), TRUE);
  g_assert_null (error_at (f, "scans"));
  g_assert_cmpuint (bw_monitor_input (bw_document_get_sheet (f->document)->monitor, 0)->scans, ==,
                    BW_BIT (BW_SCAN_PROGRESSIVE));
}

static void
test_switch (Fixture *f, gconstpointer data)
{
  gboolean before = bw_document_get_sheet (f->document)->monitor->wide_switch;

  bw_window_edit (f->window, BW_PART_MONITOR);
  GtkDropDown *list = GTK_DROP_DOWN (control (f, "wide_switch")); /* no, yes, not known */
  gtk_drop_down_set_selected (list, !before);
  g_assert_cmpint (bw_document_get_sheet (f->document)->monitor->wide_switch, ==, !before);
  gtk_drop_down_set_selected (list, BW_SWITCH_UNKNOWN);
  g_assert_cmpint (bw_document_get_sheet (f->document)->monitor->wide_switch, ==,
                   BW_SWITCH_UNKNOWN);
  g_assert_true (bw_document_undo (f->document));
  g_assert_true (bw_document_undo (f->document));
  g_assert_cmpint (gtk_drop_down_get_selected (list), ==, before);
  g_assert_false (bw_document_undo (f->document)); /* showing it made no step of its own */
}

/* The form follows the selection, and goes when there is nothing to edit. */
static void
test_follows (Fixture *f, gconstpointer data)
{
  bw_window_edit (f->window, BW_PART_SOURCE);
  bw_document_select (f->document, 2, 0);
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (control (f, "name"))), ==,
                   bw_sheet_source (bw_document_get_sheet (f->document), 2)->name);
  enter (f, "name", "Third");
  g_assert_cmpstr (bw_sheet_source (bw_document_get_sheet (f->document), 2)->name, ==, "Third");
  while (bw_document_count (f->document, BW_PART_SOURCE) > 0)
    bw_document_remove (f->document, BW_PART_SOURCE, 0);
  g_assert_false (bw_window_is_editing (f->window));
}

#define ADD(name, func)                                                                            \
  g_test_add ("/editor/" name, Fixture, NULL, app_test_set_up, func, app_test_tear_down)

int
main (int argc, char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
  ADD ("forms", test_forms);
  ADD ("raster", test_raster);
  ADD ("entry", test_entry);
  ADD ("entry-error", test_entry_error);
  ADD ("entry-corrected", test_entry_corrected);
  ADD ("fields-that-suit-each-other", test_fields_that_suit_each_other);
  ADD ("set", test_set);
  ADD ("switch", test_switch);
  ADD ("follows", test_follows);
  return g_test_run ();
}
