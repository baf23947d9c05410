/* SPDX-License-Identifier: GPL-3.0-or-later */
/* `breezeway-cli sync`: figures of SMPTE 170M-2004 (line sync of 4.7 us, table 2; V on lines 4 to 6,
 * picture from line 21, figure 7; six pulses each of equalising, broad and equalising, table 3) and
 * the truth tables of the gates. */
#include <math.h>
#include <string.h>

#include "run.h"

#define RASTER "525-59.94-interlaced"
#define LINE_S (286 / 4.5 * 1e-6)

static JsonObject *
line_of (JsonObject *root, int number)
{
  JsonArray *lines = json_object_get_array_member (root, "lines");
  for (guint i = 0; i < json_array_get_length (lines); i++)
    {
      JsonObject *line = json_array_get_object_element (lines, i);
      if (json_object_get_int_member (line, "line") == number)
        return line;
    }
  g_error ("no line %d", number);
}

static const char *
edge_of (JsonObject *root, int number)
{
  return json_object_get_string_member (line_of (root, number), "edge");
}

static void
test_xnor (void)
{
  g_autoptr (Run) run = run_cli ("sync", "--raster", RASTER, "--gate", "xnor", "--json", NULL);
  g_autoptr (JsonObject) root = run_json (run);

  g_assert_cmpstr (json_object_get_string_member (root, "polarity"), ==, "negative");
  g_assert_cmpstr (json_object_get_string_member (root, "form"), ==, "composite");
  for (int line = 4; line <= 6; line++)
    {
      g_assert_cmpstr (edge_of (root, line), ==, "late");
      g_assert_true (is_near (figure_of (line_of (root, line), "late_s"), 4.7e-6, 1e-9));
    }
  g_assert_cmpstr (edge_of (root, 7), ==, "missing");
  g_assert_true (is_null (line_of (root, 7), "late_s"));
  g_assert_cmpstr (edge_of (root, 8), ==, "right");
  JsonObject *afc = json_object_get_object_member (root, "afc");
  g_assert_true (is_near (figure_of (afc, "picture_line"), 21, 0));
  g_assert_true (json_object_get_boolean_member (afc, "locks"));
  g_assert_true (is_null (afc, "picture_m"));
}

static void
test_and (void)
{
  g_autoptr (Run) run = run_cli ("sync", RASTER, "--gate", "and", "--field", "2", "--json", NULL);
  g_autoptr (JsonObject) root = run_json (run);
  JsonObject *by_edge = json_object_get_object_member (root, "lines_by_edge");
  JsonObject *structure = json_object_get_object_member (root, "structure");

  for (int line = 267; line <= 269; line++)
    g_assert_cmpstr (edge_of (root, line), ==, "missing");
  g_assert_true (is_near (figure_of (by_edge, "missing"), 3, 0));
  g_assert_true (is_near (figure_of (by_edge, "right"), 26 - 3, 0));
  g_assert_true (is_near (figure_of (by_edge, "early"), 0, 0));
  g_assert_true (is_near (figure_of (by_edge, "late"), 0, 0));
  g_assert_true (is_near (figure_of (structure, "serrations"), 0, 0));
}

static void
test_standard (void)
{
  g_autoptr (Run) run = run_cli ("sync", RASTER, "-g", "standard", "--delay", "300ns", "--json",
                                 NULL);
  g_autoptr (JsonObject) root = run_json (run);
  JsonObject *structure = json_object_get_object_member (root, "structure");
  JsonArray *edges = json_object_get_array_member (json_object_get_object_member (root, "result"),
                                                   "edges");

  g_assert_true (is_near (figure_of (structure, "serrations"), 6, 0));
  g_assert_true (is_near (figure_of (structure, "equalising_before"), 6, 0));
  g_assert_true (is_near (figure_of (structure, "equalising_after"), 6, 0));
  g_assert_true (is_null (root, "v_offset_s"));
  /* Three lines of picture before the three of equalising pulses. */
  g_assert_true (is_near (figure_of (json_array_get_object_element (edges, 0), "at_s"),
                          -6 * LINE_S + 0.3e-6, 1e-12));
}

