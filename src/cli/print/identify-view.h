/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "cli/base/json.h"
#include "core/bench/identify.h"

G_BEGIN_DECLS

/**
 * BwIdentifyView:
 * @readings: what was read
 * @candidates: (element-type BwCandidate): the best first, as many as are shown
 *
 * Which raster it may be. Both are borrowed.
 */
typedef struct
{
  const BwReadings *readings;
  const GArray *candidates;
} BwIdentifyView;

void bw_identify_view_append_text (const BwIdentifyView *view, GString *to);
void bw_identify_view_to_json (const BwIdentifyView *view, BwJson *json);

G_END_DECLS
