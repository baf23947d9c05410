/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "app-hands.h"

#include <string.h>
#include <unistd.h>

#include <glib/gstdio.h>

/* What a window does when somebody else writes, replaces or deletes the file that it shows, and when
 * the same file is opened again. */

/* For all tests: an application cannot be started twice, and is not run here but driven. */
static BwApplication *application = NULL;

typedef struct
{
  BwWindow *window;
  BwDocument *document;
  char *path;
  GtkWidget *bar;
} Fixture;

static BwWindow *
active_window (void)
{
  return BW_WINDOW (gtk_application_get_active_window (GTK_APPLICATION (application)));
}

static guint
count_windows (void)
{
  return g_list_length (gtk_application_get_windows (GTK_APPLICATION (application)));
}

static void
open_path (const char *path)
{
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_application_open (G_APPLICATION (application), &file, 1, "");
}

static void
open_window (Fixture *f, gconstpointer data)
{
  f->path = app_test_copy_sheet ("shared.bench");
  f->window = app_test_open (application, f->path);
  f->document = g_object_ref (bw_window_get_document (f->window));
  f->bar = app_test_find (GTK_WIDGET (f->window), GTK_TYPE_INFO_BAR, "guard");
}

static void
set_up (Fixture *f, gconstpointer data)
{
  open_window (f, data);
  app_test_give_focus (f->window);
}

static void
tear_down (Fixture *f, gconstpointer data)
{
  while (active_window () != NULL)
    {
      gtk_window_destroy (GTK_WINDOW (active_window ()));
      app_test_settle ();
    }
  g_assert_finalize_object (f->document);
  g_free (f->path);
}

/* Somebody else gives the sheet another title. */
static void
change_file (Fixture *f)
{
  g_autofree char *text = app_test_file_text (f->path);
  GString *other = g_string_new (text);
  g_assert_cmpuint (g_string_replace (other, "title=Test bench", "title=Theirs", 0), ==, 1);
  g_assert_true (g_file_set_contents (f->path, other->str, -1, NULL));
  g_string_free (other, TRUE);
}

/* Another title of one's own. */
static void
change_sheet (Fixture *f)
{
  g_autoptr (GError) error = NULL;
  bw_document_set_field (f->document, BW_PART_SHEET, 0, app_test_field (BW_PART_SHEET, "title"),
                         "Mine", '.', &error);
  g_assert_no_error (error);
}

static const char *
title (Fixture *f)
{
  return bw_document_get_sheet (f->document)->title;
}

static gboolean
file_has_title (const char *path, const char *expected)
{
  g_autofree char *text = app_test_file_text (path);
  g_autofree char *line = g_strdup_printf ("\ntitle=%s\n", expected);
  return strstr (text, line) != NULL;
}

static const char *
bar_words (Fixture *f)
{
  return gtk_label_get_label (GTK_LABEL (app_test_find (f->bar, GTK_TYPE_LABEL, "guard_title")));
}

static void
press (Fixture *f, const char *button)
{
  g_signal_emit_by_name (app_test_find (f->bar, GTK_TYPE_BUTTON, button), "clicked");
}

/* The bar */

static void
test_bar (Fixture *f, gconstpointer data)
{
  g_assert_false (gtk_widget_get_mapped (f->bar));
  change_file (f);
  ASSERT_COMES_TRUE (gtk_widget_get_mapped (f->bar));
  g_assert_nonnull (strstr (bar_words (f), "“shared.bench” was changed"));
  g_assert_true (gtk_widget_get_visible (app_test_find (f->bar, GTK_TYPE_BUTTON, "load_theirs")));
  g_assert_cmpstr (title (f), ==, "Test bench"); /* nothing happens unasked */

  g_assert_cmpint (g_unlink (f->path), ==, 0);
  ASSERT_COMES_TRUE (strstr (bar_words (f), "“shared.bench” was moved or deleted") != NULL);
  g_assert_false (gtk_widget_get_visible (app_test_find (f->bar, GTK_TYPE_BUTTON, "load_theirs")));
  g_assert_true (bw_document_is_modified (f->document));
}

