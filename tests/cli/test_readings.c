/* SPDX-License-Identifier: GPL-3.0-or-later */
/* `breezeway-cli readings`: readings of a scope held against a standard's limits. */
#include <string.h>

#include "run.h"

/* Each with the limits as the standard prints them. */
static const struct
{
  const char *path;
  const char *standard;
  const char *pair;
  const char *outcome;
  double nominal;
  double low;
  double high;
  const char *limit; /* that decides */
  double deviation;
  double to_limit;
} judged[] = {
  /* SMPTE 170M-2004 table 2: line sync 4.7 +-0.1 us, front porch 1.5 +-0.1 us */
  { "170m-sync-within", "smpte-170m", "line_sync=4.75us", "within", 4.7e-6, 4.6e-6, 4.8e-6, "high",
    0.05e-6, 0.05e-6 },
  { "170m-sync-high", "smpte-170m", "line_sync=4.85us", "too-high", 4.7e-6, 4.6e-6, 4.8e-6, "high",
    0.15e-6, -0.05e-6 },
  { "170m-porch-low", "smpte-170m", "front_porch=1.3us", "too-low", 1.5e-6, 1.4e-6, 1.6e-6, "low",
    -0.2e-6, -0.1e-6 },
  /* on the limit: 4.55 to 4.65 us by its digits */
  { "170m-on-the-limit", "smpte-170m", "line-sync=4.6 us", "undecided", 4.7e-6, 4.6e-6, 4.8e-6, "low",
    -0.1e-6, 0 },
  /* ITU-R BT.1700 part B: sync 4.7 +-0.2 us, burst 5.6 +-0.1 us after it, 300 mV +-10 % */
  { "1700-sync", "bt1700-pal", "line_sync=4.85us", "within", 4.7e-6, 4.5e-6, 4.9e-6, "high",
    0.15e-6, 0.05e-6 },
  { "1700-burst", "bt1700-pal", "burst_start=5.45us", "too-low", 5.6e-6, 5.5e-6, 5.7e-6, "low",
    -0.15e-6, -0.05e-6 },
  { "1700-burst-level", "bt1700-pal", "burst_level=0.34V", "too-high", 0.3, 0.27, 0.33, "high",
    0.04, -0.01 },
  /* ITU-R BT.470-6 table 1-1: blanking of 625 lines 12 +0 -0.3 us: nominal is a limit */
  { "470-blanking", "bt470-bg-pal", "line_blanking=12.1us", "too-high", 12e-6, 11.7e-6, 12e-6,
    "high", 0.1e-6, -0.1e-6 },
};

static JsonObject *
first_reading (JsonObject *root)
{
  return json_array_get_object_element (json_object_get_array_member (root, "readings"), 0);
}

static void
test_judged (gconstpointer data)
{
  gsize i = GPOINTER_TO_SIZE (data);
  g_autoptr (Run) run = run_cli ("readings", "--standard", judged[i].standard, judged[i].pair,
                                 "--json", NULL);
  g_autoptr (JsonObject) root = run_json (run);
  JsonObject *reading = first_reading (root);
  double rounding = 1e-9 * judged[i].high;

  g_assert_cmpstr (json_object_get_string_member (root, "standard"), ==, judged[i].standard);
  g_assert_cmpstr (json_object_get_string_member (reading, "outcome"), ==, judged[i].outcome);
  g_assert_cmpstr (json_object_get_string_member (reading, "limit"), ==, judged[i].limit);
  g_assert_true (is_near (figure_of (reading, "nominal"), judged[i].nominal, rounding));
  g_assert_true (is_near (figure_of (reading, "allowed_low"), judged[i].low, rounding));
  g_assert_true (is_near (figure_of (reading, "allowed_high"), judged[i].high, rounding));
  g_assert_true (is_near (figure_of (reading, "deviation"), judged[i].deviation, rounding));
  g_assert_true (is_near (figure_of (reading, "to_limit"), judged[i].to_limit, rounding));
}

/* SMPTE 170M lays down no start of the burst in time: it counts cycles. */
static void
test_not_laid_down (void)
{
  static const char *const unknown[] = { "nominal",   "allowed_low", "allowed_high",
                                         "deviation", "limit",       "to_limit" };
  g_autoptr (Run) run = run_cli ("readings", "--standard", "smpte-170m", "burst_start=5.3us",
                                 "--json", NULL);
  g_autoptr (JsonObject) root = run_json (run);
  JsonObject *reading = first_reading (root);
  g_assert_cmpstr (json_object_get_string_member (reading, "outcome"), ==, "not-laid-down");
  for (gsize i = 0; i < G_N_ELEMENTS (unknown); i++)
    g_assert_true (is_null (reading, unknown[i]));
}

