/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/line/view.h"

#include <math.h>
#include <string.h>

#include "draw/line/shape.h"
#include "support.h"

static const BwInk ink = { BW_THEME_LIGHT, "Sans 10", BW_INK_SCREEN_DPI };

/* Smallest to largest page that the drawing is made for, in pixels of a screen. */
static const struct
{
  double width;
  double height;
  guint may_leave; /* steps of the order in line-view.h: the note, names of levels */
} sizes[] = { { 520, 360, 2 }, { 700, 450, 0 }, { 1100, 700, 0 }, { 1800, 1000, 0 } };

static GArray *
labels_of (const BwCatalogue *catalogue, const char *id, double width, double height, char mark)
{
  const BwRaster *raster = bw_catalogue_raster (catalogue, id);
  g_assert_nonnull (raster);
  return test_texts (bw_line_drawing (&(BwLineView){ raster, NULL, mark }, width, height, &ink),
                     NULL);
}

static void
test_labels_of_all_rasters (void)
{
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();
  GPtrArray *rasters = bw_catalogue_rasters (catalogue);

  for (guint i = 0; i < rasters->len; i++)
    for (guint s = 0; s < G_N_ELEMENTS (sizes); s++)
      {
        const BwRaster *raster = rasters->pdata[i];
        guint left_out = 0;
        g_autoptr (GArray) labels = test_texts (bw_line_drawing (&(BwLineView){ raster, NULL, '.' },
                                                                 sizes[s].width, sizes[s].height,
                                                                 &ink),
                                                &left_out);
        test_labels_are_apart (labels, sizes[s].width, sizes[s].height, raster->id);
        if (left_out > sizes[s].may_leave)
          g_test_fail_printf ("%s at %gx%g: %u left out", raster->id, sizes[s].width,
                              sizes[s].height, left_out);
      }
}

/* Whatever the page and the font, what is drawn is drawn whole, in the size asked for. */
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
          const BwRaster *raster = bw_catalogue_raster (catalogue, ids[i]);
          g_autoptr (GArray) labels = test_texts (bw_line_drawing (&(BwLineView){ raster, NULL,
                                                                                  '.' },
                                                                   odd[s][0], odd[s][1], &other),
                                                  NULL);
          test_labels_are_apart (labels, odd[s][0], odd[s][1], ids[i]);
          test_labels_are_large (labels, &other);
        }
}

/* A name of any length ends in an ellipsis and does not run into the drawing. */
static void
test_long_name (void)
{
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();
  g_autoptr (BwRaster) raster = bw_raster_copy (
      bw_catalogue_raster (catalogue, "525-59.94-interlaced"));
  g_autoptr (GString) name = g_string_new (NULL);

  for (int i = 0; i < 200; i++)
    g_string_append (name, "long name ");
  g_free (raster->name);
  raster->name = g_strdup (name->str);
  for (guint s = 0; s < G_N_ELEMENTS (sizes); s++)
    {
      g_autoptr (GArray) labels = test_texts (bw_line_drawing (&(BwLineView){ raster, NULL, '.' },
                                                               sizes[s].width, sizes[s].height,
                                                               &ink),
                                              NULL);
      test_labels_are_apart (labels, sizes[s].width, sizes[s].height, "long name");
      g_assert_true (test_labels_have (labels, "long name"));
    }
}

/* How many pixels differ from the paper. */
static guint
count_inked (cairo_surface_t *surface, guint32 paper)
{
  guint n = 0;
  cairo_surface_flush (surface);
  const guchar *data = cairo_image_surface_get_data (surface);
  int stride = cairo_image_surface_get_stride (surface);
  for (int y = 0; y < cairo_image_surface_get_height (surface); y++)
    for (int x = 0; x < cairo_image_surface_get_width (surface); x++)
      {
        guint32 pixel;
        memcpy (&pixel, data + y * stride + x * 4, 4);
        n += (pixel & 0xffffff) != paper;
      }
  return n;
}

static BwDrawing *
drawing_of (const BwRaster *raster, const BwInk *with, int width, int height)
{
  const BwLineView what = { raster, NULL, '.' };
  return bw_line_drawing (&what, width, height, with);
}

