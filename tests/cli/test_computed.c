/* SPDX-License-Identifier: GPL-3.0-or-later */
/* `breezeway-cli timing` with --cvt, --gtf and the two other ways of GTF, against edid-decode
 * --cvt and --gtf (Debian package edid-decode; looked through with 0.1~git20220315.cb74358c2896-1).
 * The modes are such that no difference of tests/reference/edid-decode-cvt-differences.tsv comes
 * in, but for the one that is named. Without edid-decode these tests fail. */
#include <string.h>

#include "printed.h"

typedef enum
{
  REDUCED = 1 << 0,
  INTERLACED = 1 << 1,
  MARGINS = 1 << 2
} Flags;

typedef struct
{
  const char *formula;
  int width;
  int height;
  const char *rate;
  Flags flags;
} Mode;

static const Mode modes[] = {
  { "cvt", 640, 480, "60", 0 },
  { "cvt", 640, 480, "85", 0 },
  { "cvt", 800, 600, "60", 0 },
  { "cvt", 800, 600, "75", MARGINS },
  { "cvt", 800, 600, "85", REDUCED },
  { "cvt", 1024, 768, "59.94", 0 },
  { "cvt", 1024, 768, "85", 0 },
  { "cvt", 1024, 768, "60", REDUCED | MARGINS },
  { "cvt", 1280, 720, "60", 0 },
  { "cvt", 1280, 768, "60", 0 },
  { "cvt", 1280, 960, "75", REDUCED },
  { "cvt", 1280, 1024, "60", 0 },
  { "cvt", 1400, 1050, "60", REDUCED },
  { "cvt", 1440, 900, "60", 0 },
  { "cvt", 1600, 1200, "85", 0 },
  { "cvt", 1680, 1050, "60", REDUCED },
  { "cvt", 1920, 1080, "50", 0 },
  { "cvt", 1920, 1200, "60", 0 },
  { "cvt", 720, 576, "50", 0 },
  { "cvt", 1024, 768, "87", INTERLACED },
  { "cvt", 1024, 768, "87", INTERLACED | REDUCED },
  { "cvt", 1280, 1024, "100", INTERLACED | REDUCED },
  { "cvt", 1920, 1080, "60", INTERLACED },
  { "cvt", 1920, 1080, "60", INTERLACED | MARGINS },
  { "gtf", 512, 384, "60", 0 },
  { "gtf", 640, 350, "70", 0 },
  { "gtf", 640, 480, "60", 0 },
  { "gtf", 640, 480, "59.94", 0 },
  { "gtf", 640, 480, "85", 0 },
  { "gtf", 800, 600, "72", 0 },
  { "gtf", 800, 600, "60", MARGINS },
  { "gtf", 1024, 768, "60", 0 },
  { "gtf", 1024, 768, "75", 0 },
  { "gtf", 1280, 1024, "60", 0 },
  { "gtf", 1280, 1024, "76", 0 },
  { "gtf", 1366, 768, "60", 0 },
  { "gtf", 1600, 1200, "60", 0 },
  { "gtf", 1920, 1440, "60", 0 },
  { "gtf", 1024, 768, "87", INTERLACED },
  { "gtf", 1280, 1024, "100", INTERLACED },
  { "gtf", 1920, 1080, "60", INTERLACED },
  { "gtf", 1024, 768, "87", INTERLACED | MARGINS },
};

static char *
request_text (const Mode *mode)
{
  return g_strdup_printf ("%dx%d@%s%s%s%s", mode->width, mode->height, mode->rate,
                          mode->flags & REDUCED ? ",reduced" : "",
                          mode->flags & INTERLACED ? ",interlaced" : "",
                          mode->flags & MARGINS ? ",margins" : "");
}

static Printed
ask_for (const Mode *mode)
{
  g_autofree char *option = g_strconcat ("--", mode->formula, NULL);
  g_autofree char *value = g_strdup_printf ("w=%d,h=%d,fps=%s%s%s%s", mode->width, mode->height,
                                            mode->rate, mode->flags & REDUCED ? ",rb=1" : "",
                                            mode->flags & INTERLACED ? ",interlaced" : "",
                                            mode->flags & MARGINS ? ",overscan" : "");
  return ask_edid_decode (option, value);
}

static void
assert_same (JsonObject *timing, const char *key, double printed, double tolerance)
{
  double have = figure_of (timing, key);
  if (!is_near (have, printed, tolerance))
    g_test_fail_printf ("%s: %.9g, edid-decode prints %.9g", key, have, printed);
}

