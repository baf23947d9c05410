/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The table that `breezeway-cli fit` prints for a person: it says what the JSON says, and fits a
 * terminal. */
#include <string.h>

#include "run.h"

#define COLUMNS 80

static const char *const words[] = { "direct", "direct so far", "tight", "with parts", "no" };

/* Reading the table. In the C locale its marks are ASCII, so that bytes are columns. */

static GStrv
lines_in_c (const char *path)
{
  g_auto (GStrv) environment = g_environ_setenv (g_get_environ (), "LC_ALL", "C", TRUE);
  g_autoptr (Run) run = run_cli_in (environment, "fit", path, NULL);
  g_assert_cmpint (run->status, ==, 0);
  g_assert_cmpstr (run->err, ==, "");
  g_assert_true (g_str_is_ascii (run->out));
  return g_strsplit (run->out, "\n", -1);
}

/* Where each column of a table begins, from its head: two spaces or more lie between columns. */
static GArray *
columns_of (const char *head)
{
  GArray *starts = g_array_new (FALSE, FALSE, sizeof (gsize));
  for (gsize i = 0; head[i] != '\0'; i++)
    if (head[i] != ' ' && (i == 0 || (i > 1 && head[i - 1] == ' ' && head[i - 2] == ' ')))
      g_array_append_val (starts, i);
  return starts;
}

/* The verdict in the cell that begins at @start of @line: a mark, a space and a word; -1 if the
 * cell is empty or goes on with words, as in the second line of a long name. */
static int
verdict_in (const char *line, gsize start)
{
  if (strlen (line) <= start + 1 || line[start] == ' ' || line[start + 1] != ' ')
    return -1;
  const char *word = line + start + 2;
  const char *end = strstr (word, "  ");
  g_autofree char *alone = end != NULL ? g_strndup (word, (gsize) (end - word)) : g_strdup (word);
  char *more = strchr (alone, ';'); /* how many rules were not judged */
  if (more != NULL)
    *more = '\0';
  return (int) index_of (words, G_N_ELEMENTS (words), alone);
}

/* The verdicts of one table: for each line with any, those of its columns but the first. */
static char **
read_block (char **line, GArray *found)
{
  g_autoptr (GArray) starts = columns_of (*line++);
  for (; **line != '\0'; line++)
    for (guint i = 1; i < starts->len; i++)
      {
        int verdict = verdict_in (*line, g_array_index (starts, gsize, i));
        if (verdict >= 0)
          g_array_append_val (found, verdict);
      }
  return line;
}

/* All verdicts of the text, table by table; @blocks counts the tables. */
static GArray *
verdicts_in_text (const char *path, guint *blocks)
{
  g_auto (GStrv) lines = lines_in_c (path);
  GArray *found = g_array_new (FALSE, FALSE, sizeof (int));
  *blocks = 0;
  for (char **line = lines; *line != NULL; line++)
    if (g_str_has_prefix (*line, "Source "))
      {
        line = read_block (line, found);
        (*blocks)++;
      }
  return found;
}

static void
test_text_and_json_agree (void)
{
  g_autofree char *demo = demo_path ();
  g_autoptr (JsonObject) root = fit_json (demo);
  guint blocks = 0;
  g_autoptr (GArray) found = verdicts_in_text (demo, &blocks);

  g_assert_cmpuint (blocks, ==, 1);
  g_assert_cmpuint (found->len, ==, n_cells (root));
  for (guint i = 0; i < found->len; i++)
    g_assert_cmpint (g_array_index (found, int, i), ==, verdict_of (cell_at (root, i)));
}

static int
display_width (const char *line)
{
  int columns = 0;
  for (const char *p = line; *p != '\0'; p = g_utf8_next_char (p))
    columns += g_unichar_iswide (g_utf8_get_char (p)) ? 2 : 1;
  return columns;
}

static void
assert_fits (const char *text)
{
  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);
  for (char **line = lines; *line != NULL; line++)
    if (display_width (*line) > COLUMNS)
      g_error ("wider than %d columns: %s", COLUMNS, *line);
}

static void
test_80_columns (void)
{
  g_autofree char *demo = demo_path ();
  g_autoptr (Run) table = run_cli ("fit", demo, NULL);
  g_autoptr (Run) findings = run_cli ("fit", demo, "--findings", NULL);
  assert_fits (table->out);
  assert_fits (findings->out);
  g_assert_true (g_str_has_prefix (findings->out, table->out));
}

