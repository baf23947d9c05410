/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gi18n-lib.h>

#include "cli/base/arguments.h"
#include "cli/base/output.h"
#include "cli/base/show.h"
#include "cli/choose/bench.h"
#include "cli/choose/standard-limits.h"
#include "core/raster/results.h"

static BwCliExit
show_list (GPtrArray *all, const BwStandardLimits *one, const BwCliOptions *options)
{
  g_autoptr (BwResult) result = bw_cli_result_new (options);
  bw_standards_say (bw_result_root (result), all, one);
  if (one == NULL)
    bw_node_say (bw_result_root (result), BW_SAY_NOTE, NULL,
                 _ ("With --standard ID, --list shows its readings and their limits."));
  return bw_cli_show (options, result);
}

/* Enters one argument of the command line. A level may be below zero. */
static BwCliExit
enter (BwReadingsTaken *taken, const BwStandardLimits *limits, const BwSheet *sheet,
       double accuracy, const char *command, const char *raw)
{
  g_autofree char *name = NULL;
  g_autofree char *value = NULL;
  g_autoptr (GError) error = NULL;
  guint kind;

  if (!bw_argument_pair (raw, &name, &value))
    return bw_cli_wrong_usage (command, _ ("write NAME=QUANTITY, such as line_sync=4.7us"));
  if (!bw_argument_kind (&bw_readings, '_', name, &kind))
    return BW_CLI_BAD_INPUT;
  if (taken->read[kind])
    {
      g_autofree char *says = g_strdup_printf (_ ("%s stands twice"), name);
      return bw_cli_wrong_usage (command, says);
    }
  BwMeasured measured;
  if (bw_reading_read (limits, kind, value, bw_argument_mark (value), &measured, &error))
    {
      taken->read[kind] = TRUE;
      taken->value[kind] = measured.value;
      if (!(accuracy > 0) && sheet != NULL)
        accuracy = bw_sheet_accuracy (sheet, bw_reading_dimension (kind));
      taken->uncertainty[kind] = bw_measured_uncertainty (&measured, accuracy);
      return BW_CLI_DONE;
    }
  bw_cli_complain ("%s: %s", name, error->message);
  return BW_CLI_BAD_INPUT;
}

static BwCliExit
judge (const char *command, const BwStandardLimits *limits, const char *raw_accuracy,
       const char *path, const BwCliOptions *options)
{
  g_autoptr (BwCatalogue) catalogue = path != NULL ? bw_cli_load_catalogue () : NULL;
  g_autoptr (BwSheet) sheet = path != NULL ? bw_cli_load_sheet (path, catalogue) : NULL;
  BwReadingsTaken taken = { 0 };
  double accuracy = 0;
  if (path != NULL && sheet == NULL)
    return BW_CLI_BAD_INPUT;
  if (raw_accuracy != NULL
      && !bw_argument_quantity ("--accuracy", raw_accuracy, BW_DIMENSION_FRACTION, &accuracy))
    return BW_CLI_BAD_INPUT;
  for (char **pair = options->rest; *pair != NULL; pair++)
    {
      BwCliExit entered = enter (&taken, limits, sheet, accuracy, command, *pair);
      if (entered != BW_CLI_DONE)
        return entered;
    }
  g_autoptr (BwResult) result = bw_cli_result_new (options);
  bw_readings_say (bw_result_root (result), limits, &taken);
  return bw_cli_show (options, result);
}

typedef struct
{
  char *standard; /* as it came */
  char *accuracy; /* as it came */
  char *sheet;    /* as it came */
  gboolean list;
} ReadingsOptions;

static BwCliExit
run_readings (const BwCliCommand *command, const ReadingsOptions *own, const BwCliOptions *options)
{
  if (own->list == (options->n_rest > 0))
    return bw_cli_wrong_usage (command->name, _ ("either NAME=QUANTITY or --list is needed"));
  if (!own->list && own->standard == NULL)
    return bw_cli_wrong_usage (command->name, _ ("--standard is missing; --list names them"));

  g_autoptr (GPtrArray) all = bw_limits_shipped ();
  const BwStandardLimits *limits = NULL;
  if (own->standard != NULL && (limits = bw_cli_find_limits (all, own->standard)) == NULL)
    return BW_CLI_BAD_INPUT;
  return own->list ? show_list (all, limits, options)
                   : judge (command->name, limits, own->accuracy, own->sheet, options);
}

/**
 * bw_cli_readings:
 *
 * breezeway-cli readings: whether what a scope reads is within what a standard allows.
 *
 * Returns: how the program ends
 */
BwCliExit
bw_cli_readings (const BwCliCommand *command, char **args)
{
  ReadingsOptions own = { 0 };
  const GOptionEntry entries[] = {
    { "standard", 0, 0, G_OPTION_ARG_FILENAME, &own.standard, N_ ("The standard to judge by"),
      N_ ("ID") },
    { "accuracy", 0, 0, G_OPTION_ARG_FILENAME, &own.accuracy,
      N_ ("Of the instrument, such as 3%; without it as in the sheet, else the digits tell"),
      N_ ("PERCENT") },
    { "sheet", 0, 0, G_OPTION_ARG_FILENAME, &own.sheet,
      N_ ("A bench sheet that holds the accuracy of the instruments"), N_ ("SHEET") },
    { "list", 'l', 0, G_OPTION_ARG_NONE, &own.list,
      N_ ("List the standards, or what one of them lays down"), NULL },
    G_OPTION_ENTRY_NULL,
  };
  g_auto (BwCliOptions) options;
  BwCliExit result = BW_CLI_DONE;

  if (bw_cli_options_read (&options, command, entries, args, &result))
    result = run_readings (command, &own, &options);
  g_free (own.standard);
  g_free (own.accuracy);
  g_free (own.sheet);
  return result;
}
