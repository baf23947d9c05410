/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "hookup-report-private.h"

#include <cairo-pdf.h>
#include <glib/gi18n-lib.h>

#include "draw/base/export.h"
#include "paper.h"

#define MARGIN_SHARE 0.07 /* of the page's shorter side */
#define PDF_FONT "Sans"

/* Tried in this order until everything is on one page. What does not fit with the last, whose letters are
 * as small as a bench can read, takes two pages of the size of SIZE_OF_TWO. */
static const struct
{
  double font_pt;
  double drawing; /* share of the page's height */
} sizes[] = {
  { 9, 0.42 },   { 9, 0.36 }, { 8.5, 0.36 }, { 8.5, 0.31 }, { 8, 0.33 }, { 8, 0.28 },
  { 7.5, 0.29 }, { 7, 0.28 }, { 6.5, 0.26 }, { 6.5, 0.21 },
};
#define SIZE_OF_TWO 6

static void
lay_out (BwHookupReport *report, guint size)
{
  char number[G_ASCII_DTOSTR_BUF_SIZE];
  g_clear_pointer (&report->flow, bw_flow_free);
  g_free (report->font);
  g_ascii_formatd (number, sizeof number, "%g", sizes[size].font_pt);
  report->font = g_strdup_printf ("%s %s", report->family, number);
  report->ink.font = report->font;
  report->drawing_pt = sizes[size].drawing * report->page_height_pt;
  report->flow = bw_flow_new (&report->ink, report->page_width_pt - 2 * report->margin_pt,
                              report->page_height_pt - 2.2 * report->margin_pt);
  bw_hookup_report_fill (report);
}

static char *
font_family (const char *font)
{
  PangoFontDescription *description = pango_font_description_from_string (font != NULL ? font
                                                                                       : PDF_FONT);
  const char *family = pango_font_description_get_family (description);
  char *copy = g_strdup (family != NULL ? family : PDF_FONT);
  pango_font_description_free (description);
  return copy;
}

/**
 * bw_hookup_report_new:
 * @what: copied; what it points to must outlive the report
 * @title: of the bench sheet; copied
 * @ink: its theme and the family of its font are used
 * @page_width_pt: width of the whole paper, margins included, in points of 1/72 inch
 * @page_height_pt: its height, in the same points
 *
 * Lays the sheet out.
 *
 * Returns: (transfer full): the report
 */
BwHookupReport *
bw_hookup_report_new (const BwHookupView *what, const char *title, const BwInk *ink,
                      double page_width_pt, double page_height_pt)
{
  g_return_val_if_fail (what != NULL && title != NULL && ink != NULL, NULL);
  BwHookupReport *report = g_new0 (BwHookupReport, 1);

  report->what = *what;
  report->title = g_strdup (title);
  report->family = font_family (ink->font);
  report->ink = (BwInk){ ink->theme, NULL, BW_INK_PAGE_DPI };
  report->page_width_pt = page_width_pt;
  report->page_height_pt = page_height_pt;
  report->margin_pt = MARGIN_SHARE * MIN (page_width_pt, page_height_pt);
  for (guint size = 0; size < G_N_ELEMENTS (sizes); size++)
    {
      lay_out (report, size);
      if (bw_flow_pages (report->flow) == 1)
        return report;
    }
  lay_out (report, SIZE_OF_TWO);
  return report;
}

void
bw_hookup_report_free (BwHookupReport *report)
{
  bw_flow_free (report->flow);
  g_free (report->title);
  g_free (report->family);
  g_free (report->font);
  g_free (report);
}

/**
 * bw_hookup_report_pages:
 *
 * Returns: the number of pages: one, or two where the smallest letters are too large for one
 */
guint
bw_hookup_report_pages (BwHookupReport *report)
{
  g_return_val_if_fail (report != NULL, 0);
  return bw_flow_pages (report->flow);
}

static void
draw_foot (BwHookupReport *report, cairo_t *cr)
{
  double left = report->margin_pt, right = report->page_width_pt - report->margin_pt;
  double y = report->page_height_pt - 1.1 * report->margin_pt;
  PangoLayout *layout = bw_ink_layout (&report->ink);

  bw_ink_set (cr, &report->ink, BW_INK_RULE);
  cairo_set_line_width (cr, 0.5);
  cairo_move_to (cr, left, y);
  cairo_line_to (cr, right, y);
  cairo_stroke (cr);
  pango_layout_set_width (layout, (int) ((right - left) * PANGO_SCALE));
  pango_layout_set_ellipsize (layout, PANGO_ELLIPSIZE_END);
  pango_layout_set_single_paragraph_mode (layout, TRUE);
  bw_layout_set_text (layout, &report->ink, report->title, BW_INK_GRAPHITE_LIGHT);
  cairo_move_to (cr, left, y + bw_flow_line_height (report->flow) / 3);
  pango_cairo_show_layout (cr, layout);
  g_object_unref (layout);
}

/**
 * bw_hookup_report_draw_page:
 * @cr: in points, its origin at the paper's top left corner
 * @page: from zero
 */
void
bw_hookup_report_draw_page (BwHookupReport *report, cairo_t *cr, guint page)
{
  g_return_if_fail (report != NULL && cr != NULL);
  cairo_save (cr);
  bw_ink_set (cr, &report->ink, BW_INK_PAPER);
  cairo_rectangle (cr, 0, 0, report->page_width_pt, report->page_height_pt);
  cairo_fill (cr);
  draw_foot (report, cr);
  cairo_translate (cr, report->margin_pt, report->margin_pt);
  bw_flow_draw_page (report->flow, cr, page);
  cairo_restore (cr);
}

static void
draw_page (gpointer data, cairo_t *cr, guint page)
{
  bw_hookup_report_draw_page (data, cr, page);
}

/**
 * bw_hookup_report_bytes:
 * @title: of the bench sheet
 * @name: what to call the file in errors
 *
 * Makes the PDF without writing it: black on white, on a page of the size of the locale.
 *
 * Returns: (transfer full): what is in the file, or %NULL with @error in %BW_EXPORT_ERROR
 */
GBytes *
bw_hookup_report_bytes (const BwHookupView *what, const char *title, const char *name,
                        GError **error)
{
  g_return_val_if_fail (what != NULL && title != NULL && name != NULL, NULL);
  const BwInk ink = { BW_THEME_PRINT, PDF_FONT, BW_INK_PAGE_DPI };
  const BwPaper paper = bw_paper_of_locale ();
  g_autoptr (BwHookupReport) report = bw_hookup_report_new (what, title, &ink, paper.width_pt,
                                                            paper.height_pt);
  const BwExportPages pages = { .draw_page = draw_page,
                                .data = report,
                                .n_pages = bw_hookup_report_pages (report),
                                .width_pt = paper.width_pt,
                                .height_pt = paper.height_pt,
                                .title = report->title };
  return bw_export_pages_bytes (&pages, name, error);
}

/**
 * bw_hookup_report_to_pdf:
 * @title: of the bench sheet
 * @path: where to; a symbolic link keeps pointing where it does
 *
 * Writes what bw_hookup_report_bytes() makes, whole or not at all.
 *
 * Returns: %FALSE with @error in %BW_EXPORT_ERROR that names the file; an old file is then as it
 * was
 */
gboolean
bw_hookup_report_to_pdf (const BwHookupView *what, const char *title, const char *path,
                         GError **error)
{
  g_return_val_if_fail (what != NULL && title != NULL && path != NULL, FALSE);
  return bw_export_write (bw_hookup_report_bytes (what, title, path, error), path, error);
}