static void
test_bar_load_theirs (Fixture *f, gconstpointer data)
{
  change_sheet (f);
  change_file (f);
  ASSERT_COMES_TRUE (gtk_widget_get_mapped (f->bar));
  press (f, "load_theirs");
  ASSERT_COMES_TRUE (!gtk_widget_get_mapped (f->bar));
  g_assert_cmpstr (title (f), ==, "Theirs");
  g_assert_false (bw_document_is_modified (f->document));
  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (f->window), "win.undo", NULL));
  g_assert_cmpstr (title (f), ==, "Mine");
}

/* What cannot be read is said, and the sheet stays. */
static void
test_bar_load_damaged (Fixture *f, gconstpointer data)
{
  g_assert_true (g_file_set_contents (f->path, "no sheet", -1, NULL));
  ASSERT_COMES_TRUE (gtk_widget_get_mapped (f->bar));
  press (f, "load_theirs");
  g_assert_nonnull (bw_window_get_fault_text (f->window));
  g_assert_nonnull (strstr (bw_window_get_fault_text (f->window), f->path));
  g_assert_cmpstr (title (f), ==, "Test bench");
}

static void
test_bar_keep_mine (Fixture *f, gconstpointer data)
{
  change_file (f);
  ASSERT_COMES_TRUE (gtk_widget_get_mapped (f->bar));
  press (f, "keep_mine");
  ASSERT_COMES_TRUE (!gtk_widget_get_mapped (f->bar));
  g_assert_true (file_has_title (f->path, "Theirs")); /* until it is saved */
  g_assert_true (bw_document_is_modified (f->document));
  app_test_xdotool ("key ctrl+s");
  ASSERT_COMES_TRUE (!bw_document_is_modified (f->document));
  g_assert_true (file_has_title (f->path, "Test bench"));
}

static void
test_bar_keep_copy (Fixture *f, gconstpointer data)
{
  g_autofree char *copy = app_test_scratch_path ("shared (mine).bench");
  g_autoptr (GFile) file = g_file_new_for_path (copy);

  g_unlink (copy); /* of an earlier run */
  change_file (f);
  ASSERT_COMES_TRUE (gtk_widget_get_mapped (f->bar));
  press (f, "keep_as_copy");
  ASSERT_COMES_TRUE (app_test_open_chooser () != NULL);
  g_autofree char *name = gtk_file_chooser_get_current_name (
      GTK_FILE_CHOOSER (app_test_open_chooser ()));
  g_assert_cmpstr (name, ==, "shared (mine).bench");
  app_test_choose_name (file);
  ASSERT_COMES_TRUE (!gtk_widget_get_mapped (f->bar));
  g_assert_true (file_has_title (copy, "Test bench"));
  g_assert_true (file_has_title (f->path, "Theirs"));
  g_assert_cmpstr (g_file_peek_path (bw_document_get_file (f->document)), ==, copy);
}

/* The question before a save */

static void
save_over_theirs (Fixture *f)
{
  change_sheet (f);
  change_file (f);
  app_test_xdotool ("key ctrl+s");
  ASSERT_COMES_TRUE (app_test_open_question () != NULL);
}

static void
test_question (Fixture *f, gconstpointer data)
{
  save_over_theirs (f);
  GtkWidget *question = app_test_open_question ();
  GtkWidget *lines = app_test_find (question, GTK_TYPE_LABEL, "lines");
  GtkWidget *cancel = gtk_dialog_get_widget_for_response (GTK_DIALOG (question),
                                                          GTK_RESPONSE_CANCEL);
  g_autofree char *words = NULL;

  g_object_get (question, "text", &words, NULL);
  g_assert_nonnull (strstr (words, "shared.bench"));
  g_assert_cmpstr (gtk_label_get_label (GTK_LABEL (lines)), ==, "• Title: “Mine” → “Theirs”");
  g_assert_null (gtk_widget_get_prev_sibling (cancel)); /* Cancel first */
  app_test_answer (GTK_RESPONSE_CANCEL);
  g_assert_true (file_has_title (f->path, "Theirs"));
  g_assert_cmpstr (title (f), ==, "Mine");
  g_assert_true (bw_document_is_modified (f->document));
}

/* Escape does nothing as well. */
static void
test_question_escape (Fixture *f, gconstpointer data)
{
  save_over_theirs (f);
  GdkSurface *surface = gtk_native_get_surface (GTK_NATIVE (app_test_open_question ()));
  g_assert_nonnull (surface);
  ASSERT_COMES_TRUE (gtk_window_is_active (GTK_WINDOW (app_test_open_question ())));
  app_test_xdotool ("key Escape");
  ASSERT_COMES_TRUE (app_test_open_question () == NULL);
  g_assert_true (file_has_title (f->path, "Theirs"));
  g_assert_cmpstr (title (f), ==, "Mine");
}

