/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The printed sheet, read back with pdftotext and pdfinfo (Debian package poppler-utils). */
#include "core/hookup/results.h"
#include "draw/paper/hookup-report.h"

#include <string.h>

#include "core/base/caution.h"
#include "draw/base/export.h"
#include "draw/paper/report.h"
#include "plans.h"

#define LETTER_WIDTH_PT (8.5 * 72)
#define LETTER_HEIGHT_PT (11.0 * 72)

typedef struct
{
  char *folder;
  char *path;
  guint sheets;
  guint of_two; /* pages */
} Fixture;

static void
set_up (Fixture *f, gconstpointer data)
{
  f->folder = test_scratch_folder ();
  f->path = g_build_filename (f->folder, "hookup.pdf", NULL);
}

static void
tear_down (Fixture *f, gconstpointer data)
{
  test_remove_folder (f->folder);
  g_free (f->path);
}

static char *
single_spaces (const char *text)
{
  g_auto (GStrv) words = g_strsplit_set (text, " \n\f\u00a0", -1);
  GString *joined = g_string_new (NULL);
  for (guint i = 0; words[i] != NULL; i++)
    if (*words[i] != '\0')
      g_string_append_printf (joined, "%s%s", joined->len > 0 ? " " : "", words[i]);
  return g_string_free (joined, FALSE);
}

static char *
text_of (const char *path)
{
  const char *const argv[] = { "pdftotext", "-layout", path, "-", NULL };
  g_autofree char *raw = test_run (argv);
  g_autoptr (GString) text = g_string_new (raw);
  g_string_replace (text, "\u00a0", " ", 0);
  return single_spaces (text->str);
}

static guint
pages_of (const char *path)
{
  const char *const argv[] = { "pdfinfo", path, NULL };
  g_autofree char *info = test_run (argv);
  const char *pages = strstr (info, "Pages:");
  g_assert_nonnull (pages);
  return (guint) g_ascii_strtoull (pages + strlen ("Pages:"), NULL, 10);
}

static void
assert_has (const char *text, const char *wanted)
{
  g_autoptr (GString) plain = g_string_new (wanted);
  g_string_replace (plain, "\u00a0", " ", 0);
  g_autofree char *spaced = single_spaces (plain->str);
  if (strstr (text, spaced) == NULL)
    g_error ("\"%s\" is not on the sheet", spaced);
}

static void
check_sheet (const BwHookup *hookup, gpointer data)
{
  Fixture *f = data;
  const BwHookupView what = { hookup, NULL, '.' };
  g_autoptr (GError) error = NULL;
  bw_hookup_report_to_pdf (&what, "The sheet's title", f->path, &error);
  g_assert_no_error (error);
  guint pages = pages_of (f->path);
  g_assert_cmpuint (pages, <=, 2);
  f->of_two += pages == 2;
  g_autofree char *text = text_of (f->path);

  assert_has (text, "The sheet's title");
  assert_has (text, hookup->source);
  assert_has (text, hookup->input);
  assert_has (text, bw_caution_hook_up ());
  for (guint i = 0; i < hookup->parts->len; i++)
    {
      const BwHookupPart *part = hookup->parts->pdata[i];
      g_autofree char *value = bw_quantity_format (part->value_ohm, BW_DIMENSION_RESISTANCE, 3,
                                                   '.');
      assert_has (text, part->what);
      if (part->value_ohm > 0)
        assert_has (text, value);
    }
  for (guint i = 0; i < hookup->warnings->len; i++)
    assert_has (text, hookup->warnings->pdata[i]);
  for (guint i = 0; i < hookup->levels->len; i++)
    {
      const BwHookupLevel *level = hookup->levels->pdata[i];
      g_autofree char *spread = bw_quantity_format_range ((BwRange){ level->min_v, level->max_v },
                                                          BW_DIMENSION_VOLTAGE, 3, '.');
      if (level->max_v - level->min_v > 1e-9)
        assert_has (text, spread);
    }
  f->sheets++;
}

