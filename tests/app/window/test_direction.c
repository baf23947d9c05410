/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "app-test.h"

#include <string.h>

#include "app/bench/bench-panel.h"
#include "app/widgets/form.h"
#include "app/widgets/picture-area.h"
#include "app/widgets/result-view.h"

/* The window where people read from right to left: what they operate is mirrored, what is drawn and
 * what is measured is not. */

typedef AppTestWindow Fixture;

static void
set_up (Fixture *f, gconstpointer data)
{
  gtk_widget_set_default_direction (GTK_TEXT_DIR_RTL);
  app_test_set_up (f, data);
}

static void
tear_down (Fixture *f, gconstpointer data)
{
  app_test_tear_down (f, data);
  gtk_widget_set_default_direction (GTK_TEXT_DIR_LTR);
}

static GtkWidget *
show (Fixture *f, const char *page, const char *view)
{
  BwPage *shown = bw_window_get_page (f->window, page);
  bw_window_show_page (f->window, page);
  bw_page_show_view (shown, view);
  gtk_test_widget_wait_for_draw (GTK_WIDGET (f->window));
  return GTK_WIDGET (shown);
}

static float
x_of (Fixture *f, GtkWidget *widget)
{
  graphene_rect_t place;
  g_assert_true (gtk_widget_compute_bounds (widget, GTK_WIDGET (f->window), &place));
  return place.origin.x;
}

/* The bench stands at the right of the pages, and the first field at the right of the second. */
static void
test_controls (Fixture *f, gconstpointer data)
{
  GtkWidget *page = show (f, "timing", "identify");
  GtkWidget *form = app_test_find (page, BW_TYPE_FORM, "form");
  GtkWidget *first = gtk_widget_get_first_child (form);

  g_assert_cmpfloat (x_of (f, GTK_WIDGET (bw_window_get_bench (f->window))), >, x_of (f, page));
  g_assert_cmpfloat (x_of (f, first), >, x_of (f, gtk_widget_get_next_sibling (first)));
}

static char *
picture (BwPictureArea *area)
{
  g_autoptr (BwDrawing) drawing
      = bw_picture_area_build (area, 800, 500, bw_picture_area_get_ink (area));
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, 800, 500);
  cairo_t *cr = cairo_create (surface);
  bw_drawing_paint (drawing, cr);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  char *sum = g_compute_checksum_for_data (
      G_CHECKSUM_SHA256, cairo_image_surface_get_data (surface),
      (gsize) cairo_image_surface_get_stride (surface) * 500);
  cairo_surface_destroy (surface);
  return sum;
}

/* Time runs from left to right on every scope. */
static void
test_drawings (Fixture *f, gconstpointer data)
{
  static const char *const places[][2] = {
    { "timing", "line" }, { "timing", "field" }, { "levels", "line" }, { "detail", "chain" }
  };

  for (guint i = 0; i < G_N_ELEMENTS (places); i++)
    {
      GtkWidget *page = show (f, places[i][0], places[i][1]);
      BwPictureArea *area
          = BW_PICTURE_AREA (app_test_find (page, BW_TYPE_PICTURE_AREA, NULL));
      g_autofree char *mirrored = picture (area);
      gtk_widget_set_default_direction (GTK_TEXT_DIR_LTR);
      g_autofree char *usual = picture (area);
      gtk_widget_set_default_direction (GTK_TEXT_DIR_RTL);
      g_assert_cmpstr (mirrored, ==, usual);
    }
}

static void
assert_reads_as_written (GtkWidget *widget, gpointer data)
{
  if (!GTK_IS_LABEL (widget) || !gtk_widget_get_mapped (widget))
    return;
  const char *text = gtk_label_get_text (GTK_LABEL (widget));
  if (!g_str_has_prefix (text, "\u2212") || strlen (text) < 4)
    return;
  /* The first character, the minus, is the leftmost one. */
  PangoRectangle first, last;
  PangoLayout *layout = gtk_label_get_layout (GTK_LABEL (widget));
  pango_layout_index_to_pos (layout, 0, &first);
  pango_layout_index_to_pos (layout, (int) strlen (text) - 1, &last);
  g_assert_cmpint (first.x, <, last.x);
  (*(guint *) data)++;
}

/* A number has its sign before it, at the left. */
static void
test_numbers (Fixture *f, gconstpointer data)
{
  guint numbers = 0;
  app_test_each (show (f, "levels", "line"), assert_reads_as_written, &numbers);
  g_assert_cmpuint (numbers, >=, 4);
}

#define ADD(name, func) g_test_add ("/direction/" name, Fixture, NULL, set_up, func, tear_down)

int
main (int argc, char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
  ADD ("controls", test_controls);
  ADD ("drawings", test_drawings);
  ADD ("numbers", test_numbers);
  return g_test_run ();
}
