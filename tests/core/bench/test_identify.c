/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/bench/identify.h"

#include <math.h>
#include <string.h>

#include "support.h"

/* From what a counter and a scope read to a raster of the catalogue. */

#define ALL G_MAXUINT
#define RATE_NOISE 50e-6
#define SYNC_NOISE 0.01

static const BwCandidate *
candidate (const GArray *candidates, guint i)
{
  return &g_array_index (candidates, BwCandidate, i);
}

static const BwCandidate *
find (const GArray *candidates, const BwRaster *raster)
{
  for (guint i = 0; i < candidates->len; i++)
    if (candidate (candidates, i)->raster == raster)
      return candidate (candidates, i);
  return NULL;
}

/* What must hold of every answer. */
static void
assert_ranked (const GArray *candidates)
{
  double certainty = 0;
  for (guint i = 0; i < candidates->len; i++)
    {
      const BwCandidate *c = candidate (candidates, i);
      g_assert_true (c->score >= 0 && c->score <= 1);
      g_assert_true (c->certainty >= 0 && c->certainty <= 1 + 1e-12);
      g_assert_true (isfinite (c->line_rate_error_ppm) && isfinite (c->field_rate_error_ppm));
      g_assert_true (i == 0 || c->score <= candidate (candidates, i - 1)->score);
      certainty += c->same_as == NULL ? c->certainty : 0;
    }
  g_assert_cmpfloat (certainty, <=, 1 + 1e-9);
}

/* What a decider tells to read, and whether that differs between two rasters by as much as the
 * reading can show. */

typedef struct
{
  const char *words; /* of the decider */
  gboolean (*differs) (const BwRaster *a, const BwRasterFigures *fa, const BwRaster *b,
                       const BwRasterFigures *fb);
} Property;

static gboolean
apart (double a, double b, double share)
{
  return fabs (a - b) > share * MAX (fabs (a), fabs (b));
}

#define DIFFERS(name, expression)                                                                  \
  static gboolean name (const BwRaster *a G_GNUC_UNUSED, const BwRasterFigures *fa G_GNUC_UNUSED,  \
                        const BwRaster *b G_GNUC_UNUSED, const BwRasterFigures *fb G_GNUC_UNUSED)  \
  {                                                                                                \
    return (expression);                                                                           \
  }

DIFFERS (line_count, fabs (fa->lines_per_field - fb->lines_per_field) > 0.4)
DIFFERS (field_rate, apart (fa->field_rate_hz, fb->field_rate_hz, 3e-6))
DIFFERS (line_rate, apart (fa->line_rate_hz, fb->line_rate_hz, 3e-6))
DIFFERS (sync_shape, a->sync_shape != b->sync_shape)
DIFFERS (polarity, a->h_polarity != b->h_polarity || a->v_polarity != b->v_polarity)
DIFFERS (field_sync, a->field[0].sync != b->field[0].sync)
DIFFERS (line_sync, apart (fa->h_sync_s, fb->h_sync_s, 0.01))
DIFFERS (equalising, (a->equalising_before > 0) != (b->equalising_before > 0))
DIFFERS (sync_to_picture,
         apart (fa->h_sync_s - fa->h_datum_s + fa->h_back_porch_s + fa->h_border_s,
                fb->h_sync_s - fb->h_datum_s + fb->h_back_porch_s + fb->h_border_s, 0.003)
             || apart (fa->h_active_s, fb->h_active_s, 0.003))
DIFFERS (picture_lines, a->field[0].active != b->field[0].active)

static const Property properties[] = {
  { "count the lines of a field", line_count },
  { "field rate", field_rate },
  { "line rate", line_rate },
  { "shape of sync", sync_shape },
  { "polarity", polarity },
  { "lines of field sync", field_sync },
  { "width of line sync", line_sync },
  { "equalising pulses", equalising },
  { "from sync to the picture", sync_to_picture },
  { "picture's lines", picture_lines },
};

static const Property *
property_named (const char *decider)
{
  for (gsize i = 0; i < G_N_ELEMENTS (properties); i++)
    if (strstr (decider, properties[i].words) != NULL)
      return &properties[i];
  return NULL;
}

static gboolean
differ_in (const Property *property, const BwRaster *a, const BwRaster *b)
{
  BwRasterFigures fa, fb;
  bw_raster_figures (a, &fa);
  bw_raster_figures (b, &fb);
  return property->differs (a, &fa, b, &fb);
}

