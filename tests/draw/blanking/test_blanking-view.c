/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/blanking/view.h"

#include <math.h>
#include <string.h>

#include "draw/line/shape.h"
#include "support.h"

static const BwInk ink = { BW_THEME_LIGHT, "Sans 10", BW_INK_SCREEN_DPI };

/* Pages, and how many steps of the order in blanking-view.h may be left out on them. */
static const struct
{
  double width;
  double height;
  guint may_leave;
} sizes[] = { { 520, 300, 4 }, { 700, 450, 1 }, { 1100, 560, 0 }, { 1800, 1000, 0 } };

/* The limits of the first standard for @raster; NULL if there are none. */
static const BwStandardLimits *
limits_for (const GPtrArray *all, const BwRaster *raster)
{
  for (guint i = 0; i < all->len; i++)
    if (strcmp (((BwStandardLimits *) all->pdata[i])->raster, raster->id) == 0)
      return all->pdata[i];
  return NULL;
}

static GArray *
labels_of (const char *id, const char *standard, double width, double height, char mark)
{
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();
  g_autoptr (GPtrArray) all = bw_limits_shipped ();
  const BwRaster *raster = bw_catalogue_raster (catalogue, id);
  const BwStandardLimits *limits = standard != NULL ? bw_limits_find (all, standard) : NULL;
  const BwBlankingView what = { raster, limits, NULL, mark };
  g_assert_nonnull (raster);
  g_assert_true (standard == NULL || limits != NULL);
  return test_texts (bw_blanking_drawing (&what, width, height, &ink), NULL);
}

static void
test_labels_of_all_rasters (void)
{
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();
  g_autoptr (GPtrArray) all = bw_limits_shipped ();
  GPtrArray *rasters = bw_catalogue_rasters (catalogue);

  for (guint i = 0; i < rasters->len; i++)
    for (guint s = 0; s < G_N_ELEMENTS (sizes); s++)
      {
        const BwRaster *raster = rasters->pdata[i];
        const BwBlankingView what = { raster, limits_for (all, raster), NULL, '.' };
        guint left_out = 0;
        g_autoptr (GArray) labels = test_texts (bw_blanking_drawing (&what, sizes[s].width,
                                                                     sizes[s].height, &ink),
                                                &left_out);
        test_labels_are_apart (labels, sizes[s].width, sizes[s].height, raster->id);
        if (left_out > sizes[s].may_leave)
          g_test_fail_printf ("%s at %gx%g: %u left out", raster->id, sizes[s].width,
                              sizes[s].height, left_out);
      }
}

/* Every standard's limits, on every page. */
static void
test_labels_of_all_limits (void)
{
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();
  g_autoptr (GPtrArray) all = bw_limits_shipped ();

  for (guint i = 0; i < all->len; i++)
    for (guint s = 0; s < G_N_ELEMENTS (sizes); s++)
      {
        const BwStandardLimits *limits = all->pdata[i];
        const BwBlankingView what = { bw_catalogue_raster (catalogue, limits->raster), limits, NULL,
                                      '.' };
        g_autoptr (GArray) labels = test_texts (bw_blanking_drawing (&what, sizes[s].width,
                                                                     sizes[s].height, &ink),
                                                NULL);
        test_labels_are_apart (labels, sizes[s].width, sizes[s].height, limits->id);
      }
}

