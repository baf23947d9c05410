/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "results.h"

#include <glib/gi18n-lib.h>

#define DIGITS 4

/* Of the one resistor; zero where none is needed. */
static double
ohm_of (const BwNetwork *network)
{
  return network->n > 0 ? network->at[0].ohm : 0;
}

static BwValue
quantity (const char *key, double value, BwDimension dimension)
{
  return bw_value_quantity (key, value, dimension, DIGITS);
}

static const char *
words (BwNode *to, double value, BwDimension dimension)
{
  return bw_node_quantity (to, value, dimension, DIGITS);
}

/* What is bought, and what stands at the input then. @add: as a member or as a cell. */
static void
add_choice (BwNode *to, const BwPadAsk *ask, BwSeries series, void (*add) (BwNode *, BwValue))
{
  BwPadChoice choice;

  bw_network_choose (&ask->ideal, series, ask->supply_tolerance, &choice);
  double watt = choice.figures.element_w[0];
  const BwValue milliwatts = bw_value_number (NULL, watt * 1000, 1);
  const char *power = bw_node_print (to, "%s\u00a0mW",
                                     bw_node_take (to,
                                                   bw_value_text (&milliwatts,
                                                                  bw_result_mark (to->result))));
  add (to, quantity ("value_ohm", ohm_of (&choice.network), BW_DIMENSION_RESISTANCE));
  add (to, quantity ("level_v", choice.figures.level_v, BW_DIMENSION_VOLTAGE));
  add (to, quantity ("min_v", choice.spread_v.low, BW_DIMENSION_VOLTAGE));
  add (to, quantity ("max_v", choice.spread_v.high, BW_DIMENSION_VOLTAGE));
  add (to, bw_value_read_as (bw_value_number ("power_w", watt, 4), power));
}

static void
add_all_series (BwNode *to, const BwPadAsk *ask)
{
  BwNode *table = bw_node_table (to, NULL, NULL);

  bw_node_column (table, BW_COLUMN_WORDS, _ ("series"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("tolerance"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("value"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("level"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("lowest"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("highest"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("power"), NULL);
  for (guint series = 0; series < BW_N_SERIES; series++)
    if (!ask->one_series || series == ask->series)
      {
        BwNode *row = bw_node_row (table);
        bw_node_cell (row, bw_value_kind ("series", &bw_series, series));
        bw_node_cell (row,
                      quantity ("tolerance", bw_series_tolerance (series), BW_DIMENSION_FRACTION));
        add_choice (row, ask, series, bw_node_cell);
      }
}

/**
 * bw_pad_say:
 *
 * Adds the exact resistor, the preferred ones of each series, and what stands at the input with them.
 */
void
bw_pad_say (BwNode *to, const BwPadAsk *ask)
{
  g_return_if_fail (to != NULL && ask != NULL);
  double ideal_ohm = ohm_of (&ask->ideal);

  bw_node_say (to, BW_SAY_ANSWER, NULL,
               bw_node_print (to,
                              _ ("%1$s behind %2$s to %3$s across %4$s: a series resistor of %5$s"),
                              words (to, ask->from_v, BW_DIMENSION_VOLTAGE),
                              words (to, ask->driver_ohm, BW_DIMENSION_RESISTANCE),
                              words (to, ask->to_v, BW_DIMENSION_VOLTAGE),
                              words (to, ask->load_ohm, BW_DIMENSION_RESISTANCE),
                              words (to, ideal_ohm, BW_DIMENSION_RESISTANCE)));
  bw_node_member (to, quantity ("ideal_ohm", ideal_ohm, BW_DIMENSION_RESISTANCE));
  add_choice (to, ask, ask->series, bw_node_member);
  add_all_series (to, ask);
  bw_node_say (to, BW_SAY_NOTE, NULL,
               bw_node_print (to,
                              _ ("Lowest and highest over the resistor's tolerance (common "
                                 "practice for the series) and a supply of ±%s. Power with the "
                                 "driver standing at its full voltage."),
                              words (to, ask->supply_tolerance, BW_DIMENSION_FRACTION)));
}
