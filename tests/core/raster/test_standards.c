/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/raster/standards.h"

#include <math.h>
#include <string.h>

#include "properties.h"
#include "support.h"

/* Rasters by formula against tests/reference/computed.tsv, the hard cases by name, and requests
 * as text. The tools are compared in test_standards-sweep.c. */

/* Rates are printed with 6 decimals: right to half of the last, and a little for the double. */
#define RATE_ROUNDING_HZ 0.51e-6

static BwFormulaRequest
request_of (const char *text)
{
  BwFormulaRequest request = { 0 };
  g_autoptr (GError) error = NULL;
  if (!bw_formula_request_parse (text, &request, &error))
    g_error ("%s", error->message);
  return request;
}

static void
assert_refused (BwRaster *raster, const GError *error, BwStandardsError code)
{
  g_assert_null (raster);
  g_assert_error (error, BW_STANDARDS_ERROR, (int) code);
  g_assert_true (error != NULL && g_utf8_validate (error->message, -1, NULL));
}

/* The published table */

static gboolean
says_yes (const BwTable *table, guint row, const char *head)
{
  const char *cell = bw_test_cell (table, row, head);
  g_assert_true (strcmp (cell, "yes") == 0 || strcmp (cell, "no") == 0);
  return strcmp (cell, "yes") == 0;
}

static BwRaster *
compute_row (const BwTable *table, guint row, GError **error)
{
  const char *given = bw_test_cell (table, row, "given");
  BwRatio value = { (gint64) bw_test_number (table, row, "value"), 1 };
  BwFormulaRequest request = {
    .width = (int) bw_test_number (table, row, "width"),
    .height = (int) bw_test_number (table, row, "height"),
    .reduced = says_yes (table, row, "reduced"),
    .interlaced = says_yes (table, row, "interlaced"),
    .margins = says_yes (table, row, "margins"),
  };

  if (strcmp (given, "line_rate_hz") == 0)
    return bw_standards_gtf_line_rate (&request, value, error);
  if (strcmp (given, "pixel_clock_hz") == 0)
    return bw_standards_gtf_pixel_clock (&request, value, error);
  g_assert_cmpstr (given, ==, "field_rate_hz");
  request.field_rate_hz = value;
  if (strcmp (bw_test_cell (table, row, "formula"), "gtf") == 0)
    return bw_standards_gtf (&request, error);
  return bw_standards_cvt (&request, error);
}

static void
assert_cell (const BwTable *table, guint row, const char *head, double have, double tolerance)
{
  double published = bw_test_number (table, row, head);
  if (fabs (have - published) <= tolerance)
    return;
  g_test_message ("%s: %.9g is published, %.9g was computed", head, published, have);
  g_test_fail ();
}

static void
assert_count (const BwTable *table, guint row, const char *head, double have)
{
  assert_cell (table, row, head, have, 0);
}

static void
assert_field (const BwTable *table, guint row, const BwFieldTiming *field, const char *suffix)
{
  const struct
  {
    const char *head;
    int half_lines;
  } parts[] = {
    { "v_front_porch", field->front_porch },
    { "v_sync", field->sync },
    { "v_back_porch", field->back_porch },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (parts); i++)
    {
      g_autofree char *head = g_strconcat (parts[i].head, suffix, NULL);
      assert_count (table, row, head, parts[i].half_lines / 2.0);
    }
}

static void
assert_row (const BwTable *table, guint row, const BwRaster *raster)
{
  BwRasterFigures f;
  bw_raster_figures (raster, &f);

  g_assert_cmpint (raster->pixel_clock_hz.den, ==, 1);
  assert_count (table, row, "pixel_clock_hz", (double) raster->pixel_clock_hz.num);
  assert_count (table, row, "h_active", raster->h_active);
  assert_count (table, row, "h_border", raster->h_border);
  assert_count (table, row, "h_front_porch", raster->h_front_porch);
  assert_count (table, row, "h_sync", raster->h_sync);
  assert_count (table, row, "h_back_porch", raster->h_back_porch);
  assert_count (table, row, "h_total", f.h_total);
  assert_count (table, row, "v_active", f.active_lines_frame);
  assert_count (table, row, "v_border", raster->v_border);
  assert_field (table, row, &raster->field[0], "");
  if (says_yes (table, row, "interlaced"))
    assert_field (table, row, &raster->field[1], "_f2");
  assert_count (table, row, "v_total", f.lines_per_frame);
  g_assert_cmpstr (bw_kind_id (&bw_polarities, raster->h_polarity), ==,
                   bw_test_cell (table, row, "h_pol"));
  g_assert_cmpstr (bw_kind_id (&bw_polarities, raster->v_polarity), ==,
                   bw_test_cell (table, row, "v_pol"));
  g_assert_cmpint (raster->scan == BW_SCAN_INTERLACED, ==, says_yes (table, row, "interlaced"));
  assert_cell (table, row, "line_rate_hz", f.line_rate_hz, RATE_ROUNDING_HZ);
  assert_cell (table, row, "field_rate_hz", f.field_rate_hz, RATE_ROUNDING_HZ);
}

