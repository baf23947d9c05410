/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What `breezeway-cli report` writes, and what it leaves alone when it cannot. The PDF is read with
 * pdftotext and pdfinfo (Debian package poppler-utils). */
#include <string.h>
#include <sys/stat.h>

#include <glib/gstdio.h>

#include "run.h"

/* The text of a PDF, with every run of white space made one space. */
static char *
pdf_text (const char *pdf)
{
  const char *const argv[] = { "pdftotext", pdf, "-", NULL };
  g_autoptr (Run) run = run_argv (argv, NULL);
  g_autoptr (GRegex) regex = g_regex_new ("\\s+", G_REGEX_DEFAULT, G_REGEX_MATCH_DEFAULT, NULL);
  g_assert_cmpint (run->status, ==, 0);
  return g_regex_replace_literal (regex, run->out, -1, 0, " ", G_REGEX_MATCH_DEFAULT, NULL);
}

static guint
n_entries (const char *folder)
{
  g_autoptr (GDir) entries = g_dir_open (folder, 0, NULL);
  guint n = 0;
  while (g_dir_read_name (entries) != NULL)
    n++;
  return n;
}

/* The report names the monitor and every source and input of the sheet. */
static void
test_written (void)
{
  g_autofree char *folder = scratch_folder ();
  g_autofree char *demo = demo_path ();
  g_autofree char *pdf = g_build_filename (folder, "demo.pdf", NULL);
  g_autoptr (Run) run = run_cli ("report", demo, "-o", pdf, NULL);

  g_assert_cmpint (run->status, ==, 0);
  g_assert_cmpstr (run->out, ==, "");
  g_assert_cmpstr (run->err, ==, "");
  g_autofree char *text = pdf_text (pdf);
  g_autoptr (GKeyFile) keys = g_key_file_new ();
  g_assert_true (g_key_file_load_from_file (keys, demo, G_KEY_FILE_NONE, NULL));
  g_auto (GStrv) groups = g_key_file_get_groups (keys, NULL);
  for (char **group = groups; *group != NULL; group++)
    {
      g_autofree char *name = g_key_file_get_string (keys, *group, "name", NULL);
      if (name != NULL && strstr (text, name) == NULL)
        g_error ("“%s” is not in the report", name);
    }
  g_assert_cmpuint (n_entries (folder), ==, 1);
  remove_scratch (folder);
}

static void
test_json (void)
{
  g_autofree char *folder = scratch_folder ();
  g_autofree char *demo = demo_path ();
  g_autofree char *pdf = g_build_filename (folder, "demo.pdf", NULL);
  g_autoptr (Run) run = run_cli ("report", demo, "--output", pdf, "--json", NULL);
  g_autoptr (JsonObject) root = run_json (run);
  g_assert_cmpstr (json_object_get_string_member (root, "sheet"), ==, demo);
  g_assert_cmpstr (json_object_get_string_member (root, "report"), ==, pdf);
  g_assert_true (g_file_test (pdf, G_FILE_TEST_IS_REGULAR));
  remove_scratch (folder);
}

static void
check_refused (const Run *run, int status, const char *names)
{
  g_assert_cmpint (run->status, ==, status);
  g_assert_cmpstr (run->out, ==, "");
  assert_one_line (run->err);
  g_assert_nonnull (strstr (run->err, names));
}

static void
test_no_such_folder (void)
{
  g_autofree char *folder = scratch_folder ();
  g_autofree char *demo = demo_path ();
  g_autofree char *pdf = g_build_filename (folder, "none", "demo.pdf", NULL);
  g_autoptr (Run) run = run_cli ("report", demo, "-o", pdf, NULL);
  check_refused (run, 1, pdf);
  remove_scratch (folder);
}

