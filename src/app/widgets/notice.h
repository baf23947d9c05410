/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define BW_TYPE_NOTICE (bw_notice_get_type ())
G_DECLARE_FINAL_TYPE (BwNotice, bw_notice, BW, NOTICE, GtkWidget)

void bw_notice_show_written (BwNotice *self, GFile *file);
const char *bw_notice_get_text (BwNotice *self);

G_END_DECLS