typedef struct
{
  const BwTable *table;
  guint row;
} RowCase;

static void
test_row (gconstpointer data)
{
  const RowCase *c = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (BwRaster) raster = compute_row (c->table, c->row, &error);

  /* A porch below zero stands in the table as the formula gives it, and must be refused. */
  if (bw_test_number (c->table, c->row, "h_front_porch") < 0)
    {
      assert_refused (raster, error, BW_STANDARDS_ERROR_NOT_REALISABLE);
      bw_test_assert_words (error->message, WORDS ("front porch", "negative"));
      return;
    }
  g_assert_no_error (error);
  if (raster != NULL)
    assert_row (c->table, c->row, raster);
}

/* Rows in dispute are there in pairs or beside a note; nothing is asked of them but that the
 * figures which no source disputes come out. */
static void
test_disputed_row (gconstpointer data)
{
  const RowCase *c = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (BwRaster) raster = compute_row (c->table, c->row, &error);

  g_assert_no_error (error);
  if (raster == NULL)
    return;
  assert_count (c->table, c->row, "h_active", raster->h_active);
  assert_count (c->table, c->row, "h_front_porch", raster->h_front_porch);
  assert_count (c->table, c->row, "h_sync", raster->h_sync);
  assert_count (c->table, c->row, "h_back_porch", raster->h_back_porch);
  assert_count (c->table, c->row, "v_front_porch", raster->field[0].front_porch / 2.0);
}

static void
add_rows (const BwTable *table)
{
  for (guint i = 0; i < table->rows->len; i++)
    {
      gboolean disputed = strcmp (bw_test_cell (table, i, "status"), "disputed") == 0;
      g_autofree char *path = g_strdup_printf ("/standards/%s/%s",
                                               disputed ? "disputed" : "published",
                                               bw_test_cell (table, i, "id"));
      RowCase *c = g_new (RowCase, 1);
      *c = (RowCase){ table, i };
      g_test_add_data_func_full (path, c, disputed ? test_disputed_row : test_row, g_free);
    }
}

/* So that rows do not quietly go, or move to where nothing is asked of them. */
static void
test_table_whole (gconstpointer data)
{
  const BwTable *table = data;
  guint disputed = 0;
  for (guint i = 0; i < table->rows->len; i++)
    disputed += strcmp (bw_test_cell (table, i, "status"), "disputed") == 0;
  g_assert_cmpuint (table->rows->len, >=, 59);
  g_assert_cmpuint (disputed, <=, 9);
}

/* Hard cases: each is where a careless formula goes wrong. */

typedef struct
{
  const char *name;
  const char *request;
  gboolean gtf;
  BwRatio pixel_clock_hz;
  int h[4]; /* active, front porch, sync, back porch */
  int h_total;
  double v[3]; /* front porch, sync, back porch of field 1 */
  int v_total;
  double field_rate_hz; /* to 6 decimals */
} HardCase;

