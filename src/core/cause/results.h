/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "cause.h"
#include "core/result/result.h"

G_BEGIN_DECLS

/* What this room has to say, to be shown by any face (core/result). */

void bw_cause_say (BwNode *to, const char *source, const char *input, const BwCauseCase *c,
                   const BwScopeReadings *readings, const GArray *causes);
char *bw_scope_expected_words (BwScopeReading reading, const BwRange *range, char mark);

G_END_DECLS
