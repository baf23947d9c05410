/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/hookup/view.h"

G_BEGIN_DECLS

/**
 * BwHookupReport:
 *
 * The sheet that lies beside the soldering iron: the drawn plan, its steps, the parts, every
 * connection, the levels with their spread, and what to mind. It is set smaller, in steps, until it
 * fits on one page.
 */
typedef struct _BwHookupReport BwHookupReport;

BwHookupReport *bw_hookup_report_new (const BwHookupView *what, const char *title, const BwInk *ink,
                                      double page_width_pt, double page_height_pt);
void bw_hookup_report_free (BwHookupReport *report);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (BwHookupReport, bw_hookup_report_free)

guint bw_hookup_report_pages (BwHookupReport *report);
void bw_hookup_report_draw_page (BwHookupReport *report, cairo_t *cr, guint page);
GBytes *bw_hookup_report_bytes (const BwHookupView *what, const char *title, const char *name,
                                GError **error);
gboolean bw_hookup_report_to_pdf (const BwHookupView *what, const char *title, const char *path,
                                  GError **error);

G_END_DECLS
