/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "app-test.h"

#include <string.h>
#include <unistd.h>
#include <utime.h>

#include <glib/gstdio.h>

/* The file of a document in the hands of somebody else. */

typedef struct
{
  char *path;
  GFile *file;
  BwDocument *document;
  guint n_told;
  BwFileState expected;
} Fixture;

static void
on_file_changed (Fixture *f)
{
  f->n_told++;
}

static void
open_document (Fixture *f)
{
  f->document = app_test_document_at (f->path);
  f->file = g_object_ref (bw_document_get_file (f->document));
  g_signal_connect_swapped (f->document, "file-changed", G_CALLBACK (on_file_changed), f);
}

static void
set_up (Fixture *f, gconstpointer data)
{
  f->path = app_test_copy_sheet ("guarded.bench");
  open_document (f);
}

static void
tear_down (Fixture *f, gconstpointer data)
{
  g_object_unref (f->file);
  g_assert_finalize_object (f->document);
  g_free (f->path);
}

/* Writes into the file that is there, without another one that takes its place. */
static void
write_in_place (const char *path, const char *text)
{
  FILE *stream = g_fopen (path, "w");
  g_assert_nonnull (stream);
  g_assert_cmpuint (fwrite (text, 1, strlen (text), stream), ==, strlen (text));
  g_assert_cmpint (fclose (stream), ==, 0);
}

/* The sheet with another title, which is as long as the one it has. */
static char *
other_text (const char *path)
{
  g_autofree char *text = app_test_file_text (path);
  GString *other = g_string_new (text);
  g_assert_cmpuint (g_string_replace (other, "title=Test bench", "title=Next bench", 0), ==, 1);
  return g_string_free (other, FALSE);
}

/* What somebody else may do */

static void
rewrite (const char *path)
{
  g_autofree char *text = other_text (path);
  write_in_place (path, text);
}

/* Size and time are as they were. */
static void
rewrite_unseen (const char *path)
{
  GStatBuf status;
  g_assert_cmpint (g_stat (path, &status), ==, 0);
  rewrite (path);
  struct utimbuf times = { status.st_atime, status.st_mtime };
  g_assert_cmpint (g_utime (path, &times), ==, 0);
}

static void
replace (const char *path)
{
  g_autofree char *text = other_text (path);
  g_autofree char *beside = g_strconcat (path, ".new", NULL);
  write_in_place (beside, text);
  g_assert_cmpint (g_rename (beside, path), ==, 0);
}

static void
replace_by_folder (const char *path)
{
  g_assert_cmpint (g_unlink (path), ==, 0);
  g_assert_cmpint (g_mkdir (path, 0700), ==, 0);
}

static void
delete (const char *path)
{
  g_assert_cmpint (g_unlink (path), ==, 0);
}

static void
move (const char *path)
{
  g_autofree char *elsewhere = g_strconcat (path, ".moved", NULL);
  g_assert_cmpint (g_rename (path, elsewhere), ==, 0);
}

static void
touch (const char *path)
{
  struct utimbuf times = { 1000000000, 1000000000 };
  g_assert_cmpint (g_utime (path, &times), ==, 0);
}

static void
rewrite_alike (const char *path)
{
  g_autofree char *text = app_test_file_text (path);
  write_in_place (path, text);
}

static void
replace_alike (const char *path)
{
  g_autofree char *text = app_test_file_text (path);
  g_assert_cmpint (g_unlink (path), ==, 0);
  write_in_place (path, text);
}

static const struct
{
  const char *name;
  void (*act) (const char *path);
  BwFileState state;
} outsiders[] = {
  { "rewrite", rewrite, BW_FILE_CHANGED },
  { "rewrite-unseen", rewrite_unseen, BW_FILE_CHANGED },
  { "replace", replace, BW_FILE_CHANGED },
  { "replace-by-folder", replace_by_folder, BW_FILE_CHANGED },
  { "delete", delete, BW_FILE_GONE },
  { "move", move, BW_FILE_GONE },
  { "touch", touch, BW_FILE_SAME },
  { "rewrite-alike", rewrite_alike, BW_FILE_SAME },
  { "replace-alike", replace_alike, BW_FILE_SAME },
};

static void
remove_leftovers (const char *path)
{
  g_rmdir (path);
  g_unlink (path);
}

/* Before a save: nothing is written over unasked, and an alarm is not raised for nothing. */
static void
test_before_save (Fixture *f, gconstpointer data)
{
  guint i = GPOINTER_TO_UINT (data);
  g_autoptr (GError) error = NULL;
  g_autofree char *before = NULL, *after = NULL;

  bw_document_remove (f->document, BW_PART_SOURCE, 0);
  outsiders[i].act (f->path);
  g_file_get_contents (f->path, &before, NULL, NULL);
  gboolean saved = bw_document_save (f->document, f->file, &error);
  g_file_get_contents (f->path, &after, NULL, NULL);
  if (outsiders[i].state == BW_FILE_SAME)
    {
      g_assert_no_error (error);
      g_assert_true (saved);
      g_assert_cmpstr (after, !=, before);
      g_assert_cmpuint (f->n_told, ==, 0);
    }
  else
    {
      g_assert_error (error, BW_DOCUMENT_ERROR, BW_DOCUMENT_ERROR_CHANGED);
      g_assert_nonnull (strstr (error->message, f->path));
      g_assert_cmpstr (after, ==, before);
      g_assert_true (bw_document_is_modified (f->document));
      g_assert_cmpint (bw_document_get_file_state (f->document), ==, outsiders[i].state);
      g_assert_cmpuint (f->n_told, ==, 1);
    }
  remove_leftovers (f->path);
}