static void
test_question_write_over (Fixture *f, gconstpointer data)
{
  save_over_theirs (f);
  app_test_answer (BW_GUARD_KEEP_MINE);
  g_assert_true (file_has_title (f->path, "Mine"));
  g_assert_false (bw_document_is_modified (f->document));
}

static void
test_question_load_theirs (Fixture *f, gconstpointer data)
{
  save_over_theirs (f);
  app_test_answer (BW_GUARD_LOAD_THEIRS);
  g_assert_cmpstr (title (f), ==, "Theirs");
  g_assert_true (file_has_title (f->path, "Theirs"));
}

static void
test_question_copy (Fixture *f, gconstpointer data)
{
  g_autofree char *copy = app_test_scratch_path ("second copy.bench");
  g_autoptr (GFile) file = g_file_new_for_path (copy);

  g_unlink (copy); /* of an earlier run */
  save_over_theirs (f);
  app_test_answer (BW_GUARD_KEEP_AS_COPY);
  app_test_choose_name (file);
  ASSERT_COMES_TRUE (!bw_document_is_modified (f->document));
  g_assert_true (file_has_title (copy, "Mine"));
  g_assert_true (file_has_title (f->path, "Theirs"));
}

static void
test_question_when_gone (Fixture *f, gconstpointer data)
{
  g_assert_cmpint (g_unlink (f->path), ==, 0);
  change_sheet (f);
  app_test_xdotool ("key ctrl+s");
  ASSERT_COMES_TRUE (app_test_open_question () != NULL);
  g_assert_null (gtk_dialog_get_widget_for_response (GTK_DIALOG (app_test_open_question ()),
                                                     BW_GUARD_LOAD_THEIRS));
  app_test_answer (BW_GUARD_KEEP_MINE);
  g_assert_true (file_has_title (f->path, "Mine"));
}

/* Closing */

static void
close_and_save (Fixture *f)
{
  change_sheet (f);
  change_file (f);
  app_test_xdotool ("key ctrl+w");
  app_test_answer (GTK_RESPONSE_ACCEPT);
  ASSERT_COMES_TRUE (app_test_open_question () != NULL);
}

/* A window that was to be saved and closed is closed once it is saved. */
static void
test_close_write_over (Fixture *f, gconstpointer data)
{
  close_and_save (f);
  app_test_answer (BW_GUARD_KEEP_MINE);
  ASSERT_COMES_TRUE (count_windows () == 0);
  g_assert_true (file_has_title (f->path, "Mine"));
}

/* And not if one thinks better of it: neither now nor with the next save. */
static void
test_close_given_up (Fixture *f, gconstpointer data)
{
  close_and_save (f);
  app_test_answer (GTK_RESPONSE_CANCEL);
  g_assert_cmpuint (count_windows (), ==, 1);
  app_test_xdotool ("key ctrl+s");
  ASSERT_COMES_TRUE (app_test_open_question () != NULL);
  app_test_answer (BW_GUARD_KEEP_MINE);
  ASSERT_COMES_TRUE (!bw_document_is_modified (f->document));
  g_assert_cmpuint (count_windows (), ==, 1);
}

/* One file, one window. The windows themselves move the focus here. On the screen of the tests, without a
 * window manager, they can only as long as no hand did, so these tests come first. */

static BwWindow *
second_window (Fixture *f)
{
  g_autofree char *path = app_test_copy_sheet ("second.bench");
  open_path (path);
  g_assert_cmpuint (count_windows (), ==, 2);
  BwWindow *second = active_window ();
  g_assert_true (second != f->window);
  g_assert_true (app_test_wait (app_test_is_mapped, second));
  return second;
}

