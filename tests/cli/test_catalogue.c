/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The user's own catalogue: it adds to the shipped one and overrides it, and a bad entry is told
 * and leaves the rest. */
#include <string.h>

#include "run.h"

static const char own_raster
    [] = "name=Own raster\nsource=Invented for this test\nscan=progressive\nline_rate=20 kHz\n"
         "h_front_porch=10 ns\nh_sync=4 us\nh_back_porch=5 us\n"
         "v_active=300\nv_front_porch=5\nv_sync=5\nv_back_porch=10\n";

static const char own_monitor
    [] = "name=Own monitor\nsource=Invented for this test\n"
         "mains_voltage=230 V\nmains_frequency=50 Hz\ndiagonal=14 in\naspect=4:3\nmask=dot\n"
         "line_rates=15 kHz .. 16 kHz\nfield_rates=48 Hz .. 62 Hz\n"
         "line_retrace=9 us\nfield_retrace=800 us\n";

static const char own_input
    [] = "name=Own input\nconnectors=bnc\nsignals=rgb\nsyncs=composite-sync\nshapes=bi-level\n"
         "polarities=negative\nscans=progressive; interlaced\nvideo_level=0.5 V .. 1 V\n"
         "sync_level=0.2 V .. 5 V\ntermination=fixed\nsync_termination=fixed\n"
         "clamp=back-porch\n";

static const char
    own_source[] = "name=Own source\norigin=Invented for this test\nraster=own-raster\nsignal=rgb\n"
                   "syncs=composite-sync\nconnector=bnc\nvideo_level=700 mV\nsync_level=300 mV\n"
                   "coupling=dc\naspect=4:3\n";

/* A data folder of its own, and the environment that points to it. */
typedef struct
{
  char *folder;
  char **environment;
} Home;

static void
set_up (Home *home, gconstpointer data)
{
  home->folder = scratch_folder ();
  home->environment = g_environ_setenv (g_get_environ (), "XDG_DATA_HOME", home->folder, TRUE);
}

static void
tear_down (Home *home, gconstpointer data)
{
  remove_scratch (home->folder);
  g_free (home->folder);
  g_strfreev (home->environment);
}

/* Writes the words, which end in NULL, one after the other to a file of the user's catalogue. */
static char *
write_own (Home *home, const char *file, const char *first, ...)
{
  g_autofree char *name = g_build_filename ("breezeway", "catalogue", file, NULL);
  g_autoptr (GString) text = g_string_new (NULL);
  va_list list;
  va_start (list, first);
  for (const char *word = first; word != NULL; word = va_arg (list, const char *))
    g_string_append (text, word);
  va_end (list);
  return write_scratch (home->folder, name, text->str);
}

static JsonObject *
catalogue_json (Home *home, const char *part)
{
  g_autoptr (Run) run = run_cli_in (home->environment, "catalogue", part, "--json", NULL);
  g_assert_cmpint (run->status, ==, 0);
  return parse_object (run->out);
}

/* The member of the array @part whose id is @id, or NULL. */
static JsonObject *
entry (JsonObject *root, const char *part, const char *id)
{
  JsonArray *entries = json_object_get_array_member (root, part);
  for (guint i = 0; i < json_array_get_length (entries); i++)
    {
      JsonObject *object = json_array_get_object_element (entries, i);
      if (strcmp (json_object_get_string_member (object, "id"), id) == 0)
        return object;
    }
  return NULL;
}

static guint
n_entries (JsonObject *root, const char *part)
{
  return json_array_get_length (json_object_get_array_member (root, part));
}

