/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/document/document.h"
#include "draw/levels/view.h"

G_BEGIN_DECLS

/* What the selected source puts on the wire into the selected input. */

/* How many terminators are at the end of each conductor. */
typedef enum
{
  BW_TERMINATORS_AS_SET, /* as many as the input's switch and its loop-through give */
  BW_TERMINATORS_NONE,
  BW_TERMINATORS_ONE, /* one 75 Ω, and so on */
  BW_TERMINATORS_TWO,
  BW_TERMINATORS_THREE,
  BW_N_TERMINATORS
} BwTerminators;

/**
 * BwBenchSignal:
 * @syncs: set of BwSyncKind of @source that @input takes; all of @source if it takes none
 * @usual: that of them which suits the input best
 * @lack: the figure without which it cannot be said what is on the wires, if one is lacking
 *
 * All is borrowed, until the next "changed" of the document.
 */
typedef struct
{
  const BwSource *source;
  const BwInput *input;
  const BwRaster *raster;
  guint syncs;
  BwSyncKind usual;
  BwLack lack;
} BwBenchSignal;

extern const BwKindTable bw_terminators;

gboolean bw_bench_signal_init (BwBenchSignal *signal, BwDocument *document);
void bw_bench_signal_form (const BwBenchSignal *signal, BwSyncKind sync, BwWireForm *form);
void bw_bench_signal_loads (const BwBenchSignal *signal, BwTerminators terminators,
                            BwLevelsLoad *video, BwLevelsLoad *own_sync);
char *bw_bench_signal_title (const BwBenchSignal *signal, const BwWireForm *form);
const BwStandardLimits *bw_bench_signal_limits (const BwBenchSignal *signal, const GPtrArray *all);

G_END_DECLS
