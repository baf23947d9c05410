/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* The supply of a set: its rectifier and reservoir. */

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

G_END_DECLS
