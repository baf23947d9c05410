/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/raster/raster.h"

#include <math.h>
#include <string.h>

#include "core/raster/colour-system.h"
#include "support.h"

static void
add (const char *group, const char *name, gconstpointer data, GTestDataFunc func)
{
  g_autofree char *word = bw_test_path_word (name);
  g_autofree char *path = g_strdup_printf ("/raster/%s/%s", group, word);
  g_test_add_data_func (path, data, func);
}

static const BwRaster *
shipped (const char *id)
{
  const BwRaster *raster = bw_catalogue_raster (bw_test_catalogue (), id);
  if (raster == NULL)
    {
      g_test_message ("there is no raster %s", id);
      g_test_fail ();
    }
  return raster;
}

/* Published intervals and rates: tests/reference/broadcast.tsv, whose rows name their standard */

static BwTable *broadcast;

/* The figures that a row is about, where the program has them. */
typedef struct
{
  const BwRaster *raster;
  BwRasterFigures f;
} Case;

static double
half_line_s (const Case *c)
{
  return c->f.line_period_s / 2;
}

static double
field_blanking_lines (const Case *c)
{
  const BwFieldTiming *field = &c->raster->field[0];
  return (field->front_porch + field->sync + field->back_porch) / 2.0;
}

/* SMPTE 170M-2004 table 3 counts 20 lines and the line's front porch; ITU-R BT.470-6 table 1-2, j,
 * 25 lines and the line's blanking. */
static double
field_blanking_s (const Case *c)
{
  gboolean lines_525 = c->f.lines_per_frame == 525;
  return c->f.v_blanking_s + (lines_525 ? c->f.h_front_porch_s : c->f.h_blanking_s);
}

static double
subcarrier_hz (const Case *c)
{
  BwColourSystem system = c->f.lines_per_frame == 525 ? BW_SYSTEM_NTSC_M : BW_SYSTEM_PAL_B;
  return bw_ratio_to_double (bw_system_facts (system)->subcarrier_hz);
}

static double
active_to_datum_s (const Case *c)
{
  return c->f.h_front_porch_s + c->f.h_datum_s;
}

static double
datum_to_active_s (const Case *c)
{
  return c->f.h_sync_s - c->f.h_datum_s + c->f.h_back_porch_s;
}

#define FIGURE(name, expression)                                                                   \
  static double figure_##name (const Case *c)                                                      \
  {                                                                                                \
    return expression;                                                                             \
  }

FIGURE (lines_per_frame, c->f.lines_per_frame)
FIGURE (line_rate, c->f.line_rate_hz)
FIGURE (line_period, c->f.line_period_s)
FIGURE (field_rate, c->f.field_rate_hz)
FIGURE (field_period, c->f.field_period_s)
FIGURE (frame_period, 1 / c->f.frame_rate_hz)
FIGURE (pixel_clock, c->f.pixel_clock_hz)
FIGURE (h_front_porch, c->f.h_front_porch_s)
FIGURE (h_sync, c->f.h_sync_s)
FIGURE (h_back_porch, c->f.h_back_porch_s)
FIGURE (h_blanking, c->f.h_blanking_s)
FIGURE (h_active, c->f.h_active_s)
FIGURE (equalising_width, c->raster->equalising_width_s)
FIGURE (serration_width, c->raster->serration_width_s)
FIGURE (broad_pulse_width, half_line_s (c) - c->raster->serration_width_s)
FIGURE (equalising_before, c->raster->equalising_before)
FIGURE (equalising_after, c->raster->equalising_after)
FIGURE (equalising_after_lines, c->raster->equalising_after / 2.0)
FIGURE (v_front_porch, c->raster->field[0].front_porch / 2.0)
FIGURE (v_sync, c->raster->field[0].sync / 2.0)
FIGURE (picture_lines, c->f.active_lines_frame)

