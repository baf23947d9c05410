/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/bench/tube-raster.h"

#include <math.h>
#include <string.h>

#include "core/fit/fit.h"
#include "properties.h"
#include "support.h"

/* Rasters made for one picture tube: for every class of monitor in the catalogue, for the one of
 * the demonstration sheet, and for sets with odd figures. What must hold is worked out here from
 * what the monitor is: nothing in it comes from how the raster was found. */

typedef struct
{
  int width;
  int height;
  BwRatio field_rate_hz;
  gboolean interlaced;
} Wish;

static const Wish wishes[] = {
  { 320, 240, { 60, 1 }, FALSE },        { 256, 224, { 60, 1 }, FALSE },
  { 384, 288, { 50, 1 }, FALSE },        { 640, 480, { 60000, 1001 }, TRUE },
  { 640, 480, { 60, 1 }, TRUE },         { 720, 576, { 50, 1 }, TRUE },
  { 640, 480, { 60, 1 }, FALSE },        { 640, 480, { 60000, 1001 }, FALSE },
  { 720, 576, { 50, 1 }, FALSE },        { 800, 600, { 60, 1 }, FALSE },
  { 640, 400, { 70, 1 }, FALSE },        { 1024, 768, { 60, 1 }, FALSE },
  { 1024, 768, { 87, 1 }, TRUE },        { 1920, 1080, { 60, 1 }, TRUE },
  { 1280, 720, { 60000, 1001 }, FALSE }, { 320, 200, { 55, 1 }, FALSE },
};

/* Sets that the catalogue does not have: no overscan, and quick or slow retraces (invented). */
static const struct
{
  const char *name;
  BwRange line_rates_hz;
  BwRange field_rates_hz;
  double line_retrace_s;
  double field_retrace_s;
  double overscan_h;
  double overscan_v;
} odd_sets[] = {
  { "no-overscan", { 15e3, 40e3 }, { 45, 100 }, 8e-6, 700e-6, 0, 0 },
  { "quick-retrace", { 15e3, 40e3 }, { 45, 100 }, 1e-6, 100e-6, 0, 0 },
  { "quick-and-overscanned", { 15e3, 40e3 }, { 45, 100 }, 1e-6, 100e-6, 0.1, 0.1 },
  { "slow-retrace", { 15e3, 40e3 }, { 45, 100 }, 12e-6, 2e-3, 0.02, 0.02 },
  { "two-narrow-bands", { 15.6e3, 15.9e3 }, { 49, 61 }, 10e-6, 900e-6, 0.05, 0.05 },
};

typedef struct
{
  const BwMonitor *monitor;
  const BwLimits *limits;
  Wish wish;
} Case;

static const BwSheet *
demo_sheet (void)
{
  static BwSheet *sheet = NULL;
  if (sheet == NULL)
    {
      g_autofree char *path = bw_test_demo_path ();
      g_autoptr (GPtrArray) faults = bw_test_faults_new ();
      sheet = bw_sheet_load (path, bw_test_catalogue (), faults);
      if (!bw_test_no_faults (faults) || sheet == NULL)
        g_error ("the demonstration sheet does not load");
    }
  return sheet;
}

static BwRaster *
make (const Case *c, GPtrArray *why, GError **error)
{
  BwTubeRequest request = { c->wish.width, c->wish.height, c->wish.field_rate_hz,
                            c->wish.interlaced };
  return bw_tube_raster (&request, c->monitor, c->limits, why, error);
}

/* What a line count gives, from the monitor alone */

static double
share_left (double overscan)
{
  return 1 - overscan;
}

static gboolean
in_bands (const BwBands *bands, double value, double margin)
{
  for (guint i = 0; i < bands->n; i++)
    if (value >= bands->at[i].low * (1 + margin) * (1 - 1e-12)
        && value <= bands->at[i].high * (1 - margin) * (1 + 1e-12))
      return TRUE;
  return FALSE;
}

/* Whether a field of @half_lines can hold the picture: its line rate is in a band and keeps the
 * margin; the picture lies in what is seen of the scan, which the retrace and its margin leave; in
 * the shorter of two interlaced fields, too, blanking hides the retrace and its margin; and there
 * is a line of porch on both sides of three lines of sync. */
