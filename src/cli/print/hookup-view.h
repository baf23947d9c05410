/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "cli/base/json.h"
#include "core/hookup/plan.h"

G_BEGIN_DECLS

/* How one source comes to one input: the chain, the wiring list, the parts and the levels. */

void bw_hookup_view_append_text (const BwHookup *hookup, GString *to);
void bw_hookup_view_to_json (const BwHookup *hookup, BwJson *json);

G_END_DECLS
