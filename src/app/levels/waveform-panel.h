/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/document/document.h"
#include "app/widgets/editor-row.h"
#include "app/widgets/picture-panel.h"

G_BEGIN_DECLS

#define BW_TYPE_WAVEFORM_PANEL (bw_waveform_panel_get_type ())
G_DECLARE_FINAL_TYPE (BwWaveformPanel, bw_waveform_panel, BW, WAVEFORM_PANEL, GtkWidget)

void bw_waveform_panel_set_document (BwWaveformPanel *self, BwDocument *document);
BwPicturePanel *bw_waveform_panel_get_panel (BwWaveformPanel *self);
BwEditorRow *bw_waveform_panel_get_line_row (BwWaveformPanel *self);

G_END_DECLS
