/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "catalogue.h"
#include "core/result/result.h"
#include "identify.h"

G_BEGIN_DECLS

/* What this room has to say, to be shown by any face (core/result). */

void bw_identify_say (BwNode *to, const BwReadings *readings, const GArray *candidates);
void bw_sheet_say_keys (BwNode *to);
void bw_catalogue_say (BwNode *to, const BwCatalogue *catalogue, BwCatalogueKind kind);

G_END_DECLS
