/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gi18n-lib.h>

#include "bench.h"
#include "detail-options.h"
#include "detail-report.h"
#include "nearest.h"
#include "options.h"
#include "output.h"
#include "raster-choice.h"
#include "words.h"

static BwCliExit
print_report (const BwDetailReport *report, gboolean as_json)
{
  if (as_json)
    {
      g_autoptr (BwJson) json = bw_json_new ();
      bw_json_begin_object (json, NULL);
      bw_detail_report_to_json (report, json);
      bw_json_end_object (json);
      return bw_cli_print_json (bw_json_text (json));
    }
  g_autoptr (GString) text = g_string_new (NULL);
  bw_detail_report_append_text (report, text);
  return bw_cli_print (text->str);
}

static BwCliExit
show_chain (const BwDetailOptions *own, BwDetailChain *chain, gboolean as_json)
{
  g_autoptr (BwChosenRaster) chosen = NULL;
  BwDetailReport report;

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
  bw_detail_compute (&report.what, &report.detail);
  report.raster = chain->raster != NULL ? chain->raster->id : NULL;
  return print_report (&report, as_json);
}

/* Which of @names, or the one of that number, from 1; names come first. */
static gboolean
find_named (GPtrArray *names, const char *wanted, guint *at)
{
  guint64 number;
  for (guint i = 0; i < names->len; i++)
    if (g_strcmp0 (names->pdata[i], wanted) == 0)
      {
        *at = i;
        return TRUE;
      }
  if (!g_ascii_string_to_unsigned (wanted, 10, 1, names->len, &number, NULL))
    return FALSE;
  *at = (guint) number - 1;
  return TRUE;
}

/* @raw may only be missing if there is but one to choose. */
static BwCliExit
pick (const BwCliCommand *command, const char *path, const char *option, const char *raw,
      GPtrArray *names, guint *at)
{
  if (raw == NULL && names->len == 1)
    {
      *at = 0;
      return BW_CLI_DONE;
    }
  if (raw == NULL)
    {
      g_autofree char *says = g_strdup_printf (_ ("%s is needed: a name or a number"), option);
      return bw_cli_wrong_usage (command->name, says);
    }
  g_autofree char *wanted = bw_words_utf8 (raw);
  if (names->len > 0 && find_named (names, wanted, at))
    return BW_CLI_DONE;
  g_autofree char *nearest = bw_nearest_names (names, wanted, 3);
  g_autofree char *says
      = names->len > 0
            ? g_strdup_printf (_ ("%s: %s: there is no “%s”; the nearest are %s, or a number "
                                  "from 1 to %u"),
                               path, option, wanted, nearest, names->len)
            : g_strdup_printf (_ ("%s: %s: there is no “%s”; there are none"), path, option,
                               wanted);
  bw_cli_fault (says);
  return BW_CLI_BAD_INPUT;
}

static BwCliExit
pick_both (const BwCliCommand *command, const char *path, const BwDetailOptions *own,
           const BwSheet *sheet, guint *source, guint *input)
{
  g_autoptr (GPtrArray) sources = g_ptr_array_new ();
  g_autoptr (GPtrArray) inputs = g_ptr_array_new ();
  for (guint i = 0; i < sheet->sources->len; i++)
    g_ptr_array_add (sources, bw_sheet_source (sheet, i)->name);
  for (guint i = 0; i < sheet->monitor->inputs->len; i++)
    g_ptr_array_add (inputs, bw_monitor_input (sheet->monitor, i)->name);

  BwCliExit result = pick (command, path, "--source", own->source, sources, source);
  return result == BW_CLI_DONE ? pick (command, path, "--input", own->input, inputs, input)
                               : result;
}

static BwCliExit
show_sheet (const BwCliCommand *command, const char *path, const BwDetailOptions *own,
            gboolean as_json)
{
  g_autoptr (BwCatalogue) catalogue = bw_cli_load_catalogue ();
  g_autoptr (BwSheet) sheet = bw_cli_load_sheet (path, catalogue);
  guint source = 0, input = 0;

  if (sheet == NULL)
    return BW_CLI_BAD_INPUT;
  BwCliExit result = pick_both (command, path, own, sheet, &source, &input);
  if (result != BW_CLI_DONE)
    return result;
  BwDetailChain chain = { sheet->monitor, bw_monitor_input (sheet->monitor, input),
                          bw_sheet_source (sheet, source), NULL };
  chain.raster = bw_sheet_raster (sheet, catalogue, chain.source);
  return show_chain (own, &chain, as_json);
}

static BwCliExit
show_tube (const BwCliCommand *command, const BwDetailOptions *own, gboolean as_json)
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
  return show_chain (own, &chain, as_json);
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
    result = options.n_rest > 0 ? show_sheet (command, options.rest[0], &own, options.json)
                                : show_tube (command, &own, options.json);
  bw_detail_options_clear (&own);
  return result;
}
