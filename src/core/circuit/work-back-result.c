/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "results.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "drive.h"

#define DIGITS 3

static BwValue
quantity (const char *key, double value, BwDimension dimension)
{
  return bw_value_quantity (key, value, dimension, DIGITS);
}

static const char *
volts (BwNode *to, double value)
{
  return bw_node_quantity (to, value, BW_DIMENSION_VOLTAGE, DIGITS);
}

static const char *
ohms (BwNode *to, double value)
{
  return bw_node_quantity (to, value, BW_DIMENSION_RESISTANCE, DIGITS);
}

/* What stands at the usual loads of a source. */
static void
add_at_loads (BwNode *to, double open_v, double source_ohm)
{
  static const double loads[] = { BW_VIDEO_OHM, BW_VIDEO_OHM / 2, BW_INPUT_OHM };
  BwNode *table = bw_node_table (to, "at_loads", _ ("Into other loads"));

  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("Load"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("Level"), NULL);
  bw_node_column (table, BW_COLUMN_SAYS, _ ("That is"), NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (loads); i++)
    {
      BwNode *row = bw_node_row (table);
      bw_node_cell (row, quantity ("load_ohm", loads[i], BW_DIMENSION_RESISTANCE));
      bw_node_cell (row, quantity ("level_v", open_v * loads[i] / (source_ohm + loads[i]),
                                   BW_DIMENSION_VOLTAGE));
      bw_node_cell (row, bw_value_says ("load", i == 0   ? _ ("terminated once")
                                                : i == 1 ? _ ("terminated twice")
                                                         : _ ("not terminated")));
    }
}

/**
 * bw_source_ask_say:
 *
 * Adds the resistance of a source and what it gives into the usual loads.
 */
void
bw_source_ask_say (BwNode *to, const BwSourceAsk *ask)
{
  g_return_if_fail (to != NULL && ask != NULL);
  double source_ohm = bw_source_ohm_from_levels (ask->open_v, ask->loaded_v, ask->load_ohm);

  bw_node_say (to, BW_SAY_ANSWER, "says",
               bw_node_print (to, _ ("%1$s without load and %2$s across %3$s: a source resistance of %4$s"),
                              volts (to, ask->open_v), volts (to, ask->loaded_v),
                              ohms (to, ask->load_ohm), ohms (to, source_ohm)));
  bw_node_member (to, bw_value_words ("question", "source"));
  bw_node_member (to, quantity ("open_v", ask->open_v, BW_DIMENSION_VOLTAGE));
  bw_node_figure (to, _ ("Source resistance"),
                  quantity ("source_ohm", source_ohm, BW_DIMENSION_RESISTANCE));
  add_at_loads (to, ask->open_v, source_ohm);
  bw_node_say (to, BW_SAY_NOTE, NULL,
               _ ("Whatever is inside, one voltage and one resistance do the same: load × (open − loaded) / "
                  "loaded."));
}

static void
add_wanted (BwNode *to, const BwDriverAsk *ask, double open_v)
{
  double total_ohm = ask->load_ohm * (open_v / ask->wanted_v - 1);
  double added_ohm = total_ohm - ask->series_ohm;
  const char *wanted = volts (to, ask->wanted_v);

  bw_node_figure (to, _ ("Series for the level wanted"),
                  quantity ("wanted_series_ohm", total_ohm, BW_DIMENSION_RESISTANCE));
  if (total_ohm < 0)
    bw_node_say (to, BW_SAY_NOTE, NULL,
                 bw_node_print (to, _ ("This driver cannot give %s there: an amplifier is needed."), wanted));
  else if (added_ohm >= 0)
    bw_node_say (to, BW_SAY_NOTE, NULL,
                 bw_node_print (to, _ ("For %1$s the series resistance must come to %2$s: %3$s more than "
                                       "now. Where the source must stay matched to its lead, a matched "
                                       "attenuator of %4$s does it instead."),
                                wanted, ohms (to, total_ohm), ohms (to, added_ohm),
                                bw_node_print (to, "%.1f\u00a0dB",
                                               20 * log10 (ask->level_v / ask->wanted_v))));
  else
    bw_node_say (to, BW_SAY_NOTE, NULL,
                 bw_node_print (to, _ ("For %1$s the series resistance must come to %2$s: less than now."),
                                wanted, ohms (to, total_ohm)));
}

/**
 * bw_driver_ask_say:
 *
 * Adds the voltage of a driver, and which series resistance gives the level that is wanted.
 */
