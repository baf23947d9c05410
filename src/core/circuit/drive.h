/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/base/kinds.h"
#include "core/base/quantity.h"
#include "preferred.h"

G_BEGIN_DECLS

/* How an output drives a conductor, what it gives into a load, and which resistor or attenuator
 * makes of that what an input takes. */

/* The resistance of video: of outputs, leads and terminators (SMPTE 170M 15.2). */
#define BW_VIDEO_OHM 75.0

/* An input whose termination is not there (common practice, no source). */
#define BW_INPUT_OHM 10e3

/* One load of 75 Ω within the tolerance of ordinary terminators and input circuits (common
 * practice, no source). */
#define BW_ONE_LOAD_MIN_OHM 67.5
#define BW_ONE_LOAD_MAX_OHM 82.5

/* More than this is high impedance, at the end of a lead and behind one: the capacitance of a lead of
 * 2 m, some 150 pF, makes of it an edge of 0.3 µs, and more smears the sync (common practice, no
 * source). */
#define BW_HIGH_IMPEDANCE_OHM 1e3

/* The levels that are aimed at where an input takes them: those of ITU-R BT.1700. */
#define BW_USUAL_VIDEO_V 0.7
#define BW_USUAL_SYNC_V 0.3

/* The series that resistors and attenuators are advised in. */
#define BW_USUAL_SERIES BW_SERIES_E24

/* How sync on a conductor of its own is driven. */
typedef enum
{
  BW_DRIVE_300_MV,
  BW_DRIVE_1_V,
  BW_DRIVE_2_V,
  BW_DRIVE_4_V,
  BW_DRIVE_LOGIC, /* TTL: stated without load */
  BW_DRIVE_LOGIC_75, /* the same behind a resistor that matches the line */
  BW_DRIVE_TRILEVEL,
  BW_N_SYNC_DRIVES
} BwSyncDrive;

/**
 * BwSyncDriveFacts:
 * @sync_v: amplitude across @stated; of tri-level sync each way
 * @driver_ohm: resistance of the usual driver
 * @input_low_v: what an input must still take as low; zero where no threshold is laid down
 * @input_high_v: what an input must take as high
 * @common_practice: no source was read for the level
 */
typedef struct
{
  double sync_v;
  BwStatedLoad stated;
  BwSyncShape shape;
  double driver_ohm;
  double input_low_v;
  double input_high_v;
  gboolean common_practice;
} BwSyncDriveFacts;

/**
 * BwSyncAttenuator:
 * @wanted_v: level that is aimed at
 * @exact_ohm: the series resistor that gives it
 * @resistor_ohm: the preferred value nearest to it
 * @terminator: a terminator is wanted with the resistor, where the conductor ends
 * @load_ohm: what the conductor then ends in
 * @level_v: across @load_ohm, behind @resistor_ohm
 *
 * What brings sync on a conductor of its own down to what an input takes.
 */
typedef struct
{
  double wanted_v;
  double exact_ohm;
  double resistor_ohm;
  gboolean terminator;
  double load_ohm;
  double level_v;
} BwSyncAttenuator;

extern const BwKindTable bw_sync_drives;

const BwSyncDriveFacts *bw_sync_drive_facts (BwSyncDrive drive);

double bw_parallel_ohm (double a_ohm, double b_ohm);
gboolean bw_load_is_one (double load_ohm);
gboolean bw_load_is_high (double load_ohm);

double bw_open_v (double level_v, BwStatedLoad stated, double source_ohm);
double bw_level_at_load (double level_v, BwStatedLoad stated, double source_ohm, double load_ohm);
double bw_range_nominal (BwRange range, double usual);

double bw_series_resistor_ohm (double open_v, double driver_ohm, double load_ohm, double wanted_v);
gboolean bw_sync_attenuator (double open_v, double driver_ohm, double load_ohm, BwRange takes,
                             BwSeries series, BwSyncAttenuator *attenuator);
double bw_pad_ratio (double video_v, const BwRange *takes_video, double sync_v,
                     const BwRange *takes_sync);

G_END_DECLS
