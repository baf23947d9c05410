/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include <glib/gi18n-lib.h>

#include "cli/base/output.h"
#include "cli/base/show.h"
#include "cli/choose/bench.h"
#include "core/bench/results.h"

static const char *const parts[BW_N_CATALOGUES] = {
  [BW_CATALOGUE_RASTERS] = "rasters",
  [BW_CATALOGUE_MONITORS] = "monitors",
  [BW_CATALOGUE_SOURCES] = "sources",
  [BW_CATALOGUE_ADAPTORS] = "adaptors",
};

static gboolean
is_wanted (BwCatalogueKind kind, const char *name)
{
  return name == NULL || strcmp (parts[kind], name) == 0;
}

static gboolean
is_part (const char *name)
{
  for (BwCatalogueKind kind = 0; kind < BW_N_CATALOGUES; kind++)
    if (is_wanted (kind, name))
      return TRUE;
  return FALSE;
}

/**
 * bw_cli_catalogue:
 *
 * breezeway-cli catalogue: lists all that the catalogue holds, or one part of it.
 *
 * Returns: how the program ends
 */
BwCliExit
bw_cli_catalogue (const BwCliCommand *command, char **args)
{
  g_auto (BwCliOptions) options;
  BwCliExit result = BW_CLI_DONE;
  if (!bw_cli_options_read (&options, command, NULL, args, &result))
    return result;

  const char *name = options.rest[0];
  if (!is_part (name))
    {
      g_autofree char *says = g_strdup_printf (
          _ ("the catalogue has no part “%s”, only rasters, monitors, sources and adaptors"), name);
      return bw_cli_wrong_usage (command->name, says);
    }
  g_autoptr (BwCatalogue) catalogue = bw_cli_load_catalogue ();
  g_autoptr (BwResult) list = bw_cli_result_new (&options);
  for (BwCatalogueKind kind = 0; kind < BW_N_CATALOGUES; kind++)
    if (is_wanted (kind, name))
      bw_catalogue_say (bw_result_root (list), catalogue, kind);
  return bw_cli_show (&options, list);
}