/* Several readings come in the standard's order, each with what it is. */
static void
test_for_a_person (void)
{
  g_autoptr (Run) run = run_cli ("readings", "--standard", "smpte-170m", "line_sync=4.85us",
                                 "front_porch=1.5us", "sync_level=286mV", "burst_start=5.3us",
                                 NULL);
  const char *porch = strstr (run->out, "Front porch");
  const char *sync = strstr (run->out, "Line sync");

  g_assert_cmpint (run->status, ==, 0);
  g_assert_true (porch != NULL && sync > porch);
  g_assert_nonnull (strstr (run->out, "+150 ns"));
  g_assert_nonnull (strstr (run->out, "50 ns above"));
  g_assert_nonnull (strstr (run->out, "not laid down"));
  g_assert_nonnull (strstr (run->out, "SMPTE 170M-2004"));
  g_assert_null (strstr (run->out, "+0 "));
}

/* Every standard of the list takes every reading that it lays down, at its nominal value. */
static void
test_list (void)
{
  g_autoptr (Run) run = run_cli ("readings", "--list", "--json", NULL);
  g_autoptr (Run) text = run_cli ("readings", "--list", NULL);
  g_autoptr (JsonObject) root = run_json (run);
  JsonArray *standards = json_object_get_array_member (root, "standards");

  g_assert_cmpuint (json_array_get_length (standards), >=, 8);
  for (guint i = 0; i < json_array_get_length (standards); i++)
    {
      JsonObject *standard = json_array_get_object_element (standards, i);
      const char *id = json_object_get_string_member (standard, "id");
      JsonArray *limits = json_object_get_array_member (standard, "limits");
      g_autoptr (JsonObject) raster = timing_of (
          json_object_get_string_member (standard, "raster"));
      g_autoptr (Run) shown = run_cli ("readings", "--list", "--standard", id, NULL);

      g_assert_nonnull (strstr (text->out, id));
      g_assert_cmpuint (json_array_get_length (limits), >, 0);
      JsonObject *first = json_array_get_object_element (limits, 0);
      g_autofree char *pair = g_strdup_printf ("%s=%.12e %s",
                                               json_object_get_string_member (first, "id"),
                                               figure_of (first, "nominal"),
                                               json_object_get_string_member (first, "unit"));
      g_autoptr (Run) at_nominal = run_cli ("readings", "--standard", id, pair, "--json", NULL);
      g_autoptr (JsonObject) judgement = run_json (at_nominal);
      g_assert_cmpstr (json_object_get_string_member (first_reading (judgement), "outcome"), ==,
                       figure_of (first, "nominal") < figure_of (first, "allowed_high")
                           ? "within"
                           : "undecided");
      for (guint k = 0; k < json_array_get_length (limits); k++)
        g_assert_nonnull (
            strstr (shown->out,
                    json_object_get_string_member (json_array_get_object_element (limits, k),
                                                   "id")));
    }
}

static const struct
{
  const char *args[5];
  int status;
  const char *says;
} refused[] = {
  { { NULL }, 2, "NAME=QUANTITY" },
  { { "line_sync=4.7us", NULL }, 2, "--standard" },
  { { "--standard", "smpte-170m", NULL }, 2, "NAME=QUANTITY" },
  { { "--list", "line_sync=4.7us", NULL }, 2, "--list" },
  { { "--standard", "smpte-170m", "line_sync", NULL }, 2, "NAME=QUANTITY" },
  { { "--standard", "smpte-170m", "line_sync=4us", "line-sync=4us", NULL }, 2, "twice" },
  { { "--standard", "smpte-170n", "line_sync=4us", NULL }, 1, "“smpte-170m”" },
  { { "--list", "--standard", "none", NULL }, 1, "“none”" },
  { { "--standard", "smpte-170m", "linesync=4us", NULL }, 1, "“line_sync”" },
  { { "--standard", "smpte-170m", "line_sync=4000000", NULL }, 1, "has no unit" },
  { { "--standard", "smpte-170m", "line_sync=4mV", NULL }, 1, "“mV”" },
  { { "--standard", "smpte-170m", "line_sync=", NULL }, 1, "line_sync" },
};

static void
test_refused (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (refused); i++)
    {
      const char *args[7] = { "readings" };
      for (gsize k = 0; refused[i].args[k] != NULL; k++)
        args[k + 1] = refused[i].args[k];
      g_autoptr (Run) run = run_args (args);
      assert_refused (run, refused[i].status, refused[i].says);
    }
}

/* Of each the outcome. 4.75 µs is read to 5 ns and 50 ns from the limit of SMPTE 170M-2004 (4.6 to
 * 4.8 µs); 4.8 µs may be 4.75 to 4.85; of a scope of 3 % 4.75 µs may be 4.61 to 4.89. In that
 * standard 40 IRE are 286 mV of sync, and 41 IRE the most (clause 15.4). */
