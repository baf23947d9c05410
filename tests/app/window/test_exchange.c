/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "app-hands.h"
#include "app-test.h"

#include <string.h>

#include <glib/gstdio.h>

#include "app/bench/row-list.h"
#include "app/detail/page.h"
#include "app/detail/preview-panel.h"
#include "app/fit/grid.h"
#include "app/widgets/result-head.h"
#include "app/window/print-memory.h"
#include "core/interchange/interchange.h"

/* What comes into the window and goes out of it by the pointer, the clipboard and menus: files
 * dropped, drawings and tables taken, a word on what was written. */

typedef AppTestWindow Fixture;

/* The controller of @type on @widget. */
static gpointer
controller_of (GtkWidget *widget, GType type)
{
  g_autoptr (GListModel) all = gtk_widget_observe_controllers (widget);
  for (guint i = 0; i < g_list_model_get_n_items (all); i++)
    {
      g_autoptr (GObject) controller = g_list_model_get_item (all, i);
      if (g_type_is_a (G_OBJECT_TYPE (controller), type))
        return controller;
    }
  g_assert_not_reached ();
}

/* Dropping */

static gboolean
drop (Fixture *f, const char *path)
{
  g_autoptr (GFile) file = g_file_new_for_path (path);
  GSList list = { file, NULL };
  g_auto (GValue) value = G_VALUE_INIT;
  gboolean taken = FALSE;

  g_value_init (&value, GDK_TYPE_FILE_LIST);
  g_value_set_boxed (&value, &list);
  g_signal_emit_by_name (controller_of (GTK_WIDGET (f->window), GTK_TYPE_DROP_TARGET), "drop",
                         &value, 10.0, 10.0, &taken);
  return taken;
}

static void
test_drop_sheet (Fixture *f, gconstpointer data)
{
  g_autofree char *demo = app_test_demo_path ();
  g_assert_true (drop (f, demo));
  g_autofree char *path = g_file_get_path (bw_document_get_file (f->document));
  g_assert_cmpstr (path, ==, demo);
}

/* The EDID of a display fills the monitor of a new sheet. The block is made here: what it is read
 * as is checked elsewhere. */
static void
test_drop_edid (Fixture *f, gconstpointer data)
{
  g_autofree char *path = app_test_scratch_path ("dropped.bin");
  guint8 block[BW_EDID_BLOCK_BYTES];
  g_autoptr (GPtrArray) notes = g_ptr_array_new_with_free_func (g_free);

  g_assert_true (bw_edid_write (bw_document_get_sheet (f->document), app_test_catalogue (), block,
                                notes, NULL));
  g_assert_true (g_file_set_contents (path, (const char *) block, sizeof block, NULL));
  g_autofree char *before = app_test_sheet_text (f->document);
  g_assert_true (drop (f, path));
  g_autofree char *after = app_test_sheet_text (f->document);
  g_assert_cmpstr (before, !=, after);
  g_assert_false (bw_document_is_blank (f->document));
}

/* What is no sheet is said in the window, and the sheet stays. */
static void
test_drop_other (Fixture *f, gconstpointer data)
{
  g_autofree char *path = app_test_scratch_path ("letter.txt");
  g_autofree char *before = app_test_sheet_text (f->document);

  g_assert_true (g_file_set_contents (path, "Dear reader", -1, NULL));
  drop (f, path);
  g_autofree char *after = app_test_sheet_text (f->document);
  g_assert_cmpstr (before, ==, after);
  g_assert_nonnull (bw_window_get_fault_text (f->window));
}

static gboolean
is_done (gpointer panel)
{
  return !bw_preview_panel_is_busy (panel);
}

