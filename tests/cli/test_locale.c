/* SPDX-License-Identifier: GPL-3.0-or-later */
/* JSON is the same in a locale with a decimal comma; what a person reads is not. The locale is
 * made for the test (localedef, Debian packages libc-bin and locales) if it is not installed. */
#include <string.h>

#include "run.h"

#define COMMA_LOCALE "de_DE.UTF-8"

typedef struct
{
  char *folder; /* where the locale was made */
  char **comma; /* environment with the comma locale; NULL if there is none */
  char **point; /* environment with the C locale */
} Locales;

/* Whether a program in @environment prints 1.5 with a comma. */
static gboolean
has_comma (char **environment)
{
  const char *const argv[] = { "/usr/bin/env", "bash", "-c", "printf '%.1f' 1,5", NULL };
  g_autoptr (Run) run = run_argv (argv, environment);
  return run->status == 0 && strcmp (run->out, "1,5") == 0;
}

static char **
environment_for (const char *locale, const char *folder)
{
  char **environment = g_environ_setenv (g_get_environ (), "LC_ALL", locale, TRUE);
  return folder != NULL ? g_environ_setenv (environment, "LOCPATH", folder, TRUE) : environment;
}

static void
make_locale (const char *folder)
{
  g_autofree char *target = g_build_filename (folder, COMMA_LOCALE, NULL);
  g_autofree char *tool = g_find_program_in_path ("localedef");
  const char *const argv[] = { "localedef", "-i", "de_DE", "-f", "UTF-8", target, NULL };
  if (tool != NULL)
    run_free (run_argv (argv, NULL));
}

static void
find_locales (Locales *locales)
{
  locales->folder = scratch_folder ();
  locales->point = environment_for ("C.UTF-8", NULL);
  locales->comma = environment_for (COMMA_LOCALE, NULL);
  if (has_comma (locales->comma))
    return;
  g_strfreev (locales->comma);
  make_locale (locales->folder);
  locales->comma = environment_for (COMMA_LOCALE, locales->folder);
  if (!has_comma (locales->comma))
    g_clear_pointer (&locales->comma, g_strfreev);
}

static void
free_locales (Locales *locales)
{
  remove_scratch (locales->folder);
  g_free (locales->folder);
  g_strfreev (locales->comma);
  g_strfreev (locales->point);
}

/* Where no comma locale can be had, only the C locale is checked. */
static gboolean
can_compare (const Locales *locales)
{
  if (locales->comma != NULL)
    return TRUE;
  g_test_message ("there is no locale with a decimal comma and none can be made (Debian package "
                  "locales): checked with the C locale only");
  return FALSE;
}

static void
test_timing (gconstpointer data)
{
  const Locales *locales = data;
  g_autoptr (Run) point = run_cli_in (locales->point, "timing", "--list", "--json", NULL);
  g_autoptr (JsonObject) root = run_json (point);
  g_assert_nonnull (strstr (point->out, "15734.265734265"));
  if (!can_compare (locales))
    return;
  g_autoptr (Run) comma = run_cli_in (locales->comma, "timing", "--list", "--json", NULL);
  g_assert_cmpint (comma->status, ==, 0);
  g_assert_cmpstr (comma->out, ==, point->out);
}

static void
test_fit (gconstpointer data)
{
  const Locales *locales = data;
  g_autofree char *demo = demo_path ();
  g_autoptr (Run) point = run_cli_in (locales->point, "fit", demo, "--json", NULL);
  g_autoptr (JsonObject) root = run_json (point);
  g_assert_nonnull (strstr (point->out, "15.734 kHz"));
  if (!can_compare (locales))
    return;
  g_autoptr (Run) comma = run_cli_in (locales->comma, "fit", demo, "--json", NULL);
  g_assert_cmpint (comma->status, ==, 0);
  g_assert_cmpstr (comma->out, ==, point->out);
}

