/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define BW_TYPE_WRAP_LAYOUT (bw_wrap_layout_get_type ())
G_DECLARE_FINAL_TYPE (BwWrapLayout, bw_wrap_layout, BW, WRAP_LAYOUT, GtkLayoutManager)

GtkWidget *bw_wrap_box_new (void);
void bw_wrap_box_append (GtkWidget *box, GtkWidget *child);

G_END_DECLS
