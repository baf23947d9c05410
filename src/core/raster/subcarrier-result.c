/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "results.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "colour-system.h"

/* A decoder's oscillator is pulled in over some hundred hertz: common practice, no source. */
#define PULL_IN_HZ 500.0

static double
off_hz (guint system, double hz)
{
  return hz - bw_ratio_to_double (bw_system_facts (system)->subcarrier_hz);
}

/* SECAM has two carriers that move, and no frequency to be measured so. */
static gboolean
has_subcarrier (guint system)
{
  return bw_system_has_phase (system) && !bw_ratio_is_none (bw_system_facts (system)->subcarrier_hz);
}

static gboolean
fits_any (double hz)
{
  for (guint system = 0; system < BW_N_SYSTEMS; system++)
    if (has_subcarrier (system) && fabs (off_hz (system, hz)) <= PULL_IN_HZ)
      return TRUE;
  return FALSE;
}

/**
 * bw_subcarrier_say:
 * @hz: as measured, in hertz
 *
 * Adds which colour systems have such a subcarrier, and by how much it is off from that of each.
 */
void
bw_subcarrier_say (BwNode *to, double hz)
{
  g_return_if_fail (to != NULL && hz > 0);
  const char *measured = bw_node_quantity (to, hz, BW_DIMENSION_FREQUENCY, 8);
  gboolean any = fits_any (hz);

  bw_node_member (to, bw_value_words ("question", "subcarrier"));
  bw_node_say (to, BW_SAY_ANSWER, "says",
               any ? bw_node_print (to, _ ("A subcarrier of %s: of these systems"), measured)
                   : bw_node_print (to, _ ("A subcarrier of %s is that of no system"), measured));
  BwNode *table = bw_node_table (to, "systems", NULL);
  bw_node_column (table, BW_COLUMN_WORDS, _ ("System"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("Subcarrier"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("Off by"), NULL);
  bw_node_column (table, BW_COLUMN_WORDS, _ ("Fits"), NULL);
  for (guint system = 0; system < BW_N_SYSTEMS; system++)
    {
      if (!has_subcarrier (system))
        continue;
      BwNode *row = bw_node_row (table);
      bw_node_cell (row, bw_value_kind ("system", &bw_colour_systems, system));
      bw_node_cell (row, bw_value_quantity ("subcarrier_hz", hz - off_hz (system, hz),
                                            BW_DIMENSION_FREQUENCY, 8));
      bw_node_cell (row, bw_value_signed (bw_value_fixed ("off_hz", off_hz (system, hz),
                                                          BW_DIMENSION_FREQUENCY, "Hz", 0)));
      bw_node_cell (row, bw_value_flag ("fits", fabs (off_hz (system, hz)) <= PULL_IN_HZ));
    }
  bw_node_say (to, BW_SAY_NOTE, NULL,
               _ ("What is within 500 Hz fits: so far a decoder is commonly pulled in. Which of several "
                  "systems it is the next reading decides: line rate and field rate, and whether the "
                  "phase of the burst alternates from line to line, as in PAL."));
}
