/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/circuit/pads.h"
#include "monitor.h"
#include "source.h"

G_BEGIN_DECLS

/* How the levels of a source and an input match, and what passive means make them match. The fit
 * judges by it, and what is likely wrong is held against it, so that what the one advises is right
 * for the other. */

/* What makes of a level what the input takes. */
typedef enum
{
  BW_NEED_NOTHING,   /* it is taken as it is */
  BW_NEED_LOAD,      /* the end that the conductor should have is enough */
  BW_NEED_RESISTOR,  /* in series with sync alone */
  BW_NEED_PAD,       /* an attenuator in every conductor with picture */
  BW_NEED_AMPLIFIER
} BwLevelNeed;

/* What makes a line end in 75 Ω at an input that is not 75 Ω and cannot be made so. It stands at the
 * input's end of the lead. */
typedef enum
{
  BW_END_NO_PART,
  BW_END_SERIES,      /* a resistor before an input of less than 75 Ω */
  BW_END_SHUNT,       /* a resistor across an input of more */
  BW_END_MINIMUM_LOSS /* a pad that matches both ways */
} BwEndPart;

/**
 * BwSyncWay:
 * @change: of the load
 * @load_ohm: what the conductor ends in after it
 * @has_resistor: a series resistor goes with it: @attenuator
 *
 * A circuit in which sync on conductors of its own is taken.
 */
typedef struct
{
  BwLoadChange change;
  double load_ohm;
  gboolean has_resistor;
  BwSyncAttenuator attenuator;
} BwSyncWay;

#define BW_SYNC_WAYS_MAX 3

/**
 * BwSyncMatch:
 * @takes: what the input takes of it
 * @load_ohm: what the conductor ends in as it stands
 * @level_v: at the input, as it stands
 * @n_ways: zero where no passive means help
 * @way: the one that is advised first; where sync is taken as it stands, that alone
 * @need: of the first of them
 * @aim_v: the nominal level, where a resistor or an amplifier is needed
 * @gain: of an amplifier that gives it @aim_v; less than one where the input is of high impedance
 *   and no resistor helps
 *
 * Sync on conductors of its own.
 */
typedef struct
{
  BwRange takes;
  double load_ohm;
  double level_v;
  guint n_ways;
  BwSyncWay way[BW_SYNC_WAYS_MAX];
  BwLevelNeed need;
  double aim_v;
  double gain;
} BwSyncMatch;

/**
 * BwLevelMatch:
 * @takes: what the input takes of it
 * @level_v: at the input, as it stands
 * @ends_outside: it is taken as it stands, but would not be if the line ended as it should
 * @gain: of the amplifier or attenuator that is needed; one: none
 * @aim_v: the level behind it
 *
 * One level of a conductor with picture: the picture, or the sync in it.
 */
typedef struct
{
  BwRange takes;
  double level_v;
  BwLevelNeed need;
  gboolean ends_outside;
  double gain;
  double aim_v;
} BwLevelMatch;

/**
 * BwPictureMatch:
 * @load_ohm: what the conductor ends in as it stands
 * @load_ratio: level there, against that across 75 Ω
 * @voltage_driven: the load hardly changes the level: the source has little resistance of its own
 * @made_open: the input has no termination, nor a place for one, and takes what stands where the line
 *   does not end, no less than the usual level, but not what would stand there if it did: it is made so
 * @change: what leads to one load of 75 Ω, whether it is needed or not
 * @changed_ohm: the load after @change
 * @part: what the line needs at its end because @changed_ohm is not one load of 75 Ω
 * @part_ratio: level at the input behind @part, against that across 75 Ω; one without a part
 * @sync: of the sync in it
 * @pad: the attenuator at the source's end: %BW_PAD_T, or %BW_PAD_MINIMUM_LOSS where the source is
 *   not of 75 Ω and that pad brings the levels where they should be
 * @pad_ratio: of the attenuator that the picture and the sync in it need; one: none
 * @terminator: the attenuator needs @change with it, although the level by itself does not
 * @end_ohm: what the conductor ends in when all that is needed is done: the load of the input
 *
 * Conductors that carry picture.
 */
typedef struct
{
  double load_ohm;
  double load_ratio;
  gboolean voltage_driven;
  gboolean made_open;
  BwLoadChange change;
  double changed_ohm;
  BwEndPart part;
  double part_ratio;
  BwLevelMatch video;
  BwLevelMatch sync;
  BwPadKind pad;
  double pad_ratio;
  gboolean terminator;
  double end_ohm;
} BwPictureMatch;

void bw_match_own_sync (const BwSource *source, const BwInput *input, BwSyncMatch *match);
void bw_match_picture (const BwSource *source, const BwInput *input, BwSyncKind sync,
                       BwPictureMatch *match);
gboolean bw_match_needs_capacitor (const BwSource *source, const BwInput *input);
gboolean bw_match_end (BwEndPart part, double open_v, double source_ohm, double input_ohm,
                       BwNetwork *network);
gboolean bw_match_pad (const BwSource *source, BwPadKind pad, double ratio, BwNetwork *network);
void bw_match_network (const BwSource *source, const BwPictureMatch *match, BwNetwork *network);

G_END_DECLS
