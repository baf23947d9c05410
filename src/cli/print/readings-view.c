/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "readings-view.h"

#include <glib/gi18n-lib.h>

#include "cli/base/table.h"
#include "cli/base/words.h"

#define DIGITS 8
#define DEVIATION_DIGITS 4

static char *
value_text (guint kind, double value, int digits)
{
  return bw_quantity_format (value, bw_reading_dimension (kind), digits,
                             bw_quantity_locale_mark ());
}

static char *
range_text (guint kind, BwRange range)
{
  return bw_quantity_format_range (range, bw_reading_dimension (kind), DIGITS,
                                   bw_quantity_locale_mark ());
}

static const char *
limits_name (const BwStandardLimits *limits)
{
  return limits->name != NULL ? limits->name : limits->id;
}

static void
append_title (const BwStandardLimits *limits, GString *to)
{
  g_autofree char *title = g_strdup_printf ("%s: ", limits->id);
  g_autofree char *source = g_strdup_printf ("  %s: ", _ ("Given by"));
  bw_words_append_wrapped (to, title, 2, limits_name (limits));
  bw_words_append_wrapped (to, source, bw_words_width (source), limits->source);
  g_string_append_printf (to, "  %s: %s\n\n", _ ("Raster"), limits->raster);
}

/* Whether the upper limit is the one that a reading breaks, or comes nearest to. */
static gboolean
is_upper_limit (const BwJudgement *judgement, double value)
{
  return judgement->allowed.high - value < value - judgement->allowed.low;
}

/* The limit that decides, and how far off it is. */
static char *
limit_text (guint kind, double value, const BwJudgement *judgement)
{
  gboolean upper = is_upper_limit (judgement, value);
  g_autofree char *limit = value_text (kind,
                                       upper ? judgement->allowed.high : judgement->allowed.low,
                                       DIGITS);
  g_autofree char *distance = value_text (kind, ABS (judgement->to_limit), DEVIATION_DIGITS);

  if (judgement->outcome == BW_OUTCOME_WITHIN)
    return g_strdup_printf (upper ? _ ("%s below the upper limit, %s")
                                  : _ ("%s above the lower limit, %s"),
                            distance, limit);
  return g_strdup_printf (upper ? _ ("%s above the upper limit, %s")
                                : _ ("%s below the lower limit, %s"),
                          distance, limit);
}

/* Signed; what is less than a billionth of the nominal value is rounding. */
static char *
deviation_text (guint kind, const BwJudgement *judgement)
{
  double size = ABS (judgement->deviation);
  g_autofree char *amount = value_text (kind, size, DEVIATION_DIGITS);
  if (size <= 1e-9 * ABS (judgement->nominal))
    return g_strdup ("0");
  return g_strconcat (judgement->deviation < 0 ? "-" : "+", amount, NULL);
}

static void
add_reading (BwTable *table, const BwReadingsView *view, guint kind)
{
  BwJudgement judgement;
  double value = view->value[kind];
  bw_reading_judge (view->limits, kind, value, &judgement);
  g_autofree char *read = value_text (kind, value, DIGITS);
  const char *outcome = bw_kind_label (&bw_outcomes, judgement.outcome);
  const char *label = bw_kind_label (&bw_readings, kind);

  if (judgement.outcome == BW_OUTCOME_NOT_LAID_DOWN)
    {
      bw_table_add_row (table, label, read, "", "", outcome, NULL);
      return;
    }
  g_autofree char *nominal = value_text (kind, judgement.nominal, DIGITS);
  g_autofree char *deviation = deviation_text (kind, &judgement);
  g_autofree char *limit = limit_text (kind, value, &judgement);
  g_autofree char *says = g_strdup_printf ("%s: %s", outcome, limit);
  bw_table_add_row (table, label, read, nominal, deviation, says, NULL);
}

/**
 * bw_readings_view_append_text:
 *
 * Appends a table: each reading with the nominal value, the signed deviation, whether it is within,
 * and by how much of which limit.
 */
void
bw_readings_view_append_text (const BwReadingsView *view, GString *to)
{
  g_autoptr (BwTable) table = bw_table_new (5);

  append_title (view->limits, to);
  for (guint column = 1; column <= 3; column++)
    bw_table_set_right (table, column);
  bw_table_set_width (table, 4, 0, 34);
  bw_table_add_row (table, _ ("reading"), _ ("read"), _ ("nominal"), _ ("deviation"), _ ("outcome"),
                    NULL);
  for (guint kind = 0; kind < BW_N_READINGS; kind++)
    if (view->read[kind])
      add_reading (table, view, kind);
  bw_table_append_to (table, to, 0);
}

