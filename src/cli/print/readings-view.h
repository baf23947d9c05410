/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "cli/base/json.h"
#include "core/raster/reading.h"

G_BEGIN_DECLS

/**
 * BwReadingsView:
 * @limits: of one standard, borrowed
 * @read: which readings were given
 * @value: of each, in the base unit
 *
 * Readings held against what a standard allows.
 */
typedef struct
{
  const BwStandardLimits *limits;
  gboolean read[BW_N_READINGS];
  double value[BW_N_READINGS];
} BwReadingsView;

void bw_readings_view_append_text (const BwReadingsView *view, GString *to);
void bw_readings_view_to_json (const BwReadingsView *view, BwJson *json);

void bw_limits_append_text (const BwStandardLimits *limits, GString *to);
void bw_limits_to_json (const BwStandardLimits *limits, BwJson *json);

G_END_DECLS
