/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "help.h"

#include <string.h>

#include <glib/gi18n-lib.h>

#include "core/base/caution.h"
#include "core/result/result.h"
#include "output.h"

/* A script reads it, in the same words everywhere. */
static BwResult *
start (void)
{
  bw_cli_speak_to_scripts ();
  BwResult *result = bw_result_new (BW_FILE_MARK);
  bw_node_member (bw_result_root (result), bw_value_count ("format", BW_CLI_JSON_FORMAT));
  return result;
}

static BwCliExit
print (BwResult *result)
{
  g_autofree char *text = bw_node_to_json (bw_result_root (result));
  return bw_cli_print_data (text);
}

static void
add_command (BwNode *to, const BwCliCommand *command)
{
  const char *more = command->description;
  bw_node_member (to, bw_value_words ("command", command->name));
  bw_node_member (to, bw_value_words ("arguments", command->arguments));
  bw_node_member (to, bw_value_says ("summary", _ (command->summary)));
  bw_node_member (to, bw_value_says ("description", more != NULL ? _ (more) : NULL));
}

static void
add_option (BwNode *table, const GOptionEntry *entry)
{
  char letter[] = { '-', entry->short_name, '\0' };
  BwNode *row = bw_node_row (table);

  bw_node_member (row, bw_value_words ("name", bw_node_print (row, "--%s", entry->long_name)));
  bw_node_member (row, bw_value_if (entry->short_name != '\0',
                                    bw_value_words ("letter", bw_node_print (row, "%s", letter))));
  bw_node_member (row, bw_value_words ("argument", entry->arg_description));
  bw_node_member (row, bw_value_says ("meaning", _ (entry->description)));
}

/**
 * bw_cli_help_of_all:
 * @commands: all of them, of which there are @n
 *
 * Prints what the program can do: its commands, and the cautions that it gives.
 *
 * Returns: %BW_CLI_BAD_INPUT, having said so, if standard output cannot be written
 */
BwCliExit
bw_cli_help_of_all (const BwCliCommand *commands, gsize n)
{
  g_return_val_if_fail (commands != NULL, BW_CLI_BAD_INPUT);
  g_autoptr (BwResult) result = start ();
  BwNode *root = bw_result_root (result);

  bw_node_member (root, bw_value_words ("version", BW_VERSION));
  BwNode *cautions = bw_node_section (root, "cautions", NULL);
  bw_node_member (cautions, bw_value_says ("set", bw_caution ()));
  bw_node_member (cautions, bw_value_says ("hook_up", bw_caution_hook_up ()));
  bw_node_member (cautions, bw_value_says ("scope", bw_caution_scope ()));
  BwNode *table = bw_node_table (root, "commands", NULL);
  for (gsize i = 0; i < n; i++)
    add_command (bw_node_row (table), &commands[i]);
  return print (result);
}

/**
 * bw_cli_help_of_command:
 * @tables: the options that it takes, in tables that end as GLib has it; ends in %NULL
 *
 * Prints what @command does and takes.
 *
 * Returns: as bw_cli_help_of_all()
 */
BwCliExit
bw_cli_help_of_command (const BwCliCommand *command, const GOptionEntry *const *tables)
{
  g_return_val_if_fail (command != NULL && tables != NULL, BW_CLI_BAD_INPUT);
  g_autoptr (BwResult) result = start ();
  BwNode *root = bw_result_root (result);

  add_command (root, command);
  BwNode *options = bw_node_table (root, "options", NULL);
  for (; *tables != NULL; tables++)
    for (const GOptionEntry *entry = *tables; entry->long_name != NULL; entry++)
      if (*entry->long_name != '\0') /* that would be what is no option */
        add_option (options, entry);
  return print (result);
}
