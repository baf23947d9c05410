/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Text in a terminal: its width in columns, padding and wrapping. */

#define BW_CLI_COLUMNS 80

char *bw_words_one_line (const char *text);
char *bw_words_utf8 (const char *raw);
char *bw_words_fixed (double value, int decimals);

int bw_words_width (const char *text);
GPtrArray *bw_words_wrap (const char *text, int columns);
void bw_words_append_padded (GString *to, const char *text, int columns, gboolean right);
void bw_words_append_wrapped (GString *to, const char *first, int indent, const char *text);

G_END_DECLS
