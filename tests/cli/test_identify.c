/* SPDX-License-Identifier: GPL-3.0-or-later */
/* `breezeway-cli identify`: from two readings of a counter to a raster of the catalogue. */
#include <math.h>
#include <string.h>

#include "run.h"

static JsonArray *
candidates_of (const Run *run, JsonObject **root)
{
  *root = run_json (run);
  return json_object_get_array_member (*root, "candidates");
}

static const char *
id_of (JsonArray *candidates, guint i)
{
  return json_object_get_string_member (json_array_get_object_element (candidates, i), "id");
}

/* What a counter reads, to the digits that it shows, and which raster has these rates. */
static const struct
{
  const char *path;
  const char *args[8]; /* with what else was seen where rates alone do not tell */
  const char *id;
  double lines_per_field;
} facts[] = {
  /* SMPTE 170M-2004 11.2: 4.5 MHz / 286 = 15.734266 kHz; 59.940060 fields a second */
  { "smpte-170m",
    { "--line-rate", "15.734 kHz", "--field-rate", "59.94 Hz", NULL },
    "525-59.94-interlaced",
    262.5 },
  /* ITU-R BT.470-6 table 1: 625 lines, 15.625 kHz, 50 Hz */
  { "bt-470-625",
    { "--line-rate", "15.625 kHz", "--field-rate", "50 Hz", NULL },
    "625-50-interlaced",
    312.5 },
  /* ITU-R BT.470-6 table 1, system M in monochrome: 15.750 kHz, 60 Hz */
  { "bt-470-525-monochrome",
    { "--line-rate", "15.750 kHz", "--field-rate", "60.00 Hz", NULL },
    "525-60-interlaced",
    262.5 },
  /* CTA-861-H table 1, VIC 4: 45 kHz, 60 Hz, 750 lines, progressive */
  { "vic-4",
    { "--line-rate", "45.000kHz", "--field-rate", "60.000Hz", "--line-sync", "539ns", NULL },
    "cta-861-vic-4",
    750 },
  /* CTA-861-H table 1, VIC 19: 37.5 kHz, 50 Hz */
  { "vic-19",
    { "--line-rate", "37.500kHz", "--field-rate", "50.000Hz", "--line-sync", "539ns", NULL },
    "cta-861-vic-19",
    750 },
  /* CTA-861-H table 1, VIC 20: 28.125 kHz, 50 Hz, 1125 lines interlaced; sync 44 / 74.25 MHz */
  { "vic-20",
    { "--line-rate", "28.125kHz", "--field-rate", "50.000Hz", "--line-sync", "593ns", NULL },
    "cta-861-vic-20",
    562.5 },
  /* VESA DMT v1.0 rev. 13, ID 0x08: 35.156 kHz, 56.250 Hz */
  { "dmt-08", { "--line-rate", "35.156kHz", "--field-rate", "56.25Hz", NULL }, "vesa-dmt-08", 625 },
  /* VESA DMT, ID 0x10: 48.363 kHz, 60.004 Hz */
  { "dmt-10",
    { "--line-rate", "48.363kHz", "--field-rate", "60.004Hz", NULL },
    "vesa-dmt-10",
    806 },
};

static void
test_fact (gconstpointer data)
{
  gsize i = GPOINTER_TO_SIZE (data);
  const char *args[12] = { "identify", "--json" };
  for (gsize k = 0; facts[i].args[k] != NULL; k++)
    args[k + 2] = facts[i].args[k];
  g_autoptr (Run) run = run_args (args);
  g_autoptr (JsonObject) root = NULL;
  JsonArray *candidates = candidates_of (run, &root);

  g_assert_cmpuint (json_array_get_length (candidates), >, 0);
  g_assert_cmpstr (id_of (candidates, 0), ==, facts[i].id);
  JsonObject *first = json_array_get_object_element (candidates, 0);
  g_assert_true (is_near (figure_of (first, "lines_per_field"), facts[i].lines_per_field, 0));
  /* the counter's last digit is worth less than 40 parts in a million in every row */
  g_assert_cmpfloat (fabs (figure_of (first, "line_rate_error_ppm")), <=, 40);
  g_assert_cmpfloat (fabs (figure_of (first, "field_rate_error_ppm")), <=, 40);
}

/* CTA-861-H VIC 1 and 2, VESA DMT 0x04 and the analogue raster of 525 lines all have 31.469 kHz and
 * 59.94 Hz; each of them must be there, and a decider beside each. */