static const struct
{
  const char *pair;
  const char *accuracy;
  const char *outcome;
  double uncertainty;
} digits[] = {
  { "line_sync=4.75us", NULL, "within", 5e-9 },
  { "line_sync=4.75", NULL, "within", 5e-9 },
  { "line_sync=4,75us", NULL, "within", 5e-9 },
  { "line_sync=4.8us", NULL, "undecided", 50e-9 },
  { "line_sync=4.9us", NULL, "too-high", 50e-9 },
  { "line_sync=4.75us", "3%", "undecided", 142.5e-9 },
  { "line_sync=5.2us", "3%", "too-high", 156e-9 },
  { "sync_level=40IRE", NULL, "within", 0.5 / 140 },
  { "sync_level=41.0IRE", NULL, "undecided", 0.05 / 140 },
  { "sync_level=43.0IRE", NULL, "too-high", 0.05 / 140 },
};

static void
test_digits (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (digits); i++)
    {
      const char *accuracy = digits[i].accuracy;
      g_autoptr (Run) run = run_cli ("readings", "--standard", "smpte-170m", digits[i].pair, "--json",
                                     accuracy != NULL ? "--accuracy" : NULL, accuracy, NULL);
      g_autoptr (JsonObject) root = run_json (run);
      JsonObject *reading = first_reading (root);
      g_assert_cmpstr (json_object_get_string_member (reading, "outcome"), ==, digits[i].outcome);
      g_assert_cmpfloat_with_epsilon (figure_of (reading, "uncertainty"), digits[i].uncertainty,
                                      1e-6 * digits[i].uncertainty);
    }
}

/* A sheet with the demonstration's figures and @key in its head. */
static char *
sheet_with (const char *folder, const char *key)
{
  g_autofree char *demo = demo_path ();
  g_autofree char *text = NULL;
  g_assert_true (g_file_get_contents (demo, &text, NULL, NULL));
  GString *changed = g_string_new (text);
  g_autofree char *line = g_strconcat ("\nformat=1\n", key, "\n", NULL);
  g_string_replace (changed, "\nformat=1\n", line, 1);
  char *path = write_scratch (folder, "accuracy.bench", changed->str);
  g_string_free (changed, TRUE);
  return path;
}

/* What the sheet says of an instrument holds for readings of its kind alone; an option stands before it. */
static void
test_accuracy_of_sheet (void)
{
  static const struct
  {
    const char *key;
    const char *pair;
    const char *accuracy;
    double uncertainty;
  } cases[] = {
    { "time_accuracy=3 %", "line_sync=4.75us", NULL, 142.5e-9 },
    { "time_accuracy=3 %", "line_sync=4.75us", "1%", 47.5e-9 },
    { "voltage_accuracy=3 %", "line_sync=4.75us", NULL, 5e-9 },
    { "voltage_accuracy=3 %", "sync_level=40.0IRE", NULL, 1.2 / 140 },
    { "frequency_accuracy=3 %", "sync_level=40.0IRE", NULL, 0.05 / 140 },
  };
  g_autofree char *folder = scratch_folder ();
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const char *accuracy = cases[i].accuracy;
      g_autofree char *path = sheet_with (folder, cases[i].key);
      g_autoptr (Run) run = run_cli ("readings", "--standard", "smpte-170m", cases[i].pair, "--json",
                                     "--sheet", path, accuracy != NULL ? "--accuracy" : NULL,
                                     accuracy, NULL);
      g_autoptr (JsonObject) root = run_json (run);
      g_assert_cmpfloat_with_epsilon (figure_of (first_reading (root), "uncertainty"),
                                      cases[i].uncertainty, 1e-6 * cases[i].uncertainty);
    }
  remove_scratch (folder);
}

static void
test_no_such_sheet (void)
{
  g_autoptr (Run) run = run_cli ("readings", "--standard", "smpte-170m", "line_sync=4.7us",
                                 "--sheet", "/nonexistent/x.bench", NULL);
  g_assert_cmpint (run->status, ==, 1);
  g_assert_nonnull (strstr (run->err, "/nonexistent/x.bench"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (judged); i++)
    {
      g_autofree char *path = g_strconcat ("/readings/judged/", judged[i].path, NULL);
      g_test_add_data_func (path, GSIZE_TO_POINTER (i), test_judged);
    }
  g_test_add_func ("/readings/not-laid-down", test_not_laid_down);
  g_test_add_func ("/readings/for-a-person", test_for_a_person);
  g_test_add_func ("/readings/list", test_list);
  g_test_add_func ("/readings/refused", test_refused);
  g_test_add_func ("/cli/readings/digits", test_digits);
  g_test_add_func ("/cli/readings/accuracy-of-sheet", test_accuracy_of_sheet);
  g_test_add_func ("/cli/readings/no-such-sheet", test_no_such_sheet);
  return g_test_run ();
}
