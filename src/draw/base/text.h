/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <pango/pangocairo.h>

#include "ink.h"

G_BEGIN_DECLS

/* Text in the font of an ink: figures of equal width, units lighter than their numbers. */

PangoLayout *bw_ink_layout (const BwInk *ink);
void bw_layout_set_text (PangoLayout *layout, const BwInk *ink, const char *text, BwInkRole role);

char *bw_text_us (double time_s, char mark);
char *bw_text_share (double share, char mark);

G_END_DECLS
