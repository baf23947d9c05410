/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What `breezeway-cli timing` prints: its JSON, its list, its listing for a person. */
#include <string.h>

#include "run.h"

/* The keys that scripts rely on, in order. */
static const char *const keys[] = {
  "id",
  "name",
  "source",
  "scan",
  "pixel_clock_hz",
  "h_active",
  "h_front_porch",
  "h_sync",
  "h_back_porch",
  "h_total",
  "h_active_s",
  "h_front_porch_s",
  "h_sync_s",
  "h_back_porch_s",
  "h_blanking_s",
  "line_period_s",
  "v_active",
  "v_front_porch",
  "v_sync",
  "v_back_porch",
  "lines_per_field",
  "lines_per_frame",
  "line_rate_hz",
  "field_rate_hz",
  "frame_rate_hz",
  "h_sync_polarity",
  "v_sync_polarity",
  "h_border",
  "v_border",
  "v_active_field_2",
  "v_front_porch_field_2",
  "v_sync_field_2",
  "v_back_porch_field_2",
  "sync_shape",
  "h_datum_s",
  "aliases",
  "note",
  "pixel_repeat",
  NULL,
};

static const char *const pixel_keys[] = {
  "pixel_clock_hz", "h_active", "h_front_porch", "h_sync",
  "h_back_porch",   "h_total",  "h_border",      "pixel_repeat",
};

static const char *const second_field_keys[] = {
  "v_active_field_2",
  "v_front_porch_field_2",
  "v_sync_field_2",
  "v_back_porch_field_2",
};

static JsonArray *
list_of_rasters (JsonObject **root)
{
  g_autoptr (Run) run = run_cli ("timing", "--list", "--json", NULL);
  *root = run_json (run);
  return json_object_get_array_member (*root, "rasters");
}

static void
test_keys (void)
{
  g_autoptr (JsonObject) root = NULL;
  JsonArray *rasters = list_of_rasters (&root);
  g_assert_cmpuint (json_array_get_length (rasters), >=, 267);
  for (guint i = 0; i < json_array_get_length (rasters); i++)
    assert_keys_begin_with (json_array_get_object_element (rasters, i), keys);
  for (const char *const *id = (const char *const[]){ "525-59.94-interlaced", "vesa-dmt-04", NULL };
       *id != NULL; id++)
    {
      g_autoptr (JsonObject) timing = timing_of (*id);
      assert_keys_begin_with (timing, keys);
    }
}

/* A raster of the list is what its own command says. */
static void
test_list_says_the_same (void)
{
  g_autoptr (JsonObject) root = NULL;
  JsonArray *rasters = list_of_rasters (&root);
  for (guint i = 0; i < json_array_get_length (rasters); i += 10)
    {
      JsonNode *listed = json_array_get_element (rasters, i);
      const char *id = json_object_get_string_member (json_node_get_object (listed), "id");
      g_autoptr (JsonNode) alone = json_node_alloc ();
      json_node_init_object (alone, timing_of (id));
      json_object_unref (json_node_get_object (alone));
      json_object_remove_member (json_node_get_object (alone), "format");
      g_assert_true (json_node_equal (listed, alone));
    }
}

static void
test_time_alone (void)
{
  g_autoptr (JsonObject) timing = timing_of ("625-50-interlaced");
  for (gsize i = 0; i < G_N_ELEMENTS (pixel_keys); i++)
    g_assert_true (is_null (timing, pixel_keys[i]));
  for (gsize i = 0; i < G_N_ELEMENTS (second_field_keys); i++)
    g_assert_false (is_null (timing, second_field_keys[i]));
}

static void
test_progressive_has_no_second_field (void)
{
  g_autoptr (JsonObject) timing = timing_of ("cta-861-vic-2");
  for (gsize i = 0; i < G_N_ELEMENTS (second_field_keys); i++)
    g_assert_true (is_null (timing, second_field_keys[i]));
  for (gsize i = 0; i < G_N_ELEMENTS (pixel_keys); i++)
    g_assert_false (is_null (timing, pixel_keys[i]));
}

