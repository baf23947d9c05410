/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gi18n-lib.h>

#include "cli/base/arguments.h"
#include "cli/base/options.h"
#include "cli/base/output.h"
#include "cli/base/show.h"
#include "cli/choose/standard-limits.h"
#include "cli/files/drawing.h"
#include "draw/base/export.h"
#include "draw/field/shape.h"

/* What the options say, all as it came; owned. */
typedef struct
{
  BwRasterChoice choice;
  char *view;
  BwDrawingOptions page;
  char *system;
  char *standard;
} DrawOptions;

static void
clear_options (DrawOptions *own)
{
  bw_raster_choice_clear (&own->choice);
  g_free (own->view);
  bw_drawing_options_clear (&own->page);
  g_free (own->system);
  g_free (own->standard);
}

/* Fills @request with the words of the command line. Returns what is wrong with that, or NULL. */
static char *
find_fault (const DrawOptions *own, const char *name, const BwCliOptions *options,
            BwDrawRequest *request)
{
  guint view = BW_DRAWING_LINE;
  char *fault = bw_raster_choice_fault (&own->choice, name);

  if (fault == NULL && own->page.target == NULL)
    fault = g_strdup (_ ("-o FILE is missing"));
  if (fault == NULL && own->view == NULL)
    fault = g_strdup (_ ("--view is missing"));
  if (fault == NULL)
    fault = bw_argument_word ("--view", &bw_drawing_views, own->view, &view);
  if (fault == NULL)
    fault = bw_argument_word ("--system", &bw_colour_systems, own->system, &request->system);
  if (fault == NULL && own->system != NULL && view != BW_DRAWING_FIELD)
    fault = g_strdup (_ ("--system goes with --view field only"));
  if (fault == NULL && own->standard != NULL && view != BW_DRAWING_BLANKING)
    fault = g_strdup (_ ("--standard goes with --view blanking only"));
  if (fault == NULL)
    fault = bw_drawing_options_fault (&own->page, bw_cli_drawings, options, &request->page.theme);
  if (fault == NULL)
    fault = bw_raster_choice_target_fault (&own->choice, own->page.target);
  request->view = view;
  return fault;
}

static gboolean
has_burst (const BwDrawRequest *request)
{
  const BwRaster *raster = request->chosen->raster;
  if (request->system == BW_SYSTEM_NONE || bw_system_knows_burst (request->system, raster))
    return TRUE;
  bw_cli_complain (_ ("no standard lays down which lines of %1$s have the burst of %2$s"),
                   raster->id, bw_kind_id (&bw_colour_systems, request->system));
  return FALSE;
}

static gboolean
has_limits (const BwDrawRequest *request)
{
  const BwRaster *raster = request->chosen->raster;
  if (request->limits == NULL || g_strcmp0 (request->limits->raster, raster->id) == 0)
    return TRUE;
  bw_cli_complain (_ ("the limits of %1$s are for the raster %2$s, not for %3$s"),
                   request->limits->id, request->limits->raster, raster->id);
  return FALSE;
}

static BwCliExit
show (const BwCliOptions *options, const BwDrawRequest *request, const BwDrawing *drawing,
      const char *target)
{
  g_autoptr (BwResult) result = bw_cli_result_new (options);
  BwNode *root = bw_result_root (result);
  bw_node_member (root, bw_value_words ("raster", request->chosen->raster->id));
  bw_node_member (root, bw_value_kind ("view", &bw_drawing_views, request->view));
  bw_node_member (root, bw_value_words ("drawing", target));
  bw_node_member (root, bw_value_words ("description", bw_drawing_description (drawing)));
  return bw_cli_show (options, result);
}

static BwCliExit
write_drawing (const BwCliOptions *options, const BwDrawRequest *request, const char *target)
{
  g_autoptr (GError) error = NULL;
  if (!has_burst (request) || !has_limits (request))
    return BW_CLI_BAD_INPUT;
  g_autoptr (BwDrawing) drawing = bw_draw_request_drawing (request);
  g_autoptr (GBytes) bytes = bw_export_drawing_bytes (drawing, request->chosen->raster->name,
                                                      bw_cli_target_name (target, bw_cli_drawings),
                                                      &error);
  if (bytes == NULL)
    {
      bw_cli_fault (error->message);
      return BW_CLI_BAD_INPUT;
    }
  if (!bw_cli_write (target, bytes))
    return BW_CLI_BAD_INPUT;
  return show (options, request, drawing, target);
}

static BwCliExit
run_draw (const BwCliCommand *command, const DrawOptions *own, const BwCliOptions *options)
{
  const char *name = options->rest[0];
  BwDrawRequest request = { 0 };
  g_autofree char *fault = find_fault (own, name, options, &request);

  if (fault != NULL)
    return bw_cli_wrong_usage (command->name, fault);
  if (!bw_drawing_options_page (&own->page, &request.page))
    return BW_CLI_BAD_INPUT;
  g_autoptr (GPtrArray) all = bw_limits_shipped ();
  if (own->standard != NULL && (request.limits = bw_cli_find_limits (all, own->standard)) == NULL)
    return BW_CLI_BAD_INPUT;
  g_autoptr (BwChosenRaster) chosen = bw_raster_choice_make (&own->choice, name);
  if (chosen == NULL)
    return BW_CLI_BAD_INPUT;
  request.chosen = chosen;
  return write_drawing (options, &request, own->page.target);
}

/**
 * bw_cli_draw:
 *
 * breezeway-cli draw: a drawing of a raster as an SVG, PDF or PNG file.
 *
 * Returns: how the program ends
 */
BwCliExit
bw_cli_draw (const BwCliCommand *command, char **args)
{
  DrawOptions own = { 0 };
  g_autoptr (GArray) entries = bw_raster_choice_entries (&own.choice);
  const GOptionEntry others[] = {
    { "view", 'v', 0, G_OPTION_ARG_FILENAME, &own.view,
      N_ ("What to draw: line, blanking, field or map"), N_ ("line|blanking|field|map") },
    { "output", 'o', 0, G_OPTION_ARG_FILENAME, &own.page.target,
      N_ ("Where to write it; the name ends in .svg, .pdf or .png"), N_ ("FILE") },
    BW_DRAWING_LOOK_ENTRIES (own.page),
    { "system", 0, 0, G_OPTION_ARG_FILENAME, &own.system,
      N_ ("With --view field: the colour system whose burst is drawn"), N_ ("ID") },
    { "standard", 0, 0, G_OPTION_ARG_FILENAME, &own.standard,
      N_ ("With --view blanking: the standard whose limits are drawn (see readings --list)"),
      N_ ("ID") },
  };
  g_auto (BwCliOptions) options;
  BwCliExit result = BW_CLI_DONE;

  g_array_append_vals (entries, others, G_N_ELEMENTS (others));
  if (bw_cli_options_read (&options, command, (const GOptionEntry *) entries->data, args, &result))
    result = run_draw (command, &own, &options);
  clear_options (&own);
  return result;
}
