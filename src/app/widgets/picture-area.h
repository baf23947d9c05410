/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "picture.h"

G_BEGIN_DECLS

#define BW_TYPE_PICTURE_AREA (bw_picture_area_get_type ())
G_DECLARE_FINAL_TYPE (BwPictureArea, bw_picture_area, BW, PICTURE_AREA, GtkWidget)

void bw_picture_area_show (BwPictureArea *self, BwPicture *picture);
const BwPicture *bw_picture_area_get_picture (BwPictureArea *self);
GdkTexture *bw_picture_area_texture (BwPictureArea *self);
void bw_picture_area_zoom (BwPictureArea *self, double factor);
void bw_picture_area_show_whole (BwPictureArea *self);
void bw_picture_area_set_second (BwPictureArea *self);
BwPicturePage bw_picture_area_page (BwPictureArea *self);
void bw_picture_area_refresh (BwPictureArea *self);

G_END_DECLS
