/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "keyfile.h"

#include <string.h>

#include <glib/gi18n-lib.h>

#include "file.h"

G_DEFINE_QUARK (bw-keyfile-error-quark, bw_keyfile_error)

/* Some editors put a byte-order mark before UTF-8 text; it is not part of it. */
static void
drop_byte_order_mark (char *text, gsize *length)
{
  if (*length < 3 || memcmp (text, "\xef\xbb\xbf", 3) != 0)
    return;
  *length -= 3;
  memmove (text, text + 3, *length + 1);
}

/**
 * bw_keyfile_read:
 * @path: a file
 * @text: (out) (transfer full): its bytes, with a NUL after them
 * @length: (out): how many bytes
 *
 * Returns: %FALSE with @error in %BW_KEYFILE_ERROR if the file is not a plain readable file or is
 * larger than %BW_KEYFILE_MAX_BYTES
 */
gboolean
bw_keyfile_read (const char *path, char **text, gsize *length, GError **error)
{
  g_return_val_if_fail (path != NULL && text != NULL && length != NULL, FALSE);
  g_autoptr (GError) trouble = NULL;
  if (bw_file_read (path, BW_KEYFILE_MAX_BYTES, text, length, &trouble))
    {
      drop_byte_order_mark (*text, length);
      return TRUE;
    }
  gboolean too_large = g_error_matches (trouble, BW_FILE_ERROR, BW_FILE_ERROR_TOO_LARGE);
  g_set_error_literal (error, BW_KEYFILE_ERROR,
                       too_large ? BW_KEYFILE_ERROR_TOO_LARGE : BW_KEYFILE_ERROR_READ,
                       trouble->message);
  return FALSE;
}

/* Keys whose values are text for people. po/catalogue-words.py collects the same ones. */
static const char *const keys_with_words[] = { "name", "note", "source", "origin" };

/* The words of "name=Studio monitor" in the reader's language, or NULL where they stay as they are. */
static const char *
translated_value (const char *line)
{
  for (gsize i = 0; i < G_N_ELEMENTS (keys_with_words); i++)
    {
      gsize length = strlen (keys_with_words[i]);
      const char *value = line + length + 1;
      if (!g_str_has_prefix (line, keys_with_words[i]) || line[length] != '=' || *value == '\0')
        continue;
      const char *translated = g_dpgettext2 (GETTEXT_PACKAGE, "catalogue", value);
      return translated != value ? translated : NULL;
    }
  return NULL;
}

/**
 * bw_keyfile_shipped:
 * @resource: the files that are built in
 * @path: of one of them
 * @length: (out): how many bytes
 *
 * Reads a file of the built-in catalogue. What people read of it is in their language, so that it is
 * wherever it comes to be shown; ids and the other words of files are as they are.
 *
 * Returns: (transfer full): the text
 */
char *
bw_keyfile_shipped (GResource *resource, const char *path, gsize *length)
{
  g_return_val_if_fail (resource != NULL && path != NULL && length != NULL, NULL);
  g_autoptr (GBytes) bytes = g_resource_lookup_data (resource, path, G_RESOURCE_LOOKUP_FLAGS_NONE,
                                                     NULL);
  g_return_val_if_fail (bytes != NULL, NULL);
  gsize size;
  const char *data = g_bytes_get_data (bytes, &size);
  g_autofree char *text = g_strndup (data, size);
  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);

  for (char **line = lines; *line != NULL; line++)
    {
      const char *words = translated_value (*line);
      if (words == NULL)
        continue;
      char *whole = g_strdup_printf ("%.*s=%s", (int) strcspn (*line, "="), *line, words);
      g_free (*line);
      *line = whole;
    }
  char *result = g_strjoinv ("\n", lines);
  *length = strlen (result);
  return result;
}

