/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "app-hands.h"

#include <gdk/x11/gdkx.h>

#define TABS_MAX 120
#define FRAMES_OF_AN_EVENT 2 /* motion is told with the next frame, and drawn in the one after */

gboolean
app_test_on_tick (gpointer data)
{
  return G_SOURCE_CONTINUE;
}

static gboolean
is_true (gpointer data)
{
  return *(gboolean *) data;
}

static gboolean
on_frame (GtkWidget *window, GdkFrameClock *clock, gpointer left)
{
  return --*(guint *) left > 0;
}

static void
on_no_more_frames (gpointer left)
{
  *(guint *) left = 0;
}

static gboolean
is_zero (gpointer number)
{
  return *(guint *) number == 0;
}

static GtkWidget *
seen_window (void)
{
  GListModel *windows = gtk_window_get_toplevels ();
  for (guint i = 0; i < g_list_model_get_n_items (windows); i++)
    {
      g_autoptr (GtkWidget) widget = g_list_model_get_item (windows, i);
      if (gtk_widget_get_mapped (widget))
        return widget;
    }
  return NULL;
}

/* Lets a window draw @n more frames, or until it is gone. */
void
app_test_frames (guint n)
{
  GtkWidget *window = seen_window ();
  if (window == NULL || n == 0)
    return;
  gtk_widget_add_tick_callback (window, on_frame, &n, on_no_more_frames);
  g_assert_true (app_test_wait (is_zero, &n));
}

/* Lets one thing after the other happen, @n at most, as long as @goes_on. */
void
app_test_steps (guint n, gboolean (*goes_on) (gpointer data), gpointer data)
{
  for (guint i = 0; i < n && goes_on (data); i++)
    g_main_context_iteration (NULL, TRUE);
}

static void
on_tool_done (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (GError) error = NULL;
  gboolean done = g_subprocess_wait_check_finish (G_SUBPROCESS (source), result, &error);
  g_assert_no_error (error);
  g_assert_true (done);
  *(gboolean *) data = TRUE;
}

/* Runs xdotool with the words of @command, while the window goes on working. */
void
app_test_xdotool (const char *command)
{
  g_autofree char *line = g_strconcat ("xdotool ", command, NULL);
  g_auto (GStrv) words = NULL;
  g_autoptr (GError) error = NULL;
  gboolean done = FALSE;

  g_assert_true (g_shell_parse_argv (line, NULL, &words, NULL));
  g_autoptr (GSubprocess) tool = g_subprocess_newv ((const char *const *) words,
                                                    G_SUBPROCESS_FLAGS_NONE, &error);
  g_assert_no_error (error);
  g_subprocess_wait_check_async (tool, NULL, on_tool_done, &done);
  g_assert_true (app_test_wait (is_true, &done));
  /* The server has answered, so that the events before its answer are here. */
  gdk_display_sync (gdk_display_get_default ());
  app_test_settle ();
  app_test_frames (FRAMES_OF_AN_EVENT);
}

gboolean
app_test_is_mapped (gpointer widget)
{
  return gtk_widget_get_mapped (widget);
}

gboolean
app_test_is_active (gpointer window)
{
  return gtk_window_is_active (window);
}

/* There is no window manager on the test's screen, so the window is given the focus by hand. */
void
app_test_give_focus (gpointer window)
{
  GdkSurface *surface = gtk_native_get_surface (GTK_NATIVE (window));
  g_autofree char *focus = g_strdup_printf ("windowfocus %lu",
                                            (gulong) gdk_x11_surface_get_xid (surface));
  app_test_xdotool (focus);
  g_assert_true (app_test_wait (app_test_is_active, window));
}

/* Opens the sheet at @path as the program is asked to from outside; its window, once it is
 * drawn. */
BwWindow *
app_test_open (BwApplication *application, const char *path)
{
  g_autoptr (GFile) file = g_file_new_for_path (path);

  g_application_open (G_APPLICATION (application), &file, 1, "");
  GtkWindow *window = gtk_application_get_active_window (GTK_APPLICATION (application));
  g_assert_true (app_test_wait (app_test_is_mapped, window));
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  return BW_WINDOW (window);
}

