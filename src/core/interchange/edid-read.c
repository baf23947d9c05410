/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "interchange-private.h"

#include <string.h>

#include <glib/gi18n-lib.h>

/* The base block of VESA E-EDID, versions 1.0 to 1.4. The text of the standard was not read: the
 * layout comes from programs that use it. */

#define TAG_CTA 2

static const guint8 header[8] = { 0, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0 };

/* Bits 6 and 5 of byte 20. */
const BwEdidLevel bw_edid_levels[4] = {
  { 0.700, 0.300 }, { 0.714, 0.286 }, { 1.000, 0.400 }, { 0.700, 0 }
};

static void add_note (BwEdid *edid, const char *format, ...) G_GNUC_PRINTF (2, 3);

static void
add_note (BwEdid *edid, const char *format, ...)
{
  va_list arguments;
  va_start (arguments, format);
  g_ptr_array_add (edid->notes, g_strdup_vprintf (format, arguments));
  va_end (arguments);
}

/**
 * bw_edid_leave_out:
 * @trouble: (transfer full): what cannot be, and where
 *
 * Notes that a part of the block is faulty and left out. Displays have such faults, and the rest of
 * what they say is right all the same.
 */
void
bw_edid_leave_out (BwEdid *edid, GError *trouble)
{
  add_note (edid, _ ("%s. This was left out."), trouble->message);
  g_error_free (trouble);
}

/* Blocks */

static guint8
sum (const guint8 *block)
{
  guint total = 0;
  for (gsize i = 0; i < BW_EDID_BLOCK_BYTES; i++)
    total += block[i];
  return (guint8) total;
}

/**
 * bw_edid_is:
 *
 * Returns: whether @bytes begin as an EDID does
 */
gboolean
bw_edid_is (const void *bytes, gsize length)
{
  g_return_val_if_fail (bytes != NULL || length == 0, FALSE);
  return length >= BW_EDID_BLOCK_BYTES && memcmp (bytes, header, sizeof header) == 0;
}

static gboolean
check_length (const guint8 *bytes, gsize length, GError **error)
{
  if (length < BW_EDID_BLOCK_BYTES)
    return bw_interchange_fault (
        error, BW_INTERCHANGE_ERROR_LENGTH,
        _ ("EDID: it ends at byte %zu, but the base block alone has 128 bytes"), length);
  for (gsize i = 0; i < sizeof header; i++)
    if (bytes[i] != header[i])
      return bw_interchange_fault (
          error, BW_INTERCHANGE_ERROR_HEADER,
          _ ("EDID, byte %1$zu: %2$02X; the header must be 00 FF FF FF FF FF FF 00"), i, bytes[i]);
  return TRUE;
}

/* The blocks that are there; what is announced and is not, or the reverse, is noted. */
static gsize
count_blocks (BwEdid *edid, const guint8 *bytes, gsize length)
{
  guint announced = bytes[BW_EDID_BLOCK_BYTES - 2];
  gsize wanted = (1 + (gsize) announced) * BW_EDID_BLOCK_BYTES;
  GError *trouble = NULL;

  if (length == wanted)
    return 1 + announced;
  bw_interchange_fault (&trouble, BW_INTERCHANGE_ERROR_LENGTH,
                        g_dngettext (GETTEXT_PACKAGE,
                                     "EDID, byte 126: %1$u extension block is announced, which "
                                     "makes %2$zu bytes, but there are %3$zu",
                                     "EDID, byte 126: %1$u extension blocks are announced, "
                                     "which makes %2$zu bytes, but there are %3$zu",
                                     announced),
                        announced, wanted, length);
  bw_edid_leave_out (edid, trouble);
  return MIN (wanted, length) / BW_EDID_BLOCK_BYTES;
}

static gboolean
check_sum (const guint8 *bytes, gsize block, GError **error)
{
  const guint8 *at = bytes + block * BW_EDID_BLOCK_BYTES;
  guint8 last = at[BW_EDID_BLOCK_BYTES - 1];
  guint8 off = sum (at);

  if (off == 0)
    return TRUE;
  return bw_interchange_fault (
      error, BW_INTERCHANGE_ERROR_CHECKSUM,
      _ ("EDID, byte %1$zu: the checksum of block %2$zu is %3$02X, but its bytes "
         "need %4$02X"),
      (block + 1) * BW_EDID_BLOCK_BYTES - 1, block, last, (guint8) (last - off));
}

/* Who made it, and what it is */

static void
read_maker (BwEdid *edid, guint packed)
{
  GError *trouble = NULL;
  for (int i = 0; i < 3; i++)
    {
      guint letter = packed >> (10 - 5 * i) & 0x1f;
      if (letter < 1 || letter > 26 || packed > 0x7fff)
        {
          bw_interchange_fault (&trouble, BW_INTERCHANGE_ERROR_HEADER,
                                _ ("EDID, byte 8: the maker's code %04X is not three letters A to "
                                   "Z of five bits each"),
                                packed);
          bw_edid_leave_out (edid, trouble);
          edid->manufacturer[0] = '\0';
          return;
        }
      edid->manufacturer[i] = (char) ('A' + letter - 1);
    }
}

