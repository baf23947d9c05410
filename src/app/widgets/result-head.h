/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "core/result/result.h"

G_BEGIN_DECLS

/**
 * BwResultMaker:
 *
 * Returns: (transfer full) (nullable): what @owner shows, made when somebody wants to take it away
 */
typedef BwResult *(*BwResultMaker) (gpointer owner);

#define BW_TYPE_RESULT_HEAD (bw_result_head_get_type ())
G_DECLARE_FINAL_TYPE (BwResultHead, bw_result_head, BW, RESULT_HEAD, GtkWidget)

void bw_result_head_set_result (BwResultHead *self, BwResult *result);
BwResult *bw_result_head_get_result (BwResultHead *self);
void bw_result_head_add_menu (BwResultHead *self, GtkWidget *table);
void bw_result_head_set_maker (BwResultHead *self, BwResultMaker maker, gpointer owner);

G_END_DECLS
