/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cause-private.h"

#include <math.h>

/* How far a prediction lies from the readings. */

/* Small levels are read as a share of white or sync at the least: a third of what a level is read to
 * (common practice, no source). */
#define READ_FLOOR_OF_SHARE (1 / 3.0)
#define READ_DC_FLOOR 0.02
#define READ_TILT_SHARE 0.1
#define READ_TILT_FLOOR 0.01
#define READ_POLARITY 0.1

/* Two circuits nearer than this to each other are not told apart: each may be off by the error of
 * the reading. */
#define ALIKE 1.5

/* How far apart a reading of @size may lie from the truth, by the instrument. */
static double
by_instrument (const BwScopeReadings *readings, BwScopeReading reading, double size, double scale_v)
{
  double share = readings->accuracy > 0 ? readings->accuracy : BW_SCOPE_ACCURACY;

  switch (reading)
    {
    case BW_SCOPE_POLARITY:
      return READ_POLARITY;
    case BW_SCOPE_LINE_TILT:
    case BW_SCOPE_FIELD_TILT:
      return MAX (READ_TILT_SHARE * size, READ_TILT_FLOOR);
    case BW_SCOPE_DC:
      return MAX (share * size, READ_DC_FLOOR * scale_v);
    case BW_SCOPE_SYNC:
    case BW_SCOPE_WHITE:
    case BW_SCOPE_BLACK:
    case BW_SCOPE_BURST:
    case BW_N_SCOPE_READINGS:
    default:
      return MAX (share * size, share * READ_FLOOR_OF_SHARE * scale_v);
    }
}

/* The same, or what the digits of the reading leave open if that is more. */
static double
uncertainty (const BwScopeReadings *readings, BwScopeReading reading, double size, double scale_v)
{
  return MAX (by_instrument (readings, reading, size, scale_v), readings->half_digit[reading]);
}

/* Between two ranges, in the uncertainty of the reading. */
static double
distance (const BwScopeReadings *readings, BwScopeReading reading, BwRange a, BwRange b,
          double scale_v)
{
  gboolean a_above = a.low > b.high;
  double from = a_above ? a.low : a.high;
  double to = a_above ? b.high : b.low;
  double unit = uncertainty (readings, reading, MAX (fabs (from), fabs (to)), scale_v);

  if (from > to && !a_above)
    return 0;
  return fabs (from / unit - to / unit);
}

static gboolean
is_level (BwScopeReading reading)
{
  return reading != BW_SCOPE_POLARITY
         && bw_scope_reading_dimension (reading) == BW_DIMENSION_VOLTAGE;
}

/* What @prediction allows of @reading: a level may be that of any preferred values. */
static BwRange
allowed_by (const BwPrediction *prediction, BwScopeReading reading)
{
  BwRange at = prediction->at[reading], spread = prediction->spread;

  if (!is_level (reading))
    return at;
  return (BwRange){ MIN (at.low * spread.low, at.low * spread.high),
                    MAX (at.high * spread.low, at.high * spread.high) };
}

static double
reading_distance (const BwScopeReadings *readings, BwScopeReading reading,
                  const BwPrediction *prediction, double scale_v)
{
  BwRange read = { readings->at[reading], readings->at[reading] };
  return distance (readings, reading, read, allowed_by (prediction, reading), scale_v);
}

/**
 * bw_score_agrees:
 *
 * Returns: whether @reading was read and agrees with @prediction within its uncertainty
 */
gboolean
bw_score_agrees (const BwScopeReadings *readings, BwScopeReading reading,
                 const BwPrediction *prediction, double scale_v)
{
  return (readings->given & prediction->predicts & BW_BIT (reading))
         && reading_distance (readings, reading, prediction, scale_v) <= 1;
}

/**
 * bw_score_hold:
 * @cause: receives the prediction, and the reading that agrees least
 *
 * Returns: the sum of the squared deviations, each in the uncertainty of its reading
 */
double
bw_score_hold (const BwScopeReadings *readings, const BwPrediction *prediction, double scale_v,
               BwCause *cause)
{
  double sum = 0;

  cause->predicts = prediction->predicts;
  for (guint i = 0; i < BW_N_SCOPE_READINGS; i++)
    {
      cause->predicted[i] = prediction->at[i];
      if (!(readings->given & prediction->predicts & BW_BIT (i)))
        continue;
      double deviation = reading_distance (readings, i, prediction, scale_v);
      sum += deviation * deviation;
      if (deviation >= cause->deviation)
        {
          cause->deviation = deviation;
          cause->worst = i;
        }
    }
  return sum;
}

