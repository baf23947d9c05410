/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "cli.h"

G_BEGIN_DECLS

void bw_cli_guard_streams (void);
void bw_cli_speak_to_scripts (void);

gboolean bw_cli_is_unicode (void);
BwCliExit bw_cli_print (const char *text);
BwCliExit bw_cli_print_data (const char *text);

void bw_cli_fault (const char *says);
void bw_cli_complain (const char *format, ...) G_GNUC_PRINTF (1, 2);
BwCliExit bw_cli_wrong_usage (const char *command, const char *says);

G_END_DECLS
