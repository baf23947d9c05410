/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "catalogue.h"
#include "lack.h"

G_BEGIN_DECLS

/* The forms of the file that are read. In the first, a figure that is not given has a preset; since
 * the second it is unknown. A sheet is written in the first one that can say all that it holds. */
#define BW_SHEET_FORMAT 2
#define BW_SHEET_FORMAT_PRESETS 1

/**
 * BwLimits:
 * @line_rate: share of the line rate that must lie between it and the edge of its band
 * @field_rate: likewise for the field rate
 * @level: share of the limit that must lie between a level and its limit
 * @blanking: share of the retrace time that blanking must exceed it by
 * @mains_beat_hz: up to this a beat of field rate and mains is seen as a slow bar, above it as flicker
 * @setup_ire: a black level that is off by no more than this is called tight, beyond it wrong
 *
 * Where a value that holds begins to be called tight. Shares are fractions.
 */
typedef struct
{
  double line_rate;
  double field_rate;
  double level;
  double blanking;
  double mains_beat_hz;
  double setup_ire;
} BwLimits;

/* What a new sheet has. */
extern const BwLimits bw_preset_limits;

/**
 * BwSheet:
 * @title: what the job is called
 * @note: free text
 * @supply_v: mains voltage at the bench; zero: not known
 * @supply_hz: mains frequency at the bench; zero: not known
 * @accuracy_v: of the instrument that reads voltages, as a share of what it reads; zero: not known,
 *   and the digits of a reading tell
 * @accuracy_hz: likewise of frequencies
 * @accuracy_s: likewise of times
 * @monitor: the set on the bench
 * @sources: (element-type BwSource): what must work on it
 * @rasters: (element-type BwRaster): rasters that travel with the sheet; they come before the
 *   catalogue's
 * @kept: (nullable): the file as it was read, for the keys, groups and comments that this version
 *   does not know
 * @kept_end: (nullable): the comments after its last key
 *
 * The bench sheet as plain data.
 */
typedef struct
{
  char *title;
  char *note;
  double supply_v;
  double supply_hz;
  double accuracy_v;
  double accuracy_hz;
  double accuracy_s;
  BwLimits limits;
  BwMonitor *monitor;
  GPtrArray *sources;
  GPtrArray *rasters;
  GKeyFile *kept;
  char *kept_end;
} BwSheet;

/**
 * BwSheetGroup:
 * @name: as it stands in brackets; N is a number and ID an id
 * @title: what it holds, to be translated
 * @fields: (nullable): its keys; else those of @raster
 *
 * One kind of group in the file of a bench sheet. A raster has several lines, by what it is.
 */
typedef struct
{
  const char *name;
  const char *title;
  const BwFieldTable *fields;
  BwRasterKeys raster;
} BwSheetGroup;

#define BW_SHEET_ERROR (bw_sheet_error_quark ())

typedef enum
{
  BW_SHEET_ERROR_NOT_A_SHEET,
  BW_SHEET_ERROR_NEWER,
  BW_SHEET_ERROR_NO_MONITOR,
  BW_SHEET_ERROR_NO_RASTER,
  BW_SHEET_ERROR_TOO_MANY,
  BW_SHEET_ERROR_WRITE,
  BW_SHEET_ERROR_INTERRUPTED /* a copy lies beside a file that was damaged by a save */
} BwSheetError;

#define BW_SHEET_MAX_INPUTS 64
#define BW_SHEET_MAX_SOURCES 5000

extern const BwFieldTable bw_sheet_fields;

const BwSheetGroup *bw_sheet_groups (void);
const BwFieldTable *bw_sheet_group_fields (const BwSheetGroup *group);

GQuark bw_sheet_error_quark (void);

BwSheet *bw_sheet_new (void);
BwSheet *bw_sheet_copy (const BwSheet *sheet);
void bw_sheet_free (BwSheet *sheet);

BwSheet *bw_sheet_parse (const char *text, gsize length, const char *file,
                         const BwCatalogue *catalogue, GPtrArray *faults);
BwSheet *bw_sheet_load (const char *path, const BwCatalogue *catalogue, GPtrArray *faults);
char *bw_sheet_to_text (const BwSheet *sheet, const BwCatalogue *catalogue);
gboolean bw_sheet_save (const BwSheet *sheet, const char *path, const BwCatalogue *catalogue,
                        GError **error);

double bw_sheet_accuracy (const BwSheet *sheet, BwDimension dimension);
const BwRaster *bw_sheet_raster (const BwSheet *sheet, const BwCatalogue *catalogue,
                                 const BwSource *source);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BwSheet, bw_sheet_free)

/**
 * bw_sheet_source:
 *
 * Returns: (transfer none): source @i of @sheet
 */
static inline BwSource *
bw_sheet_source (const BwSheet *sheet, guint i)
{
  return (BwSource *) g_ptr_array_index (sheet->sources, i);
}

G_END_DECLS
