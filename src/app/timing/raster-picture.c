/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "raster-picture.h"

#include <math.h>
#include <string.h>

#include <glib/gi18n-lib.h>

#include "draw/blanking/view.h"
#include "draw/line/view.h"

/* The line is drawn on a page that is wider than what is shown, down to this part of it. */
#define LINE_LEAST (1.0 / 12)

static const BwPictureClass raster_picture_class;

static void
init_ranges (BwRasterPicture *picture)
{
  switch (picture->kind)
    {
    case BW_PICTURE_FIELD:
      bw_field_view_range (picture->raster, &picture->across);
      break;
    case BW_PICTURE_MAP:
      bw_map_view_ranges (picture->raster, &picture->across, &picture->down);
      break;
    case BW_PICTURE_LINE:
    case BW_PICTURE_BLANKING:
    case BW_N_PICTURES:
    default:
      bw_view_range_init (&picture->across, 0, 1, LINE_LEAST);
    }
}

/* The first standard that lays down limits for this raster. */
static const BwStandardLimits *
limits_for (GPtrArray *all, const BwRaster *raster)
{
  for (guint i = 0; i < all->len; i++)
    {
      const BwStandardLimits *limits = all->pdata[i];
      if (strcmp (limits->raster, raster->id) == 0)
        return limits;
    }
  return NULL;
}

/**
 * bw_raster_picture_is_line:
 *
 * Returns: whether time runs along one line in it: the line or its blanking
 */
gboolean
bw_raster_picture_is_line (const BwRasterPicture *picture)
{
  return picture->kind == BW_PICTURE_LINE || picture->kind == BW_PICTURE_BLANKING;
}

/**
 * bw_raster_picture:
 *
 * Returns: (transfer none): @picture as what it is; it must be one of a raster
 */
const BwRasterPicture *
bw_raster_picture (const BwPicture *picture)
{
  g_return_val_if_fail (picture->klass == &raster_picture_class, NULL);
  return (const BwRasterPicture *) picture;
}

/**
 * bw_raster_picture_new:
 * @raster: copied
 * @source: for its colour system and the aspect of its picture
 * @monitor: for its overscan
 *
 * Returns: (transfer full): a picture that shows the whole
 */
BwPicture *
bw_raster_picture_new (BwPictureKind kind, const BwRaster *raster, const BwSource *source,
                       const BwMonitor *monitor)
{
  static const BwCursorStyle styles[BW_N_PICTURES] = {
    [BW_PICTURE_LINE] = BW_CURSOR_PANEL,
    [BW_PICTURE_BLANKING] = BW_CURSOR_ROWS,
    [BW_PICTURE_FIELD] = BW_CURSOR_ROWS,
    [BW_PICTURE_MAP] = BW_CURSOR_CROSS,
  };
  BwRasterPicture *picture = g_new0 (BwRasterPicture, 1);
  BwColourSystem system = source->system;

  picture->parent = (BwPicture){ &raster_picture_class, styles[kind] };
  picture->kind = kind;
  picture->raster = bw_raster_copy (raster);
  picture->system = bw_system_knows_burst (system, raster) ? system : BW_SYSTEM_NONE;
  if (kind == BW_PICTURE_BLANKING)
    {
      picture->all_limits = bw_limits_shipped ();
      picture->limits = limits_for (picture->all_limits, raster);
    }
  picture->overscan_h = monitor->overscan_h;
  picture->overscan_v = monitor->overscan_v;
  picture->aspect = source->aspect;
  init_ranges (picture);
  return &picture->parent;
}

static void
free_picture (BwPicture *base)
{
  BwRasterPicture *picture = (BwRasterPicture *) base;

  bw_raster_free (picture->raster);
  g_clear_pointer (&picture->all_limits, g_ptr_array_unref);
  g_free (picture);
}

static BwFieldView
field_of (const BwRasterPicture *picture)
{
  return (BwFieldView){ .raster = picture->raster,
                        .system = picture->system,
                        .range = &picture->across,
                        .mark = bw_quantity_locale_mark () };
}

static BwMapView
map_of (const BwRasterPicture *picture)
{
  return (BwMapView){ .raster = picture->raster,
                      .overscan_h = picture->overscan_h,
                      .overscan_v = picture->overscan_v,
                      .aspect = picture->aspect,
                      .across = &picture->across,
                      .down = &picture->down,
                      .mark = bw_quantity_locale_mark () };
}

static BwBlankingView
blanking_of (const BwRasterPicture *picture)
{
  return (BwBlankingView){ .raster = picture->raster,
                           .limits = picture->limits,
                           .mark = bw_quantity_locale_mark () };
}

/* The whole page of the line, of which @page shows a part, and where that starts. */
static double
line_width (const BwRasterPicture *picture, const BwPicturePage *page)
{
  return page->width / (picture->across.to - picture->across.from);
}

static double
line_start (const BwRasterPicture *picture, const BwPicturePage *page)
{
  return picture->across.from * line_width (picture, page);
}

