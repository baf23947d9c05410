/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "hookup-picture.h"
#include "list.h"

G_BEGIN_DECLS

/* What stands beside the drawing. */
typedef enum
{
  BW_HOOKUP_LIST_STEPS,
  BW_HOOKUP_LIST_PARTS,
  BW_HOOKUP_LIST_CONNECTIONS,
  BW_HOOKUP_LIST_PINS,
  BW_HOOKUP_LIST_WARNINGS,
  BW_N_HOOKUP_LISTS
} BwHookupListKind;

#define BW_TYPE_HOOKUP_SIDE (bw_hookup_side_get_type ())
G_DECLARE_FINAL_TYPE (BwHookupSide, bw_hookup_side, BW, HOOKUP_SIDE, GtkBox)

void bw_hookup_side_show (BwHookupSide *self, BwHookupHold *hold);
BwHookupList *bw_hookup_side_get_list (BwHookupSide *self, BwHookupListKind kind);
char *bw_hookup_side_dup_parts_csv (BwHookupSide *self);

G_END_DECLS