static cairo_surface_t *
draw (const BwRaster *raster, const BwInk *with, int width, int height)
{
  return test_paint (drawing_of (raster, with, width, height));
}

/* Every raster on the smallest page, and on the others in turn, in every theme in turn. */
static void
test_draw_all_rasters (void)
{
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();
  GPtrArray *rasters = bw_catalogue_rasters (catalogue);

  for (guint i = 0; i < rasters->len; i++)
    for (guint k = 0; k < 2; k++)
      {
        guint s = k == 0 ? 0 : 1 + i % (G_N_ELEMENTS (sizes) - 1);
        const BwInk with = { i % BW_N_THEMES, NULL, 0 };
        cairo_surface_t *surface = draw (rasters->pdata[i], &with, (int) sizes[s].width,
                                         (int) sizes[s].height);
        guint inked = count_inked (surface, bw_ink_rgb (with.theme, BW_INK_PAPER));
        g_assert_cmpfloat (inked, >, 0.05 * sizes[s].width * sizes[s].height);
        cairo_surface_destroy (surface);
      }
}

/* SMPTE 170M-2004 table 2: front porch 1.5 µs, sync 4.7 µs, blanking 10.7 µs; line rate
 * 4.5 MHz / 286, so the line lasts 286 / 4.5 = 63.556 µs, of which 63.556 - 10.7 = 52.856 µs are
 * active and 10.7 - 1.5 - 4.7 = 4.5 µs back porch. Shares by hand: 1.5 / 63.556 = 2.4 %,
 * 4.7 / 63.556 = 7.4 %, 10.7 / 63.556 = 16.8 %. */
static const char *const smpte_170m[] = { "63.556\u00a0µs", "15.734\u00a0kHz", "1.5\u00a0µs",
                                          "2.4\u00a0%",     "4.7\u00a0µs",     "7.4\u00a0%",
                                          "4.5\u00a0µs",    "7.1\u00a0%",      "10.7\u00a0µs",
                                          "16.8\u00a0%",    "52.856\u00a0µs",  "83.2\u00a0%" };

static void
test_figures_525 (void)
{
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();
  for (guint s = 0; s < G_N_ELEMENTS (sizes); s++)
    {
      g_autoptr (GArray) labels = labels_of (catalogue, "525-59.94-interlaced", sizes[s].width,
                                             sizes[s].height, '.');
      for (guint i = 0; i < G_N_ELEMENTS (smpte_170m); i++)
        if (!test_labels_have (labels, smpte_170m[i]))
          g_test_fail_printf ("%gx%g does not show %s", sizes[s].width, sizes[s].height,
                              smpte_170m[i]);
      g_assert_true (test_labels_have (labels, "SMPTE 170M-2004"));
      g_assert_true (test_labels_have (labels, "525-line interlaced, 59.94 Hz"));
      g_assert_false (test_labels_have (labels, "px"));
      g_assert_false (test_labels_have (labels, "border"));
    }
}

/* VESA DMT v1.0 rev. 13, ID 0x04: 640 active, borders 8, front porch 8, sync 96, back porch 40 of
 * 800 pixels at 25.175 MHz; 800 / 25.175 = 31.778 µs, 96 / 25.175 = 3.813 µs. */
static void
test_figures_dmt_04 (void)
{
  static const char *const shown[] = { "800\u00a0px", "31.778\u00a0µs", "640\u00a0px",
                                       "96\u00a0px",  "3.813\u00a0µs",  "40\u00a0px",
                                       "144\u00a0px", "left border",    "right border",
                                       "8\u00a0px" };
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();
  for (guint s = 0; s < G_N_ELEMENTS (sizes); s++)
    {
      g_autoptr (GArray) labels = labels_of (catalogue, "vesa-dmt-04", sizes[s].width,
                                             sizes[s].height, '.');
      for (guint i = 0; i < G_N_ELEMENTS (shown); i++)
        if (!test_labels_have (labels, shown[i]))
          g_test_fail_printf ("%gx%g does not show %s", sizes[s].width, sizes[s].height, shown[i]);
    }
}

