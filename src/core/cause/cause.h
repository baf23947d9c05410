/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/bench/match.h"
#include "core/circuit/coupling.h"
#include "core/levels/forms.h"
#include "core/raster/reading.h"

G_BEGIN_DECLS

/* From what a scope reads on one conductor to what is likely wrong. Each cause is a circuit: the
 * levels that it gives are computed, and held against the readings. */

typedef enum
{
  BW_SCOPE_SYNC,       /* amplitude, peak to peak */
  BW_SCOPE_POLARITY,   /* of the sync pulses: 1 up, −1 down; of tri-level the first half */
  BW_SCOPE_WHITE,      /* above blanking; of Pb, Pr and C the highest of 100 % bars */
  BW_SCOPE_BLACK,      /* above blanking */
  BW_SCOPE_BURST,      /* peak to peak */
  BW_SCOPE_DC,         /* at blanking; of sync alone between the pulses */
  BW_SCOPE_LINE_TILT,  /* fall of a white field from left to right, as a share of white */
  BW_SCOPE_FIELD_TILT, /* likewise from its first line to its last */
  BW_N_SCOPE_READINGS
} BwScopeReading;

/* The most volts that a scope reads through a probe of 10:1 (common practice, no source). */
#define BW_SCOPE_MOST 600

/* How well a level can be read on a scope, as a share of it (common practice, no source). It must tell
 * 7:3 from 10:4, whose syncs differ by 4.8 %. */
#define BW_SCOPE_ACCURACY 0.03

/**
 * BwScopeReadings:
 * @given: set of BwScopeReading that were read
 * @half_digit: what the last digit of each leaves open; zero: nothing
 * @accuracy: of the scope, as a share of what it reads; zero: %BW_SCOPE_ACCURACY
 */
typedef struct
{
  guint given;
  double at[BW_N_SCOPE_READINGS];
  double half_digit[BW_N_SCOPE_READINGS];
  double accuracy;
} BwScopeReadings;

/**
 * BwRightCircuit:
 * @load_ohm: what the conductor ends in
 * @series_ohm: in its lead; zero: none
 * @spread: as of BwCauseCase
 *
 * A circuit in which the input takes what it is given.
 */
typedef struct
{
  double load_ohm;
  double series_ohm;
  BwRange spread;
} BwRightCircuit;

/**
 * BwCauseCase:
 * @form: what should be on the wire
 * @conductor: where the scope is
 * @not_taken: sync alone that the input does not take: what should be is what the source gives
 * @refused: a picture in a signal kind that the input does not take: nothing can be said of it there
 * @source_ohm: of the outputs that carry a picture
 * @sync_ohm: of an output that carries sync alone
 * @sync_stated: what @form's own_sync_v is stated across
 * @load_ohm: what the conductor should end in, when what the fit advises is done
 * @input_ohm: of the input without its 75 Ω
 * @series_ohm: that should be in the lead of sync alone, or at an input for a picture of less than
 *   75 Ω; zero: none
 * @pad_ratio: of the matched attenuator that should be in the lead of a picture, or of the pad that
 *   matches the input; one: none
 * @spread: lowest and highest that a level behind @series_ohm or @pad_ratio may be as a share of
 *   it, whichever preferred values that is made of
 * @n_others: circuits that are as right: other ways of making sync alone what the input takes, and a
 *   picture from a source that drives its line as a voltage into any load
 * @other: they
 * @wanted_sync_v: sync alone that the input is made for; zero: not known
 * @dc_v: at blanking, across 75 Ω, of conductors that carry a picture
 * @coupling: BwCoupling as it should be; %BW_COUPLING_DC also for what is clamped
 * @capacitor_f: of a.c. coupling; zero: not known
 * @coupling_ohm: around the loop of that capacitor; zero: source and load
 * @picture_share: of the time that is picture
 * @sync_share: of the time that is sync
 * @time: of a field; with nothing in it tilt is not judged
 * @inverted: sync alone should come through an inverter, as the fit advises
 * @limits: (nullable): what a standard allows, across 75 Ω
 *
 * What should be there. All resistances but @source_ohm, @sync_ohm and @series_ohm are greater
 * than zero, and so is @pad_ratio.
 */
typedef struct
{
  BwWireForm form;
  BwConductor conductor;
  gboolean not_taken;
  gboolean refused;
  double source_ohm;
  double sync_ohm;
  BwStatedLoad sync_stated;
  double load_ohm;
  double input_ohm;
  double series_ohm;
  double pad_ratio;
  BwRange spread;
  guint n_others;
  BwRightCircuit other[BW_SYNC_WAYS_MAX - 1];
  double wanted_sync_v;
  double dc_v;
  guint coupling;
  double capacitor_f;
  double coupling_ohm;
  double picture_share;
  double sync_share;
  BwPictureTime time;
  gboolean inverted;
  const BwStandardLimits *limits;
} BwCauseCase;

