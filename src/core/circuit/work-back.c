/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "work-back.h"

#include <math.h>

/**
 * bw_source_ohm_from_levels:
 * @open_v: without load, in volts
 * @loaded_v: the same across @load_ohm; more than zero and not more than @open_v
 *
 * Returns: the resistance of the source, in ohms: load × (open / loaded − 1), by Ohm's law
 */
double
bw_source_ohm_from_levels (double open_v, double loaded_v, double load_ohm)
{
  g_return_val_if_fail (loaded_v > 0 && open_v >= loaded_v && load_ohm > 0, 0);
  return load_ohm * (open_v / loaded_v - 1);
}

/**
 * bw_open_v_from_level:
 * @level_v: across @load_ohm
 * @series_ohm: all that lies between the driver and the load, in ohms
 *
 * Returns: the voltage of the driver without load: level × (series + load) / load, by Ohm's law
 */
double
bw_open_v_from_level (double level_v, double series_ohm, double load_ohm)
{
  g_return_val_if_fail (level_v > 0 && series_ohm >= 0 && load_ohm > 0, 0);
  return level_v * (series_ohm + load_ohm) / load_ohm;
}

/**
 * bw_drop_load_ohm:
 *
 * Returns: what the resistor ends in: the same current flows through both, so that
 * load = after × series / (before − after)
 */
double
bw_drop_load_ohm (const BwDrop *drop)
{
  g_return_val_if_fail (drop != NULL && drop->before_v > drop->after_v && drop->after_v > 0, 0);
  return drop->after_v * drop->series_ohm / (drop->before_v - drop->after_v);
}

/**
 * bw_drop_load_range:
 * @accuracy: of either reading, as a share
 *
 * Returns: the loads that the two readings allow; its upper end is INFINITY where they may be equal
 */
BwRange
bw_drop_load_range (const BwDrop *drop, double accuracy)
{
  g_return_val_if_fail (drop != NULL && accuracy >= 0, (BwRange){ 0 });
  BwDrop least = { drop->before_v * (1 + accuracy), drop->after_v * (1 - accuracy), drop->series_ohm };
  BwDrop most = { drop->before_v * (1 - accuracy), drop->after_v * (1 + accuracy), drop->series_ohm };
  return (BwRange){ bw_drop_load_ohm (&least),
                    most.before_v > most.after_v ? bw_drop_load_ohm (&most) : (double) INFINITY };
}

/**
 * bw_drops_agree:
 * @accuracy: of each reading, as a share
 * @load_ohm: (out): the loads that all of them allow, if they agree
 *
 * Returns: whether one load explains all readings
 */
gboolean
bw_drops_agree (const BwDrop *drops, guint n, double accuracy, BwRange *load_ohm)
{
  g_return_val_if_fail (drops != NULL && n > 0 && load_ohm != NULL, FALSE);
  *load_ohm = (BwRange){ 0, INFINITY };
  for (guint i = 0; i < n; i++)
    {
      BwRange one = bw_drop_load_range (&drops[i], accuracy);
      load_ohm->low = MAX (load_ohm->low, one.low);
      load_ohm->high = MIN (load_ohm->high, one.high);
    }
  return load_ohm->low <= load_ohm->high;
}

static double
drivers_siemens (const BwNodeCase *node)
{
  double siemens = 0;
  for (guint i = 0; i < node->n; i++)
    siemens += 1 / node->drivers[i].ohm;
  return siemens;
}

/**
 * bw_node_source_ohm:
 *
 * Returns: the resistance that a load of the node looks back into: all resistors in parallel
 */
double
bw_node_source_ohm (const BwNodeCase *node)
{
  g_return_val_if_fail (node != NULL && node->n > 0, 0);
  return 1 / drivers_siemens (node);
}

/**
 * bw_node_level_v:
 * @code: which drivers are high; bit 0 is the last of them
 *
 * Returns: the voltage of the node: the currents of all resistors and the load add up to zero (Kirchhoff)
 */
double
bw_node_level_v (const BwNodeCase *node, guint code)
{
  g_return_val_if_fail (node != NULL && node->n > 0 && node->load_ohm > 0, 0);
  double ampere = 0;
  for (guint i = 0; i < node->n; i++)
    if (code & (1u << (node->n - 1 - i)))
      ampere += node->drivers[i].open_v / node->drivers[i].ohm;
  return ampere / (drivers_siemens (node) + 1 / node->load_ohm);
}

/**
 * bw_node_driver_a:
 *
 * Returns: the most current that @driver gives: when it alone is high
 */
double
bw_node_driver_a (const BwNodeCase *node, guint driver)
{
  g_return_val_if_fail (node != NULL && driver < node->n, 0);
  double alone_v = bw_node_level_v (node, 1u << (node->n - 1 - driver));
  return (node->drivers[driver].open_v - alone_v) / node->drivers[driver].ohm;
}
