/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cell.h"

#include <glib/gi18n-lib.h>

#include "cli/base/nearest.h"
#include "cli/base/output.h"
#include "cli/base/streams.h"
#include "cli/base/arguments.h"

static GPtrArray *
source_names (const BwSheet *sheet)
{
  GPtrArray *names = g_ptr_array_new ();
  for (guint i = 0; i < sheet->sources->len; i++)
    g_ptr_array_add (names, bw_sheet_source (sheet, i)->name);
  return names;
}

static GPtrArray *
input_names (const BwSheet *sheet)
{
  GPtrArray *names = g_ptr_array_new ();
  for (guint i = 0; i < sheet->monitor->inputs->len; i++)
    g_ptr_array_add (names, bw_monitor_input (sheet->monitor, i)->name);
  return names;
}

/**
 * bw_cell_number:
 * @wanted: what stands for one of @n things that are not called so
 * @index: (out): the one that it counts, from 0
 *
 * Returns: whether it is a number from 1 to @n
 */
gboolean
bw_cell_number (const char *wanted, guint n, guint *index)
{
  guint64 number;

  if (n == 0 || !g_ascii_string_to_unsigned (wanted, 10, 1, n, &number, NULL))
    return FALSE;
  *index = (guint) number - 1;
  return TRUE;
}

/* Names come before numbers: a source may be called "2". */
static gboolean
find (GPtrArray *names, const char *wanted, guint *at)
{
  for (guint i = 0; i < names->len; i++)
    if (g_strcmp0 (names->pdata[i], wanted) == 0)
      {
        *at = i;
        return TRUE;
      }
  return bw_cell_number (wanted, names->len, at);
}

/* A name that several have does not say which is meant. Names their numbers on standard error. */
static gboolean
is_shared (const char *path, GPtrArray *names, const char *wanted)
{
  g_autoptr (GString) numbers = g_string_new (NULL);
  guint n = 0;

  for (guint i = 0; i < names->len; i++)
    if (g_strcmp0 (names->pdata[i], wanted) == 0)
      g_string_append_printf (numbers, "%s%u", n++ > 0 ? ", " : "", i + 1);
  if (n < 2)
    return FALSE;
  g_autofree char *says
      = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%1$s: %2$u is called “%3$s”; choose it by its number: %4$s",
                                   "%1$s: %2$u are called “%3$s”; choose one by its number: %4$s", n),
                         path, n, wanted, numbers->str);
  bw_cli_fault (says);
  return TRUE;
}

static void
say_not_found (const char *path, const char *what, GPtrArray *names, const char *wanted)
{
  g_autofree char *nearest = bw_nearest_names (names, wanted, 3);
  g_autofree char *says =
      names->len > 0
          ? g_strdup_printf (_ ("%1$s: %2$s “%3$s”; the nearest are %4$s, or a number from 1 "
                                "to %5$u"),
                             path, what, wanted, nearest, names->len)
          : g_strdup_printf (_ ("%1$s: %2$s “%3$s”; there are none"), path, what, wanted);
  bw_cli_fault (says);
}

static gboolean
find_or_complain (const char *path, const char *what, const char *raw, GPtrArray *names, guint *at)
{
  g_autofree char *wanted = bw_argument_utf8 (raw);
  if (is_shared (bw_cli_input_name (path), names, wanted))
    return FALSE;
  if (find (names, wanted, at))
    return TRUE;
  say_not_found (bw_cli_input_name (path), what, names, wanted);
  return FALSE;
}

/* @raw may only be missing if there is but one to choose. */
static BwCliExit
pick (const char *command, const char *path, const char *option, const char *what, const char *raw,
      GPtrArray *names, guint *at)
{
  *at = 0;
  if (raw == NULL && names->len == 1)
    return BW_CLI_DONE;
  if (raw == NULL)
    {
      g_autofree char
          *says = g_strdup_printf (_ ("%s is needed with a bench sheet: a name or a number"),
                                   option);
      return bw_cli_wrong_usage (command, says);
    }
  return find_or_complain (path, what, raw, names, at) ? BW_CLI_DONE : BW_CLI_BAD_INPUT;
}

/**
 * bw_cell_pick:
 * @command: for what is wrong with its usage
 * @path: of @sheet
 * @source_raw: (nullable): --source as it came: a name, or a number from 1; may be %NULL if there is
 *   but one
 * @input_raw: (nullable): likewise --input
 * @source: (out): index of the source
 * @input: (out): index of the input
 *
 * Says on standard error what cannot be found.
 *
 * Returns: %BW_CLI_DONE, or how the program ends
 */
BwCliExit
bw_cell_pick (const char *command, const char *path, const BwSheet *sheet, const char *source_raw,
              const char *input_raw, guint *source, guint *input)
{
  g_autoptr (GPtrArray) sources = source_names (sheet);
  g_autoptr (GPtrArray) inputs = input_names (sheet);
  BwCliExit result = pick (command, path, "--source", _ ("no source is called"), source_raw,
                           sources, source);
  return result == BW_CLI_DONE
             ? pick (command, path, "--input", _ ("no input is called"), input_raw, inputs, input)
             : result;
}

/**
 * bw_cell_find_source:
 * @path: of the sheet, for the complaint
 * @raw: as it came: a name, or a number from 1
 * @at: (out): index of the source
 *
 * Returns: whether it is there; if not, that is said in one line
 */
gboolean
bw_cell_find_source (const char *path, const BwSheet *sheet, const char *raw, guint *at)
{
  g_autoptr (GPtrArray) names = source_names (sheet);
  return find_or_complain (path, _ ("no source is called"), raw, names, at);
}

/**
 * bw_cell_find_input:
 *
 * Does for an input what bw_cell_find_source() does for a source.
 */
gboolean
bw_cell_find_input (const char *path, const BwSheet *sheet, const char *raw, guint *at)
{
  g_autoptr (GPtrArray) names = input_names (sheet);
  return find_or_complain (path, _ ("no input is called"), raw, names, at);
}

/**
 * bw_cell_lacks:
 * @path: of the sheet, for the complaint
 *
 * Returns: whether a figure is not known without which it cannot be said what stands on the wires;
 *   then it is named in one line
 */
gboolean
bw_cell_lacks (const char *path, const BwSource *source, const BwInput *input)
{
  BwLack lack;

  if (!bw_lacks_signal (source, input, &lack))
    return FALSE;
  g_autofree char *says = bw_lack_says (&lack);
  g_autofree char *whole = g_strdup_printf ("%s: %s", bw_cli_input_name (path), says);
  bw_cli_fault (whole);
  return TRUE;
}
