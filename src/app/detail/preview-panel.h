/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/widgets/picture-panel.h"
#include "preview-view.h"
#include "state.h"

G_BEGIN_DECLS

#define BW_TYPE_PREVIEW_PANEL (bw_preview_panel_get_type ())
G_DECLARE_FINAL_TYPE (BwPreviewPanel, bw_preview_panel, BW, PREVIEW_PANEL, GtkWidget)

void bw_preview_panel_set_state (BwPreviewPanel *self, BwDetailState *state);
void bw_preview_panel_open (BwPreviewPanel *self, GFile *file);
void bw_preview_panel_cancel (BwPreviewPanel *self);

BwPicturePanel *bw_preview_panel_get_panel (BwPreviewPanel *self);
BwPreviewView *bw_preview_panel_get_view (BwPreviewPanel *self);
const char *bw_preview_panel_get_fault (BwPreviewPanel *self);
gboolean bw_preview_panel_is_busy (BwPreviewPanel *self);

G_END_DECLS
