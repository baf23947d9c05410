/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A disk that is full or fails, and a process that is killed, in both ways of replacing a file: by
 * a new one, and, where it has a second name, in place. At the end the file is the old or the new
 * one, or an error and a copy say where the old one is. */
#define _GNU_SOURCE
#include "core/base/file.h"

#include <dlfcn.h>
#include <errno.h>
#include <fcntl.h>
#include <sched.h>
#include <signal.h>
#include <stdlib.h>
#include <string.h>
#include <sys/mount.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <glib/gstdio.h>

#include "support.h"

/* The disk: this program's own write(), fsync() and rename() stand before those of the C library,
 * so that the call of a number can fail as it does on a bad disk, and all after it. */

static struct
{
  int calls;   /* made so far */
  int fails;   /* the number of the one that fails; zero: none does */
  gboolean ever_after;
} disk;

static gboolean
disk_fails (void)
{
  disk.calls++;
  if (disk.fails == 0
      || (disk.ever_after ? disk.calls < disk.fails : disk.calls != disk.fails))
    return FALSE;
  errno = EIO;
  return TRUE;
}

ssize_t write (int fd, const void *bytes, size_t length);
int fsync (int fd);
int rename (const char *from, const char *to);

/* Half of what was asked for is written before it fails. */
ssize_t
write (int fd, const void *bytes, size_t length)
{
  static ssize_t (*real) (int, const void *, size_t);
  if (real == NULL)
    real = (ssize_t (*) (int, const void *, size_t)) dlsym (RTLD_NEXT, "write");
  if (fd <= STDERR_FILENO || !disk_fails ())
    return real (fd, bytes, length);
  (void) !real (fd, bytes, length / 2);
  errno = EIO;
  return -1;
}

int
fsync (int fd)
{
  static int (*real) (int);
  if (real == NULL)
    real = (int (*) (int)) dlsym (RTLD_NEXT, "fsync");
  return disk_fails () ? -1 : real (fd);
}

int
rename (const char *from, const char *to)
{
  static int (*real) (const char *, const char *);
  if (real == NULL)
    real = (int (*) (const char *, const char *)) dlsym (RTLD_NEXT, "rename");
  return disk_fails () ? -1 : real (from, to);
}

/* A file with one name or with two */

typedef struct
{
  char *folder;
  char *path;
  char *other; /* NULL: it has one name */
  char *old;
  char *new;
} Place;

static void
place_init (Place *place, char *folder, gboolean two_names, gsize old_length, gsize new_length)
{
  place->folder = folder;
  place->old = g_strnfill (old_length, 'o');
  place->new = g_strnfill (new_length, 'n');
  place->path = bw_test_in_folder (folder, "file.bench", place->old);
  place->other = two_names ? bw_test_in_folder (folder, "second", NULL) : NULL;
  if (two_names)
    g_assert_cmpint (link (place->path, place->other), ==, 0);
}

static void
place_clear (Place *place)
{
  bw_test_folder_remove (place->folder);
  g_free (place->path);
  g_free (place->other);
  g_free (place->old);
  g_free (place->new);
}

static guint
names_of (const Place *place)
{
  return place->other != NULL ? 2 : 1;
}

static gboolean
replace (const Place *place, GError **error)
{
  return bw_file_replace (place->path, place->new, strlen (place->new), error);
}

static gboolean
holds (const char *path, const char *text)
{
  g_autofree char *found = bw_test_read (path, NULL);
  return strcmp (found, text) == 0;
}

/* What must be so after a failure that was told in @error. */
static void
check_failure (const Place *place, const GError *error)
{
  g_assert_error (error, BW_FILE_ERROR, BW_FILE_ERROR_WRITE);
  if (error == NULL)
    return;
  bw_test_assert_words (error->message, WORDS (place->path));
  g_assert_null (strstr (error->message, ".breezeway-"));
  g_autofree char *copy = bw_file_kept_copy (place->path);
  if (copy != NULL)
    {
      g_assert_true (holds (copy, place->old));
      bw_test_assert_words (error->message, WORDS (copy));
    }
  else if (strstr (error->message, "has not confirmed") != NULL)
    g_assert_true (holds (place->path, place->new));
  else
    g_assert_true (holds (place->path, place->old));
  g_assert_cmpuint (bw_test_count_files (place->folder), ==, names_of (place) + (copy != NULL));
}

