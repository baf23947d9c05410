/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "hookup-print.h"

#include <glib/gi18n-lib.h>

#include "app/hookup/page.h"
#include "draw/paper/hookup-report.h"
#include "print.h"

/* Prints the sheet of the plan that is shown. The plan is held: the bench sheet may be edited while
 * it prints. */

typedef struct
{
  BwHookupPage *page; /* for the kinds of leads, which it owns */
  BwHookupHold *hold;
  BwLeadCase lead;
  char *title;
  BwHookupReport *report; /* nullable: laid out when the page size is known */
} Job;

static void
job_free (gpointer data)
{
  Job *job = data;
  g_clear_pointer (&job->report, bw_hookup_report_free);
  bw_hookup_hold_unref (job->hold);
  g_object_unref (job->page);
  g_free (job->title);
  g_free (job);
}

static void
on_begin (GtkPrintOperation *operation, GtkPrintContext *context, gpointer user_data)
{
  Job *job = user_data;
  const BwInk ink = { .theme = BW_THEME_PRINT, .dpi = BW_INK_PAGE_DPI };
  const BwHookupView view = { bw_hookup_hold_get (job->hold), &job->lead,
                              bw_quantity_locale_mark () };

  g_clear_pointer (&job->report, bw_hookup_report_free);
  job->report = bw_hookup_report_new (&view, job->title, &ink,
                                      gtk_print_context_get_width (context),
                                      gtk_print_context_get_height (context));
  gtk_print_operation_set_n_pages (operation, (int) bw_hookup_report_pages (job->report));
}

static void
on_draw_page (GtkPrintOperation *operation, GtkPrintContext *context, int page, gpointer user_data)
{
  Job *job = user_data;
  bw_hookup_report_draw_page (job->report, gtk_print_context_get_cairo_context (context),
                              (guint) page);
}

/**
 * bw_hookup_print_operation_new:
 * @page: one that shows a plan
 * @title: of the bench sheet
 *
 * Returns: (transfer full): an operation that prints the plan on the whole page
 */
GtkPrintOperation *
bw_hookup_print_operation_new (BwHookupPage *page, const char *title)
{
  GtkPrintOperation *operation = gtk_print_operation_new ();
  g_autofree char *name = bw_hookup_page_dup_name (page);
  Job *job = g_new0 (Job, 1);

  job->page = g_object_ref (page);
  job->hold = bw_hookup_page_ref_plan (page, &job->lead);
  job->title = g_strdup (title);
  g_object_set_data_full (G_OBJECT (operation), "job", job, job_free);
  bw_print_prepare (operation, name);
  g_signal_connect (operation, "begin-print", G_CALLBACK (on_begin), job);
  g_signal_connect (operation, "draw-page", G_CALLBACK (on_draw_page), job);
  return operation;
}

/**
 * bw_print_hookup:
 *
 * Shows the print dialog for the plan that @window shows; nothing, if it shows none.
 */
void
bw_print_hookup (BwWindow *window)
{
  BwHookupPage *page = BW_HOOKUP_PAGE (bw_window_get_page (window, "hookup"));
  const char *title = bw_document_get_sheet (bw_window_get_document (window))->title;
  BwHookupView view;

  if (!bw_hookup_page_get_view (page, &view))
    return;
  g_autoptr (GtkPrintOperation) operation = bw_hookup_print_operation_new (page, title);
  bw_print_run (window, operation, _ ("The hook-up was not printed."));
}
