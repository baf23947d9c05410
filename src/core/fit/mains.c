/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "mains.h"

#include <math.h>

#include <glib/gi18n-lib.h>

/* How far beyond its rating a supply may stand before the set needs a transformer, and how much
 * larger than the rated apparent power that is chosen (common practice, no source). */
#define SUPPLY_TOLERANCE 0.06
#define FREQUENCY_TOLERANCE 0.02
#define TRANSFORMER_HEADROOM 1.5

static BwSeverity
severity_of (double value, BwRange rated, double tolerance)
{
  if (value >= rated.low && value <= rated.high)
    return BW_SEVERITY_OK;
  if (value >= rated.low * (1 - tolerance) && value <= rated.high * (1 + tolerance))
    return BW_SEVERITY_TIGHT;
  return BW_SEVERITY_CURABLE;
}

static void
judge_voltage (const BwMonitor *monitor, double supply_v, BwMains *mains)
{
  BwRange rated_v = monitor->mains_v.at[0];
  mains->voltage = severity_of (supply_v, rated_v, SUPPLY_TOLERANCE);
  mains->rated_v = CLAMP (supply_v, rated_v.low, rated_v.high);
  if (mains->voltage == BW_SEVERITY_CURABLE)
    mains->transformer_va = TRANSFORMER_HEADROOM * mains->rated_v * monitor->mains_a;
}

static void
judge_frequency (const BwMonitor *monitor, double supply_hz, BwMains *mains)
{
  BwRange rated_hz = monitor->mains_hz.at[0];
  mains->frequency = severity_of (supply_hz, rated_hz, FREQUENCY_TOLERANCE);
  mains->rated_hz = CLAMP (supply_hz, rated_hz.low, rated_hz.high);
  mains->flux = mains->rated_hz / supply_hz;
}

/**
 * bw_mains_judge:
 * @supply_v: at the bench; zero: not known
 * @supply_hz: at the bench; zero: not known
 * @mains: (out caller-allocates): what was found; a voltage or frequency that is not known, here or
 *   on the plate, is not judged
 *
 * Returns: %FALSE, leaving @mains alone, if neither voltage nor frequency can be judged
 */
gboolean
bw_mains_judge (const BwMonitor *monitor, double supply_v, double supply_hz, BwMains *mains)
{
  g_return_val_if_fail (monitor != NULL && mains != NULL, FALSE);
  gboolean knows_voltage = monitor->mains_v.n > 0 && supply_v > 0;
  gboolean knows_frequency = monitor->mains_hz.n > 0 && supply_hz > 0;

  if (!knows_voltage && !knows_frequency)
    return FALSE;
  *mains = (BwMains){ .voltage = BW_SEVERITY_UNJUDGED,
                      .frequency = BW_SEVERITY_UNJUDGED,
                      .flux = 1 };
  if (knows_voltage)
    judge_voltage (monitor, supply_v, mains);
  if (knows_frequency)
    judge_frequency (monitor, supply_hz, mains);
  return TRUE;
}

/**
 * bw_mains_is_danger:
 *
 * Returns: whether the supply lies outside the plate by more than its tolerance
 */
gboolean
bw_mains_is_danger (const BwMains *mains)
{
  g_return_val_if_fail (mains != NULL, FALSE);
  return MAX (mains->voltage, mains->frequency) >= BW_SEVERITY_CURABLE;
}

/**
 * bw_mains_transformer_words:
 * @supply_v: outside the rated voltage of @monitor, which is known
 * @mark: the decimal mark
 *
 * Returns: (transfer full): the transformer that is needed: "mains transformer, 230 V to 120 V, of at
 *   least 260 VA"; without its size if the rated current is not known
 */
char *
bw_mains_transformer_words (const BwMonitor *monitor, double supply_v, char mark)
{
  g_return_val_if_fail (monitor != NULL && monitor->mains_v.n > 0 && supply_v > 0, NULL);
  BwMains mains = { 0 };
  judge_voltage (monitor, supply_v, &mains);
  g_autofree char *from = bw_quantity_format (supply_v, BW_DIMENSION_VOLTAGE, 4, mark);
  g_autofree char *to = bw_quantity_format (mains.rated_v, BW_DIMENSION_VOLTAGE, 4, mark);
  if (!(mains.transformer_va > 0))
    return g_strdup_printf (_ ("mains transformer, %1$s to %2$s"), from, to);
  return g_strdup_printf (_ ("mains transformer, %1$s to %2$s, of at least %3$.0f VA"), from, to,
                          ceil (mains.transformer_va / 10) * 10);
}

