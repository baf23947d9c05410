/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gi18n-lib.h>

#include "cli/base/json.h"
#include "cli/base/options.h"
#include "cli/base/output.h"
#include "cli/choose/bench.h"
#include "cli/choose/target.h"
#include "core/base/file.h"
#include "core/interchange/interchange.h"

static BwCliExit
print_json (const char *path, const char *target, GPtrArray *notes)
{
  g_autoptr (BwJson) json = bw_json_new ();
  bw_json_begin_object (json, NULL);
  bw_json_string (json, "sheet", path);
  bw_json_string (json, "edid", target);
  bw_json_begin_array (json, "notes");
  for (guint i = 0; i < notes->len; i++)
    bw_json_string (json, NULL, notes->pdata[i]);
  bw_json_end_array (json);
  bw_json_end_object (json);
  return bw_cli_print_json (bw_json_text (json));
}

static BwCliExit
write_edid (const char *path, const char *target, gboolean as_json)
{
  g_autoptr (BwCatalogue) catalogue = bw_cli_load_catalogue ();
  g_autoptr (BwSheet) sheet = bw_cli_load_sheet (path, catalogue);
  g_autoptr (GPtrArray) notes = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GError) error = NULL;
  guint8 block[BW_EDID_BLOCK_BYTES];

  if (sheet == NULL)
    return BW_CLI_BAD_INPUT;
  if (!bw_edid_write (sheet, catalogue, block, notes, &error))
    {
      g_autofree char *says = g_strdup_printf ("%s: %s", path, error->message);
      bw_cli_fault (says);
      return BW_CLI_BAD_INPUT;
    }
  if (!bw_file_replace (target, block, sizeof block, &error))
    {
      bw_cli_fault (error->message);
      return BW_CLI_BAD_INPUT;
    }
  for (guint i = 0; i < notes->len; i++)
    bw_cli_complain (_ ("note: %s"), (const char *) notes->pdata[i]);
  return as_json ? print_json (path, target, notes) : BW_CLI_DONE;
}

/**
 * bw_cli_edid:
 *
 * breezeway-cli edid: an EDID for the monitor of a bench sheet. What the block says otherwise than
 * the sheet, or cannot say, is a line each on standard error.
 *
 * Returns: how the program ends
 */
BwCliExit
bw_cli_edid (const BwCliCommand *command, char **args)
{
  char *target = NULL; /* as it came */
  const GOptionEntry own[] = {
    { "output", 'o', 0, G_OPTION_ARG_FILENAME, &target, N_ ("Where to write the 128 bytes"),
      N_ ("FILE") },
    G_OPTION_ENTRY_NULL,
  };
  g_auto (BwCliOptions) options;
  BwCliExit result = BW_CLI_DONE;

  if (bw_cli_options_read (&options, command, own, args, &result))
    {
      const char *path = options.rest[0];
      if (target == NULL)
        result = bw_cli_wrong_usage (command->name, _ ("-o FILE is missing"));
      else if (bw_target_is (target, path))
        result = bw_cli_wrong_usage (command->name, _ ("the EDID would replace its own sheet"));
      else
        result = write_edid (path, target, options.json);
    }
  g_free (target);
  return result;
}
