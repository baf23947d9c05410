/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include <glib/gi18n-lib.h>

#include "bench.h"
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

/* Which of @names is @raw, or is the only one where @raw is NULL. */
static gboolean
choose (const char *path, GPtrArray *names, const char *raw, const char *what, const char *option,
        guint *index)
{
  g_autofree char *wanted = raw != NULL ? bw_words_utf8 (raw) : NULL;
  *index = 0;
  if (raw == NULL && names->len == 1)
    return TRUE;
  for (guint i = 0; i < names->len && raw != NULL; i++)
    if (g_strcmp0 (names->pdata[i], wanted) == 0)
      {
        *index = i;
        return TRUE;
      }
  g_autofree char *nearest = bw_nearest_names (names, wanted != NULL ? wanted : "", 3);
  g_autofree char *says
      = raw == NULL ? g_strdup_printf (_ ("%s: name one of its %u with %s"), path, names->len,
                                       option)
        : names->len == 0
            ? g_strdup_printf (_ ("%s: %s “%s”; there are none"), path, what, wanted)
            : g_strdup_printf (_ ("%s: %s “%s”; the nearest are %s"), path, what, wanted, nearest);
  bw_cli_fault (says);
  return FALSE;
}

static gboolean
choose_source (const char *path, const BwSheet *sheet, const char *raw, guint *index)
{
  g_autoptr (GPtrArray) names = g_ptr_array_new ();
  for (guint i = 0; i < sheet->sources->len; i++)
    g_ptr_array_add (names, bw_sheet_source (sheet, i)->name);
  return choose (path, names, raw, _ ("no source is called"), "--source", index);
}

static gboolean
choose_input (const char *path, const BwSheet *sheet, const char *raw, guint *index)
{
  g_autoptr (GPtrArray) names = g_ptr_array_new ();
  for (guint i = 0; i < sheet->monitor->inputs->len; i++)
    g_ptr_array_add (names, bw_monitor_input (sheet->monitor, i)->name);
  return choose (path, names, raw, _ ("no input is called"), "--input", index);
}

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
show_hookup (const char *path, const HookupOptions *own, gboolean as_json)
{
  g_autoptr (BwCatalogue) catalogue = bw_cli_load_catalogue ();
  g_autoptr (BwSheet) sheet = bw_cli_load_sheet (path, catalogue);
  g_autoptr (GError) error = NULL;
  guint source, input;

  if (sheet == NULL || !choose_source (path, sheet, own->source, &source)
      || !choose_input (path, sheet, own->input, &input))
    return BW_CLI_BAD_INPUT;
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
  return show_hookup (path, own, options->json);
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
    { "source", 's', 0, G_OPTION_ARG_FILENAME, &own.source, N_ ("The source of this name"),
      N_ ("NAME") },
    { "input", 'i', 0, G_OPTION_ARG_FILENAME, &own.input, N_ ("The input of this name"),
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
