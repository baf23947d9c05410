/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

GtkWidget *bw_button_new (const char *label);
void bw_name_button (GtkButton *button);
void bw_name_buttons (GtkWidget *root);

G_END_DECLS
