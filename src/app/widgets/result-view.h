/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "core/result/result.h"

G_BEGIN_DECLS

void bw_figure_label_set (GtkLabel *label, const char *text);
GtkWidget *bw_words_label_new (const char *text, const char *css_class);
GtkWidget *bw_row_label_new (const char *css_class);

#define BW_TYPE_RESULT_VIEW (bw_result_view_get_type ())
G_DECLARE_FINAL_TYPE (BwResultView, bw_result_view, BW, RESULT_VIEW, GtkWidget)

BwResultView *bw_result_view_new (const char *title);
void bw_result_view_set_cards (BwResultView *self, gboolean cards);
void bw_result_view_set_selectable (BwResultView *self);
void bw_result_view_show (BwResultView *self, BwResult *result);
void bw_result_view_show_part (BwResultView *self, BwResult *result, const char *key);
BwResult *bw_result_view_get_result (BwResultView *self);
const BwNode *bw_result_view_get_selected (BwResultView *self);

G_END_DECLS
