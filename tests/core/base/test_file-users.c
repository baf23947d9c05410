/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Files of other people, in folders that several share. A process of its own takes the part of one
 * of them, which only the superuser can let it do. */
#include "core/base/file.h"

#include <errno.h>
#include <fcntl.h>
#include <grp.h>
#include <linux/fs.h>
#include <string.h>
#include <sys/ioctl.h>
#include <sys/stat.h>
#include <sys/xattr.h>
#include <unistd.h>

#include <glib/gstdio.h>

#include "support.h"

#define OLD "the old file"
#define NEW "the new file, which is longer than the old one"

/* Invented people of an invented group. */
#define ANNE 4001
#define BERT 4002
#define WORKSHOP 4100

typedef struct
{
  uid_t user;
  mode_t mask;
  const char *path;
  const char *says; /* what an error must say; NULL: none is expected */
} Save;

enum
{
  AS_EXPECTED,
  NO_SUCH_USER,
  NOT_AS_EXPECTED
};

/* Saves as one of the people, all of them in the group of the workshop. */
static int
save (gpointer data)
{
  const Save *what = data;
  const gid_t groups[] = { WORKSHOP };
  g_autoptr (GError) error = NULL;

  if (what->user != 0
      && (setgroups (1, groups) != 0 || setgid (what->user) != 0 || setuid (what->user) != 0))
    return NO_SUCH_USER;
  umask (what->mask);
  gboolean saved = bw_file_replace (what->path, NEW, strlen (NEW), &error);
  gboolean right = what->says == NULL ? saved
                                      : !saved && strstr (error->message, what->says) != NULL
                                            && strstr (error->message, what->path) != NULL
                                            && strstr (error->message, ".breezeway-") == NULL;
  if (!right)
    g_printerr ("# %s\n", error != NULL ? error->message : "was saved");
  return right ? AS_EXPECTED : NOT_AS_EXPECTED;
}

static void
assert_saves (uid_t user, mode_t mask, const char *path, const char *says)
{
  Save what = { user, mask, path, says };
  g_assert_cmpint (bw_test_in_child (save, &what), ==, AS_EXPECTED);
}

static gboolean
is_superuser (void)
{
  if (geteuid () == 0)
    return TRUE;
  g_test_skip ("only the superuser can take the part of other people");
  return FALSE;
}

/* A folder of the workshop, in which all of the group may make and replace files. */
static char *
shared_folder (mode_t mode)
{
  char *folder = bw_test_folder_new ();
  g_assert_cmpint (chown (folder, 0, WORKSHOP), ==, 0);
  g_assert_cmpint (chmod (folder, mode), ==, 0);
  return folder;
}

static char *
file_of (const char *folder, uid_t user, gid_t group, mode_t mode)
{
  char *path = bw_test_in_folder (folder, "shared.bench", OLD);
  g_assert_cmpint (chown (path, user, group), ==, 0);
  g_assert_cmpint (chmod (path, mode), ==, 0);
  return path;
}

static void
assert_file (const char *path, const char *text, uid_t user, gid_t group, mode_t mode)
{
  struct stat status = { 0 };
  g_assert_cmpint (stat (path, &status), ==, 0);
  g_assert_cmpuint (status.st_uid, ==, user);
  g_assert_cmpuint (status.st_gid, ==, group);
  g_assert_cmpint (status.st_mode & 07777, ==, mode);
  bw_test_assert_content (path, text);
}

/* The colleague's file stays the colleague's, and open to the group, whatever the umask. */
static void
test_colleague (void)
{
  static const mode_t folders[] = { 0770, 02770, 01770 };
  static const mode_t masks[] = { 002, 022, 077 };
  if (!is_superuser ())
    return;
  for (gsize i = 0; i < G_N_ELEMENTS (folders); i++)
    for (gsize k = 0; k < G_N_ELEMENTS (masks); k++)
      {
        char *folder = shared_folder (folders[i]);
        g_autofree char *path = file_of (folder, ANNE, WORKSHOP, 0660);
        assert_saves (BERT, masks[k], path, NULL);
        assert_file (path, NEW, ANNE, WORKSHOP, 0660);
        assert_saves (ANNE, masks[k], path, NULL);
        assert_file (path, NEW, ANNE, WORKSHOP, 0660);
        g_assert_cmpuint (bw_test_count_files (folder), ==, 1);
        bw_test_folder_remove (folder);
      }
}

/* A new file is the maker's; a folder with the set-group-id bit gives it the folder's group. */
static void
test_new (void)
{
  if (!is_superuser ())
    return;
  char *plain = shared_folder (0777), *set = shared_folder (02777);
  g_autofree char *in_plain = bw_test_in_folder (plain, "new.bench", NULL);
  g_autofree char *in_set = bw_test_in_folder (set, "new.bench", NULL);
  assert_saves (BERT, 002, in_plain, NULL);
  assert_file (in_plain, NEW, BERT, BERT, 0664);
  assert_saves (BERT, 002, in_set, NULL);
  assert_file (in_set, NEW, BERT, WORKSHOP, 0664);
  bw_test_folder_remove (plain);
  bw_test_folder_remove (set);
}

/* The superuser, who mends something for somebody, takes nothing away. */
static void
test_superuser (void)
{
  if (!is_superuser ())
    return;
  char *folder = shared_folder (0770);
  g_autofree char *path = file_of (folder, ANNE, BERT, 0640);
  struct stat before, after;
  g_assert_cmpint (stat (path, &before), ==, 0);
  assert_saves (0, 077, path, NULL);
  assert_file (path, NEW, ANNE, BERT, 0640);
  g_assert_cmpint (stat (path, &after), ==, 0);
  g_assert_cmpuint (before.st_ino, !=, after.st_ino); /* a new file took its place */
  bw_test_folder_remove (folder);
}

