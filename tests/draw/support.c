/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "support.h"

#include <math.h>
#include <string.h>

#include <glib/gstdio.h>

/* The shipped catalogue, and no other. */
BwCatalogue *
test_catalogue (void)
{
  g_autoptr (GPtrArray) faults = g_ptr_array_new_with_free_func ((GDestroyNotify) g_error_free);
  BwCatalogue *catalogue = bw_catalogue_new (NULL, faults);
  for (guint i = 0; i < faults->len; i++)
    g_test_message ("%s", ((GError *) faults->pdata[i])->message);
  g_assert_cmpuint (faults->len, ==, 0);
  g_assert_cmpuint (bw_catalogue_rasters (catalogue)->len, >, 100);
  return catalogue;
}

char *
test_scratch_folder (void)
{
  g_autoptr (GError) error = NULL;
  char *folder = g_dir_make_tmp ("bw-draw-XXXXXX", &error);
  g_assert_no_error (error);
  return folder;
}

guint
test_count_files (const char *folder)
{
  guint n = 0;
  GDir *dir = g_dir_open (folder, 0, NULL);
  g_assert_nonnull (dir);
  while (g_dir_read_name (dir) != NULL)
    n++;
  g_dir_close (dir);
  return n;
}

/* Removes a folder of plain files and empty folders, and frees its name. */
void
test_remove_folder (char *folder)
{
  const char *name;
  GDir *dir = g_dir_open (folder, 0, NULL);
  g_assert_nonnull (dir);
  while ((name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);
      g_assert_cmpint (g_remove (path), ==, 0);
    }
  g_dir_close (dir);
  g_assert_cmpint (g_rmdir (folder), ==, 0);
  g_free (folder);
}

/* What a command prints; it must end well. */
char *
test_run (const char *const *argv)
{
  g_autoptr (GError) error = NULL;
  char *output = NULL;
  int status = 0;

  g_spawn_sync (NULL, (char **) argv, NULL, G_SPAWN_SEARCH_PATH | G_SPAWN_STDERR_TO_DEV_NULL, NULL,
                NULL, &output, NULL, &status, &error);
  g_assert_no_error (error);
  g_spawn_check_wait_status (status, &error);
  g_assert_no_error (error);
  return output;
}

static gboolean
boxes_overlap (BwBox a, BwBox b)
{
  const double slack = 0.1;
  return a.x + a.width > b.x + slack && b.x + b.width > a.x + slack && a.y + a.height > b.y + slack
         && b.y + b.height > a.y + slack;
}

/* The first line of a label, for a message: TAP has one line to the message. */
static char *
first_line (const BwLabel *label)
{
  return g_strndup (label->text, strcspn (label->text, "\n"));
}

/* No label overlaps another, and none reaches beyond the page. */
void
test_labels_are_apart (const GArray *labels, double width, double height, const char *what)
{
  const double slack = 0.1;
  for (guint i = 0; i < labels->len; i++)
    {
      const BwLabel *a = &g_array_index (labels, BwLabel, i);
      g_autofree char *name = first_line (a);
      if (a->box.x < -slack || a->box.y < -slack || a->box.x + a->box.width > width + slack
          || a->box.y + a->box.height > height + slack)
        g_test_fail_printf ("%s at %gx%g: \"%s\" is cut", what, width, height, name);
      for (guint j = 0; j < i; j++)
        {
          const BwLabel *b = &g_array_index (labels, BwLabel, j);
          g_autofree char *other = first_line (b);
          if (boxes_overlap (a->box, b->box))
            g_test_fail_printf ("%s at %gx%g: \"%s\" overlaps \"%s\"", what, width, height, name,
                                other);
        }
    }
}

/* No line of text is lower than one in the font of @ink. */
void
test_labels_are_large (const GArray *labels, const BwInk *ink)
{
  g_autoptr (BwCanvas) canvas = bw_canvas_new (ink, 10, 10);
  for (guint i = 0; i < labels->len; i++)
    g_assert_cmpfloat (g_array_index (labels, BwLabel, i).box.height, >=,
                       canvas->text_height - 0.01);
}

gboolean
test_labels_have (const GArray *labels, const char *text)
{
  for (guint i = 0; i < labels->len; i++)
    if (strstr (g_array_index (labels, BwLabel, i).text, text) != NULL)
      return TRUE;
  return FALSE;
}

/* The label whose whole text is @text, counted from zero. */
const BwLabel *
test_find_label (const GArray *labels, const char *text, guint nth)
{
  for (guint i = 0; i < labels->len; i++)
    {
      const BwLabel *label = &g_array_index (labels, BwLabel, i);
      if (strcmp (label->text, text) == 0 && nth-- == 0)
        return label;
    }
  g_error ("no label \"%s\"", text);
}

/* What follows takes the drawing and gives it back. */

/* (transfer full): the texts of @drawing; @left_out is nullable. */
GArray *
test_texts (BwDrawing *drawing, guint *left_out)
{
  GArray *texts = g_array_ref ((GArray *) bw_drawing_texts (drawing));
  if (left_out != NULL)
    *left_out = bw_drawing_left_out (drawing);
  bw_drawing_unref (drawing);
  return texts;
}

