/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Any bytes as a catalogue of adaptors: what is taken passes its check, is written and read back
 * the same, and makes no plan that does not hold. */
#include "fuzz.h"

#include "core/hookup/planner.h"

static void
must_be_sound (BwAdaptor *adaptor)
{
  g_autoptr (BwAdaptor) empty = bw_adaptor_new ();
  MUST (bw_adaptor_check (adaptor, NULL));
  must_hold (bw_property_fields_kept (&bw_adaptor_fields, adaptor, empty));
}

/* Some sources on a bench with @monitor; every plan is sound from end to end. */
static void
must_plan (const BwCatalogue *catalogue, const BwSheet *sheet, guint source, guint input)
{
  g_autoptr (BwPlanner) planner = bw_planner_new (sheet, catalogue, source, input);
  g_autoptr (GPtrArray) plans = bw_planner_find (planner, 2);

  for (guint i = 0; i < plans->len; i++)
    {
      const BwPlan *plan = plans->pdata[i];
      BwCase c;
      BwFit fit;
      bw_plan_state_case (&plan->state, &c);
      bw_fit_judge (&c, &fit);
      MUST (fit.verdict <= BW_VERDICT_TIGHT && fit.verdict == plan->fit.verdict);
      must_hold (bw_property_fit (&c, &fit));
      for (guint step = 0; step < plan->n; step++)
        MUST (bw_source_check (&plan->at[step].after.source, NULL));
    }
}

#define N_SOURCES 4

static BwSheet *
bench_new (void)
{
  BwSheet *sheet = bw_sheet_new ();
  GPtrArray *sources = bw_catalogue_sources (shipped_catalogue ());
  const BwMonitor *monitor = bw_catalogue_monitors (shipped_catalogue ())->pdata[0];

  bw_monitor_free (sheet->monitor);
  sheet->monitor = bw_monitor_copy (monitor);
  for (guint i = 0; i < N_SOURCES; i++)
    g_ptr_array_add (sheet->sources,
                     bw_source_copy (sources->pdata[i * (sources->len - 1) / (N_SOURCES - 1)]));
  return sheet;
}

int
LLVMFuzzerTestOneInput (const uint8_t *data, size_t size)
{
  static BwCatalogue *catalogue = NULL;
  g_autoptr (GPtrArray) faults = faults_new ();
  g_autoptr (BwSheet) sheet = bench_new ();

  make_criticals_fatal ();
  if (catalogue == NULL)
    catalogue = bw_catalogue_new (NULL, NULL); /* of its own: its adaptors are taken out */
  GPtrArray *adaptors = bw_catalogue_adaptors (catalogue);
  g_ptr_array_set_size (adaptors, 0);
  bw_catalogue_add_text (catalogue, BW_CATALOGUE_ADAPTORS, (const char *) data, size, "fuzzed",
                         faults);
  must_name_file (faults, "fuzzed");
  for (guint i = 0; i < adaptors->len; i++)
    must_be_sound (adaptors->pdata[i]);
  for (guint s = 0; s < N_SOURCES && adaptors->len > 0; s++)
    for (guint i = 0; i < sheet->monitor->inputs->len; i++)
      must_plan (catalogue, sheet, s, i);
  return 0;
}
