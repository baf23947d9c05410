/* SPDX-License-Identifier: GPL-3.0-or-later */
/* `breezeway-cli edid`, and `breezeway-cli timing --edid`. What is written is read by edid-decode
 * (Debian package edid-decode; looked through with 0.1~git20220315.cb74358c2896-1). */
#include <string.h>
#include <sys/stat.h>

#include <glib/gstdio.h>

#include "run.h"

static char *
file_in (const char *folder, const char *name)
{
  return g_build_filename (folder, name, NULL);
}

static char *
write_demo_edid (const char *folder)
{
  g_autofree char *demo = demo_path ();
  char *path = file_in (folder, "demo.edid");
  g_autoptr (Run) run = run_cli ("edid", demo, "-o", path, NULL);
  g_assert_cmpint (run->status, ==, 0);
  g_assert_cmpstr (run->out, ==, "");
  return path;
}

/* edid-decode finds nothing against the standard, and reads what the demo sheet says. */
static void
test_conforms (void)
{
  g_autofree char *folder = scratch_folder ();
  g_autofree char *path = write_demo_edid (folder);
  const char *const argv[] = { "edid-decode", "--check", path, NULL };
  g_autoptr (Run) run = run_argv (argv, NULL);
  GStatBuf status;

  g_assert_cmpint (run->status, ==, 0);
  g_assert_nonnull (strstr (run->out, "EDID conformity: PASS"));
  g_assert_nonnull (strstr (run->out, "Analog display"));
  g_assert_nonnull (strstr (run->out, "Display Product Name: 'Foyer monitor'"));
  g_assert_nonnull (strstr (run->out, "48-62 Hz V, 15-34 kHz H"));
  g_assert_cmpint (g_stat (path, &status), ==, 0);
  g_assert_cmpint (status.st_size, ==, 128);
  remove_scratch (folder);
}

/* The detailed timings as edid-decode prints them. */
static void
test_reads_back (void)
{
  g_autofree char *folder = scratch_folder ();
  g_autofree char *path = write_demo_edid (folder);
  const char *const argv[] = { "edid-decode", path, NULL };
  g_autoptr (Run) decoded = run_argv (argv, NULL);

  for (int which = 1; which <= 2; which++)
    {
      g_autofree char *number = g_strdup_printf ("%d", which);
      g_autoptr (Run) run = run_cli ("timing", "--edid", path, "--which", number, "--json", NULL);
      g_autoptr (JsonObject) timing = run_json (run);
      g_autofree char *size = g_strdup_printf ("DTD %d: %5.0fx%-5.0f", which,
                                               figure_of (timing, "h_active"),
                                               whole_frame (timing));
      g_autofree char *line = g_strdup_printf ("Hfront %4.0f Hsync %3.0f Hback %4.0f",
                                               figure_of (timing, "h_front_porch"),
                                               figure_of (timing, "h_sync"),
                                               figure_of (timing, "h_back_porch"));
      g_autofree char *field = g_strdup_printf ("Vfront %4.0f Vsync %3.0f Vback %4.0f",
                                                figure_of (timing, "v_front_porch"),
                                                figure_of (timing, "v_sync"),
                                                figure_of (timing, "v_back_porch"));
      const char *at = strstr (decoded->out, size);
      if (at == NULL)
        g_error ("no “%s” in: %s", size, decoded->out);
      g_assert_nonnull (strstr (at, line));
      g_assert_nonnull (strstr (at, field));
      g_assert_true (is_near (figure_of (timing, "detailed_timing"), which, 0));
      g_assert_true (is_near (figure_of (timing, "detailed_timings"), 2, 0));
    }
  remove_scratch (folder);
}

