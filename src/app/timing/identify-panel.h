/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/document/document.h"
#include "app/widgets/form.h"

G_BEGIN_DECLS

#define BW_TYPE_IDENTIFY_PANEL (bw_identify_panel_get_type ())
G_DECLARE_FINAL_TYPE (BwIdentifyPanel, bw_identify_panel, BW, IDENTIFY_PANEL, GtkWidget)

void bw_identify_panel_set_document (BwIdentifyPanel *self, BwDocument *document);
BwForm *bw_identify_panel_get_form (BwIdentifyPanel *self);
const BwRaster *bw_identify_panel_get_raster (BwIdentifyPanel *self, guint rank);
const char *bw_identify_panel_get_says (BwIdentifyPanel *self);

G_END_DECLS