static void
reading_json (const BwReadingsView *view, guint kind, BwJson *json)
{
  BwJudgement judgement;
  bw_reading_judge (view->limits, kind, view->value[kind], &judgement);
  gboolean known = judgement.outcome != BW_OUTCOME_NOT_LAID_DOWN;
  const char *limit = is_upper_limit (&judgement, view->value[kind]) ? "high" : "low";

  bw_json_begin_object (json, NULL);
  bw_json_string (json, "id", bw_kind_id (&bw_readings, kind));
  bw_json_string (json, "name", bw_kind_label (&bw_readings, kind));
  bw_json_number (json, "value", view->value[kind]);
  bw_json_string (json, "unit", bw_quantity_base_unit (bw_reading_dimension (kind)));
  bw_json_string (json, "outcome", bw_kind_id (&bw_outcomes, judgement.outcome));
  bw_json_number_if (json, "nominal", known, judgement.nominal);
  bw_json_number_if (json, "allowed_low", known, judgement.allowed.low);
  bw_json_number_if (json, "allowed_high", known, judgement.allowed.high);
  bw_json_number_if (json, "deviation", known, judgement.deviation);
  bw_json_string (json, "limit", known ? limit : NULL);
  bw_json_number_if (json, "to_limit", known, judgement.to_limit);
  bw_json_end_object (json);
}

static void
names_json (const BwStandardLimits *limits, BwJson *json)
{
  bw_json_string (json, "name", limits_name (limits));
  bw_json_string (json, "source", limits->source);
  bw_json_string (json, "raster", limits->raster);
}

/**
 * bw_readings_view_to_json:
 *
 * Writes the members of an object that is open in @json. What a standard does not lay down is null;
 * "to_limit" is the distance to the limit that "limit" names, negative beyond it.
 */
void
bw_readings_view_to_json (const BwReadingsView *view, BwJson *json)
{
  bw_json_string (json, "standard", view->limits->id);
  names_json (view->limits, json);
  bw_json_begin_array (json, "readings");
  for (guint kind = 0; kind < BW_N_READINGS; kind++)
    if (view->read[kind])
      reading_json (view, kind, json);
  bw_json_end_array (json);
}

/**
 * bw_limits_append_text:
 *
 * Appends a table of what one standard lays down: the name of each reading, the nominal value and
 * the range allowed.
 */
void
bw_limits_append_text (const BwStandardLimits *limits, GString *to)
{
  g_autoptr (BwTable) table = bw_table_new (4);

  append_title (limits, to);
  bw_table_set_right (table, 2);
  bw_table_set_right (table, 3);
  bw_table_add_row (table, _ ("reading"), _ ("what it is"), _ ("nominal"), _ ("allowed"), NULL);
  for (guint kind = 0; kind < BW_N_READINGS; kind++)
    {
      const BwBands *bands = &limits->at[kind];
      if (bands->n < 2)
        continue;
      g_autofree char *nominal = value_text (kind, bands->at[0].low, DIGITS);
      g_autofree char *allowed = range_text (kind, bands->at[1]);
      bw_table_add_row (table, bw_kind_id (&bw_readings, kind), bw_kind_label (&bw_readings, kind),
                        nominal, allowed, NULL);
    }
  bw_table_append_to (table, to, 2);
}

/**
 * bw_limits_to_json:
 *
 * Writes one standard as an object in an array that is open in @json.
 */
void
bw_limits_to_json (const BwStandardLimits *limits, BwJson *json)
{
  bw_json_begin_object (json, NULL);
  bw_json_string (json, "id", limits->id);
  names_json (limits, json);
  bw_json_begin_array (json, "limits");
  for (guint kind = 0; kind < BW_N_READINGS; kind++)
    {
      const BwBands *bands = &limits->at[kind];
      if (bands->n < 2)
        continue;
      bw_json_begin_object (json, NULL);
      bw_json_string (json, "id", bw_kind_id (&bw_readings, kind));
      bw_json_string (json, "name", bw_kind_label (&bw_readings, kind));
      bw_json_string (json, "unit", bw_quantity_base_unit (bw_reading_dimension (kind)));
      bw_json_number (json, "nominal", bands->at[0].low);
      bw_json_number (json, "allowed_low", bands->at[1].low);
      bw_json_number (json, "allowed_high", bands->at[1].high);
      bw_json_end_object (json);
    }
  bw_json_end_array (json);
  bw_json_end_object (json);
}
