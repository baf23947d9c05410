/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Sheets that are damaged, newer, empty, too large or not there: each fault is one line that names
 * file, group and key; a sheet that is sound is said to be so; no file is touched. */
#include <string.h>

#include "run.h"

static void
test_sound (void)
{
  g_autofree char *demo = demo_path ();
  g_autoptr (Run) run = run_cli ("sheet-check", demo, NULL);
  g_assert_cmpint (run->status, ==, 0);
  g_assert_cmpstr (run->err, ==, "");
  assert_one_line (run->out);
  g_assert_true (g_str_has_prefix (run->out, demo));

  g_autoptr (Run) json = run_cli ("sheet-check", demo, "--json", NULL);
  g_autoptr (JsonObject) root = run_json (json);
  g_assert_cmpstr (json_object_get_string_member (root, "sheet"), ==, demo);
  g_assert_true (json_object_get_boolean_member (root, "sound"));
  g_assert_cmpuint (json_array_get_length (json_object_get_array_member (root, "faults")), ==, 0);
}

/* Pin 19 of the peritelevision connector gives video or sync (EN 50049-1 / IEC 60933-1, secondary sources): a
 * console cannot give both at once. Its sheet is sound all the same. */
static void
test_one_pin (void)
{
  g_autofree char *folder = scratch_folder ();
  g_autofree char *text = demo_with ("syncs=composite-sync\nconnector=peritelevision",
                                     "syncs=in-video; composite-sync\nconnector=peritelevision");
  g_autofree char *path = write_scratch (folder, "both.bench", text);
  g_autoptr (Run) run = run_cli ("sheet-check", path, NULL);
  g_autoptr (Run) json = run_cli ("sheet-check", path, "--json", NULL);
  g_autoptr (JsonObject) root = run_json (json);
  JsonArray *remarks = json_object_get_array_member (root, "remarks");

  g_assert_cmpint (run->status, ==, 0);
  g_assert_cmpstr (run->err, ==, "");
  g_assert_nonnull (strstr (run->out, "[source 3] syncs: "));
  g_assert_nonnull (strstr (run->out, "pin 19 "));
  g_assert_true (json_object_get_boolean_member (root, "sound"));
  g_assert_cmpuint (json_array_get_length (remarks), ==, 1);
  g_assert_nonnull (strstr (run->out, json_array_get_string_element (remarks, 0)));
  remove_scratch (folder);
}

/* One fault each: what is changed in the demo, and what the line must name. */
static const struct
{
  const char *path;
  const char *from;
  const char *to;
  const char *names[3];
} faults[] = {
  { "unit",
    "field_retrace=600 us",
    "field_retrace=600 lines",
    { "[monitor] field_retrace: ", "“lines”", "allowed: " } },
  { "no-unit", "field_retrace=600 us", "field_retrace=600", { "[monitor] field_retrace: " } },
  { "comma", "bandwidth=20 MHz", "bandwidth=2,5 MHz", { "[monitor] bandwidth: " } },
  { "range", "diagonal=19 in", "diagonal=19 m", { "[monitor] diagonal: " } },
  { "kind", "mask=slot", "mask=net", { "[monitor] mask: ", "grille" } },
  { "missing", "name=Foyer monitor\n", "", { "[monitor] name: " } },
  { "origin", "pitch=0.45 mm\n", "pitch=0.45 mm\npitch.from=hearsay\n",
    { "[monitor] pitch.from: ", "hearsay", "plate" } },
  { "raster",
    "raster=vesa-dmt-25",
    "raster=vesa-dmt-99",
    { "[source 8] raster: ", "vesa-dmt-99" } },
  { "sync",
    "signal=yc\nsyncs=in-video\nsystem",
    "signal=yc\nsyncs=on-green\nsystem",
    { "[source 2]" } },
  { "not-a-key", "mask=slot", "mask slot", { "line ", "mask slot" } },
  { "twice", "mask=slot", "mask=slot\nmask=dot", { "line ", "mask" } },
  { "group-twice", "[source 2]", "[source 1]", { "line ", "[source 1]" } },
  { "no-monitor", "[monitor]", "[tv]", { "[monitor]" } },
  { "no-sheet", "[bench-sheet]", "[sheet]", { "[bench-sheet]" } },
  { "no-format", "format=1\n", "", { "[bench-sheet] format: " } },
  { "newer", "format=1\n", "format=3\n", { "[bench-sheet] format: ", "newer", "format 3" } },
};

