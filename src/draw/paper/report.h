/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/bench/sheet.h"
#include "draw/base/ink.h"

G_BEGIN_DECLS

/**
 * BwReport:
 *
 * The pages of a bench sheet for paper and PDF: the monitor with its inputs, what fits and what
 * does not and why, the sources, the timing of every raster, drawn and in figures, and where the
 * figures come from. It is laid out once; drawing a page then costs only that page.
 */
typedef struct _BwReport BwReport;

BwReport *bw_report_new (const BwSheet *sheet, const BwCatalogue *catalogue, const BwInk *ink,
                         double page_width_pt, double page_height_pt, char mark);
void bw_report_free (BwReport *report);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (BwReport, bw_report_free)

guint bw_report_pages (BwReport *report);
void bw_report_draw_page (BwReport *report, cairo_t *cr, guint page);
GBytes *bw_report_bytes (const BwSheet *sheet, const BwCatalogue *catalogue, const char *name,
                         GError **error);
gboolean bw_report_to_pdf (const BwSheet *sheet, const BwCatalogue *catalogue, const char *path,
                           GError **error);

G_END_DECLS