static void
test_drop_picture (Fixture *f, gconstpointer data)
{
  g_autofree char *path = app_test_scratch_path ("dropped.png");
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 64, 48);
  g_assert_cmpint (cairo_surface_write_to_png (surface, path), ==, CAIRO_STATUS_SUCCESS);
  cairo_surface_destroy (surface);

  g_assert_true (drop (f, path));
  BwPage *page = bw_window_get_shown_page (f->window);
  g_assert_true (BW_IS_DETAIL_PAGE (page));
  g_assert_cmpstr (bw_page_get_view (page), ==, "preview");
  BwPreviewPanel *panel = APP_TEST_THE (BW, PREVIEW_PANEL, page);
  g_assert_true (app_test_wait (is_done, panel));
  g_assert_cmpstr (bw_preview_panel_get_fault (panel), ==, "");
}

/* Taking */

typedef struct
{
  GBytes *bytes;
  gboolean done;
} Taken;

static void
on_taken (GObject *source, GAsyncResult *result, gpointer data)
{
  GOutputStream *stream = g_object_get_data (source, "stream");
  Taken *taken = data;
  g_assert_true (
      gdk_content_provider_write_mime_type_finish (GDK_CONTENT_PROVIDER (source), result, NULL));
  g_assert_true (g_output_stream_close (stream, NULL, NULL));
  taken->bytes = g_memory_output_stream_steal_as_bytes (G_MEMORY_OUTPUT_STREAM (stream));
  taken->done = TRUE;
}

static gboolean
is_taken (gpointer data)
{
  return ((Taken *) data)->done;
}

/* What @content gives as @type. */
static GBytes *
take (GdkContentProvider *content, const char *type)
{
  Taken taken = { NULL, FALSE };
  g_object_set_data_full (G_OBJECT (content), "stream", g_memory_output_stream_new_resizable (),
                          g_object_unref);
  gdk_content_provider_write_mime_type_async (content, type,
                                              g_object_get_data (G_OBJECT (content), "stream"),
                                              G_PRIORITY_DEFAULT, NULL, on_taken, &taken);
  g_assert_true (app_test_wait (is_taken, &taken));
  return taken.bytes;
}

static char *
take_text (GdkContentProvider *content)
{
  g_auto (GValue) value = G_VALUE_INIT;
  g_value_init (&value, G_TYPE_STRING);
  g_assert_true (gdk_content_provider_get_value (content, &value, NULL));
  return g_value_dup_string (&value);
}

static void
assert_begins (GdkContentProvider *content, const char *type, const char *begin)
{
  g_autoptr (GBytes) bytes = take (content, type);
  gsize length;
  const char *data = g_bytes_get_data (bytes, &length);
  g_assert_cmpuint (length, >, strlen (begin));
  g_assert_cmpmem (data, strlen (begin), begin, strlen (begin));
}

/* The drawing as SVG, PDF, PNG of 300 dots to the inch, and text. 1100 by 640 pixels of 1/96 inch
 * are 3437.5 by 2000 dots; a PNG's IHDR chunk has its size in bytes 16 to 23 (ISO/IEC 15948,
 * 11.2.2). */
static void
assert_drawing_forms (GdkContentProvider *content)
{
  assert_begins (content, "image/svg+xml", "<?xml");
  assert_begins (content, "application/pdf", "%PDF");
  assert_begins (content, "image/png", "\x89PNG");
  g_autoptr (GBytes) png = take (content, "image/png");
  const guint8 *data = g_bytes_get_data (png, NULL);
  g_assert_cmpuint (data[16] << 24 | data[17] << 16 | data[18] << 8 | data[19], ==, 3438);
  g_assert_cmpuint (data[20] << 24 | data[21] << 16 | data[22] << 8 | data[23], ==, 2000);
  g_autofree char *text = take_text (content);
  g_assert_cmpuint (strlen (text), >, 20);
}

static void
test_copy_drawing (Fixture *f, gconstpointer data)
{
  bw_window_show_page (f->window, "timing");
  gtk_test_widget_wait_for_draw (GTK_WIDGET (f->window));
  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (f->window), "win.copy-picture", NULL));
  assert_drawing_forms (
      gdk_clipboard_get_content (gtk_widget_get_clipboard (GTK_WIDGET (f->window))));
}

