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

GVariant *bw_session_new (GtkApplication *application);
void bw_session_save (GSettings *settings, GVariant *session);
guint bw_session_restore (GSettings *settings, BwSessionOpenFunc open, gpointer user_data);

G_END_DECLS
