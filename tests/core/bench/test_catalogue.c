/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/bench/catalogue.h"

#include <string.h>

#include "core/base/keyfile.h"
#include "core/fit/fit.h"
#include "properties.h"
#include "support.h"

/* What is shipped */

static void
test_no_faults (void)
{
  g_autoptr (GPtrArray) faults = bw_test_faults_new ();
  g_autoptr (BwCatalogue) catalogue = bw_catalogue_new (NULL, faults);

  bw_test_no_faults (faults);
  g_assert_cmpuint (bw_catalogue_rasters (catalogue)->len, >, 100);
  g_assert_cmpuint (bw_catalogue_monitors (catalogue)->len, >, 3);
  g_assert_cmpuint (bw_catalogue_sources (catalogue)->len, >, 10);
}

static void
assert_new_name (GHashTable *names, const char *name)
{
  if (g_hash_table_add (names, g_strdup (name)))
    return;
  g_test_message ("“%s” stands twice", name);
  g_test_fail ();
}

/* No id or alias twice, and each finds its raster. */
static void
test_raster_names (void)
{
  GPtrArray *rasters = bw_catalogue_rasters (bw_test_catalogue ());
  g_autoptr (GHashTable) names = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

  for (guint i = 0; i < rasters->len; i++)
    {
      const BwRaster *raster = rasters->pdata[i];
      g_auto (GStrv) aliases = g_strsplit (raster->aliases != NULL ? raster->aliases : "", ";", -1);
      assert_new_name (names, raster->id);
      g_assert_true (bw_catalogue_raster (bw_test_catalogue (), raster->id) == raster);
      g_assert_true (bw_catalogue_is_shipped (bw_test_catalogue (), raster));
      for (char **alias = aliases; *alias != NULL; alias++)
        if (*g_strstrip (*alias) != '\0')
          {
            assert_new_name (names, *alias);
            g_assert_true (bw_catalogue_raster (bw_test_catalogue (), *alias) == raster);
          }
    }
  g_assert_null (bw_catalogue_raster (bw_test_catalogue (), "no such raster"));
  g_assert_null (bw_catalogue_raster (bw_test_catalogue (), ""));
}

static void
test_monitor_names (void)
{
  GPtrArray *monitors = bw_catalogue_monitors (bw_test_catalogue ());
  g_autoptr (GHashTable) ids = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  for (guint i = 0; i < monitors->len; i++)
    assert_new_name (ids, ((BwMonitor *) monitors->pdata[i])->id);
}

static void
test_source_names (void)
{
  GPtrArray *sources = bw_catalogue_sources (bw_test_catalogue ());
  g_autoptr (GHashTable) ids = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  for (guint i = 0; i < sources->len; i++)
    assert_new_name (ids, ((BwSource *) sources->pdata[i])->id);
}

static void
assert_says_where_from (const char *id, const char *text)
{
  if (text != NULL && strlen (text) > 3)
    return;
  g_test_message ("%s does not say where its figures come from", id);
  g_test_fail ();
}

static void
test_every_entry_has_a_source (void)
{
  const BwCatalogue *catalogue = bw_test_catalogue ();
  GPtrArray *rasters = bw_catalogue_rasters (catalogue);
  GPtrArray *monitors = bw_catalogue_monitors (catalogue);
  GPtrArray *sources = bw_catalogue_sources (catalogue);

  for (guint i = 0; i < rasters->len; i++)
    assert_says_where_from (((BwRaster *) rasters->pdata[i])->id,
                            ((BwRaster *) rasters->pdata[i])->source);
  for (guint i = 0; i < monitors->len; i++)
    assert_says_where_from (((BwMonitor *) monitors->pdata[i])->id,
                            ((BwMonitor *) monitors->pdata[i])->source);
  for (guint i = 0; i < sources->len; i++)
    assert_says_where_from (((BwSource *) sources->pdata[i])->id,
                            ((BwSource *) sources->pdata[i])->origin);
}

