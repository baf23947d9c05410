/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "app-test.h"

#include <string.h>

#include <glib/gstdio.h>

/* The document: what is edited, what is refused, the way back, and files. */

static void
count_signal (guint *count)
{
  (*count)++;
}

/* Edits the field and requires that it is taken. */
static void
edit (BwDocument *document, BwPart part, guint index, const char *key, const char *text)
{
  g_autoptr (GError) error = NULL;
  gboolean taken = bw_document_set_field (document, part, index, app_test_field (part, key), text,
                                          '.', &error);
  g_assert_no_error (error);
  g_assert_true (taken);
}

static void
test_blank (void)
{
  BwDocument *document = bw_document_new (app_test_catalogue ());
  g_autofree char *name = bw_document_dup_name (document);

  g_assert_true (bw_document_is_blank (document));
  g_assert_false (bw_document_is_modified (document));
  g_assert_cmpuint (bw_document_get_source (document), ==, BW_NO_INDEX);
  g_assert_cmpuint (bw_document_get_input (document), ==, BW_NO_INDEX);
  g_assert_null (bw_document_undo_words (document));
  g_assert_false (bw_document_undo (document));
  g_assert_false (bw_document_redo (document));
  g_assert_cmpstr (name, ==, "New bench sheet");
  g_assert_finalize_object (document);
}

static void
test_edit_and_undo (void)
{
  BwDocument *document = app_test_document ();
  g_autofree char *before = app_test_sheet_text (document);
  guint changes = 0;
  g_signal_connect_swapped (document, "changed", G_CALLBACK (count_signal), &changes);

  edit (document, BW_PART_MONITOR, 0, "line_rates", "15 kHz .. 17 kHz");
  g_autofree char *after = app_test_sheet_text (document);
  const BwMonitor *monitor = bw_document_get_sheet (document)->monitor;
  g_assert_cmpuint (monitor->line_rates_hz.n, ==, 1);
  g_assert_cmpfloat (monitor->line_rates_hz.at[0].high, ==, 17000);
  g_assert_true (bw_document_is_modified (document));
  g_assert_nonnull (strstr (bw_document_undo_words (document), "Line rates"));
  g_assert_cmpuint (changes, ==, 1);

  g_assert_true (bw_document_undo (document));
  g_autofree char *undone = app_test_sheet_text (document);
  g_assert_cmpstr (undone, ==, before);
  g_assert_false (bw_document_is_modified (document));
  g_assert_null (bw_document_undo_words (document));
  g_assert_nonnull (strstr (bw_document_redo_words (document), "Line rates"));

  g_assert_true (bw_document_redo (document));
  g_autofree char *redone = app_test_sheet_text (document);
  g_assert_cmpstr (redone, ==, after);
  g_assert_true (bw_document_is_modified (document));
  g_assert_cmpuint (changes, ==, 3);
  g_assert_finalize_object (document);
}

static void
test_no_change_no_step (void)
{
  BwDocument *document = app_test_document ();
  const BwField *field = app_test_field (BW_PART_MONITOR, "line_rates");
  g_autofree char *shown = bw_field_to_entry (field, bw_document_get_sheet (document)->monitor,
                                              '.');
  guint changes = 0;
  g_signal_connect_swapped (document, "changed", G_CALLBACK (count_signal), &changes);

  edit (document, BW_PART_MONITOR, 0, "line_rates", shown);
  g_assert_cmpuint (changes, ==, 0);
  g_assert_null (bw_document_undo_words (document));
  g_assert_false (bw_document_is_modified (document));
  g_assert_finalize_object (document);
}

/* A change after undo leaves nothing to redo. */
static void
test_edit_after_undo (void)
{
  BwDocument *document = app_test_document ();

  edit (document, BW_PART_SHEET, 0, "title", "First");
  g_assert_true (bw_document_undo (document));
  edit (document, BW_PART_SHEET, 0, "title", "Second");
  g_assert_null (bw_document_redo_words (document));
  g_assert_false (bw_document_redo (document));
  g_assert_true (bw_document_is_modified (document));
  g_assert_finalize_object (document);
}

