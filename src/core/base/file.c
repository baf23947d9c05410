/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "file-private.h"

#include <errno.h>
#include <fcntl.h>
#include <string.h>
#include <unistd.h>

#include <glib/gi18n-lib.h>

G_DEFINE_QUARK (bw-file-error-quark, bw_file_error)

/* Returns: (transfer none): what a file that is not a plain one is, as a clause of a sentence */
static const char *
kind_words (mode_t mode)
{
  if (S_ISDIR (mode))
    return _ ("it is a folder");
  if (S_ISFIFO (mode))
    return _ ("it is a pipe, not a plain file");
  if (S_ISSOCK (mode))
    return _ ("it is a socket, not a plain file");
  return _ ("it is a device, not a plain file");
}

/* Reading */

static gboolean
fail_read (const char *path, const char *reason, GError **error)
{
  g_set_error (error, BW_FILE_ERROR, BW_FILE_ERROR_READ, _ ("%1$s: cannot be read: %2$s"), path,
               reason);
  return FALSE;
}

#define KIB ((gsize) 1024)
#define MIB (KIB * KIB)

static gboolean
fail_too_large (const char *path, gsize most, GError **error)
{
  g_autofree char *bound = most % MIB == 0   ? g_strdup_printf (_ ("%u MiB"), (guint) (most / MIB))
                           : most % KIB == 0 ? g_strdup_printf (_ ("%u KiB"), (guint) (most / KIB))
                                             : g_format_size_full (most,
                                                                   G_FORMAT_SIZE_LONG_FORMAT);
  g_set_error (error, BW_FILE_ERROR, BW_FILE_ERROR_TOO_LARGE,
               _ ("%1$s: larger than %2$s, which no file of this kind is"), path, bound);
  return FALSE;
}

/* Opens @path if it is a plain file; looks before and after, since to open a device or a pipe can
 * do something already. Returns −1 with @error set. */
static int
open_plain (const char *path, struct stat *status, GError **error)
{
  if (stat (path, status) != 0)
    {
      fail_read (path, g_strerror (errno), error);
      return -1;
    }
  int fd = S_ISREG (status->st_mode) ? open (path, O_RDONLY | O_CLOEXEC | O_NONBLOCK) : -1;
  int trouble = errno;
  if (fd >= 0 && fstat (fd, status) == 0 && S_ISREG (status->st_mode))
    return fd;
  fail_read (path, S_ISREG (status->st_mode) ? g_strerror (trouble) : kind_words (status->st_mode),
             error);
  if (fd >= 0)
    close (fd);
  return -1;
}

#define PORTION (64 * KIB)

/* Appends what is left of @fd, up to one byte more than @most. */
static gboolean
read_rest (int fd, gsize most, GString *to)
{
  char portion[PORTION];
  while (to->len <= most)
    {
      ssize_t n = read (fd, portion, MIN (sizeof portion, most + 1 - to->len));
      if (n == 0)
        return TRUE;
      if (n > 0)
        g_string_append_len (to, portion, n);
      else if (errno != EINTR)
        return FALSE;
    }
  return TRUE;
}

/**
 * bw_file_read:
 * @path: a plain file, or a symbolic link to one
 * @most: how many bytes it may have
 * @bytes: (out) (transfer full): what is in it, with a NUL after it
 * @length: (out): how many bytes, without the NUL
 *
 * Reads a whole file, and never more than @most bytes of it, whatever it says of its size.
 *
 * Returns: %FALSE with @error in %BW_FILE_ERROR that names @path
 */
gboolean
bw_file_read (const char *path, gsize most, char **bytes, gsize *length, GError **error)
{
  g_return_val_if_fail (path != NULL && bytes != NULL && length != NULL, FALSE);
  struct stat status;
  int fd = open_plain (path, &status, error);
  if (fd < 0)
    return FALSE;

  g_autoptr (GString) text = g_string_new (NULL);
  gboolean fits = status.st_size < 0 || (guint64) status.st_size <= most;
  gboolean is_read = fits && read_rest (fd, most, text);
  int trouble = errno;
  close (fd);
  if (!fits || text->len > most)
    return fail_too_large (path, most, error);
  if (!is_read)
    return fail_read (path, g_strerror (trouble), error);
  *length = text->len;
  *bytes = g_string_free (g_steal_pointer (&text), FALSE);
  return TRUE;
}

