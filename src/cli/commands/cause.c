/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gi18n-lib.h>

#include "cli/base/output.h"
#include "cli/base/show.h"
#include "cli/choose/bench.h"
#include "cli/choose/cause-options.h"
#include "core/cause/results.h"

static BwCliExit
show (const BwCauseView *view, const BwCliOptions *options)
{
  g_autoptr (BwResult) result = bw_cli_result_new (options);
  g_autoptr (GArray) causes = bw_causes (&view->c, &view->readings);
  bw_cause_say (bw_result_root (result), view->source, view->input, &view->c, &view->readings,
                causes);
  return bw_cli_show (options, result);
}

static BwCliExit
run_cause (const BwCliCommand *command, const BwCauseOptions *own, const BwCliOptions *options)
{
  const char *path = options->n_rest > 0 ? options->rest[0] : NULL;
  gboolean standard = own->system != NULL || own->kind != NULL;
  gboolean cell = own->source != NULL || own->input != NULL;
  BwCauseView view = { 0 };

  if (path != NULL ? standard : cell)
    return bw_cli_wrong_usage (command->name,
                               _ ("SHEET goes with --source and --input, and --system and --kind "
                                  "stand in place of it"));
  if (!bw_cause_options_any_reading (own))
    return bw_cli_wrong_usage (command->name,
                               _ ("at least one reading is needed, such as --white 1.4V"));

  BwCliExit result;
  g_autoptr (BwCatalogue) catalogue = bw_cli_load_catalogue ();
  g_autoptr (GPtrArray) limits = bw_limits_shipped ();
  g_autoptr (BwSheet) sheet = NULL;
  if (path == NULL)
    result = bw_cause_options_standard (own, command->name, catalogue, &view);
  else if ((sheet = bw_cli_load_sheet (path, catalogue)) == NULL)
    return BW_CLI_BAD_INPUT;
  else
    result = bw_cause_options_sheet (own, command->name, path, sheet, catalogue, &view);
  if (result == BW_CLI_DONE)
    result = bw_cause_options_readings (own, &view.c,
                                        sheet != NULL
                                            ? bw_sheet_accuracy (sheet, BW_DIMENSION_VOLTAGE)
                                            : 0,
                                        &view.readings);
  if (result != BW_CLI_DONE)
    return result;
  const char *id = bw_system_facts (view.c.form.system)->limits;
  view.c.limits = id != NULL ? bw_limits_find (limits, id) : NULL;
  return show (&view, options);
}

/**
 * bw_cli_cause:
 *
 * breezeway-cli cause: what is likely wrong where a scope reads such levels.
 *
 * Returns: how the program ends
 */
BwCliExit
bw_cli_cause (const BwCliCommand *command, char **args)
{
  BwCauseOptions own = { 0 };
#define LEVEL(name, reading, says)                                                                 \
  {                                                                                                \
    name, 0, 0, G_OPTION_ARG_FILENAME, &own.level[reading], says, N_ ("QUANTITY")                  \
  }
#define WORD(name, letter, member, says, what)                                                     \
  {                                                                                                \
    name, letter, 0, G_OPTION_ARG_FILENAME, &own.member, says, what                                \
  }
  const GOptionEntry entries[] = {
    WORD ("system", 0, system, N_ ("The colour system, such as ntsc-m, pal-b or none"), N_ ("ID")),
    WORD ("kind", 'k', kind, N_ ("The signal kind, such as composite"), N_ ("KIND")),
    WORD ("source", 's', source, N_ ("The source of this name"), N_ ("NAME")),
    WORD ("input", 'i', input, N_ ("The input of this name"), N_ ("NAME")),
    WORD ("sync", 0, sync, N_ ("The sync kind, such as on-green"), N_ ("KIND")),
    WORD ("conductor", 0, conductor, N_ ("Where the scope is: r, g, y, pb, video, sync, h …"),
          N_ ("ID")),
    LEVEL ("sync-level", BW_SCOPE_SYNC, N_ ("Sync, peak to peak")),
    WORD ("sync-polarity", 0, polarity, N_ ("Which way sync points: negative or positive"),
          N_ ("negative|positive")),
    LEVEL ("white", BW_SCOPE_WHITE, N_ ("White above blanking; of Pb, Pr and C the highest")),
    LEVEL ("black", BW_SCOPE_BLACK, N_ ("Black above blanking")),
    LEVEL ("burst", BW_SCOPE_BURST, N_ ("Burst, peak to peak")),
    LEVEL ("dc", BW_SCOPE_DC, N_ ("D.c. at blanking")),
    LEVEL ("tilt", BW_SCOPE_FIELD_TILT,
           N_ ("Fall of a white field from top to bottom, such as 3%")),
    LEVEL ("line-tilt", BW_SCOPE_LINE_TILT, N_ ("Fall of a white field from left to right")),
    WORD ("accuracy", 0, accuracy, N_ ("Of the scope; without it as in the sheet, else what the digits tell or 3%"),
          N_ ("PERCENT")),
    WORD ("capacitor", 'c', capacitor, N_ ("The coupling capacitor, such as 220uF"),
          N_ ("CAPACITANCE")),
    G_OPTION_ENTRY_NULL,
  };
#undef LEVEL
#undef WORD
  g_auto (BwCliOptions) options;
  BwCliExit result = BW_CLI_DONE;

  if (bw_cli_options_read (&options, command, entries, args, &result))
    result = run_cause (command, &own, &options);
  bw_cause_options_clear (&own);
  return result;
}
