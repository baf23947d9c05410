/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Bench sheets on disk: saved whole or not at all, and never touched when they cannot be read. */
#include "core/bench/sheet.h"

#include <signal.h>
#include <string.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/time.h>
#include <sys/wait.h>
#include <unistd.h>

#include <glib/gstdio.h>

#include "core/base/keyfile.h"
#include "support.h"

#define SHEET                                                                                      \
  "[bench-sheet]\nformat=1\ntitle=Test\n\n"                                                        \
  "[monitor]\nname=Set\ndiagonal=14 in\naspect=4:3\nline_rates=15 kHz .. 16 kHz\n"                 \
  "field_rates=48 Hz .. 62 Hz\nline_retrace=9 us\nfield_retrace=800 us\n\n"

static BwSheet *
parse (const char *text)
{
  g_autoptr (GPtrArray) faults = bw_test_faults_new ();
  BwSheet *sheet = bw_sheet_parse (text, strlen (text), "test.bench", bw_test_catalogue (), faults);
  bw_test_no_faults (faults);
  if (sheet == NULL)
    g_error ("the test's own sheet is faulty");
  return sheet;
}

static BwSheet *
demo (void)
{
  g_autofree char *path = bw_test_demo_path ();
  g_autofree char *text = bw_test_read (path, NULL);
  return parse (text);
}

static void
test_save_and_load (void)
{
  char *folder = bw_test_folder_new ();
  g_autofree char *path = bw_test_in_folder (folder, "new.bench", NULL);
  g_autoptr (BwSheet) sheet = parse (SHEET);
  g_autoptr (GPtrArray) faults = bw_test_faults_new ();
  g_autoptr (GError) error = NULL;
  g_autofree char *text = bw_sheet_to_text (sheet, bw_test_catalogue ());

  g_assert_true (bw_sheet_save (sheet, path, bw_test_catalogue (), &error));
  g_assert_no_error (error);
  bw_test_assert_content (path, text);
  g_autoptr (BwSheet) back = bw_sheet_load (path, bw_test_catalogue (), faults);
  bw_test_no_faults (faults);
  g_assert_nonnull (back);
  g_assert_true (bw_sheet_save (sheet, path, bw_test_catalogue (), NULL));
  bw_test_assert_content (path, text);
  g_assert_cmpuint (bw_test_count_files (folder), ==, 1); /* nothing lies about */
  bw_test_folder_remove (folder);
}

/* A sheet that cannot be read is not touched: same bytes, same times. */
static void
assert_untouched (const char *text, GQuark domain, int code)
{
  char *folder = bw_test_folder_new ();
  g_autofree char *path = bw_test_in_folder (folder, "old.bench", text);
  g_autoptr (GPtrArray) faults = bw_test_faults_new ();
  GStatBuf before, after;

  g_assert_cmpint (g_stat (path, &before), ==, 0);
  g_assert_null (bw_sheet_load (path, bw_test_catalogue (), faults));
  bw_test_has_fault (faults, domain, code, WORDS (path));
  g_assert_cmpint (g_stat (path, &after), ==, 0);
  g_assert_cmpint (before.st_mtim.tv_sec, ==, after.st_mtim.tv_sec);
  g_assert_cmpint (before.st_mtim.tv_nsec, ==, after.st_mtim.tv_nsec);
  g_assert_cmpuint (before.st_ino, ==, after.st_ino);
  bw_test_assert_content (path, text);
  g_assert_cmpuint (bw_test_count_files (folder), ==, 1);
  bw_test_folder_remove (folder);
}

static void
test_newer_untouched (void)
{
  assert_untouched ("# newer\n[bench-sheet]\nformat=3\nunheard=of\n[monitor]\n", BW_SHEET_ERROR,
                    BW_SHEET_ERROR_NEWER);
}

static void
test_damaged_untouched (void)
{
  assert_untouched (SHEET "[source 2\nname=cut o", BW_KEYFILE_ERROR, BW_KEYFILE_ERROR_SYNTAX);
}