static gboolean
check_encoding (const char *text, gsize length, const char *file, GError **error)
{
  const char *end;
  if (g_utf8_validate (text, (gssize) length, &end))
    return TRUE;
  guint line = 1;
  for (const char *p = text; p < end; p++)
    line += *p == '\n';
  g_set_error (error, BW_KEYFILE_ERROR, BW_KEYFILE_ERROR_ENCODING,
               _ ("%1$s: line %2$u is not UTF-8 text"), file, line);
  return FALSE;
}

/* What the checks know while they walk the lines of a file. */
typedef struct
{
  const char *file;
  guint line;
  GHashTable *groups; /* lines of groups seen, owned */
  GHashTable *keys;   /* of this group, owned */
} LineChecker;

static gboolean
fail_line (LineChecker *checker, int code, const char *what, const char *line, GError **error)
{
  g_autofree char *shown = g_utf8_substring (line, 0, MIN (60, g_utf8_strlen (line, -1)));
  /* Translators: file, number of the line in it, what is wrong, the line itself. */
  g_set_error (error, BW_KEYFILE_ERROR, code, _ ("%1$s: line %2$u: %3$s: “%4$s”"), checker->file,
               checker->line, what, shown);
  return FALSE;
}

static gboolean
check_group_line (LineChecker *checker, const char *line, GError **error)
{
  gsize length = strlen (line);
  if (length < 3 || line[length - 1] != ']' || strpbrk (line + 1, "[") != NULL
      || memchr (line + 1, ']', length - 2) != NULL)
    return fail_line (checker, BW_KEYFILE_ERROR_SYNTAX,
                      _ ("a group is written [name], without brackets in the name"), line, error);
  g_hash_table_remove_all (checker->keys);
  if (!g_hash_table_add (checker->groups, g_strdup (line)))
    return fail_line (checker, BW_KEYFILE_ERROR_DUPLICATE, _ ("this group stands twice"), line,
                      error);
  return TRUE;
}

static gboolean
check_key_line (LineChecker *checker, const char *line, GError **error)
{
  const char *equals = strchr (line, '=');
  if (equals == NULL || equals == line)
    return fail_line (checker, BW_KEYFILE_ERROR_SYNTAX,
                      _ ("neither [group] nor key=value nor # comment"), line, error);
  if (g_hash_table_size (checker->groups) == 0)
    return fail_line (checker, BW_KEYFILE_ERROR_SYNTAX, _ ("a key before the first [group]"), line,
                      error);
  g_autofree char *key = g_strchomp (g_strndup (line, (gsize) (equals - line)));
  if (!g_hash_table_add (checker->keys, g_strdup (key)))
    return fail_line (checker, BW_KEYFILE_ERROR_DUPLICATE, _ ("this key stands twice in its group"),
                      line, error);
  return TRUE;
}

static gboolean
check_lines (const char *text, const char *file, guint lines_before, GError **error)
{
  LineChecker checker = {
    .file = file,
    .line = lines_before,
    .groups = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL),
    .keys = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL),
  };
  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);
  gboolean sound = TRUE;

  for (char **line = lines; *line != NULL && sound; line++)
    {
      g_strstrip (*line);
      checker.line++;
      if (**line == '[')
        sound = check_group_line (&checker, *line, error);
      else if (**line != '\0' && **line != '#')
        sound = check_key_line (&checker, *line, error);
    }
  g_hash_table_unref (checker.groups);
  g_hash_table_unref (checker.keys);
  return sound;
}

static GKeyFile *
load (const char *text, gsize length, const char *file, GError **error)
{
  g_autoptr (GKeyFile) keys = g_key_file_new ();
  g_autoptr (GError) trouble = NULL;
  if (g_key_file_load_from_data (keys, text, length, G_KEY_FILE_KEEP_COMMENTS | G_KEY_FILE_KEEP_TRANSLATIONS,
                                 &trouble)
      || length == 0)
    return g_steal_pointer (&keys);
  g_set_error (error, BW_KEYFILE_ERROR, BW_KEYFILE_ERROR_SYNTAX, "%s: %s", file, trouble->message);
  return NULL;
}

