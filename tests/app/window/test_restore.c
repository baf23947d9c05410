/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "app-hands.h"

#include <signal.h>
#include <string.h>

#include <glib/gstdio.h>

#include "app/bench/row-list.h"
#include "app/window/drafts.h"

/* A program that ended before its sheets were saved, and the next start. */

/* What a person may lose at most when the power fails. */
#define SAFE_AFTER_US (5 * G_USEC_PER_SEC)

#define TYPED "Typed and not taken"

/* The program as a process of its own: this test program started with TYPE and a path. */

#define TYPE "--type"
#define READY "typed\n"

/* Opens the sheet at @path and types a name for the first source by the keyboard, which stays in its
 * field. Then it says so and goes on as the program does, until it is ended. */
static int
type_and_go_on (char *program, const char *path)
{
  g_autoptr (BwApplication) application = bw_application_new ();
  char *arguments[] = { program, NULL };

  gtk_init ();
  g_assert_true (g_application_register (G_APPLICATION (application), NULL, NULL));
  BwWindow *window = app_test_open (application, path);
  BwBenchList *sources = bw_bench_panel_get_list (bw_window_get_bench (window), BW_PART_SOURCE);
  app_test_give_focus (window);
  app_test_go_to (window, "shift+Tab",
                  app_test_find (GTK_WIDGET (sources), BW_TYPE_ROW_LIST, NULL));
  app_test_xdotool ("key Return");
  ASSERT_COMES_TRUE (bw_window_is_editing (window));
  app_test_xdotool ("key ctrl+a type '" TYPED "'");
  ASSERT_COMES_TRUE (strcmp (gtk_editable_get_text (GTK_EDITABLE (bw_editor_row_get_control (
                                 bw_editor_get_row (bw_window_get_editor (window), "name")))),
                             TYPED)
                     == 0);
  g_print (READY);
  return g_application_run (G_APPLICATION (application), 1, arguments);
}

/* Starts the program with the sheet at @path; returns when the name is typed. */
static GSubprocess *
start_and_type (const char *path)
{
  g_autoptr (GError) error = NULL;
  char said[sizeof READY] = "";
  GSubprocess *program = g_subprocess_new (G_SUBPROCESS_FLAGS_STDOUT_PIPE, &error, "/proc/self/exe",
                                           TYPE, path, NULL);
  g_assert_no_error (error);
  g_input_stream_read_all (g_subprocess_get_stdout_pipe (program), said, strlen (READY), NULL, NULL,
                           &error);
  g_assert_no_error (error);
  g_assert_cmpstr (said, ==, READY);
  return program;
}

static gboolean
is_in_draft (const char *words)
{
  if (app_test_count_drafts () == 0)
    return FALSE;
  g_autofree char *text = app_test_read_draft ();
  return strstr (text, words) != NULL;
}

static char *
question_words (void)
{
  char *words = NULL;
  g_object_get (app_test_open_question (), "text", &words, NULL);
  return words;
}

static char *
explanation_words (void)
{
  char *words = NULL;
  g_object_get (app_test_open_question (), "secondary-text", &words, NULL);
  return words;
}

static const char *
question_lines (void)
{
  return gtk_label_get_label (
      GTK_LABEL (app_test_find (app_test_open_question (), GTK_TYPE_LABEL, "lines")));
}

/* Killed in the midst of typing: five seconds later at most nothing is lost. The next start offers
 * it, with what differs. */
