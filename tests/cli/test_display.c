/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the EDID of a display says, and the sheet that is made of it. What is in the sheet is for
 * core-displays. */
#include <string.h>

#include "run.h"

static char *
write_edid (const char *folder)
{
  g_autofree char *demo = demo_path ();
  char *path = g_build_filename (folder, "display.bin", NULL);
  g_autoptr (Run) run = run_cli ("edid", demo, "-o", path, NULL);
  g_assert_cmpint (run->status, ==, 0);
  return path;
}

static void
test_says (void)
{
  g_autofree char *folder = scratch_folder ();
  g_autofree char *path = write_edid (folder);
  g_autoptr (Run) text = run_cli ("display", path, NULL);
  g_autoptr (Run) json = run_cli ("display", path, "--json", NULL);
  g_autoptr (Run) first = run_cli ("timing", "--edid", path, "--json", NULL);
  g_autoptr (JsonObject) said = run_json (json);
  g_autoptr (JsonObject) timing = run_json (first);
  JsonArray *timings = json_object_get_array_member (said, "timings");
  JsonObject *preferred = json_array_get_object_element (timings, 0);

  g_assert_cmpint (text->status, ==, 0);
  g_assert_nonnull (strstr (text->out, "Foyer monitor"));
  g_assert_nonnull (strstr (text->out, "composite sync, sync on green"));
  g_assert_cmpstr (json_object_get_string_member (said, "name"), ==, "Foyer monitor");
  g_assert_cmpfloat (figure_of (said, "line_rate_hz_low"), ==, 15e3);
  g_assert_cmpfloat (figure_of (said, "line_rate_hz_high"), ==, 34e3);
  g_assert_cmpuint (json_array_get_length (timings), ==, 2);
  g_assert_cmpfloat (figure_of (preferred, "line_rate_hz"), ==,
                     figure_of (timing, "line_rate_hz"));
  remove_scratch (folder);
}

/* The sheet that is made is sound, and what it could not be told is on standard error. */
static void
test_sheet (void)
{
  g_autofree char *folder = scratch_folder ();
  g_autofree char *path = write_edid (folder);
  g_autofree char *sheet = g_build_filename (folder, "made.bench", NULL);
  g_autoptr (Run) made = run_cli ("display", path, "-o", sheet, NULL);
  g_autoptr (Run) check = run_cli ("sheet-check", sheet, NULL);
  g_autoptr (Run) stream = run_cli ("display", path, "-o", "-", NULL);
  g_autofree char *text = read_text (sheet);

  g_assert_cmpint (made->status, ==, 0);
  g_assert_cmpstr (made->out, ==, "");
  g_assert_nonnull (strstr (made->err, "note: An EDID says nothing of mains"));
  g_assert_cmpint (check->status, ==, 0);
  g_assert_nonnull (strstr (check->out, "sound; inputs: 1, sources: 0"));
  g_assert_cmpstr (stream->out, ==, text);
  remove_scratch (folder);
}

/* A part that is faulty is named, and costs no more than itself: here the maker's code. */
static void
test_faulty (void)
{
  g_autofree char *folder = scratch_folder ();
  g_autofree char *path = write_edid (folder);
  g_autofree char *bytes = NULL;
  gsize length;

  g_assert_true (g_file_get_contents (path, &bytes, &length, NULL));
  bytes[127] = (char) (bytes[127] + bytes[8] - (char) 0xff);
  bytes[8] = (char) 0xff;
  g_assert_true (g_file_set_contents (path, bytes, (gssize) length, NULL));
  g_autoptr (Run) run = run_cli ("display", path, NULL);
  g_assert_cmpint (run->status, ==, 0);
  g_assert_nonnull (strstr (run->out, "maker's code"));
  g_assert_nonnull (strstr (run->out, "Foyer monitor"));
  remove_scratch (folder);
}

static void
test_list (void)
{
  g_autoptr (Run) run = run_cli ("display", "--list", "--json", NULL);
  g_autoptr (JsonObject) said = run_json (run);
  g_assert_true (json_object_has_member (said, "displays"));
}

static void
test_refused (void)
{
  static const struct
  {
    const char *args[6];
    int status;
    const char *says;
  } cases[] = {
    { { "display", NULL }, 2, "--list" },
    { { "display", "--list", "x", NULL }, 2, "--list" },
    { { "display", "--list", "-o", "x.bench", NULL }, 2, "-o" },
    { { "display", "no-such-connector", NULL }, 1, "no-such-connector" },
    { { "display", "x.bin", "-o", "x.svg", NULL }, 2, ".bench" },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (Run) run = run_args (cases[i].args);
      assert_refused (run, cases[i].status, cases[i].says);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/display/says", test_says);
  g_test_add_func ("/display/sheet", test_sheet);
  g_test_add_func ("/display/faulty", test_faulty);
  g_test_add_func ("/display/list", test_list);
  g_test_add_func ("/display/refused", test_refused);
  return g_test_run ();
}
