/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/raster/waveform.h"
#include "gate.h"

G_BEGIN_DECLS

/* One sync signal made from H and V on their own conductors by a logic gate, and the composite sync
 * that the raster itself has, as logic levels over the vertical interval. Nothing here is a phrase
 * about a gate: every edge comes from combining the two signals. */

/**
 * BwSyncMixCase:
 * @raster: a raster that bw_raster_check() accepts; borrowed
 * @field: 0 or 1; the field whose sync starts at zero
 * @gate: a BwSyncGate
 * @h_polarity: a BwPolarity: of H as it arrives at the gate; not used by %BW_SYNC_GATE_STANDARD,
 *   whose tips are low, nor are @v_polarity and @v_offset_s
 * @v_offset_s: by how much V comes after the edge of H, or the half line, at which field sync
 *   starts; negative if before; less than half a line
 * @delay_s: of the gate or of the sync separator; not negative, less than a quarter of a line
 * @lines_before: whole lines of picture before the interval, 1 to %BW_SYNC_MIX_LINES_MAX
 * @lines_after: likewise after it
 */
typedef struct
{
  const BwRaster *raster;
  int field;
  guint gate;
  guint h_polarity;
  guint v_polarity;
  double v_offset_s;
  double delay_s;
  int lines_before;
  int lines_after;
} BwSyncMixCase;

#define BW_SYNC_MIX_LINES 3
#define BW_SYNC_MIX_LINES_MAX 100

/**
 * BwSyncEdge:
 * @at_s: after the start of field sync
 * @level: 0 or 1, from then on
 */
typedef struct
{
  double at_s;
  int level;
} BwSyncEdge;

/**
 * BwSyncTrace:
 * @rest: the level before the first edge, which is that after the last one too
 * @edges: (element-type BwSyncEdge): in the order of time; their number is even
 */
typedef struct
{
  int rest;
  GArray *edges;
} BwSyncTrace;

/**
 * BwSyncMix:
 * @line_s: the line period
 * @from_s: start of what is worked out, a quarter of a line before a half line; @to_s: its end
 * @h_width_s: width of an H pulse. Of tri-level sync that is half of the line sync interval, from
 *   the datum on, as separate H of such a raster has it (CTA-861-H)
 * @v_start_s: of V; @v_end_s: its end
 * @result: what leaves the gate, later by the delay
 * @standard: the raster's own composite sync, without delay
 * @polarity: a BwPolarity: of the tips of @result
 */
typedef struct
{
  BwSyncMixCase what;
  double line_s;
  double from_s;
  double to_s;
  double h_width_s;
  double v_start_s;
  double v_end_s;
  BwSyncTrace h;
  BwSyncTrace v;
  BwSyncTrace result;
  BwSyncTrace standard;
  BwSyncForm form;
  guint polarity;
} BwSyncMix;

/**
 * BwSyncStructure:
 * @n_leading: leading edges of tips, all of them
 * @n_serrations: gaps in field sync that end with the edge of a line or half line, as serrations do
 * @n_inverted: gaps in field sync that begin there: H pulses upside down
 * @n_equalising: pulses of equalising width before field sync, and after it
 */
typedef struct
{
  guint n_leading;
  guint n_serrations;
  guint n_inverted;
  guint n_equalising[2];
} BwSyncStructure;

#define BW_SYNC_MIX_ERROR (bw_sync_mix_error_quark ())

typedef enum
{
  BW_SYNC_MIX_ERROR_FIELD,
  BW_SYNC_MIX_ERROR_KIND, /* of the gate or of a polarity */
  BW_SYNC_MIX_ERROR_OFFSET,
  BW_SYNC_MIX_ERROR_DELAY,
  BW_SYNC_MIX_ERROR_LINES
} BwSyncMixError;

GQuark bw_sync_mix_error_quark (void);

void bw_sync_mix_case_init (BwSyncMixCase *what, const BwRaster *raster, guint gate);
gboolean bw_sync_mix_check (const BwSyncMixCase *what, GError **error);

BwSyncMix *bw_sync_mix_new (const BwSyncMixCase *what);
void bw_sync_mix_free (BwSyncMix *mix);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (BwSyncMix, bw_sync_mix_free)

int bw_sync_trace_level (const BwSyncTrace *trace, double at_s);
void bw_sync_mix_structure (const BwSyncMix *mix, const BwSyncTrace *trace,
                            BwSyncStructure *structure);

G_END_DECLS
