/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/bench/lack.h"
#include "core/base/severity.h"
#include "remedy-list.h"
#include "rule-list.h"

G_BEGIN_DECLS

/* What one rule finds for one source at one input: the figures and the reason, from which the
 * sentence is made when somebody asks for it (words.c), and the remedy. */

typedef enum
{
#define BW_RULE_CONSTANT(NAME, ...) BW_RULE_##NAME,
  BW_RULE_LIST (BW_RULE_CONSTANT)
#undef BW_RULE_CONSTANT
  BW_N_RULES
} BwRule;

typedef enum
{
#define BW_REMEDY_CONSTANT(NAME, ...) BW_REMEDY_##NAME,
  BW_REMEDY_LIST (BW_REMEDY_CONSTANT)
#undef BW_REMEDY_CONSTANT
  BW_N_REMEDIES
} BwRemedyKind;

/* Why a finding is as it is; each rule has its own sentence for it. */
typedef enum
{
  BW_REASON_HOLDS, /* the rule's plain sentence for a value inside its limits */
  BW_REASON_NEAR_EDGE,
  BW_REASON_BELOW,
  BW_REASON_ABOVE,
  BW_REASON_BETWEEN,      /* outside, with something that is allowed on both sides */
  BW_REASON_OUT_OF_REACH, /* fails, and beyond what a converter takes */
  BW_REASON_NOT_NEEDED,
  BW_REASON_OTHER_RASTER, /* not judged: the set sees a converter's raster, or none */
  BW_REASON_NOT_TAKEN,
  BW_REASON_COLOUR_LOST,     /* shows, in monochrome */
  BW_REASON_GREEN_ALONE,     /* shows, and of RGB the green alone */
  BW_REASON_SUBCARRIER_SEEN, /* monochrome set shows subcarrier dots */
  BW_REASON_MONOCHROME,      /* source without subcarrier into a decoder */
  BW_REASON_OTHER_COUNT,     /* line count differs but lies within a line of a half frame */
  BW_REASON_WRONG_COUNT,
  BW_REASON_WRONG_SCAN,
  BW_REASON_CURED_BY_TERMINATION,
  BW_REASON_OUTSIDE_TERMINATED, /* taken as it stands, but not with the termination that is due */
  BW_REASON_UNTERMINATED,
  BW_REASON_DOUBLE_TERMINATED,
  BW_REASON_OTHER_RESISTANCE, /* of the input: neither 75 Ω nor high, and not to be made so */
  BW_REASON_MADE_OPEN,      /* an input that takes the level of a line that does not end */
  BW_REASON_VOLTAGE_DRIVEN, /* source without 75 Ω of its own */
  BW_REASON_BLACK_WANDERS,
  BW_REASON_DC_OFFSET,
  BW_REASON_UNKNOWN, /* a figure that would decide is not known: @lacks */
  BW_REASON_SLOW_BEAT,
  BW_REASON_NO_BEAT,
  BW_REASON_FLICKER,
  BW_REASON_OVERSCANNED,
  BW_REASON_OTHER_ASPECT,
  BW_REASON_WIDE_SWITCH,
  BW_REASON_SAME_CONNECTOR,
  BW_REASON_ADAPTING_LEAD,
  BW_REASON_OPEN_PINS, /* no standard lays a pin down, and the sheet does not say it: @lacks */
  BW_REASON_CROSSED
} BwReason;

/**
 * BwRemedy:
 * @kind: the part or setting; %BW_REMEDY_NONE if none is needed or none helps
 * @value: of a resistor in ohms, of a pad as a voltage ratio, of a size as a fraction; else zero
 */
typedef struct
{
  BwRemedyKind kind;
  double value;
} BwRemedy;

/* The figures of single rules, beside the value and its limits. They are zero where a finding does
 * not need them. */

/**
 * BwSyncPolarityFigures:
 * @given: the set of BwPolarity on the source's own sync conductors
 */
typedef struct
{
  guint given;
} BwSyncPolarityFigures;

/**
 * BwLevelFigures:
 * @load_ohm: what the sync or the video works into, as the input is terminated now
 * @wanted_v: the level that the remedy aims at
 * @with_load: whether a series resistor or an attenuator needs one load of 75 Ω besides, which the
 *   finding on the termination does not ask for
 * @without_load: whether a series resistor needs the termination of the input switched off
 * @own: of sync on a conductor of its own
 */
