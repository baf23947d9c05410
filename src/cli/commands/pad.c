/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include <glib/gi18n-lib.h>

#include "cli/base/arguments.h"
#include "cli/base/json.h"
#include "cli/base/options.h"
#include "cli/base/output.h"
#include "cli/base/table.h"
#include "cli/base/words.h"
#include "core/circuit/pads.h"

/* As they came; NULL where they did not. */
typedef struct
{
  char *from;
  char *to;
  char *driver;
  char *load;
  char *series;
  char *supply;
} PadOptions;

/* What is asked for, and the exact network. */
typedef struct
{
  double from_v;
  double to_v;
  double driver_ohm;
  double load_ohm;
  double supply_tolerance;
  guint series;
  BwNetwork ideal;
} Pad;

/* A quantity that may be zero. */
static gboolean
read_from_zero (const char *option, const char *raw, BwDimension dimension, double *value)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *text = bw_words_utf8 (raw);
  if (!bw_quantity_parse (text, dimension, bw_argument_mark (text), value, &error))
    bw_cli_complain ("%s: %s", option, error->message);
  else if (!(*value >= 0))
    bw_cli_complain (_ ("%s: “%s” must not be less than zero"), option, text);
  else
    return TRUE;
  return FALSE;
}

static gboolean
read_tolerance (const char *raw, double *share)
{
  if (!read_from_zero ("--supply-tolerance", raw, BW_DIMENSION_FRACTION, share))
    return FALSE;
  if (*share < 1)
    return TRUE;
  bw_cli_complain (_ ("--supply-tolerance: write less than 100 %%"));
  return FALSE;
}

static BwCliExit
read_pad (const BwCliCommand *command, const PadOptions *own, Pad *pad)
{
  g_autoptr (GError) error = NULL;
  *pad = (Pad){ .load_ohm = BW_VIDEO_OHM,
                .supply_tolerance = BW_SUPPLY_TOLERANCE,
                .series = BW_USUAL_SERIES };

  if (own->from == NULL || own->to == NULL)
    return bw_cli_wrong_usage (command->name, _ ("--from and --to are needed"));
  if (own->series != NULL && !bw_kind_find (&bw_series, own->series, &pad->series))
    return bw_cli_wrong_usage (command->name, _ ("--series takes e12, e24 or e96"));
  if (!bw_argument_quantity ("--from", own->from, BW_DIMENSION_VOLTAGE, &pad->from_v)
      || !bw_argument_quantity ("--to", own->to, BW_DIMENSION_VOLTAGE, &pad->to_v)
      || (own->driver != NULL
          && !read_from_zero ("--driver", own->driver, BW_DIMENSION_RESISTANCE, &pad->driver_ohm))
      || (own->load != NULL
          && !bw_argument_quantity ("--load", own->load, BW_DIMENSION_RESISTANCE, &pad->load_ohm))
      || (own->supply != NULL && !read_tolerance (own->supply, &pad->supply_tolerance)))
    return BW_CLI_BAD_INPUT;
  if (bw_pad_series (pad->from_v, pad->driver_ohm, pad->load_ohm, pad->to_v, &pad->ideal, &error))
    return BW_CLI_DONE;
  bw_cli_complain ("--to: %s", error->message);
  return BW_CLI_BAD_INPUT;
}

/* Of the one resistor; zero where none is needed. */
static double
ohm_of (const BwNetwork *network)
{
  return network->n > 0 ? network->at[0].ohm : 0;
}

static void
append_json (const Pad *pad, BwJson *json)
{
  BwPadChoice choice;
  bw_network_choose (&pad->ideal, pad->series, pad->supply_tolerance, &choice);
  bw_json_number (json, "ideal_ohm", ohm_of (&pad->ideal));
  bw_json_number (json, "value_ohm", ohm_of (&choice.network));
  bw_json_number (json, "level_v", choice.figures.level_v);
  bw_json_number (json, "min_v", choice.spread_v.low);
  bw_json_number (json, "max_v", choice.spread_v.high);
  bw_json_number (json, "power_w", choice.figures.element_w[0]);
}

static char *
quantity (double value, BwDimension dimension)
{
  return bw_quantity_format (value, dimension, 4, bw_quantity_locale_mark ());
}

static void
add_row (BwTable *table, const Pad *pad, BwSeries series)
{
  BwPadChoice choice;
  bw_network_choose (&pad->ideal, series, pad->supply_tolerance, &choice);
  g_autofree char *tolerance = quantity (bw_series_tolerance (series), BW_DIMENSION_FRACTION);
  g_autofree char *value = quantity (ohm_of (&choice.network), BW_DIMENSION_RESISTANCE);
  g_autofree char *level = quantity (choice.figures.level_v, BW_DIMENSION_VOLTAGE);
  g_autofree char *low = quantity (choice.spread_v.low, BW_DIMENSION_VOLTAGE);
  g_autofree char *high = quantity (choice.spread_v.high, BW_DIMENSION_VOLTAGE);
  g_autofree char *milliwatts = bw_words_fixed (choice.figures.element_w[0] * 1000, 1);
  g_autofree char *power = g_strconcat (milliwatts, " mW", NULL);
  bw_table_add_row (table, bw_kind_label (&bw_series, series), value, tolerance, level, low, high,
                    power, NULL);
}

