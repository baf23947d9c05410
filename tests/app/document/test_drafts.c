/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "app-test.h"

#include <string.h>
#include <sys/syscall.h>
#include <unistd.h>

#include <glib/gstdio.h>

#include "app/document/differences.h"
#include "app/document/draft-keeper.h"
#include "app/document/draft.h"

/* Drafts: what is in them, where they lie, when they are written and when they go. */

/* What a person may lose at most when the power fails. */
#define SAFE_AFTER_US (5 * G_USEC_PER_SEC)

/* In place of the one of the C library: counts what is pressed onto the disk. */
static int n_synced; /* atomic */

int
fsync (int file)
{
  g_atomic_int_inc (&n_synced);
  return (int) syscall (SYS_fsync, file);
}

static GPtrArray *
faults_new (void)
{
  return g_ptr_array_new_with_free_func ((GDestroyNotify) g_error_free);
}

static BwDraft *
parse (const char *text)
{
  g_autoptr (GPtrArray) faults = faults_new ();
  BwDraft *draft = bw_draft_parse (text, "the draft", app_test_catalogue (), faults);
  for (guint i = 0; i < faults->len; i++)
    g_test_message ("%s", ((GError *) faults->pdata[i])->message);
  g_assert_nonnull (draft);
  return draft;
}

static void
set_field (BwDocument *document, BwPart part, const char *key, const char *text)
{
  g_autoptr (GError) error = NULL;
  bw_document_set_field (document, part, 0, app_test_field (part, key), text, '.', &error);
  g_assert_no_error (error);
}

/* What is in a draft */

static void
test_round_trip (void)
{
  g_autofree char *path = app_test_copy_sheet ("drafted.bench");
  g_autoptr (BwDocument) document = app_test_document_at (path);

  set_field (document, BW_PART_SHEET, "note", "Two lines:\nthis is the second, with “=” and [");
  g_autofree char *text = bw_draft_to_text (document);
  g_autoptr (BwDraft) draft = parse (text);
  g_autofree char *sheet = app_test_sheet_text (document);
  g_autofree char *back = bw_sheet_to_text (draft->sheet, app_test_catalogue ());
  g_autofree char *held = bw_file_digest (draft->file);

  g_assert_cmpstr (back, ==, sheet);
  g_assert_cmpstr (g_file_peek_path (draft->file), ==, path);
  g_assert_cmpstr (draft->digest, ==, held); /* the file is still as it was read */
  g_assert_cmpuint (draft->typed->len, ==, 0);
}

/* A sheet for which no monitor is chosen cannot be saved, but its draft can. */
static void
test_blank_round_trip (void)
{
  g_autoptr (BwDocument) document = bw_document_new (app_test_catalogue ());

  set_field (document, BW_PART_SHEET, "title", "Just begun");
  g_autofree char *text = bw_draft_to_text (document);
  g_autoptr (BwDraft) draft = parse (text);
  g_autoptr (BwDocument) restored = bw_document_new (app_test_catalogue ());

  g_assert_null (draft->file);
  g_assert_null (draft->digest);
  g_assert_true (bw_document_restore (restored, draft->sheet, draft->file));
  g_assert_true (bw_document_is_blank (restored));
  g_assert_true (bw_document_is_modified (restored));
  g_assert_cmpstr (bw_document_get_sheet (restored)->title, ==, "Just begun");
}

#define SHEET                                                                                      \
  "sheet=[bench-sheet]\\nformat=1\\ntitle=T\\n[monitor]\\nname=M\\ndiagonal=19 in\\naspect=4:3\\n"   \
  "mask=slot\\npitch=0.45 mm\\nline_rates=15.5 kHz .. 16 kHz\\nfield_rates=48 Hz .. 62 Hz\\n"        \
  "line_retrace=9 us\\nfield_retrace=800 us\\n"
#define DRAFT "[draft]\nformat=1\n"

static const struct
{
  const char *name;
  const char *text;
  const char *fault;
} fault_cases[] = {
  { "empty", "", "[draft] format" },
  { "no-key-file", "half a dra", "the draft: " },
  { "no-format", "[draft]\n" SHEET, "[draft] format" },
  { "newer-format", "[draft]\nformat=2\n" SHEET, "[draft] format" },
  { "no-sheet", DRAFT, "the draft" },
  { "cut-sheet", DRAFT "sheet=[bench-sheet]\\nformat=1\\n[moni", "the draft" },
  { "far-file", DRAFT "file=http://localhost/a.bench\n" SHEET, "“http://localhost/a.bench”" },
};