/* Whatever the page and the font, what is drawn is drawn whole, in the size asked for. */
static void
test_labels_on_any_page (void)
{
  static const double odd[][2] = { { 1, 1 },     { 40, 30 },   { 120, 600 }, { 200, 150 },
                                   { 320, 240 }, { 900, 200 }, { 2400, 90 }, { 4000, 3000 } };
  static const char *const fonts[] = { "Sans 6", "Sans 10", "Serif 17", "Sans 40" };
  static const char *const ids[] = { "625-50-interlaced", "1125-60-interlaced", "vesa-dmt-04" };
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();
  g_autoptr (GPtrArray) all = bw_limits_shipped ();

  for (guint i = 0; i < G_N_ELEMENTS (ids); i++)
    for (guint f = 0; f < G_N_ELEMENTS (fonts); f++)
      for (guint s = 0; s < G_N_ELEMENTS (odd); s++)
        {
          const BwInk other = { BW_THEME_DARK, fonts[f], 0 };
          const BwRaster *raster = bw_catalogue_raster (catalogue, ids[i]);
          const BwBlankingView what = { raster, limits_for (all, raster), NULL, '.' };
          g_autoptr (GArray) labels = test_texts (bw_blanking_drawing (&what, odd[s][0], odd[s][1],
                                                                       &other),
                                                  NULL);
          test_labels_are_apart (labels, odd[s][0], odd[s][1], ids[i]);
          test_labels_are_large (labels, &other);
        }
}

static void
assert_shows (const GArray *labels, const char *const *texts, guint n)
{
  for (guint i = 0; i < n; i++)
    if (!test_labels_have (labels, texts[i]))
      g_test_fail_printf ("the drawing does not show %s", texts[i]);
}

/* SMPTE 170M-2004 table 2: front porch 1.5, sync 4.7, blanking 10.7 µs, of a line of 286 / 4.5 =
 * 63.556 µs: 2.4, 7.4 and 16.8 %; from 0H to the picture 9.2 µs. */
static void
test_figures (void)
{
  static const char *const shown[] = {
    "1.5\u00a0µs", "2.4\u00a0%",  "4.7\u00a0µs",
    "7.4\u00a0%",  "4.5\u00a0µs", "10.7\u00a0µs",
    "16.8\u00a0%", "9.2\u00a0µs", "0H, the leading edge of sync"
  };
  g_autoptr (GArray) labels = labels_of ("525-59.94-interlaced", NULL, 1100, 560, '.');
  assert_shows (labels, shown, G_N_ELEMENTS (shown));
  g_assert_true (test_labels_have (labels, "SMPTE 170M-2004"));
  g_assert_false (test_labels_have (labels, "allowed"));
  g_assert_false (test_labels_have (labels, "burst"));
  g_assert_false (test_labels_have (labels, "px"));
}

/* VESA DMT v1.0 rev. 13, ID 0x04: borders 8, front porch 8, sync 96, back porch 40 pixels at
 * 25.175 MHz; 96 + 40 = 136 from 0H to the end of blanking. */
static void
test_figures_in_pixels (void)
{
  static const char *const shown[] = { "96\u00a0px",  "3.813\u00a0µs", "40\u00a0px",  "144\u00a0px",
                                       "136\u00a0px", "left border",   "right border" };
  g_autoptr (GArray) labels = labels_of ("vesa-dmt-04", NULL, 1100, 560, '.');
  assert_shows (labels, shown, G_N_ELEMENTS (shown));
}

/* ITU-R BT.1700 part B, tables 2 and 3: sync 4.7 +-0.2, burst 5.6 +-0.1 µs after 0H and
 * 2.25 +-0.23 µs long; so the gap before it is 5.6 - 4.7 = 0.9 µs. */
static void
test_limits (void)
{
  static const char *const shown[] = { "allowed 4.5–4.9\u00a0µs",
                                       "allowed 11.7–12\u00a0µs",
                                       "5.6\u00a0µs",
                                       "allowed 5.5–5.7\u00a0µs",
                                       "2.25\u00a0µs",
                                       "allowed 2.02–2.48\u00a0µs",
                                       "breezeway",
                                       "0.9\u00a0µs" };
  g_autoptr (GArray) labels = labels_of ("625-50-interlaced", "bt1700-pal", 1100, 560, '.');
  g_autoptr (GArray) commas = labels_of ("625-50-interlaced", "bt1700-pal", 1100, 560, ',');
  assert_shows (labels, shown, G_N_ELEMENTS (shown));
  g_assert_true (test_labels_have (labels, "BT.1700 Part B"));
  g_assert_true (test_labels_have (commas, "allowed 4,5–4,9\u00a0µs"));
  g_assert_false (test_labels_have (commas, "4.5"));
}

