/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "core/bench/catalogue.h"
#include "pick-item.h"

G_BEGIN_DECLS

#define BW_TYPE_PICKER (bw_picker_get_type ())
G_DECLARE_FINAL_TYPE (BwPicker, bw_picker, BW, PICKER, GtkPopover)

GtkWidget *bw_picker_new (void);
void bw_picker_set_items (BwPicker *self, GListModel *items);

/**
 * BwPickListFunc:
 *
 * Returns: (transfer full) (element-type BwPickItem): what to pick from
 */
typedef GListModel *(*BwPickListFunc) (const BwCatalogue *catalogue);

void bw_picker_set_list (BwPicker *self, BwPickListFunc list, const BwCatalogue *catalogue);

G_END_DECLS
