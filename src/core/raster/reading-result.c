/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "results.h"

#include <math.h>

#include <glib/gi18n-lib.h>

/* Readings held against what a standard allows, and what standards lay down. */

#define DIGITS 8
#define DEVIATION_DIGITS 4

/* What is less than this share of the nominal value is rounding. */
#define ROUNDING 1e-9

static BwValue
quantity (const char *key, BwReadingKind kind, double value, int digits)
{
  return bw_value_quantity (key, value, bw_reading_dimension (kind), digits);
}

static const char *
name_of (const BwStandardLimits *limits)
{
  return limits->name != NULL ? limits->name : limits->id;
}

/* @key: of the id. */
static void
add_names (BwNode *to, const BwStandardLimits *limits, const char *key)
{
  BwNode *section = bw_node_section (to, NULL,
                                     bw_result_tells_ids (to->result)
                                         ? bw_node_print (to, "%s: %s", limits->id, name_of (limits))
                                         : name_of (limits));
  bw_node_member (section, bw_value_words (key, limits->id));
  bw_node_member (section, bw_value_words ("name", name_of (limits)));
  bw_node_figure (section, _ ("Given by"), bw_value_words ("source", limits->source));
  bw_node_figure (section, _ ("Raster"), bw_value_words ("raster", limits->raster));
}

/* Readings */

/* Whether the upper limit is the one that a reading breaks, or comes nearest to. */
static gboolean
is_upper (const BwJudgement *judgement, double value)
{
  return judgement->allowed.high - value < value - judgement->allowed.low;
}

/* The limit that decides, and how far off it is. */
static const char *
limit_words (BwNode *row, BwReadingKind kind, double value, const BwJudgement *judgement)
{
  gboolean upper = is_upper (judgement, value);
  gboolean within = judgement->to_limit >= 0;
  BwDimension dimension = bw_reading_dimension (kind);
  const char *limit = bw_node_quantity (row,
                                        upper ? judgement->allowed.high : judgement->allowed.low,
                                        dimension, DIGITS);
  const char *distance = bw_node_quantity (row, fabs (judgement->to_limit), dimension,
                                           DEVIATION_DIGITS);

  if (upper)
    return bw_node_print (row,
                          within ? _ ("%1$s below the upper limit, %2$s")
                                 : _ ("%1$s above the upper limit, %2$s"),
                          distance, limit);
  return bw_node_print (row,
                        within ? _ ("%1$s above the lower limit, %2$s")
                               : _ ("%1$s below the lower limit, %2$s"),
                        distance, limit);
}

static BwValue
deviation (BwReadingKind kind, const BwJudgement *judgement)
{
  BwValue value = bw_value_signed (
      quantity ("deviation", kind, judgement->deviation, DEVIATION_DIGITS));
  gboolean none = fabs (judgement->deviation) <= ROUNDING * judgement->nominal;
  return bw_value_read_as (value, none ? "0" : NULL);
}

static void
add_reading (BwNode *table, const BwStandardLimits *limits, BwReadingKind kind, double value,
             double uncertainty)
{
  BwJudgement judgement;
  BwNode *row = bw_node_row (table);

  bw_reading_judge (limits, kind, value, uncertainty, &judgement);
  gboolean known = judgement.outcome != BW_OUTCOME_NOT_LAID_DOWN;
  if (known)
    row->mark = BW_MARK (bw_outcome_severity (judgement.outcome));
  bw_node_cell (row, bw_value_words ("name", bw_kind_label (&bw_readings, kind)));
  bw_node_cell (row, quantity ("value", kind, value, DIGITS));
  bw_node_cell (row, bw_value_if (known, quantity ("nominal", kind, judgement.nominal, DIGITS)));
  bw_node_cell (row, bw_value_if (known, deviation (kind, &judgement)));
  bw_node_cell (row, bw_value_kind ("outcome", &bw_outcomes, judgement.outcome));
  bw_node_cell (row, bw_value_says (NULL, known ? limit_words (row, kind, value, &judgement) : ""));
  bw_node_member (row, bw_value_words ("id", bw_kind_id (&bw_readings, kind)));
  bw_node_member (row,
                  bw_value_words ("unit", bw_quantity_base_unit (bw_reading_dimension (kind))));
  bw_node_member (row, bw_value_if (known, bw_value_range ("allowed", judgement.allowed,
                                                           bw_reading_dimension (kind), DIGITS)));
  bw_node_member (row, bw_value_if (known, bw_value_words ("limit", is_upper (&judgement, value)
                                                                        ? "high"
                                                                        : "low")));
  bw_node_member (row, quantity ("uncertainty", kind, uncertainty, DEVIATION_DIGITS));
  bw_node_member (row, bw_value_if (known, quantity ("to_limit", kind, judgement.to_limit,
                                                     DEVIATION_DIGITS)));
}

