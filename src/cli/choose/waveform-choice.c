/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "waveform-options.h"

#include <math.h>
#include <string.h>

#include <glib/gi18n-lib.h>

#include "bench.h"
#include "cell.h"
#include "cli/base/arguments.h"
#include "cli/base/nearest.h"
#include "cli/base/output.h"
#include "core/circuit/drive.h"
#include "raster-choice.h"

/* From the words of the command line to a test signal. */

static const BwKind spans[BW_N_SPANS] = {
  [BW_SPAN_LINE] = { "line", N_ ("line") },
  [BW_SPAN_FIELD] = { "field", N_ ("field") },
  [BW_SPAN_FRAME] = { "frame", N_ ("frame") },
};
const BwKindTable bw_spans = { BW_N_SPANS, spans };

/* How many loads of 75 Ω hang on the line. */
static const BwKind loads[] = {
  { "none", N_ ("none") },
  { "one", N_ ("one") },
  { "two", N_ ("two") },
};
static const BwKindTable load_table = { G_N_ELEMENTS (loads), loads };

const char *const bw_waveform_files[] = { "-.csv", "-.svg", "-.pdf", "-.png", NULL };

/**
 * bw_waveform_options_clear:
 *
 * Frees what the options hold.
 */
void
bw_waveform_options_clear (BwWaveformOptions *own)
{
  char *const all[] = { own->system,  own->kind, own->sync, own->raster, own->source, own->input,
                        own->content, own->bars, own->span, own->rate,   own->loads };
  for (gsize i = 0; i < G_N_ELEMENTS (all); i++)
    g_free (all[i]);
  bw_drawing_options_clear (&own->page);
}

/**
 * bw_waveform_clear:
 *
 * Frees what @waveform owns.
 */
void
bw_waveform_clear (BwWaveform *waveform)
{
  g_clear_pointer (&waveform->raster, bw_raster_free);
  g_clear_pointer (&waveform->title, g_free);
}

/* The word of @raw in @table; NULL leaves @value as it is. */
static gboolean
read_word (const char *option, const BwKindTable *table, const char *raw, guint *value)
{
  g_autofree char *fault = bw_argument_word (option, table, raw, value);
  if (fault != NULL)
    bw_cli_complain ("%s", fault);
  return fault == NULL;
}

/* One of @set; without @raw the first of @preferred, or else of @set. */
static gboolean
read_sync (const char *raw, guint set, guint preferred, BwSyncKind *sync)
{
  guint kind = (guint) g_bit_nth_lsf ((preferred & set) != 0 ? preferred & set : set, -1);
  if (!read_word ("--sync", &bw_sync_kinds, raw, &kind))
    return FALSE;
  *sync = (BwSyncKind) kind;
  if (set & BW_BIT (kind))
    return TRUE;
  g_autofree char *allowed = bw_kind_set_labels (&bw_sync_kinds, set);
  bw_cli_complain (_ ("--sync “%1$s”: this signal comes with %2$s"), raw, allowed);
  return FALSE;
}

/* The sync kind that a signal usually has. RGB of a computer, whose raster has no serration, comes
 * with H and V. */
static BwSyncKind
usual_sync (BwSignal signal, const BwRaster *raster)
{
  gboolean computer = signal == BW_SIGNAL_RGB && !(raster->serration_width_s > 0);
  return computer ? BW_SYNC_SEPARATE : bw_signal_usual_sync (signal);
}

/* Colour on a subcarrier goes with the lines of its system, or with half of them in a progressive
 * frame, and not with those of the other broadcast systems. */
static gboolean
check_lines (BwColourSystem system, BwSignal signal, const BwRaster *raster)
{
  const BwSystemFacts *facts = bw_system_facts (system);
  BwRasterFigures f;

  bw_raster_figures (raster, &f);
  int lines = bw_broadcast_lines (f.lines_per_frame);
  gboolean whole = lines == f.lines_per_frame;
  gboolean is_other = lines != 0 && lines != facts->lines
                      && whole == (raster->scan == BW_SCAN_INTERLACED);
  if (facts->lines == 0 || facts->any_raster || !is_other
      || !bw_signal_is_coded (signal))
    return TRUE;
  bw_cli_complain (
      g_dngettext (GETTEXT_PACKAGE,
                   "%1$s is no raster for %2$s, which has %3$d line in a frame; --system "
                   "pal-60 or ntsc-4.43 may be mixed with any",
                   "%1$s is no raster for %2$s, which has %3$d lines in a frame; --system "
                   "pal-60 or ntsc-4.43 may be mixed with any",
                   (gulong) facts->lines),
      raster->id, bw_kind_label (&bw_colour_systems, system), facts->lines);
  return FALSE;
}

