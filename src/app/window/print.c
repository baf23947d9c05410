/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "print.h"

#include <glib/gi18n-lib.h>

#include "draw/paper/report.h"
#include "print-memory.h"

/* Prints the pages of the report. The sheet is copied first: it may be edited while it prints. */

typedef struct
{
  BwSheet *sheet;
  const BwCatalogue *catalogue; /* borrowed */
  BwReport *report;             /* nullable: laid out when the page size is known */
} Job;

static void
job_free (gpointer data)
{
  Job *job = data;
  g_clear_pointer (&job->report, bw_report_free);
  bw_sheet_free (job->sheet);
  g_free (job);
}

static void
on_begin (GtkPrintOperation *operation, GtkPrintContext *context, gpointer user_data)
{
  Job *job = user_data;
  BwInk ink = { .theme = BW_THEME_PRINT, .dpi = BW_INK_PAGE_DPI };

  g_clear_pointer (&job->report, bw_report_free);
  job->report = bw_report_new (job->sheet, job->catalogue, &ink,
                               gtk_print_context_get_width (context),
                               gtk_print_context_get_height (context), bw_quantity_locale_mark ());
  gtk_print_operation_set_n_pages (operation, (int) bw_report_pages (job->report));
}

static void
on_draw_page (GtkPrintOperation *operation, GtkPrintContext *context, int page, gpointer user_data)
{
  Job *job = user_data;
  bw_report_draw_page (job->report, gtk_print_context_get_cairo_context (context), (guint) page);
}

/**
 * bw_print_prepare:
 * @name: of the print job
 *
 * What every operation of the program has: whole pages in points, a dialog that does not block, and
 * the printer and page that were last used.
 */
void
bw_print_prepare (GtkPrintOperation *operation, const char *name)
{
  gtk_print_operation_set_unit (operation, GTK_UNIT_POINTS);
  gtk_print_operation_set_use_full_page (operation, TRUE);
  gtk_print_operation_set_job_name (operation, name);
  gtk_print_operation_set_allow_async (operation, TRUE);
  gtk_print_operation_set_embed_page_setup (operation, TRUE);
  bw_print_recall (operation);
}

/**
 * bw_print_operation_new:
 * @sheet: copied
 * @catalogue: must outlive the operation
 *
 * Returns: (transfer full): an operation that prints the report of @sheet on the whole page
 */
GtkPrintOperation *
bw_print_operation_new (const BwSheet *sheet, const BwCatalogue *catalogue)
{
  GtkPrintOperation *operation = gtk_print_operation_new ();
  Job *job = g_new0 (Job, 1);

  job->sheet = bw_sheet_copy (sheet);
  job->catalogue = catalogue;
  g_object_set_data_full (G_OBJECT (operation), "job", job, job_free);
  bw_print_prepare (operation, sheet->title);
  g_signal_connect (operation, "begin-print", G_CALLBACK (on_begin), job);
  g_signal_connect (operation, "draw-page", G_CALLBACK (on_draw_page), job);
  return operation;
}

/* What went wrong, under the words that the operation carries. */
static void
on_done (GtkPrintOperation *operation, GtkPrintOperationResult result, gpointer user_data)
{
  g_autoptr (GError) error = NULL;
  if (result == GTK_PRINT_OPERATION_RESULT_APPLY && !bw_print_remember (operation, &error))
    bw_window_show_error (BW_WINDOW (user_data), _ ("The settings of the printer were not kept."),
                          error);
  if (result != GTK_PRINT_OPERATION_RESULT_ERROR)
    return;
  gtk_print_operation_get_error (operation, &error);
  bw_window_show_error (BW_WINDOW (user_data), g_object_get_data (G_OBJECT (operation), "failed"),
                        error);
}

/**
 * bw_print_run:
 * @failed: what to say above the error if it does not print
 *
 * Shows the print dialog of @window for @operation.
 */
void
bw_print_run (BwWindow *window, GtkPrintOperation *operation, const char *failed)
{
  g_autoptr (GError) error = NULL;

  g_object_set_data_full (G_OBJECT (operation), "failed", g_strdup (failed), g_free);
  g_signal_connect_object (operation, "done", G_CALLBACK (on_done), window, 0);
  if (gtk_print_operation_run (operation, GTK_PRINT_OPERATION_ACTION_PRINT_DIALOG,
                               GTK_WINDOW (window), &error)
      == GTK_PRINT_OPERATION_RESULT_ERROR)
    bw_window_show_error (window, failed, error);
}

/**
 * bw_print_sheet:
 *
 * Shows the print dialog for the sheet of @window.
 */
void
bw_print_sheet (BwWindow *window)
{
  BwDocument *document = bw_window_get_document (window);
  g_autoptr (GtkPrintOperation) operation = bw_print_operation_new (bw_document_get_sheet (
                                                                        document),
                                                                    bw_document_get_catalogue (
                                                                        document));
  bw_print_run (window, operation, _ ("The sheet was not printed."));
}
