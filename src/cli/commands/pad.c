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
  char *loss;
  gboolean match;
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
    bw_cli_complain (_ ("%1$s: “%2$s” must not be less than zero"), option, text);
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
read_series (const BwCliCommand *command, const PadOptions *own, guint *series)
{
  *series = BW_USUAL_SERIES;
  if (own->series == NULL || bw_kind_find (&bw_series, own->series, series))
    return BW_CLI_DONE;
  return bw_cli_wrong_usage (command->name, _ ("--series takes e12, e24 or e96"));
}

/* Pads that match */

typedef struct
{
  double to_v;
  double driver_ohm;
  double load_ohm;
  double loss_db;
} MatchAsk;

/* "6 dB", with or without its unit; what a pad can lose is checked by the pad. */
static gboolean
read_decibels (const char *option, const char *raw, double *db)
{
  g_autofree char *given = bw_argument_utf8 (raw);
  const char *unit;

  if (bw_argument_number (given, db, &unit))
    {
      unit += strspn (unit, " ");
      if (*unit == '\0' || strcmp (unit, "dB") == 0)
        return TRUE;
    }
  bw_cli_complain (_ ("%1$s: “%2$s” is not a number of decibels, such as 6dB"), option, given);
  return FALSE;
}

/* Which options go together. */
static const char *
why_no_match (const PadOptions *own)
{
  if (own->supply != NULL)
    return _ ("--supply-tolerance does not go with --match and --loss");
  if (own->loss != NULL && (own->match || own->to != NULL || own->driver != NULL))
    return _ ("--loss does not go with --match, --to and --driver: the pad is matched to --load");
  if (own->match && own->to != NULL && own->from == NULL)
    return _ ("--to needs --from");
  if (own->match && own->to == NULL && own->driver == NULL)
    return _ ("--match needs --driver, the source's own resistance, or --from and --to");
  return NULL;
}

static gboolean
read_match (const PadOptions *own, MatchAsk *match, double *from_v)
{
  *match = (MatchAsk){ .load_ohm = BW_VIDEO_OHM };
  return (own->from == NULL
          || bw_argument_quantity ("--from", own->from, BW_DIMENSION_VOLTAGE, from_v))
         && (own->to == NULL
             || bw_argument_quantity ("--to", own->to, BW_DIMENSION_VOLTAGE, &match->to_v))
         && (own->driver == NULL
             || read_from_zero ("--driver", own->driver, BW_DIMENSION_RESISTANCE,
                                &match->driver_ohm))
         && (own->load == NULL
             || bw_argument_quantity ("--load", own->load, BW_DIMENSION_RESISTANCE,
                                      &match->load_ohm))
         && (own->loss == NULL
             || read_decibels ("--loss", own->loss, &match->loss_db));
}

/* Without --from a source of 1 V: no level is shown then. */
static gboolean
design (const PadOptions *own, const MatchAsk *match, BwPadsAsk *ask, GError **error)
{
  double open_v = ask->from_v > 0 ? ask->from_v : 1, loss_db;
  BwPadDesign *pad = ask->pad;

  ask->n = own->loss != NULL ? 2 : 1;
  if (own->loss != NULL)
    {
      pad[0].kind = BW_PAD_T;
      pad[1].kind = BW_PAD_PI;
      return bw_pad_matched (BW_PAD_T, open_v, match->load_ohm, match->loss_db, &pad[0].ideal,
                             error)
             && bw_pad_matched (BW_PAD_PI, open_v, match->load_ohm, match->loss_db, &pad[1].ideal,
                                error);
    }
  pad->kind = own->to != NULL ? BW_PAD_L : BW_PAD_MINIMUM_LOSS;
  if (own->to != NULL)
    return bw_pad_l (open_v, match->driver_ohm, match->load_ohm, match->to_v, &pad->ideal, error);
  return bw_pad_minimum_loss (open_v, match->driver_ohm, match->load_ohm, &pad->ideal, &loss_db,
                              error);
}

