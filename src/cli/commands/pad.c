/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include <glib/gi18n-lib.h>

#include "cli/base/arguments.h"
#include "cli/base/output.h"
#include "cli/base/show.h"
#include "core/circuit/results.h"

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

/* A quantity that may be zero. */
static gboolean
read_from_zero (const char *option, const char *raw, BwDimension dimension, double *value)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *text = bw_argument_utf8 (raw);
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
read_pad (const BwCliCommand *command, const PadOptions *own, BwPadAsk *pad)
{
  g_autoptr (GError) error = NULL;
  *pad = (BwPadAsk){ .load_ohm = BW_VIDEO_OHM,
                     .supply_tolerance = BW_SUPPLY_TOLERANCE,
                     .series = BW_USUAL_SERIES,
                     .one_series = own->series != NULL };

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
  gboolean of_any = g_error_matches (error, BW_PADS_ERROR, BW_PADS_ERROR_VALUE);
  bw_cli_complain ("%s%s", of_any ? "" : "--to: ", error->message);
  return BW_CLI_BAD_INPUT;
}

static BwCliExit
show (const BwPadAsk *pad, const BwCliOptions *options)
{
  g_autoptr (BwResult) result = bw_cli_result_new (options);
  bw_pad_say (bw_result_root (result), pad);
  if (pad->load_ohm > 1e3)
    bw_node_say (bw_result_root (result), BW_SAY_NOTE, NULL,
                 _ ("Into a terminated input of 75 Ω the level would be another: see --load."));
  return bw_cli_show (options, result);
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
  BwPadAsk pad;
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
        result = show (&pad, &options);
    }
  options_clear (&own);
  return result;
}
