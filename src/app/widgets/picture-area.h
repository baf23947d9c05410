/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "draw/base/drawing.h"

G_BEGIN_DECLS

/**
 * BwPictureSource:
 * @build: (transfer full): the drawing for a page; @zoom: (nullable): the part that is shown, %NULL
 *   for all
 * @free: frees the data
 * @keeps_zoom: whether what is shown at first is the same part as before, if the axes are the same
 * @is_whole: (nullable): whether nothing is left out
 * @zoom: (nullable): shows another part, about a place of @drawing; @factor: how much larger things
 *   become, or zero for the whole
 * @pan: (nullable): moves what is shown by @dx to the right and @dy downwards
 *
 * Where the drawings of an area come from. @is_whole, @zoom and @pan go together; where they are, the data
 * itself says what part is shown, and the drawing does not.
 */
typedef struct
{
  BwDrawing *(*build) (gpointer data, double width, double height, const BwInk *ink,
                       const BwZoom *zoom);
  void (*free) (gpointer data);
  gboolean keeps_zoom;
  gboolean (*is_whole) (gconstpointer data);
  void (*zoom) (gpointer data, const BwDrawing *drawing, double x, double y, double factor);
  void (*pan) (gpointer data, const BwDrawing *drawing, double dx, double dy);
} BwPictureSource;

#define BW_TYPE_PICTURE_AREA (bw_picture_area_get_type ())
G_DECLARE_FINAL_TYPE (BwPictureArea, bw_picture_area, BW, PICTURE_AREA, GtkWidget)

void bw_picture_area_show (BwPictureArea *self, const BwPictureSource *source, gpointer data);
gboolean bw_picture_area_has_source (BwPictureArea *self);
void bw_picture_area_refresh (BwPictureArea *self);
BwDrawing *bw_picture_area_get_drawing (BwPictureArea *self);
BwDrawing *bw_picture_area_build (BwPictureArea *self, double width, double height,
                                  const BwInk *ink);
const BwInk *bw_picture_area_get_ink (BwPictureArea *self);

gboolean bw_picture_area_can_be_zoomed (BwPictureArea *self);
gboolean bw_picture_area_is_whole (BwPictureArea *self);
void bw_picture_area_zoom (BwPictureArea *self, double factor);
void bw_picture_area_show_whole (BwPictureArea *self);
void bw_picture_area_set_second (BwPictureArea *self);

G_END_DECLS