static gboolean
can_hold (const Case *c, int half_lines)
{
  double field_rate_hz = bw_ratio_to_double (c->wish.field_rate_hz);
  double line_rate_hz = field_rate_hz * half_lines / 2;
  double active = c->wish.height / (c->wish.interlaced ? 2.0 : 1.0);
  double hidden = c->monitor->field_retrace_s * (1 + c->limits->blanking) * line_rate_hz;
  double shorter = half_lines / 2.0 - active - (c->wish.interlaced ? 0.5 : 0);

  return in_bands (&c->monitor->line_rates_hz, line_rate_hz, c->limits->line_rate)
         && (half_lines / 2.0 - hidden) * share_left (c->monitor->overscan_v) >= active
         && shorter >= hidden && shorter >= 5;
}

/* The lowest line count that does it, by trying all; zero if none does. */
static int
lowest_half_lines (const Case *c)
{
  double field_rate_hz = bw_ratio_to_double (c->wish.field_rate_hz);
  for (int half_lines = c->wish.interlaced ? 3 : 2; half_lines * field_rate_hz < 400e3;
       half_lines += 2)
    if (can_hold (c, half_lines))
      return half_lines;
  return 0;
}

/* What must hold of a raster that was made */

static BwSeverity
severity_of (const Case *c, const BwRaster *raster, BwRule rule)
{
  BwRasterFigures figures;
  BwFinding finding;
  g_autoptr (BwInput) plain = bw_input_new (); /* takes whatever the monitor takes */
  BwCase judged = { .monitor = c->monitor,
                    .input = plain,
                    .raster = raster,
                    .figures = &figures,
                    .limits = c->limits,
                    .supply_hz = 60 };
  bw_raster_figures (raster, &figures);
  bw_rule_judge (rule, &judged, BW_SYNC_SEPARATE, &finding);
  return finding.severity;
}

static void
assert_judged_ok (const Case *c, const BwRaster *raster)
{
  g_assert_cmpuint (severity_of (c, raster, BW_RULE_LINE_RATE), ==, BW_SEVERITY_OK);
  g_assert_cmpuint (severity_of (c, raster, BW_RULE_FIELD_RATE), ==, BW_SEVERITY_OK);
  g_assert_cmpuint (severity_of (c, raster, BW_RULE_LINE_BLANKING), ==, BW_SEVERITY_OK);
  g_assert_cmpuint (severity_of (c, raster, BW_RULE_FIELD_BLANKING), ==, BW_SEVERITY_OK);
}

/* What was asked for is what there is, and the field rate is exact. */
static void
assert_as_asked (const Case *c, const BwRaster *raster)
{
  g_autofree char *fault = bw_property_raster (raster);
  BwRatio rate_hz;
  BwRasterFigures f;

  bw_raster_figures (raster, &f);
  g_assert_cmpstr (fault, ==, NULL);
  g_assert_true (bw_raster_check (raster, NULL));
  g_assert_cmpint (raster->h_active, ==, c->wish.width);
  g_assert_cmpint ((int) f.active_lines_frame, ==, c->wish.height);
  g_assert_cmpint (raster->scan == BW_SCAN_INTERLACED, ==, c->wish.interlaced);
  g_assert_true (bw_raster_field_rate (raster, &rate_hz));
  g_assert_cmpint (bw_ratio_compare (rate_hz, c->wish.field_rate_hz), ==, 0);
  /* half a line over in each field, or the fields do not interlace */
  g_assert_cmpint (f.lines_per_frame % 2, ==, c->wish.interlaced ? 1 : f.lines_per_frame % 2);
}

/* The picture is in the middle of the scan: the retrace starts with sync and takes @retrace, the
 * scan takes the rest of @period, so its middle is @retrace + (@period − @retrace)/2 after sync;
 * the picture's is @to_picture + @active/2 after it. Returns how far they are apart. */
static double
off_centre (double period, double retrace, double to_picture, double active)
{
  return to_picture + active / 2 - (retrace + (period - retrace) / 2);
}

static void
assert_centred (const Case *c, const BwRaster *raster)
{
  BwRasterFigures f;
  bw_raster_figures (raster, &f);
  double pixel_s = 1 / f.pixel_clock_hz;
  double h_off_s = off_centre (f.line_period_s, c->monitor->line_retrace_s,
                               f.h_sync_s + f.h_back_porch_s, f.h_active_s);

  g_assert_cmpfloat (fabs (h_off_s), <=, pixel_s * (1 + 1e-9));
  for (int i = 0; i < 2; i++)
    {
      const BwFieldTiming *field = &raster->field[i];
      double v_off_s = off_centre (f.field_period_s, c->monitor->field_retrace_s,
                                   (field->sync + field->back_porch) / 2.0 * f.line_period_s,
                                   field->active / 2.0 * f.line_period_s);
      g_assert_cmpfloat (fabs (v_off_s), <=, f.line_period_s * (1 + 1e-9));
    }
}

