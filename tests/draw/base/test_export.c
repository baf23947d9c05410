/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/base/export.h"

#include <string.h>

#include "support.h"

#define TITLE "One line & its blanking"

typedef struct
{
  BwCatalogue *catalogue;
  BwDrawing *drawing;
  char *folder;
} Fixture;

static void
set_up (Fixture *f, gconstpointer data)
{
  const BwInk ink = { BW_THEME_LIGHT, NULL, 0 };
  f->catalogue = test_catalogue ();
  const BwLineView line = { .raster = bw_catalogue_raster (f->catalogue, "525-59.94-interlaced"),
                            .mark = '.' };
  f->drawing = bw_line_drawing (&line, 700, 450, &ink);
  f->folder = test_scratch_folder ();
}

static void
tear_down (Fixture *f, gconstpointer data)
{
  test_remove_folder (f->folder);
  bw_drawing_unref (f->drawing);
  bw_catalogue_free (f->catalogue);
}

static char *
export_as (Fixture *f, const char *name)
{
  g_autoptr (GError) error = NULL;
  char *path = g_build_filename (f->folder, name, NULL);
  bw_export_drawing (f->drawing, TITLE, path, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (test_count_files (f->folder), ==, 1);
  return path;
}

static void
assert_has_525 (const char *text)
{
  /* SMPTE 170M-2004 table 2: sync 4.7 µs, front porch 1.5 µs; 286 / 4.5 MHz = 63.556 µs. */
  static const char *const figures[] = { "63.556", "4.7", "1.5" };
  for (guint i = 0; i < G_N_ELEMENTS (figures); i++)
    if (strstr (text, figures[i]) == NULL)
      g_test_fail_printf ("%s is missing", figures[i]);
}

/* A GMarkupParser accepts the file: it is well-formed. */
static void
assert_is_markup (const char *text)
{
  const GMarkupParser parser = { NULL };
  g_autoptr (GError) error = NULL;
  GMarkupParseContext *context = g_markup_parse_context_new (&parser, 0, NULL, NULL);
  g_markup_parse_context_parse (context, text, -1, &error);
  g_assert_no_error (error);
  g_markup_parse_context_end_parse (context, &error);
  g_assert_no_error (error);
  g_markup_parse_context_free (context);
}

static void
test_svg (Fixture *f, gconstpointer data)
{
  g_autofree char *path = export_as (f, "line.svg");
  g_autofree char *text = NULL;
  g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
  assert_is_markup (text);
  assert_has_525 (text);
  g_assert_nonnull (strstr (text, "<title>One line &amp; its blanking</title>"));
  g_assert_nonnull (strstr (text, "width=\"700px\""));
  g_assert_nonnull (strstr (text, "SMPTE 170M-2004"));
}

static void
test_pdf (Fixture *f, gconstpointer data)
{
  g_autofree char *path = export_as (f, "line.PDF");
  const char *const argv[] = { "pdftotext", path, "-", NULL };
  g_autofree char *text = test_run (argv);
  assert_has_525 (text);
  const char *const info[] = { "pdfinfo", path, NULL };
  g_autofree char *facts = test_run (info);
  g_assert_nonnull (strstr (facts, "One line & its blanking"));
  g_assert_nonnull (strstr (facts, "525 x 337.5 pts")); /* 700 by 450 pixels of 1/96 inch */
}

static void
test_png (Fixture *f, gconstpointer data)
{
  g_autofree char *path = export_as (f, "line.png");
  cairo_surface_t *surface = cairo_image_surface_create_from_png (path);
  g_assert_cmpint (cairo_surface_status (surface), ==, CAIRO_STATUS_SUCCESS);
  g_assert_cmpint (cairo_image_surface_get_width (surface), ==, 1400);
  g_assert_cmpint (cairo_image_surface_get_height (surface), ==, 900);
  cairo_surface_destroy (surface);
}

static void
assert_refused (const BwDrawing *drawing, const char *path, BwExportError code, const char *words)
{
  g_autoptr (GError) error = NULL;
  g_assert_false (bw_export_drawing (drawing, NULL, path, &error));
  g_assert_error (error, BW_EXPORT_ERROR, (int) code);
  g_assert_nonnull (strstr (error->message, path));
  g_assert_nonnull (strstr (error->message, words));
}

static BwDrawing *
empty_drawing (double width, double height)
{
  const BwInk ink = { BW_THEME_LIGHT, NULL, 0 };
  g_autoptr (BwCanvas) canvas = bw_canvas_new (&ink, width, height);
  return bw_drawing_new (canvas, 0);
}

static void
test_refusals (Fixture *f, gconstpointer data)
{
  static const double odd[] = { 0, 1e300, 0.0 / 0.0 };
  g_autofree char *gif = g_build_filename (f->folder, "line.gif", NULL);
  g_autofree char *none = g_build_filename (f->folder, "line", NULL);
  g_autofree char *nowhere = g_build_filename (f->folder, "missing", "line.svg", NULL);
  g_autofree char *good = g_build_filename (f->folder, "line.svg", NULL);

  assert_refused (f->drawing, gif, BW_EXPORT_ERROR_SUFFIX, ".svg, .pdf, .png");
  assert_refused (f->drawing, none, BW_EXPORT_ERROR_SUFFIX, ".svg, .pdf, .png");
  assert_refused (f->drawing, nowhere, BW_EXPORT_ERROR_WRITE, "cannot be written");
  for (guint i = 0; i < G_N_ELEMENTS (odd); i++)
    {
      g_autoptr (BwDrawing) drawing = empty_drawing (odd[i], 100);
      g_autoptr (BwDrawing) turned = empty_drawing (100, odd[i]);
      assert_refused (drawing, good, BW_EXPORT_ERROR_SIZE, "20000");
      assert_refused (turned, good, BW_EXPORT_ERROR_SIZE, "20000");
    }
  g_assert_cmpuint (test_count_files (f->folder), ==, 0);
}

/* Two dots to the pixel each way, and 4 bytes to the dot: what would take more than 256 MiB, or more
 * dots to a side than there can be, is refused as PNG alone. */
static void
test_png_size (Fixture *f, gconstpointer data G_GNUC_UNUSED)
{
  static const double large[][2] = { { 8192, 8192 }, { 4097, 4096 }, { 16384, 1 }, { 1, 16384 } };
  g_autofree char *png = g_build_filename (f->folder, "line.png", NULL);
  g_autofree char *svg = g_build_filename (f->folder, "line.svg", NULL);

  for (guint i = 0; i < G_N_ELEMENTS (large); i++)
    {
      g_autoptr (BwDrawing) drawing = empty_drawing (large[i][0], large[i][1]);
      assert_refused (drawing, png, BW_EXPORT_ERROR_SIZE, "16777216");
      g_assert_true (bw_export_drawing (drawing, NULL, svg, NULL));
    }
  g_autoptr (BwDrawing) largest = empty_drawing (16383, 16);
  g_assert_true (bw_export_drawing (largest, NULL, png, NULL));
}

/* A folder stands where the file should go: it stays, and nothing is left beside it. */
static void
test_old_stays (Fixture *f, gconstpointer data)
{
  g_autofree char *path = g_build_filename (f->folder, "line.svg", NULL);
  g_assert_cmpint (g_mkdir_with_parents (path, 0700), ==, 0);
  assert_refused (f->drawing, path, BW_EXPORT_ERROR_WRITE, "cannot be written");
  g_assert_true (g_file_test (path, G_FILE_TEST_IS_DIR));
  g_assert_cmpuint (test_count_files (f->folder), ==, 1);
}

/* cairo gave up on the drawing: no file. */
static void
test_bad_drawing (Fixture *f, gconstpointer data)
{
  static const char *const names[] = { "line.svg", "line.pdf", "line.png" };
  g_autoptr (BwDrawing) bad = empty_drawing (100, 100);
  cairo_restore (bw_drawing_pen (bad));
  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autofree char *path = g_build_filename (f->folder, names[i], NULL);
      assert_refused (bad, path, BW_EXPORT_ERROR_DRAW, "cannot be drawn");
    }
  g_assert_cmpuint (test_count_files (f->folder), ==, 0);
}

#define ADD(path, func) g_test_add ("/draw/export/" path, Fixture, NULL, set_up, func, tear_down)

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  ADD ("svg", test_svg);
  ADD ("pdf", test_pdf);
  ADD ("png", test_png);
  ADD ("refusals", test_refusals);
  ADD ("png-size", test_png_size);
  ADD ("old-stays", test_old_stays);
  ADD ("bad-drawing", test_bad_drawing);
  return g_test_run ();
}
