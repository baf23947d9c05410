/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/result/result.h"
#include "words.h"

G_BEGIN_DECLS

/* What this room has to say, to be shown by any face (core/result). */

void bw_sync_say (BwNode *to, const BwSyncMix *mix, const BwSyncAfc *afc, const BwSyncRun *run);

G_END_DECLS