/* What is wrong with a draft is said, and which draft it is. */
static void
test_faults (gconstpointer data)
{
  guint i = GPOINTER_TO_UINT (data);
  g_autoptr (GPtrArray) faults = faults_new ();

  g_assert_null (bw_draft_parse (fault_cases[i].text, "the draft", app_test_catalogue (), faults));
  g_assert_cmpuint (faults->len, >, 0);
  const char *message = ((GError *) faults->pdata[0])->message;
  g_assert_nonnull (strstr (message, fault_cases[i].fault));
  g_assert_true (g_str_has_prefix (message, "the draft"));
}

/* A typed text that this version has no place for is not worth the whole draft. */
static void
test_typed (void)
{
  g_autoptr (BwDraft) draft = parse (DRAFT SHEET
                                     "[typed 1]\npart=cable\nindex=0\nkey=name\ntext=a\n"
                                     "[typed 2]\npart=source\nindex=3\nkey=name\ntext=b\\nc\n"
                                     "[typed 3]\npart=monitor\nindex=0\nkey=colour\ntext=d\n"
                                     "[typed 4]\npart=monitor\nindex=0\nkey=name\n"
                                     "[typed 5]\npart=input\nindex=4294967296\nkey=name\ntext=e\n");
  g_assert_cmpuint (draft->typed->len, ==, 1);
  const BwTyped *typed = draft->typed->pdata[0];
  g_assert_cmpint (typed->part, ==, BW_PART_SOURCE);
  g_assert_cmpuint (typed->index, ==, 3);
  g_assert_cmpstr (typed->field->key, ==, "name");
  g_assert_cmpstr (typed->text, ==, "b\nc");
}

/* Where drafts lie */

static void
test_slots (void)
{
  app_test_clear_drafts ();
  g_autoptr (GError) error = NULL;
  gint64 time, now = g_get_real_time () / G_USEC_PER_SEC;
  BwDraftSlot *slot = bw_draft_slot_new (&error);
  g_assert_no_error (error);

  /* In use: nobody else is offered it */
  bw_draft_slot_set_text (slot, "first");
  bw_draft_slot_set_text (slot, "second");
  g_assert_true (bw_draft_slot_write (slot, NULL));
  g_autoptr (GPtrArray) none = bw_draft_slots_left_behind ();
  g_assert_cmpuint (none->len, ==, 0);
  bw_draft_slot_unref (slot);

  /* Left behind: one gets it, with what was in it last */
  g_autoptr (GPtrArray) left = bw_draft_slots_left_behind ();
  g_assert_cmpuint (left->len, ==, 1);
  g_autoptr (GPtrArray) again = bw_draft_slots_left_behind ();
  g_assert_cmpuint (again->len, ==, 0);
  g_autofree char *text = bw_draft_slot_read (left->pdata[0], &time, &error);
  g_assert_no_error (error);
  g_assert_cmpstr (text, ==, "second");
  g_assert_cmpint (ABS (time - now), <=, 60);

  /* Removed: nothing is left, and nothing is written any more */
  g_autofree char *folder = app_test_drafts_folder ();
  bw_draft_slot_set_text (left->pdata[0], "third");
  bw_draft_slot_remove (left->pdata[0]);
  g_assert_true (bw_draft_slot_write (left->pdata[0], NULL));
  g_ptr_array_set_size (left, 0);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  g_assert_null (g_dir_read_name (dir));
}

/* A draft is for its owner alone. */
static void
test_private (void)
{
  app_test_clear_drafts ();
  g_autoptr (BwDraftSlot) slot = bw_draft_slot_new (NULL);
  GStatBuf status;

  bw_draft_slot_set_text (slot, "draft");
  g_assert_true (bw_draft_slot_write (slot, NULL));
  g_assert_cmpint (g_stat (bw_draft_slot_get_path (slot), &status), ==, 0);
  g_assert_cmpuint (status.st_mode & 0077, ==, 0);
  bw_draft_slot_remove (slot);
}

