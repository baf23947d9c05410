/* SPDX-License-Identifier: GPL-3.0-or-later */
/* `breezeway-cli cause`: from readings to what is likely wrong; and the conductors of `levels`. */
#include <math.h>
#include <string.h>

#include "run.h"

static JsonObject *
cause_at (JsonObject *root, guint i)
{
  return json_array_get_object_element (json_object_get_array_member (root, "causes"), i);
}

static JsonObject *
fault_at (JsonObject *cause, guint i)
{
  return json_array_get_object_element (json_object_get_array_member (cause, "faults"), i);
}

static const char *
first_kind (JsonObject *root)
{
  return json_object_get_string_member (fault_at (cause_at (root, 0), 0), "kind");
}

static double
predicted (JsonObject *cause, const char *id)
{
  JsonArray *all = json_object_get_array_member (cause, "predicted");
  for (guint i = 0; i < json_array_get_length (all); i++)
    {
      JsonObject *one = json_array_get_object_element (all, i);
      if (strcmp (json_object_get_string_member (one, "id"), id) == 0)
        return figure_of (one, "high");
    }
  return NAN;
}

static void
test_keys (void)
{
  static const char *const keys[] = { "source",    "input",   "system",     "kind",     "sync",
                                      "conductor", "load_ohm", "series_ohm", "standard", "readings",
                                      "causes",    NULL };
  static const char *const cause_keys[]
      = { "known", "faults", "share", "alike", "worst", "deviation", "predicted", "says", NULL };
  g_autoptr (Run) run = run_cli ("cause", "--system", "pal-b", "--kind", "composite", "--white",
                                 "1.4V", "--sync-level", "600mV", "--json", NULL);
  g_autoptr (JsonObject) root = run_json (run);
  assert_keys_begin_with (root, keys);
  assert_keys_begin_with (cause_at (root, 0), cause_keys);
}

/* A 75 Ω source into 10 kΩ instead of 75 Ω: 2 × 10 000/10 075 times the level (voltage divider). */
static void
test_unterminated (void)
{
  g_autoptr (Run) run = run_cli ("cause", "--system", "pal-b", "--kind", "composite", "--white",
                                 "1.39V", "--sync-level", "0.6V", "--burst", "0.6V", "--json",
                                 NULL);
  g_autoptr (JsonObject) root = run_json (run);
  JsonObject *cause = cause_at (root, 0);
  g_assert_cmpstr (first_kind (root), ==, "unterminated");
  g_assert_true (is_near (figure_of (fault_at (cause, 0), "ratio"), 2 * 10e3 / 10075, 1e-9));
  g_assert_true (is_near (predicted (cause, "white_v"), 0.7 * 2 * 10e3 / 10075, 1e-9));
}

/* Two loads of 75 Ω: two thirds (voltage divider), of SMPTE 170M table 1. */
static void
test_double (void)
{
  g_autoptr (Run) run = run_cli ("cause", "--system", "ntsc-m", "--kind", "composite", "--white",
                                 "476mV", "--sync-level", "190mV", "--json", NULL);
  g_autoptr (JsonObject) root = run_json (run);
  g_assert_cmpstr (first_kind (root), ==, "two-loads");
  g_assert_true (is_near (figure_of (fault_at (cause_at (root, 0), 0), "ratio"), 2.0 / 3, 1e-9));
  g_assert_true (is_near (figure_of (fault_at (cause_at (root, 0), 0), "ohm"), 37.5, 1e-9));
}

/* SMPTE 170M-2004 table 1 allows ±1 IRE: no cause. */
static void
test_within (void)
{
  g_autoptr (Run) run = run_cli ("cause", "--system", "ntsc-m", "--kind", "composite", "--white",
                                 "720mV", "--sync-level", "280mV", "--black", "60mV", "--json",
                                 NULL);
  g_autoptr (JsonObject) root = run_json (run);
  JsonArray *faults = json_object_get_array_member (cause_at (root, 0), "faults");
  g_assert_true (json_object_get_boolean_member (cause_at (root, 0), "known"));
  g_assert_cmpuint (json_array_get_length (faults), ==, 0);
  g_assert_cmpstr (json_object_get_string_member (root, "standard"), ==, "smpte-170m");
}

