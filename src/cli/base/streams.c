/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "streams.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

#include <glib/gi18n-lib.h>

#include "core/base/file.h"
#include "output.h"

/**
 * bw_cli_is_standard:
 * @file: (nullable): as it came
 *
 * A file of that very name is written "./-".
 *
 * Returns: whether it is standard input or output: "-", or to write also "-" and a suffix that tells
 *   the kind of file, such as "-.pdf"
 */
gboolean
bw_cli_is_standard (const char *file)
{
  return file != NULL && file[0] == '-' && (file[1] == '\0' || file[1] == '.');
}

/**
 * bw_cli_input_name:
 *
 * Returns: (transfer none): what to call @file in messages
 */
const char *
bw_cli_input_name (const char *file)
{
  return g_strcmp0 (file, "-") == 0 ? _ ("standard input") : file;
}

/**
 * bw_cli_read:
 * @file: as it came
 *
 * Reads a whole file, or standard input to its end, as bw_file_read() does.
 *
 * Returns: %FALSE with @error in %BW_FILE_ERROR
 */
gboolean
bw_cli_read (const char *file, gsize most, char **bytes, gsize *length, GError **error)
{
  g_return_val_if_fail (file != NULL, FALSE);
  if (strcmp (file, "-") != 0)
    return bw_file_read (file, most, bytes, length, error);
  return bw_file_read_stream (STDIN_FILENO, bw_cli_input_name (file), most, bytes, length, error);
}

static gboolean
write_out (GBytes *bytes)
{
  gsize length;
  const void *data = g_bytes_get_data (bytes, &length);

  errno = 0;
  if (fwrite (data, 1, length, stdout) == length && fflush (stdout) == 0)
    return TRUE;
  bw_cli_complain (_ ("standard output cannot be written: %s"), g_strerror (errno));
  return FALSE;
}

/**
 * bw_cli_write:
 * @target: as it came
 * @bytes: what is to be in it
 *
 * Writes a whole file, or to standard output.
 *
 * Returns: %FALSE, having said so in one line, if that cannot be done; a file that was there is then
 *   as it was
 */
gboolean
bw_cli_write (const char *target, GBytes *bytes)
{
  g_return_val_if_fail (target != NULL && bytes != NULL, FALSE);
  g_autoptr (GError) error = NULL;
  gsize length;
  const void *data = g_bytes_get_data (bytes, &length);

  if (bw_cli_is_standard (target))
    return write_out (bytes);
  if (bw_file_replace (target, data, length, &error))
    return TRUE;
  bw_cli_fault (error->message);
  return FALSE;
}

/* Names */

const char *const bw_cli_drawings[] = { "-.svg", "-.pdf", "-.png", NULL };
const char *const bw_cli_pdf[] = { "-.pdf", NULL };

/* Whether @name ends as one of @kinds does. */
static gboolean
is_any (const char *name, const char *const *kinds)
{
  for (; *kinds != NULL; kinds++)
    {
      const char *suffix = *kinds + 1;
      gsize length = strlen (name), wanted = strlen (suffix);
      if (length > wanted && g_ascii_strcasecmp (name + length - wanted, suffix) == 0)
        return TRUE;
    }
  return FALSE;
}

static char *
kinds_words (const char *const *kinds)
{
  GString *words = g_string_new (NULL);
  for (; *kinds != NULL; kinds++)
    g_string_append_printf (words, "%s%s", words->len > 0 ? ", " : "", *kinds + 1);
  return g_string_free (words, FALSE);
}

/**
 * bw_cli_target_fault:
 * @target: where a command is to write, as it came
 * @kinds: of file that it can be
 *
 * The one rule for names of files that are written. Where there are several kinds the suffix says
 * which; where there is one, it is not the suffix of another kind. What is printed besides does not
 * go with standard output.
 *
 * Returns: (transfer full) (nullable): what is wrong with @target, if anything
 */
char *
bw_cli_target_fault (const char *target, const char *const *kinds, const BwCliOptions *options)
{
  static const char *const known[] = { "-.svg", "-.pdf", "-.png", "-.csv", "-.bench", NULL };
  g_return_val_if_fail (target != NULL && kinds != NULL && options != NULL, NULL);
  gboolean is_standard = bw_cli_is_standard (target);
  gboolean is_one_kind = kinds[1] == NULL;

  const char *prints = options->json   ? "--json"
                       : options->csv  ? "--csv"
                       : options->keys ? "--keys"
                                       : NULL;
  if (is_standard && prints != NULL)
    return g_strdup_printf (_ ("%1$s and the file “%2$s” cannot both be standard output"), prints,
                            target);
  if (strcmp (target, "-") == 0 || is_any (target, kinds)
      || (is_one_kind && !is_standard && !is_any (target, known)))
    return NULL;
  g_autofree char *allowed = kinds_words (kinds);
  return g_strdup_printf (_ ("“%1$s”: the end of the name says what kind of file to write; allowed: "
                             "%2$s"),
                          target, allowed);
}

/**
 * bw_cli_target_name:
 * @target: that bw_cli_target_fault() accepts
 *
 * Returns: (transfer none): the name by whose suffix the kind of file is chosen: of "-" alone the
 *   first kind
 */
const char *
bw_cli_target_name (const char *target, const char *const *kinds)
{
  g_return_val_if_fail (target != NULL && kinds != NULL, NULL);
  return strcmp (target, "-") == 0 ? kinds[0] : target;
}
