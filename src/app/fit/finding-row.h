/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "core/result/result.h"
#include "finding-layout.h"

G_BEGIN_DECLS

#define BW_TYPE_FINDING_ROW (bw_finding_row_get_type ())
G_DECLARE_FINAL_TYPE (BwFindingRow, bw_finding_row, BW, FINDING_ROW, GtkWidget)

GtkWidget *bw_finding_row_new (GtkSizeGroup *const widths[BW_N_FINDING_COLUMNS]);
void bw_finding_row_show (BwFindingRow *self, const BwNode *finding);

G_END_DECLS