static gboolean
read_identity (BwEdid *edid, const guint8 *b, GError **error)
{
  if (b[18] != 1)
    return bw_interchange_fault (error, BW_INTERCHANGE_ERROR_HEADER,
                                 _ ("EDID, byte 18: version %u; only version 1 is known"), b[18]);
  read_maker (edid, (guint) b[8] << 8 | b[9]);
  edid->product = b[10] | (guint) b[11] << 8;
  edid->serial = b[12] | (guint) b[13] << 8 | (guint) b[14] << 16 | (guint) b[15] << 24;
  edid->week = b[16];
  edid->year = b[17] != 0 ? 1990u + b[17] : 0;
  edid->version = b[18];
  edid->revision = b[19];
  return TRUE;
}

static void
read_analogue (BwEdid *edid, guint8 input)
{
  const BwEdidLevel *level = &bw_edid_levels[input >> 5 & 3];
  edid->white_v = level->white_v;
  edid->sync_v = level->sync_v;
  edid->setup = (input & 0x10) != 0;
  edid->syncs = (input & 0x08 ? BW_BIT (BW_SYNC_SEPARATE) : 0)
                | (input & 0x04 ? BW_BIT (BW_SYNC_COMPOSITE) : 0)
                | (input & 0x02 ? BW_BIT (BW_SYNC_ON_GREEN) : 0);
  edid->serration = (input & 0x01) != 0;
}

/* In EDID 1.4 one size of zero makes the other an aspect ratio: (n + 99)/100, or its inverse for
 * an upright screen. */
static void
read_size (BwEdid *edid, guint8 width, guint8 height)
{
  if (width != 0 && height != 0)
    {
      edid->width_m = width / 100.0;
      edid->height_m = height / 100.0;
    }
  else if (edid->revision >= 4 && width != 0)
    bw_ratio_make (width + 99, 100, &edid->aspect);
  else if (edid->revision >= 4 && height != 0)
    bw_ratio_make (100, height + 99, &edid->aspect);
}

static void
read_display (BwEdid *edid, const guint8 *b)
{
  edid->digital = (b[20] & 0x80) != 0;
  if (!edid->digital)
    read_analogue (edid, b[20]);
  read_size (edid, b[21], b[22]);
  edid->gamma = b[23] != 0xff ? (b[23] + 100) / 100.0 : 0;
  edid->continuous = edid->revision >= 4 && (b[24] & 0x01) != 0;
}

/* Timings */

/**
 * bw_edid_add_timing:
 * @bytes: (array fixed-size=18): a detailed timing
 * @offset: of @bytes in the EDID, for the sentence
 *
 * Adds it to @edid; one that cannot be is left out.
 */
void
bw_edid_add_timing (BwEdid *edid, const guint8 *bytes, gsize offset)
{
  g_autoptr (GError) trouble = NULL;
  GError *fault = NULL;
  BwRaster *raster = bw_edid_detailed_to_raster (bytes, &trouble);

  if (raster == NULL)
    {
      bw_interchange_fault (&fault, (BwInterchangeError) trouble->code,
                            _ ("EDID, byte %1$zu, detailed timing %2$u: %3$s"), offset,
                            edid->timings->len + 1, trouble->message);
      bw_edid_leave_out (edid, fault);
      return;
    }
  BwEdidTiming *timing = g_new0 (BwEdidTiming, 1);
  timing->raster = raster;
  timing->offset = offset;
  timing->image_width_m = (bytes[12] | (bytes[14] & 0xf0) << 4) / 1000.0;
  timing->image_height_m = (bytes[13] | (bytes[14] & 0x0f) << 8) / 1000.0;
  g_ptr_array_add (edid->timings, timing);
  if (bytes[17] & 0x60)
    add_note (edid, _ ("Detailed timing %u is for stereo, which was not read."),
              edid->timings->len);
}

static void
read_standard (BwEdid *edid, const guint8 *pairs, guint n, gsize offset)
{
  for (guint i = 0; i < n; i++)
    bw_edid_add_standard (edid, pairs + 2 * i, offset + 2 * i);
}

/* Descriptors */

/* Up to 13 characters, ended by a line feed and padded with spaces. */
static char *
read_text (const guint8 *d)
{
  GString *text = g_string_new (NULL);
  for (int i = 5; i < BW_EDID_DETAILED_BYTES && d[i] != '\n'; i++)
    g_string_append_c (text, g_ascii_isprint (d[i]) ? (char) d[i] : '?');
  return g_strchomp (g_string_free (text, FALSE));
}

/* A range whose ends are the wrong way round is as one that is not stated. */
static void
check_range (BwEdid *edid, BwRange *range, gsize offset, const char *what)
{
  GError *trouble = NULL;
  if (range->low <= range->high)
    return;
  *range = (BwRange){ 0, 0 };
  bw_interchange_fault (&trouble, BW_INTERCHANGE_ERROR_DESCRIPTOR,
                        _ ("EDID, byte %1$zu, range limits: the least %2$s is above the greatest"),
                        offset, what);
  bw_edid_leave_out (edid, trouble);
}