static const struct
{
  const char *quantity;
  double (*figure) (const Case *c);
} figures[] = {
  { "lines_per_frame", figure_lines_per_frame },
  { "line_rate", figure_line_rate },
  { "line_period", figure_line_period },
  { "field_rate", figure_field_rate },
  { "field_period", figure_field_period },
  { "frame_period", figure_frame_period },
  { "pixel_clock", figure_pixel_clock },
  { "subcarrier", subcarrier_hz },
  { "h_front_porch", figure_h_front_porch },
  { "h_sync", figure_h_sync },
  { "h_back_porch", figure_h_back_porch },
  { "h_blanking", figure_h_blanking },
  { "h_active", figure_h_active },
  { "active_to_datum", active_to_datum_s },
  { "datum_to_active", datum_to_active_s },
  { "equalising_width", figure_equalising_width },
  { "serration_width", figure_serration_width },
  { "broad_pulse_width", figure_broad_pulse_width },
  { "equalising_before", figure_equalising_before },
  { "equalising_after", figure_equalising_after },
  { "equalising_after_lines", figure_equalising_after_lines },
  { "v_front_porch", figure_v_front_porch },
  { "v_sync", figure_v_sync },
  { "v_blanking_lines", field_blanking_lines },
  { "v_blanking", field_blanking_s },
  { "picture_lines_per_frame", figure_picture_lines },
};

/* What a raster does not hold: the colour burst and the slopes of edges. */
static const char *const not_in_a_raster[] = {
  "datum_to_burst",
  "breezeway",
  "burst_cycles",
  "burst_length",
  "sync_rise_time",
  "blanking_rise_time",
  "v_blanking_to_first_equalising",
};

/* How many of the row's unit make one of the program's. */
static double
scale_of (const char *unit, const Case *c)
{
  if (strcmp (unit, "us") == 0)
    return 1e6;
  if (strcmp (unit, "ms") == 0)
    return 1e3;
  return strcmp (unit, "clocks") == 0 ? c->f.pixel_clock_hz : 1;
}

/* The bounds of row @row. Without a tolerance a whole number is exact, and a decimal is right to
 * half of its last place. */
static void
bounds (guint row, double *low, double *high)
{
  const char *printed = bw_test_cell (broadcast, row, "value");
  const char *quantity = bw_test_cell (broadcast, row, "quantity");
  double value = g_ascii_strtod (printed, NULL);
  double half_place = strchr (printed, '.') != NULL ? bw_test_last_place (printed) / 2 : 0;
  gboolean tolerance = *bw_test_cell (broadcast, row, "plus") != '\0';

  *high = value + (tolerance ? bw_test_number (broadcast, row, "plus") : half_place);
  *low = value - (tolerance ? bw_test_number (broadcast, row, "minus") : half_place);
  if (g_str_has_suffix (quantity, "_min"))
    *high = INFINITY;
  if (g_str_has_suffix (quantity, "_max"))
    *low = -INFINITY;
  *low -= 1e-12 * fabs (value); /* the sums here and there are rounded */
  *high += 1e-12 * fabs (value);
}

static char *
without_end (const char *quantity)
{
  gboolean end = g_str_has_suffix (quantity, "_min") || g_str_has_suffix (quantity, "_max");
  return g_strndup (quantity, strlen (quantity) - (end ? strlen ("_min") : 0));
}

static gboolean
is_in_a_raster (const char *quantity)
{
  for (gsize i = 0; i < G_N_ELEMENTS (not_in_a_raster); i++)
    if (strcmp (not_in_a_raster[i], quantity) == 0)
      return FALSE;
  return TRUE;
}

static void
test_broadcast (gconstpointer data)
{
  guint row = GPOINTER_TO_UINT (data);
  g_autofree char *quantity = without_end (bw_test_cell (broadcast, row, "quantity"));
  Case c = { shipped (bw_test_cell (broadcast, row, "catalogue_id")), { 0 } };
  double low, high;

  if (c.raster == NULL)
    return;
  bw_raster_figures (c.raster, &c.f);
  bounds (row, &low, &high);
  for (gsize i = 0; i < G_N_ELEMENTS (figures); i++)
    if (strcmp (figures[i].quantity, quantity) == 0)
      {
        double value = figures[i].figure (&c)
                       * scale_of (bw_test_cell (broadcast, row, "unit"), &c);
        if (value >= low && value <= high)
          return;
        g_test_message ("%s: %.17g to %.17g, here %.17g", bw_test_cell (broadcast, row, "source"),
                        low, high, value);
        g_test_fail ();
        return;
      }
  g_test_message ("no figure for %s", quantity);
  g_test_fail ();
}