static void
test_fault (gconstpointer data)
{
  gsize i = GPOINTER_TO_SIZE (data);
  g_autofree char *folder = scratch_folder ();
  g_autofree char *text = demo_with (faults[i].from, faults[i].to);
  g_autofree char *path = write_scratch (folder, "bad.bench", text);
  g_autoptr (Run) check = run_cli ("sheet-check", path, NULL);
  g_autoptr (Run) fit = run_cli ("fit", path, NULL);
  g_autofree char *after = read_text (path);

  g_assert_cmpint (check->status, ==, 1);
  g_assert_cmpstr (check->out, ==, "");
  assert_one_line (check->err);
  g_assert_true (g_str_has_prefix (check->err, path));
  for (gsize n = 0; n < G_N_ELEMENTS (faults[i].names) && faults[i].names[n] != NULL; n++)
    if (strstr (check->err, faults[i].names[n]) == NULL)
      g_error ("“%s” is not in: %s", faults[i].names[n], check->err);
  g_assert_cmpint (fit->status, ==, 1);
  g_assert_cmpstr (fit->out, ==, "");
  g_assert_cmpstr (fit->err, ==, check->err);
  g_assert_cmpstr (after, ==, text);
  remove_scratch (folder);
}

/* Whether @row tells of @key in a group such as @group: "input 2" is "input N". */
static gboolean
tells_of (JsonObject *row, const char *group, const char *key)
{
  const char *kind = json_object_get_string_member (row, "group");
  const char *number = strstr (kind, " N");
  gsize length = number != NULL ? (gsize) (number - kind) + 1 : strlen (kind) + 1;
  return strncmp (kind, group, length) == 0
         && strcmp (json_object_get_string_member (row, "key"), key) == 0;
}

static JsonObject *
find_key (JsonArray *keys, const char *group, const char *key)
{
  for (guint i = 0; i < json_array_get_length (keys); i++)
    if (tells_of (json_array_get_object_element (keys, i), group, key))
      return json_array_get_object_element (keys, i);
  return NULL;
}

/* What is called required cannot be left out, and the fault then names it. */
static void
check_required (const char *folder, const char *group, const char *key, const char *value)
{
  g_autofree char *line = g_strdup_printf ("\n%s=%s\n", key, value);
  g_autofree char *text = demo_with (line, "\n");
  g_autofree char *path = write_scratch (folder, "short.bench", text);
  g_autoptr (Run) run = run_cli ("sheet-check", path, NULL);
  g_autofree char *place = g_strdup_printf ("[%s] %s", group, key);
  g_assert_cmpint (run->status, ==, 1);
  g_assert_nonnull (strstr (run->err, place));
}

/* Every key that the demonstration has is in the list, under its group. */
static void
test_list (void)
{
  g_autofree char *folder = scratch_folder ();
  g_autofree char *demo = demo_path ();
  g_autoptr (GKeyFile) file = g_key_file_new ();
  g_autoptr (Run) run = run_cli ("sheet-check", "--list", "--json", NULL);
  g_autoptr (JsonParser) parser = json_parser_new ();
  g_assert_true (g_key_file_load_from_file (file, demo, G_KEY_FILE_NONE, NULL));
  g_assert_true (json_parser_load_from_data (parser, run->out, -1, NULL));
  JsonObject *root = json_node_get_object (json_parser_get_root (parser));
  JsonArray *list = json_object_get_array_member (root, "keys");
  g_auto (GStrv) groups = g_key_file_get_groups (file, NULL);
  guint n_required = 0;

  for (char **group = groups; *group != NULL; group++)
    {
      g_auto (GStrv) keys = g_key_file_get_keys (file, *group, NULL, NULL);
      for (char **key = keys; *key != NULL; key++)
        {
          g_autofree char *value = g_key_file_get_value (file, *group, *key, NULL);
          JsonObject *row = find_key (list, *group, *key);
          if (row == NULL)
            g_error ("[%s] %s is not in the list", *group, *key);
          if (!json_object_get_boolean_member (row, "required")
              || (strcmp (*group, "monitor") != 0 && strcmp (*group, "bench-sheet") != 0))
            continue;
          n_required++;
          check_required (folder, *group, *key, value);
        }
    }
  g_assert_cmpuint (n_required, >, 0);
  remove_scratch (folder);
}

/* Three faults in three groups: sheet-check tells each, the others the first and how many more. */
static void
test_every_fault (void)
{
  g_autofree char *folder = scratch_folder ();
  g_autofree char *one = demo_with ("mask=slot", "mask=net");
  g_autoptr (GString) text = g_string_new (one);
  g_string_replace (text, "clamp=back-porch", "clamp=none", 1);
  g_string_replace (text, "raster=vesa-dmt-25", "raster=none", 1);
  g_autofree char *path = write_scratch (folder, "bad.bench", text->str);
  g_autoptr (Run) check = run_cli ("sheet-check", path, NULL);
  g_autoptr (Run) fit = run_cli ("fit", path, "--json", NULL);

  g_assert_cmpint (check->status, ==, 1);
  g_assert_cmpuint (count_lines (check->err), ==, 3);
  g_assert_nonnull (strstr (check->err, "[monitor] mask: "));
  g_assert_nonnull (strstr (check->err, "[input 1] clamp: "));
  g_assert_nonnull (strstr (check->err, "[source 8] raster: "));
  g_assert_cmpint (fit->status, ==, 1);
  g_assert_cmpstr (fit->out, ==, "");
  assert_one_line (fit->err);
  g_assert_nonnull (strstr (fit->err, "2 more"));

  g_autoptr (Run) json = run_cli ("sheet-check", path, "--json", NULL);
  g_autoptr (JsonObject) root = parse_object (json->out);
  g_assert_cmpint (json->status, ==, 1);
  g_assert_false (json_object_get_boolean_member (root, "sound"));
  g_assert_cmpuint (json_array_get_length (json_object_get_array_member (root, "faults")), ==, 3);
  remove_scratch (folder);
}

