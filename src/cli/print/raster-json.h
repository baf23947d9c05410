/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "cli/base/json.h"
#include "core/raster/raster.h"

G_BEGIN_DECLS

void bw_raster_to_json (const BwRaster *raster, BwJson *json);

G_END_DECLS
