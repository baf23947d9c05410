/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/widgets/picture.h"
#include "draw/sync/view.h"

G_BEGIN_DECLS

/* The drawing of a mixture of sync. */

/* The own numbers of a point. */
typedef enum
{
  BW_SYNC_POINT_LINE,  /* as the standard numbers it */
  BW_SYNC_POINT_LEVEL, /* 0 or 1; -1 in the row of the phase */
  BW_SYNC_POINT_LATE,  /* of the line's edge in seconds; NAN: missing */
  BW_SYNC_POINT_PHASE  /* of the oscillator in seconds; NAN if it does not lock */
} BwSyncPointNumber;

BwPicture *bw_sync_picture_new (const BwSyncMixCase *what, const BwSyncAfc *afc);
gboolean bw_picture_is_sync (const BwPicture *picture);
const BwSyncMixCase *bw_sync_picture_case (const BwPicture *picture);
void bw_sync_picture_show_as (BwPicture *picture, const BwPicture *before);

G_END_DECLS