/* What must be refused, why, and a word that the message must hold. */
static const struct
{
  BwPart part;
  const char *key;
  const char *text;
  GQuark (*domain) (void);
  int code;
  const char *word;
} refused[] = {
  { BW_PART_SHEET, "title", "", bw_field_error_quark, BW_FIELD_ERROR_MISSING, "needed" },
  { BW_PART_SHEET, "supply_frequency", "50 V", bw_quantity_error_quark, BW_QUANTITY_ERROR_UNIT,
    "Hz" },
  { BW_PART_SHEET, "level_margin", "-1 %", bw_field_error_quark, BW_FIELD_ERROR_RANGE,
    "out of range" },
  { BW_PART_MONITOR, "diagonal", "20", bw_quantity_error_quark, BW_QUANTITY_ERROR_NO_UNIT, "unit" },
  { BW_PART_MONITOR, "diagonal", "20 kHz", bw_quantity_error_quark, BW_QUANTITY_ERROR_UNIT,
    "allowed" },
  { BW_PART_MONITOR, "aspect", "four to three", bw_field_error_quark, BW_FIELD_ERROR_VALUE, "4:3" },
  { BW_PART_MONITOR, "line_rates", "16 kHz .. 15 kHz", bw_quantity_error_quark,
    BW_QUANTITY_ERROR_RANGE, "16" },
  { BW_PART_MONITOR, "mains_voltage", "100 V .. 120 V; 200 V .. 240 V", bw_field_error_quark,
    BW_FIELD_ERROR_VALUE, "one" },
  { BW_PART_MONITOR, "mask", "mesh", bw_field_error_quark, BW_FIELD_ERROR_KIND, "grille" },
  { BW_PART_INPUT, "video_level", "7 km", bw_quantity_error_quark, BW_QUANTITY_ERROR_UNIT, "V" },
  { BW_PART_INPUT, "syncs", "on-y", bw_monitor_error_quark, BW_MONITOR_ERROR_INPUT_SYNC,
    "cannot come with" },
  { BW_PART_SOURCE, "raster", "no-such-raster", bw_document_error_quark, BW_DOCUMENT_ERROR_RASTER,
    "catalogue" },
  { BW_PART_SOURCE, "syncs", "on-y", bw_source_error_quark, BW_SOURCE_ERROR_SYNC,
    "cannot come with" },
  { BW_PART_SOURCE, "system", "pal-z", bw_field_error_quark, BW_FIELD_ERROR_KIND, "pal-b" },
  { BW_PART_SOURCE, "dc_offset", "1 V", bw_source_error_quark, BW_SOURCE_ERROR_COUPLING,
    "a.c." }, /* source 1 of the sheet is a.c. coupled */
  { BW_PART_SOURCE, "aspect", "4:0", bw_field_error_quark, BW_FIELD_ERROR_VALUE, "4:3" },
};

static void
test_refused (gconstpointer data)
{
  guint i = GPOINTER_TO_UINT (data);
  BwDocument *document = app_test_document ();
  g_autofree char *before = app_test_sheet_text (document);
  g_autoptr (GError) error = NULL;
  guint changes = 0;
  g_signal_connect_swapped (document, "changed", G_CALLBACK (count_signal), &changes);

  g_assert_false (bw_document_set_field (document, refused[i].part, 0,
                                         app_test_field (refused[i].part, refused[i].key),
                                         refused[i].text, '.', &error));
  g_assert_error (error, refused[i].domain (), refused[i].code);
  g_assert_nonnull (strstr (error->message, refused[i].word));

  g_autofree char *after = app_test_sheet_text (document);
  g_assert_cmpstr (after, ==, before);
  g_assert_cmpuint (changes, ==, 0);
  g_assert_null (bw_document_undo_words (document));
  g_assert_false (bw_document_is_modified (document));
  g_assert_finalize_object (document);
}