static cairo_surface_t *
draw (const BwBlankingView *what, const BwInk *with, int width, int height)
{
  return test_paint (bw_blanking_drawing (what, width, height, with));
}

/* Only the curve is black in print. */
static gboolean
is_curve (guint32 pixel)
{
  return (pixel & 0xff) < 0x30 && (pixel >> 8 & 0xff) < 0x30 && (pixel >> 16 & 0xff) < 0x30;
}

/* The edges of sync are read off the picture itself, half way between two levels. */
static void
check_edges (const char *id, const char *low, const char *high, const double *times_s, guint n)
{
  const int width = 1100, height = 560;
  const BwInk black = { BW_THEME_PRINT, "Sans 10", 0 };
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();
  const BwBlankingView what = { bw_catalogue_raster (catalogue, id), NULL, NULL, '.' };
  g_autoptr (GArray) labels = test_texts (bw_blanking_drawing (&what, width, height, &black), NULL);
  const BwLabel *low_label = test_find_label (labels, low, 0);
  const BwLabel *high_label = test_find_label (labels, high, 0);
  int y = (int) ((low_label->box.y + high_label->box.y + low_label->box.height) / 2);
  cairo_surface_t *surface = draw (&what, &black, width, height);
  guint found = 0;

  for (int x = (int) (low_label->box.x + low_label->box.width) + 4; x < width - 1; x++)
    if (is_curve (test_pixel_at (surface, x, y)) && !is_curve (test_pixel_at (surface, x - 1, y)))
      {
        g_assert_cmpuint (found, <, n);
        double expected = test_x_of (bw_blanking_drawing (&what, width, height, &black), 0,
                                     times_s[found]);
        g_assert_cmpfloat (fabs (expected - x), <=, 2); /* half of the stroke, and rounding */
        found++;
      }
  g_assert_cmpuint (found, ==, n);
  cairo_surface_destroy (surface);
}

/* SMPTE 170M-2004 table 2: the datum is the leading edge of sync, which is 4.7 µs wide. */
static void
test_edges_of_bilevel_sync (void)
{
  static const double times_s[] = { 0, 4.7e-6 };
  check_edges ("525-59.94-interlaced", "sync", "blanking", times_s, G_N_ELEMENTS (times_s));
}

/* SMPTE 274M by way of CTA-861-H VIC 5: sync of 2 x 44 clocks at 74.25 MHz around the datum. */
static void
test_edges_of_trilevel_sync (void)
{
  static const double times_s[] = { -44 / 74.25e6, 0 };
  check_edges ("1125-60-interlaced", "sync \u2212", "blanking", times_s, G_N_ELEMENTS (times_s));
}

/* ITU-R BT.1700 part B: the trailing edge of sync may lie 4.5 to 4.9 µs after 0H. Where it may is
 * shaded, and nothing beside it is. */