static void
test_load_missing (void)
{
  g_autoptr (GPtrArray) faults = bw_test_faults_new ();
  g_assert_null (bw_sheet_load ("/no/such.bench", bw_test_catalogue (), faults));
  bw_test_has_fault (faults, BW_KEYFILE_ERROR, BW_KEYFILE_ERROR_READ, WORDS ("/no/such.bench"));
}

/* A symbolic link still points to the file, which is the one that is written. */
static void
test_save_through_link (void)
{
  char *folder = bw_test_folder_new ();
  g_autofree char *path = bw_test_in_folder (folder, "real.bench", "old");
  g_autofree char *link = bw_test_in_folder (folder, "link.bench", NULL);
  g_autoptr (BwSheet) sheet = parse (SHEET);
  g_autofree char *text = bw_sheet_to_text (sheet, bw_test_catalogue ());

  g_assert_cmpint (symlink ("real.bench", link), ==, 0);
  g_assert_true (bw_sheet_save (sheet, link, bw_test_catalogue (), NULL));
  g_autofree char *target = g_file_read_link (link, NULL);
  g_assert_cmpstr (target, ==, "real.bench");
  bw_test_assert_content (path, text);
  bw_test_folder_remove (folder);
}

/* So does a link to a file that is not there yet. */
static void
test_save_through_dangling_link (void)
{
  char *folder = bw_test_folder_new ();
  g_autofree char *link = bw_test_in_folder (folder, "link.bench", NULL);
  g_autoptr (BwSheet) sheet = parse (SHEET);

  g_assert_cmpint (symlink ("real.bench", link), ==, 0);
  g_assert_true (bw_sheet_save (sheet, link, bw_test_catalogue (), NULL));
  g_autofree char *target = g_file_read_link (link, NULL);
  g_assert_cmpstr (target, ==, "real.bench");
  bw_test_folder_remove (folder);
}

/* A file that others may not read stays so. */
static void
test_save_keeps_mode (void)
{
  char *folder = bw_test_folder_new ();
  g_autofree char *path = bw_test_in_folder (folder, "private.bench", "old");
  g_autoptr (BwSheet) sheet = parse (SHEET);
  GStatBuf status;

  g_assert_cmpint (g_chmod (path, 0600), ==, 0);
  g_assert_true (bw_sheet_save (sheet, path, bw_test_catalogue (), NULL));
  g_assert_cmpint (g_stat (path, &status), ==, 0);
  g_assert_cmpint (status.st_mode & 0777, ==, 0600);
  bw_test_folder_remove (folder);
}

static void
assert_save_fails (const char *path)
{
  g_autoptr (BwSheet) sheet = parse (SHEET);
  g_autoptr (GError) error = NULL;

  g_assert_false (bw_sheet_save (sheet, path, bw_test_catalogue (), &error));
  g_assert_error (error, BW_SHEET_ERROR, BW_SHEET_ERROR_WRITE);
  if (error != NULL)
    bw_test_assert_words (error->message, WORDS (path));
}

static void
test_save_to_no_folder (void)
{
  assert_save_fails ("/no/such/folder/new.bench");
}

static void
test_save_over_a_folder (void)
{
  char *folder = bw_test_folder_new ();
  assert_save_fails (folder);
  g_assert_true (g_file_test (folder, G_FILE_TEST_IS_DIR));
  bw_test_folder_remove (folder);
}

/* Saves in a process of its own that may write no more than @limit bytes to any file. Returns its
 * wait status: exit 0 saved, 1 refused with the right error, 2 with another. */
static int
save_limited (const char *path, rlim_t limit, gboolean ignore_signal)
{
  pid_t child = fork ();
  int status = -1;

  if (child == 0)
    {
      struct rlimit size = { limit, limit }, core = { 0, 0 };
      g_autoptr (BwSheet) sheet = parse (SHEET);
      g_autoptr (GError) error = NULL;
      signal (SIGXFSZ, ignore_signal ? SIG_IGN : SIG_DFL);
      setrlimit (RLIMIT_CORE, &core);
      setrlimit (RLIMIT_FSIZE, &size);
      if (bw_sheet_save (sheet, path, bw_test_catalogue (), &error))
        _exit (0);
      _exit (g_error_matches (error, BW_SHEET_ERROR, BW_SHEET_ERROR_WRITE) ? 1 : 2);
    }
  waitpid (child, &status, 0);
  return status;
}

