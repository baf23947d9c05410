/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gi18n-lib.h>

#include "cli/base/options.h"
#include "cli/base/output.h"
#include "cli/base/show.h"
#include "cli/base/streams.h"
#include "cli/choose/bench.h"
#include "core/base/harmless.h"
#include "core/bench/results.h"
#include "core/connector/plug.h"

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

/* What no source can do, though the file may say it: a sheet with it is sound, and opens. */
static GPtrArray *
remarks_new (const BwSheet *sheet)
{
  GPtrArray *remarks = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; sheet != NULL && i < sheet->sources->len; i++)
    {
      const BwSource *source = bw_sheet_source (sheet, i);
      BwSyncKind syncs[2];
      BwPlug plug;
      int pin;
      if (!bw_source_shares_pin (source, syncs, &pin))
        continue;
      bw_plug_init (&plug, source->connector, BW_EDITION_CURRENT, &source->pins);
      g_autofree char *name = bw_plug_pin_name (&plug, pin, 0);
      /* Translators: a number, two kinds of sync, a pin with what it is for */
      g_ptr_array_add (remarks,
                       g_strdup_printf (_ ("[source %1$u] syncs: %2$s and %3$s both leave by %4$s, which "
                                           "carries one at a time. Keep the one that the source is set "
                                           "to."),
                                        i + 1, bw_kind_label (&bw_sync_kinds, syncs[0]),
                                        bw_kind_label (&bw_sync_kinds, syncs[1]), name));
    }
  return remarks;
}

/* Faults as they are told on standard error, which names places and quotes what stands there. */
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
  g_autoptr (GPtrArray) remarks = remarks_new (sheet);
  bw_node_list (root, "remarks", NULL, remarks);
  if (sheet != NULL)
    add_sheet (root, sheet);
  return bw_cli_show (options, result);
}

static BwCliExit
print_sound (const char *path, const BwSheet *sheet)
{
  g_autofree char *name = bw_text_harmless (bw_cli_input_name (path));
  g_autofree char *says = g_strdup_printf (_ ("%1$s: sound; inputs: %2$u, sources: %3$u\n"), name,
                                           sheet->monitor->inputs->len, sheet->sources->len);
  g_autoptr (GString) text = g_string_new (says);
  g_autoptr (GPtrArray) remarks = remarks_new (sheet);
  for (guint i = 0; i < remarks->len; i++)
    g_string_append_printf (text, "%s: %s\n", name, (const char *) remarks->pdata[i]);
  return bw_cli_print (text->str);
}

static BwCliExit
check (const BwCliOptions *options, const char *path)
{
  g_autoptr (BwCatalogue) catalogue = bw_cli_load_catalogue ();
  g_autoptr (GPtrArray) faults = g_ptr_array_new_with_free_func ((GDestroyNotify) g_error_free);
  g_autoptr (BwSheet) sheet = bw_cli_read_sheet (path, catalogue, faults);
  BwCliExit result = BW_CLI_DONE;

  for (guint i = 0; i < faults->len; i++)
    bw_cli_fault (((const GError *) faults->pdata[i])->message);
  if (options->json || options->keys)
    result = show (options, path, faults, sheet);
  else if (sheet != NULL)
    result = print_sound (path, sheet);
  return sheet != NULL ? result : BW_CLI_BAD_INPUT;
}

static BwCliExit
show_keys (const BwCliOptions *options)
{
  g_autoptr (BwResult) result = bw_cli_result_new (options);
  bw_sheet_say_keys (bw_result_root (result));
  return bw_cli_show (options, result);
}

/**
 * bw_cli_sheet_check:
 *
 * breezeway-cli sheet-check: says every fault of a bench sheet, one line each on standard error, or
 * lists the keys that a bench sheet may have.
 *
 * Returns: how the program ends
 */
BwCliExit
bw_cli_sheet_check (const BwCliCommand *command, char **args)
{
  gboolean list = FALSE;
  const GOptionEntry own[] = {
    { "list", 'l', 0, G_OPTION_ARG_NONE, &list, N_ ("List the keys that a bench sheet may have"),
      NULL },
    G_OPTION_ENTRY_NULL,
  };
  g_auto (BwCliOptions) options;
  BwCliExit result = BW_CLI_DONE;

  if (!bw_cli_options_read (&options, command, own, args, &result))
    return result;
  if (list == (options.n_rest > 0))
    return bw_cli_wrong_usage (command->name, _ ("either SHEET or --list is needed"));
  if (options.csv && !list)
    return bw_cli_wrong_usage (command->name, _ ("--csv goes with --list only"));
  return list ? show_keys (&options) : check (&options, options.rest[0]);
}
