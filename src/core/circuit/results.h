/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/result/result.h"
#include "pads.h"
#include "work-back.h"

G_BEGIN_DECLS

/* What this room has to say, to be shown by any face (core/result). */

/**
 * BwPadAsk:
 * @from_v: of the driver without load
 * @to_v: that is wanted
 * @one_series: whether people see the resistor of @series alone
 * @ideal: the exact network, as of bw_pad_series()
 *
 * A series resistor that brings sync down to the level that an input wants.
 */
typedef struct
{
  double from_v;
  double to_v;
  double driver_ohm;
  double load_ohm;
  double supply_tolerance;
  guint series;
  gboolean one_series;
  BwNetwork ideal;
} BwPadAsk;

#define BW_PADS_MAX 2

/**
 * BwPadDesign:
 * @ideal: the exact network, as of the function of its kind
 */
typedef struct
{
  BwPadKind kind;
  BwNetwork ideal;
} BwPadDesign;

/**
 * BwPadsAsk:
 * @from_v: of the source without load; zero: not known, and no level is shown
 * @one_series: whether the resistors of @series alone are shown
 *
 * Pads that match a source or a load, or both, alike in what they do.
 */
typedef struct
{
  guint n;
  BwPadDesign pad[BW_PADS_MAX];
  double from_v;
  guint series;
  gboolean one_series;
} BwPadsAsk;

/**
 * BwSourceAsk:
 * @open_v: without load
 * @loaded_v: across @load_ohm
 *
 * What a source is, from its levels with and without a load.
 */
typedef struct
{
  double open_v;
  double loaded_v;
  double load_ohm;
} BwSourceAsk;

/**
 * BwDriverAsk:
 * @level_v: across @load_ohm
 * @series_ohm: between the driver and the load
 * @wanted_v: the level that is wanted there; zero: none is
 *
 * What a driver gives, from the level behind its resistor.
 */
typedef struct
{
  double level_v;
  double series_ohm;
  double load_ohm;
  double wanted_v;
} BwDriverAsk;

/**
 * BwDropsAsk:
 * @accuracy: of each reading, as a share
 *
 * What a known resistor ends in, from readings on both its sides.
 */
typedef struct
{
  guint n;
  BwDrop drops[BW_DROPS_MAX];
  double accuracy;
} BwDropsAsk;

void bw_source_ask_say (BwNode *to, const BwSourceAsk *ask);
void bw_driver_ask_say (BwNode *to, const BwDriverAsk *ask);
void bw_drops_say (BwNode *to, const BwDropsAsk *ask);
void bw_node_case_say (BwNode *to, const BwNodeCase *node);
void bw_level_fits_say (BwNode *to, double level_v, double accuracy);
void bw_pad_say (BwNode *to, const BwPadAsk *ask);
void bw_pads_say (BwNode *to, const BwPadsAsk *ask);

G_END_DECLS