static const HardCase hard_cases[] = {
  /* VESA DMT v1.0 rev. 13, id 0x28 */
  { "4-aspect-in-whole-cells",
    "1360x768@120,reduced",
    FALSE,
    { 148250000, 1 },
    { 1360, 48, 32, 80 },
    1520,
    { 3, 5, 37 },
    813,
    119.96666 },
  /* VESA DMT id 0x17 */
  { "5-fifteen-to-nine",
    "1280x768@60",
    FALSE,
    { 79500000, 1 },
    { 1280, 64, 128, 192 },
    1664,
    { 3, 7, 20 },
    798,
    59.870228 },
  /* VESA CVT 1.2, worked by edid-decode, libdisplay-info and in exact fractions; from here on
   * where no other source is named */
  { "6-sync-of-whole-cells",
    "640x480@60",
    FALSE,
    { 23750000, 1 },
    { 640, 16, 64, 80 },
    800,
    { 3, 4, 13 },
    500,
    59.375 },
  { "7-reduced-clock-from-the-total",
    "800x600@85,reduced",
    FALSE,
    { 51000000, 1 },
    { 800, 48, 32, 80 },
    960,
    { 3, 4, 18 },
    625,
    85 },
  { "8-interlaced-total-is-odd",
    "1920x1080@60,interlaced",
    FALSE,
    { 82000000, 1 },
    { 1920, 64, 192, 256 },
    2432,
    { 3, 5, 14 },
    1125,
    59.941520 },
  /* VESA GTF 1.1 */
  { "9-lowest-that-works",
    "512x384@60",
    TRUE,
    { 14901120, 1 },
    { 512, 8, 48, 56 },
    624,
    { 1, 3, 10 },
    398,
    60 },
};

static void
test_hard_case (gconstpointer data)
{
  const HardCase *c = data;
  BwFormulaRequest request = request_of (c->request);
  g_autoptr (GError) error = NULL;
  g_autoptr (BwRaster) raster = c->gtf ? bw_standards_gtf (&request, &error)
                                       : bw_standards_cvt (&request, &error);
  const int h[] = { raster->h_active, raster->h_front_porch, raster->h_sync, raster->h_back_porch };
  const BwFieldTiming *field = &raster->field[0];
  BwRasterFigures f;

  g_assert_no_error (error);
  bw_raster_figures (raster, &f);
  g_assert_cmpint (bw_ratio_compare (raster->pixel_clock_hz, c->pixel_clock_hz), ==, 0);
  g_assert_cmpmem (h, sizeof h, c->h, sizeof c->h);
  g_assert_cmpint (f.h_total, ==, c->h_total);
  g_assert_cmpint (field->front_porch, ==, (int) (2 * c->v[0]));
  g_assert_cmpint (field->sync, ==, (int) (2 * c->v[1]));
  g_assert_cmpint (field->back_porch, ==, (int) (2 * c->v[2]));
  g_assert_cmpint (f.lines_per_frame, ==, c->v_total);
  g_assert_cmpfloat_with_epsilon (f.field_rate_hz, c->field_rate_hz, RATE_ROUNDING_HZ);
}

/* Hard case 8: the second field has 3.5, 5 and 14.5 lines, and 60 are fields, not frames. */
static void
test_second_field (void)
{
  BwFormulaRequest request = request_of ("1920x1080@60,interlaced");
  g_autoptr (BwRaster) raster = bw_standards_cvt (&request, NULL);
  g_assert_cmpint (raster->field[1].front_porch, ==, 7);
  g_assert_cmpint (raster->field[1].sync, ==, 10);
  g_assert_cmpint (raster->field[1].back_porch, ==, 29);
  g_assert_cmpint (raster->field[0].active + raster->field[1].active, ==, 2 * 1080);
}

/* Hard case 9: the formula gives front porches of −16, −8 and −24 pixels. */
static void
test_negative_porch (gconstpointer data)
{
  BwFormulaRequest request = request_of (data);
  g_autoptr (GError) error = NULL;
  BwRaster *raster = bw_standards_gtf (&request, &error);
  assert_refused (raster, error, BW_STANDARDS_ERROR_NOT_REALISABLE);
  bw_test_assert_words (error->message, WORDS ("GTF", "front porch", "negative"));
}

/* Hard case 10: CVT floors to whole cells and lines, GTF rounds to the nearest. */
static void
test_rounding_rules (void)
{
  const struct
  {
    const char *request;
    int cvt[3]; /* active pixels, border pixels, border lines */
    int gtf[3];
  } cases[] = {
    { "1366x768@60", { 1360, 0, 0 }, { 1368, 0, 0 } },
    { "1024x768@60,margins", { 1024, 16, 13 }, { 1024, 16, 14 } },
    { "800x600@75,margins", { 800, 8, 10 }, { 800, 16, 11 } },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      BwFormulaRequest request = request_of (cases[i].request);
      g_autoptr (BwRaster) cvt = bw_standards_cvt (&request, NULL);
      g_autoptr (BwRaster) gtf = bw_standards_gtf (&request, NULL);
      const int have_cvt[] = { cvt->h_active, cvt->h_border, cvt->v_border };
      const int have_gtf[] = { gtf->h_active, gtf->h_border, gtf->v_border };
      g_assert_cmpmem (have_cvt, sizeof have_cvt, cases[i].cvt, sizeof cases[i].cvt);
      g_assert_cmpmem (have_gtf, sizeof have_gtf, cases[i].gtf, sizeof cases[i].gtf);
    }
}

