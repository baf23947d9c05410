/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include <glib/gi18n-lib.h>

#include "cli/base/options.h"
#include "cli/base/output.h"
#include "cli/base/show.h"
#include "cli/base/streams.h"
#include "cli/choose/bench.h"
#include "cli/choose/target.h"
#include "core/interchange/results.h"

static BwCliExit
show_list (const BwCliOptions *options)
{
  g_autoptr (BwResult) result = bw_cli_result_new (options);
  g_autoptr (GPtrArray) displays = bw_displays_list (BW_DISPLAYS_FOLDER);
  bw_displays_say (bw_result_root (result), displays);
  return bw_cli_show (options, result);
}

/* The file that @word names: itself, or that of the display at a connector of this name. */
static char *
find_file (const char *word)
{
  g_autoptr (GPtrArray) displays = bw_displays_list (BW_DISPLAYS_FOLDER);
  for (guint i = 0; i < displays->len && !g_file_test (word, G_FILE_TEST_EXISTS); i++)
    if (strcmp (bw_display_at (displays, i)->name, word) == 0)
      return g_strdup (bw_display_at (displays, i)->path);
  return g_strdup (word);
}

static BwEdid *
read_edid (const char *word)
{
  g_autofree char *path = find_file (word);
  g_autofree char *bytes = NULL;
  g_autoptr (GError) error = NULL;
  gsize length;
  BwEdid *edid = NULL;

  if (!bw_cli_read (path, BW_EDID_MAX_BYTES, &bytes, &length, &error))
    bw_cli_fault (error->message);
  else if ((edid = bw_edid_parse ((const guint8 *) bytes, length, &error)) == NULL)
    {
      g_autofree char *says = g_strdup_printf ("%s: %s", bw_cli_input_name (path), error->message);
      bw_cli_fault (says);
    }
  return edid;
}

static gboolean
write_sheet (const BwEdid *edid, const char *word, const char *target)
{
  g_autoptr (BwCatalogue) catalogue = bw_cli_load_catalogue ();
  g_autoptr (GPtrArray) notes = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GError) error = NULL;
  g_autoptr (BwSheet) sheet = bw_edid_to_sheet (edid, catalogue, notes, &error);

  if (sheet == NULL)
    {
      g_autofree char *says = g_strdup_printf ("%s: %s", bw_cli_input_name (word), error->message);
      bw_cli_fault (says);
      return FALSE;
    }
  char *text = bw_sheet_to_text (sheet, catalogue);
  g_autoptr (GBytes) bytes = g_bytes_new_take (text, strlen (text));
  if (!bw_cli_write (target, bytes))
    return FALSE;
  for (guint i = 0; i < notes->len; i++)
    bw_cli_complain (_ ("note: %s"), (const char *) notes->pdata[i]);
  return TRUE;
}

/* With -o people get the sheet and no text; scripts get what the EDID says as well. */
static BwCliExit
run_display (const BwCliOptions *options, const char *word, const char *target)
{
  g_autoptr (BwEdid) edid = read_edid (word);
  if (edid == NULL || (target != NULL && !write_sheet (edid, word, target)))
    return BW_CLI_BAD_INPUT;
  if (target != NULL && !options->json && !options->csv && !options->keys)
    return BW_CLI_DONE;
  g_autoptr (BwResult) result = bw_cli_result_new (options);
  bw_edid_say (bw_result_root (result), edid);
  if (target != NULL)
    bw_node_member (bw_result_root (result), bw_value_words ("sheet", target));
  return bw_cli_show (options, result);
}

/* What is wrong with the command line, or NULL. */
static char *
find_fault (const BwCliOptions *options, gboolean list, const char *target)
{
  static const char *const kinds[] = { "-.bench", NULL };
  const char *word = options->rest[0];

  if (list == (word != NULL))
    return g_strdup (_ ("either FILE or --list is needed"));
  if (list && target != NULL)
    return g_strdup (_ ("--list does not go with -o"));
  if (target != NULL && bw_target_is (target, word))
    return g_strdup (_ ("the sheet would replace its own EDID"));
  return target != NULL ? bw_cli_target_fault (target, kinds, options) : NULL;
}

/**
 * bw_cli_display:
 *
 * breezeway-cli display: what the EDID of a display says, and a bench sheet made of it.
 *
 * Returns: how the program ends
 */
BwCliExit
bw_cli_display (const BwCliCommand *command, char **args)
{
  gboolean list = FALSE;
  char *target = NULL; /* as it came */
  const GOptionEntry own[] = {
    { "list", 'l', 0, G_OPTION_ARG_NONE, &list, N_ ("List the displays of this computer"), NULL },
    { "output", 'o', 0, G_OPTION_ARG_FILENAME, &target, N_ ("Where to write the bench sheet"),
      N_ ("FILE") },
    G_OPTION_ENTRY_NULL,
  };
  g_auto (BwCliOptions) options;
  BwCliExit result = BW_CLI_DONE;

  if (bw_cli_options_read (&options, command, own, args, &result))
    {
      g_autofree char *fault = find_fault (&options, list, target);
      if (fault != NULL)
        result = bw_cli_wrong_usage (command->name, fault);
      else
        result = list ? show_list (&options) : run_display (&options, options.rest[0], target);
    }
  g_free (target);
  return result;
}