static void
draw_line (const BwRasterPicture *picture, cairo_t *cr, const BwPicturePage *page)
{
  const BwBlankingView blanking = blanking_of (picture);

  cairo_save (cr);
  cairo_rectangle (cr, 0, 0, page->width, page->height);
  cairo_clip (cr);
  cairo_translate (cr, -line_start (picture, page), 0);
  if (picture->kind == BW_PICTURE_BLANKING)
    bw_draw_blanking_view (cr, line_width (picture, page), page->height, page->ink, &blanking);
  else
    bw_draw_line_view (cr, line_width (picture, page), page->height, page->ink, picture->raster,
                       bw_quantity_locale_mark ());
  cairo_restore (cr);
}

static void
draw (const BwPicture *base, cairo_t *cr, const BwPicturePage *page)
{
  const BwRasterPicture *picture = bw_raster_picture (base);
  const BwFieldView field = field_of (picture);
  const BwMapView map = map_of (picture);

  if (picture->kind == BW_PICTURE_FIELD)
    bw_draw_field_view (cr, page->width, page->height, page->ink, &field);
  else if (picture->kind == BW_PICTURE_MAP)
    bw_draw_map_view (cr, page->width, page->height, page->ink, &map);
  else
    draw_line (picture, cr, page);
}

/* Reading */

static gboolean
read_line (const BwRasterPicture *picture, const BwPicturePage *page, double x, double y,
           BwPicturePoint *point)
{
  gboolean inside = FALSE;
  double time_s = bw_line_view_time_at (line_width (picture, page), page->height, page->ink,
                                        picture->raster, bw_quantity_locale_mark (),
                                        x + line_start (picture, page), y, &inside);
  if (inside)
    *point = (BwPicturePoint){ .along = time_s };
  return inside;
}

/* Where @time_s lies on the whole page of the blanking. */
static double
blanking_x (const BwRasterPicture *picture, const BwPicturePage *page, double time_s)
{
  const BwBlankingView what = blanking_of (picture);
  return bw_blanking_view_x_at (line_width (picture, page), page->height, page->ink, &what, time_s);
}

/* Time runs evenly through the blanking, from the datum on. */
static gboolean
read_blanking (const BwRasterPicture *picture, const BwPicturePage *page, double x,
               BwPicturePoint *point)
{
  BwRasterFigures f;
  bw_raster_figures (picture->raster, &f);
  double datum = blanking_x (picture, page, 0);
  double per_second = (blanking_x (picture, page, f.h_sync_s) - datum) / f.h_sync_s;
  double time_s = (x + line_start (picture, page) - datum) / per_second;

  *point = (BwPicturePoint){ .along = time_s };
  return time_s >= -f.h_datum_s - f.h_front_porch_s
         && time_s <= f.h_sync_s - f.h_datum_s + f.h_back_porch_s;
}

static gboolean
read_field (const BwRasterPicture *picture, const BwPicturePage *page, double x, double y,
            BwPicturePoint *point)
{
  const BwFieldView what = field_of (picture);
  BwFieldPoint read;
  if (!bw_field_view_read (page->width, page->height, page->ink, &what, x, y, &read))
    return FALSE;
  *point = (BwPicturePoint){ .row = read.row, .along = read.time_s };
  point->at[BW_RASTER_POINT_FIELD] = read.field;
  point->at[BW_RASTER_POINT_LINE] = read.line;
  point->at[BW_RASTER_POINT_LINE_TIME] = read.line_time_s;
  point->at[BW_RASTER_POINT_PART] = (double) read.part;
  return TRUE;
}

static gboolean
read_map (const BwRasterPicture *picture, const BwPicturePage *page, double x, double y,
          BwPicturePoint *point)
{
  const BwMapView what = map_of (picture);
  BwMapPoint read;
  if (!bw_map_view_read (page->width, page->height, page->ink, &what, x, y, &read))
    return FALSE;
  *point = (BwPicturePoint){ .along = read.line_time_s, .down = read.lines };
  point->at[BW_RASTER_POINT_LINE] = read.line;
  point->at[BW_RASTER_POINT_PART] = read.across == BW_MAP_ACTIVE && read.down == BW_MAP_ACTIVE;
  return TRUE;
}

static gboolean
read_point (const BwPicture *base, const BwPicturePage *page, double x, double y,
            BwPicturePoint *point)
{
  const BwRasterPicture *picture = bw_raster_picture (base);

  switch (picture->kind)
    {
    case BW_PICTURE_FIELD:
      return read_field (picture, page, x, y, point);
    case BW_PICTURE_MAP:
      return read_map (picture, page, x, y, point);
    case BW_PICTURE_LINE:
    case BW_PICTURE_BLANKING:
    case BW_N_PICTURES:
    default:
      return picture->kind == BW_PICTURE_BLANKING ? read_blanking (picture, page, x, point)
                                                  : read_line (picture, page, x, y, point);
    }
}

