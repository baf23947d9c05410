/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define BW_TYPE_SIDE_LAYOUT (bw_side_layout_get_type ())
G_DECLARE_FINAL_TYPE (BwSideLayout, bw_side_layout, BW, SIDE_LAYOUT, GtkLayoutManager)

G_END_DECLS
