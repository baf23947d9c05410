/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/circuit/lead.h"
#include "core/result/result.h"
#include "plan.h"

G_BEGIN_DECLS

/* What this room has to say, to be shown by any face (core/result). */

gboolean bw_pin_is_known (int pin);
void bw_pin_reading_say (BwNode *to, int pin, double level_v);
void bw_hookup_say (BwNode *to, const BwHookup *hookup, const BwLeadCase *lead);

G_END_DECLS
