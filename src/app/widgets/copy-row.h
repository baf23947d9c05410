/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define BW_TYPE_COPY_ROW (bw_copy_row_get_type ())
G_DECLARE_FINAL_TYPE (BwCopyRow, bw_copy_row, BW, COPY_ROW, GtkListBoxRow)

GtkWidget *bw_copy_row_new (void);
void bw_copy_row_set_text (BwCopyRow *self, const char *text);
const char *bw_copy_row_get_text (BwCopyRow *self);

G_END_DECLS
