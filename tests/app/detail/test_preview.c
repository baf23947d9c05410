/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "app-hands.h"

#include <math.h>
#include <string.h>

#include "app/detail/page.h"
#include "app/widgets/chooser.h"
#include "app/detail/preview-panel.h"

/* The preview of the Detail page, with its real widgets. That the preview itself is right is for
 * core/test_preview.c. */

typedef struct
{
  BwDocument *document;
  BwWindow *window;
  BwDetailPage *page;
  BwDetailState *state;
  BwPreviewPanel *preview;
  BwPictureArea *area;
} Fixture;

static const BwPreviewResult *
result (Fixture *f)
{
  return bw_preview_view_get_result (bw_preview_panel_get_view (f->preview));
}

static gboolean
is_idle (gpointer data)
{
  Fixture *f = data;
  return !bw_preview_panel_is_busy (f->preview) && result (f) != NULL;
}

static gboolean
is_busy (gpointer data)
{
  return bw_preview_panel_is_busy (((Fixture *) data)->preview);
}

/* Until the newest preview is there. What changes the layout asks for one in the next frame. */
static void
wait_for_preview (Fixture *f)
{
  gtk_test_widget_wait_for_draw (GTK_WIDGET (f->window));
  g_assert_true (app_test_wait (is_idle, f));
  gtk_test_widget_wait_for_draw (GTK_WIDGET (f->window));
  g_assert_true (app_test_wait (is_idle, f));
}

static void
set (Fixture *f, BwDetailValue value, const char *text)
{
  g_autoptr (GError) error = NULL;
  g_assert_true (bw_detail_state_set (f->state, value, text, '.', &error));
  g_assert_no_error (error);
}

/* The first source of @signal, selected; there must be one. */
static void
select_signal (Fixture *f, BwSignal signal)
{
  const BwSheet *sheet = bw_document_get_sheet (f->document);
  for (guint i = 0; i < sheet->sources->len; i++)
    if (bw_sheet_source (sheet, i)->signal == signal)
      {
        bw_document_select (f->document, i, 0);
        return;
      }
  g_error ("no source of this kind");
}

static void
open_window (Fixture *f)
{
  f->document = app_test_document ();
  f->window = app_test_window_new (f->document);
  f->page = BW_DETAIL_PAGE (bw_window_get_page (f->window, "detail"));
  f->state = bw_detail_page_get_state (f->page);
  f->preview = APP_TEST_THE (BW, PREVIEW_PANEL, f->page);
  f->area = bw_picture_panel_get_area (bw_preview_panel_get_panel (f->preview));
  bw_window_show_page (f->window, "detail");
  bw_page_show_view (BW_PAGE (f->page), "preview");
  select_signal (f, BW_SIGNAL_RGB);
  set (f, BW_DETAIL_DIAGONAL, "14 in");
  set (f, BW_DETAIL_PITCH_VALUE, "0.3 mm");
  set (f, BW_DETAIL_SPOT, "0.4 mm");
  set (f, BW_DETAIL_BANDWIDTH, "8 MHz");
}

static void
set_up (Fixture *f, gconstpointer data)
{
  open_window (f);
  wait_for_preview (f);
}

static void
tear_down (Fixture *f, gconstpointer data)
{
  app_test_close (f->window);
  g_assert_finalize_object (f->document);
}

static GtkWidget *
control (Fixture *f, const char *name)
{
  return app_test_find (GTK_WIDGET (f->preview), GTK_TYPE_WIDGET, name);
}

/* As the person chooses the item of this number. */
static void
choose (Fixture *f, const char *name, guint item)
{
  gtk_drop_down_set_selected (GTK_DROP_DOWN (control (f, name)), item);
}