/* The broadcast systems that a bench cannot do without */
static void
test_systems_there (void)
{
  static const char *const ids[] = {
    "525-59.94-interlaced",  "625-50-interlaced",     "525-60-interlaced",
    "262-60.05-progressive", "263-59.83-progressive", "312-50.08-progressive",
    "313-49.92-progressive", "525-59.94-progressive", "625-50-progressive",
    "750-50-progressive",    "750-59.94-progressive", "750-60-progressive",
    "1125-50-interlaced",    "1125-59.94-interlaced", "1125-60-interlaced",
  };
  for (gsize i = 0; i < G_N_ELEMENTS (ids); i++)
    if (bw_catalogue_raster (bw_test_catalogue (), ids[i]) == NULL)
      {
        g_test_message ("there is no raster %s", ids[i]);
        g_test_fail ();
      }
}

/* Each monitor and source is sound, and written and read it is the same. */
static void
test_monitors_check (void)
{
  GPtrArray *monitors = bw_catalogue_monitors (bw_test_catalogue ());
  for (guint i = 0; i < monitors->len; i++)
    {
      BwMonitor *monitor = monitors->pdata[i];
      g_autoptr (BwMonitor) empty = bw_monitor_new ();
      g_autofree char *fault = bw_property_fields_kept (&bw_monitor_fields, monitor, empty);
      g_assert_cmpstr (fault, ==, NULL);
      g_assert_cmpuint (monitor->inputs->len, >, 0);
      for (guint j = 0; j < monitor->inputs->len; j++)
        {
          g_autoptr (BwInput) no_input = bw_input_new ();
          g_autoptr (GError) error = NULL;
          BwInput *input = bw_monitor_input (monitor, j);
          g_autofree char *odd = bw_property_fields_kept (&bw_input_fields, input, no_input);
          g_assert_cmpstr (odd, ==, NULL);
          g_assert_true (bw_input_check (input, &error));
          g_assert_no_error (error);
        }
    }
}

static void
test_sources_check (void)
{
  GPtrArray *sources = bw_catalogue_sources (bw_test_catalogue ());
  for (guint i = 0; i < sources->len; i++)
    {
      BwSource *source = sources->pdata[i];
      g_autoptr (BwSource) empty = bw_source_new ();
      g_autoptr (GError) error = NULL;
      g_autofree char *fault = bw_property_fields_kept (&bw_source_fields, source, empty);
      g_assert_cmpstr (fault, ==, NULL);
      g_assert_true (bw_source_check (source, &error));
      g_assert_no_error (error);
      if (bw_catalogue_raster (bw_test_catalogue (), source->raster) == NULL)
        {
          g_test_message ("%s: there is no raster %s", source->id, source->raster);
          g_test_fail ();
        }
    }
}

/* Every shipped source at every input of every shipped monitor is judged soundly. */
static void
test_all_cells (void)
{
  const BwCatalogue *catalogue = bw_test_catalogue ();
  GPtrArray *monitors = bw_catalogue_monitors (catalogue);
  GPtrArray *sources = bw_catalogue_sources (catalogue);

  for (guint i = 0; i < monitors->len; i++)
    {
      g_autoptr (BwSheet) sheet = bw_sheet_new ();
      bw_monitor_free (sheet->monitor);
      sheet->monitor = bw_monitor_copy (monitors->pdata[i]);
      for (guint j = 0; j < sources->len; j++)
        g_ptr_array_add (sheet->sources, bw_source_copy (sources->pdata[j]));
      g_autofree char *fault = bw_property_cells (sheet, catalogue);
      g_assert_cmpstr (fault, ==, NULL);
    }
}

/* The user's own */

#define USER_LINE                                                                                  \
  "source=measured\nscan=progressive\nline_rate=15.7 kHz\nh_front_porch=1.5 us\nh_sync=4.7 us\n"   \
  "h_back_porch=4.5 us\nv_active=240\nv_front_porch=4\nv_sync=3\nv_back_porch=15\n"

#define USER_INPUT                                                                                 \
  "name=In\nconnectors=bnc\nsignals=rgb\nsyncs=composite-sync\nshapes=bi-level\n"                  \
  "polarities=negative\nscans=progressive\nvideo_level=0.5 V .. 1 V\nsync_level=0.2 V .. 0.6 V\n"