/* No room for the new file: an error, and the old one is whole. Every length at which writing can
 * stop. */
static void
test_save_without_room (void)
{
  char *folder = bw_test_folder_new ();
  g_autofree char *path = bw_test_in_folder (folder, "old.bench", "the old file");
  g_autoptr (BwSheet) sheet = parse (SHEET);
  g_autofree char *text = bw_sheet_to_text (sheet, bw_test_catalogue ());
  rlim_t length = strlen (text);
  const rlim_t limits[] = { 0, 1, 100, length / 2, length - 1 };

  for (gsize i = 0; i < G_N_ELEMENTS (limits); i++)
    {
      int status = save_limited (path, limits[i], TRUE);
      g_assert_true (WIFEXITED (status));
      g_assert_cmpint (WEXITSTATUS (status), ==, 1);
      bw_test_assert_content (path, "the old file");
      g_assert_cmpuint (bw_test_count_files (folder), ==, 1);
    }
  g_assert_cmpint (save_limited (path, length, TRUE), ==, 0);
  bw_test_assert_content (path, text);
  bw_test_folder_remove (folder);
}

/* Killed while it writes: the old file is whole. */
static void
test_save_killed_in_writing (void)
{
  char *folder = bw_test_folder_new ();
  g_autofree char *path = bw_test_in_folder (folder, "old.bench", "the old file");
  int status = save_limited (path, 100, FALSE);

  g_assert_true (WIFSIGNALED (status));
  g_assert_cmpint (WTERMSIG (status), ==, SIGXFSZ);
  bw_test_assert_content (path, "the old file");
  bw_test_folder_remove (folder);
}

static void G_GNUC_NORETURN
save_for_ever (const char *path, const BwSheet *a, const BwSheet *b)
{
  for (;;)
    {
      bw_sheet_save (a, path, bw_test_catalogue (), NULL);
      bw_sheet_save (b, path, bw_test_catalogue (), NULL);
    }
}

#define KILLS 40

/* Killed at any moment, by a timer of its own: the file is one of the two sheets that were being saved
 * in turn. */
static void
test_save_killed_at_any_time (void)
{
  char *folder = bw_test_folder_new ();
  g_autoptr (GRand) rand = g_rand_new_with_seed (6);
  g_autoptr (BwSheet) a = parse (SHEET);
  g_autoptr (BwSheet) b = demo ();
  g_autofree char *text_a = bw_sheet_to_text (a, bw_test_catalogue ());
  g_autofree char *text_b = bw_sheet_to_text (b, bw_test_catalogue ());
  g_autofree char *path = bw_test_in_folder (folder, "old.bench", text_a);

  for (guint i = 0; i < KILLS && !g_test_failed (); i++)
    {
      const struct itimerval until = { .it_value.tv_usec = g_rand_int_range (rand, 500, 20000) };
      int status = 0;
      pid_t child = fork ();
      if (child == 0)
        {
          setitimer (ITIMER_REAL, &until, NULL);
          save_for_ever (path, a, b);
        }
      waitpid (child, &status, 0);
      g_assert_true (WIFSIGNALED (status));
      g_assert_cmpint (WTERMSIG (status), ==, SIGALRM);
      g_autofree char *text = bw_test_read (path, NULL);
      g_assert_true (strcmp (text, text_a) == 0 || strcmp (text, text_b) == 0);
    }
  bw_test_folder_remove (folder);
}