static void
test_killed (void)
{
  app_test_clear_drafts ();
  g_autofree char *path = app_test_copy_sheet ("killed.bench");
  g_autofree char *before = app_test_file_text (path);
  g_autoptr (GSubprocess) program = start_and_type (path);
  gint64 typed = g_get_monotonic_time ();

  ASSERT_COMES_TRUE (is_in_draft ("text=" TYPED));
  g_assert_cmpint (g_get_monotonic_time () - typed, <=, SAFE_AFTER_US);
  g_subprocess_force_exit (program);
  g_assert_true (g_subprocess_wait (program, NULL, NULL));
  g_assert_true (g_subprocess_get_if_signaled (program));
  g_assert_cmpint (g_subprocess_get_term_sig (program), ==, SIGKILL);

  g_autoptr (BwApplication) application = bw_application_new ();
  g_assert_true (g_application_register (G_APPLICATION (application), NULL, NULL));
  g_application_activate (G_APPLICATION (application));
  g_assert_true (app_test_wait (app_test_question_is_open, NULL));
  g_autofree char *words = question_words ();
  g_assert_cmpstr (words, ==, "Restore the changes to “killed.bench”?");
  g_assert_cmpstr (question_lines (), ==,
                   "• Source “Tape deck with the founder's film”, Name: “" TYPED "” was typed");

  app_test_answer (GTK_RESPONSE_ACCEPT);
  BwWindow *window = BW_WINDOW (gtk_application_get_active_window (GTK_APPLICATION (application)));
  BwDocument *document = bw_window_get_document (window);
  g_assert_cmpstr (g_file_peek_path (bw_document_get_file (document)), ==, path);
  g_assert_cmpstr (bw_sheet_source (bw_document_get_sheet (document), 0)->name, ==, TYPED);
  g_assert_true (bw_document_is_modified (document));
  g_autofree char *after = app_test_file_text (path);
  g_assert_cmpstr (after, ==, before);

  /* It is in a draft until it is saved */
  ASSERT_COMES_TRUE (is_in_draft ("name=" TYPED));
  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (window), "win.save", NULL));
  g_assert_false (bw_document_is_modified (document));
  g_assert_cmpuint (app_test_count_drafts (), ==, 0);
  app_test_close (window);
}

/* Ended by the system, it writes first what is in no draft yet. */
static void
test_ended (void)
{
  app_test_clear_drafts ();
  g_autofree char *path = app_test_copy_sheet ("ended.bench");
  g_autoptr (GSubprocess) program = start_and_type (path);

  g_subprocess_send_signal (program, SIGTERM);
  g_assert_true (g_subprocess_wait (program, NULL, NULL));
  g_assert_true (g_subprocess_get_successful (program));
  g_assert_true (is_in_draft ("text=" TYPED));
  app_test_clear_drafts ();
}

/* Drafts that this program left behind, and the answers */

typedef struct
{
  char *path;
  BwWindow *parent;
  BwWindow *restored; /* nullable: the one in which a draft was restored last */
} Fixture;

static void
set_up (Fixture *f, gconstpointer data)
{
  app_test_clear_drafts ();
  f->path = app_test_copy_sheet ("offered.bench");
  g_autoptr (BwDocument) document = bw_document_new (app_test_catalogue ());
  f->parent = app_test_window_new (document);
}

static void
tear_down (Fixture *f, gconstpointer data)
{
  g_assert_null (app_test_open_question ());
  if (f->restored != NULL)
    app_test_close (f->restored);
  app_test_close (f->parent);
  g_free (f->path);
}

static void
set_title (BwDocument *document, const char *title)
{
  g_autoptr (GError) error = NULL;
  bw_document_set_field (document, BW_PART_SHEET, 0, app_test_field (BW_PART_SHEET, "title"), title,
                         '.', &error);
  g_assert_no_error (error);
}

static void
leave_title (Fixture *f, const char *title)
{
  g_autoptr (BwDocument) document = app_test_document_at (f->path);
  BwWindow *window = app_test_window_new (document);
  set_title (document, title);
  bw_window_flush_draft (window);
  app_test_close (window);
}

static BwWindow *
open_here (gpointer data, GFile *file)
{
  Fixture *f = data;
  g_autoptr (BwDocument) document = bw_document_new (app_test_catalogue ());
  g_assert_null (f->restored);
  f->restored = app_test_window_new (document);
  if (file != NULL)
    bw_window_open (f->restored, file);
  return f->restored;
}

static void
offer (Fixture *f)
{
  bw_drafts_offer (f->parent, app_test_catalogue (), open_here, f);
}

static const char *
restored_title (Fixture *f)
{
  return bw_document_get_sheet (bw_window_get_document (f->restored))->title;
}

