/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "hookup-out.h"

#include "draw/base/export.h"
#include "draw/paper/hookup-report.h"

/* In pixels of 1/96 inch: a sheet of A4 across has 1123 by 794. */
#define WIDTH 1100
#define HEIGHT 640

static void
draw (cairo_t *cr, double width, double height, gpointer user_data)
{
  const BwInk ink = { BW_THEME_PRINT, NULL, BW_INK_SCREEN_DPI };
  g_autoptr (BwHookupDrawing) drawing = bw_hookup_drawing_new (width, height, &ink, user_data);

  bw_ink_set (cr, &ink, BW_INK_PAPER);
  cairo_paint (cr);
  bw_hookup_drawing_draw (drawing, cr);
}

/**
 * bw_hookup_write_drawing:
 * @path: ends in .svg, .pdf or .png
 *
 * Draws the plan into a file, which is written whole or not at all.
 *
 * Returns: %FALSE with @error in %BW_EXPORT_ERROR
 */
gboolean
bw_hookup_write_drawing (const BwHookup *hookup, const char *path, GError **error)
{
  BwHookupView view = { hookup, NULL, bw_quantity_locale_mark () };
  g_autofree char *name = bw_hookup_view_name (&view);
  g_autofree char *words = bw_hookup_view_describe (&view);
  const BwExport what = {
    .draw = draw,
    .user_data = &view,
    .width = WIDTH,
    .height = HEIGHT,
    .title = name,
    .description = words,
  };
  return bw_export_drawing (&what, path, error);
}

/**
 * bw_hookup_write_sheet:
 * @title: of the bench sheet
 *
 * Writes the sheet of the plan as a PDF, whole or not at all.
 *
 * Returns: %FALSE with @error in %BW_EXPORT_ERROR
 */
gboolean
bw_hookup_write_sheet (const BwHookup *hookup, const char *title, const char *path, GError **error)
{
  const BwHookupView view = { hookup, NULL, bw_quantity_locale_mark () };
  return bw_hookup_report_to_pdf (&view, title, path, error);
}
