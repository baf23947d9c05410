/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "app-hands.h"

#include <math.h>
#include <string.h>

#include "app/fit/view.h"
#include "app/widgets/picture-panel.h"

/* What the next start opens, and how: the sheets, and the handles where they were left. Real keys and
 * the mouse in a real window. */

#define SCHEMA "org.breezeway.Breezeway"

/* For all tests: an application cannot be started twice, and is not run here but driven. */
static BwApplication *application = NULL;

typedef struct
{
  BwWindow *window;
  char *path;
} Fixture;

static void
set_up (Fixture *f, gconstpointer data)
{
  g_autoptr (GSettings) settings = g_settings_new (SCHEMA);

  g_settings_reset (settings, "side-width");
  g_settings_reset (settings, "drawing-shares");
  g_settings_reset (settings, "session");
  app_test_clear_drafts ();
  app_test_allow_toolkit_faults ();
  f->path = app_test_copy_sheet ("session.bench");
  f->window = app_test_open (application, f->path);
  app_test_give_focus (f->window);
}

static gboolean
no_window_is_left (void)
{
  return gtk_application_get_windows (GTK_APPLICATION (application)) == NULL;
}

static void
tear_down (Fixture *f, gconstpointer data)
{
  while (!no_window_is_left ())
    {
      gtk_window_destroy (gtk_application_get_active_window (GTK_APPLICATION (application)));
      app_test_settle ();
    }
  g_free (f->path);
}

/* The program is left with Control+Q and started again; returns the window in front. */
static BwWindow *
leave_and_start (void)
{
  app_test_xdotool ("key ctrl+q");
  ASSERT_COMES_TRUE (no_window_is_left ());
  g_application_activate (G_APPLICATION (application));
  GtkWindow *window = gtk_application_get_active_window (GTK_APPLICATION (application));
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  app_test_give_focus (window);
  return BW_WINDOW (window);
}

/* Handles */

#define HANDLE_JUMP 8

/* Drags the handle of @panes by the mouse, and returns where it stands then. It is where the person has
 * left it, give or take what the toolkit lets a thin handle jump by when it is taken. */
static int
drag (GtkPaned *panes, int by)
{
  GtkWidget *window = gtk_widget_get_ancestor (GTK_WIDGET (panes), GTK_TYPE_WINDOW);
  GtkWidget *after = gtk_paned_get_end_child (panes);
  gboolean across = gtk_orientable_get_orientation (GTK_ORIENTABLE (panes))
                    == GTK_ORIENTATION_HORIZONTAL;
  graphene_rect_t whole, rest;
  double dx, dy;

  gtk_native_get_surface_transform (GTK_NATIVE (window), &dx, &dy);
  g_assert_true (gtk_widget_compute_bounds (GTK_WIDGET (panes), window, &whole));
  g_assert_true (gtk_widget_compute_bounds (after, window, &rest));
  int x = (int) (dx + (across ? rest.origin.x - 1 : whole.origin.x + whole.size.width / 2));
  int y = (int) (dy + (across ? whole.origin.y + whole.size.height / 2 : rest.origin.y - 1));
  int to_x = across ? x + by : x;
  int to_y = across ? y : y + by;
  int before = gtk_paned_get_position (panes);
  g_autofree char *press = g_strdup_printf ("mousemove %d %d mousedown 1", x, y);
  g_autofree char *half = g_strdup_printf ("mousemove %d %d", (x + to_x) / 2, (y + to_y) / 2);
  g_autofree char *release = g_strdup_printf ("mousemove %d %d", to_x, to_y);

  app_test_xdotool (press);
  app_test_xdotool (half);
  app_test_xdotool (release);
  app_test_xdotool ("mouseup 1");
  g_assert_cmpint (ABS (gtk_paned_get_position (panes) - (before + by)), <=, HANDLE_JUMP);
  return gtk_paned_get_position (panes);
}

static GtkPaned *
drawing_panes (BwWindow *window, const char *page)
{
  return GTK_PANED (
      app_test_find (GTK_WIDGET (bw_window_get_page (window, page)), GTK_TYPE_PANED, "paned"));
}

static GtkPaned *
bench_panes (BwWindow *window)
{
  return GTK_PANED (app_test_find (GTK_WIDGET (window), GTK_TYPE_PANED, "panes"));
}

static GtkPaned *
fit_panes (BwWindow *window)
{
  return GTK_PANED (
      app_test_find (GTK_WIDGET (bw_window_get_page (window, "fit")), GTK_TYPE_PANED, "table"));
}

static gboolean
is_at (GtkPaned *panes, int position)
{
  return gtk_paned_get_position (panes) == position;
}

