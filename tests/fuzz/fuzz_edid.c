/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Any bytes as an EDID: as they are, then with header, count and checksums put right so that what
 * lies behind is reached, then as one detailed timing. They are refused with an error, or give
 * rasters that can exist and that are written as they were read. */
#include <string.h>

#include "core/interchange/interchange.h"
#include "fuzz.h"

#define BLOCK BW_EDID_BLOCK_BYTES
#define DETAILED BW_EDID_DETAILED_BYTES
#define BLOCKS_MAX 4

static void
check_timing (const BwRaster *raster)
{
  guint8 bytes[DETAILED];
  guint8 again[DETAILED];

  MUST (bw_raster_check (raster, NULL));
  MUST (bw_edid_detailed_from_raster (raster, bytes, NULL));
  g_autoptr (BwRaster) back = bw_edid_detailed_to_raster (bytes, NULL);
  MUST (back != NULL);
  MUST (back->h_polarity == raster->h_polarity && back->v_polarity == raster->v_polarity);
  MUST (bw_edid_detailed_from_raster (back, again, NULL));
  MUST (memcmp (bytes, again, DETAILED) == 0);
}

static void
check_edid (const guint8 *bytes, gsize length)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (BwEdid) edid = bw_edid_parse (bytes, length, &error);

  MUST ((edid != NULL) == (error == NULL));
  if (edid == NULL)
    {
      MUST (error->domain == BW_INTERCHANGE_ERROR && *error->message != '\0');
      return;
    }
  MUST (edid->field_rate_hz.low <= edid->field_rate_hz.high);
  MUST (edid->line_rate_hz.low <= edid->line_rate_hz.high);
  MUST ((1 + (gsize) edid->n_extensions) * BLOCK <= length);
  for (guint i = 0; i < edid->timings->len; i++)
    {
      const BwEdidTiming *timing = bw_edid_timing (edid, i);
      MUST (timing->offset + DETAILED <= length);
      check_timing (timing->raster);
    }
  for (guint i = 0; i < edid->modes->len; i++)
    MUST (bw_edid_mode (edid, i)->id != NULL || bw_edid_mode (edid, i)->width > 0);
}

static void
mend (guint8 *bytes, gsize n_blocks)
{
  static const guint8 header[] = { 0, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0, 0x04, 0x43 };
  memcpy (bytes, header, sizeof header);
  bytes[18] = 1;
  bytes[126] = (guint8) (n_blocks - 1);
  for (gsize b = 0; b < n_blocks; b++)
    {
      guint sum = 0;
      for (gsize i = 0; i < BLOCK - 1; i++)
        sum += bytes[b * BLOCK + i];
      bytes[b * BLOCK + BLOCK - 1] = (guint8) (256 - sum % 256);
    }
}

static void
check_mended (const uint8_t *data, size_t size)
{
  gsize n_blocks = CLAMP ((size + BLOCK - 1) / BLOCK, 1, BLOCKS_MAX);
  g_autofree guint8 *bytes = g_malloc0 (n_blocks * BLOCK);
  if (size > 0)
    memcpy (bytes, data, MIN (size, n_blocks * BLOCK));
  mend (bytes, n_blocks);
  check_edid (bytes, n_blocks * BLOCK);
}

static void
check_detailed (const uint8_t *data, size_t size)
{
  g_autoptr (GError) error = NULL;
  if (size < DETAILED)
    return;
  g_autoptr (BwRaster) raster = bw_edid_detailed_to_raster (data, &error);
  MUST ((raster != NULL) == (error == NULL));
  if (raster != NULL)
    check_timing (raster);
}

int
LLVMFuzzerTestOneInput (const uint8_t *data, size_t size)
{
  check_edid (data, size);
  check_mended (data, size);
  check_detailed (data, size);
  return 0;
}