static BwCliExit
show_match (const BwCliCommand *command, const PadOptions *own, const BwCliOptions *options)
{
  g_autoptr (GError) error = NULL;
  BwPadsAsk ask = { .one_series = own->series != NULL };
  const char *why = why_no_match (own);
  MatchAsk match;

  if (why != NULL)
    return bw_cli_wrong_usage (command->name, why);
  BwCliExit read = read_series (command, own, &ask.series);
  if (read != BW_CLI_DONE)
    return read;
  if (!read_match (own, &match, &ask.from_v))
    return BW_CLI_BAD_INPUT;
  if (!design (own, &match, &ask, &error))
    {
      bw_cli_complain ("%s: %s", own->loss != NULL ? "--loss" : own->to != NULL ? "--to" : "--match",
                       error->message);
      return BW_CLI_BAD_INPUT;
    }
  g_autoptr (BwResult) result = bw_cli_result_new (options);
  bw_pads_say (bw_result_root (result), &ask);
  return bw_cli_show (options, result);
}

/* A series resistor */

static BwCliExit
read_pad (const BwCliCommand *command, const PadOptions *own, BwPadAsk *pad)
{
  g_autoptr (GError) error = NULL;
  *pad = (BwPadAsk){ .load_ohm = BW_VIDEO_OHM,
                     .supply_tolerance = BW_SUPPLY_TOLERANCE,
                     .one_series = own->series != NULL };

  if (own->from == NULL || own->to == NULL)
    return bw_cli_wrong_usage (command->name, _ ("--from and --to are needed"));
  BwCliExit read = read_series (command, own, &pad->series);
  if (read != BW_CLI_DONE)
    return read;
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
show_pad (const BwCliCommand *command, const PadOptions *own, const BwCliOptions *options)
{
  BwPadAsk pad;
  BwCliExit read = read_pad (command, own, &pad);
  if (read != BW_CLI_DONE)
    return read;

  g_autoptr (BwResult) result = bw_cli_result_new (options);
  bw_pad_say (bw_result_root (result), &pad);
  if (pad.load_ohm > 1e3)
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
  g_free (own->loss);
}

/**
 * bw_cli_pad:
 *
 * breezeway-cli pad: a series resistor that brings sync down to the level that an input wants, or
 * a pad that matches.
 *
 * Returns: how the program ends
 */
BwCliExit
bw_cli_pad (const BwCliCommand *command, char **args)
{
  PadOptions own = { 0 };
  const GOptionEntry entries[] = {
    { "from", 0, 0, G_OPTION_ARG_STRING, &own.from,
      N_ ("The driver's voltage without load, such as 5V"), N_ ("VOLTAGE") },
    { "to", 't', 0, G_OPTION_ARG_STRING, &own.to, N_ ("The voltage wanted, such as 300mV"),
      N_ ("VOLTAGE") },
    { "driver", 0, 0, G_OPTION_ARG_STRING, &own.driver,
      N_ ("The driver's own resistance (default 0 ohm)"), N_ ("RESISTANCE") },
    { "load", 0, 0, G_OPTION_ARG_STRING, &own.load,
      N_ ("The input's resistance with its terminator (default 75 ohm)"), N_ ("RESISTANCE") },
    { "match", 0, 0, G_OPTION_ARG_NONE, &own.match,
      N_ ("Match: with --from and --to an L pad, else between --driver and --load the pad of "
          "minimum loss"),
      NULL },
    { "loss", 0, 0, G_OPTION_ARG_STRING, &own.loss,
      N_ ("A T and a Pi pad of this loss, such as 6dB, matched to --load"), N_ ("DECIBELS") },
    { "series", 0, 0, G_OPTION_ARG_STRING, &own.series,
      N_ ("Preferred values: e12 (10 %), e24 (5 %) or e96 (1 %) (default e24)"),
      N_ ("e12|e24|e96") },
    { "supply-tolerance", 0, 0, G_OPTION_ARG_STRING, &own.supply,
      N_ ("Tolerance of the driver's voltage (default 5 %)"), N_ ("SHARE") },
    G_OPTION_ENTRY_NULL,
  };
  g_auto (BwCliOptions) options;
  BwCliExit result = BW_CLI_DONE;

  if (bw_cli_options_read (&options, command, entries, args, &result))
    result = own.match || own.loss != NULL ? show_match (command, &own, &options)
                                           : show_pad (command, &own, &options);
  options_clear (&own);
  return result;
}
