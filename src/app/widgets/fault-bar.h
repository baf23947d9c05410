/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define BW_TYPE_FAULT_BAR (bw_fault_bar_get_type ())
G_DECLARE_FINAL_TYPE (BwFaultBar, bw_fault_bar, BW, FAULT_BAR, GtkWidget)

void bw_fault_bar_show (BwFaultBar *self, const char *title, GPtrArray *faults);
const char *bw_fault_bar_get_text (BwFaultBar *self);

G_END_DECLS
