/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing-private.h"

#include <math.h>

/* What is at a point of a drawing, where a value is, and how a cursor moves. */

#define SLACK 1e-6 /* of the page: rounding when a place is found again */

/* Building */

static BwDrawingAxis
moved (BwDrawingAxis axis, double by, double start, double length)
{
  if (axis.from < axis.to || axis.from > axis.to)
    return (BwDrawingAxis){ axis.from, axis.to, axis.start + by, axis.end + by };
  return (BwDrawingAxis){ 0, 0, start, start + length };
}

/**
 * bw_drawing_add_place:
 * @place: copied; where it has no axis, points of it are shares of its box
 *
 * Where places overlap, the one that was added first is read. One without area is left out.
 */
void
bw_drawing_add_place (BwDrawing *drawing, const BwDrawingPlace *place)
{
  g_return_if_fail (drawing != NULL && place != NULL);
  BwDrawingPlace copy = *place;

  copy.box.x -= drawing->from_x;
  copy.across = moved (place->across, -drawing->from_x, copy.box.x, copy.box.width);
  copy.down = moved (place->down, 0, copy.box.y, copy.box.height);
  if (copy.box.width > 0 && copy.box.height > 0 && copy.box.x < drawing->width
      && copy.box.x + copy.box.width > 0)
    g_array_append_val (drawing->places, copy);
}

/**
 * bw_drawing_take_reader:
 * @reader: copied
 * @data: (transfer full): what the reader's functions get
 */
void
bw_drawing_take_reader (BwDrawing *drawing, const BwDrawingReader *reader, gpointer data)
{
  g_return_if_fail (drawing != NULL && reader != NULL && reader->words != NULL);
  g_return_if_fail (drawing->reader.words == NULL);
  drawing->reader = *reader;
  drawing->data = data;
}

/* Reading */

/**
 * bw_drawing_can_be_read:
 *
 * Returns: whether there is something to read in it
 */
gboolean
bw_drawing_can_be_read (const BwDrawing *drawing)
{
  g_return_val_if_fail (drawing != NULL, FALSE);
  return drawing->reader.words != NULL && drawing->places->len > 0;
}

/**
 * bw_drawing_places:
 *
 * Returns: (transfer none) (element-type BwDrawingPlace): where something is read, as it lies on the
 *   page; some may reach beyond it
 */
const GArray *
bw_drawing_places (const BwDrawing *drawing)
{
  g_return_val_if_fail (drawing != NULL, NULL);
  return drawing->places;
}

static const BwDrawingPlace *
place_of (const BwDrawing *drawing, guint i)
{
  return &g_array_index (drawing->places, BwDrawingPlace, i);
}

/* From the middle of a round place to @at, as a share of the half of @length. */
static double
off_middle (double start, double length, double at)
{
  return (at - start - length / 2) / (length / 2);
}

static gboolean
holds (const BwDrawingPlace *place, double x, double y)
{
  const BwBox *box = &place->box;

  if (place->round)
    return hypot (off_middle (box->x, box->width, x), off_middle (box->y, box->height, y))
           <= 1 + SLACK;
  return x >= box->x && x < box->x + box->width && y >= box->y && y < box->y + box->height;
}

/* Whether @x, @y is in @place or so near its edge that it may have been read in it. */
static gboolean
nearly_holds (const BwDrawingPlace *place, double x, double y)
{
  const BwBox *box = &place->box;
  return holds (place, CLAMP (x, box->x, box->x + box->width - SLACK),
                CLAMP (y, box->y, box->y + box->height - SLACK))
         && x >= box->x - SLACK && x <= box->x + box->width + SLACK && y >= box->y - SLACK
         && y <= box->y + box->height + SLACK;
}

/* The place that is read at @x, @y; NULL if there is none. */
static const BwDrawingPlace *
place_at (const BwDrawing *drawing, double x, double y)
{
  if (x < 0 || y < 0 || x >= drawing->width || y >= drawing->height
      || !bw_drawing_can_be_read (drawing))
    return NULL;
  for (guint i = 0; i < drawing->places->len; i++)
    if (holds (place_of (drawing, i), x, y))
      return place_of (drawing, i);
  return NULL;
}

static gboolean
has_axis (const BwDrawingAxis *axis)
{
  return axis->from < axis->to || axis->from > axis->to;
}

static double
value_at (const BwDrawingAxis *axis, double at)
{
  double share = (at - axis->start) / (axis->end - axis->start);
  return has_axis (axis) ? axis->from + share * (axis->to - axis->from) : share;
}

