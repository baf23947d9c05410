/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A file that is replaced keeps its permissions, attributes and names, and links lead where they
 * led; what is no plain file is answered in words. POSIX.1-2017 (open, rename, link, symlink, umask)
 * and acl(5) say what the kernel does; the tests look with stat() and getxattr(). */
#include "core/base/file-private.h"

#include <errno.h>
#include <fcntl.h>
#include <stdlib.h>
#include <string.h>
#include <sys/socket.h>
#include <sys/stat.h>
#include <sys/un.h>
#include <sys/xattr.h>
#include <unistd.h>

#include <glib/gstdio.h>

#include "support.h"

#define OLD "the old file"
#define NEW "the new file, which is longer than the old one"

static gboolean
replace (const char *path, const char *text, GError **error)
{
  return bw_file_replace (path, text, strlen (text), error);
}

static void
assert_replaced (const char *path)
{
  g_autoptr (GError) error = NULL;
  g_assert_true (replace (path, NEW, &error));
  g_assert_no_error (error);
  bw_test_assert_content (path, NEW);
}

/* The sentence names the file as it was given, and no name that the program made up. */
static void
assert_refused (const char *path, const char *reason)
{
  g_autoptr (GError) error = NULL;
  g_assert_false (replace (path, NEW, &error));
  g_assert_error (error, BW_FILE_ERROR, BW_FILE_ERROR_WRITE);
  if (error == NULL)
    return;
  bw_test_assert_words (error->message, WORDS (path, reason));
  g_assert_null (strstr (error->message, ".breezeway-"));
  g_assert_null (strstr (error->message, "(null)"));
}

static struct stat
status_of (const char *path)
{
  struct stat status = { 0 };
  g_assert_cmpint (stat (path, &status), ==, 0);
  return status;
}

/* Permissions */

static const mode_t masks[] = { 0, 002, 022, 077, 0777 };

/* With every umask a file keeps the permissions that it had, 0660 of a shared folder too, though a new
 * file takes its place. */
static void
test_keeps_mode (void)
{
  static const mode_t modes[] = { 0200, 0600, 0640, 0644, 0660, 0664, 0666, 0700, 0755, 0777, 02664 };
  for (gsize i = 0; i < G_N_ELEMENTS (modes); i++)
    for (gsize k = 0; k < G_N_ELEMENTS (masks); k++)
      {
        if (modes[i] == 0200 && geteuid () != 0)
          continue; /* what it holds may not be read by its owner, so that it cannot be kept */
        char *folder = bw_test_folder_new ();
        g_autofree char *path = bw_test_in_folder (folder, "shared.bench", OLD);
        g_assert_cmpint (chmod (path, modes[i]), ==, 0);
        struct stat old = status_of (path);
        mode_t before = umask (masks[k]);
        assert_replaced (path);
        umask (before);
        g_assert_cmpuint (status_of (path).st_ino, !=, old.st_ino);
        g_assert_cmpint (status_of (path).st_mode & 07777, ==, modes[i]);
        g_assert_cmpuint (bw_test_count_files (folder), ==, 1);
        bw_test_folder_remove (folder);
      }
}

/* A new file has the permissions that any program's new file has (umask(2)). */
static void
test_new_by_umask (void)
{
  for (gsize k = 0; k < G_N_ELEMENTS (masks); k++)
    {
      char *folder = bw_test_folder_new ();
      g_autofree char *path = bw_test_in_folder (folder, "new.bench", NULL);
      mode_t before = umask (masks[k]);
      gboolean done = replace (path, NEW, NULL);
      umask (before);
      g_assert_true (done);
      g_assert_cmpint (status_of (path).st_mode & 07777, ==, 0666 & ~masks[k]);
      bw_test_folder_remove (folder);
    }
}

/* Write protection that is meant for everybody holds for the superuser too. Nothing is written. */
static void
test_read_only (void)
{
  static const mode_t modes[] = { 0444, 0400, 0555, 0 };
  for (gsize i = 0; i < G_N_ELEMENTS (modes); i++)
    {
      char *folder = bw_test_folder_new ();
      g_autofree char *path = bw_test_in_folder (folder, "kept.bench", OLD);
      g_assert_cmpint (chmod (path, modes[i]), ==, 0);
      struct stat before = status_of (path);
      assert_refused (path, "read-only");
      struct stat after = status_of (path);
      g_assert_cmpuint (before.st_ino, ==, after.st_ino);
      g_assert_cmpint (before.st_mode, ==, after.st_mode);
      g_assert_cmpint (before.st_mtim.tv_nsec, ==, after.st_mtim.tv_nsec);
      g_assert_cmpuint (bw_test_count_files (folder), ==, 1);
      g_assert_cmpint (chmod (path, 0600), ==, 0);
      bw_test_assert_content (path, OLD);
      bw_test_folder_remove (folder);
    }
}

