/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "fit.h"

G_BEGIN_DECLS

/**
 * BwMains:
 * @voltage: does the supply's voltage suit the rating; not judged where either is not known
 * @frequency: does its frequency; likewise
 * @rated_v: rated voltage nearest to the supply
 * @rated_hz: rated frequency nearest to the supply
 * @transformer_va: size of a transformer that would make it suit; zero if none is needed or the
 *   rated current is not known
 * @flux: magnetic flux in a mains transformer against its design, as a ratio: it goes with
 *   voltage over frequency
 *
 * The supply at the bench against the rating plate of the set.
 */
typedef struct
{
  BwSeverity voltage;
  BwSeverity frequency;
  double rated_v;
  double rated_hz;
  double transformer_va;
  double flux;
} BwMains;

gboolean bw_mains_judge (const BwMonitor *monitor, double supply_v, double supply_hz,
                         BwMains *mains);
char *bw_mains_transformer_words (const BwMonitor *monitor, double supply_v, char mark);
gboolean bw_mains_is_danger (const BwMains *mains);
char *bw_mains_says (const BwMonitor *monitor, double supply_v, double supply_hz, char mark);

G_END_DECLS