/**
 * bw_score_same:
 *
 * Returns: whether both say the very same of what was read
 */
gboolean
bw_score_same (const BwScopeReadings *readings, const BwPrediction *a, const BwPrediction *b,
               double scale_v)
{
  if ((a->predicts & readings->given) != (b->predicts & readings->given))
    return FALSE;
  for (guint i = 0; i < BW_N_SCOPE_READINGS; i++)
    {
      BwRange of_a = allowed_by (a, i), of_b = allowed_by (b, i);
      if ((a->predicts & readings->given & BW_BIT (i))
          && (fabs (of_a.low - of_b.low) > 1e-9 * scale_v
              || fabs (of_a.high - of_b.high) > 1e-9 * scale_v))
        return FALSE;
    }
  return TRUE;
}

/**
 * bw_score_told_apart:
 *
 * Returns: whether what was read decides between the two
 */
gboolean
bw_score_told_apart (const BwScopeReadings *readings, const BwPrediction *a, const BwPrediction *b,
                     double scale_v)
{
  guint both = readings->given & a->predicts & b->predicts;
  for (guint i = 0; i < BW_N_SCOPE_READINGS; i++)
    if ((both & BW_BIT (i))
        && distance (readings, i, allowed_by (a, i), allowed_by (b, i), scale_v) > ALIKE)
      return TRUE;
  return FALSE;
}

/* What a standard allows the reading to be, of the conductors that it speaks of. */
static gboolean
standard_allows (const BwCauseCase *c, BwScopeReading reading, BwRange *allowed)
{
  static const BwReadingKind kinds[BW_N_SCOPE_READINGS] = {
    [BW_SCOPE_SYNC] = BW_READING_SYNC_LEVEL,
    [BW_SCOPE_WHITE] = BW_READING_WHITE_LEVEL,
    [BW_SCOPE_BLACK] = BW_READING_SETUP_LEVEL,
    [BW_SCOPE_BURST] = BW_READING_BURST_LEVEL,
  };
  gboolean video = c->conductor == BW_CONDUCTOR_VIDEO && c->form.signal != BW_SIGNAL_RGB;
  gboolean luma = c->conductor == BW_CONDUCTOR_Y && c->form.signal == BW_SIGNAL_YC;
  gboolean burst = c->conductor == BW_CONDUCTOR_C && reading == BW_SCOPE_BURST;

  if (c->limits == NULL || kinds[reading] == 0 || !(video || luma || burst))
    return FALSE;
  if (c->limits->at[kinds[reading]].n < 2)
    return FALSE;
  *allowed = c->limits->at[kinds[reading]].at[1];
  return TRUE;
}

/**
 * bw_score_within:
 * @right: what should be there; where that lies outside of the standard, the standard does not
 *   judge
 *
 * Returns: whether the standard, or else the uncertainty of the scope, allows all that was read
 */
gboolean
bw_score_within (const BwCauseCase *c, const BwScopeReadings *readings, const BwPrediction *right,
                 double scale_v)
{
  for (guint i = 0; i < BW_N_SCOPE_READINGS; i++)
    {
      BwRange allowed;
      if (!(readings->given & right->predicts & BW_BIT (i)))
        continue;
      if (standard_allows (c, i, &allowed) && right->at[i].low >= allowed.low
          && right->at[i].high <= allowed.high)
        {
          if (readings->at[i] < allowed.low || readings->at[i] > allowed.high)
            return FALSE;
        }
      else if (reading_distance (readings, i, right, scale_v) > 1)
        return FALSE;
    }
  return TRUE;
}

/**
 * bw_score_scale_v:
 *
 * Returns: white or sync, whichever is more, against which small levels are read
 */
double
bw_score_scale_v (const BwPrediction *right)
{
  double white_v = fabs (right->at[BW_SCOPE_WHITE].high);
  return MAX (MAX (white_v, right->at[BW_SCOPE_SYNC].high), 1e-3);
}
