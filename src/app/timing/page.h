/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/document/document.h"
#include "drawing-panel.h"
#include "identify-panel.h"
#include "readings-panel.h"
#include "work-out.h"

G_BEGIN_DECLS

#define BW_TYPE_TIMING_PAGE (bw_timing_page_get_type ())
G_DECLARE_FINAL_TYPE (BwTimingPage, bw_timing_page, BW, TIMING_PAGE, GtkWidget)

void bw_timing_page_set_document (BwTimingPage *self, BwDocument *document);
const BwRaster *bw_timing_page_get_raster (BwTimingPage *self);
BwPicturePanel *bw_timing_page_get_panel (BwTimingPage *self);

void bw_timing_page_show_part (BwTimingPage *self, const char *part);
BwDrawingPanel *bw_timing_page_get_drawing (BwTimingPage *self);
BwWorkOut *bw_timing_page_get_work_out (BwTimingPage *self);
BwIdentifyPanel *bw_timing_page_get_identify (BwTimingPage *self);
BwReadingsPanel *bw_timing_page_get_readings (BwTimingPage *self);

G_END_DECLS