static void
test_opened_twice (Fixture *f, gconstpointer data)
{
  g_autofree char *link = app_test_scratch_path ("link to shared.bench");

  BwWindow *second = second_window (f);
  open_path (f->path);
  g_assert_cmpuint (count_windows (), ==, 2);
  ASSERT_COMES_TRUE (active_window () == f->window);

  g_unlink (link); /* of an earlier run */
  g_assert_cmpint (symlink (f->path, link), ==, 0);
  gtk_window_present (GTK_WINDOW (second));
  ASSERT_COMES_TRUE (active_window () == second);
  open_path (link);
  g_assert_cmpuint (count_windows (), ==, 2);
  ASSERT_COMES_TRUE (active_window () == f->window);
}

static void
test_opened_twice_from_recent (Fixture *f, gconstpointer data)
{
  g_autofree char *uri = g_filename_to_uri (f->path, NULL, NULL);

  second_window (f);
  g_action_group_activate_action (G_ACTION_GROUP (application), "open-recent",
                                  g_variant_new_string (uri));
  g_assert_cmpuint (count_windows (), ==, 2);
  ASSERT_COMES_TRUE (active_window () == f->window);
}

/* Names @path in the chooser. */
static void
save_as (const char *path)
{
  g_autoptr (GFile) file = g_file_new_for_path (path);
  app_test_choose_name (file);
  if (g_file_test (path, G_FILE_TEST_EXISTS))
    app_test_agree_to_replace ();
}

/* A sheet is not saved over the file of another window. */
static void
test_save_over_open (Fixture *f, gconstpointer data)
{
  BwWindow *second = second_window (f);
  g_autoptr (GFile) file = g_file_new_for_path (f->path);
  g_autofree char *before = app_test_file_text (f->path);

  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (second), "win.save-as", NULL));
  save_as (f->path);
  ASSERT_COMES_TRUE (bw_window_get_fault_text (second) != NULL);
  g_assert_nonnull (strstr (bw_window_get_fault_text (second), f->path));
  g_autofree char *after = app_test_file_text (f->path);
  g_assert_cmpstr (after, ==, before);
  g_assert_false (bw_file_is_same (bw_document_get_file (bw_window_get_document (second)), file));
}

/* To be saved and then closed, but the name was not to be had: a later save does not close it. */
static void
test_close_without_name (Fixture *f, gconstpointer data)
{
  g_autofree char *path = app_test_scratch_path ("named later.bench");
  BwWindow *second = bw_application_new_window (application);
  BwDocument *document = bw_window_get_document (second);

  g_unlink (path); /* of an earlier run */
  bw_document_set_monitor (document, bw_catalogue_monitors (app_test_catalogue ())->pdata[0]);
  gtk_window_close (GTK_WINDOW (second));
  app_test_answer (GTK_RESPONSE_ACCEPT);
  save_as (f->path);
  ASSERT_COMES_TRUE (bw_window_get_fault_text (second) != NULL);
  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (second), "win.save", NULL));
  save_as (path);
  ASSERT_COMES_TRUE (!bw_document_is_modified (document));
  app_test_settle ();
  g_assert_cmpuint (count_windows (), ==, 2);
}

#define ADD_FIRST(name, func)                                                                      \
  g_test_add ("/outside/" name, Fixture, NULL, open_window, func, tear_down)
#define ADD(name, func) g_test_add ("/outside/" name, Fixture, NULL, set_up, func, tear_down)

int
main (int argc, char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
  application = bw_application_new ();
  g_assert_true (g_application_register (G_APPLICATION (application), NULL, NULL));
  g_application_hold (G_APPLICATION (application));
  app_test_clear_drafts ();
  ADD_FIRST ("opened-twice", test_opened_twice);
  ADD_FIRST ("opened-from-recent", test_opened_twice_from_recent);
  ADD ("bar", test_bar);
  ADD ("bar/load-theirs", test_bar_load_theirs);
  ADD ("bar/load-damaged", test_bar_load_damaged);
  ADD ("bar/keep-mine", test_bar_keep_mine);
  ADD ("bar/keep-copy", test_bar_keep_copy);
  ADD ("question", test_question);
  ADD ("question/escape", test_question_escape);
  ADD ("question/write-over", test_question_write_over);
  ADD ("question/load-theirs", test_question_load_theirs);
  ADD ("question/copy", test_question_copy);
  ADD ("question/when-gone", test_question_when_gone);
  ADD ("close/write-over", test_close_write_over);
  ADD ("close/given-up", test_close_given_up);
  ADD ("save-over-open", test_save_over_open);
  ADD ("close/without-name", test_close_without_name);
  return g_test_run ();
}
