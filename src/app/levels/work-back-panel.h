/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/document/document.h"
#include "app/widgets/chooser.h"
#include "app/widgets/form.h"
#include "app/widgets/result-view.h"

G_BEGIN_DECLS

#define BW_TYPE_WORK_BACK_PANEL (bw_work_back_panel_get_type ())
G_DECLARE_FINAL_TYPE (BwWorkBackPanel, bw_work_back_panel, BW, WORK_BACK_PANEL, GtkWidget)

void bw_work_back_panel_set_document (BwWorkBackPanel *self, BwDocument *document);

G_END_DECLS