/* Whether anything that a bench can read differs. */
static gboolean
differ (const BwRaster *a, const BwRaster *b)
{
  for (gsize i = 0; i < G_N_ELEMENTS (properties); i++)
    if (differ_in (&properties[i], a, b))
      return TRUE;
  return FALSE;
}

/* The highest-ranked other candidate that is not the same on the wire. */
static const BwRaster *
rival_of (const GArray *candidates, guint which)
{
  const BwRaster *raster = candidate (candidates, which)->raster;
  for (guint i = 0; i < candidates->len; i++)
    if (i != which && differ (raster, candidate (candidates, i)->raster))
      return candidate (candidates, i)->raster;
  return NULL;
}

/* A candidate that has a rival has a decider, which names something that differs between them. */
static void
assert_deciders (const GArray *candidates)
{
  for (guint i = 0; i < candidates->len; i++)
    {
      const BwCandidate *c = candidate (candidates, i);
      const BwRaster *rival = rival_of (candidates, i);
      const Property *property = c->decider != NULL ? property_named (c->decider) : NULL;
      if (rival == NULL || (property != NULL && differ_in (property, c->raster, rival)))
        continue;
      g_test_message ("%s against %s: “%s”", c->raster->id, rival->id,
                      c->decider != NULL ? c->decider : "no decider");
      g_test_fail ();
    }
}

/* Two that are called the same must have nothing that a bench can read apart. */
static void
assert_same_as (const GArray *candidates)
{
  for (guint i = 0; i < candidates->len; i++)
    {
      const BwCandidate *c = candidate (candidates, i);
      if (c->same_as == NULL || !differ (c->raster, c->same_as))
        continue;
      for (gsize p = 0; p < G_N_ELEMENTS (properties); p++)
        if (differ_in (&properties[p], c->raster, c->same_as))
          g_test_message ("%s is called the same as %s, but not in: %s", c->raster->id,
                          c->same_as->id, properties[p].words);
      g_test_fail ();
    }
}

/* Every raster of the catalogue by its own readings */

typedef struct
{
  const BwRaster *raster;
  guint32 seed;
} RasterCase;

static BwReadings
readings_of (const BwRaster *raster, GRand *rand)
{
  BwRasterFigures f;
  bw_raster_figures (raster, &f);
  BwReadings readings = {
    .line_rate_hz = f.line_rate_hz,
    .field_rate_hz = f.field_rate_hz,
    .scan_known = TRUE,
    .scan = raster->scan,
    .line_sync_s = f.h_sync_s,
  };
  if (rand != NULL)
    {
      readings.line_rate_hz *= 1 + g_rand_double_range (rand, -RATE_NOISE, RATE_NOISE);
      readings.field_rate_hz *= 1 + g_rand_double_range (rand, -RATE_NOISE, RATE_NOISE);
      readings.line_sync_s *= 1 + g_rand_double_range (rand, -SYNC_NOISE, SYNC_NOISE);
    }
  return readings;
}

/* Whether every reading is within its noise of what @raster has: then nobody can say more. */
static gboolean
explains (const BwRaster *raster, const BwReadings *read, double rate_noise, double sync_noise)
{
  BwRasterFigures f;
  bw_raster_figures (raster, &f);
  return raster->scan == read->scan && !apart (f.line_rate_hz, read->line_rate_hz, rate_noise)
         && !apart (f.field_rate_hz, read->field_rate_hz, rate_noise)
         && !apart (f.h_sync_s, read->line_sync_s, sync_noise);
}

/* The raster itself or one that is the same on the wire comes first. Where the catalogue has a
 * second raster within the noise of every reading (13 in a million apart, or a sync less than 1 %
 * apart), that one may come first, and the decider must tell them apart. */
static void
assert_found (const BwRaster *raster, GRand *rand)
{
  BwReadings readings = readings_of (raster, rand);
  g_autoptr (GArray) candidates = bw_identify (&readings, bw_test_catalogue (), ALL);
  const BwCandidate *own = find (candidates, raster);
  double slack = rand != NULL ? 1 : 1e-6;

  g_assert_cmpuint (candidates->len, >, 0);
  g_assert_nonnull (own);
  if (own == NULL)
    return;
  const BwRaster *first = candidate (candidates, 0)->raster;
  assert_ranked (candidates);
  if (first == raster || own->same_as == first)
    return;
  g_assert_true (explains (first, &readings, RATE_NOISE * 1.01 * slack, SYNC_NOISE * 1.02 * slack));
  if (differ (first, raster))
    g_assert_nonnull (own->decider);
}

