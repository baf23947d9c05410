/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <stdlib.h>

#include "core/bench/catalogue.h"
#include "core/bench/sheet.h"
#include "draw/detail/view.h"
#include "draw/field/view.h"
#include "draw/hookup/view.h"
#include "draw/levels/view.h"
#include "draw/map/view.h"
#include "draw/sync/view.h"
#include "draw/vector/view.h"

/* What a move of the pointer costs against building and painting the drawing that it moves over, in
 * the same run: the point is read, the cursor's lines are found, both cursors are put in words, and
 * what the old and the new lines cross is taken from the painted drawing again. The goal is a ratio
 * of at most 0.1 over the drawing that takes longest to build; nothing passes or fails by time. */

#define WIDTH 1920
#define HEIGHT 1080
#define BUILDS 9
#define MOVES 200
#define GOAL 0.1

static const BwInk ink = { BW_THEME_LIGHT, NULL, BW_INK_SCREEN_DPI };

typedef struct
{
  BwCatalogue *catalogue;
  BwSheet *sheet;
} Bench;

typedef BwDrawing *(*Build) (const Bench *bench);

static const BwRaster *
raster_of (const Bench *bench)
{
  return bw_catalogue_raster (bench->catalogue, "625-50-interlaced");
}

static BwDrawing *
build_field (const Bench *bench)
{
  const BwFieldView view = { .raster = raster_of (bench), .system = BW_SYSTEM_PAL_B, .mark = '.' };
  return bw_field_drawing (&view, WIDTH, HEIGHT, &ink);
}

static BwDrawing *
build_map (const Bench *bench)
{
  const BwMapView view = { .raster = raster_of (bench), .overscan_h = 0.08, .mark = '.' };
  return bw_map_drawing (&view, WIDTH, HEIGHT, &ink);
}

/* Its signal is made once, as in the window. */
static BwLevelsModel *
signal_of (const Bench *bench)
{
  static BwLevelsModel *model;
  g_autoptr (GError) error = NULL;
  BwSynthesisCase what = { .raster = raster_of (bench), .content = BW_CONTENT_BARS };

  if (model != NULL)
    return model;
  bw_wire_form_standard (BW_SYSTEM_PAL_B, BW_SIGNAL_COMPOSITE, BW_SYNC_IN_VIDEO, BW_SHAPE_BILEVEL,
                         &what.form);
  bw_synthesis_add_burst (&what.form);
  model = bw_levels_model_new (&what, &error);
  if (model == NULL)
    g_error ("%s", error->message);
  return model;
}

static BwDrawing *
build_levels (const Bench *bench, BwLevelsSpan span)
{
  const BwLevelsView view = { .model = signal_of (bench),
                              .span = span,
                              .line = 1,
                              .video = { 75, 75, BW_LOAD_75_OHM },
                              .mark = '.' };
  return bw_levels_drawing (&view, WIDTH, HEIGHT, &ink);
}

static BwDrawing *
build_line_of_levels (const Bench *bench)
{
  return build_levels (bench, BW_LEVELS_LINE);
}

static BwDrawing *
build_field_of_levels (const Bench *bench)
{
  return build_levels (bench, BW_LEVELS_FIELD);
}

static BwDrawing *
build_vectors (const Bench *bench)
{
  const BwVectorView view = {
    .model = signal_of (bench), .line = 100, .video = { 75, 75, BW_LOAD_75_OHM }, .mark = '.'
  };
  return bw_vector_drawing (&view, WIDTH, HEIGHT, &ink);
}

static BwDrawing *
build_sync (const Bench *bench)
{
  BwSyncMixCase what;
  BwSyncAfc afc;
  bw_sync_mix_case_init (&what, raster_of (bench), BW_SYNC_GATE_XOR);
  bw_sync_afc_init (&afc, what.raster);
  const BwSyncView view = { .what = &what, .afc = &afc, .mark = '.' };
  return bw_sync_drawing (&view, WIDTH, HEIGHT, &ink);
}

static BwDrawing *
build_detail (const Bench *bench)
{
  const BwSource *source = bench->sheet->sources->pdata[0];
  BwDetailCase what;
  BwDetail detail;
  bw_detail_case_from (&what, bench->sheet->monitor, bench->sheet->monitor->inputs->pdata[0],
                       source, bw_sheet_raster (bench->sheet, bench->catalogue, source));
  bw_detail_compute (&what, &detail);
  const BwDetailView view = {
    .kind = BW_DETAIL_MTF, .what = &what, .detail = &detail, .mark = '.'
  };
  return bw_detail_drawing (&view, WIDTH, HEIGHT, &ink);
}

static BwDrawing *
build_hookup (const Bench *bench)
{
  guint inputs = bench->sheet->monitor->inputs->len;
  g_autoptr (GError) error = NULL;
  g_autoptr (BwHookup) hookup = bw_hookup_new (bench->sheet, bench->catalogue, 3, inputs - 1, 0,
                                               &error);
  if (hookup == NULL)
    g_error ("%s", error->message);
  const BwHookupView view = { hookup, NULL, '.' };
  return bw_hookup_drawing (&view, WIDTH, HEIGHT, &ink);
}

