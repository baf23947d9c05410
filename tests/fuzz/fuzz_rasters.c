/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Any bytes as a catalogue of rasters: what is taken can exist, has finite figures that add up, and
 * is written and read back the same. */
#include "fuzz.h"

int
LLVMFuzzerTestOneInput (const uint8_t *data, size_t size)
{
  g_autoptr (GPtrArray) faults = faults_new ();
  g_autoptr (BwCatalogue) catalogue = bw_catalogue_new_empty ();
  GPtrArray *rasters = bw_catalogue_rasters (catalogue);

  make_criticals_fatal ();
  bw_catalogue_add_text (catalogue, BW_CATALOGUE_RASTERS, (const char *) data, size, "fuzzed",
                         faults);
  must_name_file (faults, "fuzzed");
  for (guint i = 0; i < rasters->len; i++)
    {
      const BwRaster *raster = rasters->pdata[i];
      MUST (bw_raster_check (raster, NULL));
      MUST (bw_catalogue_raster (catalogue, raster->id) == raster);
      must_hold (bw_property_raster (raster));
      must_hold (bw_property_raster_kept (raster));
    }
  return 0;
}
