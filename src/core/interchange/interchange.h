/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/bench/sheet.h"

G_BEGIN_DECLS

/* Rasters in the forms in which computers take and give them: the mode line of xorg.conf(5), and
 * the VESA E-EDID base block with the detailed timings of CTA-861 extension blocks. Text and bytes
 * in, text and bytes out; no files are touched here. */

#define BW_INTERCHANGE_ERROR (bw_interchange_error_quark ())

/* Each sentence names the place: the word of the mode line, or the byte of the EDID, counted from
 * zero at the start of the base block. */
typedef enum
{
  BW_INTERCHANGE_ERROR_TEXT,   /* words missing, left over, or not text at all */
  BW_INTERCHANGE_ERROR_NUMBER, /* not a number of the kind that stands there, or out of range */
  BW_INTERCHANGE_ERROR_ORDER,  /* an edge before the one that precedes it */
  BW_INTERCHANGE_ERROR_FLAG,   /* unknown, repeated or contradictory */
  BW_INTERCHANGE_ERROR_RASTER, /* well-formed, but no such raster can exist */
  BW_INTERCHANGE_ERROR_LENGTH, /* too few or too many bytes */
  BW_INTERCHANGE_ERROR_HEADER, /* not an EDID */
  BW_INTERCHANGE_ERROR_CHECKSUM,
  BW_INTERCHANGE_ERROR_DESCRIPTOR, /* an 18-byte descriptor that cannot be */
  BW_INTERCHANGE_ERROR_EXTENSION,  /* an extension block that cannot be */
  BW_INTERCHANGE_ERROR_UNWRITABLE, /* a raster that the form has no room for */
  BW_INTERCHANGE_ERROR_MONITOR,    /* a monitor that an EDID cannot describe */
  BW_INTERCHANGE_ERROR_NO_TIMING   /* no raster that the monitor takes fits a detailed timing */
} BwInterchangeError;

#define BW_MODELINE_MAX_BYTES 1000
#define BW_EDID_BLOCK_BYTES 128
#define BW_EDID_DETAILED_BYTES 18
#define BW_EDID_MAX_BYTES (256 * BW_EDID_BLOCK_BYTES)

/**
 * BwEdidTiming:
 * @raster: owned
 * @offset: of its 18 bytes, from the start of the base block
 * @image_width_m: width of the picture in this timing; zero: not stated
 * @image_height_m: its height; zero: not stated
 *
 * One detailed timing.
 */
typedef struct
{
  BwRaster *raster;
  gsize offset;
  double image_width_m;
  double image_height_m;
} BwEdidTiming;

typedef enum
{
  BW_EDID_ESTABLISHED, /* a bit of bytes 35 to 37, or of an established timings III descriptor */
  BW_EDID_STANDARD,    /* a two-byte standard timing */
  BW_EDID_VIDEO_DESCRIPTOR /* a short video descriptor of a CTA extension */
} BwEdidOrigin;

/**
 * BwEdidMode:
 * @id: (nullable): the id under which the catalogue has such a raster, if it has it: vesa-dmt-XX or
 *   cta-861-vic-N
 * @width: active pixels; zero where only @vic is stated
 * @height: active lines of the frame; likewise
 * @field_rate_hz: nominal; likewise
 * @vic: the video identification code of CTA-861; zero if it is no video descriptor
 * @native: marked as native in a video descriptor
 *
 * A mode that is named in a few bits, without its intervals.
 */
typedef struct
{
  char *id;
  BwEdidOrigin origin;
  int width;
  int height;
  double field_rate_hz;
  gboolean interlaced;
  int vic;
  gboolean native;
} BwEdidMode;

/**
 * BwEdid:
 * @manufacturer: three letters; empty where its code is faulty
 * @year: of making, or of the model if @week is 255; zero: not stated
 * @digital: a digital input; the figures of analogue video are then zero
 * @white_v: black to white; for an analogue input
 * @sync_v: of sync on video; zero: no sync on video
 * @setup: black stands above blanking
 * @syncs: set of BwSyncKind that an analogue input takes
 * @serration: field sync must be serrated where sync is composite or on green
 * @width_m: width of the screen; zero: not stated
 * @height_m: its height; zero: not stated
 * @aspect: where it is coded in place of the size; else %BW_RATIO_NONE
 * @gamma: zero: not stated
 * @continuous: takes any rate in its ranges, and not only those listed (EDID 1.4)
 * @field_rate_hz: both ends zero: not stated; likewise @line_rate_hz
 * @max_clock_hz: zero: not stated
 * @name: (nullable): of the monitor; likewise @serial_text
 * @timings: (element-type BwEdidTiming): in their order in the block; the first is preferred
 * @modes: (element-type BwEdidMode)
 * @n_extensions: blocks of 128 bytes after the base block
 * @notes: (element-type utf8): what the block holds beyond this and was left unread, and what is
 *   faulty and was left out, each with the byte and the reason
 *
 * What an EDID says of a monitor, as far as it bears on rasters.
 */
typedef struct
{
  char manufacturer[4];
  guint product;
  guint serial;
  guint week;
  guint year;
  guint version;
  guint revision;
  gboolean digital;
  double white_v;
  double sync_v;
  gboolean setup;
  guint syncs;
  gboolean serration;
  double width_m;
  double height_m;
  BwRatio aspect;
  double gamma;
  gboolean continuous;
  BwRange field_rate_hz;
  BwRange line_rate_hz;
  double max_clock_hz;
  char *name;
  char *serial_text;
  GPtrArray *timings;
  GPtrArray *modes;
  guint n_extensions;
  GPtrArray *notes;
} BwEdid;

GQuark bw_interchange_error_quark (void);

BwRaster *bw_modeline_parse (const char *text, GError **error);
char *bw_modeline_format (const BwRaster *raster, GError **error);

gboolean bw_edid_is (const void *bytes, gsize length);
BwEdid *bw_edid_parse (const guint8 *bytes, gsize length, GError **error);
void bw_edid_free (BwEdid *edid);
gboolean bw_edid_write (const BwSheet *sheet, const BwCatalogue *catalogue,
                        guint8 block[BW_EDID_BLOCK_BYTES], GPtrArray *notes, GError **error);

gboolean bw_edid_detailed_from_raster (const BwRaster *raster, guint8 out[BW_EDID_DETAILED_BYTES],
                                       GError **error);
BwRaster *bw_edid_detailed_to_raster (const guint8 in[BW_EDID_DETAILED_BYTES], GError **error);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BwEdid, bw_edid_free)

/**
 * bw_edid_timing:
 *
 * Returns: (transfer none): detailed timing @i of @edid
 */
static inline BwEdidTiming *
bw_edid_timing (const BwEdid *edid, guint i)
{
  return (BwEdidTiming *) g_ptr_array_index (edid->timings, i);
}

/**
 * bw_edid_mode:
 *
 * Returns: (transfer none): listed mode @i of @edid
 */
static inline BwEdidMode *
bw_edid_mode (const BwEdid *edid, guint i)
{
  return (BwEdidMode *) g_ptr_array_index (edid->modes, i);
}

G_END_DECLS