/* Extended attributes and access lists */

static gboolean
set_attribute (const char *path, const char *name, const void *value, gsize length)
{
  if (setxattr (path, name, value, length, 0) == 0)
    return TRUE;
  g_autofree char *says = g_strdup_printf ("the file system of the test has no %s: %s", name,
                                           g_strerror (errno));
  g_test_skip (says);
  return FALSE;
}

static void
assert_attribute (const char *path, const char *name, const void *value, gsize length)
{
  char found[256];
  ssize_t n = getxattr (path, name, found, sizeof found);
  g_assert_cmpint (n, ==, length);
  if (n == (ssize_t) length)
    g_assert_cmpmem (found, (gsize) n, value, length);
}

static void
test_keeps_attributes (void)
{
  char *folder = bw_test_folder_new ();
  g_autofree char *path = bw_test_in_folder (folder, "noted.bench", OLD);
  if (set_attribute (path, "user.job", "17", 2) && set_attribute (path, "user.empty", "", 0))
    {
      GStatBuf before, after;
      g_assert_cmpint (g_stat (path, &before), ==, 0);
      assert_replaced (path);
      g_assert_cmpint (g_stat (path, &after), ==, 0);
      g_assert_cmpuint (after.st_ino, !=, before.st_ino); /* whole at once, not written over */
      assert_attribute (path, "user.job", "17", 2);
      assert_attribute (path, "user.empty", "", 0);
      g_assert_cmpuint (bw_test_count_files (folder), ==, 1);
    }
  bw_test_folder_remove (folder);
}

/* An access list as the kernel keeps it (linux/posix_acl_xattr.h): version 2, then entries of tag,
 * permission and id, all little endian: owner rw, user 1234 rw, group r, mask rw, others none. */
static const guint8 access_list[] = {
  2,    0, 0, 0,                               /* version */
  0x01, 0, 6, 0, 0xff, 0xff, 0xff, 0xff,       /* owner */
  0x02, 0, 6, 0, 0xd2, 0x04, 0,    0,          /* user 1234 */
  0x04, 0, 4, 0, 0xff, 0xff, 0xff, 0xff,       /* group */
  0x10, 0, 6, 0, 0xff, 0xff, 0xff, 0xff,       /* mask */
  0x20, 0, 0, 0, 0xff, 0xff, 0xff, 0xff,       /* others */
};

#define ACCESS "system.posix_acl_access"
#define DEFAULT "system.posix_acl_default"

static void
test_keeps_access_list (void)
{
  char *folder = bw_test_folder_new ();
  g_autofree char *path = bw_test_in_folder (folder, "listed.bench", OLD);
  if (set_attribute (path, ACCESS, access_list, sizeof access_list))
    {
      mode_t before = umask (077);
      assert_replaced (path);
      umask (before);
      assert_attribute (path, ACCESS, access_list, sizeof access_list);
      g_assert_cmpint (status_of (path).st_mode & 07777, ==, 0660); /* the mask stands for the group */
    }
  bw_test_folder_remove (folder);
}

/* A folder's list for what is made in it holds for a new file, and not for one that had none. */
static void
test_folder_list (void)
{
  char *folder = bw_test_folder_new ();
  g_autofree char *old = bw_test_in_folder (folder, "old.bench", OLD);
  g_autofree char *new = bw_test_in_folder (folder, "new.bench", NULL);
  g_assert_cmpint (chmod (old, 0640), ==, 0);
  if (set_attribute (folder, DEFAULT, access_list, sizeof access_list))
    {
      mode_t before = umask (077);
      assert_replaced (old);
      assert_replaced (new);
      umask (before);
      g_assert_cmpint (status_of (old).st_mode & 07777, ==, 0640);
      g_assert_cmpint (getxattr (old, ACCESS, NULL, 0), ==, -1);
      assert_attribute (new, ACCESS, access_list, sizeof access_list);
    }
  bw_test_folder_remove (folder);
}

