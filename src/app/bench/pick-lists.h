/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

#include "app/document/document.h"
#include "app/widgets/pick-item.h"

G_BEGIN_DECLS

/* What can be picked from: lists of BwPickItem made from the catalogue and the sheet. */

GListModel *bw_pick_list_rasters (BwDocument *document);
GListModel *bw_pick_list_monitors (const BwCatalogue *catalogue);
GListModel *bw_pick_list_inputs (const BwCatalogue *catalogue);
GListModel *bw_pick_list_sources (const BwCatalogue *catalogue);

gboolean bw_pick_item_is_blank (BwPickItem *item);

BwMonitor *bw_blank_monitor_new (void);
BwInput *bw_blank_input_new (void);
BwSource *bw_blank_source_new (void);
BwInput *bw_plain_input_new (void);
BwSource *bw_plain_source_new (const BwSheet *sheet);

G_END_DECLS
