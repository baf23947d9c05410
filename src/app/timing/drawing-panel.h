/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/document/document.h"
#include "app/widgets/picture-panel.h"

G_BEGIN_DECLS

/* What can be drawn of a raster. */
typedef enum
{
  BW_RASTER_LINE,
  BW_RASTER_BLANKING,
  BW_RASTER_FIELD,
  BW_RASTER_MAP,
  BW_N_RASTER_VIEWS
} BwRasterView;

#define BW_TYPE_DRAWING_PANEL (bw_drawing_panel_get_type ())
G_DECLARE_FINAL_TYPE (BwDrawingPanel, bw_drawing_panel, BW, DRAWING_PANEL, GtkWidget)

void bw_drawing_panel_set_document (BwDrawingPanel *self, BwDocument *document);
const BwRaster *bw_drawing_panel_get_raster (BwDrawingPanel *self);
BwPicturePanel *bw_drawing_panel_get_panel (BwDrawingPanel *self);
BwPictureArea *bw_drawing_panel_get_area (BwDrawingPanel *self);
void bw_drawing_panel_choose (BwDrawingPanel *self, BwRasterView view);

G_END_DECLS
