/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "core/fit/fit.h"

G_BEGIN_DECLS

#define BW_TYPE_FIT_CELL (bw_fit_cell_get_type ())
G_DECLARE_FINAL_TYPE (BwFitCell, bw_fit_cell, BW, FIT_CELL, GtkToggleButton)

GtkWidget *bw_fit_cell_new (void);
void bw_fit_cell_set_place (BwFitCell *self, guint source, guint input);
guint bw_fit_cell_get_source (BwFitCell *self);
guint bw_fit_cell_get_input (BwFitCell *self);
void bw_fit_cell_show (BwFitCell *self, const BwFit *fit, const BwCase *c, char *const *needs);
int bw_fit_cell_get_least_width (BwFitCell *self);
const char *bw_fit_cell_get_word (BwFitCell *self);
const char *bw_fit_cell_get_detail (BwFitCell *self);

G_END_DECLS
