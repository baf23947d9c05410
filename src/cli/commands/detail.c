/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gi18n-lib.h>

#include "cli/base/nearest.h"
#include "cli/base/output.h"
#include "cli/base/show.h"
#include "cli/choose/bench.h"
#include "cli/choose/cell.h"
#include "cli/choose/detail-options.h"
#include "cli/choose/raster-choice.h"
#include "core/detail/results.h"

static BwCliExit
show_report (const BwDetailReport *report, const BwCliOptions *options)
{
  g_autoptr (BwResult) result = bw_cli_result_new (options);
  BwNode *root = bw_result_root (result);
  bw_detail_say_figures (root, report);
  bw_detail_say_ways (root, report);
  bw_detail_say_answer (root, report);
  bw_detail_say_rgb (root, report);
  return bw_cli_show (options, result);
}

/* What is asked of a sheet, beside the figures of the chain itself. */
static void
take_sheet (BwDetailReport *report, const BwDetailOptions *own, const BwDetailChain *chain)
{
  const BwDetailBench bench = { chain->monitor, chain->input, chain->raster,
                                own->bandwidth != NULL };

  report->source_aspect = chain->source->aspect;
  report->switched = bw_monitor_switches_to (chain->monitor, chain->source->aspect);
  report->n_ways = bw_detail_ways (&report->what, &bench, report->ways);
}

static BwCliExit
show_chain (const BwCliCommand *command, const BwDetailOptions *own, BwDetailChain *chain,
            const BwCliOptions *options)
{
  g_autoptr (BwChosenRaster) chosen = NULL;
  BwDetailReport report = { .source_aspect = BW_RATIO_NONE };

  if (!bw_detail_options_read_chain (own, chain))
    return BW_CLI_BAD_INPUT;
  if (own->raster != NULL)
    {
      const BwRasterChoice none = { .which = BW_WHICH_FIRST };
      chosen = bw_raster_choice_make (&none, own->raster);
      if (chosen == NULL)
        return BW_CLI_BAD_INPUT;
      chain->raster = chosen->raster;
    }
  bw_detail_case_from (&report.what, chain->monitor, chain->input, chain->source, chain->raster);
  if (!bw_detail_options_read_case (own, &report.what))
    return BW_CLI_BAD_INPUT;
  g_autofree char *clash = bw_detail_options_clash (own, chain);
  if (clash != NULL)
    return bw_cli_wrong_usage (command->name, clash);
  bw_detail_options_warn (own, chain);
  bw_detail_compute (&report.what, &report.detail);
  if (chain->input != NULL) /* a sheet's, so the source has a shape of its own */
    take_sheet (&report, own, chain);
  report.raster = chain->raster != NULL ? chain->raster->id : NULL;
  return show_report (&report, options);
}

static BwCliExit
show_sheet (const BwCliCommand *command, const char *path, const BwDetailOptions *own,
            const BwCliOptions *options)
{
  g_autoptr (BwCatalogue) catalogue = bw_cli_load_catalogue ();
  g_autoptr (BwSheet) sheet = bw_cli_load_sheet (path, catalogue);
  guint source = 0, input = 0;

  if (sheet == NULL)
    return BW_CLI_BAD_INPUT;
  BwCliExit result = bw_cell_pick (command->name, path, sheet, own->source, own->input, &source,
                                   &input);
  if (result != BW_CLI_DONE)
    return result;
  BwDetailChain chain = { sheet->monitor, bw_monitor_input (sheet->monitor, input),
                          bw_sheet_source (sheet, source), NULL };
  chain.raster = bw_sheet_raster (sheet, catalogue, chain.source);
  return show_chain (command, own, &chain, options);
}

static BwCliExit
show_tube (const BwCliCommand *command, const BwDetailOptions *own, const BwCliOptions *options)
{
  if (own->source != NULL || own->input != NULL)
    return bw_cli_wrong_usage (command->name, _ ("--source and --input are of a bench sheet"));
  if (own->diagonal == NULL || own->aspect == NULL || own->mask == NULL)
    return bw_cli_wrong_usage (command->name,
                               _ ("a bench sheet, or --diagonal, --aspect and --mask are needed"));
  if (own->system != NULL && own->kind == NULL)
    return bw_cli_wrong_usage (command->name, _ ("--system needs --kind"));
  g_autoptr (BwMonitor) monitor = bw_monitor_new ();
  g_autoptr (BwSource) source = bw_source_new ();
  BwDetailChain chain = { monitor, NULL, source, NULL };
  return show_chain (command, own, &chain, options);
}

/**
 * bw_cli_detail:
 *
 * breezeway-cli detail: what can be resolved, what limits it, and whether a claim is true.
 *
 * Returns: how the program ends
 */
BwCliExit
bw_cli_detail (const BwCliCommand *command, char **args)
{
  BwDetailOptions own;
  g_autoptr (GArray) entries = bw_detail_options_entries (&own);
  g_auto (BwCliOptions) options;
  BwCliExit result = BW_CLI_DONE;

  if (bw_cli_options_read (&options, command, (const GOptionEntry *) entries->data, args, &result))
    result = options.n_rest > 0 ? show_sheet (command, options.rest[0], &own, &options)
                                : show_tube (command, &own, &options);
  bw_detail_options_clear (&own);
  return result;
}
