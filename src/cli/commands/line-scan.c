/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gi18n-lib.h>

#include "cli/base/arguments.h"
#include "cli/base/output.h"
#include "cli/base/show.h"
#include "core/service/results.h"

/* As they came; NULL where they did not. */
typedef struct
{
  char *supply;
  char *inductance;
  char *capacitor;
  char *scan;
} LineOptions;

static BwCliExit
show (const BwCliCommand *command, const LineOptions *own, const BwCliOptions *options)
{
  BwLineStage stage = { 0 };

  if (own->supply == NULL || own->inductance == NULL || own->capacitor == NULL || own->scan == NULL)
    return bw_cli_wrong_usage (command->name,
                               _ ("--supply, --inductance, --capacitor and --scan are needed"));
  if (!bw_argument_within ("--supply", own->supply, BW_DIMENSION_VOLTAGE, (BwRange){ 0.1, 2000 },
                           &stage.supply_v)
      || !bw_argument_within ("--inductance", own->inductance, BW_DIMENSION_INDUCTANCE,
                              (BwRange){ 1e-9, 10 }, &stage.henry)
      || !bw_argument_within ("--capacitor", own->capacitor, BW_DIMENSION_CAPACITANCE,
                              (BwRange){ 1e-12, 1e-3 }, &stage.farad)
      || !bw_argument_within ("--scan", own->scan, BW_DIMENSION_TIME, (BwRange){ 1e-7, 1e-2 },
                              &stage.scan_s))
    return BW_CLI_BAD_INPUT;
  g_autoptr (BwResult) result = bw_cli_result_new (options);
  bw_line_scan_say (bw_result_root (result), &stage);
  return bw_cli_show (options, result);
}

/**
 * bw_cli_line_scan:
 *
 * breezeway-cli line-scan: peak voltage, retrace, current and energy of a line output stage.
 *
 * Returns: how the program ends
 */
BwCliExit
bw_cli_line_scan (const BwCliCommand *command, char **args)
{
  LineOptions own = { 0 };
  const GOptionEntry entries[] = {
    { "supply", 0, 0, G_OPTION_ARG_STRING, &own.supply, N_ ("Across the coil during the scan"),
      N_ ("VOLTAGE") },
    { "inductance", 0, 0, G_OPTION_ARG_STRING, &own.inductance, N_ ("Of the coil"),
      N_ ("INDUCTANCE") },
    { "capacitor", 'c', 0, G_OPTION_ARG_STRING, &own.capacitor, N_ ("For the retrace"),
      N_ ("CAPACITANCE") },
    { "scan", 0, 0, G_OPTION_ARG_STRING, &own.scan, N_ ("Time from left to right"), N_ ("TIME") },
    G_OPTION_ENTRY_NULL,
  };
  g_auto (BwCliOptions) options;
  BwCliExit result = BW_CLI_DONE;

  if (bw_cli_options_read (&options, command, entries, args, &result))
    result = show (command, &own, &options);
  g_free (own.supply);
  g_free (own.inductance);
  g_free (own.capacitor);
  g_free (own.scan);
  return result;
}
