/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "sheet.h"

G_BEGIN_DECLS

/* A raster made for one picture tube. */

/**
 * BwTubeRequest:
 * @width: active pixels
 * @height: active lines of the frame
 * @field_rate_hz: fields a second
 * @interlaced: two fields to the frame; @height must then be even
 */
typedef struct
{
  int width;
  int height;
  BwRatio field_rate_hz;
  gboolean interlaced;
} BwTubeRequest;

#define BW_TUBE_ERROR (bw_tube_error_quark ())

typedef enum
{
  BW_TUBE_ERROR_REQUEST,   /* a size or rate that cannot be */
  BW_TUBE_ERROR_FIELD_RATE, /* not in the monitor's bands with margin */
  BW_TUBE_ERROR_LINE_RATE, /* no line rate in the monitor's bands does it */
  BW_TUBE_ERROR_UNKNOWN    /* a figure of the monitor that is needed is not known */
} BwTubeError;

GQuark bw_tube_error_quark (void);

BwRaster *bw_tube_raster (const BwTubeRequest *request, const BwMonitor *monitor,
                          const BwLimits *limits, GPtrArray *why, GError **error);

G_END_DECLS
