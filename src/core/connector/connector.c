/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "connector-private.h"

#include <glib/gi18n-lib.h>

static const BwKind editions[BW_N_EDITIONS] = {
  [BW_EDITION_CURRENT] = { "current", N_ ("later editions") },
  [BW_EDITION_1983] = { "1983", N_ ("1983 edition") },
};
const BwKindTable bw_editions = { BW_N_EDITIONS, editions };

/**
 * bw_connector_pins:
 * @n: (out): how many
 *
 * Returns: (transfer none) (nullable) (array length=n): all pins in their order; %NULL where there
 * is one plug for each conductor or nothing is laid down. @edition matters for the peritelevision
 * connector alone
 */
const BwPin *
bw_connector_pins (BwConnector connector, BwEdition edition, guint *n)
{
  g_return_val_if_fail (n != NULL, NULL);
  const BwConnectorFacts *facts = bw_connector_facts (connector);
  *n = facts->n;
  return connector == BW_CONNECTOR_PERITELEVISION ? bw_peritelevision_pins (edition) : facts->pins;
}

/**
 * bw_connector_pin:
 *
 * Returns: (transfer none) (nullable): pin @number, if there is such a pin
 */
const BwPin *
bw_connector_pin (BwConnector connector, BwEdition edition, int number)
{
  guint n;
  const BwPin *pins = bw_connector_pins (connector, edition, &n);
  return number >= 1 && (guint) number <= n ? &pins[number - 1] : NULL;
}

/**
 * bw_connector_source:
 *
 * Returns: (transfer none): the standard or custom that lays the pins down, translated
 */
const char *
bw_connector_source (BwConnector connector)
{
  return _ (bw_connector_facts (connector)->source);
}

/**
 * bw_connector_is_single:
 *
 * Returns: whether there is one plug for each conductor
 */
gboolean
bw_connector_is_single (BwConnector connector)
{
  return bw_connector_facts (connector)->single;
}

/**
 * bw_connector_open_contacts:
 *
 * Returns: how many contacts it has, if it is one that also carries what no standard lays down;
 *   else zero
 */
guint
bw_connector_open_contacts (BwConnector connector)
{
  const BwConnectorFacts *facts = bw_connector_facts (connector);
  return facts->open_use ? facts->contacts : 0;
}

/**
 * bw_pin_says:
 *
 * Returns: (transfer none): what the pin is for, translated
 */
const char *
bw_pin_says (const BwPin *pin)
{
  g_return_val_if_fail (pin != NULL, NULL);
  return _ (pin->says);
}