static void
test_decimal_comma (void)
{
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();
  g_autoptr (GArray) labels = labels_of (catalogue, "525-59.94-interlaced", 1100, 700, ',');
  g_assert_true (test_labels_have (labels, "63,556\u00a0µs"));
  g_assert_true (test_labels_have (labels, "16,8\u00a0%"));
  g_assert_false (test_labels_have (labels, "63.556"));
}

/* Only the curve is black; dimension lines are lighter and thinner. */
static gboolean
is_curve (cairo_surface_t *surface, int x, int y)
{
  guint32 pixel;
  memcpy (&pixel,
          cairo_image_surface_get_data (surface) + y * cairo_image_surface_get_stride (surface)
              + x * 4,
          4);
  return (pixel & 0xff) < 0x30 && (pixel >> 8 & 0xff) < 0x30 && (pixel >> 16 & 0xff) < 0x30;
}

/* The middles of the vertical edges of the curve that cross row @y, from @from_x on. */
static guint
find_edges (cairo_surface_t *surface, int from_x, int y, double *edges, guint most)
{
  guint n = 0;
  int start = -1;
  for (int x = from_x; x < cairo_image_surface_get_width (surface); x++)
    {
      gboolean dark = is_curve (surface, x, y);
      if (dark && start < 0)
        start = x;
      if (!dark && start >= 0)
        {
          if (n < most)
            edges[n] = (start + x) / 2.0;
          n++;
          start = -1;
        }
    }
  return n;
}

static double
middle (const BwLabel *label)
{
  return label->box.y + label->box.height / 2;
}

/* Reads the sync edges of the enlarged blanking off the picture itself, between the levels @low and
 * @high, and asks what time they are at. */
static void
check_edges (const char *id, const char *low, const char *high, const double *times_s, guint n)
{
  const int width = 1100, height = 700;
  const BwInk black = { BW_THEME_PRINT, "Sans 10", 0 };
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();
  const BwRaster *raster = bw_catalogue_raster (catalogue, id);
  g_autoptr (GArray) labels = test_texts (bw_line_drawing (&(BwLineView){ raster, NULL, '.' },
                                                           width, height, &black),
                                          NULL);
  const BwLabel *low_label = test_find_label (labels, low, 0);
  const BwLabel *high_label = test_find_label (labels, high, 0);
  int y = (int) ((middle (low_label) + middle (high_label)) / 2);
  int from_x = (int) (low_label->box.x + low_label->box.width) + 4;
  cairo_surface_t *surface = draw (raster, &black, width, height);
  g_autoptr (BwDrawing) drawing = drawing_of (raster, &black, width, height);
  double edges[16];

  cairo_surface_flush (surface);
  g_assert_cmpuint (find_edges (surface, from_x, y, edges, 16), ==, n);
  for (guint i = 0; i < n; i++)
    {
      BwDrawingPoint at, next;
      g_assert_true (bw_drawing_read (drawing, edges[i], y, &at));
      g_assert_true (bw_drawing_read (drawing, edges[i] + 1, y, &next));
      g_assert_cmpuint (at.id, ==, BW_LINE_PART);
      g_assert_cmpfloat (fabs (at.across - times_s[i]), <=, next.across - at.across); /* a pixel */
    }
  cairo_surface_destroy (surface);
}

/* SMPTE 170M-2004 table 2: the datum is the leading edge of sync, which is 4.7 µs wide. */
static void
test_time_of_bilevel_sync (void)
{
  static const double times_s[] = { 0, 4.7e-6 };
  check_edges ("525-59.94-interlaced", "sync", "blanking", times_s, G_N_ELEMENTS (times_s));
}

/* SMPTE 274M by way of CTA-861-H VIC 5: 44 clocks front porch, sync 2 x 44 clocks, back porch 148,
 * at 74.25 MHz; the datum is the crossing in the middle of sync. Between blanking and the positive
 * tip only that crossing and the trailing edge are drawn, with the fall from white before and the
 * first step of the picture after, which is below the row that is read. */