static void
add_broadcast (void)
{
  broadcast = bw_test_table_new ("broadcast.tsv");
  for (guint row = 0; row < broadcast->rows->len; row++)
    {
      const char *printed = bw_test_cell (broadcast, row, "quantity");
      g_autofree char *quantity = without_end (printed);
      g_autofree char *name = g_strdup_printf ("%s.%s.%u",
                                               bw_test_cell (broadcast, row, "catalogue_id"),
                                               printed, row);
      if (is_in_a_raster (quantity))
        add ("broadcast", name, GUINT_TO_POINTER (row), test_broadcast);
    }
}

/* Whole rasters: tests/reference/rasters.tsv (CTA-861-H and VESA DMT) */

static BwTable *published;

static void
assert_cell (guint row, const char *head, double value)
{
  const char *printed = bw_test_cell (published, row, head);
  double tolerance = strchr (printed, '.') != NULL ? bw_test_last_place (printed) * 0.501 : 0;
  if (bw_near (value, g_ascii_strtod (printed, NULL), tolerance))
    return;
  g_test_message ("%s: printed %s, here %.17g", head, printed, value);
  g_test_fail ();
}

static void
assert_word (guint row, const char *head, const BwKindTable *kinds, guint value)
{
  g_assert_cmpstr (bw_test_cell (published, row, head), ==, bw_kind_id (kinds, value));
}

static void
assert_published_lines (guint row, const BwRaster *raster, const BwRasterFigures *f)
{
  gboolean interlaced = raster->scan == BW_SCAN_INTERLACED;

  assert_cell (row, "v_active", f->active_lines_frame);
  assert_cell (row, "v_front_porch", raster->field[0].front_porch / 2.0);
  assert_cell (row, "v_sync", raster->field[0].sync / 2.0);
  assert_cell (row, "v_back_porch", raster->field[0].back_porch / 2.0);
  assert_cell (row, "v_border", raster->v_border);
  assert_cell (row, "v_total", f->lines_per_frame);
  g_assert_cmpint (*bw_test_cell (published, row, "v_sync_f2") != '\0', ==, interlaced);
  if (!interlaced)
    return;
  assert_cell (row, "v_front_porch_f2", raster->field[1].front_porch / 2.0);
  assert_cell (row, "v_sync_f2", raster->field[1].sync / 2.0);
  assert_cell (row, "v_back_porch_f2", raster->field[1].back_porch / 2.0);
}

static void
test_published (gconstpointer data)
{
  guint row = GPOINTER_TO_UINT (data);
  const BwRaster *raster = shipped (bw_test_cell (published, row, "catalogue_id"));
  BwRasterFigures f;

  if (raster == NULL)
    return;
  bw_raster_figures (raster, &f);
  assert_word (row, "scan", &bw_scans, raster->scan);
  assert_word (row, "h_pol", &bw_polarities, raster->h_polarity);
  assert_word (row, "v_pol", &bw_polarities, raster->v_polarity);
  assert_cell (row, "pixel_clock_hz", f.pixel_clock_hz);
  assert_cell (row, "h_active", raster->h_active);
  assert_cell (row, "h_front_porch", raster->h_front_porch);
  assert_cell (row, "h_sync", raster->h_sync);
  assert_cell (row, "h_back_porch", raster->h_back_porch);
  assert_cell (row, "h_border", raster->h_border);
  assert_cell (row, "h_total", f.h_total);
  assert_cell (row, "line_rate_hz", f.line_rate_hz);
  assert_cell (row, "field_rate_hz", f.field_rate_hz);
  assert_published_lines (row, raster, &f);
}

static void
add_published (void)
{
  published = bw_test_table_new ("rasters.tsv");
  for (guint row = 0; row < published->rows->len; row++)
    add ("published", bw_test_cell (published, row, "catalogue_id"), GUINT_TO_POINTER (row),
         test_published);
}

/* Hard cases: rasters that careless arithmetic gets wrong */

