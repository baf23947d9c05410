/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/base/field.h"

G_BEGIN_DECLS

/**
 * BwOpenPins:
 * @at_source: set of BwConductor whose pin is not known at the connector of the source, and of
 *   %BW_PIN_USE_GROUND if its ground is not
 * @at_input: likewise at the connector of the input
 */
typedef struct
{
  guint at_source;
  guint at_input;
} BwOpenPins;

/**
 * BwSource:
 * @group: its group in the sheet's file; %NULL until it has been saved
 * @raster: id of a raster in the sheet or the catalogue
 * @signal: BwSignal
 * @syncs: set of BwSyncKind that it gives at the same time
 * @system: BwColourSystem; %BW_SYSTEM_NONE for RGB, component and monochrome
 * @connector: BwConnector
 * @pins: of that connector where no standard lays them down
 * @video_v: black-to-white amplitude across 75 Ω
 * @sync_v: peak-to-peak sync amplitude, stated across @sync_load
 * @sync_load: BwStatedLoad that @sync_v is stated for; sync in video is always across 75 Ω
 * @sync_polarity: BwSyncPolarity of sync on conductors of its own
 * @setup_ire: black above blanking
 * @source_ohm: resistance of the video outputs
 * @sync_ohm: resistance of the output that carries sync alone
 * @coupling: BwCoupling
 * @dc_v: d.c. at blanking level, across 75 Ω; zero for a.c. coupling
 * @aspect: width to height that the picture is meant for
 * @whole_picture: every line and column matters, as on a computer's screen
 * @detail_hz: highest video frequency; zero: follows from raster and colour system
 * @blanking: BwBlanking: what stands in its line and field blanking
 * @can_be_set: its raster can be set to another one, as a computer's
 * @no_interlace: what can be set gives no interlaced raster
 * @lowest_clock_hz: of the pixel clock that it can be set to; zero: any; likewise @highest_clock_hz
 * @clock_step_hz: its clock is a multiple of this; zero: any clock
 * @pixel_multiple: all figures across are multiples of so many pixels
 * @joined: a lead of a plan has brought it here, and @connector is that where the lead ends. A plan
 *   sets it and the next; a file does not hold them
 * @open: contacts of the source and of the input that these leads end at and that nobody lays down
 * @from: BwOrigin of each figure, in the order of bw_source_fields
 *
 * Every figure may be unknown: see BwField.
 *
 * Something that is to be shown.
 */
typedef struct
{
  char *group;
  char *id; /* in the catalogue; else NULL */
  char *name;
  char *origin;
  char *note;
  char *raster;
  guint signal;
  guint syncs;
  guint system;
  guint connector;
  BwPinout pins;
  double video_v;
  double sync_v;
  guint sync_load;
  guint sync_polarity;
  double setup_ire;
  double source_ohm;
  double sync_ohm;
  guint coupling;
  double dc_v;
  BwRatio aspect;
  gboolean whole_picture;
  double detail_hz;
  guint blanking;
  gboolean can_be_set;
  gboolean no_interlace;
  double lowest_clock_hz;
  double highest_clock_hz;
  double clock_step_hz;
  int pixel_multiple;
  gboolean joined;
  BwOpenPins open;
  guint8 from[BW_ORIGINS_MAX];
} BwSource;

#define BW_SOURCE_ERROR (bw_source_error_quark ())

typedef enum
{
  BW_SOURCE_ERROR_SYNC,   /* a sync kind that the signal kind cannot carry */
  BW_SOURCE_ERROR_SYSTEM, /* a colour system where there is no subcarrier, or none where needed */
  BW_SOURCE_ERROR_COUPLING
} BwSourceError;

extern const BwFieldTable bw_source_fields;

GQuark bw_source_error_quark (void);

BwSource *bw_source_new (void);
BwSource *bw_source_copy (const BwSource *source);
void bw_source_free (BwSource *source);
BwColourSystem bw_source_system (const BwSource *source);
gboolean bw_source_check (const BwSource *source, GError **error);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BwSource, bw_source_free)

G_END_DECLS
