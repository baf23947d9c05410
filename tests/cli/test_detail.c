/* SPDX-License-Identifier: GPL-3.0-or-later */
/* `breezeway-cli detail`: what a tube, a path and a source can resolve. */
#include <math.h>
#include <string.h>

#include "run.h"

#define TUBE "detail", "--diagonal", "27in", "--aspect", "4:3", "--mask", "grille"

static const char *const keys[] = { "screen_width_m",
                                    "screen_height_m",
                                    "stripes_across",
                                    "mask_tvl",
                                    "mask_practical_tvl",
                                    "bandwidth_tvl",
                                    "source_tvl",
                                    "signal_tvl",
                                    "spot_tvl",
                                    "combined_tvl",
                                    "limited_by",
                                    "vertical_lines",
                                    "line_pitch_m",
                                    "line_modulation",
                                    "claim_tvl",
                                    "claim_supported",
                                    "pitch_for_claim_m",
                                    "bandwidth_for_claim_hz",
                                    NULL };

static const char *
word_of (JsonObject *object, const char *key)
{
  return json_object_get_string_member (object, key);
}

/* Common practice, no source: 27 in, 4:3, 0.8 mm, sold as 600 lines: 514 at the sampling limit, 429
 * in practice. */
static void
test_claim (void)
{
  g_autoptr (Run) run = run_cli (TUBE, "--pitch", "0.8mm", "--claim", "600", "--json", NULL);
  g_autoptr (JsonObject) root = run_json (run);

  assert_keys_begin_with (root, keys);
  g_assert_true (is_near (figure_of (root, "screen_width_m"), 0.54864, 1e-9));
  g_assert_true (is_near (figure_of (root, "screen_height_m"), 0.41148, 1e-9));
  g_assert_true (is_near (figure_of (root, "stripes_across"), 685.8, 1e-6));
  g_assert_true (is_near (figure_of (root, "mask_tvl"), 514, 0.5));
  g_assert_true (is_near (figure_of (root, "mask_practical_tvl"), 429, 0.5));
  g_assert_true (is_near (figure_of (root, "combined_tvl"), 514.35, 1e-6));
  g_assert_true (is_near (figure_of (root, "pitch_for_claim_m"), 0.6858e-3, 1e-9));
  g_assert_cmpstr (word_of (root, "limited_by"), ==, "mask");
  g_assert_false (json_object_get_boolean_member (root, "claim_supported"));
  g_assert_cmpstr (word_of (root, "claim"), ==, "not-supported");
}

/* 411.48 mm of height over 0.7995 mm are 514.67 lines: as 515 the claim may be meant, as 515.0 not. */
static void
test_claim_digits (void)
{
  g_autoptr (Run) coarse = run_cli (TUBE, "--pitch", "0.7995mm", "--claim", "515", "--json", NULL);
  g_autoptr (Run) fine = run_cli (TUBE, "--pitch", "0.7995mm", "--claim", "515.0", "--json", NULL);
  g_autoptr (JsonObject) coarse_root = run_json (coarse);
  g_autoptr (JsonObject) fine_root = run_json (fine);

  g_assert_true (json_object_get_boolean_member (coarse_root, "claim_supported"));
  g_assert_false (json_object_get_boolean_member (fine_root, "claim_supported"));
}

/* What is not given is null. */
static void
test_not_given (void)
{
  static const char *const unknown[] = { "bandwidth_tvl",     "source_tvl",     "signal_tvl",
                                         "spot_tvl",          "vertical_lines", "line_pitch_m",
                                         "line_modulation",   "claim_tvl",      "claim_supported",
                                         "pitch_for_claim_m", "lead_tvl",       "mask_tvl",
                                         "limited_by",        "combined_tvl",   "stripes_across" };
  g_autoptr (Run) run = run_cli (TUBE, "--json", NULL);
  g_autoptr (JsonObject) root = run_json (run);
  for (gsize i = 0; i < G_N_ELEMENTS (unknown); i++)
    if (!is_null (root, unknown[i]))
      g_error ("%s is not null", unknown[i]);
  g_assert_true (is_near (figure_of (root, "screen_height_m"), 0.41148, 1e-9));
}

