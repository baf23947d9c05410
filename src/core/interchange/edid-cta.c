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

static void
read_video_block (BwEdid *edid, const guint8 *codes, guint n, gsize offset)
{
  for (guint i = 0; i < n; i++)
    {
      GError *trouble = NULL;
      if (!add_short_descriptor (edid, codes[i], offset + i, &trouble))
        bw_edid_leave_out (edid, trouble);
    }
}

/* After a block that is too long it is not known where the next one begins. */
static void
read_data_blocks (BwEdid *edid, const guint8 *block, guint end, gsize offset)
{
  for (guint i = AT_DATA; i < end;)
    {
      guint tag = block[i] >> 5;
      guint length = block[i] & 0x1f;
      GError *trouble = NULL;

      if (i + 1 + length > end)
        {
          bw_interchange_fault (&trouble, BW_INTERCHANGE_ERROR_EXTENSION,
                                g_dngettext (GETTEXT_PACKAGE,
                                             "EDID, byte %1$zu: a data block of %2$u byte does not "
                                             "fit before byte %3$zu, where the detailed timings begin",
                                             "EDID, byte %1$zu: a data block of %2$u bytes does not "
                                             "fit before byte %3$zu, where the detailed timings begin",
                                             length),
                                offset + i, length, offset + end);
          bw_edid_leave_out (edid, trouble);
          return;
        }
      if (tag == VIDEO_DATA_BLOCK)
        read_video_block (edid, block + i + 1, length, offset + i + 1);
      i += 1 + length;
    }
}

/* What begins with a clock of zero is padding or a display descriptor. */
static void
read_timings (BwEdid *edid, const guint8 *block, guint start, gsize offset)
{
  for (guint i = start; i + BW_EDID_DETAILED_BYTES <= AT_CHECKSUM; i += BW_EDID_DETAILED_BYTES)
    if (block[i] != 0 || block[i + 1] != 0)
      bw_edid_add_timing (edid, block + i, offset + i);
}

/**
 * bw_edid_read_cta:
 * @block: (array fixed-size=128): an extension block with tag 2 and a right checksum
 * @offset: of @block, for the sentences
 *
 * Adds what it says to @edid; what is faulty is left out.
 */
void
bw_edid_read_cta (BwEdid *edid, const guint8 *block, gsize offset)
{
  guint start = block[AT_DETAILED];
  GError *trouble = NULL;

  if (start == 0)
    return;
  if (start < AT_DATA || start > AT_CHECKSUM)
    {
      bw_interchange_fault (&trouble, BW_INTERCHANGE_ERROR_EXTENSION,
                            _ ("EDID, byte %1$zu: detailed timings begin at %2$u; 0 and %3$d to %4$d are "
                               "allowed"),
                            offset + AT_DETAILED, start, AT_DATA, AT_CHECKSUM);
      bw_edid_leave_out (edid, trouble);
      return;
    }
  if (block[AT_REVISION] >= DATA_BLOCKS_REVISION)
    read_data_blocks (edid, block, start, offset);
  read_timings (edid, block, start, offset);
}
