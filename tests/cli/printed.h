/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "run.h"

G_BEGIN_DECLS

/* What edid-decode prints of one format. Vertical figures are those of field 1. */
typedef struct
{
  gboolean interlaced;
  double pixel_clock_hz;
  double line_rate_hz;
  double field_rate_hz;
  double h_active;
  double h_front_porch;
  double h_sync;
  double h_back_porch;
  double h_border;
  double v_active; /* of a whole frame */
  double v_front_porch;
  double v_sync;
  double v_back_porch;
  double v_border;
  double v_total;
  gboolean h_positive;
  gboolean v_positive;
} Printed;

Printed ask_edid_decode (const char *option, const char *value);

G_END_DECLS