/* Sync on red where it should be on green. */
static void
test_conductor (void)
{
  g_autoptr (Run) run
      = run_cli ("cause", "--system", "none", "--kind", "rgb", "--sync", "on-green", "--conductor",
                 "r", "--white", "700mV", "--sync-level", "300mV", "--json", NULL);
  g_autoptr (JsonObject) root = run_json (run);
  g_assert_cmpstr (first_kind (root), ==, "other-conductor");
  g_assert_cmpstr (json_object_get_string_member (fault_at (cause_at (root, 0), 0), "which"), ==,
                   "g");
}

/* 100 µF around 150 Ω: a white field of 625 lines falls by 8.159 % by tests/core/circuit/coupling_check.py, which
 * counts the half line at the top otherwise. */
static void
test_tilt (void)
{
  g_autoptr (Run) run = run_cli ("cause", "--system", "pal-b", "--kind", "composite", "--tilt",
                                 "8.159%", "--white", "0.7V", "--json", NULL);
  g_autoptr (JsonObject) root = run_json (run);
  g_assert_cmpstr (first_kind (root), ==, "ac-coupled");
  g_assert_true (
      is_near (figure_of (fault_at (cause_at (root, 0), 0), "farad"), 100e-6, 0.5e-6));

  g_autoptr (Run) given
      = run_cli ("cause", "--system", "pal-b", "--kind", "composite", "--tilt", "8.159%", "--white",
                 "0.7V", "--capacitor", "100uF", "--json", NULL);
  g_autoptr (JsonObject) same = run_json (given);
  g_assert_true (is_near (predicted (cause_at (same, 0), "field_tilt"),
                          0.08159, 4e-4));
}

static void
test_sheet (void)
{
  g_autofree char *path = demo_path ();
  g_autoptr (JsonObject) fit = fit_json (path);
  const char *source = json_object_get_string_member (cell_at (fit, 0), "source");
  const char *input = json_object_get_string_member (cell_at (fit, 0), "input");
  g_autoptr (Run) run = run_cli ("cause", path, "--source", source, "--input", input, "--white",
                                 "0.1V", "--json", NULL);
  g_autoptr (JsonObject) root = run_json (run);
  g_assert_cmpstr (json_object_get_string_member (root, "source"), ==, source);
  g_assert_cmpstr (json_object_get_string_member (root, "input"), ==, input);
  g_assert_cmpuint (json_array_get_length (json_object_get_array_member (root, "causes")), >, 0);
}

static double
expected_of (JsonObject *root)
{
  JsonArray *readings = json_object_get_array_member (root, "readings");
  return figure_of (json_array_get_object_element (readings, 0), "expected_high");
}

/* 5 V behind 100 Ω through 1.1 kΩ, the E24 value next to 1075 Ω (IEC 60063), into 75 Ω:
 * 5 × 75/1275 = 294 mV (voltage divider). */
static void
test_attenuated (void)
{
  g_autofree char *path = demo_path ();
  g_autoptr (Run) run = run_cli ("cause", path, "--source", "4", "--input", "3", "--conductor",
                                 "sync", "--sync-level", "294mV", "--json", NULL);
  g_autoptr (JsonObject) root = run_json (run);
  JsonArray *faults = json_object_get_array_member (cause_at (root, 0), "faults");
  g_assert_true (is_near (expected_of (root), 5.0 * 75 / 1275, 1e-9));
  g_assert_cmpuint (json_array_get_length (faults), ==, 0);
}

/* An input that takes sync of 1 to 2 V is made for √2 V, as many decibels from either end: 5 V
 * behind 100 Ω through 91 Ω, the E24 value next to 90.17 Ω, into 75 Ω give 5 × 75/266 = 1.41 V. */
static void
test_between_levels (void)
{
  g_autofree char *path = source_path ("tests/sheets/09-own-sync-of-1-to-2-volts.bench");
  g_autoptr (Run) run = run_cli ("cause", path, "--source", "1", "--input", "1", "--conductor",
                                 "sync", "--sync-level", "1.41V", "--json", NULL);
  g_autoptr (JsonObject) root = run_json (run);
  JsonArray *faults = json_object_get_array_member (cause_at (root, 0), "faults");
  g_assert_true (is_near (expected_of (root), 5.0 * 75 / 266, 1e-9));
  g_assert_cmpuint (json_array_get_length (faults), ==, 0);
}

/* 4 V into an input made for 0.7 V: an attenuator of 20 lg (4/0.7) = 15.1 dB, behind which 0.7 V is
 * right and 4 V means that it is missing. */
