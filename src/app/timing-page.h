/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "document.h"

G_BEGIN_DECLS

#define BW_TYPE_TIMING_PAGE (bw_timing_page_get_type ())
G_DECLARE_FINAL_TYPE (BwTimingPage, bw_timing_page, BW, TIMING_PAGE, GtkWidget)

void bw_timing_page_set_document (BwTimingPage *self, BwDocument *document);
const BwRaster *bw_timing_page_get_raster (BwTimingPage *self);
gboolean bw_timing_page_export (BwTimingPage *self, const char *path, GError **error);
void bw_timing_page_copy (BwTimingPage *self);

G_END_DECLS