static void
assert_shape (JsonObject *timing, const Printed *printed)
{
  assert_same (timing, "h_active", printed->h_active, 0);
  assert_same (timing, "h_border", printed->h_border, 0);
  assert_same (timing, "h_front_porch", printed->h_front_porch, 0);
  assert_same (timing, "h_sync", printed->h_sync, 0);
  assert_same (timing, "h_back_porch", printed->h_back_porch, 0);
  assert_same (timing, "v_border", printed->v_border, 0);
  assert_same (timing, "v_front_porch", printed->v_front_porch, 0);
  assert_same (timing, "v_sync", printed->v_sync, 0);
  assert_same (timing, "v_back_porch", printed->v_back_porch, 0);
  assert_same (timing, "lines_per_frame", printed->v_total, 0);
  g_assert_true (is_near (whole_frame (timing), printed->v_active, 0));
  g_assert_cmpint (is_positive (timing, "h_sync_polarity"), ==, printed->h_positive);
  g_assert_cmpint (is_positive (timing, "v_sync_polarity"), ==, printed->v_positive);
  g_assert_cmpstr (json_object_get_string_member (timing, "scan"), ==,
                   printed->interlaced ? "interlaced" : "progressive");
}

/* The clock is printed in whole kilohertz, and the rates follow from the clock as it is printed:
 * 0.5 kHz, as a share of the clock, and half of the last digit. */
static void
assert_rates (JsonObject *timing, const Printed *printed, gboolean with_field_rate)
{
  double share = 501 / printed->pixel_clock_hz;
  assert_same (timing, "pixel_clock_hz", printed->pixel_clock_hz, 501);
  assert_same (timing, "line_rate_hz", printed->line_rate_hz, 0.51 + share * printed->line_rate_hz);
  if (with_field_rate)
    assert_same (timing, "field_rate_hz", printed->field_rate_hz,
                 5.1e-7 + share * printed->field_rate_hz);
}

static void
test_mode (gconstpointer data)
{
  const Mode *mode = data;
  g_autofree char *option = g_strconcat ("--", mode->formula, NULL);
  g_autofree char *text = request_text (mode);
  g_autoptr (Run) run = run_cli ("timing", option, text, "--json", NULL);
  g_autoptr (JsonObject) timing = run_json (run);
  Printed printed = ask_for (mode);
  /* the tool leaves the border lines out of this rate: "rate-without-borders" of the list */
  gboolean borders = (mode->flags & INTERLACED) && (mode->flags & MARGINS);

  assert_shape (timing, &printed);
  assert_rates (timing, &printed, !borders);
}

/* GTF from a line rate and from a pixel clock. */
static const struct
{
  const char *option;
  const char *value;
  const char *active;
  const char *with;
  const char *asked; /* of edid-decode */
} other_ways[] = {
  { "--gtf-line-rate", "64 kHz", "1280x1024", NULL, "w=1280,h=1024,horfreq=64" },
  { "--gtf-line-rate", "31500", "640x480", NULL, "w=640,h=480,horfreq=31.5" },
  { "--gtf-line-rate", "35kHz", "1024x768", "--interlaced", "w=1024,h=768,horfreq=35,interlaced" },
  { "--gtf-line-rate", "48 kHz", "800x600", "--margins", "w=800,h=600,horfreq=48,overscan" },
  { "--gtf-pixel-clock", "65 MHz", "1024x768", NULL, "w=1024,h=768,pixclk=65" },
  { "--gtf-pixel-clock", "40000 kHz", "800x600", NULL, "w=800,h=600,pixclk=40" },
  { "--gtf-pixel-clock", "45 MHz", "1024x768", "--interlaced",
    "w=1024,h=768,pixclk=45,interlaced" },
};

static void
test_other_way (gconstpointer data)
{
  gsize i = GPOINTER_TO_SIZE (data);
  g_autoptr (Run) run = run_cli ("timing", other_ways[i].option, other_ways[i].value, "--json",
                                 "--active", other_ways[i].active, other_ways[i].with, NULL);
  g_autoptr (JsonObject) timing = run_json (run);
  Printed printed = ask_edid_decode ("--gtf", other_ways[i].asked);
  assert_shape (timing, &printed);
  assert_rates (timing, &printed, TRUE);
}

/* Where the formula gives a front porch below zero, which edid-decode prints, nothing is printed
 * but the reason. */
