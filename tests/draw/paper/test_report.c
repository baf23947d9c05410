/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/paper/report.h"

#include <stdlib.h>
#include <string.h>

#include "core/fit/fit.h"
#include "draw/base/export.h"
#include "support.h"

typedef struct
{
  BwCatalogue *catalogue;
  BwSheet *sheet;
  char *folder;
  char *path;
} Fixture;

static BwSheet *
demo_sheet (const BwCatalogue *catalogue)
{
  g_autoptr (GPtrArray) faults = g_ptr_array_new_with_free_func ((GDestroyNotify) g_error_free);
  g_autofree char *path = g_build_filename (g_getenv ("BW_SOURCE_ROOT"), "data", "demo.bench",
                                            NULL);
  BwSheet *sheet = bw_sheet_load (path, catalogue, faults);
  g_assert_cmpuint (faults->len, ==, 0);
  g_assert_nonnull (sheet);
  return sheet;
}

static void
set_up (Fixture *f, gconstpointer data)
{
  f->catalogue = test_catalogue ();
  f->sheet = demo_sheet (f->catalogue);
  f->folder = test_scratch_folder ();
  f->path = g_build_filename (f->folder, "report.pdf", NULL);
}

static void
tear_down (Fixture *f, gconstpointer data)
{
  test_remove_folder (f->folder);
  g_free (f->path);
  bw_sheet_free (f->sheet);
  bw_catalogue_free (f->catalogue);
}