typedef struct
{
  double load_ohm;
  double wanted_v;
  gboolean with_load;
  gboolean without_load;
  gboolean own;
} BwLevelFigures;

/**
 * BwSyncDriveFigures:
 * @load_ohm: what the output works into behind its own resistance
 */
typedef struct
{
  double load_ohm;
} BwSyncDriveFigures;

/**
 * BwSyncShapeFigures:
 * @given: the shape that the source gives
 */
typedef struct
{
  BwSyncShape given;
} BwSyncShapeFigures;

/**
 * BwSetupFigures:
 * @off_ire: how far black is off what the input expects; positive where it comes out lifted
 */
typedef struct
{
  double off_ire;
} BwSetupFigures;

/**
 * BwTerminationFigures:
 * @source_ohm: the source's own resistance
 * @level_ratio: what becomes of the level, as a ratio of the published one
 * @return_loss_db: of the end of a lead of 75 Ω, where it is of another resistance
 */
typedef struct
{
  double source_ohm;
  double level_ratio;
  double return_loss_db;
} BwTerminationFigures;

/**
 * BwBandwidthFigures:
 * @source_tvl: TV lines per picture height of the source's highest frequency
 * @passed_tvl: TV lines per picture height that the bandwidth passes
 */
typedef struct
{
  double source_tvl;
  double passed_tvl;
} BwBandwidthFigures;

/**
 * BwMainsBeatFigures:
 * @bars: how many hum bars there are, at least one
 * @crossing_s: time in which a bar crosses the height of the picture; zero if it stands still
 * @direction: 1 if the bars go up, -1 if they go down, 0 if they stand still
 */
typedef struct
{
  guint bars;
  double crossing_s;
  int direction;
} BwMainsBeatFigures;

/**
 * BwVisibleAreaFigures:
 * @hidden_lines: lines of the frame that are not seen
 * @hidden_columns: pixels of each line that are not seen; zero for a raster without pixels
 * @hidden_s: the part of each line that is not seen, in seconds; zero for a raster with pixels
 */
typedef struct
{
  double hidden_lines;
  double hidden_columns;
  double hidden_s;
} BwVisibleAreaFigures;

/**
 * BwAspectFigures:
 * @sets_height: for another aspect ratio, whether it is the height that is set and not the width
 */
typedef struct
{
  gboolean sets_height;
} BwAspectFigures;

/**
 * BwLeadFindingFigures:
 * @open: contacts that nobody lays down
 */
typedef struct
{
  BwOpenPins open;
} BwLeadFindingFigures;

/**
 * BwFinding:
 * @has_value: whether @value means something; some rules compare kinds, not numbers
 * @has_low: whether @low is a limit
 * @has_high: whether @high is a limit
 * @dimension: of @value, @low and @high
 * @danger: it can hurt someone, or destroy what is joined
 * @lacks: the figure that would decide, of a rule that is not judged
 * @margin: distance from @value to the nearer limit as a share of that limit; negative outside
 * @as: what the rule of that name found besides; the other rules have nothing in it
 *
 * One rule's outcome.
 */
typedef struct
{
  BwRule rule;
  BwSeverity severity;
  BwReason reason;
  gboolean has_value;
  gboolean has_low;
  gboolean has_high;
  gboolean danger;
  double value;
  double low;
  double high;
  double margin;
  BwDimension dimension;
  BwRemedy remedy;
  BwLack lacks;
  union
  {
    BwSyncPolarityFigures sync_polarity;
    BwLevelFigures sync_level;
    BwSyncDriveFigures sync_drive;
    BwSyncShapeFigures sync_shape;
    BwLevelFigures video_level;
    BwSetupFigures setup;
    BwTerminationFigures termination;
    BwBandwidthFigures bandwidth;
    BwMainsBeatFigures mains_beat;
    BwAspectFigures aspect;
    BwVisibleAreaFigures visible_area;
    BwLeadFindingFigures lead;
  } as;
} BwFinding;

extern const BwKindTable bw_rules;
extern const BwKindTable bw_remedies;

gboolean bw_finding_is_remark (const BwFinding *finding);
gboolean bw_remedy_is_setting (BwRemedyKind kind);

char *bw_finding_value (const BwFinding *finding, char mark);
char *bw_finding_allowed (const BwFinding *finding, char mark);
char *bw_finding_margin (const BwFinding *finding, char mark);
char *bw_finding_remedy_short (const BwFinding *finding, char mark);

G_END_DECLS