/* The picture lies in what is seen of the scan. Across the line it fills that to two pixels, unless
 * a quick retrace leaves too little blanking for sync, the porches and the middle: then blanking is
 * twice sync less retrace, and a pixel of porch on both sides. */
static void
assert_inside_the_glass (const Case *c, const BwRaster *raster)
{
  BwRasterFigures f;
  double margin = 1 + c->limits->blanking;
  bw_raster_figures (raster, &f);
  double pixel_s = 1 / f.pixel_clock_hz;
  double seen_s = (f.line_period_s - c->monitor->line_retrace_s * margin)
                  * share_left (c->monitor->overscan_h);
  double seen_field_s = (f.field_period_s - c->monitor->field_retrace_s * margin)
                        * share_left (c->monitor->overscan_v);
  double sync_needs_s = 2 * f.h_sync_s - c->monitor->line_retrace_s + 5 * pixel_s;

  g_assert_cmpfloat (f.h_active_s, <=, seen_s * (1 + 1e-9));
  g_assert_true (f.h_active_s >= seen_s - 2.1 * pixel_s || f.h_blanking_s <= sync_needs_s);
  g_assert_cmpfloat (f.v_active_lines * f.line_period_s, <=, seen_field_s * (1 + 1e-9));
}

static void
assert_explained (const GPtrArray *why)
{
  g_assert_cmpuint (why->len, >=, 3);
  for (guint i = 0; i < why->len; i++)
    {
      const char *sentence = why->pdata[i];
      g_assert_true (bw_property_plain (sentence));
      g_assert_true (g_str_has_suffix (sentence, "."));
      g_assert_cmpuint (strlen (sentence), >, 20);
    }
}

static void
test_made (gconstpointer data)
{
  const Case *c = data;
  g_autoptr (GPtrArray) why = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GError) error = NULL;
  g_autoptr (BwRaster) raster = make (c, why, &error);
  int lowest = lowest_half_lines (c);
  double rate_hz = bw_ratio_to_double (c->wish.field_rate_hz);
  BwRasterFigures f;

  g_assert_true ((raster == NULL) == (error != NULL));
  if (error != NULL)
    g_test_message ("%s", error->message);
  if (!in_bands (&c->monitor->field_rates_hz, rate_hz, c->limits->field_rate))
    {
      g_assert_error (error, BW_TUBE_ERROR, BW_TUBE_ERROR_FIELD_RATE);
      return;
    }
  if (lowest == 0)
    {
      g_assert_error (error, BW_TUBE_ERROR, BW_TUBE_ERROR_LINE_RATE);
      return;
    }
  g_assert_no_error (error);
  if (raster == NULL)
    return;
  bw_raster_figures (raster, &f);
  g_assert_cmpint ((int) (2 * f.lines_per_field), ==, lowest);
  assert_as_asked (c, raster);
  assert_judged_ok (c, raster);
  assert_centred (c, raster);
  assert_inside_the_glass (c, raster);
  assert_explained (why);
}

/* Known answers, worked by hand */

static BwMonitor *
simple_monitor (void)
{
  BwMonitor *monitor = bw_monitor_new ();
  g_free (monitor->name);
  monitor->name = g_strdup ("Invented");
  monitor->line_rates_hz = (BwBands){ 1, { { 15e3, 40e3 } } };
  monitor->field_rates_hz = (BwBands){ 1, { { 45, 100 } } };
  monitor->line_retrace_s = 10e-6;
  monitor->field_retrace_s = 1e-3;
  return monitor;
}

/* 240 lines at 60 Hz, no margins, no overscan, retrace 1 ms: the field lasts 16.667 ms, the picture
 * must fit in 15.667 ms of it, so lines ≥ 240 / 0.94 = 255.3: 256 lines, 15.36 kHz. The retrace is
 * 15.36 lines, blanking 16: (16 − 15.36)/2 rounds to no line before sync, and one is the least. */
