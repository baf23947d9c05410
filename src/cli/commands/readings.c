/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gi18n-lib.h>

#include "cli/base/arguments.h"
#include "cli/base/options.h"
#include "cli/base/output.h"
#include "cli/base/table.h"
#include "cli/choose/standard-limits.h"
#include "cli/print/readings-view.h"

/* What --list shows of all standards: their ids and names. */
static BwCliExit
list_standards (GPtrArray *all)
{
  g_autoptr (GString) text = g_string_new (NULL);
  g_autoptr (BwTable) table = bw_table_new (3);

  bw_table_add_row (table, _ ("standard"), _ ("raster"), _ ("name"), NULL);
  for (guint i = 0; i < all->len; i++)
    {
      const BwStandardLimits *limits = all->pdata[i];
      bw_table_add_row (table, limits->id, limits->raster, limits->name, NULL);
    }
  bw_table_append_to (table, text, 0);
  g_string_append_printf (text, "\n%s\n",
                          _ ("With --standard ID, --list shows its readings and their limits."));
  return bw_cli_print (text->str);
}

static BwCliExit
list_json (GPtrArray *all, const BwStandardLimits *one)
{
  g_autoptr (BwJson) json = bw_json_new ();
  bw_json_begin_object (json, NULL);
  bw_json_begin_array (json, "standards");
  for (guint i = 0; i < all->len; i++)
    if (one == NULL || one == all->pdata[i])
      bw_limits_to_json (all->pdata[i], json);
  bw_json_end_array (json);
  bw_json_end_object (json);
  return bw_cli_print_data (bw_json_text (json));
}

static BwCliExit
show_list (GPtrArray *all, const BwStandardLimits *one, gboolean as_json)
{
  if (as_json)
    return list_json (all, one);
  if (one == NULL)
    return list_standards (all);
  g_autoptr (GString) text = g_string_new (NULL);
  bw_limits_append_text (one, text);
  return bw_cli_print (text->str);
}

static BwCliExit
show_view (const BwReadingsView *view, gboolean as_json)
{
  if (as_json)
    {
      g_autoptr (BwJson) json = bw_json_new ();
      bw_json_begin_object (json, NULL);
      bw_readings_view_to_json (view, json);
      bw_json_end_object (json);
      return bw_cli_print_data (bw_json_text (json));
    }
  g_autoptr (GString) text = g_string_new (NULL);
  bw_readings_view_append_text (view, text);
  return bw_cli_print (text->str);
}

/* Enters one argument of the command line. A level may be below zero. */
static BwCliExit
enter (BwReadingsView *view, const char *command, const char *raw)
{
  g_autofree char *name = NULL;
  g_autofree char *value = NULL;
  g_autoptr (GError) error = NULL;
  guint kind;

  if (!bw_argument_pair (raw, &name, &value))
    return bw_cli_wrong_usage (command, _ ("write NAME=QUANTITY, such as line_sync=4.7us"));
  if (!bw_argument_kind (&bw_readings, '_', name, &kind))
    return BW_CLI_BAD_INPUT;
  if (view->read[kind])
    {
      g_autofree char *says = g_strdup_printf (_ ("%s stands twice"), name);
      return bw_cli_wrong_usage (command, says);
    }
  view->read[kind] = bw_quantity_parse (value, bw_reading_dimension (kind),
                                        bw_argument_mark (value), &view->value[kind], &error);
  if (view->read[kind])
    return BW_CLI_DONE;
  bw_cli_complain ("%s: %s", name, error->message);
  return BW_CLI_BAD_INPUT;
}

static BwCliExit
judge (const char *command, const BwStandardLimits *limits, char **pairs, gboolean as_json)
{
  BwReadingsView view = { .limits = limits };
  for (char **pair = pairs; *pair != NULL; pair++)
    {
      BwCliExit result = enter (&view, command, *pair);
      if (result != BW_CLI_DONE)
        return result;
    }
  return show_view (&view, as_json);
}

typedef struct
{
  char *standard; /* as it came */
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
  return own->list ? show_list (all, limits, options->json)
                   : judge (command->name, limits, options->rest, options->json);
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
    { "standard", 's', 0, G_OPTION_ARG_FILENAME, &own.standard, N_ ("The standard to judge by"),
      N_ ("ID") },
    { "list", 'l', 0, G_OPTION_ARG_NONE, &own.list,
      N_ ("List the standards, or what one of them lays down"), NULL },
    G_OPTION_ENTRY_NULL,
  };
  g_auto (BwCliOptions) options;
  BwCliExit result = BW_CLI_DONE;

  if (bw_cli_options_read (&options, command, entries, args, &result))
    result = run_readings (command, &own, &options);
  g_free (own.standard);
  return result;
}
