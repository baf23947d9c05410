/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "output.h"

#include <errno.h>
#include <fcntl.h>
#include <locale.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

#include <glib/gi18n-lib.h>

#include "core/base/harmless.h"

#define PROGRAM "breezeway-cli"

/**
 * bw_cli_guard_streams:
 *
 * Fills standard streams that came closed, so that no file opened later takes their place and gets
 * what is printed. Writing to standard output then still fails, as it should.
 */
void
bw_cli_guard_streams (void)
{
  for (int stream = STDIN_FILENO; stream <= STDERR_FILENO; stream++)
    if (fcntl (stream, F_GETFD) < 0 && errno == EBADF
        && open ("/dev/null", stream == STDERR_FILENO ? O_WRONLY : O_RDONLY) != stream)
      _exit (BW_CLI_BAD_INPUT);
}

/**
 * bw_cli_is_unicode:
 *
 * Returns: whether the terminal shows more than the letters of its own alphabet
 */
gboolean
bw_cli_is_unicode (void)
{
  return g_get_charset (NULL);
}

/**
 * bw_cli_speak_to_scripts:
 *
 * The program speaks its own words from here on and not those of a translation: a script reads them,
 * and must find the same in every country.
 */
void
bw_cli_speak_to_scripts (void)
{
  setlocale (LC_MESSAGES, "C");
}

/* @text in the terminal's own encoding, with the nearest letters where it lacks some. No-break
 * spaces become plain ones, so that it can be searched. */
static char *
to_terminal (const char *text)
{
  const char *charset;
  g_autoptr (GString) plain = g_string_new (text);

  g_string_replace (plain, "\u00a0", " ", 0);
  if (g_get_charset (&charset))
    return g_strdup (plain->str);
  g_autofree char *target = g_strconcat (charset, "//TRANSLIT", NULL);
  char *converted = g_convert_with_fallback (plain->str, -1, target, "UTF-8", "?", NULL, NULL,
                                             NULL);
  return converted != NULL ? converted : g_str_to_ascii (plain->str, "C");
}

static BwCliExit
write_out (const char *text)
{
  errno = 0;
  if (fputs (text, stdout) != EOF && fflush (stdout) == 0)
    return BW_CLI_DONE;
  bw_cli_complain (_ ("standard output cannot be written: %s"), g_strerror (errno));
  return BW_CLI_BAD_INPUT;
}

/**
 * bw_cli_print:
 * @text: UTF-8, for a person; what in it comes from outside is harmless already
 *
 * Returns: %BW_CLI_BAD_INPUT, having said so, if standard output cannot be written
 */
BwCliExit
bw_cli_print (const char *text)
{
  g_autofree char *converted = to_terminal (text);
  return write_out (converted);
}

/**
 * bw_cli_print_data:
 * @text: JSON or comma-separated values, which are UTF-8 whatever the locale
 *
 * Returns: as bw_cli_print()
 */
BwCliExit
bw_cli_print_data (const char *text)
{
  return write_out (text);
}

/**
 * bw_cli_fault:
 * @says: a sentence that names file, place and fault
 *
 * Prints it as one line on standard error, whatever is in it.
 */
void
bw_cli_fault (const char *says)
{
  g_autofree char *line = bw_text_harmless (says);
  g_autofree char *converted = to_terminal (line);
  fprintf (stderr, "%s\n", converted);
}

/**
 * bw_cli_complain:
 *
 * Prints one line on standard error that begins with the name of the program.
 */
void
bw_cli_complain (const char *format, ...)
{
  va_list list;
  va_start (list, format);
  g_autofree char *says = g_strdup_vprintf (format, list);
  va_end (list);
  g_autofree char *line = g_strconcat (PROGRAM ": ", says, NULL);
  bw_cli_fault (line);
}

/**
 * bw_cli_wrong_usage:
 * @command: (nullable): the command that was used wrongly; %NULL for the program itself
 *
 * Says in one line what is wrong and where help is.
 *
 * Returns: %BW_CLI_WRONG_USAGE
 */
BwCliExit
bw_cli_wrong_usage (const char *command, const char *says)
{
  g_autofree char *program = command != NULL ? g_strconcat (PROGRAM " ", command, NULL)
                                             : g_strdup (PROGRAM);
  g_autofree char *line = g_strdup_printf (_ ("%1$s: %2$s; see “%3$s --help”"), program, says,
                                           program);
  bw_cli_fault (line);
  return BW_CLI_WRONG_USAGE;
}