static void
test_time_of_trilevel_sync (void)
{
  static const double times_s[] = { -88 / 74.25e6, 0, 44 / 74.25e6 };
  check_edges ("1125-60-interlaced", "blanking", "sync +", times_s, G_N_ELEMENTS (times_s));
}

static void
test_time_outside (void)
{
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();
  const BwRaster *raster = bw_catalogue_raster (catalogue, "625-50-interlaced");
  static const double points[][2] = {
    { 0, 0 }, { -5, 100 }, { 699, 449 }, { 350, 440 }, { 1, 200 }
  };
  g_autoptr (BwDrawing) drawing = drawing_of (raster, &ink, 700, 450);
  BwDrawingPoint point = { .id = 77 };

  for (guint i = 0; i < G_N_ELEMENTS (points); i++)
    g_assert_false (bw_drawing_read (drawing, points[i][0], points[i][1], &point));
  g_assert_cmpuint (point.id, ==, 77);
}

/* Along each of the two curves time runs evenly: the upper one spans more than a line, the lower
 * one the blanking of 12 µs (ITU-R BT.470-6) and a little more. */
static void
test_time_runs_evenly (void)
{
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();
  const BwRaster *raster = bw_catalogue_raster (catalogue, "625-50-interlaced");
  g_autoptr (BwDrawing) drawing = drawing_of (raster, &ink, 700, 450);
  double spans_s[2] = { 0 };
  guint n = 0;

  for (int y = 0; y < 450 && n < 2; y++)
    {
      double first_s = 0, last_s = 0;
      guint count = 0;
      for (int x = 0; x < 700; x++)
        {
          BwDrawingPoint point;
          if (!bw_drawing_read (drawing, x, y, &point))
            continue;
          g_assert_true (count == 0 || point.across > last_s);
          first_s = count++ == 0 ? point.across : first_s;
          last_s = point.across;
        }
      if (count > 0)
        {
          spans_s[n++] = last_s - first_s;
          y += n == 1 ? 140 : 0; /* into the lower curve */
        }
      y += count == 0 ? 4 : 0;
    }
  g_assert_cmpuint (n, ==, 2);
  g_assert_cmpfloat (spans_s[0], >, 64e-6);
  g_assert_cmpfloat (spans_s[0], <, 80e-6);
  g_assert_cmpfloat (spans_s[1], >, 12e-6);
  g_assert_cmpfloat (spans_s[1], <, 16e-6);
}

/* The levels of every raster follow each other without a gap, and every time has its interval. */
static void
test_shape (void)
{
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();
  GPtrArray *rasters = bw_catalogue_rasters (catalogue);

  for (guint i = 0; i < rasters->len; i++)
    {
      BwLineShape shape;
      bw_line_shape_init (&shape, rasters->pdata[i]);
      double tiny = 1e-9 * shape.period_s;
      double from_s = shape.start_s[0] - 0.3 * shape.period_s, to_s = from_s + 2 * shape.period_s;
      g_autoptr (GArray) steps = bw_line_shape_steps (&shape, from_s, to_s);

      for (guint k = 0; k <= steps->len; k++)
        {
          double end_s = k == 0 ? from_s : g_array_index (steps, BwLineStep, k - 1).to_s;
          double start_s = k == steps->len ? to_s : g_array_index (steps, BwLineStep, k).from_s;
          g_assert_cmpfloat_with_epsilon (end_s, start_s, tiny);
        }
      for (guint k = 0; k < BW_N_INTERVALS; k++)
        {
          double middle_s = (shape.start_s[k] + shape.start_s[k + 1]) / 2;
          if (bw_line_shape_length (&shape, k) > 0)
            {
              g_assert_cmpint (bw_line_shape_at (&shape, middle_s), ==, k);
              g_assert_cmpint (bw_line_shape_at (&shape, middle_s - 3 * shape.period_s), ==, k);
            }
        }
    }
}

static void
test_describe (void)
{
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();
  const BwRaster *raster = bw_catalogue_raster (catalogue, "525-59.94-interlaced");
  g_autofree char *text = test_description (drawing_of (raster, &ink, 700, 450));
  for (guint i = 0; i < G_N_ELEMENTS (smpte_170m); i++)
    if (strstr (smpte_170m[i], "kHz") == NULL)
      g_assert_nonnull (strstr (text, smpte_170m[i]));
}

