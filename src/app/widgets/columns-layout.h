/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define BW_TYPE_COLUMNS_LAYOUT (bw_columns_layout_get_type ())
G_DECLARE_FINAL_TYPE (BwColumnsLayout, bw_columns_layout, BW, COLUMNS_LAYOUT, GtkLayoutManager)

G_END_DECLS