/* Parts make the whole, in every raster: the arithmetic of the standards, not of the program. */
static void
test_parts_make_the_whole (void)
{
  g_autoptr (JsonObject) root = NULL;
  JsonArray *rasters = list_of_rasters (&root);
  for (guint i = 0; i < json_array_get_length (rasters); i++)
    {
      JsonObject *raster = json_array_get_object_element (rasters, i);
      double porches_s = figure_of (raster, "h_front_porch_s") + figure_of (raster, "h_sync_s")
                         + figure_of (raster, "h_back_porch_s");
      double period_s = figure_of (raster, "line_period_s");
      double border_s = is_null (raster, "h_border") ? 0
                                                     : 2 * figure_of (raster, "h_border")
                                                           / figure_of (raster, "pixel_clock_hz");
      double active_s = figure_of (raster, "h_active_s");
      double lines = figure_of (raster, "lines_per_frame");
      double line_rate_hz = figure_of (raster, "line_rate_hz");

      g_assert_true (is_near (porches_s, figure_of (raster, "h_blanking_s"), 1e-15));
      g_assert_true (is_near (porches_s + border_s + active_s, period_s, 1e-15));
      g_assert_true (is_near (line_rate_hz * period_s, 1, 1e-12));
      g_assert_true (is_near (figure_of (raster, "frame_rate_hz") * lines, line_rate_hz, 1e-6));
      g_assert_true (
          is_near (figure_of (raster, "field_rate_hz") * figure_of (raster, "lines_per_field"),
                   line_rate_hz, 1e-6));
    }
}

/* The rates that everything hangs on, each with its standard. */
static const struct
{
  const char *path;
  const char *id;
  double line_rate_hz;
  double field_rate_hz;
} rates[] = {
  /* SMPTE 170M-2004 11.2: 4.5 MHz / 286; fields: that x 2 / 525 */
  { "smpte-170m", "525-59.94-interlaced", 4.5e6 / 286, 4.5e6 / 286 * 2 / 525 },
  /* ITU-R BT.470-6 table 1 */
  { "bt-470-625", "625-50-interlaced", 15625, 50 },
  { "bt-470-525-monochrome", "525-60-interlaced", 15750, 60 },
  /* CTA-861-H table 1; 59.94 Hz is 60000/1001 Hz */
  { "vic-5", "cta-861-vic-5", 33750, 60 },
  { "vic-5-59.94", "cta-861-vic-5-59.94", 33750 / 1.001, 60 / 1.001 },
  { "vic-4", "cta-861-vic-4", 45000, 60 },
  { "vic-19", "cta-861-vic-19", 37500, 50 },
};

static void
test_rate (gconstpointer data)
{
  gsize i = GPOINTER_TO_SIZE (data);
  g_autoptr (JsonObject) timing = timing_of (rates[i].id);
  g_assert_true (is_near (figure_of (timing, "line_rate_hz"), rates[i].line_rate_hz, 1e-9));
  g_assert_true (is_near (figure_of (timing, "field_rate_hz"), rates[i].field_rate_hz, 1e-12));
}

static void
test_alias (void)
{
  g_autoptr (Run) by_id = run_cli ("timing", "525-59.94-interlaced", "--json", NULL);
  g_autoptr (Run) by_alias = run_cli ("timing", "480i", "--json", NULL);
  g_assert_cmpint (by_alias->status, ==, 0);
  g_assert_cmpstr (by_alias->out, ==, by_id->out);
}

static void
check_unknown (const char *name, const char *nearest)
{
  g_autoptr (Run) run = run_cli ("timing", name, NULL);
  g_assert_cmpint (run->status, ==, 1);
  g_assert_cmpstr (run->out, ==, "");
  assert_one_line (run->err);
  g_assert_nonnull (strstr (run->err, nearest));
}

static void
test_unknown_raster (void)
{
  check_unknown ("vesa-dmt-4B", "“vesa-dmt-4b”");
  check_unknown ("1080i", "“1080i59.94”");
  check_unknown ("525-59.49-interlaced", "“525-59.94-interlaced”");
  check_unknown ("", "the nearest are");
  check_unknown ("no such\nraster", "no such raster");
}

