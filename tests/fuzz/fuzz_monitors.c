/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Any bytes as a catalogue of monitors: what is taken passes its checks, is written and read back
 * the same, and is judged soundly with every shipped source. */
#include "fuzz.h"

static void
must_be_sound (const BwMonitor *monitor)
{
  g_autoptr (BwMonitor) empty = bw_monitor_new ();
  MUST (monitor->inputs->len > 0);
  must_hold (bw_property_fields_kept (&bw_monitor_fields, (gpointer) monitor, empty));
  for (guint i = 0; i < monitor->inputs->len; i++)
    {
      BwInput *input = bw_monitor_input (monitor, i);
      g_autoptr (BwInput) no_input = bw_input_new ();
      MUST (bw_input_check (input, NULL));
      must_hold (bw_property_fields_kept (&bw_input_fields, input, no_input));
    }
}

/* The monitor on a bench with all the sources there are */
static void
must_judge (const BwMonitor *monitor)
{
  GPtrArray *sources = bw_catalogue_sources (shipped_catalogue ());
  g_autoptr (BwSheet) sheet = bw_sheet_new ();

  bw_monitor_free (sheet->monitor);
  sheet->monitor = bw_monitor_copy (monitor);
  for (guint i = 0; i < sources->len; i++)
    g_ptr_array_add (sheet->sources, bw_source_copy (sources->pdata[i]));
  must_hold (bw_property_cells (sheet, shipped_catalogue ()));
}

int
LLVMFuzzerTestOneInput (const uint8_t *data, size_t size)
{
  g_autoptr (GPtrArray) faults = faults_new ();
  g_autoptr (BwCatalogue) catalogue = bw_catalogue_new_empty ();
  GPtrArray *monitors = bw_catalogue_monitors (catalogue);

  make_criticals_fatal ();
  bw_catalogue_add_text (catalogue, BW_CATALOGUE_MONITORS, (const char *) data, size, "fuzzed",
                         faults);
  must_name_file (faults, "fuzzed");
  for (guint i = 0; i < monitors->len; i++)
    {
      must_be_sound (monitors->pdata[i]);
      must_judge (monitors->pdata[i]);
    }
  return 0;
}
