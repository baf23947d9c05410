/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cause-private.h"

#include <math.h>

/* Faults whose size the readings tell: a load, a driver, a gain. They agree with much, so that each
 * counts against itself more than a fault of a given size does. */

#define PENALTY_PART 4.5
#define PENALTY_ALL 6.0

/* Ratios beyond these are no gain that is off, but something else. */
#define RATIO_MIN 0.2
#define RATIO_MAX 5.0

/* A load that comes of a termination left out, and the drivers of logic, in ohms (common practice, no
 * source). */
#define OPEN_LOAD_MIN_OHM 150.0
#define DRIVER_MIN_OHM 15.0
#define DRIVER_MAX_OHM 250.0

/* Black is nothing where there is no setup. */
#define SETUP_SHARE 0.03

/**
 * bw_fault_is_solved:
 *
 * Returns: whether the size of the fault comes of the readings that it is to explain
 */
gboolean
bw_fault_is_solved (BwFaultKind kind)
{
  return kind >= BW_FAULT_OTHER_LOAD && kind < BW_N_FAULTS;
}

/* What was read against what should be; zero where that says nothing. */
static double
ratio_of (const BwScopeReadings *readings, const BwPrediction *right, BwScopeReading reading)
{
  BwRange at = right->at[reading];
  double least_v = SETUP_SHARE * fabs (right->at[BW_SCOPE_WHITE].high);

  if (!(readings->given & right->predicts & BW_BIT (reading)) || at.low < at.high
      || !(at.high > least_v && at.high > 0))
    return 0;
  return readings->at[reading] / at.high;
}

/* The geometric mean over all amplitudes that were read; zero if one of them is not positive. */
static double
ratio_of_all (const BwScopeReadings *readings, const BwPrediction *right)
{
  static const BwScopeReading levels[]
      = { BW_SCOPE_SYNC, BW_SCOPE_WHITE, BW_SCOPE_BLACK, BW_SCOPE_BURST };
  double sum = 0;
  guint n = 0;

  for (gsize i = 0; i < G_N_ELEMENTS (levels); i++)
    {
      double ratio = ratio_of (readings, right, levels[i]);
      gboolean given = (readings->given & right->predicts & BW_BIT (levels[i])) != 0;
      if (given && readings->at[levels[i]] < 0)
        return 0;
      if (!(ratio > 0))
        continue;
      sum += log (ratio);
      n++;
    }
  return n > 0 ? exp (sum / n) : 0;
}

static void
add (const BwCauseCase *c, double penalty, BwFault fault, GArray *hypotheses)
{
  BwHypothesis h;

  if (!(fault.ratio >= RATIO_MIN && fault.ratio <= RATIO_MAX))
    return;
  bw_hypothesis_init (c, &h);
  bw_hypothesis_apply (&fault, &h);
  h.penalty = penalty;
  h.faults[h.n_faults++] = fault;
  g_array_append_val (hypotheses, h);
}

/* What drives the load: source or driver, and what stands in the lead. */
static double
behind_ohm (const BwCauseCase *c)
{
  if (bw_conductor_is_sync_alone (c->conductor))
    return c->sync_ohm + c->series_ohm;
  return c->pad_ratio < 1 ? BW_VIDEO_OHM : c->source_ohm;
}

/* The divider of source and load: V ~ R / (R + Rs). */
static void
add_load (const BwCauseCase *c, double ratio, GArray *hypotheses)
{
  double rs_ohm = behind_ohm (c);
  double share = ratio * c->load_ohm / (c->load_ohm + rs_ohm);

  if (!(rs_ohm > 0) || !(share < 1))
    return;
  double ohm = share * rs_ohm / (1 - share);
  if (bw_conductor_is_sync_alone (c->conductor)
      || (ohm > OPEN_LOAD_MIN_OHM && c->load_ohm <= BW_ONE_LOAD_MAX_OHM))
    add (c, PENALTY_ALL, (BwFault){ .kind = BW_FAULT_OTHER_LOAD, .ohm = ohm, .ratio = ratio },
         hypotheses);
}

/* Logic straight into one 75 Ω: the level tells what its driver has. */
static void
add_driver (const BwCauseCase *c, const BwScopeReadings *readings, double ratio, GArray *hypotheses)
{
  double open_v = bw_open_v (c->form.own_sync_v, c->sync_stated, c->sync_ohm);
  double read_v = readings->at[BW_SCOPE_SYNC];
  gboolean wrong_end = c->load_ohm > BW_ONE_LOAD_MAX_OHM || c->series_ohm > 0;

  if (c->sync_stated != BW_LOAD_OPEN || !wrong_end || !(read_v > 0 && read_v < open_v))
    return;
  double ohm = BW_VIDEO_OHM * (open_v / read_v - 1);
  if (ohm > DRIVER_MIN_OHM && ohm < DRIVER_MAX_OHM)
    add (c, PENALTY_PART, (BwFault){ .kind = BW_FAULT_OTHER_DRIVER, .ohm = ohm, .ratio = ratio },
         hypotheses);
}

/* One level alone is off: something else must have been read that is not. */
static void
add_parts (const BwCauseCase *c, const BwScopeReadings *readings, const BwPrediction *right,
           GArray *hypotheses)
{
  const struct
  {
    BwScopeReading reading;
    BwFaultKind kind;
  } parts[] = { { BW_SCOPE_WHITE, BW_FAULT_PICTURE_GAIN },
                { BW_SCOPE_SYNC, BW_FAULT_SYNC_GAIN },
                { BW_SCOPE_BURST, BW_FAULT_BURST_GAIN } };
  double ratio[G_N_ELEMENTS (parts)];
  guint n = 0;

  for (gsize i = 0; i < G_N_ELEMENTS (parts); i++)
    {
      ratio[i] = ratio_of (readings, right, parts[i].reading);
      n += ratio[i] > 0;
    }
  for (gsize i = 0; i < G_N_ELEMENTS (parts) && n > 1; i++)
    add (c, PENALTY_PART, (BwFault){ .kind = parts[i].kind, .ratio = ratio[i] }, hypotheses);
}

/**
 * bw_hypotheses_add_solved:
 * @hypotheses: (element-type BwHypothesis): receives single faults, of the size that @readings tell
 */
void
bw_hypotheses_add_solved (const BwCauseCase *c, const BwScopeReadings *readings, GArray *hypotheses)
{
  g_return_if_fail (c != NULL && readings != NULL && hypotheses != NULL);
  BwHypothesis h;
  BwPrediction right;

  bw_hypothesis_init (c, &h);
  bw_hypothesis_predict (c, readings, &h, &right);
  double ratio = ratio_of_all (readings, &right);
  if (!(ratio > 0))
    return;
  add_load (c, ratio, hypotheses);
  if (bw_conductor_is_sync_alone (c->conductor))
    add_driver (c, readings, ratio, hypotheses);
  else
    {
      add (c, PENALTY_ALL, (BwFault){ .kind = BW_FAULT_GAIN, .ratio = ratio }, hypotheses);
      add_parts (c, readings, &right, hypotheses);
    }
}
