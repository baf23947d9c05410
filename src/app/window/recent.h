/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

void bw_recent_add (GFile *file);
void bw_recent_fill (GMenu *menu, guint limit);

G_END_DECLS