static double
page_at (const BwDrawingAxis *axis, double value)
{
  double share = has_axis (axis) ? (value - axis->from) / (axis->to - axis->from) : value;
  return axis->start + share * (axis->end - axis->start);
}

/**
 * bw_drawing_read:
 * @x: of a point of the page, across
 * @y: of that point, down
 * @point: (out): what is there
 *
 * Returns: whether there is something to read; if not, @point is left as it is
 */
gboolean
bw_drawing_read (const BwDrawing *drawing, double x, double y, BwDrawingPoint *point)
{
  g_return_val_if_fail (drawing != NULL && point != NULL, FALSE);
  const BwDrawingPlace *place = place_at (drawing, x, y);

  if (place == NULL)
    return FALSE;
  *point = (BwDrawingPoint){ place->id, value_at (&place->across, x), value_at (&place->down, y) };
  return TRUE;
}

/**
 * bw_drawing_find:
 * @point: of this drawing, or of another one of the same thing
 * @x: (out): where it is
 * @y: (out): likewise
 *
 * The other way round from bw_drawing_read().
 *
 * Returns: whether the point is shown; if there is no such place, @x and @y are left as they are
 */
gboolean
bw_drawing_find (const BwDrawing *drawing, const BwDrawingPoint *point, double *x, double *y)
{
  g_return_val_if_fail (drawing != NULL && point != NULL && x != NULL && y != NULL, FALSE);
  for (guint i = 0; i < drawing->places->len; i++)
    {
      const BwDrawingPlace *place = place_of (drawing, i);
      if (place->id != point->id)
        continue;
      *x = page_at (&place->across, point->across);
      *y = page_at (&place->down, point->down);
      return nearly_holds (place, *x, *y) && *x >= 0 && *x < drawing->width;
    }
  return FALSE;
}

/**
 * bw_drawing_words:
 *
 * Returns: (transfer full): what @point says
 */
char *
bw_drawing_words (const BwDrawing *drawing, const BwDrawingPoint *point)
{
  g_return_val_if_fail (drawing != NULL && point != NULL && drawing->reader.words != NULL, NULL);
  return drawing->reader.words (drawing->data, point);
}

/**
 * bw_drawing_difference:
 *
 * Returns: (transfer full): how far @b is from @a; empty where that means nothing
 */
char *
bw_drawing_difference (const BwDrawing *drawing, const BwDrawingPoint *a, const BwDrawingPoint *b)
{
  g_return_val_if_fail (drawing != NULL && a != NULL && b != NULL, NULL);
  return drawing->reader.difference != NULL ? drawing->reader.difference (drawing->data, a, b)
                                            : g_strdup ("");
}

/* Cursors */

/* Widens @from and @to so that they hold the part of a line that lies in a place, which reaches
 * over @length from @start; in a round place the line passes the middle by @off, as a share of the
 * half of its other side. */
static void
include_span (double start, double length, double off, double *from, double *to)
{
  double half = length / 2 * sqrt (MAX (1 - off * off, 0));
  *from = MIN (*from, start + length / 2 - half);
  *to = MAX (*to, start + length / 2 + half);
}

/* All places that the line down at @x meets. */
static void
include_down (const BwDrawing *drawing, double x, double *from, double *to)
{
  for (guint i = 0; i < drawing->places->len; i++)
    {
      const BwDrawingPlace *place = place_of (drawing, i);
      const BwBox *box = &place->box;
      double off = off_middle (box->x, box->width, x);
      if (fabs (off) <= 1 + SLACK)
        include_span (box->y, box->height, place->round ? off : 0, from, to);
    }
}

static void
include_across (const BwDrawing *drawing, double y, double *from, double *to)
{
  for (guint i = 0; i < drawing->places->len; i++)
    {
      const BwDrawingPlace *place = place_of (drawing, i);
      const BwBox *box = &place->box;
      double off = off_middle (box->y, box->height, y);
      if (fabs (off) <= 1 + SLACK)
        include_span (box->x, box->width, place->round ? off : 0, from, to);
    }
}

/* As far as it lies on the page. */
static BwBox
on_page (const BwDrawing *drawing, double left, double top, double right, double bottom)
{
  left = MAX (left, 0);
  top = MAX (top, 0);
  return (BwBox){ left, top, MIN (right, drawing->width) - left,
                  MIN (bottom, drawing->height) - top };
}