/* Two fields that only suit each other are refused one by one and taken together, as one step. */
static void
test_edit_together (void)
{
  BwDocument *document = app_test_document ();
  g_autofree char *before = app_test_sheet_text (document);
  BwEdit edits[] = { { app_test_field (BW_PART_SOURCE, "signal"), "rgb" },
                     { app_test_field (BW_PART_SOURCE, "system"), "none" },
                     { app_test_field (BW_PART_SOURCE, "syncs"), "on-green" } };

  g_assert_false (bw_document_edit (document, BW_PART_SOURCE, 0, &edits[0], 1, '.', NULL));
  g_assert_false (bw_document_edit (document, BW_PART_SOURCE, 0, &edits[2], 1, '.', NULL));
  g_autofree char *refused_text = app_test_sheet_text (document);
  g_assert_cmpstr (refused_text, ==, before);

  g_assert_true (bw_document_edit (document, BW_PART_SOURCE, 0, edits, 3, '.', NULL));
  const BwSource *source = bw_sheet_source (bw_document_get_sheet (document), 0);
  g_assert_cmpuint (source->signal, ==, BW_SIGNAL_RGB);
  g_assert_cmpuint (source->syncs, ==, BW_BIT (BW_SYNC_ON_GREEN));
  g_assert_true (bw_document_undo (document));
  g_autofree char *undone = app_test_sheet_text (document);
  g_assert_cmpstr (undone, ==, before);
  g_assert_false (bw_document_undo (document));
  g_assert_finalize_object (document);
}

/* The decimal mark of the person's language is read at the field. */
static void
test_decimal_comma (void)
{
  BwDocument *document = app_test_document ();
  const BwField *field = app_test_field (BW_PART_MONITOR, "pitch");

  g_assert_true (bw_document_set_field (document, BW_PART_MONITOR, 0, field, "0,25 mm", ',', NULL));
  g_assert_cmpfloat (bw_document_get_sheet (document)->monitor->pitch_m, ==, 0.25e-3);
  g_assert_finalize_object (document);
}

static void
test_duplicate_and_remove (void)
{
  BwDocument *document = app_test_document ();
  g_autofree char *before = app_test_sheet_text (document);
  guint n = bw_document_count (document, BW_PART_SOURCE);

  bw_document_select (document, 2, 1);
  g_assert_true (bw_document_duplicate (document, BW_PART_SOURCE, 2, NULL));
  g_assert_cmpuint (bw_document_count (document, BW_PART_SOURCE), ==, n + 1);
  g_assert_cmpuint (bw_document_get_source (document), ==, 3);
  const BwSheet *sheet = bw_document_get_sheet (document);
  const BwSource *copy = bw_sheet_source (sheet, 3);
  g_assert_cmpstr (copy->name, !=, bw_sheet_source (sheet, 2)->name);
  g_assert_true (g_str_has_prefix (copy->name, bw_sheet_source (sheet, 2)->name));
  g_assert_cmpstr (copy->raster, ==, bw_sheet_source (sheet, 2)->raster);
  g_assert_null (copy->group);

  bw_document_remove (document, BW_PART_SOURCE, 0);
  g_assert_cmpuint (bw_document_get_source (document), ==, 2); /* still the copy */
  bw_document_remove (document, BW_PART_SOURCE, 2);
  g_assert_cmpuint (bw_document_count (document, BW_PART_SOURCE), ==, n - 1);

  while (bw_document_undo (document))
    ;
  g_autofree char *undone = app_test_sheet_text (document);
  g_assert_cmpstr (undone, ==, before);
  g_assert_cmpuint (bw_document_get_source (document), ==, 2);
  g_assert_cmpuint (bw_document_get_input (document), ==, 1);
  g_assert_finalize_object (document);
}