/* Names */

/* A file with two names is still one file. */
static void
test_hard_links (void)
{
  static const char *const texts[] = { NEW, "short", "", OLD };
  char *folder = bw_test_folder_new ();
  g_autofree char *path = bw_test_in_folder (folder, "one.bench", OLD);
  g_autofree char *other = bw_test_in_folder (folder, "two.bench", NULL);
  g_assert_cmpint (chmod (path, 0660), ==, 0);
  g_assert_cmpint (link (path, other), ==, 0);
  struct stat before = status_of (path);

  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_autoptr (GError) error = NULL;
      g_assert_true (replace (path, texts[i], &error));
      g_assert_no_error (error);
      bw_test_assert_content (path, texts[i]);
      bw_test_assert_content (other, texts[i]);
      g_assert_cmpuint (bw_test_count_files (folder), ==, 2); /* the copy has gone */
    }
  g_assert_cmpuint (status_of (other).st_ino, ==, before.st_ino);
  g_assert_cmpuint (status_of (path).st_nlink, ==, 2);
  g_assert_cmpint (status_of (path).st_mode, ==, before.st_mode);
  g_assert_null (bw_file_kept_copy (path));
  bw_test_folder_remove (folder);
}

/* The longest name that a file can have. */
static void
test_long_name (void)
{
  for (guint linked = 0; linked < 2; linked++)
    {
      char *folder = bw_test_folder_new ();
      g_autoptr (GString) name = g_string_new (NULL);
      while (name->len < 254)
        g_string_append (name, "Ω"); /* two bytes, so that a cut could fall between them */
      g_string_append_c (name, 'x');
      g_autofree char *path = bw_test_in_folder (folder, name->str, NULL);
      g_autofree char *other = bw_test_in_folder (folder, "other", OLD);
      g_assert_cmpint (linked ? link (other, path) : g_rename (other, path), ==, 0);
      assert_replaced (path);
      g_assert_cmpuint (bw_test_count_files (folder), ==, 1 + linked);
      bw_test_folder_remove (folder);
    }
}

typedef struct
{
  const char *name;
  const char *link;   /* what the link "link" holds; "@/" stands for the folder */
  const char *target; /* the file in the folder that it leads to */
} LinkCase;

static const LinkCase link_cases[] = {
  { "relative", "file", "file" },
  { "relative-with-dot", "./file", "file" },
  { "up-and-down", "inner/../file", "file" },
  { "absolute", "@/file", "file" },
  { "through-a-link", "second", "third" },
  { "through-a-linked-folder", "door/../up", "inner/up" },
};

/* Makes inner/, inner/deep/, door → inner/deep and second → third below @folder. ".." behind the
 * link "door" is "inner". */
static void
furnish (const char *folder)
{
  g_autofree char *deep = g_build_filename (folder, "inner", "deep", NULL);
  g_autofree char *door = g_build_filename (folder, "door", NULL);
  g_autofree char *second = g_build_filename (folder, "second", NULL);
  g_assert_cmpint (g_mkdir_with_parents (deep, 0777), ==, 0);
  g_assert_cmpint (symlink ("inner/deep", door), ==, 0);
  g_assert_cmpint (symlink ("third", second), ==, 0);
}

static void
clear (char *folder)
{
  g_autofree char *command = g_strdup_printf ("rm -rf '%s'", folder);
  g_assert_cmpint (system (command), ==, 0);
  g_free (folder);
}

/* The link stays one, whether the file is there (@there) or not. */
static void
follow (const LinkCase *c, gboolean there)
{
  char *folder = bw_test_folder_new ();
  g_autofree char *link = g_build_filename (folder, "link", NULL);
  g_autofree char *target = g_build_filename (folder, c->target, NULL);
  g_autofree char *content = c->link[0] == '@' ? g_strconcat (folder, c->link + 1, NULL)
                                               : g_strdup (c->link);
  furnish (folder);
  if (there)
    g_assert_true (g_file_set_contents (target, OLD, -1, NULL));
  g_assert_cmpint (symlink (content, link), ==, 0);
  assert_replaced (link);
  g_autofree char *after = g_file_read_link (link, NULL);
  g_assert_cmpstr (after, ==, content);
  bw_test_assert_content (target, NEW);
  clear (folder);
}

