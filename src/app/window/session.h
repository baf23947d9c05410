/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "window.h"

G_BEGIN_DECLS

/**
 * BwSessionOpenFunc:
 *
 * Returns: (transfer none) (nullable): the window in which @file is open now
 */
typedef BwWindow *(*BwSessionOpenFunc) (gpointer user_data, GFile *file);

void bw_session_save (GtkApplication *application, GSettings *settings);
guint bw_session_restore (GSettings *settings, BwSessionOpenFunc open, gpointer user_data);

G_END_DECLS
