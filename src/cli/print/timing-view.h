/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "cli/base/json.h"
#include "cli/choose/raster-choice.h"

G_BEGIN_DECLS

/* A chosen raster, and how it came about. */

void bw_timing_append_text (const BwChosenRaster *chosen, GString *to);
void bw_timing_to_json (const BwChosenRaster *chosen, const char *modeline, BwJson *json);

G_END_DECLS
