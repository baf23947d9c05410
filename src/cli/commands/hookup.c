/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include <glib/gi18n-lib.h>

#include "cli/base/arguments.h"
#include "cli/base/nearest.h"
#include "cli/base/output.h"
#include "cli/base/show.h"
#include "cli/choose/bench.h"
#include "cli/choose/cell.h"
#include "cli/choose/drawing-options.h"
#include "cli/choose/target.h"
#include "cli/files/hookup-out.h"
#include "core/hookup/results.h"

typedef struct
{
  char *source; /* as it came */
  char *input;
  char *csv;
  BwDrawingOptions page;
  char *pdf;
  char *series;
  char *lead;
  char *length;
  int alternative;
  guint theme;
} HookupOptions;

/* Writes @bytes, takes them over, unless there is no @target; NULL says that @error is why. */
static gboolean
write_bytes (const char *target, GBytes *bytes, const GError *error)
{
  g_autoptr (GBytes) owned = bytes;
  if (bytes != NULL)
    return bw_cli_write (target, bytes);
  bw_cli_fault (error->message);
  return FALSE;
}

/* The parts alone: what is taken to the shop. */
static GBytes *
parts_csv (const BwHookup *hookup)
{
  g_autoptr (BwResult) result = bw_result_new (BW_FILE_MARK);
  bw_hookup_say (bw_result_root (result), hookup, NULL);
  char *csv = bw_node_to_csv (bw_node_find (bw_result_root (result), "parts"));
  return g_bytes_new_take (csv, strlen (csv));
}

static gboolean
write_files (const BwHookup *hookup, const char *title, const HookupOptions *own)
{
  g_autoptr (GError) error = NULL;
  BwDrawingPage page = { .theme = own->theme };
  const char *drawing = own->page.target;

  if (!bw_drawing_options_page (&own->page, &page))
    return FALSE;
  return (own->csv == NULL || write_bytes (own->csv, parts_csv (hookup), NULL))
         && (drawing == NULL
             || write_bytes (drawing,
                             bw_hookup_drawing_bytes (hookup, &page,
                                                      bw_cli_target_name (drawing, bw_cli_drawings),
                                                      &error),
                             error))
         && (own->pdf == NULL
             || write_bytes (own->pdf,
                             bw_hookup_sheet_bytes (hookup, title,
                                                    bw_cli_target_name (own->pdf, bw_cli_pdf),
                                                    &error),
                             error));
}

/* @types: to be kept as long as @lead is used. Without --lead the first type, and no lead without
 * --length. */
static gboolean
read_lead (const HookupOptions *own, const GPtrArray *types, BwLead *lead)
{
  if (own->length == NULL)
    return TRUE;
  lead->type = own->lead != NULL ? bw_lead_type_find (types, own->lead) : types->pdata[0];
  if (lead->type == NULL)
    {
      g_autofree char *given = bw_argument_utf8 (own->lead);
      g_autoptr (GString) ids = g_string_new (NULL);
      for (guint i = 0; i < types->len; i++)
        g_string_append_printf (ids, "%s%s", i > 0 ? ", " : "",
                                ((const BwLeadType *) types->pdata[i])->id);
      bw_cli_complain (_ ("--lead: there is no “%1$s”; there are %2$s"), given, ids->str);
      return FALSE;
    }
  return bw_argument_quantity ("--length", own->length, BW_DIMENSION_LENGTH, &lead->length_m);
}

static BwCliExit
print_hookup (const BwHookup *hookup, const HookupOptions *own, const BwCliOptions *options)
{
  g_autoptr (GPtrArray) types = bw_lead_types_shipped ();
  BwLeadCase lead = { 0 };

  if (!read_lead (own, types, &lead.lead))
    return BW_CLI_BAD_INPUT;
  g_autoptr (BwResult) result = bw_cli_result_new (options);
  bw_hookup_say (bw_result_root (result), hookup, lead.lead.type != NULL ? &lead : NULL);
  return bw_cli_show (options, result);
}

/* How many of the files are standard output, where nothing else is printed then. */
static guint
takes_output (const HookupOptions *own)
{
  return (guint) bw_cli_is_standard (own->csv) + (guint) bw_cli_is_standard (own->page.target)
         + (guint) bw_cli_is_standard (own->pdf);
}

static BwCliExit
show_hookup (const char *command, const char *path, const HookupOptions *own, guint series,
             const BwCliOptions *options)
{
  g_autoptr (BwCatalogue) catalogue = bw_cli_load_catalogue ();
  g_autoptr (BwSheet) sheet = bw_cli_load_sheet (path, catalogue);
  g_autoptr (GError) error = NULL;
  guint source, input;

  if (sheet == NULL)
    return BW_CLI_BAD_INPUT;
  BwCliExit picked = bw_cell_pick (command, path, sheet, own->source, own->input, &source, &input);
  if (picked != BW_CLI_DONE)
    return picked;
  const BwHookupChoice choice = { (guint) own->alternative - 1, series, BW_EDITION_CURRENT };
  g_autoptr (BwHookup) hookup = bw_hookup_new_chosen (sheet, catalogue, source, input, &choice,
                                                      &error);
  if (hookup == NULL)
    {
      g_autofree char *says = g_strdup_printf ("%s: %s", bw_cli_input_name (path), error->message);
      bw_cli_fault (says);
      return BW_CLI_BAD_INPUT;
    }
  if (!write_files (hookup, sheet->title, own))
    return BW_CLI_BAD_INPUT;
  return takes_output (own) ? BW_CLI_DONE : print_hookup (hookup, own, options);
}