static int
compare (const void *a, const void *b)
{
  double first = *(const double *) a, second = *(const double *) b;
  return (first > second) - (first < second);
}

static double
median (double *values, guint n)
{
  qsort (values, n, sizeof *values, compare);
  return values[n / 2];
}

static double
since_ms (gint64 start_us)
{
  return (double) (g_get_monotonic_time () - start_us) / 1000;
}

static cairo_surface_t *
page_new (void)
{
  return cairo_image_surface_create (CAIRO_FORMAT_ARGB32, WIDTH, HEIGHT);
}

static void
paint (cairo_surface_t *page, const BwDrawing *drawing)
{
  cairo_t *cr = cairo_create (page);
  bw_drawing_paint (drawing, cr);
  cairo_surface_flush (page);
  cairo_destroy (cr);
}

/* Takes what the lines of a cursor cross from the painted drawing. */
static void
restore (cairo_t *cr, cairo_surface_t *painted, double x, double y, const BwBox *lines,
         BwCursorStyle style)
{
  cairo_rectangle (cr, (int) x, lines->y, 1, lines->height);
  if (style == BW_CURSOR_CROSS)
    cairo_rectangle (cr, lines->x, (int) y, lines->width, 1);
  cairo_set_source_surface (cr, painted, 0, 0);
  cairo_fill (cr);
}

/* To the next pixel. */
static double
move_ms (cairo_t *cr, cairo_surface_t *painted, const BwDrawing *drawing,
         const BwDrawingPoint *second, double x, double y)
{
  gint64 start_us = g_get_monotonic_time ();
  BwDrawingPoint point;
  BwBox lines;

  if (bw_drawing_read (drawing, x, y, &point))
    {
      BwCursorStyle style = bw_drawing_cursor (drawing, x, y, &lines);
      g_autofree char *words = bw_drawing_words (drawing, &point);
      g_autofree char *apart = bw_drawing_difference (drawing, second, &point);
      restore (cr, painted, x - 1, y - 1, &lines, style);
      restore (cr, painted, x, y, &lines, style);
    }
  return since_ms (start_us);
}

static double
moves_ms (BwDrawing *drawing)
{
  const BwDrawingPlace *place = &g_array_index (bw_drawing_places (drawing), BwDrawingPlace, 0);
  double y = place->box.y + place->box.height / 2, values[MOVES];
  cairo_surface_t *painted = page_new (), *window = page_new ();
  cairo_t *cr = cairo_create (window);
  const BwDrawingPoint second = { place->id, place->across.from, 0.5 };

  paint (painted, drawing);
  for (guint i = 0; i < MOVES; i++)
    {
      double x = place->box.x + place->box.width * (i + 0.5) / MOVES;
      values[i] = move_ms (cr, painted, drawing, &second, x, y);
    }
  cairo_destroy (cr);
  cairo_surface_destroy (window);
  cairo_surface_destroy (painted);
  return median (values, MOVES);
}

static double
builds_ms (const Bench *bench, Build build)
{
  cairo_surface_t *page = page_new ();
  double values[BUILDS];

  for (guint i = 0; i < BUILDS; i++)
    {
      gint64 start_us = g_get_monotonic_time ();
      g_autoptr (BwDrawing) drawing = build (bench);
      paint (page, drawing);
      values[i] = since_ms (start_us);
    }
  cairo_surface_destroy (page);
  return median (values, BUILDS);
}

int
main (void)
{
  static const struct
  {
    const char *name;
    Build build;
  } cases[] = { { "field", build_field },
                { "map", build_map },
                { "levels of a line", build_line_of_levels },
                { "levels of a field", build_field_of_levels },
                { "vectors", build_vectors },
                { "sync", build_sync },
                { "detail curves", build_detail },
                { "hook-up", build_hookup } };
  g_autoptr (GPtrArray) faults = g_ptr_array_new_with_free_func ((GDestroyNotify) g_error_free);
  Bench bench = { bw_catalogue_new (NULL, faults), NULL };
  const char *busiest = "";
  double longest_ms = 0, ratio = 0;

  g_autofree char *path = g_build_filename (g_getenv ("BW_SOURCE_ROOT"), "data", "demo.bench",
                                            NULL);
  bench.sheet = bw_sheet_load (path, bench.catalogue, faults);
  if (bench.sheet == NULL)
    g_error ("%s cannot be read", path);
  g_print ("%d x %d, medians of %d builds and %d moves\n", WIDTH, HEIGHT, BUILDS, MOVES);
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (BwDrawing) drawing = cases[i].build (&bench);
      double build_ms = builds_ms (&bench, cases[i].build), one_ms = moves_ms (drawing);
      g_print ("%s: built and painted in %.2f ms, a move %.3f ms, ratio %.3f\n", cases[i].name,
               build_ms, one_ms, one_ms / build_ms);
      if (build_ms <= longest_ms)
        continue;
      longest_ms = build_ms;
      busiest = cases[i].name;
      ratio = one_ms / build_ms;
    }
  g_print ("the busiest is %s: ratio %.3f, goal %.2f\n", busiest, ratio, GOAL);
  bw_levels_model_unref (signal_of (&bench));
  bw_sheet_free (bench.sheet);
  bw_catalogue_free (bench.catalogue);
  return 0;
}