static double
mean_difference (const BwPlanes *a, const BwPlanes *b)
{
  double sum = 0;
  g_assert_cmpint (a->width, ==, b->width);
  g_assert_cmpint (a->height, ==, b->height);
  for (int i = 0; i < 3; i++)
    for (int j = 0; j < a->width * a->height; j++)
      sum += fabs ((double) a->at[i][j] - (double) b->at[i][j]);
  return sum / (3.0 * a->width * a->height);
}

static BwPlanes *
copy_of (const BwPlanes *planes)
{
  BwPlanes *copy = bw_planes_new (planes->width, planes->height);
  for (int i = 0; i < 3; i++)
    memcpy (copy->at[i], planes->at[i],
            sizeof (float) * (gsize) planes->width * (gsize) planes->height);
  return copy;
}

/* Both pictures are there, of the same part, and the path shows. */
static void
test_appears (Fixture *f, gconstpointer data)
{
  const BwPreviewResult *shown = result (f);

  g_assert_true (bw_page_get_panel (BW_PAGE (f->page)) == bw_preview_panel_get_panel (f->preview));
  g_assert_cmpint (shown->screen->width, >, 200);
  g_assert_cmpfloat (mean_difference (shown->screen, shown->untouched), >, 0.005);
  g_assert_cmpfloat (shown->exposure, >, 0);
  g_assert_cmpfloat (shown->exposure, <=, 1);
  bw_page_show_view (BW_PAGE (f->page), "chain");
  g_assert_true (bw_page_get_panel (BW_PAGE (f->page)) != bw_preview_panel_get_panel (f->preview));
}

/* The old preview stays until the new one is there. */
static void
test_value_moves (Fixture *f, gconstpointer data)
{
  choose (f, "times", 3);
  wait_for_preview (f);
  const BwPreviewResult *before = result (f);
  g_autoptr (BwPlanes) screen = copy_of (before->screen);

  set (f, BW_DETAIL_PITCH_VALUE, "0.6 mm");
  g_assert_true (is_busy (f));
  g_assert_true (result (f) == before);
  wait_for_preview (f);
  g_assert_cmpfloat_with_epsilon (result (f)->wish.what.pitch_m, 0.6e-3, 1e-12);
  g_assert_cmpfloat (mean_difference (screen, result (f)->screen), >, 0.01);
}

/* The curves and the picture say the same. A gamma of 2.2 is nearly a square, of which a sine has
 * the slope at its mean: hence the tolerance. */
static void
test_numbers_agree (Fixture *f, gconstpointer data)
{
  static const struct
  {
    BwSignal signal;
    guint times;
  } cases[] = { { BW_SIGNAL_RGB, 0 }, { BW_SIGNAL_RGB, 2 }, { BW_SIGNAL_COMPOSITE, 2 } };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      guint measured = 0;
      select_signal (f, cases[i].signal);
      choose (f, "times", cases[i].times);
      wait_for_preview (f);
      for (guint burst = 0; burst < BW_N_TEST_BURSTS; burst++)
        if (result (f)->bursts[burst] == BW_BURST_MEASURED)
          {
            double tvl = bw_test_burst_tvl[burst];
            double mtf = bw_detail_mtf (bw_detail_state_get_case (f->state), tvl);
            g_test_message ("%g lines: computed %.4f, measured %.4f", tvl, mtf,
                            result (f)->modulation[burst]);
            g_assert_cmpfloat_with_epsilon (result (f)->modulation[burst], mtf, 0.03);
            measured++;
          }
      g_assert_cmpuint (measured, >=, 1);
    }
}

/* However fast values come, the last one is shown, and none after it. */
static void
test_rapid (Fixture *f, gconstpointer data)
{
  for (int i = 0; i < 30; i++)
    {
      g_autofree char *pitch = g_strdup_printf ("0.%d mm", 30 + i);
      set (f, BW_DETAIL_PITCH_VALUE, pitch);
      for (int j = 0; j < i % 7; j++)
        g_main_context_iteration (NULL, FALSE);
      app_test_frames ((guint) (i % 3 * 2));
    }
  wait_for_preview (f);
  g_assert_cmpfloat_with_epsilon (result (f)->wish.what.pitch_m, 0.59e-3, 1e-12);
}