static void
test_link (gconstpointer data)
{
  follow (data, TRUE);
  follow (data, FALSE);
}

/* A link that is named without its folder: "edid demo.bench -o link". */
static int
replace_here (gpointer data)
{
  g_autofree char *text = NULL;
  if (chdir (data) != 0 || symlink ("file", "link") != 0 || !replace ("link", NEW, NULL))
    return 1;
  return g_file_get_contents ("file", &text, NULL, NULL) && strcmp (text, NEW) == 0
         && g_file_test ("link", G_FILE_TEST_IS_SYMLINK) ? 0 : 2;
}

static void
test_link_here (void)
{
  char *folder = bw_test_folder_new ();
  g_assert_cmpint (bw_test_in_child (replace_here, folder), ==, 0);
  bw_test_folder_remove (folder);
}

static void
test_link_circle (void)
{
  char *folder = bw_test_folder_new ();
  g_autofree char *one = g_build_filename (folder, "one", NULL);
  g_autofree char *two = g_build_filename (folder, "two", NULL);
  g_assert_cmpint (symlink ("two", one), ==, 0);
  g_assert_cmpint (symlink ("one", two), ==, 0);
  assert_refused (one, "circle");
  bw_test_folder_remove (folder);
}

static void
test_link_to_no_folder (void)
{
  char *folder = bw_test_folder_new ();
  g_autofree char *link = g_build_filename (folder, "link", NULL);
  g_assert_cmpint (symlink ("nowhere/file", link), ==, 0);
  assert_refused (link, "there is no folder");
  bw_test_folder_remove (folder);
}

/* What is no plain file */

static void
test_kinds (void)
{
  char *folder = bw_test_folder_new ();
  g_autofree char *pipe = bw_test_in_folder (folder, "pipe", NULL);
  g_autofree char *socket_path = bw_test_in_folder (folder, "socket", NULL);
  g_autofree char *file = bw_test_in_folder (folder, "file", OLD);
  g_autofree char *slash = g_strconcat (folder, "/none/", NULL);
  g_autofree char *below_file = g_build_filename (file, "below", NULL);
  g_autofree char *nowhere = g_build_filename (folder, "no", "such", NULL);
  struct sockaddr_un address = { .sun_family = AF_UNIX };
  int fd = socket (AF_UNIX, SOCK_STREAM, 0);

  g_assert_cmpint (mkfifo (pipe, 0600), ==, 0);
  g_strlcpy (address.sun_path, socket_path, sizeof address.sun_path);
  g_assert_cmpint (bind (fd, (struct sockaddr *) &address, sizeof address), ==, 0);
  assert_refused (folder, "it is a folder");
  assert_refused (pipe, "it is a pipe");
  assert_refused (socket_path, "it is a socket");
  assert_refused ("/dev/null", "it is a device");
  assert_refused ("/dev/full", "it is a device");
  assert_refused (slash, "there is none");
  assert_refused (below_file, "is not a folder");
  assert_refused (nowhere, "there is no folder");
  assert_refused ("", "there is no name");
  close (fd);
  bw_test_folder_remove (folder);
}

/* Reading */

static void
assert_unreadable (const char *path, gsize most, int code, const char *says)
{
  g_autoptr (GError) error = NULL;
  char *bytes = NULL;
  gsize length = 0;
  g_assert_false (bw_file_read (path, most, &bytes, &length, &error));
  g_assert_error (error, BW_FILE_ERROR, code);
  if (error != NULL)
    bw_test_assert_words (error->message, WORDS (path, says));
  g_assert_null (bytes);
}

/* What has no end is not begun, and a pipe is not waited for. */
static void
test_read_kinds (void)
{
  char *folder = bw_test_folder_new ();
  g_autofree char *pipe = bw_test_in_folder (folder, "pipe", NULL);
  g_assert_cmpint (mkfifo (pipe, 0600), ==, 0);
  assert_unreadable ("/dev/zero", 100, BW_FILE_ERROR_READ, "it is a device");
  assert_unreadable (pipe, 100, BW_FILE_ERROR_READ, "it is a pipe");
  assert_unreadable (folder, 100, BW_FILE_ERROR_READ, "it is a folder");
  assert_unreadable ("/no/such/file", 100, BW_FILE_ERROR_READ, "No such file");
  bw_test_folder_remove (folder);
}

