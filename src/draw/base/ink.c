/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ink.h"

#include <math.h>

/* 0xRRGGBB, sRGB. */
static const guint32 palette[BW_N_THEMES][BW_N_INKS] = {
  [BW_THEME_LIGHT] = {
    [BW_INK_PAPER] = 0xfaf8f3,
    [BW_INK_GRAPHITE] = 0x2b3033,
    [BW_INK_GRAPHITE_LIGHT] = 0x5c6367,
    [BW_INK_RULE] = 0xcdc7ba,
    [BW_INK_ACCENT] = 0xb0431a,
    [BW_INK_OK] = 0x2a6b40,
    [BW_INK_TIGHT] = 0x7d5a00,
    [BW_INK_CURABLE] = 0x5b4a9e,
    [BW_INK_FATAL] = 0xab1733,
    [BW_INK_RED] = 0xc0201f,
    [BW_INK_GREEN] = 0x18702e,
    [BW_INK_BLUE] = 0x1f55c4,
    [BW_INK_SYNC] = 0x4b5a66,
    [BW_INK_BAND] = 0xf3e9dc,
  },
  [BW_THEME_DARK] = {
    [BW_INK_PAPER] = 0x1f2326,
    [BW_INK_GRAPHITE] = 0xe8e5de,
    [BW_INK_GRAPHITE_LIGHT] = 0xa9aeae,
    [BW_INK_RULE] = 0x4b5256,
    [BW_INK_ACCENT] = 0xf39365,
    [BW_INK_OK] = 0x7cc68e,
    [BW_INK_TIGHT] = 0xdcb54c,
    [BW_INK_CURABLE] = 0xb9a4ec,
    [BW_INK_FATAL] = 0xf58296,
    [BW_INK_RED] = 0xff7d74,
    [BW_INK_GREEN] = 0x6ccf7c,
    [BW_INK_BLUE] = 0x82b2ff,
    [BW_INK_SYNC] = 0xb9c7d2,
    [BW_INK_BAND] = 0x332d29,
  },
  [BW_THEME_PRINT] = {
    [BW_INK_PAPER] = 0xffffff,
    [BW_INK_GRAPHITE] = 0x000000,
    [BW_INK_GRAPHITE_LIGHT] = 0x4a4a4a,
    [BW_INK_RULE] = 0xb4b4b4,
    [BW_INK_ACCENT] = 0x9c3a14,
    [BW_INK_OK] = 0x1c5c33,
    [BW_INK_TIGHT] = 0x6b4c00,
    [BW_INK_CURABLE] = 0x4a3a8c,
    [BW_INK_FATAL] = 0x98102a,
    [BW_INK_RED] = 0xb01414,
    [BW_INK_GREEN] = 0x146a2a,
    [BW_INK_BLUE] = 0x1846b0,
    [BW_INK_SYNC] = 0x3c4a55,
    [BW_INK_BAND] = 0xf1f1f1,
  },
  [BW_THEME_CONTRAST_LIGHT] = {
    [BW_INK_PAPER] = 0xffffff,
    [BW_INK_GRAPHITE] = 0x000000,
    [BW_INK_GRAPHITE_LIGHT] = 0x333333,
    [BW_INK_RULE] = 0x595959,
    [BW_INK_ACCENT] = 0x852c00,
    [BW_INK_OK] = 0x00501e,
    [BW_INK_TIGHT] = 0x5a3e00,
    [BW_INK_CURABLE] = 0x3c2a86,
    [BW_INK_FATAL] = 0x8a0020,
    [BW_INK_RED] = 0x9a0000,
    [BW_INK_GREEN] = 0x005a14,
    [BW_INK_BLUE] = 0x0032a0,
    [BW_INK_SYNC] = 0x26343f,
    [BW_INK_BAND] = 0xefefef,
  },
  [BW_THEME_CONTRAST_DARK] = {
    [BW_INK_PAPER] = 0x000000,
    [BW_INK_GRAPHITE] = 0xffffff,
    [BW_INK_GRAPHITE_LIGHT] = 0xd9d9d9,
    [BW_INK_RULE] = 0xa6a6a6,
    [BW_INK_ACCENT] = 0xffb08a,
    [BW_INK_OK] = 0x8ff0a8,
    [BW_INK_TIGHT] = 0xffd966,
    [BW_INK_CURABLE] = 0xd2c2ff,
    [BW_INK_FATAL] = 0xffa3b4,
    [BW_INK_RED] = 0xff9c94,
    [BW_INK_GREEN] = 0x8ef09c,
    [BW_INK_BLUE] = 0xa6c8ff,
    [BW_INK_SYNC] = 0xd4e2ee,
    [BW_INK_BAND] = 0x262626,
  },
};