/* A folder in which nothing may be made. The superuser may everywhere, so that it steps down. */
static void
test_save_to_read_only_folder (void)
{
  char *folder = bw_test_folder_new ();
  g_autofree char *path = bw_test_in_folder (folder, "old.bench", "the old file");
  int status = -1;
  g_assert_cmpint (g_chmod (folder, 0555), ==, 0);

  pid_t child = fork ();
  if (child == 0)
    {
      g_autoptr (BwSheet) sheet = parse (SHEET);
      g_autoptr (GError) error = NULL;
      if (geteuid () == 0 && (setegid (65534) != 0 || seteuid (65534) != 0))
        _exit (3);
      gboolean saved = bw_sheet_save (sheet, path, bw_test_catalogue (), &error);
      _exit (saved ? 0 : g_error_matches (error, BW_SHEET_ERROR, BW_SHEET_ERROR_WRITE) ? 1 : 2);
    }
  waitpid (child, &status, 0);
  g_assert_true (WIFEXITED (status));
  g_assert_cmpint (WEXITSTATUS (status), ==, 1);
  g_assert_cmpint (g_chmod (folder, 0755), ==, 0);
  bw_test_assert_content (path, "the old file");
  g_assert_cmpuint (bw_test_count_files (folder), ==, 1);
  bw_test_folder_remove (folder);
}

/* A sheet of just so many bytes, made up by its note. */
static BwSheet *
sheet_of (gsize bytes)
{
  BwSheet *sheet = parse (SHEET);
  g_autofree char *empty = bw_sheet_to_text (sheet, bw_test_catalogue ());
  g_free (sheet->note);
  sheet->note = g_strnfill (bytes - strlen (empty) - strlen ("note=\n"), 'n');
  return sheet;
}

/* The greatest sheet that can be read is the greatest that is written. */
static void
test_save_largest (void)
{
  char *folder = bw_test_folder_new ();
  g_autofree char *path = bw_test_in_folder (folder, "old.bench", "the old file");
  g_autoptr (BwSheet) fits = sheet_of (BW_KEYFILE_MAX_BYTES);
  g_autoptr (BwSheet) too_large = sheet_of (BW_KEYFILE_MAX_BYTES + 1);
  g_autoptr (GPtrArray) faults = bw_test_faults_new ();
  g_autoptr (GError) error = NULL;

  g_assert_false (bw_sheet_save (too_large, path, bw_test_catalogue (), &error));
  g_assert_error (error, BW_SHEET_ERROR, BW_SHEET_ERROR_WRITE);
  if (error != NULL)
    bw_test_assert_words (error->message, WORDS (path, "4 MiB"));
  bw_test_assert_content (path, "the old file");
  g_assert_true (bw_sheet_save (fits, path, bw_test_catalogue (), NULL));
  g_autoptr (BwSheet) back = bw_sheet_load (path, bw_test_catalogue (), faults);
  bw_test_no_faults (faults);
  g_assert_nonnull (back);
  if (back != NULL)
    g_assert_cmpstr (back->note, ==, fits->note);
  bw_test_folder_remove (folder);
}

/* Notes of several lines, one longer than 64 KiB, come back as they were written. */
static void
test_save_notes (void)
{
  char *folder = bw_test_folder_new ();
  g_autofree char *path = bw_test_in_folder (folder, "notes.bench", NULL);
  g_autofree char *filling = g_strnfill (100 * 1024, 'n');
  g_autofree char *note = g_strconcat ("\\n is no line\nthe second = [not a group]\n# no comment\n\n\t",
                                       filling, "\nlast;\\", NULL);
  const BwField *of_sheet = bw_field_find (&bw_sheet_fields, "note");
  const BwField *of_monitor = bw_field_find (&bw_monitor_fields, "note");
  const BwField *of_source = bw_field_find (&bw_source_fields, "note");
  g_autoptr (BwSheet) sheet = demo ();
  g_autoptr (GPtrArray) faults = bw_test_faults_new ();

  g_assert_true (bw_field_parse (of_sheet, sheet, note, '.', NULL));
  g_assert_true (bw_field_parse (of_monitor, sheet->monitor, note, '.', NULL));
  g_assert_true (bw_field_parse (of_source, bw_sheet_source (sheet, 0), note, '.', NULL));
  g_assert_true (bw_sheet_save (sheet, path, bw_test_catalogue (), NULL));
  g_autoptr (BwSheet) back = bw_sheet_load (path, bw_test_catalogue (), faults);
  bw_test_no_faults (faults);
  if (back != NULL)
    {
      g_assert_cmpstr (back->note, ==, note);
      g_assert_cmpstr (back->monitor->note, ==, note);
      g_assert_cmpstr (bw_sheet_source (back, 0)->note, ==, note);
    }
  bw_test_folder_remove (folder);
}

