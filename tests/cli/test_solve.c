/* SPDX-License-Identifier: GPL-3.0-or-later */
/* `breezeway-cli solve`: what follows from known figures of a raster. */
#include <string.h>

#include "run.h"

static JsonObject *
solved (const char *const *args)
{
  g_autoptr (Run) run = run_args (args);
  return run_json (run);
}

static JsonObject *
figure_named (JsonObject *root, const char *id)
{
  JsonArray *figures = json_object_get_array_member (root, "figures");
  for (guint i = 0; i < json_array_get_length (figures); i++)
    {
      JsonObject *figure = json_array_get_object_element (figures, i);
      if (strcmp (json_object_get_string_member (figure, "id"), id) == 0)
        return figure;
    }
  return NULL;
}

static void
assert_value (JsonObject *root, const char *id, double value, const char *unit)
{
  JsonObject *figure = figure_named (root, id);
  if (figure == NULL)
    g_error ("%s does not follow", id);
  g_assert_true (is_near (figure_of (figure, "value"), value, 1e-9 * value));
  g_assert_cmpstr (json_object_get_string_member (figure, "unit"), ==, unit);
}

static gboolean
array_has (JsonArray *array, const char *text)
{
  for (guint i = 0; i < json_array_get_length (array); i++)
    if (strcmp (json_array_get_string_element (array, i), text) == 0)
      return TRUE;
  return FALSE;
}

/* CTA-861-H VIC 1 from what is printed of it: 25.175 MHz, 640 active, 16, 96 and 48 of 800 pixels;
 * 480 active, 10, 2 and 33 of 525 lines; 31.46875 kHz and 59.940476 Hz. */
static const char *const vic_1[] = { "solve",
                                     "--json",
                                     "pixel-clock=25.175 MHz",
                                     "h-active=640px",
                                     "h-front-porch=16px",
                                     "h-sync=96 px",
                                     "h-back-porch=48px",
                                     "v-active=480 lines",
                                     "v-front-porch=10 lines",
                                     "v-sync=2 lines",
                                     "v-back-porch=33 lines",
                                     NULL };

static void
test_whole_raster (void)
{
  g_autoptr (JsonObject) root = solved (vic_1);
  assert_value (root, "h-total", 800, "px");
  assert_value (root, "lines-per-frame", 525, "lines");
  assert_value (root, "line-rate", 31468.75, "Hz");
  assert_value (root, "field-rate", 31468.75 / 525, "Hz");
  assert_value (root, "h-sync-time", 96 / 25.175e6, "s");
  assert_value (root, "v-blanking", 45, "lines");

  JsonObject *raster = json_object_get_object_member (root, "raster");
  g_assert_true (is_near (figure_of (raster, "h_total"), 800, 0));
  g_assert_true (is_near (figure_of (raster, "lines_per_frame"), 525, 0));
  g_assert_true (is_null (root, "no_raster_because"));
}

/* Two readings of a counter: 15 734 / 59.94 = 262.4958, within what was written 262.5 lines. */
static void
test_from_a_counter (void)
{
  const char *const args[] = {
    "solve", "line-rate=15.734kHz", "field-rate=59.94Hz", "--interlaced", "--json", NULL
  };
  g_autoptr (JsonObject) root = solved (args);
  JsonObject *lines = figure_named (root, "lines-per-frame");

  assert_value (root, "lines-per-frame", 525, "lines");
  assert_value (root, "lines-per-field", 262.5, "lines");
  assert_value (root, "frame-rate", 29.97, "Hz");
  g_assert_true (json_object_get_boolean_member (root, "interlaced"));
  g_assert_false (json_object_get_boolean_member (lines, "entered"));
  g_assert_true (array_has (json_object_get_array_member (lines, "from"), "line-rate"));
  g_assert_true (array_has (json_object_get_array_member (lines, "from"), "field-rate"));
  g_assert_true (is_null (root, "raster"));
  g_assert_false (is_null (root, "no_raster_because"));
}

/* 800 pixels at 25.175 MHz are 31.46875 kHz: what follows and agrees is said to. */
static void
test_redundant (void)
{
  const char *const args[] = { "solve",         "pixel-clock=25.175MHz",
                               "h-total=800px", "line-rate=31.4688kHz",
                               "--json",        NULL };
  const char *const none[] = { "solve", "pixel-clock=25.175MHz", "h-total=800px", "--json", NULL };
  g_autoptr (JsonObject) root = solved (args);
  g_autoptr (JsonObject) plain = solved (none);
  g_autoptr (Run) text = run_cli ("solve", "pixel-clock=25.175MHz", "h-total=800px",
                                  "line-rate=31.4688kHz", NULL);
  g_assert_true (array_has (json_object_get_array_member (root, "redundant"), "line-rate"));
  g_assert_cmpuint (json_array_get_length (json_object_get_array_member (plain, "redundant")), ==,
                    0);
  g_assert_nonnull (strstr (text->out, "Follows from the others too"));
}