/* A script writes a decimal point and gets the same JSON; a person may write the locale's comma. */
static const struct
{
  const char *args[6];
  const char *with_comma[6];
} commands[] = {
  { { "identify", "--json", "--line-rate", "15.734 kHz", NULL },
    { "identify", "--json", "--line-rate", "15,734 kHz", NULL } },
  { { "solve", "--json", "line-rate=31.46875kHz", "h-total=800px", NULL },
    { "solve", "--json", "line-rate=31,46875kHz", "h-total=800px", NULL } },
  { { "readings", "--json", "--standard", "smpte-170m", "line_sync=4.75us", NULL },
    { "readings", "--json", "--standard", "smpte-170m", "line_sync=4,75us", NULL } },
  { { "solve", "--json", "line-rate=15.625kHz", "h-total=864px", NULL },
    { "solve", "--json", "line-rate=15,625kHz", "h-total=864px", NULL } },
  { { "timing", "--json", "--as-modeline", "--gtf", "640x480@59.94", NULL }, { NULL } },
};

static Run *
run_in (char **environment, const char *const *args)
{
  return run_cli_in (environment, args[0], args[1], args[2], args[3], args[4], NULL);
}

static void
test_arguments (gconstpointer data)
{
  const Locales *locales = data;
  for (gsize i = 0; i < G_N_ELEMENTS (commands); i++)
    {
      g_autoptr (Run) point = run_in (locales->point, commands[i].args);
      g_autoptr (JsonObject) root = run_json (point);
      if (!can_compare (locales))
        return;
      g_autoptr (Run) same = run_in (locales->comma, commands[i].args);
      g_assert_cmpstr (same->err, ==, "");
      g_assert_cmpstr (same->out, ==, point->out);
      if (commands[i].with_comma[0] == NULL)
        continue;
      g_autoptr (Run) comma = run_in (locales->comma, commands[i].with_comma);
      g_assert_cmpstr (comma->err, ==, "");
      g_assert_cmpstr (comma->out, ==, point->out);
      /* "15,734" may set thousands apart where the mark is a point; no other comma may */
      g_autoptr (Run) other = run_in (locales->point, commands[i].with_comma);
      gboolean three = strstr (commands[i].with_comma[2], "15,") != NULL
                       || strstr (commands[i].with_comma[3], "15,") != NULL;
      if (three)
        assert_refused (other, 1, "decimal mark");
      else
        g_assert_cmpstr (other->out, ==, point->out);
    }
}

/* The comma locale is really one: a person reads commas. */
static void
test_for_a_person (gconstpointer data)
{
  const Locales *locales = data;
  g_autofree char *demo = demo_path ();
  g_autoptr (Run) point = run_cli_in (locales->point, "timing", "480i", NULL);
  g_assert_nonnull (strstr (point->out, "15.734266"));
  if (!can_compare (locales))
    return;
  g_autoptr (Run) comma = run_cli_in (locales->comma, "timing", "480i", NULL);
  g_autoptr (Run) fit = run_cli_in (locales->comma, "fit", demo, "--findings", NULL);
  g_assert_nonnull (strstr (comma->out, "15,734266"));
  g_assert_null (strstr (comma->out, "15.734266"));
  g_assert_nonnull (strstr (fit->out, "33,716 kHz"));
}

/* In the C locale, which has ASCII alone, text is still told and JSON is still UTF-8. */
static void
test_ascii (void)
{
  g_autofree char *demo = demo_path ();
  g_auto (GStrv) ascii = environment_for ("C", NULL);
  g_autoptr (Run) text = run_cli_in (ascii, "timing", "480i", NULL);
  g_autoptr (Run) fit = run_cli_in (ascii, "fit", demo, "--findings", NULL);
  g_autoptr (Run) json = run_cli_in (ascii, "fit", demo, "--json", NULL);
  g_autoptr (Run) utf8 = run_cli ("fit", demo, "--json", NULL);

  g_assert_true (g_str_is_ascii (text->out));
  g_assert_nonnull (strstr (text->out, "63.5556 us"));
  g_assert_true (g_str_is_ascii (fit->out));
  g_assert_cmpint (fit->status, ==, 0);
  g_assert_cmpstr (json->out, ==, utf8->out);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  Locales locales;
  find_locales (&locales);
  g_test_add_data_func ("/locale/timing-json", &locales, test_timing);
  g_test_add_data_func ("/locale/fit-json", &locales, test_fit);
  g_test_add_data_func ("/locale/arguments", &locales, test_arguments);
  g_test_add_data_func ("/locale/for-a-person", &locales, test_for_a_person);
  g_test_add_func ("/locale/ascii", test_ascii);
  int status = g_test_run ();
  free_locales (&locales);
  return status;
}