/**
 * bw_file_read_stream:
 * @fd: an open stream, of whatever kind; it stays open
 * @name: what to call it in errors
 *
 * Reads a stream to its end, as bw_file_read() reads a file.
 *
 * Returns: as bw_file_read(), with an error that names @name
 */
gboolean
bw_file_read_stream (int fd, const char *name, gsize most, char **bytes, gsize *length,
                     GError **error)
{
  g_return_val_if_fail (name != NULL && bytes != NULL && length != NULL, FALSE);
  g_autoptr (GString) text = g_string_new (NULL);

  if (!read_rest (fd, most, text))
    return fail_read (name, g_strerror (errno), error);
  if (text->len > most)
    return fail_too_large (name, most, error);
  *length = text->len;
  *bytes = g_string_free (g_steal_pointer (&text), FALSE);
  return TRUE;
}

/* Replacing */

/**
 * bw_file_fail:
 * @reason: why @path cannot be written, as a clause
 *
 * Returns: %FALSE
 */
gboolean
bw_file_fail (const char *path, const char *reason, GError **error)
{
  g_set_error (error, BW_FILE_ERROR, BW_FILE_ERROR_WRITE, _ ("%1$s: cannot be written: %2$s"), path,
               reason);
  return FALSE;
}

/**
 * bw_file_fail_in_folder:
 * @trouble: errno of making a file beside the target
 *
 * Says why nothing can be made beside the target, in terms of its folder.
 *
 * Returns: %FALSE
 */
gboolean
bw_file_fail_in_folder (const BwReplacement *replacement, int trouble, GError **error)
{
  const char *folder = replacement->folder;
  g_autofree char *reason = NULL;
  if (trouble == ENOENT)
    reason = g_strdup_printf (_ ("there is no folder “%s”"), folder);
  else if (trouble == ENOTDIR)
    reason = g_strdup_printf (_ ("“%s” is not a folder"), folder);
  else if (trouble == EACCES || trouble == EPERM || trouble == EROFS)
    reason = g_strdup_printf (_ ("in its folder “%1$s” no new file may be made (%2$s)"), folder,
                              g_strerror (trouble));
  else
    reason = g_strdup (g_strerror (trouble));
  return bw_file_fail (replacement->path, reason, error);
}

/**
 * bw_file_write_all:
 *
 * Returns: %FALSE with errno set if not all of @bytes could be written
 */
gboolean
bw_file_write_all (int fd, const char *bytes, gsize length)
{
  while (length > 0)
    {
      ssize_t n = write (fd, bytes, length);
      if (n < 0 && errno != EINTR)
        return FALSE;
      bytes += MAX (n, 0);
      length -= (gsize) MAX (n, 0);
    }
  return TRUE;
}

/**
 * bw_file_sync_folder:
 *
 * Makes the names in @folder durable. A file system that has no such thing is no trouble.
 *
 * Returns: %FALSE with errno set if the disk failed
 */
