/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/result/result.h"
#include "options.h"

G_BEGIN_DECLS

/* The one way in which a command prints what it has to say: compute, build a result, show it. */

BwResult *bw_cli_result_new (const BwCliOptions *options);
BwCliExit bw_cli_show (const BwCliOptions *options, BwResult *result);

G_END_DECLS