/* The trap of the trade: a figure of the bandwidth on a tube whose pitch cannot carry it. 10 MHz
 * over SMPTE 170M's 52.8556 us are 792.8 lines; a spot of 0.8 mm 1.985 x 411.48 / 0.8. */
static void
test_trap (void)
{
  g_autoptr (Run) run = run_cli (TUBE, "--pitch", "0.8mm", "--spot", "0.8mm", "--bandwidth",
                                 "10MHz", "--raster", "480i", "--claim", "600", "--json", NULL);
  g_autoptr (JsonObject) root = run_json (run);
  double mask = figure_of (root, "mask_tvl");
  double bandwidth = figure_of (root, "bandwidth_tvl");
  double spot = figure_of (root, "spot_tvl");

  g_assert_true (is_near (bandwidth, 792.833, 1e-2));
  g_assert_true (is_near (spot, 1020.99, 0.05));
  /* 1/TVL^2 adds */
  g_assert_true (
      is_near (figure_of (root, "combined_tvl"),
               1 / sqrt (1 / (mask * mask) + 1 / (bandwidth * bandwidth) + 1 / (spot * spot)),
               1e-6));
  g_assert_cmpstr (word_of (root, "claim"), ==, "by-bandwidth");
  g_assert_false (json_object_get_boolean_member (root, "claim_supported"));
  /* 600 x 4/3 / (2 x 52.8556 us) */
  g_assert_true (is_near (figure_of (root, "bandwidth_for_claim_hz"), 7.5678e6, 1e3));
  /* 485 lines x 0.7 (M. Robin: 339 LPH) */
  g_assert_true (is_near (figure_of (root, "vertical_lines"), 339, 0.51));
  g_assert_true (is_near (figure_of (root, "line_pitch_m"), 0.41148 / 485, 1e-9));
  /* a spot of 0.9429 pitches: between 0.112 (0.9) and 0.057 (1.0), exact sums of Gaussian lines */
  g_assert_cmpfloat (figure_of (root, "line_modulation"), <, 0.112);
  g_assert_cmpfloat (figure_of (root, "line_modulation"), >, 0.057);
}

static double
signal_of (const char *raster, const char *kind, const char *system, const char *filter)
{
  g_autoptr (Run) run = run_cli (TUBE, "--raster", raster, "--kind", kind, "--system", system,
                                 "--filter", filter, "--json", NULL);
  g_autoptr (JsonObject) root = run_json (run);
  return is_null (root, "signal_tvl") ? 0 : figure_of (root, "signal_tvl");
}

/* ITU-R BT.470-6: 4.2 MHz (M), 5.0 MHz (B, G) of video; a trap ends luma at 3.0 to 3.2 MHz and 3.5
 * to 3.8 MHz (common practice, no source). */
static void
test_signal (void)
{
  g_assert_true (is_near (signal_of ("480i", "composite", "ntsc-m", "comb"), 333.0, 0.05));
  g_assert_true (is_near (signal_of ("480i", "yc", "ntsc-m", "trap"), 333.0, 0.05));
  g_assert_true (is_near (signal_of ("576i", "composite", "pal-b", "comb"), 390.0, 0.05));
  double ntsc = signal_of ("480i", "composite", "ntsc-m", "trap");
  double pal = signal_of ("576i", "composite", "pal-b", "trap");
  g_assert_cmpfloat (ntsc, >=, 79.283 * 3.0);
  g_assert_cmpfloat (ntsc, <=, 79.283 * 3.2);
  g_assert_cmpfloat (pal, >=, 78 * 3.5);
  g_assert_cmpfloat (pal, <=, 78 * 3.8);
  g_assert_cmpfloat (signal_of ("480i", "rgb", "none", "trap"), <=, 0);
}

