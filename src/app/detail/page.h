/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/widgets/page.h"
#include "state.h"

G_BEGIN_DECLS

#define BW_TYPE_DETAIL_PAGE (bw_detail_page_get_type ())
G_DECLARE_FINAL_TYPE (BwDetailPage, bw_detail_page, BW, DETAIL_PAGE, BwPage)

BwDetailState *bw_detail_page_get_state (BwDetailPage *self);
void bw_detail_page_open_picture (BwDetailPage *self, GFile *file);

G_END_DECLS