/* Each line of the list begins with an id; none is missing. */
static void
test_list_for_a_person (void)
{
  g_autoptr (Run) run = run_cli ("timing", "--list", NULL);
  g_autoptr (JsonObject) root = NULL;
  JsonArray *rasters = list_of_rasters (&root);
  g_auto (GStrv) lines = g_strsplit (run->out, "\n", -1);

  g_assert_cmpint (run->status, ==, 0);
  g_assert_cmpuint (count_lines (run->out), ==, json_array_get_length (rasters) + 1);
  for (guint i = 0; i < json_array_get_length (rasters); i++)
    {
      JsonObject *raster = json_array_get_object_element (rasters, i);
      g_autofree char *start = g_strconcat (json_object_get_string_member (raster, "id"), " ",
                                            NULL);
      g_assert_true (g_str_has_prefix (lines[i + 1], start));
    }
}

/* @label is followed by @value and @unit in one line of @text. */
static void
assert_says (const char *text, const char *label, const char *value, const char *unit)
{
  g_autofree char *pattern = g_strdup_printf ("(?m)^  %s +.*\\b%s *%s", label, value, unit);
  if (!g_regex_match_simple (pattern, text, G_REGEX_DEFAULT, G_REGEX_MATCH_DEFAULT))
    g_error ("no “%s %s %s” in: %s", label, value, unit, text);
}

static void
test_for_a_person (void)
{
  g_autoptr (Run) run = run_cli ("timing", "vesa-dmt-04", NULL);
  const char *line = strstr (run->out, "\nLine\n");
  const char *field = strstr (run->out, "\nField\n");
  const char *sync = strstr (run->out, "\nSync\n");

  g_assert_cmpint (run->status, ==, 0);
  g_assert_true (line != NULL && field > line && sync > field);
  /* VESA DMT v1.0 rev. 13, ID 0x04; 96 of 800 pixels at 25.175 MHz last 3.8133 us */
  assert_says (line, "Line rate", "31\\.468750", "kHz");
  assert_says (line, "Pixel clock", "25\\.175000", "MHz");
  assert_says (line, "Border, each side", "8", "px");
  assert_says (line, "Sync", "96 +px +3\\.8133", "µs");
  assert_says (field, "Field rate", "59\\.940476", "Hz");
  assert_says (field, "Back porch", "25\\.0", "lines");
  assert_says (sync, "Line sync", "negative", "");
  g_assert_null (strstr (run->out, "\u00a0"));
}

/* A raster of time alone lists no pixels. */
static void
test_time_for_a_person (void)
{
  g_autoptr (Run) run = run_cli ("timing", "625-50-interlaced", NULL);
  g_assert_null (strstr (run->out, " px"));
  g_assert_null (strstr (run->out, "MHz"));
  /* ITU-R BT.470-6 tables 1 and 1-1, 1-2 */
  assert_says (run->out, "Whole line", "64\\.0000", "µs");
  assert_says (run->out, "Lines per field", "312\\.5", "lines");
  assert_says (run->out, "Front porch", "2\\.5", "lines +160 µs");
  assert_says (run->out, "Equalising pulses", "5 before, 5 after", "");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/timing/keys", test_keys);
  g_test_add_func ("/timing/list-says-the-same", test_list_says_the_same);
  g_test_add_func ("/timing/time-alone", test_time_alone);
  g_test_add_func ("/timing/progressive", test_progressive_has_no_second_field);
  g_test_add_func ("/timing/parts-make-the-whole", test_parts_make_the_whole);
  for (gsize i = 0; i < G_N_ELEMENTS (rates); i++)
    {
      g_autofree char *path = g_strconcat ("/timing/rates/", rates[i].path, NULL);
      g_test_add_data_func (path, GSIZE_TO_POINTER (i), test_rate);
    }
  g_test_add_func ("/timing/alias", test_alias);
  g_test_add_func ("/timing/unknown", test_unknown_raster);
  g_test_add_func ("/timing/list-for-a-person", test_list_for_a_person);
  g_test_add_func ("/timing/for-a-person", test_for_a_person);
  g_test_add_func ("/timing/time-for-a-person", test_time_for_a_person);
  return g_test_run ();
}
