/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Any words as the command line of breezeway-cli, one word a line: it ends with one of its three exit
 * statuses, prints plain text or sound JSON, and says why if it does not do what was asked. It runs
 * within this process, in a folder of its own that holds a bench sheet and an EDID. */
#include "fuzz.h"

#include <fcntl.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

#include <glib/gstdio.h>
#include <json-glib/json-glib.h>

#include "core/base/harmless.h"

/* The program, but for its name: what main() calls is then at hand. */
int breezeway_cli_main (int argc, char **argv);
#define main breezeway_cli_main
#include "cli/main.c"
#undef main

/* For the sanitizers: what the library of the fonts keeps until the process ends is not lost; and
 * cairo 1.16 itself loses the text of a recording that is painted into an SVG. */
const char *__lsan_default_suppressions (void);
const char *
__lsan_default_suppressions (void)
{
  return "leak:libfontconfig\nleak:libcairo\n";
}

#define WORDS_MAX 24
#define LENGTH_MAX 2000
#define SHEET "demo.bench"
#define EDID "display.bin"

/* A stream of this process, whose text is kept for a while. */
typedef struct
{
  int fd;
  FILE *kept;
  int before;
} Capture;

static char *folder;
static Capture captures[] = { { STDOUT_FILENO, NULL, -1 }, { STDERR_FILENO, NULL, -1 } };

static void
remove_all (const char *path)
{
  g_autoptr (GDir) dir = g_dir_open (path, 0, NULL);
  const char *name;
  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *child = g_build_filename (path, name, NULL);
      remove_all (child);
    }
  g_remove (path);
}

static void
remove_folder (void)
{
  if (chdir ("/") == 0)
    remove_all (folder);
}

static void
begin_capture (Capture *capture)
{
  if (capture->kept == NULL)
    capture->kept = tmpfile ();
  capture->before = dup (capture->fd);
  MUST (capture->kept != NULL && capture->before >= 0);
  int fd = fileno (capture->kept);
  MUST (ftruncate (fd, 0) == 0 && lseek (fd, 0, SEEK_SET) == 0);
  MUST (dup2 (fd, capture->fd) >= 0);
}

static char *
end_capture (Capture *capture)
{
  int fd = fileno (capture->kept);
  off_t length = lseek (fd, 0, SEEK_END);
  char *text = g_malloc0 ((gsize) length + 1);
  MUST (pread (fd, text, (gsize) length, 0) == length);
  MUST (dup2 (capture->before, capture->fd) >= 0);
  close (capture->before);
  return text;
}

/* Runs the command and keeps what it prints; returns its exit status. */
static BwCliExit
run_captured (char **words, char **out, char **err)
{
  fflush (stdout);
  fflush (stderr);
  for (gsize i = 0; i < G_N_ELEMENTS (captures); i++)
    begin_capture (&captures[i]);
  g_set_prgname ("breezeway-cli");
  BwCliExit status = run (words);
  fflush (stdout);
  fflush (stderr);
  *err = end_capture (&captures[1]);
  *out = end_capture (&captures[0]);
  return status;
}

/* What is read may not be written over: the next command would find something else. */
static void
make_read_only (const char *name)
{
  MUST (g_chmod (name, 0444) == 0);
}

static void
make_folder (void)
{
  const char *root = g_getenv ("BW_SOURCE_ROOT");
  g_autofree char *demo = g_build_filename (root != NULL ? root : ".", "data", SHEET, NULL);
  g_autoptr (GError) error = NULL;
  g_autofree char *text = NULL, *out = NULL, *err = NULL;
  char *make_edid[] = { (char[]){ "edid" }, (char[]){ SHEET }, (char[]){ "-o" }, (char[]){ EDID },
                        NULL };

  if (!g_file_get_contents (demo, &text, NULL, &error))
    g_error ("%s", error->message);
  folder = g_dir_make_tmp ("breezeway-fuzz-XXXXXX", NULL);
  MUST (folder != NULL && chdir (folder) == 0);
  atexit (remove_folder);
  g_setenv ("XDG_DATA_HOME", folder, TRUE);
  g_setenv ("XDG_CONFIG_HOME", folder, TRUE);
  MUST (g_file_set_contents (SHEET, text, -1, NULL));
  MUST (run_captured (make_edid, &out, &err) == BW_CLI_DONE);
  make_read_only (SHEET);
  make_read_only (EDID);
  MUST (freopen ("/dev/null", "r", stdin) != NULL);
}