/* Whether the focus is at @widget, or in it. */
gboolean
app_test_focus_is_in (BwWindow *window, GtkWidget *widget)
{
  GtkWidget *focus = gtk_window_get_focus (GTK_WINDOW (window));
  return focus != NULL && (focus == widget || gtk_widget_is_ancestor (focus, widget));
}

/* Presses @key until the focus is at @widget, or in it. */
void
app_test_go_to (BwWindow *window, const char *key, GtkWidget *widget)
{
  g_autofree char *command = g_strconcat ("key ", key, NULL);
  for (guint i = 0; i < TABS_MAX && !app_test_focus_is_in (window, widget); i++)
    app_test_xdotool (command);
  g_assert_true (app_test_focus_is_in (window, widget));
}

/* The question that is open; NULL if there is none. */
GtkWidget *
app_test_open_question (void)
{
  GListModel *windows = gtk_window_get_toplevels ();
  for (guint i = 0; i < g_list_model_get_n_items (windows); i++)
    {
      g_autoptr (GtkWidget) widget = g_list_model_get_item (windows, i);
      if (GTK_IS_MESSAGE_DIALOG (widget) && gtk_widget_get_visible (widget))
        return widget;
    }
  return NULL;
}

gboolean
app_test_question_is_open (gpointer data)
{
  return app_test_open_question () != NULL;
}

/* Answers the question that is open, or about to open. */
void
app_test_answer (int response)
{
  g_assert_true (app_test_wait (app_test_question_is_open, NULL));
  GtkWidget *question = app_test_open_question ();
  gtk_dialog_response (GTK_DIALOG (question), response);
  app_test_settle ();
  g_assert_true (app_test_open_question () != question);
}

/* The chooser asks whether the file that is there is to be replaced: it is. From GTK 4.10 on the
 * answers are numbered. */
void
app_test_agree_to_replace (void)
{
  g_assert_true (app_test_wait (app_test_question_is_open, NULL));
  GtkDialog *question = GTK_DIALOG (app_test_open_question ());
  gboolean named = gtk_dialog_get_widget_for_response (question, GTK_RESPONSE_ACCEPT) != NULL;
  app_test_answer (named ? GTK_RESPONSE_ACCEPT : 1);
}

/* The file chooser that is open; NULL if there is none. */
GtkWidget *
app_test_open_chooser (void)
{
  GListModel *windows = gtk_window_get_toplevels ();

  app_test_allow_toolkit_faults (); /* one of them is the chooser's */
  for (guint i = 0; i < g_list_model_get_n_items (windows); i++)
    {
      g_autoptr (GtkWidget) widget = g_list_model_get_item (windows, i);
      if (GTK_IS_FILE_CHOOSER (widget) && gtk_widget_get_visible (widget))
        return widget;
    }
  return NULL;
}

gboolean
app_test_chooser_is_open (gpointer data)
{
  return app_test_open_chooser () != NULL;
}

/* It starts in a folder of its own, and only then takes another. */
static gboolean
has_folder (gpointer data)
{
  g_autoptr (GFile) folder = gtk_file_chooser_get_current_folder (GTK_FILE_CHOOSER (data));
  return folder != NULL && gtk_widget_get_mapped (data);
}

static gboolean
file_is_chosen (gpointer data)
{
  g_autoptr (GFile) file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (app_test_open_chooser ()));
  return file != NULL && g_file_equal (file, data);
}

/* Names @file in the chooser that is about to open, and takes it. */
void
app_test_choose_name (GFile *file)
{
  g_autoptr (GFile) folder = g_file_get_parent (file);
  g_autofree char *name = g_file_get_basename (file);

  g_assert_true (app_test_wait (app_test_chooser_is_open, NULL));
  GtkFileChooser *chooser = GTK_FILE_CHOOSER (app_test_open_chooser ());
  g_assert_true (app_test_wait (has_folder, chooser));
  g_assert_true (gtk_file_chooser_set_current_folder (chooser, folder, NULL));
  gtk_file_chooser_set_current_name (chooser, name);
  g_assert_true (app_test_wait (file_is_chosen, file));
  gtk_dialog_response (GTK_DIALOG (chooser), GTK_RESPONSE_ACCEPT);
}
