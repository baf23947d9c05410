/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gi18n-lib.h>

#include "bench.h"
#include "listing.h"
#include "nearest.h"
#include "options.h"
#include "output.h"
#include "raster-json.h"
#include "raster-text.h"
#include "words.h"

static BwCliExit
show_list (const BwCatalogue *catalogue, gboolean as_json)
{
  if (as_json)
    {
      g_autoptr (BwJson) json = bw_json_new ();
      bw_json_begin_object (json, NULL);
      bw_list_rasters_json (catalogue, json);
      bw_json_end_object (json);
      return bw_cli_print_json (bw_json_text (json));
    }
  g_autoptr (GString) text = g_string_new (NULL);
  bw_list_rasters_text (catalogue, text);
  return bw_cli_print (text->str);
}

static BwCliExit
show_raster (const BwRaster *raster, gboolean as_json)
{
  if (as_json)
    {
      g_autoptr (BwJson) json = bw_json_new ();
      bw_json_begin_object (json, NULL);
      bw_raster_to_json (raster, json);
      bw_json_end_object (json);
      return bw_cli_print_json (bw_json_text (json));
    }
  g_autoptr (GString) text = g_string_new (NULL);
  bw_raster_append_text (raster, text);
  return bw_cli_print (text->str);
}

static BwCliExit
no_such_raster (const BwCatalogue *catalogue, const char *wanted)
{
  GPtrArray *rasters = bw_catalogue_rasters (catalogue);
  g_autoptr (GPtrArray) names = g_ptr_array_new_with_free_func (g_free);
  for (guint i = 0; i < rasters->len; i++)
    g_ptr_array_extend_and_steal (names, bw_raster_names (rasters->pdata[i]));
  g_autofree char *nearest = bw_nearest_names (names, wanted, 3);
  bw_cli_complain (_ ("there is no raster “%s”; the nearest are %s"), wanted, nearest);
  return BW_CLI_BAD_INPUT;
}

/**
 * bw_cli_timing:
 *
 * breezeway-cli timing: one raster with all that follows from it, or the list of rasters.
 *
 * Returns: how the program ends
 */
BwCliExit
bw_cli_timing (const BwCliCommand *command, char **args)
{
  gboolean list = FALSE;
  const GOptionEntry own[] = {
    { "list", 'l', 0, G_OPTION_ARG_NONE, &list, N_ ("List all rasters"), NULL },
    G_OPTION_ENTRY_NULL,
  };
  g_auto (BwCliOptions) options;
  BwCliExit result = BW_CLI_DONE;
  if (!bw_cli_options_read (&options, command, own, args, &result))
    return result;
  if (list == (options.n_rest == 1))
    return bw_cli_wrong_usage (command->name, _ ("either RASTER or --list is needed"));

  g_autoptr (BwCatalogue) catalogue = bw_cli_load_catalogue ();
  if (list)
    return show_list (catalogue, options.json);
  g_autofree char *name = bw_words_utf8 (options.rest[0]);
  const BwRaster *raster = bw_catalogue_raster (catalogue, name);
  if (raster == NULL)
    return no_such_raster (catalogue, name);
  return show_raster (raster, options.json);
}
