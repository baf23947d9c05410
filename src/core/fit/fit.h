/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/base/severity.h"
#include "core/bench/sheet.h"

G_BEGIN_DECLS

/* Will this source show on that input? Each rule looks at one thing and gives one finding; the
 * verdict follows from the findings alone. Judging allocates nothing; sentences are made on
 * demand (bw_finding_says(), in fit-words.c). */

typedef enum
{
  BW_RULE_SIGNAL_KIND,
  BW_RULE_COLOUR_SYSTEM,
  BW_RULE_LINE_RATE,
  BW_RULE_FIELD_RATE,
  BW_RULE_LINE_COUNT,
  BW_RULE_SYNC_KIND,
  BW_RULE_SYNC_POLARITY,
  BW_RULE_SYNC_LEVEL,
  BW_RULE_SYNC_SHAPE,
  BW_RULE_LINE_BLANKING,
  BW_RULE_FIELD_BLANKING,
  BW_RULE_VIDEO_LEVEL,
  BW_RULE_SETUP,
  BW_RULE_TERMINATION,
  BW_RULE_COUPLING,
  BW_RULE_BANDWIDTH,
  BW_RULE_MAINS_BEAT,
  BW_RULE_VISIBLE_AREA,
  BW_RULE_LEAD,
  BW_N_RULES
} BwRule;

typedef enum
{
  BW_VERDICT_DIRECT,
  BW_VERDICT_TIGHT,
  BW_VERDICT_WITH_PARTS,
  BW_VERDICT_NO,
  BW_N_VERDICTS
} BwVerdict;

typedef enum
{
  BW_REMEDY_NONE,
  BW_REMEDY_TERMINATOR,      /* 75 Ω at the input or on its loop-through */
  BW_REMEDY_SWITCH_ON,       /* termination switch to 75 Ω */
  BW_REMEDY_SWITCH_OFF,      /* termination switch to high impedance */
  BW_REMEDY_UNLOAD_LOOP,     /* take the terminator off the loop-through */
  BW_REMEDY_SERIES_RESISTOR, /* in the sync conductor */
  BW_REMEDY_VIDEO_PAD,       /* matched attenuator */
  BW_REMEDY_VIDEO_AMPLIFIER,
  BW_REMEDY_SYNC_AMPLIFIER,
  BW_REMEDY_SYNC_COMBINER, /* composite sync from H and V */
  BW_REMEDY_SYNC_ADDER,    /* puts sync on green or Y */
  BW_REMEDY_SYNC_MOVER,    /* separator and adder: sync from video onto green or Y */
  BW_REMEDY_SYNC_SEPARATOR,
  BW_REMEDY_SYNC_INVERTER,
  BW_REMEDY_SYNC_RESHAPER, /* bi-level from tri-level or the reverse */
  BW_REMEDY_ENCODER,       /* RGB or component to composite or Y/C */
  BW_REMEDY_DECODER,       /* composite or Y/C to RGB or component */
  BW_REMEDY_TRANSCODER,    /* RGB to component or back */
  BW_REMEDY_YC_MIXER,      /* Y/C to composite */
  BW_REMEDY_YC_SEPARATOR,  /* composite to Y/C */
  BW_REMEDY_LUMA_MATRIX,   /* Y from RGB */
  BW_REMEDY_DISTRIBUTOR,   /* luminance to R, G and B alike */
  BW_REMEDY_COLOUR_TRANSCODER,
  BW_REMEDY_SCAN_CONVERTER,
  BW_REMEDY_COUPLING_CAPACITOR,
  BW_REMEDY_CLAMP,
  BW_REMEDY_BLACK_LEVEL,  /* setting */
  BW_REMEDY_ASPECT_SWITCH, /* setting */
  BW_REMEDY_SIZE,         /* setting: height or width */
  BW_REMEDY_CROSSED_LEAD, /* 21-pin European to Japanese */
  BW_N_REMEDIES
} BwRemedyKind;

