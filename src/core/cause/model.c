/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cause-private.h"

#include <math.h>

/* What a circuit gives at the scope. */

/* The load looks back into a matched attenuator, or else into the source. */
static double
output_ohm (const BwHypothesis *h)
{
  if (bw_conductor_is_sync_alone (h->conductor))
    return h->sync_ohm;
  return h->pad_ratio < 1 ? BW_VIDEO_OHM : h->source_ohm;
}

/**
 * bw_hypothesis_gain:
 *
 * Returns: the level at the load against the level as stated
 */
double
bw_hypothesis_gain (const BwHypothesis *h)
{
  gboolean own = bw_conductor_is_sync_alone (h->conductor);
  double end_ohm = h->load_ohm + h->series_ohm;

  if (h->load_ohm <= 0)
    return 0;
  return h->gain_sign * h->level_gain * h->pad_ratio
         * bw_level_at_load (1, own ? h->sync_stated : BW_LOAD_75_OHM, output_ohm (h), end_ohm)
         * h->load_ohm / end_ohm;
}

static gboolean
levels_of (const BwHypothesis *h, BwWireLevels *levels)
{
  BwWireLevels all[BW_N_CONDUCTORS];
  BwWireForm form = h->form;
  form.own_logic = FALSE; /* predict_dc() has where logic rests */
  guint n = bw_wire_levels (&form, all);

  for (guint i = 0; i < n; i++)
    if (all[i].conductor == h->conductor)
      {
        *levels = all[i];
        return TRUE;
      }
  return FALSE;
}

/* A picture that does not reach full white and colour keeps its black. */
static void
scale_picture (double picture, BwWireLevels *levels)
{
  levels->white_v = levels->black_v + picture * (levels->white_v - levels->black_v);
  levels->lowest_v = levels->black_v + picture * (levels->lowest_v - levels->black_v);
}

static void
predict (BwPrediction *prediction, BwScopeReading reading, double low, double high)
{
  prediction->predicts |= BW_BIT (reading);
  prediction->at[reading].low = MIN (low, high);
  prediction->at[reading].high = MAX (low, high);
}

static void
predict_one (BwPrediction *prediction, BwScopeReading reading, double value)
{
  predict (prediction, reading, value, value);
}

/* The texts do not agree on the burst of every system: then nothing is said of it. */
static gboolean
burst_is_known (const BwHypothesis *h, const BwWireLevels *levels)
{
  gboolean may_carry = h->conductor == BW_CONDUCTOR_C
                       || (h->conductor == BW_CONDUCTOR_VIDEO
                           && h->form.signal != BW_SIGNAL_LUMA);
  return levels->burst_pp_v > 0 || !may_carry;
}

static void
predict_levels (const BwHypothesis *h, const BwWireLevels *levels, BwPrediction *prediction)
{
  double gain = prediction->gain;
  double sync_v = fabs (gain) * h->sync_gain * (levels->sync_high_v - levels->sync_low_v);
  gboolean downwards = levels->sync_low_v < 0;

  predict_one (prediction, BW_SCOPE_SYNC, sync_v);
  if (sync_v > 0)
    predict_one (prediction, BW_SCOPE_POLARITY, downwards == (gain > 0) ? -1 : 1);
  predict_one (prediction, BW_SCOPE_WHITE, gain * levels->white_v);
  predict_one (prediction, BW_SCOPE_BLACK, gain * levels->black_v);
  if (burst_is_known (h, levels))
    predict_one (prediction, BW_SCOPE_BURST, fabs (gain) * h->burst_gain * levels->burst_pp_v);
}

/* Behind a capacitor the mean of the waveform is zero, so blanking stands at minus what picture and
 * sync make of it: from a white picture to a black one. */
static void
predict_floating (const BwCauseCase *c, const BwWireLevels *levels, BwPrediction *prediction)
{
  double sync_v = c->sync_share * (levels->sync_low_v + levels->sync_high_v);
  double most_v = levels->white_v, least_v = levels->black_v;

  if (levels->conductor == BW_CONDUCTOR_PB || levels->conductor == BW_CONDUCTOR_PR)
    least_v = levels->lowest_v;
  if (levels->conductor == BW_CONDUCTOR_C)
    most_v = 0;
  predict (prediction, BW_SCOPE_DC, -prediction->gain * (c->picture_share * most_v + sync_v),
           -prediction->gain * (c->picture_share * least_v + sync_v));
}

