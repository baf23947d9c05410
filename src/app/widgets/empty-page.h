/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/document/document.h"

G_BEGIN_DECLS

#define BW_TYPE_EMPTY_PAGE (bw_empty_page_get_type ())
G_DECLARE_FINAL_TYPE (BwEmptyPage, bw_empty_page, BW, EMPTY_PAGE, GtkWidget)

gboolean bw_empty_page_update (BwEmptyPage *self, BwDocument *document, const BwLack *lack);

G_END_DECLS
