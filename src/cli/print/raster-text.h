/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/raster/raster.h"

G_BEGIN_DECLS

void bw_raster_append_text (const BwRaster *raster, GString *to);

G_END_DECLS
