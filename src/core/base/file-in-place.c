/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "file-private.h"

#include <errno.h>
#include <fcntl.h>
#include <string.h>
#include <unistd.h>

#include <glib/gi18n-lib.h>

/* Writing over a file where a new one cannot take its place. What it held lies in a copy beside it
 * until the new bytes are on disk: an interruption can leave the file itself half written. */

#define COPIES_MAX 99
#define NAME_BYTES 255 /* of a file's name on all usual file systems */

/* The name of a copy of @target; @number tells those that lie there from earlier interruptions. */
static char *
copy_name (const char *target, guint number)
{
  g_autofree char *folder = g_path_get_dirname (target);
  g_autofree char *leaf = g_path_get_basename (target);
  g_autofree char *suffix = number == 1 ? g_strdup (".before-saving")
                                        : g_strdup_printf (".before-saving-%u", number);
  gsize room = NAME_BYTES - strlen (suffix);
  if (strlen (leaf) > room)
    {
      while (room > 0 && (leaf[room] & 0xc0) == 0x80) /* not within a letter of UTF-8 */
        room--;
      leaf[room] = '\0';
    }
  g_autofree char *name = g_strconcat (leaf, suffix, NULL);
  return g_build_filename (folder, name, NULL);
}

/**
 * bw_file_kept_copy:
 * @path: a file that may have been damaged when a save was interrupted
 *
 * Returns: (transfer full) (nullable): the newest copy beside @path of what it held before; %NULL
 * if no save of it was interrupted
 */
char *
bw_file_kept_copy (const char *path)
{
  g_return_val_if_fail (path != NULL, NULL);
  g_autofree char *target = bw_file_follow_links (path);
  g_autofree char *newest = NULL;
  for (guint number = 1; target != NULL && number <= COPIES_MAX; number++)
    {
      g_autofree char *name = copy_name (target, number);
      if (!g_file_test (name, G_FILE_TEST_IS_REGULAR))
        break;
      g_free (newest);
      newest = g_steal_pointer (&name);
    }
  return g_steal_pointer (&newest);
}

/* Makes an empty copy under the first name that is free. Returns −1 with errno set. */
static int
make_copy (const BwReplacement *replacement, char **name)
{
  for (guint number = 1; number <= COPIES_MAX; number++)
    {
      *name = copy_name (replacement->target, number);
      int fd = open (*name, O_RDWR | O_CREAT | O_EXCL | O_NOFOLLOW | O_CLOEXEC, 0600);
      if (fd >= 0)
        return fd;
      g_clear_pointer (name, g_free);
      if (errno != EEXIST)
        return -1;
    }
  return -1;
}

#define PORTION 65536

/* Copies all of @from over the start of @to. */
static gboolean
copy_bytes (int from, int to)
{
  char portion[PORTION];
  if (lseek (from, 0, SEEK_SET) != 0 || lseek (to, 0, SEEK_SET) != 0)
    return FALSE;
  for (;;)
    {
      ssize_t n = read (from, portion, sizeof portion);
      if (n == 0)
        return TRUE;
      if (n < 0 && errno != EINTR)
        return FALSE;
      if (n > 0 && !bw_file_write_all (to, portion, (gsize) n))
        return FALSE;
    }
}

/* The copy is for the owner of the file, whoever saves it. Returns FALSE with errno set. */
static gboolean
fill_copy (const BwReplacement *replacement, int from, int copy)
{
  if (fchown (copy, replacement->old.st_uid, (gid_t) -1) != 0 && errno != EPERM)
    return FALSE;
  return copy_bytes (from, copy) && fsync (copy) == 0
         && bw_file_sync_folder (replacement->folder);
}

/* Finds room for a longer file while the old one is still whole. */
static gboolean
make_room (const BwReplacement *replacement, int fd)
{
  off_t before = replacement->old.st_size;
  if ((off_t) replacement->length <= before)
    return TRUE;
  int trouble = posix_fallocate (fd, before, (off_t) replacement->length - before);
  if (trouble == 0 || trouble == EOPNOTSUPP || trouble == EINVAL || trouble == ENOSYS)
    return TRUE;
  if (ftruncate (fd, before) == 0)
    fsync (fd);
  errno = trouble;
  return FALSE;
}

/* Longer old bytes are cut off last, so that at no time there are fewer than in both files. */
static gboolean
overwrite (const BwReplacement *replacement, int fd)
{
  return lseek (fd, 0, SEEK_SET) == 0
         && bw_file_write_all (fd, replacement->bytes, replacement->length)
         && ftruncate (fd, (off_t) replacement->length) == 0 && fsync (fd) == 0;
}

static gboolean
put_back (const BwReplacement *replacement, int copy, int fd)
{
  return copy_bytes (copy, fd) && ftruncate (fd, replacement->old.st_size) == 0 && fsync (fd) == 0;
}

/* Writes over @fd; @keep_copy says whether the copy must outlive a failure. */
static gboolean
write_over (const BwReplacement *replacement, int fd, int copy, const char *copy_path,
            gboolean *keep_copy, GError **error)
{
  *keep_copy = FALSE;
  if (!make_room (replacement, fd))
    return bw_file_fail (replacement->path, g_strerror (errno), error);
  if (overwrite (replacement, fd))
    return TRUE;
  g_autofree char *reason = g_strdup (g_strerror (errno));
  if (put_back (replacement, copy, fd))
    return bw_file_fail (replacement->path, reason, error);
  *keep_copy = TRUE;
  g_autofree char *shown = g_filename_display_name (copy_path);
  g_set_error (error, BW_FILE_ERROR, BW_FILE_ERROR_WRITE,
               _ ("%1$s: could only be written in part: %2$s. What it held before is in “%3$s”"),
               replacement->path, reason, shown);
  return FALSE;
}

static gboolean
write_with_copy (const BwReplacement *replacement, int fd, GError **error)
{
  g_autofree char *copy_path = NULL;
  int copy = make_copy (replacement, &copy_path);
  if (copy < 0)
    return bw_file_fail_in_folder (replacement, errno, error);
  gboolean keep_copy = FALSE;
  gboolean done = fill_copy (replacement, fd, copy);
  if (done)
    done = write_over (replacement, fd, copy, copy_path, &keep_copy, error);
  else
    bw_file_fail (replacement->path, g_strerror (errno), error);
  close (copy);
  if (!keep_copy)
    {
      unlink (copy_path);
      (void) bw_file_sync_folder (replacement->folder);
    }
  return done;
}

/**
 * bw_replacement_in_place:
 *
 * Writes over the target, with a copy of what it held beside it until the new bytes are on disk. If
 * writing fails, what it held is put back.
 *
 * Returns: %FALSE with @error that says what the file holds now, if that is not what it held
 */
gboolean
bw_replacement_in_place (const BwReplacement *replacement, GError **error)
{
  int fd = open (replacement->target, O_RDWR | O_NONBLOCK | O_NOFOLLOW | O_CLOEXEC);
  if (fd < 0)
    return bw_file_fail (replacement->path, g_strerror (errno), error);
  gboolean done = write_with_copy (replacement, fd, error);
  close (fd);
  return done;
}
