/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "interchange-private.h"

#include <glib/gi18n-lib.h>

/* Modes that an EDID names in a bit or two bytes. Source of the tables: VESA E-EDID and DMT 1.0
 * rev. 13 by way of the lists that edid-decode prints (--list-established-timings, --list-dmts),
 * with which the tests compare them. */

/* A mode of the established timings; @dmt is zero where no DMT has it. */
typedef struct
{
  int dmt;
  int width;
  int height;
  int rate_hz; /* nominal */
} Established;

/* From bit 7 of byte 35 on. */
static const Established established[BW_EDID_N_ESTABLISHED] = {
  { 0, 720, 400, 70 },      { 0, 720, 400, 88 },     { 0x04, 640, 480, 60 },
  { 0, 640, 480, 67 },      { 0x05, 640, 480, 72 },  { 0x06, 640, 480, 75 },
  { 0x08, 800, 600, 56 },   { 0x09, 800, 600, 60 },  { 0x0a, 800, 600, 72 },
  { 0x0b, 800, 600, 75 },   { 0, 832, 624, 75 },     { 0x0f, 1024, 768, 87 },
  { 0x10, 1024, 768, 60 },  { 0x11, 1024, 768, 70 }, { 0x12, 1024, 768, 75 },
  { 0x24, 1280, 1024, 75 }, { 0, 1152, 870, 75 },
};

/* From bit 7 of byte 6 of the descriptor on. */
static const Established established_iii[BW_EDID_N_ESTABLISHED_III] = {
  { 0x01, 640, 350, 85 },   { 0x02, 640, 400, 85 },   { 0x03, 720, 400, 85 },
  { 0x07, 640, 480, 85 },   { 0x0e, 848, 480, 60 },   { 0x0c, 800, 600, 85 },
  { 0x13, 1024, 768, 85 },  { 0x15, 1152, 864, 75 },  { 0x16, 1280, 768, 60 },
  { 0x17, 1280, 768, 60 },  { 0x18, 1280, 768, 75 },  { 0x19, 1280, 768, 85 },
  { 0x20, 1280, 960, 60 },  { 0x21, 1280, 960, 85 },  { 0x23, 1280, 1024, 60 },
  { 0x25, 1280, 1024, 85 }, { 0x27, 1360, 768, 60 },  { 0x2e, 1440, 900, 60 },
  { 0x2f, 1440, 900, 60 },  { 0x30, 1440, 900, 75 },  { 0x31, 1440, 900, 85 },
  { 0x29, 1400, 1050, 60 }, { 0x2a, 1400, 1050, 60 }, { 0x2b, 1400, 1050, 75 },
  { 0x2c, 1400, 1050, 85 }, { 0x39, 1680, 1050, 60 }, { 0x3a, 1680, 1050, 60 },
  { 0x3b, 1680, 1050, 75 }, { 0x3c, 1680, 1050, 85 }, { 0x33, 1600, 1200, 60 },
  { 0x34, 1600, 1200, 65 }, { 0x35, 1600, 1200, 70 }, { 0x36, 1600, 1200, 75 },
  { 0x37, 1600, 1200, 85 }, { 0x3e, 1792, 1344, 60 }, { 0x3f, 1792, 1344, 75 },
  { 0x41, 1856, 1392, 60 }, { 0x42, 1856, 1392, 75 }, { 0x44, 1920, 1200, 60 },
  { 0x45, 1920, 1200, 60 }, { 0x46, 1920, 1200, 75 }, { 0x47, 1920, 1200, 85 },
  { 0x49, 1920, 1440, 60 }, { 0x4a, 1920, 1440, 75 },
};

/* Standard timings that are those of a DMT. */
static const struct
{
  guint8 pair[2];
  int dmt;
} standard[] = {
  { { 0x31, 0x19 }, 0x02 }, { { 0x31, 0x40 }, 0x04 }, { { 0x31, 0x4c }, 0x05 },
  { { 0x31, 0x4f }, 0x06 }, { { 0x31, 0x59 }, 0x07 }, { { 0x45, 0x40 }, 0x09 },
  { { 0x45, 0x4c }, 0x0a }, { { 0x45, 0x4f }, 0x0b }, { { 0x45, 0x59 }, 0x0c },
  { { 0x61, 0x40 }, 0x10 }, { { 0x61, 0x4c }, 0x11 }, { { 0x61, 0x4f }, 0x12 },
  { { 0x61, 0x59 }, 0x13 }, { { 0x71, 0x4f }, 0x15 }, { { 0x81, 0x00 }, 0x1c },
  { { 0x81, 0x0f }, 0x1d }, { { 0x81, 0x19 }, 0x1e }, { { 0x81, 0x40 }, 0x20 },
  { { 0x81, 0x59 }, 0x21 }, { { 0x81, 0x80 }, 0x23 }, { { 0x81, 0x8f }, 0x24 },
  { { 0x81, 0x99 }, 0x25 }, { { 0x90, 0x40 }, 0x2a }, { { 0x90, 0x4f }, 0x2b },
  { { 0x90, 0x59 }, 0x2c }, { { 0x95, 0x00 }, 0x2f }, { { 0x95, 0x0f }, 0x30 },
  { { 0x95, 0x19 }, 0x31 }, { { 0xa9, 0x40 }, 0x33 }, { { 0xa9, 0x45 }, 0x34 },
  { { 0xa9, 0x4a }, 0x35 }, { { 0xa9, 0x4f }, 0x36 }, { { 0xa9, 0x59 }, 0x37 },
  { { 0xb3, 0x00 }, 0x3a }, { { 0xb3, 0x0f }, 0x3b }, { { 0xb3, 0x19 }, 0x3c },
  { { 0xc1, 0x40 }, 0x3e }, { { 0xc1, 0x4f }, 0x3f }, { { 0xc9, 0x40 }, 0x41 },
  { { 0xc9, 0x4f }, 0x42 }, { { 0xd1, 0x00 }, 0x45 }, { { 0xd1, 0x0f }, 0x46 },
  { { 0xd1, 0x19 }, 0x47 }, { { 0xd1, 0x40 }, 0x49 }, { { 0xd1, 0x4f }, 0x4a },
  { { 0xd1, 0xc0 }, 0x52 }, { { 0xa9, 0xc0 }, 0x53 }, { { 0xe1, 0xc0 }, 0x54 },
  { { 0x81, 0xc0 }, 0x55 },
};

