/* SPDX-License-Identifier: GPL-3.0-or-later */
/* `breezeway-cli timing --for-monitor`: a raster made for the monitor of the demo sheet. The demo's
 * figures are invented; what is checked is arithmetic on them. */
#include <string.h>

#include "run.h"

/* Of data/demo.bench. */
#define LINE_RETRACE_S 3.6e-6
#define FIELD_RETRACE_S 600e-6
#define OVERSCAN 0.05

static JsonObject *
made (const char *active, const char *rate, const char *interlaced)
{
  g_autofree char *demo = demo_path ();
  g_autoptr (Run) run = run_cli ("timing", "--for-monitor", demo, "--json", "--active", active,
                                 "--field-rate", rate, interlaced, NULL);
  return run_json (run);
}

/* Inside the bands that the sheet states, with the field rate that was asked for or that of the standard next to
 * it. */
static void
assert_fits (JsonObject *timing, double field_rate_hz)
{
  double line_rate_hz = figure_of (timing, "line_rate_hz");
  double lines = figure_of (timing, "lines_per_field");
  double field_blanking_s = (lines - figure_of (timing, "v_active")) / line_rate_hz;

  g_assert_true ((line_rate_hz > 15500 && line_rate_hz < 16000)
                 || (line_rate_hz > 31000 && line_rate_hz < 33800));
  g_assert_true (is_near (figure_of (timing, "field_rate_hz"), field_rate_hz, 0.006 * field_rate_hz));
  g_assert_cmpfloat (figure_of (timing, "h_blanking_s"), >, LINE_RETRACE_S);
  g_assert_cmpfloat (field_blanking_s, >, FIELD_RETRACE_S);
  /* the picture lies inside the glass: it takes no more of the scan than overscan leaves */
  g_assert_cmpfloat (figure_of (timing, "h_active_s"), <=,
                     (1 / line_rate_hz - LINE_RETRACE_S) * (1 - OVERSCAN)
                         + 1 / figure_of (timing, "pixel_clock_hz"));
}

static void
test_made (void)
{
  static const struct
  {
    const char *active;
    const char *rate;
    const char *interlaced;
    double rate_hz;
  } wanted[] = {
    { "640x480", "60", NULL, 60 },
    { "640x480", "59.94 Hz", NULL, 59.94 },
    { "640x480", "60 Hz * 1000 / 1001", NULL, 60 / 1.001 },
    { "720x576", "50", "--interlaced", 50 },
    { "320x240", "60", NULL, 60 },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (wanted); i++)
    {
      g_autoptr (JsonObject) timing = made (wanted[i].active, wanted[i].rate, wanted[i].interlaced);
      g_auto (GStrv) size = g_strsplit (wanted[i].active, "x", 2);
      assert_fits (timing, wanted[i].rate_hz);
      g_assert_true (is_near (figure_of (timing, "h_active"), g_ascii_strtod (size[0], NULL), 0));
      g_assert_true (is_near (whole_frame (timing), g_ascii_strtod (size[1], NULL), 0));
      g_assert_cmpint (is_null (timing, "v_sync_field_2"), ==, wanted[i].interlaced == NULL);
      g_assert_cmpuint (json_array_get_length (json_object_get_array_member (timing, "why")), >=,
                        3);
    }
}

/* Text and JSON give the same reasons. */
static void
test_why (void)
{
  g_autofree char *demo = demo_path ();
  g_autoptr (Run) text = run_cli ("timing", "--for-monitor", demo, "--active", "640x480",
                                  "--field-rate", "60", NULL);
  g_autoptr (JsonObject) timing = made ("640x480", "60", NULL);
  JsonArray *why = json_object_get_array_member (timing, "why");
  g_autoptr (GRegex) spaces = g_regex_new ("\\s+", G_REGEX_DEFAULT, G_REGEX_MATCH_DEFAULT, NULL);
  g_autofree char *flat = g_regex_replace_literal (spaces, text->out, -1, 0, " ",
                                                   G_REGEX_MATCH_DEFAULT, NULL);

  g_assert_cmpint (text->status, ==, 0);
  g_assert_nonnull (strstr (text->out, "\nWhy\n"));
  for (guint i = 0; i < json_array_get_length (why); i++)
    {
      g_autoptr (GString) sentence = g_string_new (json_array_get_string_element (why, i));
      g_string_replace (sentence, "\u00a0", " ", 0);
      if (strstr (flat, sentence->str) == NULL)
        g_error ("“%s” is not in: %s", sentence->str, flat);
    }
}

