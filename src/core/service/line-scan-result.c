/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "results.h"

#include <glib/gi18n-lib.h>

#define DIGITS 4

/**
 * bw_line_scan_say:
 *
 * Adds peak voltage, retrace time, current and energy of a line output stage, and what less of its
 * capacitor does.
 */
void
bw_line_scan_say (BwNode *to, const BwLineStage *stage)
{
  g_return_if_fail (to != NULL && stage != NULL);
  BwLineScan scan, less;
  BwLineStage shrunken = *stage;

  bw_line_scan (stage, &scan);
  shrunken.farad *= 0.9;
  bw_line_scan (&shrunken, &less);
  bw_node_say (to, BW_SAY_CAUTION, NULL,
               _ ("The retrace capacitor is a safety part: one that has shrunk or come loose raises the high "
                  "voltage and with it X-rays, and can destroy the output stage. Replace it by the type "
                  "that the diagram names, and never defeat the circuit that holds the high voltage "
                  "down. Breezeway gives no procedure for work inside a set: follow local codes, and "
                  "leave such work to licensed practice where they ask for it."));
  bw_node_figure (to, _ ("peak voltage in the retrace"),
                  bw_value_quantity ("peak_v", scan.peak_v, BW_DIMENSION_VOLTAGE, DIGITS));
  bw_node_figure (to, _ ("retrace"),
                  bw_value_quantity ("retrace_s", scan.retrace_s, BW_DIMENSION_TIME, DIGITS));
  bw_node_figure (to, _ ("current at either end of the scan"),
                  bw_value_quantity ("current_a", scan.current_a, BW_DIMENSION_CURRENT, DIGITS));
  bw_node_figure (to, _ ("energy in the coil at the end of the scan"),
                  bw_value_quantity ("energy_j", scan.energy_j, BW_DIMENSION_ENERGY, DIGITS));
  bw_node_figure (to, _ ("peak voltage with a tenth less capacitance"),
                  bw_value_quantity ("peak_with_tenth_less_v", less.peak_v, BW_DIMENSION_VOLTAGE,
                                     DIGITS));
  bw_node_figure (to, _ ("retrace by the rule π√(LC), which reads short"),
                  bw_value_quantity ("rule_retrace_s", scan.root_retrace_s, BW_DIMENSION_TIME,
                                     DIGITS));
  bw_node_say (to, BW_SAY_NOTE, NULL,
               _ ("Exact for a coil and a capacitor without losses; a real stage stays somewhat below."));
}
