/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include <glib/gi18n-lib.h>

#include "bench.h"
#include "cell.h"
#include "hookup-view.h"
#include "keyfile.h"
#include "nearest.h"
#include "options.h"
#include "output.h"
#include "target.h"
#include "words.h"

typedef struct
{
  char *source; /* as it came */
  char *input;
  char *csv;
  int alternative;
} HookupOptions;

static gboolean
write_csv (const BwHookup *hookup, const char *target)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *csv = bw_hookup_parts_csv (hookup);
  if (target == NULL || bw_file_replace (target, csv, strlen (csv), &error))
    return TRUE;
  bw_cli_fault (error->message);
  return FALSE;
}

static BwCliExit
print_hookup (const BwHookup *hookup, gboolean as_json)
{
  if (as_json)
    {
      g_autoptr (BwJson) json = bw_json_new ();
      bw_json_begin_object (json, NULL);
      bw_hookup_view_to_json (hookup, json);
      bw_json_end_object (json);
      return bw_cli_print_json (bw_json_text (json));
    }
  g_autoptr (GString) text = g_string_new (NULL);
  bw_hookup_view_append_text (hookup, text);
  return bw_cli_print (text->str);
}

static BwCliExit
show_hookup (const char *command, const char *path, const HookupOptions *own, gboolean as_json)
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
  g_autoptr (BwHookup) hookup = bw_hookup_new (sheet, catalogue, source, input,
                                               (guint) own->alternative - 1, &error);
  if (hookup == NULL)
    {
      g_autofree char *says = g_strdup_printf ("%s: %s", path, error->message);
      bw_cli_fault (says);
      return BW_CLI_BAD_INPUT;
    }
  return write_csv (hookup, own->csv) ? print_hookup (hookup, as_json) : BW_CLI_BAD_INPUT;
}

static BwCliExit
run_hookup (const BwCliCommand *command, const HookupOptions *own, const BwCliOptions *options)
{
  const char *path = options->rest[0];
  if (own->alternative < 1 || own->alternative > BW_HOOKUP_MAX_ALTERNATIVES)
    {
      g_autofree char *says = g_strdup_printf (_ ("--alternative is a number from 1 to %d"),
                                               BW_HOOKUP_MAX_ALTERNATIVES);
      return bw_cli_wrong_usage (command->name, says);
    }
  if (own->csv != NULL && bw_target_is (own->csv, path))
    return bw_cli_wrong_usage (command->name, _ ("the list of parts would replace its own sheet"));
  return show_hookup (command->name, path, own, options->json);
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
    { "source", 's', 0, G_OPTION_ARG_FILENAME, &own.source, N_ ("The source of this name or number"),
      N_ ("NAME") },
    { "input", 'i', 0, G_OPTION_ARG_FILENAME, &own.input, N_ ("The input of this name or number"),
      N_ ("NAME") },
    { "alternative", 'a', 0, G_OPTION_ARG_INT, &own.alternative,
      N_ ("Which of the ranked plans; 1 is the least"), N_ ("N") },
    { "csv", 0, 0, G_OPTION_ARG_FILENAME, &own.csv, N_ ("Write the list of parts to this file too"),
      N_ ("FILE") },
    G_OPTION_ENTRY_NULL,
  };
  g_auto (BwCliOptions) options;
  BwCliExit result = BW_CLI_DONE;

  if (bw_cli_options_read (&options, command, entries, args, &result))
    result = run_hookup (command, &own, &options);
  g_free (own.source);
  g_free (own.input);
  g_free (own.csv);
  return result;
}