#define USER_MONITOR                                                                               \
  "name=Mine\ndiagonal=9 in\naspect=4:3\nline_rates=15 kHz .. 16 kHz\n"                            \
  "field_rates=48 Hz .. 62 Hz\nline_retrace=9 us\nfield_retrace=800 us\n"

#define USER_SOURCE                                                                                \
  "name=Mine\nraster=525-59.94-interlaced\nsignal=rgb\nsyncs=composite-sync\nconnector=bnc\n"      \
  "video_level=0.7 V\nsync_level=0.3 V\naspect=4:3\n"

static void
test_user_adds (void)
{
  g_autoptr (GPtrArray) faults = bw_test_faults_new ();
  g_autoptr (BwCatalogue) catalogue = bw_catalogue_new (NULL, faults);
  guint before = bw_catalogue_rasters (catalogue)->len;
  const char text[] = "[mine]\nname=Mine\naliases=own;my own;\n" USER_LINE;

  bw_catalogue_add_text (catalogue, BW_CATALOGUE_RASTERS, text, strlen (text), "user.ini", faults);
  bw_test_no_faults (faults);
  const BwRaster *mine = bw_catalogue_raster (catalogue, "mine");
  g_assert_nonnull (mine);
  g_assert_cmpuint (bw_catalogue_rasters (catalogue)->len, ==, before + 1);
  g_assert_false (bw_catalogue_is_shipped (catalogue, mine));
  g_assert_true (bw_catalogue_raster (catalogue, "own") == mine);
  g_assert_true (bw_catalogue_raster (catalogue, "my own") == mine);
}

static void
test_user_overrides (void)
{
  g_autoptr (GPtrArray) faults = bw_test_faults_new ();
  g_autoptr (BwCatalogue) catalogue = bw_catalogue_new (NULL, faults);
  guint before = bw_catalogue_rasters (catalogue)->len;
  const char text[] = "[625-50-interlaced]\nname=Mine\n" USER_LINE;
  const char again[] = "[625-50-interlaced]\nname=Mine again\n" USER_LINE;

  bw_catalogue_add_text (catalogue, BW_CATALOGUE_RASTERS, text, strlen (text), "user.ini", faults);
  bw_catalogue_add_text (catalogue, BW_CATALOGUE_RASTERS, again, strlen (again), "user.ini",
                         faults);
  bw_test_no_faults (faults);
  const BwRaster *mine = bw_catalogue_raster (catalogue, "625-50-interlaced");
  g_assert_cmpuint (bw_catalogue_rasters (catalogue)->len, ==, before);
  g_assert_cmpstr (mine != NULL ? mine->name : NULL, ==, "Mine again");
  g_assert_false (mine != NULL && bw_catalogue_is_shipped (catalogue, mine));
}

static void
test_user_overrides_others (void)
{
  g_autoptr (GPtrArray) faults = bw_test_faults_new ();
  g_autoptr (BwCatalogue) catalogue = bw_catalogue_new (NULL, faults);
  guint n_monitors = bw_catalogue_monitors (catalogue)->len;
  guint n_sources = bw_catalogue_sources (catalogue)->len;
  const BwMonitor *first = bw_catalogue_monitors (catalogue)->pdata[0];
  g_autofree char *monitors = g_strdup_printf ("[%s]\n%s[%s/1]\n%s[mine]\n%s[mine/1]\n%s",
                                               first->id, USER_MONITOR, first->id, USER_INPUT,
                                               USER_MONITOR, USER_INPUT);
  const char sources[] = "[composite-pal]\n" USER_SOURCE "[mine]\n" USER_SOURCE;

  bw_catalogue_add_text (catalogue, BW_CATALOGUE_MONITORS, monitors, strlen (monitors), "u",
                         faults);
  bw_catalogue_add_text (catalogue, BW_CATALOGUE_SOURCES, sources, strlen (sources), "u", faults);
  bw_test_no_faults (faults);
  first = bw_catalogue_monitors (catalogue)->pdata[0];
  g_assert_cmpstr (first->name, ==, "Mine");
  g_assert_cmpuint (first->inputs->len, ==, 1);
  g_assert_cmpuint (bw_catalogue_monitors (catalogue)->len, ==, n_monitors + 1);
  g_assert_cmpuint (bw_catalogue_sources (catalogue)->len, ==, n_sources + 1);
}