/* One series if it was asked for, else all of them. */
static void
append_text (const Pad *pad, gboolean one_series, GString *text)
{
  g_autoptr (BwTable) table = bw_table_new (7);
  g_autofree char *from = quantity (pad->from_v, BW_DIMENSION_VOLTAGE);
  g_autofree char *to = quantity (pad->to_v, BW_DIMENSION_VOLTAGE);
  g_autofree char *driver = quantity (pad->driver_ohm, BW_DIMENSION_RESISTANCE);
  g_autofree char *load = quantity (pad->load_ohm, BW_DIMENSION_RESISTANCE);
  g_autofree char *ideal = quantity (ohm_of (&pad->ideal), BW_DIMENSION_RESISTANCE);
  g_autofree char *supply = quantity (pad->supply_tolerance, BW_DIMENSION_FRACTION);

  g_string_append_printf (text, _ ("%s behind %s to %s across %s: a series resistor of %s\n\n"),
                          from, driver, to, load, ideal);
  for (guint column = 1; column < 7; column++)
    bw_table_set_right (table, column);
  bw_table_add_row (table, _ ("series"), _ ("value"), _ ("tolerance"), _ ("level"), _ ("lowest"),
                    _ ("highest"), _ ("power"), NULL);
  for (guint series = 0; series < BW_N_SERIES; series++)
    if (!one_series || series == pad->series)
      add_row (table, pad, series);
  bw_table_append_to (table, text, 0);
  g_string_append_printf (text,
                          _ ("\nLowest and highest over the resistor's tolerance (common practice "
                             "for the series)\nand a supply of ±%s. Power with the driver standing "
                             "at its full voltage.\n"),
                          supply);
  if (pad->load_ohm > 1e3)
    g_string_append (text, _ ("Into a terminated input of 75 Ω the level would be another: see "
                              "--load.\n"));
}

static BwCliExit
show (const Pad *pad, gboolean one_series, gboolean as_json)
{
  if (as_json)
    {
      g_autoptr (BwJson) json = bw_json_new ();
      bw_json_begin_object (json, NULL);
      append_json (pad, json);
      bw_json_end_object (json);
      return bw_cli_print_json (bw_json_text (json));
    }
  g_autoptr (GString) text = g_string_new (NULL);
  append_text (pad, one_series, text);
  return bw_cli_print (text->str);
}

static void
options_clear (PadOptions *own)
{
  g_free (own->from);
  g_free (own->to);
  g_free (own->driver);
  g_free (own->load);
  g_free (own->series);
  g_free (own->supply);
}

/**
 * bw_cli_pad:
 *
 * breezeway-cli pad: a series resistor that brings sync down to the level that an input wants.
 *
 * Returns: how the program ends
 */
BwCliExit
bw_cli_pad (const BwCliCommand *command, char **args)
{
  PadOptions own = { 0 };
  Pad pad;
  const GOptionEntry entries[] = {
    { "from", 'f', 0, G_OPTION_ARG_STRING, &own.from,
      N_ ("The driver's voltage without load, such as 5V"), N_ ("VOLTAGE") },
    { "to", 't', 0, G_OPTION_ARG_STRING, &own.to, N_ ("The voltage wanted, such as 300mV"),
      N_ ("VOLTAGE") },
    { "driver", 'd', 0, G_OPTION_ARG_STRING, &own.driver,
      N_ ("The driver's own resistance (default 0 ohm)"), N_ ("RESISTANCE") },
    { "load", 'l', 0, G_OPTION_ARG_STRING, &own.load,
      N_ ("The input's resistance with its terminator (default 75 ohm)"), N_ ("RESISTANCE") },
    { "series", 's', 0, G_OPTION_ARG_STRING, &own.series,
      N_ ("Preferred values: e12 (10 %), e24 (5 %) or e96 (1 %) (default e24)"),
      N_ ("e12|e24|e96") },
    { "supply-tolerance", 0, 0, G_OPTION_ARG_STRING, &own.supply,
      N_ ("Tolerance of the driver's voltage (default 5 %)"), N_ ("SHARE") },
    G_OPTION_ENTRY_NULL,
  };
  g_auto (BwCliOptions) options;
  BwCliExit result = BW_CLI_DONE;

  if (bw_cli_options_read (&options, command, entries, args, &result))
    {
      result = read_pad (command, &own, &pad);
      if (result == BW_CLI_DONE)
        result = show (&pad, own.series != NULL, options.json);
    }
  options_clear (&own);
  return result;
}