/* Without --which it is the first, and the listing says how many there are. */
static void
test_listing (void)
{
  g_autofree char *folder = scratch_folder ();
  g_autofree char *path = write_demo_edid (folder);
  g_autoptr (Run) plain = run_cli ("timing", "--edid", path, NULL);
  g_autoptr (Run) first = run_cli ("timing", "--edid", path, "--which", "1", NULL);
  g_autoptr (Run) second = run_cli ("timing", "--edid", path, "--which", "2", NULL);

  g_assert_cmpint (plain->status, ==, 0);
  g_assert_cmpstr (plain->out, ==, first->out);
  g_assert_nonnull (strstr (first->out, "Detailed timing 1 of 2"));
  g_assert_nonnull (strstr (second->out, "Detailed timing 2 of 2"));
  remove_scratch (folder);
}

static void
test_no_such_timing (void)
{
  g_autofree char *folder = scratch_folder ();
  g_autofree char *path = write_demo_edid (folder);
  for (const char *const *n = (const char *const[]){ "0", "3", "-1", "99", NULL }; *n != NULL; n++)
    {
      g_autoptr (Run) run = run_cli ("timing", "--edid", path, "--which", *n, NULL);
      assert_refused (run, 1, "1 to 2");
      g_assert_nonnull (strstr (run->err, path));
    }
  g_autoptr (Run) word = run_cli ("timing", "--edid", path, "--which", "two", NULL);
  assert_refused (word, 2, "two");
  remove_scratch (folder);
}

/* Each note is a line on standard error and a member of "notes". */
static void
test_notes (void)
{
  g_autofree char *folder = scratch_folder ();
  g_autofree char *demo = demo_path ();
  g_autofree char *path = file_in (folder, "demo.edid");
  g_autoptr (Run) run = run_cli ("edid", demo, "-o", path, "--json", NULL);
  g_assert_cmpint (run->status, ==, 0);
  g_autoptr (JsonObject) root = parse_object (run->out);
  JsonArray *notes = json_object_get_array_member (root, "notes");

  g_assert_cmpstr (json_object_get_string_member (root, "sheet"), ==, demo);
  g_assert_cmpstr (json_object_get_string_member (root, "edid"), ==, path);
  /* the demo monitor has two bands, and an EDID one range */
  g_assert_cmpuint (json_array_get_length (notes), >, 0);
  g_assert_cmpuint (count_lines (run->err), ==, json_array_get_length (notes));
  for (guint i = 0; i < json_array_get_length (notes); i++)
    g_assert_nonnull (strstr (run->err, json_array_get_string_element (notes, i)));
  remove_scratch (folder);
}

/* A file that is no EDID, cut short, changed by a bit, or none at all. */
static void
test_bad_bytes (void)
{
  g_autofree char *folder = scratch_folder ();
  g_autofree char *path = write_demo_edid (folder);
  g_autofree char *broken = file_in (folder, "broken.edid");
  g_autofree char *bytes = NULL;
  gsize length;

  g_assert_true (g_file_get_contents (path, &bytes, &length, NULL));
  for (gsize cut = 0; cut < length; cut += 9)
    {
      g_assert_true (g_file_set_contents (broken, bytes, (gssize) cut, NULL));
      g_autoptr (Run) run = run_cli ("timing", "--edid", broken, NULL);
      assert_refused (run, 1, broken);
    }
  for (gsize at = 0; at < length; at += 5)
    {
      bytes[at] = (char) (bytes[at] ^ 0x10);
      g_assert_true (g_file_set_contents (broken, bytes, (gssize) length, NULL));
      g_autoptr (Run) run = run_cli ("timing", "--edid", broken, NULL);
      assert_refused (run, 1, broken);
      bytes[at] = (char) (bytes[at] ^ 0x10);
    }
  remove_scratch (folder);
}

static void
test_unreadable (void)
{
  g_autofree char *folder = scratch_folder ();
  g_autofree char *none = file_in (folder, "none.edid");
  g_autofree char *demo = demo_path ();
  g_autoptr (Run) missing = run_cli ("timing", "--edid", none, NULL);
  g_autoptr (Run) directory = run_cli ("timing", "--edid", folder, NULL);
  g_autoptr (Run) endless = run_cli ("timing", "--edid", "/dev/zero", NULL);
  g_autoptr (Run) sheet = run_cli ("timing", "--edid", demo, NULL);
  assert_refused (missing, 1, none);
  assert_refused (directory, 1, folder);
  assert_refused (endless, 1, "/dev/zero");
  assert_refused (sheet, 1, demo);
  remove_scratch (folder);
}

