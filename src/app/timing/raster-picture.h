/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/widgets/picture.h"
#include "core/bench/sheet.h"
#include "core/raster/reading.h"
#include "draw/field/view.h"
#include "draw/map/view.h"

G_BEGIN_DECLS

/* The drawings of a raster. */

/* The own numbers of a point. */
typedef enum
{
  BW_RASTER_POINT_FIELD,     /* 0 or 1 */
  BW_RASTER_POINT_LINE,      /* as the standard numbers it; not of the line */
  BW_RASTER_POINT_LINE_TIME, /* of the field: seconds after 0H of that line */
  BW_RASTER_POINT_PART       /* of the field: BwFieldPart; of the map: whether inside the picture */
} BwRasterPointNumber;

typedef enum
{
  BW_PICTURE_LINE,
  BW_PICTURE_BLANKING,
  BW_PICTURE_FIELD,
  BW_PICTURE_MAP,
  BW_N_PICTURES
} BwPictureKind;

/**
 * BwRasterPicture:
 * @raster: owned
 * @system: whose burst the field shows
 * @all_limits: (nullable): owned; of all standards, for the blanking alone
 * @limits: (nullable): of the first standard for this raster, that the blanking shows
 * @across: what is shown: of the line and its blanking as a share of its page, of the field in
 *   seconds after 0V, of the map in seconds after 0H
 * @down: of the map, in lines after 0V
 *
 * A point of it is read as seconds after 0H along (of the field after 0V), and of the map in lines
 * after 0V down. Its own numbers are those of BwRasterPointNumber.
 */
typedef struct
{
  BwPicture parent;
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
} BwRasterPicture;

gboolean bw_raster_picture_is_line (const BwRasterPicture *picture);
BwPicture *bw_raster_picture_new (BwPictureKind kind, const BwRaster *raster,
                                  const BwSource *source, const BwMonitor *monitor);
const BwRasterPicture *bw_raster_picture (const BwPicture *picture);

/* raster-picture-words.c */
char *bw_raster_picture_name (const BwPicture *picture);
char *bw_raster_picture_describe (const BwPicture *picture);
char *bw_raster_picture_file_stem (const BwPicture *picture);
char *bw_raster_picture_words (const BwPicture *picture, const BwPicturePoint *point);
char *bw_raster_picture_difference (const BwPicture *picture, const BwPicturePoint *a,
                                    const BwPicturePoint *b);

G_END_DECLS