/* Shows the page and returns where its handle stands. */
static int
usual_place (BwWindow *window, const char *page)
{
  bw_window_show_page (window, page);
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  app_test_frames (2);
  return gtk_paned_get_position (drawing_panes (window, page));
}

/* Each handle that is moved comes back where it was left, to the pixel; one that is not stays at its
 * usual place. A page that is not looked at between two starts forgets nothing. */
static void
test_handles (Fixture *f, gconstpointer data)
{
  const int fit = drag (fit_panes (f->window), 57);
  const int bench = drag (bench_panes (f->window), 43);
  const int timing = usual_place (f->window, "timing");

  usual_place (f->window, "levels");
  const int levels = drag (drawing_panes (f->window, "levels"), -61);
  for (int starts = 0; starts < 2; starts++)
    {
      f->window = leave_and_start ();
      g_assert_cmpstr (bw_window_get_page_id (f->window), ==, "levels");
      ASSERT_COMES_TRUE (is_at (drawing_panes (f->window, "levels"), levels));
      ASSERT_COMES_TRUE (is_at (bench_panes (f->window), bench));
    }
  g_assert_cmpint (usual_place (f->window, "timing"), ==, timing);
  bw_window_show_page (f->window, "fit");
  ASSERT_COMES_TRUE (is_at (fit_panes (f->window), fit));
}

/* A handle that is put back to its usual place is there at the next start, too. */
static void
test_bench_back (Fixture *f, gconstpointer data)
{
  const int bench = gtk_paned_get_position (bench_panes (f->window));
  const int wider = drag (bench_panes (f->window), 43);

  f->window = leave_and_start ();
  ASSERT_COMES_TRUE (is_at (bench_panes (f->window), wider));
  gtk_paned_set_position (bench_panes (f->window), bench);
  f->window = leave_and_start ();
  ASSERT_COMES_TRUE (is_at (bench_panes (f->window), bench));
  g_assert_cmpint (bw_window_get_side_width (f->window), ==, 0);
}

/* A new window has the handles as they were last left, without a file as well. */
static void
test_new_window (Fixture *f, gconstpointer data)
{
  usual_place (f->window, "levels");
  const int levels = drag (drawing_panes (f->window, "levels"), -61);

  app_test_xdotool ("key ctrl+w");
  ASSERT_COMES_TRUE (no_window_is_left ());
  f->window = app_test_open (application, f->path);
  usual_place (f->window, "levels");
  ASSERT_COMES_TRUE (is_at (drawing_panes (f->window, "levels"), levels));
}

/* Whatever stands in the settings, the drawing and its figures are both seen. */
static void
test_bad_shares (Fixture *f, gconstpointer data)
{
  static const char *const bad[] = { "{'levels/wire/beside': <nan>}",
                                     "{'levels/wire/beside': <inf>}",
                                     "{'levels/wire/beside': <-0.5>}",
                                     "{'levels/wire/beside': <3.0>}",
                                     "{'levels/wire/beside': <'wide'>}" };
  const int levels = usual_place (f->window, "levels");
  g_autoptr (GVariantDict) names = g_variant_dict_new (bw_window_get_shares (f->window));

  for (guint i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      g_autoptr (GVariant) shares = g_variant_ref_sink (g_variant_new_parsed (bad[i]));
      bw_window_put_handles (f->window, 0, shares);
      app_test_frames (3);
      g_assert_cmpint (gtk_paned_get_position (drawing_panes (f->window, "levels")), ==, levels);
    }
}

/* A quit that is thought better of */

static GVariant *
kept_session (void)
{
  g_autoptr (GSettings) settings = g_settings_new (SCHEMA);
  return g_settings_get_value (settings, "session");
}

/* The session has @path, and nothing else. */
static gboolean
session_is (const char *path)
{
  g_autoptr (GVariant) session = kept_session ();
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autofree char *expected = g_file_get_uri (file);
  const char *uri;

  if (g_variant_n_children (session) != 1)
    return FALSE;
  g_autoptr (GVariant) entry = g_variant_get_child_value (session, 0);
  g_variant_get_child (entry, 0, "&s", &uri);
  return strcmp (uri, expected) == 0;
}

static void
change_title (BwWindow *window, const char *title)
{
  g_autoptr (GError) error = NULL;
  bw_document_set_field (bw_window_get_document (window), BW_PART_SHEET, 0,
                         app_test_field (BW_PART_SHEET, "title"), title, '.', &error);
  g_assert_no_error (error);
}

static guint
count_kept (void)
{
  g_autoptr (GVariant) session = kept_session ();
  return (guint) g_variant_n_children (session);
}

