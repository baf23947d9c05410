/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "draw/base/ink.h"

G_BEGIN_DECLS

#define BW_TYPE_COLOUR_SCHEME (bw_colour_scheme_get_type ())
G_DECLARE_FINAL_TYPE (BwColourScheme, bw_colour_scheme, BW, COLOUR_SCHEME, GObject)

BwColourScheme *bw_colour_scheme_new (GSettings *settings);

BwTheme bw_theme_of (GtkSettings *settings);
char *bw_palette_css (BwTheme theme);

G_END_DECLS
