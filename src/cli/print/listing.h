/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "cli/base/json.h"
#include "core/bench/catalogue.h"

G_BEGIN_DECLS

/* The lists of what a catalogue holds: as a table, and as an array in an open JSON object. */

void bw_list_rasters_text (const BwCatalogue *catalogue, GString *to);
void bw_list_monitors_text (const BwCatalogue *catalogue, GString *to);
void bw_list_sources_text (const BwCatalogue *catalogue, GString *to);
void bw_list_adaptors_text (const BwCatalogue *catalogue, GString *to);

void bw_list_rasters_json (const BwCatalogue *catalogue, BwJson *json);
void bw_list_monitors_json (const BwCatalogue *catalogue, BwJson *json);
void bw_list_sources_json (const BwCatalogue *catalogue, BwJson *json);
void bw_list_adaptors_json (const BwCatalogue *catalogue, BwJson *json);

G_END_DECLS
