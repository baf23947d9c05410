/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/document/document.h"
#include "bench-list.h"

G_BEGIN_DECLS

#define BW_TYPE_BENCH_PANEL (bw_bench_panel_get_type ())
G_DECLARE_FINAL_TYPE (BwBenchPanel, bw_bench_panel, BW, BENCH_PANEL, GtkWidget)

void bw_bench_panel_set_document (BwBenchPanel *self, BwDocument *document);
void bw_bench_panel_choose_monitor (BwBenchPanel *self);
BwBenchList *bw_bench_panel_get_list (BwBenchPanel *self, BwPart part);
void bw_bench_panel_focus_part (BwBenchPanel *self, BwPart part);

G_END_DECLS