static void
test_add (void)
{
  BwDocument *document = app_test_document ();
  guint n = bw_document_count (document, BW_PART_SOURCE);
  GPtrArray *sources = bw_catalogue_sources (app_test_catalogue ());
  g_autoptr (BwSource) unsound = bw_source_new ();
  g_autoptr (BwInput) empty = bw_input_new ();

  g_assert_cmpuint (sources->len, >, 0);
  g_assert_true (bw_document_add_source (document, sources->pdata[0], NULL));
  g_assert_true (bw_document_add_source (document, sources->pdata[0], NULL));
  const BwSheet *sheet = bw_document_get_sheet (document);
  g_assert_cmpuint (sheet->sources->len, ==, n + 2);
  g_assert_cmpuint (bw_document_get_source (document), ==, n + 1);
  g_assert_cmpstr (bw_sheet_source (sheet, n)->name, !=, bw_sheet_source (sheet, n + 1)->name);
  g_assert_null (bw_sheet_source (sheet, n)->id);

  g_free (unsound->raster);
  unsound->raster = g_strdup ("no-such-raster");
  empty->signals = BW_BIT (BW_SIGNAL_LUMA);
  empty->syncs = BW_BIT (BW_SYNC_SEPARATE) | BW_BIT (BW_SYNC_ON_GREEN);
  g_assert_false (bw_document_add_source (document, unsound, NULL));
  g_assert_false (bw_document_add_input (document, empty, NULL));
  g_assert_cmpuint (bw_document_count (document, BW_PART_SOURCE), ==, n + 2);
  g_assert_finalize_object (document);
}

static void
test_inputs_are_limited (void)
{
  BwDocument *document = app_test_document ();
  g_autoptr (GError) error = NULL;

  while (bw_document_count (document, BW_PART_INPUT) < BW_SHEET_MAX_INPUTS)
    g_assert_true (bw_document_duplicate (document, BW_PART_INPUT, 0, NULL));
  g_assert_false (bw_document_duplicate (document, BW_PART_INPUT, 0, &error));
  g_assert_error (error, BW_DOCUMENT_ERROR, BW_DOCUMENT_ERROR_TOO_MANY);
  g_assert_cmpuint (bw_document_count (document, BW_PART_INPUT), ==, BW_SHEET_MAX_INPUTS);
  g_assert_finalize_object (document);
}

static void
test_choose_monitor (void)
{
  BwDocument *document = bw_document_new (app_test_catalogue ());
  const BwMonitor *monitor = bw_catalogue_monitors (app_test_catalogue ())->pdata[0];

  bw_document_set_monitor (document, monitor);
  g_assert_false (bw_document_is_blank (document));
  g_assert_cmpuint (bw_document_count (document, BW_PART_INPUT), ==, monitor->inputs->len);
  g_assert_cmpuint (bw_document_get_input (document), ==, 0);
  g_assert_cmpuint (bw_document_get_source (document), ==, BW_NO_INDEX);
  g_assert_true (bw_document_undo (document));
  g_assert_true (bw_document_is_blank (document));
  g_assert_finalize_object (document);
}

static void
test_selection (void)
{
  BwDocument *document = app_test_document ();
  guint sources = bw_document_count (document, BW_PART_SOURCE);
  guint inputs = bw_document_count (document, BW_PART_INPUT);
  guint selections = 0;
  g_signal_connect_swapped (document, "selection-changed", G_CALLBACK (count_signal), &selections);

  bw_document_select (document, 1, 2);
  g_assert_cmpuint (selections, ==, 1);
  bw_document_select (document, 1, 2);
  g_assert_cmpuint (selections, ==, 1);
  bw_document_select (document, 10000, 10000);
  g_assert_cmpuint (bw_document_get_source (document), ==, sources - 1);
  g_assert_cmpuint (bw_document_get_input (document), ==, inputs - 1);
  g_assert_false (bw_document_is_modified (document));

  while (bw_document_count (document, BW_PART_SOURCE) > 0)
    bw_document_remove (document, BW_PART_SOURCE, 0);
  g_assert_cmpuint (bw_document_get_source (document), ==, BW_NO_INDEX);
  g_assert_finalize_object (document);
}

