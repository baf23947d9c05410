/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gi18n-lib.h>

#include "cli/base/options.h"
#include "cli/base/output.h"
#include "cli/choose/bench.h"
#include "cli/print/listing.h"
#include "cli/print/timing-view.h"
#include "core/interchange/interchange.h"

typedef struct
{
  BwRasterChoice choice;
  gboolean list;
  gboolean as_modeline;
} TimingOptions;

static BwCliExit
show_list (gboolean as_json)
{
  g_autoptr (BwCatalogue) catalogue = bw_cli_load_catalogue ();
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
show_json (const BwChosenRaster *chosen, const char *modeline)
{
  g_autoptr (BwJson) json = bw_json_new ();
  bw_json_begin_object (json, NULL);
  bw_timing_to_json (chosen, modeline, json);
  bw_json_end_object (json);
  return bw_cli_print_json (bw_json_text (json));
}

static BwCliExit
show_text (const BwChosenRaster *chosen, const char *modeline)
{
  g_autoptr (GString) text = g_string_new (NULL);
  if (modeline != NULL)
    g_string_append_printf (text, "%s\n", modeline);
  else
    bw_timing_append_text (chosen, text);
  return bw_cli_print (text->str);
}

static BwCliExit
show_raster (const BwChosenRaster *chosen, gboolean as_modeline, gboolean as_json)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *modeline = as_modeline ? bw_modeline_format (chosen->raster, &error) : NULL;

  if (error != NULL)
    {
      bw_cli_complain ("%s", error->message);
      return BW_CLI_BAD_INPUT;
    }
  return as_json ? show_json (chosen, modeline) : show_text (chosen, modeline);
}

static BwCliExit
run_timing (const BwCliCommand *command, const TimingOptions *own, const BwCliOptions *options)
{
  const char *name = options->rest[0];
  g_autofree char *fault = bw_raster_choice_fault (&own->choice, name);

  if (own->list && (!bw_raster_choice_is_empty (&own->choice, name) || own->as_modeline))
    return bw_cli_wrong_usage (command->name, _ ("--list goes with no raster"));
  if (!own->list && fault != NULL)
    return bw_cli_wrong_usage (command->name, fault);
  if (own->list)
    return show_list (options->json);
  g_autoptr (BwChosenRaster) chosen = bw_raster_choice_make (&own->choice, name);
  return chosen != NULL ? show_raster (chosen, own->as_modeline, options->json) : BW_CLI_BAD_INPUT;
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
  TimingOptions own = { 0 };
  g_autoptr (GArray) entries = bw_raster_choice_entries (&own.choice);
  const GOptionEntry others[] = {
    { "list", 'l', 0, G_OPTION_ARG_NONE, &own.list, N_ ("List all rasters"), NULL },
    { "as-modeline", 0, 0, G_OPTION_ARG_NONE, &own.as_modeline,
      N_ ("Print the raster as a mode line"), NULL },
  };
  g_auto (BwCliOptions) options;
  BwCliExit result = BW_CLI_DONE;

  g_array_append_vals (entries, others, G_N_ELEMENTS (others));
  if (bw_cli_options_read (&options, command, (const GOptionEntry *) entries->data, args, &result))
    result = run_timing (command, &own, &options);
  bw_raster_choice_clear (&own.choice);
  return result;
}