/**
 * bw_drawing_cursor:
 * @x: of a cursor that stands on a place, across
 * @y: of that cursor, down
 * @lines: (out): its line down goes from the top of this to its bottom, and its line across from the
 *   left to the right, as far as its style has them; the outline of a thing
 *
 * Returns: how the cursor is drawn
 */
BwCursorStyle
bw_drawing_cursor (const BwDrawing *drawing, double x, double y, BwBox *lines)
{
  g_return_val_if_fail (drawing != NULL && lines != NULL, BW_CURSOR_ROWS);
  BwCursorStyle style = drawing->reader.style;
  const BwDrawingPlace *own = place_at (drawing, x, y);
  double left = x, right = x, top = y, bottom = y;

  if ((style == BW_CURSOR_PANEL || style == BW_CURSOR_THING) && own != NULL)
    {
      include_span (own->box.x, own->box.width, 0, &left, &right);
      include_span (own->box.y, own->box.height, 0, &top, &bottom);
    }
  if (style == BW_CURSOR_ROWS || style == BW_CURSOR_CROSS)
    include_down (drawing, x, &top, &bottom);
  if (style == BW_CURSOR_CROSS)
    include_across (drawing, y, &left, &right);
  *lines = on_page (drawing, left, top, right, bottom);
  return style;
}

/* Keys */

/* Into what lies in the direction of the key; where there is no axis, its middle. */
static double
entered (const BwDrawingAxis *axis, double start, double end, double at)
{
  return has_axis (axis) ? CLAMP (at, start, end - SLACK) : (start + end) / 2;
}

static void
enter (const BwDrawing *drawing, const BwDrawingPlace *place, double *x, double *y)
{
  const BwBox *box = &place->box;

  *x = entered (&place->across, MAX (box->x, 0), MIN (box->x + box->width, drawing->width), *x);
  *y = entered (&place->down, MAX (box->y, 0), MIN (box->y + box->height, drawing->height), *y);
}

/* How far @place is from @x, @y in the direction of the key; less than zero if it lies elsewhere. */
static double
way_to (const BwDrawing *drawing, const BwDrawingPlace *place, double x, double y, double dx,
        double dy)
{
  double to_x = x, to_y = y, length = hypot (dx, dy);

  enter (drawing, place, &to_x, &to_y);
  double ahead = ((to_x - x) * dx + (to_y - y) * dy) / length;
  double aside = fabs ((to_x - x) * dy - (to_y - y) * dx) / length;
  return ahead > SLACK && aside <= 4 * ahead ? ahead + 2 * aside : -1;
}

static gboolean
step_over (const BwDrawing *drawing, const BwDrawingPlace *from, double dx, double dy, double *x,
           double *y)
{
  const BwDrawingPlace *nearest = NULL;
  double least = INFINITY;

  for (guint i = 0; i < drawing->places->len; i++)
    {
      const BwDrawingPlace *place = place_of (drawing, i);
      double way = way_to (drawing, place, *x, *y, dx, dy);
      if (place == from || way < 0 || way >= least)
        continue;
      least = way;
      nearest = place;
    }
  if (nearest == NULL)
    return FALSE;
  enter (drawing, nearest, x, y);
  return TRUE;
}

/* The first reading by key: the middle of what is first. */
static gboolean
start (const BwDrawing *drawing, double *x, double *y)
{
  if (!bw_drawing_can_be_read (drawing))
    return FALSE;
  *x = drawing->width / 2;
  *y = place_of (drawing, 0)->box.y + place_of (drawing, 0)->box.height / 2;
  enter (drawing, place_of (drawing, 0), x, y);
  return TRUE;
}

/**
 * bw_drawing_step:
 * @dx: by how much the cursor moves to the right
 * @dy: downwards; one of the two is zero
 * @x: (inout): where it is; if nothing is read there, it goes to the first thing
 * @y: (inout): likewise
 *
 * Moves a cursor by a key: along an axis, or on to the next place in that direction where nothing
 * is counted, or where this place ends.
 *
 * Returns: whether it has moved
 */
gboolean
bw_drawing_step (const BwDrawing *drawing, double dx, double dy, double *x, double *y)
{
  g_return_val_if_fail (drawing != NULL && x != NULL && y != NULL, FALSE);
  const BwDrawingPlace *from = place_at (drawing, *x, *y);

  if (from == NULL)
    return start (drawing, x, y);
  if (has_axis (fabs (dx) > 0 ? &from->across : &from->down)
      && place_at (drawing, *x + dx, *y + dy) != NULL)
    {
      *x += dx;
      *y += dy;
      return TRUE;
    }
  return step_over (drawing, from, dx, dy, x, y);
}
