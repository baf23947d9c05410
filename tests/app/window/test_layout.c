/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/window/window.h"

#include <math.h>
#include <string.h>

#include "app-test.h"
#include "app/widgets/chooser.h"
#include "app/widgets/colour-scheme.h"
#include "app/widgets/chooser.h"
#include "app/widgets/result-view.h"

/* How the window is laid out at the sizes of usual screens: a drawing fills its page, nothing needs
 * more width than the smallest window has, and the figures go under the drawing where it is narrow.
 * The shares are our own choice: 70 % of the height and half of the area at the usual size. */

#define SMALL_WIDTH 960
#define SMALL_HEIGHT 600
#define USUAL_WIDTH 1280
#define USUAL_HEIGHT 800

typedef AppTestWindow Fixture;

/* The names of the buttons that choose the views of @page. */
static void
collect_view (GtkWidget *widget, gpointer data)
{
  GtkWidget *box = gtk_widget_get_parent (widget);
  const char *id = box != NULL ? gtk_buildable_get_buildable_id (GTK_BUILDABLE (box)) : NULL;
  if (GTK_IS_TOGGLE_BUTTON (widget) && g_strcmp0 (id, "views") == 0
      && gtk_widget_get_sensitive (widget))
    g_ptr_array_add (data, g_strdup (gtk_widget_get_name (widget)));
}

static GPtrArray *
views_of (BwPage *page)
{
  GPtrArray *views = g_ptr_array_new_with_free_func (g_free);
  app_test_each (GTK_WIDGET (page), collect_view, views);
  return views;
}

typedef struct
{
  BwWindow *window;
  int width;
  int height;
} Wanted;

/* The border that the toolkit draws around a window without a manager of windows. */
#define BORDER 12

static gboolean
has_size (gpointer data)
{
  const Wanted *wanted = data;
  GtkWidget *widget = GTK_WIDGET (wanted->window);
  return abs (gtk_widget_get_width (widget) - wanted->width) <= BORDER
         && abs (gtk_widget_get_height (widget) - wanted->height) <= BORDER;
}

static void
resize (Fixture *f, int width, int height)
{
  Wanted wanted = { f->window, width, height };
  gtk_window_set_default_size (GTK_WINDOW (f->window), width, height);
  gboolean resized = app_test_wait (has_size, &wanted);
  g_test_message ("the window is %d by %d", gtk_widget_get_width (GTK_WIDGET (f->window)),
                  gtk_widget_get_height (GTK_WIDGET (f->window)));
  g_assert_true (resized);
}

/* Lets the handle between drawing and figures find its place. */
static void
come_to_rest (Fixture *f)
{
  for (guint i = 0; i < 3; i++)
    {
      gtk_widget_queue_draw (GTK_WIDGET (f->window));
      gtk_test_widget_wait_for_draw (GTK_WIDGET (f->window));
      app_test_settle ();
    }
}

typedef void (*CheckView) (const char *id, BwPage *page, BwPicturePanel *panel);

static void
for_each_drawing (Fixture *f, CheckView check)
{
  guint n;
  const BwPageKind *kinds = bw_page_kinds (&n);
  guint drawings = 0;

  for (guint i = 0; i < n; i++)
    {
      bw_window_show_page (f->window, kinds[i].id);
      BwPage *page = bw_window_get_shown_page (f->window);
      g_autoptr (GPtrArray) views = views_of (page);
      for (guint view = 0; view < views->len; view++)
        {
          bw_page_show_view (page, views->pdata[view]);
          come_to_rest (f);
          BwPicturePanel *panel = bw_page_get_panel (page);
          if (panel == NULL)
            continue;
          g_autofree char *id = g_strdup_printf ("%s %s", kinds[i].id,
                                                 (const char *) views->pdata[view]);
          check (id, page, panel);
          drawings++;
        }
    }
  g_assert_cmpuint (drawings, >=, 13);
}

static void
assert_shares (const char *id, BwPage *page, BwPicturePanel *panel, double least_height,
               double least_area)
{
  GtkWidget *area = GTK_WIDGET (bw_picture_panel_get_area (panel));
  double height = gtk_widget_get_height (area) / (double) gtk_widget_get_height (GTK_WIDGET (page));
  double width = gtk_widget_get_width (area) / (double) gtk_widget_get_width (GTK_WIDGET (page));

  g_test_message ("%s: %.0f %% of the height, %.0f %% of the area", id, 100 * height,
                  100 * height * width);
  if (height < least_height || height * width < least_area)
    {
      g_test_message ("%s: the drawing is too small", id);
      g_test_fail ();
    }
}

