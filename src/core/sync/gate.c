/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "gate.h"

#include <glib/gi18n-lib.h>

static const BwKind gates[BW_N_SYNC_GATES] = {
  [BW_SYNC_GATE_AND] = { "and", N_ ("AND") },
  [BW_SYNC_GATE_OR] = { "or", N_ ("OR") },
  [BW_SYNC_GATE_XOR] = { "xor", N_ ("XOR") },
  [BW_SYNC_GATE_XNOR] = { "xnor", N_ ("XNOR") },
  [BW_SYNC_GATE_STANDARD] = { "standard", N_ ("composite sync of the raster") },
};
const BwKindTable bw_sync_gates = { G_N_ELEMENTS (gates), gates };

/**
 * bw_sync_gate_level:
 * @gate: a BwSyncGate; %BW_SYNC_GATE_STANDARD is taken as AND, which is what the sync of a raster
 *   without serration is for active-low H and V
 * @h: 0 or 1; likewise @v
 *
 * Returns: the level at the output, 0 or 1
 */
int
bw_sync_gate_level (guint gate, int h, int v)
{
  switch (gate)
    {
    case BW_SYNC_GATE_OR:
      return h | v;
    case BW_SYNC_GATE_XOR:
      return h ^ v;
    case BW_SYNC_GATE_XNOR:
      return !(h ^ v);
    default:
      return h & v;
    }
}

static int
rest_level (guint polarity)
{
  return polarity == BW_POLARITY_NEGATIVE;
}

/* The level with H and V at their tip or at rest. */
static int
level_at (guint gate, guint h_polarity, guint v_polarity, gboolean h_tip, gboolean v_tip)
{
  return bw_sync_gate_level (gate, rest_level (h_polarity) ^ h_tip,
                             rest_level (v_polarity) ^ v_tip);
}

/**
 * bw_sync_gate_form:
 * @h_polarity: as it arrives; likewise @v_polarity
 *
 * Returns: what can be found in the output
 */
BwSyncForm
bw_sync_gate_form (guint gate, guint h_polarity, guint v_polarity)
{
  if (gate == BW_SYNC_GATE_STANDARD)
    return BW_SYNC_FORM_COMPOSITE;
  int rest = level_at (gate, h_polarity, v_polarity, FALSE, FALSE);
  gboolean line = level_at (gate, h_polarity, v_polarity, TRUE, FALSE) != rest;
  gboolean field = level_at (gate, h_polarity, v_polarity, FALSE, TRUE) != rest;

  if (line && field)
    return BW_SYNC_FORM_COMPOSITE;
  if (line)
    return BW_SYNC_FORM_LINE_ONLY;
  return field ? BW_SYNC_FORM_FIELD_ONLY : BW_SYNC_FORM_NEITHER;
}

/**
 * bw_sync_gate_polarity:
 * @h_polarity: as it arrives; likewise @v_polarity
 *
 * Returns: the BwPolarity of the output's tips; negative for %BW_SYNC_GATE_STANDARD
 */
guint
bw_sync_gate_polarity (guint gate, guint h_polarity, guint v_polarity)
{
  if (gate == BW_SYNC_GATE_STANDARD)
    return BW_POLARITY_NEGATIVE;
  return level_at (gate, h_polarity, v_polarity, FALSE, FALSE) ? BW_POLARITY_NEGATIVE
                                                               : BW_POLARITY_POSITIVE;
}

/**
 * bw_sync_gate_wants:
 * @invert_h: (out): whether H needs an inverter in front of the gate, so that the result has both
 *   signals: AND wants both active low, OR both active high, XOR and XNOR take any
 * @invert_v: (out): likewise V
 */
void
bw_sync_gate_wants (guint gate, guint h_polarity, guint v_polarity, gboolean *invert_h,
                    gboolean *invert_v)
{
  guint wanted = gate == BW_SYNC_GATE_OR ? BW_POLARITY_POSITIVE : BW_POLARITY_NEGATIVE;
  gboolean minds = gate == BW_SYNC_GATE_AND || gate == BW_SYNC_GATE_OR;
  *invert_h = minds && h_polarity != wanted;
  *invert_v = minds && v_polarity != wanted;
}