/* A raster with pixels: 640 on 4:3 are 480 lines (samples/aspect). */
static void
test_samples (void)
{
  g_autoptr (Run) run = run_cli (TUBE, "--pitch", "0.3mm", "--raster", "vesa-dmt-04", "--json",
                                 NULL);
  g_autoptr (JsonObject) root = run_json (run);
  g_assert_true (is_near (figure_of (root, "source_tvl"), 480, 1e-9));
  g_assert_cmpstr (word_of (root, "limited_by"), ==, "source");
  g_assert_true (is_near (figure_of (root, "vertical_lines"), 336, 1e-9));
}

static JsonObject *
demo_detail (const char *source, const char *input, const char *option, const char *value)
{
  g_autofree char *demo = demo_path ();
  g_autoptr (Run) run = run_cli ("detail", demo, "-s", source, "-i", input, "--json", option, value,
                                 NULL);
  return run_json (run);
}

/* What each signal kind would leave is what the chain leaves that has it. */
static void
test_ways (void)
{
  static const struct
  {
    const char *input;
    const char *option;
    const char *value;
  } chains[] = {
    { "1", NULL, NULL },      { "1", "--filter", "comb" },
    { "2", "--kind", "yc" },  { "3", "--kind", "component" },
    { "3", "--kind", "rgb" },
  };
  g_autoptr (JsonObject) root = demo_detail ("1", "1", NULL, NULL);
  JsonArray *ways = json_object_get_array_member (root, "ways");

  g_assert_cmpuint (json_array_get_length (ways), ==, G_N_ELEMENTS (chains));
  for (guint i = 0; i < G_N_ELEMENTS (chains); i++)
    {
      g_autoptr (JsonObject) chain = demo_detail ("1", chains[i].input, chains[i].option,
                                                  chains[i].value);
      JsonObject *way = json_array_get_object_element (ways, i);
      double tvl = figure_of (chain, "limiting_tvl");
      g_assert_true (is_near (figure_of (way, "limiting_tvl"), tvl, 1e-9));
      g_assert_true (is_near (figure_of (way, "combined_tvl"), figure_of (chain, "combined_tvl"), 1e-9));
      g_assert_true (
          is_near (figure_of (way, "gain"), tvl / figure_of (root, "limiting_tvl") - 1, 1e-12));
      g_assert_cmpint (json_object_get_boolean_member (way, "is_own"), ==, i == 0);
      g_assert_true (json_object_get_boolean_member (way, "is_taken"));
    }
  g_assert_nonnull (strstr (word_of (root, "rgb_says"), "lines in place of 268 lines"));

  g_autoptr (Run) tube = run_cli (TUBE, "--json", NULL);
  g_autoptr (JsonObject) alone = run_json (tube);
  g_assert_false (json_object_has_member (alone, "ways"));
}

/* The demo's set: 19 in, 0.45 mm slot, 500 lines claimed; composite input of 6 MHz. */
static void
test_sheet (void)
{
  g_autoptr (JsonObject) by_number = demo_detail ("1", "1", NULL, NULL);
  g_autoptr (JsonObject) by_name = demo_detail ("Tape deck with the founder's film", "Composite",
                                                NULL, NULL);
  g_autoptr (JsonObject) wider = demo_detail ("1", "1", "--bandwidth", "9 MHz");

  assert_keys_begin_with (by_number, keys);
  g_assert_true (json_object_get_size (by_number) == json_object_get_size (by_name));
  for (const char *const *key = keys; *key != NULL; key++)
    g_assert_true (json_node_equal (json_object_get_member (by_number, *key),
                                    json_object_get_member (by_name, *key)));
  g_assert_true (is_near (figure_of (by_name, "mask_tvl"), 289.56 / 0.45, 1e-6));
  g_assert_true (is_near (figure_of (by_name, "bandwidth_tvl"), 475.7, 0.05));
  g_assert_true (is_near (figure_of (by_name, "claim_tvl"), 500, 1e-9));
  g_assert_cmpstr (word_of (by_name, "claim"), ==, "by-tube");
  /* 5 % of 485 lines are not seen */
  g_assert_true (is_near (figure_of (by_name, "vertical_lines"), 485 * 0.95 * 0.7, 1e-6));
  g_assert_true (is_near (figure_of (wider, "bandwidth_tvl"), 713.55, 0.05));
  g_assert_true (json_object_get_boolean_member (wider, "claim_supported"));
}