/* When a write returns, the file is on the disk, and so is its name in the folder. */
static void
test_durable (void)
{
  app_test_clear_drafts ();
  g_autoptr (BwDraftSlot) slot = bw_draft_slot_new (NULL);

  g_atomic_int_set (&n_synced, 0);
  bw_draft_slot_set_text (slot, "draft");
  g_assert_true (bw_draft_slot_write (slot, NULL));
  g_assert_cmpint (g_atomic_int_get (&n_synced), >=, 2);
  bw_draft_slot_remove (slot);
}

/* A program that ends before it writes leaves a lock, which the next one clears away. */
static void
test_lock_left_alone (void)
{
  app_test_clear_drafts ();
  g_autofree char *folder = app_test_drafts_folder ();
  g_autofree char *path = g_build_filename (folder, "alone.lock", NULL);

  g_assert_cmpint (g_mkdir_with_parents (folder, 0700), ==, 0);
  g_assert_true (g_file_set_contents (path, "", 0, NULL));
  g_autoptr (GPtrArray) none = bw_draft_slots_left_behind ();
  g_assert_cmpuint (none->len, ==, 0);
  g_assert_false (g_file_test (path, G_FILE_TEST_EXISTS));
}

/* Differences in words */

static void
assert_lines (const GPtrArray *lines, const char *expected)
{
  g_autofree const char **all = g_new0 (const char *, lines->len + 1);
  for (guint i = 0; i < lines->len; i++)
    all[i] = lines->pdata[i];
  g_autofree char *text = g_strjoinv ("\n", (char **) all);
  g_assert_cmpstr (text, ==, expected);
}

/* The lines between the tests' sheet as its file holds it and as @change makes it. */
static GPtrArray *
differences_after (void (*change) (BwDocument *document))
{
  g_autoptr (GPtrArray) faults = faults_new ();
  g_autoptr (BwDocument) document = app_test_document ();
  g_autofree char *path = app_test_sheet_path ();
  g_autoptr (BwSheet) before = bw_sheet_load (path, app_test_catalogue (), faults);

  change (document);
  g_autofree char *text = app_test_sheet_text (document);
  g_autoptr (BwSheet) after = bw_sheet_parse (text, strlen (text), "after", app_test_catalogue (),
                                              faults);
  return bw_sheet_differences (before, after, app_test_catalogue ());
}

static void
change_nothing (BwDocument *document)
{
}

static void
change_fields (BwDocument *document)
{
  set_field (document, BW_PART_SHEET, "title", "Other bench");
  set_field (document, BW_PART_SHEET, "note", "Three lines:\nsecond\nthird");
  set_field (document, BW_PART_MONITOR, "diagonal", "21 in");
  set_field (document, BW_PART_MONITOR, "mask", "grille");
  set_field (document, BW_PART_MONITOR, "wide_switch", "no");
  set_field (document, BW_PART_MONITOR, "claimed_lines", "");
  set_field (document, BW_PART_INPUT, "name", "Line A");
  set_field (document, BW_PART_SOURCE, "raster", "625-50-interlaced");
}

static void
change_lists (BwDocument *document)
{
  g_assert_true (bw_document_remove (document, BW_PART_SOURCE, 1));
  g_assert_true (bw_document_duplicate (document, BW_PART_INPUT, 0, NULL));
  bw_document_edit (document, BW_PART_INPUT, 1,
                    &(BwEdit){ app_test_field (BW_PART_INPUT, "name"), "Second composite" }, 1, '.',
                    NULL);
}

static void
test_differences (void)
{
  g_autoptr (GPtrArray) none = differences_after (change_nothing);
  assert_lines (none, "");
  g_autoptr (GPtrArray) fields = differences_after (change_fields);
  assert_lines (fields,
                "Title: “Test bench” → “Other bench”\n"
                "Note: “Invented: the set and the sources do not exist” → “Three lines: second "
                "third”\n"
                "Monitor, Viewable diagonal: 19 in → 21 in\n"
                "Monitor, Mask: slot mask → aperture grille\n"
                "Monitor, Claimed TV lines: 500 lines → nothing\n"
                "Monitor, Switch for the other aspect ratio: yes → no\n"
                "Input “Composite”, Name: “Composite” → “Line A”\n"
                "Source “Tape deck with the founder\'s film”, Raster: 525-line interlaced, 59.94 Hz → "
                "625-line interlaced, 50 Hz");
  g_autoptr (GPtrArray) lists = differences_after (change_lists);
  assert_lines (lists, "Input “Second composite”: added\n"
                       "Source “Camcorder from the twin town”: removed");
}