/* Lengths of the old and the new file: longer, shorter and of more than one portion. */
static const gsize lengths[][2] = {
  { 100, 5000 }, { 5000, 100 }, { 0, 300 }, { 300, 0 }, { 200000, 150000 }, { 100, 400000 },
};

/* Fails once or for ever at the first call, the second, and so on, until it succeeds. */
static void
fail_at_each_call (gboolean two_names, gboolean ever_after, gsize old_length, gsize new_length)
{
  gboolean done = FALSE;
  for (int fails = 1; !done && !g_test_failed (); fails++)
    {
      g_autoptr (GError) error = NULL;
      Place place;
      place_init (&place, bw_test_folder_new (), two_names, old_length, new_length);
      disk.calls = 0;
      disk.ever_after = ever_after;
      disk.fails = fails;
      gboolean saved = replace (&place, &error);
      disk.fails = 0;
      done = disk.calls < fails;
      if (saved)
        g_assert_true (holds (place.path, place.new));
      else
        check_failure (&place, error);
      g_assert_true (saved || !done);
      place_clear (&place);
    }
}

static void
test_bad_disk (gconstpointer data)
{
  gboolean two_names = GPOINTER_TO_INT (data);
  for (gsize i = 0; i < G_N_ELEMENTS (lengths); i++)
    for (int ever_after = 0; ever_after < 2; ever_after++)
      fail_at_each_call (two_names, ever_after, lengths[i][0], lengths[i][1]);
}

/* A process that may write no more than so many bytes to a file */

typedef struct
{
  const Place *place;
  rlim_t limit;
} Limited;

enum
{
  SAVED,
  REFUSED,
  WRONG
};

static int
replace_limited (gpointer data)
{
  const Limited *limited = data;
  const struct rlimit size = { limited->limit, limited->limit };
  g_autoptr (GError) error = NULL;

  signal (SIGXFSZ, SIG_IGN);
  setrlimit (RLIMIT_FSIZE, &size);
  if (replace (limited->place, &error))
    return SAVED;
  return strstr (error->message, "too large") != NULL ? REFUSED : WRONG;
}

static void
test_limit (gconstpointer data)
{
  for (rlim_t limit = 0; limit <= 5000; limit += 500)
    {
      Place place;
      place_init (&place, bw_test_folder_new (), GPOINTER_TO_INT (data), 100, 5000);
      Limited limited = { &place, limit };
      g_assert_cmpint (bw_test_in_child (replace_limited, &limited), ==,
                       limit < 5000 ? REFUSED : SAVED);
      g_assert_true (holds (place.path, limit < 5000 ? place.old : place.new));
      g_assert_cmpuint (bw_test_count_files (place.folder), ==, names_of (&place));
      place_clear (&place);
    }
}

/* A small disk */

#define DISK_BYTES (64 * 1024)

enum
{
  WELL,
  NO_MOUNT,
  NOT_FULL,   /* it should have been */
  NOT_WHOLE,  /* the old file is not what it was */
  LEFT_OVERS, /* more names than before */
  BAD_WORDS,
  NOT_SAVED   /* although there is room again */
};

static gboolean
write_line (const char *path, const char *line)
{
  int fd = open (path, O_WRONLY);
  gboolean done = write (fd, line, strlen (line)) == (ssize_t) strlen (line);
  close (fd);
  return done;
}

