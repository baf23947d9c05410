/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cause-private.h"

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
