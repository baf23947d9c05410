/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/document/document.h"
#include "app/widgets/form.h"

G_BEGIN_DECLS

/* Where a raster to work with can come from. */
typedef enum
{
  BW_START_FORMULA,
  BW_START_MONITOR,
  BW_START_MODELINE
} BwStartKind;

#define BW_TYPE_RASTER_START (bw_raster_start_get_type ())
G_DECLARE_FINAL_TYPE (BwRasterStart, bw_raster_start, BW, RASTER_START, GtkPopover)

BwRasterStart *bw_raster_start_new (BwStartKind kind, BwDocument *document);
BwForm *bw_raster_start_get_form (BwRasterStart *self);
const char *bw_raster_start_get_fault (BwRasterStart *self);
void bw_raster_start_make (BwRasterStart *self);

G_END_DECLS