#define INTERLACED_DMT 0x0f

static BwEdidMode *
add_mode (BwEdid *edid, BwEdidOrigin origin)
{
  BwEdidMode *mode = g_new0 (BwEdidMode, 1);
  mode->origin = origin;
  g_ptr_array_add (edid->modes, mode);
  return mode;
}

static char *
dmt_id (int dmt)
{
  return dmt != 0 ? g_strdup_printf ("vesa-dmt-%02x", (guint) dmt) : NULL;
}

/**
 * bw_edid_established_dmt:
 * @bit: from 0, bit 7 of byte 35, to %BW_EDID_N_ESTABLISHED - 1, bit 7 of byte 37
 *
 * Returns: the number of the DMT; zero if it is none
 */
int
bw_edid_established_dmt (guint bit)
{
  return established[bit].dmt;
}

static void
add_established (BwEdid *edid, const Established *table, guint n, const guint8 *bytes)
{
  for (guint i = 0; i < n; i++)
    {
      if (!(bytes[i / 8] & 0x80 >> i % 8))
        continue;
      BwEdidMode *mode = add_mode (edid, BW_EDID_ESTABLISHED);
      mode->id = dmt_id (table[i].dmt);
      mode->width = table[i].width;
      mode->height = table[i].height;
      mode->field_rate_hz = table[i].rate_hz;
      mode->interlaced = table[i].dmt == INTERLACED_DMT;
    }
}

/**
 * bw_edid_add_established:
 * @bytes: bytes 35 to 37 of the base block
 */
void
bw_edid_add_established (BwEdid *edid, const guint8 bytes[3])
{
  add_established (edid, established, BW_EDID_N_ESTABLISHED, bytes);
}

/**
 * bw_edid_add_established_iii:
 * @bytes: bytes 6 to 11 of an established timings III descriptor
 */
void
bw_edid_add_established_iii (BwEdid *edid, const guint8 bytes[6])
{
  add_established (edid, established_iii, BW_EDID_N_ESTABLISHED_III, bytes);
}

/* Bits 7 and 6: 16:10 (1:1 before EDID 1.3), 4:3, 5:4, 16:9. */
static int
standard_height (const BwEdid *edid, int width, int aspect)
{
  static const struct
  {
    int width;
    int height;
  } aspects[] = { { 16, 10 }, { 4, 3 }, { 5, 4 }, { 16, 9 } };

  if (aspect == 0 && edid->revision < 3)
    return width;
  return width * aspects[aspect].height / aspects[aspect].width;
}

/**
 * bw_edid_add_standard:
 * @pair: a standard timing, 01 01 (or 00 00, which is seen in the field) if it is not used
 * @offset: of @pair, for the sentence
 *
 * Adds its mode to @edid; a reserved code is left out.
 */
void
bw_edid_add_standard (BwEdid *edid, const guint8 pair[2], gsize offset)
{
  int aspect = pair[1] >> 6;
  GError *trouble = NULL;

  if ((pair[0] == 1 && pair[1] == 1) || (pair[0] == 0 && pair[1] == 0))
    return;
  if (pair[0] == 0)
    {
      bw_interchange_fault (&trouble, BW_INTERCHANGE_ERROR_DESCRIPTOR,
                            _ ("EDID, byte %zu: a standard timing begins with "
                               "1 to 255; one that is not used is 01 01"),
                            offset);
      bw_edid_leave_out (edid, trouble);
      return;
    }
  BwEdidMode *mode = add_mode (edid, BW_EDID_STANDARD);
  mode->width = (pair[0] + 31) * 8;
  mode->height = standard_height (edid, mode->width, aspect);
  mode->field_rate_hz = (pair[1] & 0x3f) + 60;
  for (gsize i = 0; i < G_N_ELEMENTS (standard) && (aspect != 0 || edid->revision >= 3); i++)
    if (standard[i].pair[0] == pair[0] && standard[i].pair[1] == pair[1])
      mode->id = dmt_id (standard[i].dmt);
}

/**
 * bw_edid_add_vic:
 * @vic: video identification code of CTA-861
 */
void
bw_edid_add_vic (BwEdid *edid, int vic, gboolean native)
{
  BwEdidMode *mode = add_mode (edid, BW_EDID_VIDEO_DESCRIPTOR);
  mode->id = g_strdup_printf ("cta-861-vic-%d", vic);
  mode->vic = vic;
  mode->native = native;
}
