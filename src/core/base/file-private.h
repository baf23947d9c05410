/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <sys/stat.h>

#include "file.h"

G_BEGIN_DECLS

/**
 * BwReplacement:
 * @path: as the person wrote it, for errors
 * @target: where its symbolic links lead
 * @folder: in which @target lies
 * @is_there: whether @target is there already; @old is then what it was before
 *
 * A file that is being replaced by @length bytes.
 */
typedef struct
{
  const char *path;
  char *target;
  char *folder;
  gboolean is_there;
  struct stat old;
  const char *bytes;
  gsize length;
} BwReplacement;

/* How far an attempt came. */
typedef enum
{
  BW_ATTEMPT_DONE,
  BW_ATTEMPT_FAILED,  /* the error is set; the old file is as it was, unless the error says more */
  BW_ATTEMPT_UNSUITED /* nothing has been done: what the file is cannot be kept in this way */
} BwAttempt;

BwAttempt bw_replacement_by_rename (const BwReplacement *replacement, GError **error);
gboolean bw_replacement_in_place (const BwReplacement *replacement, GError **error);

gboolean bw_file_fail (const char *path, const char *reason, GError **error);
gboolean bw_file_fail_in_folder (const BwReplacement *replacement, int trouble, GError **error);
gboolean bw_file_write_all (int fd, const char *bytes, gsize length);
char *bw_file_follow_links (const char *path);
gboolean bw_file_sync_folder (const char *folder);

G_END_DECLS
