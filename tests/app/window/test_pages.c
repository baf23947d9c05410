/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "app-test.h"

#include <string.h>

#include "app/widgets/copy-row.h"
#include "app/widgets/empty-page.h"
#include "app/widgets/picture-area.h"
#include "app/widgets/result-view.h"
#include "app/window/print.h"
#include "app/timing/page.h"

/* What holds for every page, the Timing page, and what leaves the window: pictures and printed
 * pages. */

static void
show_every_page (BwWindow *window, void (*check) (GtkWidget *page))
{
  guint n;
  const BwPageKind *kinds = bw_page_kinds (&n);

  for (guint i = 0; i < n; i++)
    {
      GtkWidget *button = app_test_find (gtk_window_get_titlebar (GTK_WINDOW (window)),
                                         GTK_TYPE_TOGGLE_BUTTON, kinds[i].id);
      bw_window_show_page (window, kinds[i].id);
      gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
      g_assert_true (gtk_toggle_button_get_active (GTK_TOGGLE_BUTTON (button)));
      check (GTK_WIDGET (bw_window_get_shown_page (window)));
    }
}

static void
count_mapped (GtkWidget *widget, gpointer n)
{
  if (BW_IS_EMPTY_PAGE (widget) && gtk_widget_get_mapped (widget))
    ++*(guint *) n;
}

static guint
count_empty_pages (GtkWidget *page)
{
  guint n = 0;
  app_test_each (page, count_mapped, &n);
  return n;
}

static void
check_says_what_to_do (GtkWidget *page)
{
  g_assert_cmpuint (count_empty_pages (page), ==, 1);
}

static void
check_shows_something (GtkWidget *page)
{
  g_assert_cmpuint (count_empty_pages (page), ==, 0);
}

/* A page of an empty sheet says what to do first, and a page of the demonstration does not. */
static void
test_every (void)
{
  g_autoptr (BwDocument) empty = bw_document_new (app_test_catalogue ());
  g_autoptr (BwDocument) document = app_test_document ();
  BwWindow *window = app_test_window_new (empty);

  show_every_page (window, check_says_what_to_do);
  app_test_close (window);
  window = app_test_window_new (document);
  show_every_page (window, check_shows_something);
  app_test_close (window);
}

/* SMPTE 170M: 4.5 MHz / 286. ITU-R BT.470-6: 15 625 Hz. 262 lines at SMPTE 170M's line rate. SMPTE 293M:
 * twice SMPTE 170M's. SMPTE 274M: 1125 × 30 / 1.001 Hz. VESA DMT 04h: 25.175 MHz / 800; DMT 25h:
 * 157.5 MHz / 1728. */
static void
test_timing (void)
{
  static const char *const rates[] = {
    "15.734266\u00a0kHz", "15.625000\u00a0kHz",   "15.734266\u00a0kHz", "15.734266\u00a0kHz",
    "31.468531\u00a0kHz", "33.716284\u00a0kHz", "31.468750\u00a0kHz", "91.145833\u00a0kHz",
  };
  g_autoptr (BwDocument) document = app_test_document ();
  BwWindow *window = app_test_window_new (document);
  BwTimingPage *page = BW_TIMING_PAGE (bw_window_get_page (window, "timing"));
  BwResultView *table = BW_RESULT_VIEW (
      app_test_find (GTK_WIDGET (page), BW_TYPE_RESULT_VIEW, "table"));

  bw_window_show_page (window, "timing");
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  g_assert_cmpuint (bw_document_count (document, BW_PART_SOURCE), ==, G_N_ELEMENTS (rates));
  for (guint source = 0; source < G_N_ELEMENTS (rates); source++)
    {
      bw_document_select (document, source, 0);
      g_autofree char *expected = g_strconcat ("Line rate\t", rates[source], NULL);
      g_assert_true (app_test_has_line (GTK_WIDGET (table), expected));
      g_assert_cmpstr (bw_document_selected_raster (document)->id, ==,
                       bw_sheet_source (bw_document_get_sheet (document), source)->raster);
      gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
    }
  app_test_close (window);
}