static void
test_a_crowd (void)
{
  static const char *const wanted[] = { "vesa-dmt-04", "cta-861-vic-1", "cta-861-vic-2",
                                        "525-59.94-progressive" };
  g_autoptr (Run) run = run_cli ("identify", "--line-rate", "31.469kHz", "--field-rate", "59.94Hz",
                                 "--most", "50", "--json", NULL);
  g_autoptr (JsonObject) root = NULL;
  JsonArray *candidates = candidates_of (run, &root);

  for (gsize k = 0; k < G_N_ELEMENTS (wanted); k++)
    {
      gboolean found = FALSE;
      for (guint i = 0; i < json_array_get_length (candidates); i++)
        found = found || strcmp (id_of (candidates, i), wanted[k]) == 0;
      if (!found)
        g_error ("%s is not among them", wanted[k]);
    }
  for (guint i = 0; i < json_array_get_length (candidates); i++)
    {
      JsonObject *one = json_array_get_object_element (candidates, i);
      g_assert_false (is_null (one, "decider"));
      g_assert_true (is_near (figure_of (one, "lines_per_field"), 525, 0));
    }
}

static const char *const keys[] = {
  "id", "score", "line_rate_error_ppm", "field_rate_error_ppm", "lines_per_field", "decider", NULL
};

/* The keys that scripts rely on, best first; an error is null where that rate was not read. */
static void
test_keys (void)
{
  static const struct
  {
    const char *option;
    const char *value;
    const char *known;
    const char *unknown;
  } one_rate[] = {
    { "--line-rate", "15.625kHz", "line_rate_error_ppm", "field_rate_error_ppm" },
    { "--field-rate", "50Hz", "field_rate_error_ppm", "line_rate_error_ppm" },
  };
  for (gsize k = 0; k < G_N_ELEMENTS (one_rate); k++)
    {
      g_autoptr (Run) run = run_cli ("identify", one_rate[k].option, one_rate[k].value, "--json",
                                     "--most", "100", NULL);
      g_autoptr (JsonObject) root = NULL;
      JsonArray *candidates = candidates_of (run, &root);
      double last = 1;
      g_assert_cmpuint (json_array_get_length (candidates), >, 1);
      for (guint i = 0; i < json_array_get_length (candidates); i++)
        {
          JsonObject *one = json_array_get_object_element (candidates, i);
          assert_keys_begin_with (one, keys);
          g_assert_cmpfloat (figure_of (one, "score"), <=, last);
          last = figure_of (one, "score");
          g_assert_true (is_null (one, one_rate[k].unknown));
          figure_of (one, one_rate[k].known);
        }
    }
}

/* 15.734 kHz is 16.9 parts in a million below 4.5 MHz / 286 (SMPTE 170M), and 59.94 Hz is 1.0
 * below 60000 / 1001 Hz. */
static void
test_errors (void)
{
  g_autoptr (Run) run = run_cli ("identify", "--line-rate", "15.734kHz", "--field-rate", "59.94Hz",
                                 "--json", NULL);
  g_autoptr (JsonObject) root = NULL;
  JsonObject *first = json_array_get_object_element (candidates_of (run, &root), 0);
  g_assert_true (
      is_near (figure_of (first, "line_rate_error_ppm"), (15734 / (4.5e6 / 286) - 1) * 1e6, 1e-6));
  g_assert_true (is_near (figure_of (first, "field_rate_error_ppm"),
                          (59.94 / (60000 / 1001.0) - 1) * 1e6, 1e-6));
}

static void
test_most (void)
{
  g_autoptr (Run) run = run_cli ("identify", "--field-rate", "60Hz", "--most", "3", "--json", NULL);
  g_autoptr (JsonObject) root = NULL;
  g_assert_cmpuint (json_array_get_length (candidates_of (run, &root)), ==, 3);
}

/* What else was seen moves the answer: 45 kHz and 60 Hz with tri-level sync is not VIC 4. */
static void
test_shape (void)
{
  static const char *const words[] = { "--tri-level", "--bi-level" };
  static const char *const shapes[] = { "tri-level", "bi-level" };
  for (gsize i = 0; i < G_N_ELEMENTS (words); i++)
    {
      g_autoptr (Run) run = run_cli ("identify", "--line-rate", "45kHz", "--field-rate", "60Hz",
                                     words[i], "--json", NULL);
      g_autoptr (JsonObject) root = NULL;
      g_autoptr (JsonObject) timing = timing_of (id_of (candidates_of (run, &root), 0));
      g_assert_cmpstr (json_object_get_string_member (timing, "sync_shape"), ==, shapes[i]);
    }
}

/* Far from every raster none agrees, and that is an answer, with the nearest and how far it is off;
 * with a wide tolerance some agree. */
