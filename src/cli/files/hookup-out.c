/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "hookup-out.h"

#include "draw/base/export.h"
#include "draw/paper/hookup-report.h"

/* In pixels of 1/96 inch: a sheet of A4 across has 1123 by 794. */
#define WIDTH 1100
#define HEIGHT 640

/**
 * bw_hookup_drawing_bytes:
 * @page: where its size is zero, what suits the plan
 * @name: of the file; ends in .svg, .pdf or .png
 *
 * Returns: (transfer full): a drawing of the plan as such a file, or %NULL with @error in
 *   %BW_EXPORT_ERROR
 */
GBytes *
bw_hookup_drawing_bytes (const BwHookup *hookup, const BwDrawingPage *page, const char *name,
                         GError **error)
{
  const BwHookupView view = { hookup, NULL, bw_quantity_locale_mark () };
  const BwInk ink = { page->theme, NULL, BW_INK_SCREEN_DPI };
  g_autoptr (BwDrawing) drawing = bw_hookup_drawing (&view, page->width > 0 ? page->width : WIDTH,
                                                     page->height > 0 ? page->height : HEIGHT,
                                                     &ink);
  return bw_export_drawing_bytes (drawing, NULL, name, error);
}

/**
 * bw_hookup_sheet_bytes:
 * @title: of the bench sheet
 * @name: of the file, for errors
 *
 * Returns: (transfer full): the sheet of the plan as a PDF, or %NULL with @error in %BW_EXPORT_ERROR
 */
GBytes *
bw_hookup_sheet_bytes (const BwHookup *hookup, const char *title, const char *name, GError **error)
{
  const BwHookupView view = { hookup, NULL, bw_quantity_locale_mark () };
  return bw_hookup_report_bytes (&view, title, name, error);
}
