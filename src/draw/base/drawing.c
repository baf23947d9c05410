/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing-private.h"

/* What is painted is kept by a recording surface of cairo: as lines, fills and text, never as
 * pixels, so that it stays sharp at any scale and text stays text in a file. */

/* Building */

/* The texts of @canvas that can be seen on the page, moved onto it. */
static GArray *
texts_on_page (const BwCanvas *canvas, double from_x, double width)
{
  GArray *texts = bw_canvas_labels_new ();

  for (guint i = 0; i < canvas->labels->len; i++)
    {
      BwLabel label = g_array_index (canvas->labels, BwLabel, i);
      label.box.x -= from_x;
      if (label.box.x >= width || label.box.x + label.box.width <= 0)
        continue;
      label.text = g_strdup (label.text);
      g_array_append_val (texts, label);
    }
  return texts;
}

/* cairo counts no longer sides; nothing is kept of a page without a side. */
static double
kept_side (double side)
{
  return side >= 0 && side <= G_MAXSHORT ? side : 0;
}

static BwDrawing *
drawing_new (const BwCanvas *canvas, guint left_out, double from_x, double width)
{
  BwDrawing *drawing = g_rc_box_new0 (BwDrawing);
  const cairo_rectangle_t page = { 0, 0, kept_side (width), kept_side (canvas->height) };

  drawing->width = width;
  drawing->height = canvas->height;
  drawing->from_x = from_x;
  drawing->left_out = left_out;
  drawing->marks = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, &page);
  drawing->pen = cairo_create (drawing->marks);
  cairo_translate (drawing->pen, -from_x, 0);
  drawing->places = g_array_new (FALSE, FALSE, sizeof (BwDrawingPlace));
  drawing->name = g_strdup ("");
  drawing->description = g_strdup ("");
  drawing->file_stem = g_strdup ("");
  return drawing;
}

/**
 * bw_drawing_new:
 * @canvas: whose size the drawing gets, and its texts
 * @left_out: how many steps of the view's order found no room
 *
 * Returns: (transfer full): a drawing without marks
 */
BwDrawing *
bw_drawing_new (const BwCanvas *canvas, guint left_out)
{
  g_return_val_if_fail (canvas != NULL, NULL);
  BwDrawing *drawing = drawing_new (canvas, left_out, 0, canvas->width);
  drawing->texts = g_array_ref (canvas->labels);
  return drawing;
}

/**
 * bw_drawing_new_part:
 * @from_x: where the page starts on @canvas
 * @width: of the page
 *
 * For a view that lays out on a canvas wider than the page when it is zoomed. What follows counts
 * on that canvas: the pen, places and ranges.
 *
 * Returns: (transfer full): a drawing of the part of @canvas that the page shows
 */
BwDrawing *
bw_drawing_new_part (const BwCanvas *canvas, guint left_out, double from_x, double width)
{
  g_return_val_if_fail (canvas != NULL && width > 0, NULL);
  BwDrawing *drawing = drawing_new (canvas, left_out, from_x, width);
  drawing->texts = texts_on_page (canvas, from_x, width);
  return drawing;
}

/**
 * bw_drawing_pen:
 *
 * Returns: (transfer none): what the view draws its marks with, before anything else is asked of
 *   the drawing
 */
cairo_t *
bw_drawing_pen (BwDrawing *drawing)
{
  g_return_val_if_fail (drawing != NULL, NULL);
  return drawing->pen;
}

static void
take (char **to, char *text)
{
  g_free (*to);
  *to = text;
}

/**
 * bw_drawing_take_words:
 * @name: (transfer full): what is drawn, in a few words
 * @description: (transfer full): the drawing in words, for those who do not see it
 * @file_stem: (transfer full): a name for a file with it, without suffix
 */
void
bw_drawing_take_words (BwDrawing *drawing, char *name, char *description, char *file_stem)
{
  g_return_if_fail (drawing != NULL && name != NULL && description != NULL && file_stem != NULL);
  take (&drawing->name, name);
  take (&drawing->description, description);
  take (&drawing->file_stem, file_stem);
}

/* The whole */

BwDrawing *
bw_drawing_ref (BwDrawing *drawing)
{
  g_return_val_if_fail (drawing != NULL, NULL);
  return g_rc_box_acquire (drawing);
}

static void
clear (gpointer data)
{
  BwDrawing *drawing = data;

  g_clear_pointer (&drawing->pen, cairo_destroy);
  cairo_surface_destroy (drawing->marks);
  g_array_unref (drawing->texts);
  g_array_unref (drawing->places);
  if (drawing->reader.free != NULL)
    drawing->reader.free (drawing->data);
  g_free (drawing->name);
  g_free (drawing->description);
  g_free (drawing->file_stem);
}

