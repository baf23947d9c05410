/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "draw/base/ink.h"

G_BEGIN_DECLS

#define BW_TYPE_SEVERITY_MARK (bw_severity_mark_get_type ())
G_DECLARE_FINAL_TYPE (BwSeverityMark, bw_severity_mark, BW, SEVERITY_MARK, GtkWidget)

GtkWidget *bw_severity_mark_new (void);
void bw_severity_mark_set (BwSeverityMark *self, BwSeverity severity);

void bw_severity_style (GtkWidget *widget, BwSeverity severity);

G_END_DECLS