static void
take_reading (BwPictureArea *area, const char *words, char **reading)
{
  g_free (*reading);
  *reading = g_strdup (words);
}

/* By keys the cursor goes on in time, by less in the enlarged panel than in the whole line. */
static void
test_cursor (void)
{
  g_autoptr (BwDocument) document = app_test_document ();
  BwWindow *window = app_test_window_new (document);
  bw_window_show_page (window, "timing");
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  GtkWidget *area = app_test_find (GTK_WIDGET (window), BW_TYPE_PICTURE_AREA, NULL);
  g_autofree char *reading = NULL;
  double at_s[4];
  g_signal_connect (area, "reading", G_CALLBACK (take_reading), &reading);

  for (guint i = 0; i < 4; i++)
    {
      if (i == 2)
        gtk_widget_activate_action (area, "cursor.row", "d", 1.0);
      gtk_widget_activate_action (area, "cursor.step", "d", 10.0);
      g_assert_nonnull (reading);
      char *words = strstr (reading, " after 0H");
      g_assert_nonnull (words);
      *words = '\0';
      g_assert_true (bw_quantity_parse (reading, BW_DIMENSION_TIME, bw_quantity_locale_mark (),
                                        &at_s[i], NULL));
    }
  g_assert_cmpfloat (at_s[1], >, at_s[0]);
  g_assert_cmpfloat (at_s[3], >, at_s[2]);
  g_assert_cmpfloat (at_s[3] - at_s[2], <, at_s[1] - at_s[0]);
  app_test_close (window);
}

static void
assert_begins (const char *path, const char *magic)
{
  g_autofree char *text = NULL;
  gsize length;
  g_assert_true (g_file_get_contents (path, &text, &length, NULL));
  g_assert_cmpuint (length, >, 1000);
  g_assert_cmpmem (text, strlen (magic), magic, strlen (magic));
}

static void
test_export (void)
{
  static const struct
  {
    const char *name;
    const char *magic;
  } kinds[] = { { "line.svg", "<?xml" }, { "line.pdf", "%PDF" }, { "line.png", "\x89PNG" } };
  g_autoptr (BwDocument) document = app_test_document ();
  BwWindow *window = app_test_window_new (document);
  BwPicturePanel *panel = bw_page_get_panel (bw_window_get_page (window, "timing"));
  g_autoptr (GError) error = NULL;

  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
    {
      g_autofree char *path = app_test_scratch_path (kinds[i].name);
      g_assert_true (bw_picture_panel_export (panel, path, &error));
      g_assert_no_error (error);
      assert_begins (path, kinds[i].magic);
    }
  g_autofree char *odd = app_test_scratch_path ("line.doc");
  g_assert_false (bw_picture_panel_export (panel, odd, &error));
  g_assert_nonnull (error);
  g_assert_false (g_file_test (odd, G_FILE_TEST_EXISTS));
  app_test_close (window);
}

/* The same pages that go to a printer. */
static void
test_print (void)
{
  g_autoptr (BwDocument) document = app_test_document ();
  g_autofree char *path = app_test_scratch_path ("print.pdf");
  GtkPrintOperation *operation = bw_print_operation_new (bw_document_get_sheet (document),
                                                         app_test_catalogue ());
  g_autoptr (GError) error = NULL;

  gtk_print_operation_set_export_filename (operation, path);
  gtk_print_operation_set_allow_async (operation, FALSE);
  g_assert_cmpint (gtk_print_operation_run (operation, GTK_PRINT_OPERATION_ACTION_EXPORT, NULL,
                                            &error),
                   ==, GTK_PRINT_OPERATION_RESULT_APPLY);
  g_assert_no_error (error);
  int pages;
  g_object_get (operation, "n-pages", &pages, NULL);
  g_assert_cmpint (pages, >=, 2);
  assert_begins (path, "%PDF");
  g_object_unref (operation);
}

int
main (int argc, char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
  g_test_add_func ("/pages/every", test_every);
  g_test_add_func ("/pages/timing", test_timing);
  g_test_add_func ("/pages/cursor", test_cursor);
  g_test_add_func ("/pages/export", test_export);
  g_test_add_func ("/pages/print", test_print);
  return g_test_run ();
}