static void
write_report (Fixture *f)
{
  g_autoptr (GError) error = NULL;
  bw_report_to_pdf (f->sheet, f->catalogue, f->path, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (test_count_files (f->folder), ==, 1);
}

/* The words of the report, set apart by single spaces. */
static char *
report_text (Fixture *f)
{
  const char *const argv[] = { "pdftotext", f->path, "-", NULL };
  g_autofree char *text = test_run (argv);
  g_auto (GStrv) words = g_strsplit_set (text, " \n\f", -1);
  GString *joined = g_string_new (NULL);
  for (char **word = words; *word != NULL; word++)
    if (**word != '\0')
      g_string_append_printf (joined, "%s%s", joined->len > 0 ? " " : "", *word);
  g_string_replace (joined, "\u00a0", " ", 0);
  return g_string_free (joined, FALSE);
}

static guint
count (const char *text, const char *word)
{
  guint n = 0;
  for (const char *at = text; (at = strstr (at, word)) != NULL; at += strlen (word))
    n++;
  return n;
}

static guint
pdf_pages (Fixture *f)
{
  const char *const argv[] = { "pdfinfo", f->path, NULL };
  g_autofree char *text = test_run (argv);
  const char *line = strstr (text, "Pages:");
  g_assert_nonnull (line);
  return (guint) atoi (line + strlen ("Pages:"));
}

static void
assert_says (const char *text, const char *words)
{
  if (strstr (text, words) == NULL)
    g_test_fail_printf ("the report does not say \"%s\"", words);
}

static void
test_says_what_the_sheet_says (Fixture *f, gconstpointer data)
{
  write_report (f);
  g_autofree char *text = report_text (f);

  assert_says (text, f->sheet->title);
  assert_says (text, f->sheet->note); /* that it is invented */
  assert_says (text, f->sheet->monitor->name);
  for (guint i = 0; i < f->sheet->sources->len; i++)
    assert_says (text, bw_sheet_source (f->sheet, i)->name);
  for (guint i = 0; i < f->sheet->monitor->inputs->len; i++)
    assert_says (text, bw_monitor_input (f->sheet->monitor, i)->name);
  assert_says (text, "slot mask");
  assert_says (text, "15.5–16 kHz, 31–33.8 kHz");
}

/* The report has the word of each verdict as often as there are cells with it; cells that are not
 * direct have a heading with the word besides. */
static void
test_verdicts (Fixture *f, gconstpointer data)
{
  guint cells[BW_N_VERDICTS] = { 0 };
  write_report (f);
  g_autofree char *text = report_text (f);

  for (guint source = 0; source < f->sheet->sources->len; source++)
    for (guint input = 0; input < f->sheet->monitor->inputs->len; input++)
      {
        BwRasterFigures figures;
        BwCase c;
        BwFit fit;
        bw_case_init (&c, &figures, f->sheet, f->catalogue, source, input);
        bw_fit_judge (&c, &fit);
        cells[fit.verdict]++;
        g_autofree char *heading = g_strdup_printf ("%s at %s: %s", c.source->name, c.input->name,
                                                    bw_kind_label (&bw_verdicts, fit.verdict));
        if (fit.verdict != BW_VERDICT_DIRECT)
          assert_says (text, heading);
        else
          g_assert_null (strstr (text, heading));
        for (guint rule = 0; rule < BW_N_RULES; rule++)
          if (fit.at[rule].severity != BW_SEVERITY_OK)
            {
              g_autofree char *says = bw_finding_says (&fit.at[rule], &fit, &c, '.');
              g_autoptr (GString) plain = g_string_new (says);
              g_string_replace (plain, "\u00a0", " ", 0);
              assert_says (text, plain->str);
            }
      }
  g_assert_cmpuint (cells[BW_VERDICT_DIRECT], >, 0);
  g_assert_cmpuint (cells[BW_VERDICT_WITH_PARTS], >, 0);
  g_assert_cmpuint (count (text, "with parts"), ==, 2 * cells[BW_VERDICT_WITH_PARTS]);
}

/* SMPTE 170M-2004 table 2: front porch 1.5 µs, sync 4.7 µs, back porch 9.2 - 4.7 = 4.5 µs; line rate
 * 4.5 MHz / 286 = 15.734 kHz; 525 lines, 59.94 Hz. */
static void
test_timing_table (Fixture *f, gconstpointer data)
{
  write_report (f);
  const char *const argv[] = { "pdftotext", "-layout", f->path, "-", NULL };
  g_autofree char *text = test_run (argv);
  g_autoptr (GRegex) row = g_regex_new (
      "15\\.734\\s+kHz\\s+59\\.94\\s+Hz\\s+525\\s+interlaced\\s+1\\.500\\s+µs\\s+4\\.700\\s+µs"
      "\\s+4\\.500\\s+µs",
      0, 0, NULL);
  g_assert_true (g_regex_match (row, text, 0, NULL));
}

/* The four dangers of the trade, and that there is no procedure here. */
static void
test_caution (Fixture *f, gconstpointer data)
{
  static const char *const words[] = { "lethal charge after the plug is pulled",
                                       "mains potential",
                                       "implode",
                                       "X-rays",
                                       "no procedure",
                                       "local codes",
                                       "licensed practice" };
  write_report (f);
  g_autofree char *text = report_text (f);
  for (guint i = 0; i < G_N_ELEMENTS (words); i++)
    assert_says (text, words[i]);
}

static void
test_pages (Fixture *f, gconstpointer data)
{
  write_report (f);
  g_autofree char *text = report_text (f);
  guint pages = pdf_pages (f);

  g_assert_cmpuint (pages, >, 1);
  for (guint page = 1; page <= pages; page++)
    {
      g_autofree char *foot = g_strdup_printf ("page %u of %u", page, pages);
      g_assert_cmpuint (count (text, foot), >=, 1);
    }
}

typedef struct
{
  double x0, y0, x1, y1;
  char *text;
} Word;

static void
clear_word (gpointer data)
{
  g_free (((Word *) data)->text);
}

static double
number_after (const char *text, const char *key)
{
  const char *at = strstr (text, key);
  g_assert_nonnull (at);
  return g_ascii_strtod (at + strlen (key), NULL);
}

static void
assert_apart (const GArray *words)
{
  const double slack = 1.2; /* points: boxes are those of the font, a little higher than the ink */
  for (guint i = 0; i < words->len; i++)
    for (guint j = 0; j < i; j++)
      {
        const Word *a = &g_array_index (words, Word, i), *b = &g_array_index (words, Word, j);
        if (a->x1 > b->x0 + slack && b->x1 > a->x0 + slack && a->y1 > b->y0 + slack
            && b->y1 > a->y0 + slack)
          g_test_fail_printf ("\"%s\" overlaps \"%s\"", a->text, b->text);
      }
}

/* No word overlaps another and none leaves its page, as another program reads the file. */
static void
check_words_apart (Fixture *f)
{
  const char *const argv[] = { "pdftotext", "-bbox", f->path, "-", NULL };
  g_autofree char *text = test_run (argv);
  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);
  g_autoptr (GArray) words = g_array_new (FALSE, FALSE, sizeof (Word));
  double width = 0, height = 0;
  guint n = 0;

  g_array_set_clear_func (words, clear_word);
  for (char **line = lines; *line != NULL; line++)
    if (strstr (*line, "<page ") != NULL)
      {
        assert_apart (words);
        g_array_set_size (words, 0);
        width = number_after (*line, "width=\"");
        height = number_after (*line, "height=\"");
      }
    else if (strstr (*line, "<word ") != NULL)
      {
        Word word = { number_after (*line, "xMin=\""), number_after (*line, "yMin=\""),
                      number_after (*line, "xMax=\""), number_after (*line, "yMax=\""),
                      g_strdup (strchr (*line, '>') + 1) };
        if (word.x0 < 0 || word.y0 < 0 || word.x1 > width || word.y1 > height)
          g_test_fail_printf ("\"%s\" leaves the page", word.text);
        g_array_append_val (words, word);
        n++;
      }
  assert_apart (words);
  g_assert_cmpuint (n, >, 100);
}

static void
test_words_apart (Fixture *f, gconstpointer data)
{
  write_report (f);
  check_words_apart (f);
}

static void
set_text (char **text, const char *value)
{
  g_free (*text);
  *text = g_strdup (value);
}