static GdkContentProvider *
drag_out (GtkWidget *widget)
{
  GdkContentProvider *content = NULL;
  g_signal_emit_by_name (controller_of (widget, GTK_TYPE_DRAG_SOURCE), "prepare", 5.0, 5.0,
                         &content);
  return content;
}

/* A drawing that is zoomed is moved by dragging, and not taken away. */
static void
test_drag_drawing (Fixture *f, gconstpointer data)
{
  bw_window_show_page (f->window, "timing");
  gtk_test_widget_wait_for_draw (GTK_WIDGET (f->window));
  BwPictureArea *area = bw_picture_panel_get_area (bw_window_get_panel (f->window));
  g_autoptr (GdkContentProvider) content = drag_out (GTK_WIDGET (area));
  g_assert_nonnull (content);
  assert_drawing_forms (content);
  bw_picture_area_zoom (area, 2);
  g_assert_null (drag_out (GTK_WIDGET (area)));
}

static void
test_drag_table (Fixture *f, gconstpointer data)
{
  GtkWidget *grid = app_test_find (GTK_WIDGET (f->window), BW_TYPE_FIT_GRID, NULL);
  GtkWidget *head = app_test_find (grid, BW_TYPE_RESULT_HEAD, NULL);
  g_autoptr (GdkContentProvider) content = drag_out (head);
  const char *name = bw_sheet_source (bw_document_get_sheet (f->document), 2)->name;

  g_assert_nonnull (content);
  g_autofree char *text = take_text (content);
  g_assert_nonnull (strstr (text, name));
  g_autoptr (GBytes) html = take (content, "text/html");
  g_assert_cmpuint (g_bytes_get_size (html), >, 100);
}

/* A word on what is written */

static gboolean
is_told (gpointer window)
{
  return bw_window_get_notice_text (window) != NULL;
}

static void
test_notice (Fixture *f, gconstpointer data)
{
  g_autofree char *path = app_test_scratch_path ("told.svg");
  g_autoptr (GFile) file = g_file_new_for_path (path);

  g_remove (path);
  bw_window_show_page (f->window, "timing");
  gtk_test_widget_wait_for_draw (GTK_WIDGET (f->window));
  g_assert_null (bw_window_get_notice_text (f->window));
  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (f->window), "win.export-picture", NULL));
  app_test_choose_name (file);
  g_assert_true (app_test_wait (is_told, f->window));
  g_assert_true (g_file_test (path, G_FILE_TEST_EXISTS));
  g_assert_nonnull (strstr (bw_window_get_notice_text (f->window), "told.svg"));
  g_signal_emit_by_name (app_test_find (GTK_WIDGET (f->window), GTK_TYPE_BUTTON, "close-notice"),
                         "clicked");
  g_assert_null (bw_window_get_notice_text (f->window));
}

/* Menus, by their key and by the pointer */

static gboolean
menu_is_open (gpointer window)
{
  GtkWidget *menu = app_test_find (window, GTK_TYPE_POPOVER_MENU, NULL);
  return menu != NULL && gtk_widget_get_mapped (menu);
}

static gboolean
menu_is_gone (gpointer window)
{
  app_test_settle ();
  return !menu_is_open (window);
}

static void
test_list_menu (Fixture *f, gconstpointer data)
{
  GtkWidget *list = app_test_find (GTK_WIDGET (
                                       bw_bench_panel_get_list (bw_window_get_bench (f->window),
                                                                BW_PART_SOURCE)),
                                   BW_TYPE_ROW_LIST, NULL);
  guint n = bw_document_count (f->document, BW_PART_SOURCE);

  app_test_give_focus (f->window);
  bw_row_list_focus_selected (BW_ROW_LIST (list));
  app_test_xdotool ("key shift+F10");
  g_assert_true (app_test_wait (menu_is_open, f->window));
  GtkWidget *menu = app_test_find (GTK_WIDGET (f->window), GTK_TYPE_POPOVER_MENU, NULL);
  g_assert_true (gtk_widget_activate_action (menu, "context.item-1", NULL)); /* Duplicate */
  gtk_popover_popdown (GTK_POPOVER (menu));
  g_assert_true (app_test_wait (menu_is_gone, f->window));
  g_assert_cmpuint (bw_document_count (f->document, BW_PART_SOURCE), ==, n + 1);
}

