/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/sync/view.h"

#include <math.h>
#include <string.h>

#include "support.h"

/* Under sanitizers, where everything is slow, only every so many of the rasters. */
#if defined(__SANITIZE_ADDRESS__) || defined(__SANITIZE_THREAD__)
#define RASTER_STEP 13
#else
#define RASTER_STEP 3
#endif

#define LINE_S (286 / 4.5 * 1e-6) /* SMPTE 170M-2004 table 2 */

static const BwInk ink = { BW_THEME_LIGHT, "Sans 10", BW_INK_SCREEN_DPI };
static const BwInk black = { BW_THEME_PRINT, "Sans 10", BW_INK_SCREEN_DPI };

/* In pixels of a screen. */
static const struct
{
  double width;
  double height;
} sizes[] = { { 600, 420 }, { 1000, 650 }, { 1920, 1080 } };

typedef struct
{
  BwCatalogue *catalogue;
  BwSyncMixCase what;
  BwSyncAfc afc;
  BwViewRange range;
  BwSyncView view;
} Drawing;

static void
set_case (Drawing *drawing, const BwRaster *raster, guint gate, int field)
{
  bw_sync_mix_case_init (&drawing->what, raster, gate);
  drawing->what.field = field;
  bw_sync_afc_init (&drawing->afc, raster);
  drawing->view = (BwSyncView){ &drawing->what, &drawing->afc, NULL, '.' };
}

static void
drawing_init (Drawing *drawing, const char *id, guint gate, int field)
{
  *drawing = (Drawing){ .catalogue = test_catalogue () };
  const BwRaster *raster = bw_catalogue_raster (drawing->catalogue, id);
  g_assert_nonnull (raster);
  set_case (drawing, raster, gate, field);
}

static void
drawing_clear (Drawing *drawing)
{
  bw_catalogue_free (drawing->catalogue);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Drawing, drawing_clear)

/* Labels */

static guint
check_labels (const BwSyncView *view, double width, double height, const BwInk *with)
{
  guint left_out = 0;
  g_autoptr (GArray) labels = test_texts (bw_sync_drawing (view, width, height, with), &left_out);

  test_labels_are_apart (labels, width, height, view->what->raster->id);
  test_labels_are_large (labels, with);
  return left_out;
}

/* On a page of these sizes everything has its place, and every row its name. */
static void
test_labels_of_rasters (void)
{
  static const char *const gates[BW_N_SYNC_GATES] = { "H AND V", "H OR V", "H XOR V", "H XNOR V",
                                                      "separated" };
  g_auto (Drawing) drawing;
  drawing_init (&drawing, "525-59.94-interlaced", 0, 0);
  GPtrArray *rasters = bw_catalogue_rasters (drawing.catalogue);

  for (guint r = 0; r < rasters->len; r += RASTER_STEP)
    for (guint i = 0; i < BW_N_SYNC_GATES; i++)
      {
        guint s = (r + i) % G_N_ELEMENTS (sizes);
        set_case (&drawing, rasters->pdata[r], i, 0);
        guint left_out = check_labels (&drawing.view, sizes[s].width, sizes[s].height, &ink);
        if (left_out > (s == 0 ? 2 : 0))
          g_error ("%s at %gx%g: %u left out", drawing.what.raster->id, sizes[s].width,
                   sizes[s].height, left_out);
        g_autoptr (GArray) labels = test_texts (bw_sync_drawing (&drawing.view, sizes[s].width,
                                                                 sizes[s].height, &ink),
                                                NULL);
        test_find_label (labels, "H", 0);
        test_find_label (labels, "V", 0);
        test_find_label (labels, gates[i], 0);
        test_find_label (labels, "standard", 0);
      }
}

