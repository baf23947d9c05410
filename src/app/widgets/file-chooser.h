/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

void bw_file_chooser_let_go (GtkNativeDialog **chooser);

G_END_DECLS
