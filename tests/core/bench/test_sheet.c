/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/bench/sheet.h"

#include <string.h>

#include "core/base/keyfile.h"
#include "properties.h"
#include "support.h"

/* The least sheet there is, to which the tests add. */
#define HEAD "[bench-sheet]\nformat=1\ntitle=Test\n\n"
#define MONITOR                                                                                    \
  "[monitor]\nname=Set\ndiagonal=14 in\naspect=4:3\nline_rates=15 kHz .. 16 kHz\n"                 \
  "field_rates=48 Hz .. 62 Hz\nline_retrace=9 us\nfield_retrace=800 us\n\n"
#define INPUT(n)                                                                                   \
  "[input " #n "]\nname=In\nconnectors=bnc\nsignals=rgb\nsyncs=composite-sync\nshapes=bi-level\n"  \
  "polarities=negative\nscans=progressive; interlaced\nvideo_level=0.5 V .. 1 V\n"                 \
  "sync_level=0.2 V .. 0.6 V\n\n"
/* composite video cannot come with sync on green */
#define ODD_INPUT                                                                                  \
  "[input 2]\nname=B\nconnectors=bnc\nsignals=composite\nsyncs=on-green\nshapes=bi-level\n"        \
  "polarities=negative\nscans=progressive\nvideo_level=0.5 V .. 1 V\nsync_level=0.2 V .. 0.6 V\n"
#define SOURCE(n, raster_id)                                                                       \
  "[source " #n "]\nname=Source " #n "\nraster=" raster_id "\nsignal=rgb\nsyncs=composite-sync\n"  \
  "connector=bnc\nvideo_level=0.7 V\nsync_level=0.3 V\naspect=4:3\n\n"
#define RASTER_LINES                                                                               \
  "name=Mine\nsource=measured\nscan=progressive\nline_rate=15.7 kHz\nh_front_porch=1.5 us\n"       \
  "h_sync=4.7 us\nh_back_porch=4.5 us\nv_active=240\nv_front_porch=4\nv_sync=3\nv_back_porch=15\n"
#define SHEET HEAD MONITOR INPUT (1) SOURCE (1, "625-50-interlaced")

static BwSheet *
parse_with (const char *text, const BwCatalogue *catalogue)
{
  g_autoptr (GPtrArray) faults = bw_test_faults_new ();
  BwSheet *sheet = bw_sheet_parse (text, strlen (text), "test.bench", catalogue, faults);
  bw_test_no_faults (faults);
  if (sheet == NULL)
    g_error ("the test's own sheet is faulty");
  return sheet;
}

static BwSheet *
parse (const char *text)
{
  return parse_with (text, bw_test_catalogue ());
}

static BwSheet *
demo (char **text)
{
  g_autofree char *path = bw_test_demo_path ();
  *text = bw_test_read (path, NULL);
  return parse (*text);
}

/* Keeping */

static void
test_demo_round_trip (void)
{
  g_autofree char *text = NULL;
  g_autoptr (BwSheet) sheet = demo (&text);
  g_autofree char *fault = bw_property_sheet (sheet, bw_test_catalogue ());

  g_assert_cmpstr (fault, ==, NULL);
  g_assert_cmpuint (sheet->sources->len, >=, 7);
  g_assert_cmpuint (sheet->monitor->inputs->len, ==, 3);
}

static void
test_new_sheet (void)
{
  g_autoptr (BwSheet) sheet = bw_sheet_new ();
  g_assert_cmpuint (sheet->sources->len, ==, 0);
  g_assert_cmpuint (sheet->monitor->inputs->len, ==, 0);
  g_assert_cmpfloat (sheet->supply_hz, ==, 0); /* not known: nowhere is it said to be 50 Hz */
  g_assert_cmpfloat (sheet->limits.line_rate, >, 0);
}

