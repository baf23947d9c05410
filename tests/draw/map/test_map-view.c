/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/map/view.h"

#include <math.h>
#include <string.h>

#include "support.h"

/* Under sanitizers, where everything is slow, only every so many of the rasters. */
#if defined(__SANITIZE_ADDRESS__) || defined(__SANITIZE_THREAD__)
#define RASTER_STEP 9
#else
#define RASTER_STEP 1
#endif

static const BwInk ink = { BW_THEME_LIGHT, "Sans 10", BW_INK_SCREEN_DPI };

/* Smallest to largest page that the drawing is made for, in pixels of a screen. */
static const struct
{
  double width;
  double height;
  guint may_leave; /* steps of the order in map-view.h: all, for a map much wider than high */
} sizes[] = { { 520, 360, 6 }, { 700, 450, 0 }, { 1100, 700, 0 }, { 1800, 1000, 0 } };

static BwMapView
view_of (const BwCatalogue *catalogue, const char *id, double overscan_h, double overscan_v)
{
  const BwRaster *raster = bw_catalogue_raster (catalogue, id);
  g_assert_nonnull (raster);
  return (BwMapView){ raster, overscan_h, overscan_v, BW_RATIO_NONE, NULL, NULL, '.' };
}

static double
period_s (const BwMapView *what)
{
  return 1 / bw_ratio_to_double (what->raster->line_rate_hz);
}

static void
check_labels (const BwMapView *what, double width, double height, const BwInk *with,
              guint may_leave)
{
  guint left_out = 0;
  g_autoptr (GArray) labels = test_texts (bw_map_drawing (what, width, height, with), &left_out);

  test_labels_are_apart (labels, width, height, what->raster->id);
  test_labels_are_large (labels, with);
  if (left_out > may_leave)
    g_error ("%s at %gx%g: %u left out", what->raster->id, width, height, left_out);
}

static void
test_labels_of_all_rasters (void)
{
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();
  GPtrArray *rasters = bw_catalogue_rasters (catalogue);

  for (guint i = 0; i < rasters->len; i += RASTER_STEP)
    for (guint s = 0; s < G_N_ELEMENTS (sizes); s++)
      {
        BwMapView what = { rasters->pdata[i], 0, 0, BW_RATIO_NONE, NULL, NULL, '.' };
        check_labels (&what, sizes[s].width, sizes[s].height, &ink, sizes[s].may_leave);
        what.overscan_h = 0.08;
        what.overscan_v = 0.3 * (i % 2);
        check_labels (&what, sizes[s].width, sizes[s].height, &ink, sizes[s].may_leave);
      }
}

static void
test_labels_on_any_page (void)
{
  static const double odd[][2] = { { 1, 1 },     { 40, 30 },   { 120, 600 }, { 200, 150 },
                                   { 320, 240 }, { 900, 200 }, { 2400, 90 }, { 4000, 3000 } };
  static const char *const fonts[] = { "Sans 6", "Sans 10", "Serif 17", "Sans 40" };
  static const char *const ids[] = { "525-59.94-interlaced", "1125-60-interlaced", "vesa-dmt-04" };
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();

  for (guint i = 0; i < G_N_ELEMENTS (ids); i++)
    for (guint f = 0; f < G_N_ELEMENTS (fonts); f++)
      for (guint s = 0; s < G_N_ELEMENTS (odd); s++)
        {
          const BwInk other = { BW_THEME_DARK, fonts[f], 0 };
          BwMapView what = view_of (catalogue, ids[i], 0.1, 0.05);
          check_labels (&what, odd[s][0], odd[s][1], &other, G_MAXUINT);
        }
}