typedef enum
{
  BW_FAULT_NONE,
  BW_FAULT_UNTERMINATED,
  BW_FAULT_TERMINATED, /* 75 Ω where there should be none */
  BW_FAULT_TWO_LOADS,
  BW_FAULT_THREE_LOADS,
  BW_FAULT_50_OHM,
  BW_FAULT_NO_SIGNAL,           /* open or shorted */
  BW_FAULT_OTHER_LEVELS,        /* which: BwLevelForm */
  BW_FAULT_SETUP_ADDED,
  BW_FAULT_SETUP_MISSING,
  BW_FAULT_OTHER_DRIVE,         /* which: BwSyncDrive */
  BW_FAULT_BARS_75, /* bars of 75 % are taken for full ones */
  BW_FAULT_INVERTED,
  BW_FAULT_OTHER_CONDUCTOR,     /* which: BwConductor */
  BW_FAULT_OTHER_SYNC,          /* which: BwSyncKind */
  BW_FAULT_ATTENUATOR_MISSING,
  BW_FAULT_ATTENUATOR_ADDED,
  BW_FAULT_AC_COUPLED,          /* and not clamped */
  BW_FAULT_OTHER_CAPACITOR,
  BW_FAULT_DC_OFFSET,
  BW_FAULT_OTHER_LOAD,   /* as the levels tell it */
  BW_FAULT_OTHER_DRIVER, /* one load without its resistor, behind a driver of another resistance */
  BW_FAULT_GAIN,         /* of everything */
  BW_FAULT_PICTURE_GAIN, /* white alone */
  BW_FAULT_SYNC_GAIN,    /* sync alone */
  BW_FAULT_BURST_GAIN,   /* burst alone: what is near the subcarrier */
  BW_N_FAULTS
} BwFaultKind;

/**
 * BwFault:
 * @which: of what kind, where BwFaultKind says so; of a matched attenuator that is added: decibels
 * @ohm: the load, the series resistor, or the driver; zero of a matched attenuator
 * @ratio: what it changes against what that should be: every level, white, sync or burst
 * @farad: the capacitor, as given or as the tilt tells it; zero: not known
 */
typedef struct
{
  BwFaultKind kind;
  guint which;
  double ohm;
  double ratio;
  double farad;
} BwFault;

#define BW_CAUSE_MAX_FAULTS 2

/**
 * BwCause:
 * @n_faults: zero: as it should be
 * @known: %FALSE of the one entry that says that nothing here explains the readings
 * @predicts: set of BwScopeReading that it says something of
 * @predicted: for each, from the lowest to the highest; the same but for d.c. that moves with the
 *   picture
 * @worst: the reading that agrees least
 * @deviation: of that reading, in its uncertainty: up to 1 agrees
 * @share: of the fit, over all causes in the list, as a fraction
 * @alike: the readings do not tell it from the first in the list
 */
typedef struct
{
  guint n_faults;
  BwFault faults[BW_CAUSE_MAX_FAULTS];
  gboolean known;
  guint predicts;
  BwRange predicted[BW_N_SCOPE_READINGS];
  BwScopeReading worst;
  double deviation;
  double share;
  gboolean alike;
} BwCause;

extern const BwKindTable bw_scope_readings;
extern const BwKindTable bw_faults;

BwDimension bw_scope_reading_dimension (BwScopeReading reading);
const char *bw_scope_reading_allows (BwScopeReading reading);
gboolean bw_scope_readings_set (BwScopeReadings *readings, BwScopeReading reading, double value);

gboolean bw_scope_readings_read (BwScopeReadings *readings, const BwCauseCase *c,
                                 BwScopeReading reading, const char *text, char mark,
                                 GError **error);

void bw_cause_case_standard (BwColourSystem system, BwSignal signal, BwSyncKind sync,
                             BwConductor conductor, BwCauseCase *c);
void bw_cause_case_of_input (const BwSource *source, const BwInput *input,
                             const BwRaster *raster, BwSyncKind sync, BwConductor conductor,
                             BwCauseCase *c);
void bw_cause_case_time (BwCauseCase *c, const BwRaster *raster);

guint bw_cause_expected (const BwCauseCase *c, BwRange expected[BW_N_SCOPE_READINGS]);
GArray *bw_causes (const BwCauseCase *c, const BwScopeReadings *readings);
char *bw_cause_decider_says (const BwCauseCase *c, const BwScopeReadings *readings,
                             const BwCause *first, const BwCause *other, char mark);
char *bw_cause_says (const BwCauseCase *c, const BwScopeReadings *readings, const BwCause *cause,
                     char mark);
const char *bw_cause_fit_words (const BwCause *cause, gboolean first);

G_END_DECLS
