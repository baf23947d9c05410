/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "file-private.h"

#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <string.h>
#include <sys/xattr.h>
#include <unistd.h>

#include <glib/gi18n-lib.h>

/* Replacing a file by a new one that takes its name. */

/* Extended attributes, of which the lists of who may do what (ACL) are some */

/* The names of the attributes of @fd; empty where the file system has none, NULL if they cannot be
 * had. */
static GPtrArray *
list_attributes (int fd)
{
  ssize_t length = flistxattr (fd, NULL, 0);
  if (length < 0 && errno != ENOTSUP)
    return NULL;
  g_autoptr (GPtrArray) names = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *list = g_malloc0 ((gsize) MAX (length, 0) + 1);
  length = length > 0 ? flistxattr (fd, list, (gsize) length) : 0;
  if (length < 0)
    return NULL;
  for (const char *name = list; name < list + length; name += strlen (name) + 1)
    g_ptr_array_add (names, g_strdup (name));
  return g_steal_pointer (&names);
}

/* NULL if there is no such attribute or it cannot be read. */
static GBytes *
get_attribute (int fd, const char *name)
{
  ssize_t length = fgetxattr (fd, name, NULL, 0);
  if (length < 0)
    return NULL;
  g_autofree char *value = g_malloc0 ((gsize) length + 1);
  if (length > 0)
    length = fgetxattr (fd, name, value, (gsize) length);
  return length >= 0 ? g_bytes_new (value, (gsize) length) : NULL;
}

/* Gives @to the attribute @name of @from, unless it has it. */
static gboolean
carry_attribute (int from, int to, const char *name)
{
  g_autoptr (GBytes) wanted = get_attribute (from, name);
  g_autoptr (GBytes) found = get_attribute (to, name);
  if (wanted == NULL)
    return FALSE;
  if (found != NULL && g_bytes_equal (wanted, found))
    return TRUE;
  gsize length;
  const void *value = g_bytes_get_data (wanted, &length);
  return fsetxattr (to, name, value, length, 0) == 0;
}

/* What @to was given by its folder and @from has not is taken away. */
static gboolean
carry_attributes (int from, int to)
{
  g_autoptr (GPtrArray) wanted = list_attributes (from);
  g_autoptr (GPtrArray) found = list_attributes (to);
  if (wanted == NULL || found == NULL)
    return FALSE;
  for (guint i = 0; i < found->len; i++)
    if (!g_ptr_array_find_with_equal_func (wanted, found->pdata[i], g_str_equal, NULL)
        && fremovexattr (to, found->pdata[i]) != 0)
      return FALSE;
  for (guint i = 0; i < wanted->len; i++)
    if (!carry_attribute (from, to, wanted->pdata[i]))
      return FALSE;
  return TRUE;
}

#define MODE_BITS 07777

/* @from: the old file
 * @to: a new one, still empty
 * @old: of @from
 *
 * Gives @to the owner, group, permissions and extended attributes of @from. To change the owner
 * clears some permissions, and an access list sets others, hence the order.
 *
 * Returns: whether @to has all of them */
static gboolean
carry_over (int from, int to, const struct stat *old)
{
  struct stat now;
  if (fstat (to, &now) != 0)
    return FALSE;
  if ((now.st_uid != old->st_uid || now.st_gid != old->st_gid)
      && fchown (to, old->st_uid, old->st_gid) != 0)
    return FALSE;
  return fchmod (to, old->st_mode & MODE_BITS) == 0 && carry_attributes (from, to)
         && fstat (to, &now) == 0 && now.st_uid == old->st_uid && now.st_gid == old->st_gid
         && (now.st_mode & MODE_BITS) == (old->st_mode & MODE_BITS);
}

/* The new file */

#define TRIES 100

/* Makes an empty file beside the target under a name that is not taken. That of an old file may be
 * read by nobody else until it has the old one's permissions. Returns −1 with errno set. */
static int
make_beside (const BwReplacement *replacement, char **name)
{
  mode_t mode = replacement->is_there ? 0600 : 0666;
  for (guint i = 0; i < TRIES; i++)
    {
      g_autofree char *leaf = g_strdup_printf (".breezeway-%08x-%lx", g_random_int (),
                                               (gulong) getpid ());
      *name = g_build_filename (replacement->folder, leaf, NULL);
      int fd = open (*name, O_WRONLY | O_CREAT | O_EXCL | O_NOFOLLOW | O_CLOEXEC, mode);
      if (fd >= 0)
        return fd;
      g_clear_pointer (name, g_free);
      if (errno != EEXIST)
        return -1;
    }
  return -1;
}

static gboolean
take_over_old (const BwReplacement *replacement, int fd)
{
  if (!replacement->is_there)
    return TRUE;
  int from = open (replacement->target, O_RDONLY | O_NONBLOCK | O_NOFOLLOW | O_CLOEXEC);
  if (from < 0)
    return FALSE;
  gboolean kept = carry_over (from, fd, &replacement->old);
  close (from);
  return kept;
}

/* Whether the old file could be written in place where it cannot be replaced: it is mounted there,
 * or lies in a folder where only its owner may replace it. */
static gboolean
may_write_in_place (const BwReplacement *replacement, int trouble)
{
  return replacement->is_there && (trouble == EBUSY || trouble == EPERM || trouble == EACCES);
}

/**
 * bw_replacement_by_rename:
 *
 * Writes a new file beside the target and gives it the target's name once it is whole on disk.
 */
BwAttempt
bw_replacement_by_rename (const BwReplacement *replacement, GError **error)
{
  g_autofree char *name = NULL;
  int fd = make_beside (replacement, &name);
  if (fd < 0)
    {
      bw_file_fail_in_folder (replacement, errno, error);
      return BW_ATTEMPT_FAILED;
    }
  gboolean suited = take_over_old (replacement, fd);
  gboolean written = suited && bw_file_write_all (fd, replacement->bytes, replacement->length)
                     && fsync (fd) == 0;
  int trouble = errno;
  if (close (fd) != 0 && written)
    {
      written = FALSE;
      trouble = errno;
    }
  if (written && rename (name, replacement->target) != 0)
    {
      written = FALSE;
      trouble = errno;
      suited = !may_write_in_place (replacement, trouble);
    }
  if (!written)
    {
      unlink (name);
      if (!suited)
        return BW_ATTEMPT_UNSUITED;
      bw_file_fail (replacement->path, g_strerror (trouble), error);
      return BW_ATTEMPT_FAILED;
    }
  if (bw_file_sync_folder (replacement->folder))
    return BW_ATTEMPT_DONE;
  g_set_error (error, BW_FILE_ERROR, BW_FILE_ERROR_WRITE,
               _ ("%1$s: has been written, but the disk has not confirmed it: %2$s"),
               replacement->path, g_strerror (errno));
  return BW_ATTEMPT_FAILED;
}
