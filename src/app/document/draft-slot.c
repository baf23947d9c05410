/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draft-slot.h"

#include <errno.h>
#include <fcntl.h>
#include <string.h>
#include <sys/file.h>
#include <unistd.h>

#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>

#include "core/base/file.h"

#define DRAFT_SUFFIX ".draft"
#define LOCK_SUFFIX ".lock"

struct _BwDraftSlot
{
  char *path;      /* of the draft */
  char *lock_path;
  int lock;        /* an open file that holds the lock */
  GMutex mutex;    /* guards what follows, and the writing */
  char *text;      /* nullable: what is to be written and is not yet */
  gboolean removed;
};

static char *
drafts_folder (void)
{
  return g_build_filename (g_get_user_state_dir (), "breezeway", "drafts", NULL);
}

static gboolean
fail (const char *path, int number, GError **error)
{
  g_set_error (error, BW_FILE_ERROR, BW_FILE_ERROR_WRITE, _ ("%1$s: cannot be written: %2$s"), path,
               g_strerror (number));
  return FALSE;
}

/* Whether @file is still the one at @path: another program may have removed it before it could be
 * locked here. */
static gboolean
is_at (int file, const char *path)
{
  struct stat opened;
  GStatBuf there;
  return fstat (file, &opened) == 0 && g_stat (path, &there) == 0
         && opened.st_dev == there.st_dev && opened.st_ino == there.st_ino;
}

/* An open file with the lock at @path; −1 with errno if it cannot be had. */
static int
take_lock (const char *path)
{
  int file = g_open (path, O_RDWR | O_CREAT | O_CLOEXEC, 0600);
  if (file < 0)
    return -1;
  if (flock (file, LOCK_EX | LOCK_NB) == 0 && is_at (file, path))
    return file;
  close (file);
  errno = EWOULDBLOCK;
  return -1;
}

static BwDraftSlot *
slot_at (const char *folder, const char *id, int *number)
{
  g_autofree char *lock_name = g_strconcat (id, LOCK_SUFFIX, NULL);
  g_autofree char *lock_path = g_build_filename (folder, lock_name, NULL);
  int lock = take_lock (lock_path);

  if (lock < 0)
    {
      *number = errno;
      return NULL;
    }
  g_autofree char *name = g_strconcat (id, DRAFT_SUFFIX, NULL);
  BwDraftSlot *slot = g_atomic_rc_box_new0 (BwDraftSlot);
  slot->path = g_build_filename (folder, name, NULL);
  slot->lock_path = g_steal_pointer (&lock_path);
  slot->lock = lock;
  g_mutex_init (&slot->mutex);
  return slot;
}

/**
 * bw_draft_slot_new:
 *
 * Returns: (transfer full): a slot without a draft yet, locked; or %NULL with @error that names the
 * file
 */
BwDraftSlot *
bw_draft_slot_new (GError **error)
{
  g_autofree char *folder = drafts_folder ();
  g_autofree char *id = g_uuid_string_random ();
  int number = 0;

  if (g_mkdir_with_parents (folder, 0700) != 0)
    {
      fail (folder, errno, error);
      return NULL;
    }
  BwDraftSlot *slot = slot_at (folder, id, &number);
  if (slot == NULL)
    fail (folder, number, error);
  return slot;
}

/* The slot of which @name is the draft, or a lock whose draft was never written; NULL if it is
 * neither, or a program uses it. */
static BwDraftSlot *
slot_of_file (const char *folder, const char *name)
{
  const char *suffix = strrchr (name, '.');
  int number;

  if (g_strcmp0 (suffix, DRAFT_SUFFIX) != 0 && g_strcmp0 (suffix, LOCK_SUFFIX) != 0)
    return NULL;
  g_autofree char *id = g_strndup (name, (gsize) (suffix - name));
  return slot_at (folder, id, &number);
}

/**
 * bw_draft_slots_left_behind:
 *
 * Finds the drafts of programs that have ended, and locks them, so that no other program offers them
 * at the same time.
 *
 * Returns: (transfer full) (element-type BwDraftSlot): their slots
 */
GPtrArray *
bw_draft_slots_left_behind (void)
{
  GPtrArray *slots = g_ptr_array_new_with_free_func ((GDestroyNotify) bw_draft_slot_unref);
  g_autofree char *folder = drafts_folder ();
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      g_autoptr (BwDraftSlot) slot = slot_of_file (folder, name);
      if (slot != NULL && g_file_test (slot->path, G_FILE_TEST_IS_REGULAR))
        g_ptr_array_add (slots, g_steal_pointer (&slot));
    }
  return slots;
}

