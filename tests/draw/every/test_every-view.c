/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>

#include "draw/base/export.h"
#include "draw/blanking/view.h"
#include "draw/detail/view.h"
#include "draw/field/view.h"
#include "draw/hookup/view.h"
#include "draw/levels/view.h"
#include "draw/line/view.h"
#include "draw/map/view.h"
#include "draw/sync/view.h"
#include "draw/vector/view.h"
#include "support.h"

/* What holds for the drawing of every view. */

/* What a view is drawn of. */
typedef struct
{
  BwCatalogue *catalogue;
  GPtrArray *limits;
  BwSheet *sheet;
  BwLevelsModel *model;
} Bench;

typedef struct
{
  double width;
  double height;
  const BwInk *ink;
  const BwZoom *zoom;
} Page;

typedef BwDrawing *(*Build) (const Bench *bench, const Page *page);

static const BwRaster *
raster_of (const Bench *bench)
{
  return bw_catalogue_raster (bench->catalogue, "525-59.94-interlaced");
}

static const BwViewRange *
across_of (const Page *page)
{
  return page->zoom != NULL ? &page->zoom->across : NULL;
}

static BwDrawing *
build_line (const Bench *bench, const Page *page)
{
  const BwLineView view = { raster_of (bench), across_of (page), '.' };
  return bw_line_drawing (&view, page->width, page->height, page->ink);
}

static BwDrawing *
build_blanking (const Bench *bench, const Page *page)
{
  const BwBlankingView view = { raster_of (bench), bw_limits_find (bench->limits, "smpte-170m"),
                                across_of (page), '.' };
  return bw_blanking_drawing (&view, page->width, page->height, page->ink);
}

static BwDrawing *
build_field (const Bench *bench, const Page *page)
{
  const BwFieldView view = { raster_of (bench), BW_SYSTEM_NTSC_M, 0, across_of (page), '.' };
  return bw_field_drawing (&view, page->width, page->height, page->ink);
}

static BwDrawing *
build_map (const Bench *bench, const Page *page)
{
  const BwMapView view = { .raster = raster_of (bench),
                           .overscan_h = 0.08,
                           .overscan_v = 0.06,
                           .across = across_of (page),
                           .down = page->zoom != NULL ? &page->zoom->down : NULL,
                           .mark = '.' };
  return bw_map_drawing (&view, page->width, page->height, page->ink);
}

static BwLevelsView
levels_of (const Bench *bench, BwLevelsSpan span)
{
  return (BwLevelsView){ .model = bench->model,
                         .span = span,
                         .line = span == BW_LEVELS_FIELD ? 1 : 100,
                         .video = { 75, 75, BW_LOAD_75_OHM },
                         .mark = '.' };
}

static BwDrawing *
build_levels (const Bench *bench, const Page *page)
{
  BwLevelsView view = levels_of (bench, BW_LEVELS_LINE);
  view.across = across_of (page);
  return bw_levels_drawing (&view, page->width, page->height, page->ink);
}

static BwDrawing *
build_levels_of_field (const Bench *bench, const Page *page)
{
  BwLevelsView view = levels_of (bench, BW_LEVELS_FIELD);
  view.across = across_of (page);
  return bw_levels_drawing (&view, page->width, page->height, page->ink);
}

static BwDrawing *
build_vectors (const Bench *bench, const Page *page)
{
  const BwVectorView view = {
    .model = bench->model, .line = 100, .video = { 75, 75, BW_LOAD_75_OHM }, .mark = '.'
  };
  return bw_vector_drawing (&view, page->width, page->height, page->ink);
}

static BwDrawing *
build_sync (const Bench *bench, const Page *page)
{
  BwSyncMixCase what;
  BwSyncAfc afc;
  bw_sync_mix_case_init (&what, raster_of (bench), BW_SYNC_GATE_XOR);
  bw_sync_afc_init (&afc, what.raster);
  const BwSyncView view = { &what, &afc, across_of (page), '.' };
  return bw_sync_drawing (&view, page->width, page->height, page->ink);
}

static BwDrawing *
build_detail (const Page *page, BwDetailViewKind kind)
{
  BwDetailCase what;
  BwDetail detail;
  bw_detail_case_init (&what);
  what.diagonal_m = 0.48;
  what.mask = BW_MASK_GRILLE;
  what.pitch_m = 0.3e-3;
  what.spot_m = 0.6e-3;
  what.bandwidth_hz = 10e6;
  what.active_s = 52.66e-6;
  what.active_lines = 485;
  what.interlaced = TRUE;
  bw_detail_compute (&what, &detail);
  const BwDetailView view = { kind, &what, &detail, "a tube", '.' };
  return bw_detail_drawing (&view, page->width, page->height, page->ink);
}

