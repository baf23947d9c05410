/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

#include "core/base/quantity.h"

G_BEGIN_DECLS

/* From readings back to the circuit that gives them. A source, however it is made, is one voltage and one
 * resistance in series (Thévenin), so that two readings at two loads are enough to know it. */

#define BW_DROPS_MAX 8
#define BW_DRIVERS_MAX 8

/**
 * BwDrop:
 * @before_v: reading before a known resistor
 * @after_v: reading behind it, at the load; less than @before_v
 * @series_ohm: of the resistor
 */
typedef struct
{
  double before_v;
  double after_v;
  double series_ohm;
} BwDrop;

/**
 * BwNodeDriver:
 * @open_v: its voltage when it is high; it stands at 0 V when it is low
 * @ohm: from there to the node, its own resistance included
 */
typedef struct
{
  double open_v;
  double ohm;
} BwNodeDriver;

/**
 * BwNodeCase:
 * @drivers: several outputs into one node through a resistor each, the most significant bit first
 * @load_ohm: from the node to ground
 */
typedef struct
{
  guint n;
  BwNodeDriver drivers[BW_DRIVERS_MAX];
  double load_ohm;
} BwNodeCase;

double bw_source_ohm_from_levels (double open_v, double loaded_v, double load_ohm);
double bw_open_v_from_level (double level_v, double series_ohm, double load_ohm);
double bw_drop_load_ohm (const BwDrop *drop);
BwRange bw_drop_load_range (const BwDrop *drop, double accuracy);
gboolean bw_drops_agree (const BwDrop *drops, guint n, double accuracy, BwRange *load_ohm);
double bw_node_source_ohm (const BwNodeCase *node);
double bw_node_level_v (const BwNodeCase *node, guint code);
double bw_node_driver_a (const BwNodeCase *node, guint driver);

G_END_DECLS
