/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "hookup-out.h"

#include "draw/base/export.h"
#include "draw/paper/hookup-report.h"

/* In pixels of 1/96 inch: a sheet of A4 across has 1123 by 794. */
#define WIDTH 1100
#define HEIGHT 640

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
  const BwHookupView view = { hookup, NULL, bw_quantity_locale_mark () };
  const BwInk ink = { BW_THEME_PRINT, NULL, BW_INK_SCREEN_DPI };
  g_autoptr (BwDrawing) drawing = bw_hookup_drawing (&view, WIDTH, HEIGHT, &ink);
  return bw_export_drawing (drawing, NULL, path, error);
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
