/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <pango/pangocairo.h>

#include "ink.h"

G_BEGIN_DECLS

/* Text in the font of an ink: figures of equal width, units lighter than their numbers. */

PangoLayout *bw_ink_layout (const BwInk *ink);
void bw_layout_set_text (PangoLayout *layout, const BwInk *ink, const char *text, BwInkRole role);

static inline const char *
bw_or_empty (const char *text)
{
  return text != NULL ? text : "";
}

char *bw_text_us (double time_s, char mark);
char *bw_text_length (double time_s, char mark);
char *bw_text_caption (const char *name, const char *shows, const char *source);
char *bw_text_share (double share, char mark);

/* What a cursor reads: a true minus */
char *bw_text_number (double value, int decimals, char mark);
char *bw_text_time (double time_s, char mark);
char *bw_text_span (double span_s, char mark);
char *bw_text_lines (double lines, char mark);
char *bw_text_volts (double volts, char mark);
char *bw_text_level (double volts, double volts_per_ire, char mark);

G_END_DECLS