static void
test_copy (void)
{
  g_autofree char *text = NULL;
  g_autoptr (BwSheet) sheet = demo (&text);
  g_autoptr (BwSheet) copy = bw_sheet_copy (sheet);
  g_autofree char *saved = bw_sheet_to_text (sheet, bw_test_catalogue ());

  g_free (bw_sheet_source (sheet, 0)->name);
  bw_sheet_source (sheet, 0)->name = g_strdup ("Changed");
  bw_monitor_input (sheet->monitor, 0)->terminated = FALSE;
  g_autofree char *copied = bw_sheet_to_text (copy, bw_test_catalogue ());
  g_assert_cmpstr (saved, ==, copied);
}

/* What this version does not know is kept through an edit, a save and a second one. */

typedef struct
{
  const char *name;
  const char *text;
  const char *kept[3];
} KeptCase;

static const KeptCase kept_cases[] = {
  { "key-of-the-sheet",
    "[bench-sheet]\nformat=1\ntitle=Test\nweather=rain\n\n" MONITOR INPUT (1),
    { "weather=rain\n" } },
  { "key-of-the-monitor", HEAD MONITOR "cabinet=walnut\n" INPUT (1), { "cabinet=walnut\n" } },
  { "key-of-an-input", HEAD MONITOR INPUT (1) "colour=red\n", { "colour=red\n" } },
  { "key-of-a-source", SHEET "shelf=3\n", { "shelf=3\n" } },
  { "key-with-a-language",
    SHEET "remark[xx]=y\nremark[zz]=z\n",
    { "remark[xx]=y\n", "remark[zz]=z\n" } },
  { "group", SHEET "[future]\nkey=value\nother=1;2;3\n", { "[future]\nkey=value\nother=1;2;3\n" } },
  { "group-in-the-middle",
    HEAD MONITOR "[future]\nkey=value\n\n" INPUT (1),
    { "[future]\nkey=value\n" } },
  { "group-first", "[future]\nkey=value\n\n" SHEET, { "[future]\nkey=value\n" } },
  { "empty-group", SHEET "[future]\n", { "[future]\n" } },
  { "value-with-escapes", SHEET "[future]\nkey=a\\nb\\\\c\\s\n", { "key=a\\nb\\\\c\\s\n" } },
  { "comment-at-the-top", "# for the foyer\n" SHEET, { "# for the foyer\n" } },
  { "two-comments-at-the-top",
    "# for the foyer\n# and the hall\n\n" SHEET,
    { "# for the foyer\n# and the hall\n" } },
  { "comment-above-a-group",
    HEAD "# serviced in June\n" MONITOR INPUT (1),
    { "# serviced in June\n[monitor]" } },
  { "comment-above-a-source",
    HEAD MONITOR INPUT (1) "# from the archive\n" SOURCE (1, "625-50-interlaced"),
    { "# from the archive\n[source 1]" } },
  { "comment-above-a-key", SHEET "# it is heavy\nshelf=3\n", { "# it is heavy\nshelf=3\n" } },
  { "comment-above-a-known-key",
    HEAD MONITOR "# measured\nmains_current=1.4 A\n" INPUT (1),
    { "# measured\nmains_current=1.4 A\n" } },
  { "comment-above-a-foreign-group",
    SHEET "# later\n[future]\nkey=value\n",
    { "# later\n[future]" } },
  { "comment-at-the-end", SHEET "# that is all\n", { "# that is all\n" } },
};

static void
edit (BwSheet *sheet)
{
  g_free (sheet->title);
  sheet->title = g_strdup ("Edited");
  sheet->supply_hz = 60;
  bw_monitor_input (sheet->monitor, 0)->input_ohm = 12e3;
  if (sheet->sources->len > 0)
    bw_sheet_source (sheet, 0)->video_v = 0.71;
}

static void
test_kept (gconstpointer data)
{
  const KeptCase *c = data;
  const char *words[] = { c->kept[0], c->kept[1], c->kept[2], NULL };
  g_autoptr (BwSheet) sheet = parse (c->text);

  edit (sheet);
  g_autofree char *once = bw_sheet_to_text (sheet, bw_test_catalogue ());
  g_autoptr (BwSheet) back = parse (once);
  g_autofree char *twice = bw_sheet_to_text (back, bw_test_catalogue ());
  bw_test_assert_words (once, words);
  bw_test_assert_words (once, WORDS ("title=Edited", "supply_frequency=60 Hz"));
  g_assert_cmpstr (once, ==, twice);
}