static void
test_by_hand (void)
{
  g_autoptr (BwMonitor) monitor = simple_monitor ();
  BwLimits none = { 0 };
  Case c = { monitor, &none, { 320, 240, { 60, 1 }, FALSE } };
  g_autoptr (BwRaster) raster = make (&c, NULL, NULL);
  BwRasterFigures f;

  g_assert_nonnull (raster);
  if (raster == NULL)
    return;
  bw_raster_figures (raster, &f);
  g_assert_cmpint (f.lines_per_frame, ==, 256);
  g_assert_cmpfloat_with_epsilon (f.line_rate_hz, 15360, 1e-9);
  g_assert_cmpint (raster->field[0].front_porch, ==, 2);
  g_assert_cmpint (raster->field[0].sync, ==, 6);
  g_assert_cmpint (raster->field[0].back_porch, ==, 24);
  /* 320 px in 65.104 − 10 us = 55.104 us: the line is at least 378.07 px, 380 in even numbers */
  g_assert_cmpint (f.h_total, ==, 380);
}

/* A margin of a tenth on the line rate moves the lowest rate from 15 to 16.5 kHz: 275 lines. */
static void
test_margin_by_hand (void)
{
  g_autoptr (BwMonitor) monitor = simple_monitor ();
  BwLimits tenth = { .line_rate = 0.1 };
  Case c = { monitor, &tenth, { 320, 240, { 60, 1 }, FALSE } };
  g_autoptr (BwRaster) raster = make (&c, NULL, NULL);
  BwRasterFigures f;

  g_assert_nonnull (raster);
  if (raster == NULL)
    return;
  bw_raster_figures (raster, &f);
  g_assert_cmpint (f.lines_per_frame, ==, 275);
}

/* A retrace of 10 µs is done long before sync is: of 15 kHz / 60 = 250 lines 10 are blanking, at most
 * 10 − 3 − 1 of them before sync, and at least one between sync and picture. */
static void
test_quick_retrace (void)
{
  g_autoptr (BwMonitor) monitor = simple_monitor ();
  BwLimits none = { 0 };
  monitor->field_retrace_s = 10e-6;
  for (int height = 240; height <= 244; height += 2)
    {
      Case c = { monitor, &none, { 320, height, { 60, 1 }, FALSE } };
      g_autoptr (BwRaster) raster = make (&c, NULL, NULL);
      int blanking = 2 * (250 - height);
      int middle = (int) round (blanking / 4.0 - 10e-6 * 15e3 / 2)
                   * 2; /* before sync, in half lines */
      int front = CLAMP (middle, 2, blanking - 6 - 2);
      g_assert_nonnull (raster);
      g_assert_cmpint (raster->field[0].front_porch, ==, front);
      g_assert_cmpint (raster->field[0].sync, ==, 6);
      g_assert_cmpint (raster->field[0].back_porch, ==, blanking - 6 - front);
      g_assert_cmpint (raster->field[0].back_porch, >=, 2);
    }
}

/* Refusals */

typedef struct
{
  const char *name;
  Wish wish;
  BwTubeError code;
  const char *words[6];
} Refused;

static const Refused refused[] = {
  { "too-narrow", { 15, 240, { 60, 1 }, FALSE }, BW_TUBE_ERROR_REQUEST, { "15", "16", "8192" } },
  { "too-wide", { 8193, 240, { 60, 1 }, FALSE }, BW_TUBE_ERROR_REQUEST, { "8193", "8192" } },
  { "too-low", { 320, 0, { 60, 1 }, FALSE }, BW_TUBE_ERROR_REQUEST, { "16" } },
  { "negative", { -320, -240, { 60, 1 }, FALSE }, BW_TUBE_ERROR_REQUEST, { "16" } },
  { "odd-interlaced", { 640, 481, { 60, 1 }, TRUE }, BW_TUBE_ERROR_REQUEST, { "481", "even" } },
  { "no-field-rate", { 320, 240, { 0, 1 }, FALSE }, BW_TUBE_ERROR_FIELD_RATE, { "45", "100" } },
  { "negative-field-rate", { 320, 240, { -60, 1 }, FALSE }, BW_TUBE_ERROR_FIELD_RATE, { "45" } },
  { "field-rate-below",
    { 320, 240, { 30, 1 }, FALSE },
    BW_TUBE_ERROR_FIELD_RATE,
    { "30", "45", "100" } },
  { "field-rate-above",
    { 320, 240, { 120, 1 }, FALSE },
    BW_TUBE_ERROR_FIELD_RATE,
    { "120", "100" } },
  { "too-many-lines",
    { 640, 1024, { 60, 1 }, FALSE },
    BW_TUBE_ERROR_LINE_RATE,
    { "1024", "lines", "retrace" } },
};