/* Whether @word is no path that leaves the folder: a slash may stand only in a calculation. */
static gboolean
stays_here (const char *word)
{
  for (const char *p = strchr (word, '/'); p != NULL; p = strchr (p + 1, '/'))
    if (p == word || (p[-1] != ' ' && !g_ascii_isdigit (p[-1])))
      return FALSE;
  return TRUE;
}

/* Lines of comma-separated values end in CR and LF (RFC 4180), cells of a table that hold words from
 * right to left in U+200E. */
static gboolean
may_be_shown (gunichar c)
{
  return c == '\n' || c == '\r' || c == 0x200e || !bw_char_is_harmful (c);
}

static void
check_text (const char *text, gboolean may_be_odd)
{
  MUST (g_utf8_validate (text, -1, NULL));
  MUST (may_be_odd || bw_property_plain (text));
  MUST (strstr (text, "(null)") == NULL || may_be_odd);
  for (const char *p = text; *p != '\0'; p = g_utf8_next_char (p))
    MUST (may_be_shown (g_utf8_get_char (p)));
}

static void
check_json (const char *text)
{
  g_autoptr (JsonParser) parser = json_parser_new ();
  g_autoptr (GError) error = NULL;
  if (!json_parser_load_from_data (parser, text, -1, &error))
    g_error ("%s: %s", error->message, text);
}

/* What was written is not empty, not huge, and gone before the next command. */
static void
check_files (void)
{
  g_autoptr (GDir) dir = g_dir_open (".", 0, NULL);
  const char *name;
  while ((name = g_dir_read_name (dir)) != NULL)
    {
      GStatBuf status;
      if (strcmp (name, SHEET) == 0 || strcmp (name, EDID) == 0)
        continue;
      MUST (g_stat (name, &status) == 0);
      MUST (status.st_size > 0 && status.st_size < (1 << 28));
      MUST (g_remove (name) == 0);
    }
}

/* What a person wrote is shown as it is, be it the word “inf”. */
static gboolean
is_odd (char *const *words)
{
  g_autofree char *all = g_strjoinv (" ", (char **) words);
  g_autofree char *valid = g_utf8_make_valid (all, -1);
  return !bw_property_plain (valid) || strstr (valid, "(null)") != NULL;
}

/* Whether a file may have been written to standard output, for which a word is "-" or "-.pdf". */
static gboolean
may_be_a_file (char *const *words)
{
  for (; *words != NULL; words++)
    if (g_str_has_suffix (*words, "-") || strstr (*words, "-.") != NULL)
      return TRUE;
  return FALSE;
}

int
LLVMFuzzerTestOneInput (const uint8_t *data, size_t size)
{
  g_autofree char *text = g_strndup ((const char *) data, MIN (size, LENGTH_MAX));
  g_auto (GStrv) words = g_strsplit (text, "\n", WORDS_MAX + 1);
  g_autofree char *out = NULL, *err = NULL;
  gboolean json = FALSE;

  make_criticals_fatal ();
  if (folder == NULL)
    make_folder ();
  if (g_strv_length (words) > WORDS_MAX)
    return 0;
  for (char **word = words; *word != NULL; word++)
    {
      json = json || strcmp (*word, "--json") == 0;
      if (!stays_here (*word))
        return 0;
    }
  /* the end of the last line begins no word */
  guint n = g_strv_length (words);
  if (n > 0 && *words[n - 1] == '\0')
    g_clear_pointer (&words[n - 1], g_free);

  BwCliExit status = run_captured (words, &out, &err);
  MUST (status == BW_CLI_DONE || status == BW_CLI_BAD_INPUT || status == BW_CLI_WRONG_USAGE);
  if (!may_be_a_file (words))
    check_text (out, is_odd (words));
  check_text (err, is_odd (words));
  MUST (status == BW_CLI_DONE || *err != '\0');
  if (json && status == BW_CLI_DONE && *out == '{')
    check_json (out);
  check_files ();
  return 0;
}