static void
test_padded (void)
{
  g_autofree char *path = source_path ("tests/sheets/10-four-volts-into-high-impedance.bench");
  g_autoptr (Run) run = run_cli ("cause", path, "--source", "1", "--input", "2", "--white", "0.7V",
                                 "--json", NULL);
  g_autoptr (Run) bare = run_cli ("cause", path, "--source", "1", "--input", "2", "--white", "4V",
                                  "--json", NULL);
  g_autoptr (JsonObject) root = run_json (run);
  g_autoptr (JsonObject) without = run_json (bare);
  JsonArray *faults = json_object_get_array_member (cause_at (root, 0), "faults");
  JsonArray *missing = json_object_get_array_member (cause_at (without, 0), "faults");
  g_assert_true (is_near (json_object_get_double_member (root, "loss_db"), 15.139, 1e-3));
  g_assert_cmpuint (json_array_get_length (faults), ==, 0);
  g_assert_cmpuint (json_array_get_length (missing), ==, 1);
  g_assert_cmpstr (json_object_get_string_member (json_array_get_object_element (missing, 0),
                                                  "kind"),
                   ==, "attenuator-missing");
}

/* The input takes no separate H: 3.5 V behind 50 Ω, into 10 kΩ. */
static void
test_not_taken (void)
{
  g_autofree char *path = demo_path ();
  g_autoptr (Run) run = run_cli ("cause", path, "--source", "7", "--input", "3", "--conductor", "h",
                                 "--sync-level", "3.5V", "--json", NULL);
  g_autoptr (Run) text = run_cli ("cause", path, "--source", "7", "--input", "3", "--conductor",
                                  "h", "--sync-level", "3.5V", NULL);
  g_autoptr (JsonObject) root = run_json (run);
  g_assert_true (is_near (expected_of (root), 3.5 * 10e3 / 10050, 1e-9));
  g_assert_nonnull (strstr (text->out, "does not take separate"));
}

static void
test_impossible (void)
{
  static const char *const wrong[][3] = { { "--tilt", "150%", "0 % to 100 %" },
                                          { "--tilt", "-5%", "0 % to 100 %" },
                                          { "--line-tilt", "101%", "0 % to 100 %" },
                                          { "--sync-level", "-300mV", "polarity" },
                                          { "--burst", "-300mV", "positive" } };
  for (gsize i = 0; i < G_N_ELEMENTS (wrong); i++)
    {
      g_autoptr (Run) run = run_cli ("cause", "--system", "pal-b", "--kind", "composite",
                                     wrong[i][0], wrong[i][1], NULL);
      assert_refused (run, 1, wrong[i][1]);
      assert_refused (run, 1, wrong[i][2]);
    }
}

static void
test_text (void)
{
  g_autoptr (Run) run = run_cli ("cause", "--system", "ntsc-m", "--kind", "composite", "--white",
                                 "476mV", "--sync-level", "190mV", NULL);
  g_assert_cmpint (run->status, ==, 0);
  g_assert_nonnull (strstr (run->out, "0.67 times"));
  g_assert_nonnull (strstr (run->out, "-3.52 dB"));
  g_assert_nonnull (strstr (run->out, "fits best"));
  g_assert_null (strstr (run->out, "100 %"));
}

static void
test_refused (void)
{
  g_autofree char *path = demo_path ();
  g_autoptr (Run) nothing = run_cli ("cause", NULL);
  g_autoptr (Run) no_reading
      = run_cli ("cause", "--system", "pal-b", "--kind", "composite", NULL);
  g_autoptr (Run) system
      = run_cli ("cause", "--system", "pal-x", "--kind", "composite", "--white", "1V", NULL);
  g_autoptr (Run) both = run_cli ("cause", path, "--system", "pal-b", "--white", "1V", NULL);
  g_autoptr (Run) no_source = run_cli ("cause", path, "--white", "1V", NULL);
  g_autoptr (Run) other = run_cli ("cause", path, "--source", "nothing", "--input", "nothing",
                                   "--white", "1V", NULL);
  g_autoptr (Run) conductor = run_cli ("cause", "--system", "pal-b", "--kind", "composite",
                                       "--conductor", "pb", "--white", "1V", NULL);
  g_autoptr (Run) unit
      = run_cli ("cause", "--system", "pal-b", "--kind", "composite", "--white", "1us", NULL);
  g_autoptr (Run) sync = run_cli ("cause", "--system", "pal-b", "--kind", "composite", "--sync",
                                  "on-green", "--white", "1V", NULL);
  g_autoptr (Run) capacitor = run_cli ("cause", "--system", "pal-b", "--kind", "composite",
                                       "--capacitor", "nan uF", "--white", "1V", NULL);
  assert_refused (nothing, 2, "reading");
  assert_refused (no_reading, 2, "reading");
  assert_refused (system, 1, "pal-x");
  assert_refused (both, 2, "--system");
  assert_refused (no_source, 2, "--source");
  assert_refused (other, 1, "nothing");
  assert_refused (conductor, 1, "pb");
  g_autoptr (Run) huge
      = run_cli ("cause", "--system", "pal-b", "--kind", "composite", "--dc", "-1e300V", NULL);
  assert_refused (unit, 1, "White");
  assert_refused (huge, 1, "1e300");
  assert_refused (sync, 1, "on-green");
  assert_refused (capacitor, 1, "--capacitor");
}