static BwCliExit
choose_standard (const BwWaveformOptions *own, const char *command, BwWaveform *w)
{
  const BwRasterChoice none = { .which = BW_WHICH_FIRST };
  guint system = 0, signal = 0, load = 1;
  BwSyncKind sync;

  if (own->system == NULL || own->kind == NULL)
    return bw_cli_wrong_usage (command, _ ("SHEET, or --system and --kind, are needed"));
  if (own->source != NULL || own->input != NULL)
    return bw_cli_wrong_usage (command, _ ("--source and --input go with SHEET only"));
  if (!read_word ("--system", &bw_colour_systems, own->system, &system)
      || !read_word ("--kind", &bw_signals, own->kind, &signal)
      || !read_word ("--loads", &load_table, own->loads, &load))
    return BW_CLI_BAD_INPUT;
  const char *name = own->raster != NULL ? own->raster : bw_system_facts (system)->raster;
  if (name == NULL)
    return bw_cli_wrong_usage (command, _ ("--system none needs --raster"));

  g_autoptr (BwChosenRaster) chosen = bw_raster_choice_make (&none, name);
  if (chosen == NULL)
    return BW_CLI_BAD_INPUT;
  w->raster = g_steal_pointer (&chosen->raster);
  if (!check_lines (system, signal, w->raster))
    return BW_CLI_BAD_INPUT;
  if (!read_sync (own->sync, bw_signal_syncs (signal),
                  BW_BIT (usual_sync (signal, w->raster)), &sync))
    return BW_CLI_BAD_INPUT;
  bw_wire_form_standard (system, signal, sync, (BwSyncShape) w->raster->sync_shape, &w->what.form);
  w->what.form.own_polarity[0] = sync == BW_SYNC_SEPARATE ? w->raster->h_polarity : 0;
  w->what.form.own_polarity[1] = w->raster->v_polarity;
  w->source_ohm = w->sync_ohm = BW_VIDEO_OHM;
  w->load_ohm = load == 0 ? INFINITY : BW_VIDEO_OHM / load;
  /* H and V are logic, and work into no stated load */
  w->sync_load_ohm = sync == BW_SYNC_SEPARATE ? 0 : w->load_ohm;
  w->title = g_strdup (w->raster->name);
  return BW_CLI_DONE;
}

/* What the source puts on the wire into that input. */
static BwCliExit
choose_from_sheet (const BwWaveformOptions *own, const char *command, const char *path,
                   BwWaveform *w)
{
  guint source_at, input_at;
  BwSyncKind sync;

  if (own->system != NULL || own->kind != NULL || own->raster != NULL || own->loads != NULL)
    return bw_cli_wrong_usage (command,
                               _ ("--system, --kind, --raster and --loads do not go with SHEET"));
  g_autoptr (BwCatalogue) catalogue = bw_cli_load_catalogue ();
  g_autoptr (BwSheet) sheet = bw_cli_load_sheet (path, catalogue);
  if (sheet == NULL)
    return BW_CLI_BAD_INPUT;
  BwCliExit picked = bw_cell_pick (command, path, sheet, own->source, own->input, &source_at,
                                   &input_at);
  if (picked != BW_CLI_DONE)
    return picked;

  const BwSource *source = bw_sheet_source (sheet, source_at);
  const BwInput *input = bw_monitor_input (sheet->monitor, input_at);
  if (bw_cell_lacks (path, source, input))
    return BW_CLI_BAD_INPUT;
  w->raster = bw_raster_copy (bw_sheet_raster (sheet, catalogue, source));
  if (!read_sync (own->sync, source->syncs, bw_input_taken_syncs (input, source->syncs), &sync))
    return BW_CLI_BAD_INPUT;
  bw_wire_form_of_source (source, w->raster, sync, &w->what.form);
  w->source_ohm = source->source_ohm;
  w->sync_ohm = source->sync_ohm;
  w->load_ohm = bw_input_load_ohm (input, FALSE);
  w->sync_load_ohm = bw_input_load_ohm (input, TRUE);
  w->sync_stated = (BwStatedLoad) source->sync_load;
  w->title = g_strdup_printf ("%s → %s", source->name, input->name);
  return BW_CLI_DONE;
}

static gboolean
read_bars (const char *raw, BwBarsForm *bars)
{
  guint kind = BW_BARS_75;
  gboolean known = raw == NULL || bw_kind_find (&bw_bars_forms, raw, &kind);
  *bars = (BwBarsForm) kind;
  if (known)
    return TRUE;
  g_autofree char *word = bw_argument_utf8 (raw);
  bw_cli_complain (_ ("--bars “%s”: allowed are 75, 100, ebu"), word);
  return FALSE;
}

/**
 * bw_waveform_choose:
 * @sheet: (nullable): a bench sheet; without it the options name a standard
 * @waveform: (out caller-allocates): to be cleared with bw_waveform_clear() in any case
 *
 * Returns: %BW_CLI_DONE, or why not, having said so in one line
 */
BwCliExit
bw_waveform_choose (const BwWaveformOptions *own, const char *command, const char *sheet,
                    BwWaveform *waveform)
{
  guint content = BW_CONTENT_BARS, span = BW_SPAN_LINE;
  *waveform = (BwWaveform){ .line = own->line, .frame = own->frame };
  BwSynthesisCase *what = &waveform->what;

  BwCliExit result = sheet != NULL ? choose_from_sheet (own, command, sheet, waveform)
                                   : choose_standard (own, command, waveform);
  if (result != BW_CLI_DONE)
    return result;
  what->raster = waveform->raster;
  what->rate_hz = BW_RATIO_NONE;
  if (!read_word ("--content", &bw_contents, own->content, &content)
      || !read_word ("--span", &bw_spans, own->span, &span) || !read_bars (own->bars, &what->bars)
      || (own->rate != NULL && !bw_argument_rate ("--rate", own->rate, &what->rate_hz)))
    return BW_CLI_BAD_INPUT;
  what->content = (BwContent) content;
  waveform->span = (BwSpan) span;
  bw_synthesis_add_burst (&what->form);
  return BW_CLI_DONE;
}
