/* SPDX-License-Identifier: GPL-3.0-or-later */
/* `breezeway-cli timing` with --modeline and --as-modeline. */
#include <string.h>

#include "run.h"

static char *
modeline_of (const char *id)
{
  g_autoptr (Run) run = run_cli ("timing", id, "--as-modeline", NULL);
  g_assert_cmpint (run->status, ==, 0);
  g_assert_cmpstr (run->err, ==, "");
  assert_one_line (run->out);
  return g_strchomp (g_strdup (run->out));
}

static JsonObject *
timing_of_modeline (const char *text)
{
  g_autoptr (Run) run = run_cli ("timing", "--modeline", text, "--json", NULL);
  return run_json (run);
}

/* The figures of a mode line, without its name. */
static char *
figures_text (const char *modeline)
{
  g_auto (GStrv) parts = g_strsplit (modeline, "\"", 3);
  g_assert_cmpuint (g_strv_length (parts), ==, 3);
  g_autoptr (GRegex) spaces = g_regex_new (" +", G_REGEX_DEFAULT, G_REGEX_MATCH_DEFAULT, NULL);
  g_strstrip (parts[2]);
  return g_regex_replace_literal (spaces, parts[2], -1, 0, " ", G_REGEX_MATCH_DEFAULT, NULL);
}

/* Progressive formats against edid-decode -X (Debian package edid-decode). Interlaced ones are left
 * out: that version prints half of their blanking (VIC 5 with 1103 lines in place of 1125). */
static const struct
{
  const char *id;
  const char *option;
  const char *code;
} printed[] = {
  { "vesa-dmt-04", "--dmt", "0x04" },  { "vesa-dmt-05", "--dmt", "0x05" },
  { "vesa-dmt-08", "--dmt", "0x08" },  { "vesa-dmt-10", "--dmt", "0x10" },
  { "vesa-dmt-16", "--dmt", "0x16" },  { "vesa-dmt-23", "--dmt", "0x23" },
  { "vesa-dmt-25", "--dmt", "0x25" },  { "vesa-dmt-33", "--dmt", "0x33" },
  { "cta-861-vic-2", "--vic", "2" },   { "cta-861-vic-4", "--vic", "4" },
  { "cta-861-vic-17", "--vic", "17" }, { "cta-861-vic-31", "--vic", "31" },
};

static void
test_printed (gconstpointer data)
{
  gsize i = GPOINTER_TO_SIZE (data);
  const char *const argv[] = { "edid-decode", "-X", printed[i].option, printed[i].code, NULL };
  g_autoptr (Run) run = run_argv (argv, NULL);
  g_autofree char *ours = modeline_of (printed[i].id);
  const char *theirs = strstr (run->out, "Modeline");

  g_assert_nonnull (theirs);
  g_autofree char *have = figures_text (ours);
  g_autofree char *wanted = figures_text (theirs);
  g_assert_cmpstr (have, ==, wanted);
}

/* CTA-861-H, VIC 1, in the form of xorg.conf(5). */
static void
test_read (void)
{
  static const struct
  {
    const char *key;
    double value;
  } figures[] = {
    { "pixel_clock_hz", 25.175e6 },
    { "h_active", 640 },
    { "h_front_porch", 16 },
    { "h_sync", 96 },
    { "h_back_porch", 48 },
    { "v_active", 480 },
    { "v_front_porch", 10 },
    { "v_sync", 2 },
    { "v_back_porch", 33 },
    { "lines_per_frame", 525 },
    { "h_border", 0 },
  };
  g_autoptr (JsonObject) timing = timing_of_modeline (
      "Modeline \"640x480\" 25.175 640 656 752 800 480 490 492 525 -hsync -vsync");

  for (gsize i = 0; i < G_N_ELEMENTS (figures); i++)
    g_assert_true (is_near (figure_of (timing, figures[i].key), figures[i].value, 0));
  g_assert_false (is_positive (timing, "h_sync_polarity"));
  g_assert_false (is_positive (timing, "v_sync_polarity"));
  g_assert_cmpstr (json_object_get_string_member (timing, "scan"), ==, "progressive");
}