static void
figures_of (const char *id, const BwRaster **raster, BwRasterFigures *f)
{
  static const BwRaster empty;
  *raster = shipped (id);
  *f = (BwRasterFigures){ 0 };
  if (*raster != NULL)
    bw_raster_figures (*raster, f);
  else
    *raster = &empty;
}

/* CTA-861-H: the table prints 25.175 MHz, which is not 25.2 MHz / 1.001. */
static void
test_vic_1_three_clocks (void)
{
  const BwRaster *raster;
  BwRasterFigures f;

  figures_of ("cta-861-vic-1", &raster, &f);
  g_assert_cmpfloat (f.pixel_clock_hz, ==, 25175000);
  g_assert_cmpfloat (f.line_rate_hz, ==, 31468.75);
  g_assert_true (bw_near (f.field_rate_hz, 59.940476, 0.5e-6));
  figures_of ("cta-861-vic-1-59.94", &raster, &f);
  g_assert_true (bw_near (f.pixel_clock_hz, 25174825.1748, 0.5e-4));
  g_assert_true (bw_near (f.line_rate_hz, 31468.531, 0.5e-3));
  g_assert_true (bw_near (f.field_rate_hz, 59.940060, 0.5e-6));
  figures_of ("cta-861-vic-1-60", &raster, &f);
  g_assert_cmpfloat (f.pixel_clock_hz, ==, 25200000);
  g_assert_cmpfloat (f.field_rate_hz, ==, 60);
}

/* VESA DMT 0x04 and 0x05: borders of 8 pixels and 8 lines on each side belong to the totals. */
static void
test_dmt_04_05_borders (void)
{
  const BwRaster *raster;
  BwRasterFigures f, vic_1;

  figures_of ("vesa-dmt-04", &raster, &f);
  g_assert_cmpint (f.h_total, ==, 800);
  g_assert_cmpint (f.lines_per_frame, ==, 525);
  figures_of ("cta-861-vic-1", &raster, &vic_1);
  g_assert_cmpfloat (f.field_rate_hz, ==, vic_1.field_rate_hz);
  g_assert_true (bw_near (f.h_front_porch_s + f.h_border_s, vic_1.h_front_porch_s, 1e-15));
  g_assert_true (bw_near (f.h_back_porch_s + f.h_border_s, vic_1.h_back_porch_s, 1e-15));
  figures_of ("vesa-dmt-05", &raster, &f);
  g_assert_cmpint (f.h_total, ==, 832);
  g_assert_cmpint (f.lines_per_frame, ==, 520);
  g_assert_true (bw_near (f.field_rate_hz, 72.808802, 0.5e-6));
}

/* VESA DMT: one printed table has 1523 and 1473 lines here; the CVT formula and three others do
 * not. */
static void
test_dmt_4b_43_line_totals (void)
{
  const BwRaster *raster;
  BwRasterFigures f;

  figures_of ("vesa-dmt-4b", &raster, &f);
  g_assert_cmpint (f.h_total, ==, 2080);
  g_assert_cmpint (f.lines_per_frame, ==, 1525);
  g_assert_cmpint (raster->field[0].front_porch, ==, 2 * 3);
  g_assert_cmpint (raster->field[0].sync, ==, 2 * 4);
  g_assert_cmpint (raster->field[0].back_porch, ==, 2 * 78);
  g_assert_true (bw_near (f.field_rate_hz, 119.955864, 0.5e-6));
  figures_of ("vesa-dmt-43", &raster, &f);
  g_assert_cmpint (f.h_total, ==, 2016);
  g_assert_cmpint (f.lines_per_frame, ==, 1474);
  g_assert_true (bw_near (f.field_rate_hz, 119.969686, 0.5e-6));
}

/* VESA DMT 0x28: field sync of 5 lines, where a test for divisibility by 9 gives 10. */
static void
test_dmt_28_field_sync (void)
{
  const BwRaster *raster;
  BwRasterFigures f;

  figures_of ("vesa-dmt-28", &raster, &f);
  g_assert_cmpint (raster->h_active, ==, 1360);
  g_assert_cmpint (f.h_total, ==, 1520);
  g_assert_cmpint (f.lines_per_frame, ==, 813);
  g_assert_cmpint (raster->field[0].front_porch, ==, 2 * 3);
  g_assert_cmpint (raster->field[0].sync, ==, 2 * 5);
  g_assert_cmpint (raster->field[0].back_porch, ==, 2 * 37);
  g_assert_cmpfloat (f.pixel_clock_hz, ==, 148250000);
}