static void
test_own_readings (gconstpointer data)
{
  const RasterCase *c = data;
  g_autoptr (GRand) rand = g_rand_new_with_seed (c->seed);
  assert_found (c->raster, NULL);
  for (int i = 0; i < 5; i++)
    assert_found (c->raster, rand);
}

/* Every list of candidates that the catalogue's own rates give. */
static void
test_deciders (void)
{
  const GPtrArray *rasters = bw_catalogue_rasters (bw_test_catalogue ());
  for (guint i = 0; i < rasters->len; i++)
    {
      BwReadings readings = readings_of (rasters->pdata[i], NULL);
      readings.scan_known = FALSE;
      readings.line_sync_s = 0;
      g_autoptr (GArray) candidates = bw_identify (&readings, bw_test_catalogue (), ALL);
      assert_ranked (candidates);
      assert_deciders (candidates);
      assert_same_as (candidates);
      if (g_test_failed ())
        return;
    }
}

/* Facts of the trade */

typedef struct
{
  const char *name;
  double line_rate_hz;
  double field_rate_hz;
  BwScan scan;
  double lines_per_field;
  int active_lines; /* of the frame; zero: not asked for */
} Fact;

static const Fact facts[] = {
  /* ITU-R BT.470-6: systems B, G, I and others */
  { "625-50", 15625, 50, BW_SCAN_INTERLACED, 312.5, 0 },
  /* SMPTE 170M-2004 11.2, 11.3 */
  { "525-59.94", 15734, 59.94, BW_SCAN_INTERLACED, 262.5, 0 },
  /* ITU-R BT.470-6, system M in monochrome */
  { "525-60", 15750, 60.00, BW_SCAN_INTERLACED, 262.5, 0 },
  /* CTA-861-H formats 8 and 9: 15 734.27 Hz over 262 lines, 60.054 Hz */
  { "262-progressive", 15734, 60.05, BW_SCAN_PROGRESSIVE, 262, 240 },
  /* the same over 263 lines, 59.826 Hz */
  { "263-progressive", 15734, 59.826, BW_SCAN_PROGRESSIVE, 263, 240 },
  /* CTA-861-H formats 23 and 24: 15 625 Hz over 312 lines, 50.08 Hz */
  { "312-progressive", 15625, 50.08, BW_SCAN_PROGRESSIVE, 312, 288 },
  /* CTA-861-H formats 1, 2 and 3: 31.469 kHz, 59.94 Hz */
  { "525-progressive", 31469, 59.94, BW_SCAN_PROGRESSIVE, 525, 480 },
  /* CTA-861-H format 4 */
  { "750-progressive", 45000, 60, BW_SCAN_PROGRESSIVE, 750, 720 },
  /* CTA-861-H format 5 */
  { "1125-interlaced", 33750, 60, BW_SCAN_INTERLACED, 562.5, 1080 },
  /* VESA DMT id 0x0F */
  { "817-interlaced", 35522, 86.957, BW_SCAN_INTERLACED, 408.5, 768 },
};

static void
test_fact (gconstpointer data)
{
  const Fact *fact = data;
  BwReadings readings = { .line_rate_hz = fact->line_rate_hz,
                          .field_rate_hz = fact->field_rate_hz };
  g_autoptr (GArray) candidates = bw_identify (&readings, bw_test_catalogue (), ALL);
  BwRasterFigures f;

  g_assert_cmpfloat (bw_readings_lines_per_field (&readings), ==, fact->lines_per_field);
  g_assert_cmpuint (candidates->len, >, 0);
  if (candidates->len == 0)
    return;
  const BwCandidate *first = candidate (candidates, 0);
  bw_raster_figures (first->raster, &f);
  g_assert_cmpuint (first->raster->scan, ==, fact->scan);
  g_assert_cmpfloat (first->lines_per_field, ==, fact->lines_per_field);
  g_assert_cmpfloat (first->line_rate_error_ppm, ==,
                     (fact->line_rate_hz / f.line_rate_hz - 1) * 1e6);
  if (fact->active_lines != 0)
    g_assert_cmpfloat (f.active_lines_frame, ==, fact->active_lines);
  assert_ranked (candidates);
}