/* A folder or a pipe is no file that a report could replace, and stays what it is. */
static void
test_no_file (void)
{
  g_autofree char *folder = scratch_folder ();
  g_autofree char *demo = demo_path ();
  g_autofree char *pipe = g_build_filename (folder, "pipe", NULL);
  GStatBuf status;

  g_autoptr (Run) on_folder = run_cli ("report", demo, "-o", folder, NULL);
  check_refused (on_folder, 1, folder);
  g_assert_cmpuint (n_entries (folder), ==, 0);

  g_assert_cmpint (mkfifo (pipe, 0600), ==, 0);
  g_autoptr (Run) on_pipe = run_cli ("report", demo, "-o", pipe, NULL);
  check_refused (on_pipe, 1, pipe);
  g_assert_cmpint (g_stat (pipe, &status), ==, 0);
  g_assert_true (S_ISFIFO (status.st_mode));
  g_assert_cmpuint (n_entries (folder), ==, 1);
  remove_scratch (folder);
}

/* The sheet is not replaced by its own report, by whatever name. */
static void
test_own_sheet (void)
{
  g_autofree char *folder = scratch_folder ();
  g_autofree char *demo = demo_path ();
  g_autofree char *text = read_text (demo);
  g_autofree char *path = write_scratch (folder, "own.bench", text);
  g_autofree char *other = g_build_filename (folder, ".", "own.bench", NULL);
  g_autoptr (Run) run = run_cli ("report", path, "-o", other, NULL);
  g_autofree char *after = read_text (path);
  check_refused (run, 2, "own sheet");
  g_assert_cmpstr (after, ==, text);
  remove_scratch (folder);
}

/* A sheet with a fault leaves an older report as it was. */
static void
test_old_report_stays (void)
{
  g_autofree char *folder = scratch_folder ();
  g_autofree char *bad = write_scratch (folder, "bad.bench", "[bench-sheet]\nformat=1\n");
  g_autofree char *pdf = write_scratch (folder, "old.pdf", "old");
  g_autoptr (Run) run = run_cli ("report", bad, "-o", pdf, NULL);
  g_autofree char *after = read_text (pdf);
  check_refused (run, 1, bad);
  g_assert_cmpstr (after, ==, "old");
  remove_scratch (folder);
}

/* What can hurt someone is the first thing on every sheet: before the note of the bench sheet, and before the
 * drawing of the plan. */
static void
test_danger (void)
{
  g_autofree char *folder = scratch_folder ();
  g_autofree char *sheet = source_path ("tests/sheets/33-mains-of-too-many-volts.bench");
  g_autofree char *report = g_build_filename (folder, "report.pdf", NULL);
  g_autofree char *plan = g_build_filename (folder, "plan.pdf", NULL);
  g_autofree char *drawn = g_strconcat ("--pdf=", plan, NULL);
  g_autoptr (Run) run = run_cli ("report", sheet, "-o", report, NULL);
  g_autoptr (Run) hookup
      = run_cli ("hookup", sheet, "--source", "2", "--input", "2", drawn, NULL);

  g_assert_cmpint (run->status, ==, 0);
  g_assert_cmpint (hookup->status, ==, 0);
  g_autofree char *on_report = pdf_text (report);
  g_autofree char *on_plan = pdf_text (plan);
  const char *danger = strstr (on_report, "Danger: The supply of 230 V is outside");
  g_assert_nonnull (danger);
  g_assert_cmpuint ((gsize) (danger - on_report), <, 60); /* behind the title */
  danger = strstr (on_plan, "Danger: The supply of 230 V is outside");
  g_assert_nonnull (danger);
  g_assert_true (danger < strstr (on_plan, "solder side"));
  g_assert_nonnull (strstr (on_plan, "mains transformer, 230 V to 120 V"));
  g_assert_nonnull (strstr (on_plan, "local codes"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/report/written", test_written);
  g_test_add_func ("/report/json", test_json);
  g_test_add_func ("/report/no-such-folder", test_no_such_folder);
  g_test_add_func ("/report/no-file", test_no_file);
  g_test_add_func ("/report/own-sheet", test_own_sheet);
  g_test_add_func ("/report/old-report-stays", test_old_report_stays);
  g_test_add_func ("/report/danger", test_danger);
  return g_test_run ();
}