/* Refusals */

static void
assert_request_refused (const char *text)
{
  BwFormulaRequest request = request_of (text);
  g_autoptr (GError) cvt_error = NULL;
  g_autoptr (GError) gtf_error = NULL;
  BwRaster *cvt = bw_standards_cvt (&request, &cvt_error);
  BwRaster *gtf = bw_standards_gtf (&request, &gtf_error);
  assert_refused (cvt, cvt_error, BW_STANDARDS_ERROR_REQUEST);
  assert_refused (gtf, gtf_error, BW_STANDARDS_ERROR_REQUEST);
}

/* The limits are the program's own: 64 to 8192 and 10 Hz to 400 Hz, as standards.h says. */
static void
test_request_limits (void)
{
  static const char *const beyond[] = {
    "63x480@60",     "8193x480@60", "640x63@60",   "640x8193@60",    "640x480@9.99",
    "640x480@400.1", "640x480@0",   "640x480@-60", "640x480@60 MHz",
  };
  for (gsize i = 0; i < G_N_ELEMENTS (beyond); i++)
    assert_request_refused (beyond[i]);

  /* 80 pixels and 66 lines at 10 Hz would be 53 kHz, and CVT rounds its clock down to 0.25 MHz. */
  static const char *const within[] = { "64x64@10", "8192x8192@60", "8192x64@400" };
  for (gsize i = 0; i < G_N_ELEMENTS (within); i++)
    {
      BwFormulaRequest request = request_of (within[i]);
      g_autoptr (GError) error = NULL;
      g_autoptr (BwRaster) raster = bw_standards_cvt (&request, &error);
      if (i == 0)
        assert_refused (raster, error, BW_STANDARDS_ERROR_NOT_REALISABLE);
      else
        g_assert_no_error (error);
    }
}

/* A line rate or clock that no raster has is refused, not carried into the arithmetic. */
static void
test_odd_rates (void)
{
  const BwRatio odd[] = {
    BW_RATIO_NONE, { -64000, 1 }, { 1, 1 }, { 1, G_MAXINT64 }, { G_MAXINT64, 1 }
  };
  BwFormulaRequest request = request_of ("640x480@60");
  for (gsize i = 0; i < G_N_ELEMENTS (odd); i++)
    {
      GError *line_error = NULL;
      GError *clock_error = NULL;
      g_assert_null (bw_standards_gtf_line_rate (&request, odd[i], &line_error));
      g_assert_null (bw_standards_gtf_pixel_clock (&request, odd[i], &clock_error));
      g_assert_true (line_error != NULL && line_error->domain == BW_STANDARDS_ERROR);
      g_assert_true (clock_error != NULL && clock_error->domain == BW_STANDARDS_ERROR);
      g_clear_error (&line_error);
      g_clear_error (&clock_error);
    }
}

/* From 1 kHz to less than 1 MHz a line, from 100 kHz to less than 10 GHz a pixel: what is
 * inside may have no raster, but not for its rate. Rates have at most eight decimals. */
