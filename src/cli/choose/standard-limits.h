/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/raster/reading.h"

G_BEGIN_DECLS

const BwStandardLimits *bw_cli_find_limits (GPtrArray *all, const char *raw);

G_END_DECLS
