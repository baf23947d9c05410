/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include <glib/gi18n-lib.h>

#include "cli/base/options.h"
#include "cli/base/output.h"
#include "cli/choose/bench.h"
#include "cli/print/listing.h"

typedef struct
{
  const char *name;
  void (*to_text) (const BwCatalogue *catalogue, GString *to);
  void (*to_json) (const BwCatalogue *catalogue, BwJson *json);
} Part;

static const Part parts[BW_N_CATALOGUES] = {
  [BW_CATALOGUE_RASTERS] = { "rasters", bw_list_rasters_text, bw_list_rasters_json },
  [BW_CATALOGUE_MONITORS] = { "monitors", bw_list_monitors_text, bw_list_monitors_json },
  [BW_CATALOGUE_SOURCES] = { "sources", bw_list_sources_text, bw_list_sources_json },
  [BW_CATALOGUE_ADAPTORS] = { "adaptors", bw_list_adaptors_text, bw_list_adaptors_json },
};

static gboolean
is_wanted (const Part *part, const char *name)
{
  return name == NULL || strcmp (part->name, name) == 0;
}

static gboolean
is_part (const char *name)
{
  for (gsize i = 0; i < G_N_ELEMENTS (parts); i++)
    if (is_wanted (&parts[i], name))
      return TRUE;
  return FALSE;
}

static BwCliExit
show_text (const BwCatalogue *catalogue, const char *name)
{
  g_autoptr (GString) text = g_string_new (NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (parts); i++)
    if (is_wanted (&parts[i], name))
      {
        if (text->len > 0)
          g_string_append_c (text, '\n');
        parts[i].to_text (catalogue, text);
      }
  return bw_cli_print (text->str);
}

static BwCliExit
show_json (const BwCatalogue *catalogue, const char *name)
{
  g_autoptr (BwJson) json = bw_json_new ();
  bw_json_begin_object (json, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (parts); i++)
    if (is_wanted (&parts[i], name))
      parts[i].to_json (catalogue, json);
  bw_json_end_object (json);
  return bw_cli_print_json (bw_json_text (json));
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
  return options.json ? show_json (catalogue, name) : show_text (catalogue, name);
}