/* Byte 4, since EDID 1.4: bits 1 and 0 add 255 to the greatest, or to both, field rates; bits 3
 * and 2 likewise to line rates. */
static void
read_range (BwEdid *edid, const guint8 *d, gsize offset)
{
  guint8 add = edid->revision >= 4 ? d[4] : 0;

  edid->field_rate_hz.low = d[5] + ((add & 3) == 3 ? 255 : 0);
  edid->field_rate_hz.high = d[6] + (add & 2 ? 255 : 0);
  edid->line_rate_hz.low = (d[7] + ((add & 12) == 12 ? 255 : 0)) * 1e3;
  edid->line_rate_hz.high = (d[8] + (add & 8 ? 255 : 0)) * 1e3;
  edid->max_clock_hz = d[9] * 10e6;
  check_range (edid, &edid->field_rate_hz, offset + 5, _ ("field rate"));
  check_range (edid, &edid->line_rate_hz, offset + 7, _ ("line rate"));
}

static void
keep_text (char **into, const guint8 *d)
{
  g_free (*into);
  *into = read_text (d);
}

static void
read_descriptor (BwEdid *edid, const guint8 *d, gsize offset)
{
  if (d[0] != 0 || d[1] != 0)
    {
      bw_edid_add_timing (edid, d, offset);
      return;
    }
  switch (d[3])
    {
    case BW_EDID_TAG_NAME:
      keep_text (&edid->name, d);
      break;
    case BW_EDID_TAG_SERIAL:
      keep_text (&edid->serial_text, d);
      break;
    case BW_EDID_TAG_RANGE:
      read_range (edid, d, offset);
      break;
    case BW_EDID_TAG_STANDARD:
      read_standard (edid, d + 5, 6, offset + 5);
      break;
    case BW_EDID_TAG_ESTABLISHED_III:
      bw_edid_add_established_iii (edid, d + 6);
      break;
    case BW_EDID_TAG_DUMMY:
    case BW_EDID_TAG_TEXT:
      break;
    default:
      add_note (edid, _ ("The descriptor at byte %1$zu has tag %2$02X, which was not read."), offset,
                d[3]);
      break;
    }
}

static gboolean
read_base (BwEdid *edid, const guint8 *b, GError **error)
{
  if (!read_identity (edid, b, error))
    return FALSE;
  read_display (edid, b);
  bw_edid_add_established (edid, b + BW_EDID_AT_ESTABLISHED);
  read_standard (edid, b + BW_EDID_AT_STANDARD, BW_EDID_N_STANDARD, BW_EDID_AT_STANDARD);
  for (gsize i = 0; i < BW_EDID_N_DESCRIPTORS; i++)
    {
      gsize at = BW_EDID_AT_DESCRIPTORS + i * BW_EDID_DETAILED_BYTES;
      read_descriptor (edid, b + at, at);
    }
  return TRUE;
}

static void
read_extension (BwEdid *edid, const guint8 *bytes, gsize block)
{
  GError *trouble = NULL;
  gsize at = block * BW_EDID_BLOCK_BYTES;

  edid->n_extensions++;
  if (!check_sum (bytes, block, &trouble))
    bw_edid_leave_out (edid, trouble);
  else if (bytes[at] != TAG_CTA)
    add_note (edid, _ ("Extension block %1$u has tag %2$02X, which was not read."), edid->n_extensions,
              bytes[at]);
  else
    bw_edid_read_cta (edid, bytes + at, at);
}

/* Each timing has an id of its own, in the order of the block. */
static void
number_timings (BwEdid *edid)
{
  for (guint i = 0; i < edid->timings->len; i++)
    {
      BwRaster *raster = bw_edid_timing (edid, i)->raster;
      char *id = g_strdup_printf ("edid-%u-%s", i + 1, raster->id + strlen ("edid-"));
      g_free (raster->id);
      raster->id = id;
    }
}

/**
 * bw_edid_parse:
 * @bytes: a base block and the extension blocks that it announces
 * @length: 128 for each block
 *
 * Reads the base block of VESA E-EDID (1.0 to 1.4) and the video descriptors and detailed timings
 * of CTA-861 extensions. The header, the version and the checksum of the base block must be right;
 * what else is faulty is left out and noted, and the rest is taken.
 *
 * Returns: (transfer full): what it says, or %NULL with @error in %BW_INTERCHANGE_ERROR, which
 * names the byte
 */
BwEdid *
bw_edid_parse (const guint8 *bytes, gsize length, GError **error)
{
  g_autoptr (BwEdid) edid = bw_edid_new ();
  if (!check_length (bytes, length, error) || !check_sum (bytes, 0, error)
      || !read_base (edid, bytes, error))
    return NULL;
  gsize blocks = count_blocks (edid, bytes, length);
  for (gsize block = 1; block < blocks; block++)
    read_extension (edid, bytes, block);
  number_timings (edid);
  return g_steal_pointer (&edid);
}