/* Colour burst: nine cycles of 3.579545 MHz, 2.514 µs, from 19 of them after 0H, 5.308 µs (SMPTE 170M-2004 table 2,
 * ITU-R BT.470-6 table 2); ten of 4.43361875 MHz, 2.2555 µs, from 5.6 µs (BT.1700 part B). SECAM has none,
 * and no system has one on the raster of a computer. */
static const struct
{
  const char *raster;
  BwColourSystem system;
  double from_s;
  double length_s;
} bursts[] = {
  { "525-59.94-interlaced", BW_SYSTEM_NTSC_M, 5.308e-6, 2.514e-6 },
  { "625-50-interlaced", BW_SYSTEM_PAL_B, 5.6e-6, 2.2555e-6 },
  { "625-50-interlaced", BW_SYSTEM_SECAM_L, 0, 0 },
  { "525-59.94-interlaced", BW_SYSTEM_NONE, 0, 0 },
  { "vesa-dmt-04", BW_SYSTEM_NTSC_M, 0, 0 },
};

static void
test_burst (void)
{
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();
  for (guint i = 0; i < G_N_ELEMENTS (bursts); i++)
    {
      const BwRaster *raster = bw_catalogue_raster (catalogue, bursts[i].raster);
      const BwLineView what = { raster, NULL, '.', bursts[i].system };
      g_autoptr (BwDrawing) drawing = bw_line_drawing (&what, 1100, 700, &ink);
      BwLineShape shape;
      BwDrawingPoint before = { .id = BW_LINE_PART, .across = bursts[i].from_s - 0.1e-6 };
      BwDrawingPoint inside = { .id = BW_LINE_PART, .across = bursts[i].from_s + 0.1e-6 };

      bw_line_shape_init (&shape, raster);
      bw_line_shape_add_burst (&shape, raster, bursts[i].system);
      g_assert_cmpint (bw_line_shape_has_burst (&shape), ==, bursts[i].length_s > 0);
      g_assert_cmpint (strstr (bw_drawing_description (drawing), "burst") != NULL, ==,
                       bursts[i].length_s > 0);
      if (!(bursts[i].length_s > 0))
        continue;
      g_autofree char *first = bw_drawing_words (drawing, &before);
      g_autofree char *second = bw_drawing_words (drawing, &inside);
      g_assert_true (fabs (shape.burst_from_s - bursts[i].from_s) < 1e-9);
      g_assert_true (fabs (shape.burst_to_s - shape.burst_from_s - bursts[i].length_s) < 1e-9);
      g_assert_nonnull (strstr (first, "at blanking"));
      g_assert_nonnull (strstr (second, "in the burst"));
    }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/draw/line-view/labels-of-all-rasters", test_labels_of_all_rasters);
  g_test_add_func ("/draw/line-view/labels-on-any-page", test_labels_on_any_page);
  g_test_add_func ("/draw/line-view/long-name", test_long_name);
  g_test_add_func ("/draw/line-view/draw-all-rasters", test_draw_all_rasters);
  g_test_add_func ("/draw/line-view/figures-525", test_figures_525);
  g_test_add_func ("/draw/line-view/figures-dmt-04", test_figures_dmt_04);
  g_test_add_func ("/draw/line-view/decimal-comma", test_decimal_comma);
  g_test_add_func ("/draw/line-view/time-of-bilevel-sync", test_time_of_bilevel_sync);
  g_test_add_func ("/draw/line-view/time-of-trilevel-sync", test_time_of_trilevel_sync);
  g_test_add_func ("/draw/line-view/time-outside", test_time_outside);
  g_test_add_func ("/draw/line-view/time-runs-evenly", test_time_runs_evenly);
  g_test_add_func ("/draw/line-view/shape", test_shape);
  g_test_add_func ("/draw/line-view/describe", test_describe);
  g_test_add_func ("/draw/line-view/burst", test_burst);
  return g_test_run ();
}