static void
test_factors (void)
{
  g_autoptr (JsonObject) kell = demo_detail ("1", "1", "--kell", "0.64");
  g_autoptr (JsonObject) interlace = demo_detail ("1", "1", "--interlace", "0.5");
  g_autoptr (JsonObject) lead = demo_detail ("1", "1", "--lead", "4 MHz");
  g_assert_true (is_near (figure_of (kell, "vertical_lines"), 485 * 0.95 * 0.64, 1e-6));
  g_assert_true (is_near (figure_of (interlace, "vertical_lines"), 485 * 0.95 * 0.35, 1e-6));
  g_assert_true (is_near (figure_of (lead, "lead_tvl"), 4 * 79.283, 0.05));
}

static void
test_text (void)
{
  static const char *const words[] = { "514",       "429",   "0.686", "bandwidth alone",
                                       "525-59.94", "signal" };
  g_autoptr (Run) run = run_cli (TUBE, "--pitch", "0.8mm", "--bandwidth", "10MHz", "--raster",
                                 "480i", "--kind", "composite", "--system", "ntsc-m", "--claim",
                                 "600 lines", NULL);
  g_assert_cmpint (run->status, ==, 0);
  for (gsize i = 0; i < G_N_ELEMENTS (words); i++)
    if (strstr (run->out, words[i]) == NULL)
      g_error ("“%s” is not in:\n%s", words[i], run->out);
}

static const struct
{
  const char *name;
  const char *args[12];
  int status;
  const char *says;
} refusals[] = {
  { "nothing", { "detail" }, 2, "--diagonal" },
  { "no-mask", { "detail", "--diagonal", "27in", "--aspect", "4:3" }, 2, "--mask" },
  { "source-without-sheet", { TUBE, "--source", "1" }, 2, "--source" },
  { "system-without-kind", { TUBE, "--system", "pal-b" }, 2, "--kind" },
  /* what counts in hertz needs a line to count on */
  { "lead-without-raster", { TUBE, "--lead", "5MHz" }, 2, "--lead needs --raster" },
  { "detail-without-raster", { TUBE, "--detail", "3MHz" }, 2, "--detail needs --raster" },
  { "filter-without-raster", { TUBE, "--filter", "comb" }, 2, "--filter needs --raster" },
  { "kind-without-raster", { TUBE, "--kind", "rgb" }, 2, "--kind needs --raster" },
  { "composite-without-system",
    { TUBE, "--kind", "composite", "-r", "576i" },
    2,
    "needs --system" },
  { "mono-with-pitch",
    { "detail", "--diagonal", "20in", "--aspect", "4:3", "--mask", "mono", "-p", "0.3mm" },
    2,
    "--pitch" },
  { "aspect-range",
    { "detail", "--diagonal", "20in", "--aspect", "100:1", "--mask", "dot" },
    2,
    "4:1" },
  { "aspect-upright",
    { "detail", "--diagonal", "20in", "--aspect", "3:4", "--mask", "dot" },
    2,
    "1:1" },
  { "mask", { "detail", "--diagonal", "27in", "--aspect", "4:3", "--mask", "net" }, 1, "net" },
  { "aspect", { "detail", "--diagonal", "27in", "--aspect", "4x3", "--mask", "dot" }, 1, "4x3" },
  { "diagonal",
    { "detail", "--diagonal", "27", "--aspect", "4:3", "--mask", "dot" },
    1,
    "--diagonal" },
  { "diagonal-range",
    { "detail", "--diagonal", "9 m", "--aspect", "4:3", "--mask", "dot" },
    1,
    "--diagonal" },
  { "pitch", { TUBE, "--pitch", "-0.8mm" }, 1, "--pitch" },
  { "raster", { TUBE, "--raster", "480j" }, 1, "480j" },
  { "kind", { TUBE, "--kind", "radio" }, 1, "radio" },
  { "filter", { TUBE, "--filter", "net" }, 1, "net" },
  { "lead", { TUBE, "--lead", "0 Hz" }, 1, "--lead" },
  { "kell", { TUBE, "--kell", "1.1" }, 1, "--kell" },
  { "kell-nan", { TUBE, "--kell", "nan" }, 1, "--kell" },
  { "interlace", { TUBE, "--interlace", "0" }, 1, "--interlace" },
  { "claim", { TUBE, "--claim", "many" }, 1, "--claim" },
  { "no-such-sheet", { "detail", "/nowhere.bench" }, 1, "/nowhere.bench" },
};