static void
test_read_bound (void)
{
  static const struct
  {
    gsize most;
    const char *says;
  } bounds[] = { { 11, "11 bytes" }, { 0, "0 MiB" } };
  char *folder = bw_test_folder_new ();
  g_autofree char *path = bw_test_in_folder (folder, "file", OLD);
  g_autofree char *bytes = NULL;
  gsize length = 0;
  g_assert_true (bw_file_read (path, strlen (OLD), &bytes, &length, NULL));
  g_assert_cmpmem (bytes, length + 1, OLD, sizeof OLD);
  for (gsize i = 0; i < G_N_ELEMENTS (bounds); i++)
    assert_unreadable (path, bounds[i].most, BW_FILE_ERROR_TOO_LARGE, bounds[i].says);
  bw_test_folder_remove (folder);
}

/* The files of /proc say that they have no size; one that is too large is found out by reading. */
static void
test_read_without_size (void)
{
  g_autofree char *bytes = NULL;
  gsize length = 0;
  g_assert_true (bw_file_read ("/proc/self/status", 1024 * 1024, &bytes, &length, NULL));
  g_assert_nonnull (bytes != NULL ? strstr (bytes, "Name:") : NULL);
  assert_unreadable ("/proc/self/status", 10, BW_FILE_ERROR_TOO_LARGE, "10 bytes");
}

/* Why no file can be made in a folder: what open(2) of POSIX.1-2017 lists for a path that leads through
 * nothing or through a file, and for a folder in which one may not write, is said of the folder by its
 * name; what has nothing to do with the folder, such as a full disk, is not. */
static void
test_why_not_in_folder (void)
{
  static const struct
  {
    int trouble;
    const char *says;
    gboolean names_folder;
  } cases[] = {
    { ENOENT, "there is no folder", TRUE },     { ENOTDIR, "is not a folder", TRUE },
    { EACCES, "no new file may be made", TRUE }, { EPERM, "no new file may be made", TRUE },
    { EROFS, "no new file may be made", TRUE },  { ENOSPC, "No space left on device", FALSE },
    { EIO, "Input/output error", FALSE },
  };
  BwReplacement replacement = { .path = "~/monitor.bench", .folder = (char *) "/srv/benches" };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GError) error = NULL;
      g_assert_false (bw_file_fail_in_folder (&replacement, cases[i].trouble, &error));
      g_assert_error (error, BW_FILE_ERROR, BW_FILE_ERROR_WRITE);
      g_assert_true (g_str_has_prefix (error->message, "~/monitor.bench: "));
      g_assert_nonnull (strstr (error->message, cases[i].says));
      g_assert_cmpint (strstr (error->message, "“/srv/benches”") != NULL, ==, cases[i].names_folder);
    }
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  g_test_add_func ("/file/keeps/mode", test_keeps_mode);
  g_test_add_func ("/file/keeps/attributes", test_keeps_attributes);
  g_test_add_func ("/file/keeps/access-list", test_keeps_access_list);
  g_test_add_func ("/file/keeps/hard-links", test_hard_links);
  g_test_add_func ("/file/new/by-umask", test_new_by_umask);
  g_test_add_func ("/file/new/by-list-of-folder", test_folder_list);
  g_test_add_func ("/file/read-only", test_read_only);
  g_test_add_func ("/file/long-name", test_long_name);
  for (gsize i = 0; i < G_N_ELEMENTS (link_cases); i++)
    {
      g_autofree char *path = g_strconcat ("/file/link/", link_cases[i].name, NULL);
      g_test_add_data_func (path, &link_cases[i], test_link);
    }
  g_test_add_func ("/file/link/here", test_link_here);
  g_test_add_func ("/file/link/circle", test_link_circle);
  g_test_add_func ("/file/link/to-no-folder", test_link_to_no_folder);
  g_test_add_func ("/file/why-not-in-folder", test_why_not_in_folder);
  g_test_add_func ("/file/kinds", test_kinds);
  g_test_add_func ("/file/read/kinds", test_read_kinds);
  g_test_add_func ("/file/read/bound", test_read_bound);
  g_test_add_func ("/file/read/without-size", test_read_without_size);
  return g_test_run ();
}
