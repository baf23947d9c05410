/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "report-private.h"

#include <cairo-pdf.h>
#include <glib/gi18n-lib.h>

#include "draw/base/export.h"
#include "paper.h"

#define MARGIN_SHARE 0.08 /* of the page's shorter side */
#define PDF_FONT "Sans 9"

/* Each raster that a source of the sheet uses, once. */
static void
collect_rasters (BwReport *report)
{
  const BwSheet *sheet = report->sheet;
  g_autoptr (GHashTable) seen = g_hash_table_new (NULL, NULL);

  for (guint i = 0; i < sheet->sources->len; i++)
    {
      const BwRaster *raster = bw_sheet_raster (sheet, report->catalogue,
                                                bw_sheet_source (sheet, i));
      if (raster != NULL && g_hash_table_add (seen, (gpointer) raster))
        g_ptr_array_add (report->rasters, (gpointer) raster);
    }
}

/**
 * bw_report_say:
 *
 * Adds a paragraph at the left edge.
 */
void
bw_report_say (BwReport *report, BwFlowStyle style, const char *text)
{
  bw_flow_add_text (report->flow, &(BwFlowText){ text, style, 0, BW_FLOW_NO_MARK, FALSE });
}

/**
 * bw_report_say_indented:
 *
 * Adds a paragraph that belongs to the one before it.
 */
void
bw_report_say_indented (BwReport *report, BwFlowStyle style, const char *text)
{
  double indent = 1.15 * bw_flow_line_height (report->flow);
  bw_flow_add_text (report->flow, &(BwFlowText){ text, style, indent, BW_FLOW_NO_MARK, FALSE });
}

/**
 * bw_report_new:
 * @sheet: borrowed, as is @catalogue; both must outlive the report and not change
 * @ink: copied; its dpi is taken as 72, since pages count in points
 * @page_width_pt: width of the whole paper, margins included, in points of 1/72 inch
 * @page_height_pt: its height, in the same points
 * @mark: the decimal mark
 *
 * Lays the report out.
 *
 * Returns: (transfer full): the report
 */
BwReport *
bw_report_new (const BwSheet *sheet, const BwCatalogue *catalogue, const BwInk *ink,
               double page_width_pt, double page_height_pt, char mark)
{
  g_return_val_if_fail (sheet != NULL && catalogue != NULL && ink != NULL, NULL);
  BwReport *report = g_new0 (BwReport, 1);

  report->sheet = sheet;
  report->catalogue = catalogue;
  report->font = g_strdup (ink->font);
  report->ink = (BwInk){ ink->theme, report->font, BW_INK_PAGE_DPI };
  report->page_width_pt = page_width_pt;
  report->page_height_pt = page_height_pt;
  report->margin_pt = MARGIN_SHARE * MIN (page_width_pt, page_height_pt);
  report->mark = mark;
  report->flow = bw_flow_new (&report->ink, page_width_pt - 2 * report->margin_pt,
                              page_height_pt - 2.4 * report->margin_pt);
  report->rasters = g_ptr_array_new ();

  collect_rasters (report);
  bw_report_add_head (report);
  bw_report_add_fit (report);
  bw_report_add_inputs (report);
  bw_report_add_sources (report);
  bw_report_add_timing (report);
  bw_report_add_figures_from (report);
  return report;
}

void
bw_report_free (BwReport *report)
{
  bw_flow_free (report->flow);
  g_ptr_array_unref (report->rasters);
  g_free (report->font);
  g_free (report);
}

/**
 * bw_report_pages:
 *
 * Returns: the number of pages, at least one
 */
guint
bw_report_pages (BwReport *report)
{
  g_return_val_if_fail (report != NULL, 0);
  return bw_flow_pages (report->flow);
}

static void
show_at_right (cairo_t *cr, PangoLayout *layout, double right, double y)
{
  int width;
  pango_layout_get_size (layout, &width, NULL);
  cairo_move_to (cr, right - (double) width / PANGO_SCALE, y);
  pango_cairo_show_layout (cr, layout);
}