static gboolean
is_as_expected (gpointer data)
{
  Fixture *f = data;
  return bw_document_get_file_state (f->document) == f->expected;
}

/* It is noticed without being asked for. */
static void
test_noticed (Fixture *f, gconstpointer data)
{
  guint i = GPOINTER_TO_UINT (data);

  f->expected = outsiders[i].state;
  outsiders[i].act (f->path);
  g_assert_true (app_test_wait (is_as_expected, f));
  g_assert_cmpuint (f->n_told, ==, 1);
  /* A file that is gone has nothing that the sheet could be as */
  g_assert_true (bw_document_is_modified (f->document) == (f->expected == BW_FILE_GONE));
  remove_leftovers (f->path);
}

/* What the document writes itself is no surprise. */
static void
test_own_saves (Fixture *f, gconstpointer data)
{
  for (guint i = 0; i < 3; i++)
    {
      g_autoptr (GError) error = NULL;
      bw_document_remove (f->document, BW_PART_SOURCE, 0);
      bw_document_save (f->document, f->file, &error);
      g_assert_no_error (error);
    }
  f->expected = BW_FILE_GONE;
  delete (f->path);
  g_assert_true (app_test_wait (is_as_expected, f));
  g_assert_cmpuint (f->n_told, ==, 1);
}

static void
test_put_back (Fixture *f, gconstpointer data)
{
  g_autofree char *text = app_test_file_text (f->path);

  delete (f->path);
  f->expected = BW_FILE_GONE;
  g_assert_true (app_test_wait (is_as_expected, f));
  write_in_place (f->path, text);
  f->expected = BW_FILE_SAME;
  g_assert_true (app_test_wait (is_as_expected, f));
  g_assert_cmpuint (f->n_told, ==, 2);
  g_assert_false (bw_document_is_modified (f->document));
}

static void
test_keep_mine (Fixture *f, gconstpointer data)
{
  g_autofree char *mine = app_test_sheet_text (f->document);
  g_autoptr (GError) error = NULL;

  rewrite (f->path);
  g_assert_cmpint (bw_document_check_file (f->document), ==, BW_FILE_CHANGED);
  bw_document_keep_mine (f->document);
  g_assert_cmpint (bw_document_get_file_state (f->document), ==, BW_FILE_SAME);
  g_assert_true (bw_document_is_modified (f->document));
  bw_document_save (f->document, f->file, &error);
  g_assert_no_error (error);
  g_assert_false (bw_document_is_modified (f->document));
  g_autofree char *left = app_test_file_text (f->path);
  g_assert_cmpstr (left, ==, mine);
}

/* One agrees to write over what was shown, not over what has come since. */
static void
test_keep_mine_and_another (Fixture *f, gconstpointer data)
{
  g_autoptr (GError) error = NULL;

  rewrite (f->path);
  g_assert_cmpint (bw_document_check_file (f->document), ==, BW_FILE_CHANGED);
  write_in_place (f->path, "something else again");
  bw_document_keep_mine (f->document);
  g_assert_false (bw_document_save (f->document, f->file, &error));
  g_assert_error (error, BW_DOCUMENT_ERROR, BW_DOCUMENT_ERROR_CHANGED);
  g_autofree char *left = app_test_file_text (f->path);
  g_assert_cmpstr (left, ==, "something else again");
}

static void
test_keep_mine_when_gone (Fixture *f, gconstpointer data)
{
  g_autoptr (GError) error = NULL;

  delete (f->path);
  g_assert_cmpint (bw_document_check_file (f->document), ==, BW_FILE_GONE);
  bw_document_keep_mine (f->document);
  bw_document_save (f->document, f->file, &error);
  g_assert_no_error (error);
  g_assert_true (g_file_test (f->path, G_FILE_TEST_EXISTS));
}

static void
test_load_theirs (Fixture *f, gconstpointer data)
{
  g_autoptr (GPtrArray) faults = g_ptr_array_new_with_free_func ((GDestroyNotify) g_error_free);

  bw_document_remove (f->document, BW_PART_SOURCE, 0);
  g_autofree char *mine = app_test_sheet_text (f->document);
  rewrite (f->path);
  g_assert_cmpint (bw_document_check_file (f->document), ==, BW_FILE_CHANGED);
  g_autoptr (GPtrArray) theirs = bw_document_list_theirs (f->document);
  g_assert_cmpuint (theirs->len, ==, 2);
  g_assert_cmpstr (theirs->pdata[0], ==, "Title: “Test bench” → “Next bench”");
  g_assert_true (bw_document_reload (f->document, faults));
  g_assert_cmpstr (bw_document_get_sheet (f->document)->title, ==, "Next bench");
  g_assert_false (bw_document_is_modified (f->document));
  g_assert_cmpint (bw_document_get_file_state (f->document), ==, BW_FILE_SAME);

  g_assert_true (bw_document_undo (f->document));
  g_autofree char *back = app_test_sheet_text (f->document);
  g_assert_cmpstr (back, ==, mine);
  g_assert_true (bw_document_is_modified (f->document));
}

