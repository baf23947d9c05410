/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "draw/base/ink.h"

G_BEGIN_DECLS

#define BW_TYPE_VERDICT_MARK (bw_verdict_mark_get_type ())
G_DECLARE_FINAL_TYPE (BwVerdictMark, bw_verdict_mark, BW, VERDICT_MARK, GtkWidget)

GtkWidget *bw_verdict_mark_new (void);
void bw_verdict_mark_set (BwVerdictMark *self, BwVerdict verdict);

const char *bw_verdict_css_class (BwVerdict verdict);
void bw_verdict_style (GtkWidget *widget, BwVerdict verdict);

G_END_DECLS