static void
test_negative_porch (void)
{
  static const Mode negative[] = {
    { "gtf", 320, 240, "60", 0 },
    { "gtf", 384, 288, "50", 0 },
    { "gtf", 720, 576, "50", INTERLACED },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (negative); i++)
    {
      g_autofree char *text = request_text (&negative[i]);
      g_autoptr (Run) run = run_cli ("timing", "--gtf", text, "--json", NULL);
      Printed printed = ask_for (&negative[i]);
      g_assert_cmpfloat (printed.h_front_porch, <, 0);
      assert_refused (run, 1, "front porch");
      g_assert_nonnull (strstr (run->err, "negative"));
    }
}

/* What is no request, or none that a formula takes: status 1, and what is allowed. */
static const struct
{
  const char *args[6];
  const char *says;
} refused[] = {
  { { "--cvt", "640x480", NULL }, "WIDTHxHEIGHT@RATE" },
  { { "--cvt", "640x480@", NULL }, "WIDTHxHEIGHT@RATE" },
  { { "--cvt", "640x480@60,shrunk", NULL }, "“640x480@60,shrunk”" },
  { { "--cvt", "0x480@60", NULL }, "“0x480@60”" },
  { { "--cvt", "640x480@-60", NULL }, "10 Hz" },
  { { "--cvt", "640x480@1e9", NULL }, "400 Hz" },
  { { "--cvt", "63x480@60", NULL }, "64" },
  { { "--cvt", "99999x480@60", NULL }, "8192" },
  { { "--cvt", "", NULL }, "WIDTHxHEIGHT@RATE" },
  { { "--cvt", "\xff@60", NULL }, "WIDTHxHEIGHT@RATE" },
  { { "--gtf", "640x480@60,reduced", NULL }, "only CVT" },
  { { "--gtf-line-rate", "0 Hz", "--active", "640x480", NULL }, "more than zero" },
  { { "--gtf-line-rate", "-5 kHz", "--active", "640x480", NULL }, "more than zero" },
  { { "--gtf-line-rate", "5 px", "--active", "640x480", NULL }, "“px”" },
  { { "--gtf-line-rate", "31 kHz", "--active", "640", NULL }, "WIDTHxHEIGHT" },
  { { "--gtf-line-rate", "31 kHz", "--active", "640x480x3", NULL }, "WIDTHxHEIGHT" },
  { { "--gtf-line-rate", "31 kHz", "--active", "640x0", NULL }, "WIDTHxHEIGHT" },
  { { "--gtf-line-rate", "900 GHz", "--active", "640x480", NULL }, "--gtf-line-rate" },
  { { "--gtf-pixel-clock", "1 Hz", "--active", "640x480", NULL }, "--gtf-pixel-clock" },
};

static void
test_refused (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (refused); i++)
    {
      const char *args[8] = { "timing" };
      for (gsize k = 0; refused[i].args[k] != NULL; k++)
        args[k + 1] = refused[i].args[k];
      g_autoptr (Run) run = run_args (args);
      assert_refused (run, 1, refused[i].says);
    }
}

/* The same keys as for a raster of the catalogue, and none more. */
static void
test_same_keys (void)
{
  g_autoptr (Run) run = run_cli ("timing", "--cvt", "640x480@60", "--json", NULL);
  g_autoptr (JsonObject) computed = run_json (run);
  g_autoptr (JsonObject) catalogued = timing_of ("vesa-dmt-04");
  g_autoptr (GList) keys = json_object_get_members (catalogued);
  g_assert_cmpuint (json_object_get_size (computed), ==, json_object_get_size (catalogued));
  for (GList *key = keys; key != NULL; key = key->next)
    g_assert_true (json_object_has_member (computed, key->data));
}

static void
test_for_a_person (void)
{
  g_autoptr (Run) run = run_cli ("timing", "--cvt", "640x480@60", NULL);
  g_assert_cmpint (run->status, ==, 0);
  g_assert_nonnull (strstr (run->out, "23.750000 MHz"));
  g_assert_nonnull (strstr (run->out, "VESA CVT"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (modes); i++)
    {
      g_autofree char *text = request_text (&modes[i]);
      g_autofree char *path = g_strconcat ("/computed/", modes[i].formula, "/", text, NULL);
      g_test_add_data_func (path, &modes[i], test_mode);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (other_ways); i++)
    {
      g_autofree char *path = g_strconcat ("/computed/", other_ways[i].asked, NULL);
      g_test_add_data_func (path, GSIZE_TO_POINTER (i), test_other_way);
    }
  g_test_add_func ("/computed/negative-porch", test_negative_porch);
  g_test_add_func ("/computed/refused", test_refused);
  g_test_add_func ("/computed/same-keys", test_same_keys);
  g_test_add_func ("/computed/for-a-person", test_for_a_person);
  return g_test_run ();
}