static void
test_labels_of_any_part (void)
{
  static const char *const ids[] = { "525-59.94-interlaced", "1125-60-interlaced", "vesa-dmt-05" };
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();
  g_autoptr (GRand) rand = g_rand_new_with_seed (32);

  for (guint i = 0; i < 300; i += RASTER_STEP)
    {
      BwMapView what = view_of (catalogue, ids[i % 3], 0.08, 0.06);
      guint s = i % G_N_ELEMENTS (sizes);
      BwZoom whole = test_shown (bw_map_drawing (&what, 700, 450, &ink));
      BwViewRange across = whole.across, down = whole.down;
      bw_view_range_zoom (&across, across.low + g_rand_double (rand) * (across.high - across.low),
                          pow (10, g_rand_double_range (rand, 0, 2)));
      bw_view_range_zoom (&down, g_rand_double (rand) * down.high,
                          pow (10, g_rand_double_range (rand, 0, 2)));
      what.across = &across;
      what.down = &down;
      check_labels (&what, sizes[s].width, sizes[s].height, &ink, sizes[s].may_leave);
    }
}

static void
test_long_name (void)
{
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();
  g_autoptr (BwRaster) raster = bw_raster_copy (bw_catalogue_raster (catalogue, "vesa-dmt-04"));
  g_autoptr (GString) name = g_string_new (NULL);
  BwMapView what = { raster, 0.1, 0.1, BW_RATIO_NONE, NULL, NULL, '.' };

  for (int i = 0; i < 200; i++)
    g_string_append (name, "long name ");
  g_free (raster->name);
  raster->name = g_strdup (name->str);
  for (guint s = 0; s < G_N_ELEMENTS (sizes); s++)
    check_labels (&what, sizes[s].width, sizes[s].height, &ink, sizes[s].may_leave);
}

static void
assert_shows (const BwMapView *what, const char *const *shown, guint n)
{
  g_autoptr (GArray) labels = test_texts (bw_map_drawing (what, 1100, 700, &ink), NULL);
  g_autofree char *text = test_description (bw_map_drawing (what, 1100, 700, &ink));
  for (guint i = 0; i < n; i++)
    if (!test_labels_have (labels, shown[i]))
      g_error ("%s does not show \"%s\"; in words: %s", what->raster->id, shown[i], text);
}

/* SMPTE 170M-2004 tables 2 and 3: 286 / 4.5 = 63.556 µs, 525 / 2 = 262.5 lines a field, of which 20
 * are blanked: 3 of equalising pulses, 3 of sync, and 14. 242.5 x 52.856 of 262.5 x 63.556 is
 * 76.8 %. Behind a glass that hides 8 %: 52.856 x 0.92 = 48.627 µs. */
static void
test_figures_525 (void)
{
  static const char *const shown[] = { "line period  63.556\u00a0µs",
                                       "52.856\u00a0µs",
                                       "4.7\u00a0µs",
                                       "262.5\u00a0lines",
                                       "242.5\u00a0lines",
                                       "14\u00a0lines",
                                       "3\u00a0lines",
                                       "76.8\u00a0%",
                                       "48.627\u00a0µs",
                                       "overscan hides 8\u00a0% of the width",
                                       "4:3",
                                       "SMPTE 170M-2004",
                                       "glass",
                                       "0H" };
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();
  BwMapView what = view_of (catalogue, "525-59.94-interlaced", 0.08, 0.04);
  assert_shows (&what, shown, G_N_ELEMENTS (shown));
}

/* VESA DMT v1.0 rev. 13, ID 0x04: 640 x 480 in 800 x 525, borders of 8, porches of 8 and 40 pixels,
 * 2 and 25 lines, sync of 96 pixels and 2 lines. */
static void
test_figures_dmt_04 (void)
{
  static const char *const shown[] = { "640\u00a0px × 480\u00a0lines",
                                       "800\u00a0px",
                                       "96\u00a0px",
                                       "40\u00a0px",
                                       "8\u00a0px",
                                       "525\u00a0lines",
                                       "25\u00a0lines",
                                       "top border\n8\u00a0lines",
                                       "4:3, square pixels" };
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();
  BwMapView what = view_of (catalogue, "vesa-dmt-04", 0, 0);
  g_autoptr (GArray) labels = test_texts (bw_map_drawing (&what, 1100, 700, &ink), NULL);
  assert_shows (&what, shown, G_N_ELEMENTS (shown));
  g_assert_false (test_labels_have (labels, "glass"));
}

