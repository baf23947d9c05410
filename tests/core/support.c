/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "support.h"

#include <errno.h>
#include <locale.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

#include <gio/gio.h>
#include <glib/gstdio.h>

/**
 * bw_test_init:
 *
 * Starts the test framework. A failed assertion ends its test only if the test then returns, so
 * that one fault does not hide the others.
 */
void
bw_test_init (int *argc, char ***argv)
{
  setlocale (LC_ALL, "");
  g_test_init (argc, argv, NULL);
  g_test_set_nonfatal_assertions ();
}

static char *
path_below (const char *variable, const char *folder, const char *name)
{
  const char *root = g_getenv (variable);
  if (root == NULL)
    g_error ("%s is not set; run this through meson test", variable);
  return g_build_filename (root, folder, name, NULL);
}

/**
 * bw_test_reference:
 *
 * Returns: (transfer full): the path of @name in tests/reference
 */
char *
bw_test_reference (const char *name)
{
  return path_below ("BW_TEST_DATA", "reference", name);
}

/**
 * bw_test_demo_path:
 *
 * Returns: (transfer full): the path of the demonstration sheet
 */
char *
bw_test_demo_path (void)
{
  return path_below ("BW_SOURCE_ROOT", "data", "demo.bench");
}

/**
 * bw_test_read:
 * @length: (out) (nullable): how many bytes
 *
 * Returns: (transfer full): the bytes of a file that must be there
 */
char *
bw_test_read (const char *path, gsize *length)
{
  g_autoptr (GError) error = NULL;
  char *text = NULL;
  if (!g_file_get_contents (path, &text, length, &error))
    g_error ("%s", error->message);
  return text;
}

/**
 * bw_test_catalogue:
 *
 * Returns: (transfer none): the shipped catalogue, without the user's
 */
const BwCatalogue *
bw_test_catalogue (void)
{
  static BwCatalogue *catalogue = NULL;
  if (catalogue == NULL)
    catalogue = bw_catalogue_new (NULL, NULL);
  return catalogue;
}

/**
 * bw_test_folder_new:
 *
 * Returns: (transfer full): the path of a new empty folder
 */
char *
bw_test_folder_new (void)
{
  g_autoptr (GError) error = NULL;
  char *folder = g_dir_make_tmp ("breezeway-test-XXXXXX", &error);
  if (folder == NULL)
    g_error ("%s", error->message);
  return folder;
}

/**
 * bw_test_folder_remove:
 * @folder: (transfer full): a folder without folders in it
 */
void
bw_test_folder_remove (char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;
  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);
      g_unlink (path);
    }
  g_rmdir (folder);
  g_free (folder);
}

/**
 * bw_test_in_folder:
 * @text: (nullable): what to write into the file; %NULL: nothing is written
 *
 * Returns: (transfer full): the path of the file @name in @folder
 */
char *
bw_test_in_folder (const char *folder, const char *name, const char *text)
{
  char *path = g_build_filename (folder, name, NULL);
  if (text != NULL)
    g_assert_true (g_file_set_contents (path, text, -1, NULL));
  return path;
}

/**
 * bw_test_assert_content:
 *
 * Asserts that the file @path holds @wanted.
 */
void
bw_test_assert_content (const char *path, const char *wanted)
{
  g_autofree char *text = bw_test_read (path, NULL);
  g_assert_cmpstr (text, ==, wanted);
}

/**
 * bw_test_count_files:
 *
 * Returns: how many names there are in @folder
 */
guint
bw_test_count_files (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  guint n = 0;
  while (g_dir_read_name (dir) != NULL)
    n++;
  return n;
}

/**
 * bw_test_in_child:
 *
 * Returns: what @work returned in a process of its own, 0 to 255; −1 if a signal ended it
 */
int
bw_test_in_child (int (*work) (gpointer data), gpointer data)
{
  int status = -1;
  pid_t child = fork ();
  if (child == 0)
    _exit (work (data));
  g_assert_cmpint (child, >, 0);
  while (waitpid (child, &status, 0) < 0 && errno == EINTR)
    continue;
  return WIFEXITED (status) ? WEXITSTATUS (status) : -1;
}

/**
 * bw_test_faults_new:
 *
 * Returns: (transfer full) (element-type GError): an empty list of faults
 */