/* A source that is taken out takes its foreign keys along, and its number is not given to another
 * that would inherit them. */
static void
test_removed_source (void)
{
  g_autoptr (BwSheet) sheet = parse (HEAD MONITOR INPUT (
      1) SOURCE (1, "625-50-interlaced") "shelf=3\n\n" SOURCE (2, "625-50-interlaced"));
  BwSource *added = bw_source_copy (bw_sheet_source (sheet, 1));

  g_clear_pointer (&added->group, g_free);
  g_ptr_array_remove_index (sheet->sources, 0);
  g_ptr_array_add (sheet->sources, added);
  g_autofree char *text = bw_sheet_to_text (sheet, bw_test_catalogue ());
  g_assert_null (strstr (text, "shelf"));
  g_assert_null (strstr (text, "[source 1]"));
  bw_test_assert_words (text, WORDS ("[source 2]", "[source 3]"));
}

static guint
count_word (const char *text, const char *word)
{
  guint n = 0;
  for (const char *p = strstr (text, word); p != NULL; p = strstr (p + 1, word))
    n++;
  return n;
}

/* Copies carry the group of their model; each is written to one of its own. */
static void
test_duplicates (void)
{
  g_autofree char *text = NULL;
  g_autoptr (BwSheet) sheet = demo (&text);
  guint n_sources = sheet->sources->len, n_inputs = sheet->monitor->inputs->len;

  for (guint i = 0; i < n_sources; i++)
    g_ptr_array_insert (sheet->sources, (gint) (2 * i + 1),
                        bw_source_copy (bw_sheet_source (sheet, 2 * i)));
  for (guint i = 0; i < n_inputs; i++)
    g_ptr_array_add (sheet->monitor->inputs, bw_input_copy (bw_monitor_input (sheet->monitor, i)));
  g_autofree char *saved = bw_sheet_to_text (sheet, bw_test_catalogue ());
  g_autofree char *fault = bw_property_sheet (sheet, bw_test_catalogue ());

  g_assert_cmpuint (count_word (saved, "\n[source "), ==, 2 * n_sources);
  g_assert_cmpuint (count_word (saved, "\n[input "), ==, 2 * n_inputs);
  g_assert_cmpstr (fault, ==, NULL); /* reads back: no group stands twice */
}

/* A sheet put together from parts of others */
static void
test_foreign_groups (void)
{
  g_autoptr (BwSheet) sheet = parse (SHEET);
  static const char *const groups[] = { NULL, "source 1", "source 2", "source 2", NULL };

  for (gsize i = 0; i < G_N_ELEMENTS (groups); i++)
    {
      BwSource *source = bw_source_copy (bw_sheet_source (sheet, 0));
      g_free (source->group);
      source->group = g_strdup (groups[i]);
      g_ptr_array_insert (sheet->sources, 0, source);
    }
  g_autofree char *fault = bw_property_sheet (sheet, bw_test_catalogue ());
  g_assert_cmpstr (fault, ==, NULL);
}

/* The user's rasters travel with the sheet. */

static BwCatalogue *
with_user_raster (const char *text)
{
  g_autoptr (GPtrArray) faults = bw_test_faults_new ();
  BwCatalogue *catalogue = bw_catalogue_new (NULL, faults);
  bw_catalogue_add_text (catalogue, BW_CATALOGUE_RASTERS, text, strlen (text), "user.ini", faults);
  bw_test_no_faults (faults);
  return catalogue;
}

typedef struct
{
  const char *name;
  const char *user; /* the user's rasters.ini */
  const char *sheet;
} TravelCase;

