/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/connector/plug.h"
#include "selection.h"

G_BEGIN_DECLS

/* One lead, pin by pin. Both ends carry the same conductors: what turns one kind of signal or sync
 * into another is an adaptor between two leads. */

/**
 * BwWiringEnd:
 * @connector: BwConnector
 * @signal: BwSignal
 * @sync: BwSyncKind
 * @edition: BwEdition; of the peritelevision connector alone
 * @pins: the person's own, where no standard lays them down
 */
typedef struct
{
  guint connector;
  guint signal;
  guint sync;
  guint edition;
  BwPinout pins;
} BwWiringEnd;

/**
 * BwWiringParts:
 * @straight: a lead as bought, pin n to pin n, instead of one made to this plan
 * @series_ohm: in each conductor at the source's end; zero: none
 * @shunt_ohm: behind it, to the return; zero: none
 * @coupling_f: capacitor in each conductor; zero: none
 * @supply_v: for selection pins; zero: there is none
 * @low_supply_v: taken instead where it keeps the pin in its window; zero: there is none
 * @supply_tolerance: as a share
 * @preferred: BwSeries of the resistors at selection pins
 * @wide: select 16:9 where the connector can
 */
typedef struct
{
  gboolean straight;
  double series_ohm[BW_N_CONDUCTORS];
  double shunt_ohm[BW_N_CONDUCTORS];
  double coupling_f[BW_N_CONDUCTORS];
  double supply_v;
  double low_supply_v;
  double supply_tolerance;
  guint preferred;
  gboolean wide;
} BwWiringParts;

/**
 * BwConnection:
 * @from_pin: or %BW_PIN_OWN_PLUG, %BW_PIN_NOT_LAID_DOWN
 * @from_ground: return of @from_pin, likewise
 * @series_ohm: zero: straight through
 *
 * One conductor with its return.
 */
typedef struct
{
  BwConductor conductor;
  int from_pin;
  int from_ground;
  int to_pin;
  int to_ground;
  double series_ohm;
  double shunt_ohm;
  double coupling_f;
} BwConnection;

typedef enum
{
  BW_REST_OPEN,     /* nothing goes there */
  BW_REST_GROUND,   /* joined to the common ground */
  BW_REST_SELECTED, /* held by a BwSelection */
  BW_REST_OWN_LOAD, /* left open: the set's own resistor holds it low */
  BW_REST_JOINED,   /* to BwRest.other of the other end */
  BW_N_RESTS
} BwRestKind;

/**
 * BwRest:
 * @at_input: of the input's connector; else of the source's
 * @pin: that carries none of the conductors and is the return of none
 * @kind: BwRestKind
 * @other: pin of the other end that it is joined to; else zero
 */
typedef struct
{
  gboolean at_input;
  int pin;
  guint kind;
  int other;
} BwRest;

/**
 * BwWiring:
 * @from_plug: the pins of @from; likewise @to_plug
 * @connections: (element-type BwConnection): in the conductors' order
 * @selections: (element-type BwSelection)
 * @rests: (element-type BwRest): every other pin of both ends
 * @warnings: (element-type utf8): translated sentences
 */
typedef struct
{
  BwWiringEnd from;
  BwWiringEnd to;
  BwPlug from_plug;
  BwPlug to_plug;
  GArray *connections;
  GArray *selections;
  GArray *rests;
  GPtrArray *warnings;
} BwWiring;

#define BW_WIRING_ERROR (bw_wiring_error_quark ())

typedef enum
{
  BW_WIRING_ERROR_CONDUCTORS, /* the ends do not carry the same signal */
  BW_WIRING_ERROR_PINS,       /* a connector has no pin for a conductor */
  BW_WIRING_ERROR_SUPPLY,     /* a supply or switching voltage would meet another pin */
  BW_WIRING_ERROR_CROSSED,    /* two pins of different purpose would meet */
  BW_WIRING_ERROR_SHELL       /* the two connectors do not mate with one straight lead */
} BwWiringError;

extern const BwKindTable bw_rests;

GQuark bw_wiring_error_quark (void);

BwWiring *bw_wiring_new (const BwWiringEnd *from, const BwWiringEnd *to, const BwWiringParts *parts,
                         GError **error);
void bw_wiring_free (BwWiring *wiring);

gboolean bw_wiring_check_pins (const BwWiringEnd *from, int from_pin, const BwWiringEnd *to,
                               int to_pin, GError **error);
gboolean bw_wiring_check_straight (const BwWiringEnd *from, const BwWiringEnd *to, GError **error);

char *bw_wire_end_words (const BwNetwork *end, char mark);
char *bw_wire_return (BwConnector connector, int number);
char *bw_wire_through (const BwWiring *wiring, const BwConnection *connection,
                       const BwNetwork *pad, char mark);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BwWiring, bw_wiring_free)

G_END_DECLS
