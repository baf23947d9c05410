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
  { 720, 480, { 60, 1 }, FALSE },        { 1280, 1024, { 60, 1 }, FALSE },
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

static GPtrArray *
make_all (const Case *c, const BwCatalogue *catalogue, GError **error)
{
  BwTubeRequest request = { .width = c->wish.width,
                            .height = c->wish.height,
                            .field_rate_hz = c->wish.field_rate_hz,
                            .interlaced = c->wish.interlaced,
                            .catalogue = catalogue };
  return bw_tube_rasters (&request, c->monitor, c->limits, error);
}

/* The best one without a catalogue: what is computed. */
static BwRaster *
make (const Case *c, GError **error)
{
  g_autoptr (GPtrArray) answers = make_all (c, NULL, error);
  return answers != NULL ? bw_raster_copy (((BwTubeAnswer *) answers->pdata[0])->raster) : NULL;
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

/* Whether a field of @half_lines can hold the picture of @height lines a frame: its line rate is in a band;
 * in the shorter of two interlaced fields, too, blanking hides the retrace; and there is a line of porch on
 * both sides of three lines of sync. @strict: with every margin, and every line inside the glass. */
static gboolean
can_hold (const Case *c, int height, int half_lines, gboolean strict)
{
  double field_rate_hz = bw_ratio_to_double (c->wish.field_rate_hz);
  double line_rate_hz = field_rate_hz * half_lines / 2;
  double active = height / (c->wish.interlaced ? 2.0 : 1.0);
  double retrace = c->monitor->field_retrace_s * line_rate_hz;
  double hidden = retrace * (1 + (strict ? c->limits->blanking : 0));
  double shorter = half_lines / 2.0 - active - (c->wish.interlaced ? 0.5 : 0);

  return in_bands (&c->monitor->line_rates_hz, line_rate_hz, strict ? c->limits->line_rate : 0)
         && (!strict
             || (half_lines / 2.0 - retrace) * share_left (c->monitor->overscan_v) >= active - 1e-9)
         && shorter >= hidden - 1e-9 && shorter >= 5;
}

/* The lowest line count that does it, by trying all; zero if none does. A picture that leaves a third of
 * the lines empty is none. */
static int
lowest_half_lines (const Case *c, int height, gboolean strict)
{
  int active = height * (c->wish.interlaced ? 1 : 2);
  for (int half_lines = c->wish.interlaced ? 3 : 2; half_lines <= 1.45 * active; half_lines += 2)
    if (can_hold (c, height, half_lines, strict))
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
  plain->scans = BW_BIT (BW_SCAN_PROGRESSIVE) | BW_BIT (BW_SCAN_INTERLACED);
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

/* Every rule on the deflection holds, with its margin if @severity says so. */
static void
assert_judged (const Case *c, const BwRaster *raster, BwSeverity severity)
{
  g_assert_cmpuint (severity_of (c, raster, BW_RULE_LINE_RATE), <=, severity);
  g_assert_cmpuint (severity_of (c, raster, BW_RULE_FIELD_RATE), <=, severity);
  g_assert_cmpuint (severity_of (c, raster, BW_RULE_LINE_COUNT), <=, severity);
  g_assert_cmpuint (severity_of (c, raster, BW_RULE_LINE_BLANKING), <=, severity);
  g_assert_cmpuint (severity_of (c, raster, BW_RULE_FIELD_BLANKING), <=, severity);
}

/* What was asked for is what there is, each line once or twice. */
static void
assert_as_asked (const Case *c, const BwRaster *raster)
{
  g_autofree char *fault = bw_property_raster (raster);
  double wanted_hz = bw_ratio_to_double (c->wish.field_rate_hz);
  BwRasterFigures f;

  bw_raster_figures (raster, &f);
  int times = (int) f.active_lines_frame / c->wish.height;
  g_assert_cmpstr (fault, ==, NULL);
  g_assert_true (bw_raster_check (raster, NULL));
  g_assert_cmpint (raster->h_active, ==, c->wish.width);
  g_assert_cmpint ((int) f.active_lines_frame, ==, c->wish.height * times);
  g_assert_true (times == 1
                 || (times == 2 && !c->wish.interlaced
                     && lowest_half_lines (c, c->wish.height, FALSE) == 0));
  g_assert_cmpint (raster->scan == BW_SCAN_INTERLACED, ==, c->wish.interlaced);
  g_assert_cmpfloat (fabs (f.field_rate_hz / wanted_hz - 1), <=, 0.006);
  /* half a line over in each field, or the fields do not interlace */
  g_assert_cmpint (f.lines_per_frame % 2, ==, c->wish.interlaced ? 1 : f.lines_per_frame % 2);
}

/* Sync and porches are those of such a line. At 15 kHz sync lasts 4.7 µs and the back porch 4.5 µs and more
 * (SMPTE 170M, ITU-R BT.470-6); on computers sync takes up to 14 % of the line (VESA DMT v1.0 r13) and in
 * HD down to 2 % (CTA-861-H VIC 5 and 16: 44 of 2200). A clamp finds black on 2.5 µs of 64 (common practice, no source). */
static void
assert_line (const BwRaster *raster)
{
  BwRasterFigures f;
  bw_raster_figures (raster, &f);
  double pixel_s = 1 / f.pixel_clock_hz;

  if (f.line_rate_hz < 20e3)
    {
      g_assert_cmpfloat (fabs (f.h_sync_s - 4.7e-6), <=, 0.3e-6 + pixel_s);
      g_assert_cmpfloat (f.h_back_porch_s, >=, 4.2e-6 - pixel_s);
    }
  else
    {
      g_assert_cmpfloat (f.h_sync_s / f.line_period_s, >, 0.0195);
      g_assert_cmpfloat (f.h_sync_s / f.line_period_s, <, 0.15);
    }
  g_assert_cmpfloat (f.h_back_porch_s, >=, 2.5 / 64 * MIN (f.line_period_s, 64e-6) * (1 - 1e-9));
  g_assert_cmpfloat (f.h_front_porch_s, >, 0);
}

/* Across the line the picture lies in what is seen of the scan. */
static void
assert_inside_the_glass (const Case *c, const BwRaster *raster)
{
  BwRasterFigures f;
  bw_raster_figures (raster, &f);
  double seen_s = (f.line_period_s - c->monitor->line_retrace_s)
                  * share_left (c->monitor->overscan_h);
  g_assert_cmpfloat (f.h_active_s, <=, seen_s + 1.1 / f.pixel_clock_hz);
}

static void
assert_explained (const BwTubeAnswer *answer)
{
  g_assert_cmpuint (answer->why->len, >=, 3);
  for (guint i = 0; i < answer->why->len + answer->costs->len; i++)
    {
      const char *sentence = i < answer->why->len ? answer->why->pdata[i]
                                                  : answer->costs->pdata[i - answer->why->len];
      g_assert_true (bw_property_plain (sentence));
      g_assert_true (g_str_has_suffix (sentence, "."));
      g_assert_cmpuint (strlen (sentence), >, 20);
    }
}

/* A margin that is not kept and lines that are not seen are said. */
static gboolean
costs_say (const BwTubeAnswer *answer, const char *words)
{
  for (guint i = 0; i < answer->costs->len; i++)
    if (strstr (answer->costs->pdata[i], words) != NULL)
      return TRUE;
  return FALSE;
}

static void
assert_remarks (const Case *c, const BwTubeAnswer *answer)
{
  BwRasterFigures f;
  bw_raster_figures (answer->raster, &f);
  double seen = (f.lines_per_field - c->monitor->field_retrace_s * f.line_rate_hz)
                * share_left (c->monitor->overscan_v);

  g_assert_cmpint (costs_say (answer, "Line rate"), ==,
                   severity_of (c, answer->raster, BW_RULE_LINE_RATE) == BW_SEVERITY_TIGHT);
  g_assert_cmpint (costs_say (answer, "near the edge of"), ==,
                   costs_say (answer, "Line rate")
                       || severity_of (c, answer->raster, BW_RULE_FIELD_RATE) == BW_SEVERITY_TIGHT);
  g_assert_cmpint (costs_say (answer, "behind the edge"), ==, f.v_active_lines > seen + 1e-6);
}

static void
test_made (gconstpointer data)
{
  const Case *c = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) answers = make_all (c, bw_test_catalogue (), &error);
  double rate_hz = bw_ratio_to_double (c->wish.field_rate_hz);
  gboolean takes_rate = in_bands (&c->monitor->field_rates_hz, rate_hz, 0);

  g_assert_true ((answers == NULL) == (error != NULL));
  if (error != NULL)
    g_test_message ("%s", error->message);
  /* What can be shown is not refused: neither a margin nor hidden lines forbid it. */
  if (takes_rate && lowest_half_lines (c, c->wish.height, FALSE) > 0)
    g_assert_no_error (error);
  if (!in_bands (&c->monitor->field_rates_hz, rate_hz, -0.006))
    g_assert_error (error, BW_TUBE_ERROR, BW_TUBE_ERROR_FIELD_RATE);
  if (answers == NULL)
    {
      g_assert_true (error->code == BW_TUBE_ERROR_FIELD_RATE
                     || error->code == BW_TUBE_ERROR_LINE_RATE);
      return;
    }
  g_assert_cmpuint (answers->len, >, 0);
  for (guint i = 0; i < answers->len; i++)
    {
      const BwTubeAnswer *answer = answers->pdata[i];
      assert_as_asked (c, answer->raster);
      assert_judged (c, answer->raster, BW_SEVERITY_TIGHT);
      assert_line (answer->raster);
      assert_inside_the_glass (c, answer->raster);
      assert_explained (answer);
      assert_remarks (c, answer);
      if (i > 0)
        g_assert_cmpfloat (answer->rank, >=, ((BwTubeAnswer *) answers->pdata[i - 1])->rank);
    }
}

/* Without a catalogue it is the lowest line rate that keeps every margin and shows every line. */
static void
test_lowest (gconstpointer data)
{
  const Case *c = data;
  g_autoptr (BwRaster) raster = make (c, NULL);
  int lowest = lowest_half_lines (c, c->wish.height, TRUE);
  BwRatio rate_hz;

  if (lowest == 0
      || !in_bands (&c->monitor->field_rates_hz, bw_ratio_to_double (c->wish.field_rate_hz),
                    c->limits->field_rate))
    return;
  g_assert_nonnull (raster);
  if (raster == NULL || bw_raster_h_total (raster) == 0)
    return;
  g_assert_cmpint (bw_raster_half_lines (raster), ==, 2 * lowest);
  g_assert_true (bw_raster_field_rate (raster, &rate_hz));
  g_assert_cmpint (bw_ratio_compare (rate_hz, c->wish.field_rate_hz), ==, 0);
  assert_judged (c, raster, BW_SEVERITY_OK);
}

/* Known answers of the standards */

typedef struct
{
  const char *monitor; /* class of the catalogue */
  Wish wish;
  double line_rate_hz;
  int lines; /* of the frame */
  int line[4]; /* edges in pixels, where they are published; else zeros */
  int field[4];
} Standard;

/* Line rates and counts: SMPTE 170M (4.5 MHz / 286; 525), ITU-R BT.470-6 (15.625 kHz; 625), CTA-861-H VIC 8
 * and 23 (262 and 312 lines). The edges of the computers' rasters: VESA DMT v1.0 r13, ids 0x04 (with its
 * borders in the porches), 0x09, 0x10 and 0x23. */
static const Standard standards[] = {
  { "studio-14in-15khz", { 320, 240, { 60, 1 }, FALSE }, 4.5e6 / 286, 262, { 0 }, { 240, 244, 247, 262 } },
  { "domestic-21in-peritelevision", { 320, 240, { 60, 1 }, FALSE }, 4.5e6 / 286, 262, { 0 }, { 0 } },
  { "cctv-9in-monochrome", { 320, 240, { 60, 1 }, FALSE }, 4.5e6 / 286, 262, { 0 }, { 0 } },
  { "arcade-19in-15khz", { 320, 240, { 60, 1 }, FALSE }, 4.5e6 / 286, 262, { 0 }, { 0 } },
  { "studio-14in-15khz", { 384, 288, { 50, 1 }, FALSE }, 15625, 312, { 0 }, { 288, 290, 293, 312 } },
  { "domestic-21in-peritelevision", { 384, 288, { 50, 1 }, FALSE }, 15625, 312, { 0 }, { 0 } },
  { "studio-14in-15khz", { 640, 480, { 60, 1 }, TRUE }, 4.5e6 / 286, 525, { 0 }, { 0 } },
  { "studio-14in-15khz", { 720, 576, { 50, 1 }, TRUE }, 15625, 625, { 0 }, { 0 } },
  { "computer-14in-31khz",
    { 640, 480, { 60, 1 }, FALSE },
    25.175e6 / 800,
    525,
    { 640, 656, 752, 800 },
    { 480, 490, 492, 525 } },
  { "computer-17in-multiscan",
    { 800, 600, { 60, 1 }, FALSE },
    40e6 / 1056,
    628,
    { 800, 840, 968, 1056 },
    { 600, 601, 605, 628 } },
  { "computer-17in-multiscan",
    { 1024, 768, { 60, 1 }, FALSE },
    65e6 / 1344,
    806,
    { 1024, 1048, 1184, 1344 },
    { 768, 771, 777, 806 } },
  { "computer-17in-multiscan",
    { 1280, 1024, { 60, 1 }, FALSE },
    108e6 / 1688,
    1066,
    { 1280, 1328, 1440, 1688 },
    { 1024, 1025, 1028, 1066 } },
};

static const BwMonitor *
class_of (const char *id)
{
  const GPtrArray *monitors = bw_catalogue_monitors (bw_test_catalogue ());
  for (guint i = 0; i < monitors->len; i++)
    if (g_strcmp0 (((const BwMonitor *) monitors->pdata[i])->id, id) == 0)
      return monitors->pdata[i];
  g_error ("there is no class %s", id);
}

static void
test_standard (gconstpointer data)
{
  const Standard *s = data;
  const BwSheet *demo = demo_sheet ();
  Case c = { class_of (s->monitor), &demo->limits, s->wish };
  g_autoptr (GPtrArray) answers = make_all (&c, bw_test_catalogue (), NULL);

  g_assert_nonnull (answers);
  if (answers == NULL)
    return;
  const BwRaster *raster = ((BwTubeAnswer *) answers->pdata[0])->raster;
  const BwFieldTiming *field = &raster->field[0];
  BwRasterFigures f;
  bw_raster_figures (raster, &f);
  g_assert_cmpfloat_with_epsilon (f.line_rate_hz, s->line_rate_hz, 0.5);
  g_assert_cmpint (f.lines_per_frame, ==, s->lines);
  if (s->line[0] > 0)
    {
      g_assert_cmpint (raster->h_active, ==, s->line[0]);
      g_assert_cmpint (raster->h_active + raster->h_front_porch, ==, s->line[1]);
      g_assert_cmpint (bw_raster_h_total (raster) - raster->h_back_porch, ==, s->line[2]);
      g_assert_cmpint (bw_raster_h_total (raster), ==, s->line[3]);
    }
  if (s->field[0] > 0)
    {
      g_assert_cmpint (field->active, ==, 2 * s->field[0]);
      g_assert_cmpint (field->active + field->front_porch, ==, 2 * s->field[1]);
      g_assert_cmpint (field->active + field->front_porch + field->sync, ==, 2 * s->field[2]);
    }
}

/* What a source can give */

static const BwRaster *
first_of (const BwTubeRequest *request, const BwMonitor *monitor, GPtrArray **answers)
{
  *answers = bw_tube_rasters (request, monitor, &demo_sheet ()->limits, NULL);
  g_assert_nonnull (*answers);
  return *answers != NULL ? ((BwTubeAnswer *) (*answers)->pdata[0])->raster : NULL;
}

/* A lowest clock of 25 MHz takes all figures across so often as it needs, and changes no time. */
static void
test_lowest_clock (void)
{
  const BwMonitor *monitor = class_of ("studio-14in-15khz");
  BwTubeRequest request = { 320, 240, { 60, 1 }, .catalogue = bw_test_catalogue () };
  g_autoptr (GPtrArray) plain_answers = NULL, wide_answers = NULL;
  const BwRaster *plain = first_of (&request, monitor, &plain_answers);
  request.clock.lowest_hz = 25e6;
  const BwRaster *wide = first_of (&request, monitor, &wide_answers);
  int times = wide->h_active / 320;

  g_assert_cmpfloat (bw_ratio_to_double (wide->pixel_clock_hz), >=, 25e6);
  g_assert_cmpfloat (bw_ratio_to_double (plain->pixel_clock_hz) * (times - 1), <, 25e6);
  g_assert_cmpint (wide->h_active, ==, 320 * times);
  g_assert_cmpint (wide->h_sync, ==, plain->h_sync * times);
  g_assert_cmpint (wide->h_front_porch, ==, plain->h_front_porch * times);
  g_assert_cmpint (wide->h_back_porch, ==, plain->h_back_porch * times);
  g_assert_cmpint (bw_ratio_compare (wide->line_rate_hz, plain->line_rate_hz), ==, 0);
}

static void
test_clock_step (void)
{
  const BwMonitor *monitor = class_of ("studio-14in-15khz");
  BwTubeRequest request = { 320, 240, { 60, 1 }, .catalogue = bw_test_catalogue (),
                            .clock = { .step_hz = 250e3, .multiple = 8 } };
  g_autoptr (GPtrArray) answers = NULL;
  const BwRaster *raster = first_of (&request, monitor, &answers);
  double steps = bw_ratio_to_double (raster->pixel_clock_hz) / 250e3;

  g_assert_cmpfloat_with_epsilon (steps, round (steps), 1e-9);
  g_assert_cmpint (raster->h_front_porch % 8, ==, 0);
  g_assert_cmpint (raster->h_sync % 8, ==, 0);
  g_assert_cmpint (raster->h_back_porch % 8, ==, 0);
  g_assert_cmpint (bw_raster_h_total (raster) % 8, ==, 0);
}

static void
test_highest_clock (void)
{
  BwTubeRequest request = { 640, 240, { 60, 1 }, .clock = { .highest_hz = 10e6 } };
  const char *const words[] = { "10", "640", NULL };
  g_autoptr (GError) error = NULL;
  g_assert_null (bw_tube_rasters (&request, class_of ("studio-14in-15khz"),
                                  &demo_sheet ()->limits, &error));
  g_assert_error (error, BW_TUBE_ERROR, BW_TUBE_ERROR_CLOCK);
  if (error != NULL)
    bw_test_assert_words (error->message, words);
}

static void
test_no_interlace (void)
{
  BwTubeRequest request = { 640, 480, { 60, 1 }, TRUE, .clock = { .no_interlace = TRUE } };
  g_autoptr (GError) error = NULL;
  g_assert_null (bw_tube_rasters (&request, class_of ("studio-14in-15khz"),
                                  &demo_sheet ()->limits, &error));
  g_assert_error (error, BW_TUBE_ERROR, BW_TUBE_ERROR_REQUEST);
}

/* With overscan the picture takes what it takes in the standard: 525 lines, 63.556 − 10.7 µs (SMPTE 170M). */
static void
test_overscan (void)
{
  BwTubeRequest request = { 640, 240, { 60, 1 }, .overscan = TRUE,
                            .catalogue = bw_test_catalogue () };
  g_autoptr (GPtrArray) answers = NULL;
  const BwRaster *raster = first_of (&request, class_of ("domestic-21in-peritelevision"), &answers);
  BwRasterFigures f;
  bw_raster_figures (raster, &f);
  g_assert_cmpfloat_with_epsilon (f.h_active_s, 52.86e-6, 0.1e-6);
}

/* A set with one rate gets it: 78.125 kHz at 72 Hz is 1085 lines (78125 / 72 = 1085.07), whatever the
 * margins; so does one whose plate gives a narrow range around it. */
static void
test_fixed_frequency (void)
{
  static const BwRange line_rates[] = { { 78125, 78125 }, { 77.8e3, 78.45e3 } };
  for (gsize i = 0; i < G_N_ELEMENTS (line_rates); i++)
    {
      g_autoptr (BwMonitor) monitor = bw_monitor_new ();
      Case c = { monitor, &demo_sheet ()->limits, { 1280, 1024, { 72, 1 }, FALSE } };
      monitor->line_rates_hz = (BwBands){ 1, { line_rates[i] } };
      monitor->field_rates_hz = (BwBands){ 1, { { 71, 73 } } };
      monitor->line_retrace_s = 2.6e-6;
      monitor->field_retrace_s = 500e-6;
      monitor->overscan_h = monitor->overscan_v = 0;
      g_autoptr (GPtrArray) answers = make_all (&c, bw_test_catalogue (), NULL);
      g_assert_nonnull (answers);
      if (answers == NULL)
        continue;
      const BwRaster *raster = ((BwTubeAnswer *) answers->pdata[0])->raster;
      BwRasterFigures f;
      bw_raster_figures (raster, &f);
      g_assert_cmpint (f.lines_per_frame, ==, 1085);
      g_assert_cmpfloat_with_epsilon (f.line_rate_hz, 78125, 1e-6);
      assert_judged (&c, raster, BW_SEVERITY_TIGHT);
    }
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
  g_autoptr (BwRaster) raster = make (&c, NULL);
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
  /* 1.5, 4.7 and 5.8 of 64 leave 52 of 64 for 320 px: the line is 393.85 px. Of that the front porch is
   * 9.23, sync 28.92 and the back porch 35.69 px. The retrace leaves more: 55.1 of 65.1 us. */
  g_assert_cmpint (f.h_total, ==, 320 + 9 + 29 + 36);
}

/* A margin of a tenth on the line rate moves the lowest rate from 15 to 16.5 kHz: 275 lines. */
static void
test_margin_by_hand (void)
{
  g_autoptr (BwMonitor) monitor = simple_monitor ();
  BwLimits tenth = { .line_rate = 0.1 };
  Case c = { monitor, &tenth, { 320, 240, { 60, 1 }, FALSE } };
  g_autoptr (BwRaster) raster = make (&c, NULL);
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
      g_autoptr (BwRaster) raster = make (&c, NULL);
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

  g_assert_null (make (&c, &error));
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
      g_autoptr (BwRaster) raster = make (&c, &error);
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
      g_autofree char *lowest = g_strconcat (path, "/lowest", NULL);
      g_test_add_data_func_full (lowest, g_memdup2 (c, sizeof *c), test_lowest, g_free);
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
  for (gsize i = 0; i < G_N_ELEMENTS (standards); i++)
    {
      g_autofree char *path = g_strdup_printf ("/tube-raster/standard/%s/%dx%d%s",
                                               standards[i].monitor, standards[i].wish.width,
                                               standards[i].wish.height,
                                               standards[i].wish.interlaced ? "i" : "");
      g_test_add_data_func (path, &standards[i], test_standard);
    }
  g_test_add_func ("/tube-raster/lowest-clock", test_lowest_clock);
  g_test_add_func ("/tube-raster/clock-step", test_clock_step);
  g_test_add_func ("/tube-raster/highest-clock", test_highest_clock);
  g_test_add_func ("/tube-raster/no-interlace", test_no_interlace);
  g_test_add_func ("/tube-raster/overscan", test_overscan);
  g_test_add_func ("/tube-raster/fixed-frequency", test_fixed_frequency);
  g_test_add_func ("/tube-raster/by-hand", test_by_hand);
  g_test_add_func ("/tube-raster/margin-by-hand", test_margin_by_hand);
  g_test_add_func ("/tube-raster/quick-retrace", test_quick_retrace);
  g_test_add_func ("/tube-raster/long-rates", test_long_rates);
  return g_test_run ();
}
