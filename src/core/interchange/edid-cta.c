/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "interchange-private.h"

#include <glib/gi18n-lib.h>

/* The extension block of CTA-861: data blocks, of which the video data block is read here, and
 * then detailed timings. The text of the standard was not read: the layout comes from programs
 * that use it. */

#define AT_REVISION 1
#define AT_DETAILED 2 /* where detailed timings begin; zero: nowhere, and no data blocks either */
#define AT_DATA 4
#define AT_CHECKSUM 127
#define DATA_BLOCKS_REVISION 3
#define VIDEO_DATA_BLOCK 2

/* Codes 129 to 192 are 1 to 64 marked as native; other codes with bit 7 are the upper VICs. */
static gboolean
add_short_descriptor (BwEdid *edid, guint8 code, gsize offset, GError **error)
{
  gboolean native = code >= 129 && code <= 192;

  if (code == 0 || code == 128 || code >= 254)
    return bw_interchange_fault (
        error, BW_INTERCHANGE_ERROR_EXTENSION,
        _ ("EDID, byte %1$zu: a short video descriptor of %2$u, which is reserved"), offset, code);
  bw_edid_add_vic (edid, native ? code - 128 : code, native);
  return TRUE;
}

static gboolean
read_data_blocks (BwEdid *edid, const guint8 *block, guint end, gsize offset, GError **error)
{
  for (guint i = AT_DATA; i < end;)
    {
      guint tag = block[i] >> 5;
      guint length = block[i] & 0x1f;

      if (i + 1 + length > end)
        return bw_interchange_fault (
            error, BW_INTERCHANGE_ERROR_EXTENSION,
            g_dngettext (
                GETTEXT_PACKAGE,
                "EDID, byte %1$zu: a data block of %2$u byte does not fit before byte %3$zu, "
                "where the detailed timings begin",
                "EDID, byte %1$zu: a data block of %2$u bytes does not fit before byte %3$zu, "
                "where the detailed timings begin",
                length),
            offset + i, length, offset + end);
      for (guint j = i + 1; tag == VIDEO_DATA_BLOCK && j <= i + length; j++)
        if (!add_short_descriptor (edid, block[j], offset + j, error))
          return FALSE;
      i += 1 + length;
    }
  return TRUE;
}

/* What begins with a clock of zero is padding or a display descriptor. */
static gboolean
read_timings (BwEdid *edid, const guint8 *block, guint start, gsize offset, GError **error)
{
  for (guint i = start; i + BW_EDID_DETAILED_BYTES <= AT_CHECKSUM; i += BW_EDID_DETAILED_BYTES)
    if ((block[i] != 0 || block[i + 1] != 0)
        && !bw_edid_add_timing (edid, block + i, offset + i, error))
      return FALSE;
  return TRUE;
}

/**
 * bw_edid_read_cta:
 * @block: (array fixed-size=128): an extension block with tag 2 and a right checksum
 * @offset: of @block, for the sentence
 *
 * Returns: %FALSE with @error
 */
gboolean
bw_edid_read_cta (BwEdid *edid, const guint8 *block, gsize offset, GError **error)
{
  guint start = block[AT_DETAILED];

  if (start == 0)
    return TRUE;
  if (start < AT_DATA || start > AT_CHECKSUM)
    return bw_interchange_fault (
        error, BW_INTERCHANGE_ERROR_EXTENSION,
        _ ("EDID, byte %1$zu: detailed timings begin at %2$u; 0 and %3$d to %4$d are allowed"),
        offset + AT_DETAILED, start, AT_DATA, AT_CHECKSUM);
  if (block[AT_REVISION] >= DATA_BLOCKS_REVISION
      && !read_data_blocks (edid, block, start, offset, error))
    return FALSE;
  return read_timings (edid, block, start, offset, error);
}
