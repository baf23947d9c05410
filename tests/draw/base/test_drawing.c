/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/base/drawing.h"

#include <math.h>
#include <string.h>

#include "support.h"

static const BwInk ink = { BW_THEME_LIGHT, "Sans 10", BW_INK_SCREEN_DPI };

/* A drawing of 200 by 100 with the text "marked" at 20, 10. */
static BwDrawing *
drawing_new (void)
{
  g_autoptr (BwCanvas) canvas = bw_canvas_new (&ink, 200, 100);
  bw_canvas_claim_at (canvas, "marked", BW_INK_GRAPHITE, 20, 10, 0, 0);
  return bw_drawing_new (canvas, 3);
}

/* A name of an older file can hold what turns the order of what is drawn. */
static void
test_odd_text (void)
{
  g_autoptr (PangoLayout) layout = bw_ink_layout (&ink);
  bw_layout_set_text (layout, &ink, "A\u202eset\xc2\x9b" "31m\ufffe\nof two lines", BW_INK_GRAPHITE);
  g_assert_cmpstr (pango_layout_get_text (layout), ==, "Aset 31m\ufffd\nof two lines");
}

static char *
words (gconstpointer data, const BwDrawingPoint *point)
{
  return g_strdup_printf ("%u: %g, %g", point->id, point->across, point->down);
}

static char *
difference (gconstpointer data, const BwDrawingPoint *a, const BwDrawingPoint *b)
{
  return g_strdup_printf ("%g", b->across - a->across);
}

static void
count (gpointer data)
{
  *(guint *) data += 1;
}

static void
add_reader (BwDrawing *drawing, BwCursorStyle style, guint *freed)
{
  const BwDrawingReader reader = { style, words, difference, freed != NULL ? count : NULL };
  bw_drawing_take_reader (drawing, &reader, freed);
}

static void
assert_point (const BwDrawing *drawing, double x, double y, guint id, double across, double down)
{
  BwDrawingPoint point;
  g_assert_true (bw_drawing_read (drawing, x, y, &point));
  g_assert_cmpuint (point.id, ==, id);
  g_assert_cmpfloat_with_epsilon (point.across, across, 1e-12);
  g_assert_cmpfloat_with_epsilon (point.down, down, 1e-12);
}

/* It can be drawn into, and is painted where it is put; the data of its reader is freed once. */
static void
test_marks (void)
{
  guint freed = 0;
  BwDrawing *drawing = drawing_new ();
  cairo_t *pen = bw_drawing_pen (drawing);
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 300, 200);
  cairo_t *cr = cairo_create (surface);

  cairo_set_source_rgb (pen, 1, 0, 0);
  cairo_rectangle (pen, 10, 20, 500, 30); /* beyond the page */
  cairo_fill (pen);
  add_reader (drawing, BW_CURSOR_ROWS, &freed);
  cairo_translate (cr, 50, 60);
  bw_drawing_paint (bw_drawing_ref (drawing), cr);
  cairo_surface_flush (surface);
  g_assert_cmphex (test_pixel_at (surface, 61, 81), ==, 0xff0000);
  g_assert_cmphex (test_pixel_at (surface, 248, 81), ==, 0xff0000);
  g_assert_cmphex (test_pixel_at (surface, 251, 81), ==, 0); /* the page ends */
  g_assert_cmphex (test_pixel_at (surface, 59, 81), ==, 0);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  bw_drawing_unref (drawing);
  g_assert_cmpuint (freed, ==, 0);
  bw_drawing_unref (drawing);
  g_assert_cmpuint (freed, ==, 1);
}

static void
test_words (void)
{
  g_autoptr (BwCanvas) canvas = bw_canvas_new (&ink, 400, 100);
  bw_canvas_claim_at (canvas, "below", BW_INK_GRAPHITE, 10, 60, 0, 0);
  bw_canvas_claim_at (canvas, "right", BW_INK_GRAPHITE, 200, 10, 0, 0);
  bw_canvas_claim_at (canvas, "two\nlines", BW_INK_GRAPHITE, 10, 10, 0, 0);
  g_autoptr (BwDrawing) drawing = bw_drawing_new (canvas, 2);

  g_assert_cmpstr (bw_drawing_name (drawing), ==, "");
  bw_drawing_take_words (drawing, g_strdup ("name"), g_strdup ("description"), g_strdup ("stem"));
  g_assert_cmpstr (bw_drawing_name (drawing), ==, "name");
  g_assert_cmpstr (bw_drawing_description (drawing), ==, "description");
  g_assert_cmpstr (bw_drawing_file_stem (drawing), ==, "stem");
  g_assert_cmpuint (bw_drawing_left_out (drawing), ==, 2);
  g_autofree char *text = bw_drawing_to_text (drawing);
  g_assert_cmpstr (text, ==, "name\ndescription\nright\ntwo lines\nbelow\n");
}