static void
test_adds (Home *home, gconstpointer data)
{
  g_autoptr (JsonObject) before = catalogue_json (home, "rasters");
  g_autofree char *path = write_own (home, "rasters.ini", "[own-raster]\n", own_raster, NULL);
  g_autoptr (JsonObject) after = catalogue_json (home, "rasters");
  g_autoptr (Run) run = run_cli_in (home->environment, "timing", "own-raster", "--json", NULL);
  g_autoptr (JsonObject) timing = run_json (run);

  g_assert_null (entry (before, "rasters", "own-raster"));
  g_assert_nonnull (entry (after, "rasters", "own-raster"));
  g_assert_cmpuint (n_entries (after, "rasters"), ==, n_entries (before, "rasters") + 1);
  g_assert_true (is_near (figure_of (timing, "line_rate_hz"), 20e3, 0));
  g_assert_true (is_near (figure_of (timing, "field_rate_hz"), 62.5, 0)); /* 20 kHz / 320 */
  /* 1e-8 must come out as a number that JSON has */
  g_assert_true (is_near (figure_of (timing, "h_front_porch_s"), 10e-9, 0));
}

static void
test_overrides (Home *home, gconstpointer data)
{
  g_autoptr (JsonObject) before = catalogue_json (home, "rasters");
  g_autofree char *path = write_own (home, "rasters.ini", "[vesa-dmt-04]\n", own_raster, NULL);
  g_autoptr (JsonObject) after = catalogue_json (home, "rasters");
  JsonObject *own = entry (after, "rasters", "vesa-dmt-04");

  g_assert_cmpuint (n_entries (after, "rasters"), ==, n_entries (before, "rasters"));
  g_assert_cmpstr (json_object_get_string_member (own, "name"), ==, "Own raster");
  g_assert_true (is_null (own, "pixel_clock_hz"));
}

/* One warning names the file, the group and the key; what stands around the bad entry is taken. */
static void
test_bad_entry (Home *home, gconstpointer data)
{
  g_autofree char *path = write_own (home, "rasters.ini", "[first]\n", own_raster,
                                     "[broken]\nname=x\nsource=x\nscan=sideways\n",
                                     "line_rate=20 kHz\n[last]\n", own_raster, NULL);
  g_autoptr (Run) run = run_cli_in (home->environment, "timing", "last", NULL);

  g_assert_cmpint (run->status, ==, 0);
  g_assert_nonnull (strstr (run->out, "Own raster"));
  assert_one_line (run->err);
  g_assert_nonnull (strstr (run->err, "warning"));
  g_assert_nonnull (strstr (run->err, path));
  g_assert_nonnull (strstr (run->err, "[broken] scan: "));
  g_assert_nonnull (strstr (run->err, "progressive"));

  g_autoptr (Run) listing = run_cli_in (home->environment, "catalogue", "rasters", NULL);
  g_assert_cmpint (listing->status, ==, 0);
  assert_one_line (listing->err);
  g_assert_nonnull (strstr (listing->out, "\nfirst "));
  g_assert_null (strstr (listing->out, "\nbroken "));
  g_assert_nonnull (strstr (listing->out, "\nlast "));
}

static void
test_no_text (Home *home, gconstpointer data)
{
  g_autofree char *path = write_own (home, "rasters.ini", "\xff\xff\xff\n", NULL);
  g_autoptr (Run) run = run_cli_in (home->environment, "timing", "480i", NULL);
  g_assert_cmpint (run->status, ==, 0);
  assert_one_line (run->err);
  g_assert_nonnull (strstr (run->err, path));
}

static void
test_monitors_and_sources (Home *home, gconstpointer data)
{
  g_autofree char *monitors = write_own (home, "monitors.ini", "[own]\n", own_monitor, "[own/1]\n",
                                         own_input, "[bad]\n", own_monitor, NULL);
  g_autofree char *sources = write_own (home, "sources.ini", "[own-source]\n", own_source,
                                        "[bad-source]\nname=x\nvideo_level=5 s\n", NULL);
  g_autoptr (Run) run = run_cli_in (home->environment, "catalogue", "--json", NULL);
  g_autoptr (JsonObject) root = parse_object (run->out);

  g_assert_cmpint (run->status, ==, 0);
  g_assert_nonnull (entry (root, "monitors", "own"));
  g_assert_null (entry (root, "monitors", "bad"));
  g_assert_nonnull (entry (root, "sources", "own-source"));
  g_assert_null (entry (root, "sources", "bad-source"));
  g_assert_nonnull (entry (root, "rasters", "525-59.94-interlaced"));
  g_assert_cmpuint (count_lines (run->err), ==, 2);
  g_assert_nonnull (strstr (run->err, monitors));
  g_assert_nonnull (strstr (run->err, "[bad]"));
  g_assert_nonnull (strstr (run->err, sources));
  g_assert_nonnull (strstr (run->err, "[bad-source]"));
}