static void
test_labels_on_any_page (void)
{
  static const double odd[][2] = { { 1, 1 },     { 40, 30 },   { 120, 600 }, { 200, 150 },
                                   { 320, 240 }, { 900, 200 }, { 2400, 90 }, { 4000, 3000 } };
  static const char *const fonts[] = { "Sans 6", "Serif 17", "Sans 40" };

  for (guint f = 0; f < G_N_ELEMENTS (fonts); f++)
    for (guint s = 0; s < G_N_ELEMENTS (odd); s++)
      {
        const BwInk other = { BW_THEME_DARK, fonts[f], 0 };
        g_auto (Drawing) drawing;
        drawing_init (&drawing, "525-59.94-interlaced", BW_SYNC_GATE_XOR, (int) s % 2);
        check_labels (&drawing.view, odd[s][0], odd[s][1], &other);
      }
}

static void
test_labels_of_any_part (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (31);
  g_auto (Drawing) drawing;
  drawing_init (&drawing, "625-50-interlaced", BW_SYNC_GATE_XNOR, 0);

  for (guint i = 0; i < 150; i += RASTER_STEP)
    {
      guint s = i % G_N_ELEMENTS (sizes);
      set_case (&drawing, drawing.what.raster, i % BW_N_SYNC_GATES, (int) i % 2);
      BwViewRange range = test_shown (bw_sync_drawing (&drawing.view, 600, 420, &ink)).across;
      double whole = range.high - range.low;
      bw_view_range_zoom (&range, range.low + whole * g_rand_double (rand),
                          pow (10, g_rand_double_range (rand, 0, 3)));
      drawing.view.range = &range;
      check_labels (&drawing.view, sizes[s].width, sizes[s].height, &ink);
    }
}

static void
assert_has (const Drawing *drawing, const char *text)
{
  g_autoptr (GArray) labels = test_texts (bw_sync_drawing (&drawing->view, 1000, 650, &ink), NULL);
  if (!test_labels_have (labels, text))
    g_error ("\"%s\" is not shown", text);
}

/* SMPTE 170M-2004: H of 4.7 us (table 2), V on lines 4 to 6, first picture line 21 (figure 7). By
 * the truth table of XOR the edges of lines 4 to 6 come 4.7 us late and line 7 has none. */
static void
test_figures (void)
{
  static const char *const shown[] = {
    "late by 4.7\u00a0µs",  "missing", "late: 3",         "missing: 1", "edge at its place: 22",
    "picture from line 21", "field sync starts", "SMPTE 170M-2004", "positive",   "does not lock"
  };
  g_auto (Drawing) drawing, lost;
  drawing_init (&drawing, "525-59.94-interlaced", BW_SYNC_GATE_XOR, 0);
  for (guint i = 0; i + 1 < G_N_ELEMENTS (shown); i++)
    assert_has (&drawing, shown[i]);
  drawing_init (&lost, "525-59.94-interlaced", BW_SYNC_GATE_OR, 0);
  assert_has (&lost, shown[G_N_ELEMENTS (shown) - 1]);
}

/* What is drawn */

static cairo_surface_t *
draw (const Drawing *drawing, double width, double height, const BwInk *with)
{
  return test_paint (bw_sync_drawing (&drawing->view, width, height, with));
}

static gboolean
is_dark (cairo_surface_t *surface, int x, int y)
{
  const unsigned char *data = cairo_image_surface_get_data (surface);
  const guint32 *row = (const void *) (data + y * cairo_image_surface_get_stride (surface));
  return ((row[x] >> 8) & 0xff) < 128;
}

/* Rows from top to bottom, as the pointer reads them along one column. */
static void
find_rows (const Drawing *drawing, double x, double *first, double *last)
{
  g_autoptr (BwDrawing) drawn = bw_sync_drawing (&drawing->view, 1000, 650, &black);
  BwDrawingPoint point;
  for (guint row = 0; row < BW_N_SYNC_ROWS; row++)
    first[row] = last[row] = -1;
  for (double y = 0; y < 650; y += 2)
    if (bw_drawing_read (drawn, x, y, &point))
      {
        if (first[point.id] < 0)
          first[point.id] = y;
        last[point.id] = y;
      }
}

/* A level of 1 is drawn above one of 0: in the middle of line 5, with V low, H is high; XOR is 1
 * and so at the top (truth table). Before V, in line 2, V is high and XOR low. */