static JsonObject *
level_in (JsonObject *root, guint conductor, const char *id)
{
  JsonArray *all = json_object_get_array_member (root, "conductors");
  JsonArray *levels = json_object_get_array_member (json_array_get_object_element (all, conductor),
                                                    "levels");
  for (guint i = 0; i < json_array_get_length (levels); i++)
    {
      JsonObject *level = json_array_get_object_element (levels, i);
      if (strcmp (json_object_get_string_member (level, "id"), id) == 0)
        return level;
    }
  g_error ("no such level");
}

/* ITU-R BT.601-5 3.5: Y 16 to 235, C 16 to 240; −300 mV has no code. SMPTE 170M annex B: component
 * 100 IRE is 700 mV. */
static void
test_conductors (void)
{
  g_autoptr (Run) run = run_cli ("levels", "--system", "none", "--kind", "component", "--json",
                                 NULL);
  g_autoptr (JsonObject) root = run_json (run);
  JsonObject *white = level_in (root, 0, "white");
  JsonObject *sync = level_in (root, 0, "sync_low");
  JsonObject *lowest = level_in (root, 1, "lowest");
  g_assert_true (is_near (figure_of (white, "v"), 0.7, 1e-12));
  g_assert_true (is_near (figure_of (white, "ire"), 100, 1e-9));
  g_assert_true (is_near (figure_of (white, "code_8"), 235, 1e-9));
  g_assert_true (is_near (figure_of (white, "code_10"), 940, 1e-9));
  g_assert_true (is_near (figure_of (sync, "v"), -0.3, 1e-12));
  g_assert_true (is_null (sync, "code_8"));
  g_assert_true (is_near (figure_of (lowest, "code_8"), 16, 1e-9));
}

/* SMPTE 170M-2004 clause 15.4: 100 IRE are 714 mV, half of it is three loads or 6 dB; what to read next is
 * said. A reading of one digit (0.7 V, ±0.05 V) agrees with what one of three does not, and so does a
 * poor scope. */
static void
test_digits (void)
{
  g_autoptr (Run) half = run_cli ("cause", "--system", "ntsc-m", "--kind", "composite", "--white",
                                  "50.0 IRE", "--sync-level", "20.0 IRE", "--json", NULL);
  g_autoptr (Run) coarse = run_cli ("cause", "--system", "pal-b", "--kind", "composite", "--white",
                                    "0.6V", "--json", NULL);
  g_autoptr (Run) fine = run_cli ("cause", "--system", "pal-b", "--kind", "composite", "--white",
                                  "600mV", "--accuracy", "1%", "--json", NULL);
  g_autoptr (JsonObject) root = run_json (half);
  g_autoptr (JsonObject) coarse_root = run_json (coarse);
  g_autoptr (JsonObject) fine_root = run_json (fine);

  g_assert_nonnull (strstr (half->out, "three-loads"));
  g_assert_nonnull (strstr (half->out, "attenuator-added"));
  g_assert_nonnull (strstr (json_object_get_string_member (root, "next"), "ohmmeter"));
  g_assert_nonnull (strstr (coarse->out, "50-ohm"));
  g_assert_null (strstr (fine->out, "50-ohm"));
}

