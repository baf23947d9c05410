/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "capacitor.h"

#include <math.h>

#include <glib/gi18n-lib.h>

static const BwKind worths[] = {
  [BW_WORTH_GOOD] = { "good", N_ ("good") },
  [BW_WORTH_WORN] = { "worn", N_ ("worn") },
  [BW_WORTH_SPENT] = { "spent", N_ ("spent") },
  [BW_WORTH_NOT_DECIDED] = { "not-decided", N_ ("not decided") },
};
const BwKindTable bw_worths = { G_N_ELEMENTS (worths), worths };

/* Limits of tan δ at 120 Hz and 20 °C for new parts of the general radial kind, as two makers' data
 * sheets print them alike up to 100 V; above that makers differ. */
static const struct
{
  double rated_v;
  BwLossLimit limit;
} losses[] = {
  { 6.3, { 0.22, 0.22 } },  { 10, { 0.19, 0.19 } },  { 16, { 0.16, 0.16 } },
  { 25, { 0.14, 0.14 } },   { 35, { 0.12, 0.12 } },  { 50, { 0.10, 0.10 } },
  { 63, { 0.09, 0.09 } },   { 100, { 0.08, 0.08 } }, { 160, { 0.15, 0.18 } },
  { 315, { 0.20, 0.25 } },
};
#define LOSS_LOWEST_V 6.3
#define LOSS_HIGHEST_V 450.0

/* The limit grows by so much for each 1000 µF above the first. Sheets do not say whether a part of
 * a thousand counts: here it does, in proportion. */
#define LOSS_STEP 0.02
#define LOSS_STEP_F 1000e-6

/**
 * bw_capacitor_loss_limit:
 * @limit: (out caller-allocates): tan δ between 100 and 120 Hz. A voltage between two of the sheets'
 *   takes the limit of the lower one
 *
 * Returns: %FALSE, leaving @limit alone, where no sheet gives a limit: below 6.3 V and above 450 V
 */
gboolean
bw_capacitor_loss_limit (const BwCapacitor *part, BwLossLimit *limit)
{
  g_return_val_if_fail (part != NULL && part->farad > 0 && limit != NULL, FALSE);
  if (part->rated_v < LOSS_LOWEST_V || part->rated_v > LOSS_HIGHEST_V)
    return FALSE;
  gsize i = G_N_ELEMENTS (losses) - 1;
  while (losses[i].rated_v > part->rated_v)
    i--;
  double more = LOSS_STEP * MAX (part->farad / LOSS_STEP_F - 1, 0);
  *limit = (BwLossLimit){ losses[i].limit.low + more, losses[i].limit.high + more };
  return TRUE;
}

/**
 * bw_capacitor_esr:
 *
 * Returns: the equivalent series resistance of @tan_delta at @hz: tan δ / (2π f C), ohms
 */
double
bw_capacitor_esr (const BwCapacitor *part, double tan_delta, double hz)
{
  g_return_val_if_fail (part != NULL && part->farad > 0 && tan_delta > 0 && hz > 0, 0);
  return tan_delta / (2 * G_PI * hz * part->farad);
}

/* Up to this rated voltage makers give leakage as 0.01·C·V, above it as 0.06·C·V + 10 µA. */
#define LEAKAGE_LOW_V 100.0

/**
 * bw_capacitor_leakage_limit:
 *
 * Returns: what a new part leaks at most after two minutes at its rated voltage and 20 °C, amperes:
 *   0.01·C·V (µF, V, µA) or 3 µA, the greater, as two makers' sheets print it; above 100 V
 *   0.06·C·V + 10 µA, as one does
 */
double
bw_capacitor_leakage_limit (const BwCapacitor *part)
{
  g_return_val_if_fail (part != NULL && part->farad > 0 && part->rated_v > 0, 0);
  double charge = part->farad * part->rated_v;
  return part->rated_v <= LEAKAGE_LOW_V ? MAX (0.01 * charge, 3e-6) : 0.06 * charge + 10e-6;
}

/* Tolerance M of a new part, and how far off one is that a maker calls beyond its useful life
 * (40 to 50 %; the stricter one is taken). */
#define VALUE_TOLERANCE 0.20
#define VALUE_SPENT 0.40

/* A figure that stands on its limit is within it, whatever the last bit says. */
#define ROUNDING 1e-9

/**
 * bw_capacitor_worth_of_value:
 *
 * Returns: what the measured capacitance alone says
 */
BwWorth
bw_capacitor_worth_of_value (const BwCapacitor *part)
{
  g_return_val_if_fail (part != NULL && part->farad > 0, BW_WORTH_NOT_DECIDED);
  if (!(part->measured_f > 0))
    return BW_WORTH_NOT_DECIDED;
  double off = fabs (part->measured_f / part->farad - 1) - ROUNDING;
  return off <= VALUE_TOLERANCE ? BW_WORTH_GOOD : off <= VALUE_SPENT ? BW_WORTH_WORN : BW_WORTH_SPENT;
}

