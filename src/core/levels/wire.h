/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "colour.h"
#include "conductor.h"
#include "core/bench/source.h"
#include "core/raster/raster.h"
#include "signal-levels.h"

G_BEGIN_DECLS

/* What each conductor of a source carries. All volts are across 75 Ω and above blanking, unless the
 * member says otherwise. */

/**
 * BwWireForm:
 * @component: of component alone
 * @matrix: of component, Y/C, composite and luminance
 * @white_v: white above blanking
 * @setup_ire: black above blanking, as hundredths of @white_v
 * @sync_v: amplitude of sync in video, below blanking; of tri-level sync each way
 * @own_sync_v: peak to peak, on a conductor that carries sync alone; of tri-level sync each way
 * @own_logic: that conductor carries logic from 0 V to @own_sync_v: with negative polarity it rests
 *   at @own_sync_v and its pulses go to 0 V. Otherwise it rests at 0 V whatever the polarity
 * @own_polarity: BwPolarity of H (or composite sync) and V on conductors of their own
 * @burst_pp_v: peak to peak; zero: none
 *
 * How a signal is laid down.
 */
typedef struct
{
  BwSignal signal;
  BwSyncKind sync;
  BwSyncShape shape;
  BwColourSystem system;
  BwComponentForm component;
  BwMatrix matrix;
  double white_v;
  double setup_ire;
  double sync_v;
  double own_sync_v;
  gboolean own_logic;
  guint own_polarity[2];
  double burst_pp_v;
} BwWireForm;

/**
 * BwWireLevels:
 * @blanking_v: between sync pulses: zero, but for logic with negative pulses
 * @black_v: of a picture
 * @white_v: of white; of Pb and Pr, and of C, the highest that 100 % bars reach
 * @lowest_v: the lowest that 100 % bars reach: @black_v, or negative for Pb, Pr, C and composite
 * @highest_v: the highest that 100 % bars reach
 * @sync_low_v: lowest level that sync reaches; zero with @sync_high_v zero: no sync
 * @sync_high_v: highest level that sync reaches: zero but for tri-level and positive sync, and logic
 * @volts_per_ire: zero where the conductor has no IRE scale
 *
 * The levels of one conductor.
 */
typedef struct
{
  BwConductor conductor;
  double blanking_v;
  double black_v;
  double white_v;
  double lowest_v;
  double highest_v;
  double sync_low_v;
  double sync_high_v;
  double burst_pp_v;
  double volts_per_ire;
} BwWireLevels;

/**
 * BwWireColour:
 * @base_v: without the subcarrier
 * @u_v: amplitude along +(B−Y), which sin 2πft multiplies
 * @v_v: amplitude along +(R−Y), which cos 2πft multiplies; the PAL switch is not in it
 *
 * A colour on one conductor.
 */
typedef struct
{
  double base_v;
  double u_v;
  double v_v;
} BwWireColour;

void bw_wire_form_standard (BwColourSystem system, BwSignal signal, BwSyncKind sync,
                            BwSyncShape shape, BwWireForm *form);
void bw_wire_form_of_source (const BwSource *source, const BwRaster *raster, BwSyncKind sync,
                             BwWireForm *form);
guint bw_wire_levels (const BwWireForm *form, BwWireLevels levels[BW_N_CONDUCTORS]);
void bw_wire_colour (const BwWireForm *form, BwConductor conductor, const BwRgb *rgb,
                     BwWireColour *colour);

G_END_DECLS
