/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "drawing.h"

G_BEGIN_DECLS

/**
 * BwDrawingZoom:
 * @set: whether it is zoomed in this direction
 * @start: where @range begins on the page
 * @end: where it ends
 */
typedef struct
{
  gboolean set;
  BwViewRange range;
  double start;
  double end;
} BwDrawingZoom;

/**
 * BwDrawing:
 * @marks: a recording surface: everything that was drawn
 * @pen: draws into @marks
 * @from_x: where the page starts on the canvas that it was built on
 * @texts: (element-type BwLabel): with their boxes
 * @left_out: steps of the view's own order, for lack of room
 * @places: (element-type BwDrawingPlace): the first that holds a point is read
 */
struct _BwDrawing
{
  double width;
  double height;
  double from_x;
  cairo_surface_t *marks;
  cairo_t *pen;
  GArray *texts;
  guint left_out;
  char *name;
  char *description;
  char *file_stem;
  GArray *places;
  BwDrawingReader reader;
  gpointer data;
  BwDrawingZoom across;
  BwDrawingZoom down;
};

G_END_DECLS
