/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Text from outside is shown as text and does nothing else. What a person types is refused if it
 * holds a harmful character (bw_char_is_refused()); what an older file holds is kept as it is and
 * made harmless wherever it is shown (bw_text_harmless()). */

gboolean bw_char_is_refused (gunichar c);
gboolean bw_char_is_harmful (gunichar c);
char *bw_text_harmless (const char *text);
char *bw_text_harmless_lines (const char *text);

G_END_DECLS