static void
test_nothing_near (void)
{
  g_autoptr (Run) none = run_cli ("identify", "--line-rate", "15.2kHz", "--json", NULL);
  g_autoptr (Run) wide = run_cli ("identify", "--line-rate", "15.2kHz", "--tolerance", "2%",
                                  "--json", NULL);
  g_autoptr (Run) text = run_cli ("identify", "--line-rate", "15.2kHz", NULL);
  g_autoptr (JsonObject) none_root = NULL;
  g_autoptr (JsonObject) wide_root = NULL;
  JsonObject *nearest = json_array_get_object_element (candidates_of (none, &none_root), 0);
  JsonObject *agrees = json_array_get_object_element (candidates_of (wide, &wide_root), 0);
  g_assert_cmpfloat (figure_of (nearest, "score"), <, 0.011);
  g_assert_cmpfloat (fabs (figure_of (nearest, "line_rate_error_ppm")), >, 10000);
  g_assert_cmpfloat (figure_of (agrees, "score"), >, 0.1);
  g_assert_cmpint (text->status, ==, 0);
  g_assert_nonnull (strstr (text->out, "below it"));
  g_assert_nonnull (strstr (text->out, "Nothing in the catalogue"));
}

/* A person is told what was read, what it is, how sure that is, what would decide, and the measure;
 * no line is longer than a terminal, save in the table. */
static void
test_for_a_person (void)
{
  g_autoptr (Run) two = run_cli ("identify", "--line-rate", "15.734kHz", "--field-rate", "59.94Hz",
                                 NULL);
  g_autoptr (Run) one = run_cli ("identify", "--line-rate", "48.363kHz", "--field-rate", "60.004Hz",
                                 NULL);
  g_assert_cmpint (two->status, ==, 0);
  g_assert_nonnull (strstr (two->out, "262.5 lines"));
  g_assert_nonnull (strstr (two->out, "262.5 lines in a field"));
  g_assert_nonnull (strstr (two->out, "To tell it from"));
  g_assert_nonnull (strstr (two->out, "200 ppm"));
  g_assert_nonnull (strstr (one->out, "It is vesa-dmt-10"));
  g_assert_nonnull (strstr (one->out, "%"));
}

/* Digits tell how fine a rate is, or --accuracy does; numbers need no unit where one alone fits. */
static void
test_digits (void)
{
  g_autoptr (Run) coarse = run_cli ("identify", "--line-rate", "15.7", "--field-rate", "60", NULL);
  g_autoptr (Run) comma = run_cli ("identify", "--line-rate", "15,7kHz", "--field-rate", "60 Hz",
                                   NULL);
  g_autoptr (Run) fine = run_cli ("identify", "--line-rate", "15.750", "--field-rate", "60.00",
                                  "--json", NULL);
  g_autoptr (Run) poor = run_cli ("identify", "--line-rate", "15.750", "--field-rate", "60.00",
                                  "--accuracy", "1%", "--json", NULL);
  g_autoptr (Run) alone = run_cli ("identify", "--field-rate", "60.1Hz", NULL);
  g_autoptr (JsonObject) fine_root = NULL;
  g_autoptr (JsonObject) poor_root = NULL;
  g_autofree char *answer = g_strjoinv (" ", g_strsplit (coarse->out, "\n", -1));

  g_assert_cmpstr (coarse->err, ==, "");
  g_assert_cmpstr (coarse->out, ==, comma->out);
  g_assert_nonnull (strstr (answer, "may be 525-59.94-interlaced, or 262-60.05-progressive"));
  g_assert_nonnull (strstr (answer, "count the lines of a field"));
  g_assert_cmpstr (id_of (candidates_of (fine, &fine_root), 0), ==, "525-60-interlaced");
  g_assert_cmpstr (id_of (candidates_of (poor, &poor_root), 0), ==, "525-59.94-interlaced");
  g_assert_null (strstr (alone->out, "It is"));
  g_assert_nonnull (strstr (alone->out, "one reading is not enough"));
}