/* Who is not the superuser is so among its own (user_namespaces(7)). */
static gboolean
become_superuser (void)
{
  g_autofree char *user = g_strdup_printf ("0 %u 1", geteuid ());
  g_autofree char *group = g_strdup_printf ("0 %u 1", getegid ());
  return unshare (CLONE_NEWUSER | CLONE_NEWNS) == 0 && write_line ("/proc/self/setgroups", "deny")
         && write_line ("/proc/self/uid_map", user) && write_line ("/proc/self/gid_map", group);
}

/* Mounts a disk of a few pages over @folder, seen by this process alone. */
static gboolean
mount_small_disk (const char *folder)
{
  return (unshare (CLONE_NEWNS) == 0 || become_superuser ())
         && mount (NULL, "/", NULL, MS_REC | MS_PRIVATE, NULL) == 0
         && mount ("tmpfs", folder, "tmpfs", 0, "size=65536,mode=0777") == 0;
}

typedef struct
{
  char *folder; /* over which the disk is mounted */
  gboolean two_names;
} Disk;

static int
fill_disk (gpointer data)
{
  const Disk *on = data;
  char *folder = on->folder;
  g_autofree char *filling = bw_test_in_folder (folder, "filling", NULL);
  g_autofree char *much = g_strnfill (DISK_BYTES / 2, 'f');
  g_autoptr (GError) error = NULL;
  Place place;

  if (!mount_small_disk (folder))
    return NO_MOUNT;
  place_init (&place, folder, on->two_names, 100, DISK_BYTES / 2);
  g_assert_true (g_file_set_contents_full (filling, much, DISK_BYTES / 2,
                                           G_FILE_SET_CONTENTS_NONE, 0666, NULL));
  if (replace (&place, &error))
    return NOT_FULL;
  if (strstr (error->message, "No space") == NULL || strstr (error->message, place.path) == NULL)
    return BAD_WORDS;
  if (!holds (place.path, place.old))
    return NOT_WHOLE;
  if (bw_test_count_files (folder) != names_of (&place) + 1)
    return LEFT_OVERS;
  g_unlink (filling);
  return replace (&place, NULL) && holds (place.path, place.new) ? WELL : NOT_SAVED;
}

static void
assert_mounted (int (*work) (gpointer data), gboolean two_names)
{
  Disk on = { bw_test_folder_new (), two_names };
  int came_to = bw_test_in_child (work, &on);
  bw_test_folder_remove (on.folder);
  if (came_to == NO_MOUNT)
    g_test_skip ("this user may not mount a disk, even for one process alone");
  else
    g_assert_cmpint (came_to, ==, WELL);
}

static void
test_full_disk (gconstpointer data)
{
  assert_mounted (fill_disk, GPOINTER_TO_INT (data));
}

/* A file that is a mount of its own, as containers have them, cannot be replaced by another. */
static int
replace_mounted_file (gpointer data)
{
  char *folder = ((const Disk *) data)->folder;
  Place place;

  if (!mount_small_disk (folder))
    return NO_MOUNT;
  place_init (&place, folder, FALSE, 100, 200);
  g_autofree char *source = bw_test_in_folder (folder, "source", place.old);
  if (mount (source, place.path, NULL, MS_BIND, NULL) != 0)
    return NO_MOUNT;
  if (!replace (&place, NULL) || !holds (place.path, place.new) || !holds (source, place.new))
    return NOT_SAVED;
  return bw_test_count_files (folder) == 2 ? WELL : LEFT_OVERS;
}

static void
test_mounted_file (void)
{
  assert_mounted (replace_mounted_file, FALSE);
}

static int
replace_on_read_only_disk (gpointer data)
{
  char *folder = ((const Disk *) data)->folder;
  g_autoptr (GError) error = NULL;
  Place place;

  if (!mount_small_disk (folder))
    return NO_MOUNT;
  place_init (&place, folder, FALSE, 100, 200);
  if (mount (NULL, folder, NULL, MS_REMOUNT | MS_RDONLY, NULL) != 0)
    return NO_MOUNT;
  if (replace (&place, &error))
    return NOT_FULL;
  return strstr (error->message, "Read-only file system") != NULL ? WELL : BAD_WORDS;
}

