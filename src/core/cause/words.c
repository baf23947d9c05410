/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cause-private.h"

#include <math.h>

#include <glib/gi18n-lib.h>

/* A cause in words. */

#define DIGITS 3

static char *
figure (BwScopeReading reading, double value, char mark)
{
  if (reading == BW_SCOPE_POLARITY)
    return g_strdup (value < 0 ? _ ("downwards") : _ ("upwards"));
  return bw_quantity_format (value, bw_scope_reading_dimension (reading), DIGITS, mark);
}

/* The reading that agrees least with what should be there. */
static char *
says_unknown (const BwScopeReadings *readings, const BwCause *cause, const BwPrediction *right,
              char mark)
{
  BwScopeReading worst = cause->worst;
  g_autofree char *read = figure (worst, readings->at[worst], mark);
  g_autofree char *expected = figure (worst, right->at[worst].high, mark);
  return g_strdup_printf (
      _ ("%1$s reads %2$s and should be %3$s: neither one fault nor two of those "
         "that are known here give these readings."),
      bw_kind_label (&bw_scope_readings, worst), read, expected);
}

/**
 * bw_cause_fit_words:
 * @first: it is the first in the list
 *
 * Returns: (transfer none): how well it fits among those listed; empty if it is not known
 */
const char *
bw_cause_fit_words (const BwCause *cause, gboolean first)
{
  g_return_val_if_fail (cause != NULL, NULL);
  if (!cause->known)
    return "";
  return first ? _ ("fits best") : cause->alike ? _ ("fits as well") : _ ("fits less");
}

/* The circuit of @cause. */
static void
circuit_of (const BwCauseCase *c, const BwCause *cause, BwHypothesis *h)
{
  bw_hypothesis_init (c, h);
  for (guint i = 0; i < cause->n_faults; i++)
    bw_hypothesis_apply (&cause->faults[i], h);
}

static const char *
name_of (const BwCause *cause)
{
  return bw_kind_label (&bw_faults, cause->n_faults > 0 ? cause->faults[0].kind : BW_FAULT_NONE);
}

/* Loads this much apart are told apart with an ohmmeter. */
#define LOADS_APART 0.1

/**
 * bw_cause_decider_says:
 * @first: the likeliest
 * @other: one that fits as well
 *
 * Returns: (transfer full) (nullable): what to read next to tell the two apart, with what each would
 *   give: a level that was not read, else the resistance of the line
 */
char *
bw_cause_decider_says (const BwCauseCase *c, const BwScopeReadings *readings, const BwCause *first,
                       const BwCause *other, char mark)
{
  g_return_val_if_fail (c != NULL && readings != NULL && first != NULL && other != NULL, NULL);
  BwHypothesis a, b;
  BwPrediction of_a, of_b;

  circuit_of (c, first, &a);
  circuit_of (c, other, &b);
  bw_hypothesis_predict (c, readings, &a, &of_a);
  bw_hypothesis_predict (c, readings, &b, &of_b);
  for (BwScopeReading i = 0; i < BW_N_SCOPE_READINGS; i++)
    {
      BwScopeReadings one = { .given = BW_BIT (i), .accuracy = readings->accuracy };
      if ((readings->given & BW_BIT (i)) || i == BW_SCOPE_DC
          || !bw_score_told_apart (&one, &of_a, &of_b, bw_score_scale_v (&of_a)))
        continue;
      g_autofree char *here = figure (i, of_a.at[i].high, mark);
      g_autofree char *there = figure (i, of_b.at[i].high, mark);
      return g_strdup_printf (_ ("To tell “%1$s” from “%2$s”: read %3$s; the first gives %4$s, the "
                                 "other %5$s."),
                              name_of (first), name_of (other),
                              bw_kind_label (&bw_scope_readings, i), here, there);
    }
  if (!(a.load_ohm > 0 && b.load_ohm > 0) || fabs (log (a.load_ohm / b.load_ohm)) < LOADS_APART)
    return NULL;
  g_autofree char *here = bw_quantity_format (a.load_ohm, BW_DIMENSION_RESISTANCE, DIGITS, mark);
  g_autofree char *there = bw_quantity_format (b.load_ohm, BW_DIMENSION_RESISTANCE, DIGITS, mark);
  return g_strdup_printf (_ ("To tell “%1$s” from “%2$s”: pull the lead off the source and read the "
                             "resistance of the line with an ohmmeter; the first gives %3$s, the "
                             "other %4$s."),
                          name_of (first), name_of (other), here, there);
}

/**
 * bw_cause_says:
 * @readings: that @cause was found for
 * @mark: the decimal mark
 *
 * Returns: (transfer full): the cause with its numbers, for a person at a bench
 */
char *
bw_cause_says (const BwCauseCase *c, const BwScopeReadings *readings, const BwCause *cause,
               char mark)
{
  g_return_val_if_fail (c != NULL && readings != NULL && cause != NULL, NULL);
  BwHypothesis h;
  BwPrediction right;

  bw_hypothesis_init (c, &h);
  bw_hypothesis_predict (c, readings, &h, &right);
  if (!cause->known)
    return says_unknown (readings, cause, &right, mark);
  if (cause->n_faults == 0)
    return g_strdup (_ ("What was read is as it should be."));

  GString *text = g_string_new (NULL);
  for (guint i = 0; i < cause->n_faults; i++)
    {
      BwCauseWords words = { c, readings, cause, &cause->faults[i], &right, mark };
      g_autofree char *says = bw_fault_says (&words);
      g_string_append_printf (text, "%s%s", i > 0 ? " " : "", says);
    }
  return g_string_free (text, FALSE);
}
