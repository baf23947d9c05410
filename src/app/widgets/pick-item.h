/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

G_BEGIN_DECLS

#define BW_TYPE_PICK_ITEM (bw_pick_item_get_type ())
G_DECLARE_FINAL_TYPE (BwPickItem, bw_pick_item, BW, PICK_ITEM, GObject)

BwPickItem *bw_pick_item_new (const char *title, const char *subtitle, const char *id,
                              gconstpointer thing);
const char *bw_pick_item_get_title (BwPickItem *self);
const char *bw_pick_item_get_subtitle (BwPickItem *self);
const char *bw_pick_item_get_id (BwPickItem *self);
gconstpointer bw_pick_item_get_thing (BwPickItem *self);
gboolean bw_pick_item_matches (BwPickItem *self, const char *const *words);

G_END_DECLS
