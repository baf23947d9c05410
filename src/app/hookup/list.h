/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define BW_TYPE_HOOKUP_LIST (bw_hookup_list_get_type ())
G_DECLARE_FINAL_TYPE (BwHookupList, bw_hookup_list, BW, HOOKUP_LIST, GtkWidget)

BwHookupList *bw_hookup_list_new (const char *name, const char *title);
void bw_hookup_list_clear (BwHookupList *self);
void bw_hookup_list_add (BwHookupList *self, const char *text, const char *detail);
void bw_hookup_list_done (BwHookupList *self);
guint bw_hookup_list_count (BwHookupList *self);
const char *bw_hookup_list_text (BwHookupList *self, guint index);

G_END_DECLS