/* What cannot be read is said, and the sheet stays as it was. */
static void
test_load_damaged (Fixture *f, gconstpointer data)
{
  g_autoptr (GPtrArray) faults = g_ptr_array_new_with_free_func ((GDestroyNotify) g_error_free);
  g_autofree char *mine = app_test_sheet_text (f->document);

  write_in_place (f->path, "no sheet");
  g_assert_cmpint (bw_document_check_file (f->document), ==, BW_FILE_CHANGED);
  g_autoptr (GPtrArray) theirs = bw_document_list_theirs (f->document);
  g_assert_cmpuint (theirs->len, ==, 0);
  g_assert_false (bw_document_reload (f->document, faults));
  g_assert_cmpuint (faults->len, >, 0);
  g_autofree char *left = app_test_sheet_text (f->document);
  g_assert_cmpstr (left, ==, mine);
}

/* Names and links */

static void
set_up_link (Fixture *f, gconstpointer data)
{
  g_autofree char *target = app_test_copy_sheet ("target.bench");
  f->path = app_test_scratch_path ("link.bench");
  g_unlink (f->path); /* of an earlier run */
  g_assert_cmpint (symlink (target, f->path), ==, 0);
  open_document (f);
}

/* The file that a link leads to is changed by its own name. */
static void
test_link_target (Fixture *f, gconstpointer data)
{
  g_autofree char *target = app_test_scratch_path ("target.bench");

  rewrite (target);
  f->expected = BW_FILE_CHANGED;
  g_assert_true (app_test_wait (is_as_expected, f));
}

static void
test_link_turned (Fixture *f, gconstpointer data)
{
  g_autofree char *other = app_test_scratch_path ("other-target.bench");

  write_in_place (other, "something else");
  g_assert_cmpint (g_unlink (f->path), ==, 0);
  g_assert_cmpint (symlink (other, f->path), ==, 0);
  f->expected = BW_FILE_CHANGED;
  g_assert_true (app_test_wait (is_as_expected, f));
}

/* Saving to the same file by another name goes by the same guard. */
static void
test_link_is_same (Fixture *f, gconstpointer data)
{
  g_autofree char *target = app_test_scratch_path ("target.bench");
  g_autofree char *hard = app_test_scratch_path ("hard.bench");
  g_autofree char *copy = app_test_copy_sheet ("copy.bench");
  g_autoptr (GFile) target_file = g_file_new_for_path (target);
  g_autoptr (GFile) hard_file = g_file_new_for_path (hard);
  g_autoptr (GFile) copy_file = g_file_new_for_path (copy);
  g_autoptr (GError) error = NULL;

  g_unlink (hard); /* of an earlier run */
  g_assert_cmpint (link (target, hard), ==, 0);
  g_assert_true (bw_file_is_same (f->file, f->file));
  g_assert_true (bw_file_is_same (f->file, target_file));
  g_assert_true (bw_file_is_same (f->file, hard_file));
  g_assert_false (bw_file_is_same (f->file, copy_file));

  rewrite (target);
  g_assert_false (bw_document_save (f->document, target_file, &error));
  g_assert_error (error, BW_DOCUMENT_ERROR, BW_DOCUMENT_ERROR_CHANGED);
  g_assert_true (bw_document_save (f->document, copy_file, NULL)); /* keeps mine as a copy */
}

#define ADD(name, func) g_test_add ("/guard/" name, Fixture, NULL, set_up, func, tear_down)
#define ADD_LINK(name, func) g_test_add ("/guard/" name, Fixture, NULL, set_up_link, func, tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (outsiders); i++)
    {
      g_autofree char *path = g_strconcat ("/guard/before-save/", outsiders[i].name, NULL);
      g_test_add (path, Fixture, GUINT_TO_POINTER (i), set_up, test_before_save, tear_down);
      if (outsiders[i].state == BW_FILE_SAME)
        continue;
      g_autofree char *noticed = g_strconcat ("/guard/noticed/", outsiders[i].name, NULL);
      g_test_add (noticed, Fixture, GUINT_TO_POINTER (i), set_up, test_noticed, tear_down);
    }
  ADD ("own-saves", test_own_saves);
  ADD ("put-back", test_put_back);
  ADD ("keep-mine", test_keep_mine);
  ADD ("keep-mine-and-another", test_keep_mine_and_another);
  ADD ("keep-mine-when-gone", test_keep_mine_when_gone);
  ADD ("load-theirs", test_load_theirs);
  ADD ("load-damaged", test_load_damaged);
  ADD_LINK ("link-target", test_link_target);
  ADD_LINK ("link-turned", test_link_turned);
  ADD_LINK ("link-is-same", test_link_is_same);
  return g_test_run ();
}
