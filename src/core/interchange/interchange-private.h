/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "interchange.h"

G_BEGIN_DECLS

/* Shared by the files of interchange. */

gboolean bw_interchange_fault (GError **error, BwInterchangeError code, const char *format, ...)
    G_GNUC_PRINTF (3, 4);

/**
 * BwLineEdges:
 *
 * The line of a raster that is defined in pixels, counted as computers count it: sync begins at its
 * timing datum. So the first half of a tri-level pulse, which lies before the datum, belongs to the
 * front porch. Borders are apart.
 */
typedef struct
{
  int front_porch;
  int sync;
  int back_porch;
} BwLineEdges;

BwLineEdges bw_line_edges (const BwRaster *raster);
gboolean bw_interchange_writable (const BwRaster *raster, GError **error);
BwEdid *bw_edid_new (void);

/* Offsets in the base block. */
#define BW_EDID_AT_ESTABLISHED 35
#define BW_EDID_AT_STANDARD 38
#define BW_EDID_N_STANDARD 8
#define BW_EDID_AT_DESCRIPTORS 54
#define BW_EDID_N_DESCRIPTORS 4
#define BW_EDID_N_ESTABLISHED 17
#define BW_EDID_N_ESTABLISHED_III 44

/* Tags of display descriptors. */
#define BW_EDID_TAG_SERIAL 0xff
#define BW_EDID_TAG_TEXT 0xfe
#define BW_EDID_TAG_RANGE 0xfd
#define BW_EDID_TAG_NAME 0xfc
#define BW_EDID_TAG_STANDARD 0xfa
#define BW_EDID_TAG_ESTABLISHED_III 0xf7
#define BW_EDID_TAG_DUMMY 0x10

/* Bits of byte 17 of a detailed timing. */
#define BW_EDID_INTERLACED 0x80
#define BW_EDID_SYNC_MASK 0x18
#define BW_EDID_SYNC_ANALOGUE 0x00
#define BW_EDID_SYNC_BIPOLAR 0x08
#define BW_EDID_SYNC_COMPOSITE 0x10
#define BW_EDID_SYNC_SEPARATE 0x18
#define BW_EDID_SERRATED 0x04
#define BW_EDID_V_POSITIVE 0x04
#define BW_EDID_H_POSITIVE 0x02

/**
 * BwEdidLevel:
 *
 * White and sync on video of one code of bits 6 and 5 of byte 20.
 */
typedef struct
{
  double white_v;
  double sync_v;
} BwEdidLevel;

extern const BwEdidLevel bw_edid_levels[4];

int bw_edid_established_dmt (guint bit);
void bw_edid_add_established (BwEdid *edid, const guint8 bytes[3]);
void bw_edid_add_established_iii (BwEdid *edid, const guint8 bytes[6]);
void bw_edid_leave_out (BwEdid *edid, GError *trouble);
void bw_edid_add_standard (BwEdid *edid, const guint8 pair[2], gsize offset);
void bw_edid_add_vic (BwEdid *edid, int vic, gboolean native);
void bw_edid_add_timing (BwEdid *edid, const guint8 *bytes, gsize offset);
void bw_edid_read_cta (BwEdid *edid, const guint8 *bytes, gsize offset);

/**
 * BwEdidPick:
 * @raster: borrowed
 * @bytes: its detailed timing, without the image size
 *
 * A raster that the monitor takes.
 */
typedef struct
{
  const BwRaster *raster;
  gboolean own;        /* the sheet's own raster */
  gboolean tight;      /* a margin is below its threshold */
  gboolean exact;      /* the clock is a multiple of 10 kHz */
  BwSyncKind sync;     /* the form of sync that it is stated with */
  double field_pixels; /* distinct pixels that one field shows, as far as the bandwidth goes */
  double clock_hz;
  double line_rate_hz;
  double field_rate_hz;
  gboolean fits; /* @bytes holds it */
  guint8 bytes[BW_EDID_DETAILED_BYTES];
} BwEdidPick;

guint bw_edid_input_syncs (const BwInput *input);
GArray *bw_edid_picks (const BwSheet *sheet, const BwCatalogue *catalogue, const BwInput *input,
                       guint syncs, GError **error);

/**
 * BwEdidWriter:
 * @syncs: set of BwSyncKind that is stated
 * @level: index of bw_edid_levels
 * @picks: (element-type BwEdidPick): the best first
 * @detailed: borrowed from @picks; the second may be %NULL
 * @line_rates_hz: of what is listed; likewise @field_rates_hz
 * @clock_hz: the highest of what is listed
 *
 * What is known while a block is made.
 */
typedef struct
{
  const BwMonitor *monitor;
  const BwInput *input;
  guint syncs;
  guint level;
  GArray *picks;
  const BwEdidPick *detailed[2];
  BwRange line_rates_hz;
  BwRange field_rates_hz;
  double clock_hz;
  gboolean continuous;
  guint8 *block;
  GPtrArray *notes;
} BwEdidWriter;

void bw_edid_note (BwEdidWriter *writer, const char *format, ...) G_GNUC_PRINTF (2, 3);
gboolean bw_edid_choose_input (BwEdidWriter *writer, GError **error);
gboolean bw_edid_choose_level (BwEdidWriter *writer, GError **error);
void bw_edid_put_input (BwEdidWriter *writer);
gboolean bw_edid_is_continuous (const BwEdidWriter *writer);
gboolean bw_edid_put_range (BwEdidWriter *writer, guint8 *d, GError **error);

G_END_DECLS