static void
test_rate_limits (void)
{
  typedef BwRaster *(*FromRate) (const BwFormulaRequest *, BwRatio, GError **);
  static const struct
  {
    FromRate make;
    BwRatio rate_hz;
    gboolean allowed;
  } cases[] = {
    { bw_standards_gtf_line_rate, { 999, 1 }, FALSE },
    { bw_standards_gtf_line_rate, { 1000, 1 }, TRUE },
    { bw_standards_gtf_line_rate, { 999999, 1 }, TRUE },
    { bw_standards_gtf_line_rate, { 1000000, 1 }, FALSE },
    { bw_standards_gtf_line_rate, { 5000000, 1 }, FALSE },
    { bw_standards_gtf_line_rate, { 3150000000001, 100000000 }, TRUE },
    { bw_standards_gtf_line_rate, { 31500000000001, 1000000000 }, FALSE },
    { bw_standards_gtf_pixel_clock, { 99999, 1 }, FALSE },
    { bw_standards_gtf_pixel_clock, { 100000, 1 }, TRUE },
    { bw_standards_gtf_pixel_clock, { 9999999999, 1 }, TRUE },
    { bw_standards_gtf_pixel_clock, { 10000000000, 1 }, FALSE },
    { bw_standards_gtf_pixel_clock, { 50000000000, 1 }, FALSE },
  };
  const BwFormulaRequest request = request_of ("640x480@60");
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (BwRaster) raster = cases[i].make (&request, cases[i].rate_hz, &error);
      gboolean refused = g_error_matches (error, BW_STANDARDS_ERROR, BW_STANDARDS_ERROR_REQUEST);
      if (refused == cases[i].allowed)
        g_test_fail_printf ("case %" G_GSIZE_FORMAT ": %s", i, error != NULL ? error->message : "");
    }
}

/* Properties */

static BwFormulaRequest
random_request (GRand *rand)
{
  BwRatio rate;
  bw_ratio_make (g_rand_int_range (rand, 20000, 200000), g_rand_boolean (rand) ? 1000 : 1001,
                 &rate);
  return (BwFormulaRequest){
    .width = g_rand_int_range (rand, BW_FORMULA_SIZE_MIN, 3000),
    .height = g_rand_int_range (rand, BW_FORMULA_SIZE_MIN, 2200),
    .field_rate_hz = rate,
    .interlaced = g_rand_boolean (rand),
    .reduced = g_rand_boolean (rand),
    .margins = g_rand_boolean (rand),
  };
}

static void
assert_sound (const BwRaster *raster)
{
  g_autofree char *fault = bw_property_raster (raster);
  if (fault == NULL)
    return;
  g_test_message ("%s: %s", raster->name, fault);
  g_test_fail ();
}

/* VESA CVT: the clock is a whole number of 0.25 MHz steps and never above what was asked for; the
 * width is in cells of eight pixels. */
static void
assert_cvt (const BwRaster *raster, const BwFormulaRequest *request)
{
  BwRatio rate_hz;
  assert_sound (raster);
  g_assert_cmpint (raster->pixel_clock_hz.den, ==, 1);
  g_assert_cmpint (raster->pixel_clock_hz.num % 250000, ==, 0);
  g_assert_cmpint (raster->h_active, ==, request->width - request->width % 8);
  g_assert_true (bw_raster_field_rate (raster, &rate_hz));
  if (request->reduced)
    g_assert_cmpint (bw_ratio_compare (rate_hz, request->field_rate_hz), <=, 0);
}

/* VESA GTF: the field rate is the one asked for, exactly. */
static void
assert_gtf (const BwRaster *raster, const BwFormulaRequest *request)
{
  BwRatio rate_hz;
  assert_sound (raster);
  g_assert_true (bw_raster_field_rate (raster, &rate_hz));
  g_assert_cmpint (bw_ratio_compare (rate_hz, request->field_rate_hz), ==, 0);
}

static void
test_random (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (31469);
  guint computed = 0;
  for (guint i = 0; i < 20000; i++)
    {
      BwFormulaRequest request = random_request (rand);
      g_autoptr (GError) cvt_error = NULL;
      g_autoptr (GError) gtf_error = NULL;
      g_autoptr (BwRaster) cvt = bw_standards_cvt (&request, &cvt_error);
      g_autoptr (BwRaster) gtf = bw_standards_gtf (&request, &gtf_error);
      if (cvt != NULL)
        assert_cvt (cvt, &request);
      else
        g_assert_error (cvt_error, BW_STANDARDS_ERROR, BW_STANDARDS_ERROR_NOT_REALISABLE);
      if (gtf != NULL)
        assert_gtf (gtf, &request);
      else
        g_assert_error (gtf_error, BW_STANDARDS_ERROR, BW_STANDARDS_ERROR_NOT_REALISABLE);
      computed += (cvt != NULL) + (gtf != NULL);
    }
  g_assert_cmpuint (computed, >, 20000);
}

