/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/document/document.h"
#include "app/widgets/picture-panel.h"
#include "path-panel.h"
#include "preview-panel.h"

G_BEGIN_DECLS

#define BW_TYPE_DETAIL_PAGE (bw_detail_page_get_type ())
G_DECLARE_FINAL_TYPE (BwDetailPage, bw_detail_page, BW, DETAIL_PAGE, GtkWidget)

void bw_detail_page_set_document (BwDetailPage *self, BwDocument *document);
BwPicturePanel *bw_detail_page_get_panel (BwDetailPage *self);
void bw_detail_page_show_part (BwDetailPage *self, const char *part);

BwDetailState *bw_detail_page_get_state (BwDetailPage *self);
BwPathPanel *bw_detail_page_get_path (BwDetailPage *self);
BwPreviewPanel *bw_detail_page_get_preview (BwDetailPage *self);

G_END_DECLS
