/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cause-private.h"

#include <math.h>

#include <glib/gi18n-lib.h>

/* Which of the circuits agrees with the readings. */

static const BwKind scope_readings[BW_N_SCOPE_READINGS] = {
  [BW_SCOPE_SYNC] = { "sync_v", N_ ("Sync") },
  [BW_SCOPE_POLARITY] = { "sync_polarity", N_ ("Sync polarity") },
  [BW_SCOPE_WHITE] = { "white_v", N_ ("White") },
  [BW_SCOPE_BLACK] = { "black_v", N_ ("Black") },
  [BW_SCOPE_BURST] = { "burst_pp_v", N_ ("Burst") },
  [BW_SCOPE_DC] = { "dc_v", N_ ("D.c. at blanking") },
  [BW_SCOPE_LINE_TILT] = { "line_tilt", N_ ("Line tilt") },
  [BW_SCOPE_FIELD_TILT] = { "field_tilt", N_ ("Field tilt") },
};
const BwKindTable bw_scope_readings = { BW_N_SCOPE_READINGS, scope_readings };

static const BwKind faults[BW_N_FAULTS] = {
  [BW_FAULT_NONE] = { "none", N_ ("As it should be") },
  [BW_FAULT_UNTERMINATED] = { "unterminated", N_ ("Not terminated") },
  [BW_FAULT_TERMINATED] = { "terminated", N_ ("Terminated") },
  [BW_FAULT_TWO_LOADS] = { "two-loads", N_ ("Terminated twice") },
  [BW_FAULT_THREE_LOADS] = { "three-loads", N_ ("Terminated three times") },
  [BW_FAULT_50_OHM] = { "50-ohm", N_ ("50 Ω load") },
  [BW_FAULT_NO_SIGNAL] = { "no-signal", N_ ("No signal") },
  [BW_FAULT_OTHER_LEVELS] = { "other-levels", N_ ("Levels of another standard") },
  [BW_FAULT_SETUP_ADDED] = { "setup-added", N_ ("Setup that should not be there") },
  [BW_FAULT_SETUP_MISSING] = { "setup-missing", N_ ("Setup missing") },
  [BW_FAULT_OTHER_DRIVE] = { "other-drive", N_ ("Another sync drive") },
  [BW_FAULT_BARS_75] = { "bars-75", N_ ("Bars of 75 %") },
  [BW_FAULT_INVERTED] = { "inverted", N_ ("Upside down") },
  [BW_FAULT_OTHER_CONDUCTOR] = { "other-conductor", N_ ("Conductors exchanged") },
  [BW_FAULT_OTHER_SYNC] = { "other-sync", N_ ("Sync on another conductor") },
  [BW_FAULT_ATTENUATOR_MISSING] = { "attenuator-missing", N_ ("Attenuator missing") },
  [BW_FAULT_ATTENUATOR_ADDED] = { "attenuator-added", N_ ("Attenuator in the lead") },
  [BW_FAULT_AC_COUPLED] = { "ac-coupled", N_ ("A.c. coupled without a clamp") },
  [BW_FAULT_OTHER_CAPACITOR] = { "other-capacitor", N_ ("Coupling capacitor has changed") },
  [BW_FAULT_DC_OFFSET] = { "dc-offset", N_ ("D.c. on the line") },
  [BW_FAULT_OTHER_LOAD] = { "other-load", N_ ("Another load") },
  [BW_FAULT_OTHER_DRIVER] = { "no-resistor", N_ ("One load without its resistor") },
  [BW_FAULT_GAIN] = { "gain", N_ ("Gain of everything") },
  [BW_FAULT_PICTURE_GAIN] = { "picture-gain", N_ ("Gain of the picture alone") },
  [BW_FAULT_SYNC_GAIN] = { "sync-gain", N_ ("Sync compressed or raised") },
  [BW_FAULT_BURST_GAIN] = { "burst-gain", N_ ("High frequencies lost or raised") },
};
const BwKindTable bw_faults = { BW_N_FAULTS, faults };

/* Beyond this deviation a circuit does not explain a reading. */
#define EXPLAINS 2.0
#define MOST_CAUSES 12

typedef struct
{
  BwCause cause;
  double score; /* sum of squared deviations, and the penalty */
  BwPrediction prediction;
} Candidate;