/* Says of the first reading that its uncertainty leaves open what would settle it. */
static void
add_undecided (BwNode *to, const BwStandardLimits *limits, const BwReadingsTaken *taken)
{
  for (BwReadingKind kind = 0; kind < BW_N_READINGS; kind++)
    {
      BwJudgement judgement = { 0 };
      if (taken->read[kind])
        bw_reading_judge (limits, kind, taken->value[kind], taken->uncertainty[kind], &judgement);
      if (judgement.outcome != BW_OUTCOME_UNDECIDED)
        continue;
      const char *u = bw_node_quantity (to, taken->uncertainty[kind], bw_reading_dimension (kind), 3);
      bw_node_say (to, BW_SAY_NOTE, NULL,
                   bw_node_print (to,
                                  _ ("%1$s is read to within %2$s, which reaches across the limit: "
                                     "a finer reading decides."),
                                  bw_kind_label (&bw_readings, kind), u));
    }
}

/**
 * bw_readings_say:
 * @taken: what was read
 *
 * Adds the standard, and each reading with the nominal value, the signed deviation, whether it is
 * within, and by how much of which limit. "to_limit" is the distance to the limit that "limit"
 * names, negative beyond it; what a standard does not lay down is null.
 */
void
bw_readings_say (BwNode *to, const BwStandardLimits *limits, const BwReadingsTaken *taken)
{
  g_return_if_fail (to != NULL && limits != NULL && taken != NULL);
  add_names (to, limits, "standard");
  BwNode *table = bw_node_table (to, "readings", NULL);

  table->order = "id name value uncertainty unit outcome nominal allowed_low allowed_high deviation "
                 "limit to_limit";
  bw_node_column (table, BW_COLUMN_WORDS, _ ("reading"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("read"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("nominal"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("deviation"), NULL);
  bw_node_column (table, BW_COLUMN_WORDS, _ ("outcome"), NULL);
  bw_node_column (table, BW_COLUMN_SAYS, _ ("limit"), NULL);
  for (BwReadingKind kind = 0; kind < BW_N_READINGS; kind++)
    if (taken->read[kind])
      add_reading (table, limits, kind, taken->value[kind], taken->uncertainty[kind]);
  add_undecided (to, limits, taken);
}

/* Standards */

static void
add_limits (BwNode *row, const BwStandardLimits *limits, gboolean seen)
{
  BwNode *table = bw_node_table (row, "limits", NULL);

  table->order = "id name unit nominal allowed_low allowed_high";
  if (seen)
    {
      bw_node_column (table, BW_COLUMN_WORDS, _ ("reading"), NULL);
      bw_node_column (table, BW_COLUMN_WORDS, _ ("what it is"), NULL);
      bw_node_column (table, BW_COLUMN_NUMBERS, _ ("nominal"), NULL);
      bw_node_column (table, BW_COLUMN_NUMBERS, _ ("allowed"), NULL);
    }
  for (BwReadingKind kind = 0; kind < BW_N_READINGS; kind++)
    {
      const BwBands *bands = &limits->at[kind];
      if (bands->n < 2)
        continue;
      BwDimension dimension = bw_reading_dimension (kind);
      BwNode *one = bw_node_row (table);
      bw_node_cell (one, bw_value_words ("id", bw_kind_id (&bw_readings, kind)));
      bw_node_cell (one, bw_value_words ("name", bw_kind_label (&bw_readings, kind)));
      bw_node_cell (one, quantity ("nominal", kind, bands->at[0].low, DIGITS));
      bw_node_cell (one, bw_value_range ("allowed", bands->at[1], dimension, DIGITS));
      bw_node_member (one, bw_value_words ("unit", bw_quantity_base_unit (dimension)));
    }
}

/**
 * bw_standards_say:
 * @all: (element-type BwStandardLimits)
 * @one: (nullable): of them
 *
 * Adds what @one lays down; without it, a table of all of them.
 */
void
bw_standards_say (BwNode *to, const GPtrArray *all, const BwStandardLimits *one)
{
  g_return_if_fail (to != NULL && all != NULL);
  BwNode *table = bw_node_table (to, "standards", NULL);

  if (one == NULL)
    {
      bw_node_column (table, BW_COLUMN_WORDS, _ ("standard"), NULL);
      bw_node_column (table, BW_COLUMN_WORDS, _ ("raster"), NULL);
      bw_node_column (table, BW_COLUMN_WORDS, _ ("name"), NULL);
    }
  table->order = "id name source raster limits";
  for (guint i = 0; i < all->len; i++)
    {
      const BwStandardLimits *limits = all->pdata[i];
      if (one != NULL && one != limits)
        continue;
      BwNode *row = bw_node_row (table);
      row->for_scripts = one == NULL;
      bw_node_cell (row, bw_value_words ("id", limits->id));
      bw_node_cell (row, bw_value_words ("raster", limits->raster));
      bw_node_cell (row, bw_value_words ("name", name_of (limits)));
      add_names (row, limits, "id");
      add_limits (row, limits, one != NULL);
    }
}