/* However the sheet was changed, undoing all of it gives the first state, redoing the last. */
static void
test_way_back (void)
{
  static const char *const titles[] = { "One", "Two", "Three", "Four" };
  BwDocument *document = app_test_document ();
  g_autofree char *before = app_test_sheet_text (document);
  guint steps = 0;

  for (guint i = 0; i < 80; i++)
    {
      guint n = bw_document_count (document, BW_PART_SOURCE);
      guint pick = (guint) g_test_rand_int_range (0, (gint) n);
      switch (g_test_rand_int_range (0, 3))
        {
        case 0:
          g_assert_true (bw_document_duplicate (document, BW_PART_SOURCE, pick, NULL));
          break;
        case 1:
          if (n > 1)
            bw_document_remove (document, BW_PART_SOURCE, pick);
          break;
        default:
          edit (document, BW_PART_SHEET, 0, "title", titles[i % G_N_ELEMENTS (titles)]);
          break;
        }
    }
  g_autofree char *after = app_test_sheet_text (document);
  for (; bw_document_undo (document); steps++)
    ;
  g_autofree char *undone = app_test_sheet_text (document);
  g_assert_cmpstr (undone, ==, before);
  g_assert_false (bw_document_is_modified (document));
  g_assert_cmpuint (steps, >, 20);
  while (bw_document_redo (document))
    ;
  g_autofree char *redone = app_test_sheet_text (document);
  g_assert_cmpstr (redone, ==, after);
  g_assert_finalize_object (document);
}

static void
test_undo_is_limited (void)
{
  BwDocument *document = app_test_document ();
  guint steps = 0;

  for (guint i = 0; i < 130; i++)
    {
      g_autofree char *title = g_strdup_printf ("Title %u", i);
      edit (document, BW_PART_SHEET, 0, "title", title);
    }
  for (; bw_document_undo (document); steps++)
    ;
  g_assert_cmpuint (steps, ==, 100);
  g_assert_cmpstr (bw_document_get_sheet (document)->title, ==, "Title 29");
  g_assert_true (bw_document_is_modified (document));
  g_assert_finalize_object (document);
}

/* Files */

static void
test_save_and_load (void)
{
  BwDocument *document = app_test_document ();
  BwDocument *again = bw_document_new (app_test_catalogue ());
  g_autofree char *path = app_test_scratch_path ("save.bench");
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GPtrArray) faults = g_ptr_array_new_with_free_func ((GDestroyNotify) g_error_free);
  g_autoptr (GError) error = NULL;
  guint saves = 0;
  g_signal_connect_swapped (document, "saved", G_CALLBACK (count_signal), &saves);

  edit (document, BW_PART_SOURCE, 1, "name", "Renamed");
  g_assert_true (bw_document_duplicate (document, BW_PART_SOURCE, 1, NULL));
  g_assert_true (bw_document_save (document, file, &error));
  g_assert_no_error (error);
  g_assert_cmpuint (saves, ==, 1);
  g_assert_false (bw_document_is_modified (document));
  g_assert_true (g_file_equal (bw_document_get_file (document), file));

  g_assert_true (bw_document_load (again, file, faults));
  g_assert_cmpuint (faults->len, ==, 0);
  const BwSheet *a = bw_document_get_sheet (document), *b = bw_document_get_sheet (again);
  g_assert_cmpuint (a->sources->len, ==, b->sources->len);
  for (guint i = 0; i < a->sources->len; i++)
    g_assert_true (
        bw_fields_equal (&bw_source_fields, bw_sheet_source (a, i), bw_sheet_source (b, i)));
  g_assert_true (bw_fields_equal (&bw_monitor_fields, a->monitor, b->monitor));

  /* What is saved is one state of several: going back from it is a change, and so is more. */
  g_assert_true (bw_document_undo (document));
  g_assert_true (bw_document_is_modified (document));
  g_assert_true (bw_document_redo (document));
  g_assert_false (bw_document_is_modified (document));
  g_assert_finalize_object (document);
  g_assert_finalize_object (again);
}

static void
test_save_fails (void)
{
  BwDocument *document = app_test_document ();
  g_autoptr (GFile) old = g_object_ref (bw_document_get_file (document));
  g_autofree char *path = app_test_scratch_path ("no-such-folder/save.bench");
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GFile) remote = g_file_new_for_uri ("https://example.invalid/sheet.bench");
  g_autoptr (GError) error = NULL;

  edit (document, BW_PART_SHEET, 0, "title", "Changed");
  g_assert_false (bw_document_save (document, file, &error));
  g_assert_error (error, BW_SHEET_ERROR, BW_SHEET_ERROR_WRITE);
  g_clear_error (&error);
  g_assert_false (bw_document_save (document, remote, &error));
  g_assert_error (error, BW_DOCUMENT_ERROR, BW_DOCUMENT_ERROR_NOT_LOCAL);
  g_assert_true (bw_document_is_modified (document));
  g_assert_true (g_file_equal (bw_document_get_file (document), old));
  g_assert_finalize_object (document);
}

