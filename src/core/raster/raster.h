/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/base/field.h"

G_BEGIN_DECLS

/**
 * BwFieldTiming:
 *
 * The vertical intervals of one field in half lines, in the order in which they pass: front porch,
 * sync, back porch, active. In a progressive raster the field is the frame. The front porch is the
 * gap before the vertical sync that starts the field.
 */
typedef struct
{
  int active;
  int front_porch;
  int sync;
  int back_porch;
} BwFieldTiming;

/**
 * BwRaster:
 * @pixel_clock_hz: exact; %BW_RATIO_NONE where the raster is defined in time alone
 * @line_rate_hz: exact; always given
 * @h_active: pixels, zero in a raster defined in time
 * @h_border: pixels on each side that are scanned but belong to neither picture nor blanking
 * @h_front_porch_s: given in a raster defined in time, else zero; likewise sync and back porch
 * @v_border: lines above and below, as @h_border
 * @field: both fields; equal to each other in a progressive raster
 * @pixel_repeat: how often each sample of the picture is sent; at least 1
 * @equalising_before: equalising pulses before field sync, at half-line spacing
 * @equalising_width_s: zero if there are none
 * @serration_width_s: the gap between broad pulses; zero if field sync is not serrated
 * @broad_start_s: of the broad pulse of tri-level sync, after the datum, or after each half line where
 *   the scan is interlaced; zero: from where the picture would begin
 * @broad_width_s: likewise; zero: to where the picture would end
 * @sync_recalled: field sync is from memory: the text that lays it down was not read
 * @numbered_before_sync: lines by which line 1 comes before the field sync of field 1: 3 in the
 *   525-line interlaced numbering, 0 where line 1 is the first line of field sync
 *
 * The timing of a picture. With tri-level sync the line sync interval holds both halves of the
 * pulse, and the datum is the crossing between them; with bi-level sync it is the leading edge.
 */
typedef struct
{
  char *id;
  char *name;
  char *source; /* the standard or paper that gives the figures */
  char *aliases;
  char *note;
  guint scan; /* BwScan */
  BwRatio pixel_clock_hz;
  BwRatio line_rate_hz;
  int h_active;
  int h_front_porch;
  int h_sync;
  int h_back_porch;
  int h_border;
  double h_front_porch_s;
  double h_sync_s;
  double h_back_porch_s;
  BwFieldTiming field[2];
  int v_border;
  guint h_polarity; /* BwPolarity */
  guint v_polarity;
  guint sync_shape; /* BwSyncShape */
  int pixel_repeat;
  int equalising_before;
  int equalising_after;
  double equalising_width_s;
  double serration_width_s;
  double broad_start_s;
  double broad_width_s;
  gboolean sync_recalled;
  int numbered_before_sync;
} BwRaster;

/**
 * BwRasterFigures:
 *
 * What follows from a raster. Rates in hertz, times in seconds, counts in pixels or lines. Where a
 * raster is defined in time alone, the pixel figures are zero and @has_pixels is %FALSE. Vertical
 * figures are those of field 1; borders are not part of any porch.
 */
typedef struct
{
  gboolean has_pixels;
  double pixel_clock_hz;
  double line_rate_hz;
  double field_rate_hz;
  double frame_rate_hz;
  double line_period_s;
  double field_period_s;
  int h_total;
  double h_active_s;
  double h_border_s; /* each side */
  double h_front_porch_s;
  double h_sync_s;
  double h_back_porch_s;
  double h_blanking_s;       /* line period less active and borders */
  double h_datum_s;          /* from the start of the line sync interval to the timing datum */
  double v_active_lines;     /* of field 1 */
  double v_blanking_s;       /* the shorter of the two fields' blanking */
  double lines_per_field;    /* half the frame's lines in an interlaced raster */
  int lines_per_frame;
  double active_lines_frame; /* lines of picture in a whole frame, both fields */
} BwRasterFigures;

#define BW_RASTER_ERROR (bw_raster_error_quark ())

/* The faults that a raster can have. */
typedef enum
{
  BW_RASTER_ERROR_NO_RATE,    /* neither a pixel clock nor a line rate, or both */
  BW_RASTER_ERROR_NO_PICTURE, /* no active pixels, lines or time */
  BW_RASTER_ERROR_NO_SYNC,    /* no line or field sync */
  BW_RASTER_ERROR_PORCH,      /* a porch is negative */
  BW_RASTER_ERROR_LINE_TOTAL, /* intervals longer than the line */
  BW_RASTER_ERROR_HALF_LINE,  /* the fields do not make whole lines */
  BW_RASTER_ERROR_BORDER,     /* borders in a raster defined in time */
  BW_RASTER_ERROR_PULSES,     /* equalising or serration that does not fit its half line */
  BW_RASTER_ERROR_SHAPE,      /* tri-level sync with an odd width */
  BW_RASTER_ERROR_RATE_RANGE  /* a rate beyond what any display takes */
} BwRasterError;

#define BW_LINE_RATE_MIN_HZ 1e3
#define BW_LINE_RATE_MAX_HZ 1e6
#define BW_FIELD_RATE_MIN_HZ 1.0
#define BW_FIELD_RATE_MAX_HZ 1e3

GQuark bw_raster_error_quark (void);

BwRaster *bw_raster_new (void);
BwRaster *bw_raster_copy (const BwRaster *raster);
void bw_raster_free (BwRaster *raster);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (BwRaster, bw_raster_free)

/* Which keys a raster has in a file: those of all rasters, those of an interlaced one whose fields
 * differ, and those of the line, in pixels with a clock or in time with a line rate. */
typedef enum
{
  BW_RASTER_KEYS_ALL,
  BW_RASTER_KEYS_SECOND_FIELD,
  BW_RASTER_KEYS_IN_PIXELS,
  BW_RASTER_KEYS_IN_TIME,
  BW_N_RASTER_KEYS
} BwRasterKeys;

const BwFieldTable *bw_raster_keys (BwRasterKeys which);
BwRaster *bw_raster_load (GKeyFile *keys, const char *group, const char *id, const char *file,
                          GError **error);
void bw_raster_save (const BwRaster *raster, GKeyFile *keys, const char *group);
gboolean bw_raster_is_broad_by_line (const BwRaster *raster);
double bw_raster_broad_s (const BwRaster *raster);
gboolean bw_raster_check (const BwRaster *raster, GError **error);

GPtrArray *bw_raster_names (const BwRaster *raster);
gboolean bw_raster_has_alias (const BwRaster *raster, const char *name);

int bw_raster_h_total (const BwRaster *raster);
int bw_raster_half_lines (const BwRaster *raster);
gboolean bw_raster_field_rate (const BwRaster *raster, BwRatio *rate_hz);
void bw_raster_figures (const BwRaster *raster, BwRasterFigures *figures);

G_END_DECLS