/* The figures alone are those of the raster that has names as well, and there is none where there is no raster. */
static void
assert_figures (const BwFormulaRequest *request, guint *made, guint *refused)
{
  BwRaster figures;
  g_autoptr (BwRaster) raster = bw_standards_cvt (request, NULL);
  gboolean well = bw_standards_cvt_figures (request, &figures, NULL);
  g_assert_cmpint (well, ==, raster != NULL);
  *made += well;
  *refused += !well;
  if (!well)
    return;
  g_assert_cmpint (figures.h_active, ==, raster->h_active);
  g_assert_cmpint (figures.h_front_porch, ==, raster->h_front_porch);
  g_assert_cmpint (figures.h_sync, ==, raster->h_sync);
  g_assert_cmpint (figures.h_back_porch, ==, raster->h_back_porch);
  g_assert_cmpint (bw_ratio_compare (figures.pixel_clock_hz, raster->pixel_clock_hz), ==, 0);
  g_assert_cmpint (figures.field[0].sync, ==, raster->field[0].sync);
  g_assert_cmpint (figures.field[0].back_porch, ==, raster->field[0].back_porch);
}

static void
test_figures (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (5);
  guint made = 0, refused = 0;
  for (int width = 64; width <= 128; width += 8)
    for (int height = 64; height <= 128; height += 16)
      for (int rate = 10; rate <= 200; rate += 30)
        {
          BwFormulaRequest request = { .width = width, .height = height, .field_rate_hz = { rate, 1 } };
          assert_figures (&request, &made, &refused);
        }
  for (int i = 0; i < 300; i++)
    {
      BwFormulaRequest request = random_request (rand);
      assert_figures (&request, &made, &refused);
    }
  g_assert_cmpuint (made, >, 100);
  g_assert_cmpuint (refused, >, 10);
}

/* Requests as text */

typedef struct
{
  const char *text;
  BwFormulaRequest request;
} ParseCase;

static const ParseCase good_texts[] = {
  { "640x480@60", { 640, 480, { 60, 1 }, FALSE, FALSE, FALSE } },
  { "640x480@59.94", { 640, 480, { 2997, 50 }, FALSE, FALSE, FALSE } },
  { "720x480@60 Hz * 1000 / 1001", { 720, 480, { 60000, 1001 }, FALSE, FALSE, FALSE } },
  { "1920x1080@60,interlaced", { 1920, 1080, { 60, 1 }, TRUE, FALSE, FALSE } },
  { "1280x768@75,reduced,margins", { 1280, 768, { 75, 1 }, FALSE, TRUE, TRUE } },
  { "1024x768@0.087 kHz, margins, interlaced, reduced",
    { 1024, 768, { 87, 1 }, TRUE, TRUE, TRUE } },
};

static void
test_good_text (gconstpointer data)
{
  const ParseCase *c = data;
  BwFormulaRequest request = request_of (c->text);
  g_assert_cmpint (request.width, ==, c->request.width);
  g_assert_cmpint (request.height, ==, c->request.height);
  g_assert_cmpint (bw_ratio_compare (request.field_rate_hz, c->request.field_rate_hz), ==, 0);
  g_assert_cmpint (request.interlaced, ==, c->request.interlaced);
  g_assert_cmpint (request.reduced, ==, c->request.reduced);
  g_assert_cmpint (request.margins, ==, c->request.margins);
}

static const char *const bad_texts[] = {
  "",
  "@",
  "x@",
  ",",
  "640",
  "640x480",
  "640x480@",
  "@60",
  "x480@60",
  "640x@60",
  "640x480@,reduced",
  "0x480@60",
  "640x0@60",
  "-640x480@60",
  "640x-480@60",
  "640.5x480@60",
  "640X480@60",
  "640x480x24@60",
  "640x480@60@60",
  "640x480@sixty",
  "640x480@60 V",
  "640x480@60 Hz / 0",
  "640x480@60,",
  "640x480@60,,reduced",
  "640x480@60,Reduced",
  "640x480@60,fast",
  "640x480@60 reduced",
  "99999999999999999999x480@60",
  "640x4294967776@60",
  "640x480@nan",
  "640x480@1e400",
  "640x480@60,59",
  "640x480@\xff",
  "\xc3(x480@60",
  "640x 480@60",
};

