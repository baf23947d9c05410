/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Whole files: read within a bound, and replaced whole or not at all. Every file that a person asks
 * for is written by bw_file_replace(). Errors name the file as the person wrote it. */

#define BW_FILE_ERROR (bw_file_error_quark ())

typedef enum
{
  BW_FILE_ERROR_READ,      /* the file is not there, not a plain file or not readable */
  BW_FILE_ERROR_TOO_LARGE, /* over the bound that was given */
  BW_FILE_ERROR_WRITE      /* the file cannot be replaced */
} BwFileError;

GQuark bw_file_error_quark (void);

gboolean bw_file_read (const char *path, gsize most, char **bytes, gsize *length, GError **error);
gboolean bw_file_read_stream (int fd, const char *name, gsize most, char **bytes, gsize *length,
                              GError **error);
gboolean bw_file_replace (const char *path, const void *bytes, gsize length, GError **error);
char *bw_file_kept_copy (const char *path);

G_END_DECLS
