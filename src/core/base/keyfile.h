/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

G_BEGIN_DECLS

/* Files are groups of key=value lines (GKeyFile). This file adds what a person needs when one is
 * damaged: every fault names the file, the line or group, and what is allowed. */

#define BW_KEYFILE_ERROR (bw_keyfile_error_quark ())

typedef enum
{
  BW_KEYFILE_ERROR_READ,      /* the file cannot be read */
  BW_KEYFILE_ERROR_TOO_LARGE, /* over %BW_KEYFILE_MAX_BYTES */
  BW_KEYFILE_ERROR_ENCODING,  /* not UTF-8 text */
  BW_KEYFILE_ERROR_SYNTAX,    /* a line that is neither group, comment nor key=value */
  BW_KEYFILE_ERROR_DUPLICATE, /* a group or key stands twice */
  BW_KEYFILE_ERROR_KEY,       /* a key is missing or unknown where it must be known */
  BW_KEYFILE_ERROR_VALUE      /* a value is not allowed */
} BwKeyfileError;

#define BW_KEYFILE_MAX_BYTES (4u * 1024u * 1024u)

/**
 * BwGroupFunc:
 * @group: the group's name
 * @keys: a key file that holds only this group
 *
 * Called for each sound group of a file.
 */
typedef void (*BwGroupFunc) (const char *group, GKeyFile *keys, gpointer user_data);

GQuark bw_keyfile_error_quark (void);

gboolean bw_keyfile_read (const char *path, char **text, gsize *length, GError **error);
GKeyFile *bw_keyfile_parse (const char *text, gsize length, const char *file, GError **error);
void bw_keyfile_each_group (const char *text, gsize length, const char *file, BwGroupFunc func,
                            gpointer user_data, GPtrArray *faults);

char *bw_keyfile_shipped (GResource *resource, const char *path, gsize *length);

G_END_DECLS