/**
 * bw_ink_rgb:
 *
 * Returns: the colour of @role as 0xRRGGBB, sRGB
 */
guint32
bw_ink_rgb (BwTheme theme, BwInkRole role)
{
  g_return_val_if_fail (theme < BW_N_THEMES && role < BW_N_INKS, 0);
  return palette[theme][role];
}

/**
 * bw_ink_css:
 *
 * Returns: (transfer full): the colour of @role as "#rrggbb"
 */
char *
bw_ink_css (BwTheme theme, BwInkRole role)
{
  return g_strdup_printf ("#%06x", bw_ink_rgb (theme, role));
}

static double
channel (guint32 rgb, int shift)
{
  return ((rgb >> shift) & 0xff) / 255.0;
}

static double
linear (double value)
{
  return value <= 0.03928 ? value / 12.92 : pow ((value + 0.055) / 1.055, 2.4);
}

static double
luminance (guint32 rgb)
{
  return 0.2126 * linear (channel (rgb, 16)) + 0.7152 * linear (channel (rgb, 8))
         + 0.0722 * linear (channel (rgb, 0));
}

/**
 * bw_ink_contrast:
 * @rgb_a: one colour, 0xRRGGBB in sRGB
 * @rgb_b: the other; the order does not matter
 *
 * Contrast ratio by the definitions of "contrast ratio" and "relative luminance" of WCAG 2.1.
 *
 * Returns: 1 (same) to 21 (black and white)
 */
double
bw_ink_contrast (guint32 rgb_a, guint32 rgb_b)
{
  double a = luminance (rgb_a), b = luminance (rgb_b);
  return (MAX (a, b) + 0.05) / (MIN (a, b) + 0.05);
}

/**
 * bw_ink_set:
 *
 * Makes the colour of @role the source of @cr.
 */
void
bw_ink_set (cairo_t *cr, const BwInk *ink, BwInkRole role)
{
  g_return_if_fail (cr != NULL && ink != NULL);
  bw_ink_set_alpha (cr, ink, role, 1);
}

/**
 * bw_ink_set_alpha:
 * @alpha: 0 (clear) to 1 (opaque)
 *
 * Like bw_ink_set(), for a wash of colour.
 */
void
bw_ink_set_alpha (cairo_t *cr, const BwInk *ink, BwInkRole role, double alpha)
{
  g_return_if_fail (cr != NULL && ink != NULL);
  guint32 rgb = bw_ink_rgb (ink->theme, role);
  cairo_set_source_rgba (cr, channel (rgb, 16), channel (rgb, 8), channel (rgb, 0), alpha);
}

/**
 * bw_ink_for_severity:
 *
 * Returns: the colour that goes with the mark and the word of @severity
 */
BwInkRole
bw_ink_for_severity (BwSeverity severity)
{
  static const BwInkRole roles[BW_N_SEVERITIES] = {
    [BW_SEVERITY_OK] = BW_INK_OK,
    [BW_SEVERITY_UNJUDGED] = BW_INK_GRAPHITE,
    [BW_SEVERITY_TIGHT] = BW_INK_TIGHT,
    [BW_SEVERITY_CURABLE] = BW_INK_CURABLE,
    [BW_SEVERITY_FATAL] = BW_INK_FATAL,
  };
  g_return_val_if_fail (severity < BW_N_SEVERITIES, BW_INK_GRAPHITE);
  return roles[severity];
}

