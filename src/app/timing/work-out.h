/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/document/document.h"
#include "app/widgets/editor-row.h"
#include "core/raster/solve.h"
#include "raster-start.h"

G_BEGIN_DECLS

#define BW_TYPE_WORK_OUT (bw_work_out_get_type ())
G_DECLARE_FINAL_TYPE (BwWorkOut, bw_work_out, BW, WORK_OUT, GtkWidget)

void bw_work_out_set_document (BwWorkOut *self, BwDocument *document);
BwEditorRow *bw_work_out_get_row (BwWorkOut *self, BwFigure figure);
BwRasterStart *bw_work_out_get_start (BwWorkOut *self, BwStartKind kind);
const char *bw_work_out_get_fault (BwWorkOut *self);
const char *bw_work_out_get_says (BwWorkOut *self);

G_END_DECLS
