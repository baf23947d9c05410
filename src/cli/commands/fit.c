/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gi18n-lib.h>

#include "cli/base/nearest.h"
#include "cli/base/output.h"
#include "cli/base/show.h"
#include "cli/base/streams.h"
#include "cli/base/arguments.h"
#include "cli/choose/bench.h"
#include "cli/choose/cell.h"
#include "core/fit/results.h"
#include "core/hookup/plan.h"

/* The name of source or input @i of @sheet. */
typedef const char *(*NameFunc) (const BwSheet *sheet, guint i);

static const char *
source_name (const BwSheet *sheet, guint i)
{
  return bw_sheet_source (sheet, i)->name;
}

static const char *
input_name (const BwSheet *sheet, guint i)
{
  return bw_monitor_input (sheet->monitor, i)->name;
}

/* Which of @n sources or inputs have this name, or this number; all of them if it is NULL. */
static GArray *
select_by_name (const BwSheet *sheet, guint n, NameFunc name_of, const char *raw)
{
  GArray *selected = g_array_new (FALSE, FALSE, sizeof (guint));
  g_autofree char *wanted = raw != NULL ? bw_argument_utf8 (raw) : NULL;
  for (guint i = 0; i < n; i++)
    if (wanted == NULL || g_strcmp0 (name_of (sheet, i), wanted) == 0)
      g_array_append_val (selected, i);
  guint number;
  if (selected->len == 0 && wanted != NULL && bw_cell_number (wanted, n, &number))
    g_array_append_val (selected, number);
  return selected;
}

static BwCliExit
no_such_name (const char *path, const char *what, const char *raw, const BwSheet *sheet, guint n,
              NameFunc name_of)
{
  g_autofree char *wanted = bw_argument_utf8 (raw);
  g_autoptr (GPtrArray) names = g_ptr_array_new ();
  for (guint i = 0; i < n; i++)
    g_ptr_array_add (names, (gpointer) name_of (sheet, i));
  g_autofree char *nearest = bw_nearest_names (names, wanted, 3);
  const char *file = bw_cli_input_name (path);
  g_autofree char *says = n > 0 ? g_strdup_printf (_ ("%1$s: %2$s “%3$s”; the nearest are %4$s"),
                                                   file, what, wanted, nearest)
                                : g_strdup_printf (_ ("%1$s: %2$s “%3$s”; there are none"), file,
                                                   what, wanted);
  bw_cli_fault (says);
  return BW_CLI_BAD_INPUT;
}

static BwCliExit
show_fit (const BwFitAsk *ask, gboolean with_findings, const BwCliOptions *options)
{
  g_autoptr (BwResult) result = bw_cli_result_new (options);
  BwNode *root = bw_result_root (result);

  bw_mains_say (root, ask->sheet->monitor, ask->sheet->supply_v, ask->sheet->supply_hz);
  bw_node_say (root, BW_SAY_NOTE, NULL, ask->sheet->title);
  bw_node_say (root, BW_SAY_NOTE, NULL, ask->sheet->monitor->name);
  if (ask->sources->len == 0)
    bw_node_say (root, BW_SAY_NOTE, NULL, _ ("This sheet has no sources."));
  if (ask->inputs->len == 0)
    bw_node_say (root, BW_SAY_NOTE, NULL, _ ("The monitor of this sheet has no inputs."));
  const BwNode *cells = bw_fit_say (root, ask);
  bw_fit_say_legend (root);
  if (with_findings)
    bw_fit_tell (root, cells, FALSE);
  return bw_cli_show (options, result);
}

typedef struct
{
  gboolean findings;
  char *source; /* as it came */
  char *input;
} FitOptions;

static BwCliExit
show_sheet (const char *path, const BwSheet *sheet, const BwCatalogue *catalogue,
            const FitOptions *own, const BwCliOptions *options)
{
  guint n_sources = sheet->sources->len;
  guint n_inputs = sheet->monitor->inputs->len;
  g_autoptr (GArray) sources = select_by_name (sheet, n_sources, source_name, own->source);
  g_autoptr (GArray) inputs = select_by_name (sheet, n_inputs, input_name, own->input);

  if (own->source != NULL && sources->len == 0)
    return no_such_name (path, _ ("no source is called"), own->source, sheet, n_sources,
                         source_name);
  if (own->input != NULL && inputs->len == 0)
    return no_such_name (path, _ ("no input is called"), own->input, sheet, n_inputs, input_name);
  const BwFitAsk ask = { sheet, catalogue, sources, inputs, bw_plan_needs };
  return show_fit (&ask, own->findings, options);
}

/**
 * bw_cli_fit:
 *
 * breezeway-cli fit: the verdict on each source at each input of a bench sheet, and why.
 *
 * Returns: how the program ends
 */
BwCliExit
bw_cli_fit (const BwCliCommand *command, char **args)
{
  FitOptions own = { 0 };
  const GOptionEntry entries[] = {
    { "findings", 0, 0, G_OPTION_ARG_NONE, &own.findings,
      N_ ("Say what does not hold in each cell, and the remedy"), NULL },
    { "source", 's', 0, G_OPTION_ARG_FILENAME, &own.source,
      N_ ("Only the source of this name or number"), N_ ("NAME") },
    { "input", 'i', 0, G_OPTION_ARG_FILENAME, &own.input,
      N_ ("Only the input of this name or number"), N_ ("NAME") },
    G_OPTION_ENTRY_NULL,
  };
  g_auto (BwCliOptions) options;
  BwCliExit result = BW_CLI_DONE;

  if (bw_cli_options_read (&options, command, entries, args, &result))
    {
      g_autoptr (BwCatalogue) catalogue = bw_cli_load_catalogue ();
      g_autoptr (BwSheet) sheet = bw_cli_load_sheet (options.rest[0], catalogue);
      result = sheet != NULL ? show_sheet (options.rest[0], sheet, catalogue, &own, &options)
                             : BW_CLI_BAD_INPUT;
    }
  g_free (own.source);
  g_free (own.input);
  return result;
}
