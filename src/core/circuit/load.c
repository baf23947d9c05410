/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "load.h"

#include <math.h>

/* The reflection coefficient (R − Z)/(R + Z), from −1 to 1. */
static double
reflection (double end_ohm, double lead_ohm)
{
  g_assert (end_ohm >= 0 && lead_ohm > 0);
  return isfinite (end_ohm) ? (end_ohm - lead_ohm) / (end_ohm + lead_ohm) : 1;
}

/**
 * bw_return_loss_db:
 * @end_ohm: what a lead, or anything else with a resistance of its own, ends in; INFINITY: nothing
 * @lead_ohm: its characteristic resistance
 *
 * Returns: −20 lg |Γ| with Γ = (R − Z)/(R + Z), in decibels; INFINITY for a match
 */
double
bw_return_loss_db (double end_ohm, double lead_ohm)
{
  g_return_val_if_fail (end_ohm >= 0 && lead_ohm > 0, 0);
  double size = fabs (reflection (end_ohm, lead_ohm));
  return size > 1e-12 ? -20 * log10 (size) : (double) INFINITY;
}

/**
 * bw_line_end:
 * @end: (out caller-allocates): what comes back
 *
 * What the load does not take runs back to the source, and what that does not take arrives at the load
 * as an echo: the product of both reflection coefficients, there and back later. A matched source
 * takes up all of it.
 */
void
bw_line_end (const BwLine *line, BwLineEnd *end)
{
  g_return_if_fail (line != NULL && end != NULL);
  g_return_if_fail (line->source_ohm >= 0 && line->load_ohm >= 0 && line->lead_ohm > 0);
  *end = (BwLineEnd){
    .return_loss_db = bw_return_loss_db (line->load_ohm, line->lead_ohm),
    .echo_ratio = reflection (line->load_ohm, line->lead_ohm)
                      * reflection (line->source_ohm, line->lead_ohm)
                  + 0.0, /* not minus zero */
    .echo_s = 2 * line->delay_s,
  };
}