/* A user's alias must not hide an entry's own id. */
static void
test_alias_is_weaker_than_id (void)
{
  g_autoptr (GPtrArray) faults = bw_test_faults_new ();
  g_autoptr (BwCatalogue) catalogue = bw_catalogue_new (NULL, faults);
  const char text[] = "[mine]\nname=Mine\naliases=625-50-interlaced\n" USER_LINE;

  bw_catalogue_add_text (catalogue, BW_CATALOGUE_RASTERS, text, strlen (text), "user.ini", faults);
  const BwRaster *raster = bw_catalogue_raster (catalogue, "625-50-interlaced");
  g_assert_cmpstr (raster != NULL ? raster->id : NULL, ==, "625-50-interlaced");
}

/* Bad entries: reported with file, group and key, and the rest is there */

typedef struct
{
  const char *name;
  BwCatalogueKind kind;
  const char *text; /* the bad entry is [bad], and [good] follows or stands before it */
  GQuark (*domain) (void);
  int code;
  const char *says[3];
} BadCase;

#define GOOD_RASTER "[good]\nname=Good\n" USER_LINE
#define GOOD_MONITOR "[good]\n" USER_MONITOR "[good/1]\n" USER_INPUT
#define GOOD_SOURCE "[good]\n" USER_SOURCE

static const BadCase bad_cases[] = {
  { "raster-missing-key",
    BW_CATALOGUE_RASTERS,
    "[bad]\n" USER_LINE GOOD_RASTER,
    bw_field_error_quark,
    BW_FIELD_ERROR_MISSING,
    { "[bad]", "name" } },
  { "raster-wrong-unit",
    BW_CATALOGUE_RASTERS,
    "[bad]\nname=Bad\nserration_width=4.7 kHz\n" USER_LINE GOOD_RASTER,
    bw_field_error_quark,
    BW_FIELD_ERROR_VALUE,
    { "[bad]", "serration_width", "s, ms, us" } },
  { "raster-impossible",
    BW_CATALOGUE_RASTERS,
    "[bad]\nname=Bad\nequalising_before=6\n" USER_LINE GOOD_RASTER,
    bw_raster_error_quark,
    BW_RASTER_ERROR_PULSES,
    { "[bad]", "equalising_width" } },
  { "raster-key-twice",
    BW_CATALOGUE_RASTERS,
    GOOD_RASTER "[bad]\nname=Bad\nname=Bad\n" USER_LINE,
    bw_keyfile_error_quark,
    BW_KEYFILE_ERROR_DUPLICATE,
    { "[bad]", "name=Bad" } },
  { "raster-junk",
    BW_CATALOGUE_RASTERS,
    GOOD_RASTER "[bad]\njunk\n",
    bw_keyfile_error_quark,
    BW_KEYFILE_ERROR_SYNTAX,
    { "[bad]", "junk" } },
  { "raster-twice",
    BW_CATALOGUE_RASTERS,
    "[bad]\nname=First\n" USER_LINE GOOD_RASTER "[bad]\nname=Second\n" USER_LINE,
    bw_keyfile_error_quark,
    BW_KEYFILE_ERROR_DUPLICATE,
    { "[bad]", "twice" } },
  { "source-unknown-kind",
    BW_CATALOGUE_SOURCES,
    "[bad]\n" USER_SOURCE "mask=x\nsystem=smoke\n" GOOD_SOURCE,
    bw_field_error_quark,
    BW_FIELD_ERROR_KIND,
    { "[bad]", "system", "ntsc-m" } },
  { "source-system-without-subcarrier",
    BW_CATALOGUE_SOURCES,
    "[bad]\n" USER_SOURCE "system=ntsc-m\n" GOOD_SOURCE,
    bw_source_error_quark,
    BW_SOURCE_ERROR_SYSTEM,
    { "[bad]", "none" } },
  { "source-out-of-range",
    BW_CATALOGUE_SOURCES,
    "[bad]\n" USER_SOURCE "dc_offset=1 kV\n" GOOD_SOURCE,
    bw_field_error_quark,
    BW_FIELD_ERROR_VALUE,
    { "[bad]", "dc_offset", "V, mV" } },
  { "monitor-missing-key",
    BW_CATALOGUE_MONITORS,
    "[bad]\ndiagonal=14 in\n" GOOD_MONITOR,
    bw_field_error_quark,
    BW_FIELD_ERROR_MISSING,
    { "[bad]", "name" } },
  { "monitor-without-input",
    BW_CATALOGUE_MONITORS,
    "[bad]\n" USER_MONITOR GOOD_MONITOR,
    bw_monitor_error_quark,
    BW_MONITOR_ERROR_NO_INPUT,
    { "bad", "[bad/1]" } },
  { "monitor-input-out-of-range",
    BW_CATALOGUE_MONITORS,
    "[bad]\n" USER_MONITOR "[bad/1]\n" USER_INPUT "input_resistance=1 ohm\n" GOOD_MONITOR,
    bw_field_error_quark,
    BW_FIELD_ERROR_RANGE,
    { "[bad/1]", "input_resistance", "10 Ω" } },
  { "monitor-input-sync",
    BW_CATALOGUE_MONITORS,
    "[bad]\n" USER_MONITOR "[bad/1]\nname=In\nconnectors=bnc\nsignals=rgb\nsyncs=on-y\n"
    "shapes=bi-level\npolarities=negative\nscans=progressive\nvideo_level=0.5 V .. 1 V\n"
    "sync_level=0.2 V .. 0.6 V\n" GOOD_MONITOR,
    bw_monitor_error_quark,
    BW_MONITOR_ERROR_INPUT_SYNC,
    { "[bad/1]", "sync on Y", "RGB" } },
  { "input-without-monitor",
    BW_CATALOGUE_MONITORS,
    "[bad/1]\n" USER_INPUT GOOD_MONITOR,
    bw_keyfile_error_quark,
    BW_KEYFILE_ERROR_KEY,
    { "[bad/1]", "[bad]" } },
};