void
bw_driver_ask_say (BwNode *to, const BwDriverAsk *ask)
{
  g_return_if_fail (to != NULL && ask != NULL);
  double open_v = bw_open_v_from_level (ask->level_v, ask->series_ohm, ask->load_ohm);

  bw_node_say (to, BW_SAY_ANSWER, "says",
               bw_node_print (to, _ ("%1$s across %2$s behind %3$s: the driver gives %4$s"),
                              volts (to, ask->level_v), ohms (to, ask->load_ohm),
                              ohms (to, ask->series_ohm), volts (to, open_v)));
  bw_node_member (to, bw_value_words ("question", "driver"));
  bw_node_figure (to, _ ("Driver without load"), quantity ("open_v", open_v, BW_DIMENSION_VOLTAGE));
  bw_node_figure (to, _ ("Source resistance"),
                  quantity ("source_ohm", ask->series_ohm, BW_DIMENSION_RESISTANCE));
  if (ask->wanted_v > 0)
    add_wanted (to, ask, open_v);
  add_at_loads (to, open_v, ask->series_ohm);
}

static void
add_drop (BwNode *table, const BwDrop *drop, double accuracy)
{
  BwNode *row = bw_node_row (table);
  BwRange range = bw_drop_load_range (drop, accuracy);

  bw_node_cell (row, quantity ("before_v", drop->before_v, BW_DIMENSION_VOLTAGE));
  bw_node_cell (row, quantity ("after_v", drop->after_v, BW_DIMENSION_VOLTAGE));
  bw_node_cell (row, quantity ("series_ohm", drop->series_ohm, BW_DIMENSION_RESISTANCE));
  bw_node_cell (row, quantity ("load_ohm", bw_drop_load_ohm (drop), BW_DIMENSION_RESISTANCE));
  bw_node_cell (row, quantity ("load_low_ohm", range.low, BW_DIMENSION_RESISTANCE));
  bw_node_cell (row, bw_value_if (isfinite (range.high),
                                  quantity ("load_high_ohm", range.high, BW_DIMENSION_RESISTANCE)));
}

/* What a load is that the readings agree on. */
static const char *
load_words (BwNode *to, BwRange load_ohm)
{
  if (load_ohm.low <= BW_VIDEO_OHM && load_ohm.high >= BW_VIDEO_OHM)
    return _ ("That is one termination of 75 Ω.");
  if (load_ohm.low <= BW_VIDEO_OHM / 2 && load_ohm.high >= BW_VIDEO_OHM / 2)
    return _ ("That is two terminations of 75 Ω: take one away.");
  if (load_ohm.low > BW_VIDEO_OHM)
    return _ ("That is no termination of 75 Ω: the set has none, or it is not on.");
  return _ ("That is neither one nor two terminations of 75 Ω.");
}

/**
 * bw_drops_say:
 *
 * Adds the load that each pair of readings means, and whether one load explains them all.
 */