/* The text without line breaks and the spaces around them. */
static char *
unwrapped (const char *text)
{
  g_autoptr (GRegex) regex = g_regex_new ("\\s+", G_REGEX_DEFAULT, G_REGEX_MATCH_DEFAULT, NULL);
  return g_regex_replace_literal (regex, text, -1, 0, " ", G_REGEX_MATCH_DEFAULT, NULL);
}

/* With --findings, every sentence of the JSON that is not "ok", or is so with a setting or as a remark on
 * the mains, stands in the text, and so do the remedies; no other sentence does. */
static void
test_findings_in_text (void)
{
  g_autofree char *demo = demo_path ();
  g_autoptr (JsonObject) root = fit_json (demo);
  for (guint i = 0; i < n_cells (root); i++)
    {
      JsonObject *one = cell_at (root, i);
      JsonArray *findings = json_object_get_array_member (one, "findings");
      g_autoptr (Run) run = run_cli ("fit", demo, "--findings", "--source",
                                     json_object_get_string_member (one, "source"), "--input",
                                     json_object_get_string_member (one, "input"), NULL);
      g_autofree char *text = unwrapped (run->out);
      for (guint f = 0; f < json_array_get_length (findings); f++)
        {
          JsonObject *finding = json_array_get_object_element (findings, f);
          gboolean holds = strcmp (json_object_get_string_member (finding, "severity"), "ok") == 0;
          const char *says = json_object_get_string_member (finding, "says");
          gboolean remark = strstr (says, "flicker") != NULL;
          gboolean silent = holds && is_null (finding, "remedy") && !remark;
          g_assert_cmpint (strstr (text, says) == NULL, ==, silent);
          if (!is_null (finding, "remedy"))
            g_assert_nonnull (strstr (text, json_object_get_string_member (finding, "remedy")));
        }
    }
}

/* The demo with input 3 over and over: seven inputs in three tables of at most three. */
static void
test_many_inputs (void)
{
  g_autofree char *folder = scratch_folder ();
  g_autofree char *demo = demo_path ();
  g_autofree char *text = read_text (demo);
  const char *start = strstr (text, "[input 3]");
  const char *end = strstr (text, "[source 1]");
  g_assert_true (start != NULL && end > start);
  g_autofree char *body = g_strndup (start + strlen ("[input 3]"),
                                     (gsize) (end - start) - strlen ("[input 3]"));
  g_autoptr (GString) many = g_string_new (text);
  for (int i = 4; i <= 7; i++)
    g_string_append_printf (many, "\n[input %d]%s", i, body);
  g_autofree char *path = write_scratch (folder, "many.bench", many->str);
  g_autoptr (JsonObject) root = fit_json (path);
  g_autoptr (Run) run = run_cli ("fit", path, NULL);
  guint blocks = 0;
  g_autoptr (GArray) found = verdicts_in_text (path, &blocks);

  assert_fits (run->out);
  g_assert_cmpuint (blocks, ==, 3);
  g_assert_cmpuint (found->len, ==, n_cells (root));
  remove_scratch (folder);
}

/* The display column in which the verdict "direct" stands on the line that begins with @name. */
static int
column_of_direct (const char *text, const char *name)
{
  g_autofree char *start = g_strconcat ("\n", name, NULL);
  const char *line = strstr (text, start);
  g_assert_nonnull (line++);
  const char *mark = strstr (line, "\u2713 direct");
  g_assert_true (mark != NULL && mark < strchr (line, '\n'));
  g_autofree char *before = g_strndup (line, (gsize) (mark - line));
  return display_width (before);
}

/* A name in letters that take two columns each, without a space, keeps the columns straight. */
static void
test_wide_names (void)
{
  g_autofree char *folder = scratch_folder ();
  g_autofree char *text = demo_with (
      "name=Game console, 240 lines",
      "name=\u5bb6\u5ead\u7528\u30b2\u30fc\u30e0\u6a5f\u4e8c\u767e\u56db\u5341\u672c\u306e\u7dda");
  g_autofree char *path = write_scratch (folder, "wide.bench", text);
  g_autoptr (Run) run = run_cli ("fit", path, NULL);

  assert_fits (run->out);
  g_assert_cmpint (column_of_direct (run->out, "\u5bb6\u5ead"), ==,
                   column_of_direct (run->out, "Disc player, 525"));
  remove_scratch (folder);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/fit-text/agrees-with-json", test_text_and_json_agree);
  g_test_add_func ("/fit-text/80-columns", test_80_columns);
  g_test_add_func ("/fit-text/findings", test_findings_in_text);
  g_test_add_func ("/fit-text/many-inputs", test_many_inputs);
  g_test_add_func ("/fit-text/wide-names", test_wide_names);
  return g_test_run ();
}