static const TravelCase travel_cases[] = {
  { "by-id", "[mine]\n" RASTER_LINES, HEAD MONITOR INPUT (1) SOURCE (1, "mine") },
  { "by-alias", "[mine]\naliases=own\n" RASTER_LINES, HEAD MONITOR INPUT (1) SOURCE (1, "own") },
  { "over-a-shipped-one", "[525-59.94-interlaced]\n" RASTER_LINES,
    HEAD MONITOR INPUT (1) SOURCE (1, "525-59.94-interlaced") },
  { "alias-over-a-shipped-one", "[mine]\naliases=480i\n" RASTER_LINES,
    HEAD MONITOR INPUT (1) SOURCE (1, "480i") },
  { "two-sources", "[mine]\n" RASTER_LINES,
    HEAD MONITOR INPUT (1) SOURCE (1, "mine") SOURCE (2, "mine") },
};

static void
test_travels (gconstpointer data)
{
  const TravelCase *c = data;
  g_autoptr (BwCatalogue) here = with_user_raster (c->user);
  g_autoptr (BwSheet) sheet = parse_with (c->sheet, here);
  g_autofree char *text = bw_sheet_to_text (sheet, here);
  g_autoptr (GPtrArray) faults = bw_test_faults_new ();
  g_autoptr (BwSheet) there = bw_sheet_parse (text, strlen (text), "there", bw_test_catalogue (),
                                              faults);

  bw_test_no_faults (faults);
  if (there == NULL)
    return;
  g_assert_cmpuint (there->rasters->len, ==, 1);
  const BwRaster *raster = bw_sheet_raster (there, bw_test_catalogue (),
                                            bw_sheet_source (there, 0));
  g_assert_cmpstr (raster != NULL ? raster->name : NULL, ==, "Mine");
  g_autofree char *again = bw_sheet_to_text (there, bw_test_catalogue ());
  g_assert_cmpstr (text, ==, again);
}

/* Shipped rasters do not travel, and the sheet's own come before the catalogue's. */
static void
test_own_raster (void)
{
  g_autoptr (BwSheet) plain = parse (SHEET);
  g_autofree char *text = bw_sheet_to_text (plain, bw_test_catalogue ());
  g_autoptr (BwSheet) sheet = parse (SHEET "[raster 625-50-interlaced]\n" RASTER_LINES);
  const BwRaster *raster = bw_sheet_raster (sheet, bw_test_catalogue (),
                                            bw_sheet_source (sheet, 0));

  g_assert_null (strstr (text, "[raster"));
  g_assert_cmpstr (raster->name, ==, "Mine");
}

/* A source may name a raster of the sheet by its other name, whichever it is. */
static void
test_own_alias (void)
{
  static const char *const names[] = { "mine-a", "mine-b" };
  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autoptr (BwSheet) sheet = parse (SHEET "[raster one]\n" RASTER_LINES "aliases=mine-a\n"
                                               "[raster two]\n" RASTER_LINES "aliases=mine-b\n");
      BwSource *source = bw_sheet_source (sheet, 0);
      g_free (source->raster);
      source->raster = g_strdup (names[i]);
      const BwRaster *raster = bw_sheet_raster (sheet, bw_test_catalogue (), source);
      g_assert_nonnull (raster);
      g_assert_cmpstr (raster->id, ==, i == 0 ? "one" : "two");
    }
}

/* 64 inputs and 5000 sources are a sheet, one more of either is not: our own limits. */
static void
test_many (void)
{
  static const struct
  {
    guint inputs, sources;
    gboolean taken;
  } cases[] = { { 64, 1, TRUE }, { 65, 1, FALSE }, { 1, 5000, TRUE }, { 1, 5001, FALSE } };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GString) text = g_string_new (HEAD MONITOR);
      g_autoptr (GPtrArray) faults = bw_test_faults_new ();
      for (guint n = 1; n <= MAX (cases[i].inputs, cases[i].sources); n++)
        {
          g_autoptr (GString) group = g_string_new (n <= cases[i].inputs ? INPUT (NUMBER) : "");
          if (n <= cases[i].sources)
            g_string_append (group, SOURCE (NUMBER, "525-59.94-interlaced"));
          g_autofree char *number = g_strdup_printf ("%u", n);
          g_string_replace (group, "NUMBER", number, 0);
          g_string_append (text, group->str);
        }
      g_autoptr (BwSheet) sheet = bw_sheet_parse (text->str, text->len, "test.bench",
                                                  bw_test_catalogue (), faults);
      g_assert_cmpint (sheet != NULL, ==, cases[i].taken);
    }
}