static char *
repeated (const char *word, guint n)
{
  GString *text = g_string_new (NULL);
  for (guint i = 0; i < n; i++)
    g_string_append (text, word);
  return g_string_free (text, FALSE);
}

/* Names that are too long, with and without spaces to break at. */
static void
test_long_names (Fixture *f, gconstpointer data)
{
  g_autofree char *solid = repeated ("unbroken", 60);
  g_autofree char *spaced = repeated ("spaced out ", 60);

  set_text (&f->sheet->title, solid);
  set_text (&f->sheet->note, spaced);
  set_text (&f->sheet->monitor->name, solid);
  set_text (&bw_monitor_input (f->sheet->monitor, 0)->name, solid);
  set_text (&bw_monitor_input (f->sheet->monitor, 1)->name, spaced);
  set_text (&bw_sheet_source (f->sheet, 0)->name, solid);
  set_text (&bw_sheet_source (f->sheet, 1)->name, spaced);
  write_report (f);
  check_words_apart (f);
}

/* As many inputs as a sheet may have: the table breaks into several, and every name is there. */
static void
test_many_inputs (Fixture *f, gconstpointer data)
{
  GPtrArray *inputs = f->sheet->monitor->inputs;
  while (inputs->len < BW_SHEET_MAX_INPUTS)
    {
      BwInput *input = bw_input_copy (inputs->pdata[inputs->len % 3]);
      g_free (input->name);
      input->name = g_strdup_printf ("Socket%u", inputs->len);
      g_ptr_array_add (inputs, input);
    }
  write_report (f);
  check_words_apart (f);
  g_autofree char *text = report_text (f);
  for (guint i = 3; i < inputs->len; i++)
    assert_says (text, bw_monitor_input (f->sheet->monitor, i)->name);
}

/* A sheet that has just been started. */
static void
test_empty_sheet (Fixture *f, gconstpointer data)
{
  bw_sheet_free (f->sheet);
  f->sheet = bw_sheet_new ();
  write_report (f);
  g_assert_cmpuint (pdf_pages (f), ==, 1);
  g_autofree char *text = report_text (f);
  assert_says (text, "There is nothing to judge");
  assert_says (text, "page 1 of 1");
}

/* On a page of any size, every page draws without a fault of cairo. */
static void
test_page_sizes (Fixture *f, gconstpointer data)
{
  static const double pages_pt[][2] = { { 595, 842 }, { 842, 595 }, { 298, 420 }, { 1191, 1684 } };
  for (guint i = 0; i < G_N_ELEMENTS (pages_pt); i++)
    for (guint theme = 0; theme < BW_N_THEMES; theme++)
      {
        const BwInk ink = { theme, "Sans 9", 0 };
        g_autoptr (BwReport) report = bw_report_new (f->sheet, f->catalogue, &ink, pages_pt[i][0],
                                                     pages_pt[i][1], ',');
        cairo_rectangle_t extents = { 0, 0, pages_pt[i][0], pages_pt[i][1] };
        cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA,
                                                                   &extents);
        cairo_t *cr = cairo_create (surface);
        for (guint page = 0; page < bw_report_pages (report); page++)
          bw_report_draw_page (report, cr, page);
        g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
        cairo_destroy (cr);
        cairo_surface_destroy (surface);
      }
}

static void
test_cannot_write (Fixture *f, gconstpointer data)
{
  g_autofree char *nowhere = g_build_filename (f->folder, "missing", "report.pdf", NULL);
  g_autoptr (GError) error = NULL;

  g_assert_false (bw_report_to_pdf (f->sheet, f->catalogue, nowhere, &error));
  g_assert_error (error, BW_EXPORT_ERROR, BW_EXPORT_ERROR_WRITE);
  g_assert_nonnull (strstr (error->message, nowhere));
  g_assert_cmpuint (test_count_files (f->folder), ==, 0);

  g_clear_error (&error);
  g_assert_cmpint (g_mkdir_with_parents (f->path, 0700), ==, 0);
  g_assert_false (bw_report_to_pdf (f->sheet, f->catalogue, f->path, &error));
  g_assert_error (error, BW_EXPORT_ERROR, BW_EXPORT_ERROR_WRITE);
  g_assert_true (g_file_test (f->path, G_FILE_TEST_IS_DIR));
  g_assert_cmpuint (test_count_files (f->folder), ==, 1);
}

#define ADD(path, func) g_test_add ("/draw/report/" path, Fixture, NULL, set_up, func, tear_down)

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  ADD ("sheet", test_says_what_the_sheet_says);
  ADD ("verdicts", test_verdicts);
  ADD ("timing-table", test_timing_table);
  ADD ("caution", test_caution);
  ADD ("pages", test_pages);
  ADD ("words-apart", test_words_apart);
  ADD ("long-names", test_long_names);
  ADD ("many-inputs", test_many_inputs);
  ADD ("empty-sheet", test_empty_sheet);
  ADD ("page-sizes", test_page_sizes);
  ADD ("cannot-write", test_cannot_write);
  return g_test_run ();
}