static void
test_levels_drawn (void)
{
  static const struct
  {
    double line;
    int level[3];
  } cases[] = { { 1.5, { 1, 0, 1 } }, { -1.3, { 1, 1, 0 } } };
  g_auto (Drawing) drawing;
  drawing_init (&drawing, "525-59.94-interlaced", BW_SYNC_GATE_XOR, 0);
  cairo_surface_t *surface = draw (&drawing, 1000, 650, &black);

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      double x = test_x_of (bw_sync_drawing (&drawing.view, 1000, 650, &black), 0,
                            cases[i].line * LINE_S);
      double first[BW_N_SYNC_ROWS], last[BW_N_SYNC_ROWS];
      find_rows (&drawing, x, first, last);
      for (guint row = 0; row < 3; row++)
        {
          gboolean top = FALSE, bottom = FALSE;
          double half = (last[row] - first[row]) / 2;
          for (double y = first[row]; y <= last[row]; y++)
            if (is_dark (surface, (int) x + 2, (int) y))
              *(y < first[row] + half * 0.7 ? &top : &bottom) = TRUE;
          g_assert_cmpint (top, ==, cases[i].level[row] == 1);
          g_assert_cmpint (bottom, ==, cases[i].level[row] == 0);
        }
    }
  cairo_surface_destroy (surface);
}

/* All pages and themes can be drawn, and their paper differs. */
static void
test_themes (void)
{
  g_auto (Drawing) drawing;
  drawing_init (&drawing, "625-50-interlaced", BW_SYNC_GATE_AND, 1);
  for (guint theme = 0; theme < BW_N_THEMES; theme++)
    for (guint s = 0; s < G_N_ELEMENTS (sizes); s++)
      {
        const BwInk other = { theme, NULL, BW_INK_SCREEN_DPI };
        cairo_surface_t *surface = draw (&drawing, sizes[s].width, sizes[s].height, &other);
        const guint32 *row = (const void *) cairo_image_surface_get_data (surface);
        g_assert_cmphex (row[0] & 0xffffff, ==, bw_ink_rgb (theme, BW_INK_PAPER));
        cairo_surface_destroy (surface);
      }
}

/* Reading with the pointer */

static void
test_rows (void)
{
  g_auto (Drawing) drawing;
  double first[BW_N_SYNC_ROWS], last[BW_N_SYNC_ROWS];
  drawing_init (&drawing, "525-59.94-interlaced", BW_SYNC_GATE_XNOR, 1);
  find_rows (&drawing, 500, first, last);
  for (guint row = 0; row < BW_N_SYNC_ROWS; row++)
    {
      g_assert_cmpfloat (first[row], >=, 0);
      g_assert_cmpfloat (last[row] - first[row], >, 20);
      if (row > 0)
        g_assert_cmpfloat (first[row], >, last[row - 1]);
    }
}

/* Line 4 starts with field sync; a microsecond later H and V are low (SMPTE 170M-2004 figure 7),
 * XOR is 0 (truth table) and the edge of the line comes 4.7 us late. */
static void
test_reading (void)
{
  static const char *const levels[] = { " low:", " low:", " low:", " low:", " phase:" };
  g_auto (Drawing) drawing;
  double first[BW_N_SYNC_ROWS], last[BW_N_SYNC_ROWS];

  drawing_init (&drawing, "525-59.94-interlaced", BW_SYNC_GATE_XOR, 0);
  drawing.range = test_shown (bw_sync_drawing (&drawing.view, 1000, 650, &black)).across;
  bw_view_range_show (&drawing.range, -0.2 * LINE_S, 0.5 * LINE_S);
  drawing.view.range = &drawing.range;
  g_autoptr (BwDrawing) drawn = bw_sync_drawing (&drawing.view, 1000, 650, &black);
  double x = test_x_of (bw_drawing_ref (drawn), 0, 1e-6);
  find_rows (&drawing, x, first, last);
  for (guint row = 0; row < BW_N_SYNC_ROWS; row++)
    {
      double y = (first[row] + last[row]) / 2;
      BwDrawingPoint point;
      g_assert_true (bw_drawing_read (drawn, x, y, &point));
      g_assert_cmpuint (point.id, ==, row);
      g_autofree char *words = bw_drawing_words (drawn, &point);
      g_assert_nonnull (strstr (words, levels[row]));
      g_assert_nonnull (strstr (words, ": line 4, 1\u00a0µs after its 0H, 1\u00a0µs after field sync starts; "));
      g_assert_nonnull (strstr (words, "its edge is 4.7\u00a0µs late"));
    }
  BwDrawingPoint outside = { .id = 77 };
  g_assert_true (isnan (test_x_of (bw_drawing_ref (drawn), 0, LINE_S)));
  g_assert_false (bw_drawing_read (drawn, 2, 300, &outside));
  g_assert_false (bw_drawing_read (drawn, 500, 640, &outside));
  g_assert_cmpuint (outside.id, ==, 77);
}