/* The marks, drawn in a square of side 1. */

static void
draw_tick (cairo_t *cr)
{
  cairo_move_to (cr, 0.1, 0.55);
  cairo_line_to (cr, 0.38, 0.83);
  cairo_line_to (cr, 0.92, 0.2);
  cairo_stroke (cr);
}

/* A ring of dashes with a question mark in it: nothing is decided. */
static void
draw_open_question (cairo_t *cr)
{
  const double sixth = G_PI / 3;
  for (int i = 0; i < 6; i++)
    {
      cairo_new_sub_path (cr);
      cairo_arc (cr, 0.5, 0.5, 0.43, i * sixth, (i + 0.6) * sixth);
    }
  cairo_stroke (cr);
  cairo_arc (cr, 0.5, 0.38, 0.15, G_PI, 2.4 * G_PI);
  cairo_line_to (cr, 0.5, 0.62);
  cairo_stroke (cr);
  cairo_arc (cr, 0.5, 0.75, 0.07, 0, 2 * G_PI);
  cairo_fill (cr);
}

static void
draw_ring_with_wave (cairo_t *cr)
{
  cairo_arc (cr, 0.5, 0.5, 0.42, 0, 2 * G_PI);
  cairo_stroke (cr);
  cairo_move_to (cr, 0.26, 0.54);
  cairo_curve_to (cr, 0.36, 0.34, 0.44, 0.4, 0.5, 0.5);
  cairo_curve_to (cr, 0.56, 0.6, 0.64, 0.66, 0.74, 0.46);
  cairo_stroke (cr);
}

static void
draw_plus_in_square (cairo_t *cr)
{
  cairo_rectangle (cr, 0.08, 0.08, 0.84, 0.84);
  cairo_stroke (cr);
  cairo_move_to (cr, 0.5, 0.27);
  cairo_line_to (cr, 0.5, 0.73);
  cairo_move_to (cr, 0.27, 0.5);
  cairo_line_to (cr, 0.73, 0.5);
  cairo_stroke (cr);
}

static void
draw_barred_disc (cairo_t *cr)
{
  cairo_set_fill_rule (cr, CAIRO_FILL_RULE_EVEN_ODD);
  cairo_arc (cr, 0.5, 0.5, 0.48, 0, 2 * G_PI);
  cairo_close_path (cr);
  cairo_rectangle (cr, 0.2, 0.41, 0.6, 0.18);
  cairo_fill (cr);
}

/**
 * bw_draw_severity_mark:
 * @x: left edge of the mark's square
 * @y: top edge
 * @size: side of the square, in user-space units
 *
 * Draws the mark of @severity in its colour: a tick, a question in a broken ring, a ring with a wave, a plus in a square, a
 * filled disc with a bar cut out.
 */
void
bw_draw_severity_mark (cairo_t *cr, const BwInk *ink, BwSeverity severity, double x, double y,
                       double size)
{
  static void (*const marks[BW_N_SEVERITIES]) (cairo_t *) = {
    [BW_SEVERITY_OK] = draw_tick,
    [BW_SEVERITY_UNJUDGED] = draw_open_question,
    [BW_SEVERITY_TIGHT] = draw_ring_with_wave,
    [BW_SEVERITY_CURABLE] = draw_plus_in_square,
    [BW_SEVERITY_FATAL] = draw_barred_disc,
  };
  g_return_if_fail (severity < BW_N_SEVERITIES);

  cairo_save (cr);
  cairo_translate (cr, x, y);
  cairo_scale (cr, size, size);
  cairo_set_line_width (cr, severity == BW_SEVERITY_OK ? 0.16 : 0.12);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_MITER);
  cairo_new_path (cr);
  bw_ink_set (cr, ink, bw_ink_for_severity (severity));
  marks[severity](cr);
  cairo_restore (cr);
}
