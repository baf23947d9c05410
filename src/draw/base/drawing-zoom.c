/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing-private.h"

/* Which part of a drawing is shown, and which would be after zooming or moving it. */

/**
 * bw_drawing_zoom_across:
 * @range: the part that is shown of what runs to the right; copied
 * @start: where it starts on the page
 * @end: where it ends
 */
void
bw_drawing_zoom_across (BwDrawing *drawing, const BwViewRange *range, double start, double end)
{
  g_return_if_fail (drawing != NULL && range != NULL && start < end);
  drawing->across = (BwDrawingZoom){ TRUE, *range, start - drawing->from_x, end - drawing->from_x };
}

/**
 * bw_drawing_zoom_down:
 * @range: the part that is shown of what runs downwards; copied
 * @start: where it starts on the page
 * @end: where it ends
 */
void
bw_drawing_zoom_down (BwDrawing *drawing, const BwViewRange *range, double start, double end)
{
  g_return_if_fail (drawing != NULL && range != NULL && start < end);
  drawing->down = (BwDrawingZoom){ TRUE, *range, start, end };
}

/**
 * bw_drawing_can_be_zoomed:
 *
 * Returns: whether a part of it can be shown alone
 */
gboolean
bw_drawing_can_be_zoomed (const BwDrawing *drawing)
{
  g_return_val_if_fail (drawing != NULL, FALSE);
  return drawing->across.set || drawing->down.set;
}

/**
 * bw_drawing_is_whole:
 *
 * Returns: whether nothing is left out
 */
gboolean
bw_drawing_is_whole (const BwDrawing *drawing)
{
  g_return_val_if_fail (drawing != NULL, TRUE);
  return (!drawing->across.set || bw_view_range_is_whole (&drawing->across.range))
         && (!drawing->down.set || bw_view_range_is_whole (&drawing->down.range));
}

/**
 * bw_drawing_shown:
 *
 * Returns: the part that is shown
 */
BwZoom
bw_drawing_shown (const BwDrawing *drawing)
{
  g_return_val_if_fail (drawing != NULL, (BwZoom){ 0 });
  return (BwZoom){ drawing->across.range, drawing->down.range };
}

static void
zoom_about (const BwDrawingZoom *zoom, double at, double factor, BwViewRange *range)
{
  if (zoom->set)
    bw_view_range_zoom (range, bw_view_range_value (range, at, zoom->start, zoom->end), factor);
}

/**
 * bw_drawing_zoomed:
 * @x: what is read there keeps its place; the middle, if nothing is
 * @y: likewise
 * @factor: how much larger things become
 *
 * Returns: what is then shown
 */
BwZoom
bw_drawing_zoomed (const BwDrawing *drawing, double x, double y, double factor)
{
  g_return_val_if_fail (drawing != NULL && factor > 0, (BwZoom){ 0 });
  BwZoom zoom = bw_drawing_shown (drawing);
  BwDrawingPoint point;
  gboolean inside = bw_drawing_read (drawing, x, y, &point);

  zoom_about (&drawing->across, inside ? x : (drawing->across.start + drawing->across.end) / 2,
              factor, &zoom.across);
  zoom_about (&drawing->down, inside ? y : (drawing->down.start + drawing->down.end) / 2, factor,
              &zoom.down);
  return zoom;
}

static void
pan_by (const BwDrawingZoom *zoom, double by, BwViewRange *range)
{
  if (zoom->set)
    bw_view_range_pan (range, -by * (range->to - range->from) / (zoom->end - zoom->start));
}

/**
 * bw_drawing_panned:
 * @dx: by how much what is drawn moves to the right
 * @dy: downwards
 *
 * Returns: what is then shown
 */
BwZoom
bw_drawing_panned (const BwDrawing *drawing, double dx, double dy)
{
  g_return_val_if_fail (drawing != NULL, (BwZoom){ 0 });
  BwZoom zoom = bw_drawing_shown (drawing);

  pan_by (&drawing->across, dx, &zoom.across);
  pan_by (&drawing->down, dy, &zoom.down);
  return zoom;
}

/**
 * bw_drawing_shown_as:
 * @before: the part that another drawing shows
 * @zoom: (out): the same part of this one
 *
 * Returns: whether there is such a part: the axes of both are the same, and it is not the whole
 */
gboolean
bw_drawing_shown_as (const BwDrawing *drawing, const BwZoom *before, BwZoom *zoom)
{
  g_return_val_if_fail (drawing != NULL && before != NULL && zoom != NULL, FALSE);
  *zoom = bw_drawing_shown (drawing);
  if (drawing->across.set)
    bw_view_range_show_as (&zoom->across, &before->across);
  if (drawing->down.set)
    bw_view_range_show_as (&zoom->down, &before->down);
  return (drawing->across.set && !bw_view_range_is_whole (&zoom->across))
         || (drawing->down.set && !bw_view_range_is_whole (&zoom->down));
}
