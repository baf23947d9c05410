/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "run.h"

#include <math.h>
#include <string.h>
#include <sys/wait.h>

#include <glib/gstdio.h>

/* Running */

Run *
run_argv (const char *const *argv, char **environment)
{
  Run *run = g_new0 (Run, 1);
  g_autoptr (GError) error = NULL;
  int wait_status = 0;

  g_spawn_sync (NULL, (char **) argv, environment, G_SPAWN_SEARCH_PATH, NULL, NULL, &run->out,
                &run->err, &wait_status, &error);
  g_assert_no_error (error);
  run->status = WIFEXITED (wait_status) ? WEXITSTATUS (wait_status) : -1;
  return run;
}

static Run *
run_list (char **environment, const char *first, va_list list)
{
  g_autoptr (GPtrArray) argv = g_ptr_array_new ();
  const char *program = g_getenv ("BW_CLI");

  g_assert_nonnull (program);
  g_ptr_array_add (argv, (gpointer) program);
  for (const char *word = first; word != NULL; word = va_arg (list, const char *))
    g_ptr_array_add (argv, (gpointer) word);
  g_ptr_array_add (argv, NULL);
  return run_argv ((const char *const *) argv->pdata, environment);
}

/* The arguments of breezeway-cli; ends in NULL. */
Run *
run_args (const char *const *args)
{
  g_autoptr (GPtrArray) argv = g_ptr_array_new ();
  g_assert_nonnull (g_getenv ("BW_CLI"));
  g_ptr_array_add (argv, (gpointer) g_getenv ("BW_CLI"));
  for (; *args != NULL; args++)
    g_ptr_array_add (argv, (gpointer) *args);
  g_ptr_array_add (argv, NULL);
  return run_argv ((const char *const *) argv->pdata, NULL);
}

Run *
run_cli (const char *first, ...)
{
  va_list list;
  va_start (list, first);
  Run *run = run_list (NULL, first, list);
  va_end (list);
  return run;
}

Run *
run_cli_in (char **environment, const char *first, ...)
{
  va_list list;
  va_start (list, first);
  Run *run = run_list (environment, first, list);
  va_end (list);
  return run;
}

void
run_free (Run *run)
{
  g_free (run->out);
  g_free (run->err);
  g_free (run);
}

guint
count_lines (const char *text)
{
  guint lines = 0;
  for (const char *p = text; *p != '\0'; p++)
    lines += *p == '\n';
  return lines;
}

/* A refusal: nothing on standard output, and one line that says @says. */
void
assert_refused (const Run *run, int status, const char *says)
{
  if (run->status != status || *run->out != '\0' || strstr (run->err, says) == NULL)
    g_error ("status %d, not a refusal with %d that says “%s”: %s%s", run->status, status, says,
             run->out, run->err);
  assert_one_line (run->err);
}

void
assert_one_line (const char *text)
{
  if (count_lines (text) != 1 || !g_str_has_suffix (text, "\n"))
    g_error ("not one line: %s", text);
}

/* JSON */

JsonObject *
parse_object (const char *text)
{
  g_autoptr (JsonParser) parser = json_parser_new_immutable ();
  g_autoptr (GError) error = NULL;
  g_assert_true (g_utf8_validate (text, -1, NULL));
  json_parser_load_from_data (parser, text, -1, &error);
  g_assert_no_error (error);
  g_assert_true (JSON_NODE_HOLDS_OBJECT (json_parser_get_root (parser)));
  return json_object_ref (json_node_get_object (json_parser_get_root (parser)));
}

JsonObject *
run_json (const Run *run)
{
  g_assert_cmpstr (run->err, ==, "");
  g_assert_cmpint (run->status, ==, 0);
  return parse_object (run->out);
}

JsonObject *
timing_of (const char *id)
{
  g_autoptr (Run) run = run_cli ("timing", id, "--json", NULL);
  return run_json (run);
}

double
figure_of (JsonObject *object, const char *key)
{
  JsonNode *node = json_object_get_member (object, key);
  if (node == NULL || !JSON_NODE_HOLDS_VALUE (node))
    g_error ("no number in “%s”", key);
  double value = json_node_get_double (node);
  g_assert_true (isfinite (value));
  return value;
}

gboolean
is_null (JsonObject *object, const char *key)
{
  g_assert_true (json_object_has_member (object, key));
  return json_object_get_null_member (object, key);
}

/* Whether two numbers differ by no more than @tolerance, in their unit. */
gboolean
is_near (double a, double b, double tolerance)
{
  return fabs (a - b) <= tolerance;
}

/* The place of @word in @list. */
gsize
index_of (const char *const *list, gsize n, const char *word)
{
  for (gsize i = 0; i < n; i++)
    if (g_strcmp0 (list[i], word) == 0)
      return i;
  g_error ("“%s” is none of the words allowed", word);
}

/* What is printed begins with the version of its format, then come @keys. */
void
assert_keys_begin_with (JsonObject *object, const char *const *keys)
{
  g_autoptr (GList) members = json_object_get_members (object);
  GList *member = members;
  if (g_strcmp0 (members->data, "format") == 0)
    member = member->next;
  for (const char *const *key = keys; *key != NULL; key++, member = member->next)
    {
      g_assert_nonnull (member);
      g_assert_cmpstr (member->data, ==, *key);
    }
}

