/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gi18n-lib.h>

#include "cli/base/json.h"
#include "cli/base/options.h"
#include "cli/base/output.h"
#include "cli/choose/bench.h"

static BwCliExit
print_json (const char *path, GPtrArray *faults)
{
  g_autoptr (BwJson) json = bw_json_new ();
  bw_json_begin_object (json, NULL);
  bw_json_string (json, "sheet", path);
  bw_json_boolean (json, "sound", faults->len == 0);
  bw_json_begin_array (json, "faults");
  for (guint i = 0; i < faults->len; i++)
    bw_json_string (json, NULL, ((const GError *) faults->pdata[i])->message);
  bw_json_end_array (json);
  bw_json_end_object (json);
  return bw_cli_print_data (bw_json_text (json));
}

static BwCliExit
print_sound (const char *path, const BwSheet *sheet)
{
  g_autofree char *says = g_strdup_printf (_ ("%s: sound; inputs: %u, sources: %u\n"), path,
                                           sheet->monitor->inputs->len, sheet->sources->len);
  return bw_cli_print (says);
}

/**
 * bw_cli_sheet_check:
 *
 * breezeway-cli sheet-check: says every fault of a bench sheet, one line each on standard error.
 *
 * Returns: how the program ends
 */
BwCliExit
bw_cli_sheet_check (const BwCliCommand *command, char **args)
{
  g_auto (BwCliOptions) options;
  BwCliExit result = BW_CLI_DONE;
  if (!bw_cli_options_read (&options, command, NULL, args, &result))
    return result;

  const char *path = options.rest[0];
  g_autoptr (BwCatalogue) catalogue = bw_cli_load_catalogue ();
  g_autoptr (GPtrArray) faults = g_ptr_array_new_with_free_func ((GDestroyNotify) g_error_free);
  g_autoptr (BwSheet) sheet = bw_sheet_load (path, catalogue, faults);

  for (guint i = 0; i < faults->len; i++)
    bw_cli_fault (((const GError *) faults->pdata[i])->message);
  if (options.json)
    result = print_json (path, faults);
  else if (sheet != NULL)
    result = print_sound (path, sheet);
  return sheet != NULL ? result : BW_CLI_BAD_INPUT;
}
