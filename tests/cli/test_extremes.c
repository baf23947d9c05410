/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Numbers beyond all that is on a bench are refused with what is allowed, and characters that a
 * terminal obeys, or that change the order of a text, reach neither the terminal nor a file. */
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include <glib/gstdio.h>

#include "run.h"

#define ARGUMENTS_MAX 8

static const struct
{
  const char *name;
  const char *args[ARGUMENTS_MAX]; /* up to the first NULL */
  const char *says;
} refused[] = {
  { "pad-least", { "pad", "--from=5V", "--to=1e-308V" }, "too small" },
  { "pad-low", { "pad", "--from=5V", "--to=1e-20V" }, "from 1 mV to 1000 V" },
  { "pad-none-so-high", { "pad", "--from=5V", "--to=2V", "--load=10Mohm" }, "10 MΩ" },
  { "pad-load", { "pad", "--from=5V", "--to=1V", "--load=9.6e-229ohm" }, "too small" },
  { "pad-low-load", { "pad", "--from=5V", "--to=1V", "--load=1e-29ohm" },
    "breezeway-cli: Allowed are voltages from 1 mV to 1000 V, a load from 0.1 Ω to 10 MΩ" },
  { "pad-high", { "pad", "--from=1e30V", "--to=1V" }, "from 1 mV to 1000 V" },
  { "identify", { "identify", "--field-rate=1e-308Hz" }, "too small" },
  { "identify-high", { "identify", "--field-rate=1e308Hz" }, "too large" },
  { "rate-of-64-bits",
    { "timing", "--gtf-pixel-clock=-9223372036854775808 Hz", "--active=640x480" },
    "not an exact ratio" },
  { "cause", { "cause", "--system=pal-b", "--kind=composite", "--white=-1000V" },
    "from −600 V to 600 V" },
  { "cause-sync", { "cause", "--system=pal-b", "--kind=composite", "--sync-level=601V" },
    "up to 600 V" },
};

static void
test_refused (gconstpointer data)
{
  gsize i = GPOINTER_TO_SIZE (data);
  g_autoptr (Run) run = run_args (refused[i].args);
  assert_refused (run, 1, refused[i].says);
}

/* What is not far from a bench is not refused. */
static void
test_taken (void)
{
  g_autoptr (Run) pad = run_cli ("pad", "--from=1000V", "--to=1V", "--load=10Mohm",
                                 "--driver=11Mohm", NULL);
  g_autoptr (Run) small = run_cli ("pad", "--from=1000V", "--to=1V", "--load=0.1ohm", NULL);
  g_autoptr (Run) cause = run_cli ("cause", "--system=pal-b", "--kind=composite", "--white=-600V",
                                   NULL);
  assert_refused (pad, 1, "10 MΩ"); /* of the driver */
  g_assert_cmpint (small->status, ==, 0);
  g_assert_cmpint (cause->status, ==, 0);
}

/* U+202E turns the order of what follows, U+009B begins a command to a terminal (ECMA-48, 5.4), and
 * U+FFFE may not be in XML (XML 1.0, 2.2). An older sheet may hold them. */
#define U_9B "\xc2\x9b"
#define ODD_NAME "Fo\u202eyer" U_9B "31m mon\ufffeitor"

static char *
write_odd_sheet (const char *folder)
{
  g_autofree char *text = demo_with ("name=Foyer monitor\n", "name=" ODD_NAME "\n");
  g_autoptr (GString) odd = g_string_new (text);
  g_assert_cmpuint (g_string_replace (odd, "name=Composite\n", "name=" ODD_NAME "\n", 0), ==, 1);
  g_assert_cmpuint (g_string_replace (odd, "title=Harbour Lane", "title=" ODD_NAME, 0), ==, 1);
  return write_scratch (folder, "odd.bench", odd->str);
}

static void
assert_harmless (const char *text)
{
  g_assert_true (g_utf8_validate (text, -1, NULL));
  g_assert_null (strstr (text, "\u202e"));
  g_assert_null (strstr (text, U_9B));
  g_assert_null (strstr (text, "\ufffe"));
}

static void
test_terminal (void)
{
  g_autofree char *folder = scratch_folder ();
  g_autofree char *path = write_odd_sheet (folder);
  g_autoptr (Run) fit = run_cli ("fit", path, "--findings", NULL);
  g_autoptr (Run) hookup = run_cli ("hookup", path, "--source=1", "--input=1", NULL);
  g_autoptr (Run) cause = run_cli ("cause", path, "--source=1", "--input=1", "--white=1V", NULL);
  g_autoptr (Run) unknown = run_cli ("fit", path, "--input=no\u202esuch", NULL);

  g_assert_nonnull (strstr (fit->out, "Foyer 31m mon\ufffditor"));
  assert_harmless (fit->out);
  assert_harmless (hookup->out);
  assert_harmless (cause->out);
  assert_harmless (unknown->err);
  g_assert_cmpint (unknown->status, ==, 1);
  remove_scratch (folder);
}

