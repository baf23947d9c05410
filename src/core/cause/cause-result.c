/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "results.h"

#include <math.h>

#include <glib/gi18n-lib.h>

/* What a scope reads on one conductor, what it should read, and what is likely wrong. */

#define DIGITS 4

/* Less than a nanovolt, or than a part in a thousand million, is nothing. */
#define NOTHING 1e-9

typedef struct
{
  const BwCauseCase *c;
  const BwScopeReadings *readings;
  BwRange expected[BW_N_SCOPE_READINGS];
  guint decided; /* set of those that @expected has */
} Ask;

/* One reading, for scripts and for people: sync that points up or down is 1 or −1. */
static BwValue
reading_value (const char *key, BwScopeReading reading, double value)
{
  if (reading == BW_SCOPE_POLARITY)
    return bw_value_read_as (bw_value_count (key, value),
                             value < 0 ? _ ("downwards") : _ ("upwards"));
  if (fabs (value) < NOTHING)
    value = 0;
  return bw_value_quantity (key, value, bw_scope_reading_dimension (reading), DIGITS);
}

static char *
reading_words (BwScopeReading reading, double value, char mark)
{
  const BwValue one = reading_value (NULL, reading, value);
  return bw_value_text (&one, mark);
}

/**
 * bw_scope_expected_words:
 * @mark: the decimal mark
 *
 * Returns: (transfer full): what it should read, or from where to where
 */
char *
bw_scope_expected_words (BwScopeReading reading, const BwRange *range, char mark)
{
  g_return_val_if_fail (range != NULL, NULL);
  g_autofree char *low = reading_words (reading, range->low, mark);
  g_autofree char *high = reading_words (reading, range->high, mark);
  if (!(range->high > range->low) || g_str_equal (low, high))
    return g_steal_pointer (&high);
  /* Translators: the least and the greatest. */
  return g_strdup_printf (C_ ("range", "%1$s to %2$s"), low, high);
}

/* Two numbers for scripts; for people one where both read the same. */
static BwValue
range_value (BwNode *row, const char *key, BwScopeReading reading, const BwRange *range)
{
  BwValue value = bw_value_range (key, *range, bw_scope_reading_dimension (reading), DIGITS);
  return bw_value_read_as (value,
                           bw_node_take (row,
                                         bw_scope_expected_words (reading, range,
                                                                  bw_result_mark (row->result))));
}

static BwValue
unit_of (BwScopeReading reading)
{
  return bw_value_if (reading != BW_SCOPE_POLARITY,
                      bw_value_words ("unit", bw_quantity_base_unit (
                                                  bw_scope_reading_dimension (reading))));
}

/* What the readings are held against */

/* The loss of the attenuator that should be in the lead; @ratio is 1 if none should. */
static BwValue
loss_value (BwNode *to, const char *key, double ratio)
{
  const BwValue loss = bw_value_number (key, -20 * log10 (ratio), 1);
  const char *number = bw_node_take (to, bw_value_text (&loss, bw_result_mark (to->result)));
  return bw_value_if (ratio < 1, bw_value_read_as (loss, bw_node_print (to, _ ("%s dB"), number)));
}

static void
add_place (BwNode *to, const char *source, const char *input, const BwCauseCase *c)
{
  const BwWireForm *form = &c->form;

  bw_node_member (to, bw_value_words ("source", source));
  bw_node_member (to, bw_value_words ("input", input));
  bw_node_member (to, bw_value_kind ("system", &bw_colour_systems, form->system));
  bw_node_member (to, bw_value_kind ("kind", &bw_signals, form->signal));
  bw_node_member (to, bw_value_kind ("sync", &bw_sync_kinds, form->sync));
  bw_node_member (to, bw_value_kind ("conductor", &bw_conductors, c->conductor));
  bw_node_say (to, BW_SAY_NOTE, NULL,
               /* Translators: signal kind, sync kind, conductor. */
               bw_node_print (to, _ ("%1$s, %2$s, on %3$s"),
                              bw_kind_label (&bw_signals, form->signal),
                              bw_kind_label (&bw_sync_kinds, form->sync),
                              bw_kind_label (&bw_conductors, c->conductor)));
  bw_node_figure (to, _ ("The conductor should end in"),
                  bw_value_quantity ("load_ohm", c->load_ohm, BW_DIMENSION_RESISTANCE, 3));
  bw_node_figure (to, _ ("Resistor in its lead"),
                  bw_value_if (c->series_ohm > 0, bw_value_quantity ("series_ohm", c->series_ohm,
                                                                     BW_DIMENSION_RESISTANCE, 3)));
  if (c->pad_ratio < 1)
    bw_node_figure (to, _ ("Attenuator in its lead"), loss_value (to, NULL, c->pad_ratio));
  bw_node_member (to, bw_value_words ("standard", c->limits != NULL ? c->limits->id : NULL));
  if (c->limits != NULL)
    bw_node_figure (to, _ ("Right is what is allowed by"), bw_value_words (NULL, c->limits->name));
}

