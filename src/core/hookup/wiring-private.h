/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "wiring.h"

G_BEGIN_DECLS

int bw_bought_lead_pin (BwConnector connector, int pin);
gboolean bw_wiring_wants (const BwWiring *wiring, const BwWiringParts *parts, BwSelect select);
gboolean bw_wiring_selects (const BwWiring *wiring, int pin);
void bw_wiring_warn (BwWiring *wiring, const BwWiringParts *parts);

G_END_DECLS
