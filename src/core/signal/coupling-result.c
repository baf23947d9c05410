/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "results.h"

#include <math.h>

#include <glib/gi18n-lib.h>

/* What a coupling capacitor does to a steady picture. */

static const BwKind pictures[] = {
  { "white-field", N_ ("white field") },
  { "white-upper-half", N_ ("upper half white") },
};
static const BwKindTable picture_names = { G_N_ELEMENTS (pictures), pictures };
static const double white_shares[G_N_ELEMENTS (pictures)] = { 1, 0.5 };

/* The levels of the conductor that carries the luminance. */
static void
luminance_of (const BwWireForm *form, BwWireLevels *levels)
{
  BwWireLevels all[BW_N_CONDUCTORS];
  BwConductor conductor = bw_signal_usual_conductor (form->signal);
  guint n = bw_wire_levels (form, all);

  *levels = all[0];
  for (guint i = 0; i < n; i++)
    if (all[i].conductor == conductor)
      *levels = all[i];
}

static BwValue
share (const char *key, double value)
{
  return bw_value_quantity (key, value, BW_DIMENSION_FRACTION, 3);
}

static void
add_tilts (BwNode *to, const BwWireLevels *levels, const BwCouplingAsk *coupling)
{
  BwNode *table = bw_node_table (to, "tilts", NULL);
  BwSteadyPicture picture = { .time = coupling->time,
                              .white_v = levels->white_v,
                              .black_v = levels->black_v,
                              .sync_v = levels->sync_low_v + levels->sync_high_v };

  bw_node_column (table, BW_COLUMN_WORDS, _ ("picture"), NULL);
  bw_node_column (table, BW_COLUMN_WORDS, _ ("conductor"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("line tilt"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("field tilt"), NULL);
  for (guint i = 0; i < G_N_ELEMENTS (pictures); i++)
    {
      BwNode *row = bw_node_row (table);
      BwTilt tilt;
      picture.white_share = white_shares[i];
      bw_coupling_tilt (&picture, coupling->loop_ohm, coupling->farad, &tilt);
      bw_node_cell (row, bw_value_kind ("picture", &picture_names, i));
      bw_node_cell (row, bw_value_kind ("conductor", &bw_conductors, levels->conductor));
      bw_node_cell (row, share ("line_tilt", tilt.line));
      bw_node_cell (row, share ("field_tilt", tilt.field));
    }
}

/**
 * bw_coupling_say:
 *
 * Adds what the capacitor does: where it is down by 3 dB, and how far white falls over a line and
 * over a field of a picture that stays as it is. Without a capacitor it adds nothing.
 */
void
bw_coupling_say (BwNode *to, const BwWireForm *form, const BwCouplingAsk *coupling)
{
  g_return_if_fail (to != NULL && form != NULL && coupling != NULL);
  BwWireLevels levels;

  if (!(coupling->farad > 0))
    return;
  BwNode *section = bw_node_section (to, NULL, _ ("Through the coupling capacitor"));
  bw_node_figure (section, _ ("Capacitor"),
                  bw_value_quantity ("capacitor_f", coupling->farad, BW_DIMENSION_CAPACITANCE, 3));
  if (!isfinite (coupling->loop_ohm) || !(coupling->loop_ohm > 0))
    {
      bw_node_say (section, BW_SAY_NOTE, NULL,
                   _ ("Nothing discharges the capacitor here: without a load there is neither "
                      "corner nor tilt."));
      return;
    }
  bw_node_figure (section, _ ("Source and load in series"),
                  bw_value_quantity ("loop_ohm", coupling->loop_ohm, BW_DIMENSION_RESISTANCE, 4));
  bw_node_figure (section, _ ("Down by 3\u00a0dB at"),
                  bw_value_quantity ("corner_hz",
                                     bw_coupling_corner_hz (coupling->loop_ohm, coupling->farad),
                                     BW_DIMENSION_FREQUENCY, 3));
  luminance_of (form, &levels);
  add_tilts (section, &levels, coupling);
  bw_node_say (section, BW_SAY_NOTE, NULL,
               _ ("Of white, in a picture that stays as it is: over a line from the left edge to "
                  "the right, over a field from the first white line to the last. A clamp in the "
                  "input takes the field tilt away, and leaves that of the line."));
}