static BwSheet *
parse_sheet (const char *text)
{
  g_autoptr (GPtrArray) faults = faults_new ();
  BwSheet *sheet = bw_sheet_parse (text, strlen (text), "a sheet", app_test_catalogue (), faults);
  g_assert_nonnull (sheet);
  return sheet;
}

#define HEAD                                                                                       \
  "[bench-sheet]\nformat=1\ntitle=T\n[monitor]\nname=M\ndiagonal=19 in\naspect=4:3\nmask=slot\n"      \
  "pitch=0.45 mm\nline_rates=15.5 kHz .. 16 kHz\nfield_rates=48 Hz .. 62 Hz\nline_retrace=9 us\n"    \
  "field_retrace=800 us\n"

#define SOURCE(n, name)                                                                            \
  "[source " #n "]\nname=" name "\nraster=625-50-interlaced\nsignal=rgb\nsyncs=composite-sync\n"     \
  "connector=bnc\nvideo_level=0.7 V\nsync_level=0.3 V\naspect=4:3\n"
#define RASTER(id, sync)                                                                           \
  "[raster " id "]\nname=Raster " id "\nsource=measured\nscan=progressive\nline_rate=15.7 kHz\n"     \
  "h_front_porch=1.5 us\nh_sync=" sync "\nh_back_porch=4.5 us\nv_active=240\nv_front_porch=4\n"     \
  "v_sync=3\nv_back_porch=15\n"

static void
test_order_and_rasters (void)
{
  g_autoptr (BwSheet) from = parse_sheet (HEAD SOURCE (1, "First") SOURCE (2, "Second")
                                              RASTER ("a", "4.7 us") RASTER ("b", "4.7 us"));
  g_autoptr (BwSheet) to = parse_sheet (HEAD SOURCE (1, "Second") SOURCE (2, "First")
                                            RASTER ("b", "4.8 us") RASTER ("c", "4.7 us"));
  g_autoptr (GPtrArray) lines = bw_sheet_differences (from, to, app_test_catalogue ());
  assert_lines (lines, "The sources stand in another order\n"
                       "Raster “Raster b”: changed\n"
                       "Raster “Raster c”: added\n"
                       "Raster “Raster a”: removed");
}

static void
assert_typed (BwPart part, guint index, const char *expected)
{
  g_autoptr (BwSheet) sheet = parse_sheet (HEAD SOURCE (1, "First") SOURCE (2, "Second"));
  BwTyped *typed = bw_typed_new (part, index, app_test_field (part, part == BW_PART_SHEET
                                                                        ? "title"
                                                                        : "name"),
                                 "as typed");
  g_autofree char *words = bw_typed_difference (sheet, typed);
  g_assert_cmpstr (words, ==, expected);
  bw_typed_free (typed);
}

static void
test_typed_in_words (void)
{
  assert_typed (BW_PART_SHEET, 0, "Title: “as typed” was typed");
  assert_typed (BW_PART_MONITOR, 0, "Monitor, Name: “as typed” was typed");
  assert_typed (BW_PART_SOURCE, 1, "Source “Second”, Name: “as typed” was typed");
  assert_typed (BW_PART_SOURCE, 2, "Name: “as typed” was typed"); /* there is no such source */
}

/* What no field shows is not passed over in silence. */
static void
test_comments_differ (void)
{
  g_autoptr (BwSheet) plain = parse_sheet (HEAD);
  g_autoptr (BwSheet) commented = parse_sheet ("# By hand\n" HEAD);
  g_autoptr (GPtrArray) lines = bw_sheet_differences (plain, commented, app_test_catalogue ());
  assert_lines (lines, "Comments or other lines of the file that no field shows");
}

/* When drafts are written */

static gboolean
has_draft (gpointer data)
{
  return app_test_count_drafts () > 0;
}

static gboolean
has_no_draft (gpointer data)
{
  return app_test_count_drafts () == 0;
}

typedef struct
{
  char *path;
  BwDocument *document;
  BwDraftKeeper *keeper;
  guint n_failed;
} Fixture;

