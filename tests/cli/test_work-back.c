/* SPDX-License-Identifier: GPL-3.0-or-later */
/* `breezeway-cli work-back`. Figures are worked by hand from Ohm's and Kirchhoff's laws beside each check. */
#include <string.h>

#include "run.h"

static JsonObject *
worked (const char *line)
{
  g_auto (GStrv) words = g_strsplit (line, " ", -1);
  g_autoptr (GPtrArray) all = g_ptr_array_new ();
  g_ptr_array_add (all, (gpointer) "work-back");
  g_ptr_array_add (all, (gpointer) "--json");
  for (guint i = 0; words[i] != NULL; i++)
    g_ptr_array_add (all, words[i]);
  g_ptr_array_add (all, NULL);
  g_autoptr (Run) run = run_args ((const char *const *) all->pdata);
  g_assert_cmpint (run->status, ==, 0);
  return run_json (run);
}

static double
cell_of (JsonObject *of, const char *table, guint row, const char *key)
{
  JsonArray *rows = json_object_get_array_member (of, table);
  g_assert_cmpuint (row, <, json_array_get_length (rows));
  return figure_of (json_array_get_object_element (rows, row), key);
}

/* 75 × (2.45 / 0.38 − 1) = 408.55 Ω; into 10 kΩ 2.45 × 10000 / 10408.55 = 2.354 V. */
static void
test_source (void)
{
  g_autoptr (JsonObject) got = worked ("--open=2.45V --loaded=380mV");
  g_assert_true (is_near (figure_of (got, "source_ohm"), 408.55, 0.01));
  g_assert_true (is_near (cell_of (got, "at_loads", 0, "level_v"), 0.38, 1e-9));
  g_assert_true (is_near (cell_of (got, "at_loads", 2, "level_v"), 2.3538, 1e-3));
}

/* 1 × (282 + 78) / 78 = 4.615 V; 78 × (4.615 / 0.7 − 1) = 436.3 Ω. */
static void
test_driver (void)
{
  g_autoptr (JsonObject) got = worked ("--level=1V --behind=282ohm --load=78ohm --wanted=0.7V");
  g_assert_true (is_near (figure_of (got, "open_v"), 4.6154, 1e-4));
  g_assert_true (is_near (figure_of (got, "wanted_series_ohm"), 436.29, 0.01));
}

/* 2.5 × 100 / 0.5 = 500, 1.5 × 330 / 1.5 = 330, 1 × 470 / 2 = 235 Ω: not one load, even with 3 %. */
static void
test_drops (void)
{
  g_autoptr (JsonObject) got
      = worked ("--drop=3V,2.5V,100ohm --drop=3V,1.5V,330ohm --drop=3V,1V,470ohm");
  static const double ohm[] = { 500, 330, 235 };
  g_assert_false (json_object_get_boolean_member (got, "agree"));
  for (guint i = 0; i < G_N_ELEMENTS (ohm); i++)
    g_assert_true (is_near (cell_of (got, "drops", i, "load_ohm"), ohm[i], 1e-9));

  /* 3 V through 240 and 470 Ω into 75 Ω: 3 × 75 / 315 = 714.3 mV, 3 × 75 / 545 = 412.8 mV */
  g_autoptr (JsonObject) one = worked ("--drop=3V,714.3mV,240ohm --drop=3V,412.8mV,470ohm");
  g_assert_true (json_object_get_boolean_member (one, "agree"));
  g_assert_true (is_near (figure_of (one, "load_ohm"), 75, 2));
}

/* 5/470 + 5/1000 = 15.638 mA into 1/470 + 1/1000 + 1/75 = 16.461 mS: 950.0 mV; with 75 Ω more 29.794 mS:
 * 524.9 mV. Each alone: 5/470 / 16.461 mS = 646.3 mV, 5/1000 / 16.461 mS = 303.7 mV. */
static void
test_node (void)
{
  g_autoptr (JsonObject) got = worked ("--driver=5V,470ohm --driver=5V,1kohm");
  static const double levels[] = { 0, 0.30375, 0.64628, 0.95003 };
  g_assert_true (is_near (figure_of (got, "source_ohm"), 319.73, 0.01));
  g_assert_true (is_near (figure_of (got, "second_load_v"), 0.52488, 1e-4));
  for (guint i = 0; i < G_N_ELEMENTS (levels); i++)
    g_assert_true (is_near (cell_of (got, "codes", i, "level_v"), levels[i], 1e-4));
  g_assert_true (is_near (figure_of (got, "least_step_v"), 0.30375, 1e-4));
  g_assert_true (is_near (figure_of (got, "most_step_v"), 0.64628 - 0.30375, 1e-4));
}

