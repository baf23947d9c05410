/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "connector.h"
#include "core/base/pinout.h"
#include "core/bench/source.h"

G_BEGIN_DECLS

/* One end of a lead: a connector with its pins, whoever says what they carry. Where no standard
 * does, it is the person's own pin-out of the source or the input. */

/**
 * BwPlug:
 * @connector: BwConnector
 * @edition: BwEdition; of the peritelevision connector alone
 * @n_own: how many pins @own has; zero: the standard or custom of @connector holds
 * @own: as the person gave them, in their order
 */
typedef struct
{
  guint connector;
  guint edition;
  guint n_own;
  BwPin own[BW_PINOUT_MAX];
} BwPlug;

void bw_plug_init (BwPlug *plug, BwConnector connector, BwEdition edition, const BwPinout *pins);
const BwPin *bw_plug_pins (const BwPlug *plug, guint *n);
const BwPin *bw_plug_pin (const BwPlug *plug, int number);
gboolean bw_plug_find (const BwPlug *plug, BwSignal signal, BwConductor conductor,
                       gboolean on_source, int *pin, int *ground);
char *bw_plug_pin_name (const BwPlug *plug, int number, BwConductor conductor);
const char *bw_plug_source (const BwPlug *plug);

gboolean bw_connector_carries (BwConnector connector, guint conductors, gboolean on_source);
gboolean bw_connector_takes (BwConnector connector, BwSignal signal, BwSyncKind sync,
                             gboolean on_source);
gboolean bw_source_shares_pin (const BwSource *source, BwSyncKind syncs[2], int *pin);

guint bw_connector_open_pins (BwConnector connector, const BwPinout *pins, BwSignal signal,
                              BwSyncKind sync, gboolean on_source);
guint bw_open_pins_count (const BwOpenPins *open);
char *bw_open_pins_name (const BwOpenPins *open);
char *bw_open_pins_says (const BwOpenPins *open);

G_END_DECLS