/* Values run evenly along an axis, either way; without one they are shares of the box. */
static void
test_places (void)
{
  g_autoptr (BwDrawing) drawing = drawing_new ();
  const BwDrawingPlace places[] = {
    { .id = 7, .box = { 20, 10, 100, 40 }, .across = { -1, 1, 20, 120 }, .down = { 5, 1, 10, 50 } },
    { .id = 8, .box = { 20, 60, 100, 20 }, .across = { 0, 10, 20, 120 } },
    { .id = 9, .box = { 100, 60, 100, 20 } }, /* partly behind the one before */
    { .id = 10, .box = { 130, 10, 0, 40 } },  /* nothing */
  };
  double x = 0, y = 0;

  g_assert_false (bw_drawing_can_be_read (drawing));
  for (guint i = 0; i < G_N_ELEMENTS (places); i++)
    bw_drawing_add_place (drawing, &places[i]);
  g_assert_false (bw_drawing_can_be_read (drawing));
  add_reader (drawing, BW_CURSOR_ROWS, NULL);
  g_assert_true (bw_drawing_can_be_read (drawing));
  g_assert_cmpuint (bw_drawing_places (drawing)->len, ==, 3);
  assert_point (drawing, 20, 10, 7, -1, 5);
  assert_point (drawing, 70, 20, 7, 0, 4);
  assert_point (drawing, 95, 70, 8, 7.5, 0.5);
  assert_point (drawing, 110, 70, 8, 9, 0.5);
  assert_point (drawing, 150, 75, 9, 0.5, 0.75);
  g_autofree char *says = bw_drawing_words (drawing, &(BwDrawingPoint){ 8, 2.5, 0.5 });
  g_autofree char *apart = bw_drawing_difference (drawing, &(BwDrawingPoint){ 8, 2, 0 },
                                                  &(BwDrawingPoint){ 8, 5, 0 });
  g_assert_cmpstr (says, ==, "8: 2.5, 0.5");
  g_assert_cmpstr (apart, ==, "3");

  g_assert_true (bw_drawing_find (drawing, &(BwDrawingPoint){ 7, 0.5, 2 }, &x, &y));
  g_assert_cmpfloat_with_epsilon (x, 95, 1e-9);
  g_assert_cmpfloat_with_epsilon (y, 40, 1e-9);
  g_assert_true (bw_drawing_find (drawing, &(BwDrawingPoint){ 7, 1, 1 }, &x, &y)); /* its corner */
  g_assert_false (bw_drawing_find (drawing, &(BwDrawingPoint){ 7, 1.1, 2 }, &x, &y));
  g_assert_false (bw_drawing_find (drawing, &(BwDrawingPoint){ 11, 0, 0 }, &x, &y));
}

static void
test_read_outside (void)
{
  static const double points[][2] = { { 19, 20 }, { 121, 20 }, { 50, 9 }, { 50, 51 },
                                      { -1, 20 }, { 500, 20 }, { 50, -1 } };
  g_autoptr (BwDrawing) drawing = drawing_new ();
  const BwDrawingPlace place = { .id = 7, .box = { 20, 10, 100, 40 } };
  BwDrawingPoint point = { .id = 77 };

  bw_drawing_add_place (drawing, &place);
  add_reader (drawing, BW_CURSOR_ROWS, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (points); i++)
    g_assert_false (bw_drawing_read (drawing, points[i][0], points[i][1], &point));
  g_assert_cmpuint (point.id, ==, 77);
}

/* Of a round place only the ellipse is read; a line through it is as long as its chord: at 30 from
 * the middle of a circle of 50 that is 2 * 40 (3-4-5 triangle). */