static void
test_bands (void)
{
  const int width = 1100, height = 560;
  const BwInk black = { BW_THEME_PRINT, "Sans 10", 0 };
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();
  g_autoptr (GPtrArray) all = bw_limits_shipped ();
  const BwRaster *raster = bw_catalogue_raster (catalogue, "625-50-interlaced");
  const BwBlankingView with = { raster, bw_limits_find (all, "bt1700-pal"), NULL, '.' };
  g_autoptr (GArray) labels = test_texts (bw_blanking_drawing (&with, width, height, &black), NULL);
  const BwLabel *sync = test_find_label (labels, "sync", 0);
  cairo_surface_t *surface = draw (&with, &black, width, height);
  int y = (int) sync->box.y - 20; /* between blanking and the tip, below the burst */
  static const struct
  {
    double time_s;
    gboolean shaded;
  } points[] = { { 4.45e-6, FALSE }, { 4.53e-6, TRUE },  { 4.65e-6, TRUE },
                 { 4.87e-6, TRUE },  { 4.95e-6, FALSE }, { 2e-6, FALSE } };

  for (guint i = 0; i < G_N_ELEMENTS (points); i++)
    {
      double x = test_x_of (bw_blanking_drawing (&with, width, height, &black), 0,
                            points[i].time_s);
      guint32 pixel = test_pixel_at (surface, (int) x, y);
      guint red = pixel >> 16 & 0xff, green = pixel >> 8 & 0xff;
      if ((green > red + 8) != points[i].shaded)
        g_test_fail_printf ("%g s: #%06x", points[i].time_s, pixel);
    }
  cairo_surface_destroy (surface);
}

/* Every raster, in every theme in turn, draws something besides paper. */
static void
test_draw_all_rasters (void)
{
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();
  g_autoptr (GPtrArray) all = bw_limits_shipped ();
  GPtrArray *rasters = bw_catalogue_rasters (catalogue);

  for (guint i = 0; i < rasters->len; i++)
    {
      const BwRaster *raster = rasters->pdata[i];
      const BwInk with = { i % BW_N_THEMES, NULL, 0 };
      const BwBlankingView what = { raster, limits_for (all, raster), NULL, '.' };
      cairo_surface_t *surface = draw (&what, &with, 700, 450);
      guint32 paper = bw_ink_rgb (with.theme, BW_INK_PAPER);
      guint inked = 0;
      for (int y = 0; y < 450; y++)
        for (int x = 0; x < 700; x++)
          inked += test_pixel_at (surface, x, y) != paper;
      g_assert_cmpuint (inked, >, 700 * 450 / 20);
      cairo_surface_destroy (surface);
    }
}

static void
test_describe (void)
{
  static const char *const shown[] = { "Line blanking 12\u00a0µs", "front porch 1.5\u00a0µs",
                                       "sync 4.7\u00a0µs (allowed 4.5–4.9\u00a0µs)",
                                       "burst 2.25\u00a0µs" };
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();
  g_autoptr (GPtrArray) all = bw_limits_shipped ();
  const BwBlankingView what = { bw_catalogue_raster (catalogue, "625-50-interlaced"),
                                bw_limits_find (all, "bt1700-pal"), NULL, '.' };
  g_autofree char *text = test_description (bw_blanking_drawing (&what, 700, 450, &ink));
  for (guint i = 0; i < G_N_ELEMENTS (shown); i++)
    if (strstr (text, shown[i]) == NULL)
      g_test_fail_printf ("no “%s” in: %s", shown[i], text);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/draw/blanking-view/labels-of-all-rasters", test_labels_of_all_rasters);
  g_test_add_func ("/draw/blanking-view/labels-of-all-limits", test_labels_of_all_limits);
  g_test_add_func ("/draw/blanking-view/labels-on-any-page", test_labels_on_any_page);
  g_test_add_func ("/draw/blanking-view/figures", test_figures);
  g_test_add_func ("/draw/blanking-view/figures-in-pixels", test_figures_in_pixels);
  g_test_add_func ("/draw/blanking-view/limits", test_limits);
  g_test_add_func ("/draw/blanking-view/edges-of-bilevel-sync", test_edges_of_bilevel_sync);
  g_test_add_func ("/draw/blanking-view/edges-of-trilevel-sync", test_edges_of_trilevel_sync);
  g_test_add_func ("/draw/blanking-view/bands", test_bands);
  g_test_add_func ("/draw/blanking-view/draw-all-rasters", test_draw_all_rasters);
  g_test_add_func ("/draw/blanking-view/describe", test_describe);
  return g_test_run ();
}
