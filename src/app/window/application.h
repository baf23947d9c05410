/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "window.h"

G_BEGIN_DECLS

#define BW_TYPE_APPLICATION (bw_application_get_type ())
G_DECLARE_FINAL_TYPE (BwApplication, bw_application, BW, APPLICATION, GtkApplication)

BwApplication *bw_application_new (void);
BwWindow *bw_application_new_window (BwApplication *self);

G_END_DECLS