static void
check_usual (const char *id, BwPage *page, BwPicturePanel *panel)
{
  assert_shares (id, page, panel, 0.70, 0.50);
}

static void
check_small (const char *id, BwPage *page, BwPicturePanel *panel)
{
  /* The preview alone has two rows of controls. */
  double least = strcmp (id, "detail preview") == 0 ? 0.45 : 0.50;
  assert_shares (id, page, panel, least, least);
}

static void
test_usual (Fixture *f, gconstpointer data)
{
  resize (f, USUAL_WIDTH, USUAL_HEIGHT);
  for_each_drawing (f, check_usual);
}

static void
test_small (Fixture *f, gconstpointer data)
{
  resize (f, SMALL_WIDTH, SMALL_HEIGHT);
  for_each_drawing (f, check_small);
}

/* Nothing of the figures beside a drawing is cut at the right. */
static void
assert_figures_fit (const char *id, BwPicturePanel *panel)
{
  GtkWidget *table = app_test_find (GTK_WIDGET (panel), BW_TYPE_RESULT_VIEW, NULL);
  GtkWidget *scroller = gtk_widget_get_ancestor (table, GTK_TYPE_SCROLLED_WINDOW);
  GtkAdjustment *across
      = gtk_scrolled_window_get_hadjustment (GTK_SCROLLED_WINDOW (scroller));
  double upper = gtk_adjustment_get_upper (across), size = gtk_adjustment_get_page_size (across);

  if (upper <= size)
    return;
  g_test_message ("%s: the figures need %.0f pixels and have %.0f", id, upper, size);
  g_test_fail ();
}

static void
test_figures (Fixture *f, gconstpointer data)
{
  guint n, tried = 0;
  const BwPageKind *kinds = bw_page_kinds (&n);

  resize (f, USUAL_WIDTH, USUAL_HEIGHT);
  for (guint i = 0; i < n; i++)
    for (guint source = 0; source < bw_document_count (f->document, BW_PART_SOURCE); source++)
      {
        bw_window_show_page (f->window, kinds[i].id);
        bw_document_select (f->document, source, 2 - source % 3);
        come_to_rest (f);
        BwPicturePanel *panel = bw_page_get_panel (bw_window_get_shown_page (f->window));
        if (panel == NULL)
          continue;
        g_autofree char *id = g_strdup_printf ("%s, source %u", kinds[i].id, source + 1);
        assert_figures_fit (id, panel);
        tried++;
      }
  g_assert_cmpuint (tried, >=, 32);
}

static GtkWidget *
nth_child (GtkWidget *widget, guint n)
{
  GtkWidget *child = gtk_widget_get_first_child (widget);
  while (n-- > 0 && child != NULL)
    child = gtk_widget_get_next_sibling (child);
  return child;
}

static graphene_rect_t
place_in (GtkWidget *widget, GtkWidget *outer)
{
  graphene_rect_t place;
  g_assert_true (gtk_widget_compute_bounds (widget, outer, &place));
  return place;
}

/* The controls over the levels stand in one row where there is room, and else in two rows of alike
 * many, one below the other. */
static void
test_controls (Fixture *f, gconstpointer data)
{
  bw_window_show_page (f->window, "levels");
  BwPage *page = bw_window_get_shown_page (f->window);
  GtkWidget *signal = gtk_widget_get_ancestor (
      app_test_find (GTK_WIDGET (page), GTK_TYPE_DROP_DOWN, "content"), BW_TYPE_CHOOSER);
  GtkWidget *box = gtk_widget_get_parent (signal);
  g_assert_nonnull (nth_child (box, 5));
  g_assert_null (nth_child (box, 6));

  resize (f, USUAL_WIDTH, USUAL_HEIGHT);
  come_to_rest (f);
  float y = place_in (nth_child (box, 0), box).origin.y;
  g_assert_cmpfloat (place_in (nth_child (box, 5), box).origin.y, ==, y);

  resize (f, SMALL_WIDTH, SMALL_HEIGHT);
  come_to_rest (f);
  for (guint i = 0; i < 3; i++)
    {
      graphene_rect_t above = place_in (nth_child (box, i), box);
      graphene_rect_t below = place_in (nth_child (box, i + 3), box);
      g_assert_cmpfloat (above.origin.y, ==, y);
      g_assert_cmpfloat (below.origin.y, >=, above.origin.y + above.size.height);
      g_assert_cmpfloat (below.origin.x, ==, above.origin.x);
    }
}

/* The share of the drawing along the handle. */
static double
share_of (GtkWidget *paned)
{
  return gtk_paned_get_position (GTK_PANED (paned)) / (double) gtk_widget_get_width (paned);
}

