/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* The file that a command writes. */

gboolean bw_target_is (const char *target, const char *source);

G_END_DECLS
