/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "raster-picture.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "draw/blanking/view.h"
#include "draw/line/shape.h"
#include "draw/line/view.h"

/* A picture and what is read in it, in words. */

static char *
time_text (double time_s)
{
  return bw_quantity_format (fabs (time_s), BW_DIMENSION_TIME, 5, bw_quantity_locale_mark ());
}

/**
 * bw_raster_picture_file_stem:
 *
 * Returns: (transfer full): a name for a file with it, without suffix
 */
char *
bw_raster_picture_file_stem (const BwPicture *base)
{
  static const char *const ids[BW_N_PICTURES]
      = { [BW_PICTURE_LINE] = "line",
          [BW_PICTURE_BLANKING] = "blanking",
          [BW_PICTURE_FIELD] = "field",
          [BW_PICTURE_MAP] = "map" };
  const BwRasterPicture *picture = bw_raster_picture (base);
  return g_strdup_printf ("%s-%s", picture->raster->id, ids[picture->kind]);
}

/**
 * bw_raster_picture_name:
 *
 * Returns: (transfer full): what is drawn, in a few words
 */
char *
bw_raster_picture_name (const BwPicture *base)
{
  const BwRasterPicture *picture = bw_raster_picture (base);
  static const char *const names[BW_N_PICTURES] = {
    [BW_PICTURE_LINE] = N_ ("The line of %s, drawn"),
    [BW_PICTURE_BLANKING] = N_ ("The line blanking of %s, drawn"),
    [BW_PICTURE_FIELD] = N_ ("The vertical interval of %s, drawn"),
    [BW_PICTURE_MAP] = N_ ("The map of %s, drawn"),
  };
#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wformat-nonliteral"
  return g_strdup_printf (_ (names[picture->kind]), picture->raster->name);
#pragma GCC diagnostic pop
}

/**
 * bw_raster_picture_describe:
 *
 * Returns: (transfer full): the drawing in words, for those who do not see it
 */
char *
bw_raster_picture_describe (const BwPicture *base)
{
  const BwRasterPicture *picture = bw_raster_picture (base);
  char mark = bw_quantity_locale_mark ();
  const BwFieldView field
      = { .raster = picture->raster, .system = picture->system, .mark = mark };
  const BwMapView map = { .raster = picture->raster,
                          .overscan_h = picture->overscan_h,
                          .overscan_v = picture->overscan_v,
                          .aspect = picture->aspect,
                          .mark = mark };
  const BwBlankingView blanking
      = { .raster = picture->raster, .limits = picture->limits, .mark = mark };

  if (picture->kind == BW_PICTURE_FIELD)
    return bw_field_view_describe (&field);
  if (picture->kind == BW_PICTURE_MAP)
    return bw_map_view_describe (&map);
  if (picture->kind == BW_PICTURE_BLANKING)
    return bw_blanking_view_describe (&blanking);
  return bw_line_view_describe (picture->raster, mark);
}

/* At which level the signal stands in an interval of the line. */
static const char *
level_words (BwLineInterval interval, gboolean trilevel)
{
  switch (interval)
    {
    case BW_INTERVAL_SYNC:
      return trilevel ? _ ("below or above blanking") : _ ("at the sync tip");
    case BW_INTERVAL_ACTIVE:
      return _ ("between black and white");
    default:
      return _ ("at blanking");
    }
}

static char *
line_words (const BwRasterPicture *picture, const BwPicturePoint *point)
{
  BwLineShape shape;
  bw_line_shape_init (&shape, picture->raster);
  BwLineInterval interval = bw_line_shape_at (&shape, point->along);
  g_autofree char *time = time_text (point->along);
  return g_strdup_printf (point->along < 0 ? _ ("%s before 0H: %s, %s")
                                            : _ ("%s after 0H: %s, %s"),
                          time, bw_line_interval_label (interval), level_words (interval, shape.trilevel));
}

static char *
field_words (const BwRasterPicture *picture, const BwPicturePoint *point)
{
  BwFieldShape shape;
  bw_field_shape_init (&shape, picture->raster, (int) point->at[BW_RASTER_POINT_FIELD]);
  const char *part = bw_field_part_label (&shape, (BwFieldPart) point->at[BW_RASTER_POINT_PART]);
  g_autofree char *time = time_text (point->along);
  g_autofree char *line_time = time_text (point->at[BW_RASTER_POINT_LINE_TIME]);
  g_autofree char *from_field_sync = g_strdup_printf (
      point->along < 0 ? _ ("%s before 0V") : _ ("%s after 0V"), time);
  return g_strdup_printf (_ ("Field %d, line %d, %s after its 0H: %s; %s"), (int) point->at[BW_RASTER_POINT_FIELD] + 1,
                          (int) point->at[BW_RASTER_POINT_LINE], line_time, part != NULL ? part : "", from_field_sync);
}

static char *
map_words (const BwPicturePoint *point)
{
  g_autofree char *time = time_text (point->along);
  return g_strdup_printf (_ ("Line %d, %s after 0H: %s"), (int) point->at[BW_RASTER_POINT_LINE], time,
                          point->at[BW_RASTER_POINT_PART] != 0 ? _ ("picture") : _ ("outside the picture"));
}

/**
 * bw_raster_picture_words:
 *
 * Returns: (transfer full): what a cursor at @point reads
 */
char *
bw_raster_picture_words (const BwPicture *base, const BwPicturePoint *point)
{
  const BwRasterPicture *picture = bw_raster_picture (base);

  switch (picture->kind)
    {
    case BW_PICTURE_FIELD:
      return field_words (picture, point);
    case BW_PICTURE_MAP:
      return map_words (point);
    case BW_PICTURE_LINE:
    case BW_PICTURE_BLANKING:
    case BW_N_PICTURES:
    default:
      return line_words (picture, point);
    }
}

static char *
lines_text (double lines)
{
  return bw_quantity_format (fabs (lines), BW_DIMENSION_LINES, 4, bw_quantity_locale_mark ());
}

/* A time, and the rate of what takes that long. */
static char *
span_text (double span_s)
{
  g_autofree char *time = time_text (span_s);
  if (!(fabs (span_s) > 1e-12))
    return g_strdup (time);
  g_autofree char *rate = bw_quantity_format (1 / fabs (span_s), BW_DIMENSION_FREQUENCY, 5,
                                              bw_quantity_locale_mark ());
  return g_strdup_printf ("%s (%s)", time, rate);
}

/**
 * bw_raster_picture_difference:
 *
 * Returns: (transfer full): how far two points are apart
 */
char *
bw_raster_picture_difference (const BwPicture *base, const BwPicturePoint *a,
                              const BwPicturePoint *b)
{
  const BwRasterPicture *picture = bw_raster_picture (base);
  BwRasterFigures f;
  double span_s = b->along - a->along;
  g_autofree char *span = span_text (span_s);
  bw_raster_figures (picture->raster, &f);
  double lines = picture->kind == BW_PICTURE_MAP ? b->down - a->down
                                                 : span_s / f.line_period_s;
  g_autofree char *counted = lines_text (lines);

  if (bw_raster_picture_is_line (picture))
    return g_strdup_printf (_ ("Between the cursors: %s"), span);
  if (picture->kind == BW_PICTURE_MAP)
    return g_strdup_printf (_ ("Between the cursors: %s across, %s down"), span, counted);
  return g_strdup_printf (_ ("Between the cursors: %s, %s"), span, counted);
}
