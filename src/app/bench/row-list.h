/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define BW_TYPE_ROW_LIST (bw_row_list_get_type ())
G_DECLARE_FINAL_TYPE (BwRowList, bw_row_list, BW, ROW_LIST, GtkWidget)

/**
 * BwRowSays:
 * @index: a row
 * @name: (out) (transfer none): its first line; valid until the next call of the list
 * @owner: what was given with the function
 *
 * Returns: (transfer full): its second line
 */
typedef char *(*BwRowSays) (guint index, const char **name, gpointer owner);

void bw_row_list_set_says (BwRowList *self, BwRowSays says, gpointer owner);
void bw_row_list_show (BwRowList *self, guint n_rows);
void bw_row_list_select (BwRowList *self, guint index);
guint bw_row_list_get_selected (BwRowList *self);
GtkWidget *bw_row_list_get_row (BwRowList *self, guint index);
void bw_row_list_choose_at (BwRowList *self, double y);
void bw_row_list_focus_selected (BwRowList *self);

G_END_DECLS
