/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/bench/tube-raster.h"
#include "core/result/result.h"
#include "displays.h"

G_BEGIN_DECLS

/* What this room has to say, to be shown by any face (core/result). */

void bw_displays_say (BwNode *to, const GPtrArray *displays);
void bw_tube_say (BwNode *to, const GPtrArray *answers, guint which);
void bw_edid_say (BwNode *to, const BwEdid *edid);

G_END_DECLS
