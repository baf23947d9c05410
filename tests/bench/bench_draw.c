/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/bench/catalogue.h"
#include "draw/field/view.h"

#include <math.h>
#include <stdlib.h>

/* The field drawing, built and painted, against the time that cairo takes to stroke a polyline of 1920
 * points over the full height of the same surface, in the same run. The goal is a ratio of at most
 * 0.25; nothing passes or fails by time. */

#define WIDTH 1920
#define HEIGHT 1080
#define ROUNDS 25
#define GOAL 0.25
#define LINE_WIDTH 1.7 /* as wide as the drawing's own curve on this page */

typedef void (*Draw) (cairo_t *cr, const BwFieldView *what);

static void
draw_field (cairo_t *cr, const BwFieldView *what)
{
  const BwInk ink = { BW_THEME_LIGHT, NULL, BW_INK_SCREEN_DPI };
  g_autoptr (BwDrawing) drawing = bw_field_drawing (what, WIDTH, HEIGHT, &ink);
  bw_drawing_paint (drawing, cr);
}

/* From edge to edge, with a point in each column of pixels. */
static void
stroke_zigzag (cairo_t *cr, const BwFieldView *what)
{
  for (int i = 0; i < WIDTH; i++)
    cairo_line_to (cr, i + 0.5, i % 2 == 0 ? 0 : HEIGHT);
  cairo_set_line_width (cr, LINE_WIDTH);
  cairo_stroke (cr);
}

/* As many points on a wave of forty periods, for comparison. */
static void
stroke_wave (cairo_t *cr, const BwFieldView *what)
{
  for (int i = 0; i < WIDTH; i++)
    cairo_line_to (cr, i + 0.5, HEIGHT / 2.0 * (1 + sin (i * 80 * G_PI / WIDTH)));
  cairo_set_line_width (cr, LINE_WIDTH);
  cairo_stroke (cr);
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
time_ms (cairo_surface_t *surface, Draw draw, const BwFieldView *what)
{
  cairo_t *cr = cairo_create (surface);
  gint64 start_us = g_get_monotonic_time ();
  draw (cr, what);
  cairo_surface_flush (surface);
  double ms = (double) (g_get_monotonic_time () - start_us) / 1000;
  if (cairo_status (cr) != CAIRO_STATUS_SUCCESS)
    g_error ("%s", cairo_status_to_string (cairo_status (cr)));
  cairo_destroy (cr);
  return ms;
}

static void
compare_with (cairo_surface_t *surface, const char *name, Draw stroke, const BwFieldView *what,
              gboolean has_goal)
{
  double field_ms[ROUNDS], stroke_ms[ROUNDS];

  for (guint i = 0; i < ROUNDS; i++)
    {
      field_ms[i] = time_ms (surface, draw_field, what);
      stroke_ms[i] = time_ms (surface, stroke, what);
    }
  double field = median (field_ms, ROUNDS), polyline = median (stroke_ms, ROUNDS);
  g_print ("%s: field drawing %.2f ms, %s %.2f ms, ratio %.3f", what->raster->id, field, name,
           polyline, field / polyline);
  if (has_goal)
    g_print (", goal %.2f", GOAL);
  g_print ("\n");
}

int
main (void)
{
  static const struct
  {
    const char *id;
    BwColourSystem system;
  } cases[] = { { "525-59.94-interlaced", BW_SYSTEM_NTSC_M },
                { "625-50-interlaced", BW_SYSTEM_PAL_B },
                { "cta-861-vic-5", BW_SYSTEM_NONE },
                { "vesa-dmt-42", BW_SYSTEM_NONE } };
  g_autoptr (GPtrArray) faults = g_ptr_array_new_with_free_func ((GDestroyNotify) g_error_free);
  g_autoptr (BwCatalogue) catalogue = bw_catalogue_new (NULL, faults);
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, WIDTH, HEIGHT);

  g_print ("%d x %d, medians of %d rounds\n", WIDTH, HEIGHT, ROUNDS);
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const BwRaster *raster = bw_catalogue_raster (catalogue, cases[i].id);
      if (raster == NULL)
        g_error ("no raster %s", cases[i].id);
      BwFieldView what = { raster, cases[i].system, 0, NULL, '.' };
      compare_with (surface, "zigzag of 1920 points", stroke_zigzag, &what, TRUE);
      compare_with (surface, "wave of 1920 points", stroke_wave, &what, FALSE);
    }
  cairo_surface_destroy (surface);
  return 0;
}