/* What is wrong with the files that are to be written, or NULL. */
static char *
find_target_fault (HookupOptions *own, const char *path, const BwCliOptions *options)
{
  static const char *const csv[] = { "-.csv", NULL };
  const char *const targets[] = { own->csv, own->page.target, own->pdf };
  char *fault = NULL;

  for (guint i = 0; fault == NULL && i < G_N_ELEMENTS (targets); i++)
    if (targets[i] != NULL && bw_target_is (targets[i], path))
      fault = g_strdup (_ ("the file would replace its own sheet"));
  if (fault == NULL)
    fault = bw_drawing_options_fault (&own->page, bw_cli_drawings, options, &own->theme);
  if (fault == NULL && own->csv != NULL)
    fault = bw_cli_target_fault (own->csv, csv, options);
  if (fault == NULL && own->pdf != NULL)
    fault = bw_cli_target_fault (own->pdf, bw_cli_pdf, options);
  if (fault == NULL && takes_output (own) > 1)
    fault = g_strdup (_ ("only one file can be standard output"));
  return fault;
}

/* --csv - is what --csv is of other commands. */
static void
take_standard_output (HookupOptions *own, BwCliOptions *options)
{
  if (g_strcmp0 (own->csv, "-") != 0)
    return;
  g_clear_pointer (&own->csv, g_free);
  options->csv = TRUE;
}

static BwCliExit
run_hookup (const BwCliCommand *command, HookupOptions *own, const BwCliOptions *options)
{
  const char *path = options->rest[0];
  g_autofree char *fault = find_target_fault (own, path, options);
  guint series = BW_USUAL_SERIES;
  if (options->json && options->csv)
    return bw_cli_wrong_usage (command->name, _ ("--json does not go with --csv -"));
  if (own->lead != NULL && own->length == NULL)
    return bw_cli_wrong_usage (command->name, _ ("--lead needs --length"));
  if (own->alternative < 1 || own->alternative > BW_HOOKUP_MAX_ALTERNATIVES)
    {
      g_autofree char *says = g_strdup_printf (_ ("--alternative is a number from 1 to %d"),
                                               BW_HOOKUP_MAX_ALTERNATIVES);
      return bw_cli_wrong_usage (command->name, says);
    }
  if (own->series != NULL && !bw_kind_find (&bw_series, own->series, &series))
    return bw_cli_wrong_usage (command->name, _ ("--series is one of e12, e24, e96"));
  if (fault != NULL)
    return bw_cli_wrong_usage (command->name, fault);
  return show_hookup (command->name, path, own, series, options);
}

/**
 * bw_cli_hookup:
 *
 * breezeway-cli hookup: the plan of leads, parts and adaptors from a source to an input. That there
 * is none is an answer, not a fault.
 *
 * Returns: how the program ends
 */
BwCliExit
bw_cli_hookup (const BwCliCommand *command, char **args)
{
  HookupOptions own = { .alternative = 1 };
  const GOptionEntry entries[] = {
    { "source", 's', 0, G_OPTION_ARG_FILENAME, &own.source,
      N_ ("The source of this name or number"), N_ ("NAME") },
    { "input", 'i', 0, G_OPTION_ARG_FILENAME, &own.input, N_ ("The input of this name or number"),
      N_ ("NAME") },
    { "alternative", 0, 0, G_OPTION_ARG_INT, &own.alternative,
      N_ ("Which of the ranked plans; 1 is the least"), N_ ("N") },
    { "series", 0, 0, G_OPTION_ARG_FILENAME, &own.series,
      N_ ("Of the resistors: e12, e24 or e96; without it e24"), N_ ("e12|e24|e96") },
    { "length", 0, 0, G_OPTION_ARG_STRING, &own.length,
      N_ ("Of the lead to the input, such as 5m: show what it does"), N_ ("LENGTH") },
    { "lead", 0, 0, G_OPTION_ARG_STRING, &own.lead,
      N_ ("Its type, such as coax-2.5mm; without it the first of the list"), N_ ("ID") },
    { "csv", 0, 0, G_OPTION_ARG_FILENAME, &own.csv,
      N_ ("Write the list of parts to this file too; with - print its tables as comma-separated "
          "values"),
      N_ ("FILE") },
    { "output", 'o', 0, G_OPTION_ARG_FILENAME, &own.page.target,
      N_ ("Draw the plan into a file too; the name ends in .svg, .pdf or .png"), N_ ("FILE") },
    BW_DRAWING_LOOK_ENTRIES (own.page),
    { "pdf", 0, 0, G_OPTION_ARG_FILENAME, &own.pdf,
      N_ ("Write the sheet that lies beside the soldering iron as a PDF too"), N_ ("FILE") },
    G_OPTION_ENTRY_NULL,
  };
  g_auto (BwCliOptions) options;
  BwCliExit result = BW_CLI_DONE;

  if (bw_cli_options_read (&options, command, entries, args, &result))
    {
      take_standard_output (&own, &options);
      result = run_hookup (command, &own, &options);
    }
  g_free (own.source);
  g_free (own.input);
  g_free (own.csv);
  bw_drawing_options_clear (&own.page);
  g_free (own.pdf);
  g_free (own.series);
  g_free (own.lead);
  g_free (own.length);
  return result;
}
