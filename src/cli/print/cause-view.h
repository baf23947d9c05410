/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "cli/base/json.h"
#include "cli/choose/cause-options.h"

G_BEGIN_DECLS

void bw_cause_view_to_json (const BwCauseView *view, BwJson *json);
void bw_cause_view_append_text (const BwCauseView *view, GString *text);

G_END_DECLS
