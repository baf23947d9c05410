/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/base/kinds.h"
#include "core/base/quantity.h"
#include "drive.h"

G_BEGIN_DECLS

/* What pads are computed for: beyond anything between a source and an input. Resistors of the series
 * are made up to 10 MΩ (common practice, no source). */
#define BW_PAD_LEAST_V 1e-3
#define BW_PAD_MOST_V 1e3
#define BW_PAD_LEAST_OHM 0.1
#define BW_PAD_MOST_OHM 10e6

/* Resistor networks between a source and a load. Every one is a ladder: an e.m.f. behind a
 * resistance, then series and shunt resistors in order, then a load. */

typedef enum
{
  BW_PLACE_SERIES, /* in the conductor */
  BW_PLACE_SHUNT,  /* from the conductor to its return */
  BW_N_PLACES
} BwPlace;

typedef struct
{
  BwPlace place;
  double ohm;
} BwElement;

#define BW_NETWORK_MAX 6

/**
 * BwNetwork:
 * @open_v: e.m.f. of the source: its level without load
 * @source_ohm: its own resistance; zero: none
 * @n: resistors used in @at, counted from the source
 * @load_ohm: of the input; INFINITY: none
 */
typedef struct
{
  double open_v;
  double source_ohm;
  guint n;
  BwElement at[BW_NETWORK_MAX];
  double load_ohm;
} BwNetwork;

/**
 * BwNetworkFigures:
 * @level_v: across the load
 * @element_w: power in each resistor of BwNetwork.at, with the source standing at its full voltage
 * @load_w: power in the load; @source_w in the source's own resistance
 * @input_ohm: what the source works into
 * @output_ohm: what the load looks back into
 */
typedef struct
{
  double level_v;
  double element_w[BW_NETWORK_MAX];
  double load_w;
  double source_w;
  double input_ohm;
  double output_ohm;
} BwNetworkFigures;

/**
 * BwBranch:
 * @a: node; 0 is ground, 1 the e.m.f.
 * @b: node
 * @ohm: between them
 *
 * A network as a list of nodes, for a nodal analysis.
 */
typedef struct
{
  guint a;
  guint b;
  double ohm;
} BwBranch;

#define BW_BRANCHES_MAX (BW_NETWORK_MAX + 2)

typedef enum
{
  BW_PAD_SERIES,       /* one resistor: no match */
  BW_PAD_L,            /* series and shunt: matched to the load alone */
  BW_PAD_T,            /* matched both ways */
  BW_PAD_PI,           /* matched both ways */
  BW_PAD_MINIMUM_LOSS, /* between two resistances */
  BW_N_PADS
} BwPadKind;

/**
 * BwPadChoice:
 * @network: with the preferred values
 * @spread_v: level at the corners of resistor and supply tolerance
 *
 * A network made of the values that can be bought.
 */
typedef struct
{
  BwSeries series;
  BwNetwork network;
  BwNetworkFigures figures;
  BwRange spread_v;
} BwPadChoice;

#define BW_SUPPLY_TOLERANCE 0.05 /* of logic supplies; common practice, no source */

#define BW_PADS_ERROR (bw_pads_error_quark ())

typedef enum
{
  BW_PADS_ERROR_VALUE,    /* a voltage or resistance that cannot be */
  BW_PADS_ERROR_TOO_HIGH, /* more is wanted than there is */
  BW_PADS_ERROR_TOO_LOW,  /* a resistor would be needed that nobody makes */
  BW_PADS_ERROR_LOSS      /* a pad with no loss, or less than it must lose */
} BwPadsError;

extern const BwKindTable bw_pads;
extern const BwKindTable bw_places;
extern const BwKindTable bw_series;

GQuark bw_pads_error_quark (void);

void bw_network_solve (const BwNetwork *network, BwNetworkFigures *figures);
guint bw_network_branches (const BwNetwork *network, BwBranch branches[BW_BRANCHES_MAX],
                           guint *load_node);
double bw_network_level_loss_db (const BwNetwork *network);
double bw_network_power_loss_db (const BwNetwork *network);
void bw_network_spread (const BwNetwork *network, double resistor_tolerance,
                        double supply_tolerance, BwRange *level_v);

void bw_network_prefer (const BwNetwork *ideal, BwSeries series, BwNetwork *made);
double bw_series_tolerance (BwSeries series);
void bw_network_choose (const BwNetwork *ideal, BwSeries series, double supply_tolerance,
                        BwPadChoice *choice);

gboolean bw_pad_series (double open_v, double source_ohm, double load_ohm, double wanted_v,
                        BwNetwork *network, GError **error);
gboolean bw_pad_l (double open_v, double source_ohm, double load_ohm, double wanted_v,
                   BwNetwork *network, GError **error);
gboolean bw_pad_matched (BwPadKind kind, double open_v, double z_ohm, double loss_db,
                         BwNetwork *network, GError **error);
gboolean bw_pad_lower (double open_v, double source_ohm, double ratio, BwSeries series,
                       BwNetwork *ideal, BwNetwork *made);
gboolean bw_pad_minimum_loss (double open_v, double source_ohm, double load_ohm, BwNetwork *network,
                              double *loss_db, GError **error);

G_END_DECLS