/* A group that the saver is not in cannot be given to a new file. */
static void
test_foreign_group (void)
{
  if (!is_superuser ())
    return;
  char *folder = shared_folder (0777);
  g_autofree char *path = file_of (folder, BERT, ANNE, 0640);
  assert_saves (BERT, 077, path, NULL);
  assert_file (path, NEW, BERT, ANNE, 0640);
  g_assert_cmpuint (bw_test_count_files (folder), ==, 1);
  bw_test_folder_remove (folder);
}

/* In a sticky folder, such as /tmp, only the owner may replace a file; others may write to it. */
static void
test_sticky (void)
{
  if (!is_superuser ())
    return;
  char *folder = shared_folder (01777);
  g_autofree char *path = file_of (folder, ANNE, ANNE, 0666);
  assert_saves (BERT, 022, path, NULL);
  assert_file (path, NEW, ANNE, ANNE, 0666);
  g_assert_cmpuint (bw_test_count_files (folder), ==, 1);
  bw_test_folder_remove (folder);
}

static void
test_not_mine (void)
{
  if (!is_superuser ())
    return;
  char *folder = shared_folder (0777);
  g_autofree char *path = file_of (folder, ANNE, ANNE, 0644);
  assert_saves (BERT, 022, path, "read-only for you");
  assert_file (path, OLD, ANNE, ANNE, 0644);
  g_assert_cmpint (chmod (path, 0444), ==, 0);
  assert_saves (ANNE, 022, path, "read-only");
  assert_file (path, OLD, ANNE, ANNE, 0444);
  g_assert_cmpuint (bw_test_count_files (folder), ==, 1);
  bw_test_folder_remove (folder);
}

/* Without a place for a copy an interrupted save could not be mended, so that there is none. */
static void
test_closed_folder (void)
{
  if (!is_superuser ())
    return;
  char *folder = shared_folder (0755);
  g_autofree char *path = file_of (folder, ANNE, ANNE, 0666);
  g_autofree char *other = bw_test_in_folder (folder, "other.bench", NULL);
  g_autofree char *new = bw_test_in_folder (folder, "new.bench", NULL);
  assert_saves (BERT, 022, path, "no new file may be made");
  assert_saves (BERT, 022, new, "no new file may be made");
  g_assert_cmpint (link (path, other), ==, 0);
  assert_saves (BERT, 022, path, "no new file may be made");
  assert_file (path, OLD, ANNE, ANNE, 0666);
  g_assert_cmpuint (bw_test_count_files (folder), ==, 2);
  bw_test_folder_remove (folder);
}

/* What the saver may not give to a new file, such as a label of the system, stays on the old one. */
static void
test_attribute_of_the_system (void)
{
  if (!is_superuser ())
    return;
  char *folder = shared_folder (0777);
  g_autofree char *path = file_of (folder, BERT, BERT, 0644);
  struct stat before, after;
  char value[8] = "";
  if (setxattr (path, "security.test", "17", 2, 0) != 0)
    g_test_skip ("the file system of the test has no security attributes");
  else
    {
      g_assert_cmpint (stat (path, &before), ==, 0);
      assert_saves (BERT, 022, path, NULL);
      g_assert_cmpint (stat (path, &after), ==, 0);
      g_assert_cmpuint (before.st_ino, ==, after.st_ino);
      g_assert_cmpint (getxattr (path, "security.test", value, sizeof value), ==, 2);
      bw_test_assert_content (path, NEW);
      g_assert_cmpuint (bw_test_count_files (folder), ==, 1);
    }
  bw_test_folder_remove (folder);
}

static gboolean
set_immutable (const char *path, gboolean immutable)
{
  int fd = open (path, O_RDONLY), flags = 0;
  gboolean done = ioctl (fd, FS_IOC_GETFLAGS, &flags) == 0;
  flags = immutable ? flags | FS_IMMUTABLE_FL : flags & ~FS_IMMUTABLE_FL;
  done = done && ioctl (fd, FS_IOC_SETFLAGS, &flags) == 0;
  close (fd);
  return done;
}

/* chattr(1) +i: read-only for the superuser too. */
static void
test_immutable (void)
{
  if (!is_superuser ())
    return;
  char *folder = shared_folder (0777);
  g_autofree char *path = file_of (folder, ANNE, ANNE, 0666);
  if (!set_immutable (path, TRUE))
    g_test_skip ("the file system of the test has no immutable files");
  else
    {
      assert_saves (0, 022, path, "read-only for you");
      assert_saves (BERT, 022, path, "read-only for you");
      g_assert_true (set_immutable (path, FALSE));
      assert_file (path, OLD, ANNE, ANNE, 0666);
      g_assert_cmpuint (bw_test_count_files (folder), ==, 1);
    }
  bw_test_folder_remove (folder);
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  g_test_add_func ("/file-users/colleague", test_colleague);
  g_test_add_func ("/file-users/new", test_new);
  g_test_add_func ("/file-users/superuser", test_superuser);
  g_test_add_func ("/file-users/foreign-group", test_foreign_group);
  g_test_add_func ("/file-users/sticky", test_sticky);
  g_test_add_func ("/file-users/not-mine", test_not_mine);
  g_test_add_func ("/file-users/closed-folder", test_closed_folder);
  g_test_add_func ("/file-users/attribute-of-the-system", test_attribute_of_the_system);
  g_test_add_func ("/file-users/immutable", test_immutable);
  return g_test_run ();
}
