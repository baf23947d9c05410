/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cause-view.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "cli/base/table.h"
#include "cli/base/words.h"

#define DIGITS 4

static const char *
unit_of (BwScopeReading reading)
{
  if (reading == BW_SCOPE_POLARITY)
    return NULL;
  return bw_quantity_base_unit (bw_scope_reading_dimension (reading));
}

static void
range_to_json (BwScopeReading reading, const BwRange *range, BwJson *json)
{
  bw_json_begin_object (json, NULL);
  bw_json_string (json, "id", bw_kind_id (&bw_scope_readings, reading));
  bw_json_number (json, "low", range->low);
  bw_json_number (json, "high", range->high);
  bw_json_string (json, "unit", unit_of (reading));
  bw_json_end_object (json);
}

static void
readings_to_json (const BwCauseView *view, BwJson *json)
{
  BwRange expected[BW_N_SCOPE_READINGS];
  guint decided = bw_cause_expected (&view->c, expected);

  bw_json_begin_array (json, "readings");
  for (guint i = 0; i < BW_N_SCOPE_READINGS; i++)
    if (view->readings.given & BW_BIT (i))
      {
        bw_json_begin_object (json, NULL);
        bw_json_string (json, "id", bw_kind_id (&bw_scope_readings, i));
        bw_json_string (json, "name", bw_kind_label (&bw_scope_readings, i));
        bw_json_number (json, "value", view->readings.at[i]);
        bw_json_string (json, "unit", unit_of (i));
        bw_json_number_if (json, "expected_low", decided & BW_BIT (i), expected[i].low);
        bw_json_number_if (json, "expected_high", decided & BW_BIT (i), expected[i].high);
        bw_json_end_object (json);
      }
  bw_json_end_array (json);
}

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
fault_to_json (const BwFault *fault, BwJson *json)
{
  bw_json_begin_object (json, NULL);
  bw_json_string (json, "kind", bw_kind_id (&bw_faults, fault->kind));
  bw_json_string (json, "name", bw_kind_label (&bw_faults, fault->kind));
  bw_json_string (json, "which", which_of (fault));
  bw_json_number_if (json, "ohm", fault->ohm > 0, fault->ohm);
  bw_json_number_if (json, "ratio", fault->ratio > 0, fault->ratio);
  bw_json_number_if (json, "farad", fault->farad > 0, fault->farad);
  bw_json_end_object (json);
}

static void
cause_to_json (const BwCauseView *view, const BwCause *cause, BwJson *json)
{
  g_autofree char *says = bw_cause_says (&view->c, &view->readings, cause, BW_FILE_MARK);

  bw_json_begin_object (json, NULL);
  bw_json_boolean (json, "known", cause->known);
  bw_json_begin_array (json, "faults");
  for (guint i = 0; i < cause->n_faults; i++)
    fault_to_json (&cause->faults[i], json);
  bw_json_end_array (json);
  bw_json_number (json, "share", cause->share);
  bw_json_boolean (json, "alike", cause->alike);
  bw_json_string (json, "worst", bw_kind_id (&bw_scope_readings, cause->worst));
  bw_json_number (json, "deviation", cause->deviation);
  bw_json_begin_array (json, "predicted");
  for (guint i = 0; i < BW_N_SCOPE_READINGS; i++)
    if (cause->predicts & BW_BIT (i))
      range_to_json (i, &cause->predicted[i], json);
  bw_json_end_array (json);
  bw_json_string (json, "says", says);
  bw_json_end_object (json);
}

/**
 * bw_cause_view_to_json:
 *
 * Writes the members of an object that is open in @json. "share" is that of the fit over the causes
 * listed; "deviation" is that of the worst reading in its uncertainty; "alike": the readings do not
 * tell it from the first; "loss_db" is of the attenuator that should be in the lead.
 */
