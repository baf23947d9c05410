/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gi18n-lib.h>

#include "cli/base/arguments.h"
#include "cli/base/output.h"
#include "cli/base/show.h"
#include "core/raster/results.h"

static BwCliExit
show_list (const BwCliOptions *options)
{
  g_autoptr (BwResult) result = bw_cli_result_new (options);
  bw_figures_say (bw_result_root (result));
  return bw_cli_show (options, result);
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
solve (const char *command, gboolean interlaced, const BwCliOptions *options)
{
  BwSolver solver = { .interlaced = interlaced };
  guint32 redundant = 0;
  g_autoptr (GError) error = NULL;

  for (char **pair = options->rest; *pair != NULL; pair++)
    {
      BwCliExit entered = enter (&solver, command, *pair);
      if (entered != BW_CLI_DONE)
        return entered;
    }
  if (!bw_solver_run (&solver, &redundant, &error))
    {
      bw_cli_complain ("%s", error->message);
      return BW_CLI_BAD_INPUT;
    }
  g_autoptr (BwResult) result = bw_cli_result_new (options);
  bw_solver_say (bw_result_root (result), &solver, redundant);
  return bw_cli_show (options, result);
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
  return list ? show_list (&options) : solve (command->name, interlaced, &options);
}