BwDraftSlot *
bw_draft_slot_ref (BwDraftSlot *slot)
{
  return g_atomic_rc_box_acquire (slot);
}

/* The lock file goes only with its draft: as long as that is there, others must find the lock. */
static void
slot_clear (gpointer data)
{
  BwDraftSlot *slot = data;

  if (!g_file_test (slot->path, G_FILE_TEST_EXISTS))
    g_unlink (slot->lock_path);
  close (slot->lock);
  g_free (slot->path);
  g_free (slot->lock_path);
  g_free (slot->text);
  g_mutex_clear (&slot->mutex);
}

/**
 * bw_draft_slot_unref:
 *
 * With the last reference the lock goes. A draft that was not removed stays, for the next start.
 */
void
bw_draft_slot_unref (BwDraftSlot *slot)
{
  g_atomic_rc_box_release_full (slot, slot_clear);
}

/**
 * bw_draft_slot_get_path:
 *
 * Returns: (transfer none): the file of the draft
 */
const char *
bw_draft_slot_get_path (const BwDraftSlot *slot)
{
  g_return_val_if_fail (slot != NULL, NULL);
  return slot->path;
}

/**
 * bw_draft_slot_read:
 * @time: (out): when it was written, in seconds since 1970
 *
 * Returns: (transfer full): the draft, or %NULL with @error that names the file
 */
char *
bw_draft_slot_read (BwDraftSlot *slot, gint64 *time, GError **error)
{
  g_return_val_if_fail (slot != NULL && time != NULL, NULL);
  g_autoptr (GError) trouble = NULL;
  GStatBuf status;
  char *text = NULL;

  *time = g_stat (slot->path, &status) == 0 ? status.st_mtime : 0;
  if (g_file_get_contents (slot->path, &text, NULL, &trouble))
    return text;
  g_set_error (error, BW_FILE_ERROR, BW_FILE_ERROR_READ, _ ("%1$s: cannot be read: %2$s"),
               slot->path, trouble->message);
  return NULL;
}

/**
 * bw_draft_slot_set_text:
 * @text: a draft
 *
 * Says what bw_draft_slot_write() is to write. A text that was not written yet is dropped, so that
 * whoever writes last writes the latest.
 */
void
bw_draft_slot_set_text (BwDraftSlot *slot, const char *text)
{
  g_return_if_fail (slot != NULL && text != NULL);
  g_mutex_lock (&slot->mutex);
  g_free (slot->text);
  slot->text = g_strdup (text);
  g_mutex_unlock (&slot->mutex);
}

/**
 * bw_draft_slot_write:
 *
 * Writes the draft, whole or not at all, unless it is written already or the slot is removed. When
 * this returns it is on the disk and outlives a failure of the power. May be called in another
 * thread.
 *
 * Returns: %FALSE with @error that names the file; an older draft is then as it was
 */
gboolean
bw_draft_slot_write (BwDraftSlot *slot, GError **error)
{
  g_return_val_if_fail (slot != NULL, FALSE);
  g_autoptr (GError) trouble = NULL;
  gboolean written = TRUE;

  g_mutex_lock (&slot->mutex);
  g_autofree char *text = g_steal_pointer (&slot->text);
  if (text != NULL && !slot->removed)
    written = g_file_set_contents_full (slot->path, text, -1,
                                        G_FILE_SET_CONTENTS_CONSISTENT | G_FILE_SET_CONTENTS_DURABLE,
                                        0600, &trouble);
  g_mutex_unlock (&slot->mutex);
  if (!written)
    g_set_error (error, BW_FILE_ERROR, BW_FILE_ERROR_WRITE, _ ("%1$s: cannot be written: %2$s"),
                 slot->path, trouble->message);
  return written;
}

/**
 * bw_draft_slot_remove:
 *
 * Removes the draft: the sheet is saved, or its changes are not wanted.
 */
void
bw_draft_slot_remove (BwDraftSlot *slot)
{
  g_return_if_fail (slot != NULL);
  g_mutex_lock (&slot->mutex);
  slot->removed = TRUE;
  g_unlink (slot->path);
  g_mutex_unlock (&slot->mutex);
}