void
bw_cause_view_to_json (const BwCauseView *view, BwJson *json)
{
  g_autoptr (GArray) causes = bw_causes (&view->c, &view->readings);
  const BwWireForm *form = &view->c.form;

  bw_json_string (json, "source", view->source);
  bw_json_string (json, "input", view->input);
  bw_json_string (json, "system", bw_kind_id (&bw_colour_systems, form->system));
  bw_json_string (json, "kind", bw_kind_id (&bw_signals, form->signal));
  bw_json_string (json, "sync", bw_kind_id (&bw_sync_kinds, form->sync));
  bw_json_string (json, "conductor", bw_kind_id (&bw_conductors, view->c.conductor));
  bw_json_number (json, "load_ohm", view->c.load_ohm);
  bw_json_number_if (json, "series_ohm", view->c.series_ohm > 0, view->c.series_ohm);
  bw_json_string (json, "standard", view->c.limits != NULL ? view->c.limits->id : NULL);
  readings_to_json (view, json);
  bw_json_begin_array (json, "causes");
  for (guint i = 0; i < causes->len; i++)
    cause_to_json (view, &g_array_index (causes, BwCause, i), json);
  bw_json_end_array (json);
  bw_json_number_if (json, "loss_db", view->c.pad_ratio < 1, -20 * log10 (view->c.pad_ratio));
}

static char *
figure (BwScopeReading reading, double value)
{
  if (reading == BW_SCOPE_POLARITY)
    return g_strdup (value < 0 ? _ ("downwards") : _ ("upwards"));
  return bw_quantity_format (value, bw_scope_reading_dimension (reading), DIGITS,
                             bw_quantity_locale_mark ());
}

static char *
expected_text (BwScopeReading reading, gboolean decided, const BwRange *range)
{
  g_autofree char *low = NULL;
  g_autofree char *high = NULL;

  if (!decided)
    return g_strdup ("–");
  low = figure (reading, range->low);
  if (!(range->high > range->low))
    return g_steal_pointer (&low);
  high = figure (reading, range->high);
  return g_strdup_printf (_ ("%s to %s"), low, high);
}

static void
append_readings (const BwCauseView *view, GString *text)
{
  BwRange expected[BW_N_SCOPE_READINGS];
  guint decided = bw_cause_expected (&view->c, expected);
  g_autoptr (BwTable) table = bw_table_new (3);

  bw_table_set_right (table, 1);
  bw_table_set_right (table, 2);
  bw_table_add_row (table, _ ("reading"), _ ("read"), _ ("should be"), NULL);
  for (guint i = 0; i < BW_N_SCOPE_READINGS; i++)
    if (view->readings.given & BW_BIT (i))
      {
        g_autofree char *read = figure (i, view->readings.at[i]);
        g_autofree char *right = expected_text (i, decided & BW_BIT (i), &expected[i]);
        bw_table_add_row (table, bw_kind_label (&bw_scope_readings, i), read, right, NULL);
      }
  bw_table_append_to (table, text, 0);
}

/* What stands before the sentence of a cause. */
static char *
fit_text (const BwCause *cause, gboolean first)
{
  const int width = bw_words_width (_ ("fits as well"));
  const char *words = cause->known ? bw_cause_fit_words (cause, first) : "?";
  GString *text = g_string_new (words);

  for (int at = bw_words_width (words); at < width + 2; at++)
    g_string_append_c (text, ' ');
  return g_string_free (text, FALSE);
}

/**
 * bw_cause_view_append_text:
 *
 * Appends the readings beside what they should be, and the causes, the likeliest first.
 */
void
bw_cause_view_append_text (const BwCauseView *view, GString *text)
{
  g_autoptr (GArray) causes = bw_causes (&view->c, &view->readings);
  gboolean alike = FALSE;

  g_string_append_printf (text, _ ("%s, %s, on %s\n\n"),
                          bw_kind_label (&bw_signals, view->c.form.signal),
                          bw_kind_label (&bw_sync_kinds, view->c.form.sync),
                          bw_kind_label (&bw_conductors, view->c.conductor));
  append_readings (view, text);
  if (view->c.not_taken)
    g_string_append_printf (text, _ ("\nThe input does not take %s: what should be is what the source "
                                     "gives.\n"),
                            bw_kind_label (&bw_sync_kinds, view->c.form.sync));
  g_string_append_c (text, '\n');
  if (causes->len == 0)
    g_string_append (text, _ ("This conductor decides nothing of what was read.\n"));
  for (guint i = 0; i < causes->len; i++)
    {
      const BwCause *cause = &g_array_index (causes, BwCause, i);
      g_autofree char *says
          = bw_cause_says (&view->c, &view->readings, cause, bw_quantity_locale_mark ());
      g_autofree char *first = fit_text (cause, i == 0);
      alike = alike || cause->alike;
      bw_words_append_wrapped (text, first, bw_words_width (first), says);
    }
  if (alike)
    g_string_append (text, _ ("\nFits as well: these readings do not tell it from the first.\n"));
}