static void
test_refused (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (refusals); i++)
    {
      g_autoptr (Run) run = run_args (refusals[i].args);
      assert_refused (run, refusals[i].status, refusals[i].says);
    }
}

/* ITU-R BT.470-6: NTSC and PAL M are of 525 lines and 60 fields, PAL B, N and SECAM of 625 and 50. */
static void
test_system_of_raster (void)
{
  static const struct
  {
    const char *system;
    gboolean of_525;
  } systems[] = { { "ntsc-m", TRUE }, { "pal-m", TRUE }, { "pal-b", FALSE }, { "pal-n", FALSE } };
  for (gsize i = 0; i < G_N_ELEMENTS (systems); i++)
    {
      g_autoptr (Run) on_525 = run_cli (TUBE, "-k", "composite", "--system", systems[i].system,
                                        "-r", "480i", NULL);
      g_autoptr (Run) on_625 = run_cli (TUBE, "-k", "composite", "--system", systems[i].system,
                                        "-r", "576i", NULL);
      assert_refused (systems[i].of_525 ? on_625 : on_525, 2, systems[i].system);
      g_assert_cmpint ((systems[i].of_525 ? on_525 : on_625)->status, ==, 0);
    }
}

/* A bandwidth without a raster has no lines: it is null, and that is said. */
static void
test_not_counted (void)
{
  g_autoptr (Run) run = run_cli (TUBE, "-p", "0.3mm", "--bandwidth", "5MHz", "--kell", "0.8",
                                 "--json", NULL);
  g_assert_cmpint (run->status, ==, 0);
  g_assert_nonnull (strstr (run->out, "\"bandwidth_tvl\": null"));
  assert_one_line (run->err);
  g_assert_nonnull (strstr (run->err, "--bandwidth, --kell"));
}

/* A lead of 1 GHz is no limit of a tube: 2 x 1000 x 52 x 3/4 = 78 000 lines are not printed. The
 * lines of 20 in lie 304.8/575 = 0.53 mm apart, the rows of 0.28 mm 0.14: 1/(1/0.14 - 1/0.53) = 0.19
 * and 1/(1/0.14 - 2/0.53) = 0.30 mm are both finer than a line. */
static void
test_noise (void)
{
  g_autoptr (Run) run = run_cli ("detail", "--diagonal", "20in", "--aspect", "4:3", "--mask", "dot",
                                 "-p", "0.28mm", "-r", "576i", "--lead", "1GHz", "--bandwidth",
                                 "5MHz", NULL);
  g_assert_cmpint (run->status, ==, 0);
  g_assert_null (strstr (run->out, "78000"));
  g_assert_nonnull (strstr (run->out, "none visible"));
  g_assert_nonnull (strstr (run->out, "3 dB"));
  g_assert_nonnull (strstr (run->out, "sampling limit of samples"));
}