/* What was given up must not have come. */
static gboolean
is_idle_without_given_up (gpointer data)
{
  Fixture *f = data;
  g_assert_cmpfloat (fabs (result (f)->wish.what.pitch_m - 0.7e-3), >, 1e-9);
  return is_idle (f);
}

/* What is given up does not come, however far it was, and the picture says that it is the one before. */
static void
test_cancel (Fixture *f, gconstpointer data)
{
  for (guint steps = 0; steps < 12; steps++)
    {
      set (f, BW_DETAIL_PITCH_VALUE, "0.6 mm");
      app_test_steps (steps, is_busy, f);
      set (f, BW_DETAIL_PITCH_VALUE, "0.7 mm");
      g_assert_true (is_busy (f));
      g_signal_emit_by_name (control (f, "cancel-preview"), "clicked");
      g_assert_false (is_busy (f));
      gtk_test_widget_wait_for_draw (GTK_WIDGET (f->window));
      const char *words = bw_drawing_description (bw_picture_area_get_drawing (f->area));
      g_assert_nonnull (strstr (words, "Cancelled"));
    }

  set (f, BW_DETAIL_PITCH_VALUE, "0.8 mm");
  g_assert_true (app_test_wait (is_idle_without_given_up, f));
  wait_for_preview (f);
  g_assert_cmpfloat_with_epsilon (result (f)->wish.what.pitch_m, 0.8e-3, 1e-12);
  const char *after = bw_drawing_description (bw_picture_area_get_drawing (f->area));
  g_assert_null (strstr (after, "Cancelled"));
}

/* Each test picture is another one, and each magnification another part. */
static void
test_choices (Fixture *f, gconstpointer data)
{
  g_autoptr (GPtrArray) seen = g_ptr_array_new_with_free_func ((GDestroyNotify) bw_planes_free);

  for (guint kind = 0; kind < BW_N_TEST_PICTURES; kind++)
    {
      choose (f, "picture", kind);
      wait_for_preview (f);
      g_assert_cmpuint (result (f)->wish.kind, ==, kind);
      for (guint i = 0; i < seen->len; i++)
        g_assert_cmpfloat (mean_difference (seen->pdata[i], result (f)->screen), >, 0.01);
      g_ptr_array_add (seen, copy_of (result (f)->screen));
    }
  for (guint i = 1; i < BW_N_PREVIEW_TIMES; i++)
    {
      choose (f, "times", i);
      wait_for_preview (f);
      /* 96 pixels to the inch at life size */
      g_assert_cmpfloat_with_epsilon (result (f)->wish.preview.pixels_per_m,
                                      bw_preview_times[i] * 96 / 0.0254, 1e-6);
    }
}