static char *
voltage_sentence (const BwMonitor *monitor, const BwMains *mains, const char *supply, char mark)
{
  if (mains->voltage == BW_SEVERITY_UNJUDGED)
    return g_strdup (_ ("The voltage is not judged: it is not known here or on the plate."));
  g_autofree char *rated
      = bw_quantity_format_range (monitor->mains_v.at[0], BW_DIMENSION_VOLTAGE, 4, mark);
  if (mains->voltage == BW_SEVERITY_OK)
    return g_strdup_printf (_ ("The supply of %1$s suits the rating of %2$s."), supply, rated);
  if (mains->voltage == BW_SEVERITY_TIGHT)
    return g_strdup_printf (_ ("The supply of %1$s stands a little outside the rating of %2$s."),
                            supply, rated);
  g_autofree char *wanted = bw_quantity_format (mains->rated_v, BW_DIMENSION_VOLTAGE, 4, mark);
  if (!(mains->transformer_va > 0))
    return g_strdup_printf (_ ("The supply of %1$s is outside the rating of %2$s: a transformer to "
                               "%3$s is needed; enter the rated current to size it."),
                            supply, rated, wanted);
  return g_strdup_printf (_ ("The supply of %1$s is outside the rating of %2$s: a transformer to "
                             "%3$s of at least %4$.0f VA is needed, more with degaussing."),
                          supply, rated, wanted, ceil (mains->transformer_va / 10) * 10);
}

/* NULL if there is nothing to say of the frequency. */
static char *
frequency_sentence (const BwMonitor *monitor, const BwMains *mains, const char *supply, char mark)
{
  if (mains->frequency == BW_SEVERITY_OK)
    return NULL;
  if (mains->frequency == BW_SEVERITY_UNJUDGED)
    return g_strdup (_ ("The frequency is not judged: it is not known here or on the plate."));
  g_autofree char *rated
      = bw_quantity_format_range (monitor->mains_hz.at[0], BW_DIMENSION_FREQUENCY, 3, mark);
  if (mains->flux > 1)
    return g_strdup_printf (_ ("At %1$s, below the rated %2$s, the flux in a mains transformer "
                               "rises by %3$.0f %%: it may overheat."),
                            supply, rated, (mains->flux - 1) * 100);
  return g_strdup_printf (_ ("The frequency of %1$s is above the rated %2$s."), supply, rated);
}

/**
 * bw_mains_says:
 * @mark: the decimal mark
 *
 * Returns: (transfer full): what there is to say about the supply and the rating, translated
 */
char *
bw_mains_says (const BwMonitor *monitor, double supply_v, double supply_hz, char mark)
{
  BwMains mains;

  g_return_val_if_fail (monitor != NULL, NULL);

  if (!bw_mains_judge (monitor, supply_v, supply_hz, &mains))
    return g_strdup (_ ("Enter the rated mains voltage and frequency, and the supply here, to have "
                        "them compared."));
  g_autofree char *volts = bw_quantity_format (supply_v, BW_DIMENSION_VOLTAGE, 4, mark);
  g_autofree char *hertz = bw_quantity_format (supply_hz, BW_DIMENSION_FREQUENCY, 3, mark);
  g_autofree char *voltage = voltage_sentence (monitor, &mains, volts, mark);
  g_autofree char *frequency = frequency_sentence (monitor, &mains, hertz, mark);
  g_autofree char *both = frequency != NULL ? g_strdup_printf ("%s %s", voltage, frequency)
                                            : g_steal_pointer (&voltage);
  if (!bw_mains_is_danger (&mains))
    return g_steal_pointer (&both);
  return g_strdup_printf (_ ("%s Which transformer or supply it takes, isolating or not, and how it is "
                             "joined, is a matter of local codes and licensed practice."),
                          both);
}