/* Beyond so many times the limit of a new part its useful life is over, as one maker has it; makers'
 * own limits after the endurance test are 1.3 to 2 times. */
#define ESR_SPENT 3.0

/**
 * bw_capacitor_worth_of_esr:
 *
 * ESR falls with the frequency. A reading above 120 Hz that is still beyond the limit at 120 Hz tells
 * that the part is bad; one that is within it tells nothing, and neither does one below 100 Hz that
 * is beyond.
 *
 * Returns: what the measured resistance alone says
 */
BwWorth
bw_capacitor_worth_of_esr (const BwCapacitor *part)
{
  g_return_val_if_fail (part != NULL && part->farad > 0, BW_WORTH_NOT_DECIDED);
  BwLossLimit limit;

  if (!(part->esr_ohm > 0) || !(part->esr_hz > 0) || !bw_capacitor_loss_limit (part, &limit))
    return BW_WORTH_NOT_DECIDED;
  double hz = CLAMP (part->esr_hz, BW_LOSS_LOW_HZ, BW_LOSS_HIGH_HZ);
  double measured = part->esr_ohm * (1 - ROUNDING);
  gboolean may_be_good = part->esr_hz <= BW_LOSS_HIGH_HZ;
  gboolean may_be_bad = part->esr_hz >= BW_LOSS_LOW_HZ;

  if (measured <= bw_capacitor_esr (part, limit.low, hz))
    return may_be_good ? BW_WORTH_GOOD : BW_WORTH_NOT_DECIDED;
  if (measured <= bw_capacitor_esr (part, limit.high, hz) || !may_be_bad)
    return BW_WORTH_NOT_DECIDED;
  return measured <= ESR_SPENT * bw_capacitor_esr (part, limit.high, hz) ? BW_WORTH_WORN
                                                                         : BW_WORTH_SPENT;
}

/**
 * bw_capacitor_worth:
 *
 * A part is good only if both its capacitance and its resistance are; one that is bad is enough to be
 * bad.
 *
 * Returns: what both say together
 */
BwWorth
bw_capacitor_worth (const BwCapacitor *part)
{
  BwWorth value = bw_capacitor_worth_of_value (part), esr = bw_capacitor_worth_of_esr (part);

  for (int worth = BW_WORTH_SPENT; worth > BW_WORTH_GOOD; worth--)
    if (value == (BwWorth) worth || esr == (BwWorth) worth)
      return (BwWorth) worth;
  return value == BW_WORTH_GOOD && esr == BW_WORTH_GOOD ? BW_WORTH_GOOD : BW_WORTH_NOT_DECIDED;
}

/* Rated voltages as they are sold, volts. */
static const double voltages[] = { 6.3, 10,  16,  25,  35,  50,  63,  80,
                                   100, 160, 200, 250, 315, 350, 400, 450 };

/**
 * bw_capacitor_next_voltage:
 *
 * Returns: the lowest rated voltage that is sold and not below @rated_v; zero if there is none
 */
double
bw_capacitor_next_voltage (double rated_v)
{
  g_return_val_if_fail (rated_v > 0, 0);
  for (gsize i = 0; i < G_N_ELEMENTS (voltages); i++)
    if (voltages[i] >= rated_v * (1 - ROUNDING))
      return voltages[i];
  return 0;
}

/* The core of a part at its rated ripple current is so much warmer than what is around it: parts for
 * 105 °C, and parts for less, kelvin. */
#define RISE_105 5.0
#define RISE_85 10.0

/**
 * bw_capacitor_life:
 *
 * The ten-degree law with a term for ripple: L = L0 · 2^((T0 − T)/10) · K^((1 − r²)·ΔT/10), with K = 2,
 * or 4 where ripple is above the rating of a part for 105 °C. It holds best between 70 and 90 °C. The
 * voltage has no term: on small radial parts it does next to nothing.
 *
 * Returns: hours of work that may be expected, in seconds, without any upper end
 */
double
bw_capacitor_life (const BwEndurance *what)
{
  g_return_val_if_fail (what != NULL && what->rated_s > 0, 0);
  gboolean is_105 = what->rated_c > 95;
  double life_s = what->rated_s * pow (2, (what->rated_c - what->around_c) / 10);

  if (what->ripple < 0)
    return life_s;
  double base = is_105 && what->ripple > 1 ? 4 : 2;
  double rise = is_105 ? RISE_105 : RISE_85;
  return life_s * pow (base, (1 - what->ripple * what->ripple) * rise / 10);
}