/* Plus, minus and 0 walk the same list, and Shift with the arrows moves by a tenth of the area. */
static void
test_zoom_and_pan (Fixture *f, gconstpointer data)
{
  BwPreviewView *view = bw_preview_panel_get_view (f->preview);
  GtkDropDown *times = GTK_DROP_DOWN (control (f, "times"));

  gtk_widget_activate_action (GTK_WIDGET (f->area), "view.zoom", "d", 1.5);
  gtk_widget_activate_action (GTK_WIDGET (f->area), "view.zoom", "d", 1.5);
  g_assert_cmpfloat (bw_preview_view_get_times (view), ==, 2);
  g_assert_cmpuint (gtk_drop_down_get_selected (times), ==, 2);
  wait_for_preview (f);
  BwPreview before = result (f)->wish.preview;
  gtk_widget_activate_action (GTK_WIDGET (f->area), "view.pan", "(dd)", -0.1, 0.0);
  wait_for_preview (f);
  BwPreview after = result (f)->wish.preview;
  double moved_m = (after.centre_x - before.centre_x)
                   * bw_detail_state_get_detail (f->state)->width_m;
  g_assert_cmpfloat_with_epsilon (moved_m * before.pixels_per_m,
                                  0.1 * gtk_widget_get_width (GTK_WIDGET (f->area)), 0.01);
  g_assert_cmpfloat_with_epsilon (after.centre_y, before.centre_y, 1e-12);

  /* Not beyond the glass */
  for (guint i = 0; i < 60; i++)
    gtk_widget_activate_action (GTK_WIDGET (f->area), "view.pan", "(dd)", 0.5, 0.5);
  wait_for_preview (f);
  after = result (f)->wish.preview;
  double left_m = after.centre_x * bw_detail_state_get_detail (f->state)->width_m
                  - after.width / after.pixels_per_m / 2;
  g_assert_cmpfloat_with_epsilon (left_m, 0, 1e-9);

  gtk_widget_activate_action (GTK_WIDGET (f->area), "view.zoom", "d", 1 / 1.5);
  g_assert_cmpfloat (bw_preview_view_get_times (view), ==, 1);
  gtk_widget_activate_action (GTK_WIDGET (f->area), "view.whole", NULL);
  g_assert_true (bw_picture_area_is_whole (f->area));
  g_assert_cmpuint (gtk_drop_down_get_selected (times), ==, 0);
}

static void
take_reading (BwPictureArea *area, const char *words, char **reading)
{
  g_free (*reading);
  *reading = g_strdup (words);
}

/* The cursors read the glass, and stay where they are when a value moves. */
static void
test_reading (Fixture *f, gconstpointer data)
{
  g_autofree char *reading = NULL;
  g_autofree char *before = NULL;

  g_signal_connect (f->area, "reading", G_CALLBACK (take_reading), &reading);
  choose (f, "times", 2);
  wait_for_preview (f);
  gtk_widget_activate_action (GTK_WIDGET (f->area), "cursor.step", "d", 1.0);
  for (guint i = 0; i < 60; i++)
    gtk_widget_activate_action (GTK_WIDGET (f->area), "cursor.step", "d", -1.0);
  g_assert_nonnull (strstr (reading, "from the left"));
  g_assert_nonnull (strstr (reading, "untouched"));
  gtk_widget_activate_action (GTK_WIDGET (f->area), "cursor.second", NULL);
  gtk_widget_activate_action (GTK_WIDGET (f->area), "cursor.step", "d", -48.0);
  /* 48 px at twice life size are a quarter of an inch; 14 in at 4:3 is 8.4 in high (3-4-5
   * triangle), of which that is 1/33.6. */
  g_assert_nonnull (strstr (reading, "6.35\u00a0mm across"));
  g_assert_nonnull (strstr (reading, "34\u00a0lines"));
  before = g_strdup (reading);
  set (f, BW_DETAIL_SPOT, "2 mm");
  wait_for_preview (f);
  g_assert_nonnull (strstr (reading, "6.35\u00a0mm across"));
  g_assert_cmpstr (reading, !=, before);
}

/* The dots of composite move; RGB has none. */
static void
test_frames (Fixture *f, gconstpointer data)
{
  GtkWidget *next = control (f, "next-frame");

  g_assert_false (gtk_widget_is_sensitive (next));
  select_signal (f, BW_SIGNAL_COMPOSITE);
  g_assert_true (gtk_widget_is_sensitive (next));
  choose (f, "picture", BW_TEST_RAMPS);
  choose (f, "times", 2);
  wait_for_preview (f);
  g_autoptr (BwPlanes) first = copy_of (result (f)->screen);
  g_autoptr (BwPlanes) untouched = copy_of (result (f)->untouched);
  g_signal_emit_by_name (next, "clicked");
  wait_for_preview (f);
  g_assert_cmpuint (result (f)->wish.preview.frame, ==, 1);
  g_assert_cmpfloat (mean_difference (untouched, result (f)->untouched), ==, 0);
  g_assert_cmpfloat (mean_difference (first, result (f)->screen), >, 1e-5);
}