/* The time after 0H that stands in the words of a point. */
static double
line_time_of (const char *words)
{
  double time_s = 0;
  g_auto (GStrv) parts = g_strsplit (strstr (words, ": line "), ", ", 2);
  g_auto (GStrv) times = g_strsplit (parts[1], " after its 0H", 2);
  g_assert_true (bw_quantity_parse (times[0], BW_DIMENSION_TIME, '.', &time_s, NULL));
  return time_s;
}

static void
test_round_trip (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (5);
  g_auto (Drawing) drawing;
  drawing_init (&drawing, "625-50-interlaced", BW_SYNC_GATE_STANDARD, 1);
  drawing.range = test_shown (bw_sync_drawing (&drawing.view, 1000, 650, &ink)).across;
  drawing.view.range = &drawing.range;
  for (int i = 0; i < 40; i++)
    {
      BwDrawingPoint point;
      if (i % 10 == 0)
        bw_view_range_zoom (&drawing.range, 0, 1.7);
      double time_s = g_rand_double_range (rand, drawing.range.from, drawing.range.to);
      g_autoptr (BwDrawing) drawn = bw_sync_drawing (&drawing.view, 1000, 650, &ink);
      double x = test_x_of (bw_drawing_ref (drawn), 0, time_s);
      g_assert_true (bw_drawing_read (drawn, x, 300, &point));
      g_assert_cmpfloat_with_epsilon (point.across, time_s, 1e-12);
      g_autofree char *words = bw_drawing_words (drawn, &point);
      g_assert_cmpfloat (line_time_of (words), >=, 0);
      g_assert_cmpfloat (line_time_of (words), <, 64e-6 * (1 + 1e-4)); /* BT.470-6 table 1-1 */
    }
}

static void
test_describe (void)
{
  static const char *const shown[] = { "field 1: H (negative) XOR V (negative)",
                                       "SMPTE 170M-2004",
                                       "lines 4 to 6, late by",
                                       "no gate can make them",
                                       "first line of picture, 21",
                                       "positive" };
  g_auto (Drawing) drawing;
  drawing_init (&drawing, "525-59.94-interlaced", BW_SYNC_GATE_XOR, 0);
  g_autofree char *text = test_description (bw_sync_drawing (&drawing.view, 1000, 650, &ink));
  for (guint i = 0; i < G_N_ELEMENTS (shown); i++)
    if (strstr (text, shown[i]) == NULL)
      g_error ("\"%s\" is not in: %s", shown[i], text);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/draw/sync-view/labels-of-rasters", test_labels_of_rasters);
  g_test_add_func ("/draw/sync-view/labels-on-any-page", test_labels_on_any_page);
  g_test_add_func ("/draw/sync-view/labels-of-any-part", test_labels_of_any_part);
  g_test_add_func ("/draw/sync-view/figures", test_figures);
  g_test_add_func ("/draw/sync-view/levels-drawn", test_levels_drawn);
  g_test_add_func ("/draw/sync-view/themes", test_themes);
  g_test_add_func ("/draw/sync-view/rows", test_rows);
  g_test_add_func ("/draw/sync-view/read", test_reading);
  g_test_add_func ("/draw/sync-view/round-trip", test_round_trip);
  g_test_add_func ("/draw/sync-view/describe", test_describe);
  return g_test_run ();
}
