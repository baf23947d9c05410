/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "connector.h"

G_BEGIN_DECLS

/**
 * BwConnectorFacts:
 * @pins: (nullable): in their order; of the peritelevision connector those of the current edition
 * @contacts: how many it has
 * @open_use: it also carries what no standard lays down for it
 * @single: one plug for each conductor
 * @source: where the pins are from, to be translated
 */
typedef struct
{
  const BwPin *pins;
  guint n;
  guint contacts;
  gboolean open_use;
  gboolean single;
  const char *source;
} BwConnectorFacts;

const BwConnectorFacts *bw_connector_facts (BwConnector connector);
const BwPin *bw_peritelevision_pins (BwEdition edition);

G_END_DECLS