static void
test_restore (Fixture *f, gconstpointer data)
{
  g_autofree char *before = app_test_file_text (f->path);

  leave_title (f, "Drafted");
  offer (f);
  g_autofree char *explanation = explanation_words ();
  g_autofree char *folder = g_path_get_dirname (f->path);
  g_assert_nonnull (strstr (explanation, folder));
  g_assert_nonnull (strstr (explanation, "(the file → the draft)"));
  g_assert_cmpstr (question_lines (), ==, "• Title: “Test bench” → “Drafted”");
  app_test_answer (GTK_RESPONSE_ACCEPT);
  g_assert_cmpstr (restored_title (f), ==, "Drafted");
  g_autofree char *after = app_test_file_text (f->path);
  g_assert_cmpstr (after, ==, before); /* it is saved only on request */

  /* In use again, it is offered to nobody else; undone, it is not wanted */
  g_assert_cmpuint (app_test_count_drafts (), ==, 1);
  offer (f);
  g_assert_null (app_test_open_question ());
  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (f->restored), "win.undo", NULL));
  g_assert_cmpstr (restored_title (f), ==, "Test bench");
  g_assert_cmpuint (app_test_count_drafts (), ==, 0);
}

/* Later: it stays where it is, and is offered again. So it is if the question is just closed. */
static void
test_later (Fixture *f, gconstpointer data)
{
  static const int answers[] = { GTK_RESPONSE_CANCEL, GTK_RESPONSE_DELETE_EVENT };

  leave_title (f, "Drafted");
  for (guint i = 0; i < G_N_ELEMENTS (answers); i++)
    {
      offer (f);
      app_test_answer (answers[i]);
      g_assert_null (f->restored);
      g_assert_cmpuint (app_test_count_drafts (), ==, 1);
    }
  offer (f);
  app_test_answer (GTK_RESPONSE_ACCEPT);
  g_assert_cmpstr (restored_title (f), ==, "Drafted");
}

static void
test_keep_file (Fixture *f, gconstpointer data)
{
  leave_title (f, "Drafted");
  offer (f);
  app_test_answer (GTK_RESPONSE_REJECT);
  g_assert_null (f->restored);
  g_assert_cmpuint (app_test_count_drafts (), ==, 0);
}

/* The window that is asked over may be closed meanwhile: nothing is lost. */
static void
test_parent_closed (Fixture *f, gconstpointer data)
{
  leave_title (f, "Drafted");
  offer (f);
  app_test_close (f->parent);
  g_assert_null (app_test_open_question ());
  g_assert_cmpuint (app_test_count_drafts (), ==, 1);
  g_autoptr (BwDocument) document = bw_document_new (app_test_catalogue ());
  f->parent = app_test_window_new (document);
  offer (f);
  app_test_answer (GTK_RESPONSE_REJECT);
}

static void
test_never_saved (Fixture *f, gconstpointer data)
{
  g_autoptr (BwDocument) document = bw_document_new (app_test_catalogue ());

  set_title (document, "Just begun");
  BwWindow *window = app_test_window_new (document);
  set_title (document, "Just begun here");
  bw_window_flush_draft (window);
  app_test_close (window);
  offer (f);
  g_autofree char *words = question_words ();
  g_assert_cmpstr (words, ==, "Restore “Just begun here”, which was never saved?");
  app_test_answer (GTK_RESPONSE_ACCEPT);
  g_assert_cmpstr (restored_title (f), ==, "Just begun here");
  g_assert_null (bw_document_get_file (bw_window_get_document (f->restored)));
}

/* The file is no longer there: the window says so, and the next save would ask. */
static void
test_file_gone (Fixture *f, gconstpointer data)
{
  leave_title (f, "Drafted");
  g_assert_cmpint (g_unlink (f->path), ==, 0);
  offer (f);
  g_autofree char *explanation = explanation_words ();
  g_assert_nonnull (strstr (explanation, "no longer there"));
  app_test_answer (GTK_RESPONSE_ACCEPT);
  BwDocument *document = bw_window_get_document (f->restored);
  g_assert_cmpstr (restored_title (f), ==, "Drafted");
  g_assert_cmpstr (g_file_peek_path (bw_document_get_file (document)), ==, f->path);
  g_assert_cmpint (bw_document_get_file_state (document), ==, BW_FILE_GONE);
}

/* The file is another one than the draft began from: that is said, and the draft is held against the
 * file as it is now. */
