/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/base/ink.h"

#include <math.h>
#include <string.h>

#include "support.h"

/* Relative luminance and contrast ratio, written down a second time from their definitions in WCAG
 * 2.1 (W3C Recommendation, section 5, terms "relative luminance" and "contrast ratio"). */

static double
wcag_part (guint32 part)
{
  double c = part / 255.0;
  return c <= 0.03928 ? c / 12.92 : pow ((c + 0.055) / 1.055, 2.4);
}

static double
wcag_luminance (guint32 rgb)
{
  return 0.2126 * wcag_part (rgb >> 16 & 255) + 0.7152 * wcag_part (rgb >> 8 & 255)
         + 0.0722 * wcag_part (rgb & 255);
}

static double
wcag_contrast (guint32 a, guint32 b)
{
  double la = wcag_luminance (a), lb = wcag_luminance (b);
  return la > lb ? (la + 0.05) / (lb + 0.05) : (lb + 0.05) / (la + 0.05);
}

static gboolean
is_for_text (BwInkRole role)
{
  return role != BW_INK_PAPER && role != BW_INK_RULE && role != BW_INK_BAND;
}

/* WCAG 2.1: success criterion 1.4.3 asks for 4.5:1, 1.4.6 for 7:1. */
static void
test_text_contrast (void)
{
  for (guint theme = 0; theme < BW_N_THEMES; theme++)
    for (guint role = 0; role < BW_N_INKS; role++)
      {
        double least = theme >= BW_THEME_CONTRAST_LIGHT ? 7 : 4.5;
        guint32 ink = bw_ink_rgb (theme, role);
        double paper = wcag_contrast (ink, bw_ink_rgb (theme, BW_INK_PAPER));
        double band = wcag_contrast (ink, bw_ink_rgb (theme, BW_INK_BAND));
        if (is_for_text (role) && (paper < least || band < least))
          g_test_fail_printf ("theme %u, ink %u: %.2f:1 on paper, %.2f:1 on the band", theme, role,
                              paper, band);
      }
}

static void
test_contrast_formula (void)
{
  g_assert_cmpfloat_with_epsilon (bw_ink_contrast (0x000000, 0xffffff), 21, 1e-9);
  g_assert_cmpfloat_with_epsilon (bw_ink_contrast (0x123456, 0x123456), 1, 1e-9);
  for (guint theme = 0; theme < BW_N_THEMES; theme++)
    for (guint role = 0; role < BW_N_INKS; role++)
      {
        guint32 ink = bw_ink_rgb (theme, role), paper = bw_ink_rgb (theme, BW_INK_PAPER);
        g_assert_cmpfloat_with_epsilon (bw_ink_contrast (ink, paper), wcag_contrast (ink, paper),
                                        1e-9);
      }
}

static void
test_print_is_black_on_white (void)
{
  g_assert_cmphex (bw_ink_rgb (BW_THEME_PRINT, BW_INK_PAPER), ==, 0xffffff);
  g_assert_cmphex (bw_ink_rgb (BW_THEME_PRINT, BW_INK_GRAPHITE), ==, 0x000000);
  g_autofree char *css = bw_ink_css (BW_THEME_PRINT, BW_INK_PAPER);
  g_assert_cmpstr (css, ==, "#ffffff");
}

/* Units and secondary text are lighter than numbers: less contrast with the paper. */
static void
test_units_are_lighter (void)
{
  for (guint theme = 0; theme < BW_N_THEMES; theme++)
    {
      guint32 paper = bw_ink_rgb (theme, BW_INK_PAPER);
      g_assert_cmpfloat (wcag_contrast (bw_ink_rgb (theme, BW_INK_GRAPHITE_LIGHT), paper), <,
                         wcag_contrast (bw_ink_rgb (theme, BW_INK_GRAPHITE), paper));
    }
}

/* No two severities have the same sign, on screen or in a terminal, or the same colour. */
static void
test_signs (void)
{
  for (guint a = 0; a < BW_N_SEVERITIES; a++)
    {
      const char *sign = bw_severity_sign (a), *plain = bw_severity_plain_sign (a);
      g_assert_cmpint (g_utf8_strlen (sign, -1), ==, 1);
      g_assert_cmpuint (strlen (plain), ==, 1);
      g_assert_true (g_str_is_ascii (plain));
      for (guint b = 0; b < a; b++)
        {
          g_assert_cmpstr (sign, !=, bw_severity_sign (b));
          g_assert_cmpstr (plain, !=, bw_severity_plain_sign (b));
          g_assert_cmphex (bw_ink_rgb (BW_THEME_LIGHT, bw_ink_for_severity (a)), !=,
                           bw_ink_rgb (BW_THEME_LIGHT, bw_ink_for_severity (b)));
        }
    }
}

#define MARK_SIDE 32

/* The shape alone, without its colour. */
static cairo_surface_t *
draw_mark (BwSeverity severity)
{
  const BwInk ink = { BW_THEME_LIGHT, NULL, 0 };
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_A8, MARK_SIDE, MARK_SIDE);
  cairo_t *cr = cairo_create (surface);
  bw_draw_severity_mark (cr, &ink, severity, 0, 0, MARK_SIDE);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  return surface;
}

static double
difference (cairo_surface_t *a, cairo_surface_t *b)
{
  const guchar *p = cairo_image_surface_get_data (a), *q = cairo_image_surface_get_data (b);
  int stride = cairo_image_surface_get_stride (a);
  double sum = 0;
  for (int y = 0; y < MARK_SIDE; y++)
    for (int x = 0; x < MARK_SIDE; x++)
      sum += abs (p[y * stride + x] - q[y * stride + x]) / 255.0;
  return sum / (MARK_SIDE * MARK_SIDE);
}

/* Every two marks differ in at least a fifth of their square, so shape alone tells them apart. */
static void
test_marks_differ (void)
{
  cairo_surface_t *marks[BW_N_SEVERITIES];
  for (guint i = 0; i < BW_N_SEVERITIES; i++)
    marks[i] = draw_mark (i);
  for (guint a = 0; a < BW_N_SEVERITIES; a++)
    for (guint b = 0; b < a; b++)
      g_assert_cmpfloat (difference (marks[a], marks[b]), >, 0.2);
  for (guint i = 0; i < BW_N_SEVERITIES; i++)
    cairo_surface_destroy (marks[i]);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/draw/ink/text-contrast", test_text_contrast);
  g_test_add_func ("/draw/ink/contrast-formula", test_contrast_formula);
  g_test_add_func ("/draw/ink/print", test_print_is_black_on_white);
  g_test_add_func ("/draw/ink/units-are-lighter", test_units_are_lighter);
  g_test_add_func ("/draw/ink/signs", test_signs);
  g_test_add_func ("/draw/ink/marks-differ", test_marks_differ);
  return g_test_run ();
}
