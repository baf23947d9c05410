/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Any bytes as a catalogue of limits: what is taken judges readings without a number that is none,
 * and a nominal value is always within. */
#include <math.h>

#include "core/raster/reading.h"
#include "fuzz.h"

static void
must_judge (const BwStandardLimits *limits, BwReadingKind kind)
{
  static const double readings[] = { 0, 4.7e-6, 63.5e-6, 0.3, 1 };
  BwJudgement judgement;

  for (gsize i = 0; i < G_N_ELEMENTS (readings); i++)
    {
      bw_reading_judge (limits, kind, readings[i], 0, &judgement);
      MUST (isfinite (judgement.deviation) && isfinite (judgement.to_limit));
    }
  bw_reading_judge (limits, kind, judgement.nominal, 0, &judgement);
  MUST (judgement.outcome == BW_OUTCOME_WITHIN || judgement.outcome == BW_OUTCOME_NOT_LAID_DOWN);
}

int
LLVMFuzzerTestOneInput (const uint8_t *data, size_t size)
{
  g_autoptr (GPtrArray) faults = faults_new ();

  make_criticals_fatal ();
  g_autoptr (GPtrArray) limits = bw_limits_load ((const char *) data, size, "fuzzed", faults);
  must_name_file (faults, "fuzzed");
  for (guint i = 0; i < limits->len; i++)
    for (guint kind = 0; kind < BW_N_READINGS; kind++)
      must_judge (limits->pdata[i], kind);
  return 0;
}