/* CTA-861-H, VIC 5: 1125 lines in two fields of 562.5; after the 540 lines of the first field come
 * 2.5 lines, after those of the second 2. */
static void
test_figures_vic_5 (void)
{
  static const char *const shown[] = { "562.5\u00a0lines", "front porch\n2.5\u00a0lines",
                                       "1920\u00a0px × 540\u00a0lines", "16:9, square pixels" };
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();
  BwMapView what = view_of (catalogue, "cta-861-vic-5", 0, 0);
  assert_shows (&what, shown, G_N_ELEMENTS (shown));
}

static void
test_decimal_comma (void)
{
  static const char *const shown[] = { "63,556\u00a0µs", "242,5\u00a0lines", "76,8\u00a0%" };
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();
  BwMapView what = view_of (catalogue, "525-59.94-interlaced", 0, 0);
  what.mark = ',';
  assert_shows (&what, shown, G_N_ELEMENTS (shown));
}

static void
place (const BwMapView *what, double time_s, double lines, double *x, double *y)
{
  g_assert_true (test_find (bw_map_drawing (what, 1100, 700, &ink), 0, time_s, lines, x, y));
}

/* The active picture from 144 to 784 of 800 pixels after the datum less the border of 8, and from
 * line 35 on: as drawn, 640 pixels are as long as 480 lines x 4/3. */
static void
test_scale (void)
{
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();
  BwMapView what = view_of (catalogue, "vesa-dmt-04", 0, 0);
  double pixel_s = 1 / 25.175e6, x0, y0, x1, y1, x2, y2;

  place (&what, 144 * pixel_s, 35, &x0, &y0);
  place (&what, 784 * pixel_s, 515, &x1, &y1);
  g_assert_cmpfloat_with_epsilon ((x1 - x0) / (y1 - y0), 640.0 / 480, 1e-9);
  place (&what, 0, 0, &x2, &y2);
  g_assert_cmpfloat_with_epsilon ((x0 - x2) / (x1 - x0), 144.0 / 640, 1e-9);
  g_assert_cmpfloat_with_epsilon ((y0 - y2) / (y1 - y0), 35.0 / 480, 1e-9);

  what.aspect = (BwRatio){ 16, 9 };
  place (&what, 144 * pixel_s, 35, &x0, &y0);
  place (&what, 784 * pixel_s, 515, &x1, &y1);
  g_assert_cmpfloat_with_epsilon ((x1 - x0) / (y1 - y0), 16.0 / 9, 1e-9);
}

static cairo_surface_t *
draw (const BwMapView *what, const BwInk *with, int width, int height)
{
  return test_paint (bw_map_drawing (what, width, height, with));
}

static guint32
colour_at (cairo_surface_t *surface, const BwMapView *what, double time_s, double lines)
{
  double x, y;
  place (what, time_s, lines, &x, &y);
  return test_pixel_at (surface, x, y);
}

/* Each area has its colour, on both sides of each of its edges: syncs alike, porches alike, borders
 * alike, what the glass hides, and what it shows as paper. Places in pixels and lines of VESA DMT
 * 0x04, see above; half of 10 % of 640 pixels and of 480 lines are hidden on each side. */
