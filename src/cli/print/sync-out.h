/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "cli/base/json.h"
#include "core/sync/words.h"

G_BEGIN_DECLS

/* A mixture of sync, and what an AFC makes of it, as text and as JSON. */

void bw_sync_to_json (const BwSyncMix *mix, const BwSyncAfc *afc, const BwSyncRun *run,
                      BwJson *json);
void bw_sync_append_text (const BwSyncMix *mix, const BwSyncAfc *afc, const BwSyncRun *run,
                          GString *to);

G_END_DECLS