/* Reads strictly; @lines_before says how many lines of the file stand before @text. */
static GKeyFile *
parse_after (const char *text, gsize length, const char *file, guint lines_before, GError **error)
{
  if (!check_encoding (text, length, file, error))
    return NULL;
  g_autofree char *copy = g_strndup (text, length);
  if (!check_lines (copy, file, lines_before, error))
    return NULL;
  return load (text, length, file, error);
}

/**
 * bw_keyfile_parse:
 * @text: the bytes of a file; need not end in a NUL within @length
 * @file: the name to use in errors
 *
 * Reads a whole file strictly: any faulty line, and any group or key that stands twice, is an
 * error. Comments are kept.
 *
 * Returns: (transfer full): the key file, or %NULL with @error in %BW_KEYFILE_ERROR
 */
GKeyFile *
bw_keyfile_parse (const char *text, gsize length, const char *file, GError **error)
{
  g_return_val_if_fail (text != NULL && file != NULL, NULL);
  return parse_after (text, length, file, 0, error);
}

/* The end of the group that starts at @start: the next line that opens one, or the end. */
static const char *
group_end (const char *start, const char *end)
{
  for (const char *p = start + 1; p < end; p++)
    if (p[-1] == '\n' && p[strspn (p, " \t")] == '[')
      return p;
  return end;
}

static guint
count_lines (const char *start, const char *end)
{
  guint lines = 0;
  for (const char *p = start; p < end; p++)
    lines += *p == '\n';
  return lines;
}

static void
read_group (const char *chunk, gsize length, const char *file, guint lines_before,
            GHashTable *seen, BwGroupFunc func, gpointer user_data, GPtrArray *faults)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *first_line = g_strndup (chunk, strcspn (chunk, "\r\n"));
  g_autofree char *place = g_strdup_printf ("%s: %s", file, first_line);
  g_autoptr (GKeyFile) keys = parse_after (chunk, length, place, lines_before, &error);
  g_autofree char *group = keys != NULL ? g_key_file_get_start_group (keys) : NULL;

  if (group != NULL && !g_hash_table_add (seen, g_strdup (group)))
    error = g_error_new (BW_KEYFILE_ERROR, BW_KEYFILE_ERROR_DUPLICATE,
                         _ ("%1$s: [%2$s]: this group stands twice; the first counts"), file,
                         group);
  if (error != NULL)
    g_ptr_array_add (faults, g_steal_pointer (&error));
  else if (group != NULL)
    func (group, keys, user_data);
}

/**
 * bw_keyfile_each_group:
 * @file: the name to use in errors
 * @func: called for each sound group, in the file's order
 * @faults: (element-type GError): receives an error for each group that is not sound
 *
 * Reads a file group by group, so that a fault in one group leaves the others usable.
 */
void
bw_keyfile_each_group (const char *text, gsize length, const char *file, BwGroupFunc func,
                       gpointer user_data, GPtrArray *faults)
{
  g_return_if_fail (text != NULL && file != NULL && faults != NULL);
  g_autoptr (GHashTable) seen = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  g_autoptr (GError) error = NULL;
  if (!check_encoding (text, length, file, &error))
    {
      g_ptr_array_add (faults, g_steal_pointer (&error));
      return;
    }

  g_autofree char *copy = g_strndup (text, length);
  const char *end = copy + length;
  const char *start = copy;
  if (start[strspn (start, " \t")] != '[')
    start = group_end (start, end);
  g_autofree char *before = g_strndup (copy, (gsize) (start - copy));
  if (!check_lines (before, file, 0, &error))
    g_ptr_array_add (faults, g_steal_pointer (&error));
  guint line = count_lines (copy, start);
  while (start < end)
    {
      const char *next = group_end (start, end);
      read_group (start, (gsize) (next - start), file, line, seen, func, user_data, faults);
      line += count_lines (start, next);
      start = next;
    }
}
