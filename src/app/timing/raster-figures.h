/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/widgets/figure-table.h"
#include "core/raster/raster.h"

G_BEGIN_DECLS

GPtrArray *bw_raster_table (const BwRaster *raster);

G_END_DECLS
