/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/document/document.h"
#include "reading-row.h"

G_BEGIN_DECLS

#define BW_TYPE_READINGS_PANEL (bw_readings_panel_get_type ())
G_DECLARE_FINAL_TYPE (BwReadingsPanel, bw_readings_panel, BW, READINGS_PANEL, GtkWidget)

void bw_readings_panel_set_document (BwReadingsPanel *self, BwDocument *document);
void bw_readings_panel_choose (BwReadingsPanel *self, const char *id);
BwReadingRow *bw_readings_panel_get_row (BwReadingsPanel *self, BwReadingKind kind);
const char *bw_readings_panel_get_summary (BwReadingsPanel *self);

G_END_DECLS
