/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Any text as a mode line: it is refused with an error, or it is a raster that can exist, and what
 * is written of it reads as the same again. */
#include <string.h>

#include "core/interchange/interchange.h"
#include "fuzz.h"

static void
write_again (const BwRaster *raster)
{
  g_autofree char *text = bw_modeline_format (raster, NULL);
  MUST (text != NULL);
  g_autoptr (BwRaster) again = bw_modeline_parse (text, NULL);
  if (again == NULL)
    {
      MUST (raster->pixel_clock_hz.den != 1); /* rounded to the hertz it may leave the range */
      return;
    }
  g_autofree char *text_again = bw_modeline_format (again, NULL);
  MUST (text_again != NULL && strcmp (text, text_again) == 0);
}

/* A detailed timing is refused, or comes back as it was. */
static void
as_detailed (const BwRaster *raster)
{
  guint8 bytes[BW_EDID_DETAILED_BYTES];
  guint8 again[BW_EDID_DETAILED_BYTES];
  g_autoptr (GError) error = NULL;
  if (!bw_edid_detailed_from_raster (raster, bytes, &error))
    {
      MUST (error != NULL && error->domain == BW_INTERCHANGE_ERROR);
      return;
    }
  g_autoptr (BwRaster) back = bw_edid_detailed_to_raster (bytes, NULL);
  if (back == NULL)
    return; /* rounded to 10 kHz it may leave the range */
  MUST (bw_edid_detailed_from_raster (back, again, NULL));
  MUST (memcmp (bytes, again, sizeof bytes) == 0);
}

int
LLVMFuzzerTestOneInput (const uint8_t *data, size_t size)
{
  g_autofree char *text = g_strndup ((const char *) data, size);
  g_autoptr (GError) error = NULL;
  g_autoptr (BwRaster) raster = bw_modeline_parse (text, &error);

  MUST ((raster != NULL) == (error == NULL));
  if (raster == NULL)
    {
      MUST (error->domain == BW_INTERCHANGE_ERROR && *error->message != '\0');
      MUST (g_utf8_validate (error->message, -1, NULL));
      return 0;
    }
  MUST (bw_raster_check (raster, NULL));
  MUST (*raster->id != '\0' && *raster->name != '\0');
  write_again (raster);
  as_detailed (raster);
  return 0;
}
