/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "cli/base/cli.h"
#include "core/bench/lack.h"
#include "core/bench/sheet.h"

G_BEGIN_DECLS

/* One source of a bench sheet at one of its inputs, as --source and --input name them. */

gboolean bw_cell_number (const char *wanted, guint n, guint *index);
BwCliExit bw_cell_pick (const char *command, const char *path, const BwSheet *sheet,
                        const char *source_raw, const char *input_raw, guint *source,
                        guint *input);
gboolean bw_cell_find_source (const char *path, const BwSheet *sheet, const char *raw, guint *at);
gboolean bw_cell_find_input (const char *path, const BwSheet *sheet, const char *raw, guint *at);
gboolean bw_cell_lacks (const char *path, const BwSource *source, const BwInput *input);

G_END_DECLS
