/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define BW_TYPE_HELP (bw_help_get_type ())
G_DECLARE_FINAL_TYPE (BwHelp, bw_help, BW, HELP, GtkWindow)

BwHelp *bw_help_open (GtkWindow *parent);
void bw_help_show (BwHelp *self, const char *page, const char *view);
const char *bw_help_get_page (BwHelp *self);

G_END_DECLS
