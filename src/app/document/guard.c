/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "guard.h"

#include <glib/gstdio.h>
#include <string.h>

#include "core/base/keyfile.h"

/**
 * BwFileGuard:
 *
 * Knows what a file held when it was read or written here, and notices that somebody else has
 * changed, replaced or deleted it. It compares contents: a time or a size that is another one means
 * nothing if the text is the same, and the same time and size can hide another text.
 */
struct _BwFileGuard
{
  GObject parent_instance;

  char *path;
  char *digest;              /* nullable: the file is expected not to be there */
  char *seen;                /* nullable: no file was there; what the last check found */
  GFileMonitor *monitors[2]; /* nullable: of the path, and of the file that a link leads to */
};

G_DEFINE_FINAL_TYPE (BwFileGuard, bw_file_guard, G_TYPE_OBJECT)

enum
{
  TOUCHED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static void
bw_file_guard_finalize (GObject *object)
{
  BwFileGuard *self = BW_FILE_GUARD (object);

  for (guint i = 0; i < G_N_ELEMENTS (self->monitors); i++)
    if (self->monitors[i] != NULL)
      {
        g_file_monitor_cancel (self->monitors[i]);
        g_clear_object (&self->monitors[i]);
      }
  g_free (self->path);
  g_free (self->digest);
  g_free (self->seen);
  G_OBJECT_CLASS (bw_file_guard_parent_class)->finalize (object);
}

static void
bw_file_guard_class_init (BwFileGuardClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = bw_file_guard_finalize;

  /* BwFileGuard::touched: something has happened to the file; whether it matters is for
   * bw_file_guard_check() to say. */
  signals[TOUCHED] = g_signal_new ("touched", BW_TYPE_FILE_GUARD, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                   NULL, G_TYPE_NONE, 0);
}

static void
bw_file_guard_init (BwFileGuard *self)
{
}

static char *
digest_of (const char *text, gsize length)
{
  return g_compute_checksum_for_data (G_CHECKSUM_SHA256, (const guchar *) text, length);
}

static gboolean
is_there (const char *path)
{
  GStatBuf status;
  return g_stat (path, &status) == 0;
}

/* What stands for a file that is there and cannot be read. It is no digest. */
#define UNREADABLE "unreadable"

/* The digest of what the file holds now; NULL if there is none. */
static char *
read_digest (const char *path)
{
  g_autofree char *text = NULL;
  gsize length;

  if (bw_keyfile_read (path, &text, &length, NULL))
    return digest_of (text, length);
  return is_there (path) ? g_strdup (UNREADABLE) : NULL;
}

static void
on_event (BwFileGuard *self)
{
  g_signal_emit (self, signals[TOUCHED], 0);
}

/* Where files cannot be watched, the check before each save is all there is. */
static GFileMonitor *
watch (BwFileGuard *self, const char *path)
{
  g_autoptr (GFile) file = g_file_new_for_path (path);
  GFileMonitor *monitor = g_file_monitor_file (file, G_FILE_MONITOR_WATCH_MOVES, NULL, NULL);
  if (monitor != NULL)
    g_signal_connect_object (monitor, "changed", G_CALLBACK (on_event), self, G_CONNECT_SWAPPED);
  return monitor;
}

/**
 * bw_file_guard_new:
 * @file: a file of this computer
 * @text: what was read from it or written to it
 *
 * Returns: (transfer full): its guard
 */
BwFileGuard *
bw_file_guard_new (GFile *file, const char *text)
{
  g_return_val_if_fail (G_IS_FILE (file) && text != NULL, NULL);
  BwFileGuard *self = g_object_new (BW_TYPE_FILE_GUARD, NULL);
  g_autofree char *target = NULL;

  self->path = g_file_get_path (file);
  self->digest = digest_of (text, strlen (text));
  self->seen = g_strdup (self->digest);
  self->monitors[0] = watch (self, self->path);
  target = realpath (self->path, NULL);
  if (target != NULL && strcmp (target, self->path) != 0)
    self->monitors[1] = watch (self, target);
  return self;
}

/**
 * bw_file_guard_check:
 *
 * Looks at the file.
 *
 * Returns: how it stands to what it is expected to hold
 */
BwFileState
bw_file_guard_check (BwFileGuard *self)
{
  g_return_val_if_fail (BW_IS_FILE_GUARD (self), BW_FILE_SAME);

  g_free (self->seen);
  self->seen = read_digest (self->path);
  if (g_strcmp0 (self->seen, self->digest) == 0)
    return BW_FILE_SAME;
  return self->seen == NULL ? BW_FILE_GONE : BW_FILE_CHANGED;
}

/**
 * bw_file_guard_accept:
 *
 * Expects the file to be as the last check found it. What has become of it since is noticed.
 */
void
bw_file_guard_accept (BwFileGuard *self)
{
  g_return_if_fail (BW_IS_FILE_GUARD (self));
  g_free (self->digest);
  self->digest = g_strdup (self->seen);
}

/**
 * bw_file_guard_get_digest:
 *
 * Returns: (transfer none) (nullable): the digest of what the file is expected to hold; %NULL if it is
 * expected not to be there
 */
const char *
bw_file_guard_get_digest (BwFileGuard *self)
{
  g_return_val_if_fail (BW_IS_FILE_GUARD (self), NULL);
  return self->digest;
}

/**
 * bw_file_digest:
 *
 * Returns: (transfer full) (nullable): the digest of what @file holds now; %NULL if there is none
 */
char *
bw_file_digest (GFile *file)
{
  g_return_val_if_fail (G_IS_FILE (file), NULL);
  g_autofree char *path = g_file_get_path (file);
  return path != NULL ? read_digest (path) : NULL;
}

/**
 * bw_file_is_same:
 *
 * Returns: whether @a and @b are one file, by whatever names or links
 */
gboolean
bw_file_is_same (GFile *a, GFile *b)
{
  g_return_val_if_fail (G_IS_FILE (a) && G_IS_FILE (b), FALSE);
  g_autofree char *path_a = g_file_get_path (a);
  g_autofree char *path_b = g_file_get_path (b);
  GStatBuf status_a, status_b;

  if (g_file_equal (a, b))
    return TRUE;
  return path_a != NULL && path_b != NULL && g_stat (path_a, &status_a) == 0
         && g_stat (path_b, &status_b) == 0 && status_a.st_dev == status_b.st_dev
         && status_a.st_ino == status_b.st_ino;
}
