/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gi18n-lib.h>

#include "cli/base/options.h"
#include "cli/base/output.h"
#include "cli/base/show.h"
#include "cli/base/streams.h"
#include "cli/choose/bench.h"
#include "cli/choose/target.h"
#include "draw/paper/report.h"

static BwCliExit
show (const BwCliOptions *options, const char *path, const char *pdf)
{
  g_autoptr (BwResult) result = bw_cli_result_new (options);
  BwNode *root = bw_result_root (result);
  bw_node_member (root, bw_value_words ("sheet", path));
  bw_node_member (root, bw_value_words ("report", pdf));
  return bw_cli_show (options, result);
}

static BwCliExit
write_report (const BwCliOptions *options, const char *path, const char *pdf)
{
  g_autoptr (BwCatalogue) catalogue = bw_cli_load_catalogue ();
  g_autoptr (BwSheet) sheet = bw_cli_load_sheet (path, catalogue);
  g_autoptr (GError) error = NULL;

  if (sheet == NULL)
    return BW_CLI_BAD_INPUT;
  g_autoptr (GBytes) bytes = bw_report_bytes (sheet, catalogue,
                                              bw_cli_target_name (pdf, bw_cli_pdf), &error);
  if (bytes == NULL)
    {
      bw_cli_fault (error->message);
      return BW_CLI_BAD_INPUT;
    }
  if (!bw_cli_write (pdf, bytes))
    return BW_CLI_BAD_INPUT;
  return show (options, path, pdf);
}

/**
 * bw_cli_report:
 *
 * breezeway-cli report: the report of a bench sheet as a PDF.
 *
 * Returns: how the program ends
 */
BwCliExit
bw_cli_report (const BwCliCommand *command, char **args)
{
  char *pdf = NULL; /* as it came */
  const GOptionEntry own[] = {
    { "output", 'o', 0, G_OPTION_ARG_FILENAME, &pdf, N_ ("Where to write the PDF"), N_ ("FILE") },
    G_OPTION_ENTRY_NULL,
  };
  g_auto (BwCliOptions) options;
  BwCliExit result = BW_CLI_DONE;

  if (bw_cli_options_read (&options, command, own, args, &result))
    {
      const char *path = options.rest[0];
      g_autofree char *fault = NULL;
      if (pdf == NULL)
        fault = g_strdup (_ ("-o FILE is missing"));
      else if (bw_target_is (pdf, path))
        fault = g_strdup (_ ("the report would replace its own sheet"));
      else
        fault = bw_cli_target_fault (pdf, bw_cli_pdf, &options);
      result = fault != NULL ? bw_cli_wrong_usage (command->name, fault)
                             : write_report (&options, path, pdf);
    }
  g_free (pdf);
  return result;
}