/* The accuracy of the scope that a sheet holds does what --accuracy does, which stands before it. */
static void
test_accuracy_of_sheet (void)
{
  g_autofree char *folder = scratch_folder ();
  g_autofree char *demo = demo_path ();
  g_autofree char *with
      = demo_with ("[bench-sheet]", "[bench-sheet]\nvoltage_accuracy=1 %");
  g_autofree char *path = write_scratch (folder, "scope.bench", with);
#define CAUSE(sheet, ...)                                                                          \
  run_cli ("cause", sheet, "--source", "1", "--input", "Composite", "--white", "600mV", "--json",  \
           __VA_ARGS__, NULL)
  g_autoptr (Run) option = CAUSE (demo, "--accuracy", "1%");
  g_autoptr (Run) sheet = CAUSE (path, NULL);
  g_autoptr (Run) usual = CAUSE (demo, NULL);
  g_autoptr (Run) both = CAUSE (path, "--accuracy", "3%");
#undef CAUSE
  g_assert_cmpstr (sheet->err, ==, "");
  g_assert_cmpstr (sheet->out, ==, option->out);
  g_assert_cmpstr (sheet->out, !=, usual->out);
  g_assert_cmpstr (both->out, ==, usual->out); /* 3 % is what stands without any */
  remove_scratch (folder);
}

/* RGB at an input that takes composite alone: refused in words, with no cause and nothing to be right. */
static void
test_not_taken_picture (void)
{
  g_autofree char *demo = demo_path ();
  g_autoptr (Run) run = run_cli ("cause", demo, "--source", "3", "--input", "Composite", "--white",
                                 "700mV", NULL);
  g_assert_cmpint (run->status, ==, 0);
  g_assert_nonnull (strstr (run->out, "This input does not take RGB"));
  g_assert_nonnull (strstr (run->out, "Hook-up"));
  g_assert_null (strstr (run->out, "As it should be"));
}

/* SMPTE 170M-2004 clause 15.4: 140 IRE are 1 V, on both conductors of Y/C; the burst of 40 IRE is on C alone. */
static void
test_conductors_of_yc (void)
{
  g_autoptr (Run) run = run_cli ("levels", "--system", "ntsc-m", "--kind", "yc", "--sync",
                                 "in-video", "--json", NULL);
  g_autoptr (JsonObject) root = run_json (run);
  JsonArray *all = json_object_get_array_member (root, "conductors");
  g_assert_cmpuint (json_array_get_length (all), ==, 2);
  for (guint i = 0; i < 2; i++)
    {
      JsonObject *one = json_array_get_object_element (all, i);
      g_assert_cmpstr (json_object_get_string_member (one, "id"), ==, i == 0 ? "y" : "c");
      g_assert_true (is_near (figure_of (one, "mv_per_ire"), 1000.0 / 140, 1e-9));
      g_assert_true (i == 0 ? is_null (one, "burst_pp_v")
                            : is_near (figure_of (one, "burst_pp_v"), 40.0 / 140, 1e-9));
    }
  g_assert_true (is_near (figure_of (level_in (root, 0, "white"), "v"), 100.0 / 140, 1e-9));
  g_assert_true (is_near (figure_of (level_in (root, 0, "white"), "percent"), 100, 1e-9));
  g_assert_true (is_near (figure_of (level_in (root, 0, "black"), "ire"), 7.5, 1e-9));
  g_assert_true (is_near (figure_of (level_in (root, 0, "black"), "percent"), 7.5, 1e-9));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/cause/keys", test_keys);
  g_test_add_func ("/cause/unterminated", test_unterminated);
  g_test_add_func ("/cause/double", test_double);
  g_test_add_func ("/cause/within", test_within);
  g_test_add_func ("/cause/conductor", test_conductor);
  g_test_add_func ("/cause/tilt", test_tilt);
  g_test_add_func ("/cause/sheet", test_sheet);
  g_test_add_func ("/cause/attenuated", test_attenuated);
  g_test_add_func ("/cause/not-taken", test_not_taken);
  g_test_add_func ("/cause/between-levels", test_between_levels);
  g_test_add_func ("/cause/padded", test_padded);
  g_test_add_func ("/cause/impossible", test_impossible);
  g_test_add_func ("/cause/text", test_text);
  g_test_add_func ("/cause/refused", test_refused);
  g_test_add_func ("/cause/conductors-of-levels", test_conductors);
  g_test_add_func ("/cause/digits", test_digits);
  g_test_add_func ("/cause/accuracy-of-sheet", test_accuracy_of_sheet);
  g_test_add_func ("/cause/not-taken-picture", test_not_taken_picture);
  g_test_add_func ("/cause/conductors-of-yc", test_conductors_of_yc);
  return g_test_run ();
}