/**
 * bw_scope_reading_dimension:
 *
 * Returns: what the reading measures; a polarity is a plain 1 or −1
 */
BwDimension
bw_scope_reading_dimension (BwScopeReading reading)
{
  if (reading == BW_SCOPE_LINE_TILT || reading == BW_SCOPE_FIELD_TILT)
    return BW_DIMENSION_FRACTION;
  return BW_DIMENSION_VOLTAGE;
}

static gboolean
is_amplitude (BwScopeReading reading)
{
  return reading == BW_SCOPE_SYNC || reading == BW_SCOPE_BURST;
}

/**
 * bw_scope_reading_allows:
 *
 * Returns: (transfer none): what bw_scope_readings_set() takes, in words
 */
const char *
bw_scope_reading_allows (BwScopeReading reading)
{
  g_return_val_if_fail (reading < BW_N_SCOPE_READINGS, NULL);
  if (bw_scope_reading_dimension (reading) == BW_DIMENSION_FRACTION)
    return _ ("a tilt is a share from 0 % to 100 %");
  if (reading == BW_SCOPE_SYNC)
    return _ ("an amplitude is positive, up to 600 V: enter the polarity apart");
  if (is_amplitude (reading))
    return _ ("an amplitude is positive, up to 600 V");
  return _ ("a scope reads from −600 V to 600 V");
}

/**
 * bw_scope_readings_set:
 * @value: of a tilt from 0 to 1, of sync and burst from 0 to %BW_SCOPE_MOST, else from
 *   −%BW_SCOPE_MOST to %BW_SCOPE_MOST
 *
 * Returns: %FALSE, with nothing set, if @value lies outside or is no number
 */
gboolean
bw_scope_readings_set (BwScopeReadings *readings, BwScopeReading reading, double value)
{
  g_return_val_if_fail (readings != NULL && reading < BW_N_SCOPE_READINGS, FALSE);
  gboolean tilt = bw_scope_reading_dimension (reading) == BW_DIMENSION_FRACTION;
  double least = tilt || is_amplitude (reading) ? 0 : -BW_SCOPE_MOST;
  double most = tilt ? 1 : BW_SCOPE_MOST;

  if (!(value >= least && value <= most))
    return FALSE;
  readings->given |= BW_BIT (reading);
  readings->at[reading] = value;
  readings->half_digit[reading] = 0;
  return TRUE;
}

/* What one IRE unit is on the conductor; zero where it has none. */
static double
volts_per_ire (const BwCauseCase *c)
{
  BwWireLevels levels[BW_N_CONDUCTORS];
  guint n = bw_wire_levels (&c->form, levels);
  for (guint i = 0; i < n; i++)
    if (levels[i].conductor == c->conductor)
      return levels[i].volts_per_ire;
  return 0;
}

/**
 * bw_scope_readings_read:
 * @c: of which conductor; tells what an IRE unit is
 * @text: a quantity; its digits tell how well it is read
 *
 * Returns: %FALSE with @error in %BW_QUANTITY_ERROR or %BW_FIELD_ERROR, and nothing set
 */
gboolean
bw_scope_readings_read (BwScopeReadings *readings, const BwCauseCase *c, BwScopeReading reading,
                        const char *text, char mark, GError **error)
{
  g_return_val_if_fail (readings != NULL && c != NULL && reading < BW_N_SCOPE_READINGS, FALSE);
  const BwReadAs as = { .mark = mark, .volts_per_ire = volts_per_ire (c) };
  BwMeasured measured;

  if (!bw_quantity_read (text, bw_scope_reading_dimension (reading), &as, &measured, error))
    return FALSE;
  if (!bw_scope_readings_set (readings, reading, measured.value))
    {
      g_set_error (error, BW_FIELD_ERROR, BW_FIELD_ERROR_RANGE, "“%s”: %s", text,
                   bw_scope_reading_allows (reading));
      return FALSE;
    }
  readings->half_digit[reading] = measured.half_digit;
  return TRUE;
}

