/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench-signal.h"

#include <math.h>
#include <string.h>

#include <glib/gi18n-lib.h>

#include "core/circuit/drive.h"
#include "core/raster/colour-system.h"

static const BwKind terminators[BW_N_TERMINATORS] = {
  [BW_TERMINATORS_AS_SET] = { "as-set", N_ ("as set") },
  [BW_TERMINATORS_NONE] = { "none", N_ ("none") },
  [BW_TERMINATORS_ONE] = { "one", N_ ("one 75\u00a0Ω") },
  [BW_TERMINATORS_TWO] = { "two", N_ ("two 75\u00a0Ω") },
  [BW_TERMINATORS_THREE] = { "three", N_ ("three 75\u00a0Ω") },
};
const BwKindTable bw_terminators = { BW_N_TERMINATORS, terminators };

static guint
first_of (guint set)
{
  return (guint) g_bit_nth_lsf (set, -1);
}

/**
 * bw_bench_signal_init:
 * @signal: (out caller-allocates)
 *
 * Returns: whether there is a source, and an input, of which all is known that matters on the wires
 */
gboolean
bw_bench_signal_init (BwBenchSignal *signal, BwDocument *document)
{
  BwFit fit;

  *signal = (BwBenchSignal){ .source = bw_document_selected_source (document),
                             .input = bw_document_selected_input (document),
                             .raster = bw_document_selected_raster (document) };
  if (signal->source == NULL || signal->input == NULL
      || bw_lacks_signal (signal->source, signal->input, &signal->lack) || signal->raster == NULL)
    return FALSE;
  guint carried = signal->source->syncs & bw_signal_syncs ((BwSignal) signal->source->signal);
  guint taken = bw_input_taken_syncs (signal->input, carried);
  signal->syncs = taken != 0 ? taken : carried;
  if (signal->syncs == 0)
    return FALSE;
  signal->usual = (BwSyncKind) first_of (signal->syncs);
  if (bw_document_judge (document, bw_document_get_source (document),
                         bw_document_get_input (document), &fit)
      && (signal->syncs & BW_BIT (fit.sync)))
    signal->usual = (BwSyncKind) fit.sync;
  return TRUE;
}

/**
 * bw_bench_signal_form:
 * @sync: one of its sync kinds
 * @form: (out caller-allocates): with a burst where the colour system needs one
 */
void
bw_bench_signal_form (const BwBenchSignal *signal, BwSyncKind sync, BwWireForm *form)
{
  bw_wire_form_of_source (signal->source, signal->raster, sync, form);
  bw_synthesis_add_burst (form);
}

static double
load_ohm (const BwBenchSignal *signal, BwTerminators ends, gboolean own_sync)
{
  if (ends == BW_TERMINATORS_AS_SET)
    return bw_input_load_ohm (signal->input, own_sync);
  if (ends == BW_TERMINATORS_NONE)
    return INFINITY;
  return BW_VIDEO_OHM / (double) (ends - BW_TERMINATORS_NONE);
}

/**
 * bw_bench_signal_loads:
 * @terminators: at the end of every conductor
 * @video: (out caller-allocates): of conductors that carry a picture
 * @own_sync: (out caller-allocates): of those that carry sync alone
 */
void
bw_bench_signal_loads (const BwBenchSignal *signal, BwTerminators ends, BwLevelsLoad *video,
                       BwLevelsLoad *own_sync)
{
  const BwSource *source = signal->source;

  *video = (BwLevelsLoad){ source->source_ohm, load_ohm (signal, ends, FALSE), BW_LOAD_75_OHM };
  *own_sync = (BwLevelsLoad){ source->sync_ohm, load_ohm (signal, ends, TRUE),
                              (BwStatedLoad) source->sync_load };
}

/**
 * bw_bench_signal_title:
 *
 * Returns: (transfer full): source, input, and what goes from the one to the other
 */
char *
bw_bench_signal_title (const BwBenchSignal *signal, const BwWireForm *form)
{
  const char *kind = bw_kind_label (&bw_signals, form->signal);
  const char *sync = bw_kind_label (&bw_sync_kinds, form->sync);
  gboolean coded = form->signal == BW_SIGNAL_COMPOSITE || form->signal == BW_SIGNAL_YC;
  g_autofree char *coding = coded && form->system != BW_SYSTEM_NONE
                                ? g_strdup_printf ("%s, %s", kind,
                                                   bw_kind_label (&bw_colour_systems, form->system))
                                : g_strdup (kind);
  /* Translators: source, input, signal kind and sync kind. */
  return g_strdup_printf (_ ("%1$s → %2$s: %3$s, %4$s"), signal->source->name, signal->input->name,
                          coding, sync);
}

/**
 * bw_bench_signal_limits:
 * @all: (element-type BwStandardLimits): of all standards
 *
 * A standard of composite video does not judge the levels of RGB or component on the same raster.
 *
 * Returns: (transfer none) (nullable): those for the raster that judge levels of the colour system;
 *   of @all
 */
const BwStandardLimits *
bw_bench_signal_limits (const BwBenchSignal *signal, const GPtrArray *all)
{
  const BwSource *source = signal->source;
  gboolean coded = source->signal == BW_SIGNAL_COMPOSITE || source->signal == BW_SIGNAL_YC;
  const char *id = coded ? bw_system_facts (source->system)->limits : NULL;
  const BwStandardLimits *limits = id != NULL ? bw_limits_find (all, id) : NULL;

  return limits != NULL && strcmp (limits->raster, signal->raster->id) == 0 ? limits : NULL;
}
