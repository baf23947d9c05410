/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define BW_TYPE_PARTS (bw_parts_get_type ())
G_DECLARE_FINAL_TYPE (BwParts, bw_parts, BW, PARTS, GtkWidget)

void bw_parts_add (BwParts *self, GtkWidget *part, const char *name, const char *title);
void bw_parts_show (BwParts *self, const char *name);
const char *bw_parts_get_shown (BwParts *self);

G_END_DECLS