/* Polarities that are given take the place of the raster's, both negative. */
static void
test_polarities (void)
{
  g_autoptr (Run) mixed = run_cli ("sync", RASTER, "--gate", "xor", "--h-polarity", "positive",
                                   "--json", NULL);
  g_autoptr (JsonObject) root = run_json (mixed);
  g_assert_cmpstr (json_object_get_string_member (root, "h_polarity"), ==, "positive");
  g_assert_cmpstr (json_object_get_string_member (root, "v_polarity"), ==, "negative");
  g_assert_cmpstr (json_object_get_string_member (root, "polarity"), ==, "negative");

  g_autoptr (Run) wrong = run_cli ("sync", RASTER, "--gate", "and", "--v-polarity", "positive",
                                   NULL);
  g_assert_cmpint (wrong->status, ==, 0);
  g_assert_nonnull (strstr (wrong->out, "is no composite sync"));
  g_assert_nonnull (strstr (wrong->out, "inverter into V"));
  /* what is no composite sync is not judged as one */
  g_assert_null (strstr (wrong->out, "needs no inverter"));
  g_assert_null (strstr (wrong->out, "The result has"));
}

/* A first-order loop without edges on lines 5 to 7 runs away by 3 x 1 % of a line. */
static void
test_afc (void)
{
  g_autoptr (Run) run = run_cli ("sync", RASTER, "--gate", "and", "--loop", "first",
                                 "--time-constant", "2", "--picture-width", "40cm", "--rate-error",
                                 "1%", "--json", NULL);
  g_autoptr (JsonObject) root = run_json (run);
  JsonObject *afc = json_object_get_object_member (root, "afc");
  g_assert_true (is_near (figure_of (afc, "peak_s"), 0.03 * LINE_S, 1e-12));
  g_assert_true (is_near (figure_of (afc, "peak_line"), 8, 0));
  g_assert_true (
      is_near (figure_of (afc, "picture_m"), 0.4 * figure_of (afc, "picture_share"), 1e-12));
}

/* Each figure of the loop. First order, 4 lines, 2 %: without edges on lines 5 to 7 it is away by 6 % of a line at line
 * 8, and by exp (−13/4) of that at line 21, which is 0.2797 % of the 52.8556 µs of picture; below a thousandth of it,
 * 52.86 ns, 4 ln 2.797 = 4.1 lines later; on undisturbed lines it stands 2 %/(1 − exp (−1/4)) of a line off. */
static void
test_afc_figures (void)
{
  g_autoptr (Run) run = run_cli ("sync", RASTER, "--gate", "and", "--loop", "first",
                                 "--time-constant", "4", "--rate-error", "2%", "--json", NULL);
  g_autoptr (JsonObject) root = run_json (run);
  JsonObject *afc = json_object_get_object_member (root, "afc");
  const double away_s = 0.06 * LINE_S, left_s = away_s * exp (-13 / 4.0);
  g_assert_true (is_near (figure_of (afc, "time_constant_lines"), 4, 1e-12));
  g_assert_true (is_near (figure_of (afc, "rate_error"), 0.02, 1e-12));
  g_assert_true (is_near (figure_of (afc, "tolerance_s"), 0.004 * LINE_S, 1e-12));
  g_assert_true (is_near (figure_of (afc, "glitch_s"), 0.005 * LINE_S, 1e-12));
  g_assert_true (is_null (afc, "picture_width_m"));
  g_assert_true (is_near (figure_of (afc, "static_s"), 0.02 * LINE_S / (1 - exp (-0.25)), 1e-12));
  g_assert_true (is_near (figure_of (afc, "peak_s"), away_s, 1e-12));
  g_assert_true (is_near (figure_of (afc, "picture_s"), left_s, 1e-12));
  g_assert_true (is_near (figure_of (afc, "bend_s"), left_s, 1e-12));
  g_assert_true (is_near (figure_of (afc, "picture_share"), left_s / (LINE_S - 10.7e-6), 1e-9));
  g_assert_true (is_near (figure_of (afc, "settle_lines"), 5, 0));
  g_assert_true (is_near (figure_of (afc, "settle_s"), 1e-3 * (LINE_S - 10.7e-6), 1e-12));
  g_assert_true (is_near (figure_of (line_of (root, 8), "phase_s"), away_s, 1e-12));
  g_assert_true (is_near (figure_of (line_of (root, 5), "due_s"), LINE_S, 1e-12));
}

