/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "show.h"

#include "core/result/listing.h"
#include "help.h"
#include "output.h"

/**
 * bw_cli_result_new:
 *
 * Returns: (transfer full): a result that says nothing yet, for the form that is asked for: scripts
 *   get a decimal point in sentences too
 */
BwResult *
bw_cli_result_new (const BwCliOptions *options)
{
  g_return_val_if_fail (options != NULL, NULL);
  gboolean for_scripts = options->json || options->csv || options->keys;
  BwResult *result = bw_result_new (for_scripts ? BW_FILE_MARK : bw_quantity_locale_mark ());
  bw_result_tell_ids (result);
  if (options->json || options->keys)
    bw_node_member (bw_result_root (result), bw_value_count ("format", BW_CLI_JSON_FORMAT));
  return result;
}

/* The keys of @result in its place, in whatever form is asked for. */
static BwCliExit
show_keys (const BwCliOptions *options, BwResult *result)
{
  const BwCliOptions others = { .json = options->json, .csv = options->csv };
  g_autoptr (BwResult) keys = bw_cli_result_new (&others);
  bw_node_say_keys (bw_result_root (keys), bw_result_root (result));
  return bw_cli_show (&others, keys);
}

/**
 * bw_cli_show:
 *
 * Prints @result in the form that is asked for: JSON, comma-separated values, or text.
 *
 * Returns: %BW_CLI_BAD_INPUT, having said so, if standard output cannot be written
 */
BwCliExit
bw_cli_show (const BwCliOptions *options, BwResult *result)
{
  g_return_val_if_fail (options != NULL && result != NULL, BW_CLI_BAD_INPUT);
  if (options->keys)
    return show_keys (options, result);
  const BwNode *root = bw_result_root (result);
  if (options->json || options->csv)
    {
      g_autofree char *text = options->json ? bw_node_to_json (root) : bw_node_to_csv (root);
      return bw_cli_print_data (text);
    }
  g_autofree char *text = bw_node_to_text (root, BW_TERMINAL_COLUMNS, !bw_cli_is_unicode ());
  return bw_cli_print (text);
}
