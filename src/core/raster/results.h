/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/result/result.h"
#include "raster.h"
#include "reading.h"
#include "solve.h"

G_BEGIN_DECLS

/* What the calculations of this room say, to be shown by any face (core/result). */

void bw_raster_say (BwNode *to, const BwRaster *raster);
void bw_rasters_say (BwNode *to, const GPtrArray *rasters);

G_END_DECLS
