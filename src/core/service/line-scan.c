/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "line-scan.h"

#include <math.h>

/**
 * bw_line_scan:
 * @scan: (out caller-allocates): what follows from the stage, without losses
 *
 * In the scan the current rises evenly from −I to I = V·Ts/(2L). When the switch opens, coil and
 * capacitor swing about the supply with ω = 1/√(LC), starting at 0 V with that current: the voltage is
 * V + √(V² + (I·√(L/C))²) at its top, and back at zero after (π + 2·atan (2/(ω·Ts)))/ω (closed form of the
 * circuit).
 */
void
bw_line_scan (const BwLineStage *stage, BwLineScan *scan)
{
  g_return_if_fail (stage != NULL && scan != NULL);
  g_return_if_fail (stage->supply_v > 0 && stage->henry > 0 && stage->farad > 0
                    && stage->scan_s > 0);
  double w = 1 / sqrt (stage->henry * stage->farad);
  double half = w * stage->scan_s / 2;

  scan->current_a = stage->supply_v * stage->scan_s / (2 * stage->henry);
  scan->energy_j = stage->henry * scan->current_a * scan->current_a / 2;
  scan->peak_v = stage->supply_v * (1 + sqrt (1 + half * half));
  scan->retrace_s = (G_PI + 2 * atan (1 / half)) / w;
  scan->root_retrace_s = G_PI / w;
}