/* Faulty sheets: no sheet, the file's name, and what is wrong */

typedef struct
{
  const char *name;
  const char *text;
  GQuark (*domain) (void);
  int code;
  const char *says[3];
} FaultCase;

static const FaultCase fault_cases[] = {
  { "empty", "", bw_sheet_error_quark, BW_SHEET_ERROR_NOT_A_SHEET, { "[bench-sheet]" } },
  { "another-kind-of-file",
    "[desktop entry]\nname=x\n",
    bw_sheet_error_quark,
    BW_SHEET_ERROR_NOT_A_SHEET,
    { "not a bench sheet" } },
  { "no-format",
    "[bench-sheet]\ntitle=x\n" MONITOR,
    bw_sheet_error_quark,
    BW_SHEET_ERROR_NOT_A_SHEET,
    { "format", "1" } },
  { "format-word",
    "[bench-sheet]\nformat=one\n" MONITOR,
    bw_sheet_error_quark,
    BW_SHEET_ERROR_NOT_A_SHEET,
    { "format" } },
  { "format-zero",
    "[bench-sheet]\nformat=0\n" MONITOR,
    bw_sheet_error_quark,
    BW_SHEET_ERROR_NOT_A_SHEET,
    { "format" } },
  { "format-negative",
    "[bench-sheet]\nformat=-1\n" MONITOR,
    bw_sheet_error_quark,
    BW_SHEET_ERROR_NOT_A_SHEET,
    { "format" } },
  { "format-huge",
    "[bench-sheet]\nformat=99999999999999999999\n" MONITOR,
    bw_sheet_error_quark,
    BW_SHEET_ERROR_NOT_A_SHEET,
    { "format" } },
  { "newer",
    "[bench-sheet]\nformat=3\ntitle=x\n",
    bw_sheet_error_quark,
    BW_SHEET_ERROR_NEWER,
    { "newer", "format 3" } },
  { "no-monitor", HEAD, bw_sheet_error_quark, BW_SHEET_ERROR_NO_MONITOR, { "[monitor]" } },
  { "no-title",
    "[bench-sheet]\nformat=1\n" MONITOR,
    bw_field_error_quark,
    BW_FIELD_ERROR_MISSING,
    { "[bench-sheet]", "title" } },
  { "no-such-raster",
    HEAD MONITOR SOURCE (1, "no-such"),
    bw_sheet_error_quark,
    BW_SHEET_ERROR_NO_RASTER,
    { "[source 1]", "raster", "no-such" } },
  { "faulty-raster",
    SHEET "[raster mine]\nname=Mine\n",
    bw_raster_error_quark,
    BW_RASTER_ERROR_NO_RATE,
    { "[raster mine]", "line_rate" } },
  { "wrong-unit",
    HEAD MONITOR "mains_current=5 W\n" INPUT (1),
    bw_field_error_quark,
    BW_FIELD_ERROR_VALUE,
    { "[monitor]", "mains_current", "A, mA" } },
  { "out-of-range",
    HEAD MONITOR "mains_current=500 A\n" INPUT (1),
    bw_field_error_quark,
    BW_FIELD_ERROR_RANGE,
    { "[monitor]", "mains_current", "50" } },
  { "odd-source",
    SHEET "system=ntsc-m\n",
    bw_source_error_quark,
    BW_SOURCE_ERROR_SYSTEM,
    { "[source 1]", "none" } },
  { "odd-input",
    HEAD MONITOR ODD_INPUT,
    bw_monitor_error_quark,
    BW_MONITOR_ERROR_INPUT_SYNC,
    { "[input 2]", "composite" } },
  { "group-twice",
    SHEET INPUT (1),
    bw_keyfile_error_quark,
    BW_KEYFILE_ERROR_DUPLICATE,
    { "[input 1]", "twice" } },
  { "junk", SHEET "junk\n", bw_keyfile_error_quark, BW_KEYFILE_ERROR_SYNTAX, { "line", "junk" } },
};

