/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/document/document.h"

G_BEGIN_DECLS

#define BW_TYPE_FINDINGS_VIEW (bw_findings_view_get_type ())
G_DECLARE_FINAL_TYPE (BwFindingsView, bw_findings_view, BW, FINDINGS_VIEW, GtkWidget)

void bw_findings_view_set_document (BwFindingsView *self, BwDocument *document);
const char *bw_findings_view_get_summary (BwFindingsView *self);

G_END_DECLS
