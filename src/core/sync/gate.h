/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/base/kinds.h"

G_BEGIN_DECLS

/* The logic gate that makes one sync signal of H and V: its truth table, and what follows from that
 * for the polarities of the three. */

typedef enum
{
  BW_SYNC_GATE_AND,
  BW_SYNC_GATE_OR,
  BW_SYNC_GATE_XOR,
  BW_SYNC_GATE_XNOR,
  BW_SYNC_GATE_STANDARD, /* no gate: the composite sync of the raster, as it is made at the source
                            or stripped from composite video, green or Y */
  BW_N_SYNC_GATES
} BwSyncGate;

extern const BwKindTable bw_sync_gates;

/* Which of the two signals can be found in the result. */
typedef enum
{
  BW_SYNC_FORM_COMPOSITE,  /* both make the same sync tip */
  BW_SYNC_FORM_LINE_ONLY,  /* V makes no tip */
  BW_SYNC_FORM_FIELD_ONLY, /* H makes no tip */
  BW_SYNC_FORM_NEITHER,    /* a tip only where H and V fall together */
  BW_N_SYNC_FORMS
} BwSyncForm;

int bw_sync_gate_level (guint gate, int h, int v);
BwSyncForm bw_sync_gate_form (guint gate, guint h_polarity, guint v_polarity);
guint bw_sync_gate_polarity (guint gate, guint h_polarity, guint v_polarity);
void bw_sync_gate_wants (guint gate, guint h_polarity, guint v_polarity, gboolean *invert_h,
                         gboolean *invert_v);

G_END_DECLS