gboolean
bw_file_sync_folder (const char *folder)
{
  int fd = open (folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  if (fd < 0)
    return TRUE; /* a folder that may be written in but not listed */
  gboolean failed = fsync (fd) != 0 && (errno == EIO || errno == ENOSPC || errno == EDQUOT);
  int trouble = errno;
  close (fd);
  errno = trouble;
  return !failed;
}

#define LINKS_MAX 40 /* as many as the kernel follows */

/**
 * bw_file_follow_links:
 *
 * The kernel resolves the folders, so that ".." after a link to a folder means what it means there.
 *
 * Returns: (transfer full) (nullable): where @path leads, through symbolic links, even to a file
 *   that is not there yet; %NULL if they lead in a circle
 */
char *
bw_file_follow_links (const char *path)
{
  char *target = g_strdup (path);
  for (guint i = 0; i < LINKS_MAX; i++)
    {
      g_autofree char *link = g_file_read_link (target, NULL);
      if (link == NULL)
        return target;
      g_autofree char *folder = g_path_get_dirname (target);
      g_free (target);
      target = g_path_is_absolute (link) ? g_steal_pointer (&link)
                                         : g_build_filename (folder, link, NULL);
    }
  g_free (target);
  return NULL;
}

/* Finds out what there is, and refuses what is not a file that may be replaced. */
static gboolean
look (BwReplacement *replacement, GError **error)
{
  const char *path = replacement->path;
  struct stat target;

  if (*path == '\0')
    return bw_file_fail ("“”", _ ("there is no name"), error);
  replacement->is_there = stat (path, &replacement->old) == 0;
  int trouble = errno;
  if (replacement->is_there && !S_ISREG (replacement->old.st_mode))
    return bw_file_fail (path, kind_words (replacement->old.st_mode), error);
  if (!replacement->is_there && trouble == ELOOP)
    return bw_file_fail (path, _ ("its symbolic links lead in a circle"), error);
  if (!replacement->is_there && g_str_has_suffix (path, "/"))
    return bw_file_fail (path, _ ("this is the name of a folder, and there is none"), error);

  replacement->target = bw_file_follow_links (path);
  if (replacement->target == NULL)
    return bw_file_fail (path, _ ("its symbolic links lead in a circle"), error);
  replacement->folder = g_path_get_dirname (replacement->target);
  if (!replacement->is_there)
    return trouble == ENOENT || bw_file_fail_in_folder (replacement, trouble, error);
  /* A link of /proc can lead to a file that has lost its name. */
  if (lstat (replacement->target, &target) != 0 || target.st_ino != replacement->old.st_ino
      || target.st_dev != replacement->old.st_dev)
    return bw_file_fail (path, _ ("where its symbolic link leads is not known"), error);
  return TRUE;
}

/* The superuser may write to a file that nobody may write to, but whoever set it so meant it. */
static gboolean
check_writable (const BwReplacement *replacement, GError **error)
{
  if ((replacement->old.st_mode & 0222) == 0)
    return bw_file_fail (replacement->path, _ ("the file is read-only"), error);
  int fd = open (replacement->target, O_WRONLY | O_NONBLOCK | O_NOFOLLOW | O_CLOEXEC);
  if (fd >= 0)
    {
      close (fd);
      return TRUE;
    }
  int trouble = errno;
  if (trouble != EACCES && trouble != EPERM)
    return bw_file_fail (replacement->path, g_strerror (trouble), error);
  g_autofree char *reason = g_strdup_printf (_ ("the file is read-only for you (%s)"),
                                             g_strerror (trouble));
  return bw_file_fail (replacement->path, reason, error);
}

/* A file with more than one name would lose the others if a new file took its place. */
static gboolean
replace (const BwReplacement *replacement, GError **error)
{
  if (replacement->is_there && !check_writable (replacement, error))
    return FALSE;
  if (replacement->is_there && replacement->old.st_nlink > 1)
    return bw_replacement_in_place (replacement, error);
  switch (bw_replacement_by_rename (replacement, error))
    {
    case BW_ATTEMPT_DONE:
      return TRUE;
    case BW_ATTEMPT_UNSUITED:
      return bw_replacement_in_place (replacement, error);
    case BW_ATTEMPT_FAILED:
    default:
      return FALSE;
    }
}

/**
 * bw_file_replace:
 * @path: where to; a symbolic link keeps pointing where it does
 * @bytes: (nullable): the whole new file; %NULL with a @length of 0
 *
 * Writes beside @path and moves the file into place when it is whole on disk, so that an
 * interruption leaves the old file. Owner, group, permissions, access lists and extended attributes
 * stay as they were; a new file has those that the folder and the umask give. Where a new file
 * cannot have them, or would part the old one from its other names (hard links), the old file is
 * written over in place, with a copy of what it held beside it until the new bytes are on disk
 * (see bw_file_kept_copy()). Only a plain file that may be written to is replaced.
 *
 * Returns: %FALSE with @error in %BW_FILE_ERROR that names @path. The old file is then as it was,
 * or @error says where a copy of it is; if the disk fails only after all was written, @error says so
 */
gboolean
bw_file_replace (const char *path, const void *bytes, gsize length, GError **error)
{
  g_return_val_if_fail (path != NULL && (bytes != NULL || length == 0), FALSE);
  BwReplacement replacement = { .path = path, .bytes = bytes, .length = length };
  gboolean done = look (&replacement, error) && replace (&replacement, error);
  g_free (replacement.target);
  g_free (replacement.folder);
  return done;
}
