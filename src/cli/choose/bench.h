/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "cli/base/cli.h"
#include "core/bench/sheet.h"

G_BEGIN_DECLS

BwCatalogue *bw_cli_load_catalogue (void);
BwSheet *bw_cli_read_sheet (const char *path, const BwCatalogue *catalogue, GPtrArray *faults);
BwSheet *bw_cli_load_sheet (const char *path, const BwCatalogue *catalogue);

G_END_DECLS
