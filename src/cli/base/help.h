/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "cli.h"

G_BEGIN_DECLS

/* The help for scripts, as JSON. The manual and the completion of the shell are made of it. */

/* What "format" says in each JSON object of this program: one more where a key that was there before
 * is gone, or means something else. A key that is new changes nothing. */
#define BW_CLI_JSON_FORMAT 1

BwCliExit bw_cli_help_of_all (const BwCliCommand *commands, gsize n);
BwCliExit bw_cli_help_of_command (const BwCliCommand *command, const GOptionEntry *const *tables);

G_END_DECLS