GPtrArray *
bw_test_faults_new (void)
{
  return g_ptr_array_new_with_free_func ((GDestroyNotify) g_error_free);
}

/**
 * bw_test_no_faults:
 *
 * Fails the test for every fault there is.
 *
 * Returns: whether there is none
 */
gboolean
bw_test_no_faults (GPtrArray *faults)
{
  for (guint i = 0; i < faults->len; i++)
    {
      g_test_message ("%s", ((GError *) faults->pdata[i])->message);
      g_test_fail ();
    }
  return faults->len == 0;
}

/* Whether the number that ends before @p goes on at it: with a digit, or with a mark and a digit. */
static gboolean
goes_on (const char *p)
{
  return g_ascii_isdigit (*p) || (*p == '.' && g_ascii_isdigit (p[1]));
}

/* Whether @text holds @word, and where that begins or ends with a digit, the whole number: "0.67" is not in
 * "0.6667", and "5 V" not in "15 V". */
static gboolean
holds (const char *text, const char *word)
{
  gsize length = strlen (word);
  for (const char *at = strstr (text, word); at != NULL; at = strstr (at + 1, word))
    {
      gboolean begun = at > text && g_ascii_isdigit (*word)
                       && (g_ascii_isdigit (at[-1]) || (at[-1] == '.' && at - 1 > text && g_ascii_isdigit (at[-2])));
      gboolean unended = length > 0 && g_ascii_isdigit (word[length - 1]) && goes_on (at + length);
      if (!begun && !unended)
        return TRUE;
    }
  return length == 0;
}

static gboolean
holds_words (const char *text, const char *const *words)
{
  for (; *words != NULL; words++)
    if (!holds (text, *words))
      return FALSE;
  return TRUE;
}

/**
 * bw_test_has_fault:
 * @words: (array zero-terminated=1): what its sentence must hold
 *
 * Fails the test, naming the faults there are, if none fits.
 */
gboolean
bw_test_has_fault (GPtrArray *faults, GQuark domain, int code, const char *const *words)
{
  for (guint i = 0; i < faults->len; i++)
    {
      const GError *fault = faults->pdata[i];
      if (g_error_matches (fault, domain, code) && holds_words (fault->message, words))
        return TRUE;
    }
  g_test_message ("no fault %s %d among these:", g_quark_to_string (domain), code);
  for (guint i = 0; i < faults->len; i++)
    {
      const GError *fault = faults->pdata[i];
      g_test_message ("  %s %d: %s", g_quark_to_string (fault->domain), fault->code,
                      fault->message);
    }
  g_test_fail ();
  return FALSE;
}

/**
 * bw_test_table_new:
 *
 * Returns: (transfer full): the table @name of tests/reference, which must be there
 */
BwTable *
bw_test_table_new (const char *name)
{
  g_autofree char *path = bw_test_reference (name);
  g_autofree char *text = bw_test_read (path, NULL);
  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);
  BwTable *table = g_new0 (BwTable, 1);

  table->rows = g_ptr_array_new_with_free_func ((GDestroyNotify) g_strfreev);
  for (char **line = lines; *line != NULL; line++)
    {
      if (**line == '#' || **line == '\0')
        continue;
      char **cells = g_strsplit (*line, "\t", -1);
      if (table->heads == NULL)
        table->heads = cells;
      else
        g_ptr_array_add (table->rows, cells);
    }
  g_assert_cmpuint (table->rows->len, >, 0);
  return table;
}

/**
 * bw_test_table_free:
 */
void
bw_test_table_free (BwTable *table)
{
  g_strfreev (table->heads);
  g_ptr_array_unref (table->rows);
  g_free (table);
}

/**
 * bw_test_cell:
 *
 * Returns: (transfer none): the cell under @head, which must be one of the heads; "" if the row
 * ends before it
 */
const char *
bw_test_cell (const BwTable *table, guint row, const char *head)
{
  char **cells = table->rows->pdata[row];
  for (guint i = 0; table->heads[i] != NULL; i++)
    {
      gboolean ends = cells[i] == NULL;
      if (strcmp (table->heads[i], head) == 0)
        return ends ? "" : cells[i];
      if (ends)
        return "";
    }
  g_error ("no column “%s”", head);
}

/**
 * bw_test_number:
 *
 * Returns: the number under @head; zero if the cell is empty
 */
