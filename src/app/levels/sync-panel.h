/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/document/document.h"
#include "app/widgets/form.h"
#include "app/widgets/picture-panel.h"

G_BEGIN_DECLS

#define BW_TYPE_SYNC_PANEL (bw_sync_panel_get_type ())
G_DECLARE_FINAL_TYPE (BwSyncPanel, bw_sync_panel, BW, SYNC_PANEL, GtkWidget)

void bw_sync_panel_set_document (BwSyncPanel *self, BwDocument *document);
BwPicturePanel *bw_sync_panel_get_panel (BwSyncPanel *self);
BwEditorRow *bw_sync_panel_get_row (BwSyncPanel *self, const char *key);
const char *bw_sync_panel_get_says (BwSyncPanel *self);

G_END_DECLS
