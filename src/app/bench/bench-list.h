/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/document/document.h"

G_BEGIN_DECLS

#define BW_TYPE_BENCH_LIST (bw_bench_list_get_type ())
G_DECLARE_FINAL_TYPE (BwBenchList, bw_bench_list, BW, BENCH_LIST, GtkWidget)

void bw_bench_list_set_up (BwBenchList *self, BwDocument *document, BwPart part);
void bw_bench_list_pick (BwBenchList *self);
void bw_bench_list_focus_selected (BwBenchList *self);

G_END_DECLS
