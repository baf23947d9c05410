/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/document/document.h"
#include "app/widgets/editor-row.h"
#include "app/widgets/result-view.h"
#include "core/cause/cause.h"

G_BEGIN_DECLS

#define BW_TYPE_CAUSE_PANEL (bw_cause_panel_get_type ())
G_DECLARE_FINAL_TYPE (BwCausePanel, bw_cause_panel, BW, CAUSE_PANEL, GtkWidget)

void bw_cause_panel_set_document (BwCausePanel *self, BwDocument *document);
BwEditorRow *bw_cause_panel_get_row (BwCausePanel *self, BwScopeReading reading);
const char *bw_cause_panel_get_summary (BwCausePanel *self);
const BwCause *bw_cause_panel_get_cause (BwCausePanel *self, guint rank);
BwResultView *bw_cause_panel_get_view (BwCausePanel *self);

G_END_DECLS
