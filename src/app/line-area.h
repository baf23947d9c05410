/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "raster.h"

G_BEGIN_DECLS

#define BW_TYPE_LINE_AREA (bw_line_area_get_type ())
G_DECLARE_FINAL_TYPE (BwLineArea, bw_line_area, BW, LINE_AREA, GtkWidget)

void bw_line_area_set_raster (BwLineArea *self, const BwRaster *raster);
GdkTexture *bw_line_area_picture (BwLineArea *self);

G_END_DECLS