static void
test_demo (Fixture *f, gconstpointer data)
{
  test_each_hookup (TRUE, FALSE, check_sheet, f);
  g_assert_cmpuint (f->sheets, >=, 24);
  g_assert_cmpuint (f->of_two, ==, 0);
}

static void
test_every_kind (Fixture *f, gconstpointer data)
{
  test_each_hookup (FALSE, FALSE, check_sheet, f);
  g_assert_cmpuint (f->of_two, <=, 2); /* the busiest plans alone */
}

static void
check_letter (const BwHookup *hookup, gpointer data)
{
  const BwInk ink = { BW_THEME_PRINT, "Sans 10", BW_INK_PAGE_DPI };
  const BwHookupView what = { hookup, NULL, '.' };
  g_autoptr (BwHookupReport) report = bw_hookup_report_new (&what, "Title", &ink, LETTER_WIDTH_PT,
                                                            LETTER_HEIGHT_PT);
  g_assert_cmpuint (bw_hookup_report_pages (report), <=, 2);
}

static void
test_letter (void)
{
  test_each_hookup (TRUE, FALSE, check_letter, NULL);
}

/* The sentences of the list of that title. */
static GPtrArray *
lines_of (const BwNode *root, const char *title)
{
  GPtrArray *lines = g_ptr_array_new ();
  for (guint i = 0; i < root->children->len; i++)
    {
      const BwNode *list = root->children->pdata[i];
      if (list->kind == BW_NODE_LIST && g_strcmp0 (list->label, title) == 0)
        for (guint j = 0; j < list->children->len; j++)
          g_ptr_array_add (lines, (gpointer) ((const BwNode *) list->children->pdata[j])->label);
    }
  return lines;
}

/* Every pin that carries nothing is on one of the lines, once. */
static void
check_rests (const BwHookup *hookup, gpointer data)
{
  g_autoptr (BwResult) result = bw_result_new ('.');
  bw_hookup_say (bw_result_root (result), hookup, NULL);
  g_autoptr (GPtrArray) lines = lines_of (bw_result_root (result), "Other pins");
  guint commas = 0, fates = 0;
  for (guint i = 0; i < lines->len; i++)
    {
      const char *pins = strstr (lines->pdata[i], ": ");
      g_assert_nonnull (pins);
      for (; *pins != '\0'; pins++)
        {
          commas += *pins == ',';
          fates += *pins == ';';
        }
    }
  if (hookup->rests->len > 0)
    g_assert_cmpuint (commas + fates + lines->len, ==, hookup->rests->len);
  else
    g_assert_cmpuint (lines->len, ==, 0);
}

static void
test_rests (void)
{
  test_each_hookup (TRUE, FALSE, check_rests, NULL);
  test_each_hookup (FALSE, FALSE, check_rests, NULL);
}

static void
test_no_folder (Fixture *f, gconstpointer data)
{
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();
  g_autoptr (BwSheet) sheet = test_hookup_sheet (catalogue, TRUE);
  g_autoptr (BwHookup) hookup = bw_hookup_new (sheet, catalogue, 0, 0, 0, NULL);
  g_autofree char *path = g_build_filename (f->folder, "none", "hookup.pdf", NULL);
  const BwHookupView what = { hookup, NULL, '.' };
  g_autoptr (GError) error = NULL;
  g_assert_false (bw_hookup_report_to_pdf (&what, "Title", path, &error));
  g_assert_error (error, BW_EXPORT_ERROR, BW_EXPORT_ERROR_WRITE);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add ("/hookup-report/demo", Fixture, NULL, set_up, test_demo, tear_down);
  g_test_add ("/hookup-report/every-kind", Fixture, NULL, set_up, test_every_kind, tear_down);
  g_test_add_func ("/hookup-report/letter", test_letter);
  g_test_add_func ("/hookup-report/rests", test_rests);
  g_test_add ("/hookup-report/no-folder", Fixture, NULL, set_up, test_no_folder, tear_down);
  return g_test_run ();
}
