/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

void bw_reveal (GtkWidget *widget, GtkWidget *focus);

G_END_DECLS