/* Why a finding is as it is; each has its sentence in fit-words.c. */
typedef enum
{
  BW_REASON_HOLDS, /* the rule's plain sentence for a value inside its limits */
  BW_REASON_NEAR_EDGE,
  BW_REASON_BELOW,
  BW_REASON_ABOVE,
  BW_REASON_OUT_OF_REACH, /* fails, and beyond what a converter takes */
  BW_REASON_NOT_NEEDED,
  BW_REASON_OTHER_RASTER, /* not judged: the set sees a converter's raster, or none */
  BW_REASON_NOT_TAKEN,
  BW_REASON_COLOUR_LOST,   /* shows, in monochrome */
  BW_REASON_SUBCARRIER_SEEN, /* monochrome set shows subcarrier dots */
  BW_REASON_MONOCHROME,    /* source without subcarrier into a decoder */
  BW_REASON_OTHER_COUNT,   /* line count differs but lies within a line of a half frame */
  BW_REASON_WRONG_COUNT,
  BW_REASON_WRONG_SCAN,
  BW_REASON_CURED_BY_TERMINATION,
  BW_REASON_UNTERMINATED,
  BW_REASON_DOUBLE_TERMINATED,
  BW_REASON_VOLTAGE_DRIVEN, /* source without 75 Ω of its own */
  BW_REASON_BLACK_WANDERS,
  BW_REASON_NO_CLAMP,
  BW_REASON_DC_OFFSET,
  BW_REASON_UNKNOWN, /* a figure needed for the rule is not entered */
  BW_REASON_SLOW_BEAT,
  BW_REASON_NO_BEAT,
  BW_REASON_FLICKER,
  BW_REASON_OVERSCANNED,
  BW_REASON_OTHER_ASPECT,
  BW_REASON_WIDE_SWITCH,
  BW_REASON_SAME_CONNECTOR,
  BW_REASON_ADAPTING_LEAD,
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

/**
 * BwFinding:
 * @has_value: whether @value means something; some rules compare kinds, not numbers
 * @has_low: whether @low is a limit; likewise @has_high
 * @dimension: of @value, @low and @high
 * @margin: distance from @value to the nearer limit as a share of that limit; negative outside
 * @extra: figures for the sentence, as each rule's comment says
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
  double value;
  double low;
  double high;
  double margin;
  BwDimension dimension;
  BwRemedy remedy;
  double extra[3];
} BwFinding;

/**
 * BwFit:
 * @limiting: the rule of the worst finding; the first one where several are as bad
 * @sync: the sync kind that the judgement uses
 * @at: one finding for each rule, in the rules' order
 */
typedef struct
{
  BwVerdict verdict;
  BwRule limiting;
  BwSyncKind sync;
  BwFinding at[BW_N_RULES];
} BwFit;

/**
 * BwCase:
 *
 * What is judged: one source at one input. All borrowed.
 */
typedef struct
{
  const BwMonitor *monitor;
  const BwInput *input;
  const BwSource *source;
  const BwRaster *raster;
  const BwRasterFigures *figures;
  const BwLimits *limits;
  double supply_hz;
} BwCase;

extern const BwKindTable bw_rules;
extern const BwKindTable bw_verdicts;
extern const BwKindTable bw_remedies;

void bw_fit_judge (const BwCase *c, BwFit *fit);
void bw_case_init (BwCase *c, BwRasterFigures *figures, const BwSheet *sheet,
                   const BwCatalogue *catalogue, guint source, guint input);
double bw_case_source_detail_hz (const BwCase *c);
BwVerdict bw_verdict_of (BwSeverity worst);
BwSeverity bw_verdict_severity (BwVerdict verdict);
const char *bw_verdict_meaning (BwVerdict verdict);
BwVerdict bw_verdict_from_findings (const BwFinding *findings, guint n);

char *bw_finding_says (const BwFinding *finding, const BwFit *fit, const BwCase *c, char mark);
char *bw_finding_remedy (const BwFinding *finding, const BwFit *fit, const BwCase *c, char mark);
char *bw_finding_remedy_short (const BwFinding *finding, char mark);
char *bw_finding_value (const BwFinding *finding, char mark);
char *bw_finding_allowed (const BwFinding *finding, char mark);

/* The rules, one function each (fit-*-rules.c). @fit->sync is chosen before they run. */
void bw_rule_signal_kind (const BwCase *c, const BwFit *fit, BwFinding *f);
void bw_rule_colour_system (const BwCase *c, const BwFit *fit, BwFinding *f);
void bw_rule_line_rate (const BwCase *c, const BwFit *fit, BwFinding *f);
void bw_rule_field_rate (const BwCase *c, const BwFit *fit, BwFinding *f);
void bw_rule_line_count (const BwCase *c, const BwFit *fit, BwFinding *f);
void bw_rule_sync_kind (const BwCase *c, const BwFit *fit, BwFinding *f);
void bw_rule_sync_polarity (const BwCase *c, const BwFit *fit, BwFinding *f);
void bw_rule_sync_level (const BwCase *c, const BwFit *fit, BwFinding *f);
void bw_rule_sync_shape (const BwCase *c, const BwFit *fit, BwFinding *f);
void bw_rule_line_blanking (const BwCase *c, const BwFit *fit, BwFinding *f);
void bw_rule_field_blanking (const BwCase *c, const BwFit *fit, BwFinding *f);
void bw_rule_video_level (const BwCase *c, const BwFit *fit, BwFinding *f);
void bw_rule_setup (const BwCase *c, const BwFit *fit, BwFinding *f);
void bw_rule_termination (const BwCase *c, const BwFit *fit, BwFinding *f);
void bw_rule_coupling (const BwCase *c, const BwFit *fit, BwFinding *f);
void bw_rule_bandwidth (const BwCase *c, const BwFit *fit, BwFinding *f);
void bw_rule_mains_beat (const BwCase *c, const BwFit *fit, BwFinding *f);
void bw_rule_visible_area (const BwCase *c, const BwFit *fit, BwFinding *f);
void bw_rule_lead (const BwCase *c, const BwFit *fit, BwFinding *f);

G_END_DECLS
