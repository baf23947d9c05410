/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "canvas.h"
#include "view-range.h"

G_BEGIN_DECLS

/* A drawing that knows itself. A view builds it once, from a model, a size and an ink; from then on
 * it is painted onto a screen, into a file and on paper, read under the pointer, put in words and
 * zoomed, and nothing is laid out again. It borrows nothing from what it was built from.
 *
 * A view lays out its texts on a BwCanvas, makes a drawing of that, draws its marks with
 * bw_drawing_pen(), and then says what it shows and what can be read in it. */

/**
 * BwDrawing:
 *
 * Counted references. Not changed any more once the view has built it.
 */
typedef struct _BwDrawing BwDrawing;

/**
 * BwDrawingAxis:
 * @from: the value at @start; the same as @to where nothing is counted in this direction
 * @to: the value at @end
 * @start: a place on the page
 * @end: another place on the page
 *
 * What is counted, evenly, along one direction of a part of the page.
 */
typedef struct
{
  double from;
  double to;
  double start;
  double end;
} BwDrawingAxis;

/**
 * BwDrawingPlace:
 * @id: the view's own number for what is here; the same on every size of page
 * @box: where it is read
 * @round: only the ellipse in @box is read
 * @across: what is counted to the right, if anything
 * @down: what is counted downwards, if anything
 *
 * A part of the page where something is read.
 */
typedef struct
{
  guint id;
  BwBox box;
  gboolean round;
  BwDrawingAxis across;
  BwDrawingAxis down;
} BwDrawingPlace;

/**
 * BwDrawingPoint:
 * @id: of its place
 * @across: in the unit of the place's axis; where it has none, as a share of the place's width
 * @down: likewise, of its height
 *
 * A point of a drawing, read. It says the same in another drawing of the same thing, whatever the
 * size of that and however it is zoomed.
 */
typedef struct
{
  guint id;
  double across;
  double down;
} BwDrawingPoint;

/* How a cursor is drawn. */
typedef enum
{
  BW_CURSOR_ROWS,  /* down through all places, which share one axis */
  BW_CURSOR_PANEL, /* down through its own place, which has an axis of its own */
  BW_CURSOR_CROSS, /* across and down */
  BW_CURSOR_THING  /* around its own place */
} BwCursorStyle;

/**
 * BwDrawingReader:
 * @words: (transfer full): what a point says
 * @difference: (nullable) (transfer full): how far the second point is from the first; %NULL where
 *   that means nothing
 * @free: (nullable): frees the data of the two
 *
 * What the points of one kind of drawing say.
 */
typedef struct
{
  BwCursorStyle style;
  char *(*words) (gconstpointer data, const BwDrawingPoint *point);
  char *(*difference) (gconstpointer data, const BwDrawingPoint *a, const BwDrawingPoint *b);
  void (*free) (gpointer data);
} BwDrawingReader;

/**
 * BwZoom:
 * @across: of what runs to the right
 * @down: of what runs downwards; without meaning where the drawing is not zoomed in that direction
 *
 * The part of a drawing that is shown.
 */
typedef struct
{
  BwViewRange across;
  BwViewRange down;
} BwZoom;

/* Building, by the view */
BwDrawing *bw_drawing_new (const BwCanvas *canvas, guint left_out);
BwDrawing *bw_drawing_new_part (const BwCanvas *canvas, guint left_out, double from_x,
                                double width);
cairo_t *bw_drawing_pen (BwDrawing *drawing);
void bw_drawing_take_words (BwDrawing *drawing, char *name, char *description, char *file_stem);
void bw_drawing_add_place (BwDrawing *drawing, const BwDrawingPlace *place);
void bw_drawing_take_reader (BwDrawing *drawing, const BwDrawingReader *reader, gpointer data);
void bw_drawing_zoom_across (BwDrawing *drawing, const BwViewRange *range, double start,
                             double end);
void bw_drawing_zoom_down (BwDrawing *drawing, const BwViewRange *range, double start, double end);

/* The whole */
BwDrawing *bw_drawing_ref (BwDrawing *drawing);
void bw_drawing_unref (BwDrawing *drawing);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (BwDrawing, bw_drawing_unref)

double bw_drawing_width (const BwDrawing *drawing);
double bw_drawing_height (const BwDrawing *drawing);
void bw_drawing_paint (const BwDrawing *drawing, cairo_t *cr);
const char *bw_drawing_name (const BwDrawing *drawing);
const char *bw_drawing_description (const BwDrawing *drawing);
const char *bw_drawing_file_stem (const BwDrawing *drawing);
const GArray *bw_drawing_texts (const BwDrawing *drawing);
guint bw_drawing_left_out (const BwDrawing *drawing);
char *bw_drawing_to_text (const BwDrawing *drawing);

/* Reading, in drawing-read.c */
gboolean bw_drawing_can_be_read (const BwDrawing *drawing);
const GArray *bw_drawing_places (const BwDrawing *drawing);
gboolean bw_drawing_read (const BwDrawing *drawing, double x, double y, BwDrawingPoint *point);
gboolean bw_drawing_find (const BwDrawing *drawing, const BwDrawingPoint *point, double *x,
                          double *y);
char *bw_drawing_words (const BwDrawing *drawing, const BwDrawingPoint *point);
char *bw_drawing_difference (const BwDrawing *drawing, const BwDrawingPoint *a,
                             const BwDrawingPoint *b);
gboolean bw_drawing_step (const BwDrawing *drawing, double dx, double dy, double *x, double *y);
BwCursorStyle bw_drawing_cursor (const BwDrawing *drawing, double x, double y, BwBox *lines);

/* Zooming, in drawing-zoom.c */
gboolean bw_drawing_can_be_zoomed (const BwDrawing *drawing);
gboolean bw_drawing_is_whole (const BwDrawing *drawing);
BwZoom bw_drawing_shown (const BwDrawing *drawing);
BwZoom bw_drawing_zoomed (const BwDrawing *drawing, double x, double y, double factor);
BwZoom bw_drawing_panned (const BwDrawing *drawing, double dx, double dy);
gboolean bw_drawing_shown_as (const BwDrawing *drawing, const BwZoom *before, BwZoom *zoom);

G_END_DECLS