static gboolean
has_id (const BwCatalogue *catalogue, BwCatalogueKind kind, const char *id)
{
  GPtrArray *monitors = bw_catalogue_monitors (catalogue);
  GPtrArray *sources = bw_catalogue_sources (catalogue);

  if (kind == BW_CATALOGUE_RASTERS)
    return bw_catalogue_raster (catalogue, id) != NULL;
  for (guint i = 0; kind == BW_CATALOGUE_MONITORS && i < monitors->len; i++)
    if (strcmp (((BwMonitor *) monitors->pdata[i])->id, id) == 0)
      return TRUE;
  for (guint i = 0; kind == BW_CATALOGUE_SOURCES && i < sources->len; i++)
    if (strcmp (((BwSource *) sources->pdata[i])->id, id) == 0)
      return TRUE;
  return FALSE;
}

static void
test_bad (gconstpointer data)
{
  const BadCase *c = data;
  const char *words[] = { "user.ini", c->says[0], c->says[1], c->says[2], NULL };
  g_autoptr (GPtrArray) faults = bw_test_faults_new ();
  g_autoptr (BwCatalogue) catalogue = bw_catalogue_new_empty ();

  bw_catalogue_add_text (catalogue, c->kind, c->text, strlen (c->text), "user.ini", faults);
  bw_test_has_fault (faults, c->domain (), c->code, words);
  g_assert_true (has_id (catalogue, c->kind, "good"));
}

/* Faults may be of no interest. */
static void
test_bad_unheard (void)
{
  g_autoptr (BwCatalogue) catalogue = bw_catalogue_new_empty ();
  const char text[] = "junk\n[bad]\n" GOOD_SOURCE;
  bw_catalogue_add_text (catalogue, BW_CATALOGUE_SOURCES, text, strlen (text), "user.ini", NULL);
  g_assert_true (has_id (catalogue, BW_CATALOGUE_SOURCES, "good"));
}

