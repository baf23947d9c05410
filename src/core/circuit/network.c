/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "pads.h"

#include <math.h>

#include "drive.h"

/* What a ladder of resistors does. */

/* The ladder seen from the load: e.m.f. and resistance (Thévenin). */
static void
look_back (const BwNetwork *network, double *open_v, double *ohm)
{
  *open_v = network->open_v;
  *ohm = network->source_ohm;
  for (guint i = 0; i < network->n; i++)
    {
      const BwElement *element = &network->at[i];
      if (element->place == BW_PLACE_SERIES)
        *ohm += element->ohm;
      else
        {
          *open_v *= element->ohm / (element->ohm + *ohm);
          *ohm = bw_parallel_ohm (element->ohm, *ohm);
        }
    }
}

/**
 * bw_network_solve:
 * @network: resistors greater than zero; @load_ohm may be INFINITY
 * @figures: (out caller-allocates): its level, powers and resistances, by the laws of Ohm and
 *   Kirchhoff
 *
 * Powers are those with the source standing at its full voltage, which is the worst case.
 */
void
bw_network_solve (const BwNetwork *network, BwNetworkFigures *figures)
{
  g_return_if_fail (network != NULL && figures != NULL && network->n <= BW_NETWORK_MAX);
  double open_v;
  *figures = (BwNetworkFigures){ 0 };
  look_back (network, &open_v, &figures->output_ohm);
  gboolean loaded = isfinite (network->load_ohm);
  double v = loaded ? open_v * network->load_ohm / (network->load_ohm + figures->output_ohm)
                    : open_v;
  double a = loaded ? v / network->load_ohm : 0;

  figures->level_v = v;
  figures->load_w = v * a;
  for (guint i = network->n; i-- > 0;)
    {
      double ohm = network->at[i].ohm;
      if (network->at[i].place == BW_PLACE_SERIES)
        {
          figures->element_w[i] = a * a * ohm;
          v += a * ohm;
        }
      else
        {
          figures->element_w[i] = v * v / ohm;
          a += v / ohm;
        }
    }
  figures->source_w = a * a * network->source_ohm;
  figures->input_ohm = a > 0 ? v / a : (double) INFINITY;
}

/**
 * bw_network_branches:
 * @branches: (out): the resistors between nodes: node 0 is ground, node 1 the e.m.f.
 * @load_node: (out): the node of the load
 *
 * Returns: how many branches there are; a resistor of zero and a load of INFINITY are none
 */
guint
bw_network_branches (const BwNetwork *network, BwBranch branches[BW_BRANCHES_MAX], guint *load_node)
{
  g_return_val_if_fail (network != NULL && branches != NULL && load_node != NULL, 0);
  guint n = 0, node = 1;

  if (network->source_ohm > 0)
    {
      branches[n++] = (BwBranch){ node, node + 1, network->source_ohm };
      node++;
    }
  for (guint i = 0; i < network->n; i++)
    {
      const BwElement *element = &network->at[i];
      if (element->place == BW_PLACE_SHUNT)
        branches[n++] = (BwBranch){ node, 0, element->ohm };
      else if (element->ohm > 0)
        {
          branches[n++] = (BwBranch){ node, node + 1, element->ohm };
          node++;
        }
    }
  if (isfinite (network->load_ohm))
    branches[n++] = (BwBranch){ node, 0, network->load_ohm };
  *load_node = node;
  return n;
}

/**
 * bw_network_level_loss_db:
 *
 * Returns: the level at the load with the source straight on it against that behind the network, in
 *   decibels
 */
double
bw_network_level_loss_db (const BwNetwork *network)
{
  g_return_val_if_fail (network != NULL && network->load_ohm > 0, 0);
  BwNetwork straight = *network;
  BwNetworkFigures with, without;

  straight.n = 0;
  bw_network_solve (network, &with);
  bw_network_solve (&straight, &without);
  return 20 * log10 (without.level_v / with.level_v);
}

/**
 * bw_network_power_loss_db:
 * @network: of a source with some resistance R, and a load that is not infinite
 *
 * Returns: the most power that the source can give, V²/(4 R), against that in the load, in decibels
 */
double
bw_network_power_loss_db (const BwNetwork *network)
{
  g_return_val_if_fail (network != NULL && network->source_ohm > 0, 0);
  g_return_val_if_fail (isfinite (network->load_ohm) && network->load_ohm > 0, 0);
  BwNetworkFigures figures;

  bw_network_solve (network, &figures);
  return 20 * log10 (network->open_v / figures.level_v)
         + 10 * log10 (network->load_ohm / (4 * network->source_ohm));
}

/* More in series lowers the level and more in shunt raises it, so the extremes are corners. */
static double
corner_v (const BwNetwork *network, double series_factor, double shunt_factor, double supply_factor)
{
  BwNetwork corner = *network;
  BwNetworkFigures figures;
  corner.open_v *= supply_factor;
  for (guint i = 0; i < corner.n; i++)
    corner.at[i].ohm *= corner.at[i].place == BW_PLACE_SERIES ? series_factor : shunt_factor;
  bw_network_solve (&corner, &figures);
  return figures.level_v;
}

/**
 * bw_network_spread:
 * @resistor_tolerance: of every resistor of the network, as a share from 0 up to, not including, 1;
 *   source and load are taken as they are
 * @supply_tolerance: of the source's voltage, likewise
 * @level_v: (out): lowest and highest level across the load
 */
void
bw_network_spread (const BwNetwork *network, double resistor_tolerance, double supply_tolerance,
                   BwRange *level_v)
{
  double r = resistor_tolerance, s = supply_tolerance;
  g_return_if_fail (r >= 0 && r < 1 && s >= 0 && s < 1);
  level_v->low = corner_v (network, 1 + r, 1 - r, 1 - s);
  level_v->high = corner_v (network, 1 - r, 1 + r, 1 + s);
}

/**
 * bw_series_tolerance:
 *
 * Returns: the tolerance of resistors of @series as a share: 10, 5 and 1 % (common practice: IEC
 * 60063 pairs the series with such tolerances, but better ones are sold)
 */
double
bw_series_tolerance (BwSeries series)
{
  static const double shares[BW_N_SERIES] = {
    [BW_SERIES_E12] = 0.10,
    [BW_SERIES_E24] = 0.05,
    [BW_SERIES_E96] = 0.01,
  };
  g_return_val_if_fail (series < BW_N_SERIES, 0);
  return shares[series];
}

/**
 * bw_network_prefer:
 * @made: (out caller-allocates): @ideal of the nearest values of @series, each by itself
 */
void
bw_network_prefer (const BwNetwork *ideal, BwSeries series, BwNetwork *made)
{
  g_return_if_fail (ideal != NULL && made != NULL && ideal->n <= BW_NETWORK_MAX);
  *made = *ideal;
  for (guint i = 0; i < ideal->n; i++)
    made->at[i].ohm = bw_preferred_value (ideal->at[i].ohm, series);
}

/**
 * bw_network_choose:
 * @ideal: the exact values
 * @supply_tolerance: of the source's voltage, as a share
 * @choice: (out caller-allocates): the same with values of @series, and what they give
 */
void
bw_network_choose (const BwNetwork *ideal, BwSeries series, double supply_tolerance,
                   BwPadChoice *choice)
{
  g_return_if_fail (ideal != NULL && choice != NULL);
  *choice = (BwPadChoice){ .series = series };
  bw_network_prefer (ideal, series, &choice->network);
  bw_network_solve (&choice->network, &choice->figures);
  bw_network_spread (&choice->network, bw_series_tolerance (series), supply_tolerance,
                     &choice->spread_v);
}
