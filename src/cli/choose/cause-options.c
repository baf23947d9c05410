/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cause-options.h"

#include <string.h>

#include <glib/gi18n-lib.h>

#include "cell.h"
#include "cli/base/arguments.h"
#include "cli/base/nearest.h"
#include "cli/base/output.h"
#include "core/fit/fit.h"

/* From the words of the command line to what should be on the conductor, and what was read. */

/**
 * bw_cause_options_clear:
 *
 * Frees what the options hold.
 */
void
bw_cause_options_clear (BwCauseOptions *own)
{
  g_free (own->system);
  g_free (own->kind);
  g_free (own->sync);
  g_free (own->source);
  g_free (own->input);
  g_free (own->conductor);
  g_free (own->capacitor);
  g_free (own->polarity);
  g_free (own->accuracy);
  for (guint i = 0; i < BW_N_SCOPE_READINGS; i++)
    g_free (own->level[i]);
}

/**
 * bw_cause_options_any_reading:
 *
 * Returns: whether anything was read
 */
gboolean
bw_cause_options_any_reading (const BwCauseOptions *own)
{
  for (guint i = 0; i < BW_N_SCOPE_READINGS; i++)
    if (own->level[i] != NULL)
      return TRUE;
  return own->polarity != NULL;
}

/* A level may be below zero. */
static gboolean
read_level (const BwCauseCase *c, BwScopeReading reading, const char *raw,
            BwScopeReadings *readings)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *text = bw_argument_utf8 (raw);

  if (bw_scope_readings_read (readings, c, reading, text, bw_argument_mark (text), &error))
    return TRUE;
  bw_cli_complain ("%s: %s", bw_kind_label (&bw_scope_readings, reading), error->message);
  return FALSE;
}

/**
 * bw_cause_options_readings:
 * @c: of which conductor
 * @accuracy: of the scope, as the sheet has it; an option stands before it; zero: not known
 * @readings: (out caller-allocates): what was read
 *
 * Returns: %BW_CLI_DONE, or why not, having said so in one line
 */
BwCliExit
bw_cause_options_readings (const BwCauseOptions *own, const BwCauseCase *c, double accuracy,
                           BwScopeReadings *readings)
{
  guint polarity;

  *readings = (BwScopeReadings){ .accuracy = accuracy };
  if (own->accuracy != NULL
      && !bw_argument_quantity ("--accuracy", own->accuracy, BW_DIMENSION_FRACTION,
                                &readings->accuracy))
    return BW_CLI_BAD_INPUT;
  for (guint i = 0; i < BW_N_SCOPE_READINGS; i++)
    if (own->level[i] != NULL && !read_level (c, i, own->level[i], readings))
      return BW_CLI_BAD_INPUT;
  if (own->polarity != NULL)
    {
      if (!bw_argument_kind (&bw_polarities, '-', own->polarity, &polarity))
        return BW_CLI_BAD_INPUT;
      bw_scope_readings_set (readings, BW_SCOPE_POLARITY,
                             polarity == BW_POLARITY_POSITIVE ? 1 : -1);
    }
  return BW_CLI_DONE;
}

/* A word of a set; the complaint names what is in it. */
static gboolean
read_member (const char *option, const BwKindTable *table, guint set, const char *raw, guint *kind)
{
  if (!bw_argument_kind (table, '-', raw, kind))
    return FALSE;
  if (set & BW_BIT (*kind))
    return TRUE;
  g_autofree char *allowed = bw_kind_set_labels (table, set);
  bw_cli_complain (_ ("%1$s: “%2$s” is none of this signal's: %3$s"), option,
                   bw_kind_id (table, *kind), allowed);
  return FALSE;
}

static gboolean
read_conductor (const BwCauseOptions *own, BwSignal signal, BwSyncKind sync, guint *conductor)
{
  *conductor = bw_signal_usual_conductor (signal);
  return own->conductor == NULL
         || read_member ("--conductor", &bw_conductors, bw_signal_conductors (signal, sync),
                         own->conductor, conductor);
}

/**
 * bw_cause_options_standard:
 * @view: its case is filled in from --system and --kind
 *
 * Returns: as bw_cause_options_readings()
 */
BwCliExit
bw_cause_options_standard (const BwCauseOptions *own, const char *command,
                           const BwCatalogue *catalogue, BwCauseView *view)
{
  guint system, signal, sync, conductor;

  if (own->system == NULL || own->kind == NULL)
    return bw_cli_wrong_usage (command, _ ("SHEET, or --system and --kind, are needed"));
  if (!bw_argument_kind (&bw_colour_systems, '-', own->system, &system)
      || !bw_argument_kind (&bw_signals, '-', own->kind, &signal))
    return BW_CLI_BAD_INPUT;
  sync = bw_signal_usual_sync (signal);
  if (own->sync != NULL
      && !read_member ("--sync", &bw_sync_kinds, bw_signal_syncs (signal), own->sync, &sync))
    return BW_CLI_BAD_INPUT;
  if (!read_conductor (own, signal, sync, &conductor))
    return BW_CLI_BAD_INPUT;

  bw_cause_case_standard (system, signal, sync, conductor, &view->c);
  bw_cause_case_time (&view->c, bw_catalogue_usual_raster (catalogue, system));
  if (own->capacitor != NULL && !bw_argument_capacitor (own->capacitor, &view->c.capacitor_f))
    return BW_CLI_BAD_INPUT;
  return BW_CLI_DONE;
}

/**
 * bw_cause_options_sheet:
 * @path: of @sheet, for complaints
 * @view: its case is filled in from the source and the input that the options name, with the sync
 *   that suits the input best unless --sync names it
 *
 * Returns: as bw_cause_options_readings()
 */
BwCliExit
bw_cause_options_sheet (const BwCauseOptions *own, const char *command, const char *path,
                        const BwSheet *sheet, const BwCatalogue *catalogue, BwCauseView *view)
{
  guint source_index, input_index, sync, conductor;
  BwRasterFigures figures;
  BwCase cell;
  BwFit fit;

  BwCliExit picked = bw_cell_pick (command, path, sheet, own->source, own->input, &source_index,
                                   &input_index);
  if (picked != BW_CLI_DONE)
    return picked;
  bw_case_init (&cell, &figures, sheet, catalogue, source_index, input_index);
  if (bw_cell_lacks (path, cell.source, cell.input))
    return BW_CLI_BAD_INPUT;
  bw_fit_judge (&cell, &fit);
  sync = fit.sync;
  if (own->sync != NULL
      && !read_member ("--sync", &bw_sync_kinds, cell.source->syncs, own->sync, &sync))
    return BW_CLI_BAD_INPUT;
  if (!read_conductor (own, cell.source->signal, sync, &conductor))
    return BW_CLI_BAD_INPUT;

  view->source = cell.source->name;
  view->input = cell.input->name;
  bw_cause_case_of_input (cell.source, cell.input, cell.raster, sync, conductor, &view->c);
  if (own->capacitor != NULL && !bw_argument_capacitor (own->capacitor, &view->c.capacitor_f))
    return BW_CLI_BAD_INPUT;
  return BW_CLI_DONE;
}