static BwDrawing *
build_chain (const Bench *bench, const Page *page)
{
  return build_detail (page, BW_DETAIL_CHAIN);
}

static BwDrawing *
build_curves (const Bench *bench, const Page *page)
{
  return build_detail (page, BW_DETAIL_MTF);
}

static BwDrawing *
build_pitch (const Bench *bench, const Page *page)
{
  return build_detail (page, BW_DETAIL_PITCH);
}

static BwDrawing *
build_structure (const Bench *bench, const Page *page)
{
  return build_detail (page, BW_DETAIL_STRUCTURE);
}

static BwDrawing *
build_hookup (const Bench *bench, const Page *page)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (BwHookup) hookup = bw_hookup_new (bench->sheet, bench->catalogue, 2, 2, 0, &error);
  g_assert_no_error (error);
  const BwHookupView view = { hookup, NULL, '.' };
  return bw_hookup_drawing (&view, page->width, page->height, page->ink);
}

static const struct
{
  const char *name;
  Build build;
  gboolean zoomed;
} views[] = {
  { "line", build_line, TRUE },           { "blanking", build_blanking, TRUE },
  { "field", build_field, TRUE },         { "map", build_map, TRUE },
  { "levels", build_levels, TRUE },       { "levels-of-a-field", build_levels_of_field, TRUE },
  { "vectors", build_vectors, FALSE },    { "sync", build_sync, TRUE },
  { "detail-chain", build_chain, FALSE }, { "detail-curves", build_curves, FALSE },
  { "detail-pitch", build_pitch, FALSE }, { "detail-structure", build_structure, FALSE },
  { "hook-up", build_hookup, FALSE },
};

static void
set_up (Bench *bench, gconstpointer which)
{
  g_autoptr (GPtrArray) faults = g_ptr_array_new_with_free_func ((GDestroyNotify) g_error_free);
  g_autofree char *path = g_build_filename (g_getenv ("BW_SOURCE_ROOT"), "data", "demo.bench",
                                            NULL);
  const TestSignal ntsc = { "525-59.94-interlaced", BW_SYSTEM_NTSC_M, BW_SIGNAL_COMPOSITE,
                            BW_SYNC_IN_VIDEO };

  bench->catalogue = test_catalogue ();
  bench->limits = bw_limits_shipped ();
  bench->sheet = bw_sheet_load (path, bench->catalogue, faults);
  g_assert_nonnull (bench->sheet);
  bench->model = test_levels_model (&ntsc, BW_CONTENT_BARS, BW_BARS_75);
}

static void
tear_down (Bench *bench, gconstpointer which)
{
  bw_levels_model_unref (bench->model);
  bw_sheet_free (bench->sheet);
  g_ptr_array_unref (bench->limits);
  bw_catalogue_free (bench->catalogue);
}

static BwDrawing *
build (const Bench *bench, gconstpointer which, const Page *page)
{
  return views[GPOINTER_TO_UINT (which)].build (bench, page);
}

static const BwInk ink = { BW_THEME_LIGHT, "Sans 10", BW_INK_SCREEN_DPI };
static const Page usual = { 1000, 650, &ink, NULL };

/* A name, a description, texts that keep apart, and places that read back what they place. */
static void
test_sound (Bench *bench, gconstpointer which)
{
  static const double sizes[][2] = {
    { 400, 300 }, { 640, 480 }, { 1000, 650 }, { 1280, 600 }, { 1920, 1080 }
  };
  for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
    for (guint theme = 0; theme < BW_N_THEMES; theme++)
      {
        const BwInk other = { theme, "Sans 10", BW_INK_SCREEN_DPI };
        const Page page = { sizes[i][0], sizes[i][1], &other, NULL };
        test_drawing_is_sound (build (bench, which, &page));
      }
}

/* A drawing borrows nothing: it is painted and read when all that it was built from is gone. */
static void
test_stands_alone (Bench *bench, gconstpointer which)
{
  Bench own;
  set_up (&own, NULL);
  BwDrawing *drawing = build (&own, which, &usual);
  tear_down (&own, NULL);
  test_drawing_is_sound (drawing);
}

