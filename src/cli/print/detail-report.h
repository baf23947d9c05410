/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "cli/base/json.h"
#include "core/detail/detail.h"

G_BEGIN_DECLS

/**
 * BwDetailReport:
 * @what: the case
 * @detail: what follows from it
 * @raster: (nullable): id of the raster that was counted with, borrowed
 * @source_aspect: of the source of a sheet; %BW_RATIO_NONE: none
 * @switched: whether @what is of the area that the set's switch scans
 *
 * What can be resolved, to be shown.
 */
typedef struct
{
  BwDetailCase what;
  BwDetail detail;
  const char *raster;
  BwRatio source_aspect;
  gboolean switched;
} BwDetailReport;

void bw_detail_report_append_text (const BwDetailReport *report, GString *to);
void bw_detail_report_to_json (const BwDetailReport *report, BwJson *json);

G_END_DECLS