/* Whatever is not a sheet is one line that names it, from each command that reads one. */
static void
check_not_a_sheet (const char *path, const char *says)
{
  static const char *const commands[] = { "sheet-check", "fit", "report" };
  g_autofree char *folder = scratch_folder ();
  g_autofree char *pdf = g_build_filename (folder, "out.pdf", NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (commands); i++)
    {
      gboolean is_report = strcmp (commands[i], "report") == 0;
      g_autoptr (Run) run = is_report ? run_cli ("report", path, "-o", pdf, NULL)
                                      : run_cli (commands[i], path, NULL);
      g_assert_cmpint (run->status, ==, 1);
      g_assert_cmpstr (run->out, ==, "");
      assert_one_line (run->err);
      g_assert_true (g_str_has_prefix (run->err, path));
      if (strstr (run->err, says) == NULL)
        g_error ("“%s” is not in: %s", says, run->err);
    }
  g_assert_false (g_file_test (pdf, G_FILE_TEST_EXISTS));
  remove_scratch (folder);
}

static void
test_empty (void)
{
  g_autofree char *folder = scratch_folder ();
  g_autofree char *path = write_scratch (folder, "empty.bench", "");
  check_not_a_sheet (path, "not a bench sheet");
  remove_scratch (folder);
}

static void
test_directory (void)
{
  g_autofree char *folder = scratch_folder ();
  check_not_a_sheet (folder, "cannot be read");
  remove_scratch (folder);
}

static void
test_missing (void)
{
  g_autofree char *folder = scratch_folder ();
  g_autofree char *path = g_build_filename (folder, "no.bench", NULL);
  check_not_a_sheet (path, "cannot be read");
  remove_scratch (folder);
}

static void
test_too_large (void)
{
  g_autofree char *folder = scratch_folder ();
  g_autofree char *demo = demo_path ();
  g_autofree char *text = read_text (demo);
  g_autofree char *comment = g_strnfill (5 * 1024 * 1024, '#');
  g_autofree char *large = g_strconcat (text, "\n", comment, "\n", NULL);
  g_autofree char *path = write_scratch (folder, "large.bench", large);
  check_not_a_sheet (path, "4 MiB");
  remove_scratch (folder);
}

static void
test_no_text (void)
{
  g_autofree char *folder = scratch_folder ();
  g_autofree char *path = write_scratch (folder, "odd.bench",
                                         "[bench-sheet]\nformat=1\n\xff\xfe\n");
  check_not_a_sheet (path, "line 3 is not UTF-8");
  remove_scratch (folder);
}

/* A file name with a line feed in it does not make two lines of the complaint. */
static void
test_odd_name (void)
{
  g_autofree char *folder = scratch_folder ();
  g_autofree char *path = write_scratch (folder, "two\nlines.bench", "");
  g_autoptr (Run) run = run_cli ("sheet-check", path, NULL);
  g_assert_cmpint (run->status, ==, 1);
  assert_one_line (run->err);
  remove_scratch (folder);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sheet-check/sound", test_sound);
  g_test_add_func ("/sheet-check/one-pin", test_one_pin);
  for (gsize i = 0; i < G_N_ELEMENTS (faults); i++)
    {
      g_autofree char *path = g_strconcat ("/sheet-check/fault/", faults[i].path, NULL);
      g_test_add_data_func (path, GSIZE_TO_POINTER (i), test_fault);
    }
  g_test_add_func ("/sheet-check/every-fault", test_every_fault);
  g_test_add_func ("/sheet-check/list", test_list);
  g_test_add_func ("/sheet-check/empty", test_empty);
  g_test_add_func ("/sheet-check/directory", test_directory);
  g_test_add_func ("/sheet-check/missing", test_missing);
  g_test_add_func ("/sheet-check/too-large", test_too_large);
  g_test_add_func ("/sheet-check/no-text", test_no_text);
  g_test_add_func ("/sheet-check/odd-name", test_odd_name);
  return g_test_run ();
}
