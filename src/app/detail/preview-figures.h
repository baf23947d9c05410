/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/result/result.h"
#include "preview-job.h"

G_BEGIN_DECLS

/* The numbers beside a preview. */

void bw_preview_say (BwNode *to, const BwPreviewResult *result, double density);

G_END_DECLS
