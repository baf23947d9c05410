/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "afc.h"

G_BEGIN_DECLS

/* What a mixture of sync is good for, in sentences. */

typedef enum
{
  BW_SYNC_TOPIC_FORM,      /* whether both signals are in the result, and if not, the remedy */
  BW_SYNC_TOPIC_EDGES,     /* which lines have their edge */
  BW_SYNC_TOPIC_STRUCTURE, /* serration and equalising pulses */
  BW_SYNC_TOPIC_LOOP,      /* what becomes of the top of the picture */
  BW_SYNC_TOPIC_OTHERS,    /* other edges, and glitches */
  BW_SYNC_TOPIC_DELAY,
  BW_SYNC_TOPIC_POLARITY, /* of the result, and whether it needs an inverter */
  BW_N_SYNC_TOPICS
} BwSyncTopic;

char *bw_sync_mix_name (const BwSyncMixCase *what);
char *bw_sync_run_span_text (const BwSyncRun *run, const BwSyncSpan *span, char mark);
char *bw_sync_mix_say (const BwSyncMix *mix, const BwSyncAfc *afc, const BwSyncRun *run,
                       BwSyncTopic topic, char mark);
GPtrArray *bw_sync_mix_says (const BwSyncMix *mix, const BwSyncAfc *afc, const BwSyncRun *run,
                             char mark);

G_END_DECLS