double
bw_test_number (const BwTable *table, guint row, const char *head)
{
  return g_ascii_strtod (bw_test_cell (table, row, head), NULL);
}

/**
 * bw_test_last_place:
 * @number: a decimal number as it is printed
 *
 * Returns: what one unit in its last printed place is worth: the printed value is right to half of
 * this
 */
double
bw_test_last_place (const char *number)
{
  const char *point = strchr (number, '.');
  double place = 1;
  for (gsize i = 1; point != NULL && point[i] != '\0'; i++)
    place /= 10;
  return place;
}

void
bw_test_near (double got, double wanted, double tolerance)
{
  if (!bw_near (got, wanted, tolerance))
    g_test_message ("%.9g is not within %g of %.9g", got, tolerance, wanted);
  g_assert_true (bw_near (got, wanted, tolerance));
}

/**
 * bw_test_assert_words:
 */
void
bw_test_assert_words (const char *text, const char *const *words)
{
  if (holds_words (text, words))
    return;
  for (; *words != NULL; words++)
    if (!holds (text, *words))
      g_test_message ("“%s” is not in: %s", *words, text);
  g_test_fail ();
}

/**
 * bw_test_path_word:
 *
 * Returns: (transfer full): @text with "-" for all but letters, digits, "." and "_"
 */
char *
bw_test_path_word (const char *text)
{
  char *word = g_strdup (text);
  for (char *p = word; *p != '\0'; p++)
    if (!g_ascii_isalnum (*p) && *p != '.' && *p != '_')
      *p = '-';
  return word;
}

/**
 * bw_test_raster:
 *
 * Returns: (transfer none): the shipped raster @id; a missing one ends the test
 */
const BwRaster *
bw_test_raster (const char *id)
{
  const BwRaster *raster = bw_catalogue_raster (bw_test_catalogue (), id);
  if (raster == NULL)
    g_error ("no raster %s in the catalogue", id);
  return raster;
}

/**
 * bw_test_demo:
 *
 * Returns: (transfer full): the demonstration sheet; a fault in it ends the test
 */
BwSheet *
bw_test_demo (void)
{
  g_autofree char *path = bw_test_demo_path ();
  g_autoptr (GPtrArray) faults = bw_test_faults_new ();
  BwSheet *sheet = bw_sheet_load (path, bw_test_catalogue (), faults);
  if (sheet == NULL)
    g_error ("%s cannot be read", path);
  return sheet;
}

/* Debian's numpy belongs to Debian's own Python, which another in the PATH may hide. */
static const char *
python (void)
{
  return g_file_test ("/usr/bin/python3", G_FILE_TEST_IS_EXECUTABLE) ? "/usr/bin/python3"
                                                                     : "python3";
}

/**
 * bw_test_python:
 * @script: a file of tests/core
 * @words: (array zero-terminated=1): its arguments
 * @input: (nullable): what it reads
 * @well: (out): whether it ends with 0; without numpy it does not
 *
 * Runs a script. What it writes on its standard error stands in the log of the test; without
 * Python the test ends.
 *
 * Returns: (transfer full): what it prints
 */
char *
bw_test_python (const char *script, const char *const *words, const char *input, gboolean *well)
{
  g_autofree char *path = g_build_filename (g_getenv ("BW_TEST_DATA"), "core", script, NULL);
  g_autoptr (GPtrArray) argv = g_ptr_array_new ();
  g_autoptr (GError) error = NULL;
  const GSubprocessFlags in = input != NULL ? G_SUBPROCESS_FLAGS_STDIN_PIPE
                                            : G_SUBPROCESS_FLAGS_NONE;
  char *out = NULL;

  g_ptr_array_add (argv, (gpointer) python ());
  g_ptr_array_add (argv, (gpointer) "-B");
  g_ptr_array_add (argv, path);
  for (guint i = 0; words[i] != NULL; i++)
    g_ptr_array_add (argv, (gpointer) words[i]);
  g_ptr_array_add (argv, NULL);
  g_autoptr (GSubprocess) process = g_subprocess_newv ((const char *const *) argv->pdata,
                                                       in | G_SUBPROCESS_FLAGS_STDOUT_PIPE, &error);
  if (process == NULL || !g_subprocess_communicate_utf8 (process, input, NULL, &out, NULL, &error))
    g_error ("%s: %s", script, error->message);
  *well = g_subprocess_get_successful (process);
  return out;
}