static void
test_round (void)
{
  g_autoptr (BwDrawing) drawing = drawing_new ();
  const BwDrawingPlace place = { .box = { 40, 0, 100, 100 }, .round = TRUE };
  BwDrawingPoint point;
  BwBox lines;

  bw_drawing_add_place (drawing, &place);
  add_reader (drawing, BW_CURSOR_CROSS, NULL);
  g_assert_true (bw_drawing_read (drawing, 90, 1, &point));
  g_assert_false (bw_drawing_read (drawing, 45, 5, &point));
  g_assert_cmpint (bw_drawing_cursor (drawing, 120, 50, &lines), ==, BW_CURSOR_CROSS);
  g_assert_cmpfloat_with_epsilon (lines.y, 10, 1e-9);
  g_assert_cmpfloat_with_epsilon (lines.height, 80, 1e-9);
  g_assert_cmpfloat_with_epsilon (lines.x, 40, 1e-9);
  g_assert_cmpfloat_with_epsilon (lines.width, 100, 1e-9);
}

/* Two rows, one above the other. */
static BwDrawing *
rows_new (BwCursorStyle style)
{
  BwDrawing *drawing = drawing_new ();
  const BwDrawingPlace places[] = {
    { .id = 0, .box = { 20, 10, 100, 20 }, .across = { 0, 100, 20, 120 } },
    { .id = 1, .box = { 20, 60, 100, 30 }, .across = { 0, 100, 20, 120 } },
  };
  bw_drawing_add_place (drawing, &places[0]);
  bw_drawing_add_place (drawing, &places[1]);
  add_reader (drawing, style, NULL);
  return drawing;
}

static void
test_cursors (void)
{
  static const struct
  {
    BwCursorStyle style;
    BwBox lines;
  } cases[] = { { BW_CURSOR_ROWS, { 50, 10, 0, 80 } },
                { BW_CURSOR_PANEL, { 20, 60, 100, 30 } },
                { BW_CURSOR_CROSS, { 20, 10, 100, 80 } },
                { BW_CURSOR_THING, { 20, 60, 100, 30 } } };
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (BwDrawing) drawing = rows_new (cases[i].style);
      BwBox lines;
      g_assert_cmpint (bw_drawing_cursor (drawing, 50, 70, &lines), ==, cases[i].style);
      g_assert_cmpfloat_with_epsilon (lines.x, cases[i].lines.x, 1e-9);
      g_assert_cmpfloat_with_epsilon (lines.y, cases[i].lines.y, 1e-9);
      g_assert_cmpfloat_with_epsilon (lines.width, cases[i].lines.width, 1e-9);
      g_assert_cmpfloat_with_epsilon (lines.height, cases[i].lines.height, 1e-9);
    }
}

static void
assert_step (const BwDrawing *drawing, double dx, double dy, double *x, double *y, double to_x,
             double to_y)
{
  g_assert_true (bw_drawing_step (drawing, dx, dy, x, y));
  g_assert_cmpfloat_with_epsilon (*x, to_x, 1e-3);
  g_assert_cmpfloat_with_epsilon (*y, to_y, 1e-3);
}

/* Along a row by so much; down to the next row, at the same place of it; nothing beyond the last. */
static void
test_keys (void)
{
  g_autoptr (BwDrawing) drawing = rows_new (BW_CURSOR_ROWS);
  double x = -1, y = -1;

  assert_step (drawing, 1, 0, &x, &y, 100, 20);
  assert_step (drawing, 10, 0, &x, &y, 110, 20);
  g_assert_false (bw_drawing_step (drawing, 10, 0, &x, &y));
  assert_step (drawing, 0, 1, &x, &y, 110, 75);
  g_assert_false (bw_drawing_step (drawing, 0, 1, &x, &y));
  assert_step (drawing, 0, -10, &x, &y, 110, 20);
}

/* Things without an axis are gone to one by one. */
static void
test_keys_between_things (void)
{
  g_autoptr (BwDrawing) drawing = drawing_new ();
  const BwDrawingPlace places[] = { { .id = 0, .box = { 10, 10, 20, 20 } },
                                    { .id = 1, .box = { 60, 15, 20, 20 } },
                                    { .id = 2, .box = { 150, 10, 20, 20 } },
                                    { .id = 3, .box = { 12, 60, 20, 20 } } };
  double x = -1, y = -1;

  for (guint i = 0; i < G_N_ELEMENTS (places); i++)
    bw_drawing_add_place (drawing, &places[i]);
  add_reader (drawing, BW_CURSOR_THING, NULL);
  assert_step (drawing, 1, 0, &x, &y, 20, 20);
  assert_step (drawing, 1, 0, &x, &y, 70, 25);
  assert_step (drawing, 1, 0, &x, &y, 160, 20);
  g_assert_false (bw_drawing_step (drawing, 1, 0, &x, &y));
  assert_step (drawing, -1, 0, &x, &y, 70, 25);
  assert_step (drawing, -10, 0, &x, &y, 20, 20);
  assert_step (drawing, 0, 1, &x, &y, 22, 70);
}

