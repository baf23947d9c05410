/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/base/field.h"

G_BEGIN_DECLS

/**
 * BwInput:
 * @group: its group in the sheet's file; %NULL until it has been saved
 * @connectors: set of BwConnector
 * @pins: of the one among @connectors whose pins no standard lays down
 * @signals: set of BwSignal that it takes
 * @systems: set of BwColourSystem that its decoder handles; matters for composite and Y/C
 * @syncs: set of BwSyncKind
 * @shapes: set of BwSyncShape
 * @polarities: set of BwPolarity, for sync on its own conductors
 * @scans: set of BwScan
 * @line_rates_hz: bands that this input locks in; none given: those of the monitor
 * @line_counts: lines of a whole frame that it locks to; none given: any
 * @video_v: one band: black-to-white amplitude that it takes, at its terminals
 * @sync_v: one band: peak-to-peak sync amplitude that it takes, at its terminals
 * @own_sync_v: one band: the same for conductors that carry sync alone; none given: as @sync_v
 * @setup_ire: black levels above blanking that it can be set for; none given: any
 * @termination: BwTermination of the conductors that carry video
 * @terminated: the position of a termination switch
 * @sync_termination: BwTermination of conductors that carry sync alone
 * @loop_ended: a terminator, or a terminated set, hangs on the loop-through
 * @input_ohm: what the input itself is when its 75 Ω is not there
 * @clamp: BwClamp
 * @dc_v: one band: d.c. offset of the source that it stands
 * @bandwidth_hz: of this input's own path, at -3 dB; zero: that of the monitor
 * @added_ohm: a resistor that hangs across the conductors with video, besides all these; zero: none.
 *   A plan sets it and the next two, for what it does at the input; a file does not hold them
 * @added_sync_ohm: the same across the conductors that carry sync alone
 * @line_end_ohm: what the lead of the video ends in, where a part between it and the input makes it
 *   other than the input's load; zero: no such part
 * @from: BwOrigin of each figure, in the order of bw_input_fields
 *
 * Every figure may be unknown: see BwField.
 */
typedef struct
{
  char *group;
  char *name;
  guint connectors;
  BwPinout pins;
  guint signals;
  guint systems;
  guint syncs;
  guint shapes;
  guint polarities;
  guint scans;
  BwBands line_rates_hz;
  BwBands line_counts;
  BwBands video_v;
  BwBands sync_v;
  BwBands own_sync_v;
  BwBands setup_ire;
  guint termination;
  gboolean terminated;
  guint sync_termination;
  gboolean sync_terminated;
  gboolean loop_through;
  gboolean loop_ended;
  double input_ohm;
  guint clamp;
  BwBands dc_v;
  double bandwidth_hz;
  double added_ohm;
  double added_sync_ohm;
  double line_end_ohm;
  guint8 from[BW_ORIGINS_MAX];
} BwInput;

/**
 * BwMonitor:
 * @mains_v: one band: rated supply voltage
 * @mains_hz: one band: rated supply frequency
 * @mains_a: rated current; zero: not known
 * @diagonal_m: of the viewable area
 * @aspect: width to height of the viewable area
 * @mask: BwMask
 * @pitch_m: as quoted: on the diagonal for a dot mask, else horizontal; zero: not known
 * @spot_m: width of the spot at half its peak; zero: not known
 * @claimed_lines: TV lines per picture height that are claimed for it; zero: none
 * @overscan_h: share of the scanned width beyond the viewable area, both sides together
 * @overscan_v: share of the scanned height, top and bottom together
 * @wide_switch: a switch scans the other aspect ratio (16:9 on a 4:3 tube, or the reverse)
 * @line_rates_hz: bands that the line oscillator locks in
 * @field_rates_hz: bands that the field oscillator locks in
 * @line_retrace_s: shortest line blanking that hides the retrace
 * @field_retrace_s: shortest field blanking that hides the retrace
 * @bandwidth_hz: of the video amplifiers, at -3 dB; zero: not known
 * @inputs: (element-type BwInput)
 * @from: BwOrigin of each figure, in the order of bw_monitor_fields
 *
 * Every figure may be unknown: see BwField.
 */
typedef struct
{
  char *id; /* in the catalogue; else NULL */
  char *name;
  char *source;
  char *note;
  BwBands mains_v;
  BwBands mains_hz;
  double mains_a;
  double diagonal_m;
  BwRatio aspect;
  guint mask;
  double pitch_m;
  double spot_m;
  double claimed_lines;
  double overscan_h;
  double overscan_v;
  gboolean wide_switch;
  BwBands line_rates_hz;
  BwBands field_rates_hz;
  double line_retrace_s;
  double field_retrace_s;
  double bandwidth_hz;
  GPtrArray *inputs;
  guint8 from[BW_ORIGINS_MAX];
} BwMonitor;

#define BW_MONITOR_ERROR (bw_monitor_error_quark ())

typedef enum
{
  BW_MONITOR_ERROR_NO_INPUT,
  BW_MONITOR_ERROR_INPUT_SYNC /* sync kinds that none of the input's signals can carry */
} BwMonitorError;

/* What gives a conductor of an input the load that it should have. */
typedef enum
{
  BW_LOAD_AS_IT_IS,
  BW_LOAD_SWITCH,     /* the other position of the termination switch */
  BW_LOAD_TERMINATOR, /* 75 Ω at the input, or on its loop-through */
  BW_LOAD_UNLOAD      /* take what hangs on the loop-through away */
} BwLoadChange;

/**
 * BwClampNeeds:
 * @fails_s: a back porch shorter than this is too short to find black on; zero: no clamp needs one
 * @tight_s: one shorter than this is little
 */
typedef struct
{
  double fails_s;
  double tight_s;
} BwClampNeeds;

extern const BwFieldTable bw_monitor_fields;
extern const BwFieldTable bw_input_fields;

GQuark bw_monitor_error_quark (void);

BwInput *bw_input_new (void);
BwInput *bw_input_copy (const BwInput *input);
void bw_input_free (BwInput *input);
gboolean bw_input_check (const BwInput *input, GError **error);
gboolean bw_input_takes_sync (const BwInput *input, BwSyncKind sync);
guint bw_input_taken_syncs (const BwInput *input, guint syncs);
BwRange bw_rate_band (BwRange band);
BwClampNeeds bw_input_clamp_needs (const BwInput *input, double line_period_s);
BwRange bw_input_sync_range (const BwInput *input, gboolean own_sync);
double bw_input_load_ohm (const BwInput *input, gboolean own_sync);
double bw_input_line_end_ohm (const BwInput *input);
BwLoadChange bw_input_load_change (const BwInput *input, gboolean own_sync);
void bw_input_change_load (BwInput *input, gboolean own_sync, BwLoadChange change);
double bw_input_bandwidth_hz (const BwInput *input, const BwMonitor *monitor);

BwMonitor *bw_monitor_new (void);
BwMonitor *bw_monitor_copy (const BwMonitor *monitor);
void bw_monitor_set_origins (BwMonitor *monitor, BwOrigin origin);
void bw_monitor_free (BwMonitor *monitor);
gboolean bw_monitor_switches_to (const BwMonitor *monitor, BwRatio aspect);
double bw_monitor_area_diagonal_m (const BwMonitor *monitor, BwRatio aspect);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BwInput, bw_input_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (BwMonitor, bw_monitor_free)

/**
 * bw_monitor_input:
 *
 * Returns: (transfer none): input @i of @monitor
 */
static inline BwInput *
bw_monitor_input (const BwMonitor *monitor, guint i)
{
  return (BwInput *) g_ptr_array_index (monitor->inputs, i);
}

G_END_DECLS