void
bw_drawing_unref (BwDrawing *drawing)
{
  g_return_if_fail (drawing != NULL);
  g_rc_box_release_full (drawing, clear);
}

/**
 * bw_drawing_width:
 *
 * Returns: in user-space units
 */
double
bw_drawing_width (const BwDrawing *drawing)
{
  g_return_val_if_fail (drawing != NULL, 0);
  return drawing->width;
}

/**
 * bw_drawing_height:
 *
 * Returns: in user-space units
 */
double
bw_drawing_height (const BwDrawing *drawing)
{
  g_return_val_if_fail (drawing != NULL, 0);
  return drawing->height;
}

/**
 * bw_drawing_paint:
 *
 * Paints the drawing with its top left corner at the origin of @cr, in place of what is there.
 */
void
bw_drawing_paint (const BwDrawing *drawing, cairo_t *cr)
{
  g_return_if_fail (drawing != NULL && cr != NULL);
  cairo_save (cr);
  cairo_set_source_surface (cr, drawing->marks, 0, 0);
  /* Onto pixels cairo replays the marks only if they cover what was there; else it draws them into
   * other pixels, which it then copies. */
  if (cairo_surface_get_type (cairo_get_group_target (cr)) == CAIRO_SURFACE_TYPE_IMAGE)
    cairo_set_operator (cr, CAIRO_OPERATOR_SOURCE);
  cairo_rectangle (cr, 0, 0, drawing->width, drawing->height);
  cairo_fill (cr);
  cairo_restore (cr);
}

/**
 * bw_drawing_name:
 *
 * Returns: what is drawn, in a few words
 */
const char *
bw_drawing_name (const BwDrawing *drawing)
{
  g_return_val_if_fail (drawing != NULL, NULL);
  return drawing->name;
}

/**
 * bw_drawing_description:
 *
 * Returns: the drawing in words, for those who do not see it
 */
const char *
bw_drawing_description (const BwDrawing *drawing)
{
  g_return_val_if_fail (drawing != NULL, NULL);
  return drawing->description;
}

/**
 * bw_drawing_file_stem:
 *
 * Returns: a name for a file with it, without suffix
 */
const char *
bw_drawing_file_stem (const BwDrawing *drawing)
{
  g_return_val_if_fail (drawing != NULL, NULL);
  return drawing->file_stem;
}

/**
 * bw_drawing_texts:
 *
 * Returns: (transfer none) (element-type BwLabel): every text of the drawing with its box
 */
const GArray *
bw_drawing_texts (const BwDrawing *drawing)
{
  g_return_val_if_fail (drawing != NULL, NULL);
  return drawing->texts;
}

/**
 * bw_drawing_left_out:
 *
 * Returns: how many steps of the order in the view's header were left out; zero if everything has
 *   its place
 */
guint
bw_drawing_left_out (const BwDrawing *drawing)
{
  g_return_val_if_fail (drawing != NULL, 0);
  return drawing->left_out;
}

/* By the row of pixels of their middles, and then across the page. */
static int
compare_places (gconstpointer a, gconstpointer b)
{
  const BwBox *first = &(*(const BwLabel *const *) a)->box;
  const BwBox *second = &(*(const BwLabel *const *) b)->box;
  int below = (int) (first->y + first->height / 2) - (int) (second->y + second->height / 2);

  if (below != 0)
    return below;
  return first->x < second->x ? -1 : first->x > second->x;
}

/**
 * bw_drawing_to_text:
 *
 * Returns: (transfer full): the name, the description, and the texts in the order in which they are
 *   read, each on its line
 */
char *
bw_drawing_to_text (const BwDrawing *drawing)
{
  g_return_val_if_fail (drawing != NULL, NULL);
  GString *text = g_string_new (NULL);
  g_autoptr (GPtrArray) order = g_ptr_array_new ();

  g_string_append_printf (text, "%s\n%s\n", drawing->name, drawing->description);
  for (guint i = 0; i < drawing->texts->len; i++)
    g_ptr_array_add (order, &g_array_index (drawing->texts, BwLabel, i));
  g_ptr_array_sort (order, compare_places);
  for (guint i = 0; i < order->len; i++)
    {
      g_autofree char *line = g_strdelimit (g_strdup (((BwLabel *) order->pdata[i])->text), "\n",
                                            ' ');
      g_string_append_printf (text, "%s\n", line);
    }
  return g_string_free (text, FALSE);
}