static void
on_failed (Fixture *f, const GError *error)
{
  g_test_message ("%s", error->message);
  g_assert_nonnull (strstr (error->message, "drafts"));
  f->n_failed++;
}

static void
set_up (Fixture *f, gconstpointer data)
{
  app_test_clear_drafts ();
  f->path = app_test_copy_sheet ("kept.bench");
  f->document = app_test_document_at (f->path);
  f->keeper = bw_draft_keeper_new (f->document);
  g_signal_connect_swapped (f->keeper, "failed", G_CALLBACK (on_failed), f);
}

static void
tear_down (Fixture *f, gconstpointer data)
{
  g_object_run_dispose (G_OBJECT (f->keeper));
  g_object_unref (f->keeper);
  g_assert_finalize_object (f->document);
  g_free (f->path);
}

static gboolean
on_another_edit (gpointer document)
{
  static guint n = 0;
  g_autofree char *title = g_strdup_printf ("Title %u", n++);
  set_field (document, BW_PART_SHEET, "title", title);
  return G_SOURCE_CONTINUE;
}

/* At most five seconds after an edit it is in the draft, also while edits go on and on. */
static void
test_in_time (Fixture *f, gconstpointer data)
{
  set_field (f->document, BW_PART_SHEET, "title", "First edit");
  gint64 edited = g_get_monotonic_time ();
  guint more = g_timeout_add (50, on_another_edit, f->document);
  g_assert_true (app_test_wait (has_draft, NULL));
  g_assert_cmpint (g_get_monotonic_time () - edited, <=, SAFE_AFTER_US);
  g_source_remove (more);

  /* And the last of them */
  set_field (f->document, BW_PART_SHEET, "title", "Last edit");
  edited = g_get_monotonic_time ();
  while (g_get_monotonic_time () - edited <= SAFE_AFTER_US)
    {
      g_autofree char *text = app_test_read_draft ();
      if (strstr (text, "title=Last edit") != NULL)
        return;
      g_main_context_iteration (NULL, FALSE);
    }
  g_assert_not_reached ();
}

/* The file of the sheet itself is left alone. */
static void
test_file_is_left_alone (Fixture *f, gconstpointer data)
{
  g_autofree char *before = NULL, *after = NULL;

  g_assert_true (g_file_get_contents (f->path, &before, NULL, NULL));
  set_field (f->document, BW_PART_SHEET, "title", "Edited");
  g_assert_true (app_test_wait (has_draft, NULL));
  g_assert_true (g_file_get_contents (f->path, &after, NULL, NULL));
  g_assert_cmpstr (after, ==, before);
}

static void
test_goes_when_saved (Fixture *f, gconstpointer data)
{
  g_autoptr (GError) error = NULL;

  set_field (f->document, BW_PART_SHEET, "title", "Edited");
  bw_draft_keeper_flush (f->keeper);
  g_assert_cmpuint (app_test_count_drafts (), ==, 1);
  bw_document_save (f->document, bw_document_get_file (f->document), &error);
  g_assert_no_error (error);
  g_assert_cmpuint (app_test_count_drafts (), ==, 0);
}

static void
test_goes_when_undone (Fixture *f, gconstpointer data)
{
  set_field (f->document, BW_PART_SHEET, "title", "Edited");
  bw_draft_keeper_flush (f->keeper);
  g_assert_true (bw_document_undo (f->document));
  g_assert_cmpuint (app_test_count_drafts (), ==, 0);
  bw_draft_keeper_flush (f->keeper); /* nothing to keep */
  g_assert_cmpuint (app_test_count_drafts (), ==, 0);
  g_assert_true (bw_document_redo (f->document));
  g_assert_true (app_test_wait (has_draft, NULL));
}

/* What the person has given up does not come back. */
static void
test_goes_when_discarded (Fixture *f, gconstpointer data)
{
  set_field (f->document, BW_PART_SHEET, "title", "Edited");
  bw_draft_keeper_flush (f->keeper);
  bw_draft_keeper_discard (f->keeper);
  g_assert_cmpuint (app_test_count_drafts (), ==, 0);
  set_field (f->document, BW_PART_SHEET, "title", "Edited again");
  bw_draft_keeper_flush (f->keeper);
  g_assert_cmpuint (app_test_count_drafts (), ==, 0);
}

