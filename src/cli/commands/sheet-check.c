/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gi18n-lib.h>

#include "cli/base/options.h"
#include "cli/base/output.h"
#include "cli/base/show.h"
#include "cli/choose/bench.h"
#include "core/base/harmless.h"

/* Faults as they are told on standard error, which names places and quotes what stands there. */
/* Where the figures of one thing on the bench come from, and what is not known of it. */
static void
add_thing (BwNode *to, const char *name, const BwFieldTable *table, gconstpointer object)
{
  bw_node_member (to, bw_value_words ("name", name));
  bw_node_origins (to, table, object);
}

static void
add_sheet (BwNode *root, const BwSheet *sheet)
{
  const BwMonitor *monitor = sheet->monitor;

  add_thing (bw_node_section (root, "monitor", NULL), monitor->name, &bw_monitor_fields, monitor);
  BwNode *inputs = bw_node_table (root, "inputs", NULL);
  for (guint i = 0; i < monitor->inputs->len; i++)
    {
      const BwInput *input = bw_monitor_input (monitor, i);
      add_thing (bw_node_row (inputs), input->name, &bw_input_fields, input);
    }
  BwNode *sources = bw_node_table (root, "sources", NULL);
  for (guint i = 0; i < sheet->sources->len; i++)
    {
      const BwSource *source = bw_sheet_source (sheet, i);
      add_thing (bw_node_row (sources), source->name, &bw_source_fields, source);
    }
}

static BwCliExit
show (const BwCliOptions *options, const char *path, const GPtrArray *faults,
      const BwSheet *sheet)
{
  g_autoptr (BwResult) result = bw_cli_result_new (options);
  BwNode *root = bw_result_root (result);
  g_autoptr (GPtrArray) says = g_ptr_array_new ();

  for (guint i = 0; i < faults->len; i++)
    g_ptr_array_add (says, ((const GError *) faults->pdata[i])->message);
  bw_node_member (root, bw_value_words ("sheet", path));
  bw_node_member (root, bw_value_flag ("sound", faults->len == 0));
  bw_node_list (root, "faults", NULL, says);
  if (sheet != NULL)
    add_sheet (root, sheet);
  return bw_cli_show (options, result);
}

static BwCliExit
print_sound (const char *path, const BwSheet *sheet)
{
  g_autofree char *name = bw_text_harmless (path);
  g_autofree char *says = g_strdup_printf (_ ("%s: sound; inputs: %u, sources: %u\n"), name,
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
    result = show (&options, path, faults, sheet);
  else if (sheet != NULL)
    result = print_sound (path, sheet);
  return sheet != NULL ? result : BW_CLI_BAD_INPUT;
}
