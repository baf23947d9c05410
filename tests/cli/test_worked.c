/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Worked examples: each file of tests/cli/worked begins with the working, by hand and with its sources,
 * then comes the command, then all that the command must print. Words are part of it: which sentence
 * is said, and with which figures. */
#include <string.h>

#include "run.h"

/* The sheets of the examples, and the demonstration. */
static char *
with_path (const char *word)
{
  if (strcmp (word, "demo.bench") == 0)
    return g_build_filename (g_getenv ("BW_SOURCE_ROOT"), "data", word, NULL);
  const char *sheet = strstr (word, "loft.bench");
  if (sheet == NULL)
    return g_strdup (word);
  g_autofree char *path = g_build_filename (g_getenv ("BW_TEST_DATA"), "cli", "worked", sheet,
                                            NULL);
  g_autofree char *before = g_strndup (word, (gsize) (sheet - word));
  return g_strconcat (before, path, NULL);
}

/* The output that differs, line by line, is easier read than two texts. */
static void
assert_same_text (const char *got, const char *wanted)
{
  g_auto (GStrv) a = g_strsplit (got, "\n", -1);
  g_auto (GStrv) b = g_strsplit (wanted, "\n", -1);
  for (guint i = 0; a[i] != NULL && b[i] != NULL; i++)
    if (strcmp (a[i], b[i]) != 0)
      {
        g_test_message ("line %u\n  printed: %s\n  worked:  %s", i + 1, a[i], b[i]);
        g_test_fail ();
        return;
      }
  g_assert_cmpuint (g_strv_length (a), ==, g_strv_length (b));
}

static void
test_example (gconstpointer data)
{
  g_autofree char *text = NULL;
  g_assert_true (g_file_get_contents (data, &text, NULL, NULL));
  const char *command = strstr (text, "\n$ ");
  g_assert_nonnull (command);
  command += strlen ("\n$ ");
  const char *end = strchr (command, '\n');
  g_autofree char *line = g_strndup (command, (gsize) (end - command));
  g_auto (GStrv) words = g_strsplit (line, " ", -1);
  for (guint i = 0; words[i] != NULL; i++)
    {
      char *word = with_path (words[i]);
      g_free (words[i]);
      words[i] = word;
    }
  Run *run = run_args ((const char *const *) words);
  g_assert_cmpint (run->status, ==, 0);
  g_assert_cmpstr (run->err, ==, "");
  assert_same_text (run->out, end + 1);
  run_free (run);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_autofree char *folder = g_build_filename (g_getenv ("BW_TEST_DATA"), "cli", "worked", NULL);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  g_autoptr (GPtrArray) paths = g_ptr_array_new_with_free_func (g_free);
  const char *name;

  g_assert_nonnull (dir);
  while ((name = g_dir_read_name (dir)) != NULL)
    if (g_str_has_suffix (name, ".txt"))
      {
        g_autofree char *stem = g_strndup (name, strlen (name) - strlen (".txt"));
        g_autofree char *test = g_strconcat ("/worked/", stem, NULL);
        g_ptr_array_add (paths, g_build_filename (folder, name, NULL));
        g_test_add_data_func (test, paths->pdata[paths->len - 1], test_example);
      }
  g_assert_cmpuint (paths->len, >, 0);
  return g_test_run ();
}