/* As a mode line alone, for a file. */
static void
test_as_modeline (void)
{
  g_autofree char *demo = demo_path ();
  g_autoptr (Run) run = run_cli ("timing", "--for-monitor", demo, "--active", "640x480",
                                 "--field-rate", "60", "--as-modeline", NULL);
  g_assert_cmpint (run->status, ==, 0);
  assert_one_line (run->out);
  g_assert_true (g_str_has_prefix (run->out, "Modeline \""));
}

/* The standard comes first, others follow, each whole in itself. 525 lines at 4.5 MHz / 286: SMPTE 170M. */
static void
test_alternatives (void)
{
  g_autoptr (JsonObject) timing = made ("640x480", "60", "--interlaced");
  JsonArray *others = json_object_get_array_member (timing, "alternatives");

  g_assert_true (is_near (figure_of (timing, "line_rate_hz"), 4.5e6 / 286, 1e-9));
  g_assert_true (is_near (figure_of (timing, "lines_per_frame"), 525, 0));
  g_assert_true (g_str_has_prefix (json_object_get_string_member (timing, "modeline"), "Modeline "));
  g_assert_cmpuint (strlen (json_object_get_string_member (timing, "edid_detailed")), ==, 18 * 3 - 1);
  g_assert_nonnull (json_object_get_array_member (timing, "costs"));
  g_assert_cmpuint (json_array_get_length (others), >=, 1);
  for (guint i = 0; i < json_array_get_length (others); i++)
    {
      JsonObject *other = json_array_get_object_element (others, i);
      g_autoptr (Run) read = run_cli ("timing", "--json", "--modeline",
                                      json_object_get_string_member (other, "modeline"), NULL);
      g_autoptr (JsonObject) again = run_json (read);
      g_assert_true (is_near (figure_of (again, "line_rate_hz"), figure_of (other, "line_rate_hz"),
                              1e-5));
      g_assert_cmpstr (json_object_get_string_member (other, "reason"), !=, "");
    }
}

/* A source that gives no clock under 25 MHz gets all figures across so many times over. */
static void
test_lowest_clock (void)
{
  g_autofree char *demo = demo_path ();
  g_autoptr (Run) run = run_cli ("timing", "--for-monitor", demo, "--json", "--active", "320x240",
                                 "--field-rate", "60", "--lowest-clock", "25MHz", NULL);
  g_autoptr (JsonObject) timing = run_json (run);
  double times = figure_of (timing, "h_active") / 320;

  g_assert_true (is_near (times, (int) times, 0));
  g_assert_cmpfloat (figure_of (timing, "pixel_clock_hz"), >=, 25e6);
  g_assert_cmpfloat (figure_of (timing, "pixel_clock_hz") * (times - 1) / times, <, 25e6);
  g_assert_true (is_near (figure_of (timing, "line_rate_hz"), 4.5e6 / 286, 1e-9));
}

static void
test_refused (void)
{
  static const struct
  {
    const char *active;
    const char *rate;
    const char *interlaced;
    const char *says;
  } bad[] = {
    { "1280x1024", "60", NULL, "line rate" },
    { "640x480", "75", NULL, "field rate 75" },
    { "640x481", "60", "--interlaced", "even height" },
    { "640", "60", NULL, "--active" },
    { "99999x480", "60", NULL, "8192" },
    { "640x480", "sixty", NULL, "--field-rate" },
    { "640x480", "-60", NULL, "more than zero" },
    { "640x480", "60 kg", NULL, "“kg”" },
    { "640x480", "60", "--lowest-clock=0", "--lowest-clock" },
    { "640x480", "60", "--clock-step=5 kg", "--clock-step" },
    { "640x480", "60", "--pixel-multiple=99", "64" },
    { "641x480", "60", "--pixel-multiple=8", "multiples of 8" },
    { "640x480", "60", "--highest-clock=12MHz", "12" },
    { "640x480", "60", "--input=nine", "no input" },
    { "640x480", "60", "--source=ninety", "no source" },
  };
  g_autofree char *demo = demo_path ();
  for (gsize i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      g_autoptr (Run) run = run_cli ("timing", "--for-monitor", demo, "--active", bad[i].active,
                                     "--field-rate", bad[i].rate, bad[i].interlaced, NULL);
      assert_refused (run, 1, bad[i].says);
    }
  g_autoptr (Run) missing = run_cli ("timing", "--for-monitor", "none.bench", "--active", "640x480",
                                     "--field-rate", "60", NULL);
  assert_refused (missing, 1, "none.bench");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/for-monitor/made", test_made);
  g_test_add_func ("/for-monitor/why", test_why);
  g_test_add_func ("/for-monitor/as-modeline", test_as_modeline);
  g_test_add_func ("/for-monitor/alternatives", test_alternatives);
  g_test_add_func ("/for-monitor/lowest-clock", test_lowest_clock);
  g_test_add_func ("/for-monitor/refused", test_refused);
  return g_test_run ();
}