static void
test_areas (void)
{
  enum
  {
    SYNC,
    PORCH,
    BORDER,
    HIDDEN,
    SEEN,
    N_AREAS
  };
  static const struct
  {
    double pixel;
    double line;
    guint area;
  } places[] = { { 50, 300, SYNC },    { 92, 300, SYNC },    { 100, 300, PORCH },
                 { 133, 300, PORCH },  { 139, 300, BORDER }, { 148, 300, HIDDEN },
                 { 170, 300, HIDDEN }, { 181, 250, SEEN },   { 700, 120, SEEN },
                 { 747, 300, SEEN },   { 757, 300, HIDDEN }, { 780, 300, HIDDEN },
                 { 788, 300, BORDER }, { 796, 300, PORCH },  { 400, 15, PORCH },
                 { 400, 30, BORDER },  { 400, 40, HIDDEN },  { 400, 64, SEEN },
                 { 400, 486, SEEN },   { 400, 496, HIDDEN }, { 400, 519, BORDER } };
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();
  BwMapView what = view_of (catalogue, "vesa-dmt-04", 0.1, 0.1);
  cairo_surface_t *surface = draw (&what, &ink, 1100, 700);
  guint32 colours[N_AREAS];
  gboolean known[N_AREAS] = { FALSE };

  for (guint i = 0; i < G_N_ELEMENTS (places); i++)
    {
      guint area = places[i].area;
      guint32 colour = colour_at (surface, &what, places[i].pixel / 25.175e6, places[i].line);
      if (known[area] && colour != colours[area])
        g_error ("%g, %g: #%06x is not #%06x", places[i].pixel, places[i].line, colour,
                 colours[area]);
      colours[area] = colour;
      known[area] = TRUE;
    }
  for (guint a = 0; a < N_AREAS; a++)
    for (guint b = 0; b < a; b++)
      g_assert_cmpuint (colours[a], !=, colours[b]);
  g_assert_cmpuint (colours[SEEN], ==, bw_ink_rgb (BW_THEME_LIGHT, BW_INK_PAPER));
  cairo_surface_destroy (surface);
}

/* Line sync, field sync and the corner of both alike. */
static void
test_syncs (void)
{
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();
  BwMapView what = view_of (catalogue, "525-59.94-interlaced", 0, 0);
  cairo_surface_t *surface = draw (&what, &ink, 1100, 700);
  guint32 line_sync = colour_at (surface, &what, 2e-6, 100);

  g_assert_cmphex (colour_at (surface, &what, 2e-6, 1.5), ==, line_sync);
  g_assert_cmphex (colour_at (surface, &what, 30e-6, 1.5), ==, line_sync);
  g_assert_cmphex (colour_at (surface, &what, 30e-6, 10), !=, line_sync);
  cairo_surface_destroy (surface);
}

static void
test_draw_all_rasters (void)
{
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();
  GPtrArray *rasters = bw_catalogue_rasters (catalogue);

  for (guint i = 0; i < rasters->len; i += RASTER_STEP)
    for (guint k = 0; k < 2; k++)
      {
        guint s = k == 0 ? 0 : 1 + i % (G_N_ELEMENTS (sizes) - 1), inked = 0;
        const BwInk with = { i % BW_N_THEMES, NULL, 0 };
        BwMapView what = {
          rasters->pdata[i], 0.05 * (i % 3), 0.05 * (i % 3), BW_RATIO_NONE, NULL, NULL, '.'
        };
        cairo_surface_t *surface = draw (&what, &with, (int) sizes[s].width, (int) sizes[s].height);
        for (double y = 0; y < sizes[s].height; y += 2)
          for (double x = 0; x < sizes[s].width; x += 2)
            inked += test_pixel_at (surface, x, y) != bw_ink_rgb (with.theme, BW_INK_PAPER);
        g_assert_cmpfloat (inked, >, 0.04 * sizes[s].width * sizes[s].height / 4);
        cairo_surface_destroy (surface);
      }
}

/* Lines as the standard numbers them: picture from line 21 in SMPTE 170M-2004 (figure 7) and, for
 * CTA-861-H VIC 5, too; 17 and 20 lines after field sync starts. */
static void
test_read_lines (void)
{
  static const struct
  {
    const char *id;
    double lines;
    int line;
    gboolean picture;
  } cases[] = {
    { "525-59.94-interlaced", 0.5, 4, FALSE },  { "525-59.94-interlaced", 16.5, 20, FALSE },
    { "525-59.94-interlaced", 17.5, 21, TRUE }, { "cta-861-vic-5", 19.5, 20, FALSE },
    { "cta-861-vic-5", 20.5, 21, TRUE },        { "cta-861-vic-5", 561.5, 562, FALSE }
  };
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      BwMapView what = view_of (catalogue, cases[i].id, 0, 0);
      double x, y;
      place (&what, period_s (&what) / 2, cases[i].lines, &x, &y);
      g_autofree char *words = test_words_at (bw_map_drawing (&what, 1100, 700, &ink), x, y);
      g_autofree char *line = g_strdup_printf ("Line %d, ", cases[i].line);
      g_assert_true (g_str_has_prefix (words, line));
      g_assert_true (
          g_str_has_suffix (words, cases[i].picture ? ": picture" : ": outside the picture"));
    }
}