/* (transfer full): an image, flushed, a pixel to a unit of the page. */
cairo_surface_t *
test_paint (BwDrawing *drawing)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24,
                                                         (int) bw_drawing_width (drawing),
                                                         (int) bw_drawing_height (drawing));
  cairo_t *cr = cairo_create (surface);
  bw_drawing_paint (drawing, cr);
  g_assert_cmpint (cairo_status (bw_drawing_pen (drawing)), ==, CAIRO_STATUS_SUCCESS);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  bw_drawing_unref (drawing);
  return surface;
}

char *
test_description (BwDrawing *drawing)
{
  char *text = g_strdup (bw_drawing_description (drawing));
  bw_drawing_unref (drawing);
  return text;
}

gboolean
test_read_at (BwDrawing *drawing, double x, double y, BwDrawingPoint *point)
{
  gboolean read = bw_drawing_read (drawing, x, y, point);
  bw_drawing_unref (drawing);
  return read;
}

/* (transfer full) (nullable): what is read there. */
char *
test_words_at (BwDrawing *drawing, double x, double y)
{
  BwDrawingPoint point;
  char *words = bw_drawing_read (drawing, x, y, &point) ? bw_drawing_words (drawing, &point) : NULL;
  bw_drawing_unref (drawing);
  return words;
}

gboolean
test_find (BwDrawing *drawing, guint id, double across, double down, double *x, double *y)
{
  const BwDrawingPoint point = { id, across, down };
  gboolean shown = bw_drawing_find (drawing, &point, x, y);
  bw_drawing_unref (drawing);
  return shown;
}

/* Where a value is across the page; NAN if it is not shown. */
double
test_x_of (BwDrawing *drawing, guint id, double across)
{
  double x, y;
  return test_find (drawing, id, across, 0.5, &x, &y) ? x : NAN;
}

BwZoom
test_shown (BwDrawing *drawing)
{
  BwZoom zoom = bw_drawing_shown (drawing);
  bw_drawing_unref (drawing);
  return zoom;
}

/* What is read at a place is found there again, and says something. */
static void
check_reading (const BwDrawing *drawing, double x, double y)
{
  BwDrawingPoint point, again;
  double found_x = 0, found_y = 0;

  if (!bw_drawing_read (drawing, x, y, &point))
    return;
  g_autofree char *words = bw_drawing_words (drawing, &point);
  g_assert_cmpstr (words, !=, "");
  g_assert_null (strstr (words, "nan"));
  g_assert_null (strstr (words, "(null)"));
  if (!bw_drawing_find (drawing, &point, &found_x, &found_y))
    g_error ("%s: what is read at %g, %g is not found", bw_drawing_name (drawing), x, y);
  g_assert_cmpfloat_with_epsilon (found_x, x, 1e-3);
  g_assert_cmpfloat_with_epsilon (found_y, y, 1e-3);
  g_assert_true (bw_drawing_read (drawing, found_x, found_y, &again) || found_x > x || found_y > y);
}

/* What holds for every drawing: it says what it is, its texts keep apart and are not cut, and its
 * places read back what they place. */
void
test_drawing_is_sound (BwDrawing *drawing)
{
  double width = bw_drawing_width (drawing), height = bw_drawing_height (drawing);
  g_autofree char *text = bw_drawing_to_text (drawing);

  g_assert_cmpstr (bw_drawing_name (drawing), !=, "");
  g_assert_cmpstr (bw_drawing_description (drawing), !=, "");
  g_assert_cmpstr (bw_drawing_file_stem (drawing), !=, "");
  g_assert_cmpint (cairo_status (bw_drawing_pen (drawing)), ==, CAIRO_STATUS_SUCCESS);
  g_assert_true (g_str_has_prefix (text, bw_drawing_name (drawing)));
  test_labels_are_apart (bw_drawing_texts (drawing), width, height, bw_drawing_name (drawing));
  for (double y = 3; y < height; y += height / 11)
    for (double x = 3; x < width; x += width / 13)
      check_reading (drawing, x, y);
  bw_drawing_unref (drawing);
}

/* Red, green and blue of a pixel of an image that is flushed. */
guint32
test_pixel_at (cairo_surface_t *surface, double x, double y)
{
  guint32 pixel;
  const guchar *data = cairo_image_surface_get_data (surface);
  memcpy (&pixel, data + (int) y * cairo_image_surface_get_stride (surface) + (int) x * 4, 4);
  return pixel & 0xffffff;
}

BwLevelsModel *
test_levels_model (const TestSignal *of, BwContent content, BwBarsForm bars)
{
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();
  g_autoptr (GError) error = NULL;
  BwSynthesisCase what = { bw_catalogue_raster (catalogue, of->raster), .content = content,
                           .bars = bars };
  g_assert_nonnull (what.raster);
  bw_wire_form_standard (of->system, of->signal, of->sync, what.raster->sync_shape, &what.form);
  bw_synthesis_add_burst (&what.form);
  BwLevelsModel *model = bw_levels_model_new (&what, &error);
  g_assert_no_error (error);
  return model;
}

/* The first one with @system and @signal. */
guint
test_find_signal (const TestSignal *signals, guint n, BwColourSystem system, BwSignal signal)
{
  for (guint i = 0; i < n; i++)
    if (signals[i].system == system && signals[i].signal == signal)
      return i;
  g_error ("no such signal");
}