static void
test_file_changed (Fixture *f, gconstpointer data)
{
  g_autoptr (GError) error = NULL;

  leave_title (f, "Drafted");
  g_autoptr (BwDocument) other = app_test_document_at (f->path);
  set_title (other, "Theirs");
  bw_document_save (other, bw_document_get_file (other), &error);
  g_assert_no_error (error);
  offer (f);
  g_autofree char *explanation = explanation_words ();
  g_assert_nonnull (strstr (explanation, "was changed since then"));
  g_assert_cmpstr (question_lines (), ==, "• Title: “Theirs” → “Drafted”");
  app_test_answer (GTK_RESPONSE_CANCEL);
}

/* The sheet was saved by other means: there is nothing to ask. */
static void
test_same_as_file (Fixture *f, gconstpointer data)
{
  g_autoptr (GError) error = NULL;

  leave_title (f, "Drafted");
  g_autoptr (BwDocument) other = app_test_document_at (f->path);
  set_title (other, "Drafted");
  bw_document_save (other, bw_document_get_file (other), &error);
  g_assert_no_error (error);
  offer (f);
  g_assert_null (app_test_open_question ());
  g_assert_cmpuint (app_test_count_drafts (), ==, 0);
}

/* A draft that cannot be read is said and left alone, and does not hide the others. */
static void
test_damaged (Fixture *f, gconstpointer data)
{
  g_autofree char *folder = app_test_drafts_folder ();
  g_autofree char *damaged = g_build_filename (folder, "damaged.draft", NULL);

  leave_title (f, "Drafted");
  g_assert_true (g_file_set_contents (damaged, "half a dra", -1, NULL));
  offer (f);
  app_test_answer (GTK_RESPONSE_REJECT);
  g_assert_nonnull (bw_window_get_fault_text (f->parent));
  g_assert_nonnull (strstr (bw_window_get_fault_text (f->parent), damaged));
  g_assert_cmpuint (app_test_count_drafts (), ==, 1);
  g_assert_true (g_file_test (damaged, G_FILE_TEST_EXISTS));
}

static void
test_several (Fixture *f, gconstpointer data)
{
  leave_title (f, "First");
  leave_title (f, "Second");
  leave_title (f, "Third");
  g_assert_cmpuint (app_test_count_drafts (), ==, 3);
  offer (f);
  app_test_answer (GTK_RESPONSE_REJECT);
  app_test_answer (GTK_RESPONSE_CANCEL);
  app_test_answer (GTK_RESPONSE_ACCEPT);
  g_assert_nonnull (f->restored);
  g_assert_cmpuint (app_test_count_drafts (), ==, 2);
}

/* Typed texts */

static GtkEditable *
entry (BwWindow *window, const char *key)
{
  return GTK_EDITABLE (
      bw_editor_row_get_control (bw_editor_get_row (bw_window_get_editor (window), key)));
}

/* The program ended while @text stood in the form of the third source. */
static void
leave_typed (Fixture *f, const char *key, const char *text)
{
  g_autoptr (BwDocument) document = app_test_document_at (f->path);
  BwWindow *window = app_test_window_new (document);

  bw_document_select (document, 2, 0);
  bw_window_edit (window, BW_PART_SOURCE);
  gtk_editable_set_text (entry (window, key), text);
  bw_window_flush_draft (window);
  app_test_close (window);
}

/* What would be refused comes back into its field, and stays in the draft. */
static void
test_refused_text (Fixture *f, gconstpointer data)
{
  leave_typed (f, "video_level", "3 Hz");
  offer (f);
  g_assert_nonnull (strstr (question_lines (), "“3 Hz” was typed"));
  app_test_answer (GTK_RESPONSE_ACCEPT);
  g_assert_true (bw_window_is_editing (f->restored));
  g_assert_cmpuint (bw_document_get_source (bw_window_get_document (f->restored)), ==, 2);
  g_assert_cmpstr (gtk_editable_get_text (entry (f->restored, "video_level")), ==, "3 Hz");
  g_assert_nonnull (bw_editor_row_get_error (
      bw_editor_get_row (bw_window_get_editor (f->restored), "video_level")));
  ASSERT_COMES_TRUE (
      app_test_focus_is_in (f->restored, GTK_WIDGET (entry (f->restored, "video_level"))));
  bw_window_flush_draft (f->restored);
  g_assert_true (is_in_draft ("text=3 Hz"));
}