static void
test_round_trip (void)
{
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();
  GPtrArray *rasters = bw_catalogue_rasters (catalogue);
  g_autoptr (GRand) rand = g_rand_new_with_seed (9);

  for (guint i = 0; i < rasters->len; i += RASTER_STEP)
    {
      BwMapView what = { rasters->pdata[i], 0, 0, BW_RATIO_NONE, NULL, NULL, '.' };
      guint s = i % G_N_ELEMENTS (sizes);
      double width = sizes[s].width, height = sizes[s].height, x, y;
      BwZoom whole = test_shown (bw_map_drawing (&what, width, height, &ink));
      BwViewRange across = whole.across, down = whole.down;
      BwDrawingPoint point;
      if (i % 2 == 0)
        bw_view_range_zoom (&across, 0, g_rand_double_range (rand, 1, 20));
      what.across = &across;
      what.down = &down;
      double time_s = g_rand_double_range (rand, across.from, across.to);
      double lines = g_rand_double_range (rand, down.from, down.to);
      g_assert_true (
          test_find (bw_map_drawing (&what, width, height, &ink), 0, time_s, lines, &x, &y));
      g_assert_true (test_read_at (bw_map_drawing (&what, width, height, &ink), x, y, &point));
      g_assert_cmpfloat_with_epsilon (point.across, time_s, 1e-9 * period_s (&what));
      g_assert_cmpfloat_with_epsilon (point.down, lines, 1e-9 * down.high);
      g_assert_false (test_find (bw_map_drawing (&what, width, height, &ink), 0, time_s,
                                 down.high * 1.1, &x, &y));
    }
}

static void
test_read_outside (void)
{
  static const double points[][2] = {
    { 0, 0 }, { -5, 100 }, { 699, 449 }, { 350, 440 }, { 690, 200 }
  };
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();
  BwMapView what = view_of (catalogue, "625-50-interlaced", 0, 0);
  BwDrawingPoint point = { .id = 77 };

  for (guint i = 0; i < G_N_ELEMENTS (points); i++)
    g_assert_false (
        test_read_at (bw_map_drawing (&what, 700, 450, &ink), points[i][0], points[i][1], &point));
  g_assert_cmpuint (point.id, ==, 77);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/draw/map-view/labels-of-all-rasters", test_labels_of_all_rasters);
  g_test_add_func ("/draw/map-view/labels-on-any-page", test_labels_on_any_page);
  g_test_add_func ("/draw/map-view/labels-of-any-part", test_labels_of_any_part);
  g_test_add_func ("/draw/map-view/long-name", test_long_name);
  g_test_add_func ("/draw/map-view/figures-525", test_figures_525);
  g_test_add_func ("/draw/map-view/figures-dmt-04", test_figures_dmt_04);
  g_test_add_func ("/draw/map-view/figures-vic-5", test_figures_vic_5);
  g_test_add_func ("/draw/map-view/decimal-comma", test_decimal_comma);
  g_test_add_func ("/draw/map-view/scale", test_scale);
  g_test_add_func ("/draw/map-view/areas", test_areas);
  g_test_add_func ("/draw/map-view/syncs", test_syncs);
  g_test_add_func ("/draw/map-view/draw-all-rasters", test_draw_all_rasters);
  g_test_add_func ("/draw/map-view/read-lines", test_read_lines);
  g_test_add_func ("/draw/map-view/round-trip", test_round_trip);
  g_test_add_func ("/draw/map-view/read-outside", test_read_outside);
  return g_test_run ();
}
