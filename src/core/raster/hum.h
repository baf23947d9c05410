/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Bars of hum, which come of the mains and move over the picture as the two rates beat. */

/**
 * BwHum:
 * @bars: of hum at the mains frequency, at least one; twice as many from a full-wave rectifier
 * @beat_hz: of the mains against so many fields
 * @height_s: in which a bar moves by the height of the picture; infinite if it stands still
 * @direction: 1: up, -1: down, 0: it stands still
 */
typedef struct
{
  guint bars;
  double beat_hz;
  double height_s;
  int direction;
} BwHum;

void bw_hum (double mains_hz, double field_hz, BwHum *hum);

G_END_DECLS