static void
test_load_fails (void)
{
  BwDocument *document = app_test_document ();
  g_autofree char *before = app_test_sheet_text (document);
  g_autofree char *path = app_test_scratch_path ("newer.bench");
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GPtrArray) faults = g_ptr_array_new_with_free_func ((GDestroyNotify) g_error_free);
  const char *newer = "[bench-sheet]\nformat=999\ntitle=Newer\n";

  g_assert_true (g_file_set_contents (path, newer, -1, NULL));
  edit (document, BW_PART_SHEET, 0, "title", "Changed");
  g_assert_false (bw_document_load (document, file, faults));
  g_assert_cmpuint (faults->len, ==, 1);
  g_assert_error ((GError *) faults->pdata[0], BW_SHEET_ERROR, BW_SHEET_ERROR_NEWER);
  g_assert_cmpstr (bw_document_get_sheet (document)->title, ==, "Changed");
  g_assert_true (bw_document_undo (document));
  g_autofree char *after = app_test_sheet_text (document);
  g_assert_cmpstr (after, ==, before);

  g_autofree char *left = NULL;
  g_assert_true (g_file_get_contents (path, &left, NULL, NULL));
  g_assert_cmpstr (left, ==, newer);
  g_assert_finalize_object (document);
}

static void
test_load_bytes (void)
{
  BwDocument *document = bw_document_new (app_test_catalogue ());
  g_autofree char *path = app_test_sheet_path ();
  g_autofree char *text = NULL;
  gsize length;
  g_autoptr (GPtrArray) faults = g_ptr_array_new_with_free_func ((GDestroyNotify) g_error_free);

  g_assert_true (g_file_get_contents (path, &text, &length, NULL));
  g_autoptr (GBytes) bytes = g_bytes_new (text, length);
  g_assert_true (bw_document_load_bytes (document, bytes, "demo", faults));
  g_assert_null (bw_document_get_file (document));
  g_assert_false (bw_document_is_modified (document));
  g_assert_cmpuint (bw_document_count (document, BW_PART_SOURCE), >=, 7);
  g_assert_finalize_object (document);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/document/blank", test_blank);
  g_test_add_func ("/document/edit-and-undo", test_edit_and_undo);
  g_test_add_func ("/document/no-change-no-step", test_no_change_no_step);
  g_test_add_func ("/document/edit-after-undo", test_edit_after_undo);
  for (guint i = 0; i < G_N_ELEMENTS (refused); i++)
    {
      g_autofree char *path = g_strdup_printf ("/document/refused/%02u-%s", i + 1, refused[i].key);
      g_test_add_data_func (path, GUINT_TO_POINTER (i), test_refused);
    }
  g_test_add_func ("/document/edit-together", test_edit_together);
  g_test_add_func ("/document/decimal-comma", test_decimal_comma);
  g_test_add_func ("/document/duplicate-and-remove", test_duplicate_and_remove);
  g_test_add_func ("/document/add", test_add);
  g_test_add_func ("/document/inputs-are-limited", test_inputs_are_limited);
  g_test_add_func ("/document/choose-monitor", test_choose_monitor);
  g_test_add_func ("/document/selection", test_selection);
  g_test_add_func ("/document/way-back", test_way_back);
  g_test_add_func ("/document/undo-is-limited", test_undo_is_limited);
  g_test_add_func ("/document/save-and-load", test_save_and_load);
  g_test_add_func ("/document/save-fails", test_save_fails);
  g_test_add_func ("/document/load-fails", test_load_fails);
  g_test_add_func ("/document/load-bytes", test_load_bytes);
  return g_test_run ();
}