/* The message quotes the text and gives a text that would do; the request stays as it was. */
static void
test_bad_text (gconstpointer data)
{
  const char *text = data;
  BwFormulaRequest request = { 12, 34, { 5, 6 }, TRUE, FALSE, TRUE };
  g_autoptr (GError) error = NULL;

  g_assert_false (bw_formula_request_parse (text, &request, &error));
  g_assert_error (error, BW_STANDARDS_ERROR, BW_STANDARDS_ERROR_REQUEST);
  g_assert_true (error != NULL && g_utf8_validate (error->message, -1, NULL));
  if (g_utf8_validate (text, -1, NULL))
    bw_test_assert_words (error->message, WORDS (text, "WIDTHxHEIGHT@RATE", "640x480@60"));
  g_assert_cmpint (request.width, ==, 12);
  g_assert_cmpint (request.height, ==, 34);
  g_assert_cmpint (request.field_rate_hz.num, ==, 5);
  g_assert_true (request.interlaced && !request.reduced && request.margins);
}

static void
add_texts (void)
{
  static const char *const negative[] = { "320x240@60", "384x288@50", "720x576@50,interlaced" };
  for (gsize i = 0; i < G_N_ELEMENTS (negative); i++)
    {
      g_autofree char *path = g_strconcat ("/standards/hard-case/9-negative-porch/", negative[i],
                                           NULL);
      g_test_add_data_func (path, negative[i], test_negative_porch);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (good_texts); i++)
    {
      g_autofree char *path = g_strdup_printf ("/standards/text/good/%" G_GSIZE_FORMAT, i + 1);
      g_test_add_data_func (path, &good_texts[i], test_good_text);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (bad_texts); i++)
    {
      g_autofree char *word = bw_test_path_word (bad_texts[i]);
      g_autofree char *path = g_strdup_printf ("/standards/text/bad/%" G_GSIZE_FORMAT "-%s", i + 1,
                                               word);
      g_test_add_data_func (path, bad_texts[i], test_bad_text);
    }
}

/* Eight decimals of a field rate are taken, nine are not: our own limit, as the message says. */
static void
test_decimals (void)
{
  BwFormulaRequest request = request_of ("640x480@60");
  g_autoptr (GError) error = NULL;
  request.field_rate_hz = (BwRatio){ 5994005994, 100000000 };
  g_autoptr (BwRaster) raster = bw_standards_cvt (&request, &error);
  g_assert_no_error (error);
  g_assert_nonnull (raster);
  request.field_rate_hz = (BwRatio){ 6000000061, 100000001 };
  BwRaster *refused = bw_standards_cvt (&request, &error);
  assert_refused (refused, error, BW_STANDARDS_ERROR_REQUEST);
}

/* Margins of 1.8 % of the picture, cut to whole lines (VESA CVT 1.1): of 500 lines 9, of 499 lines 8.98 and so 8. */
static void
test_margin_lines (void)
{
  static const struct
  {
    const char *text;
    int lines;
  } cases[] = { { "640x500@60,margins", 9 }, { "640x499@60,margins", 8 }, { "640x1000@60,margins", 18 } };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      BwFormulaRequest request = request_of (cases[i].text);
      g_autoptr (GError) error = NULL;
      g_autoptr (BwRaster) raster = bw_standards_cvt (&request, &error);
      g_assert_no_error (error);
      g_assert_cmpint (raster->v_border, ==, cases[i].lines);
    }
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  g_autoptr (BwTable) table = bw_test_table_new ("computed.tsv");

  add_rows (table);
  g_test_add_data_func ("/standards/published/table-whole", table, test_table_whole);
  for (gsize i = 0; i < G_N_ELEMENTS (hard_cases); i++)
    {
      g_autofree char *path = g_strconcat ("/standards/hard-case/", hard_cases[i].name, NULL);
      g_test_add_data_func (path, &hard_cases[i], test_hard_case);
    }
  g_test_add_func ("/standards/hard-case/8-second-field", test_second_field);
  g_test_add_func ("/standards/hard-case/10-rounding-rules", test_rounding_rules);
  add_texts ();
  g_test_add_func ("/standards/request-limits", test_request_limits);
  g_test_add_func ("/standards/odd-rates", test_odd_rates);
  g_test_add_func ("/standards/rate-limits", test_rate_limits);
  g_test_add_func ("/standards/figures", test_figures);
  g_test_add_func ("/standards/random", test_random);
  g_test_add_func ("/standards/decimals", test_decimals);
  g_test_add_func ("/standards/margin-lines", test_margin_lines);
  return g_test_run ();
}