/* Logic rests at its supply where the pulses go down, and at zero where they go up. */
static void
predict_dc (const BwCauseCase *c, const BwHypothesis *h, const BwWireLevels *levels,
            BwPrediction *prediction)
{
  gboolean own = bw_conductor_is_sync_alone (h->conductor);
  gboolean logic = own && h->sync_stated == BW_LOAD_OPEN;
  double size = fabs (prediction->gain);

  if (h->any_dc)
    return;
  if (h->coupling == BW_COUPLING_AC)
    predict_floating (c, levels, prediction);
  else if (logic)
    predict_one (prediction, BW_SCOPE_DC,
                 prediction->at[BW_SCOPE_POLARITY].low < 0 ? prediction->at[BW_SCOPE_SYNC].low
                                                           : 0);
  else
    predict_one (prediction, BW_SCOPE_DC, own ? 0 : size * c->dc_v);
}

static double
loop_ohm (const BwCauseCase *c, const BwHypothesis *h)
{
  if (c->coupling_ohm > 0)
    return c->coupling_ohm;
  return output_ohm (h) + h->series_ohm + h->load_ohm;
}

/* A white field, which is what a tilt is read on. */
static BwSteadyPicture
white_field (const BwCauseCase *c, const BwWireLevels *levels)
{
  return (BwSteadyPicture){ .time = c->time,
                            .white_share = 1,
                            .white_v = levels->white_v,
                            .black_v = levels->black_v,
                            .sync_v = levels->sync_low_v + levels->sync_high_v };
}

/* The capacitor that the tilt tells of: that over the field where it was read, else that over the
 * line; zero: none that gives it. */
static double
farad_of_tilt (const BwScopeReadings *readings, const BwSteadyPicture *picture, double ohm)
{
  const struct
  {
    BwScopeReading reading;
    double (*farad) (const BwSteadyPicture *, double, double);
  } tilts[] = { { BW_SCOPE_FIELD_TILT, bw_coupling_farad_of_field_tilt },
                { BW_SCOPE_LINE_TILT, bw_coupling_farad_of_line_tilt } };

  for (guint i = 0; i < G_N_ELEMENTS (tilts); i++)
    {
      double tilt = readings->at[tilts[i].reading];
      if ((readings->given & BW_BIT (tilts[i].reading)) && tilt > 1e-6 && tilt < 1 - 1e-6)
        return tilts[i].farad (picture, ohm, tilt);
    }
  return 0;
}

/* A subcarrier goes through any such capacitor as it is, and sync alone has no white. */
static void
predict_tilt (const BwCauseCase *c, const BwScopeReadings *readings, const BwWireLevels *levels,
              BwHypothesis *h, BwPrediction *prediction)
{
  double ohm = loop_ohm (c, h);
  const BwSteadyPicture picture = white_field (c, levels);
  BwTilt tilt;

  if (!(c->time.active_s > 0) || bw_conductor_is_sync_alone (h->conductor)
      || h->conductor == BW_CONDUCTOR_C || !(fabs (prediction->gain) > 0))
    return;
  if (h->coupling == BW_COUPLING_DC)
    {
      predict_one (prediction, BW_SCOPE_LINE_TILT, 0);
      predict_one (prediction, BW_SCOPE_FIELD_TILT, 0);
      return;
    }
  if (!(h->capacitor_f > 0))
    h->capacitor_f = farad_of_tilt (readings, &picture, ohm);
  if (!(h->capacitor_f > 0))
    return;
  bw_coupling_tilt (&picture, ohm, h->capacitor_f, &tilt);
  predict_one (prediction, BW_SCOPE_LINE_TILT, tilt.line);
  predict_one (prediction, BW_SCOPE_FIELD_TILT, tilt.field);
}

/**
 * bw_hypothesis_predict:
 * @h: its capacitor is filled in where the tilt in @readings tells it
 * @prediction: (out caller-allocates): every reading that the circuit decides, by the divider of
 *   source, attenuator and load; and by the zero mean and the time constant of a capacitor
 */
void
bw_hypothesis_predict (const BwCauseCase *c, const BwScopeReadings *readings, BwHypothesis *h,
                       BwPrediction *prediction)
{
  BwWireLevels levels;

  *prediction = (BwPrediction){ .spread = h->spread };
  if (!levels_of (h, &levels))
    return;
  scale_picture (h->picture, &levels);
  prediction->gain = bw_hypothesis_gain (h);
  predict_levels (h, &levels, prediction);
  predict_dc (c, h, &levels, prediction);
  predict_tilt (c, readings, &levels, h, prediction);
}