static void
test_refused (gconstpointer data)
{
  const Refused *r = data;
  g_autoptr (BwMonitor) monitor = simple_monitor ();
  BwLimits none = { 0 };
  Case c = { monitor, &none, r->wish };
  g_autoptr (GError) error = NULL;

  g_assert_null (make (&c, NULL, &error));
  g_assert_error (error, BW_TUBE_ERROR, (int) r->code);
  if (error != NULL)
    bw_test_assert_words (error->message, r->words);
}

/* A field rate of many decimals is a ratio of large numbers; the raster has exactly that rate, or it is
 * refused with a reason. */
static void
test_long_rates (void)
{
  static const BwRatio rates[] = {
    { 599400599400599, 10000000000000 },
    { 5994005994005994, 100000000000000 },
    { G_MAXINT64 / 3, G_MAXINT64 / 200 },
  };
  g_autoptr (BwMonitor) monitor = simple_monitor ();
  BwLimits none = { 0 };
  for (gsize i = 0; i < G_N_ELEMENTS (rates); i++)
    {
      Case c = { monitor, &none, { 640, 240, rates[i], FALSE } };
      g_autoptr (GError) error = NULL;
      g_autoptr (BwRaster) raster = make (&c, NULL, &error);
      if (i == 2)
        g_assert_error (error, BW_TUBE_ERROR, BW_TUBE_ERROR_REQUEST);
      else
        g_assert_no_error (error);
      BwRatio made_hz;
      g_assert_cmpint (raster != NULL && bw_raster_field_rate (raster, &made_hz)
                           && bw_ratio_compare (made_hz, rates[i]) == 0,
                       ==, i < 2);
    }
}

/* Cases */

static void
add_cases (const BwMonitor *monitor, const BwLimits *limits, const char *name)
{
  for (gsize i = 0; i < G_N_ELEMENTS (wishes); i++)
    {
      const Wish *w = &wishes[i];
      Case *c = g_new (Case, 1);
      *c = (Case){ monitor, limits, *w };
      g_autofree char *path = g_strdup_printf ("/tube-raster/%s/%dx%d-%.5g%s", name, w->width,
                                               w->height, bw_ratio_to_double (w->field_rate_hz),
                                               w->interlaced ? "i" : "");
      g_test_add_data_func_full (path, c, test_made, g_free);
    }
}

static void
add_odd_sets (GPtrArray *monitors, const BwLimits *limits)
{
  for (gsize i = 0; i < G_N_ELEMENTS (odd_sets); i++)
    {
      BwMonitor *monitor = simple_monitor ();
      monitor->line_rates_hz = (BwBands){ 1, { odd_sets[i].line_rates_hz } };
      monitor->field_rates_hz = (BwBands){ 1, { odd_sets[i].field_rates_hz } };
      monitor->line_retrace_s = odd_sets[i].line_retrace_s;
      monitor->field_retrace_s = odd_sets[i].field_retrace_s;
      monitor->overscan_h = odd_sets[i].overscan_h;
      monitor->overscan_v = odd_sets[i].overscan_v;
      if (strcmp (odd_sets[i].name, "two-narrow-bands") == 0)
        {
          monitor->line_rates_hz.n = 2;
          monitor->line_rates_hz.at[1] = (BwRange){ 31.2e3, 31.8e3 };
        }
      g_ptr_array_add (monitors, monitor);
      add_cases (monitor, limits, odd_sets[i].name);
    }
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  const GPtrArray *monitors = bw_catalogue_monitors (bw_test_catalogue ());
  const BwSheet *demo = demo_sheet ();
  g_autoptr (GPtrArray) odd = g_ptr_array_new_with_free_func ((GDestroyNotify) bw_monitor_free);

  add_odd_sets (odd, &demo->limits);
  for (guint i = 0; i < monitors->len; i++)
    {
      const BwMonitor *monitor = monitors->pdata[i];
      add_cases (monitor, &demo->limits, monitor->id);
    }
  add_cases (demo->monitor, &demo->limits, "demo");
  for (gsize i = 0; i < G_N_ELEMENTS (refused); i++)
    {
      g_autofree char *path = g_strconcat ("/tube-raster/refused/", refused[i].name, NULL);
      g_test_add_data_func (path, &refused[i], test_refused);
    }
  g_test_add_func ("/tube-raster/by-hand", test_by_hand);
  g_test_add_func ("/tube-raster/margin-by-hand", test_margin_by_hand);
  g_test_add_func ("/tube-raster/quick-retrace", test_quick_retrace);
  g_test_add_func ("/tube-raster/long-rates", test_long_rates);
  return g_test_run ();
}
