/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define BW_TYPE_READING_BOX (bw_reading_box_get_type ())
G_DECLARE_FINAL_TYPE (BwReadingBox, bw_reading_box, BW, READING_BOX, GtkBox)

gboolean bw_tab_in_order (GtkWidget *widget, GtkDirectionType direction);
GtkWidget *bw_reading_box_new (GtkOrientation orientation, int spacing);

G_END_DECLS
