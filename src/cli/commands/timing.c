/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gi18n-lib.h>

#include "cli/base/output.h"
#include "cli/base/show.h"
#include "cli/choose/bench.h"
#include "cli/choose/raster-choice.h"
#include "core/bench/results.h"
#include "core/interchange/interchange.h"
#include "core/interchange/results.h"
#include "core/raster/results.h"

typedef struct
{
  BwRasterChoice choice;
  gboolean list;
  gboolean as_modeline;
} TimingOptions;

static BwCliExit
show_list (const BwCliOptions *options)
{
  g_autoptr (BwCatalogue) catalogue = bw_cli_load_catalogue ();
  g_autoptr (BwResult) result = bw_cli_result_new (options);
  bw_catalogue_say (bw_result_root (result), catalogue, BW_CATALOGUE_RASTERS);
  return bw_cli_show (options, result);
}

/* Which of an EDID's timings it is. */
static void
add_place (BwNode *to, const BwChosenRaster *chosen)
{
  BwNode *section = bw_node_section (to, NULL, _ ("EDID"));
  if (chosen->n_timings == 1)
    bw_node_say (section, BW_SAY_NOTE, NULL, _ ("The only detailed timing."));
  else
    bw_node_say (section, BW_SAY_NOTE, NULL,
                 bw_node_print (section,
                                _ ("Detailed timing %1$u of %2$u; --which N shows another."),
                                chosen->timing, chosen->n_timings));
  bw_node_member (section, bw_value_count ("detailed_timing", chosen->timing));
  bw_node_member (section, bw_value_count ("detailed_timings", chosen->n_timings));
}

/* The raster, then, of one made for a monitor, why it is as it is and the others that hold, or where in an
 * EDID it stands. */
static BwCliExit
show_raster (const BwChosenRaster *chosen, const char *modeline, const BwCliOptions *options)
{
  g_autoptr (BwResult) result = bw_cli_result_new (options);
  BwNode *root = bw_result_root (result);

  if (chosen->answers != NULL)
    bw_tube_say (root, chosen->answers, 0);
  else
    bw_raster_say (root, chosen->raster);
  if (chosen->timing > 0)
    add_place (root, chosen);
  bw_node_list (root, "notes", _ ("Not read"), chosen->notes);
  if (modeline != NULL && chosen->answers == NULL)
    bw_node_member (root, bw_value_words ("modeline", modeline));
  return bw_cli_show (options, result);
}

static BwCliExit
show_modeline (const BwChosenRaster *chosen, const BwCliOptions *options)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *modeline = bw_modeline_format (chosen->raster, &error);

  if (modeline == NULL)
    {
      bw_cli_complain ("%s", error->message);
      return BW_CLI_BAD_INPUT;
    }
  if (options->json || options->csv)
    return show_raster (chosen, modeline, options);
  g_autofree char *line = g_strconcat (modeline, "\n", NULL);
  return bw_cli_print (line);
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
    return show_list (options);
  g_autoptr (BwChosenRaster) chosen = bw_raster_choice_make (&own->choice, name);
  if (chosen == NULL)
    return BW_CLI_BAD_INPUT;
  return own->as_modeline ? show_modeline (chosen, options) : show_raster (chosen, NULL, options);
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