/* Pictures from files */

static GFile *
file_with (const char *name, const void *bytes, gssize length)
{
  g_autofree char *path = app_test_scratch_path (name);
  g_assert_true (g_file_set_contents (path, bytes, length, NULL));
  return g_file_new_for_path (path);
}

static GFile *
red_picture (const char *name)
{
  g_autofree char *path = app_test_scratch_path (name);
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 64, 48);
  cairo_t *cr = cairo_create (surface);
  cairo_set_source_rgb (cr, 1, 0, 0);
  cairo_paint (cr);
  cairo_destroy (cr);
  g_assert_cmpint (cairo_surface_write_to_png (surface, path), ==, CAIRO_STATUS_SUCCESS);
  cairo_surface_destroy (surface);
  return g_file_new_for_path (path);
}

static gboolean
has_fault (gpointer data)
{
  return *bw_preview_panel_get_fault (((Fixture *) data)->preview) != '\0';
}

static gboolean
is_opened (gpointer data)
{
  Fixture *f = data;
  return is_idle (f) && result (f)->wish.kind == BW_PREVIEW_OPENED;
}

/* What cannot be read is said, by its name, and nothing is lost. */
static void
test_bad_png (Fixture *f, gconstpointer data)
{
  g_autoptr (GFile) text = file_with ("text.png", "no picture", -1);
  g_autoptr (GFile) cut = file_with ("cut.png", "\x89PNG\r\n\x1a\n\0\0\0\rIHDR\0\0\0\1\0\0\0\1",
                                     24);
  g_autoptr (GFile) lacking = g_file_new_for_path ("/nowhere/lacking.png");
  g_autoptr (GFile) good = red_picture ("a red picture of my own with a very long name.png");
  GFile *const bad[] = { text, cut, lacking };
  static const char *const names[] = { "text.png", "cut.png", "lacking.png" };

  for (guint i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      guint before = result (f)->wish.kind;
      bw_preview_panel_open (f->preview, bad[i]);
      g_assert_true (app_test_wait (has_fault, f));
      g_assert_nonnull (strstr (bw_preview_panel_get_fault (f->preview), names[i]));
      g_assert_true (gtk_widget_get_visible (control (f, "fault")));
      g_assert_cmpuint (gtk_drop_down_get_selected (GTK_DROP_DOWN (control (f, "picture"))), ==, 0);
      wait_for_preview (f);
      g_assert_cmpuint (result (f)->wish.kind, ==, before);
      bw_preview_panel_open (f->preview, good);
      g_assert_true (app_test_wait (is_opened, f));
      g_assert_false (has_fault (f));
      choose (f, "picture", 0);
      wait_for_preview (f);
    }

  /* The opened one can be chosen again, and stays when another cannot be read. */
  choose (f, "picture", BW_N_TEST_PICTURES);
  wait_for_preview (f);
  bw_preview_panel_open (f->preview, text);
  g_assert_true (app_test_wait (has_fault, f));
  wait_for_preview (f);
  g_assert_cmpuint (result (f)->wish.kind, ==, BW_PREVIEW_OPENED);
  const BwPlanes *shown = result (f)->untouched;
  gsize middle = (gsize) (shown->height / 2 * shown->width + shown->width / 2);
  g_assert_cmpfloat_with_epsilon (shown->at[0][middle], 1, 1e-6);
  g_assert_cmpfloat_with_epsilon (shown->at[1][middle], 0, 1e-6);
  g_assert_cmpuint (result (f)->bursts[0], ==, BW_BURST_ABSENT);
}

/* Export */