/* What does not lock has no phase; what is not pulled away has no line where it is most. Field sync is on lines 4 to 6
 * and ends as line 7 begins; half lines have an edge on lines 1 to 9 (SMPTE 170M-2004 figure 7). */
static void
test_afc_without_lock (void)
{
  static const char *const absent[] = { "static_s", "peak_s", "peak_line", "picture_s",
                                        "picture_share", "picture_m", "bend_s", "settle_lines" };
  g_autoptr (Run) lost = run_cli ("sync", RASTER, "--gate", "or", "--picture-width", "40cm", "--json",
                                  NULL);
  g_autoptr (Run) still = run_cli ("sync", RASTER, "--gate", "standard", "--json", NULL);
  g_autoptr (JsonObject) root = run_json (lost);
  g_autoptr (JsonObject) quiet = run_json (still);
  JsonObject *afc = json_object_get_object_member (root, "afc");

  g_assert_false (json_object_get_boolean_member (afc, "locks"));
  for (gsize i = 0; i < G_N_ELEMENTS (absent); i++)
    g_assert_true (is_null (afc, absent[i]));
  g_assert_true (is_near (figure_of (afc, "picture_width_m"), 0.4, 1e-12));
  g_assert_true (is_null (line_of (root, 5), "phase_s"));

  afc = json_object_get_object_member (quiet, "afc");
  g_assert_true (json_object_get_boolean_member (afc, "locks"));
  g_assert_true (is_null (afc, "peak_line"));
  g_assert_true (is_near (figure_of (afc, "peak_s"), 0, 1e-12));
  g_assert_true (is_near (figure_of (afc, "settle_lines"), 0, 0));
  for (int line = 1; line <= 9; line++)
    {
      g_assert_cmpint (json_object_get_boolean_member (line_of (quiet, line), "in_field_sync"), ==,
                       line >= 4 && line <= 7);
      g_assert_true (is_near (figure_of (line_of (quiet, line), "half_line_edges"), 1, 0));
      g_assert_true (is_near (figure_of (line_of (quiet, line), "extra_edges"), 0, 0));
    }
  g_assert_true (is_near (figure_of (line_of (quiet, 12), "half_line_edges"), 0, 0));
  g_assert_true (is_near (figure_of (quiet, "half_line_edges"), 9, 0));
  g_assert_true (is_near (figure_of (quiet, "extra_edges"), 0, 0));
  g_assert_true (is_near (figure_of (quiet, "glitches"), 0, 0));
  g_assert_false (json_object_has_member (quiet, "h"));
}

/* 26 lines are shown. With standard sync each has a leading edge, and nine their half line; with AND three lines have none;
 * with XOR those of V have one at the end of their pulse, and the tip of line 6 goes on into that of line 7. */
static void
test_leading_edges (void)
{
  static const struct
  {
    const char *gate;
    double n;
  } cases[] = { { "standard", 26 + 9 }, { "and", 26 - 3 }, { "xor", 26 - 1 } };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (Run) run = run_cli ("sync", RASTER, "--gate", cases[i].gate, "--json", NULL);
      g_autoptr (JsonObject) root = run_json (run);
      JsonObject *structure = json_object_get_object_member (root, "structure");
      g_assert_true (is_near (figure_of (structure, "leading_edges"), cases[i].n, 0));
    }
}