/* Each part alone, as text and as JSON, names what the shipped files have. */
static void
test_parts (Home *home, gconstpointer data)
{
  static const char *const parts[] = { "rasters", "monitors", "sources" };
  for (gsize i = 0; i < G_N_ELEMENTS (parts); i++)
    {
      g_autofree char *file = g_strconcat ("data/catalogue/", parts[i], ".ini", NULL);
      g_autofree char *path = source_path (file);
      g_autoptr (GKeyFile) shipped = g_key_file_new ();
      g_autoptr (JsonObject) root = catalogue_json (home, parts[i]);
      g_autoptr (Run) text = run_cli_in (home->environment, "catalogue", parts[i], NULL);
      guint n = 0;

      g_assert_true (g_key_file_load_from_file (shipped, path, G_KEY_FILE_NONE, NULL));
      g_auto (GStrv) groups = g_key_file_get_groups (shipped, NULL);
      for (char **group = groups; *group != NULL; group++)
        if (strchr (*group, '/') == NULL) /* inputs of monitors */
          {
            g_autofree char *line = g_strconcat ("\n", *group, " ", NULL);
            g_assert_nonnull (strstr (text->out, line));
            g_assert_nonnull (entry (root, parts[i], *group));
            n++;
          }
      g_assert_cmpuint (n_entries (root, parts[i]), ==, n);
      g_assert_cmpuint (json_object_get_size (root), ==, 2); /* and "format" */
      g_assert_cmpstr (text->err, ==, "");
    }
}

/* The groups of a file of the shipped catalogue, in their order, without those of inputs. */
static GPtrArray *
groups_of (const char *name)
{
  g_autofree char *path = g_build_filename (g_getenv ("BW_SOURCE_ROOT"), "data", "catalogue", name, NULL);
  g_autofree char *text = NULL;
  GPtrArray *groups = g_ptr_array_new_with_free_func (g_free);
  g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);
  for (guint i = 0; lines[i] != NULL; i++)
    if (*lines[i] == '[' && strchr (lines[i], '/') == NULL)
      g_ptr_array_add (groups, g_strndup (lines[i] + 1, strlen (lines[i]) - 2));
  return groups;
}

/* Every entry of the files is listed, in their order. */
static void
test_all_are_listed (void)
{
  static const char *const lists[][2] = { { "rasters", "rasters.ini" },
                                          { "monitors", "monitors.ini" },
                                          { "sources", "sources.ini" },
                                          { "adaptors", "adaptors.ini" } };
  g_autoptr (Run) run = run_cli ("catalogue", "--json", NULL);
  g_autoptr (JsonObject) root = run_json (run);
  for (gsize i = 0; i < G_N_ELEMENTS (lists); i++)
    {
      g_autoptr (GPtrArray) groups = groups_of (lists[i][1]);
      JsonArray *listed = json_object_get_array_member (root, lists[i][0]);
      g_assert_cmpuint (groups->len, >, 0);
      g_assert_cmpuint (json_array_get_length (listed), ==, groups->len);
      for (guint k = 0; k < groups->len; k++)
        g_assert_cmpstr (json_object_get_string_member (json_array_get_object_element (listed, k), "id"), ==,
                         groups->pdata[k]);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
#define ADD(path, func) g_test_add (path, Home, NULL, set_up, func, tear_down)
  ADD ("/catalogue/adds", test_adds);
  ADD ("/catalogue/overrides", test_overrides);
  ADD ("/catalogue/bad-entry", test_bad_entry);
  ADD ("/catalogue/no-text", test_no_text);
  ADD ("/catalogue/monitors-and-sources", test_monitors_and_sources);
  ADD ("/catalogue/parts", test_parts);
#undef ADD
  g_test_add_func ("/catalogue/all-are-listed", test_all_are_listed);
  return g_test_run ();
}
