/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "app-hands.h"

#include <string.h>

#include "app/bench/bench-panel.h"
#include "app/fit/grid.h"
#include "app/widgets/form.h"
#include "app/widgets/picture-area.h"
#include "app/widgets/result-head.h"
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

/* The table of the fit */

static BwFitGrid *
grid (Fixture *f)
{
  return APP_TEST_THE (BW, FIT_GRID, bw_window_get_page (f->window, "fit"));
}

static GtkWidget *
cell (Fixture *f, guint source, guint input)
{
  return GTK_WIDGET (bw_fit_grid_get_cell (grid (f), source, input));
}

static GtkWidget *
head (Fixture *f, const char *words)
{
  for (GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (grid (f))); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    if (GTK_IS_LABEL (child) && g_str_equal (gtk_label_get_label (GTK_LABEL (child)), words))
      return child;
  g_assert_not_reached ();
}

static graphene_rect_t
place_in_grid (Fixture *f, GtkWidget *widget)
{
  graphene_rect_t place;
  g_assert_true (gtk_widget_compute_bounds (widget, GTK_WIDGET (grid (f)), &place));
  return place;
}

static float
right_of (graphene_rect_t place)
{
  return place.origin.x + place.size.width;
}

/* The corner, at the right end, above the heads of the rows. */
static graphene_rect_t
corner (Fixture *f)
{
  return place_in_grid (f, app_test_find (GTK_WIDGET (grid (f)), BW_TYPE_RESULT_HEAD, NULL));
}

static const char *
input_name (Fixture *f, guint input)
{
  return bw_monitor_input (bw_document_get_sheet (f->document)->monitor, input)->name;
}

/* Whether the column is seen whole: beside the heads of the rows, and not cut at the left. Its head
 * tells, which has a place even where its cells have none. */
static gboolean
is_seen (Fixture *f, guint input)
{
  graphene_rect_t place = place_in_grid (f, head (f, input_name (f, input)));
  return place.origin.x >= 0 && right_of (place) <= corner (f).origin.x;
}

/* Heads of the rows at the right, then the columns, each to the left of the one before and below its
 * head, as far as they are seen. */
static void
assert_mirrored (Fixture *f)
{
  guint n = bw_document_count (f->document, BW_PART_INPUT);
  guint seen = 0;
  float width = (float) gtk_widget_get_width (GTK_WIDGET (grid (f)));

  g_assert_cmpfloat_with_epsilon (right_of (corner (f)), width, 0.5);
  for (guint input = 0; input < n; input++)
    {
      graphene_rect_t above = place_in_grid (f, head (f, input_name (f, input)));
      if (right_of (above) <= 0 || above.origin.x >= corner (f).origin.x)
        continue;
      graphene_rect_t place = place_in_grid (f, cell (f, 0, input));
      float middle = place.origin.x + place.size.width / 2;
      g_assert_cmpfloat (middle, >, above.origin.x);
      g_assert_cmpfloat (middle, <, right_of (above));
      if (input > 0)
        g_assert_cmpfloat (right_of (above), <=,
                           place_in_grid (f, head (f, input_name (f, input - 1))).origin.x);
      seen++;
    }
  g_assert_cmpuint (seen, >=, 2);
}

static void
assert_selected (Fixture *f, guint source, guint input)
{
  ASSERT_COMES_TRUE (bw_document_get_source (f->document) == source
                     && bw_document_get_input (f->document) == input);
  ASSERT_COMES_TRUE (app_test_focus_is_in (f->window, cell (f, source, input)));
}

/* The keys go where their arrows point; Home and End to the first and the last cell, wherever these
 * stand. A click takes the cell that is seen there. */
static void
test_table (Fixture *f, gconstpointer data)
{
  guint last = bw_document_count (f->document, BW_PART_INPUT) - 1;
  double x, y;

  show (f, "fit", "table");
  g_assert_true (is_seen (f, 0));
  assert_mirrored (f);
  app_test_give_focus (f->window);
  gtk_widget_grab_focus (cell (f, 0, 0));
  app_test_xdotool ("key Left");
  assert_selected (f, 0, 1);
  app_test_xdotool ("key Right");
  assert_selected (f, 0, 0);
  app_test_xdotool ("key Right");
  assert_selected (f, 0, 0);
  app_test_xdotool ("key End");
  assert_selected (f, 0, last);
  app_test_xdotool ("key Home");
  assert_selected (f, 0, 0);

  g_assert_true (gtk_widget_translate_coordinates (cell (f, 1, last), GTK_WIDGET (f->window), 20, 20,
                                                   &x, &y));
  g_autofree char *click = g_strdup_printf ("mousemove %d %d click 1", (int) x, (int) y);
  app_test_xdotool (click);
  assert_selected (f, 1, last);
}

/* With more inputs than there is room for: the table begins at its right end, and follows the
 * selection to the left. */
static void
test_table_scrolls (Fixture *f, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  GtkAdjustment *across = NULL;

  for (guint i = 0; i < 9; i++)
    {
      BwInput *input = bw_input_copy (bw_document_selected_input (f->document));
      g_autofree char *name = g_strdup_printf ("Input number %u", i);
      g_free (input->name);
      input->name = g_steal_pointer (&name);
      g_assert_true (bw_document_add_input (f->document, input, &error));
      g_assert_no_error (error);
      bw_input_free (input);
    }
  guint last = bw_document_count (f->document, BW_PART_INPUT) - 1;
  bw_document_select (f->document, 0, 0);
  show (f, "fit", "table");
  app_test_frames (2);
  g_object_get (grid (f), "hadjustment", &across, NULL);
  double end = gtk_adjustment_get_upper (across) - gtk_adjustment_get_page_size (across);
  g_assert_cmpfloat (end, >, 0);
  g_assert_cmpfloat_with_epsilon (gtk_adjustment_get_value (across), end, 0.5);
  ASSERT_COMES_TRUE (is_seen (f, 0));
  ASSERT_COMES_TRUE (!is_seen (f, last));
  assert_mirrored (f);

  app_test_give_focus (f->window);
  gtk_widget_grab_focus (cell (f, 0, 0));
  app_test_xdotool ("key End");
  assert_selected (f, 0, last);
  ASSERT_COMES_TRUE (is_seen (f, last));
  g_assert_cmpfloat_with_epsilon (gtk_adjustment_get_value (across), 0, 0.5);
  assert_mirrored (f);

  /* As by the bar: half way, and then to its right end */
  gtk_adjustment_set_value (across, end / 2);
  app_test_frames (2);
  g_assert_cmpfloat_with_epsilon (gtk_adjustment_get_value (across), end / 2, 0.5);
  assert_mirrored (f);
  gtk_adjustment_set_value (across, end);
  app_test_frames (2);
  g_assert_true (is_seen (f, 0));
  g_object_unref (across);
}

#define ADD(name, func) g_test_add ("/direction/" name, Fixture, NULL, set_up, func, tear_down)

int
main (int argc, char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
  ADD ("controls", test_controls);
  ADD ("drawings", test_drawings);
  ADD ("numbers", test_numbers);
  ADD ("table", test_table);
  ADD ("table-scrolls", test_table_scrolls);
  return g_test_run ();
}