/* What must not be written over stays as it was. */

static void
test_own_sheet (void)
{
  g_autofree char *folder = scratch_folder ();
  g_autofree char *demo = demo_path ();
  g_autofree char *text = read_text (demo);
  g_autofree char *path = write_scratch (folder, "own.bench", text);
  g_autofree char *other = g_build_filename (folder, ".", "own.bench", NULL);
  g_autoptr (Run) run = run_cli ("edid", path, "-o", other, NULL);
  g_autofree char *after = read_text (path);
  assert_refused (run, 2, "own sheet");
  g_assert_cmpstr (after, ==, text);
  remove_scratch (folder);
}

static void
test_no_plain_file (void)
{
  g_autofree char *folder = scratch_folder ();
  g_autofree char *demo = demo_path ();
  g_autofree char *pipe = file_in (folder, "pipe");
  g_autofree char *nowhere = g_build_filename (folder, "none", "x.edid", NULL);
  GStatBuf status;

  g_assert_cmpint (mkfifo (pipe, 0600), ==, 0);
  g_autoptr (Run) on_pipe = run_cli ("edid", demo, "-o", pipe, NULL);
  g_autoptr (Run) on_folder = run_cli ("edid", demo, "-o", folder, NULL);
  g_autoptr (Run) on_full = run_cli ("edid", demo, "-o", "/dev/full", NULL);
  g_autoptr (Run) on_none = run_cli ("edid", demo, "-o", nowhere, NULL);
  assert_refused (on_pipe, 1, pipe);
  assert_refused (on_folder, 1, folder);
  assert_refused (on_full, 1, "/dev/full");
  assert_refused (on_none, 1, nowhere);
  g_assert_cmpint (g_stat (pipe, &status), ==, 0);
  g_assert_true (S_ISFIFO (status.st_mode));
  remove_scratch (folder);
}

/* A sheet with a fault, or a monitor without RGB, leaves an older file as it was. */
static void
test_old_file_stays (void)
{
  g_autofree char *folder = scratch_folder ();
  g_autofree char *no_rgb = demo_with ("signals=rgb; component", "signals=component");
  g_autofree char *bad = write_scratch (folder, "bad.bench", "[bench-sheet]\nformat=1\n");
  g_autofree char *path = write_scratch (folder, "old.edid", "old");
  g_autoptr (GString) changed = g_string_new (no_rgb);
  g_string_replace (changed, "syncs=composite-sync; on-green; on-y", "syncs=on-y", 0);
  g_autofree char *sheet = write_scratch (folder, "no-rgb.bench", changed->str);
  g_autoptr (Run) faulty = run_cli ("edid", bad, "-o", path, NULL);
  g_autoptr (Run) without = run_cli ("edid", sheet, "-o", path, NULL);
  g_autofree char *after = read_text (path);

  assert_refused (faulty, 1, bad);
  assert_refused (without, 1, "RGB");
  g_assert_nonnull (strstr (without->err, sheet));
  g_assert_cmpstr (after, ==, "old");
  remove_scratch (folder);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/edid/conforms", test_conforms);
  g_test_add_func ("/edid/reads-back", test_reads_back);
  g_test_add_func ("/edid/listing", test_listing);
  g_test_add_func ("/edid/no-such-timing", test_no_such_timing);
  g_test_add_func ("/edid/notes", test_notes);
  g_test_add_func ("/edid/bad-bytes", test_bad_bytes);
  g_test_add_func ("/edid/unreadable", test_unreadable);
  g_test_add_func ("/edid/own-sheet", test_own_sheet);
  g_test_add_func ("/edid/no-plain-file", test_no_plain_file);
  g_test_add_func ("/edid/old-file-stays", test_old_file_stays);
  return g_test_run ();
}