/* CTA-861-H VIC 39: interlaced with an even total; no half line anywhere. */
static void
test_vic_39_even_total (void)
{
  const BwRaster *raster;
  BwRasterFigures f;

  figures_of ("cta-861-vic-39", &raster, &f);
  g_assert_cmpuint (raster->scan, ==, BW_SCAN_INTERLACED);
  g_assert_cmpint (f.lines_per_frame, ==, 1250);
  g_assert_cmpfloat (f.lines_per_field, ==, 625);
  g_assert_cmpmem (&raster->field[0], sizeof (BwFieldTiming), &raster->field[1],
                   sizeof (BwFieldTiming));
  g_assert_cmpint (raster->field[0].front_porch, ==, 2 * 23);
  g_assert_cmpint (raster->field[0].back_porch, ==, 2 * 57);
  g_assert_cmpuint (raster->h_polarity, ==, BW_POLARITY_POSITIVE);
  g_assert_cmpuint (raster->v_polarity, ==, BW_POLARITY_NEGATIVE);
  g_assert_cmpfloat (f.line_rate_hz, ==, 31250);
  g_assert_cmpfloat (f.field_rate_hz, ==, 50);
  g_assert_cmpfloat (f.frame_rate_hz, ==, 25);
}

/* CTA-861-H VIC 8 and 23: progressive, and only the front porch tells the totals apart. */
static void
test_vic_8_23_line_totals (void)
{
  static const struct
  {
    const char *id;
    int lines;
    double field_rate_hz;
  } rows[] = {
    { "cta-861-vic-8", 262, 60.054449 },      { "cta-861-vic-8-263", 263, 59.826105 },
    { "cta-861-vic-23", 312, 50.080128 },     { "cta-861-vic-23-313", 313, 49.920128 },
    { "cta-861-vic-23-314", 314, 49.761146 },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      const BwRaster *raster;
      BwRasterFigures f;
      figures_of (rows[i].id, &raster, &f);
      g_assert_cmpuint (raster->scan, ==, BW_SCAN_PROGRESSIVE);
      g_assert_cmpint (f.lines_per_frame, ==, rows[i].lines);
      g_assert_cmpfloat (f.lines_per_field, ==, rows[i].lines);
      g_assert_true (bw_near (f.field_rate_hz, rows[i].field_rate_hz, 0.5e-6));
      g_assert_cmpint (raster->field[0].sync, ==, 2 * 3);
      g_assert_cmpint (raster->field[0].back_porch, ==, 2 * (i < 2 ? 15 : 19));
    }
}

/* ITU-R BT.601-5: 16 samples to 0H and 122 after it in 525 lines, 12 and 132 in 625; CTA-861-H
 * VIC 6 has 19, 62 and 57: alike in total, three samples (0.222 µs) apart. */
static void
test_480i_horizontal_position (void)
{
  const double sample_s = 1 / 13.5e6;
  const BwRaster *raster;
  BwRasterFigures f, analogue;

  figures_of ("cta-861-vic-6", &raster, &f);
  figures_of ("525-59.94-interlaced", &raster, &analogue);
  g_assert_true (bw_near (f.h_front_porch_s / sample_s, 19, 1e-9));
  g_assert_true (bw_near (f.h_sync_s / sample_s, 62, 1e-9));
  g_assert_true (bw_near (f.h_back_porch_s / sample_s, 57, 1e-9));
  g_assert_true (bw_near (f.h_blanking_s / sample_s, 16 + 122, 1e-9));
  g_assert_true (bw_near (f.h_front_porch_s - 16 * sample_s, 0.222e-6, 0.5e-9));
  g_assert_true (bw_near (f.h_active_s, 53.333e-6, 0.5e-9));
  g_assert_true (bw_near (analogue.h_active_s, 52.86e-6, 5e-9)); /* narrower than 720 samples */
  figures_of ("cta-861-vic-21", &raster, &f);
  g_assert_true (bw_near (f.h_front_porch_s / sample_s, 12, 1e-9));
  g_assert_true (bw_near ((f.h_sync_s + f.h_back_porch_s) / sample_s, 132, 1e-9));
}

