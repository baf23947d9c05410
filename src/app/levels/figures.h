/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/widgets/column-table.h"
#include "draw/levels/view.h"

G_BEGIN_DECLS

/* The levels of a signal as tables: as they should be, and as they are with the load. */

GPtrArray *bw_levels_lines (const BwWireForm *form, const BwLevelsLoad *video,
                            const BwLevelsLoad *own_sync);
GPtrArray *bw_bars_lines (const BwWireForm *form, BwBarsForm bars, const BwLevelsLoad *video);
GPtrArray *bw_load_figures (const BwWireForm *form, const BwLevelsLoad *video,
                            const BwLevelsLoad *own_sync, const BwStandardLimits *limits);

G_END_DECLS