/* 59.94 Hz and 60 Hz are 1000 parts in a million apart: told apart unless the counter is poor. */
static void
test_tolerance (void)
{
  const BwCatalogue *catalogue = bw_test_catalogue ();
  const BwRaster *colour = bw_catalogue_raster (catalogue, "525-59.94-interlaced");
  const BwRaster *monochrome = bw_catalogue_raster (catalogue, "525-60-interlaced");
  BwReadings readings = { .line_rate_hz = 15750, .field_rate_hz = 60 };
  g_autoptr (GArray) fine = bw_identify (&readings, catalogue, ALL);
  readings.rate_tolerance = 2000e-6;
  g_autoptr (GArray) coarse = bw_identify (&readings, catalogue, ALL);

  g_assert_true (find (fine, monochrome) == candidate (fine, 0));
  g_assert_null (find (fine, colour));
  g_assert_nonnull (find (coarse, colour));
  assert_ranked (coarse);
}

/* The measure as it is stated: exp (−½ Σ (error/tolerance)²), worked for one raster. Off by 100 in
 * a million of 200, by 0.1 line of 0.25, by 2 % of sync of 5 %. */
static void
test_measure (void)
{
  const BwCatalogue *catalogue = bw_test_catalogue ();
  const BwRaster *raster = bw_catalogue_raster (catalogue, "625-50-interlaced");
  BwReadings readings = {
    .line_rate_hz = 15625 * (1 + 100e-6),
    .lines_per_field = 312.6,
    .line_sync_s = 4.7e-6 * 1.02,
  };
  g_autoptr (GArray) candidates = bw_identify (&readings, catalogue, ALL);
  const BwCandidate *c = find (candidates, raster);

  g_assert_nonnull (c);
  if (c == NULL)
    return;
  g_assert_cmpfloat_with_epsilon (c->score, exp (-(0.5 * 0.5 + 0.4 * 0.4 + 0.4 * 0.4) / 2), 1e-9);
  g_assert_cmpfloat_with_epsilon (c->line_rate_error_ppm, 100, 1e-6);
  g_assert_cmpfloat (c->field_rate_error_ppm, ==, 0); /* not read */
}

/* A counter alone leaves 1080 lines interlaced and its relatives; what else is read decides. */
static void
test_more_readings (void)
{
  const BwCatalogue *catalogue = bw_test_catalogue ();
  BwReadings readings = { .line_rate_hz = 45000, .field_rate_hz = 60, .shape_known = TRUE };
  readings.shape = BW_SHAPE_TRILEVEL;
  g_autoptr (GArray) three = bw_identify (&readings, catalogue, ALL);
  readings.shape = BW_SHAPE_BILEVEL;
  g_autoptr (GArray) two = bw_identify (&readings, catalogue, ALL);

  g_assert_cmpuint (candidate (three, 0)->raster->sync_shape, ==, BW_SHAPE_TRILEVEL);
  g_assert_cmpuint (candidate (two, 0)->raster->sync_shape, ==, BW_SHAPE_BILEVEL);

  BwReadings half = { .line_rate_hz = 31250, .field_rate_hz = 50, .field_sync_lines = 5 };
  half.scan_known = TRUE;
  half.scan = BW_SCAN_INTERLACED; /* CTA-861-H format 39: 1250 lines, even */
  g_autoptr (GArray) even = bw_identify (&half, catalogue, ALL);
  g_assert_cmpstr (candidate (even, 0)->raster->id, ==, "cta-861-vic-39");
}

static void
test_most (void)
{
  BwReadings readings = { .line_rate_hz = 31469, .field_rate_hz = 59.94 };
  g_autoptr (GArray) all = bw_identify (&readings, bw_test_catalogue (), ALL);
  g_autoptr (GArray) two = bw_identify (&readings, bw_test_catalogue (), 2);
  g_autoptr (GArray) none = bw_identify (&readings, bw_test_catalogue (), 0);

  g_assert_cmpuint (all->len, >, 2);
  g_assert_cmpuint (two->len, ==, 2);
  g_assert_cmpuint (none->len, ==, 0);
  for (guint i = 0; i < 2; i++)
    {
      g_assert_true (candidate (two, i)->raster == candidate (all, i)->raster);
      g_assert_cmpfloat (candidate (two, i)->certainty, ==, candidate (all, i)->certainty);
    }
}

/* Nothing agrees, or the readings are no readings: then the nearest are listed with how far they are
 * off, and none has a share; readings that are no numbers give an empty list. */