void
bw_drops_say (BwNode *to, const BwDropsAsk *ask)
{
  g_return_if_fail (to != NULL && ask != NULL && ask->n > 0);
  BwRange load_ohm;
  gboolean agree = bw_drops_agree (ask->drops, ask->n, ask->accuracy, &load_ohm);
  double middle_ohm = isfinite (load_ohm.high) ? sqrt (load_ohm.low * load_ohm.high) : load_ohm.low;

  if (ask->n == 1)
    middle_ohm = bw_drop_load_ohm (&ask->drops[0]);
  bw_node_say (to, BW_SAY_ANSWER, "says",
               agree ? bw_node_print (to, _ ("The resistor ends in a load of about %s"), ohms (to, middle_ohm))
                     : _ ("These readings do not agree with one load"));
  bw_node_member (to, bw_value_words ("question", "load"));
  bw_node_member (to, bw_value_flag ("agree", agree));
  bw_node_member (to, bw_value_if (agree, quantity ("load_ohm", middle_ohm, BW_DIMENSION_RESISTANCE)));
  if (agree)
    bw_node_say (to, BW_SAY_NOTE, NULL, load_words (to, load_ohm));
  else
    bw_node_say (to, BW_SAY_NOTE, NULL,
                 _ ("Either the source sags under load, or the load is not a plain resistance, or one "
                    "reading is wrong. Settle that first: read the source again with each resistor and "
                    "its load in place, then read behind the resistor with 75 Ω across it and nothing "
                    "else."));
  BwNode *table = bw_node_table (to, "drops", NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("Before"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("After"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("Resistor"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("Load"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("At least"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("At most"), NULL);
  for (guint i = 0; i < ask->n; i++)
    add_drop (table, &ask->drops[i], ask->accuracy);
  bw_node_say (to, BW_SAY_NOTE, NULL,
               bw_node_print (to, _ ("At least and at most with each reading off by %s."),
                              bw_node_quantity (to, ask->accuracy, BW_DIMENSION_FRACTION, DIGITS)));
}

/* "high, low": what each driver does, the most significant first. */
static const char *
code_text (BwNode *to, const BwNodeCase *node, guint code)
{
  GString *text = g_string_new (NULL);
  for (guint i = 0; i < node->n; i++)
    g_string_append_c (text, code & (1u << (node->n - 1 - i)) ? '1' : '0');
  return bw_node_take (to, g_string_free (text, FALSE));
}

static int
by_level (gconstpointer a, gconstpointer b)
{
  double one = *(const double *) a, other = *(const double *) b;
  return one < other ? -1 : one > other;
}

/* The smallest and the largest step between levels that follow each other. */
static BwRange
steps_of (const BwNodeCase *node)
{
  guint n = 1u << node->n;
  g_autofree double *levels = g_new (double, n);
  BwRange steps = { INFINITY, 0 };

  for (guint code = 0; code < n; code++)
    levels[code] = bw_node_level_v (node, code);
  qsort (levels, n, sizeof *levels, by_level);
  for (guint i = 1; i < n; i++)
    {
      steps.low = MIN (steps.low, levels[i] - levels[i - 1]);
      steps.high = MAX (steps.high, levels[i] - levels[i - 1]);
    }
  return steps;
}

static void
add_codes (BwNode *to, const BwNodeCase *node)
{
  BwNode *table = bw_node_table (to, "codes", _ ("Each combination"));
  bw_node_column (table, BW_COLUMN_WORDS, _ ("High"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("Level"), NULL);
  for (guint code = 0; code < 1u << node->n; code++)
    {
      BwNode *row = bw_node_row (table);
      bw_node_cell (row, bw_value_words ("code", code_text (row, node, code)));
      bw_node_cell (row, quantity ("level_v", bw_node_level_v (node, code), BW_DIMENSION_VOLTAGE));
    }
}

static void
add_drivers (BwNode *to, const BwNodeCase *node)
{
  BwNode *table = bw_node_table (to, "drivers", _ ("Each driver, alone high"));
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("Voltage"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("Resistor"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("Current"), NULL);
  for (guint i = 0; i < node->n; i++)
    {
      BwNode *row = bw_node_row (table);
      bw_node_cell (row, quantity ("open_v", node->drivers[i].open_v, BW_DIMENSION_VOLTAGE));
      bw_node_cell (row, quantity ("ohm", node->drivers[i].ohm, BW_DIMENSION_RESISTANCE));
      bw_node_cell (row, quantity ("current_a", bw_node_driver_a (node, i), BW_DIMENSION_CURRENT));
    }
}

/**
 * bw_node_case_say:
 *
 * Adds the levels of a node that several drivers feed through a resistor each, its steps, and what a second
 * termination makes of it.
 */
void
bw_node_case_say (BwNode *to, const BwNodeCase *node)
{
  g_return_if_fail (to != NULL && node != NULL && node->n > 0);
  guint all = (1u << node->n) - 1;
  double source_ohm = bw_node_source_ohm (node);
  double all_v = bw_node_level_v (node, all);
  double open_v = all_v * (source_ohm + node->load_ohm) / node->load_ohm;
  BwNodeCase twice = *node;
  BwRange steps = steps_of (node);

  twice.load_ohm = bw_parallel_ohm (node->load_ohm, BW_VIDEO_OHM);
  double twice_v = bw_node_level_v (&twice, all);
  bw_node_say (to, BW_SAY_ANSWER, "says",
               bw_node_print (to, _ ("All high: %1$s across %2$s, from a source resistance of %3$s"),
                              volts (to, all_v), ohms (to, node->load_ohm), ohms (to, source_ohm)));
  bw_node_member (to, bw_value_words ("question", "node"));
  bw_node_figure (to, _ ("Source resistance"),
                  quantity ("source_ohm", source_ohm, BW_DIMENSION_RESISTANCE));
  bw_node_figure (to, _ ("All high, without load"), quantity ("open_v", open_v, BW_DIMENSION_VOLTAGE));
  bw_node_figure (to, _ ("All high, loaded"), quantity ("level_v", all_v, BW_DIMENSION_VOLTAGE));
  bw_node_figure (to, _ ("With 75 Ω more across it"),
                  quantity ("second_load_v", twice_v, BW_DIMENSION_VOLTAGE));
  bw_node_figure (to, _ ("Smallest step"), quantity ("least_step_v", steps.low, BW_DIMENSION_VOLTAGE));
  bw_node_figure (to, _ ("Largest step"), quantity ("most_step_v", steps.high, BW_DIMENSION_VOLTAGE));
  bw_node_say (to, BW_SAY_NOTE, NULL,
               bw_node_print (to,
                              _ ("A second load of 75 Ω makes it %s, which is not two thirds of it, as "
                                 "behind a source of 75 Ω."),
                              volts (to, twice_v)));
  add_drivers (to, node);
  add_codes (to, node);
}

/* One reading alone */

typedef struct
{
  const char *id;
  const char *what;
  double level_v;
} Nominal;

/* ITU-R BT.1700 (700 and 300 mV), SMPTE 170M (714 and 286 mV); logic: common practice, no source. */
static const Nominal nominals[] = {
  { "white-700", N_ ("white above blanking, 625 lines, component and RGB"), 0.7 },
  { "white-714", N_ ("white above blanking, 525 lines"), 100.0 / 140 },
  { "composite", N_ ("sync tip to white"), 1.0 },
  { "sync-300", N_ ("sync, 625 lines, component and RGB; burst, 625 lines"), 0.3 },
  { "sync-286", N_ ("sync or burst, 525 lines"), 40.0 / 140 },
};

static const struct
{
  const char *id;
  double ratio;
  const char *what;
  const char *next;
} states[] = {
  { "right", 1, N_ ("as it should be"),
    N_ ("Take the 75 Ω away: the level must double.") },
  { "unterminated", 2, N_ ("the 75 Ω is missing"),
    N_ ("Put 75 Ω across it: the level must halve.") },
  { "two-loads", 2.0 / 3, N_ ("terminated twice"),
    N_ ("Take one 75 Ω away: the level must rise 1.5 times.") },
  { "three-loads", 0.5, N_ ("terminated three times, or 75 Ω too much in series"),
    N_ ("Read both ends of the lead: a series resistance shows as a difference between them.") },
};

static gboolean
fits (double level_v, double accuracy, gsize state, gsize nominal)
{
  return fabs (level_v / (nominals[nominal].level_v * states[state].ratio) - 1) <= accuracy;
}

static gboolean
fits_any (double level_v, double accuracy)
{
  for (gsize i = 0; i < G_N_ELEMENTS (states) * G_N_ELEMENTS (nominals); i++)
    if (fits (level_v, accuracy, i / G_N_ELEMENTS (nominals), i % G_N_ELEMENTS (nominals)))
      return TRUE;
  return FALSE;
}

static void
add_fit (BwNode *table, gsize state, gsize nominal)
{
  BwNode *row = bw_node_row (table);
  bw_node_cell (row, bw_value_says ("signal", _ (nominals[nominal].what)));
  bw_node_cell (row, bw_value_says ("state", _ (states[state].what)));
  bw_node_cell (row, quantity ("nominal_v", nominals[nominal].level_v * states[state].ratio,
                               BW_DIMENSION_VOLTAGE));
  bw_node_cell (row, bw_value_says ("next", _ (states[state].next)));
  bw_node_member (row, bw_value_words ("signal_id", nominals[nominal].id));
  bw_node_member (row, bw_value_words ("state_id", states[state].id));
}

/**
 * bw_level_fits_say:
 * @level_v: a reading of which nothing else is known
 * @accuracy: as a share
 *
 * Adds what the reading fits, each with the next reading that decides. It is no verdict.
 */
void
bw_level_fits_say (BwNode *to, double level_v, double accuracy)
{
  g_return_if_fail (to != NULL && level_v > 0 && accuracy >= 0);
  gboolean any = fits_any (level_v, accuracy);

  bw_node_member (to, bw_value_words ("question", "level"));
  bw_node_say (to, BW_SAY_ANSWER, "says",
               any ? _ ("One reading alone decides nothing: this is what it fits")
                   : _ ("This reading fits none of the usual levels"));
  BwNode *table = bw_node_table (to, "fits", NULL);
  bw_node_column (table, BW_COLUMN_SAYS, _ ("It may be"), NULL);
  bw_node_column (table, BW_COLUMN_SAYS, _ ("And then"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("Nominal"), NULL);
  bw_node_column (table, BW_COLUMN_SAYS, _ ("The next reading that decides"), NULL);
  for (gsize state = 0; state < G_N_ELEMENTS (states); state++)
    for (gsize nominal = 0; nominal < G_N_ELEMENTS (nominals); nominal++)
      if (fits (level_v, accuracy, state, nominal))
        add_fit (table, state, nominal);
  if (!any)
    bw_node_say (to, BW_SAY_NOTE, NULL,
                 _ ("Read it once more with a load that is known, such as 75 Ω, and give both: the two "
                    "tell voltage and resistance of the source."));
}
