/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/base/kinds.h"

G_BEGIN_DECLS

/* An aluminium electrolytic capacitor: what a new one may measure, what a measured one is worth, how
 * long it lasts, and what replaces it. */

/* At and between these the loss of new parts is specified. */
#define BW_LOSS_LOW_HZ 100.0
#define BW_LOSS_HIGH_HZ 120.0

/* What makers promise at most: 15 years of 8760 hours. */
#define BW_LIFE_MOST_S (131400 * 3600.0)

typedef enum
{
  BW_WORTH_GOOD,
  BW_WORTH_WORN,  /* at the end of what its maker promises: to be replaced while the set is open */
  BW_WORTH_SPENT, /* beyond its useful life */
  BW_WORTH_NOT_DECIDED,
  BW_N_WORTHS
} BwWorth;

extern const BwKindTable bw_worths;

/**
 * BwCapacitor:
 * @farad: as marked
 * @rated_v: as marked
 * @measured_f: zero: not measured. Likewise @esr_ohm
 * @esr_hz: frequency at which @esr_ohm was measured; zero: not known
 */
typedef struct
{
  double farad;
  double rated_v;
  double measured_f;
  double esr_ohm;
  double esr_hz;
} BwCapacitor;

/**
 * BwLossLimit:
 * @low: the strictest limit of the makers for a new part, as tan δ
 * @high: the widest; the same where makers agree
 */
typedef struct
{
  double low;
  double high;
} BwLossLimit;

gboolean bw_capacitor_loss_limit (const BwCapacitor *part, BwLossLimit *limit);
double bw_capacitor_esr (const BwCapacitor *part, double tan_delta, double hz);
double bw_capacitor_leakage_limit (const BwCapacitor *part);
BwWorth bw_capacitor_worth_of_value (const BwCapacitor *part);
BwWorth bw_capacitor_worth_of_esr (const BwCapacitor *part);
BwWorth bw_capacitor_worth (const BwCapacitor *part);
double bw_capacitor_next_voltage (double rated_v);

/**
 * BwEndurance:
 * @rated_s: life that its maker promises at @rated_c
 * @rated_c: highest temperature that it is made for, °C
 * @around_c: temperature around it at work, °C
 * @ripple: ripple current over the rated one; negative: not known, and taken as rated
 */
typedef struct
{
  double rated_s;
  double rated_c;
  double around_c;
  double ripple;
} BwEndurance;

double bw_capacitor_life (const BwEndurance *what);

G_END_DECLS