/* The mean of a channel in a part of a PNG of the drawing. */
static double
mean_of_png (const char *path, double from, double to)
{
  cairo_surface_t *surface = cairo_image_surface_create_from_png (path);
  g_assert_cmpint (cairo_surface_status (surface), ==, CAIRO_STATUS_SUCCESS);
  int width = cairo_image_surface_get_width (surface);
  int height = cairo_image_surface_get_height (surface);
  int stride = cairo_image_surface_get_stride (surface);
  const guint8 *rows = cairo_image_surface_get_data (surface);
  double sum = 0, n = 0;

  for (int y = 0; y < height; y++)
    for (int x = (int) (from * width); x < to * width; x++)
      {
        sum += rows[y * stride + 4 * x + 1];
        n++;
      }
  cairo_surface_destroy (surface);
  return sum / n;
}

static void
test_export (Fixture *f, gconstpointer data)
{
  static const char *const suffixes[] = { ".svg", ".pdf", ".png" };
  BwPicturePanel *panel = bw_page_get_panel (BW_PAGE (f->page));

  choose (f, "times", 3);
  wait_for_preview (f);
  for (guint i = 0; i < G_N_ELEMENTS (suffixes); i++)
    {
      g_autoptr (GError) error = NULL;
      g_autofree char *text = NULL;
      gsize length = 0;
      g_autofree char *stem = bw_picture_panel_dup_file_name (panel);
      g_autofree char *file = g_strconcat (stem, suffixes[i], NULL);
      g_autofree char *path = app_test_scratch_path (file);
      g_assert_true (bw_picture_panel_export (panel, path, &error));
      g_assert_no_error (error);
      g_assert_true (g_file_get_contents (path, &text, &length, NULL));
      g_assert_cmpuint (length, >, 10000);
      /* With half of the brightness kept, the left picture is the darker one. */
      if (g_str_has_suffix (path, ".png"))
        g_assert_cmpfloat (mean_of_png (path, 0.25, 0.48), <, mean_of_png (path, 0.52, 0.75) - 5);
    }
}

/* The preview fills the room that there is: side by side with a gap of 12. */
static void
test_resize (Fixture *f, gconstpointer data)
{
  choose (f, "times", 3);
  wait_for_preview (f);
  int before = result (f)->screen->width;
  int width = gtk_widget_get_width (GTK_WIDGET (f->window));
  gtk_window_set_default_size (GTK_WINDOW (f->window), width + 160, 700);
  ASSERT_COMES_TRUE (gtk_widget_get_width (GTK_WIDGET (f->window)) > width + 100);
  wait_for_preview (f);
  g_assert_cmpint (result (f)->screen->width, !=, before);
  g_assert_cmpint (result (f)->screen->width, ==,
                   (gtk_widget_get_width (GTK_WIDGET (f->area)) - 12) / 2);
}

/* What is not seen is not computed, until it is. */
static void
test_hidden (Fixture *f, gconstpointer data)
{
  bw_page_show_view (BW_PAGE (f->page), "chain");
  ASSERT_COMES_TRUE (!gtk_widget_get_mapped (GTK_WIDGET (f->preview))); /* the change is animated */
  set (f, BW_DETAIL_PITCH_VALUE, "0.45 mm");
  g_assert_false (is_busy (f));
  bw_page_show_view (BW_PAGE (f->page), "preview");
  wait_for_preview (f);
  g_assert_cmpfloat_with_epsilon (result (f)->wish.what.pitch_m, 0.45e-3, 1e-12);
}

static void
test_names (Fixture *f, gconstpointer data)
{
  static const char *const controls[] = { "picture", "times", "brightness" };
  for (guint i = 0; i < G_N_ELEMENTS (controls); i++)
    g_assert_true (gtk_test_accessible_has_relation (GTK_ACCESSIBLE (control (f, controls[i])),
                                                     GTK_ACCESSIBLE_RELATION_LABELLED_BY));
  g_assert_true (
      gtk_test_accessible_has_property (GTK_ACCESSIBLE (f->area), GTK_ACCESSIBLE_PROPERTY_LABEL));
  const char *words = bw_drawing_description (bw_picture_area_get_drawing (f->area));
  g_assert_nonnull (strstr (words, "Links counted: "));
}