static void
test_fault (gconstpointer data)
{
  const FaultCase *c = data;
  const char *words[] = { "test.bench", c->says[0], c->says[1], c->says[2], NULL };
  g_autoptr (GPtrArray) faults = bw_test_faults_new ();
  g_autoptr (BwSheet) sheet = bw_sheet_parse (c->text, strlen (c->text), "test.bench",
                                              bw_test_catalogue (), faults);
  g_assert_null (sheet);
  bw_test_has_fault (faults, c->domain (), c->code, words);
}

/* Every fault is told, not only the first. */
static void
test_all_faults (void)
{
  g_autoptr (GPtrArray) faults = bw_test_faults_new ();
  const char text[] = HEAD MONITOR
      "mains_current=5 W\n\n[input 1]\nname=A\nconnectors=tin\n\n" SOURCE (1, "no-such")
          SOURCE (2, "625-50-interlaced") "setup=9\n";
  g_assert_null (bw_sheet_parse (text, strlen (text), "test.bench", bw_test_catalogue (), faults));
  g_assert_cmpuint (faults->len, ==, 4);
  for (guint i = 0; i < faults->len; i++)
    g_assert_true (g_str_has_prefix (((GError *) faults->pdata[i])->message, "test.bench"));
}

static void
test_too_many (void)
{
  g_autoptr (GString) text = g_string_new (HEAD MONITOR);
  g_autoptr (GPtrArray) faults = bw_test_faults_new ();

  for (guint i = 1; i <= 65; i++)
    {
      g_autoptr (GString) input = g_string_new (INPUT (NUMBER));
      g_autofree char *number = g_strdup_printf ("%u", i);
      g_string_replace (input, "NUMBER", number, 0);
      g_string_append (text, input->str);
    }
  g_assert_null (bw_sheet_parse (text->str, text->len, "test.bench", bw_test_catalogue (), faults));
  g_assert_cmpuint (faults->len, ==, 1);
  bw_test_has_fault (faults, BW_SHEET_ERROR, BW_SHEET_ERROR_TOO_MANY,
                     WORDS ("test.bench", "64", "[input 65]"));
}

static void
add (const char *group, const char *name, gconstpointer data, GTestDataFunc func)
{
  g_autofree char *path = g_strdup_printf ("/sheet/%s/%s", group, name);
  g_test_add_data_func (path, data, func);
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  g_test_add_func ("/sheet/demo/round-trip", test_demo_round_trip);
  g_test_add_func ("/sheet/new", test_new_sheet);
  g_test_add_func ("/sheet/copy", test_copy);
  for (gsize i = 0; i < G_N_ELEMENTS (kept_cases); i++)
    add ("kept", kept_cases[i].name, &kept_cases[i], test_kept);
  for (gsize i = 0; i < G_N_ELEMENTS (travel_cases); i++)
    add ("travels", travel_cases[i].name, &travel_cases[i], test_travels);
  for (gsize i = 0; i < G_N_ELEMENTS (fault_cases); i++)
    add ("fault", fault_cases[i].name, &fault_cases[i], test_fault);
  g_test_add_func ("/sheet/fault/all", test_all_faults);
  g_test_add_func ("/sheet/fault/too-many", test_too_many);
  g_test_add_func ("/sheet/removed-source", test_removed_source);
  g_test_add_func ("/sheet/duplicates", test_duplicates);
  g_test_add_func ("/sheet/foreign-groups", test_foreign_groups);
  g_test_add_func ("/sheet/own-raster", test_own_raster);
  g_test_add_func ("/sheet/own-alias", test_own_alias);
  g_test_add_func ("/sheet/many", test_many);
  return g_test_run ();
}
