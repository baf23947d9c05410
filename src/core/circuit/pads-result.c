/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "results.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "load.h"
#include "preferred.h"

/* Pads that match: their resistors, and what they do with values that can be bought. */

#define DIGITS 4

static BwValue
ohms (const char *key, double ohm)
{
  return bw_value_or (bw_value_if (isfinite (ohm) && ohm > 0,
                                   bw_value_quantity (key, ohm, BW_DIMENSION_RESISTANCE, DIGITS)),
                      "–");
}

/* Of a perfect match it is infinite, and of no resistance to match there is none. */
static BwValue
return_loss (const char *key, double end_ohm, double own_ohm)
{
  double db = own_ohm > 0 ? bw_return_loss_db (end_ohm, own_ohm) : (double) INFINITY;
  return bw_value_or (bw_value_if (isfinite (db), bw_value_number (key, db, 1)), "–");
}

static double
loss_db (BwPadKind kind, const BwNetwork *network)
{
  return kind == BW_PAD_L ? bw_network_level_loss_db (network) : bw_network_power_loss_db (network);
}

static gboolean
is_asked (const BwPadsAsk *ask, guint series)
{
  return !ask->one_series || series == ask->series;
}

/* Each resistor, counted from the source. */
static void
add_resistors (BwNode *to, const BwPadsAsk *ask)
{
  static const char *const keys[BW_N_SERIES] = { "e12_ohm", "e24_ohm", "e96_ohm" };
  BwNode *table = bw_node_table (to, "resistors", _ ("Resistors, from the source on"));

  table->is_grouped = TRUE;
  bw_node_column (table, BW_COLUMN_WORDS, _ ("pad"), NULL);
  bw_node_column (table, BW_COLUMN_WORDS, _ ("resistor"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("exactly"), NULL);
  for (guint series = 0; series < BW_N_SERIES; series++)
    if (is_asked (ask, series))
      bw_node_column (table, BW_COLUMN_NUMBERS, bw_kind_label (&bw_series, series), NULL);
  for (guint i = 0; i < ask->n; i++)
    for (guint k = 0; k < ask->pad[i].ideal.n; k++)
      {
        const BwElement *element = &ask->pad[i].ideal.at[k];
        BwNode *row = bw_node_row (table);
        bw_node_cell (row, bw_value_kind ("kind", &bw_pads, ask->pad[i].kind));
        bw_node_cell (row, bw_value_kind ("place", &bw_places, element->place));
        bw_node_cell (row, ohms ("ideal_ohm", element->ohm));
        for (guint series = 0; series < BW_N_SERIES; series++)
          if (is_asked (ask, series))
            bw_node_cell (row, ohms (keys[series], bw_preferred_value (element->ohm, series)));
      }
}

/* What the pad is with some values. @series: %BW_N_SERIES: the exact ones. */
static void
add_made (BwNode *table, const BwPadsAsk *ask, BwPadKind kind, const BwNetwork *made, guint series)
{
  BwNode *row = bw_node_row (table);
  BwNetworkFigures figures;

  bw_network_solve (made, &figures);
  bw_node_cell (row, bw_value_kind ("kind", &bw_pads, kind));
  bw_node_cell (row, bw_value_or (bw_value_if (series < BW_N_SERIES,
                                               bw_value_kind ("series", &bw_series,
                                                              MIN (series, BW_N_SERIES - 1))),
                                  _ ("exactly")));
  bw_node_cell (row, bw_value_number ("loss_db", loss_db (kind, made), 2));
  bw_node_cell (row, ohms ("input_ohm", figures.input_ohm));
  bw_node_cell (row, return_loss ("input_return_loss_db", figures.input_ohm, made->source_ohm));
  bw_node_cell (row, ohms ("output_ohm", figures.output_ohm));
  bw_node_cell (row, return_loss ("output_return_loss_db", figures.output_ohm, made->load_ohm));
  if (ask->from_v > 0)
    bw_node_cell (row, bw_value_quantity ("level_v", figures.level_v, BW_DIMENSION_VOLTAGE,
                                          DIGITS));
}

static void
add_pads (BwNode *to, const BwPadsAsk *ask)
{
  BwNode *table = bw_node_table (to, "pads", _ ("What they do"));

  table->is_grouped = TRUE;
  table->names = 2;
  bw_node_column (table, BW_COLUMN_WORDS, _ ("pad"), NULL);
  bw_node_column (table, BW_COLUMN_WORDS, _ ("values"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("loss"), "dB");
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("source sees"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("return loss"), "dB");
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("load sees"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("return loss"), "dB");
  if (ask->from_v > 0)
    bw_node_column (table, BW_COLUMN_NUMBERS, _ ("level"), NULL);
  for (guint i = 0; i < ask->n; i++)
    {
      const BwPadDesign *pad = &ask->pad[i];
      add_made (table, ask, pad->kind, &pad->ideal, BW_N_SERIES);
      for (guint series = 0; series < BW_N_SERIES; series++)
        {
          BwNetwork made;
          bw_network_prefer (&pad->ideal, series, &made);
          if (is_asked (ask, series))
            add_made (table, ask, pad->kind, &made, series);
        }
    }
}

static const char *
answer_words (BwNode *to, const BwPadsAsk *ask)
{
  const BwNetwork *ideal = &ask->pad[0].ideal;
  const BwValue loss = bw_value_number (NULL, loss_db (ask->pad[0].kind, ideal), 2);
  const char *db = bw_node_take (to, bw_value_text (&loss, bw_result_mark (to->result)));
  const char *source = bw_node_quantity (to, ideal->source_ohm, BW_DIMENSION_RESISTANCE, DIGITS);
  const char *load = bw_node_quantity (to, ideal->load_ohm, BW_DIMENSION_RESISTANCE, DIGITS);

  if (ask->pad[0].kind == BW_PAD_L)
    return bw_node_print (to, _ ("From %1$s into %2$s, with the load looking back into %2$s: an L "
                                 "pad, which loses %3$s\u00a0dB."),
                          source, load, db);
  if (ask->pad[0].kind == BW_PAD_MINIMUM_LOSS)
    return bw_node_print (to, _ ("From %1$s into %2$s, matched both ways: the least that resistors "
                                 "can lose is %3$s\u00a0dB."),
                          source, load, db);
  return bw_node_print (to, _ ("Matched to %1$s both ways, with a loss of %2$s\u00a0dB: a T pad or "
                               "a Pi pad."),
                        load, db);
}

/**
 * bw_pads_say:
 *
 * Adds the resistors of one or more pads, exact and preferred, and what each does with them: its
 * loss, what source and load see, and how well that matches them.
 */
void
bw_pads_say (BwNode *to, const BwPadsAsk *ask)
{
  g_return_if_fail (to != NULL && ask != NULL && ask->n > 0 && ask->n <= BW_PADS_MAX);

  bw_node_say (to, BW_SAY_ANSWER, NULL, answer_words (to, ask));
  add_resistors (to, ask);
  add_pads (to, ask);
  bw_node_say (to, BW_SAY_NOTE, NULL,
               ask->pad[0].kind == BW_PAD_L
                   ? _ ("Loss of level at the load, against the source straight on it.")
                   : _ ("Loss of power at the load, against the most that the source can give."));
}
