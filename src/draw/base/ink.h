/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>

#include "core/base/severity.h"

G_BEGIN_DECLS

/* The one palette of screen, print and exports: quiet paper and graphite, one accent, the
 * conductors in their own colours. Every ink but BW_INK_RULE, BW_INK_PAPER and BW_INK_BAND may be
 * used for text: its contrast on BW_INK_PAPER and on BW_INK_BAND is at least 4.5:1 in every theme,
 * and at least 7:1 in the two of high contrast (WCAG 2.1, success criteria 1.4.3 and 1.4.6). */

typedef enum
{
  BW_THEME_LIGHT,
  BW_THEME_DARK,
  BW_THEME_PRINT, /* black on white */
  BW_THEME_CONTRAST_LIGHT,
  BW_THEME_CONTRAST_DARK,
  BW_N_THEMES
} BwTheme;

typedef enum
{
  BW_INK_PAPER,
  BW_INK_GRAPHITE,       /* numbers, text, the drawn thing itself */
  BW_INK_GRAPHITE_LIGHT, /* units, secondary text, dimension lines */
  BW_INK_RULE,           /* level lines and table rules; not for text */
  BW_INK_ACCENT,         /* the datum, what is selected */
  BW_INK_OK,
  BW_INK_TIGHT,
  BW_INK_CURABLE,
  BW_INK_FATAL,
  BW_INK_RED, /* conductors */
  BW_INK_GREEN,
  BW_INK_BLUE,
  BW_INK_SYNC, /* sync and luminance */
  BW_INK_BAND, /* fill behind an interval or a table's head */
  BW_N_INKS
} BwInkRole;

#define BW_INK_DEFAULT_FONT "Sans 10"
#define BW_INK_SCREEN_DPI 96.0
#define BW_INK_PAGE_DPI 72.0

/**
 * BwInk:
 * @theme: the set of colours
 * @font: (nullable): a Pango font description; %NULL for %BW_INK_DEFAULT_FONT
 * @dpi: user-space units to the inch: 96 on a screen, 72 on a page that counts in points;
 *   zero for 96
 *
 * What a drawing is drawn with. Borrowed by the functions that take it.
 */
typedef struct
{
  BwTheme theme;
  const char *font;
  double dpi;
} BwInk;

guint32 bw_ink_rgb (BwTheme theme, BwInkRole role);
char *bw_ink_css (BwTheme theme, BwInkRole role);
double bw_ink_contrast (guint32 rgb_a, guint32 rgb_b);
void bw_ink_set (cairo_t *cr, const BwInk *ink, BwInkRole role);
void bw_ink_set_alpha (cairo_t *cr, const BwInk *ink, BwInkRole role, double alpha);

BwInkRole bw_ink_for_severity (BwSeverity severity);
void bw_draw_severity_mark (cairo_t *cr, const BwInk *ink, BwSeverity severity, double x, double y,
                            double size);

G_END_DECLS