/* Readings */

static void
add_readings (BwNode *to, const Ask *ask)
{
  BwNode *table = bw_node_table (to, "readings", NULL);

  table->order = "id name value unit expected_low expected_high";
  bw_node_column (table, BW_COLUMN_WORDS, _ ("reading"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("read"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("should be"), NULL);
  for (BwScopeReading i = 0; i < BW_N_SCOPE_READINGS; i++)
    {
      if (!(ask->readings->given & BW_BIT (i)))
        continue;
      BwNode *row = bw_node_row (table);
      bw_node_cell (row, bw_value_words ("name", bw_kind_label (&bw_scope_readings, i)));
      bw_node_cell (row, reading_value ("value", i, ask->readings->at[i]));
      bw_node_cell (row,
                    bw_value_or (bw_value_if (ask->decided & BW_BIT (i),
                                              range_value (row, "expected", i, &ask->expected[i])),
                                 "–"));
      bw_node_member (row, bw_value_words ("id", bw_kind_id (&bw_scope_readings, i)));
      bw_node_member (row, unit_of (i));
    }
}

/* Causes */

static const char *
which_of (const BwFault *fault)
{
  switch (fault->kind)
    {
    case BW_FAULT_OTHER_LEVELS:
      return bw_kind_id (&bw_level_forms, fault->which);
    case BW_FAULT_OTHER_DRIVE:
      return bw_kind_id (&bw_sync_drives, fault->which);
    case BW_FAULT_OTHER_CONDUCTOR:
      return bw_kind_id (&bw_conductors, fault->which);
    case BW_FAULT_OTHER_SYNC:
      return bw_kind_id (&bw_sync_kinds, fault->which);
    default:
      return NULL;
    }
}

static void
add_faults (BwNode *row, const BwCause *cause)
{
  BwNode *table = bw_node_table (row, "faults", NULL);
  for (guint i = 0; i < cause->n_faults; i++)
    {
      const BwFault *fault = &cause->faults[i];
      BwNode *one = bw_node_row (table);
      bw_node_member (one, bw_value_words ("kind", bw_kind_id (&bw_faults, fault->kind)));
      bw_node_member (one, bw_value_words ("name", bw_kind_label (&bw_faults, fault->kind)));
      bw_node_member (one, bw_value_words ("which", which_of (fault)));
      bw_node_member (one, bw_value_if (fault->ohm > 0, bw_value_count ("ohm", fault->ohm)));
      bw_node_member (one, bw_value_if (fault->ratio > 0, bw_value_count ("ratio", fault->ratio)));
      bw_node_member (one, bw_value_if (fault->farad > 0, bw_value_count ("farad", fault->farad)));
    }
}

static void
add_predicted (BwNode *row, const BwCause *cause)
{
  BwNode *table = bw_node_table (row, "predicted", NULL);
  for (BwScopeReading i = 0; i < BW_N_SCOPE_READINGS; i++)
    if (cause->predicts & BW_BIT (i))
      {
        BwNode *one = bw_node_row (table);
        bw_node_member (one, bw_value_words ("id", bw_kind_id (&bw_scope_readings, i)));
        bw_node_member (one, bw_value_count ("low", cause->predicted[i].low));
        bw_node_member (one, bw_value_count ("high", cause->predicted[i].high));
        bw_node_member (one, unit_of (i));
      }
}

static const char *
name_words (BwNode *row, const BwCause *cause)
{
  if (!cause->known)
    return _ ("None of the faults known here");
  if (cause->n_faults == 0)
    return bw_kind_label (&bw_faults, BW_FAULT_NONE);
  if (cause->n_faults == 1)
    return bw_kind_label (&bw_faults, cause->faults[0].kind);
  /* Translators: two faults at once. */
  return bw_node_print (row, _ ("%1$s; and %2$s"),
                        bw_kind_label (&bw_faults, cause->faults[0].kind),
                        bw_kind_label (&bw_faults, cause->faults[1].kind));
}

/* By how much a reading lies beyond what is predicted. */
static const char *
off_words (BwNode *row, BwScopeReading reading, double read, const BwRange *predicted)
{
  double off = read > predicted->high  ? read - predicted->high
               : read < predicted->low ? read - predicted->low
                                       : 0;
  if (fabs (off) < NOTHING)
    return _ ("agrees");
  if (reading == BW_SCOPE_POLARITY)
    return _ ("the other way");
  const BwValue value = bw_value_signed (reading_value (NULL, reading, off));
  return bw_node_take (row, bw_value_text (&value, bw_result_mark (row->result)));
}

static const char *
prediction_words (BwNode *row, const Ask *ask, const BwCause *cause, BwScopeReading reading)
{
  char mark = bw_result_mark (row->result);
  const char *name = bw_kind_label (&bw_scope_readings, reading);
  double value = ask->readings->at[reading];
  const char *read = bw_node_take (row, reading_words (reading, value, mark));
  const BwRange *predicted = &cause->predicted[reading];

  if (!(cause->predicts & BW_BIT (reading)))
    return bw_node_print (row, _ ("%1$s: read %2$s, not decided"), name, read);
  const char *right = bw_node_take (row, bw_scope_expected_words (reading, predicted, mark));
  return bw_node_print (row,
                        cause->known && cause->n_faults > 0
                            ? _ ("%1$s: read %2$s, this gives %3$s (%4$s)")
                            : _ ("%1$s: read %2$s, should be %3$s (%4$s)"),
                        name, read, right, off_words (row, reading, value, predicted));
}

static const char *
all_predictions (BwNode *row, const Ask *ask, const BwCause *cause)
{
  g_autoptr (GPtrArray) each = g_ptr_array_new ();
  for (BwScopeReading reading = 0; reading < BW_N_SCOPE_READINGS; reading++)
    if (ask->readings->given & BW_BIT (reading))
      g_ptr_array_add (each, (gpointer) prediction_words (row, ask, cause, reading));
  g_ptr_array_add (each, NULL);
  return bw_node_take (row, g_strjoinv ("; ", (char **) each->pdata));
}

static const char *
agreement_words (BwNode *row, const BwCause *cause)
{
  const BwValue deviation = bw_value_number (NULL, cause->deviation, 1);
  const char *number = bw_node_take (row, bw_value_text (&deviation, bw_result_mark (row->result)));
  return bw_node_print (row, _ ("Agrees least: %1$s, by %2$s of that reading's uncertainty."),
                        bw_kind_label (&bw_scope_readings, cause->worst), number);
}

static void
add_cause (BwNode *table, const Ask *ask, const BwCause *cause, gboolean first)
{
  BwNode *row = bw_node_row (table);
  const char *says = bw_node_take (row, bw_cause_says (ask->c, ask->readings, cause,
                                                       bw_result_mark (row->result)));

  if (first)
    row->mark = cause->known && cause->n_faults == 0 ? BW_MARK (BW_SEVERITY_OK)
                                                     : BW_MARK (BW_SEVERITY_FATAL);
  bw_node_cell (row, bw_value_says (NULL, name_words (row, cause)));
  bw_node_cell (row, bw_value_says (NULL, cause->known ? bw_cause_fit_words (cause, first) : "?"));
  bw_node_cell (row, bw_value_says ("says", says));
  bw_node_cell (row, bw_value_says (NULL, all_predictions (row, ask, cause)));
  bw_node_cell (row, bw_value_says (NULL, agreement_words (row, cause)));
  bw_node_member (row, bw_value_flag ("known", cause->known));
  add_faults (row, cause);
  bw_node_member (row, bw_value_exact ("share", cause->share, BW_DIMENSION_NONE));
  bw_node_member (row, bw_value_flag ("alike", cause->alike));
  bw_node_member (row, bw_value_words ("worst", bw_kind_id (&bw_scope_readings, cause->worst)));
  bw_node_member (row, bw_value_exact ("deviation", cause->deviation, BW_DIMENSION_NONE));
  add_predicted (row, cause);
}

static void
add_causes (BwNode *to, const Ask *ask, const GArray *causes)
{
  BwNode *table = bw_node_table (to, "causes", NULL);

  table->order = "known faults share alike worst deviation predicted says";
  bw_node_column (table, BW_COLUMN_SAYS, _ ("cause"), NULL);
  bw_node_column (table, BW_COLUMN_WORDS, _ ("fit"), NULL);
  bw_node_column (table, BW_COLUMN_SAYS, _ ("what it is, and what to do"), NULL);
  bw_node_column (table, BW_COLUMN_MORE, _ ("what it gives"), NULL);
  bw_node_column (table, BW_COLUMN_MORE, _ ("agreement"), NULL);
  for (guint i = 0; i < causes->len; i++)
    add_cause (table, ask, &g_array_index (causes, BwCause, i), i == 0);
}

/* The answer */

static const char *
answer_words (BwNode *to, const Ask *ask, const GArray *causes)
{
  const BwCause *first = causes->len > 0 ? &g_array_index (causes, BwCause, 0) : NULL;

  if (ask->c->refused)
    return bw_node_print (to,
                          _ ("This input does not take %s: what a scope reads there says nothing. "
                             "Choose an input that takes it, or see Hook-up for what goes between."),
                          bw_kind_label (&bw_signals, ask->c->form.signal));
  if (first == NULL)
    return _ ("This conductor decides nothing of what was read.");
  if (!first->known)
    return _ ("Nothing that is known here explains these readings.");
  if (first->n_faults == 0)
    return _ ("As it should be: what was read is right.");
  return bw_node_print (to, _ ("Likely cause: %s"), name_words (to, first));
}

/* What else to read where the first is not told from another. */
static void
add_next (BwNode *to, const Ask *ask, const GArray *causes)
{
  for (guint i = 1; i < causes->len; i++)
    {
      const BwCause *other = &g_array_index (causes, BwCause, i);
      if (!other->alike)
        continue;
      char *says = bw_cause_decider_says (ask->c, ask->readings,
                                          &g_array_index (causes, BwCause, 0), other,
                                          bw_result_mark (to->result));
      bw_node_say (to, BW_SAY_NOTE, NULL,
                   _ ("Fits as well: these readings do not tell it from the first."));
      if (says != NULL)
        bw_node_say (to, BW_SAY_NOTE, "next", bw_node_take (to, says));
      return;
    }
}

/**
 * bw_cause_say:
 * @source: (nullable): its name, of a bench sheet
 * @input: (nullable): likewise
 * @causes: (element-type BwCause): of bw_causes() for @c and @readings
 *
 * Adds the readings beside what they should be, the answer, and the causes, the likeliest first.
 * "share" is that of the fit over the causes listed; "deviation" is that of the worst reading in its
 * uncertainty; "alike": the readings do not tell it from the first; "loss_db" is of the attenuator
 * that should be in the lead.
 */
void
bw_cause_say (BwNode *to, const char *source, const char *input, const BwCauseCase *c,
              const BwScopeReadings *readings, const GArray *causes)
{
  g_return_if_fail (to != NULL && c != NULL && readings != NULL && causes != NULL);
  Ask ask = { .c = c, .readings = readings };

  ask.decided = bw_cause_expected (c, ask.expected);
  add_place (to, source, input, c);
  add_readings (to, &ask);
  if (c->not_taken)
    bw_node_say (to, BW_SAY_NOTE, NULL,
                 bw_node_print (to,
                                _ ("The input does not take %s: what should be is what the "
                                   "source gives."),
                                bw_kind_label (&bw_sync_kinds, c->form.sync)));
  bw_node_say (to, BW_SAY_ANSWER, NULL, answer_words (to, &ask, causes));
  add_causes (to, &ask, causes);
  bw_node_member (to, loss_value (to, "loss_db", c->pad_ratio));
  add_next (to, &ask, causes);
}