/* The handle stays where the person has put it, as a share of the page, and only then: a window that
 * was smaller for a while has the figures where they were. */
static void
test_handle (Fixture *f, gconstpointer data)
{
  gboolean moved = FALSE;

  bw_window_show_page (f->window, "timing");
  resize (f, USUAL_WIDTH, USUAL_HEIGHT);
  come_to_rest (f);
  GtkWidget *panel = GTK_WIDGET (bw_page_get_panel (bw_window_get_shown_page (f->window)));
  GtkWidget *paned = app_test_find (panel, GTK_TYPE_PANED, NULL);
  double usual = share_of (paned);
  g_assert_cmpfloat (usual, >, 0.6);

  /* too narrow for the figures beside it, and back; then all heights that a window comes by */
  resize (f, SMALL_WIDTH, SMALL_HEIGHT);
  come_to_rest (f);
  resize (f, USUAL_WIDTH, USUAL_HEIGHT);
  come_to_rest (f);
  g_assert_cmpfloat_with_epsilon (share_of (paned), usual, 0.005);

  /* the toolkit puts it elsewhere, as it does when a child needs more room: it comes back */
  gtk_paned_set_position (GTK_PANED (paned), gtk_widget_get_width (paned) - 60);
  come_to_rest (f);
  resize (f, USUAL_WIDTH + 60, USUAL_HEIGHT);
  come_to_rest (f);
  g_assert_cmpfloat_with_epsilon (share_of (paned), usual, 0.03);

  gtk_widget_grab_focus (GTK_WIDGET (bw_picture_panel_get_area (bw_page_get_panel (
      bw_window_get_shown_page (f->window)))));
  g_signal_emit_by_name (paned, "cycle-handle-focus", FALSE, &moved);
  g_assert_true (gtk_widget_is_focus (paned));
  for (int i = 0; i < 3; i++)
    g_signal_emit_by_name (paned, "move-handle", GTK_SCROLL_PAGE_LEFT, &moved);
  come_to_rest (f);
  double put = share_of (paned);
  g_assert_true (moved);
  g_assert_cmpfloat (put, <, usual - 0.05);
  resize (f, USUAL_WIDTH, USUAL_HEIGHT);
  come_to_rest (f);
  g_assert_cmpfloat_with_epsilon (share_of (paned), put, 0.01);
}

/* A page scrolls as a whole only where its text is large. */
static void
assert_needs_no_scrolling (BwPage *page)
{
  GtkWidget *scroller = app_test_find (GTK_WIDGET (page), GTK_TYPE_SCROLLED_WINDOW, NULL);
  GtkAdjustment *along[] = {
    gtk_scrolled_window_get_hadjustment (GTK_SCROLLED_WINDOW (scroller)),
    gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (scroller)),
  };
  for (guint i = 0; i < G_N_ELEMENTS (along); i++)
    g_assert_cmpfloat (gtk_adjustment_get_upper (along[i]), <=,
                       gtk_adjustment_get_page_size (along[i]));
}

/* No page and no source needs more than the smallest window. */
static void
test_least (Fixture *f, gconstpointer data)
{
  guint n;
  const BwPageKind *kinds = bw_page_kinds (&n);

  resize (f, SMALL_WIDTH, SMALL_HEIGHT);
  for (guint i = 0; i < n; i++)
    for (guint source = 0; source < bw_document_count (f->document, BW_PART_SOURCE); source++)
      {
        int width, height;
        bw_window_show_page (f->window, kinds[i].id);
        bw_document_select (f->document, source, source % 3);
        come_to_rest (f);
        gtk_widget_measure (GTK_WIDGET (f->window), GTK_ORIENTATION_HORIZONTAL, -1, &width, NULL,
                            NULL, NULL);
        gtk_widget_measure (GTK_WIDGET (f->window), GTK_ORIENTATION_VERTICAL, SMALL_WIDTH, &height,
                            NULL, NULL, NULL);
        g_test_message ("%s, source %u: at least %d by %d", kinds[i].id, source, width, height);
        assert_needs_no_scrolling (bw_window_get_shown_page (f->window));
        g_assert_cmpint (width, <=, SMALL_WIDTH);
        g_assert_cmpint (height, <=, SMALL_HEIGHT);
      }
}

/* Large text: twice the toolkit's usual 10 points. */

#define LARGE_FONT "Sans 20"

static void
set_up_large (Fixture *f, gconstpointer data)
{
  g_object_set (gtk_settings_get_default (), "gtk-font-name", LARGE_FONT, NULL);
  app_test_set_up (f, data);
}