static void
test_text (void)
{
  g_autoptr (Run) run = run_cli ("sync", RASTER, "--gate", "xor", "--offset", "-1us", NULL);
  g_assert_cmpint (run->status, ==, 0);
  g_assert_cmpstr (run->err, ==, "");
  g_assert_nonnull (strstr (run->out, "H XOR V"));
  g_assert_true (g_regex_match_simple ("\\n +5 .* late +4\\.700", run->out, G_REGEX_DEFAULT,
                                       G_REGEX_MATCH_DEFAULT));
}

static void
test_drawing (void)
{
  g_autofree char *folder = scratch_folder ();
  static const char *const names[] = { "sync.svg", "sync.pdf", "sync.png" };
  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autofree char *path = g_build_filename (folder, names[i], NULL);
      g_autofree char *bytes = NULL;
      gsize length;
      g_autoptr (Run) run = run_cli ("sync", RASTER, "--gate", "xnor", "-o", path, "--theme",
                                     "dark", "--size", "1000x650", NULL);
      g_assert_cmpint (run->status, ==, 0);
      g_assert_cmpstr (run->out, ==, "");
      g_assert_true (g_file_get_contents (path, &bytes, &length, NULL));
      g_assert_cmpuint (length, >, 5000);
      if (i == 0)
        g_assert_nonnull (strstr (bytes, "late by 4.7"));
    }
  remove_scratch (folder);
}

static void
test_refused (void)
{
  static const struct
  {
    const char *args[7];
    int status;
    const char *says;
  } cases[] = {
    { { RASTER }, 2, "--gate is missing" },
    { { "--gate", "and" }, 2, "RASTER is missing" },
    { { RASTER, "--gate", "nand" }, 2, "and, or, xor, xnor, standard" },
    { { RASTER, "--raster", RASTER, "--gate", "and" }, 2, "one raster at a time" },
    { { RASTER, "--gate", "and", "--field", "3" }, 2, "--field is 1 or 2" },
    { { RASTER, "--gate", "and", "--h-polarity", "up" }, 2, "negative, positive" },
    { { RASTER, "--gate", "standard", "--offset", "1us" }, 2, "does not go with" },
    { { RASTER, "--gate", "and", "--theme", "dark" }, 2, "goes with -o only" },
    { { "no-such", "--gate", "and" }, 1, "no-such" },
    { { "vesa-dmt-04", "--gate", "and", "--field", "2" }, 1, "--field" },
    { { RASTER, "--gate", "and", "--offset", "32us" }, 1, "--offset" },
    { { RASTER, "--gate", "and", "--offset", "much" }, 1, "--offset" },
    { { RASTER, "--gate", "and", "--delay", "20us" }, 1, "--delay" },
    { { RASTER, "--gate", "and", "--time-constant", "1000" }, 1, "--time-constant" },
    { { RASTER, "--gate", "and", "--rate-error", "30%" }, 1, "--rate-error" },
    { { RASTER, "--gate", "and", "-o", "x.gif" }, 2, "x.gif" },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const char *args[9] = { "sync" };
      memcpy (args + 1, cases[i].args, sizeof cases[i].args);
      g_autoptr (Run) run = run_args (args);
      assert_refused (run, cases[i].status, cases[i].says);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_set_nonfatal_assertions ();
  g_test_add_func ("/cli/sync/xnor", test_xnor);
  g_test_add_func ("/cli/sync/and", test_and);
  g_test_add_func ("/cli/sync/standard", test_standard);
  g_test_add_func ("/cli/sync/polarities", test_polarities);
  g_test_add_func ("/cli/sync/afc", test_afc);
  g_test_add_func ("/cli/sync/leading-edges", test_leading_edges);
  g_test_add_func ("/cli/sync/afc-figures", test_afc_figures);
  g_test_add_func ("/cli/sync/afc-without-lock", test_afc_without_lock);
  g_test_add_func ("/cli/sync/text", test_text);
  g_test_add_func ("/cli/sync/drawing", test_drawing);
  g_test_add_func ("/cli/sync/refused", test_refused);
  return g_test_run ();
}