static void
test_nothing (void)
{
  const BwReadings odd[] = {
    { .line_rate_hz = 1e12 },
    { .line_rate_hz = 1e-12 },
    { .line_rate_hz = 22222, .field_rate_hz = 77 },
    { .line_rate_hz = 15300, .field_rate_hz = 55, .lines_per_field = 290 },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (odd); i++)
    {
      g_autoptr (GArray) candidates = bw_identify (&odd[i], bw_test_catalogue (), ALL);
      g_assert_cmpuint (candidates->len, >=, 5);
      g_assert_cmpfloat (candidate (candidates, 0)->score, <, BW_SCORE_POOR);
      g_assert_cmpfloat (fabs (candidate (candidates, 0)->line_rate_error_ppm), >, 1000);
      g_assert_true (isfinite (candidate (candidates, 0)->certainty));
    }
  const BwReadings infinite = { .line_rate_hz = INFINITY };
  g_autoptr (GArray) none = bw_identify (&infinite, bw_test_catalogue (), ALL);
  g_assert_cmpuint (none->len, ==, 0);
  BwReadings counted = { .line_rate_hz = 15625, .lines_per_field = 312 };
  g_assert_cmpfloat (bw_readings_lines_per_field (&counted), ==, 312);
  counted = (BwReadings){ .line_rate_hz = 15625 };
  g_assert_cmpfloat (bw_readings_lines_per_field (&counted), ==, 0);
}

/* Coarse readings, as a counter of three digits or a plate gives them: what comes first, and what else
 * agrees. Each by arithmetic: 4.5 MHz / 286 = 15.734 kHz over 262.5 or 262 lines is 59.94 or 60.05 Hz;
 * 15.625 kHz over 312.5, 312 or 313 lines is 50, 50.08 or 49.92 Hz; 33.75 kHz over 562.5 lines is
 * 60 Hz; 31.469 kHz over 525 and 449 lines is 59.94 and 70.09 Hz (the latter is common practice, no
 * source). */

typedef struct
{
  const char *name;
  const char *line_rate; /* as typed */
  const char *field_rate;
  struct
  {
    BwScan scan;
    double lines_per_field;
  } first[3]; /* in this order; zero lines: no more */
  const char *decider; /* what the next reading of the first must be about */
} CoarseCase;

#define P BW_SCAN_PROGRESSIVE
#define I BW_SCAN_INTERLACED

static const CoarseCase coarse_cases[] = {
  { "15.7-60.1", "15.7 kHz", "60.1 Hz", { { P, 262 } }, "lines of a field" },
  { "15.7-60", "15.7 kHz", "60 Hz", { { I, 262.5 }, { P, 262 } }, "lines of a field" },
  { "15.6-50", "15.6 kHz", "50 Hz", { { I, 312.5 }, { P, 312 }, { P, 313 } }, "lines of a field" },
  { "33.7-60", "33.7 kHz", "60 Hz", { { I, 562.5 } }, "field rate" },
  { "31.5-60", "31.5 kHz", "60 Hz", { { P, 525 } }, "field rate" },
  { "31.47-70", "31.47 kHz", "70 Hz", { { P, 449 } }, "polarity" },
};

static void
read_as (const char *text, double *rate_hz, double *uncertainty_hz)
{
  const BwReadAs as = { .mark = '.' };
  BwMeasured measured = { 0 };
  g_assert_true (bw_quantity_read (text, BW_DIMENSION_FREQUENCY, &as, &measured, NULL));
  *rate_hz = measured.value;
  *uncertainty_hz = measured.half_digit;
}

static void
test_coarse (gconstpointer data)
{
  const CoarseCase *c = data;
  BwReadings read = { 0 };
  read_as (c->line_rate, &read.line_rate_hz, &read.line_rate_uncertainty_hz);
  read_as (c->field_rate, &read.field_rate_hz, &read.field_rate_uncertainty_hz);
  g_autoptr (GArray) candidates = bw_identify (&read, bw_test_catalogue (), 6);

  for (guint i = 0; i < G_N_ELEMENTS (c->first) && c->first[i].lines_per_field > 0; i++)
    {
      const BwCandidate *one = candidate (candidates, i);
      g_assert_cmpuint (one->raster->scan, ==, c->first[i].scan);
      g_assert_cmpfloat (one->lines_per_field, ==, c->first[i].lines_per_field);
      g_assert_cmpfloat (one->score, ==, 1);
    }
  g_assert_cmpfloat (candidate (candidates, 0)->certainty, <, 0.95);
  g_assert_nonnull (candidate (candidates, 0)->decider);
  g_assert_nonnull (strstr (candidate (candidates, 0)->decider, c->decider));
}