static void
test_read_only_disk (void)
{
  assert_mounted (replace_on_read_only_disk, FALSE);
}

/* Killed at any time */

#define KILLS 60

static void G_GNUC_NORETURN
replace_for_ever (const Place *place)
{
  for (;;)
    {
      (void) bw_file_replace (place->path, place->new, strlen (place->new), NULL);
      (void) bw_file_replace (place->path, place->old, strlen (place->old), NULL);
    }
}

static gboolean
is_whole (const Place *place, const char *path)
{
  return holds (path, place->old) || holds (path, place->new);
}

/* The file is whole, or the newest copy beside it is. */
static void
test_killed (gconstpointer data)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (11);
  for (guint i = 0; i < KILLS && !g_test_failed (); i++)
    {
      Place place;
      place_init (&place, bw_test_folder_new (), GPOINTER_TO_INT (data), 30000, 3000000);
      pid_t child = fork ();
      if (child == 0)
        replace_for_ever (&place);
      g_usleep ((gulong) g_rand_int_range (rand, 500, 30000));
      kill (child, SIGKILL);
      waitpid (child, NULL, 0);
      g_autofree char *copy = bw_file_kept_copy (place.path);
      g_assert_true (is_whole (&place, place.path) || (copy != NULL && is_whole (&place, copy)));
      place_clear (&place);
    }
}

/* A copy from an earlier interruption is not written over, and the newest is the one that is told. */
static void
test_copies (void)
{
  Place place;
  place_init (&place, bw_test_folder_new (), TRUE, 100, 200);
  g_autofree char *first = bw_test_in_folder (place.folder, "file.bench.before-saving", "first");
  g_assert_true (replace (&place, NULL));
  bw_test_assert_content (first, "first");
  g_autofree char *found = bw_file_kept_copy (place.path);
  g_assert_cmpstr (found, ==, first);
  g_autofree char *second = bw_test_in_folder (place.folder, "file.bench.before-saving-2", "second");
  g_assert_true (replace (&place, NULL));
  g_autofree char *newest = bw_file_kept_copy (place.path);
  g_assert_cmpstr (newest, ==, second);
  place_clear (&place);
}

/* A hundred copies of earlier interruptions are left alone, and so is the file. */
static void
test_too_many_copies (void)
{
  Place place;
  g_autoptr (GError) error = NULL;
  place_init (&place, bw_test_folder_new (), TRUE, 100, 200);
  for (guint i = 1; i <= 100; i++)
    {
      g_autofree char *name = i > 1 ? g_strdup_printf ("file.bench.before-saving-%u", i)
                                    : g_strdup ("file.bench.before-saving");
      g_autofree char *copy = bw_test_in_folder (place.folder, name, "earlier");
    }
  g_assert_false (replace (&place, &error));
  g_assert_error (error, BW_FILE_ERROR, BW_FILE_ERROR_WRITE);
  bw_test_assert_content (place.path, place.old);
  g_assert_cmpuint (bw_test_count_files (place.folder), ==, 2 + 100);
  place_clear (&place);
}

static void
add_both (const char *name, GTestDataFunc test)
{
  g_autofree char *by_rename = g_strdup_printf ("/file-faults/%s/by-rename", name);
  g_autofree char *in_place = g_strdup_printf ("/file-faults/%s/in-place", name);
  g_test_add_data_func (by_rename, GINT_TO_POINTER (FALSE), test);
  g_test_add_data_func (in_place, GINT_TO_POINTER (TRUE), test);
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  add_both ("bad-disk", test_bad_disk);
  add_both ("limit", test_limit);
  add_both ("full-disk", test_full_disk);
  add_both ("killed", test_killed);
  g_test_add_func ("/file-faults/mounted-file", test_mounted_file);
  g_test_add_func ("/file-faults/read-only-disk", test_read_only_disk);
  g_test_add_func ("/file-faults/copies", test_copies);
  g_test_add_func ("/file-faults/too-many-copies", test_too_many_copies);
  return g_test_run ();
}