/* JSON keeps the very characters, written by their numbers (RFC 8259, 7). */
static void
test_json (void)
{
  g_autofree char *folder = scratch_folder ();
  g_autofree char *path = write_odd_sheet (folder);
  g_autoptr (Run) run = run_cli ("cause", path, "--source=1", "--input=1", "--white=1V", "--json",
                                 NULL);
  g_autoptr (JsonObject) root = run_json (run);
  assert_harmless (run->out);
  g_assert_nonnull (strstr (run->out, "\\u202e"));
  g_assert_cmpstr (json_object_get_string_member (root, "input"), ==, ODD_NAME);
  remove_scratch (folder);
}

static void
assert_harmless_file (const char *folder, const char *name)
{
  g_autofree char *path = g_build_filename (folder, name, NULL);
  g_autofree char *text = NULL;
  g_autoptr (GError) error = NULL;
  g_file_get_contents (path, &text, NULL, &error);
  g_assert_no_error (error);
  assert_harmless (text);
}

static void
test_files (void)
{
  g_autofree char *folder = scratch_folder ();
  g_autofree char *path = write_odd_sheet (folder);
  g_autofree char *plan = g_build_filename (folder, "plan.svg", NULL);
  g_autofree char *parts = g_build_filename (folder, "parts.csv", NULL);
  g_autofree char *csv = g_strconcat ("--csv=", parts, NULL);
  g_autoptr (Run) run = run_cli ("hookup", path, "--source=1", "--input=1", "-o", plan, csv, NULL);

  g_autofree char *report = g_build_filename (folder, "report.pdf", NULL);
  g_autoptr (Run) paper = run_cli ("report", path, "-o", report, NULL);
  const char *const argv[] = { "pdfinfo", report, NULL };
  g_autoptr (Run) facts = run_argv (argv, NULL);

  g_assert_cmpint (run->status, ==, 0);
  g_assert_cmpint (paper->status, ==, 0);
  g_assert_nonnull (strstr (facts->out, "Foyer 31m mon\ufffditor Museum"));
  assert_harmless (facts->out);
  assert_harmless_file (folder, "plan.svg");
  assert_harmless_file (folder, "parts.csv");
  remove_scratch (folder);
}

/* A relative link to a file that is not there yet is followed from its own folder. */
static void
test_link (void)
{
  g_autofree char *folder = scratch_folder ();
  g_autofree char *demo = demo_path ();
  const char *const argv[]
      = { "sh", "-c", "cd \"$1\" && ln -s there link && exec \"$2\" edid \"$3\" -o link",
          "sh", folder, g_getenv ("BW_CLI"), demo, NULL };
  g_autofree char *there = g_build_filename (folder, "there", NULL);
  g_autofree char *link = g_build_filename (folder, "link", NULL);
  g_autoptr (Run) run = run_argv (argv, NULL);
  GStatBuf status;

  g_assert_cmpint (run->status, ==, 0);
  g_assert_true (g_file_test (link, G_FILE_TEST_IS_SYMLINK));
  g_assert_cmpint (g_stat (there, &status), ==, 0);
  g_assert_cmpint (status.st_size, ==, 128);
  remove_scratch (folder);
}

/* The parts of a colleague's folder stay writable for the group, whatever the umask; a file that is
 * read-only stays as it is. */
static void
test_permissions (void)
{
  g_autofree char *folder = scratch_folder ();
  g_autofree char *demo = demo_path ();
  g_autofree char *shared = write_scratch (folder, "shared.bin", "old");
  g_autofree char *fixed = write_scratch (folder, "fixed.bin", "old");
  g_autofree char *text = NULL;
  GStatBuf status;

  g_assert_cmpint (g_chmod (shared, 0660), ==, 0);
  g_assert_cmpint (g_chmod (fixed, 0440), ==, 0);
  mode_t before = umask (077);
  g_autoptr (Run) kept = run_cli ("edid", demo, "-o", shared, NULL);
  g_autoptr (Run) run = run_cli ("edid", demo, "-o", fixed, NULL);
  umask (before);
  g_assert_cmpint (kept->status, ==, 0);
  g_assert_cmpint (g_stat (shared, &status), ==, 0);
  g_assert_cmpint (status.st_mode & 07777, ==, 0660);
  g_assert_cmpint (status.st_size, ==, 128);
  g_assert_cmpint (run->status, ==, 1);
  g_assert_nonnull (strstr (run->err, "read-only"));
  g_assert_true (g_file_get_contents (fixed, &text, NULL, NULL));
  g_assert_cmpstr (text, ==, "old");
  remove_scratch (folder);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (refused); i++)
    {
      g_autofree char *path = g_strconcat ("/extremes/refused/", refused[i].name, NULL);
      g_test_add_data_func (path, GSIZE_TO_POINTER (i), test_refused);
    }
  g_test_add_func ("/extremes/taken", test_taken);
  g_test_add_func ("/extremes/terminal", test_terminal);
  g_test_add_func ("/extremes/json", test_json);
  g_test_add_func ("/extremes/files", test_files);
  g_test_add_func ("/extremes/link", test_link);
  g_test_add_func ("/extremes/permissions", test_permissions);
  return g_test_run ();
}
