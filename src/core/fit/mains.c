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

/**
 * bw_mains_judge:
 * @supply_v: at the bench; zero: not known
 * @supply_hz: at the bench; zero: not known
 * @mains: (out caller-allocates): what was found; of voltage and frequency the one that is not known
 *   on both sides is not judged
 *
 * Returns: %FALSE, leaving @mains alone, if neither can be judged
 */
gboolean
bw_mains_judge (const BwMonitor *monitor, double supply_v, double supply_hz, BwMains *mains)
{
  g_return_val_if_fail (monitor != NULL && mains != NULL, FALSE);

  gboolean volts = monitor->mains_v.n > 0 && supply_v > 0;
  gboolean hertz = monitor->mains_hz.n > 0 && supply_hz > 0;
  if (!volts && !hertz)
    return FALSE;
  *mains = (BwMains){ .voltage = BW_SEVERITY_UNJUDGED,
                      .frequency = BW_SEVERITY_UNJUDGED,
                      .flux = 1 };
  if (volts)
    {
      BwRange rated_v = monitor->mains_v.at[0];
      mains->voltage = severity_of (supply_v, rated_v, SUPPLY_TOLERANCE);
      mains->rated_v = CLAMP (supply_v, rated_v.low, rated_v.high);
    }
  if (hertz)
    {
      BwRange rated_hz = monitor->mains_hz.at[0];
      mains->frequency = severity_of (supply_hz, rated_hz, FREQUENCY_TOLERANCE);
      mains->rated_hz = CLAMP (supply_hz, rated_hz.low, rated_hz.high);
      mains->flux = mains->rated_hz / supply_hz;
    }
  if (mains->voltage == BW_SEVERITY_CURABLE)
    mains->transformer_va = TRANSFORMER_HEADROOM * mains->rated_v * monitor->mains_a;
  return TRUE;
}

static char *
voltage_sentence (const BwMonitor *monitor, const BwMains *mains, const char *supply, char mark)
{
  if (mains->voltage == BW_SEVERITY_UNJUDGED)
    return g_strdup (_ ("The voltage is not judged: the rated one or that of the supply here is not "
                        "known."));
  g_autofree char *rated
      = bw_quantity_format_range (monitor->mains_v.at[0], BW_DIMENSION_VOLTAGE, 4, mark);
  if (mains->voltage == BW_SEVERITY_OK)
    return g_strdup_printf (_ ("The supply of %1$s suits the rating of %2$s."), supply, rated);
  if (mains->voltage == BW_SEVERITY_TIGHT)
    return g_strdup_printf (_ ("The supply of %1$s stands a little outside the rating of %2$s."),
                            supply, rated);
  g_autofree char *wanted = bw_quantity_format (mains->rated_v, BW_DIMENSION_VOLTAGE, 4, mark);
  if (mains->transformer_va <= 0)
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
    return g_strdup (_ ("The frequency is not judged: the rated one or that of the supply here is "
                        "not known."));
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
  if (frequency == NULL)
    return g_steal_pointer (&voltage);
  return g_strdup_printf ("%s %s", voltage, frequency);
}