/* The accuracy of the counter that a sheet holds does what --accuracy does, which stands before it. */
static void
test_accuracy_of_sheet (void)
{
  g_autofree char *folder = scratch_folder ();
  g_autofree char *with
      = demo_with ("[bench-sheet]", "[bench-sheet]\nfrequency_accuracy=1 %");
  g_autofree char *path = write_scratch (folder, "counter.bench", with);
  g_autoptr (Run) option = run_cli ("identify", "--line-rate", "15.750", "--field-rate", "60.00",
                                    "--accuracy", "1%", "--json", NULL);
  g_autoptr (Run) sheet = run_cli ("identify", "--line-rate", "15.750", "--field-rate", "60.00",
                                   "--sheet", path, "--json", NULL);
  g_autoptr (Run) both = run_cli ("identify", "--line-rate", "15.750", "--field-rate", "60.00",
                                  "--sheet", path, "--accuracy", "0.001%", "--json", NULL);
  g_autoptr (Run) digits = run_cli ("identify", "--line-rate", "15.750", "--field-rate", "60.00",
                                    "--json", NULL);
  g_assert_cmpstr (sheet->err, ==, "");
  g_assert_cmpstr (sheet->out, ==, option->out);
  g_assert_cmpstr (sheet->out, !=, digits->out);
  g_assert_cmpstr (both->out, ==, digits->out); /* the digits are coarser than 0.001 % */
  remove_scratch (folder);
}

static const struct
{
  const char *args[6];
  int status;
  const char *says;
} refused[] = {
  { { NULL }, 2, "--line-rate or --field-rate" },
  { { "--lines-per-field", "262.5", NULL }, 2, "--line-rate or --field-rate" },
  { { "--line-rate", "15kHz", "--interlaced", "--progressive", NULL }, 2, "--progressive" },
  { { "--line-rate", "15kHz", "--tri-level", "--bi-level", NULL }, 2, "--bi-level" },
  { { "--line-rate", "15kHz", "--most", "0", NULL }, 2, "--most" },
  { { "--line-rate", "15kHz", "--most", "many", NULL }, 2, "many" },
  { { "15kHz", NULL }, 2, "“15kHz”" },
  { { "--line-rate", "5000000", NULL }, 1, "has no unit" },
  { { "--line-rate", "fast", NULL }, 1, "“fast”" },
  { { "--line-rate", "15,734 kHz", NULL }, 1, "decimal mark" },
  { { "--line-rate", "-15 kHz", NULL }, 1, "more than zero" },
  { { "--line-rate", "1e999 Hz", NULL }, 1, "too large" },
  { { "--line-rate", "15 us", NULL }, 1, "“us”" },
  { { "--field-rate", "50Hz", "--line-sync", "4.7", NULL }, 1, "--line-sync" },
  { { "--field-rate", "50Hz", "--field-sync", "0", NULL }, 1, "--field-sync" },
  { { "--field-rate", "50Hz", "--tolerance", "0%", NULL }, 1, "--tolerance" },
};

static void
test_refused (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (refused); i++)
    {
      const char *args[8] = { "identify" };
      for (gsize k = 0; refused[i].args[k] != NULL; k++)
        args[k + 1] = refused[i].args[k];
      g_autoptr (Run) run = run_args (args);
      assert_refused (run, refused[i].status, refused[i].says);
    }
}

/* The tolerance of the rates as it was given: small ones to a thousandth, others to whole parts in a million. */
static void
test_tolerance_said (void)
{
  static const char *const cases[][2] = { { "0.000317777%", "rates 3.178 ppm" },
                                          { "0.000999%", "rates 9.990 ppm" },
                                          { "0.00123456%", "rates 12 ppm" },
                                          { NULL, "rates 200 ppm" } };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *option = g_strconcat ("--tolerance=", cases[i][0], NULL);
      g_autoptr (Run) run = run_cli ("identify", "--line-rate=15734.2657Hz", "--field-rate=59.94006Hz",
                                     cases[i][0] != NULL ? option : NULL, NULL);
      g_assert_cmpint (run->status, ==, 0);
      g_strdelimit (run->out, "\n", ' ');
      g_assert_nonnull (strstr (run->out, cases[i][1]));
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (facts); i++)
    {
      g_autofree char *path = g_strconcat ("/identify/facts/", facts[i].path, NULL);
      g_test_add_data_func (path, GSIZE_TO_POINTER (i), test_fact);
    }
  g_test_add_func ("/identify/a-crowd", test_a_crowd);
  g_test_add_func ("/identify/tolerance-said", test_tolerance_said);
  g_test_add_func ("/identify/keys", test_keys);
  g_test_add_func ("/identify/errors", test_errors);
  g_test_add_func ("/identify/most", test_most);
  g_test_add_func ("/identify/shape", test_shape);
  g_test_add_func ("/identify/nothing-near", test_nothing_near);
  g_test_add_func ("/identify/for-a-person", test_for_a_person);
  g_test_add_func ("/identify/refused", test_refused);
  g_test_add_func ("/cli/identify/digits", test_digits);
  g_test_add_func ("/identify/accuracy-of-sheet", test_accuracy_of_sheet);
  return g_test_run ();
}
