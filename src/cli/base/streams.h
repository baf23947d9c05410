/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "options.h"

G_BEGIN_DECLS

/* Files as the command line names them: "-" is standard input or standard output. */

gboolean bw_cli_is_standard (const char *file);
const char *bw_cli_input_name (const char *file);
gboolean bw_cli_read (const char *file, gsize most, char **bytes, gsize *length, GError **error);
gboolean bw_cli_write (const char *target, GBytes *bytes);

/* Kinds of file, each named as on standard output: "-.svg"; ends in %NULL. */
extern const char *const bw_cli_drawings[];
extern const char *const bw_cli_pdf[];

char *bw_cli_target_fault (const char *target, const char *const *kinds,
                           const BwCliOptions *options);
const char *bw_cli_target_name (const char *target, const char *const *kinds);

G_END_DECLS