/* A raster */

/* The lines of picture of a whole frame. */
double
whole_frame (JsonObject *timing)
{
  double first = figure_of (timing, "v_active");
  return is_null (timing, "v_active_field_2") ? first
                                              : first + figure_of (timing, "v_active_field_2");
}

gboolean
is_positive (JsonObject *timing, const char *key)
{
  return strcmp (json_object_get_string_member (timing, key), "positive") == 0;
}

/* The fit of a sheet */

JsonObject *
fit_json (const char *path)
{
  g_autoptr (Run) run = run_cli ("fit", path, "--json", NULL);
  return run_json (run);
}

JsonObject *
cell_at (JsonObject *root, guint i)
{
  return json_array_get_object_element (json_object_get_array_member (root, "cells"), i);
}

guint
n_cells (JsonObject *root)
{
  return json_array_get_length (json_object_get_array_member (root, "cells"));
}

/* From 0, the best, to N_VERDICTS - 1. */
gsize
verdict_of (JsonObject *one_cell)
{
  static const char *const verdicts[N_VERDICTS] = { "direct", "open", "tight", "with-parts",
                                                      "no" };
  return index_of (verdicts, N_VERDICTS, json_object_get_string_member (one_cell, "verdict"));
}

/* Files */

char *
source_path (const char *below_root)
{
  g_assert_nonnull (g_getenv ("BW_SOURCE_ROOT"));
  return g_build_filename (g_getenv ("BW_SOURCE_ROOT"), below_root, NULL);
}

char *
demo_path (void)
{
  return source_path ("data/demo.bench");
}

char *
read_text (const char *path)
{
  g_autoptr (GError) error = NULL;
  char *text = NULL;
  g_file_get_contents (path, &text, NULL, &error);
  g_assert_no_error (error);
  return text;
}

/* The demo sheet with @from, which must be in it, replaced by @to throughout. */
char *
demo_with (const char *from, const char *to)
{
  g_autofree char *path = demo_path ();
  g_autofree char *text = read_text (path);
  g_autoptr (GString) changed = g_string_new (text);
  g_assert_cmpuint (g_string_replace (changed, from, to, 0), >, 0);
  return g_strdup (changed->str);
}

char *
scratch_folder (void)
{
  g_autoptr (GError) error = NULL;
  char *folder = g_dir_make_tmp ("breezeway-cli-XXXXXX", &error);
  g_assert_no_error (error);
  return folder;
}

/* Writes @text to @name, which may have folders in it, below @folder. */
char *
write_scratch (const char *folder, const char *name, const char *text)
{
  g_autoptr (GError) error = NULL;
  char *path = g_build_filename (folder, name, NULL);
  g_autofree char *parent = g_path_get_dirname (path);
  g_assert_cmpint (g_mkdir_with_parents (parent, 0700), ==, 0);
  g_file_set_contents (path, text, -1, &error);
  g_assert_no_error (error);
  return path;
}

void
remove_scratch (const char *folder)
{
  g_autoptr (GDir) entries = g_dir_open (folder, 0, NULL);
  for (const char *name; entries != NULL && (name = g_dir_read_name (entries)) != NULL;)
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);
      if (g_file_test (path, G_FILE_TEST_IS_DIR) && !g_file_test (path, G_FILE_TEST_IS_SYMLINK))
        remove_scratch (path);
      else
        g_unlink (path);
    }
  g_rmdir (folder);
}

/* Tables of published figures: tab-separated, comments with #, first line the column heads */

static GHashTable *
make_row (char **heads, const char *line)
{
  GHashTable *row = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  g_auto (GStrv) cells = g_strsplit (line, "\t", -1);
  g_assert_cmpuint (g_strv_length (cells), ==, g_strv_length (heads));
  for (guint i = 0; heads[i] != NULL; i++)
    g_hash_table_insert (row, g_strdup (heads[i]), g_strdup (cells[i]));
  return row;
}

GPtrArray *
read_table (const char *name)
{
  GPtrArray *rows = g_ptr_array_new_with_free_func ((GDestroyNotify) g_hash_table_unref);
  g_assert_nonnull (g_getenv ("BW_TEST_DATA"));
  g_autofree char *path = g_build_filename (g_getenv ("BW_TEST_DATA"), "reference", name, NULL);
  g_autofree char *text = read_text (path);
  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);
  g_auto (GStrv) heads = NULL;

  for (char **line = lines; *line != NULL; line++)
    if (**line == '#' || **line == '\0')
      continue;
    else if (heads == NULL)
      heads = g_strsplit (*line, "\t", -1);
    else
      g_ptr_array_add (rows, make_row (heads, *line));
  return rows;
}

const char *
cell (GHashTable *row, const char *column)
{
  const char *text = g_hash_table_lookup (row, column);
  if (text == NULL)
    g_error ("the table has no column “%s”", column);
  return text;
}

double
number (GHashTable *row, const char *column)
{
  const char *text = cell (row, column);
  char *end = NULL;
  double value = g_ascii_strtod (text, &end);
  if (*text == '\0' || *end != '\0')
    g_error ("“%s” in column “%s” is not a number", text, column);
  return value;
}