/* TRUE for "no signal arrives" if a polarity or a tilt was read: both need a signal. */
static gboolean
is_refuted (const BwScopeReadings *readings, const BwHypothesis *h)
{
  const guint tilts[] = { BW_SCOPE_LINE_TILT, BW_SCOPE_FIELD_TILT };

  if (h->faults[0].kind != BW_FAULT_NO_SIGNAL)
    return FALSE;
  for (guint i = 0; i < G_N_ELEMENTS (tilts); i++)
    if ((readings->given & BW_BIT (tilts[i])) && readings->at[tilts[i]] > 0)
      return TRUE;
  return (readings->given & BW_BIT (BW_SCOPE_POLARITY)) != 0;
}

static void
fill_faults (const BwHypothesis *h, BwCause *cause)
{
  cause->known = TRUE;
  cause->n_faults = h->n_faults;
  for (guint i = 0; i < h->n_faults; i++)
    {
      BwFaultKind kind = h->faults[i].kind;
      cause->faults[i] = h->faults[i];
      if (kind == BW_FAULT_AC_COUPLED || kind == BW_FAULT_OTHER_CAPACITOR)
        cause->faults[i].farad = h->capacitor_f;
    }
}

/* A load or a gain of any size agrees with all that a fault of a given size explains: it is not named
 * beside that. */
static void
drop_loose (GArray *candidates)
{
  for (guint i = candidates->len; i-- > 0;)
    {
      BwFaultKind kind = g_array_index (candidates, Candidate, i).cause.faults[0].kind;
      if (kind == BW_FAULT_GAIN || kind == BW_FAULT_OTHER_LOAD)
        g_array_remove_index (candidates, i);
    }
}

/* All single faults and pairs of faults that explain what was read, and that do not give the readings
 * of the right circuit. A pair is taken only if it does so better than every single fault and than
 * @best; if a single fault agrees with every reading within its uncertainty, no pair is taken. */
static GArray *
candidates_new (const BwCauseCase *c, const BwScopeReadings *readings, const BwPrediction *right,
                double scale_v, double best)
{
  GArray *candidates = g_array_new (FALSE, FALSE, sizeof (Candidate));
  g_autoptr (GArray) hypotheses = bw_hypotheses_new (c);
  bw_hypotheses_add_solved (c, readings, hypotheses);
  gboolean right_dc = bw_score_agrees (readings, BW_SCOPE_DC, right, scale_v);

  for (guint i = 0; i < hypotheses->len; i++)
    {
      BwHypothesis *h = &g_array_index (hypotheses, BwHypothesis, i);
      Candidate candidate = { 0 };
      bw_hypothesis_predict (c, readings, h, &candidate.prediction);
      fill_faults (h, &candidate.cause);
      if (candidate.prediction.predicts == 0 || (h->any_dc && right_dc) || is_refuted (readings, h)
          || bw_score_same (readings, right, &candidate.prediction, scale_v))
        continue;
      candidate.score = h->penalty
                        + bw_score_hold (readings, &candidate.prediction, scale_v,
                                         &candidate.cause);
      if (candidate.cause.deviation > EXPLAINS || (h->n_faults > 1 && candidate.score >= best))
        continue;
      if (h->n_faults == 1)
        best = MIN (best, candidate.cause.deviation <= 1 && !bw_fault_is_solved (h->faults[0].kind)
                              ? 0
                              : candidate.score);
      g_array_append_val (candidates, candidate);
    }
  if (best <= 0)
    drop_loose (candidates);
  return candidates;
}

static int
compare_scores (gconstpointer a, gconstpointer b)
{
  double first = ((const Candidate *) a)->score;
  double second = ((const Candidate *) b)->score;
  return (first > second) - (first < second);
}

/* Turns scores into shares that add up to 1: a score is a sum of squared deviations, so that with
 * normally distributed errors of reading its likelihood goes as exp (−score / 2). */
static void
share_out (const BwScopeReadings *readings, GArray *candidates, double scale_v)
{
  const Candidate *first = &g_array_index (candidates, Candidate, 0);
  double sum = 0;

  for (guint i = 0; i < candidates->len; i++)
    {
      Candidate *candidate = &g_array_index (candidates, Candidate, i);
      candidate->cause.share = exp ((first->score - candidate->score) / 2);
      sum += candidate->cause.share;
      candidate->cause.alike = i > 0
                               && !bw_score_told_apart (readings, &first->prediction,
                                                        &candidate->prediction, scale_v);
    }
  for (guint i = 0; i < candidates->len; i++)
    g_array_index (candidates, Candidate, i).cause.share /= sum;
}