/* Two sheets are open, and one is changed. Control+Q closes the other one and asks; the person
 * cancels. What is kept is as if nobody had quit; when the one that stayed is closed, it alone is what
 * the next start opens. */
static void
test_cancelled (Fixture *f, gconstpointer data)
{
  g_autofree char *other_path = app_test_copy_sheet ("session-other.bench");
  BwWindow *other = app_test_open (application, other_path);

  change_title (f->window, "Changed");
  app_test_give_focus (other);
  app_test_xdotool ("key ctrl+q");
  g_assert_true (app_test_wait (app_test_question_is_open, NULL));
  g_assert_cmpuint (count_kept (), ==, 0);
  app_test_answer (GTK_RESPONSE_CANCEL);
  g_assert_cmpuint (count_kept (), ==, 0);
  g_assert_true (gtk_application_get_active_window (GTK_APPLICATION (application))
                 == GTK_WINDOW (f->window));

  /* Another sheet takes the place of the one that was closed; then this one goes, and it is left. */
  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (f->window), "win.save", NULL));
  app_test_give_focus (f->window);
  app_test_xdotool ("key ctrl+w");
  ASSERT_COMES_TRUE (no_window_is_left ());
  g_assert_true (session_is (f->path));
}

/* The same, and the quit is gone through with in the end: both sheets come back. */
static void
test_quit_after_cancel (Fixture *f, gconstpointer data)
{
  g_autofree char *other_path = app_test_copy_sheet ("session-other.bench");

  change_title (f->window, "Changed");
  app_test_xdotool ("key ctrl+q");
  app_test_answer (GTK_RESPONSE_CANCEL);
  BwWindow *other = app_test_open (application, other_path);
  app_test_give_focus (other);
  app_test_xdotool ("key ctrl+q");
  app_test_answer (GTK_RESPONSE_REJECT);
  ASSERT_COMES_TRUE (no_window_is_left ());
  g_assert_cmpuint (count_kept (), ==, 2);
}

/* Every other way in which a window that is asked to close stays. */
static void
test_stays (Fixture *f, gconstpointer data)
{
  /* What is typed is refused. */
  bw_window_edit (f->window, BW_PART_SOURCE);
  GtkEditable *level = GTK_EDITABLE (bw_editor_row_get_control (
      bw_editor_get_row (bw_window_get_editor (f->window), "video_level")));
  gtk_editable_set_text (level, "3 Hz");
  app_test_xdotool ("key ctrl+w");
  app_test_settle ();
  g_assert_false (no_window_is_left ());
  g_assert_cmpuint (count_kept (), ==, 0);
  gtk_editable_set_text (level, "0.7 V");

  /* A name is asked for, and none is given. */
  app_test_xdotool ("key ctrl+n");
  BwWindow *fresh = BW_WINDOW (gtk_application_get_active_window (GTK_APPLICATION (application)));
  g_assert_true (fresh != f->window);
  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (f->window), "win.save", NULL));
  gtk_window_close (GTK_WINDOW (f->window));
  change_title (fresh, "Never saved");
  gtk_window_close (GTK_WINDOW (fresh));
  app_test_answer (GTK_RESPONSE_ACCEPT);
  g_assert_true (app_test_wait (app_test_chooser_is_open, NULL));
  gtk_dialog_response (GTK_DIALOG (app_test_open_chooser ()), GTK_RESPONSE_CANCEL);
  app_test_settle ();
  g_assert_false (no_window_is_left ());

  /* So it is not the last sheet that was left: a file that is opened now is. */
  BwWindow *last = app_test_open (application, f->path);
  g_assert_true (last != fresh);
  gtk_window_close (GTK_WINDOW (fresh));
  app_test_answer (GTK_RESPONSE_REJECT);
  gtk_window_close (GTK_WINDOW (last));
  app_test_settle ();
  ASSERT_COMES_TRUE (no_window_is_left ());
  g_assert_true (session_is (f->path));
}

#define ADD(name, func) g_test_add ("/session/" name, Fixture, NULL, set_up, func, tear_down)

int
main (int argc, char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
  application = bw_application_new ();
  g_assert_true (g_application_register (G_APPLICATION (application), NULL, NULL));
  ADD ("handles", test_handles);
  ADD ("bench-back", test_bench_back);
  ADD ("new-window", test_new_window);
  ADD ("bad-shares", test_bad_shares);
  ADD ("cancelled", test_cancelled);
  ADD ("quit-after-cancel", test_quit_after_cancel);
  ADD ("stays", test_stays);
  return g_test_run ();
}
