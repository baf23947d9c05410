/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* The supply of a set: its rectifier and reservoir, and the hum bars that it may show. */

/**
 * BwReservoir:
 * @farad: zero: not asked
 * @load_a: constant current drawn from it
 * @half_wave: whether it is charged once in a period of the mains, not twice
 */
typedef struct
{
  double farad;
  double load_a;
  gboolean half_wave;
} BwReservoir;

/**
 * BwRipple:
 * @ripple_v: peak to peak
 * @rule_v: by the rule I/(f·C), which takes the whole period for discharge
 * @lowest_v: what is left before it is charged again
 * @peak_v: of the mains
 */
typedef struct
{
  double ripple_v;
  double rule_v;
  double lowest_v;
  double peak_v;
} BwRipple;

gboolean bw_reservoir_ripple (const BwReservoir *reservoir, double mains_v, double mains_hz,
                              BwRipple *ripple);

/**
 * BwHum:
 * @bars: of hum at the mains frequency; twice as many from a full-wave rectifier
 * @height_s: in which a bar moves by the height of the picture; infinite if it stands still
 * @direction: 1: up, -1: down, 0: it stands still
 * @is_flicker: whether it beats so fast that it is seen as flicker and not as a bar
 */
typedef struct
{
  guint bars;
  double height_s;
  int direction;
  gboolean is_flicker;
} BwHum;

void bw_hum (double mains_hz, double field_hz, BwHum *hum);

G_END_DECLS