/* What older versions let into a name is read and written as it was, though nobody may type it. */
static void
test_save_old_names (void)
{
  static const char *const names[] = { "A\u202eset", "A\xc2\x9b" "31mset", "A\ufffeset", "A\u2028set" };
  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autofree char *title = g_strdup_printf ("title=%s\n", names[i]);
      g_autoptr (GString) text = g_string_new (SHEET);
      g_string_replace (text, "title=Test\n", title, 1);
      g_autoptr (BwSheet) sheet = parse (text->str);
      g_autofree char *again = bw_sheet_to_text (sheet, bw_test_catalogue ());
      g_assert_cmpstr (sheet->title, ==, names[i]);
      bw_test_assert_words (again, WORDS (title));
    }
}

/* A sheet that could not be opened again is not written over one that can. */
static void
test_save_unreadable (void)
{
  char *folder = bw_test_folder_new ();
  g_autofree char *path = bw_test_in_folder (folder, "old.bench", "the old file");
  g_autoptr (BwSheet) sheet = demo ();
  g_autoptr (GError) error = NULL;

  g_free (bw_sheet_source (sheet, 0)->raster);
  bw_sheet_source (sheet, 0)->raster = g_strdup ("no-such-raster");
  g_assert_false (bw_sheet_save (sheet, path, bw_test_catalogue (), &error));
  g_assert_error (error, BW_SHEET_ERROR, BW_SHEET_ERROR_WRITE);
  if (error != NULL)
    bw_test_assert_words (error->message, WORDS (path, "no-such-raster", "not been written"));
  bw_test_assert_content (path, "the old file");
  bw_test_folder_remove (folder);
}

/* Who opens a file that a save has left half written is told where the old one is. */
static void
test_load_interrupted (void)
{
  char *folder = bw_test_folder_new ();
  g_autofree char *path = bw_test_in_folder (folder, "old.bench", "[bench-sheet]\nform");
  g_autofree char *copy = bw_test_in_folder (folder, "old.bench.before-saving", SHEET);
  g_autoptr (GPtrArray) faults = bw_test_faults_new ();

  g_assert_null (bw_sheet_load (path, bw_test_catalogue (), faults));
  bw_test_has_fault (faults, BW_SHEET_ERROR, BW_SHEET_ERROR_INTERRUPTED, WORDS (path, copy));
  bw_test_folder_remove (folder);
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  g_test_add_func ("/sheet-save/and-load", test_save_and_load);
  g_test_add_func ("/sheet-save/through-link", test_save_through_link);
  g_test_add_func ("/sheet-save/through-dangling-link", test_save_through_dangling_link);
  g_test_add_func ("/sheet-save/keeps-mode", test_save_keeps_mode);
  g_test_add_func ("/sheet-save/to-no-folder", test_save_to_no_folder);
  g_test_add_func ("/sheet-save/over-a-folder", test_save_over_a_folder);
  g_test_add_func ("/sheet-save/to-read-only-folder", test_save_to_read_only_folder);
  g_test_add_func ("/sheet-save/without-room", test_save_without_room);
  g_test_add_func ("/sheet-save/killed-in-writing", test_save_killed_in_writing);
  g_test_add_func ("/sheet-save/killed-at-any-time", test_save_killed_at_any_time);
  g_test_add_func ("/sheet-save/untouched/newer", test_newer_untouched);
  g_test_add_func ("/sheet-save/untouched/damaged", test_damaged_untouched);
  g_test_add_func ("/sheet-save/largest", test_save_largest);
  g_test_add_func ("/sheet-save/notes", test_save_notes);
  g_test_add_func ("/sheet-save/old-names", test_save_old_names);
  g_test_add_func ("/sheet-save/unreadable", test_save_unreadable);
  g_test_add_func ("/sheet-save/load-interrupted", test_load_interrupted);
  g_test_add_func ("/sheet-save/load-missing", test_load_missing);
  return g_test_run ();
}
