/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include <glib/gi18n-lib.h>

#include "cli/base/arguments.h"
#include "cli/base/output.h"
#include "cli/base/show.h"
#include "cli/choose/bench.h"
#include "core/circuit/drive.h"
#include "core/signal/results.h"

/* As they came; NULL where they did not. */
typedef struct
{
  char *system;
  char *kind;
  char *bars;
  char *sync;
  char *capacitor;
  char *loop;
} LevelsOptions;

static gboolean
read_bars (const char *text, BwBarsForm *form)
{
  guint kind = BW_BARS_100;
  gboolean known = text == NULL || bw_kind_find (&bw_bars_forms, text, &kind);
  *form = (BwBarsForm) kind;
  return known;
}

static gboolean
read_sync (const char *raw, BwLevelsAsk *view)
{
  guint sync;

  view->sync = bw_signal_usual_sync (view->signal);
  if (raw == NULL)
    return TRUE;
  if (!bw_argument_kind (&bw_sync_kinds, '-', raw, &sync))
    return FALSE;
  view->sync = sync;
  view->tell_conductors = TRUE;
  if (bw_signal_syncs (view->signal) & BW_BIT (sync))
    return TRUE;
  bw_cli_complain (_ ("--sync: %1$s does not come with %2$s"),
                   bw_kind_label (&bw_signals, view->signal), bw_kind_label (&bw_sync_kinds, sync));
  return FALSE;
}

/* Around the capacitor a source and a load of 75 Ω, and the raster that goes with the system. */
static gboolean
read_coupling (const LevelsOptions *own, BwLevelsAsk *view)
{
  view->coupling.loop_ohm = 2 * BW_VIDEO_OHM;
  if (own->capacitor == NULL)
    return TRUE;
  if (!bw_argument_capacitor (own->capacitor, &view->coupling.farad)
      || (own->loop != NULL
          && !bw_argument_quantity ("--loop", own->loop, BW_DIMENSION_RESISTANCE,
                                    &view->coupling.loop_ohm)))
    return FALSE;
  g_autoptr (BwCatalogue) catalogue = bw_cli_load_catalogue ();
  bw_picture_time (bw_catalogue_usual_raster (catalogue, view->system), &view->coupling.time);
  return TRUE;
}

static BwCliExit
read_view (const BwCliCommand *command, const LevelsOptions *own, BwLevelsAsk *view)
{
  guint system, signal;

  if (own->system == NULL || own->kind == NULL)
    return bw_cli_wrong_usage (command->name, _ ("--system and --kind are needed"));
  if (own->loop != NULL && own->capacitor == NULL)
    return bw_cli_wrong_usage (command->name, _ ("--loop goes with --capacitor"));
  if (!read_bars (own->bars, &view->bars))
    return bw_cli_wrong_usage (command->name, _ ("--bars takes 75, 100 or ebu"));
  if (!bw_argument_kind (&bw_colour_systems, '-', own->system, &system)
      || !bw_argument_kind (&bw_signals, '-', own->kind, &signal))
    return BW_CLI_BAD_INPUT;
  if (signal == BW_SIGNAL_LUMA)
    return bw_cli_wrong_usage (command->name, _ ("--kind takes rgb, component, yc or composite"));
  view->system = system;
  view->signal = signal;
  return read_sync (own->sync, view) && read_coupling (own, view) ? BW_CLI_DONE : BW_CLI_BAD_INPUT;
}

/**
 * bw_cli_levels:
 *
 * breezeway-cli levels: what should be on the wire, and the colour bars.
 *
 * Returns: how the program ends
 */
BwCliExit
bw_cli_levels (const BwCliCommand *command, char **args)
{
  LevelsOptions own = { 0 };
  BwLevelsAsk view = { 0 };
  const GOptionEntry entries[] = {
    { "system", 0, 0, G_OPTION_ARG_STRING, &own.system,
      N_ ("The colour system, such as ntsc-m, pal-b or none"), N_ ("ID") },
    { "kind", 'k', 0, G_OPTION_ARG_STRING, &own.kind,
      N_ ("The signal kind: rgb, component, yc or composite"), N_ ("KIND") },
    { "bars", 'b', 0, G_OPTION_ARG_STRING, &own.bars, N_ ("Bars of 75 or 100 per cent, or EBU bars (100/0/75/0): ebu"),
      N_ ("75|100") },
    { "sync", 0, 0, G_OPTION_ARG_STRING, &own.sync,
      N_ ("The sync kind: show each conductor as well"), N_ ("KIND") },
    { "capacitor", 'c', 0, G_OPTION_ARG_STRING, &own.capacitor,
      N_ ("A coupling capacitor, such as 220uF: show its corner and tilt"), N_ ("CAPACITANCE") },
    { "loop", 0, 0, G_OPTION_ARG_STRING, &own.loop,
      N_ ("Source and load in series around it (default 150 ohm)"), N_ ("RESISTANCE") },
    G_OPTION_ENTRY_NULL,
  };
  g_auto (BwCliOptions) options;
  BwCliExit result = BW_CLI_DONE;

  if (bw_cli_options_read (&options, command, entries, args, &result))
    {
      result = read_view (command, &own, &view);
      g_autoptr (BwResult) levels = bw_cli_result_new (&options);
      if (result == BW_CLI_DONE)
        {
          bw_levels_say (bw_result_root (levels), &view);
          result = bw_cli_show (&options, levels);
        }
    }
  g_free (own.system);
  g_free (own.kind);
  g_free (own.bars);
  g_free (own.sync);
  g_free (own.capacitor);
  g_free (own.loop);
  return result;
}
