/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "state.h"

G_BEGIN_DECLS

/* The note under a value of the Detail page. */

char *bw_move_note (BwDetailState *state, BwDetailValue value);

G_END_DECLS