/* Time runs evenly through a panel of the line: two points of it tell where all others are. */
static gboolean
place_line (const BwRasterPicture *picture, const BwPicturePage *page, const BwPicturePoint *point,
            double *x, double y)
{
  const double places[] = { 0.4, 0.6 };
  double width = line_width (picture, page), time_s[2];

  if (picture->kind == BW_PICTURE_BLANKING)
    {
      *x = blanking_x (picture, page, point->along) - line_start (picture, page);
      return *x >= 0 && *x < page->width;
    }
  for (guint i = 0; i < G_N_ELEMENTS (places); i++)
    {
      gboolean inside;
      time_s[i] = bw_line_view_time_at (width, page->height, page->ink, picture->raster,
                                        bw_quantity_locale_mark (), places[i] * width, y, &inside);
      if (!inside)
        return FALSE;
    }
  double share = (point->along - time_s[0]) / (time_s[1] - time_s[0]);
  *x = (places[0] + share * (places[1] - places[0])) * width - line_start (picture, page);
  return *x >= 0 && *x < page->width;
}

static gboolean
place_point (const BwPicture *base, const BwPicturePage *page, const BwPicturePoint *point,
             double *x, double *y)
{
  const BwRasterPicture *picture = bw_raster_picture (base);
  const BwFieldView field = field_of (picture);
  const BwMapView map = map_of (picture);

  switch (picture->kind)
    {
    case BW_PICTURE_FIELD:
      *x = bw_field_view_x_at (page->width, page->height, page->ink, &field, point->along);
      return !isnan (*x);
    case BW_PICTURE_MAP:
      return bw_map_view_place (page->width, page->height, page->ink, &map, point->along,
                                point->down, x, y);
    case BW_PICTURE_LINE:
    case BW_PICTURE_BLANKING:
    case BW_N_PICTURES:
    default:
      return place_line (picture, page, point, x, *y);
    }
}

/* Zooming */

static gboolean
is_whole (const BwPicture *base)
{
  const BwRasterPicture *picture = bw_raster_picture (base);
  return bw_view_range_is_whole (&picture->across)
         && (picture->kind != BW_PICTURE_MAP || bw_view_range_is_whole (&picture->down));
}

static void
show_whole (BwPicture *base)
{
  init_ranges ((BwRasterPicture *) base);
}

static double
middle (const BwViewRange *range)
{
  return (range->from + range->to) / 2;
}

static void
zoom (BwPicture *base, const BwPicturePage *page, double x, double y, double factor)
{
  BwRasterPicture *picture = (BwRasterPicture *) base;
  BwPicturePoint point;
  gboolean inside = read_point (base, page, x, y, &point);
  double across = inside ? point.along : middle (&picture->across);

  if (bw_raster_picture_is_line (picture))
    across = inside ? (x + line_start (picture, page)) / line_width (picture, page)
                    : middle (&picture->across);
  bw_view_range_zoom (&picture->across, across, factor);
  if (picture->kind == BW_PICTURE_MAP)
    bw_view_range_zoom (&picture->down, inside ? point.down : middle (&picture->down), factor);
}

/* How much of the axis lies in one pixel. */
static double
across_per_pixel (const BwRasterPicture *picture, const BwPicturePage *page)
{
  const BwViewRange *range = &picture->across;
  const BwFieldView field = field_of (picture);
  double length = range->to - range->from, left = 0, right = page->width;

  if (picture->kind == BW_PICTURE_FIELD)
    {
      left = bw_field_view_x_at (page->width, page->height, page->ink, &field, range->from);
      right = bw_field_view_x_at (page->width, page->height, page->ink, &field, range->to);
    }
  return right > left ? length / (right - left) : length / page->width;
}

static void
pan_map (BwRasterPicture *picture, const BwPicturePage *page, double dx, double dy)
{
  const BwMapView map = map_of (picture);
  BwViewRange *across = &picture->across, *down = &picture->down;
  double left, right, top, bottom;

  bw_map_view_place (page->width, page->height, page->ink, &map, across->from, down->from, &left,
                     &top);
  bw_map_view_place (page->width, page->height, page->ink, &map, across->to, down->to, &right,
                     &bottom);
  if (!(right > left) || !(bottom > top))
    return;
  bw_view_range_pan (across, -dx * (across->to - across->from) / (right - left));
  bw_view_range_pan (down, -dy * (down->to - down->from) / (bottom - top));
}

static void
pan (BwPicture *base, const BwPicturePage *page, double dx, double dy)
{
  BwRasterPicture *picture = (BwRasterPicture *) base;

  if (picture->kind == BW_PICTURE_MAP)
    pan_map (picture, page, dx, dy);
  else
    bw_view_range_pan (&picture->across, -dx * across_per_pixel (picture, page));
}

static const BwPictureClass raster_picture_class = {
  .free = free_picture,
  .draw = draw,
  .name = bw_raster_picture_name,
  .describe = bw_raster_picture_describe,
  .file_stem = bw_raster_picture_file_stem,
  .read = read_point,
  .place = place_point,
  .words = bw_raster_picture_words,
  .difference = bw_raster_picture_difference,
  .is_whole = is_whole,
  .show_whole = show_whole,
  .zoom = zoom,
  .pan = pan,
};
