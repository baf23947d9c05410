/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/base/quantity.h"
#include "core/levels/conductor.h"

G_BEGIN_DECLS

/* What each pin of a connector is for, at which level. Where a connector has one plug for each
 * conductor (BNC, phono) a conductor's pin number is BW_PIN_OWN_PLUG: centre contact and shell.
 * Where no standard lays the pins down it is BW_PIN_NOT_LAID_DOWN: a plan names the signal only. */

#define BW_PIN_OWN_PLUG 0
#define BW_PIN_NOT_LAID_DOWN (-1)

typedef enum
{
  BW_PIN_NONE,        /* reserved, or not connected */
  BW_PIN_VIDEO,       /* carries a BwConductor */
  BW_PIN_GROUND,      /* the return of a pin, or a common ground */
  BW_PIN_SWITCH_SLOW, /* function switching: selects the input (and the aspect) */
  BW_PIN_SWITCH_FAST, /* selects RGB instead of composite video */
  BW_PIN_SUPPLY,
  BW_PIN_AUDIO,
  BW_PIN_DATA, /* identity and control */
  BW_N_PIN_ROLES
} BwPinRole;

/* The editions of the 21-pin peritelevision connector: the grounds on pins 14, 17 and 18 differ. */
typedef enum
{
  BW_EDITION_CURRENT, /* 14 ground of blanking, 17 of video out, 18 of video in */
  BW_EDITION_1983,    /* 14 ground of data, 17 of video, 18 of blanking */
  BW_N_EDITIONS
} BwEdition;

/**
 * BwPin:
 * @number: as moulded beside it
 * @role: BwPinRole
 * @gives: set of BwConductor that it carries on the connector of a source
 * @takes: set of BwConductor that it carries on the connector of an input
 * @ground: number of the pin that is its return; zero: none of its own
 * @level_v: range of the voltage that it carries: peak to peak of video, d.c. of switching and
 *   supply; both zero: not laid down
 * @load_ohm: what the input's pin is to be; zero: not laid down
 * @says: what it is, in English, to be translated with bw_pin_says()
 * @practice: set of BwConductor that it carries by common practice, no source
 *
 * One pin, the same on a source and on an input but for @gives and @takes.
 */
typedef struct
{
  int number;
  guint role;
  guint gives;
  guint takes;
  int ground;
  BwRange level_v;
  double load_ohm;
  const char *says;
  guint practice;
} BwPin;

extern const BwKindTable bw_editions;

const BwPin *bw_connector_pins (BwConnector connector, BwEdition edition, guint *n);
const BwPin *bw_connector_pin (BwConnector connector, BwEdition edition, int number);
const char *bw_connector_source (BwConnector connector);
gboolean bw_connector_is_single (BwConnector connector);
guint bw_connector_open_contacts (BwConnector connector);
const char *bw_pin_says (const BwPin *pin);

G_END_DECLS
