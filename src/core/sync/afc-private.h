/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "afc.h"

G_BEGIN_DECLS

#define BW_AFC_GATE 0.25 /* of a line, to each side of where the edge is due */

static inline BwSyncLine *
bw_sync_run_line (const BwSyncRun *run, guint i)
{
  return &g_array_index (run->lines, BwSyncLine, i);
}

void bw_sync_run_find_lines (BwSyncRun *run, const BwSyncMix *mix, const BwSyncAfc *afc);

G_END_DECLS