/* EN 50049-1 with amendment A2, from secondary sources: pin 8 from 4.5 to 7 V is 16:9, from 9.5 to 12 V 4:3;
 * pin 16 from 1 to 3 V is RGB, into 75 Ω. */
static void
test_pin (void)
{
  static const struct
  {
    const char *line;
    const char *state;
  } cases[] = {
    { "--pin=8 --reading=1V", "off" },         { "--pin=8 --reading=4.9V", "wide" },
    { "--pin=8 --reading=11V", "av" },         { "--pin=8 --reading=8V", "undefined" },
    { "--pin=16 --reading=0.2V", "composite" }, { "--pin=16 --reading=1.9V", "rgb" },
    { "--pin=16 --reading=5V", "too-high" },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (JsonObject) got = worked (cases[i].line);
      g_assert_cmpstr (json_object_get_string_member (got, "state"), ==, cases[i].state);
    }
  g_autoptr (JsonObject) got = worked ("--pin=16 --reading=5V");
  g_assert_true (is_near (figure_of (got, "current_a"), 5.0 / 75, 1e-9));
}

static gboolean
system_fits (JsonObject *got, const char *system)
{
  JsonArray *rows = json_object_get_array_member (got, "systems");
  for (guint i = 0; i < json_array_get_length (rows); i++)
    {
      JsonObject *row = json_array_get_object_element (rows, i);
      if (strcmp (json_object_get_string_member (row, "system"), system) == 0)
        return json_object_get_boolean_member (row, "fits");
    }
  g_error ("there is no system %s", system);
}

/* ITU-R BT.1700: PAL-M 3 575 611.888 Hz, NTSC 3 579 545.45 Hz, PAL 4 433 618.75 Hz. */
static void
test_subcarrier (void)
{
  g_autoptr (JsonObject) m = worked ("--subcarrier=3.5756MHz");
  g_autoptr (JsonObject) pal = worked ("--subcarrier=4433619Hz");
  g_assert_true (system_fits (m, "pal-m"));
  g_assert_false (system_fits (m, "ntsc-m"));
  g_assert_true (system_fits (pal, "pal-b"));
  g_assert_true (system_fits (pal, "ntsc-4.43"));
  g_assert_false (system_fits (pal, "pal-m"));
}

/* 1.4 V is twice 0.7 V, and 1.43 V twice 0.714 V. Nothing is said for certain. */
static void
test_one_reading (void)
{
  g_autoptr (JsonObject) got = worked ("--level=1.4V");
  g_autoptr (JsonObject) none = worked ("--level=9V");
  JsonArray *rows = json_object_get_array_member (got, "fits");
  g_assert_cmpuint (json_array_get_length (rows), >=, 2);
  for (guint i = 0; i < json_array_get_length (rows); i++)
    {
      JsonObject *row = json_array_get_object_element (rows, i);
      g_assert_cmpstr (json_object_get_string_member (row, "state_id"), ==, "unterminated");
      g_assert_cmpstr (json_object_get_string_member (row, "next"), !=, "");
    }
  g_assert_cmpuint (json_array_get_length (json_object_get_array_member (none, "fits")), ==, 0);
}

static void
test_refused (void)
{
  static const struct
  {
    const char *words[4];
    int status;
    const char *says;
  } bad[] = {
    { { "--open=1V", "--loaded=2V" }, 1, "--loaded" },
    { { "--open=1V", "--loaded=0V" }, 1, "--loaded" },
    { { "--open=1V" }, 2, "--loaded" },
    { { "--drop=1V,2V,75ohm" }, 1, "less than" },
    { { "--drop=1V,75ohm" }, 1, "100ohm" },
    { { "--driver=5V" }, 1, "470ohm" },
    { { "--pin=9", "--reading=1V" }, 1, "8 and 16" },
    { { "--level=1V", "--behind=5kg" }, 1, "--behind" },
    { { "--drop=2V,1V,75ohm", "--accuracy=60%" }, 1, "50" },
    { { "--subcarrier=4.43V" }, 1, "--subcarrier" },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      g_autoptr (Run) run = run_cli ("work-back", bad[i].words[0], bad[i].words[1], NULL);
      assert_refused (run, bad[i].status, bad[i].says);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/work-back/source", test_source);
  g_test_add_func ("/work-back/driver", test_driver);
  g_test_add_func ("/work-back/drops", test_drops);
  g_test_add_func ("/work-back/node", test_node);
  g_test_add_func ("/work-back/pin", test_pin);
  g_test_add_func ("/work-back/subcarrier", test_subcarrier);
  g_test_add_func ("/work-back/one-reading", test_one_reading);
  g_test_add_func ("/work-back/refused", test_refused);
  return g_test_run ();
}
