/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "options.h"

#include <glib/gi18n-lib.h>

#include "help.h"
#include "output.h"

/* What follows the options, in the reader's language. */
static const char *
arguments_of (const BwCliCommand *command)
{
  return *command->arguments != '\0' ? _ (command->arguments) : "";
}

/* All that a command takes; what it has not ends at once. */
typedef struct
{
  const GOptionEntry *own; /* borrowed, nullable */
  GOptionEntry csv[2];
  GOptionEntry common[5];
} Tables;

static void
fill_tables (Tables *tables, BwCliOptions *options, const BwCliCommand *command,
             const GOptionEntry *own)
{
  *tables = (Tables){
    .own = own,
    .common = {
      { "json", 0, 0, G_OPTION_ARG_NONE, &options->json, N_ ("Print one JSON object"), NULL },
      { "keys", 0, 0, G_OPTION_ARG_NONE, &options->keys,
        N_ ("Print the keys of the JSON with what they are, in place of it"), NULL },
      { "help", 'h', 0, G_OPTION_ARG_NONE, &options->help, N_ ("Show this help"), NULL },
      { G_OPTION_REMAINING, 0, 0, G_OPTION_ARG_FILENAME_ARRAY, &options->rest, NULL, NULL },
    },
  };
  if (command->tables)
    tables->csv[0] = (GOptionEntry){ "csv",
                                     0,
                                     0,
                                     G_OPTION_ARG_NONE,
                                     &options->csv,
                                     N_ ("Print its tables as comma-separated values"),
                                     NULL };
}

/* The help is printed by print_help(), not by GLib, which would not see that it cannot be. */
static GOptionContext *
make_context (const BwCliCommand *command, const Tables *tables)
{
  GOptionContext *context = g_option_context_new (arguments_of (command));
  g_option_context_set_help_enabled (context, FALSE);
  g_option_context_set_summary (context, _ (command->summary));
  if (command->description != NULL)
    g_option_context_set_description (context, _ (command->description));
  if (tables->own != NULL)
    g_option_context_add_main_entries (context, tables->own, GETTEXT_PACKAGE);
  g_option_context_add_main_entries (context, tables->csv, GETTEXT_PACKAGE);
  g_option_context_add_main_entries (context, tables->common, GETTEXT_PACKAGE);
  return context;
}

static BwCliExit
print_help (const BwCliCommand *command, GOptionContext *context)
{
  g_autofree char *name = g_strconcat ("breezeway-cli ", command->name, NULL);
  g_set_prgname (name);
  g_autofree char *help = g_option_context_get_help (context, TRUE, NULL);
  return bw_cli_print (help);
}

static gboolean
check_count (const BwCliOptions *options, const BwCliCommand *command, BwCliExit *result)
{
  g_autofree char *says = NULL;
  if (options->n_rest > command->at_most)
    says = g_strdup_printf (_ ("“%s” is one argument too many"), options->rest[command->at_most]);
  else if (options->n_rest < command->at_least)
    says = g_strdup_printf (_ ("%s is missing"), arguments_of (command));
  else
    return TRUE;
  *result = bw_cli_wrong_usage (command->name, says);
  return FALSE;
}

/**
 * bw_cli_options_read:
 * @options: (out caller-allocates): to be cleared with bw_cli_options_clear()
 * @own: (nullable): the options that only this command has
 * @args: the command's name and what stands after it
 * @result: (out): how the program ends, if %FALSE is returned
 *
 * Reads the command line of a command, and prints its help if that is asked for. With --json or --csv
 * bw_cli_speak_to_scripts() is called.
 *
 * Returns: whether the command is to go on
 */
gboolean
bw_cli_options_read (BwCliOptions *options, const BwCliCommand *command, const GOptionEntry *own,
                     char **args, BwCliExit *result)
{
  Tables tables;
  *options = (BwCliOptions){ 0 };
  fill_tables (&tables, options, command, own);
  g_autoptr (GOptionContext) context = make_context (command, &tables);
  g_autoptr (GError) error = NULL;
  g_auto (GStrv) left = g_strdupv (args);

  if (!g_option_context_parse_strv (context, &left, &error))
    {
      *result = bw_cli_wrong_usage (command->name, error->message);
      return FALSE;
    }
  if (options->help)
    {
      const GOptionEntry *const all[] = { own, tables.csv, tables.common, NULL };
      *result = options->json ? bw_cli_help_of_command (command, own != NULL ? all : all + 1)
                              : print_help (command, context);
      return FALSE;
    }
  if (options->json && options->csv)
    {
      *result = bw_cli_wrong_usage (command->name, _ ("--json does not go with --csv"));
      return FALSE;
    }
  if (options->json || options->csv)
    bw_cli_speak_to_scripts ();
  if (options->rest == NULL)
    options->rest = g_new0 (char *, 1);
  options->n_rest = g_strv_length (options->rest);
  return check_count (options, command, result);
}

/**
 * bw_cli_options_clear:
 *
 * Frees what bw_cli_options_read() made.
 */
void
bw_cli_options_clear (BwCliOptions *options)
{
  g_clear_pointer (&options->rest, g_strfreev);
}