/* Zoomed about a place, that place keeps its value; then the whole is shown again. */
static void
test_zoom (Bench *bench, gconstpointer which)
{
  g_autoptr (BwDrawing) whole = build (bench, which, &usual);
  BwDrawingPoint before, after;
  double x = 430, y = 0;

  g_assert_true (bw_drawing_can_be_zoomed (whole) == views[GPOINTER_TO_UINT (which)].zoomed);
  g_assert_true (bw_drawing_is_whole (whole));
  if (!views[GPOINTER_TO_UINT (which)].zoomed)
    return;
  while (!bw_drawing_read (whole, x, y, &before))
    g_assert_cmpfloat (y += 5, <, usual.height);
  BwZoom zoom = bw_drawing_zoomed (whole, x, y, 2.5);
  const Page part = { usual.width, usual.height, &ink, &zoom };
  g_autoptr (BwDrawing) larger = build (bench, which, &part);
  g_assert_false (bw_drawing_is_whole (larger));
  g_assert_true (bw_drawing_find (larger, &before, &x, &y));
  g_assert_true (bw_drawing_read (larger, x, y, &after));
  g_assert_cmpuint (after.id, ==, before.id);
  zoom = bw_drawing_panned (larger, -50, 0);
  const Page moved = { usual.width, usual.height, &ink, &zoom };
  g_autoptr (BwDrawing) beside = build (bench, which, &moved);
  double moved_x = 0, moved_y = 0;
  bw_drawing_find (beside, &before, &moved_x, &moved_y);
  g_assert_cmpfloat_with_epsilon (moved_x, x - 50, 8); /* labels may move the plot a little */
  zoom = bw_drawing_zoomed (larger, x, y, 1e-3);
  const Page again = { usual.width, usual.height, &ink, &zoom };
  g_autoptr (BwDrawing) back = build (bench, which, &again);
  g_assert_true (bw_drawing_is_whole (back));
}

/* Every text of the drawing stands in the file as text, and nothing in it is an image. */
static void
test_file (Bench *bench, gconstpointer which)
{
  g_autoptr (BwDrawing) drawing = build (bench, which, &usual);
  char *folder = test_scratch_folder ();
  g_autofree char *path = g_build_filename (folder, "drawing.pdf", NULL);
  const char *const text_of[] = { "pdftotext", "-raw", path, "-", NULL };
  const char *const images_of[] = { "pdfimages", "-list", path, NULL };
  const GArray *texts = bw_drawing_texts (drawing);

  g_assert_true (bw_export_drawing (drawing, NULL, path, NULL));
  g_autofree char *words = test_run (text_of);
  g_autofree char *images = test_run (images_of);
  g_auto (GStrv) lines = g_strsplit (images, "\n", -1);
  g_assert_cmpuint (g_strv_length (lines), <=, 3); /* a head of two lines */
  g_strdelimit (words, "\n\f", ' ');
  for (guint i = 0; i < texts->len; i++)
    {
      g_auto (GStrv) parts = g_strsplit_set (g_array_index (texts, BwLabel, i).text, " \n\u00a0",
                                             -1);
      for (guint k = 0; parts[k] != NULL; k++)
        if (strstr (words, parts[k]) == NULL)
          g_test_fail_printf ("%s: \"%s\" is not in the file", views[GPOINTER_TO_UINT (which)].name,
                              parts[k]);
    }
  g_autoptr (GBytes) svg = bw_export_svg (drawing);
  const char *data = g_bytes_get_data (svg, NULL);
  g_assert_null (g_strstr_len (data, (gssize) g_bytes_get_size (svg), "<image"));
  test_remove_folder (folder);
}

/* The arrow keys move a cursor through it, and along an axis by as much as they say. */
static void
test_keys (Bench *bench, gconstpointer which)
{
  g_autoptr (BwDrawing) drawing = build (bench, which, &usual);
  double x = -1, y = -1;
  BwDrawingPoint first, next;
  BwBox lines;

  g_assert_true (bw_drawing_step (drawing, 1, 0, &x, &y));
  g_assert_true (bw_drawing_read (drawing, x, y, &first));
  BwCursorStyle style = bw_drawing_cursor (drawing, x, y, &lines);
  g_assert_cmpfloat (lines.height, >, 5);
  g_assert_cmpfloat (lines.y, >=, 0);
  g_assert_cmpfloat (lines.y + lines.height, <=, usual.height);
  if (style == BW_CURSOR_THING)
    return;
  double from_x = x;
  g_assert_true (bw_drawing_step (drawing, -1, 0, &x, &y));
  g_assert_cmpfloat_with_epsilon (x, from_x - 1, 1e-9);
  g_assert_true (bw_drawing_read (drawing, x, y, &next));
  g_assert_cmpuint (next.id, ==, first.id);
  g_assert_cmpfloat (next.across, <, first.across);
}

static void
add (const char *name, void (*test) (Bench *bench, gconstpointer which))
{
  for (guint i = 0; i < G_N_ELEMENTS (views); i++)
    {
      g_autofree char *path = g_strdup_printf ("/draw/every-view/%s/%s", views[i].name, name);
      g_test_add (path, Bench, GUINT_TO_POINTER (i), set_up, test, tear_down);
    }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  add ("sound", test_sound);
  add ("stands-alone", test_stands_alone);
  add ("zoom", test_zoom);
  add ("file", test_file);
  add ("keys", test_keys);
  return g_test_run ();
}