/* The demo's set of 19 in, 4:3, 0.45 mm slot, with a switch: a source of 16:9 is scanned 386.08 mm
 * wide (0.8 x 482.6) and 217.17 mm high: 857.96 columns / (16/9) = 482.6 lines. Its line of 1080 is
 * then 217.17 mm / (1080 x 0.95), and one arc minute (3437.75 of them) off. */
static void
test_wide_in_standard (void)
{
  g_autoptr (JsonObject) wide = demo_detail ("6", "3", NULL, NULL);
  g_autofree char *demo = demo_path ();
  g_autoptr (Run) text = run_cli ("detail", demo, "-s", "6", "-i", "3", NULL);
  g_assert_true (is_near (figure_of (wide, "screen_width_m"), 0.38608, 1e-9));
  g_assert_true (is_near (figure_of (wide, "screen_height_m"), 0.21717, 1e-9));
  g_assert_true (is_near (figure_of (wide, "mask_tvl"), 482.6, 1e-6));
  g_assert_true (is_near (figure_of (wide, "line_pitch_m"), 0.2117e-3, 5e-8));
  g_assert_true (is_near (figure_of (wide, "arc_minute_m"), 0.728, 5e-4));
  g_assert_nonnull (strstr (text->out, "16:9"));
  g_assert_nonnull (strstr (text->out, "switch"));
  /* the same pair as planned, and as judged */
  g_autoptr (Run) hookup = run_cli ("hookup", demo, "-s", "6", "-i", "3", NULL);
  g_autoptr (Run) fit = run_cli ("fit", "--findings", demo, NULL);
  g_autofree char *leave = g_strdup_printf ("leave %.0f lines", figure_of (wide, "limiting_tvl"));
  g_assert_nonnull (strstr (hookup->out, leave));
  g_assert_nonnull (strstr (fit->out, leave));
  g_assert_nonnull (strstr (hookup->out, "lost there in the mask"));
}

static void
test_refused_of_sheet (void)
{
  g_autofree char *demo = demo_path ();
  g_autoptr (Run) neither = run_cli ("detail", demo, NULL);
  g_autoptr (Run) no_input = run_cli ("detail", demo, "-s", "1", NULL);
  g_autoptr (Run) no_source = run_cli ("detail", demo, "-s", "Tape desk with the founder's film",
                                       "-i", "1", NULL);
  g_autoptr (Run) far = run_cli ("detail", demo, "-s", "1", "-i", "4", NULL);
  g_autoptr (Run) zero = run_cli ("detail", demo, "-s", "0", "-i", "1", NULL);
  assert_refused (neither, 2, "--source");
  assert_refused (no_input, 2, "--input");
  assert_refused (no_source, 1, "Tape deck");
  assert_refused (far, 1, "“4”");
  assert_refused (zero, 1, "“0”");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/detail/claim", test_claim);
  g_test_add_func ("/detail/claim-digits", test_claim_digits);
  g_test_add_func ("/detail/not-given", test_not_given);
  g_test_add_func ("/detail/trap", test_trap);
  g_test_add_func ("/detail/signal", test_signal);
  g_test_add_func ("/detail/samples", test_samples);
  g_test_add_func ("/detail/sheet", test_sheet);
  g_test_add_func ("/detail/ways", test_ways);
  g_test_add_func ("/detail/factors", test_factors);
  g_test_add_func ("/detail/text", test_text);
  g_test_add_func ("/detail/refused", test_refused);
  g_test_add_func ("/detail/system-of-raster", test_system_of_raster);
  g_test_add_func ("/detail/not-counted", test_not_counted);
  g_test_add_func ("/detail/noise", test_noise);
  g_test_add_func ("/detail/wide-in-standard", test_wide_in_standard);
  g_test_add_func ("/detail/refused-of-sheet", test_refused_of_sheet);
  return g_test_run ();
}