/* The folder of the user */

static void
write_file (const char *folder, const char *name, const char *text)
{
  g_autofree char *path = g_build_filename (folder, name, NULL);
  g_assert_true (g_file_set_contents (path, text, -1, NULL));
}

static void
test_user_folder (void)
{
  char *folder = bw_test_folder_new ();
  g_autoptr (GPtrArray) faults = bw_test_faults_new ();

  write_file (folder, "rasters.ini", GOOD_RASTER "[bad]\nname=Bad\n");
  write_file (folder, "sources.ini", "[mine]\n" USER_SOURCE);
  g_autoptr (BwCatalogue) catalogue = bw_catalogue_new (folder, faults);
  g_autofree char *path = g_build_filename (folder, "rasters.ini", NULL);

  g_assert_true (has_id (catalogue, BW_CATALOGUE_RASTERS, "good"));
  g_assert_true (has_id (catalogue, BW_CATALOGUE_RASTERS, "625-50-interlaced"));
  g_assert_true (has_id (catalogue, BW_CATALOGUE_SOURCES, "mine"));
  g_assert_cmpuint (faults->len, ==, 1);
  bw_test_has_fault (faults, BW_RASTER_ERROR, BW_RASTER_ERROR_NO_RATE, WORDS (path, "[bad]"));
  bw_test_folder_remove (folder);
}

static void
test_user_folder_missing (void)
{
  g_autoptr (GPtrArray) faults = bw_test_faults_new ();
  g_autoptr (BwCatalogue) catalogue = bw_catalogue_new ("/no/such/folder", faults);
  bw_test_no_faults (faults);
  g_assert_cmpuint (bw_catalogue_rasters (catalogue)->len, ==,
                    bw_catalogue_rasters (bw_test_catalogue ())->len);
}

static void
test_user_folder_place (void)
{
  g_autofree char *folder = bw_catalogue_user_folder ();
  g_autofree char *wanted = g_build_filename (g_get_user_data_dir (), "breezeway", "catalogue",
                                              NULL);
  g_assert_cmpstr (folder, ==, wanted);
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  g_test_add_func ("/catalogue/shipped/no-faults", test_no_faults);
  g_test_add_func ("/catalogue/shipped/raster-names", test_raster_names);
  g_test_add_func ("/catalogue/shipped/monitor-names", test_monitor_names);
  g_test_add_func ("/catalogue/shipped/source-names", test_source_names);
  g_test_add_func ("/catalogue/shipped/has-a-source", test_every_entry_has_a_source);
  g_test_add_func ("/catalogue/shipped/systems-there", test_systems_there);
  g_test_add_func ("/catalogue/shipped/monitors-check", test_monitors_check);
  g_test_add_func ("/catalogue/shipped/sources-check", test_sources_check);
  g_test_add_func ("/catalogue/shipped/all-cells", test_all_cells);
  g_test_add_func ("/catalogue/user/adds", test_user_adds);
  g_test_add_func ("/catalogue/user/overrides", test_user_overrides);
  g_test_add_func ("/catalogue/user/overrides-others", test_user_overrides_others);
  g_test_add_func ("/catalogue/user/alias-is-weaker-than-id", test_alias_is_weaker_than_id);
  g_test_add_func ("/catalogue/user/folder", test_user_folder);
  g_test_add_func ("/catalogue/user/folder-missing", test_user_folder_missing);
  g_test_add_func ("/catalogue/user/folder-place", test_user_folder_place);
  g_test_add_func ("/catalogue/bad/unheard", test_bad_unheard);
  for (gsize i = 0; i < G_N_ELEMENTS (bad_cases); i++)
    {
      g_autofree char *path = g_strdup_printf ("/catalogue/bad/%s", bad_cases[i].name);
      g_test_add_data_func (path, &bad_cases[i], test_bad);
    }
  return g_test_run ();
}