/* A part of a wider canvas: all is counted on that, and shown on the page. */
static void
test_part (void)
{
  g_autoptr (BwCanvas) canvas = bw_canvas_new (&ink, 400, 100);
  bw_canvas_claim_at (canvas, "left", BW_INK_GRAPHITE, 5, 5, 0, 0);
  bw_canvas_claim_at (canvas, "seen", BW_INK_GRAPHITE, 150, 5, 0, 0);
  g_autoptr (BwDrawing) drawing = bw_drawing_new_part (canvas, 0, 100, 200);
  const BwDrawingPlace place = { .id = 1,
                                 .box = { 50, 20, 300, 50 },
                                 .across = { 0, 300, 50, 350 } };
  const BwViewRange range = { 0, 1, 0.1, 0.25, 0.75 };
  double x, y;

  bw_drawing_add_place (drawing, &place);
  bw_drawing_zoom_across (drawing, &range, 100, 300);
  add_reader (drawing, BW_CURSOR_ROWS, NULL);
  g_assert_cmpfloat_with_epsilon (bw_drawing_width (drawing), 200, 1e-9);
  g_assert_cmpuint (bw_drawing_texts (drawing)->len, ==, 1);
  g_assert_cmpfloat_with_epsilon (g_array_index (bw_drawing_texts (drawing), BwLabel, 0).box.x, 50,
                                  1e-9);
  assert_point (drawing, 0, 30, 1, 50, 0.2);
  assert_point (drawing, 199, 30, 1, 249, 0.2);
  g_assert_false (bw_drawing_find (drawing, &(BwDrawingPoint){ 1, 20, 0.5 }, &x, &y));
  /* twice as large about the middle of the page, which is the middle of the range */
  BwZoom zoom = bw_drawing_zoomed (drawing, 100, 30, 2);
  g_assert_cmpfloat_with_epsilon (zoom.across.from, 0.375, 1e-9);
  g_assert_cmpfloat_with_epsilon (zoom.across.to, 0.625, 1e-9);
  zoom = bw_drawing_panned (drawing, 20, 5); /* a tenth of the page to the right */
  g_assert_cmpfloat_with_epsilon (zoom.across.from, 0.2, 1e-9);
}

/* Another drawing shows the same part only if it has the same axis. */
static void
test_shown_as (void)
{
  g_autoptr (BwDrawing) drawing = drawing_new ();
  const BwViewRange whole = { 0, 10, 0.1, 0, 10 };
  const BwZoom part = { .across = { 0, 10, 0.1, 2, 4 } }, other = { .across = { 0, 9, 0.1, 2, 4 } };
  const BwZoom all = { .across = whole };
  BwZoom zoom;

  g_assert_false (bw_drawing_can_be_zoomed (drawing));
  g_assert_false (bw_drawing_shown_as (drawing, &part, &zoom));
  bw_drawing_zoom_across (drawing, &whole, 0, 200);
  g_assert_true (bw_drawing_can_be_zoomed (drawing));
  g_assert_true (bw_drawing_is_whole (drawing));
  g_assert_true (bw_drawing_shown_as (drawing, &part, &zoom));
  g_assert_cmpfloat_with_epsilon (zoom.across.from, 2, 1e-12);
  g_assert_cmpfloat_with_epsilon (zoom.across.to, 4, 1e-12);
  g_assert_false (bw_drawing_shown_as (drawing, &other, &zoom));
  g_assert_false (bw_drawing_shown_as (drawing, &all, &zoom));
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/draw/drawing/odd-text", test_odd_text);
  g_test_add_func ("/draw/drawing/marks", test_marks);
  g_test_add_func ("/draw/drawing/words", test_words);
  g_test_add_func ("/draw/drawing/places", test_places);
  g_test_add_func ("/draw/drawing/read-outside", test_read_outside);
  g_test_add_func ("/draw/drawing/round", test_round);
  g_test_add_func ("/draw/drawing/cursors", test_cursors);
  g_test_add_func ("/draw/drawing/keys", test_keys);
  g_test_add_func ("/draw/drawing/keys-between-things", test_keys_between_things);
  g_test_add_func ("/draw/drawing/part", test_part);
  g_test_add_func ("/draw/drawing/shown-as", test_shown_as);
  return g_test_run ();
}
