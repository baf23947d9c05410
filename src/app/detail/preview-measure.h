/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/picture/test-picture.h"

G_BEGIN_DECLS

/* What a preview leaves of the bursts in it, measured as on a screen. */

typedef enum
{
  BW_BURST_MEASURED,
  BW_BURST_ABSENT,   /* another picture, or finer than the samples of the source */
  BW_BURST_OUTSIDE,  /* too little of it is in the part that is shown */
  BW_BURST_TOO_FINE, /* for the pixels: the spot is drawn wider than it is */
} BwBurstState;

BwBurstState bw_burst_measure (const BwPreview *preview, const BwTestFrame *frame,
                               const BwPlanes *light, guint burst, double *modulation);

G_END_DECLS
