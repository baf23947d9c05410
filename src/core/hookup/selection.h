/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/connector/connector.h"
#include "core/circuit/pads.h"

G_BEGIN_DECLS

/* Pins that tell a set which signal to show, and the resistors that bring them to their level. */

typedef enum
{
  BW_SELECT_AV,      /* peritelevision 8: external, 4:3; Japanese 21-pin 11: external */
  BW_SELECT_AV_WIDE, /* peritelevision 8: external, 16:9 */
  BW_SELECT_RGB,     /* peritelevision 16, Japanese 21-pin 16 */
  BW_N_SELECTS
} BwSelect;

/**
 * BwSelection:
 * @pin: of the input's connector; @ground: its return
 * @window_v: the level that means @select
 * @load_ohm: least resistance of the set's pin
 * @load_fixed: it is that resistance; else that or more
 * @ohm: range that one series resistor from the supply may have; both zero: one resistor cannot
 * @choice: series resistor, or series and shunt, with the preferred values; its load is @load_ohm
 * @level_v: lowest and highest level over resistor and supply tolerance and the set's load
 * @within: all of @level_v lies in @window_v
 */
typedef struct
{
  BwSelect select;
  int pin;
  int ground;
  BwRange window_v;
  double load_ohm;
  gboolean load_fixed;
  BwRange ohm;
  BwPadChoice choice;
  BwRange level_v;
  gboolean within;
} BwSelection;

#define BW_SELECTION_ERROR (bw_selection_error_quark ())

typedef enum
{
  BW_SELECTION_ERROR_NO_PIN, /* the connector has no such pin */
  BW_SELECTION_ERROR_SUPPLY  /* the supply cannot reach the window */
} BwSelectionError;

extern const BwKindTable bw_selects;

GQuark bw_selection_error_quark (void);

int bw_select_pin (BwConnector connector, BwSelect select);
gboolean bw_selection_compute (BwConnector connector, BwSelect select, double supply_v,
                               double supply_tolerance, BwSeries series, BwSelection *selection,
                               GError **error);
char *bw_selection_says (const BwSelection *selection, char mark);

G_END_DECLS