/* The program ends with changes in it: the draft stays. */
static void
test_stays_at_the_end (Fixture *f, gconstpointer data)
{
  set_field (f->document, BW_PART_SHEET, "title", "Edited");
  bw_draft_keeper_flush (f->keeper);
  g_object_run_dispose (G_OBJECT (f->keeper));
  g_assert_cmpuint (app_test_count_drafts (), ==, 1);
}

static gpointer
write_in_thread (gpointer slot)
{
  bw_draft_slot_write (slot, NULL);
  return NULL;
}

/* A draft that is saved and removed while a thread writes it does not come back either. */
static void
test_removed_while_written (Fixture *f, gconstpointer data)
{
  for (guint i = 0; i < 50; i++)
    {
      g_autoptr (BwDraftSlot) slot = bw_draft_slot_new (NULL);
      bw_draft_slot_set_text (slot, "draft");
      g_autoptr (GThread) thread = g_thread_new ("writer", write_in_thread, slot);
      bw_draft_slot_remove (slot);
      g_thread_join (g_steal_pointer (&thread));
      g_assert_cmpuint (app_test_count_drafts (), ==, 0);
    }
}

static gboolean
has_failed (gpointer data)
{
  return ((Fixture *) data)->n_failed > 0;
}

/* Where no draft can be written that is said once, and tried again until it can. */
static void
test_cannot_be_written (Fixture *f, gconstpointer data)
{
  g_autofree char *folder = app_test_drafts_folder ();

  g_rmdir (folder); /* if it is there: it is empty */
  g_assert_true (g_file_set_contents (folder, "", 0, NULL));
  set_field (f->document, BW_PART_SHEET, "title", "Edited");
  g_assert_true (app_test_wait (has_failed, f));
  set_field (f->document, BW_PART_SHEET, "title", "Edited again");
  bw_draft_keeper_flush (f->keeper);
  g_assert_cmpuint (f->n_failed, ==, 1);
  g_assert_cmpint (g_unlink (folder), ==, 0);
  g_assert_true (app_test_wait (has_draft, NULL));

  /* Once it worked, the next failure is told again */
  g_assert_true (bw_document_undo (f->document));
  g_assert_true (bw_document_undo (f->document));
  g_assert_true (app_test_wait (has_no_draft, NULL));
  app_test_clear_drafts ();
  g_rmdir (folder);
  g_assert_true (g_file_set_contents (folder, "", 0, NULL));
  g_assert_true (bw_document_redo (f->document));
  bw_draft_keeper_flush (f->keeper);
  g_assert_cmpuint (f->n_failed, ==, 2);
  g_assert_cmpint (g_unlink (folder), ==, 0);
}

#define ADD(name, func) g_test_add ("/drafts/" name, Fixture, NULL, set_up, func, tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/drafts/round-trip", test_round_trip);
  g_test_add_func ("/drafts/blank-round-trip", test_blank_round_trip);
  for (guint i = 0; i < G_N_ELEMENTS (fault_cases); i++)
    {
      g_autofree char *path = g_strconcat ("/drafts/faults/", fault_cases[i].name, NULL);
      g_test_add_data_func (path, GUINT_TO_POINTER (i), test_faults);
    }
  g_test_add_func ("/drafts/typed", test_typed);
  g_test_add_func ("/drafts/slots", test_slots);
  g_test_add_func ("/drafts/private", test_private);
  g_test_add_func ("/drafts/durable", test_durable);
  g_test_add_func ("/drafts/lock-left-alone", test_lock_left_alone);
  g_test_add_func ("/drafts/differences", test_differences);
  g_test_add_func ("/drafts/order-and-rasters", test_order_and_rasters);
  g_test_add_func ("/drafts/typed-in-words", test_typed_in_words);
  g_test_add_func ("/drafts/comments-differ", test_comments_differ);
  ADD ("in-time", test_in_time);
  ADD ("file-is-left-alone", test_file_is_left_alone);
  ADD ("goes-when-saved", test_goes_when_saved);
  ADD ("goes-when-undone", test_goes_when_undone);
  ADD ("goes-when-discarded", test_goes_when_discarded);
  ADD ("stays-at-the-end", test_stays_at_the_end);
  ADD ("removed-while-written", test_removed_while_written);
  ADD ("cannot-be-written", test_cannot_be_written);
  return g_test_run ();
}