static GArray *
causes_of (const GArray *candidates)
{
  GArray *causes = g_array_new (FALSE, FALSE, sizeof (BwCause));
  for (guint i = 0; i < candidates->len; i++)
    g_array_append_val (causes, g_array_index (candidates, Candidate, i).cause);
  return causes;
}

/* A copy without the values that bw_scope_readings_set() refuses. */
static BwScopeReadings
sound_readings (const BwScopeReadings *readings)
{
  BwScopeReadings sound = { .accuracy = readings->accuracy };
  for (guint i = 0; i < BW_N_SCOPE_READINGS; i++)
    if (readings->given & BW_BIT (i))
      {
        bw_scope_readings_set (&sound, i, readings->at[i]);
        sound.half_digit[i] = readings->half_digit[i];
      }
  return sound;
}

/**
 * bw_cause_expected:
 * @expected: (out): what each reading should be
 *
 * Returns: the set of BwScopeReading that the conductor of @c decides
 */
guint
bw_cause_expected (const BwCauseCase *c, BwRange expected[BW_N_SCOPE_READINGS])
{
  g_return_val_if_fail (c != NULL && expected != NULL, 0);
  const BwScopeReadings none = { 0 };
  BwHypothesis h;
  BwPrediction right;

  bw_hypothesis_init (c, &h);
  bw_hypothesis_predict (c, &none, &h, &right);
  for (guint i = 0; i < BW_N_SCOPE_READINGS; i++)
    expected[i] = right.at[i];
  return right.predicts;
}

/* Several circuits may be right. Predicts by the first that agrees with what was read and returns
 * TRUE, or by the first of all if none agrees. */
static gboolean
predict_right (const BwCauseCase *c, const BwScopeReadings *readings, BwPrediction *prediction)
{
  BwPrediction first;

  for (guint i = 0; i <= c->n_others; i++)
    {
      BwHypothesis h;
      bw_hypothesis_init (c, &h);
      if (i > 0)
        {
          h.load_ohm = c->other[i - 1].load_ohm;
          h.series_ohm = c->other[i - 1].series_ohm;
          h.spread = c->other[i - 1].spread;
        }
      bw_hypothesis_predict (c, readings, &h, prediction);
      if (i == 0)
        first = *prediction;
      if (bw_score_within (c, readings, prediction, bw_score_scale_v (prediction)))
        return TRUE;
    }
  *prediction = first;
  return FALSE;
}

/**
 * bw_causes:
 * @c: what should be there
 * @readings: what was read; what is missing or says nothing of the conductor decides nothing
 *
 * A circuit is held against each reading in the uncertainty of that reading, and the squares add
 * up; a fault counts against it, two faults more. Readings that the standard or the scope's
 * uncertainty allows are as they should be.
 *
 * Returns: (transfer full) (element-type BwCause): the likeliest first, those that are told apart
 *   from it or not; one that is not known if nothing explains the readings; empty if nothing was
 *   read, the input does not take the picture, or the form does not have the conductor
 */
GArray *
bw_causes (const BwCauseCase *c, const BwScopeReadings *readings)
{
  BwScopeReadings read = sound_readings (readings);
  Candidate right = { 0 };

  g_return_val_if_fail (c != NULL && readings != NULL, NULL);
  right.cause.known = predict_right (c, &read, &right.prediction);
  if (c->refused || (read.given & right.prediction.predicts) == 0)
    return g_array_new (FALSE, FALSE, sizeof (BwCause));

  double scale_v = bw_score_scale_v (&right.prediction);
  bw_score_hold (&read, &right.prediction, scale_v, &right.cause);
  g_autoptr (GArray) candidates = candidates_new (c, &read, &right.prediction, scale_v,
                                                  right.cause.known ? 0 : INFINITY);
  if (right.cause.known || candidates->len == 0)
    g_array_append_val (candidates, right);
  g_array_sort (candidates, compare_scores);
  if (candidates->len > MOST_CAUSES)
    g_array_set_size (candidates, MOST_CAUSES);
  share_out (&read, candidates, scale_v);
  return causes_of (candidates);
}