/* Which rasters of a kind come first: that of broadcasting in its company, and both texts of 70 Hz. */
static void
test_ties (void)
{
  static const struct
  {
    const char *line_rate, *field_rate, *first, *among;
  } ties[] = {
    { "15.7 kHz", "60.1 Hz", "262-60.05-progressive", "cta-861-vic-8" },
    { "15.7 kHz", "60 Hz", "525-59.94-interlaced", "262-60.05-progressive" },
    { "31.5 kHz", "60 Hz", "525-59.94-progressive", "vesa-dmt-04" },
    { "31.47 kHz", "70 Hz", "computer-720x400-70", "computer-640x350-70" },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (ties); i++)
    {
      BwReadings read = { 0 };
      read_as (ties[i].line_rate, &read.line_rate_hz, &read.line_rate_uncertainty_hz);
      read_as (ties[i].field_rate, &read.field_rate_hz, &read.field_rate_uncertainty_hz);
      g_autoptr (GArray) all = bw_identify (&read, bw_test_catalogue (), ALL);
      const BwCandidate *among = find (all, bw_catalogue_raster (bw_test_catalogue (), ties[i].among));
      g_assert_cmpstr (candidate (all, 0)->raster->id, ==, ties[i].first);
      g_assert_nonnull (among);
      g_assert_cmpfloat (among != NULL ? among->score : 0, ==, 1);
    }
}

/* One reading never makes anything sure, however fine it is. */
static void
test_one_reading (void)
{
  const BwReadings alone[] = {
    { .field_rate_hz = 60.1, .field_rate_uncertainty_hz = 0.05 },
    { .field_rate_hz = 60.0985 },
    { .line_rate_hz = 24826.65 },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (alone); i++)
    {
      g_autoptr (GArray) candidates = bw_identify (&alone[i], bw_test_catalogue (), ALL);
      g_assert_false (bw_readings_decide (&alone[i]));
      g_assert_cmpfloat (candidate (candidates, 0)->certainty, <=, 0.5);
    }
}

/* 60 Hz ± 0.05 Hz is 0.0544 Hz from 60.0544: 0.0044 Hz beyond, in the root of the squares of 200
 * parts in a million of it and of half the half digit, 0.0277 Hz. */
static void
test_beyond_the_digits (void)
{
  const BwRaster *raster = bw_catalogue_raster (bw_test_catalogue (), "262-60.05-progressive");
  const double field_hz = 4.5e6 / 286 / 262;
  BwReadings read = { .field_rate_hz = 60, .field_rate_uncertainty_hz = 0.05 };
  double beyond = (field_hz - 60 - 0.05) / hypot (200e-6 * field_hz, 0.025);
  g_autoptr (GArray) candidates = bw_identify (&read, bw_test_catalogue (), ALL);
  const BwCandidate *one = find (candidates, raster);
  g_assert_nonnull (one);
  g_assert_cmpfloat_with_epsilon (one != NULL ? one->score : 0, exp (-beyond * beyond / 2), 1e-9);
}

static void
add_rasters (void)
{
  const GPtrArray *rasters = bw_catalogue_rasters (bw_test_catalogue ());
  for (guint i = 0; i < rasters->len; i++)
    {
      RasterCase *c = g_new (RasterCase, 1);
      *c = (RasterCase){ rasters->pdata[i], 1000 + i };
      g_autofree char *path = g_strconcat ("/identify/own-readings/", c->raster->id, NULL);
      g_test_add_data_func_full (path, c, test_own_readings, g_free);
    }
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  add_rasters ();
  for (gsize i = 0; i < G_N_ELEMENTS (facts); i++)
    {
      g_autofree char *path = g_strconcat ("/identify/fact/", facts[i].name, NULL);
      g_test_add_data_func (path, &facts[i], test_fact);
    }
  g_test_add_func ("/identify/deciders", test_deciders);
  g_test_add_func ("/identify/tolerance", test_tolerance);
  g_test_add_func ("/identify/measure", test_measure);
  g_test_add_func ("/identify/more-readings", test_more_readings);
  g_test_add_func ("/identify/most", test_most);
  for (gsize i = 0; i < G_N_ELEMENTS (coarse_cases); i++)
    {
      g_autofree char *path = g_strconcat ("/identify/coarse/", coarse_cases[i].name, NULL);
      g_test_add_data_func (path, &coarse_cases[i], test_coarse);
    }
  g_test_add_func ("/identify/ties", test_ties);
  g_test_add_func ("/identify/one-reading", test_one_reading);
  g_test_add_func ("/identify/beyond-the-digits", test_beyond_the_digits);
  g_test_add_func ("/identify/nothing", test_nothing);
  return g_test_run ();
}