static BwWindow *
open_in_parent (gpointer data, GFile *file)
{
  return ((Fixture *) data)->parent;
}

/* The window in which it is to be restored has a refused text of its own: the draft waits. */
static void
test_refused_there (Fixture *f, gconstpointer data)
{
  g_autoptr (GFile) file = g_file_new_for_path (f->path);

  leave_title (f, "Drafted");
  g_assert_true (bw_window_open (f->parent, file));
  bw_window_edit (f->parent, BW_PART_SOURCE);
  gtk_editable_set_text (entry (f->parent, "video_level"), "3 Hz");
  bw_drafts_offer (f->parent, app_test_catalogue (), open_in_parent, f);
  app_test_answer (GTK_RESPONSE_ACCEPT);
  g_assert_cmpstr (bw_document_get_sheet (bw_window_get_document (f->parent))->title, ==,
                   "Test bench");
  g_autoptr (GPtrArray) left = bw_draft_slots_left_behind ();
  g_assert_cmpuint (left->len, ==, 1);
}

/* The session asks whether it may end: what is typed is in the draft before it does. */
static void
test_session_ends (Fixture *f, gconstpointer data)
{
  g_autoptr (BwApplication) application = bw_application_new ();

  g_assert_true (g_application_register (G_APPLICATION (application), NULL, NULL));
  BwWindow *window = app_test_open (application, f->path);
  bw_window_edit (window, BW_PART_SOURCE);
  gtk_editable_set_text (entry (window, "name"), TYPED);
  g_assert_cmpuint (app_test_count_drafts (), ==, 0);
  g_signal_emit_by_name (application, "query-end");
  g_assert_true (is_in_draft ("name=" TYPED));
  gtk_window_destroy (GTK_WINDOW (window));
  app_test_settle ();
}

/* Changes that are given up when the window is closed do not come back. */
static void
test_discarded (Fixture *f, gconstpointer data)
{
  g_autoptr (BwDocument) document = app_test_document_at (f->path);
  BwWindow *window = app_test_window_new (document);

  set_title (document, "Not wanted");
  bw_window_flush_draft (window);
  g_assert_cmpuint (app_test_count_drafts (), ==, 1);
  gtk_window_close (GTK_WINDOW (window));
  app_test_answer (GTK_RESPONSE_REJECT);
  g_assert_cmpuint (app_test_count_drafts (), ==, 0);
}

/* Where no draft can be kept the window says so. */
static void
test_cannot_be_kept (Fixture *f, gconstpointer data)
{
  g_autofree char *folder = app_test_drafts_folder ();

  g_rmdir (folder); /* it is empty, if it is there */
  g_assert_true (g_file_set_contents (folder, "", 0, NULL));
  set_title (bw_window_get_document (f->parent), "Edited");
  bw_window_flush_draft (f->parent);
  g_assert_nonnull (bw_window_get_fault_text (f->parent));
  g_assert_nonnull (strstr (bw_window_get_fault_text (f->parent), folder));
  g_assert_cmpint (g_unlink (folder), ==, 0);
}

#define ADD(name, func) g_test_add ("/restore/" name, Fixture, NULL, set_up, func, tear_down)

int
main (int argc, char **argv)
{
  if (argc == 3 && strcmp (argv[1], TYPE) == 0)
    return type_and_go_on (argv[0], argv[2]);
  gtk_test_init (&argc, &argv, NULL);
  g_test_add_func ("/restore/killed", test_killed);
  g_test_add_func ("/restore/ended", test_ended);
  ADD ("restore", test_restore);
  ADD ("later", test_later);
  ADD ("keep-file", test_keep_file);
  ADD ("parent-closed", test_parent_closed);
  ADD ("never-saved", test_never_saved);
  ADD ("file-gone", test_file_gone);
  ADD ("file-changed", test_file_changed);
  ADD ("same-as-file", test_same_as_file);
  ADD ("damaged", test_damaged);
  ADD ("several", test_several);
  ADD ("refused-text", test_refused_text);
  ADD ("refused-there", test_refused_there);
  ADD ("session-ends", test_session_ends);
  ADD ("discarded", test_discarded);
  ADD ("cannot-be-kept", test_cannot_be_kept);
  return g_test_run ();
}