/* A window may go at any time: before anything runs, while it runs, and while a file is read. */
static void
test_closed_while_busy (void)
{
  for (guint i = 0; i < 6; i++)
    {
      Fixture f = { NULL };
      open_window (&f);
      g_autoptr (GFile) good = red_picture ("red.png");
      if (i > 0)
        gtk_test_widget_wait_for_draw (GTK_WIDGET (f.window));
      if (i > 1)
        wait_for_preview (&f);
      if (i > 2)
        set (&f, BW_DETAIL_PITCH_VALUE, "0.7 mm");
      if (i > 3)
        app_test_steps (3 * i, is_busy, &f);
      if (i > 4)
        bw_preview_panel_open (f.preview, good);
      tear_down (&f, NULL);
    }
  /* What was given up ends meanwhile. */
  Fixture last = { NULL };
  set_up (&last, NULL);
  tear_down (&last, NULL);
}

/* With nothing on the bench there is nothing to compute, and nothing fails. */
static void
test_empty (void)
{
  g_autoptr (BwDocument) document = bw_document_new (app_test_catalogue ());
  BwWindow *window = app_test_window_new (document);
  BwDetailPage *page = BW_DETAIL_PAGE (bw_window_get_page (window, "detail"));

  bw_window_show_page (window, "detail");
  bw_page_show_view (BW_PAGE (page), "preview");
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  BwPreviewPanel *preview = APP_TEST_THE (BW, PREVIEW_PANEL, page);
  ASSERT_COMES_TRUE (!bw_preview_panel_is_busy (preview));
  g_assert_null (bw_preview_view_get_result (bw_preview_panel_get_view (preview)));
  app_test_close (window);
}

/* Keyboard: real key events to a real window, as no window manager gives it the focus. */

static gboolean
shows_grid (gpointer data)
{
  Fixture *f = data;
  return is_idle (f) && result (f)->wish.kind == BW_TEST_GRID;
}

/* Another picture, larger, and along it, by keys alone. */
static void
test_keyboard (Fixture *f, gconstpointer data)
{
  app_test_give_focus (f->window);
  app_test_go_to (f->window, "Tab", control (f, "picture"));
  app_test_xdotool ("key space");
  app_test_xdotool ("key Down");
  app_test_xdotool ("key Return");
  g_assert_true (app_test_wait (shows_grid, f));
  app_test_go_to (f->window, "Tab", GTK_WIDGET (f->area));
  app_test_xdotool ("key plus");
  app_test_xdotool ("key plus");
  wait_for_preview (f);
  double before = result (f)->wish.preview.centre_x;
  app_test_xdotool ("key shift+Right");
  wait_for_preview (f);
  g_assert_cmpfloat (result (f)->wish.preview.centre_x, >, before + 0.01);
  g_assert_true (app_test_focus_is_in (f->window, GTK_WIDGET (f->area)));
}

#define ADD(name, func) g_test_add ("/preview/" name, Fixture, NULL, set_up, func, tear_down)

int
main (int argc, char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
  ADD ("appears", test_appears);
  ADD ("value-moves", test_value_moves);
  ADD ("numbers-agree", test_numbers_agree);
  ADD ("rapid", test_rapid);
  ADD ("cancel", test_cancel);
  ADD ("choices", test_choices);
  ADD ("zoom-and-pan", test_zoom_and_pan);
  ADD ("reading", test_reading);
  ADD ("frames", test_frames);
  ADD ("bad-png", test_bad_png);
  ADD ("export", test_export);
  ADD ("resize", test_resize);
  ADD ("hidden", test_hidden);
  ADD ("names", test_names);
  g_test_add_func ("/preview/closed-while-busy", test_closed_while_busy);
  g_test_add_func ("/preview/empty", test_empty);
  ADD ("keyboard", test_keyboard);
  return g_test_run ();
}
