/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gi18n-lib.h>

#include "cli/base/options.h"
#include "cli/base/output.h"
#include "cli/base/show.h"
#include "cli/base/streams.h"
#include "cli/choose/bench.h"
#include "cli/choose/target.h"
#include "core/interchange/interchange.h"

static BwCliExit
show (const BwCliOptions *options, const char *path, const char *target, GPtrArray *notes)
{
  g_autoptr (BwResult) result = bw_cli_result_new (options);
  BwNode *root = bw_result_root (result);
  bw_node_member (root, bw_value_words ("sheet", path));
  bw_node_member (root, bw_value_words ("edid", target));
  bw_node_list (root, "notes", NULL, notes)->for_scripts = TRUE;
  return bw_cli_show (options, result);
}

static BwCliExit
write_edid (const BwCliOptions *options, const char *path, const char *target)
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
      g_autofree char *says = g_strdup_printf ("%s: %s", bw_cli_input_name (path), error->message);
      bw_cli_fault (says);
      return BW_CLI_BAD_INPUT;
    }
  g_autoptr (GBytes) bytes = g_bytes_new (block, sizeof block);
  if (!bw_cli_write (target, bytes))
    return BW_CLI_BAD_INPUT;
  for (guint i = 0; i < notes->len; i++)
    bw_cli_complain (_ ("note: %s"), (const char *) notes->pdata[i]);
  return show (options, path, target, notes);
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
  static const char *const kinds[] = { "-.bin", NULL };
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
      g_autofree char *fault = NULL;
      if (target == NULL)
        fault = g_strdup (_ ("-o FILE is missing"));
      else if (bw_target_is (target, path))
        fault = g_strdup (_ ("the EDID would replace its own sheet"));
      else
        fault = bw_cli_target_fault (target, kinds, &options);
      result = fault != NULL ? bw_cli_wrong_usage (command->name, fault)
                             : write_edid (&options, path, target);
    }
  g_free (target);
  return result;
}
