/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "cause.h"

G_BEGIN_DECLS

/**
 * BwHypothesis:
 * @form: what is on the wire
 * @conductor: what the wire carries
 * @load_ohm: zero: a short
 * @spread: as of BwCauseCase; one of a circuit without the attenuator that should be there
 * @picture: share of full white and colour
 * @gain_sign: −1 upside down
 * @level_gain: of every level, whatever makes it; @sync_gain and @burst_gain: of that alone
 * @penalty: what speaks against it before a reading is made, in the units of a squared deviation
 *
 * A circuit that might be there.
 */
typedef struct
{
  guint n_faults;
  BwFault faults[BW_CAUSE_MAX_FAULTS];
  BwWireForm form;
  BwConductor conductor;
  double source_ohm;
  double sync_ohm;
  BwStatedLoad sync_stated;
  double load_ohm;
  double series_ohm;
  double pad_ratio;
  BwRange spread;
  double picture;
  double gain_sign;
  double level_gain;
  double sync_gain;
  double burst_gain;
  guint coupling;
  double capacitor_f;
  gboolean any_dc;
  double penalty;
} BwHypothesis;

/**
 * BwPrediction:
 * @at: of an attenuator made of the values that are named
 * @spread: that every level may have about @at, whatever values it is made of
 *
 * What a hypothesis predicts.
 */
typedef struct
{
  guint predicts;
  BwRange at[BW_N_SCOPE_READINGS];
  BwRange spread;
  double gain;
} BwPrediction;

void bw_hypothesis_init (const BwCauseCase *c, BwHypothesis *h);
void bw_hypothesis_apply (const BwFault *fault, BwHypothesis *h);
double bw_hypothesis_gain (const BwHypothesis *h);
void bw_hypothesis_predict (const BwCauseCase *c, const BwScopeReadings *readings,
                            BwHypothesis *h, BwPrediction *prediction);
double bw_score_scale_v (const BwPrediction *right);
gboolean bw_score_agrees (const BwScopeReadings *readings, BwScopeReading reading,
                          const BwPrediction *prediction, double scale_v);
double bw_score_hold (const BwScopeReadings *readings, const BwPrediction *prediction,
                      double scale_v, BwCause *cause);
gboolean bw_score_same (const BwScopeReadings *readings, const BwPrediction *a,
                        const BwPrediction *b, double scale_v);
gboolean bw_score_told_apart (const BwScopeReadings *readings, const BwPrediction *a,
                              const BwPrediction *b, double scale_v);
gboolean bw_score_within (const BwCauseCase *c, const BwScopeReadings *readings,
                          const BwPrediction *right, double scale_v);

GArray *bw_hypotheses_new (const BwCauseCase *c);
gboolean bw_fault_is_solved (BwFaultKind kind);
void bw_hypotheses_add_solved (const BwCauseCase *c, const BwScopeReadings *readings,
                               GArray *hypotheses);

/* What a sentence is made of. */
typedef struct
{
  const BwCauseCase *c;
  const BwScopeReadings *readings;
  const BwCause *cause;
  const BwFault *fault;
  const BwPrediction *right;
  char mark;
} BwCauseWords;

char *bw_fault_says (const BwCauseWords *w);

G_END_DECLS