/* 800 pixels at 25.175 MHz are not 31.5 kHz; the figures that disagree are named. */
static void
test_contradiction (void)
{
  g_autoptr (Run) run = run_cli ("solve", "pixel-clock=25.175MHz", "h-total=800px",
                                 "line-rate=31.5000kHz", "v-sync=2 lines", NULL);
  assert_refused (run, 1, "contradict");
  g_assert_nonnull (strstr (run->err, "pixel clock 25.175"));
  g_assert_nonnull (strstr (run->err, "pixels of a line 800"));
  g_assert_nonnull (strstr (run->err, "line rate 31.5"));
  g_assert_null (strstr (run->err, "field sync"));
}

/* The list names every figure that is taken, and nothing else is. */
static void
test_list (void)
{
  g_autoptr (Run) json = run_cli ("solve", "--list", "--json", NULL);
  g_autoptr (Run) text = run_cli ("solve", "--list", NULL);
  g_autoptr (JsonObject) root = run_json (json);
  JsonArray *figures = json_object_get_array_member (root, "figures");

  g_assert_cmpuint (count_lines (text->out), ==, json_array_get_length (figures) + 1);
  for (guint i = 0; i < json_array_get_length (figures); i++)
    {
      JsonObject *figure = json_array_get_object_element (figures, i);
      const char *id = json_object_get_string_member (figure, "id");
      const char *unit = is_null (figure, "unit") ? "%"
                                                  : json_object_get_string_member (figure, "unit");
      g_autofree char *pair = g_strdup_printf ("%s=2 %s", id, unit);
      g_autoptr (Run) run = run_cli ("solve", pair, "--json", NULL);
      g_autoptr (JsonObject) one = run_json (run);
      g_assert_nonnull (figure_named (one, id));
      g_assert_nonnull (strstr (text->out, id));
    }
}

/* "-" and "_" are both written, and space around the sign. */
static void
test_spelling (void)
{
  g_autoptr (Run) one = run_cli ("solve", "line-rate=15.625 kHz", NULL);
  g_autoptr (Run) two = run_cli ("solve", " Line_Rate = 15.625kHz ", NULL);
  g_assert_cmpint (one->status, ==, 0);
  g_assert_cmpstr (one->out, ==, two->out);
}

static void
test_for_a_person (void)
{
  const char *args[G_N_ELEMENTS (vic_1)] = { NULL };
  for (gsize i = 0, n = 0; vic_1[i] != NULL; i++)
    if (strcmp (vic_1[i], "--json") != 0)
      args[n++] = vic_1[i];
  g_autoptr (Run) run = run_args (args);
  g_assert_cmpint (run->status, ==, 0);
  g_assert_nonnull (strstr (run->out, "from "));
  g_assert_nonnull (strstr (run->out, "31.46875 kHz"));
  g_assert_nonnull (strstr (run->out, "whole raster"));
}

static const struct
{
  const char *args[4];
  int status;
  const char *says;
} refused[] = {
  { { NULL }, 2, "NAME=QUANTITY" },
  { { "--list", "line-rate=15kHz", NULL }, 2, "--list" },
  { { "line-rate", NULL }, 2, "NAME=QUANTITY" },
  { { "=15kHz", NULL }, 2, "NAME=QUANTITY" },
  { { "line-rate=15kHz", "line_rate=15kHz", NULL }, 2, "twice" },
  { { "linerate=15kHz", NULL }, 1, "“line-rate”" },
  { { "line-rate=", NULL }, 1, "line-rate" },
  { { "line-rate=15", NULL }, 1, "has no unit" },
  { { "line-rate=-15kHz", NULL }, 1, "negative" },
  { { "line-rate=0Hz", NULL }, 1, "line" },
  { { "line-rate=\xff", NULL }, 1, "line-rate" },
  { { "h-active=700px", "h-total=600px", NULL }, 1, "negative" },
};

static void
test_refused (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (refused); i++)
    {
      const char *args[6] = { "solve" };
      for (gsize k = 0; refused[i].args[k] != NULL; k++)
        args[k + 1] = refused[i].args[k];
      g_autoptr (Run) run = run_args (args);
      assert_refused (run, refused[i].status, refused[i].says);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/solve/whole-raster", test_whole_raster);
  g_test_add_func ("/solve/from-a-counter", test_from_a_counter);
  g_test_add_func ("/solve/redundant", test_redundant);
  g_test_add_func ("/solve/contradiction", test_contradiction);
  g_test_add_func ("/solve/list", test_list);
  g_test_add_func ("/solve/spelling", test_spelling);
  g_test_add_func ("/solve/for-a-person", test_for_a_person);
  g_test_add_func ("/solve/refused", test_refused);
  return g_test_run ();
}
