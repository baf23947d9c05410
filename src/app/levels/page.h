/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/document/document.h"
#include "app/widgets/picture-panel.h"
#include "cause-panel.h"
#include "sync-panel.h"
#include "waveform-panel.h"

G_BEGIN_DECLS

#define BW_TYPE_LEVELS_PAGE (bw_levels_page_get_type ())
G_DECLARE_FINAL_TYPE (BwLevelsPage, bw_levels_page, BW, LEVELS_PAGE, GtkWidget)

void bw_levels_page_set_document (BwLevelsPage *self, BwDocument *document);
BwPicturePanel *bw_levels_page_get_panel (BwLevelsPage *self);

void bw_levels_page_show_part (BwLevelsPage *self, const char *part);
BwWaveformPanel *bw_levels_page_get_waveform (BwLevelsPage *self);
BwSyncPanel *bw_levels_page_get_sync (BwLevelsPage *self);
BwCausePanel *bw_levels_page_get_cause (BwLevelsPage *self);

G_END_DECLS
