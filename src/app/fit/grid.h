/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/document/document.h"
#include "cell.h"

G_BEGIN_DECLS

#define BW_TYPE_FIT_GRID (bw_fit_grid_get_type ())
G_DECLARE_FINAL_TYPE (BwFitGrid, bw_fit_grid, BW, FIT_GRID, GtkWidget)

void bw_fit_grid_set_document (BwFitGrid *self, BwDocument *document);
BwFitCell *bw_fit_grid_get_cell (BwFitGrid *self, guint source, guint input);

G_END_DECLS
