/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "plans.h"

G_BEGIN_DECLS

#define BW_TYPE_HOOKUP_SIDE (bw_hookup_side_get_type ())
G_DECLARE_FINAL_TYPE (BwHookupSide, bw_hookup_side, BW, HOOKUP_SIDE, GtkBox)

void bw_hookup_side_show (BwHookupSide *self, BwHookupHold *hold);
GtkWidget *bw_hookup_caution_new (void);
char *bw_hookup_side_dup_parts_csv (BwHookupSide *self);

G_END_DECLS