typedef struct
{
  const char *id;
  int half_clocks; /* each half of the pulse */
  int front_porch_clocks;
  double front_porch_s;
  int to_active_clocks;
} TriLevelRow;

/* Tri-level sync: 0H is the crossing in the middle, so that the porch before the pulse is shorter
 * than CTA's by one half of it. Counts from CTA-861-H VIC 4 and 5; halves of 40 and 44 clocks from
 * secondary sources, the texts of SMPTE 296M and 274M were not read. */
static void
test_tri_level_front_porch (void)
{
  static const TriLevelRow rows[] = {
    { "1125-60-interlaced", 44, 44, 0.593e-6, 192 },
    { "1125-59.94-interlaced", 44, 44, 0.593e-6, 192 },
    { "750-60-progressive", 40, 70, 0.943e-6, 260 },
    { "750-59.94-progressive", 40, 70, 0.944e-6, 260 },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      Case c;
      figures_of (rows[i].id, &c.raster, &c.f);
      double clock_s = 1 / c.f.pixel_clock_hz;
      g_assert_cmpuint (c.raster->sync_shape, ==, BW_SHAPE_TRILEVEL);
      g_assert_true (bw_near (c.f.h_front_porch_s / clock_s, rows[i].front_porch_clocks, 1e-9));
      g_assert_true (bw_near (c.f.h_front_porch_s, rows[i].front_porch_s, 0.6e-9));
      g_assert_true (bw_near (c.f.h_sync_s / clock_s, 2 * rows[i].half_clocks, 1e-9));
      g_assert_true (bw_near (c.f.h_datum_s / clock_s, rows[i].half_clocks, 1e-9));
      g_assert_true (bw_near (datum_to_active_s (&c) / clock_s, rows[i].to_active_clocks, 1e-9));
    }
}

/* CTA-861-H VIC 5 at its 59.94 Hz partner rate. */
static void
test_vic_5_59_94 (void)
{
  const BwRaster *raster;
  BwRasterFigures f;
  BwRatio rate_hz = BW_RATIO_NONE;

  figures_of ("cta-861-vic-5-59.94", &raster, &f);
  g_assert_true (bw_near (f.pixel_clock_hz, 74175824.175824, 0.5e-6));
  g_assert_true (bw_near (f.line_rate_hz, 33716.283716, 0.5e-6));
  g_assert_true (bw_raster_field_rate (raster, &rate_hz));
  g_assert_cmpint (rate_hz.num, ==, 60000);
  g_assert_cmpint (rate_hz.den, ==, 1001);
}

/* VESA DMT 0x0F: no vertical front porch at all in field 1, half a line in field 2. */
static void
test_dmt_0f_zero_front_porch (void)
{
  const BwRaster *raster;
  BwRasterFigures f;

  figures_of ("vesa-dmt-0f", &raster, &f);
  g_assert_cmpint (raster->field[0].front_porch, ==, 0);
  g_assert_cmpint (raster->field[1].front_porch, ==, 1);
  g_assert_cmpint (f.lines_per_frame, ==, 817);
  g_assert_true (bw_near (f.field_rate_hz, 86.957532, 0.5e-6));
  g_assert_true (bw_raster_check (raster, NULL));
}

/* Where the picture of field @field (0 or 1) begins and ends, in lines after the vertical sync that
 * starts field 1. */
static void
picture_of_field (const BwRaster *raster, int field, double *begin, double *end)
{
  double at = 0;
  for (int i = 0; i <= field; i++)
    {
      at += i > 0 ? raster->field[i].front_porch : 0;
      *begin = (at + raster->field[i].sync + raster->field[i].back_porch) / 2;
      at = *begin * 2 + raster->field[i].active;
    }
  *end = at / 2;
}

