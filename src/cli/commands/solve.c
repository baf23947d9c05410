/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gi18n-lib.h>

#include "cli/base/arguments.h"
#include "cli/base/options.h"
#include "cli/base/output.h"
#include "cli/print/solve-view.h"

static BwCliExit
show_list (gboolean as_json)
{
  if (as_json)
    {
      g_autoptr (BwJson) json = bw_json_new ();
      bw_json_begin_object (json, NULL);
      bw_solve_figures_to_json (json);
      bw_json_end_object (json);
      return bw_cli_print_data (bw_json_text (json));
    }
  g_autoptr (GString) text = g_string_new (NULL);
  bw_solve_figures_append_text (text);
  return bw_cli_print (text->str);
}

static BwCliExit
show_view (const BwSolveView *view, gboolean as_json)
{
  if (as_json)
    {
      g_autoptr (BwJson) json = bw_json_new ();
      bw_json_begin_object (json, NULL);
      bw_solve_view_to_json (view, json);
      bw_json_end_object (json);
      return bw_cli_print_data (bw_json_text (json));
    }
  g_autoptr (GString) text = g_string_new (NULL);
  bw_solve_view_append_text (view, text);
  return bw_cli_print (text->str);
}

/* Enters one argument of the command line. */
static BwCliExit
enter (BwSolver *solver, const char *command, const char *raw)
{
  g_autofree char *name = NULL;
  g_autofree char *value = NULL;
  g_autoptr (GError) error = NULL;
  guint figure;

  if (!bw_argument_pair (raw, &name, &value))
    return bw_cli_wrong_usage (command, _ ("write NAME=QUANTITY, such as line-rate=15.734kHz"));
  if (!bw_argument_kind (&bw_figures, '-', name, &figure))
    return BW_CLI_BAD_INPUT;
  if (solver->at[figure].entered)
    {
      g_autofree char *says = g_strdup_printf (_ ("%s stands twice"), name);
      return bw_cli_wrong_usage (command, says);
    }
  if (bw_solver_enter (solver, figure, value, bw_argument_mark (value), &error))
    return BW_CLI_DONE;
  bw_cli_complain ("%s: %s", name, error->message);
  return BW_CLI_BAD_INPUT;
}

static BwCliExit
solve (const char *command, char **pairs, gboolean interlaced, gboolean as_json)
{
  BwSolver solver = { .interlaced = interlaced };
  BwSolveView view = { &solver, 0 };
  g_autoptr (GError) error = NULL;

  for (char **pair = pairs; *pair != NULL; pair++)
    {
      BwCliExit result = enter (&solver, command, *pair);
      if (result != BW_CLI_DONE)
        return result;
    }
  if (bw_solver_run (&solver, &view.redundant, &error))
    return show_view (&view, as_json);
  bw_cli_complain ("%s", error->message);
  return BW_CLI_BAD_INPUT;
}

/**
 * bw_cli_solve:
 *
 * breezeway-cli solve: what follows from the figures of a raster that are known.
 *
 * Returns: how the program ends
 */
BwCliExit
bw_cli_solve (const BwCliCommand *command, char **args)
{
  gboolean list = FALSE;
  gboolean interlaced = FALSE;
  const GOptionEntry own[] = {
    { "interlaced", 0, 0, G_OPTION_ARG_NONE, &interlaced, N_ ("Two fields to the frame"), NULL },
    { "list", 'l', 0, G_OPTION_ARG_NONE, &list, N_ ("List the figures that may be given"), NULL },
    G_OPTION_ENTRY_NULL,
  };
  g_auto (BwCliOptions) options;
  BwCliExit result = BW_CLI_DONE;

  if (!bw_cli_options_read (&options, command, own, args, &result))
    return result;
  if (list == (options.n_rest > 0))
    return bw_cli_wrong_usage (command->name, _ ("either NAME=QUANTITY or --list is needed"));
  return list ? show_list (options.json)
              : solve (command->name, options.rest, interlaced, options.json);
}
