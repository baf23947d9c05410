/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "field-view.h"
#include "map-view.h"
#include "reading.h"
#include "sheet.h"

G_BEGIN_DECLS

/* The drawings of a raster behind one face: drawn, read and zoomed alike. */

typedef enum
{
  BW_PICTURE_LINE,
  BW_PICTURE_BLANKING,
  BW_PICTURE_FIELD,
  BW_PICTURE_MAP,
  BW_N_PICTURES
} BwPictureKind;

/**
 * BwPicture:
 * @raster: owned
 * @system: whose burst the field shows
 * @all_limits: (nullable): owned; of all standards, for the blanking alone
 * @limits: (nullable): of the first standard for this raster, that the blanking shows
 * @across: what is shown: of the line and its blanking as a share of its page, of the field in seconds after 0V, of
 *   the map in seconds after 0H
 * @down: of the map, in lines after 0V
 */
typedef struct
{
  BwPictureKind kind;
  BwRaster *raster;
  BwColourSystem system;
  GPtrArray *all_limits;
  const BwStandardLimits *limits;
  double overscan_h;
  double overscan_v;
  BwRatio aspect;
  BwViewRange across;
  BwViewRange down;
} BwPicture;

/**
 * BwPicturePage:
 *
 * What a picture is drawn on.
 */
typedef struct
{
  double width;
  double height;
  const BwInk *ink;
} BwPicturePage;

/**
 * BwPicturePoint:
 * @row: of the field, 0 or 1
 * @field: 0 or 1
 * @line: as the standard numbers it; not of the line
 * @time_s: along the axis: after 0H, of the field after 0V
 * @line_time_s: of the field: after 0H of @line
 * @lines: of the map: after 0V
 * @seen: of the map: inside the picture
 * @part: of the field
 *
 * A point of a picture, read.
 */
typedef struct
{
  int row;
  int field;
  int line;
  double time_s;
  double line_time_s;
  double lines;
  gboolean seen;
  BwFieldPart part;
} BwPicturePoint;

gboolean bw_picture_is_line (const BwPicture *picture);
BwPicture *bw_picture_new (BwPictureKind kind, const BwRaster *raster, const BwSource *source,
                           const BwMonitor *monitor);
void bw_picture_free (BwPicture *picture);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (BwPicture, bw_picture_free)

void bw_picture_draw (const BwPicture *picture, cairo_t *cr, const BwPicturePage *page);
char *bw_picture_describe (const BwPicture *picture);
char *bw_picture_name (const BwPicture *picture);
const char *bw_picture_id (const BwPicture *picture);

gboolean bw_picture_read (const BwPicture *picture, const BwPicturePage *page, double x, double y,
                          BwPicturePoint *point);
gboolean bw_picture_place (const BwPicture *picture, const BwPicturePage *page,
                           const BwPicturePoint *point, double *x, double *y);
char *bw_picture_words (const BwPicture *picture, const BwPicturePoint *point);
char *bw_picture_difference (const BwPicture *picture, const BwPicturePoint *a,
                             const BwPicturePoint *b);

gboolean bw_picture_is_whole (const BwPicture *picture);
void bw_picture_show_whole (BwPicture *picture);
void bw_picture_zoom (BwPicture *picture, const BwPicturePage *page, double x, double y,
                      double factor);
void bw_picture_pan (BwPicture *picture, const BwPicturePage *page, double dx, double dy);

G_END_DECLS
