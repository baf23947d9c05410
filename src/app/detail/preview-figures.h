/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "preview-job.h"

G_BEGIN_DECLS

/* The numbers beside a preview. */

GPtrArray *bw_preview_table (const BwPreviewResult *result, double density, char mark);
GPtrArray *bw_preview_burst_table (const BwPreviewResult *result, char mark);

G_END_DECLS
