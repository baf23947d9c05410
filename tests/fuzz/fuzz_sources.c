/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Any bytes as a catalogue of sources: what is taken passes its check, is written and read back the
 * same, and is judged soundly at every input of every shipped monitor. */
#include "fuzz.h"

static void
must_be_sound (BwSource *source)
{
  g_autoptr (BwSource) empty = bw_source_new ();
  MUST (bw_source_check (source, NULL));
  must_hold (bw_property_fields_kept (&bw_source_fields, source, empty));
}

/* Sources whose raster there is, on a bench with @monitor */
static void
must_judge (GPtrArray *sources, const BwMonitor *monitor)
{
  g_autoptr (BwSheet) sheet = bw_sheet_new ();

  bw_monitor_free (sheet->monitor);
  sheet->monitor = bw_monitor_copy (monitor);
  for (guint i = 0; i < sources->len; i++)
    if (bw_sheet_raster (sheet, shipped_catalogue (), sources->pdata[i]) != NULL)
      g_ptr_array_add (sheet->sources, bw_source_copy (sources->pdata[i]));
  must_hold (bw_property_cells (sheet, shipped_catalogue ()));
}

int
LLVMFuzzerTestOneInput (const uint8_t *data, size_t size)
{
  g_autoptr (GPtrArray) faults = faults_new ();
  g_autoptr (BwCatalogue) catalogue = bw_catalogue_new_empty ();
  GPtrArray *sources = bw_catalogue_sources (catalogue);
  GPtrArray *monitors = bw_catalogue_monitors (shipped_catalogue ());

  make_criticals_fatal ();
  bw_catalogue_add_text (catalogue, BW_CATALOGUE_SOURCES, (const char *) data, size, "fuzzed",
                         faults);
  must_name_file (faults, "fuzzed");
  for (guint i = 0; i < sources->len; i++)
    must_be_sound (sources->pdata[i]);
  for (guint i = 0; i < monitors->len && sources->len > 0; i++)
    must_judge (sources, monitors->pdata[i]);
  return 0;
}