static void
tear_down_large (Fixture *f, gconstpointer data)
{
  app_test_tear_down (f, data);
  gtk_settings_reset_property (gtk_settings_get_default (), "gtk-font-name");
}

/* A label that says less than it was given. The button of a drop-down list may: the list and its
 * tooltip say all; and so may the name of the file, which the title of the window says as well. */
static void
check_whole (GtkWidget *widget, gpointer data)
{
  if (!GTK_IS_LABEL (widget) || !gtk_widget_get_mapped (widget)
      || gtk_widget_get_ancestor (widget, GTK_TYPE_DROP_DOWN) != NULL
      || gtk_widget_get_ancestor (widget, BW_TYPE_CHOOSER) != NULL
      || gtk_label_get_ellipsize (GTK_LABEL (widget)) == PANGO_ELLIPSIZE_MIDDLE)
    return;
  if (pango_layout_is_ellipsized (gtk_label_get_layout (GTK_LABEL (widget))))
    {
      g_test_message ("%s: cut: %s", (const char *) data, gtk_label_get_text (GTK_LABEL (widget)));
      g_test_fail ();
    }
}

/* Nothing that the window shows needs more than @width by @height: so nothing is cut at its
 * edge. */
static void
assert_has_room (Fixture *f, const char *id, int width, int height)
{
  int least_width, least_height;
  gtk_widget_measure (GTK_WIDGET (f->window), GTK_ORIENTATION_HORIZONTAL, -1, &least_width, NULL,
                      NULL, NULL);
  gtk_widget_measure (GTK_WIDGET (f->window), GTK_ORIENTATION_VERTICAL, MAX (width, least_width),
                      &least_height, NULL, NULL, NULL);
  g_test_message ("%s: at least %d by %d", id, least_width, least_height);
  if (least_width > width || least_height > height)
    {
      g_test_message ("%s: cut at %d by %d", id, width, height);
      g_test_fail ();
    }
}

/* Every view of every page, and the form of every part. */
static void
check_all (Fixture *f, int width, int height)
{
  guint n;
  const BwPageKind *kinds = bw_page_kinds (&n);

  for (BwPart part = BW_PART_SHEET; part <= BW_PART_SOURCE; part++)
    {
      g_autofree char *id = g_strdup_printf ("form %u", part);
      bw_window_edit (f->window, part);
      come_to_rest (f);
      assert_has_room (f, id, width, height);
      g_signal_emit_by_name (bw_window_get_editor (f->window), "done");
    }
  for (guint i = 0; i < n; i++)
    {
      bw_window_show_page (f->window, kinds[i].id);
      BwPage *page = bw_window_get_shown_page (f->window);
      g_autoptr (GPtrArray) views = views_of (page);
      for (guint view = 0; view < views->len; view++)
        {
          g_autofree char *id = g_strdup_printf ("%s %s", kinds[i].id,
                                                 (const char *) views->pdata[view]);
          bw_page_show_view (page, views->pdata[view]);
          come_to_rest (f);
          assert_has_room (f, id, width, height);
          app_test_each (GTK_WIDGET (f->window), check_whole, id);
        }
    }
}

static void
test_large_usual (Fixture *f, gconstpointer data)
{
  resize (f, USUAL_WIDTH, USUAL_HEIGHT);
  check_all (f, USUAL_WIDTH, USUAL_HEIGHT);
}

static void
test_large_wide (Fixture *f, gconstpointer data)
{
  resize (f, 1900, 1060);
  check_all (f, 1900, 1060);
}

static void
test_large_small (Fixture *f, gconstpointer data)
{
  resize (f, SMALL_WIDTH, SMALL_HEIGHT);
  check_all (f, SMALL_WIDTH, SMALL_HEIGHT);
}

#define ADD(name, func)                                                                            \
  g_test_add ("/layout/" name, Fixture, NULL, app_test_set_up, func, app_test_tear_down)
#define ADD_LARGE(name, func)                                                                      \
  g_test_add ("/layout/" name, Fixture, NULL, set_up_large, func, tear_down_large)

int
main (int argc, char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
  g_autoptr (GSettings) settings = g_settings_new ("org.breezeway.Breezeway");
  g_autoptr (BwColourScheme) scheme = bw_colour_scheme_new (
      settings); /* paddings and sizes of text */
  ADD ("usual", test_usual);
  ADD ("figures", test_figures);
  ADD ("controls", test_controls);
  ADD ("handle", test_handle);
  ADD ("small", test_small);
  ADD ("least", test_least);
  ADD_LARGE ("large/usual", test_large_usual);
  ADD_LARGE ("large/wide", test_large_wide);
  ADD_LARGE ("large/small", test_large_small);
  return g_test_run ();
}
