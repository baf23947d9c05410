/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

void bw_print_recall (GtkPrintOperation *operation);
gboolean bw_print_remember (GtkPrintOperation *operation, GError **error);

G_END_DECLS