/* ITU-R BT.1700 figures 3 and 4: line 1 starts at the first broad pulse; the picture of field 1
 * runs from the middle of line 23 to the end of 310, that of field 2 from 336 to the middle of
 * 623. */
static void
test_625_picture_lines (void)
{
  const BwRaster *raster;
  BwRasterFigures f;
  double begin, end;

  figures_of ("625-50-interlaced", &raster, &f);
  picture_of_field (raster, 0, &begin, &end);
  g_assert_cmpfloat (begin, ==, 22.5);
  g_assert_cmpfloat (end, ==, 310);
  picture_of_field (raster, 1, &begin, &end);
  g_assert_cmpfloat (begin, ==, 335);
  g_assert_cmpfloat (end, ==, 622.5);
}

/* SMPTE 170M-2004 figure 7: line 1 starts at the first equalising pulse, three lines before
 * vertical sync; field 1 runs from line 21 to the middle of 263, field 2 from the middle of 283 to
 * 525. */
static void
test_525_picture_lines (void)
{
  const BwRaster *raster;
  BwRasterFigures f;
  double begin, end;

  figures_of ("525-59.94-interlaced", &raster, &f);
  picture_of_field (raster, 0, &begin, &end);
  g_assert_cmpfloat (begin + 3, ==, 20);
  g_assert_cmpfloat (end + 3, ==, 262.5);
  picture_of_field (raster, 1, &begin, &end);
  g_assert_cmpfloat (begin + 3, ==, 282.5);
  g_assert_cmpfloat (end + 3, ==, 525);
}

/* SMPTE 170M-2004 table 3 and 13.3; ITU-R BT.470-6 table 1-2. */
static void
test_vertical_pulses (void)
{
  const BwRaster *raster;
  BwRasterFigures f;

  figures_of ("525-59.94-interlaced", &raster, &f);
  g_assert_cmpint (raster->equalising_before, ==, 6);
  g_assert_cmpfloat (raster->equalising_width_s, ==, 2.30e-6);
  g_assert_true (bw_near (f.line_period_s / 2 - raster->serration_width_s, 27.1e-6, 0.05e-6));
  figures_of ("625-50-interlaced", &raster, &f);
  g_assert_cmpint (raster->equalising_before, ==, 5);
  g_assert_cmpfloat (raster->equalising_width_s, ==, 2.35e-6);
  g_assert_true (bw_near (f.line_period_s / 2 - raster->serration_width_s, 27.3e-6, 1e-15));
}

static void
add_hard_cases (void)
{
  g_test_add_func ("/raster/hard/vic-1-three-clocks", test_vic_1_three_clocks);
  g_test_add_func ("/raster/hard/dmt-04-05-borders", test_dmt_04_05_borders);
  g_test_add_func ("/raster/hard/dmt-4b-43-line-totals", test_dmt_4b_43_line_totals);
  g_test_add_func ("/raster/hard/dmt-28-field-sync", test_dmt_28_field_sync);
  g_test_add_func ("/raster/hard/vic-39-even-total", test_vic_39_even_total);
  g_test_add_func ("/raster/hard/vic-8-23-line-totals", test_vic_8_23_line_totals);
  g_test_add_func ("/raster/hard/480i-horizontal-position", test_480i_horizontal_position);
  g_test_add_func ("/raster/hard/tri-level-front-porch", test_tri_level_front_porch);
  g_test_add_func ("/raster/hard/vic-5-59.94", test_vic_5_59_94);
  g_test_add_func ("/raster/hard/dmt-0f-zero-front-porch", test_dmt_0f_zero_front_porch);
  g_test_add_func ("/raster/hard/625-picture-lines", test_625_picture_lines);
  g_test_add_func ("/raster/hard/525-picture-lines", test_525_picture_lines);
  g_test_add_func ("/raster/hard/vertical-pulses", test_vertical_pulses);
}

int
main (int argc, char **argv)
{
  int result;

  bw_test_init (&argc, &argv);
  add_broadcast ();
  add_published ();
  add_hard_cases ();
  result = g_test_run ();
  bw_test_table_free (broadcast);
  bw_test_table_free (published);
  return result;
}