static void
draw_foot (BwReport *report, cairo_t *cr, guint page)
{
  g_autofree char *number = g_strdup_printf (_ ("page %1$u of %2$u"), page + 1,
                                             bw_report_pages (report));
  double left = report->margin_pt, right = report->page_width_pt - report->margin_pt;
  double y = report->page_height_pt - 1.1 * report->margin_pt;
  PangoLayout *layout = bw_ink_layout (&report->ink);

  bw_ink_set (cr, &report->ink, BW_INK_RULE);
  cairo_set_line_width (cr, 0.5);
  cairo_move_to (cr, left, y);
  cairo_line_to (cr, right, y);
  cairo_stroke (cr);

  y += bw_flow_line_height (report->flow) / 3;
  bw_layout_set_text (layout, &report->ink, number, BW_INK_GRAPHITE_LIGHT);
  show_at_right (cr, layout, right, y);
  pango_layout_set_width (layout, (int) ((right - left) * 0.75 * PANGO_SCALE));
  pango_layout_set_ellipsize (layout, PANGO_ELLIPSIZE_END);
  pango_layout_set_single_paragraph_mode (layout, TRUE);
  bw_layout_set_text (layout, &report->ink, report->sheet->title, BW_INK_GRAPHITE_LIGHT);
  cairo_move_to (cr, left, y);
  pango_cairo_show_layout (cr, layout);
  g_object_unref (layout);
}

/**
 * bw_report_draw_page:
 * @cr: in points, its origin at the paper's top left corner
 * @page: from zero
 */
void
bw_report_draw_page (BwReport *report, cairo_t *cr, guint page)
{
  g_return_if_fail (report != NULL && cr != NULL);
  cairo_save (cr);
  bw_ink_set (cr, &report->ink, BW_INK_PAPER);
  cairo_rectangle (cr, 0, 0, report->page_width_pt, report->page_height_pt);
  cairo_fill (cr);
  draw_foot (report, cr, page);
  cairo_translate (cr, report->margin_pt, report->margin_pt);
  bw_flow_draw_page (report->flow, cr, page);
  cairo_restore (cr);
}

static void
draw_page (gpointer data, cairo_t *cr, guint page)
{
  bw_report_draw_page (data, cr, page);
}

/**
 * bw_report_bytes:
 * @name: what to call the file in errors
 *
 * Makes the PDF without writing it: black on white pages of the size of the locale, with its decimal
 * mark.
 *
 * Returns: (transfer full): what is in the file, or %NULL with @error in %BW_EXPORT_ERROR
 */
GBytes *
bw_report_bytes (const BwSheet *sheet, const BwCatalogue *catalogue, const char *name,
                 GError **error)
{
  g_return_val_if_fail (sheet != NULL && catalogue != NULL && name != NULL, NULL);
  const BwInk ink = { BW_THEME_PRINT, PDF_FONT, BW_INK_PAGE_DPI };
  const BwPaper paper = bw_paper_of_locale ();
  g_autoptr (BwReport) report = bw_report_new (sheet, catalogue, &ink, paper.width_pt, paper.height_pt,
                                               bw_quantity_locale_mark ());
  const BwExportPages pages = { .draw_page = draw_page,
                                .data = report,
                                .n_pages = bw_report_pages (report),
                                .width_pt = paper.width_pt,
                                .height_pt = paper.height_pt,
                                .title = report->sheet->title };
  return bw_export_pages_bytes (&pages, name, error);
}

/**
 * bw_report_to_pdf:
 * @path: where to; a symbolic link keeps pointing where it does
 *
 * Writes what bw_report_bytes() makes, whole or not at all.
 *
 * Returns: %FALSE with @error in %BW_EXPORT_ERROR that names the file; an old file is then as it
 * was
 */
gboolean
bw_report_to_pdf (const BwSheet *sheet, const BwCatalogue *catalogue, const char *path,
                  GError **error)
{
  g_return_val_if_fail (sheet != NULL && catalogue != NULL && path != NULL, FALSE);
  return bw_export_write (bw_report_bytes (sheet, catalogue, path, error), path, error);
}
