/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/document/document.h"
#include "findings-view.h"
#include "grid.h"

G_BEGIN_DECLS

#define BW_TYPE_FIT_PAGE (bw_fit_page_get_type ())
G_DECLARE_FINAL_TYPE (BwFitPage, bw_fit_page, BW, FIT_PAGE, GtkWidget)

void bw_fit_page_set_document (BwFitPage *self, BwDocument *document);
void bw_fit_page_focus (BwFitPage *self);
BwFitGrid *bw_fit_page_get_grid (BwFitPage *self);
BwFindingsView *bw_fit_page_get_findings (BwFitPage *self);

G_END_DECLS