/* Every mode line that is written says the same when it has been read and is written again. */
static void
test_round_trip (void)
{
  g_autoptr (Run) list = run_cli ("timing", "--list", "--json", NULL);
  g_autoptr (JsonObject) root = run_json (list);
  JsonArray *rasters = json_object_get_array_member (root, "rasters");
  guint n = 0;

  for (guint i = 0; i < json_array_get_length (rasters); i++)
    {
      JsonObject *raster = json_array_get_object_element (rasters, i);
      if (is_null (raster, "h_active") || i % 4 != 0)
        continue;
      const char *id = json_object_get_string_member (raster, "id");
      g_autofree char *text = modeline_of (id);
      g_autoptr (Run) again = run_cli ("timing", "--modeline", text, "--as-modeline", NULL);
      g_assert_cmpint (again->status, ==, 0);
      g_assert_cmpstr (g_strchomp (again->out), ==, text);
      n++;
    }
  g_assert_cmpuint (n, >=, 50);
}

/* With --json, the line stands beside all else. */
static void
test_json (void)
{
  g_autoptr (Run) run = run_cli ("timing", "vesa-dmt-04", "--as-modeline", "--json", NULL);
  g_autoptr (JsonObject) timing = run_json (run);
  g_autofree char *text = modeline_of ("vesa-dmt-04");
  g_assert_cmpstr (json_object_get_string_member (timing, "modeline"), ==, text);
  g_assert_true (is_near (figure_of (timing, "h_active"), 640, 0));
}

/* A computed raster goes out as a mode line and comes in again. */
static void
test_of_computed (void)
{
  g_autoptr (Run) run = run_cli ("timing", "--cvt", "1024x768@87,interlaced", "--as-modeline",
                                 NULL);
  g_assert_cmpint (run->status, ==, 0);
  g_autoptr (JsonObject) timing = timing_of_modeline (g_strchomp (run->out));
  g_autoptr (Run) direct = run_cli ("timing", "--cvt", "1024x768@87,interlaced", "--json", NULL);
  g_autoptr (JsonObject) computed = run_json (direct);
  static const char *const keys[] = { "pixel_clock_hz",
                                      "h_front_porch",
                                      "h_sync",
                                      "h_back_porch",
                                      "v_active",
                                      "v_front_porch",
                                      "v_sync",
                                      "v_back_porch",
                                      "lines_per_frame",
                                      "v_front_porch_field_2",
                                      "v_back_porch_field_2" };
  for (gsize i = 0; i < G_N_ELEMENTS (keys); i++)
    g_assert_true (is_near (figure_of (timing, keys[i]), figure_of (computed, keys[i]), 0));
}

/* Bad text is refused with the place. */
static void
test_bad_text (void)
{
  static const struct
  {
    const char *text;
    const char *says;
  } bad[] = {
    { "", "ode line" },
    { "Modeline", "word" },
    { "Modeline \"a\" 25.175 640 656 752 800 480 490 492", "word" },
    { "Modeline \"a\" 25.175 640 656 752 800 480 490 492 525 -hsync +hsync", "word" },
    { "Modeline \"a\" 25.175 640 656 752 700 480 490 492 525", "word 7" },
    { "Modeline \"a\" x 640 656 752 800 480 490 492 525", "word 3" },
    { "Modeline \"a\" 25.175 640 656 752 800 480 490 492 525 -hsync \xff", "ode line" },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      g_autoptr (Run) run = run_cli ("timing", "--modeline", bad[i].text, NULL);
      assert_refused (run, 1, bad[i].says);
    }
}

/* What has no pixels has no mode line, in text or in JSON. */
static void
test_no_pixels (void)
{
  g_autoptr (Run) text = run_cli ("timing", "525-59.94-interlaced", "--as-modeline", NULL);
  g_autoptr (Run) json = run_cli ("timing", "625-50-interlaced", "--as-modeline", "--json", NULL);
  assert_refused (text, 1, "525-59.94-interlaced");
  assert_refused (json, 1, "625-50-interlaced");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (printed); i++)
    {
      g_autofree char *path = g_strconcat ("/modeline/printed/", printed[i].id, NULL);
      g_test_add_data_func (path, GSIZE_TO_POINTER (i), test_printed);
    }
  g_test_add_func ("/modeline/read", test_read);
  g_test_add_func ("/modeline/round-trip", test_round_trip);
  g_test_add_func ("/modeline/json", test_json);
  g_test_add_func ("/modeline/of-computed", test_of_computed);
  g_test_add_func ("/modeline/bad-text", test_bad_text);
  g_test_add_func ("/modeline/no-pixels", test_no_pixels);
  return g_test_run ();
}
