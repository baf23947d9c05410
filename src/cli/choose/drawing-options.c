/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing-options.h"

#include <glib/gi18n-lib.h>

#include "cli/base/arguments.h"

static const BwKind themes[BW_N_THEMES] = {
  [BW_THEME_LIGHT] = { "light", N_ ("light") },
  [BW_THEME_DARK] = { "dark", N_ ("dark") },
  [BW_THEME_PRINT] = { "print", N_ ("print") },
};
static const BwKindTable theme_words = { BW_THEME_PRINT + 1, themes };

/**
 * bw_drawing_options_clear:
 *
 * Frees what @own owns.
 */
void
bw_drawing_options_clear (BwDrawingOptions *own)
{
  g_clear_pointer (&own->target, g_free);
  g_clear_pointer (&own->theme, g_free);
  g_clear_pointer (&own->size, g_free);
}

/**
 * bw_drawing_options_fault:
 * @kinds: of file that it can be
 * @theme: (out): the BwTheme of --theme, or that for printing
 *
 * Returns: (transfer full) (nullable): what is wrong with the options, if anything
 */
char *
bw_drawing_options_fault (const BwDrawingOptions *own, const char *const *kinds,
                          const BwCliOptions *options, guint *theme)
{
  *theme = BW_THEME_PRINT;
  if (own->target == NULL && (own->theme != NULL || own->size != NULL))
    return g_strdup_printf (_ ("%s goes with -o only"), own->theme != NULL ? "--theme" : "--size");
  char *fault = bw_argument_word ("--theme", &theme_words, own->theme, theme);
  if (fault == NULL && own->target != NULL)
    fault = bw_cli_target_fault (own->target, kinds, options);
  return fault;
}

/**
 * bw_drawing_options_page:
 * @page: (inout): its size is set where --size was given
 *
 * Returns: %FALSE, having said so in one line, if --size cannot be read
 */
gboolean
bw_drawing_options_page (const BwDrawingOptions *own, BwDrawingPage *page)
{
  return own->size == NULL || bw_argument_size ("--size", own->size, &page->width, &page->height);
}