static void
test_drawing_menu (Fixture *f, gconstpointer data)
{
  bw_window_show_page (f->window, "timing");
  gtk_test_widget_wait_for_draw (GTK_WIDGET (f->window));
  BwPictureArea *area = bw_picture_panel_get_area (bw_window_get_panel (f->window));

  app_test_give_focus (f->window);
  gtk_widget_grab_focus (GTK_WIDGET (area));
  app_test_xdotool ("key Menu");
  g_assert_true (app_test_wait (menu_is_open, f->window));
  GtkWidget *menu = app_test_find (GTK_WIDGET (f->window), GTK_TYPE_POPOVER_MENU, NULL);
  g_assert_true (bw_picture_area_is_whole (area));
  g_assert_true (gtk_widget_activate_action (menu, "context.item-2", NULL)); /* Zoom In */
  g_assert_false (bw_picture_area_is_whole (area));
  gtk_popover_popdown (GTK_POPOVER (menu));
  g_assert_true (app_test_wait (menu_is_gone, f->window));
}

/* What is remembered */

/* A5 is 148 by 210 mm (ISO 216). */
static void
test_printing_remembered (Fixture *f, gconstpointer data)
{
  g_autoptr (GtkPrintOperation) first = gtk_print_operation_new ();
  g_autoptr (GtkPrintOperation) second = gtk_print_operation_new ();
  g_autoptr (GtkPrintSettings) settings = gtk_print_settings_new ();
  g_autoptr (GtkPageSetup) setup = gtk_page_setup_new ();
  GtkPaperSize *a5 = gtk_paper_size_new (GTK_PAPER_NAME_A5);

  gtk_print_settings_set_printer (settings, "The one by the window");
  gtk_print_settings_set_n_copies (settings, 3);
  gtk_page_setup_set_paper_size (setup, a5);
  gtk_page_setup_set_orientation (setup, GTK_PAGE_ORIENTATION_LANDSCAPE);
  gtk_print_operation_set_print_settings (first, settings);
  gtk_print_operation_set_default_page_setup (first, setup);
  g_assert_true (bw_print_remember (first, NULL));
  gtk_paper_size_free (a5);

  bw_print_recall (second);
  GtkPrintSettings *recalled = gtk_print_operation_get_print_settings (second);
  GtkPageSetup *page = gtk_print_operation_get_default_page_setup (second);
  g_assert_cmpstr (gtk_print_settings_get_printer (recalled), ==, "The one by the window");
  g_assert_cmpint (gtk_print_settings_get_n_copies (recalled), ==, 1);
  g_assert_cmpfloat_with_epsilon (gtk_page_setup_get_paper_width (page, GTK_UNIT_MM), 210, 0.5);
  g_assert_cmpfloat_with_epsilon (gtk_page_setup_get_paper_height (page, GTK_UNIT_MM), 148, 0.5);
}

#define ADD(name, func)                                                                            \
  g_test_add ("/exchange/" name, Fixture, NULL, app_test_set_up, func, app_test_tear_down)

int
main (int argc, char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
  ADD ("drop/sheet", test_drop_sheet);
  ADD ("drop/edid", test_drop_edid);
  ADD ("drop/other", test_drop_other);
  ADD ("drop/picture", test_drop_picture);
  ADD ("copy/drawing", test_copy_drawing);
  ADD ("drag/drawing", test_drag_drawing);
  ADD ("drag/table", test_drag_table);
  ADD ("notice", test_notice);
  ADD ("printing", test_printing_remembered);
  ADD ("menu/list", test_list_menu);
  ADD ("menu/drawing", test_drawing_menu);
  return g_test_run ();
}
