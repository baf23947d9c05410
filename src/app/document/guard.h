/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

G_BEGIN_DECLS

/* How a file stands to what was read from it or written to it last. */
typedef enum
{
  BW_FILE_SAME,
  BW_FILE_CHANGED, /* its content is another one, or cannot be read */
  BW_FILE_GONE
} BwFileState;

#define BW_TYPE_FILE_GUARD (bw_file_guard_get_type ())
G_DECLARE_FINAL_TYPE (BwFileGuard, bw_file_guard, BW, FILE_GUARD, GObject)

BwFileGuard *bw_file_guard_new (GFile *file, const char *text);
BwFileState bw_file_guard_check (BwFileGuard *self);
void bw_file_guard_accept (BwFileGuard *self);
const char *bw_file_guard_get_digest (BwFileGuard *self);

char *bw_file_digest (GFile *file);
gboolean bw_file_is_same (GFile *a, GFile *b);

G_END_DECLS
