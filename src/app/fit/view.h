/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/document/document.h"

G_BEGIN_DECLS

#define BW_TYPE_FIT_VIEW (bw_fit_view_get_type ())
G_DECLARE_FINAL_TYPE (BwFitView, bw_fit_view, BW, FIT_VIEW, GtkWidget)

void bw_fit_view_set_document (BwFitView *self, BwDocument *document);
void bw_fit_view_focus (BwFitView *self);
void bw_fit_view_keep_handle (BwFitView *self, const char *name, GVariantDict *shares);
void bw_fit_view_put_handle (BwFitView *self, const char *name, GVariantDict *shares);

G_END_DECLS
