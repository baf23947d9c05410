/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

const char *bw_caution (void);
const char *bw_caution_hook_up (void);
const char *bw_caution_scope (void);

G_END_DECLS
