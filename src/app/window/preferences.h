/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define BW_TYPE_PREFERENCES (bw_preferences_get_type ())
G_DECLARE_FINAL_TYPE (BwPreferences, bw_preferences, BW, PREFERENCES, GtkWindow)

GtkWidget *bw_preferences_new (GtkWindow *parent, GSettings *settings);

G_END_DECLS
